//! A grain pulled again: which test came before, and whether the two agree.

use tenter_core::{Confidence, Figure, Figures};

use super::ByConstruction;
use super::fabric::Construction;
use super::tested::StoredTest;

/// The test that counted on the same grain before `test` did, among tests of one cloth.
#[must_use]
pub fn before<'t>(tests: &'t [StoredTest], test: &StoredTest) -> Option<&'t StoredTest> {
    let grain = test.said.test.grain();
    let earlier =
        |other: &&StoredTest| !other.dropped && other.said.test.grain() == grain && other.order() < test.order();
    tests.iter().filter(earlier).max_by_key(|other| other.order())
}

/// By how many points the stretch differs from that of the test `before`, where that is more than both figures are
/// worth: the half-widths of their intervals, added in quadrature.
#[must_use]
pub fn disagreement(
    stretch: &Figure,
    before: &StoredTest,
    pooled: &ByConstruction,
    construction: Construction,
    confidence: Confidence,
) -> Option<f32> {
    let scatter = pooled.scatter_for(construction, &before.said.test);
    let old = Figures::of(&before.said.test, scatter).ok()?.stretch;
    let apart = stretch.ratio.percent_f32() - old.ratio.percent_f32();
    let worth = stretch.half_width(confidence).hypot(old.half_width(confidence));
    (apart.abs() > worth).then_some(apart)
}
