//! A pull test that was stored, with its answer.

use tenter_core::TestError;

use super::check::Checked;
use super::cloth::{Disagreement, TrustOrigin};
use crate::input::CheckInput;
use crate::log::{ByConstruction, Fabric, Id, StoredTest, retest};

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
    /// The test before it, where the two disagree.
    pub disagrees: Option<Disagreement>,
    /// Whether a test pulled later counts instead.
    pub older: bool,
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
        let stretch = &checked.evaluation.figures.stretch;
        let confidence = checked.input.rules.confidence;
        let disagrees = retest::before(tests, test)
            .and_then(|before| Disagreement::of(stretch, before, pooled, construction, confidence));
        let older = tests.iter().any(|other| retest::before(tests, other).is_some_and(|before| before.id == id));
        let repeatability = TrustOrigin::of(construction, pooled, &test.said.test);
        Ok(Some(Self { fabric: fabric.clone(), test: test.clone(), checked, repeatability, disagrees, older }))
    }
}
