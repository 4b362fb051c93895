//! The answer: does this cloth meet what is asked, how sure is that, and what would settle it.

use heapless::Vec;

use crate::answer::bars::Looks;
use crate::answer::confidence::Confidence;
use crate::answer::doubt::{Context, Doubt, MAX_DOUBTS, implausible};
use crate::answer::figures::Figures;
use crate::answer::joint::{Sitting, WIDENINGS, Widening};
use crate::answer::judgement::{Judged, One, Ones};
use crate::answer::note::{self, Note};
use crate::answer::settle::Settle;
use crate::answer::verdict::Answer;
use crate::number::words;
use crate::reading::construction::Construction;
use crate::reading::limit::{Demand, Limit};
use crate::reading::pull_test::{PullTest, TestError};
use crate::statistics::scatter::Scatter;

/// The figure that a part of a demand asks about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Ask {
    /// Stretch.
    Stretch,
    /// Growth at the time that is asked.
    Growth,
    /// Recovery at the time that is asked.
    Recovery,
}

words!(Ask { Stretch => "stretch", Growth => "growth", Recovery => "recovery" });

/// On which side of a limit the figure must lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Side {
    /// The figure must reach the limit.
    AtLeast,
    /// The figure must not pass the limit.
    AtMost,
}

/// One thing that is asked, with its own answer.
///
/// ```
/// use tenter_core::{Answer, Demand, Evaluation, Grain, Length, PullTest, Range, Rules, Unit};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap().with_settling_pull(true);
/// test.add_pull(Length::from_mm(105)).unwrap();
/// let demand = Demand::for_grain(Grain::Crosswise, Range::parse("5%", Unit::Mm).unwrap());
/// let part = Evaluation::of(&test, &demand, &Rules::default()).unwrap().parts[0];
/// assert_eq!((part.answer, part.chance), (Answer::Close, Some(0.5)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Part {
    /// Which figure.
    pub ask: Ask,
    /// Which side of the limit.
    pub side: Side,
    /// The limit.
    pub limit: Limit,
    /// The answer to this part alone.
    pub answer: Answer,
    /// The chance that the true figure conforms, 0 to 1. None where it was not measured, and where the readings point to an answer
    /// that they cannot give: growth read early and over the limit, read late and within it, a first pull that falls short.
    pub chance: Option<f32>,
}

/// How answers are given.
///
/// ```
/// assert_eq!(tenter_core::Rules::default().confidence.percent().to_string(), "95.0");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Rules {
    /// How sure a plain yes or no must be, one-sided.
    pub confidence: Confidence,
    /// What is known of the scatter beforehand.
    pub scatter: Scatter,
    /// How the cloth is made, which says what a first pull is worth.
    pub construction: Construction,
    /// What was planned beforehand.
    pub looks: Looks,
}

/// Everything a pull test says about a demand.
///
/// ```
/// use tenter_core::{Answer, Demand, Evaluation, Grain, Length, PullTest, Range, Rules, Unit};
///
/// let mut test = PullTest::new(Length::from_mm(250), Grain::Crosswise).unwrap().with_settling_pull(true);
/// test.add_look(Length::from_mm(250)).unwrap();
/// for extended in [270, 271, 269] {
///     test.add_pull(Length::from_mm(extended)).unwrap();
/// }
/// let demand = Demand::for_grain(Grain::Crosswise, Range::parse("5%", Unit::Mm).unwrap());
/// let evaluation = Evaluation::of(&test, &demand, &Rules::default()).unwrap();
/// assert_eq!(evaluation.answer, Some(Answer::Meets));
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Evaluation {
    /// The figures.
    pub figures: Figures,
    /// What is asked along the grain that was pulled, part by part.
    pub parts: Vec<Part, 4>,
    /// The worst of the parts; none where nothing is asked.
    pub answer: Option<Answer>,
    /// What would turn *close* into an answer; none where nothing is close or nothing would.
    pub settle: Option<Settle>,
    /// What to know about these readings.
    pub notes: Vec<Note, { note::COUNT }>,
    /// Reasons not to believe these readings; where there is one, no part has a plain answer.
    pub doubts: Vec<Doubt, MAX_DOUBTS>,
    /// The pull, counted from 0, that lies far from its fellows and was left out; enough were left.
    pub left_out: Option<u8>,
    /// What the figures were widened for.
    pub widened: Vec<Widening, WIDENINGS>,
    /// How many sessions the figures rest on: [days of one hand](Sitting::shares_session_of).
    pub days: u8,
    /// The test, counted from 0 in the order given, that the others contradict: its stretch or growth lies too far off.
    pub contradicts: Option<u8>,
}

impl Evaluation {
    /// Computes figures, answers, notes and what would settle it.
    ///
    /// # Errors
    ///
    /// [`TestError::NoPull`] without a pull.
    ///
    /// ```
    /// use tenter_core::{Demand, Evaluation, Grain, Length, PullTest, Rules};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(105))?;
    /// let nothing_asked = Evaluation::of(&test, &Demand::default(), &Rules::default())?;
    /// assert_eq!(nothing_asked.answer, None);
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    pub fn of(test: &PullTest, demand: &Demand, rules: &Rules) -> Result<Self, TestError> {
        Self::alone(test, demand, rules, &[])
    }

    /// The same with what speaks against it from outside the readings: what cloth can do, and what is asked. The one
    /// evaluation of a test that nobody stands by, for every front end.
    ///
    /// # Errors
    ///
    /// As [`of`](Self::of).
    ///
    /// ```
    /// use tenter_core::{Answer, Context, Demand, Evaluation, Grain, Length, PullTest, Range, Rules, Unit};
    ///
    /// // 10 cm to 26.7 cm, which is 10.5 in, for 5 %.
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(267))?;
    /// let demand = Demand::for_grain(Grain::Crosswise, Range::parse("5%", Unit::Cm).unwrap());
    /// let believed = Evaluation::believed(&test, &demand, &Rules::default(), &Context::default())?;
    /// assert_eq!(believed.answer, Some(Answer::Close));
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    pub fn believed(test: &PullTest, demand: &Demand, rules: &Rules, context: &Context) -> Result<Self, TestError> {
        let doubts = implausible(test, &Context { demand: Some(demand), ..*context });
        Self::alone(test, demand, rules, &doubts)
    }

    /// One judgement of several tests of one grain of a cloth in its present state, the newest last; at most
    /// [`MAX_SITTINGS`](crate::MAX_SITTINGS) of the newest count, and of them those that pulled the grain of the newest.
    /// Tests that [share a session](Sitting::shares_session_of) count as one day. The
    /// scatter of the rules is not used: each sitting has its own. A test that is doubted does not count beside one that
    /// is not.
    ///
    /// # Errors
    ///
    /// [`TestError::NoPull`] where no test has a pull.
    ///
    /// ```
    /// use tenter_core::{Demand, Evaluation, Grain, Length, PullTest, Rules, Sitting};
    ///
    /// let day = |extended| {
    ///     let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?.with_settling_pull(true);
    ///     test.add_pull(Length::from_mm(extended))?;
    ///     Ok::<_, tenter_core::TestError>(test)
    /// };
    /// let (monday, friday) = (day(108)?, day(110)?);
    /// let both = [Sitting::new(&monday), Sitting::new(&friday)];
    /// let evaluation = Evaluation::of_all(&both, &Demand::default(), &Rules::default())?;
    /// assert_eq!((evaluation.days, evaluation.contradicts), (2, None));
    /// let percent = evaluation.figures.stretch.percent();
    /// assert!(percent > 8.9 && percent < 9.0, "the larger one scatters more: {percent}");
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    pub fn of_all(sittings: &[Sitting<'_>], demand: &Demand, rules: &Rules) -> Result<Self, TestError> {
        let mut ones = Ones::new();
        Ok(Self::doubted(Judged::of(sittings, demand, rules, &mut ones)?, demand, rules, &[]))
    }

    /// One test with further doubts.
    fn alone(test: &PullTest, demand: &Demand, rules: &Rules, doubts: &[Doubt]) -> Result<Self, TestError> {
        let one = One::alone(test.pulled()?, demand, rules);
        Ok(Self::doubted(Judged::alone(&one), demand, rules, doubts))
    }

    /// What was judged with further doubts.
    fn doubted(judged: Judged<'_, '_>, demand: &Demand, rules: &Rules, doubts: &[Doubt]) -> Self {
        let mut all = Vec::new();
        add(judged.doubts(), &mut all);
        add(doubts, &mut all);
        let mut open = Vec::new();
        let mut parts = judged.parts(demand, rules, &mut open);
        let is_doubted = !all.is_empty();
        if is_doubted {
            doubt(&mut parts);
        }
        let answer = worst(&parts);
        let settles = answer == Some(Answer::Close) && !is_doubted;
        Self {
            settle: if settles { judged.settle(&open, demand, rules) } else { None },
            parts,
            answer,
            notes: note::notes(judged.newest().test, &judged.figures, rules),
            doubts: all,
            left_out: judged.left_out(),
            widened: judged.widened(),
            days: judged.days(),
            contradicts: judged.contradicts,
            figures: judged.figures,
        }
    }

    /// The same with further doubts, such as those of [`implausible`](crate::implausible). Where there is any doubt,
    /// every plain answer becomes *close*, and nothing but reading again would settle it.
    ///
    /// ```
    /// use tenter_core::{Answer, Context, Demand, Evaluation, Grain, Length, PullTest, Range, Rules, Unit, implausible};
    ///
    /// // 10 cm to 10.5 in, for 5 %.
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::parse("10.5in", Unit::Cm).unwrap())?;
    /// let demand = Demand::for_grain(Grain::Crosswise, Range::parse("5%", Unit::Cm).unwrap());
    /// let evaluation = Evaluation::of(&test, &demand, &Rules::default())?;
    /// assert_eq!(evaluation.answer, Some(Answer::Meets));
    /// let doubts = implausible(&test, &Context { demand: Some(&demand), ..Context::default() });
    /// assert_eq!(evaluation.with_doubts(&doubts).answer, Some(Answer::Close));
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub fn with_doubts(mut self, doubts: &[Doubt]) -> Self {
        add(doubts, &mut self.doubts);
        if !self.doubts.is_empty() {
            self.settle = None;
            doubt(&mut self.parts);
            self.answer = worst(&self.parts);
        }
        self
    }

    /// The part that decides the answer, as [`Answer::outweighs`] has it. `None` where nothing is asked.
    ///
    /// ```
    /// use tenter_core::{Demand, Evaluation, Grain, Length, Limit, PullTest, Range, Rules, Unit};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
    /// test.add_pull(Length::from_mm(106)).unwrap();
    /// let demand = Demand::for_grain(Grain::Crosswise, Range::parse("5%..20%", Unit::Mm).unwrap());
    /// let evaluation = Evaluation::of(&test, &demand, &Rules::default()).unwrap();
    /// assert_eq!(evaluation.deciding().unwrap().limit, Limit::milli_percent(5_000).unwrap());
    /// ```
    #[must_use]
    pub fn deciding(&self) -> Option<&Part> {
        self.parts.iter().reduce(
            |had, part| {
                if part.answer.outweighs(part.chance, (had.answer, had.chance)) { part } else { had }
            },
        )
    }
}

/// Adds what is not among them.
fn add(doubts: &[Doubt], all: &mut Vec<Doubt, MAX_DOUBTS>) {
    for doubt in doubts {
        if !all.contains(doubt) {
            let _ = all.push(*doubt); // Some doubts are as good as all.
        }
    }
}

/// Where there is any doubt, no part has a plain answer.
fn doubt(parts: &mut [Part]) {
    for part in parts {
        part.answer = part.answer.doubted();
    }
}

fn worst(parts: &[Part]) -> Option<Answer> {
    parts.iter().map(|part| part.answer).reduce(Answer::worse)
}

/// The parts of an [`Evaluation`] and nothing else, at a part of the cost: for going through a whole stash.
///
/// # Errors
///
/// [`TestError::NoPull`] without a pull.
///
/// ```
/// use tenter_core::{Demand, Evaluation, Grain, Length, PullTest, Range, Rules, Unit, judge};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// test.add_pull(Length::from_mm(107))?;
/// let demand = Demand::for_grain(Grain::Crosswise, Range::parse("5%", Unit::Mm).unwrap());
/// let rules = Rules::default();
/// assert_eq!(judge(&test, &demand, &rules)?, Evaluation::of(&test, &demand, &rules)?.parts);
/// # Ok::<(), tenter_core::TestError>(())
/// ```
pub fn judge(test: &PullTest, demand: &Demand, rules: &Rules) -> Result<Vec<Part, 4>, TestError> {
    let one = One::alone(test.pulled()?, demand, rules);
    let judged = Judged::alone(&one);
    let mut parts = judged.parts(demand, rules, &mut Vec::new());
    if !judged.doubts().is_empty() {
        doubt(&mut parts);
    }
    Ok(parts)
}
