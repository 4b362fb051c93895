//! What is known of a cloth, as the core takes it for sewing.

use tenter_core::making::handling::{Cloth, Weight};
use tenter_core::making::pairing::Edge;
use tenter_core::making::washing::{self, Washing};
use tenter_core::{Figure, Figures, Grain};

use super::Stock;
use crate::input::making;
use crate::log::{Fabric, MassPerArea};

/// Below this a cloth counts as light, from the other on as heavy, in g/m²: the tool's own.
const LIGHT_UNDER: f64 = 120.0;
const HEAVY_FROM: f64 = 280.0;

/// What is known of a cloth, as the core takes it.
#[must_use]
pub fn cloth(fabric: &Fabric, stock: &Stock) -> Cloth {
    let stretch = |grain| stretch(fabric, grain, stock).ok();
    let grown = |grain| Some(figures(fabric, grain, stock)?.rest?.growth.ratio);
    let growth = [Grain::Lengthwise, Grain::Crosswise, Grain::Bias].into_iter().filter_map(grown).max();
    Cloth {
        construction: fabric.construction,
        weight: match fabric.mass.map(MassPerArea::g_per_m2) {
            Some(mass) if mass < LIGHT_UNDER => Weight::Light,
            Some(mass) if mass >= HEAVY_FROM => Weight::Heavy,
            _ => Weight::Medium,
        },
        lengthwise: stretch(Grain::Lengthwise),
        crosswise: stretch(Grain::Crosswise),
        bias: stretch(Grain::Bias),
        growth,
    }
}

/// What is known of a cloth along a seam.
///
/// # Errors
///
/// A grain that was not pulled.
pub fn edge(fabric: &Fabric, grain: Grain, stock: &Stock) -> Result<Edge, NotPulled> {
    let figures = figures(fabric, grain, stock).ok_or_else(|| not_pulled(fabric, grain))?;
    let washing = at_wash(fabric, grain).to_come();
    Ok(Edge { stretch: figures.stretch, growth: figures.rest.map(|rest| rest.growth), washing })
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
    pub tag: u16,
    /// The grain.
    pub grain: Grain,
}

/// That a grain was not pulled.
#[must_use]
pub const fn not_pulled(fabric: &Fabric, grain: Grain) -> NotPulled {
    NotPulled { tag: fabric.tag, grain }
}
