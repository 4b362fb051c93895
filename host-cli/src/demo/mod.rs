//! A stash to look round in: the cloths of a hill-walking group's sewing evening. All of it is invented.

mod data;

use jiff::{SignedDuration, Timestamp};
use tenter_core::{Demand, Length, PullTest, Range, Scale, TestError, Unit};

use crate::log::json::Mm;
use crate::log::pattern::DemandField;
use crate::log::{
    Cloth, Entry, FabricChange, Fact, Here, Id, Ids, Mass, PatternChange, Price, RoleChange, Shop, Tested, WashMarks,
};
use data::{FABRICS, FabricRow, PATTERNS, RoleRow, TestRow};

/// The entries of the demo, made over the weeks before now.
#[must_use]
pub fn entries(here: Here) -> Vec<Entry> {
    let mut made = Made { now: here.now(), ids: Ids::after(here, None), entries: Vec::new() };
    for (index, row) in FABRICS.iter().enumerate() {
        made.fabric(index, row);
    }
    for (name, note, roles) in PATTERNS {
        let said = PatternChange { name: Some((*name).to_owned()), note: Some((*note).to_owned()) };
        let pattern = made.say(13, Fact::PatternAdded(said));
        for role in *roles {
            made.say(13, Fact::RoleAdded { pattern, change: asks(role) });
        }
    }
    made.entries.sort_by_key(|entry| entry.id);
    made.entries
}

struct Made {
    now: Timestamp,
    ids: Ids,
    entries: Vec<Entry>,
}

impl Made {
    /// Says something so many days ago.
    fn say(&mut self, days: i64, fact: Fact) -> Id {
        // A minute later than what was said before, so that the order stays that of the table.
        let minutes = i64::try_from(self.entries.len()).unwrap_or_default();
        let back = SignedDuration::from_hours(24 * days) - SignedDuration::from_mins(minutes);
        let at = self.now.checked_sub(back).unwrap_or(self.now).min(self.now);
        let id = Id::of(at, self.ids.next().drawn());
        self.entries.push(Entry::new(id, fact));
        id
    }

    fn fabric(&mut self, index: usize, row: &FabricRow) {
        let known = |text: &str| (!text.is_empty()).then(|| Some(Mm(length(text))));
        let shop = row.seen.map(|(place, price)| Shop { place: place.to_owned(), price: Price::parse(price) });
        let said = FabricChange {
            tag: u16::try_from(index + 1).ok(),
            name: Some(row.name.to_owned()),
            fibre: Some(row.fibre.to_owned()),
            construction: Some(row.made),
            width: known(row.width),
            length: known(row.length),
            mass: Mass::parse(row.mass).map(Some),
            place: Some(row.place.to_owned()),
            note: Some(row.note.to_owned()),
            washed: row.washed.then_some(true),
            shop: shop.map(Some),
        };
        let fabric = self.say(row.days, Fact::FabricAdded(said));
        for test in row.tests {
            self.test(fabric, test);
        }
        for (grain, before, after) in row.wash {
            let marks = WashMarks { before: length(before), after: length(after), division: Length::from_mm(1) };
            let note = "40 °C, dried flat".to_owned();
            self.say(row.days.saturating_sub(2), Fact::FabricWashed { fabric, grain: *grain, marks, note });
        }
        if let Some((days, cut, note)) = row.cut {
            let (length, note) = (length(cut), note.to_owned());
            self.say(days, Fact::FabricCut { fabric, length, note });
        }
    }

    fn test(&mut self, fabric: Id, row: &TestRow) {
        let Ok(test) = pull_test(row) else { return };
        let (tag, device, note) = (None, None, String::new());
        let back = SignedDuration::from_hours(24 * row.days + 1);
        let pulled = self.now.checked_sub(back).unwrap_or(self.now);
        let said = Tested { fabric: Some(fabric), tag, pulled, clock_unset: false, device, note, test };
        self.say(row.days, Fact::TestStored(said));
    }
}

/// A length of the tables, which a test of this module reads whole.
fn length(text: &str) -> Length {
    Length::parse(text, Unit::Mm).unwrap_or(Length::ZERO)
}

fn pull_test(row: &TestRow) -> Result<PullTest, TestError> {
    let scale = Scale::new(Length::from_mm(1), tenter_core::Ends::One).unwrap_or_default();
    let test = PullTest::new(length(row.gauge), row.grain)?.with_scale(scale)?;
    let mut test = test.with_settling_pull(row.settled);
    for pull in row.pulls {
        test.add_pull(Length::from_mm(*pull))?;
    }
    for (seconds, recovered) in row.rests {
        test.add_rest(*seconds, Length::from_mm(*recovered))?;
    }
    Ok(test)
}

fn asks(row: &RoleRow) -> RoleChange {
    let range = |text: &str| Range::parse(text, Unit::Mm).unwrap_or_default();
    let limit = |text: &str| tenter_core::Limit::parse(text, Unit::Mm).ok();
    let (cloth, width) = row.cloth;
    RoleChange {
        view: Some(row.view.to_owned()),
        name: Some(row.role.to_owned()),
        demand: Some(DemandField(Demand {
            crosswise: range(row.crosswise),
            lengthwise: range(row.lengthwise),
            growth_at_most: limit(row.growth),
            ..Demand::default()
        })),
        constructions: Some(row.made.to_vec()),
        cloth: Some(Some(Cloth { length: length(cloth), width: length(width) })),
        note: Some(row.note.to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The table is read whole: every text means something, every test can be.
    #[test]
    fn every_row_is_read() {
        for row in FABRICS {
            for text in [row.width, row.length].into_iter().filter(|text| !text.is_empty()) {
                assert!(length(text) > Length::ZERO, "{}: {text}", row.name);
            }
            assert_eq!(Mass::parse(row.mass).is_some(), !row.mass.is_empty(), "{}", row.name);
            assert!(row.seen.is_none_or(|(_, price)| Price::parse(price).is_some()), "{}", row.name);
            for test in row.tests {
                assert!(pull_test(test).is_ok_and(|test| !test.pulls().is_empty()), "{}", row.name);
            }
        }
        for (_, _, roles) in PATTERNS {
            for role in *roles {
                for text in [role.crosswise, role.lengthwise].into_iter().filter(|text| !text.is_empty()) {
                    assert!(Range::parse(text, Unit::Mm).is_ok(), "{}: {text}", role.role);
                }
            }
        }
    }

    #[test]
    fn entries_come_in_order_and_none_lies_ahead() {
        let here = Here { now: || "2026-01-05T12:00:00Z".parse().unwrap(), random: || 7, ..Here::desk() };
        let entries = entries(here);
        assert!(entries.is_sorted_by_key(|entry| entry.id) && entries.iter().all(|entry| entry.id.at() <= here.now()));
        let stored = entries.iter().filter(|entry| matches!(entry.fact, Fact::TestStored(_))).count();
        assert_eq!(stored, FABRICS.iter().map(|row| row.tests.len()).sum::<usize>());
    }
}
