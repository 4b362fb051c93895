//! What the log has measured of one grain of a cloth: all tests that count, judged together.
//!
//! The one place that decides which tests count. A retired test does not. A doubtful one does not beside one that is not
//! doubted, and alone it never gives a plain answer. A test from before the cloth was washed counts for less.

use jiff::Timestamp;
use tenter_core::{
    Answer, Confidence, Construction, Context, Demand, Doubt, Evaluation, Figures, Grain, Length, Limit, Looks,
    MAX_SITTINGS, Range, Rebound, Rules, SUITS, Scatter, Sitting, Suit, TestError, Widening, implausible,
};

use crate::log::{ByConstruction, Fabric, StoredTest};

/// A test that counts.
#[derive(Clone, Debug)]
pub struct Counted {
    /// The test.
    pub stored: StoredTest,
    /// The scatter of the hand on this construction, the test's own pulls left out.
    pub scatter: Scatter,
    /// Whether the cloth was washed since.
    pub before_wash: bool,
}

impl Counted {
    const fn sitting(&self) -> Sitting<'_> {
        Sitting { scatter: self.scatter, before_wash: self.before_wash, ..Sitting::new(&self.stored.said.test) }
    }

    /// Why its figures are widened.
    #[must_use]
    pub fn widened(&self) -> Vec<Widening> {
        let alone = Evaluation::of_all(&[self.sitting()], &Demand::default(), &Rules::default());
        alone.map(|alone| alone.widened.iter().copied().collect()).unwrap_or_default()
    }
}

/// The tests of one grain of a cloth that count.
#[derive(Clone, Debug)]
pub struct Measured {
    /// Those that count, the oldest first; never none.
    pub tests: Vec<Counted>,
    /// The tests that do not count, for what speaks against them.
    pub doubted: Vec<StoredTest>,
    construction: Construction,
    width: Option<Length>,
}

impl Measured {
    /// Of the tests of a cloth along a grain, the oldest first; none where nothing was pulled.
    #[must_use]
    pub fn of<'t>(
        fabric: &Fabric,
        tests: impl IntoIterator<Item = &'t StoredTest>,
        grain: Grain,
        pooled: &ByConstruction,
    ) -> Option<Self> {
        let live = tests.into_iter().filter(|stored| !stored.dropped && stored.said.test.grain() == grain);
        let mut tests: Vec<Counted> = live.map(|stored| Self::counted(fabric, stored, pooled)).collect();
        let mut measured =
            Self { tests: Vec::new(), doubted: Vec::new(), construction: fabric.construction, width: fabric.width };
        if tests.len() > 1 {
            let (sound, doubted): (Vec<_>, Vec<_>) =
                tests.into_iter().partition(|counted| measured.doubts_of(counted).is_empty());
            (tests, measured.doubted) = (sound, doubted.into_iter().map(|counted| counted.stored).collect());
            if tests.is_empty() {
                // Nothing but doubtful tests: the newest stands for them, and is doubted.
                tests.extend(measured.doubted.pop().map(|newest| Self::counted(fabric, &newest, pooled)));
            }
        }
        tests.drain(..tests.len().saturating_sub(MAX_SITTINGS));
        measured.tests = tests;
        (!measured.tests.is_empty()).then_some(measured)
    }

    fn counted(fabric: &Fabric, stored: &StoredTest, pooled: &ByConstruction) -> Counted {
        Counted {
            scatter: pooled.scatter_for(fabric.construction, &stored.said.test),
            before_wash: fabric.last_washed.is_some_and(|washed| stored.said.pulled < washed),
            stored: stored.clone(),
        }
    }

    /// What speaks against a test.
    fn doubts_of(&self, counted: &Counted) -> Vec<Doubt> {
        let context = Context { construction: Some(self.construction), cloth_width: self.width, ..Context::default() };
        let mut doubts: Vec<Doubt> = implausible(&counted.stored.said.test, &context).iter().copied().collect();
        let rules = Rules { construction: self.construction, ..Rules::default() };
        if let Ok(alone) = Evaluation::of_all(&[counted.sitting()], &Demand::default(), &rules) {
            doubts.extend(alone.doubts.iter().copied());
        }
        doubts
    }

    /// The newest of them.
    #[must_use]
    pub fn newest(&self) -> Option<&Counted> {
        self.tests.last()
    }

    /// The newest of those that read what was left after release; else the newest.
    #[must_use]
    pub fn newest_released(&self) -> Option<&Counted> {
        self.tests.iter().rev().find(|counted| !counted.stored.said.test.rests().is_empty()).or_else(|| self.newest())
    }

    /// Judges them together. A demand that was put at some time was put to the days there were then: a day after it is a
    /// further look, which needs more to be sure.
    ///
    /// # Errors
    ///
    /// [`TestError::NoPull`], which no stored test gives.
    pub fn judge(
        &self,
        demand: &Demand,
        put: Option<Timestamp>,
        confidence: Confidence,
    ) -> Result<Evaluation, TestError> {
        let sittings: Vec<Sitting<'_>> = self.tests.iter().map(Counted::sitting).collect();
        let before = self.tests.iter().filter(|one| put.is_none_or(|put| one.stored.said.pulled <= put)).count();
        let looks = Looks { days: u8::try_from(before).unwrap_or(u8::MAX).max(1), ..Looks::default() };
        let rules = Rules { confidence, construction: self.construction, looks, ..Rules::default() };
        let evaluation = Evaluation::of_all(&sittings, demand, &rules)?;
        let context = Context {
            construction: Some(self.construction),
            cloth_width: self.width,
            demand: Some(demand),
            ..Context::default()
        };
        Ok(match self.tests.as_slice() {
            [only] => evaluation.with_doubts(&implausible(&only.stored.said.test, &context)),
            _ => evaluation,
        })
    }

    /// The kinds of garment that ask for as much as they give, as [`Suit::serves`] has it of their construction and of how
    /// the cloth comes back.
    #[must_use]
    pub fn suits(&self, confidence: Confidence) -> Vec<&'static Suit> {
        let grain = self.newest().map(|newest| newest.stored.said.test.grain()).unwrap_or_default();
        let rebound = self.figures().and_then(|figures| Rebound::of(&figures, confidence)).map(|rebound| rebound.grade);
        let gives = |suit: &&Suit| {
            let limit = |milli: u32| Limit::milli_percent(milli).ok();
            let asked = Range { at_least: limit(suit.at_least), at_most: suit.at_most.and_then(limit) };
            let judged = self.judge(&Demand::for_grain(grain, asked), None, confidence);
            judged.is_ok_and(|judged| judged.answer == Some(Answer::Meets) && judged.contradicts.is_none())
        };
        SUITS.iter().filter(|suit| suit.serves(self.construction, rebound)).filter(gives).collect()
    }

    /// What they amount to.
    #[must_use]
    pub fn figures(&self) -> Option<Figures> {
        Some(self.judge(&Demand::default(), None, Confidence::default()).ok()?.figures)
    }
}
