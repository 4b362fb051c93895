//! What a handheld is sent, and what becomes of the tests it sends.

use std::collections::{HashMap, HashSet};

use jiff::Timestamp;
use tenter_core::Demand;
use tenter_core::record::{LabelledDemand, MAX_LABEL_BYTES};
use tenter_core::saved::Meant;
use tenter_core::wire::MAX_NAME_BYTES;

use super::{Done, Refused, find};
use crate::finding::fit::asked;
use crate::finding::tag;
use crate::input::{Field, Why, Wrong};
use crate::log::handheld::{self, FromHandheld};
use crate::log::{Device, Fabric, Fact, Here, Id, Marks, Pattern, Role, StoredTest, Subject, fold};
use crate::store::{Change as _, Read, Store, StoreError, WhichTests};

/// The numbers that handhelds gave to tests that are in the log, and as what.
pub type Numbers = HashMap<u32, HashMap<u32, HashSet<Id>>>;

/// The numbers given so far, by handheld.
///
/// # Errors
///
/// A log that cannot be read.
pub fn numbers(read: &dyn Read) -> Result<Numbers, StoreError> {
    let mut numbers = Numbers::new();
    read.each_test(WhichTests::All, &mut |test| {
        if let Some(Device { device, number }) = test.said.device {
            numbers.entry(device).or_default().entry(number).or_default().insert(test.id);
        }
        Ok(())
    })?;
    Ok(numbers)
}

/// Reads the number that a handheld shall have.
///
/// # Errors
///
/// A text that is no number from 1 on.
pub fn number(text: &str) -> Result<u32, Wrong> {
    let number = text.trim().parse().ok().filter(|number| *number != 0);
    number.ok_or_else(|| Wrong::new(Field::DeviceName, text, Why::NotANumber { most: u32::MAX }))
}

/// The number to give a handheld that `has` one already where that is not 0: the one `wanted`, or one that no other has.
/// None where it keeps the one it has.
///
/// # Errors
///
/// A handheld that has another number already.
pub fn name(has: u32, wanted: Option<u32>, known: &Numbers, here: Here) -> Result<Option<u32>, Refused> {
    match (has, wanted) {
        (0, Some(wanted)) => Ok(Some(wanted)),
        (0, None) => {
            // Chance that does not move must not hold it up: then the next free number is as good.
            let first = here.number();
            let mut free = (0..=u32::MAX).map(|more| first.wrapping_add(more));
            Ok(free.find(|number| *number != 0 && !known.contains_key(number)))
        }
        (has, Some(wanted)) if wanted != has => Err(Refused::Named { has, wanted }),
        _ => Ok(None),
    }
}

/// Stores tests for good, gives each to the cloth that was meant and to who pulled it; for each, whether it was in the log
/// before. One whose cloth was not said waits in the inbox, whatever its tag.
///
/// # Errors
///
/// A log that cannot be written.
pub fn store(
    store: &mut (impl Store + ?Sized),
    batch: &[FromHandheld],
    stamp: Timestamp,
    owner: Option<Id>,
) -> Result<Vec<bool>, StoreError> {
    let known: Vec<bool> =
        batch.iter().map(|test| Ok(store.test(test.id)?.is_some())).collect::<Result<_, StoreError>>()?;
    let pulled = handheld::pulled(batch, stamp);
    store.merge(&mut batch.iter().zip(pulled).map(|(test, pulled)| Ok(test.entry(pulled))))?;
    store.change(|read| {
        let (mut facts, people) = (Vec::new(), read.people()?);
        for test in batch {
            facts.extend(assignment(read, test.id, Trust::Marks)?);
            // Whom the handheld named pulled; its owner only where it names nobody.
            let puller = match test.saved.by {
                Some(mark) => people.identifiers().find(|id| Marks::of(*id) == mark).map(|id| people.resolve(id)),
                None => owner,
            };
            // The entry of the test is the same on every machine; whose it is, is for this one to say, once.
            let said = |stored: StoredTest| stored.said.pulled_by.is_some();
            if puller.is_some() && !read.test(test.id)?.is_none_or(said) {
                facts.push(Fact::TestPulledBy { test: test.id, pulled_by: puller });
            }
        }
        Ok::<_, StoreError>((facts, ()))
    })?;
    Ok(known)
}

/// By what a test is given to a cloth.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Trust {
    /// Only by the cloth that was shown and meant: a tag may be on another cloth in another log.
    Marks,
    /// Also by its tag, since a person asks for it.
    Tags,
}

/// Gives a test to the live cloth that was meant, unless it was ever given to one.
fn assignment(read: &dyn Read, id: Id, trust: Trust) -> Result<Option<Fact>, StoreError> {
    let Some(test) = fold::test(read.history(Subject::Test(id))?) else { return Ok(None) };
    let (None, false, Some(tag)) = (test.said.fabric, test.dropped, test.said.tag) else { return Ok(None) };
    let fabric = match test.said.marks.cloth_mark {
        Some(mark) => marked(read, mark)?,
        None if trust == Trust::Marks => None,
        // A new cloth's tag counts only where it was lent: in another log it is another cloth's.
        None if test.said.marks.new_tag && !lent_here(read, &test, tag)? => None,
        None => tag::only(read, tag)?,
    };
    Ok(fabric.map(|fabric| Fact::TestAssigned { test: id, fabric: fabric.id }))
}

/// The one live cloth with a mark.
fn marked(read: &dyn Read, mark: u32) -> Result<Option<Fabric>, StoreError> {
    let mut all = read.fabrics()?;
    all.retain(|fabric| !fabric.dropped && Marks::of(fabric.id) == mark);
    Ok(if all.len() == 1 { all.pop() } else { None })
}

fn lent_here(read: &dyn Read, test: &StoredTest, tag: u16) -> Result<bool, StoreError> {
    let desk = read.desk()?;
    Ok(test.said.device.is_some_and(|device| desk.has_lent(device.device, tag)))
}

/// The cloth to which a test that waits on a handheld will go.
///
/// # Errors
///
/// A log that cannot be read.
pub fn will_go_to(read: &dyn Read, test: &FromHandheld) -> Result<Option<Fabric>, StoreError> {
    match test.saved.meant {
        Meant::Cloth(mark) => marked(read, mark),
        Meant::New | Meant::Unsaid => Ok(None),
    }
}

/// The highest tag that can be dialled on it.
pub const DIALLED: u16 = 999;

/// The cloths by whose names a handheld tells its user who has a tag: the live ones with a tag of their own, the newest
/// first, and at most `room`.
///
/// # Errors
///
/// A log that cannot be read.
pub fn cloth_names(read: &dyn Read, room: usize) -> Result<Vec<(u32, u16, String)>, StoreError> {
    let mut all = read.fabrics()?;
    all.retain(|fabric| {
        !fabric.dropped && fabric.tag.letter().is_empty() && (1..=DIALLED).contains(&fabric.tag.number())
    });
    all.sort_by_key(|fabric| core::cmp::Reverse(fabric.id));
    Ok(all
        .iter()
        .take(room)
        .map(|fabric| (Marks::of(fabric.id), fabric.tag.number(), cut(&fabric.name, MAX_NAME_BYTES).to_owned()))
        .collect())
}

/// The people of these names for a handheld, the owner first; who the log did not know is named by it.
///
/// # Errors
///
/// A text that cannot be a name, or one that several have.
pub fn people(read: &dyn Read, names: &[String]) -> Done<Vec<(Id, String)>> {
    let (mut facts, mut all) = (Vec::new(), Vec::new());
    for name in names {
        let mut who = super::people::puller(read, Some(name))?;
        facts.append(&mut who.facts);
        if let Some(id) = who.id.filter(|id| all.iter().all(|(other, _)| other != id)) {
            all.push((id, who.name));
        }
    }
    Ok((facts, all))
}

/// A name as it fits the handheld.
#[must_use]
pub fn short_name(name: &str) -> &str {
    cut(name, MAX_NAME_BYTES)
}

/// A test that was given to a cloth.
#[derive(Debug)]
pub struct Assigned {
    /// The test, as it was before.
    pub test: StoredTest,
    /// The cloth it belonged to before.
    pub before: Option<Fabric>,
    /// The cloth it belongs to now.
    pub fabric: Fabric,
}

/// Gives a test to a cloth.
///
/// # Errors
///
/// No such test or cloth.
pub fn assign(read: &dyn Read, test: &str, cloth: &str) -> Done<Assigned> {
    let test = find::test(read, test)?;
    let fabric = find::live_fabric(read, cloth)?;
    let before = test.said.fabric.map(|before| read.fabric(before)).transpose()?.flatten();
    let fact = Fact::TestAssigned { test: test.id, fabric: fabric.id };
    let facts = if test.said.fabric == Some(fabric.id) { Vec::new() } else { vec![fact] };
    Ok((facts, Assigned { test, before, fabric }))
}

/// Gives every test without a cloth to the one live cloth with its tag; one under a new tag only where this desk lent it.
///
/// # Errors
///
/// A log that cannot be read.
pub fn assign_all(read: &dyn Read) -> Done<Vec<Assigned>> {
    let (mut facts, mut moved) = (Vec::new(), Vec::new());
    for test in read.tests(WhichTests::Inbox)? {
        let Some(Fact::TestAssigned { fabric, .. }) = assignment(read, test.id, Trust::Tags)? else { continue };
        facts.push(Fact::TestAssigned { test: test.id, fabric });
        if let Some(fabric) = read.fabric(fabric)? {
            moved.push(Assigned { test, before: None, fabric });
        }
    }
    Ok((facts, moved))
}

/// What shall be on the handheld.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct WantedDemands {
    /// The demands with their labels, and the roles they come from.
    pub demands: Vec<(LabelledDemand, String)>,
    /// Roles that ask nothing of stretch, growth or recovery.
    pub nothing_asked: Vec<String>,
}

/// What a view asks, or only these roles of it.
///
/// # Errors
///
/// No such pattern, view or role, or a view that asks nothing.
pub fn wanted(read: &dyn Read, pattern: &str, view: Option<&str>, only: &[String]) -> Result<WantedDemands, Refused> {
    let pattern = find::pattern(read, pattern)?;
    let view = find::view_or_only(&pattern, view)?;
    let mut roles: Vec<&Role> = Vec::new();
    for text in only {
        let role = find::role(&pattern, view, text)?;
        if !roles.contains(&role) {
            roles.push(role);
        }
    }
    if roles.is_empty() {
        roles = pattern.view(view).collect();
    }
    let asks = |role: &&Role| asked::demand(role) != Demand::default();
    let (asking, silent): (Vec<&Role>, Vec<&Role>) = roles.into_iter().partition(asks);
    if asking.is_empty() {
        return Err(Refused::AsksNothing { pattern: pattern.name.clone(), view: view.to_owned() });
    }
    let labels = labels(&pattern, view, &asking);
    let labelled = |(role, label): (&&Role, String)| {
        LabelledDemand::new(&label, asked::demand(role)).map(|demand| (demand, role.name.clone()))
    };
    let nothing_asked = silent.iter().map(|role| role.name.clone()).collect();
    Ok(WantedDemands { demands: asking.iter().zip(labels).filter_map(labelled).collect(), nothing_asked })
}

/// One label a role, each unlike the others: pattern, view and role as far as they fit, the role first of all.
fn labels(pattern: &Pattern, view: &str, roles: &[&Role]) -> Vec<String> {
    let mut labels: Vec<String> = Vec::new();
    for role in roles {
        // A pattern with a single view calls it "-".
        let tail = if view == "-" { role.name.clone() } else { format!("{view} {}", role.name) };
        let room = MAX_LABEL_BYTES.saturating_sub(tail.len() + 1);
        let head = cut(&pattern.name, room).trim_end();
        let full = match (head.chars().count(), tail.len() <= MAX_LABEL_BYTES) {
            // A single letter of the pattern says nothing.
            (3.., _) => format!("{head} {tail}"),
            (_, true) => tail,
            _ => role.name.clone(),
        };
        let mut label = cut(&full, MAX_LABEL_BYTES).trim().to_owned();
        let mut nth = 2;
        while labels.contains(&label) {
            let end = format!(" {nth}");
            label = format!("{}{end}", cut(&full, MAX_LABEL_BYTES - end.len()).trim());
            nth += 1;
        }
        labels.push(label);
    }
    labels
}

/// The longest beginning of at most so many bytes that ends with a whole character.
fn cut(text: &str, bytes: usize) -> &str {
    let end = text.char_indices().map(|(at, c)| at + c.len_utf8()).take_while(|end| *end <= bytes).last();
    text.get(..end.unwrap_or(0)).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::Ids;

    fn labels_of(pattern: &str, view: &str, names: &[&str]) -> Vec<String> {
        let mut ids = Ids::default();
        let id = ids.next();
        let role = |name: &&str| Role { view: view.to_owned(), ..Role::named(ids.next(), id, name) };
        let roles: Vec<Role> = names.iter().map(role).collect();
        let pattern = Pattern { id, name: pattern.to_owned(), note: String::new(), roles: Vec::new(), dropped: false };
        labels(&pattern, view, &roles.iter().collect::<Vec<_>>())
    }

    #[test]
    fn labels_are_short_whole_and_unlike_each_other() {
        assert_eq!(labels_of("Smock", "B", &["main", "side panels"]), ["Smock B main", "Smock B side panels"]);
        assert_eq!(labels_of("Windproof smock", "B", &["side panels"]), ["Windproof B side panels"]);
        assert_eq!(
            labels_of("Ridge tights", "-", &["legs", "waistband"]),
            ["Ridge tights legs", "Ridge tights waistband"]
        );
        assert_eq!(labels_of("Smock", "long sleeves", &["main"]), ["Smock long sleeves main"]);
        assert_eq!(labels_of("Smock", "with long sleeves", &["lining"]), ["with long sleeves lining"]);
        let long = "a gusset that is cut on the bias, ";
        let three = labels_of("Smock", "B", &[&format!("{long}left"), &format!("{long}right"), "Ärmel"]);
        assert_eq!(three, ["a gusset that is cut on", "a gusset that is cut o 2", "Smock B Ärmel"]);
        // Two bytes a letter: the cut falls between two, and the label still fits.
        let wide = labels_of("é", "é", &["éééééééééééééééé", "éééééééééééééééé"]);
        assert_eq!(wide, ["éééééééééééé", "ééééééééééé 2"]);
        assert!(wide.iter().chain(&three).all(|label| label.len() <= MAX_LABEL_BYTES));
    }
}
