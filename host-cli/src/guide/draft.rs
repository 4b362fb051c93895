//! What has been answered so far: enough to go on after the window was closed or the power went.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use tenter_core::{DEFAULT_REST_SECONDS, Ends, Grain, Held, Load, PullTest, Unit};

use crate::input::test::{load_text, mm, so_far};
use crate::input::{self, TypedReading, TypedTest, Wrong};
use crate::log::Id;
use crate::log::json::{Mm, read};

/// The layout of the stored draft.
const VERSION: u32 = 2;
/// The layout in which the marks were typed before anything else.
const MARKS_FIRST: u32 = 1;
/// What is planned where nobody says: as many pulls as say how far they differ.
const PLANNED: u8 = 3;
/// A wait that is longer than this is made once, after the last pull, in seconds.
const LONG_WAIT: u32 = 120;
/// When growth is read where nobody says.
const WAIT: u32 = DEFAULT_REST_SECONDS;

/// A pull test that is being made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Draft {
    version: u32,
    /// The identifier that the test will have, fixed from the start: so it cannot be stored twice.
    pub id: Id,
    /// When it was begun, or the day that was stated.
    pub pulled: Timestamp,
    /// Anything else that was said about it.
    pub note: String,
    /// Who pulls, as typed; none for the one who is remembered.
    #[serde(default)]
    pub by: Option<String>,
    /// What was asked, as typed: stretch, growth, recovery.
    pub wants: [Option<String>; 3],
    /// The unit of bare numbers.
    #[serde(with = "UnitJson")]
    pub unit: Unit,
    /// The grain that is pulled.
    pub grain: Grain,
    /// Ends that are read.
    pub ends: Ends,
    /// Between two lines of the scale; by the unit where it was not said.
    pub division: Option<Mm>,
    /// The pulling force in millinewtons; a hand where there is none.
    pub millinewtons: Option<u32>,
    /// How the swatch is held.
    pub held: Held,
    /// Whether a settling pull was made.
    pub settled: bool,
    /// Seconds from release to the reading; none where nothing is read after release.
    pub wait: Option<u32>,
    /// How many pulls were planned; none where nobody said.
    #[serde(default)]
    pub planned: Option<u8>,
    /// Between the marks; none until it was typed.
    pub gauge: Option<Mm>,
    /// The marks read once more.
    #[serde(default)]
    pub again: Option<Mm>,
    /// The pulls so far.
    pub pulls: Vec<Pull>,
    /// What is asked next.
    pub stage: NextQuestion,
}

/// A pull with its reading after release.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Pull {
    /// The extended length.
    pub extended: Mm,
    /// Seconds since release, and the recovered length.
    pub rest: Option<(u32, Mm)>,
}

/// What is asked next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NextQuestion {
    /// How the swatch is held.
    Held,
    /// Whether the settling pull was made.
    Settling,
    /// The gauge length.
    Gauge,
    /// The gauge length once more, the cloth laid anew.
    Again,
    /// When to read after release.
    Wait,
    /// To pull and hold.
    Pull,
    /// The extended length, a clock running since then.
    Holding(Timestamp),
    /// The extended length, the clock stopped.
    Extended,
    /// To let go.
    Release,
    /// The recovered length, counted down since then.
    Resting(Timestamp),
    /// The recovered length, read so many seconds after release.
    Recovered(u32),
    /// Again, finish or undo.
    Next,
    /// Nothing: it can be stored.
    Done,
}

#[derive(Serialize, Deserialize)]
#[serde(remote = "Unit", rename_all = "kebab-case")]
enum UnitJson {
    Mm,
    Cm,
    Inch,
}

impl Draft {
    /// A test of which nothing is known but how it will be read: by hand, on a scale that goes with the unit.
    #[must_use]
    pub const fn new(id: Id, pulled: Timestamp, grain: Grain, unit: Unit) -> Self {
        Self {
            version: VERSION,
            id,
            pulled,
            note: String::new(),
            by: None,
            wants: [None, None, None],
            unit,
            grain,
            ends: Ends::One,
            division: None,
            millinewtons: None,
            held: Held::Folded,
            settled: false,
            wait: Some(WAIT),
            planned: None,
            gauge: None,
            again: None,
            pulls: Vec::new(),
            stage: NextQuestion::Held,
        }
    }

    /// Reads a stored draft; none where it is damaged or of a newer layout. A swatch that was held is to be pulled
    /// again: the hand has let go.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let mut draft: Self = read(text).ok()?;
        if draft.version == MARKS_FIRST {
            draft.version = VERSION;
            draft.stage = if draft.gauge.is_none() { NextQuestion::Held } else { draft.stage };
        }
        if draft.version != VERSION || (draft.gauge.is_some() && draft.test().is_err()) {
            return None;
        }
        if matches!(draft.stage, NextQuestion::Holding(_) | NextQuestion::Extended) {
            draft.stage = NextQuestion::Pull;
        }
        Some(draft)
    }

    /// The text to be stored.
    #[must_use]
    pub fn text(&self) -> String {
        // Plain structs of numbers and texts always serialise.
        crate::json::line(self)
    }

    /// How many lengths were typed so far.
    #[must_use]
    pub fn readings(&self) -> usize {
        let pulls = self.pulls.iter().map(|pull| 1 + usize::from(pull.rest.is_some()));
        usize::from(self.gauge.is_some()) + usize::from(self.again.is_some()) + pulls.sum::<usize>()
    }

    /// How many pulls are planned.
    #[must_use]
    pub fn enough(&self) -> usize {
        self.planned.unwrap_or(PLANNED).into()
    }

    /// Whether the length after release is read after the newest pull: after each, or where the wait is long after the last
    /// that is planned.
    #[must_use]
    pub fn reads_after_release(&self) -> bool {
        self.wait.is_some_and(|wait| wait <= LONG_WAIT || self.pulls.len() >= self.enough())
    }

    /// Whether a length after release is still to be read, once there are no more pulls.
    #[must_use]
    pub fn lacks_rest(&self) -> bool {
        let read = self.pulls.last().is_some_and(|pull| pull.rest.is_some());
        self.wait.is_some() && !self.reads_after_release() && !read
    }

    /// The answers so far as if they had been typed at once, in millimetres.
    #[must_use]
    pub fn typed(&self) -> TypedTest {
        let mut readings: Vec<TypedReading> =
            self.again.map(|Mm(again)| TypedReading::Marks(mm(again))).into_iter().collect();
        for Pull { extended: Mm(extended), rest } in &self.pulls {
            readings.push(TypedReading::To(mm(*extended)));
            readings.extend(
                rest.map(|(seconds, Mm(recovered))| TypedReading::Back(format!("{}@{seconds}s", mm(recovered)))),
            );
        }
        let division = self.division.map_or_else(|| input::division_in(self.unit), |Mm(division)| division);
        TypedTest {
            marks: self.gauge.map(|Mm(gauge)| mm(gauge)),
            readings,
            settling: self.settled,
            marks_before_settling: false,
            planned: self.planned.map(|pulls| pulls.to_string()),
            grain: self.grain,
            division: Some(mm(division)),
            ends: self.ends,
            held: self.held,
            load: self.millinewtons.and_then(|millinewtons| load_text(Load::Force { millinewtons })),
        }
    }

    /// The test as far as it goes.
    ///
    /// # Errors
    ///
    /// The first reading that cannot be; [`Why::Missing`](input::Why::Missing) while the marks were not typed.
    pub fn test(&self) -> Result<PullTest, Wrong> {
        so_far(&self.typed(), Unit::Mm)
    }
}
