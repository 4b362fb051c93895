//! The waist of what is drawn on: it passes the hips.

use tenter_core::making::elastic::{Edging, Kind};
use tenter_core::making::garment::Detail;
use tenter_core::making::sizing::Reach;
use tenter_core::{Answer, Figure, Grain, Length, Unit};

use super::PlannedGarment;
use crate::finding::fit::known;
use crate::finding::size::{Passes, Size};

/// How wide the waist edge must be before anything draws it in.
#[derive(Debug, Clone, Copy)]
pub struct WaistEdge {
    /// The hips.
    pub hips: Length,
    /// The least width of the edge.
    pub least: Length,
    /// How far the cloth gives round the body; none where nobody pulled it that way.
    pub gives: Option<Figure>,
    /// The unit in which the hips were said.
    pub unit: Unit,
}

impl WaistEdge {
    /// The edge of what is drawn on at the waist; none where no elastic says how wide the hips are.
    pub(super) fn of(made: &PlannedGarment<'_>) -> Option<Self> {
        let (passes, unit) = over_hips(made)?;
        let hips = passes.widest;
        let body = made.body().filter(|_| made.details().has(Detail::ElasticWaist))?;
        let gives = known::stretch(body.fabric, Grain::Crosswise, made.wanted.stock).ok();
        let step = if unit == Unit::Inch { Length::from_inch_64ths(16) } else { Length::from_mm(5) };
        let passes = |edge: Length| {
            let reach = gives.and_then(|gives| Reach::of(hips, edge, gives, made.wanted.confidence).ok());
            edge >= hips || reach.is_some_and(|reach| reach.answer == Answer::Meets)
        };
        // The narrowest that passes for sure, in steps that can be read off a tape.
        let (mut short, mut least) = (0, hips.steps().div_euclid(step.steps()).saturating_add(1));
        while least.saturating_sub(short) > 1 {
            let middle = short.saturating_add(least).div_euclid(2);
            if passes(Length::from_steps(middle.saturating_mul(step.steps()))) {
                least = middle;
            } else {
                short = middle;
            }
        }
        Some(Self { hips, least: Length::from_steps(least.saturating_mul(step.steps())).min(hips), gives, unit })
    }
}

/// The elastic at the waist of which it was said what it passes over.
pub(super) fn over_hips(made: &PlannedGarment<'_>) -> Option<(Passes, Unit)> {
    made.wanted.notions.lines.iter().find_map(|line| match &line.size {
        Size::Elastic { kind, recommended, passes: Some(passes), .. }
            if *kind != Kind::Ribbing && matches!(recommended.place, Edging::Waist | Edging::SnugWaist) =>
        {
            Some((*passes, line.unit))
        }
        _ => None,
    })
}
