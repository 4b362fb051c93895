//! The people who pull: how often each did, and how well they repeat.

use tenter_core::repeatability::Repeatability;

use crate::log::{Id, Person};
use crate::store::{Read, StoreError, WhichTests};

/// Somebody who pulled.
#[derive(Clone, Debug, PartialEq)]
pub struct Puller {
    /// Who; none for those tests of which nobody said who pulled.
    pub person: Option<Person>,
    /// How many tests of theirs count.
    pub tests: usize,
    /// What those say of their repeatability; none where too little was pulled.
    pub repeatability: Option<Repeatability>,
    /// Whether they pull at this desk where nobody says otherwise.
    pub here: bool,
}

/// Everybody, in the order in which they were named; those tests of which nobody said last, where there are any.
///
/// # Errors
///
/// A log that cannot be read.
pub fn pullers(read: &dyn Read) -> Result<Vec<Puller>, StoreError> {
    let (people, hands) = (read.people()?, read.repeatability()?);
    let here = read.desk()?.who.map(|who| people.resolve(who));
    let mut counts: std::collections::BTreeMap<Option<Id>, usize> = std::collections::BTreeMap::new();
    read.each_test(WhichTests::All, &mut |test| {
        *counts.entry(test.said.pulled_by).or_default() += 1;
        Ok(())
    })?;
    let of = |id: Option<Id>, person: Option<Person>| Puller {
        person,
        tests: counts.get(&id).copied().unwrap_or_default(),
        repeatability: hands.of(id).all().repeatability(),
        here: id.is_some() && id == here,
    };
    let mut all: Vec<Puller> = people.each().map(|person| of(Some(person.id), Some(person.clone()))).collect();
    if counts.contains_key(&None) {
        all.push(of(None, None));
    }
    Ok(all)
}
