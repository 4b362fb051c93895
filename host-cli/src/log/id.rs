//! Identifiers that sort by time and never collide between machines.

use std::fmt;
use std::str::FromStr;

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use ulid::Ulid;

use super::here::Here;

/// Identifiers of the year 2200 and later are not believed: everything added after one of them would have to be later
/// still. In milliseconds since 1970.
const TOO_LATE: u64 = 7_258_118_400_000;

/// An identifier: 48 bits of milliseconds since 1970 and 80 random bits, as text of 26 letters and digits (the ULID
/// specification).
///
/// ```
/// use tenter::log::{Here, Ids};
///
/// let mut ids = Ids::after(Here::desk(), None);
/// assert!(ids.next() < ids.next());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Id(Ulid);

impl Id {
    /// What entries are about that tell whose tags are whose: the time of no entry.
    pub const TAGS: Self = Self(Ulid::from_parts(0, 1));

    /// The identifier of something that names itself: its time and 80 bits drawn from it. Two machines that met the
    /// same thing give it the same identifier.
    #[must_use]
    pub fn of(at: Timestamp, drawn: u128) -> Self {
        let ms = at.as_millisecond();
        Self(Ulid::from_parts(if ms > 0 { ms.unsigned_abs() } else { 0 }, drawn))
    }

    /// Reads the identifier of an entry from elsewhere, if a program can have given it: none of a time that is not to be
    /// believed, none that is written in another way than this program writes it.
    ///
    /// ```
    /// use tenter::log::Id;
    ///
    /// assert!(Id::from_elsewhere("01KNDF0W00ZJVFW13CDDH771ST").is_some());
    /// assert!(Id::from_elsewhere("7ZZZZZZZZZZZZZZZZZZZZZZZZZ").is_none());
    /// ```
    #[must_use]
    pub fn from_elsewhere(text: &str) -> Option<Self> {
        let id: Self = text.parse().ok()?;
        (id.0.timestamp_ms() < TOO_LATE && id.to_string() == text).then_some(id)
    }

    /// When it was given.
    #[must_use]
    pub fn at(self) -> Timestamp {
        i64::try_from(self.0.timestamp_ms())
            .ok()
            .and_then(|ms| Timestamp::from_millisecond(ms).ok())
            .unwrap_or_default()
    }

    /// Its 80 random bits.
    #[must_use]
    pub const fn drawn(self) -> u128 {
        self.0.random()
    }

    /// An identifier of this time with these bits, or, where the clock is not beyond `last`, of the millisecond after it:
    /// so it is above `last`, and the bits still keep it apart from those of other machines.
    #[must_use]
    pub fn above(last: Option<Self>, now: Timestamp, drawn: u128) -> Self {
        let fresh = Self::of(now, drawn);
        match last {
            Some(last) if last >= fresh => {
                Self(Ulid::from_parts(last.0.timestamp_ms().saturating_add(1), fresh.0.random()))
            }
            _ => fresh,
        }
    }

    /// Its last six letters, enough to tell the tests of one cloth apart.
    #[must_use]
    pub fn short(self) -> String {
        let text = self.to_string();
        text.get(text.len().saturating_sub(6)..).unwrap_or_default().to_lowercase()
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl FromStr for Id {
    type Err = ulid::DecodeError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        Ulid::from_string(text).map(Self)
    }
}

impl TryFrom<String> for Id {
    type Error = ulid::DecodeError;

    fn try_from(text: String) -> Result<Self, Self::Error> {
        text.parse()
    }
}

impl From<Id> for String {
    fn from(id: Id) -> Self {
        id.to_string()
    }
}

/// Gives identifiers, each above the one before.
#[derive(Debug)]
pub struct Ids {
    here: Here,
    last: Option<Id>,
}

impl Ids {
    /// Gives identifiers above `last`, even where the clock has since been set back.
    #[must_use]
    pub fn after(here: Here, last: Option<Id>) -> Self {
        Self { here, last }
    }

    /// The next identifier.
    #[allow(clippy::should_implement_trait)] // It never ends, so an iterator would say too little.
    pub fn next(&mut self) -> Id {
        let next = Id::above(self.last, self.here.now(), (self.here.random)());
        self.last = Some(next);
        next
    }
}

/// Of this machine, for a trial.
#[cfg(feature = "desk")]
impl Default for Ids {
    fn default() -> Self {
        Self::after(Here::desk(), None)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn identifiers_rise_though_the_clock_was_set_back() {
        let here = Here::desk();
        let future = Id(Ulid::from_parts(here.now().as_millisecond().unsigned_abs() + 86_400_000, 7));
        let mut ids = Ids::after(here, Some(future));
        let mut before = future;
        for _ in 0..1000 {
            let next = ids.next();
            assert!(next > before, "{next} after {before}");
            before = next;
        }
    }

    #[test]
    fn text_and_order_agree() {
        let mut ids = Ids::default();
        let (a, b) = (ids.next(), ids.next());
        assert!(a.to_string() < b.to_string());
        assert_eq!(a.to_string().parse(), Ok(a));
    }
}
