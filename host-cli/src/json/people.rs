//! The people who pull, as JSON.

use serde_json::json;

use crate::finding::people::Puller;

/// Everybody, as an array on one line.
#[must_use]
pub fn list(all: &[Puller]) -> String {
    let one = |one: &Puller| {
        let (id, name) = one.person.as_ref().map(|person| (person.id, person.name.as_str())).unzip();
        let (ratio, dof) = one.repeatability.map(|own| (own.ratio(), own.dof())).unzip();
        json!({ "id": id, "name": name, "tests": one.tests, "ratio": ratio, "dof": dof, "here": one.here })
    };
    serde_json::Value::from(all.iter().map(one).collect::<Vec<_>>()).to_string()
}
