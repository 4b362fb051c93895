//! Ease, openings, elastic, cords and zips, as they were typed; nothing is stored.

use tenter_core::making::elastic::Fastened;
use tenter_core::making::error::MakingError;
use tenter_core::making::garment::GarmentKind;
use tenter_core::making::sizing::Reduction;
use tenter_core::making::zip::ZipEnds;
use tenter_core::{Confidence, Limit, Unit};

use crate::finding::size::{CordWanted, ElasticWanted, Sized, SizedCloth, ZipWanted};
use crate::input::size::{self as typed, TypedSize};
use crate::input::{self, Field, Why, Wrong, amount::cloth};

/// From this mass per area on, in g/m², a casing is deeper: where the trade calls a cloth medium-heavy (the tool's own).
const THICK_FROM: u16 = 250;

/// Everything that was asked; `cloth_of` goes round the body.
///
/// # Errors
///
/// What was typed wrong; here and below.
pub fn size(asked: &TypedSize, cloth_of: Option<&SizedCloth>, confidence: Confidence) -> Result<Sized, Wrong> {
    let unit = asked.unit();
    let mut sized = Sized::default();
    for (field, texts, opening) in [(Field::Girth, &asked.girth, false), (Field::Opening, &asked.opening, true)] {
        for text in texts {
            let girth = typed::girth(field, text)?;
            let judged = sized.girth(girth, opening, cloth_of, confidence, unit);
            judged.map_err(|error| Wrong::new(field, text, Why::Making(error)))?;
        }
    }
    if let Some(text) = &asked.reduce {
        sized.reduce(reduction(text)?, cloth_of.map(|cloth| cloth.stretch), confidence, unit);
    }
    if let Some(cloth) = cloth_of {
        sized.opacity(cloth, unit);
        sized.smaller(cloth, asked.kind, unit);
    }
    elastic(asked, cloth_of, &mut sized, confidence)?;
    cord(asked, &mut sized)?;
    zip(asked, cloth_of, &mut sized)?;
    Ok(sized)
}

fn elastic(
    asked: &TypedSize,
    cloth_of: Option<&SizedCloth>,
    sized: &mut Sized,
    confidence: Confidence,
) -> Result<(), Wrong> {
    let (Some(kind), Some(place), Some(measure)) = (asked.elastic, asked.place, &asked.measure) else { return Ok(()) };
    let unit = asked.unit();
    let must_pass = asked.widest.as_deref().map(|text| cloth(Field::Widest, text)).transpose()?;
    let gives = asked.gives.as_deref().map(|text| typed::exact(Field::Gives, text)).transpose()?;
    let wanted = ElasticWanted { kind, place, measure: cloth(Field::Measure, measure)?, must_pass, gives };
    let wrong = |error| Wrong::new(Field::Measure, measure, Why::Making(error));
    sized.elastic(&wanted, confidence, unit).map_err(wrong)?;
    let width = asked.elastic_width.as_deref().map(|text| cloth(Field::ElasticWidth, text)).transpose()?;
    let thick = cloth_of.and_then(|cloth| cloth.mass).is_some_and(|mass| mass >= THICK_FROM);
    let text = asked.elastic_width.as_deref().unwrap_or_default();
    let wrong = |error| Wrong::new(Field::ElasticWidth, text, Why::Making(error));
    sized.casing(kind, width, (asked.stitched, thick), unit).map_err(wrong)
}

fn cord(asked: &TypedSize, sized: &mut Sized) -> Result<(), Wrong> {
    let (Some(edge), Some(width)) = (&asked.cord, &asked.cord_width) else { return Ok(()) };
    let wanted = CordWanted {
        edge: cloth(Field::Cord, edge)?,
        width: cloth(Field::CordWidth, width)?,
        fastened: if asked.cord_tied { Fastened::Tied } else { Fastened::Stops },
        for_child: asked.child,
    };
    let wrong = |error| match error {
        MakingError::Width => Wrong::new(Field::CordWidth, width, Why::Making(error)),
        _ => Wrong::new(Field::Cord, edge, Why::Making(error)),
    };
    sized.cord(&wanted, asked.unit()).map_err(wrong)
}

fn zip(asked: &TypedSize, cloth_of: Option<&SizedCloth>, sized: &mut Sized) -> Result<(), Wrong> {
    let Some(text) = &asked.zip else { return Ok(()) };
    let (edge, unit) = (typed::zip_edge(text, asked.zip_neck.as_deref(), asked.zip_hem.as_deref())?, asked.unit());
    let wanted = ZipWanted {
        edge,
        ends: asked.zip_ends.unwrap_or_else(|| ZipEnds::usual(asked.kind.map(GarmentKind::usual), edge.cut)),
        garment: asked.kind,
        growth: cloth_of.and_then(|cloth| cloth.growth),
        by_inch: input::unit_of(text).unwrap_or(unit) == Unit::Inch,
    };
    sized.zip(&wanted, unit).map_err(|error| Wrong::new(Field::Zip, text, Why::Making(error)))
}

/// A reduction below 100 %.
fn reduction(text: &str) -> Result<Reduction, Wrong> {
    let limit = Limit::parse(text, Unit::Mm).map_err(|error| Wrong::new(Field::Reduce, text, Why::Limit(error)))?;
    Reduction::new(limit.ratio()).ok_or_else(|| Wrong::new(Field::Reduce, text, Why::NothingLeft))
}
