//! Tests as a handheld sends them, as entries of the log.

use crc::{CRC_82_DARC, Crc};
use jiff::{SignedDuration, Timestamp};
use tenter_core::record::RecordError;
use tenter_core::saved::{self, Meant, SavedTest};

use super::entry::{Entry, Fact};
use super::id::Id;
use super::tested::{Device, Marks, Tested};

/// Any 80 bits that mix well would do, as long as they never change: identifiers in every log rest on them.
const DRAW: Crc<u128> = Crc::<u128>::new(&CRC_82_DARC);
/// How far a handheld's clock may be ahead before it is not believed.
const DAY: SignedDuration = SignedDuration::from_hours(24);
/// The smallest difference between two times in the log.
const TICK: SignedDuration = SignedDuration::from_millis(1);

/// A test that a handheld sent, read and named.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FromHandheld {
    /// The identifier that every machine gives it which ever fetches it.
    pub id: Id,
    /// The handheld, and the number it gave the test.
    pub device: Device,
    /// The test with its tag and clock.
    pub saved: SavedTest,
}

impl FromHandheld {
    /// Reads a record.
    ///
    /// The identifier holds the time of saving, or 1970 where the clock was not set, and 80 bits drawn from the
    /// handheld's number, the test's number and the record. So a test that is fetched twice, or on two machines, is one
    /// test; and one that bears a number again, from a memory that was exchanged, is another.
    ///
    /// # Errors
    ///
    /// [`RecordError`]; [`RecordError::Impossible`] also for a test without a pull.
    pub fn read(device: Device, record: &[u8]) -> Result<Self, RecordError> {
        let saved = saved::decode(record)?;
        if saved.test.pulls().is_empty() {
            return Err(RecordError::Impossible);
        }
        let mut draw = DRAW.digest();
        draw.update(&device.device.to_le_bytes());
        draw.update(&device.number.to_le_bytes());
        draw.update(record);
        let id = Id::of(saved_at(&saved).unwrap_or_default(), draw.finalize());
        Ok(Self { id, device, saved })
    }

    /// When it was saved, where the handheld knew.
    #[must_use]
    pub fn saved_at(&self) -> Option<Timestamp> {
        saved_at(&self.saved)
    }

    /// The tag, where one was dialled.
    #[must_use]
    pub fn tag(&self) -> Option<u16> {
        (self.saved.tag != 0).then_some(self.saved.tag)
    }

    /// The entry that stores it. It names no cloth: that is for the log it comes into to say, and every machine shall
    /// write the same entry.
    #[must_use]
    pub fn entry(&self, pulled: Timestamp) -> Entry {
        let said = Tested {
            fabric: None,
            tag: self.tag(),
            pulled,
            // One that says a time to come says nothing.
            clock_unset: self.saved_at() != Some(pulled),
            device: Some(self.device),
            pulled_by: None,
            marks: Marks {
                new_tag: self.saved.meant == Meant::New,
                cloth_mark: match self.saved.meant {
                    Meant::Cloth(mark) => Some(mark),
                    Meant::New | Meant::Unsaid => None,
                },
                puller_mark: self.saved.by,
            },
            note: String::new(),
            as_read: Vec::new(),
            test: self.saved.test.clone(),
        };
        Entry::new(self.id, Fact::TestStored(said))
    }
}

fn saved_at(saved: &SavedTest) -> Option<Timestamp> {
    Timestamp::from_second(saved.clock.unix_s?.into()).ok()
}

/// When each of several tests counts as pulled, given in the order in which they were saved: when it was saved, or, where
/// the handheld did not know the time or was more than a day ahead, when it was fetched, `now`. The order stays: the last one
/// counts.
///
/// The time since power-on that a record also holds does not help: between saving and fetching the handheld may have
/// been switched off and on, and then counts from zero; nothing in it says how often.
#[must_use]
pub fn pulled(tests: &[FromHandheld], now: Timestamp) -> Vec<Timestamp> {
    let mut times = Vec::new();
    let believed = now.saturating_add(DAY).unwrap_or(now);
    // Backwards: a test was saved before the next one.
    let mut latest = now;
    for test in tests.iter().rev() {
        let at = test.saved_at().filter(|at| *at <= believed).unwrap_or(latest);
        latest = latest.min(at).saturating_sub(TICK).unwrap_or(latest);
        times.push(at);
    }
    times.reverse();
    times
}

#[cfg(test)]
mod tests {
    use tenter_core::saved::Clock;
    use tenter_core::{Grain, Length, PullTest};

    use super::*;

    fn saved(tag: u16, unix_s: Option<u32>) -> Vec<u8> {
        let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
        test.add_pull(Length::from_mm(105)).unwrap();
        let saved = SavedTest::new(tag, Clock { uptime_s: 90, unix_s }, test);
        saved::encode(&saved, &mut [0; saved::MAX_SAVED_BYTES]).unwrap().to_vec()
    }

    fn read(number: u32, record: &[u8]) -> FromHandheld {
        FromHandheld::read(Device { device: 7, number }, record).unwrap()
    }

    /// Identifiers must never change. The drawn bits are those of the catalogue of parametrised CRC algorithms for
    /// CRC-82/DARC (check value 09ea83f625023801fd612), worked out bit by bit with a few lines of Python over the
    /// handheld's number, the test's number and the record.
    #[test]
    fn an_identifier_is_always_the_same() {
        assert_eq!(DRAW.checksum(b"123456789"), 0x9ea8_3f62_5023_801f_d612);
        let record = saved(3, Some(1_795_564_800));
        let hex: String = record.iter().map(|byte| format!("{byte:02x}")).collect();
        assert_eq!(hex, "00035a0180ca98d806c00c640100010100000105002662e368");
        assert_eq!(read(5, &record).id.to_string(), "01M8801200PTP35BC09494MW44");
    }

    #[test]
    fn another_number_handheld_or_reading_is_another_test() {
        let record = saved(3, None);
        let here = read(5, &record).id;
        assert_eq!(here.at(), Timestamp::UNIX_EPOCH, "the clock was not set");
        assert_ne!(here, read(6, &record).id);
        assert_ne!(here, read(5, &saved(4, None)).id);
        assert_ne!(here, FromHandheld::read(Device { device: 8, number: 5 }, &record).unwrap().id);
    }

    #[test]
    fn tests_count_in_the_order_in_which_they_were_saved() {
        let now = Timestamp::from_second(2_000).unwrap();
        let of = |clocks: &[Option<u32>]| -> Vec<i64> {
            let tests: Vec<_> = (1..).zip(clocks).map(|(number, clock)| read(number, &saved(1, *clock))).collect();
            pulled(&tests, now).into_iter().map(Timestamp::as_millisecond).collect()
        };
        assert_eq!(of(&[None, None]), [1_999_999, 2_000_000], "when they were fetched, the last one last");
        assert_eq!(of(&[None, Some(1_000), None]), [999_999, 1_000_000, 2_000_000], "before the one that followed");
        assert_eq!(of(&[Some(3_000), None]), [3_000_000, 2_000_000], "a clock that ran ahead is believed");
        assert_eq!(of(&[Some(90_000), None]), [1_999_999, 2_000_000], "more than a day ahead it is not");
        assert_eq!(of(&[]), [0; 0]);
    }

    #[test]
    fn a_test_without_a_pull_is_none() {
        let test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
        let empty = SavedTest::new(1, Clock::default(), test);
        let mut buffer = [0; saved::MAX_SAVED_BYTES];
        let record = saved::encode(&empty, &mut buffer).unwrap();
        assert_eq!(FromHandheld::read(Device { device: 7, number: 1 }, record), Err(RecordError::Impossible));
        assert_eq!(FromHandheld::read(Device { device: 7, number: 1 }, b"?"), Err(RecordError::Damaged));
    }
}
