//! Entries as JSON: `{"id":…,"at":…,"who":…,"kind":…` and then the fields of what was said.
//!
//! They are written to a text and read from a [`Value`], and in no other way: each further one would put all of it once
//! more into the program that a phone fetches.

use serde::de::{DeserializeOwned, Error as _};
use serde::{Deserialize, Deserializer};
use serde_json::{Error, Map, Serializer, Value, from_value};

use super::entry::{Entry, Fact};
use super::id::Id;

type Fields = Map<String, Value>;

/// Takes a field that must be there.
fn field<T: DeserializeOwned>(fields: &mut Fields, name: &'static str) -> Result<T, Error> {
    from_value(fields.remove(name).ok_or_else(|| Error::missing_field(name))?)
}

/// Takes a field that may be missing.
fn optional<T: DeserializeOwned + Default>(fields: &mut Fields, name: &str) -> Result<T, Error> {
    fields.remove(name).map_or_else(|| Ok(T::default()), from_value)
}

fn rest<T: DeserializeOwned>(fields: Fields) -> Result<T, Error> {
    from_value(Value::Object(fields))
}

/// An entry of an identifier and its [body](Entry::body), as one line.
#[must_use]
pub fn line_of(id: Id, body: &str) -> String {
    format!("{{\"id\":\"{id}\",\"at\":\"{}\",{}", id.at(), body.strip_prefix('{').unwrap_or(body))
}

impl Entry {
    /// What it says without its identifier and time, as JSON: how a log keeps it.
    ///
    /// # Errors
    ///
    /// What cannot be written as JSON.
    pub fn body(&self) -> Result<String, Error> {
        let fact = self.fact.text()?;
        Ok(match (self.who, fact.strip_prefix('{')) {
            (Some(who), Some(fact)) => format!("{{\"who\":\"{who}\",{fact}"),
            _ => fact,
        })
    }

    /// The entry of an identifier and a [body](Self::body).
    ///
    /// # Errors
    ///
    /// A text that is no body.
    pub fn of_body(id: Id, body: &str) -> Result<Self, Error> {
        let mut fields: Fields = serde_json::from_str(body)?;
        let who = optional(&mut fields, "who")?;
        Ok(Self::new(id, Fact::of(fields)?).by(who))
    }

    /// The whole of it as JSON, as an exported log holds it.
    ///
    /// # Errors
    ///
    /// What cannot be written as JSON.
    pub fn line(&self) -> Result<String, Error> {
        Ok(line_of(self.id, &self.body()?))
    }

    fn of(mut fields: Fields) -> Result<Self, Error> {
        Ok(Self {
            id: field(&mut fields, "id")?,
            at: optional(&mut fields, "at")?,
            who: optional(&mut fields, "who")?,
            fact: Fact::of(fields)?,
        })
    }
}

impl<'de> Deserialize<'de> for Entry {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Self::of(Fields::deserialize(deserializer)?).map_err(D::Error::custom)
    }
}

impl Fact {
    /// As JSON, the kind first.
    fn text(&self) -> Result<String, Error> {
        let mut bytes = Vec::new();
        Self::serialize(self, &mut Serializer::new(&mut bytes))?;
        let text = String::from_utf8(bytes).map_err(Error::custom)?;
        // serde writes {"KIND":{FIELDS}}.
        let inside = text.strip_prefix("{\"").and_then(|text| text.strip_suffix("}}"));
        let (kind, fields) = inside.and_then(|inside| inside.split_once("\":{")).unwrap_or_default();
        let comma = if fields.is_empty() { "" } else { "," };
        Ok(format!("{{\"kind\":\"{kind}\"{comma}{fields}}}"))
    }

    /// Its fields as JSON, the kind among them; none where it cannot be written so.
    #[must_use]
    pub fn fields(&self) -> Map<String, Value> {
        self.text().and_then(|text| serde_json::from_str(&text)).unwrap_or_default()
    }

    /// From its fields, the kind among them. What stands beside the subject of a change is read as the change.
    fn of(mut fields: Fields) -> Result<Self, Error> {
        let kind: String = field(&mut fields, "kind")?;
        let all = &mut fields;
        Ok(match kind.as_str() {
            "fabric-changed" => Self::FabricChanged { fabric: field(all, "fabric")?, change: rest(fields)? },
            "fabric-washed" => Self::FabricWashed {
                fabric: field(all, "fabric")?,
                grain: field(all, "grain")?,
                note: optional(all, "note")?,
                marks: rest(fields)?,
            },
            "fabric-learned" => Self::FabricLearned { fabric: field(all, "fabric")?, learned: rest(fields)? },
            "photo-added" => Self::PhotoAdded { fabric: field(all, "fabric")?, said: rest(fields)? },
            "pattern-changed" => Self::PatternChanged { pattern: field(all, "pattern")?, change: rest(fields)? },
            "role-added" => Self::RoleAdded { pattern: field(all, "pattern")?, change: rest(fields)? },
            "role-changed" => Self::RoleChanged { role: field(all, "role")?, change: rest(fields)? },
            "garment-changed" => Self::GarmentChanged { garment: field(all, "garment")?, change: rest(fields)? },
            _ => Self::deserialize(Value::Object(Map::from_iter([(kind, Value::Object(fields))])))?,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::super::fabric::FabricChange;
    use super::*;

    /// The layout that every log has had since the first, by hand.
    #[test]
    fn the_kind_stands_first_and_the_fields_beside_it() {
        let id: Id = "01KJM7S4000000000000000001".parse().unwrap();
        let named = FabricChange { name: Some("a \":{ b".into()), ..FabricChange::default() };
        for (fact, body) in [
            (Fact::FabricAdded(FabricChange::default()), r#"{"kind":"fabric-added"}"#.to_owned()),
            (Fact::FabricAdded(named.clone()), r#"{"kind":"fabric-added","name":"a \":{ b"}"#.to_owned()),
            (
                Fact::FabricChanged { fabric: id, change: named },
                format!(r#"{{"kind":"fabric-changed","fabric":"{id}","name":"a \":{{ b"}}"#),
            ),
            (Fact::FabricRestored { fabric: id }, format!(r#"{{"kind":"fabric-restored","fabric":"{id}"}}"#)),
        ] {
            let entry = Entry::new(id, fact).by(Some(id));
            assert_eq!(entry.body().unwrap(), body.replacen('{', &format!("{{\"who\":\"{id}\","), 1));
            assert_eq!(Entry::of_body(id, &entry.body().unwrap()).unwrap(), entry);
            assert_eq!(serde_json::from_str::<Entry>(&entry.line().unwrap()).unwrap(), entry);
        }
    }

    #[test]
    fn what_is_missing_or_unknown_is_told_by_name() {
        let id = r#""id":"01KJM7S4000000000000000001""#;
        for (text, complaint) in [
            ("{}".to_owned(), "missing field `id`"),
            (format!("{{{id}}}"), "missing field `kind`"),
            (format!("{{{id},\"kind\":\"sold\"}}"), "unknown variant `sold`"),
            (format!("{{{id},\"kind\":\"fabric-changed\"}}"), "missing field `fabric`"),
            (format!("{{{id},\"kind\":\"fabric-restored\"}}"), "missing field `fabric`"),
        ] {
            let error = serde_json::from_str::<Entry>(&text).unwrap_err().to_string();
            assert!(error.starts_with(complaint), "{text}: {error}");
        }
    }
}
