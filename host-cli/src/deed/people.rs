//! Naming the people who pull, and finding out that two are one; new tags for cloths that share one.

use super::{Done, Refused, find};
use crate::finding::tag::{self, Renumbered};
use crate::input::{Field, person};
use crate::log::{Desk, Fabric, FabricChange, Fact, Id, Ids, People, Person};
use crate::store::Read;

/// Who pulls, found or named just now.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct NamedPuller {
    /// What names them, where the log did not know them.
    pub facts: Vec<Fact>,
    /// The person; none where nobody is known to pull.
    pub id: Option<Id>,
    /// Their name.
    pub name: String,
}

/// The person who pulls: of a name, whom the log then knows; else the one who is remembered at this desk.
///
/// # Errors
///
/// A text that cannot be a name, or one that several have.
pub fn puller(read: &dyn Read, typed: Option<&str>) -> Result<NamedPuller, Refused> {
    let people = read.people()?;
    let Some(typed) = typed else {
        let id = read.desk()?.who.map(|who| people.resolve(who));
        return Ok(NamedPuller { facts: Vec::new(), id, name: people.name(id).unwrap_or_default().to_owned() });
    };
    let name = person::name(Field::PulledBy, typed)?;
    match found(&people, &name)? {
        Some(person) => Ok(NamedPuller { facts: Vec::new(), id: Some(person.id), name: person.name.clone() }),
        None => {
            let id = Ids::after(read.here(), None).next();
            Ok(NamedPuller { facts: vec![Fact::PersonNamed { person: id, name: name.clone() }], id: Some(id), name })
        }
    }
}

/// The person of a name or an identifier, if there is one.
fn found<'p>(people: &'p People, text: &str) -> Result<Option<&'p Person>, Refused> {
    if let Ok(id) = text.trim().to_uppercase().parse::<Id>() {
        return Ok(people.get(id));
    }
    match people.called(text).as_slice() {
        [] => Ok(None),
        [person] => Ok(Some(person)),
        several => {
            let ids = several.iter().map(|person| person.id).collect();
            Err(Refused::SeveralPeople { name: text.trim().to_owned(), ids })
        }
    }
}

/// The person who is meant.
///
/// # Errors
///
/// A name that nobody has, or several.
pub fn person(people: &People, text: &str) -> Result<Person, Refused> {
    let known = || people.each().map(|person| person.name.clone()).filter(|name| !name.is_empty()).collect();
    found(people, text)?.cloned().ok_or_else(|| Refused::NoPerson { text: text.to_owned(), known: known() })
}

/// Calls a person something else; hands back the person as they were.
///
/// # Errors
///
/// A name that nobody has, or several; a new name that another has, or that cannot be one.
pub fn rename(read: &dyn Read, text: &str, name: &str) -> Done<Person> {
    let people = read.people()?;
    let who = person(&people, text)?;
    let name = person::name(Field::Person, name)?;
    if let Some(other) = people.called(&name).into_iter().find(|other| other.id != who.id) {
        return Err(Refused::SeveralPeople { name, ids: vec![who.id, other.id] });
    }
    Ok((vec![Fact::PersonNamed { person: who.id, name }], who))
}

/// Takes two persons, or all of one name, for one: the second who was typed, or who was named first. Hands back that
/// person, and how many others they stand for now.
///
/// # Errors
///
/// A name that nobody has; names that mean one person.
pub fn merge(read: &dyn Read, text: &str, into: Option<&str>) -> Done<(Person, usize)> {
    let people = read.people()?;
    let others: Vec<Person> = match people.called(text) {
        several if several.len() > 1 => several.into_iter().cloned().collect(),
        _ => vec![person(&people, text)?],
    };
    let into = match (into, others.first()) {
        (Some(into), _) => person(&people, into)?,
        (None, Some(first)) => first.clone(),
        (None, None) => return Err(Refused::OnePerson(text.to_owned())),
    };
    let merged = |other: &&Person| other.id != into.id;
    let facts: Vec<Fact> =
        others.iter().filter(merged).map(|other| Fact::PersonMerged { person: other.id, same_as: into.id }).collect();
    match facts.len() {
        0 => Err(Refused::OnePerson(text.trim().to_owned())),
        count => Ok((facts, (into, count))),
    }
}

/// The desk with somebody who pulls there from now on, unless it remembers one.
#[must_use]
pub fn remembering(desk: &Desk, who: Option<Id>) -> Option<Desk> {
    (desk.who.is_none() && who.is_some()).then(|| Desk { who, ..desk.clone() })
}

/// Gives every cloth that shares its tag, but for the first of each, the next tag of this desk; of one cloth alone where
/// that is named.
///
/// # Errors
///
/// No two cloths that share a tag, no such cloth, or no tag left.
pub fn renumber(read: &dyn Read, which: Option<&str>) -> Done<Vec<Renumbered>> {
    let shared: Vec<Fabric> = match which {
        Some(which) => vec![find::live_fabric(read, which)?],
        None => tag::shared(read)?.into_iter().flat_map(|shared| shared.cloths.into_iter().skip(1)).collect(),
    };
    if shared.is_empty() || shared.iter().any(|fabric| fabric.tag.letter().is_empty()) {
        return Err(Refused::NothingShared);
    }
    let mut given: Vec<u16> = read.fabrics()?.iter().map(|fabric| fabric.tag.number()).collect();
    let (mut facts, mut renumbered) = (Vec::new(), Vec::new());
    for fabric in shared {
        let tag = tag::next(read, &given)?.ok_or(Refused::NoTagLeft(read.desk()?.tags))?;
        given.push(tag);
        let change = FabricChange { tag: Some(tag), ..FabricChange::default() };
        facts.push(Fact::FabricChanged { fabric: fabric.id, change });
        renumbered.push(Renumbered { fabric, tag });
    }
    Ok((facts, renumbered))
}
