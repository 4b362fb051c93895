//! What only the machine can tell: the time, chance, and what its clock on the wall shows.

use core::fmt;

use jiff::civil::DateTime;
use jiff::tz::Offset;
use jiff::{SignedDuration, Timestamp};

/// No log is older, so a clock before this is wrong: the first of January 2026, in seconds since 1970.
pub const BEGUN: i64 = 1_767_225_600;
/// A clock that shows the year 2200 or a later one is wrong: the first of January of it, in seconds since 1970.
const TOO_LATE: i64 = 7_258_118_400;
/// How far another's clock may be ahead before it is not believed.
const DAY: SignedDuration = SignedDuration::from_hours(24);
/// The latest time that a log can hold, in whole seconds: what is later in its last second has no whole milliseconds.
pub const EVER: Timestamp = Timestamp::constant(253_402_207_200, 0);

/// The time, chance and the wall clock of the place where the program runs; handed in from outside, so that a test can
/// fix all three and a page can take them from its browser.
#[derive(Clone, Copy)]
pub struct Here {
    /// The present time.
    pub now: fn() -> Timestamp,
    /// Random bits, all 128 of them.
    pub random: fn() -> u128,
    /// By how much the wall clock is ahead of UTC at a time.
    pub offset: fn(Timestamp) -> Offset,
}

impl Here {
    /// This machine, with the time zone it is set to.
    #[cfg(feature = "desk")]
    #[must_use]
    pub fn desk() -> Self {
        use jiff::tz::TimeZone;

        Self {
            now: Timestamp::now,
            random: || ulid::Ulid::generate().random() | ulid::Ulid::generate().random() << 80,
            offset: |at| TimeZone::system().to_offset(at),
        }
    }

    /// The present time in whole milliseconds, as identifiers hold it; never before 1970.
    #[must_use]
    pub fn now(self) -> Timestamp {
        Timestamp::from_millisecond((self.now)().as_millisecond().max(0)).unwrap_or_default()
    }

    /// The latest time that a clock elsewhere can have given, as far as this one tells: a day ahead of it. One that is wrong
    /// itself tells nothing; then it is the end of the year 2199.
    #[must_use]
    pub fn latest(self) -> Timestamp {
        let end = Timestamp::from_second(TOO_LATE).unwrap_or(EVER);
        let now = self.now();
        if now.as_second() < BEGUN { end } else { end.min(now.saturating_add(DAY).unwrap_or(end)) }
    }

    /// A random number that is not 0.
    #[must_use]
    pub fn number(self) -> u32 {
        let random = (self.random)().to_le_bytes();
        random.as_chunks::<4>().0.iter().map(|four| u32::from_le_bytes(*four)).find(|one| *one != 0).unwrap_or(1)
    }

    /// What the wall clock shows at a time.
    #[must_use]
    pub fn shows(self, at: Timestamp) -> DateTime {
        (self.offset)(at).to_datetime(at)
    }

    /// The day that the wall clock shows at a time, counted from 1970-01-01.
    #[must_use]
    pub fn day(self, at: Timestamp) -> i32 {
        let seconds = at.as_second().saturating_add((self.offset)(at).seconds().into());
        i32::try_from(seconds.div_euclid(86_400)).unwrap_or_default()
    }

    /// The time at which the wall clock shows this: the first of two where it was set back, and as if it had not been
    /// set forward where it never showed it (the rule of RFC 5545, § 3.3.5). None outside the years that can be told.
    #[must_use]
    pub fn when(self, shows: DateTime) -> Option<Timestamp> {
        let roughly = Offset::UTC.to_timestamp(shows).ok()?;
        // No wall clock is a day away from UTC, and none is set twice within two days.
        let before = (self.offset)(roughly.checked_sub(DAY).unwrap_or(roughly));
        let after = (self.offset)(roughly.checked_add(DAY).unwrap_or(roughly));
        let at = |offset: Offset| offset.to_timestamp(shows).ok();
        let holds = |offset: Offset| at(offset).filter(|at| (self.offset)(*at) == offset);
        match (holds(before), holds(after)) {
            (Some(one), Some(other)) => Some(one.min(other)),
            (one, other) => one.or(other).or_else(|| at(before)),
        }
    }
}

/// Whether a clock that names what is stored can be right: one of the year 2200 or later would name things for ever after
/// what all others say.
#[must_use]
pub fn is_possible(now: Timestamp) -> bool {
    now.as_second() < TOO_LATE
}

impl fmt::Debug for Here {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Here")
    }
}

#[cfg(test)]
mod tests {
    use jiff::tz::TimeZone;

    use super::*;

    /// Central European time: an hour ahead of UTC, two from the last Sunday of March to that of October.
    fn central_european() -> TimeZone {
        TimeZone::posix("CET-1CEST,M3.5.0,M10.5.0/3").unwrap()
    }

    fn here() -> Here {
        let now = || "2026-03-01T12:00:00.1239Z".parse().unwrap();
        Here { now, random: || 7 << 32, offset: |at| central_european().to_offset(at) }
    }

    #[test]
    fn time_chance_and_wall_clock_are_those_handed_in() {
        assert_eq!(here().now().to_string(), "2026-03-01T12:00:00.123Z");
        assert_eq!(here().number(), 7, "the first that is not 0");
        assert_eq!(here().shows(here().now()).to_string(), "2026-03-01T13:00:00.123");
        let mut ids = crate::log::Ids::after(here(), None);
        let (one, other) = (ids.next(), ids.next());
        assert_eq!((one.at(), one.drawn()), (here().now(), 7 << 32));
        assert_eq!((other.at(), other.drawn()), (here().now() + SignedDuration::from_millis(1), 7 << 32));
    }

    #[test]
    fn what_another_clock_can_have_given() {
        let at = |now: fn() -> Timestamp| Here { now, ..here() }.latest().to_string();
        assert_eq!(at(|| "2026-03-01T12:00:00Z".parse().unwrap()), "2026-03-02T12:00:00Z");
        for wrong in [|| Timestamp::UNIX_EPOCH, || "2025-12-31T23:59:59Z".parse().unwrap(), || EVER] {
            assert_eq!(at(wrong), "2200-01-01T00:00:00Z");
        }
        assert_eq!(Timestamp::from_millisecond(EVER.as_millisecond()).unwrap(), EVER);
        assert!(is_possible(here().now()) && !is_possible("2200-01-01T00:00:00Z".parse().unwrap()));
    }

    /// Half an hour before midnight and half an hour after it, by the wall clock of the place and not by UTC.
    #[test]
    fn a_day_ends_at_midnight_of_the_place() {
        let day = |shows: &str| here().day(here().when(shows.parse().unwrap()).unwrap());
        assert_eq!(day("1970-01-02T00:30:00"), 1);
        for month in ["03-29", "07-01", "10-25"] {
            let late = day(&format!("2026-{month}T23:30:00"));
            let next: DateTime = format!("2026-{month}T00:30:00").parse().unwrap();
            let next = next.checked_add(SignedDuration::from_hours(24)).unwrap();
            assert_eq!(day(&next.to_string()), late + 1, "{month}");
            assert_eq!(day(&format!("2026-{month}T00:30:00")), late, "{month}");
        }
    }

    /// Against jiff, which knows the whole zone, hour by hour over a year with both changes of the clock.
    #[test]
    fn the_wall_clock_is_read_back() {
        let zone = central_european();
        let mut shows: DateTime = "2026-01-01T00:30:00".parse().unwrap();
        for _ in 0..365 * 24 {
            assert_eq!(here().when(shows), zone.to_timestamp(shows).ok(), "{shows}");
            shows = shows.checked_add(SignedDuration::from_hours(1)).unwrap();
        }
    }
}
