//! Stored and sent records: a version, the values, a checksum.
//!
//! The bytes are those of `postcard` (wire format stable since its 1.0): the number of the version, the values in
//! the order written here, then the CRC-32 (ISO-HDLC) of all of it, lowest byte first. Without a checksum five of
//! six flipped bits would still decode, to a wrong record.
//!
//! **Promise:** what any released version wrote stays readable. A new field means a new version; the order of an
//! enum's variants is part of the format. The golden bytes in `tenter-tests` hold this. Each record is written in the
//! oldest version that holds all of it, so that older programs read what they can.

use core::fmt;

use crc::{CRC_32_ISO_HDLC, Crc, NoTable};
use heapless::{String, Vec};
use serde::de::{Error, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};

use crate::number::list::list;
use crate::reading::length::Length;
use crate::reading::limit::{DEFAULT_REST_SECONDS, Demand, Limit, Range};
use crate::reading::look::{Look, MAX_LOOKS};
use crate::reading::pull_test::{Grain, Held, Load, MAX_PULLS, MAX_REST_SECONDS, MAX_RESTS, PullTest};
use crate::reading::scale::{Ends, Scale};

/// The most bytes a pull test takes, checksum included. An everyday test (five pulls, two readings after release)
/// takes 28.
pub const MAX_TEST_BYTES: usize = 185;

/// The most bytes a demand takes, checksum included.
pub const MAX_DEMAND_BYTES: usize = 114;

/// The most bytes of a demand's label: pattern, view and role in short.
pub const MAX_LABEL_BYTES: usize = 24;

const CHECKSUM: Crc<u32, NoTable> = Crc::<u32, NoTable>::new(&CRC_32_ISO_HDLC);
const CHECKSUM_BYTES: usize = 4;

/// A demand with its label, as it is kept on the handheld.
///
/// ```
/// use tenter_core::{Demand, record::LabelledDemand};
///
/// let main = LabelledDemand::new("skirt B main", Demand::default()).unwrap();
/// assert_eq!(main.label(), "skirt B main");
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LabelledDemand {
    label: String<MAX_LABEL_BYTES>,
    /// What is asked.
    pub demand: Demand,
}

impl LabelledDemand {
    /// A demand under a label; none when the label is longer than [`MAX_LABEL_BYTES`].
    ///
    /// ```
    /// use tenter_core::{Demand, record::LabelledDemand};
    ///
    /// assert!(LabelledDemand::new("a label of more than twenty-four bytes", Demand::default()).is_none());
    /// ```
    #[must_use]
    pub fn new(label: &str, demand: Demand) -> Option<Self> {
        String::try_from(label).ok().map(|label| Self { label, demand })
    }

    /// The label.
    #[must_use]
    pub fn label(&self) -> &str {
        &self.label
    }
}

/// Why bytes are no record, or a record no bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum RecordError {
    /// The buffer is shorter than the record.
    NoRoom,
    /// The checksum does not match, or the bytes end too soon or too late.
    Damaged,
    /// Whole, but of a version that this program does not know.
    Newer,
    /// Whole, but with invalid readings or limits.
    Impossible,
}

impl fmt::Display for RecordError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoRoom => "no room for the record",
            Self::Damaged => "the record is damaged",
            Self::Newer => "the record was written by a newer version of this program; use that version",
            Self::Impossible => "the record holds invalid readings",
        })
    }
}

impl core::error::Error for RecordError {}

/// Writes a pull test into `buffer` ([`MAX_TEST_BYTES`] always do) and hands back the bytes used.
///
/// # Errors
///
/// [`RecordError::NoRoom`].
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, record};
///
/// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
/// let mut buffer = [0; record::MAX_TEST_BYTES];
/// let bytes = record::encode_test(&test, &mut buffer)?;
/// assert_eq!(record::decode_test(bytes)?, test);
/// # Ok::<(), record::RecordError>(())
/// ```
pub fn encode_test<'b>(test: &PullTest, buffer: &'b mut [u8]) -> Result<&'b [u8], RecordError> {
    match TestV2::needed(test) {
        None => seal(&StoredTest::V1(TestV1::from(test)), buffer),
        Some(stored) => seal(&StoredTest::V2(stored), buffer),
    }
}

/// Reads a pull test of any version.
///
/// # Errors
///
/// [`RecordError::Damaged`], [`RecordError::Newer`] or [`RecordError::Impossible`].
///
/// ```
/// use tenter_core::record::{RecordError, decode_test};
///
/// assert_eq!(decode_test(b"not a record"), Err(RecordError::Damaged));
/// ```
pub fn decode_test(bytes: &[u8]) -> Result<PullTest, RecordError> {
    let test = match open(bytes, 1)? {
        StoredTest::V1(stored) => stored.restore(),
        StoredTest::V2(stored) => stored.restore(),
    };
    test.ok_or(RecordError::Impossible)
}

/// Writes a labelled demand into `buffer` ([`MAX_DEMAND_BYTES`] always do) and hands back the bytes used.
///
/// # Errors
///
/// [`RecordError::NoRoom`].
///
/// ```
/// use tenter_core::{Demand, record::{LabelledDemand, RecordError, encode_demand}};
///
/// let demand = LabelledDemand::new("tights", Demand::default()).unwrap();
/// assert_eq!(encode_demand(&demand, &mut [0; 3]), Err(RecordError::NoRoom));
/// ```
pub fn encode_demand<'b>(demand: &LabelledDemand, buffer: &'b mut [u8]) -> Result<&'b [u8], RecordError> {
    let limits = DemandV1::from(demand);
    match demand.demand.rest_seconds {
        DEFAULT_REST_SECONDS => seal(&StoredDemand::V1(limits), buffer),
        rest_seconds => seal(&StoredDemand::V2(DemandV2 { limits, rest_seconds }), buffer),
    }
}

/// Reads a labelled demand of any version.
///
/// # Errors
///
/// [`RecordError::Damaged`], [`RecordError::Newer`] or [`RecordError::Impossible`].
///
/// ```
/// use tenter_core::{Demand, record};
///
/// let demand = record::LabelledDemand::new("tights", Demand::default()).unwrap();
/// let mut buffer = [0; record::MAX_DEMAND_BYTES];
/// let bytes = record::encode_demand(&demand, &mut buffer)?;
/// assert_eq!(record::decode_demand(bytes)?, demand);
/// # Ok::<(), record::RecordError>(())
/// ```
pub fn decode_demand(bytes: &[u8]) -> Result<LabelledDemand, RecordError> {
    let demand = match open(bytes, 1)? {
        StoredDemand::V1(stored) => stored.restore(),
        StoredDemand::V2(stored) => stored.restore(),
    };
    demand.ok_or(RecordError::Impossible)
}

/// The CRC-32 (ISO-HDLC) at the end of every record, for others that need one too.
///
/// ```
/// // The check value of the catalogue of parametrised CRC algorithms.
/// assert_eq!(tenter_core::record::checksum(b"123456789"), 0xCBF4_3926);
/// ```
#[must_use]
pub fn checksum(bytes: &[u8]) -> u32 {
    CHECKSUM.checksum(bytes)
}

pub(crate) fn seal<'b>(record: &impl Serialize, buffer: &'b mut [u8]) -> Result<&'b [u8], RecordError> {
    let used = postcard::to_slice(record, buffer).map_err(|_| RecordError::NoRoom)?.len();
    close(buffer, used)
}

/// Writes the checksum behind the bytes used. Apart from what is generic, so that it is compiled once.
fn close(buffer: &mut [u8], used: usize) -> Result<&[u8], RecordError> {
    let end = used.checked_add(CHECKSUM_BYTES).ok_or(RecordError::NoRoom)?;
    let sealed = buffer.get_mut(..end).ok_or(RecordError::NoRoom)?;
    let (body, tail) = sealed.split_at_mut_checked(used).ok_or(RecordError::NoRoom)?;
    for (place, byte) in tail.iter_mut().zip(checksum(body).to_le_bytes()) {
        *place = byte;
    }
    Ok(sealed)
}

/// Checks the checksum, then the version (its number is the first byte), then decodes.
pub(crate) fn open<'b, T: Deserialize<'b>>(bytes: &'b [u8], newest: u8) -> Result<T, RecordError> {
    match postcard::take_from_bytes(body(bytes, newest)?) {
        Ok((record, [])) => Ok(record),
        _ => Err(RecordError::Damaged),
    }
}

/// What the checksum is of. Apart from what is generic, so that it is compiled once.
fn body(bytes: &[u8], newest: u8) -> Result<&[u8], RecordError> {
    let (body, stated) = bytes.split_last_chunk::<CHECKSUM_BYTES>().ok_or(RecordError::Damaged)?;
    if checksum(body) != u32::from_le_bytes(*stated) {
        return Err(RecordError::Damaged);
    }
    if *body.first().ok_or(RecordError::Damaged)? > newest {
        return Err(RecordError::Newer);
    }
    Ok(body)
}

#[derive(Serialize, Deserialize)]
enum StoredTest {
    V1(TestV1),
    V2(TestV2),
}

/// Lengths are counted in `unit` steps, their greatest common divisor, which makes most of them one byte.
#[derive(Serialize, Deserialize)]
pub(crate) struct TestV1 {
    unit: u32,
    gauge: u32,
    division: u32,
    ends: Ends,
    grain: Grain,
    held: Held,
    settled: bool,
    millinewtons: Option<u32>,
    /// Extended lengths less the gauge length.
    pulls: Vec<u32, MAX_PULLS>,
    rests: Vec<RestV1, MAX_RESTS>,
}

#[derive(Serialize, Deserialize)]
struct RestV1 {
    after_pull: u8,
    seconds: u32,
    /// Recovered length less the gauge length.
    growth: i32,
}

/// The first version with what was planned and the later looks at the gauge length.
#[derive(Serialize, Deserialize)]
pub(crate) struct TestV2 {
    readings: TestV1,
    gauge_before_settling: bool,
    planned: Option<u8>,
    looks: Vec<LookV2, { MAX_LOOKS - 1 }>,
}

#[derive(Serialize, Deserialize)]
struct LookV2 {
    after_pulls: u8,
    /// The length less the first look.
    apart: i32,
}

impl TestV2 {
    /// The test, where the first version cannot hold all of it.
    pub(crate) fn needed(test: &PullTest) -> Option<Self> {
        let plain = test.looks().count() == 1 && test.planned_pulls().is_none() && !test.gauge_before_settling();
        (!plain).then(|| Self::of(test))
    }

    /// The test in the second version, whatever it holds.
    pub(crate) fn of(test: &PullTest) -> Self {
        let readings = TestV1::from(test);
        let unit = i32::try_from(readings.unit).unwrap_or(1);
        let apart = |look: Look| (look.length.steps() - test.gauge().steps()).checked_div(unit).unwrap_or(0);
        Self {
            readings,
            gauge_before_settling: test.gauge_before_settling(),
            planned: test.planned_pulls(),
            looks: list(test.looks().skip(1).map(|look| LookV2 { after_pulls: look.after_pulls, apart: apart(look) })),
        }
    }

    pub(crate) fn restore(&self) -> Option<PullTest> {
        let test = self.readings.restore_with(&self.looks)?.with_gauge_before_settling(self.gauge_before_settling);
        match self.planned {
            Some(pulls) => test.with_planned_pulls(pulls).ok(),
            None => Some(test),
        }
    }
}

impl From<&PullTest> for TestV1 {
    fn from(test: &PullTest) -> Self {
        let gauge = test.gauge().steps();
        let division = test.scale().division().steps();
        let rests = test.rests().iter().map(|rest| rest.recovered);
        let lengths = test.pulls().iter().copied().chain(rests).chain(test.looks().map(|look| look.length));
        let unit = lengths.map(Length::steps).fold(common_divisor(gauge, division), common_divisor).max(1);
        let units = |steps: i32| steps.checked_div(unit).unwrap_or(0);
        Self {
            unit: unit.unsigned_abs(),
            gauge: units(gauge).unsigned_abs(),
            division: units(division).unsigned_abs(),
            ends: test.scale().ends(),
            grain: test.grain(),
            held: test.held(),
            settled: test.settled(),
            millinewtons: match test.load() {
                Load::Hand => None,
                Load::Force { millinewtons } => Some(millinewtons),
            },
            pulls: list(test.pulls().iter().map(|pull| units(pull.steps() - gauge).unsigned_abs())),
            rests: list(test.rests().iter().map(|rest| RestV1 {
                after_pull: rest.after_pull,
                seconds: rest.seconds,
                growth: units(rest.recovered.steps() - gauge),
            })),
        }
    }
}

impl TestV1 {
    pub(crate) fn restore(&self) -> Option<PullTest> {
        self.restore_with(&[])
    }

    /// The pull test, built reading by reading as the first time, so that nothing impossible comes back.
    fn restore_with(&self, looks: &[LookV2]) -> Option<PullTest> {
        let steps = |units: i64| {
            let steps = units.checked_mul(self.unit.into())?;
            i32::try_from(steps).ok().map(Length::from_steps)
        };
        let gauge = i64::from(self.gauge);
        let scale = Scale::new(steps(self.division.into())?, self.ends)?;
        let mut test = PullTest::new(steps(gauge)?, self.grain)
            .and_then(|test| test.with_scale(scale))
            .ok()?
            .with_held(self.held)
            .with_settling_pull(self.settled)
            .with_load(self.millinewtons.map_or(Load::Hand, |millinewtons| Load::Force { millinewtons }));
        let mut rests = self.rests.iter().peekable();
        let mut looks = looks.iter().peekable();
        let mut add_looks = |test: &mut PullTest| {
            let made = test.pulls().len();
            while let Some(look) = looks.next_if(|look| usize::from(look.after_pulls) == made) {
                test.add_look(steps(gauge + i64::from(look.apart))?).ok()?;
            }
            Some(looks.peek().is_none())
        };
        let mut all_looked = add_looks(&mut test)?;
        for (index, pull) in self.pulls.iter().enumerate() {
            test.add_stored_pull(steps(gauge + i64::from(*pull))?).ok()?;
            while let Some(rest) = rests.next_if(|rest| usize::from(rest.after_pull) == index) {
                test.add_rest(rest.seconds, steps(gauge + i64::from(rest.growth))?).ok()?;
            }
            all_looked = add_looks(&mut test)?;
        }
        (all_looked && rests.next().is_none()).then_some(test)
    }
}

fn common_divisor(mut a: i32, mut b: i32) -> i32 {
    while let Some(rest) = a.checked_rem(b) {
        (a, b) = (b, rest);
    }
    a
}

#[derive(Serialize, Deserialize)]
enum StoredDemand {
    V1(DemandV1),
    V2(DemandV2),
}

/// The first version with the time of growth and recovery.
#[derive(Serialize, Deserialize)]
struct DemandV2 {
    limits: DemandV1,
    rest_seconds: u32,
}

impl DemandV2 {
    fn restore(&self) -> Option<LabelledDemand> {
        let mut labelled = self.limits.restore()?;
        labelled.demand.rest_seconds = self.rest_seconds;
        (self.rest_seconds <= MAX_REST_SECONDS).then_some(labelled)
    }
}

#[derive(Serialize, Deserialize)]
struct DemandV1 {
    label: String<MAX_LABEL_BYTES>,
    /// At least and at most lengthwise, crosswise and on the bias, growth at most, recovery at least. One list, which a
    /// small processor reads in one loop.
    limits: Limits,
}

#[derive(Default, Serialize)]
struct Limits([Option<LimitV1>; 8]);

/// In a loop; what would be derived writes it out eight times.
impl<'de> Deserialize<'de> for Limits {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_tuple(8, Each)
    }
}

struct Each;

impl<'de> Visitor<'de> for Each {
    type Value = Limits;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("eight limits")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Limits, A::Error> {
        let mut limits = Limits::default();
        for (index, limit) in limits.0.iter_mut().enumerate() {
            *limit = seq.next_element()?.ok_or_else(|| Error::invalid_length(index, &self))?;
        }
        Ok(limits)
    }
}

#[derive(Serialize, Deserialize)]
enum LimitV1 {
    MilliPercent(u32),
    /// Gauge and extended length, in steps.
    Marks(u32, u32),
}

impl From<&LabelledDemand> for DemandV1 {
    fn from(labelled: &LabelledDemand) -> Self {
        let Demand { lengthwise, crosswise, bias, growth_at_most, recovery_at_least, .. } = labelled.demand;
        let limits = [
            lengthwise.at_least,
            lengthwise.at_most,
            crosswise.at_least,
            crosswise.at_most,
            bias.at_least,
            bias.at_most,
            growth_at_most,
            recovery_at_least,
        ];
        Self { label: labelled.label.clone(), limits: Limits(limits.map(|limit| limit.map(LimitV1::from))) }
    }
}

impl From<Limit> for LimitV1 {
    fn from(limit: Limit) -> Self {
        match limit.printed_marks() {
            Some((gauge, extended)) => Self::Marks(gauge.steps().unsigned_abs(), extended.steps().unsigned_abs()),
            None => Self::MilliPercent(u32::try_from(limit.ratio().percent(3).scaled()).unwrap_or(u32::MAX)),
        }
    }
}

impl LimitV1 {
    fn restore(&self) -> Option<Limit> {
        let length = |steps: u32| i32::try_from(steps).ok().map(Length::from_steps);
        match self {
            Self::MilliPercent(milli) => Limit::milli_percent(*milli).ok(),
            Self::Marks(gauge, extended) => Limit::marks(length(*gauge)?, length(*extended)?).ok(),
        }
    }
}

impl DemandV1 {
    fn restore(&self) -> Option<LabelledDemand> {
        let mut limits = [None; 8];
        for (limit, stored) in limits.iter_mut().zip(&self.limits.0) {
            if let Some(stored) = stored {
                *limit = Some(stored.restore()?);
            }
        }
        let [length_least, length_most, cross_least, cross_most, bias_least, bias_most, growth, recovery] = limits;
        let range = |at_least, at_most| Range { at_least, at_most };
        let demand = Demand {
            lengthwise: range(length_least, length_most),
            crosswise: range(cross_least, cross_most),
            bias: range(bias_least, bias_most),
            growth_at_most: growth,
            recovery_at_least: recovery,
            ..Demand::default()
        };
        Some(LabelledDemand { label: self.label.clone(), demand })
    }
}
