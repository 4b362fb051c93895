//! A pull test that was stored, with its answer.

use std::borrow::Cow;

use tenter_core::{Answer, Evaluation, Figure, TestError};

use super::check::{Checked, next};
use super::cloth::{Disagreement, TrustOrigin};
use super::measured::Measured;
use crate::input::CheckInput;
use crate::log::{Fabric, Hands, Here, Id, People, StoredTest};

/// A stored test with its answer.
#[derive(Debug)]
pub struct Pulled {
    /// The cloth it belongs to.
    pub fabric: Fabric,
    /// The test, as it is in the log.
    pub test: StoredTest,
    /// The name of who pulled it, where that is known.
    pub by: Option<String>,
    /// What the test says by itself; what to do next, and what the cloth suits, come from all tests where others count.
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
    /// What the cloth is judged as now, by all of them.
    pub evaluation: Evaluation,
    /// Whether this one does not count among them, since it is doubtful.
    pub left_out: bool,
    /// Where they disagree.
    pub disagrees: Option<Disagreement>,
}

impl Together {
    /// Judges the test with the others that count; none where there are no others.
    fn of(measured: &Measured, test: &StoredTest, input: &CheckInput) -> Option<Self> {
        let left_out = !measured.tests.iter().any(|counted| counted.stored.id == test.id);
        if measured.tests.len() < 2 && !left_out {
            return None;
        }
        // Nobody knows when this was first asked: each day after the first is taken as a further look.
        let first = measured.tests.first().map(|first| first.stored.said.pulled);
        let evaluation = measured.judge(&input.demand, first, input.rules.confidence).ok()?;
        let disagrees = Disagreement::of(measured, evaluation.contradicts);
        Some(Self { tests: measured.tests.len(), evaluation, left_out, disagrees })
    }

    /// The stretch that they amount to.
    #[must_use]
    pub const fn stretch(&self) -> &Figure {
        &self.evaluation.figures.stretch
    }

    /// How the cloth is judged; never plainly where the tests disagree. None where nothing was asked and they agree.
    #[must_use]
    pub fn answer(&self) -> Option<Answer> {
        if self.disagrees.is_some() { Some(Answer::Close) } else { self.evaluation.answer }
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
        (pooled, people): (&Hands, &People),
        here: Here,
    ) -> Result<Option<Self>, TestError> {
        let Some(test) = tests.iter().find(|test| test.id == id) else { return Ok(None) };
        let construction = fabric.construction;
        input.rules.construction = construction;
        let measured = Measured::of(fabric, tests, test.said.test.grain(), pooled, here);
        let hand = measured.as_ref().map_or(Cow::Borrowed(pooled), |measured| measured.hand(pooled));
        input.rules.scatter = hand.scatter_for(test.said.pulled_by, construction, &input.test);
        let repeatability = TrustOrigin::of(construction, &hand, &test.said);
        let mut checked = Checked::of(input)?;
        let together = measured.as_ref().and_then(|measured| Together::of(measured, test, &checked.input));
        if let (Some(together), Some(measured)) = (&together, &measured) {
            let agree = together.disagrees.is_none();
            checked.next = if agree { next(&checked.input, &together.evaluation) } else { Vec::new() };
            checked.suits = measured.suits(checked.input.rules.confidence);
            checked.suits.reverse();
        }
        let by = people.name(test.said.pulled_by).map(str::to_owned);
        Ok(Some(Self { fabric: fabric.clone(), test: test.clone(), by, checked, repeatability, together }))
    }

    /// What the cloth is judged as now: by all tests that count.
    #[must_use]
    pub fn answer(&self) -> Option<Answer> {
        self.together.as_ref().map_or(self.checked.evaluation.answer, Together::answer)
    }
}
