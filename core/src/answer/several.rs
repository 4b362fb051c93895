//! Several demands put to the same tests: the readings are gone through once.

use heapless::Vec;

use crate::answer::bars::Looks;
use crate::answer::doubt::{Doubt, MAX_DOUBTS};
use crate::answer::evaluation::{Part, Rules};
use crate::answer::figures::Figures;
use crate::answer::joint::Sitting;
use crate::answer::judgement::{Judged, Ones};
use crate::answer::rest::Pick;
use crate::answer::verdict::Answer;
use crate::reading::limit::Demand;
use crate::reading::pull_test::TestError;

/// What tests of one grain say of a demand: an [`Evaluation`](crate::Evaluation) without what would settle it and what to
/// know about the readings, at a part of the cost.
///
/// ```
/// use tenter_core::{Answer, Demand, Grain, Length, Looks, PullTest, Range, Rules, Sitting, Unit, judge_each};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// test.add_pull(Length::from_mm(140))?;
/// let asked = ["5%", "90%"].map(|range| Range::parse(range, Unit::Mm).unwrap());
/// let asked = asked.map(|range| (Demand::for_grain(Grain::Crosswise, range), Looks::default()));
/// let mut answers = Vec::new();
/// judge_each(&[Sitting::new(&test)], &asked, &Rules::default(), |_, judgement| answers.push(judgement.answer()))?;
/// assert_eq!(answers, [Some(Answer::Meets), Some(Answer::Close)]);
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Judgement {
    /// The figures.
    pub figures: Figures,
    /// What is asked along the grain that was pulled, part by part.
    pub parts: Vec<Part, 4>,
    /// Reasons not to believe these readings; where there is one, no part has a plain answer.
    pub doubts: Vec<Doubt, MAX_DOUBTS>,
    /// The test, counted from 0 in the order given, that the others contradict.
    pub contradicts: Option<u8>,
}

impl Judgement {
    /// The worst of the parts; none where nothing is asked.
    ///
    /// ```
    /// use tenter_core::{Demand, Grain, Length, Looks, PullTest, Rules, Sitting, judge_each};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(105))?;
    /// let nothing = [(Demand::default(), Looks::default())];
    /// judge_each(&[Sitting::new(&test)], &nothing, &Rules::default(), |_, said| assert_eq!(said.answer(), None))?;
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub fn answer(&self) -> Option<Answer> {
        self.parts.iter().map(|part| part.answer).reduce(Answer::worse)
    }

    /// The same with further doubts, such as those of [`implausible`](crate::implausible): where there is any, every plain
    /// answer becomes *close*.
    ///
    /// ```
    /// use tenter_core::{Answer, Demand, Doubt, Grain, Length, Looks, PullTest, Range, Rules, Sitting, Unit, judge_each};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(140))?;
    /// let asked = [(Demand::for_grain(Grain::Crosswise, Range::parse("5%", Unit::Mm).unwrap()), Looks::default())];
    /// judge_each(&[Sitting::new(&test)], &asked, &Rules::default(), |_, said| {
    ///     assert_eq!(said.answer(), Some(Answer::Meets));
    ///     assert_eq!(said.with_doubts(&[Doubt::UnusualStretch]).answer(), Some(Answer::Close));
    /// })?;
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub fn with_doubts(mut self, doubts: &[Doubt]) -> Self {
        for doubt in doubts {
            if !self.doubts.contains(doubt) {
                let _ = self.doubts.push(*doubt); // Some doubts are as good as all.
            }
        }
        if !self.doubts.is_empty() {
            self.parts.iter_mut().for_each(|part| part.answer = part.answer.doubted());
        }
        self
    }
}

/// Puts several demands, each with what was planned when it was put, to the tests of one grain, as
/// [`Evaluation::of_all`](crate::Evaluation::of_all) puts one; hands out what they say of each with its place in the list.
/// The places need not come in order.
///
/// # Errors
///
/// [`TestError::NoPull`] where no test has a pull.
///
/// ```
/// use tenter_core::{Demand, Length, Looks, Grain, PullTest, Rules, Sitting, TestError, judge_each};
///
/// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// let asked = [(Demand::default(), Looks::default())];
/// let judged = judge_each(&[Sitting::new(&test)], &asked, &Rules::default(), |_, _| ());
/// assert_eq!(judged, Err(TestError::NoPull));
/// # Ok::<(), TestError>(())
/// ```
pub fn judge_each(
    sittings: &[Sitting<'_>],
    asked: &[(Demand, Looks)],
    rules: &Rules,
    mut each: impl FnMut(usize, Judgement),
) -> Result<(), TestError> {
    for (first, (demand, _)) in asked.iter().enumerate() {
        let pick = Pick::of(demand);
        let alike = |(_, (other, _)): &(usize, &(Demand, Looks))| Pick::of(other) == pick;
        if asked.iter().enumerate().take(first).any(|one| alike(&one)) {
            continue; // Done with the first of its kind.
        }
        let mut ones = Ones::new();
        let judged = Judged::of(sittings, demand, rules, &mut ones)?;
        for (place, (demand, looks)) in asked.iter().enumerate().skip(first).filter(alike) {
            let parts = judged.parts(demand, &Rules { looks: *looks, ..*rules }, &mut Vec::new());
            let (figures, contradicts) = (judged.figures, judged.contradicts);
            let judgement = Judgement { figures, parts, doubts: Vec::new(), contradicts };
            each(place, judgement.with_doubts(judged.doubts()));
        }
    }
    Ok(())
}
