//! What is known of a cloth, as the core takes it for sewing.

use tenter_core::making::care::{Described, Fibre};
use tenter_core::making::handling::{Cloth, Weave};
use tenter_core::making::pairing::SeamEdge;
use tenter_core::making::washing::{self, Washing};
use tenter_core::{Confidence, Construction, Demand, Evaluation, Figure, Figures, Grain};

use super::Stock;
use crate::input::making;
use crate::log::{Fabric, Tag};

/// What is known of a cloth, as the core takes it.
#[must_use]
pub fn cloth(fabric: &Fabric, stock: &Stock) -> Cloth {
    let stretch = |grain| stretch(fabric, grain, stock).ok();
    let grown = |grain| Some(figures(fabric, grain, stock)?.rest?.growth.ratio);
    let growth = [Grain::Lengthwise, Grain::Crosswise, Grain::Bias].into_iter().filter_map(grown).max();
    let described = fabric.described();
    Cloth {
        construction: fabric.construction,
        mass: fabric.mass.and_then(|mass| u16::try_from(mass.whole_g_per_m2()).ok()),
        weave: weave(&described),
        finish: described.finish(),
        elastane: described.fibres().has(Fibre::Elastane),
        lengthwise: stretch(Grain::Lengthwise),
        crosswise: stretch(Grain::Crosswise),
        bias: stretch(Grain::Bias),
        growth,
    }
}

/// How a cloth is woven, by the words of its name and fibre: nobody is asked for it.
fn weave(described: &Described<'_>) -> Weave {
    let says = |words: &[&str]| words.iter().any(|word| described.says(word));
    match described.construction {
        Construction::Woven if says(&["denim"]) => Weave::Denim,
        Construction::Woven if says(&["canvas", "duck", "sailcloth"]) => Weave::Canvas,
        _ => Weave::Ordinary,
    }
}

/// What is known of a cloth along a seam.
///
/// # Errors
///
/// A grain that was not pulled.
pub fn edge(fabric: &Fabric, grain: Grain, stock: &Stock) -> Result<SeamEdge, NotPulled> {
    let figures = figures(fabric, grain, stock).ok_or_else(|| not_pulled(fabric, grain))?;
    let washing = at_wash(fabric, grain).to_come();
    let growth = figures.rest.map(|rest| rest.growth);
    Ok(SeamEdge { construction: fabric.construction, growth, washing, ..SeamEdge::new(figures.stretch) })
}

/// The stretch of a cloth along a grain.
///
/// # Errors
///
/// A grain that was not pulled.
pub fn stretch(fabric: &Fabric, grain: Grain, stock: &Stock) -> Result<Figure, NotPulled> {
    figures(fabric, grain, stock).map(|figures| figures.stretch).ok_or_else(|| not_pulled(fabric, grain))
}

fn figures(fabric: &Fabric, grain: Grain, stock: &Stock) -> Option<Figures> {
    stock.measured(fabric, grain)?.figures()
}

/// What the tests of a grain amount to, where nothing is asked.
#[must_use]
pub fn judged(fabric: &Fabric, grain: Grain, stock: &Stock) -> Option<Evaluation> {
    stock.measured(fabric, grain)?.judge(&Demand::default(), None, Confidence::default()).ok()
}

/// What the newest washing marks along a grain say.
#[must_use]
pub fn washing(fabric: &Fabric, grain: Grain) -> Option<Figure> {
    let marks = fabric.wash_marks(grain)?;
    washing::change(marks.before, marks.after, making::scale(&marks).ok()?).ok()
}

/// How a cloth stands to its first wash along a grain.
#[must_use]
pub fn at_wash(fabric: &Fabric, grain: Grain) -> Washing {
    Washing::of(&fabric.described(), fabric.washed, washing(fabric, grain), grain)
}

/// A grain of a cloth that was not pulled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotPulled {
    /// The tag of the cloth.
    pub tag: Tag,
    /// The grain.
    pub grain: Grain,
}

/// That a grain was not pulled.
#[must_use]
pub const fn not_pulled(fabric: &Fabric, grain: Grain) -> NotPulled {
    NotPulled { tag: fabric.tag, grain }
}
