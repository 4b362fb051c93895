//! `tenter hang`: which mass to hang for a wanted tension, and back.

use serde::Serialize;
use tenter_core::making::caution::{Job, MOST_GRAMS, cautions};
use tenter_core::making::hanging::{self, METHODS, Method, Piece, STANDARD_GRAVITY, Tension};
use tenter_core::making::source::Source;
use tenter_core::{Decimal, Length, Load, Unit};

use crate::cli::making::{HangArgs, PieceArg};
use crate::error::{Error, one_line};
use crate::input::{self, fabric::cloth};
use crate::text::Screen;
use crate::text::lines::Lines;
use crate::words::advice;
use crate::words::advice::Spoken;
use crate::words::terms as words;

/// The weight of a gram, in millinewtons.
const MILLINEWTONS_PER_GRAM: f64 = STANDARD_GRAVITY as f64 / 100_000.0;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong.
pub fn run(args: &HangArgs, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let mut lines = words::cautions(&cautions(Job { hangs_mass: true, ..Job::default() }));
    let mut grams = None;
    let piece = match args.piece {
        PieceArg::Strip => Piece::Strip,
        PieceArg::Loop => Piece::Loop,
    };
    match &args.width {
        None => lines.extend(METHODS.iter().map(method_line)),
        Some(text) => {
            let width = cloth("--width", text)?;
            let wrong = |error| Error::argument("--width", text, error);
            let unit = input::unit_of(text).unwrap_or_default();
            if let Some(typed) = &args.mass {
                let hung = mass(typed)?;
                let tension = hanging::tension(hung, width, piece).map_err(wrong)?;
                lines.push(pulls(tension, hung, width, piece, unit));
                grams = Some(hung);
            } else {
                let (tension, source) = wanted(args)?;
                let mass = hanging::mass(tension, width, piece).map_err(wrong)?;
                lines.push(hang(tension, mass, width, piece, unit, source));
                grams = Some(mass.grams);
            }
        }
    }
    if args.show.json {
        let json = serde_json::to_string(&HangJson { grams, lines: &lines }).unwrap_or_default();
        writeln!(screen.out, "{json}")?;
    } else {
        let mut text = Lines::new(screen.width);
        advice::write(&mut text, &lines, args.why);
        write!(screen.out, "{}", text.finish())?;
    }
    Ok(0)
}

#[derive(Serialize)]
struct HangJson<'a> {
    grams: Option<u32>,
    lines: &'a [Spoken],
}

fn per_cm(tension: Tension) -> String {
    format!("{} N/cm", Decimal::new((i64::from(tension.millinewtons_per_cm()) + 5) / 10, 2))
}

fn method_line(method: &Method) -> Spoken {
    let year = method.year.map_or_else(String::new, |year| format!(":{year}"));
    let layers = if method.piece == Piece::Loop { "loop" } else { "strip" };
    let width = method.width.show(Unit::Mm);
    let text = format!("{}{year}, {}: {}", method.standard, method.cloth, per_cm(method.tension()));
    let force = Decimal::new((i64::from(method.millinewtons) + 50) / 100, 1);
    Spoken::new("tension", text, format!("{force} N on a {layers} {width} wide"), method.source)
}

/// The tension that is asked for.
fn wanted(args: &HangArgs) -> Result<(Tension, Source), Error> {
    if let Some(text) = &args.tension {
        let force = text.trim().trim_end_matches("/cm");
        let remedy = "type the force on each centimetre of width, such as 3.5N";
        let wrong = || Error::argument("--tension", text, remedy);
        let Ok(Load::Force { millinewtons }) = input::load(force) else { return Err(wrong()) };
        return Ok((Tension::new(millinewtons, Length::from_mm(10)).ok_or_else(wrong)?, Source::Own));
    }
    let names = || METHODS.iter().map(|method| method.cloth).collect::<Vec<_>>().join("; ");
    let Some(text) = &args.method else {
        return Err(Error::Usage(
            "say which tension: --method TEXT (tenter hang lists them), --tension 3.5N, or --mass".to_owned(),
        ));
    };
    let wanted = text.trim().to_lowercase();
    let name = |method: &Method| format!("{} {}", method.standard, method.cloth).to_lowercase();
    let mut found = METHODS.iter().filter(|method| name(method).contains(&wanted));
    match (found.next(), found.next()) {
        (Some(method), None) => Ok((method.tension(), method.source)),
        (None, _) => Err(Error::argument("--method", text, format!("type one of {}", names()))),
        (Some(one), Some(other)) => Err(Error::argument(
            "--method",
            text,
            format!("'{}' and '{}' both say so; type more of it", one_line(one.cloth), one_line(other.cloth)),
        )),
    }
}

/// A mass in grams, from the weight that `--load` reads.
fn mass(text: &str) -> Result<u32, Error> {
    let wrong = || Error::argument("--mass", text, "type a mass such as 500g, 1.2kg or 3lb");
    if text.trim().ends_with(['N', 'n']) {
        return Err(wrong());
    }
    let Ok(Load::Force { millinewtons }) = input::load(text) else { return Err(wrong()) };
    let grams = (f64::from(millinewtons) / MILLINEWTONS_PER_GRAM).round();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // At most 10⁶ mN.
    (grams >= 1.0).then_some(grams as u32).ok_or_else(wrong)
}

const fn layers(piece: Piece) -> &'static str {
    match piece {
        Piece::Strip => "strip",
        Piece::Loop => "loop of two layers",
    }
}

fn hang(tension: Tension, mass: hanging::Mass, width: Length, piece: Piece, unit: Unit, source: Source) -> Spoken {
    let (shown, layers) = (width.show(unit), layers(piece));
    let why =
        format!("{} × {shown}{}, over 9.80665 N/kg", per_cm(tension), if piece == Piece::Loop { " × 2" } else { "" });
    let text = if mass.too_heavy {
        let widest = hanging::widest(tension, piece).show(unit);
        format!("{} g would be needed, over {MOST_GRAMS} g: cut a {layers} of {widest} or less", mass.grams)
    } else {
        format!("{} g on a {layers} {shown} wide, for {}", mass.grams, per_cm(tension))
    };
    Spoken::new("hang", text, why, source)
}

fn pulls(tension: Tension, grams: u32, width: Length, piece: Piece, unit: Unit) -> Spoken {
    let (shown, layers) = (width.show(unit), layers(piece));
    let heavy = if grams > MOST_GRAMS {
        format!("; that is over {MOST_GRAMS} g: take a narrower piece")
    } else {
        String::new()
    };
    let text = format!("{grams} g on a {layers} {shown} wide pull with {}{heavy}", per_cm(tension));
    Spoken::new("pull", text, "mass × 9.80665 N/kg over the width", Source::Derived("arithmetic"))
}
