//! A pull test that was stored, with its answer.

use tenter_core::{Confidence, Demand, Figure, TestError};

use super::check::Checked;
use super::cloth::{Disagreement, TrustOrigin};
use super::measured::Measured;
use crate::input::CheckInput;
use crate::log::{ByConstruction, Fabric, Id, StoredTest};

/// A stored test with its answer.
#[derive(Debug)]
pub struct Pulled {
    /// The cloth it belongs to.
    pub fabric: Fabric,
    /// The test, as it is in the log.
    pub test: StoredTest,
    /// The answer.
    pub checked: Checked,
    /// How the ± was found.
    pub repeatability: TrustOrigin,
    /// What it amounts to with the other tests of its grain, where there are any.
    pub together: Option<Together>,
}

/// A test with the others of its grain.
#[derive(Debug)]
pub struct Together {
    /// How many they are, this one among them.
    pub tests: usize,
    /// The stretch that they amount to.
    pub stretch: Figure,
    /// Whether this one does not count among them, since it is doubtful.
    pub left_out: bool,
    /// Where they disagree.
    pub disagrees: Option<Disagreement>,
}

impl Together {
    fn of(fabric: &Fabric, test: &StoredTest, tests: &[StoredTest], pooled: &ByConstruction) -> Option<Self> {
        let measured = Measured::of(fabric, tests, test.said.test.grain(), pooled)?;
        let left_out = !measured.tests.iter().any(|counted| counted.stored.id == test.id);
        if measured.tests.len() < 2 && !left_out {
            return None;
        }
        let evaluation = measured.judge(&Demand::default(), None, Confidence::default()).ok()?;
        Some(Self {
            tests: measured.tests.len(),
            stretch: evaluation.figures.stretch,
            left_out,
            disagrees: Disagreement::of(&measured, &evaluation),
        })
    }
}

impl Pulled {
    /// Judges the test `id` among all `tests` of a cloth; none where it is not among them.
    ///
    /// # Errors
    ///
    /// Readings that no figure can be made of.
    pub fn of(
        fabric: &Fabric,
        id: Id,
        mut input: CheckInput,
        tests: &[StoredTest],
        pooled: &ByConstruction,
    ) -> Result<Option<Self>, TestError> {
        let Some(test) = tests.iter().find(|test| test.id == id) else { return Ok(None) };
        let construction = fabric.construction;
        input.rules.construction = construction;
        input.rules.scatter = pooled.scatter_for(construction, &input.test);
        let checked = Checked::of(input)?;
        let together = Together::of(fabric, test, tests, pooled);
        let repeatability = TrustOrigin::of(construction, pooled, &test.said.test);
        Ok(Some(Self { fabric: fabric.clone(), test: test.clone(), checked, repeatability, together }))
    }
}
