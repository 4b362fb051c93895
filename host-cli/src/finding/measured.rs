//! What the log has measured of one grain of a cloth: all tests that count, judged together.
//!
//! The one place that decides which tests count. A retired test does not. A doubtful one does not beside one that is not
//! doubted, and alone it never gives a plain answer. A test from before the cloth was washed counts for less.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::sync::OnceLock;

use jiff::Timestamp;
use tenter_core::repeatability::Pooled;
use tenter_core::{
    Answer, Confidence, Construction, Context, Demand, Doubt, Evaluation, Figures, Grain, Judgement, Length, Limit,
    Looks, MAX_SITTINGS, Range, Rebound, Rules, SUITS, Scatter, Sitting, Suit, TestError, Widening, implausible,
    judge_each,
};

use crate::log::{Fabric, Hands, Here, Id, StoredTest, days};

/// A test that counts.
#[derive(Clone, Debug)]
pub struct Counted {
    /// The test.
    pub stored: StoredTest,
    /// The scatter of whoever pulled it on this construction, the test's own pulls left out.
    pub scatter: Scatter,
    /// Whether the cloth was washed since.
    pub before_wash: bool,
    /// The day on which it was pulled, as the core counts it.
    pub day: Option<i32>,
    /// Who pulled it, as the core counts them.
    pub person: u64,
}

impl Counted {
    const fn sitting(&self) -> Sitting<'_> {
        Sitting {
            scatter: self.scatter,
            before_wash: self.before_wash,
            day: self.day,
            person: self.person,
            ..Sitting::new(&self.stored.said.test)
        }
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
    /// What these days say of each other, which is left out of what everybody's tests say.
    retests: BTreeMap<Option<Id>, Pooled>,
    construction: Construction,
    width: Option<Length>,
    /// What they amount to, once that was wanted.
    figures: OnceLock<Option<Figures>>,
}

/// What everybody's tests say, without what the days of one cloth say of each other.
fn without<'p>(
    pooled: &'p Hands,
    construction: Construction,
    retests: &BTreeMap<Option<Id>, Pooled>,
) -> Cow<'p, Hands> {
    if retests.is_empty() {
        return Cow::Borrowed(pooled);
    }
    let less = |hands: Hands, (person, said): (&Option<Id>, &Pooled)| hands.without(*person, construction, *said);
    Cow::Owned(retests.iter().fold(pooled.clone(), less))
}

/// A demand that is put to the tests of a grain, with the time at which it was put first.
#[derive(Clone, Copy, Debug)]
pub struct Asked {
    /// What is asked.
    pub demand: Demand,
    /// Since when; none for a demand of this moment.
    pub put: Option<Timestamp>,
}

impl Measured {
    /// Of the tests of a cloth along a grain, the oldest first; none where nothing was pulled.
    #[must_use]
    pub fn of<'t>(
        fabric: &Fabric,
        tests: impl IntoIterator<Item = &'t StoredTest>,
        grain: Grain,
        pooled: &Hands,
        here: Here,
    ) -> Option<Self> {
        let live = tests.into_iter().filter(|stored| !stored.dropped && stored.said.test.grain() == grain);
        let live: Vec<&StoredTest> = live.collect();
        // What these days say of each other is counted where they are judged together.
        let retests = days::retests(fabric, live.iter().copied(), here);
        let others = without(pooled, fabric.construction, &retests);
        let counted = |stored: &StoredTest| Self::counted(fabric, stored, &others, here);
        let mut tests: Vec<Counted> = live.into_iter().map(counted).collect();
        let mut measured = Self {
            tests: Vec::new(),
            doubted: Vec::new(),
            retests,
            construction: fabric.construction,
            width: fabric.width,
            figures: OnceLock::new(),
        };
        if tests.len() > 1 {
            let (sound, doubted): (Vec<_>, Vec<_>) =
                tests.into_iter().partition(|counted| measured.doubts_of(counted).is_empty());
            (tests, measured.doubted) = (sound, doubted.into_iter().map(|counted| counted.stored).collect());
            if tests.is_empty() {
                // Nothing but doubtful tests: the newest stands for them, and is doubted.
                tests.extend(measured.doubted.pop().map(|newest| counted(&newest)));
            }
        }
        tests.drain(..tests.len().saturating_sub(MAX_SITTINGS));
        tests.shrink_to_fit();
        measured.tests = tests;
        (!measured.tests.is_empty()).then_some(measured)
    }

    fn counted(fabric: &Fabric, stored: &StoredTest, pooled: &Hands, here: Here) -> Counted {
        let scatter = pooled.scatter_for(stored.said.pulled_by, fabric.construction, &stored.said.test);
        let Sitting { before_wash, day, person, .. } = days::sitting(fabric, stored, scatter, here);
        Counted { stored: stored.clone(), scatter, before_wash, day, person }
    }

    /// What speaks against a test.
    fn doubts_of(&self, counted: &Counted) -> Vec<Doubt> {
        let context = Context { construction: Some(self.construction), cloth_width: self.width, ..Context::default() };
        let mut doubts: Vec<Doubt> = implausible(&counted.stored.said.test, &context).iter().copied().collect();
        let rules = Rules { construction: self.construction, ..Rules::default() };
        let nothing = [(Demand::default(), Looks::default())];
        // A test without a pull says nothing, and gives nothing to doubt.
        let _ = judge_each(&[counted.sitting()], &nothing, &rules, |_, alone| doubts.extend(alone.doubts));
        doubts
    }

    /// What everybody's tests say of their repeatability, without what these days say of each other.
    #[must_use]
    pub fn hand<'p>(&self, pooled: &'p Hands) -> Cow<'p, Hands> {
        without(pooled, self.construction, &self.retests)
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
        let looks = self.planned(put);
        let rules = Rules { confidence, construction: self.construction, looks, ..Rules::default() };
        Ok(Evaluation::of_all(&sittings, demand, &rules)?.with_doubts(&self.implausible(demand)))
    }

    /// The same of several demands, each as [`judge`](Self::judge) has it, in their order, without what would settle them.
    ///
    /// # Errors
    ///
    /// As of one.
    pub fn judge_each(&self, asked: &[Asked], confidence: Confidence) -> Result<Vec<Judgement>, TestError> {
        let sittings: Vec<Sitting<'_>> = self.tests.iter().map(Counted::sitting).collect();
        let rules = Rules { confidence, construction: self.construction, ..Rules::default() };
        let put: Vec<(Demand, Looks)> = asked.iter().map(|asked| (asked.demand, self.planned(asked.put))).collect();
        let mut judged: Vec<(usize, Judgement)> = Vec::with_capacity(asked.len());
        judge_each(&sittings, &put, &rules, |place, judgement| judged.push((place, judgement)))?;
        judged.sort_by_key(|(place, _)| *place);
        let doubted = |((_, judgement), asked): ((usize, Judgement), &Asked)| {
            judgement.with_doubts(&self.implausible(&asked.demand))
        };
        Ok(judged.into_iter().zip(asked).map(doubted).collect())
    }

    /// What cannot well be true of the tests, beside what is asked.
    fn implausible(&self, demand: &Demand) -> Vec<Doubt> {
        let context = Context {
            construction: Some(self.construction),
            cloth_width: self.width,
            demand: Some(demand),
            ..Context::default()
        };
        let of = |counted: &Counted| implausible(&counted.stored.said.test, &context);
        let mut doubts: Vec<Doubt> = self.newest().map(of).into_iter().flatten().collect();
        if self.tests.len() > 1 && !doubts.is_empty() {
            // What one test cannot tell another may, and several on short marks tell more than one.
            let others: Vec<_> = self.tests.iter().map(of).collect();
            let shared = |doubt: &Doubt| others.iter().all(|all| all.iter().any(|one| one.word() == doubt.word()));
            doubts.retain(|doubt| shared(doubt) && !matches!(doubt, Doubt::ShortMarks { .. }));
        }
        doubts
    }

    /// The tests that there were when a demand was put, as those that were planned.
    fn planned(&self, put: Option<Timestamp>) -> Looks {
        let had = self.tests.iter().filter(|one| put.is_none_or(|put| one.stored.said.pulled <= put));
        let had: Vec<Sitting<'_>> = had.map(Counted::sitting).collect();
        let is_first = |(at, one): &(usize, &Sitting<'_>)| !had.iter().take(*at).any(|had| had.shares_session_of(one));
        let days = had.iter().enumerate().filter(is_first).count();
        let of_its_day = |one: &Sitting<'_>| had.iter().filter(|had| had.shares_session_of(one)).count();
        let tests = had.iter().map(of_its_day).max().unwrap_or_default();
        let [tests, days] = [tests, days].map(|count| u8::try_from(count).unwrap_or(u8::MAX).max(1));
        Looks { tests, days, ..Looks::default() }
    }

    /// The kinds of garment that ask for as much as they give, as [`Suit::serves`] has it of their construction and of how
    /// the cloth comes back.
    #[must_use]
    pub fn suits(&self, confidence: Confidence) -> Vec<&'static Suit> {
        let grain = self.newest().map(|newest| newest.stored.said.test.grain()).unwrap_or_default();
        let rebound = self.figures().and_then(|figures| Rebound::of(&figures, confidence)).map(|rebound| rebound.grade);
        let limit = |milli: u32| Limit::milli_percent(milli).ok();
        let asks = |suit: &&Suit| {
            let range = Range { at_least: limit(suit.at_least), at_most: suit.at_most.and_then(limit) };
            Asked { demand: Demand::for_grain(grain, range), put: None }
        };
        let gives = |judged: &Judgement| judged.answer() == Some(Answer::Meets) && judged.contradicts.is_none();
        let serve: Vec<&Suit> = SUITS.iter().filter(|suit| suit.serves(self.construction, rebound)).collect();
        let asked: Vec<Asked> = serve.iter().map(asks).collect();
        let judged = self.judge_each(&asked, confidence).unwrap_or_default();
        serve.into_iter().zip(judged).filter(|(_, judged)| gives(judged)).map(|(suit, _)| suit).collect()
    }

    /// What they amount to.
    #[must_use]
    pub fn figures(&self) -> Option<Figures> {
        let judged = || {
            let nothing = Asked { demand: Demand::default(), put: None };
            self.judge_each(&[nothing], Confidence::default()).ok()?.pop()
        };
        *self.figures.get_or_init(|| judged().map(|judged| judged.figures))
    }
}
