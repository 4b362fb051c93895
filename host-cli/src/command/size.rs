//! `tenter size`: ease, openings, elastic and zips.

use super::{check, find};
use crate::cli::size::SizeArgs;
use crate::deed::size as deed;
use crate::error::Error;
use crate::finding::fit::{Stock, known};
use crate::finding::size::SizedCloth;
use crate::input::size::{TypedSize, exact};
use crate::input::{self, Field, Misuse};
use crate::json::size as size_json;
use crate::store::Read;
use crate::text::TextOutput;
use crate::text::size as size_text;

/// Opens the log, where it is needed.
pub type OpenLog<'o> = dyn FnMut() -> Result<Box<dyn Read>, Error> + 'o;

/// Runs the verb; 0 everything passes, 1 something does not, 3 too close to call.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read.
pub fn run(args: &SizeArgs, open: &mut OpenLog<'_>, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let confidence = input::confidence(&args.advice.confidence.confidence)?;
    let sized_cloth = sized_cloth(args, open)?;
    let sized = deed::size(&TypedSize::from(args), sized_cloth.as_ref(), confidence)?;
    if sized.lines.is_empty() {
        return Err(Misuse::NothingToSize.into());
    }
    if args.advice.show.json {
        writeln!(screen.out, "{}", size_json::render(&sized))?;
    } else {
        write!(screen.out, "{}", size_text::render(&sized, args.advice.why, screen.width))?;
    }
    Ok(check::exit_code(sized.answer))
}

/// The cloth that goes round the body, or a stretch that was given for it.
fn sized_cloth(args: &SizeArgs, open: &mut OpenLog<'_>) -> Result<Option<SizedCloth>, Error> {
    if let Some(text) = &args.stretch {
        return Ok(Some(SizedCloth::of_stretch(exact(Field::Stretch, text)?)));
    }
    let Some(text) = &args.fabric else { return Ok(None) };
    let log = open()?;
    let (stock, fabric) = (Stock::read(&*log)?, find::live_fabric(&*log, text)?);
    let stretch = known::stretch(&fabric, args.grain, &stock)?;
    Ok(Some(SizedCloth::of_cloth(&known::cloth(&fabric, &stock), args.grain, stretch)))
}
