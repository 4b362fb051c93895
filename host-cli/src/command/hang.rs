//! `tenter hang`: which mass to hang for a wanted tension, and back.

use tenter_core::making::hanging::{METHODS, Tension, TensionMethod};
use tenter_core::making::source::Source;

use crate::cli::making::HangArgs;
use crate::error::Error;
use crate::finding::hang::{Hang, Hung};
use crate::input::{self, Field, Misuse, Why, Wrong, amount::cloth, hang as typed};
use crate::json::hang as hang_json;
use crate::text::TextOutput;
use crate::text::hang as hang_text;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong.
pub fn run(args: &HangArgs, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let hang = found(args)?;
    if args.show.json {
        writeln!(screen.out, "{}", hang_json::render(&hang))?;
    } else {
        write!(screen.out, "{}", hang_text::render(&hang, args.why, screen.width))?;
    }
    Ok(0)
}

fn found(args: &HangArgs) -> Result<Hang, Error> {
    let Some(text) = &args.width else { return Ok(Hang::Methods(args.show.units.unwrap_or_default())) };
    let unit = args.show.units.or_else(|| input::unit_of(text)).unwrap_or_default();
    let hung = Hung { width: cloth(Field::Width, text)?, piece: args.piece, unit };
    let found = match &args.mass {
        Some(mass) => Hang::tension(hung, typed::mass(mass)?),
        None => Hang::mass(hung, wanted(args)?),
    };
    Ok(found.map_err(|error| Wrong::new(Field::Width, text, Why::Making(error)))?)
}

/// The tension that is asked for.
fn wanted(args: &HangArgs) -> Result<(Tension, Source), Error> {
    if let Some(text) = &args.tension {
        return Ok((typed::tension(text)?, Source::Own));
    }
    let names = || METHODS.iter().map(|method| method.cloth.to_owned()).collect();
    let Some(text) = &args.method else {
        return Err(Misuse::NoTension.into());
    };
    let wanted = text.trim().to_lowercase();
    let name = |method: &TensionMethod| format!("{} {}", method.standard, method.cloth).to_lowercase();
    let mut found = METHODS.iter().filter(|method| name(method).contains(&wanted));
    match (found.next(), found.next()) {
        (Some(method), None) => Ok((method.tension(), method.source)),
        (None, _) => Err(Wrong::new(Field::Method, text, Why::NotOneOf(names())).into()),
        (Some(one), Some(other)) => {
            let why = Why::Ambiguous { one: one.cloth, other: other.cloth };
            Err(Wrong::new(Field::Method, text, why).into())
        }
    }
}
