//! What cloths, tests, patterns and roles are now, from their entries in order.
//!
//! Entries of another subject, or that come before the one that adds it, count for nothing; so a log of which a part
//! is missing is still read, and becomes whole when the part arrives.

use std::collections::HashSet;

use tenter_core::{Grain, Length};

use super::entry::{Entry, Fact};
use super::fabric::Fabric;
use super::garment::{CutFor, Garment};
use super::id::Id;
use super::json::Mm;
use super::learned::Lesson;
use super::pattern::{Pattern, PatternChange, Role, RoleChange};
use super::person::Person;
use super::photo::ClothPhoto;
use super::tested::StoredTest;

/// The cloth that these entries make.
#[must_use]
pub fn fabric(entries: Vec<Entry>) -> Option<Fabric> {
    let retracted = retracted(&entries);
    let mut fabric: Option<Fabric> = None;
    for entry in entries.into_iter().filter(|entry| counts(entry, &retracted)) {
        match (entry.fact, &mut fabric) {
            (Fact::FabricAdded(said), None) => {
                let mut new = Fabric::named(entry.id, 0, "");
                new.apply(said);
                fabric = Some(new);
            }
            (Fact::FabricChanged { change, .. }, Some(fabric)) => {
                match change.washed {
                    Some(true) => fabric.last_washed = Some(entry.id.at()),
                    Some(false) => fabric.last_washed = None,
                    None => {}
                }
                fabric.apply(change);
            }
            (Fact::FabricCut { length, .. }, Some(fabric)) => {
                fabric.length = fabric.length.map(|had| less(had, length))
            }
            (Fact::FabricWashed { grain, marks, .. }, Some(fabric)) => {
                // Marks may be those of a swatch, until the cloth is said to be washed.
                if fabric.washed {
                    fabric.last_washed = Some(entry.id.at());
                }
                match grain {
                    Grain::Lengthwise => fabric.washed_lengthwise = Some(marks),
                    Grain::Crosswise => fabric.washed_crosswise = Some(marks),
                    Grain::Bias => {}
                };
            }
            (Fact::FabricDropped { .. }, Some(fabric)) => fabric.dropped = true,
            (Fact::FabricRestored { .. }, Some(fabric)) => fabric.dropped = false,
            (fact, Some(fabric)) => remember(fabric, entry.id, fact),
            _ => {}
        }
    }
    fabric
}

/// What is remembered with a cloth: cuts for garments, what worked, photographs.
fn remember(fabric: &mut Fabric, id: Id, fact: Fact) {
    match fact {
        Fact::FabricCutFor { length, garment, role, .. } => {
            fabric.cuts.push(CutFor { id, garment, role, length });
            fabric.length = fabric.length.map(|had| less(had, length));
        }
        Fact::FabricLearned { learned, .. } => fabric.lessons.push(Lesson { id, learned, dropped: false }),
        Fact::LessonDropped { lesson, .. } => drop_lesson(fabric, lesson, true),
        Fact::LessonRestored { lesson, .. } => drop_lesson(fabric, lesson, false),
        Fact::PhotoAdded { said, .. } => fabric.photos.push(ClothPhoto { id, said, dropped: false }),
        Fact::PhotoDropped { of, .. } => drop_photo(fabric, of, true),
        Fact::PhotoRestored { of, .. } => drop_photo(fabric, of, false),
        Fact::PhotoFirst { of, .. } => {
            if let Some(at) = fabric.photos.iter().position(|photo| photo.id == of) {
                let first = fabric.photos.remove(at);
                fabric.photos.insert(0, first);
            }
        }
        _ => {}
    }
}

fn drop_lesson(fabric: &mut Fabric, id: Id, dropped: bool) {
    fabric.lessons.iter_mut().filter(|lesson| lesson.id == id).for_each(|lesson| lesson.dropped = dropped);
}

fn drop_photo(fabric: &mut Fabric, id: Id, dropped: bool) {
    fabric.photos.iter_mut().filter(|photo| photo.id == id).for_each(|photo| photo.dropped = dropped);
}

/// The entries that were taken back.
#[must_use]
pub fn retracted(entries: &[Entry]) -> HashSet<Id> {
    let of = |entry: &Entry| match entry.fact {
        Fact::FabricRetracted { entry, .. } => Some(entry),
        _ => None,
    };
    entries.iter().filter_map(of).collect()
}

const fn can_be_retracted(fact: &Fact) -> bool {
    matches!(fact, Fact::FabricCut { .. } | Fact::FabricCutFor { .. } | Fact::FabricWashed { .. })
}

/// Whether an entry counts: only cuts and washing marks can be taken back.
fn counts(entry: &Entry, retracted: &HashSet<Id>) -> bool {
    !(can_be_retracted(&entry.fact) && retracted.contains(&entry.id))
}

/// The entries that can be taken back and were not, in order.
pub fn standing(entries: &[Entry]) -> impl Iterator<Item = &Entry> {
    let retracted = retracted(entries);
    entries.iter().filter(|entry| can_be_retracted(&entry.fact)).filter(move |entry| counts(entry, &retracted))
}

/// What is left of a length. Two people who each cut the same length in their own log leave nothing, not less.
fn less(had: Length, cut: Length) -> Length {
    Length::from_steps(had.steps().saturating_sub(cut.steps()).max(0))
}

/// How the length on hand came to be: after each entry that touches it, in order. A cut that is taken back later was off
/// at the time.
#[must_use]
pub fn lengths(entries: &[Entry]) -> Vec<(usize, Option<Length>)> {
    let (mut on_hand, mut steps) = (OnHand::default(), Vec::new());
    for (index, entry) in entries.iter().enumerate() {
        if on_hand.touched_by(entry) {
            steps.push((index, on_hand.length));
        }
    }
    steps
}

/// The length of a cloth, with what it takes to put a cut back.
#[derive(Default)]
struct OnHand {
    is_added: bool,
    length: Option<Length>,
    /// The length that was measured last, and what was cut since.
    measured: Option<Length>,
    since: Vec<(Id, Length)>,
    cuts: HashSet<Id>,
    retracted: HashSet<Id>,
}

impl OnHand {
    /// Takes an entry in; whether it touches the length.
    fn touched_by(&mut self, entry: &Entry) -> bool {
        match &entry.fact {
            Fact::FabricAdded(said) => {
                let is_first = !core::mem::replace(&mut self.is_added, true);
                self.measure(said.length.filter(|_| is_first));
                said.length.is_some()
            }
            Fact::FabricChanged { change, .. } => {
                self.measure(change.length.filter(|_| self.is_added));
                change.length.is_some()
            }
            Fact::FabricCut { length, .. } | Fact::FabricCutFor { length, .. } => {
                self.cuts.insert(entry.id);
                if self.is_added && !self.retracted.contains(&entry.id) {
                    self.since.push((entry.id, *length));
                    self.length = self.length.map(|had| less(had, *length));
                }
                true
            }
            Fact::FabricRetracted { entry: back, .. } => {
                self.retracted.insert(*back);
                self.since.retain(|(id, _)| id != back);
                self.length = self.measured.map(|had| self.since.iter().fold(had, |had, (_, cut)| less(had, *cut)));
                self.cuts.contains(back)
            }
            _ => false,
        }
    }

    #[allow(clippy::option_option)] // As it is said: not at all, cleared, or a length.
    fn measure(&mut self, said: Option<Option<Mm>>) {
        if let Some(length) = said {
            self.measured = length.map(|Mm(length)| length);
            self.length = self.measured;
            self.since.clear();
        }
    }
}

/// The test that these entries make.
#[must_use]
pub fn test(entries: Vec<Entry>) -> Option<StoredTest> {
    let mut test: Option<StoredTest> = None;
    for entry in entries {
        match (entry.fact, &mut test) {
            (Fact::TestStored(said), None) => test = Some(StoredTest { id: entry.id, said, dropped: false }),
            (Fact::TestAssigned { fabric, .. }, Some(test)) => test.said.fabric = Some(fabric),
            (Fact::TestRegrained { grain, .. }, Some(test)) => {
                test.said.test = test.said.test.clone().with_grain(grain)
            }
            (Fact::TestPulledBy { pulled_by, .. }, Some(test)) => test.said.pulled_by = pulled_by,
            (Fact::TestDropped { .. }, Some(test)) => test.dropped = true,
            (Fact::TestRestored { .. }, Some(test)) => test.dropped = false,
            _ => {}
        }
    }
    test
}

/// The pattern that these entries make, without its roles.
#[must_use]
pub fn pattern(entries: Vec<Entry>) -> Option<Pattern> {
    let mut pattern: Option<Pattern> = None;
    for entry in entries {
        match (entry.fact, &mut pattern) {
            (Fact::PatternAdded(said), None) => {
                let mut new = Pattern {
                    id: entry.id,
                    name: String::new(),
                    note: String::new(),
                    roles: Vec::new(),
                    dropped: false,
                };
                apply(&mut new, said);
                pattern = Some(new);
            }
            (Fact::PatternChanged { change, .. }, Some(pattern)) => apply(pattern, change),
            (Fact::PatternDropped { .. }, Some(pattern)) => pattern.dropped = true,
            (Fact::PatternRestored { .. }, Some(pattern)) => pattern.dropped = false,
            _ => {}
        }
    }
    pattern
}

fn apply(pattern: &mut Pattern, change: PatternChange) {
    let PatternChange { name, note } = change;
    pattern.name = name.unwrap_or_else(|| core::mem::take(&mut pattern.name));
    pattern.note = note.unwrap_or_else(|| core::mem::take(&mut pattern.note));
}

/// The role that these entries make.
#[must_use]
pub fn role(entries: Vec<Entry>) -> Option<Role> {
    let mut role: Option<Role> = None;
    for entry in entries {
        match (entry.fact, &mut role) {
            (Fact::RoleAdded { pattern, change }, None) => role = Some(new_role(entry.id, pattern, change)),
            (Fact::RoleChanged { change, .. }, Some(role)) => role.apply(change),
            (Fact::RoleDropped { .. }, Some(role)) => role.dropped = true,
            (Fact::RoleRestored { .. }, Some(role)) => role.dropped = false,
            _ => {}
        }
    }
    role
}

/// The garment that these entries make.
#[must_use]
pub fn garment(entries: Vec<Entry>) -> Option<Garment> {
    let mut garment: Option<Garment> = None;
    for entry in entries {
        match (entry.fact, &mut garment) {
            (Fact::GarmentBegun(said), None) => garment.insert(Garment::begun(entry.id)).apply(said),
            (Fact::GarmentChanged { change, .. }, Some(garment)) => garment.apply(change),
            (Fact::GarmentDone { .. }, Some(garment)) => garment.done = Some(entry.id.at()),
            (Fact::GarmentReopened { .. }, Some(garment)) => garment.done = None,
            (Fact::GarmentDropped { .. }, Some(garment)) => garment.dropped = true,
            (Fact::GarmentRestored { .. }, Some(garment)) => garment.dropped = false,
            _ => {}
        }
    }
    garment
}

/// The person whom these entries are about; none where nobody was named.
#[must_use]
pub fn person(entries: Vec<Entry>) -> Option<Person> {
    let mut person: Option<Person> = None;
    for entry in entries {
        let blank = |id| Person { id, name: String::new(), same_as: None };
        match entry.fact {
            Fact::PersonNamed { person: id, name } => person.get_or_insert_with(|| blank(id)).name = name,
            // Who is meant counts, though the name has not arrived.
            Fact::PersonMerged { person: id, same_as } => {
                person.get_or_insert_with(|| blank(id)).same_as = Some(same_as).filter(|same_as| *same_as != id);
            }
            _ => {}
        }
    }
    person
}

fn new_role(id: super::Id, pattern: super::Id, said: RoleChange) -> Role {
    let mut role = Role::named(id, pattern, "");
    role.apply(said);
    role
}

#[cfg(test)]
mod tests {
    use super::super::fabric::FabricChange;
    use super::super::id::Ids;
    use proptest::prelude::*;

    use super::*;

    fn metres(mm: i16) -> Option<Option<Mm>> {
        Some(Some(Mm(Length::from_mm(mm))))
    }

    #[test]
    fn cuts_shorten_a_length_and_two_logs_cannot_bring_it_below_zero() {
        let mut ids = Ids::default();
        let added = ids.next();
        let said = FabricChange { length: metres(2000), ..FabricChange::default() };
        let cut = |mm| Fact::FabricCut { fabric: added, length: Length::from_mm(mm), note: String::new() };
        let mut entries = vec![Entry::new(added, Fact::FabricAdded(said)), Entry::new(ids.next(), cut(800))];
        assert_eq!(fabric(entries.clone()).unwrap().length, Some(Length::from_mm(1200)));
        entries.push(Entry::new(ids.next(), cut(1500)));
        assert_eq!(fabric(entries.clone()).unwrap().length, Some(Length::ZERO));
        let steps: Vec<_> = lengths(&entries).into_iter().map(|(_, length)| length.map(Length::steps)).collect();
        assert_eq!(steps, [2000, 1200, 0].map(|mm| Some(mm * 1600)));
    }

    /// A cut that is taken back was off in the meantime, and a length that was measured after it stays.
    #[test]
    fn a_cut_that_is_taken_back_was_never_made() {
        let mut ids = Ids::default();
        let (added, cut) = (ids.next(), ids.next());
        let said = FabricChange { length: metres(2000), ..FabricChange::default() };
        let cut_off = Fact::FabricCut { fabric: added, length: Length::from_mm(800), note: String::new() };
        let mut entries = vec![Entry::new(added, Fact::FabricAdded(said)), Entry::new(cut, cut_off)];
        let back = Fact::FabricRetracted { fabric: added, entry: cut };
        entries.push(Entry::new(ids.next(), back.clone()));
        assert_eq!(fabric(entries.clone()).unwrap().length, Some(Length::from_mm(2000)));
        assert_eq!(standing(&entries).count(), 0);
        let steps: Vec<_> = lengths(&entries).into_iter().map(|(_, length)| length.map(Length::steps)).collect();
        assert_eq!(steps, [2000, 1200, 2000].map(|mm| Some(mm * 1600)));
        let measured = FabricChange { length: metres(1100), ..FabricChange::default() };
        entries.insert(2, Entry::new(ids.next(), Fact::FabricChanged { fabric: added, change: measured }));
        assert_eq!(fabric(entries).unwrap().length, Some(Length::from_mm(1100)));
    }

    proptest! {
        /// However measuring, cutting and taking back follow each other: after each the length is that of the cloth then.
        #[test]
        fn lengths_are_those_of_the_cloth_at_the_time(deeds in prop::collection::vec((0u8..5, 0i16..3000, any::<u8>()), 0..24)) {
            let mut ids = Ids::default();
            let added = ids.next();
            let mut entries = vec![Entry::new(added, Fact::FabricAdded(FabricChange::default()))];
            for (deed, mm, which) in deeds {
                let (length, note) = (Length::from_mm(mm), String::new());
                let back = entries[usize::from(which) % entries.len()].id;
                let fact = match deed {
                    0 => Fact::FabricChanged { fabric: added, change: FabricChange { length: metres(mm), ..FabricChange::default() } },
                    1 => Fact::FabricChanged { fabric: added, change: FabricChange { length: Some(None), ..FabricChange::default() } },
                    2 | 3 => Fact::FabricCut { fabric: added, length, note },
                    _ => Fact::FabricRetracted { fabric: added, entry: back },
                };
                entries.push(Entry::new(ids.next(), fact));
            }
            for (index, length) in lengths(&entries) {
                let then = fabric(entries[..=index].to_vec()).unwrap();
                prop_assert_eq!(then.length, length);
            }
        }
    }

    #[test]
    fn marks_that_are_taken_back_leave_those_before() {
        let mut ids = Ids::default();
        let added = ids.next();
        let washed = |after| Fact::FabricWashed {
            fabric: added,
            grain: Grain::Lengthwise,
            marks: super::super::WashMarks {
                before: Length::from_mm(500),
                after: Length::from_mm(after),
                division: Length::from_mm(1),
            },
            note: String::new(),
        };
        let mut entries = vec![Entry::new(added, Fact::FabricAdded(FabricChange::default()))];
        entries.extend([485, 400].map(|after| Entry::new(ids.next(), washed(after))));
        let slip = entries[2].id;
        entries.push(Entry::new(ids.next(), Fact::FabricRetracted { fabric: added, entry: slip }));
        assert_eq!(fabric(entries.clone()).unwrap().washed_lengthwise.unwrap().after, Length::from_mm(485));
        // Nothing but cuts and marks can be taken back.
        entries.push(Entry::new(ids.next(), Fact::FabricRetracted { fabric: added, entry: added }));
        assert!(fabric(entries).is_some());
    }

    #[test]
    fn a_dropped_fabric_comes_back_as_it_was() {
        let mut ids = Ids::default();
        let id = ids.next();
        let said = FabricChange { tag: Some(12), name: Some("Vestry twill".to_owned()), ..FabricChange::default() };
        let mut entries = vec![Entry::new(id, Fact::FabricAdded(said))];
        let before = fabric(entries.clone());
        entries.push(Entry::new(ids.next(), Fact::FabricDropped { fabric: id, note: String::new() }));
        assert!(fabric(entries.clone()).unwrap().dropped);
        entries.push(Entry::new(ids.next(), Fact::FabricRestored { fabric: id }));
        assert_eq!(fabric(entries), before);
    }

    #[test]
    fn entries_without_the_one_that_adds_make_nothing() {
        let id = Ids::default().next();
        assert_eq!(fabric(vec![Entry::new(id, Fact::FabricRestored { fabric: id })]), None);
        assert_eq!(test(Vec::new()), None);
    }

    #[test]
    fn every_kind_of_entry_comes_back_from_its_json() {
        let mut ids = Ids::default();
        let id = ids.next();
        let cleared = FabricChange { width: Some(None), shop: Some(None), ..FabricChange::default() };
        let demand = tenter_core::Demand {
            crosswise: tenter_core::Range::parse("4in to 5 3/8in..60%", tenter_core::Unit::Mm).unwrap(),
            ..tenter_core::Demand::default()
        };
        let role = RoleChange {
            demand: Some(super::super::pattern::DemandField(demand)),
            cloth: Some(None),
            ..RoleChange::default()
        };
        for fact in [
            Fact::FabricAdded(FabricChange { length: metres(1), ..FabricChange::default() }),
            Fact::FabricChanged { fabric: id, change: cleared },
            Fact::FabricCut { fabric: id, length: Length::from_steps(1), note: "sleeve".to_owned() },
            Fact::RoleAdded { pattern: id, change: role },
            Fact::PatternAdded(PatternChange::default()),
            Fact::TestAssigned { test: id, fabric: id },
            Fact::TestRegrained { test: id, grain: Grain::Bias },
            Fact::FabricRetracted { fabric: id, entry: id },
            Fact::UnitsSet { units: tenter_core::Unit::Inch },
            Fact::PersonNamed { person: id, name: "Anna".to_owned() },
            Fact::PersonMerged { person: id, same_as: id },
            Fact::TestPulledBy { test: id, pulled_by: Some(id) },
        ] {
            let entry = Entry::new(ids.next(), fact);
            let text = entry.line().unwrap();
            assert_eq!(serde_json::from_str::<Entry>(&text).unwrap(), entry, "{text}");
            for entry in [entry.clone(), entry.by(Some(id))] {
                assert_eq!(Entry::of_body(entry.id, &entry.body().unwrap()).unwrap(), entry);
            }
        }
    }

    /// Marks of a swatch do not make a washed cloth; the word for it does, each wash after it too, and it can be taken
    /// back.
    #[test]
    fn the_last_wash_is_known() {
        let mut ids = Ids::default();
        let added = ids.next();
        let marks = super::super::WashMarks {
            before: Length::from_mm(500),
            after: Length::from_mm(490),
            division: Length::from_mm(1),
        };
        let swatch = Fact::FabricWashed { fabric: added, grain: Grain::Lengthwise, marks, note: String::new() };
        let said = |washed| Fact::FabricChanged {
            fabric: added,
            change: FabricChange { washed: Some(washed), ..FabricChange::default() },
        };
        let mut entries = vec![Entry::new(added, Fact::FabricAdded(FabricChange::default()))];
        let mut after = |fact| {
            let id = ids.next();
            entries.push(Entry::new(id, fact));
            (fabric(entries.clone()).unwrap().last_washed, Some(id.at()))
        };
        assert_eq!(after(swatch.clone()).0, None);
        for fact in [said(true), swatch, said(true)] {
            let (last, now) = after(fact);
            assert_eq!(last, now);
        }
        assert_eq!(after(said(false)).0, None);
    }
}
