//! The answer: does this cloth meet what is asked, how sure is that, and what would settle it.

use heapless::Vec;

use crate::answer::chance::Question;
use crate::answer::confidence::Confidence;
use crate::answer::doubt::{self, Doubt, MAX_DOUBTS};
use crate::answer::figures::{Figures, Readings};
use crate::answer::note::{self, Note};
use crate::answer::settle::{self, Settle};
use crate::answer::verdict::Answer;
use crate::number::words;
use crate::reading::limit::{Demand, Limit};
use crate::reading::pull_test::{Grain, PullTest, TestError};
use crate::statistics::scatter::Scatter;

/// The figure that a part of a demand asks about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Ask {
    /// Stretch.
    Stretch,
    /// Growth at the longest rest.
    Growth,
    /// Recovery at the longest rest.
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
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
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
    /// The chance that the true figure conforms, 0 to 1; none where it was not measured.
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
    /// What is known of the pull-to-pull scatter beforehand.
    pub scatter: Scatter,
}

/// Everything a pull test says about a demand.
///
/// ```
/// use tenter_core::{Answer, Demand, Evaluation, Grain, Length, PullTest, Range, Rules, Unit};
///
/// let mut test = PullTest::new(Length::from_mm(250), Grain::Crosswise).unwrap();
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
        let readings = Readings::of(test, rules.scatter)?;
        let figures = readings.figures();
        let mut open: Vec<Question, 4> = Vec::new();
        let parts = parts(&readings, test.grain(), demand, rules, |question| {
            let _ = open.push(question); // Room for every part.
        });
        let answer = parts.iter().map(|part| part.answer).reduce(Answer::worse);
        let settle = match answer {
            Some(Answer::Close) => settle::settle(test, &open, rules.confidence),
            _ => None,
        };
        let notes = note::notes(test, &figures, rules);
        let evaluation = Self { figures, parts, answer, settle, notes, doubts: Vec::new() };
        Ok(evaluation.with_doubts(doubt::impossible(test).as_slice()))
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
        for doubt in doubts {
            if !self.doubts.contains(doubt) {
                let _ = self.doubts.push(*doubt); // Some doubts are as good as all.
            }
        }
        if !self.doubts.is_empty() {
            self.answer = self.answer.map(Answer::doubted);
            self.settle = None;
            for part in &mut self.parts {
                part.answer = part.answer.doubted();
            }
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

/// The parts of an [`Evaluation`] and nothing else, at a third of the cost: for going through a whole stash.
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
    let readings = Readings::of(test, rules.scatter)?;
    let mut parts = parts(&readings, test.grain(), demand, rules, |_| ());
    if doubt::impossible(test).is_some() {
        for part in &mut parts {
            part.answer = part.answer.doubted();
        }
    }
    Ok(parts)
}

/// The parts of a demand, each answered; those too close to call are handed to `open` too.
fn parts(
    readings: &Readings,
    grain: Grain,
    demand: &Demand,
    rules: &Rules,
    mut open: impl FnMut(Question),
) -> Vec<Part, 4> {
    let stretch = demand.stretch(grain);
    let asked = [
        (Ask::Stretch, Side::AtLeast, stretch.at_least),
        (Ask::Stretch, Side::AtMost, stretch.at_most),
        (Ask::Growth, Side::AtMost, demand.growth_at_most),
        (Ask::Recovery, Side::AtLeast, demand.recovery_at_least),
    ];
    let mut parts: Vec<Part, 4> = Vec::new();
    for (ask, side, limit) in asked {
        let Some(limit) = limit else { continue };
        let question = question(readings, ask, limit);
        let (answer, chance) = answer(question.as_ref(), side, rules.confidence);
        let _ = parts.push(Part { ask, side, limit, answer, chance }); // Room for every part.
        if let (Answer::Close, Some(question)) = (answer, question) {
            open(question);
        }
    }
    parts
}

fn question(readings: &Readings, ask: Ask, limit: Limit) -> Option<Question> {
    let limit = limit.ratio();
    match ask {
        Ask::Stretch => Some(Question::stretch_at_least(readings, limit)),
        Ask::Growth => readings.rest.map(|rest| Question::growth_at_least(readings, &rest, limit)),
        Ask::Recovery => {
            let rest = readings.rest.filter(|rest| rest.extended_sum > rest.readings * readings.gauge)?;
            Some(Question::recovery_at_least(readings, &rest, limit))
        }
    }
}

fn answer(question: Option<&Question>, side: Side, confidence: Confidence) -> (Answer, Option<f32>) {
    let Some(at_least) = question.map(Question::chance) else {
        return (Answer::Unknown, None);
    };
    let (chance, no) = match side {
        Side::AtLeast => (at_least, Answer::Short),
        Side::AtMost => (1.0 - at_least, Answer::Over),
    };
    (confidence.judge(chance, no), Some(chance))
}
