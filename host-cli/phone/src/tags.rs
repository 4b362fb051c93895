//! The tags that this phone gives, so that they are not those that the desk gives in the meantime.

use tenter::deed::{Refused, tags as deed};
use tenter::log::{Desk, TagHolder, TagRange};
use tenter::store::memory::Memory;
use tenter::store::{Drafts as _, Read as _, StoreError};
use tenter::words::errors;

/// How many tags a phone has for its own at first.
const MANY: u16 = 100;
/// The first and the last hundred from which a phone draws: below are those that a desk gives first.
const HUNDREDS: [u16; 2] = [10, 99];

/// Draws tags for a phone that has none of its own.
///
/// # Errors
///
/// A log that cannot be written.
pub fn draw(log: &mut Memory) -> Result<(), StoreError> {
    if log.desk()?.tags.is_some() {
        return Ok(());
    }
    another(log)
}

/// Draws other tags where all that this phone had are given or held by others, as they may be once another log came to it.
///
/// # Errors
///
/// A log that cannot be read or written.
pub fn renew(log: &mut Memory) -> Result<(), StoreError> {
    let given: Vec<u16> = log.fabrics()?.iter().map(|fabric| fabric.tag.number()).collect();
    match log.free_tags()?.next(&given) {
        Some(_) => Ok(()),
        None => another(log),
    }
}

/// Lets every copy of the log know which tags are this phone's, before anything of it is handed over. Of two phones that drew the
/// same the one that handed over later draws others.
///
/// # Errors
///
/// A log that cannot be read or written.
pub fn take(log: &mut Memory) -> Result<(), StoreError> {
    match deed::give(log, TagHolder::Phone, log.desk()?.tags) {
        Err(Refused::TagsHeld { .. }) => {
            another(log)?;
            match deed::give(log, TagHolder::Phone, log.desk()?.tags) {
                Err(Refused::Store(error)) => Err(error),
                _ => Ok(()),
            }
        }
        Err(Refused::Store(error)) => Err(error),
        _ => Ok(()),
    }
}

fn another(log: &mut Memory) -> Result<(), StoreError> {
    let given: Vec<u16> = log.fabrics()?.iter().map(|fabric| fabric.tag.number()).collect();
    let mine = log.desk()?.copy;
    let held: Vec<TagRange> =
        log.held_tags()?.iter().filter(|held| Some(held.holder) != mine).map(|held| held.tags).collect();
    let drawn = free(log.here().number(), &given, &held);
    log.set_desk(&Desk { tags: Some(drawn), ..log.desk()? })
}

/// The hundred tags that fall to a number.
fn hundred(number: u32) -> TagRange {
    let [first, last] = HUNDREDS;
    let drawn = number % u32::from(last - first + 1);
    let least = MANY * (first + u16::try_from(drawn).unwrap_or_default());
    TagRange { least, most: least + MANY - 1 }
}

/// The first hundred from the one drawn on of which nobody has or holds a tag; where there is none, all tags.
fn free(number: u32, given: &[u16], held: &[TagRange]) -> TagRange {
    let [first, last] = HUNDREDS;
    (0..=u32::from(last - first))
        .map(|further| hundred(number.wrapping_add(further)))
        .find(|tags| !given.iter().any(|tag| tags.holds(*tag)) && !held.iter().any(|held| held.meets(*tags)))
        .unwrap_or(TagRange::ALL)
}

/// The tags of this phone, as they are typed.
#[must_use]
pub fn told(log: &Memory) -> String {
    log.desk().ok().and_then(|desk| desk.tags).unwrap_or(TagRange::ALL).to_string()
}

/// What came of a choice of tags.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Chosen {
    /// They are this phone's.
    Done,
    /// What was typed is no range.
    NoRange,
    /// Somebody else holds some of them, as the words say.
    Held(String),
}

/// Takes what a form says of them.
///
/// # Errors
///
/// A log that cannot be written.
pub fn choose(log: &mut Memory, body: &[u8]) -> Result<Chosen, StoreError> {
    let typed = form_urlencoded::parse(body).find(|(name, _)| name == "tags");
    let Some(tags) = typed.and_then(|(_, typed)| TagRange::parse(&typed)) else { return Ok(Chosen::NoRange) };
    match deed::give(log, TagHolder::Phone, Some(tags)) {
        Ok(()) => Ok(Chosen::Done),
        Err(Refused::Store(error)) => Err(error),
        Err(refused) => Ok(Chosen::Held(errors::page::refused(&refused).1.join(" "))),
    }
}

#[cfg(test)]
mod tests {
    use tenter::log::{FabricChange, Fact};
    use tenter::store::Change as _;

    use super::*;
    use crate::here::here;

    #[test]
    fn a_phone_draws_once_and_can_be_told_otherwise() {
        let mut log = Memory::new(here());
        draw(&mut log).unwrap();
        let drawn = told(&log);
        assert_eq!(drawn, "1700-1799", "its number is 7");
        assert_eq!(choose(&mut log, b"tags=300+to+399"), Ok(Chosen::Done));
        draw(&mut log).unwrap();
        assert_eq!(told(&log), "300-399");
        for wrong in ["tags=", "tags=9-1", "other=1-9", "tags=0-9", ""] {
            assert_eq!(choose(&mut log, wrong.as_bytes()), Ok(Chosen::NoRange), "{wrong}");
        }
        assert_eq!(told(&log), "300-399");
    }

    #[test]
    fn a_phone_whose_tags_are_all_given_draws_others() {
        let mut log = Memory::new(here());
        draw(&mut log).unwrap();
        let give = |tags: std::ops::RangeInclusive<u16>, log: &mut Memory| {
            let named = tags.map(|tag| {
                Fact::FabricAdded(FabricChange {
                    tag: Some(tag),
                    name: Some("twill".into()),
                    ..FabricChange::default()
                })
            });
            log.add(&named.collect::<Vec<_>>()).unwrap();
            renew(log).unwrap();
        };
        give(1_701..=1_799, &mut log);
        assert_eq!(told(&log), "1700-1799", "one is left");
        give(1_700..=1_700, &mut log);
        assert_eq!(told(&log), "1800-1899");
        give(1_000..=9_999, &mut log);
        assert_eq!(told(&log), "1-65535", "every hundred is given");
    }

    /// Two phones that drew the same: once the one has seen what the other handed over, it takes others.
    #[test]
    fn of_two_phones_that_drew_the_same_one_gives_way() {
        let (mut one, mut other) = (Memory::new(here()), Memory::new(here()));
        for log in [&mut one, &mut other] {
            draw(log).unwrap();
            assert_eq!(told(log), "1700-1799");
        }
        take(&mut one).unwrap();
        take(&mut one).unwrap();
        assert_eq!(one.count(), Ok(1), "it is said once");
        let entries = one.history(tenter::log::Subject::Tags).unwrap();
        other.merge_all::<_, StoreError>(entries.into_iter().map(Ok)).unwrap();
        renew(&mut other).unwrap();
        assert_eq!(told(&other), "1800-1899");
        take(&mut other).unwrap();
        assert_eq!(other.held_tags().unwrap().len(), 2);
        let Ok(Chosen::Held(words)) = choose(&mut other, b"tags=1750-1760") else { panic!("they are the other's") };
        assert!(words.contains("1700-1799"), "{words}");
    }
}
