//! Which tags are whose: ranges that desks, phones and handhelds took, so that none gives a tag that another gives too.

use std::collections::HashSet;

use jiff::Timestamp;
use serde::{Deserialize, Serialize};

use super::entry::{Entry, Fact};
use super::id::Id;
use super::tag::TagRange;

/// What kind of thing gives tags.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TagHolder {
    /// A desk with a copy of the log.
    Desk,
    /// The app on a phone.
    Phone,
    /// A handheld, whose tags are lent to it by a desk.
    Handheld,
}

/// A range that somebody holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HeldTags {
    /// Who: the identifier of a copy of the log, or [that of a handheld](of_handheld).
    pub holder: Id,
    /// What kind of thing it is.
    pub kind: TagHolder,
    /// The range.
    pub tags: TagRange,
    /// The entry that took it.
    pub since: Id,
    /// The person who took it, where that is known.
    pub who: Option<Id>,
}

impl HeldTags {
    /// The number of the handheld that holds them; none of another thing.
    #[must_use]
    pub fn handheld(&self) -> Option<u32> {
        (self.kind == TagHolder::Handheld).then(|| u32::try_from(self.holder.drawn()).ok()).flatten()
    }
}

/// The identifier under which a handheld holds tags: the same in every copy of the log.
#[must_use]
pub fn of_handheld(device: u32) -> Id {
    Id::of(Timestamp::UNIX_EPOCH, device.into())
}

/// What each holds now, in the order in which they took it. Of several entries of one holder the last counts.
#[must_use]
pub fn held(history: &[Entry]) -> Vec<HeldTags> {
    let mut all: Vec<HeldTags> = Vec::new();
    for entry in history {
        if let Fact::TagsTaken { holder, by, tags } = entry.fact {
            all.retain(|held| held.holder != holder);
            let taken = |tags| HeldTags { holder, kind: by, tags, since: entry.id, who: entry.who };
            all.extend(tags.map(taken));
        }
    }
    all
}

/// The tags that may be given here: a range without those that others hold.
///
/// ```
/// use tenter::log::{FreeTags, TagRange};
///
/// let others = vec![TagRange { least: 4, most: 99 }];
/// let free = FreeTags { range: TagRange::ALL, others };
/// assert_eq!(free.next(&[1, 2, 50]), Some(3));
/// assert_eq!(free.next(&[1, 2, 3, 50]), Some(100));
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FreeTags {
    /// The range that is given here.
    pub range: TagRange,
    /// What others hold of it.
    pub others: Vec<TagRange>,
}

impl FreeTags {
    /// Of the one who holds `range`, or all tags, and is known as `holder`. What others took later than this one counts for
    /// nothing here, since they give way, but for what was lent to handhelds.
    #[must_use]
    pub fn of(held: &[HeldTags], holder: Option<Id>, range: Option<TagRange>) -> Self {
        let mine = held.iter().find(|held| Some(held.holder) == holder && Some(held.tags) == range);
        let counts = |other: &&HeldTags| {
            Some(other.holder) != holder
                && (other.kind == TagHolder::Handheld || mine.is_none_or(|mine| other.since < mine.since))
        };
        let others = held.iter().filter(counts).map(|other| other.tags).collect();
        Self { range: range.unwrap_or(TagRange::ALL), others }
    }

    /// Whether a tag may be given here, unless a cloth has it.
    #[must_use]
    pub fn holds(&self, tag: u16) -> bool {
        self.range.holds(tag) && !self.others.iter().any(|other| other.holds(tag))
    }

    /// The tag for the next cloth: the lowest above all that are `given` here; where those have run out, the
    /// lowest that nobody has; none where there is none.
    #[must_use]
    pub fn next(&self, given: &[u16]) -> Option<u16> {
        let TagRange { least, most } = self.range;
        let highest = given.iter().copied().filter(|tag| self.holds(*tag)).max();
        let above = match highest {
            Some(highest) => highest.checked_add(1),
            None => Some(least),
        };
        let above = above.and_then(|above| (above..=most).find(|tag| self.holds(*tag)));
        above.or_else(|| {
            let given: HashSet<u16> = given.iter().copied().collect();
            (least..=most).find(|tag| self.holds(*tag) && !given.contains(tag))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn range(least: u16, most: u16) -> TagRange {
        TagRange { least, most }
    }

    fn all_but(others: &[TagRange]) -> FreeTags {
        FreeTags { range: TagRange::ALL, others: others.to_vec() }
    }

    #[test]
    fn the_next_tag_is_above_those_given_and_within_the_range() {
        let free = FreeTags { range: range(100, 103), others: Vec::new() };
        assert_eq!(free.next(&[1, 2, 500]), Some(100));
        assert_eq!(free.next(&[1, 101, 500]), Some(102));
        assert_eq!(free.next(&[101, 103]), Some(100), "the first that is free");
        assert_eq!(free.next(&[100, 101, 102, 103]), None);
        assert_eq!(all_but(&[]).next(&[]), Some(1));
        assert_eq!(all_but(&[]).next(&[u16::MAX]), Some(1));
    }

    /// What a phone stored in the meantime does not carry the desk into its range, nor does the desk run into it.
    #[test]
    fn what_others_hold_is_never_given() {
        let free = all_but(&[range(1700, 1799)]);
        assert_eq!(free.next(&[1, 2, 1700, 1701]), Some(3));
        assert_eq!(free.next(&[1699]), Some(1800));
        let all: Vec<u16> = (1..=u16::MAX).filter(|tag| !(1700..=1799).contains(tag)).collect();
        assert_eq!(free.next(&all), None, "rather none than one of the phone's");
    }

    fn taken(ms: i64, holder: u128, by: TagHolder, tags: Option<TagRange>) -> Entry {
        let id = |drawn| Id::of(Timestamp::UNIX_EPOCH, drawn);
        let fact = Fact::TagsTaken { holder: id(holder), by, tags };
        Entry::new(Id::of(Timestamp::from_millisecond(ms).unwrap(), 0), fact)
    }

    #[test]
    fn the_last_word_of_each_counts_and_who_came_later_gives_way() {
        let history = [
            taken(1, 10, TagHolder::Desk, Some(range(100, 199))),
            taken(2, 20, TagHolder::Phone, Some(range(150, 249))),
            taken(3, 30, TagHolder::Desk, Some(range(300, 399))),
            taken(4, 30, TagHolder::Desk, None),
            taken(5, 7, TagHolder::Handheld, Some(range(180, 199))),
        ];
        let held = held(&history);
        assert_eq!(held.iter().map(|held| held.tags.least).collect::<Vec<_>>(), [100, 150, 180]);
        assert_eq!(held.iter().map(HeldTags::handheld).collect::<Vec<_>>(), [None, None, Some(7)]);
        let id = |drawn| Some(Id::of(Timestamp::UNIX_EPOCH, drawn));
        let desk = FreeTags::of(&held, id(10), Some(range(100, 199)));
        assert_eq!((desk.next(&[]), desk.next(&[178]), desk.next(&[179])), (Some(100), Some(179), Some(100)));
        assert!(desk.holds(150), "the phone came later");
        let phone = FreeTags::of(&held, id(20), Some(range(150, 249)));
        assert_eq!(phone.next(&[]), Some(200));
        let other = FreeTags::of(&held, None, None);
        assert_eq!((other.next(&[]), other.next(&[99]), other.holds(300)), (Some(1), Some(250), true));
    }
}
