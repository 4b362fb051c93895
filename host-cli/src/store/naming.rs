//! Which identifiers the entries of one change get.

use jiff::{SignedDuration, Timestamp};

use super::StoreError;
use crate::log::here::{self, BEGUN};
use crate::log::{Entry, Fact, Id};

/// How far a clock may be ahead before what it named is not believed, and within which the same deed is known again.
const DAY: SignedDuration = SignedDuration::from_hours(24);

/// Refuses a clock by which nothing may be named.
///
/// # Errors
///
/// [`StoreError::Clock`].
pub fn possible(now: Timestamp) -> Result<(), StoreError> {
    if here::is_possible(now) { Ok(()) } else { Err(StoreError::Clock { shows: now }) }
}

/// Gives the facts of one change their identifiers.
///
/// Identifiers rise. An entry that was merged from a machine whose clock runs ahead has one of the future; those that
/// follow are named as if it were not there, unless they are about the same thing: there the order of what was said counts.
#[derive(Debug)]
pub struct Naming {
    now: Timestamp,
    random: fn() -> u128,
    /// The bits of the first, where they were made before.
    drawn: Option<u128>,
    last: Option<Id>,
    /// Who says it.
    who: Option<Id>,
    /// Whether something in the log lies in the future.
    ahead: bool,
}

impl Naming {
    /// At a time on the clock that all who share the log go by. `newest` tells the highest identifier in the log, or the
    /// highest one below another.
    ///
    /// # Errors
    ///
    /// That of `newest`.
    pub fn begin<E>(
        now: Timestamp,
        random: fn() -> u128,
        once: Option<Id>,
        mut newest: impl FnMut(Option<Id>) -> Result<Option<Id>, E>,
    ) -> Result<Self, E> {
        let mut last = newest(None)?;
        let future = Id::of(now.saturating_add(DAY).unwrap_or(now), 0);
        let ahead = now.as_second() >= BEGUN && last.is_some_and(|last| last >= future);
        if ahead {
            last = newest(Some(future))?;
        }
        Ok(Self { now, random, drawn: once.map(Id::drawn), last, who: None, ahead })
    }

    /// All of it said by a person.
    #[must_use]
    pub fn by(self, who: Option<Id>) -> Self {
        Self { who, ..self }
    }

    /// Names a fact. `last_about` tells the highest identifier of an entry about the same thing.
    ///
    /// # Errors
    ///
    /// That of `last_about`.
    pub fn name<E>(&mut self, fact: Fact, last_about: impl FnOnce(Id) -> Result<Option<Id>, E>) -> Result<Entry, E> {
        let drawn = self.drawn.take().unwrap_or_else(self.random);
        let id = Id::above(self.last, self.now, drawn);
        self.last = Some(id);
        let entry = Entry::new(id, fact).by(self.who);
        let subject = entry.subject().id();
        if !self.ahead || subject == id {
            return Ok(entry);
        }
        match last_about(subject)? {
            Some(about) if about >= id => {
                Ok(Entry::new(Id::above(Some(about), self.now, drawn), entry.fact).by(self.who))
            }
            _ => Ok(entry),
        }
    }
}

/// From which identifier on to look for one with the bits of `once`: a deed that is sent again within a day is known,
/// though the clock that made `once` is another.
#[must_use]
pub fn since(once: Id, now: Timestamp) -> Id {
    let from = once.at().min(now);
    Id::of(from.saturating_sub(DAY).unwrap_or_default(), 0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::FabricChange;

    fn at(text: &str) -> Timestamp {
        text.parse().unwrap()
    }

    fn named(now: &str, in_log: &[Id], facts: Vec<Fact>) -> Vec<Id> {
        let newest = |below: Option<Id>| {
            Ok::<_, ()>(in_log.iter().copied().filter(|id| below.is_none_or(|below| *id < below)).max())
        };
        let mut naming = Naming::begin(at(now), || 7, None, newest).unwrap();
        let about = |subject: Id| Ok::<_, ()>(Some(subject));
        facts.into_iter().map(|fact| naming.name(fact, about).unwrap().id).collect()
    }

    fn added() -> Fact {
        Fact::FabricAdded(FabricChange::default())
    }

    /// Two days ahead: later entries keep their own time, but for those about the thing that lies in the future.
    #[test]
    fn a_clock_that_runs_ahead_drags_nothing_along() {
        let ahead = Id::of(at("2026-03-03T12:00:00Z"), 1);
        let of_today = Id::of(at("2026-03-01T11:00:00Z"), 1);
        let facts = vec![added(), Fact::FabricRestored { fabric: ahead }, Fact::FabricRestored { fabric: of_today }];
        let ids = named("2026-03-01T12:00:00Z", &[of_today, ahead], facts);
        let times: Vec<String> = ids.iter().map(|id| id.at().to_string()).collect();
        assert_eq!(times, ["2026-03-01T12:00:00Z", "2026-03-03T12:00:00.001Z", "2026-03-01T12:00:00.002Z"]);
    }

    /// A clock that is behind by less than a day, or cannot be right at all, is mended by what the log holds.
    #[test]
    fn a_clock_that_was_set_back_does_not_count() {
        let last = Id::of(at("2026-03-01T12:00:00Z"), 1);
        for now in ["2026-03-01T00:00:00Z", "1970-01-01T00:00:00Z", "2000-01-01T00:00:00Z"] {
            let ids = named(now, &[last], vec![added(), added()]);
            let times: Vec<String> = ids.iter().map(|id| id.at().to_string()).collect();
            assert_eq!(times, ["2026-03-01T12:00:00.001Z", "2026-03-01T12:00:00.002Z"], "{now}");
        }
    }

    #[test]
    fn the_first_entry_takes_over_the_bits() {
        let once = Id::of(at("2026-03-01T11:59:00Z"), 0xfeed);
        let mut naming = Naming::begin(at("2026-03-01T12:00:00Z"), || 7, Some(once), |_| Ok::<_, ()>(None)).unwrap();
        let none = |_| Ok::<_, ()>(None);
        let (first, second) = (naming.name(added(), none).unwrap().id, naming.name(added(), none).unwrap().id);
        assert_eq!((first.drawn(), second.drawn()), (0xfeed, 7));
        assert!(since(once, first.at()) < first && first < second);
    }
}
