//! What the log knows of a cloth, gathered to be shown.

use tenter_core::{
    Confidence, Evaluation, Figure, Figures, Grain, Length, Note, PullTest, Rules, Scatter, Suit, Table, Unit, suits,
};

use super::fit::known;
use crate::log::{ByConstruction, Construction, Entry, Fabric, Here, Pooled, StoredTest, fold, retest};

/// How many kinds of garment are named for a grain.
const SUITS: usize = 2;

/// A cloth in a list, with the stretch that was measured last.
#[derive(Debug)]
pub struct Listed {
    /// The cloth.
    pub fabric: Fabric,
    /// Across.
    pub crosswise: Option<Figure>,
    /// Along.
    pub lengthwise: Option<Figure>,
}

impl Listed {
    /// A cloth with the tests that count.
    #[must_use]
    pub fn of(fabric: Fabric, tests: &[StoredTest], pooled: &ByConstruction) -> Self {
        let stretch = |grain| stretch(&fabric, tests, grain, pooled);
        Self { crosswise: stretch(Grain::Crosswise), lengthwise: stretch(Grain::Lengthwise), fabric }
    }
}

/// The stretch of a cloth along a grain, of the tests that count.
#[must_use]
pub fn stretch(fabric: &Fabric, tests: &[StoredTest], grain: Grain, pooled: &ByConstruction) -> Option<Figure> {
    let test = &tests.iter().find(|test| test.said.test.grain() == grain)?.said.test;
    Some(Figures::of(test, pooled.scatter_for(fabric.construction, test)).ok()?.stretch)
}

/// How the ± of a test was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrustOrigin {
    /// How the cloth is made.
    pub construction: Construction,
    /// How much of it rests on the person's other tests, 0 to 1.
    pub own: f32,
    /// Their scatter as a multiple of the assumed one.
    pub ratio: f32,
}

impl TrustOrigin {
    /// For a test, whose own pulls are left out.
    #[must_use]
    pub fn of(construction: Construction, pooled: &ByConstruction, test: &PullTest) -> Self {
        let hand = pooled.on(construction).without(Pooled::of(test)).repeatability();
        Self { construction, own: hand.map_or(0.0, |hand| hand.share()), ratio: hand.map_or(1.0, |hand| hand.ratio()) }
    }
}

/// A test that an earlier one disagrees with by more than the ± of both explains.
#[derive(Clone, Debug, PartialEq)]
pub struct Disagreement {
    /// The earlier test.
    pub before: StoredTest,
    /// By how many points the later stretch is more.
    pub points: f32,
}

impl Disagreement {
    /// Compares a stretch with the test `before`.
    #[must_use]
    pub fn of(
        stretch: &Figure,
        before: &StoredTest,
        pooled: &ByConstruction,
        construction: Construction,
        confidence: Confidence,
    ) -> Option<Self> {
        let points = retest::disagreement(stretch, before, pooled, construction, confidence)?;
        Some(Self { before: before.clone(), points })
    }
}

/// What the newest test of a grain says.
#[derive(Debug)]
pub struct Standing<'a> {
    /// The test.
    pub test: &'a StoredTest,
    /// The figures.
    pub figures: Figures,
    /// How their ± was found.
    pub repeatability: TrustOrigin,
    /// What to know about the readings.
    pub notes: Vec<Note>,
    /// The kinds of garment that ask for as much.
    pub suits: Vec<&'static Suit>,
    /// The test before it, where the two disagree.
    pub disagrees: Option<Disagreement>,
}

impl<'a> Standing<'a> {
    /// What the newest test of each grain says, of all tests of a cloth, the oldest first.
    #[must_use]
    pub fn all(fabric: &Fabric, tests: &'a [StoredTest], pooled: &ByConstruction, confidence: Confidence) -> Vec<Self> {
        let grains = [Grain::Crosswise, Grain::Lengthwise, Grain::Bias].into_iter();
        let newest =
            grains.filter_map(|grain| tests.iter().rev().find(|test| !test.dropped && test.said.test.grain() == grain));
        let of = |newest| Self::of(newest, retest::before(tests, newest), pooled, fabric.construction, confidence);
        newest.filter_map(of).collect()
    }

    fn of(
        newest: &'a StoredTest,
        before: Option<&StoredTest>,
        pooled: &ByConstruction,
        construction: Construction,
        confidence: Confidence,
    ) -> Option<Self> {
        let test = &newest.said.test;
        let rules =
            Rules { confidence, scatter: pooled.scatter_for(construction, test), construction, ..Rules::default() };
        let evaluation = Evaluation::of(test, &tenter_core::Demand::default(), &rules).ok()?;
        let stretch = &evaluation.figures.stretch;
        Some(Self {
            test: newest,
            figures: evaluation.figures,
            repeatability: TrustOrigin::of(construction, pooled, test),
            notes: evaluation.notes.iter().copied().collect(),
            suits: suits(test, &rules).ok()?.collect(),
            disagrees: before.and_then(|before| Disagreement::of(stretch, before, pooled, construction, confidence)),
        })
    }

    /// Its grain.
    #[must_use]
    pub const fn grain(&self) -> Grain {
        self.test.said.test.grain()
    }
}

/// Whether a test counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// It is the newest of its grain.
    Counts,
    /// A newer one counts.
    Older,
    /// It was retired.
    Retired,
}

/// Everything about one cloth.
#[derive(Debug)]
pub struct Shown<'a> {
    /// The cloth.
    pub fabric: &'a Fabric,
    /// All its tests, the oldest first.
    pub tests: &'a [StoredTest],
    /// All its entries.
    pub history: &'a [Entry],
    /// What the newest tests say.
    pub standing: Vec<Standing<'a>>,
    /// The person's repeatability.
    pub pooled: ByConstruction,
    /// The table of stretch classes.
    pub table: &'static Table,
    /// How sure an interval is.
    pub confidence: Confidence,
    /// The unit of the text.
    pub unit: Unit,
    /// Whose wall clock tells the days.
    pub here: Here,
}

impl<'a> Shown<'a> {
    /// The garments that ask for most of what each grain gives, two a grain, each once.
    #[must_use]
    pub fn suits(&self) -> Vec<&'static Suit> {
        let mut suits: Vec<&'static Suit> = Vec::new();
        for suit in self.standing.iter().flat_map(|standing| standing.suits.iter().rev().take(SUITS)) {
            if !suits.iter().any(|known| known.garment == suit.garment) {
                suits.push(suit);
            }
        }
        suits
    }

    /// How the ± was found, of the grain that rests most on the person's own tests; none where nothing was measured.
    #[must_use]
    pub fn repeatability(&self) -> Option<TrustOrigin> {
        self.standing.iter().map(|standing| standing.repeatability).max_by(|a, b| a.own.total_cmp(&b.own))
    }

    /// The change by washing along and across, as far as it was measured.
    #[must_use]
    pub fn washing(&self) -> Vec<(Grain, Figure)> {
        let change = |grain| Some((grain, known::washing(self.fabric, grain)?));
        [Grain::Lengthwise, Grain::Crosswise].into_iter().filter_map(change).collect()
    }

    /// Whether a test counts.
    #[must_use]
    pub fn status(&self, stored: &StoredTest) -> Status {
        let counts = self.standing.iter().any(|standing| standing.test.id == stored.id);
        match (stored.dropped, counts) {
            (true, _) => Status::Retired,
            (false, true) => Status::Counts,
            (false, false) => Status::Older,
        }
    }

    /// What a test measured, with its ±.
    #[must_use]
    pub fn figures(&self, stored: &StoredTest) -> Option<Figures> {
        let test = &stored.said.test;
        Figures::of(test, self.pooled.scatter_for(self.fabric.construction, test)).ok()
    }

    /// The straight grains that were not measured.
    pub fn unmeasured(&self) -> impl Iterator<Item = Grain> {
        let measured = |grain: &Grain| self.standing.iter().any(|standing| standing.grain() == *grain);
        [Grain::Crosswise, Grain::Lengthwise].into_iter().filter(move |grain| !measured(grain))
    }

    /// The history: each step, with the length that was left after it where it changed.
    #[must_use]
    pub fn steps(&self) -> Vec<(&'a Entry, Option<Length>)> {
        let lengths = fold::lengths(self.history);
        let left = |index| lengths.iter().find(|(at, _)| *at == index).and_then(|(_, length)| *length);
        self.history.iter().enumerate().map(|(index, entry)| (entry, left(index))).collect()
    }
}

/// The stretch of a test, whoever pulled it.
#[must_use]
pub fn stretch_of(stored: &StoredTest) -> Option<Figure> {
    Figures::of(&stored.said.test, Scatter::ASSUMED).ok().map(|figures| figures.stretch)
}
