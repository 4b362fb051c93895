//! `tenter size`: ease, openings, elastic and zips.

use tenter_core::making::sizing::Reduction;
use tenter_core::{Figure, Limit, Unit};

use super::{check, find};
use crate::cli::size::SizeArgs;
use crate::error::Error;
use crate::finding::fit::{Stock, known};
use crate::finding::size::Sized;
use crate::input::{self, Field, Why, Wrong, amount::cloth, size as typed};
use crate::json::size as size_json;
use crate::store::Read;
use crate::text::Screen;
use crate::text::size as size_text;

/// Opens the log, where it is needed.
pub type Open<'o> = dyn FnMut() -> Result<Box<dyn Read>, Error> + 'o;

/// Runs the verb; 0 everything passes, 1 something does not, 3 too close to call.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read.
pub fn run(args: &SizeArgs, open: &mut Open<'_>, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let confidence = input::confidence(&args.advice.confidence.confidence)?;
    let unit = unit(args);
    let stretch = stretch(args, open)?;
    let mut sized = Sized::default();
    for (field, texts, opening) in [(Field::Girth, &args.girth, false), (Field::Opening, &args.opening, true)] {
        for text in texts {
            let girth = typed::girth(field, text)?;
            let judged = sized.girth(girth, opening, stretch, confidence, unit);
            judged.map_err(|error| Wrong::new(field, text, Why::Making(error)))?;
        }
    }
    if let Some(text) = &args.reduce {
        sized.reduce(reduction(text)?, stretch, confidence, unit);
    }
    if let Some(stretch) = stretch {
        sized.most_reduction(stretch, unit);
    }
    if let (Some(kind), Some(place), Some(measure)) = (args.elastic, args.place, &args.measure) {
        let widest = args.widest.as_deref().map(|text| cloth(Field::Widest, text)).transpose()?;
        let gives = args.gives.as_deref().map(|text| typed::exact(Field::Gives, text)).transpose()?;
        let (kind, length) = (kind, cloth(Field::Measure, measure)?);
        let wrong = |error| Wrong::new(Field::Measure, measure, Why::Making(error));
        sized.elastic((kind, place), length, widest.zip(gives), confidence, unit).map_err(wrong)?;
        let width = args.elastic_width.as_deref().map(|text| cloth(Field::ElasticWidth, text)).transpose()?;
        sized.casing(kind, width, args.stitched, unit).map_err(|error| {
            Wrong::new(Field::ElasticWidth, args.elastic_width.as_deref().unwrap_or_default(), Why::Making(error))
        })?;
    }
    if let Some(text) = &args.zip {
        let edge = cloth(Field::Zip, text)?;
        sized
            .zip(edge, args.zip_ends, args.advice.show.units.or_else(|| input::unit_of(text)), unit)
            .map_err(|error| Wrong::new(Field::Zip, text, Why::Making(error)))?;
    }
    if sized.lines.is_empty() {
        return Err(Error::Usage(
            "pass what to size, such as --girth hip=104cm/101cm; see tenter size --help".to_owned(),
        ));
    }
    if args.advice.show.json {
        writeln!(screen.out, "{}", size_json::render(&sized))?;
    } else {
        write!(screen.out, "{}", size_text::render(&sized, args.advice.why, screen.width))?;
    }
    Ok(check::exit_code(sized.answer))
}

/// The unit of the text: what was asked for, or that of the first measure typed.
fn unit(args: &SizeArgs) -> Unit {
    let measures = args.girth.iter().chain(&args.opening).map(|text| text.rsplit('/').next().unwrap_or(text));
    let others = [&args.measure, &args.zip].into_iter().flatten().map(String::as_str);
    let typed = measures.chain(others).find_map(input::unit_of);
    args.advice.show.units.or(typed).unwrap_or(Unit::Cm)
}

fn stretch(args: &SizeArgs, open: &mut Open<'_>) -> Result<Option<Figure>, Error> {
    if let Some(text) = &args.stretch {
        return Ok(Some(typed::exact(Field::Stretch, text)?));
    }
    let Some(text) = &args.fabric else { return Ok(None) };
    let log = open()?;
    let (stock, fabric) = (Stock::read(&*log)?, find::live_fabric(&*log, text)?);
    let grain = args.grain;
    Ok(Some(known::stretch(&fabric, grain, &stock)?))
}

/// A reduction below 100 %.
fn reduction(text: &str) -> Result<Reduction, Wrong> {
    let limit = Limit::parse(text, Unit::Mm).map_err(|error| Wrong::new(Field::Reduce, text, Why::Limit(error)))?;
    Reduction::new(limit.ratio()).ok_or_else(|| Wrong::new(Field::Reduce, text, Why::NothingLeft))
}
