//! A test as the handheld keeps and sends it: the readings with the tag on the cloth and the time of saving.
//!
//! The bytes follow the rules of [`record`](crate::wire::record), and its promise.

use serde::{Deserialize, Serialize};

use crate::reading::pull_test::PullTest;
use crate::wire::record::{RecordError, TestV1, TestV2, open, seal};

/// The most bytes a saved test takes, checksum included. An everyday test (five pulls, two readings after release)
/// takes 39, and up to 12 more where it says whose cloth it is and who pulled.
pub const MAX_SAVED_BYTES: usize = 211;

/// When something was, on a handheld that may not know the date.
///
/// ```
/// use tenter_core::saved::Clock;
///
/// let never_set = Clock { uptime_s: 90, unix_s: None };
/// assert_eq!(never_set.uptime_s, 90);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Clock {
    /// Seconds since the handheld was switched on.
    pub uptime_s: u32,
    /// Seconds since the start of 1970, where the host has set the clock since then.
    pub unix_s: Option<u32>,
}

/// Which cloth a person meant who saved a test: a tag alone is not enough, since two logs may have given one tag twice.
///
/// ```
/// assert_eq!(tenter_core::saved::Meant::default(), tenter_core::saved::Meant::Unsaid);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Meant {
    /// It does not say; a person has to.
    #[default]
    Unsaid,
    /// A cloth that no log knew then, under a tag that was lent to the handheld.
    New,
    /// The cloth that a log knows by this mark: the handheld showed its name, and the person agreed.
    Cloth(u32),
}

/// A pull test with the tag on the cloth and the time of saving.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, saved::{Clock, Meant, SavedTest}};
///
/// let test = PullTest::new(Length::from_mm(100), Grain::Bias).unwrap();
/// let saved = SavedTest::new(7, Clock::default(), test);
/// assert_eq!((saved.tag, saved.meant, saved.by), (7, Meant::Unsaid, None));
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct SavedTest {
    /// The number pinned to the cloth or written on the swatch.
    pub tag: u16,
    /// When it was saved.
    pub clock: Clock,
    /// Which cloth has that number.
    pub meant: Meant,
    /// Who pulled: the mark of a person, where one was chosen.
    pub by: Option<u32>,
    /// The readings.
    pub test: PullTest,
}

impl SavedTest {
    /// A test under a tag alone, by nobody in particular.
    #[must_use]
    pub const fn new(tag: u16, clock: Clock, test: PullTest) -> Self {
        Self { tag, clock, meant: Meant::Unsaid, by: None, test }
    }
}

/// Writes a saved test into `buffer` ([`MAX_SAVED_BYTES`] always do) and hands back the bytes used.
///
/// # Errors
///
/// [`RecordError::NoRoom`].
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, saved::{self, Clock, SavedTest}};
///
/// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
/// let saved = SavedTest::new(7, Clock { uptime_s: 90, unix_s: None }, test);
/// let mut buffer = [0; saved::MAX_SAVED_BYTES];
/// let bytes = saved::encode(&saved, &mut buffer)?;
/// assert_eq!(saved::decode(bytes)?, saved);
/// # Ok::<(), tenter_core::record::RecordError>(())
/// ```
pub fn encode<'b>(saved: &SavedTest, buffer: &'b mut [u8]) -> Result<&'b [u8], RecordError> {
    let SavedTest { tag, clock: Clock { uptime_s, unix_s }, meant, by, test } = saved;
    let (tag, uptime_s, unix_s) = (*tag, *uptime_s, *unix_s);
    if *meant != Meant::Unsaid || by.is_some() {
        let readings = Saved { tag, uptime_s, unix_s, test: TestV2::of(test) };
        return seal(&StoredSaved::V3(SavedV3 { readings, meant: *meant, by: *by }), buffer);
    }
    match TestV2::needed(test) {
        None => seal(&StoredSaved::V1(Saved { tag, uptime_s, unix_s, test: TestV1::from(test) }), buffer),
        Some(test) => seal(&StoredSaved::V2(Saved { tag, uptime_s, unix_s, test }), buffer),
    }
}

/// Reads a saved test of any version.
///
/// # Errors
///
/// [`RecordError::Damaged`], [`RecordError::Newer`] or [`RecordError::Impossible`].
///
/// ```
/// use tenter_core::{record::RecordError, saved};
///
/// assert_eq!(saved::decode(b"not a saved test"), Err(RecordError::Damaged));
/// ```
pub fn decode(bytes: &[u8]) -> Result<SavedTest, RecordError> {
    match open(bytes, 2)? {
        StoredSaved::V1(saved) => saved.restore(TestV1::restore, Meant::Unsaid, None),
        StoredSaved::V2(saved) => saved.restore(TestV2::restore, Meant::Unsaid, None),
        StoredSaved::V3(SavedV3 { readings, meant, by }) => readings.restore(TestV2::restore, meant, by),
    }
    .ok_or(RecordError::Impossible)
}

#[derive(Serialize, Deserialize)]
enum StoredSaved {
    V1(Saved<TestV1>),
    V2(Saved<TestV2>),
    V3(SavedV3),
}

/// The first version that says which cloth was meant, and who pulled.
#[derive(Serialize, Deserialize)]
struct SavedV3 {
    readings: Saved<TestV2>,
    meant: Meant,
    by: Option<u32>,
}

#[derive(Serialize, Deserialize)]
struct Saved<T> {
    tag: u16,
    uptime_s: u32,
    unix_s: Option<u32>,
    test: T,
}

impl<T> Saved<T> {
    fn restore(&self, test: impl Fn(&T) -> Option<PullTest>, meant: Meant, by: Option<u32>) -> Option<SavedTest> {
        let clock = Clock { uptime_s: self.uptime_s, unix_s: self.unix_s };
        Some(SavedTest { tag: self.tag, clock, meant, by, test: test(&self.test)? })
    }
}
