//! The stash as JSON: lengths in millimetres, percentages in percent, absent things null.

use serde::Serialize;
use serde_json::value::RawValue;
use tenter_core::{Figure, Figures, Length, Note, Widening};

use crate::finding::cloth::{Listed, Shown, Standing};
use crate::finding::kept::Kept;
use crate::finding::measured::Counted;
use crate::finding::tag::Renumbered;
use crate::json::{FigureJson, RecoveryJson, figure, line, millimetres, number, recovery, rounded};
use crate::log::{
    ClothPhoto, Device, Drape, Fabric, Finish, Learned, Lesson, MassPerArea, People, Purpose, Shop, StoredTest, Tag,
};

/// A cloth.
#[derive(Debug, Serialize)]
pub struct FabricJson<'a> {
    id: String,
    #[serde(flatten)]
    tag: Tag,
    name: &'a str,
    fibre: &'a str,
    construction: &'static str,
    width_mm: Option<f64>,
    length_mm: Option<f64>,
    g_per_m2: Option<f64>,
    finish: Option<&'static str>,
    drape: Option<&'static str>,
    purpose: Option<&'static str>,
    one_way: bool,
    colour: &'a str,
    place: &'a str,
    note: &'a str,
    washed: bool,
    seen: Option<&'a Shop>,
    dropped: bool,
    photos: Vec<PhotoJson<'a>>,
    learned: Vec<LessonJson<'a>>,
}

#[derive(Debug, Serialize)]
struct PhotoJson<'a> {
    number: usize,
    name: String,
    width_px: u16,
    height_px: u16,
    colour: String,
    note: &'a str,
    retired: bool,
}

impl<'a> PhotoJson<'a> {
    fn of((number, photo): (usize, &'a ClothPhoto)) -> Self {
        let said = &photo.said;
        Self {
            number,
            name: said.photo.to_string(),
            width_px: said.width_px,
            height_px: said.height_px,
            colour: said.colour.to_string(),
            note: &said.note,
            retired: photo.dropped,
        }
    }
}

#[derive(Debug, Serialize)]
struct LessonJson<'a> {
    number: usize,
    at: String,
    #[serde(flatten)]
    learned: &'a Learned,
    retired: bool,
}

impl<'a> LessonJson<'a> {
    fn of((number, lesson): (usize, &'a Lesson)) -> Self {
        Self { number, at: lesson.id.at().to_string(), learned: &lesson.learned, retired: lesson.dropped }
    }
}

/// What an open garment keeps of a cloth.
#[derive(Serialize)]
struct KeptJson<'a> {
    garment: u16,
    name: &'a str,
    length_mm: f64,
}

impl<'a> From<&'a Kept> for KeptJson<'a> {
    fn from(kept: &'a Kept) -> Self {
        Self { garment: kept.garment.number, name: &kept.garment.name, length_mm: millimetres(kept.length) }
    }
}

impl<'a> From<&'a Fabric> for FabricJson<'a> {
    fn from(fabric: &'a Fabric) -> Self {
        let mm = |length: Option<Length>| length.map(millimetres);
        Self {
            id: fabric.id.to_string(),
            tag: fabric.tag,
            name: &fabric.name,
            fibre: &fabric.fibre,
            construction: fabric.construction.word(),
            width_mm: mm(fabric.width),
            length_mm: mm(fabric.length),
            g_per_m2: fabric.mass.map(MassPerArea::g_per_m2),
            finish: fabric.finish.map(Finish::word),
            drape: fabric.drape.map(Drape::word),
            purpose: fabric.purpose.map(Purpose::word),
            one_way: fabric.one_way,
            colour: &fabric.colour,
            place: &fabric.place,
            note: &fabric.note,
            washed: fabric.washed,
            seen: fabric.shop.as_ref(),
            dropped: fabric.dropped,
            photos: (1..).zip(&fabric.photos).map(PhotoJson::of).collect(),
            learned: (1..).zip(&fabric.lessons).map(LessonJson::of).collect(),
        }
    }
}

#[derive(Serialize)]
struct ListedJson<'a> {
    #[serde(flatten)]
    fabric: FabricJson<'a>,
    crosswise_percent: Option<f64>,
    lengthwise_percent: Option<f64>,
    kept: Vec<KeptJson<'a>>,
    /// The grains whose tests disagree.
    disagree: Vec<&'static str>,
}

#[derive(Serialize)]
struct StandingJson {
    grain: &'static str,
    test: String,
    tests: Vec<CountedJson>,
    stretch: FigureJson,
    growth: Option<FigureJson>,
    recovery: Option<RecoveryJson>,
    class: &'static str,
    own_share: f64,
    retest_share: f64,
    /// The test that the others contradict.
    disagrees: Option<String>,
}

/// A test that counts.
#[derive(Serialize)]
struct CountedJson {
    id: String,
    before_wash: bool,
    widened: Vec<&'static str>,
}

impl From<&Counted> for CountedJson {
    fn from(counted: &Counted) -> Self {
        Self {
            id: counted.stored.id.to_string(),
            before_wash: counted.before_wash,
            widened: counted.widened().into_iter().map(widening).collect(),
        }
    }
}

/// The word for a reason to widen.
pub const fn widening(widening: Widening) -> &'static str {
    match widening {
        Widening::SingleLayer => "single-layer",
        Widening::RawEdge => "raw-edge",
        Widening::ShortMarks => "short-marks",
        Widening::BeforeWash => "before-wash",
    }
}

#[derive(Serialize)]
struct TestJson<'a> {
    id: String,
    pulled: String,
    clock_unset: bool,
    device: Option<Device>,
    note: &'a str,
    as_read: &'a [String],
    grain: &'static str,
    gauge_mm: f64,
    extended_mm: Vec<f64>,
    dropped: bool,
    /// Who pulled it, where that is known.
    by: Option<&'a str>,
}

impl<'a> TestJson<'a> {
    fn of(test: &'a StoredTest, people: &'a People) -> Self {
        let said = &test.said;
        Self {
            id: test.id.to_string(),
            pulled: said.pulled.to_string(),
            clock_unset: said.clock_unset,
            device: said.device,
            note: &said.note,
            as_read: &said.as_read,
            grain: said.test.grain().word(),
            gauge_mm: millimetres(said.test.gauge()),
            extended_mm: said.test.pulls().iter().copied().map(millimetres).collect(),
            dropped: test.dropped,
            by: people.name(said.pulled_by),
        }
    }
}

#[derive(Serialize)]
struct ShownJson<'a> {
    #[serde(flatten)]
    fabric: FabricJson<'a>,
    kept: Vec<KeptJson<'a>>,
    grains: Vec<StandingJson>,
    tests: Vec<TestJson<'a>>,
    history: Vec<Box<RawValue>>,
}

/// One cloth.
#[must_use]
pub fn fabric(fabric: &Fabric) -> String {
    line(&FabricJson::from(fabric))
}

/// The list, as an array.
#[must_use]
pub fn list(listed: &[Listed]) -> String {
    let percent = |stretch: Option<Figure>| stretch.map(|stretch| number(stretch.ratio.percent(3)));
    let list: Vec<_> = listed
        .iter()
        .map(|listed| ListedJson {
            fabric: FabricJson::from(&listed.fabric),
            crosswise_percent: percent(listed.crosswise),
            lengthwise_percent: percent(listed.lengthwise),
            kept: listed.kept.iter().map(KeptJson::from).collect(),
            disagree: listed.disagree.iter().map(|grain| grain.word()).collect(),
        })
        .collect();
    line(&list)
}

/// Everything about one cloth.
#[must_use]
pub fn shown(shown: &Shown<'_>) -> String {
    let standing = |standing: &Standing| {
        let Figures { stretch, rest } = standing.figures;
        let readable = !standing.notes.contains(&Note::RecoveryNotReadable);
        StandingJson {
            grain: standing.grain.word(),
            test: standing.newest.id.to_string(),
            tests: standing.measured.tests.iter().map(CountedJson::from).collect(),
            stretch: figure(&stretch, shown.confidence),
            growth: rest.map(|rest| figure(&rest.growth, shown.confidence)),
            recovery: rest.and_then(|rest| rest.recovery).map(|figure| recovery(&figure, shown.confidence, readable)),
            class: shown.table.class(stretch.ratio).name,
            own_share: rounded(standing.repeatability.own, 3),
            retest_share: rounded(standing.repeatability.retests, 3),
            disagrees: standing.disagrees.as_ref().map(|one| one.apart.id.to_string()),
        }
    };
    line(&ShownJson {
        fabric: FabricJson::from(shown.fabric),
        kept: shown.kept.iter().map(KeptJson::from).collect(),
        grains: shown.standing.iter().map(standing).collect(),
        tests: shown.tests.iter().map(|test| TestJson::of(test, shown.people)).collect(),
        history: shown.history.iter().filter_map(|entry| RawValue::from_string(entry.line().ok()?).ok()).collect(),
    })
}

/// The labels to write anew, as an array.
#[must_use]
pub fn renumbered(all: &[Renumbered]) -> String {
    let one = |one: &Renumbered| {
        let Renumbered { fabric, tag } = one;
        serde_json::json!({ "id": fabric.id, "name": fabric.name, "was": fabric.tag.to_string(), "tag": tag })
    };
    serde_json::Value::from(all.iter().map(one).collect::<Vec<_>>()).to_string()
}
