//! The people who pull: a name each, kept in one place.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use super::id::Id;

/// A person as the log knows them now.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Person {
    /// Their identifier, drawn when they were first named. Entries hold this and never the name.
    pub id: Id,
    /// Their name; empty where it was taken out of the log, or has not arrived.
    pub name: String,
    /// The person they turned out to be.
    pub same_as: Option<Id>,
}

/// Everybody in a log.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct People(Vec<Person>);

impl People {
    /// Of what the log holds, in the order in which they were first named.
    #[must_use]
    pub const fn new(all: Vec<Person>) -> Self {
        Self(all)
    }

    /// Who is meant by an identifier, after all that was said of who is the same person.
    #[must_use]
    pub fn resolve(&self, id: Id) -> Id {
        let mut found = id;
        // Two logs can each say it the other way round: then the first in the log stands for both.
        for _ in 0..=self.0.len() {
            match self.0.iter().find(|person| person.id == found).and_then(|person| person.same_as) {
                Some(next) if next != found => found = next,
                _ => return found,
            }
        }
        self.0.iter().map(|person| person.id).find(|one| self.reaches(id, *one)).unwrap_or(id)
    }

    fn reaches(&self, from: Id, to: Id) -> bool {
        let mut at = from;
        for _ in 0..=self.0.len() {
            if at == to {
                return true;
            }
            let Some(next) = self.0.iter().find(|person| person.id == at).and_then(|person| person.same_as) else {
                return false;
            };
            at = next;
        }
        false
    }

    /// Those under whom tests were put down that belong to somebody else, as it is known `now`.
    ///
    /// Tests lie under who was meant. So where it is said anew whom somebody is the same as, their tests lie under the
    /// person whom they were the same as before.
    #[must_use]
    pub fn no_longer_meant(&self, now: &Self) -> BTreeSet<Id> {
        let each = self.identifiers().chain(now.identifiers()).collect::<BTreeSet<_>>().into_iter();
        each.map(|id| (self.resolve(id), now.resolve(id)))
            .filter_map(|(before, after)| (before != after).then_some(before))
            .collect()
    }

    /// The person who is meant by an identifier.
    #[must_use]
    pub fn get(&self, id: Id) -> Option<&Person> {
        let id = self.resolve(id);
        self.0.iter().find(|person| person.id == id)
    }

    /// The name of a person; none where nobody was named, or the name is gone.
    #[must_use]
    pub fn name(&self, id: Option<Id>) -> Option<&str> {
        id.and_then(|id| self.get(id)).map(|person| person.name.as_str()).filter(|name| !name.is_empty())
    }

    /// Those who have a name, whatever its capitals and spaces: usually one.
    #[must_use]
    pub fn called(&self, name: &str) -> Vec<&Person> {
        self.each().filter(|person| Self::same_name(&person.name, name)).collect()
    }

    /// Whether two names are the same, whatever their capitals and spaces.
    #[must_use]
    pub fn same_name(one: &str, other: &str) -> bool {
        let letters =
            |name: &str| name.chars().filter(|c| !c.is_whitespace()).flat_map(char::to_lowercase).collect::<String>();
        !letters(one).is_empty() && letters(one) == letters(other)
    }

    /// Every identifier that was ever given to a person.
    pub fn identifiers(&self) -> impl Iterator<Item = Id> {
        self.0.iter().map(|person| person.id)
    }

    /// Everybody who stands for themselves, in the order in which they were first named.
    pub fn each(&self) -> impl Iterator<Item = &Person> {
        self.0.iter().filter(|person| self.resolve(person.id) == person.id)
    }
}

#[cfg(test)]
#[cfg(feature = "desk")]
mod tests {
    use super::*;
    use crate::log::Ids;

    #[test]
    fn who_turned_out_to_be_whom() {
        let mut ids = Ids::default();
        let [one, two, three] = [ids.next(), ids.next(), ids.next()];
        let person = |id, name: &str, same_as| Person { id, name: name.to_owned(), same_as };
        let chain = [person(one, "Ann", Some(two)), person(two, "Anne", Some(three)), person(three, "Anna", None)];
        let people = People::new(chain.to_vec());
        assert_eq!((people.resolve(one), people.name(Some(one))), (three, Some("Anna")));
        assert_eq!(people.each().map(|person| person.id).collect::<Vec<_>>(), [three]);
        // Two desks said it each the other way round.
        let round = People::new(vec![person(one, "Ann", Some(two)), person(two, "Anne", Some(one))]);
        assert_eq!((round.resolve(one), round.resolve(two)), (one, one));
        assert_eq!((round.resolve(three), round.name(None), round.name(Some(three))), (three, None, None));
    }

    /// A test stands with who was meant: of the three here everybody's tests with the second.
    #[test]
    fn whose_tests_change_hands() {
        let mut ids = Ids::default();
        let [one, two, three] = [ids.next(), ids.next(), ids.next()];
        let people = |merged: [Option<Id>; 3]| {
            let person = |(id, same_as)| Person { id, name: String::new(), same_as };
            People::new([one, two, three].into_iter().zip(merged).map(person).collect())
        };
        let before = people([Some(two), None, Some(two)]);
        assert_eq!(before.no_longer_meant(&before), BTreeSet::new());
        // The first turns out to be the third, who is the second; then themselves; then the second to be the first.
        assert_eq!(before.no_longer_meant(&people([Some(three), None, Some(two)])), BTreeSet::new());
        assert_eq!(before.no_longer_meant(&people([None, None, Some(two)])), BTreeSet::from([two]));
        assert_eq!(before.no_longer_meant(&people([Some(two), Some(one), Some(two)])), BTreeSet::from([two]));
        // Nobody was known.
        assert_eq!(People::default().no_longer_meant(&before), BTreeSet::from([one, three]));
    }
}
