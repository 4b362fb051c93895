//! What the log knows of a cloth, gathered to be shown.

use tenter_core::components::SESSION_DOF;
use tenter_core::making::washing::Washing;
use tenter_core::{Confidence, Doubt, Figure, Figures, Grain, Length, Note, Rebound, Scatter, Suit, Table, Unit};

use super::fit::{Stock, known};
use super::kept::Kept;
use super::measured::{Counted, Measured};
use super::memory::Seen;
use crate::log::{Construction, Entry, Fabric, Garment, Hands, Here, People, Pooled, StoredTest, Tested, fold};

/// How many kinds of garment are named for a grain.
const SUITS: usize = 2;

/// A cloth in a list, with the stretch that its tests amount to.
#[derive(Debug)]
pub struct Listed {
    /// The cloth.
    pub fabric: Fabric,
    /// Across.
    pub crosswise: Option<Figure>,
    /// Along.
    pub lengthwise: Option<Figure>,
    /// What open garments keep of it.
    pub kept: Vec<Kept>,
    /// The grains whose tests disagree.
    pub disagree: Vec<Grain>,
}

impl Listed {
    /// A cloth of a stock.
    #[must_use]
    pub fn of(fabric: &Fabric, stock: &Stock) -> Self {
        let mut disagree = Vec::new();
        let mut stretch = |grain| {
            let judged = known::judged(fabric, grain, stock)?;
            disagree.extend(judged.contradicts.map(|_| grain));
            Some(judged.figures.stretch)
        };
        let (crosswise, lengthwise) = (stretch(Grain::Crosswise), stretch(Grain::Lengthwise));
        stretch(Grain::Bias);
        let kept = stock.kept_of(fabric).cloned().collect();
        Self { fabric: fabric.clone(), crosswise, lengthwise, kept, disagree }
    }
}

/// How the ± of a test was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrustOrigin {
    /// How the cloth is made.
    pub construction: Construction,
    /// How much of it rests on the person's other tests, 0 to 1.
    pub own: f32,
    /// How much of it rests on the tests of other people, 0 to 1.
    pub others: f32,
    /// Their scatter as a multiple of the assumed one.
    pub ratio: f32,
    /// How much of what another day adds rests on the person's own retests, 0 to 1.
    pub retests: f32,
}

impl TrustOrigin {
    /// For a test, whose own pulls are left out.
    #[must_use]
    pub fn of(construction: Construction, hands: &Hands, said: &Tested) -> Self {
        let (own, test) = (hands.of(said.pulled_by), &said.test);
        let pooled = own.on(construction).without(Pooled::of(test));
        let (hand, days) = (pooled.repeatability(), pooled.session_dof);
        #[allow(clippy::cast_possible_truncation)] // A share.
        let retests = (days / (days + f64::from(SESSION_DOF))) as f32;
        let (own, ratio) = (hand.map_or(0.0, |hand| hand.share()), hand.map_or(1.0, |hand| hand.ratio()));
        Self { construction, own, others: hands.share_of_others(said.pulled_by, construction, test), ratio, retests }
    }
}

/// Tests of a grain that contradict each other by more than the ± of both explains.
#[derive(Clone, Debug, PartialEq)]
pub struct Disagreement {
    /// The one that stands apart.
    pub apart: StoredTest,
    /// Its own stretch.
    pub stretch: Option<Figure>,
    /// What it was held against: the others, with their stretch.
    pub others: Vec<(StoredTest, Option<Figure>)>,
}

impl Disagreement {
    /// Of the tests of a grain, of which the others contradict one; none where they agree.
    #[must_use]
    pub fn of(measured: &Measured, contradicts: Option<u8>) -> Option<Self> {
        let apart = measured.tests.get(usize::from(contradicts?))?;
        let seen = |one: &Counted| Figures::of(&one.stored.said.test, one.scatter).ok().map(|figures| figures.stretch);
        let others = measured.tests.iter().filter(|one| one.stored.id != apart.stored.id);
        Some(Self {
            apart: apart.stored.clone(),
            stretch: seen(apart),
            others: others.map(|one| (one.stored.clone(), seen(one))).collect(),
        })
    }
}

/// What the tests of a grain say.
#[derive(Debug)]
pub struct Standing {
    /// Its grain.
    pub grain: Grain,
    /// The tests that count.
    pub measured: Measured,
    /// The newest of them.
    pub newest: StoredTest,
    /// The newest of those that read what was left after release; else the newest.
    pub released: StoredTest,
    /// The figures.
    pub figures: Figures,
    /// How their ± was found.
    pub repeatability: TrustOrigin,
    /// What to know about the readings.
    pub notes: Vec<Note>,
    /// Why not to believe them.
    pub doubts: Vec<Doubt>,
    /// The kinds of garment that ask for as much.
    pub suits: Vec<&'static Suit>,
    /// Where the tests disagree.
    pub disagrees: Option<Disagreement>,
}

impl Standing {
    /// The tests that count, the newest last.
    #[must_use]
    pub fn tests(&self) -> Vec<StoredTest> {
        self.measured.tests.iter().map(|counted| counted.stored.clone()).collect()
    }

    /// What the tests of each grain say, of all tests of a fabric, the oldest first.
    #[must_use]
    pub fn all(fabric: &Fabric, tests: &[StoredTest], pooled: &Hands, confidence: Confidence, here: Here) -> Vec<Self> {
        let grains = [Grain::Crosswise, Grain::Lengthwise, Grain::Bias].into_iter();
        grains.filter_map(|grain| Self::of(fabric, tests, grain, pooled, (confidence, here))).collect()
    }

    fn of(
        fabric: &Fabric,
        tests: &[StoredTest],
        grain: Grain,
        pooled: &Hands,
        (confidence, here): (Confidence, Here),
    ) -> Option<Self> {
        let construction = fabric.construction;
        let measured = Measured::of(fabric, tests, grain, pooled, here)?;
        let (newest, released) = (measured.newest()?.stored.clone(), measured.newest_released()?.stored.clone());
        let evaluation = measured.judge(&tenter_core::Demand::default(), None, confidence).ok()?;
        Some(Self {
            grain,
            figures: evaluation.figures,
            repeatability: TrustOrigin::of(construction, &measured.hand(pooled), &newest.said),
            notes: evaluation.notes.iter().copied().collect(),
            doubts: evaluation.doubts.iter().copied().collect(),
            suits: measured.suits(confidence),
            disagrees: Disagreement::of(&measured, evaluation.contradicts),
            newest,
            released,
            measured,
        })
    }
}

/// Whether a test counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// It counts with the others of its grain.
    Counts,
    /// It counts, for less: the cloth was washed since.
    BeforeWash,
    /// It is doubtful, and others are not.
    Doubted,
    /// More tests came after it than are judged together.
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
    /// Its photographs.
    pub photos: &'a [Seen],
    /// All garments.
    pub garments: &'a [Garment],
    /// What open garments keep of it.
    pub kept: &'a [Kept],
    /// What the tests of each grain say.
    pub standing: Vec<Standing>,
    /// Everybody who pulls.
    pub people: &'a People,
    /// Everybody's repeatability.
    pub pooled: &'a Hands,
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

    /// The figures of the grain that comes back worst; none where nothing was read after release.
    #[must_use]
    pub fn comes_back_worst(&self) -> Option<&Figures> {
        let graded = |figures| Some((Rebound::of(figures, self.confidence)?.grade, figures));
        let all = self.standing.iter().filter(|standing| standing.doubts.is_empty());
        all.filter_map(|standing| graded(&standing.figures)).max_by_key(|(grade, _)| *grade).map(|(_, figures)| figures)
    }

    /// How the ± was found, of the grain that rests most on the person's own tests; none where nothing was measured.
    #[must_use]
    pub fn repeatability(&self) -> Option<TrustOrigin> {
        self.standing.iter().map(|standing| standing.repeatability).max_by(|a, b| a.own.total_cmp(&b.own))
    }

    /// How it stands to the wash along and across, with what the marks say.
    #[must_use]
    pub fn washing(&self) -> [(Grain, Washing, Option<Figure>); 2] {
        let stands = |grain| (grain, known::at_wash(self.fabric, grain), known::washing(self.fabric, grain));
        [Grain::Lengthwise, Grain::Crosswise].map(stands)
    }

    /// Whether a test counts.
    #[must_use]
    pub fn status(&self, stored: &StoredTest) -> Status {
        if stored.dropped {
            return Status::Retired;
        }
        let mine = self.standing.iter().find(|standing| standing.grain == stored.said.test.grain());
        let Some(Standing { measured, .. }) = mine else { return Status::Older };
        match measured.tests.iter().find(|counted| counted.stored.id == stored.id) {
            Some(counted) if counted.before_wash => Status::BeforeWash,
            Some(_) => Status::Counts,
            None if measured.doubted.iter().any(|doubted| doubted.id == stored.id) => Status::Doubted,
            None => Status::Older,
        }
    }

    /// What a test measured, with its ±.
    #[must_use]
    pub fn figures(&self, stored: &StoredTest) -> Option<Figures> {
        let test = &stored.said.test;
        let scatter = self.pooled.scatter_for(stored.said.pulled_by, self.fabric.construction, test);
        Figures::of(test, scatter).ok()
    }

    /// The straight grains that were not measured.
    pub fn unmeasured(&self) -> impl Iterator<Item = Grain> {
        let measured = |grain: &Grain| self.standing.iter().any(|standing| standing.grain == *grain);
        [Grain::Crosswise, Grain::Lengthwise].into_iter().filter(move |grain| !measured(grain))
    }

    /// The history: each step, with the length that was left after it where it changed.
    #[must_use]
    pub fn steps(&self) -> Vec<(&'a Entry, Option<Length>)> {
        let mut lengths = fold::lengths(self.history).into_iter().peekable();
        let mut left = |index| lengths.next_if(|(at, _)| *at == index).and_then(|(_, length)| length);
        self.history.iter().enumerate().map(|(index, entry)| (entry, left(index))).collect()
    }
}

/// The stretch of a test, whoever pulled it.
#[must_use]
pub fn stretch_of(stored: &StoredTest) -> Option<Figure> {
    Figures::of(&stored.said.test, Scatter::ASSUMED).ok().map(|figures| figures.stretch)
}
