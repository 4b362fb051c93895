//! `tenter size`: ease, openings, elastic and zips.

use tenter_core::making::elastic::Fastened;
use tenter_core::making::error::MakingError;
use tenter_core::making::garment::GarmentKind;
use tenter_core::making::sizing::Reduction;
use tenter_core::making::zip::ZipEnds;
use tenter_core::{Confidence, Limit, Unit};

use super::{check, find};
use crate::cli::size::SizeArgs;
use crate::error::Error;
use crate::finding::fit::{Stock, known};
use crate::finding::size::{CordWanted, ElasticWanted, Sized, SizedCloth, ZipWanted};
use crate::input::{self, Field, Misuse, Why, Wrong, amount::cloth, size as typed};
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
    let unit = unit(args);
    let sized_cloth = sized_cloth(args, open)?;
    let cloth_of = sized_cloth.as_ref();
    let mut sized = Sized::default();
    for (field, texts, opening) in [(Field::Girth, &args.girth, false), (Field::Opening, &args.opening, true)] {
        for text in texts {
            let girth = typed::girth(field, text)?;
            let judged = sized.girth(girth, opening, cloth_of, confidence, unit);
            judged.map_err(|error| Wrong::new(field, text, Why::Making(error)))?;
        }
    }
    if let Some(text) = &args.reduce {
        sized.reduce(reduction(text)?, cloth_of.map(|cloth| cloth.stretch), confidence, unit);
    }
    if let Some(cloth) = cloth_of {
        sized.opacity(cloth, unit);
        sized.smaller(cloth, args.kind, unit);
    }
    elastic(args, cloth_of, &mut sized, confidence, unit)?;
    cord(args, &mut sized, unit)?;
    zip(args, cloth_of, &mut sized, unit)?;
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

/// The unit of the text: what was asked for, or that of the first measure typed.
fn unit(args: &SizeArgs) -> Unit {
    let measures = args.girth.iter().chain(&args.opening).map(|text| text.rsplit('/').next().unwrap_or(text));
    let others = [&args.measure, &args.zip, &args.cord].into_iter().flatten().map(String::as_str);
    let typed = measures.chain(others).find_map(input::unit_of);
    args.advice.show.units.or(typed).unwrap_or(Unit::Cm)
}

/// The cloth that goes round the body, or a stretch that was given for it.
fn sized_cloth(args: &SizeArgs, open: &mut OpenLog<'_>) -> Result<Option<SizedCloth>, Error> {
    if let Some(text) = &args.stretch {
        return Ok(Some(SizedCloth::of_stretch(typed::exact(Field::Stretch, text)?)));
    }
    let Some(text) = &args.fabric else { return Ok(None) };
    let log = open()?;
    let (stock, fabric) = (Stock::read(&*log)?, find::live_fabric(&*log, text)?);
    let stretch = known::stretch(&fabric, args.grain, &stock)?;
    Ok(Some(SizedCloth::of_cloth(&known::cloth(&fabric, &stock), args.grain, stretch)))
}

/// From this mass per area on, in g/m², a casing is deeper: where the trade calls a cloth medium-heavy (the tool's own).
const THICK_FROM: u16 = 250;

fn elastic(
    args: &SizeArgs,
    cloth_of: Option<&SizedCloth>,
    sized: &mut Sized,
    confidence: Confidence,
    unit: Unit,
) -> Result<(), Error> {
    let (Some(kind), Some(place), Some(measure)) = (args.elastic, args.place, &args.measure) else { return Ok(()) };
    let widest = args.widest.as_deref().map(|text| cloth(Field::Widest, text)).transpose()?;
    let gives = args.gives.as_deref().map(|text| typed::exact(Field::Gives, text)).transpose()?;
    let wanted = ElasticWanted { kind, place, measure: cloth(Field::Measure, measure)?, must_pass: widest.zip(gives) };
    let wrong = |error| Wrong::new(Field::Measure, measure, Why::Making(error));
    sized.elastic(&wanted, confidence, unit).map_err(wrong)?;
    let width = args.elastic_width.as_deref().map(|text| cloth(Field::ElasticWidth, text)).transpose()?;
    let thick = cloth_of.and_then(|cloth| cloth.mass).is_some_and(|mass| mass >= THICK_FROM);
    let text = args.elastic_width.as_deref().unwrap_or_default();
    let wrong = |error| Wrong::new(Field::ElasticWidth, text, Why::Making(error));
    Ok(sized.casing(kind, width, (args.stitched, thick), unit).map_err(wrong)?)
}

fn cord(args: &SizeArgs, sized: &mut Sized, unit: Unit) -> Result<(), Error> {
    let (Some(edge), Some(width)) = (&args.cord, &args.cord_width) else { return Ok(()) };
    let wanted = CordWanted {
        edge: cloth(Field::Cord, edge)?,
        width: cloth(Field::CordWidth, width)?,
        fastened: if args.cord_tied { Fastened::Tied } else { Fastened::Stops },
        for_child: args.child,
    };
    let wrong = |error| match error {
        MakingError::Width => Wrong::new(Field::CordWidth, width, Why::Making(error)),
        _ => Wrong::new(Field::Cord, edge, Why::Making(error)),
    };
    Ok(sized.cord(&wanted, unit).map_err(wrong)?)
}

fn zip(args: &SizeArgs, cloth_of: Option<&SizedCloth>, sized: &mut Sized, unit: Unit) -> Result<(), Error> {
    let Some(text) = &args.zip else { return Ok(()) };
    let edge = typed::zip_edge(text, args.zip_neck.as_deref(), args.zip_hem.as_deref())?;
    let wanted = ZipWanted {
        edge,
        ends: args.zip_ends.unwrap_or_else(|| ZipEnds::usual(args.kind.map(GarmentKind::usual), edge.cut)),
        garment: args.kind,
        growth: cloth_of.and_then(|cloth| cloth.growth),
        by_inch: input::unit_of(text).unwrap_or(unit) == Unit::Inch,
    };
    Ok(sized.zip(&wanted, unit).map_err(|error| Wrong::new(Field::Zip, text, Why::Making(error)))?)
}

/// A reduction below 100 %.
fn reduction(text: &str) -> Result<Reduction, Wrong> {
    let limit = Limit::parse(text, Unit::Mm).map_err(|error| Wrong::new(Field::Reduce, text, Why::Limit(error)))?;
    Reduction::new(limit.ratio()).ok_or_else(|| Wrong::new(Field::Reduce, text, Why::NothingLeft))
}
