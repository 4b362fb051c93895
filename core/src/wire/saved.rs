//! A test as the handheld keeps and sends it: the readings with the tag on the cloth and the time of saving.
//!
//! The bytes follow the rules of [`record`](crate::wire::record), and its promise.

use serde::{Deserialize, Serialize};

use crate::reading::pull_test::PullTest;
use crate::wire::record::{RecordError, TestV1, TestV2, open, seal};

/// The most bytes a saved test takes, checksum included. An everyday test (five pulls, two readings after release)
/// takes 39.
pub const MAX_SAVED_BYTES: usize = 199;

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

/// A pull test with the tag on the cloth and the time of saving.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, saved::{Clock, SavedTest}};
///
/// let test = PullTest::new(Length::from_mm(100), Grain::Bias).unwrap();
/// let saved = SavedTest { tag: 7, clock: Clock::default(), test };
/// assert_eq!(saved.tag, 7);
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct SavedTest {
    /// The number pinned to the cloth or written on the swatch.
    pub tag: u16,
    /// When it was saved.
    pub clock: Clock,
    /// The readings.
    pub test: PullTest,
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
/// let saved = SavedTest { tag: 7, clock: Clock { uptime_s: 90, unix_s: None }, test };
/// let mut buffer = [0; saved::MAX_SAVED_BYTES];
/// let bytes = saved::encode(&saved, &mut buffer)?;
/// assert_eq!(saved::decode(bytes)?, saved);
/// # Ok::<(), tenter_core::record::RecordError>(())
/// ```
pub fn encode<'b>(saved: &SavedTest, buffer: &'b mut [u8]) -> Result<&'b [u8], RecordError> {
    let SavedTest { tag, clock: Clock { uptime_s, unix_s }, test } = saved;
    let (tag, uptime_s, unix_s) = (*tag, *uptime_s, *unix_s);
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
    let (tag, uptime_s, unix_s, test) = match open(bytes, 1)? {
        StoredSaved::V1(Saved { tag, uptime_s, unix_s, test }) => (tag, uptime_s, unix_s, test.restore()),
        StoredSaved::V2(Saved { tag, uptime_s, unix_s, test }) => (tag, uptime_s, unix_s, test.restore()),
    };
    let test = test.ok_or(RecordError::Impossible)?;
    Ok(SavedTest { tag, clock: Clock { uptime_s, unix_s }, test })
}

#[derive(Serialize, Deserialize)]
enum StoredSaved {
    V1(Saved<TestV1>),
    V2(Saved<TestV2>),
}

#[derive(Serialize, Deserialize)]
struct Saved<T> {
    tag: u16,
    uptime_s: u32,
    unix_s: Option<u32>,
    test: T,
}
