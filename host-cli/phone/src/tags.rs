//! The tags that this phone gives, so that they are not those that the desk gives in the meantime.

use tenter::log::{Desk, TagRange};
use tenter::store::memory::Memory;
use tenter::store::{Drafts as _, Read as _, StoreError};

/// How many tags a phone has for its own at first.
const MANY: u16 = 100;
/// The first and the last hundred from which a phone draws: below are those that a desk gives first.
const HUNDREDS: [u16; 2] = [10, 99];

/// Draws tags for a phone that has none of its own. Two phones that draw the same give cloths that share a tag, which
/// the desk then tells apart by a letter.
///
/// # Errors
///
/// A log that cannot be written.
pub fn draw(log: &mut Memory) -> Result<(), StoreError> {
    if log.draft(Desk::NAME)?.is_some() {
        return Ok(());
    }
    let drawn = hundred(log.here().number());
    keep(log, drawn)
}

/// Draws other tags where all that this phone had are given, as they may be once another log came to it.
///
/// # Errors
///
/// A log that cannot be read or written.
pub fn renew(log: &mut Memory) -> Result<(), StoreError> {
    let given = log.given_tags();
    match log.desk()?.tags.unwrap_or(TagRange::ALL).next(&given) {
        Some(_) => Ok(()),
        None => keep(log, free(log.here().number(), &given)),
    }
}

fn keep(log: &mut Memory, tags: TagRange) -> Result<(), StoreError> {
    log.set_desk(&Desk { tags: Some(tags), ..log.desk()? })
}

/// The hundred tags that fall to a number.
fn hundred(number: u32) -> TagRange {
    let [first, last] = HUNDREDS;
    let drawn = number % u32::from(last - first + 1);
    let least = MANY * (first + u16::try_from(drawn).unwrap_or_default());
    TagRange { least, most: least + MANY - 1 }
}

/// The first hundred from the one drawn on of which nobody has a tag; where there is none, all tags.
fn free(number: u32, given: &[u16]) -> TagRange {
    let [first, last] = HUNDREDS;
    (0..=u32::from(last - first))
        .map(|further| hundred(number.wrapping_add(further)))
        .find(|tags| !given.iter().any(|tag| (tags.least..=tags.most).contains(tag)))
        .unwrap_or(TagRange::ALL)
}

/// The tags of this phone, as they are typed.
#[must_use]
pub fn told(log: &Memory) -> String {
    log.desk().ok().and_then(|desk| desk.tags).unwrap_or(TagRange::ALL).to_string()
}

/// Takes what a form says of them; whether that can be.
///
/// # Errors
///
/// A log that cannot be written.
pub fn choose(log: &mut Memory, body: &[u8]) -> Result<bool, StoreError> {
    let typed = form_urlencoded::parse(body).find(|(name, _)| name == "tags");
    let Some(tags) = typed.and_then(|(_, typed)| TagRange::parse(&typed)) else { return Ok(false) };
    log.set_desk(&Desk { tags: Some(tags), ..log.desk()? })?;
    Ok(true)
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
        assert_eq!(choose(&mut log, b"tags=300+to+399"), Ok(true));
        draw(&mut log).unwrap();
        assert_eq!(told(&log), "300-399");
        for wrong in ["tags=", "tags=9-1", "other=1-9", "tags=0-9", ""] {
            assert_eq!(choose(&mut log, wrong.as_bytes()), Ok(false), "{wrong}");
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
}
