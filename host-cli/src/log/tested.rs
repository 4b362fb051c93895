//! A pull test in the log: the readings, when, and how they came here.

use jiff::Timestamp;
use serde::de::Error as _;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use tenter_core::{Ends, Grain, Held, Length, Load, PullTest, Scale};

use super::id::Id;
use super::json::mm;

/// The handheld a test came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Device {
    /// The handheld's number.
    pub device: u32,
    /// The number it gave the test.
    pub number: u32,
}

/// What a person said on the handheld, by the marks under which it knows cloths and people: what no tag and no name can
/// confuse. Read from the entry; the tables do not hold it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Marks {
    /// A tag for a cloth that no log knew then.
    #[serde(skip_serializing_if = "core::ops::Not::not")]
    pub new_tag: bool,
    /// The cloth that was meant.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cloth_mark: Option<u32>,
    /// Who pulled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub puller_mark: Option<u32>,
}

impl Marks {
    /// The mark of a cloth or a person: the CRC-32 of its identifier, which is short enough for a handheld.
    #[must_use]
    pub fn of(id: Id) -> u32 {
        tenter_core::record::checksum(id.to_string().as_bytes())
    }
}

/// What an entry says about a test.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Tested {
    /// The cloth; none while it waits in the inbox.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fabric: Option<Id>,
    /// The tag that was dialled on the handheld.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tag: Option<u16>,
    /// When it was pulled.
    pub pulled: Timestamp,
    /// Whether the handheld's clock was not set, so that `pulled` is when it was fetched.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub clock_unset: bool,
    /// The handheld it came from.
    #[serde(flatten, default, skip_serializing_if = "Option::is_none")]
    pub device: Option<Device>,
    /// The person who pulled, where somebody said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pulled_by: Option<Id>,
    /// What the handheld was told to say of cloth and person.
    #[serde(flatten, default)]
    pub marks: Marks,
    /// Anything else.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// The doubts that the person stood by: the [word](tenter_core::Doubt::word) of each, as the readings were stored.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub as_read: Vec<String>,
    /// The readings.
    #[serde(serialize_with = "write_test", deserialize_with = "read_test")]
    pub test: PullTest,
}

/// A test as it stands now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoredTest {
    /// Its identifier: that of the entry that stored it.
    pub id: Id,
    /// What is said about it, with the cloth it is now assigned to, and the person who is now taken to have pulled it.
    pub said: Tested,
    /// Whether it was dropped.
    pub dropped: bool,
}

impl StoredTest {
    /// The order in which tests of one grain of one cloth count: the last one counts.
    #[must_use]
    pub const fn order(&self) -> (Timestamp, Id) {
        (self.said.pulled, self.id)
    }
}

#[derive(Serialize, Deserialize)]
struct TestJson {
    grain: Grain,
    #[serde(with = "mm")]
    gauge_mm: Length,
    pulls: Vec<PullJson>,
    #[serde(with = "mm")]
    division_mm: Length,
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    both_ends: bool,
    held: Held,
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    settled: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    millinewtons: Option<u32>,
    /// Looks at the gauge length after the first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    looks: Vec<LookJson>,
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    gauge_before_settling: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    planned: Option<u8>,
}

#[derive(Serialize, Deserialize)]
struct LookJson {
    after_pulls: u8,
    #[serde(with = "mm")]
    gauge_mm: Length,
}

#[derive(Serialize, Deserialize)]
struct PullJson {
    #[serde(with = "mm")]
    extended_mm: Length,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    rests: Vec<RestJson>,
}

#[derive(Serialize, Deserialize)]
struct RestJson {
    seconds: u32,
    #[serde(with = "mm")]
    recovered_mm: Length,
}

fn write_test<S: Serializer>(test: &PullTest, serializer: S) -> Result<S::Ok, S::Error> {
    let rests = |index: usize| {
        let mine = test.rests().iter().filter(move |rest| usize::from(rest.after_pull) == index);
        mine.map(|rest| RestJson { seconds: rest.seconds, recovered_mm: rest.recovered }).collect()
    };
    let pulls = test.pulls().iter().enumerate();
    let json = TestJson {
        grain: test.grain(),
        gauge_mm: test.gauge(),
        pulls: pulls.map(|(index, pull)| PullJson { extended_mm: *pull, rests: rests(index) }).collect(),
        division_mm: test.scale().division(),
        both_ends: test.scale().ends() == Ends::Both,
        held: test.held(),
        settled: test.settled(),
        millinewtons: match test.load() {
            Load::Hand => None,
            Load::Force { millinewtons } => Some(millinewtons),
        },
        looks: test
            .looks()
            .skip(1)
            .map(|look| LookJson { after_pulls: look.after_pulls, gauge_mm: look.length })
            .collect(),
        gauge_before_settling: test.gauge_before_settling(),
        planned: test.planned_pulls(),
    };
    json.serialize(serializer)
}

/// Built reading by reading, as the first time, so that nothing impossible comes in.
fn read_test<'de, D: Deserializer<'de>>(deserializer: D) -> Result<PullTest, D::Error> {
    let json = TestJson::deserialize(deserializer)?;
    let ends = if json.both_ends { Ends::Both } else { Ends::One };
    let scale = Scale::new(json.division_mm, ends).ok_or_else(|| D::Error::custom("a scale without divisions"))?;
    let mut test = PullTest::new(json.gauge_mm, json.grain)
        .and_then(|test| test.with_scale(scale))
        .map_err(D::Error::custom)?
        .with_held(json.held)
        .with_settling_pull(json.settled)
        .with_gauge_before_settling(json.gauge_before_settling)
        .with_load(json.millinewtons.map_or(Load::Hand, |millinewtons| Load::Force { millinewtons }));
    if let Some(planned) = json.planned {
        test = test.with_planned_pulls(planned).map_err(D::Error::custom)?;
    }
    let mut looks = json.looks.iter().peekable();
    let mut add_looks = |test: &mut PullTest| {
        let made = test.pulls().len();
        while let Some(look) = looks.next_if(|look| usize::from(look.after_pulls) == made) {
            test.add_look(look.gauge_mm).map_err(D::Error::custom)?;
        }
        Ok(looks.peek().is_none())
    };
    let mut all_looked = add_looks(&mut test)?;
    for pull in &json.pulls {
        test.add_stored_pull(pull.extended_mm).map_err(D::Error::custom)?;
        for rest in &pull.rests {
            test.add_rest(rest.seconds, rest.recovered_mm).map_err(D::Error::custom)?;
        }
        all_looked = add_looks(&mut test)?;
    }
    if !all_looked {
        return Err(D::Error::custom("a look at the marks after pulls that are not there"));
    }
    if test.pulls().is_empty() {
        return Err(D::Error::custom("a test without a pull"));
    }
    Ok(test)
}
