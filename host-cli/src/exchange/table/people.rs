//! The people named in a table: those whom the log knows, and new ones, each once.

use crate::exchange::RowFault;
use crate::input::{Field, Why, Wrong, person};
use crate::log::{Entry, Fact, Here, Id, Ids, People};
use crate::store::Read;

/// Who is meant by the names of a table.
pub struct Pullers {
    known: People,
    new: Vec<(String, Id)>,
    ids: Ids,
}

impl Pullers {
    /// Against whom the log knows.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn of(read: &dyn Read, here: Here) -> Result<Self, crate::store::StoreError> {
        Ok(Self { known: read.people()?, new: Vec::new(), ids: Ids::after(here, None) })
    }

    /// The person of a name, and the entry that names them where they are new; nobody for an empty name.
    ///
    /// # Errors
    ///
    /// A text that cannot be a name, or the name of several.
    pub fn named(&mut self, text: &str) -> Result<(Option<Id>, Option<Entry>), RowFault> {
        if text.trim().is_empty() {
            return Ok((None, None));
        }
        let name = person::name(Field::PulledBy, text)?;
        match self.known.called(&name).as_slice() {
            [] => {}
            [one] => return Ok((Some(one.id), None)),
            _ => return Err(Wrong::new(Field::PulledBy, text, Why::SeveralPeople).into()),
        }
        if let Some((_, id)) = self.new.iter().find(|(known, _)| People::same_name(known, &name)) {
            return Ok((Some(*id), None));
        }
        let id = self.ids.next();
        let entry = Entry::new(self.ids.next(), Fact::PersonNamed { person: id, name: name.clone() });
        self.new.push((name, id));
        Ok((Some(id), Some(entry)))
    }
}
