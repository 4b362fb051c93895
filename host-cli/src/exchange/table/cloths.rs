//! Cloths typed into a table, or as `export --csv fabrics` wrote them.
//!
//! Needs the column `name`; takes the others of [`FABRICS`], and `width`, `length` and `mass` whose cells carry their unit.
//! A bare number under `width_mm`, `length_mm` or `g_per_m2` has the unit of the head.

use std::collections::HashMap;

use tenter_core::Unit;

use super::{FABRICS, as_typed};
use crate::exchange::{ImportError, RowFault, TableError};
use crate::input::cloth::{TypedCloth, added, is_no};
use crate::input::synonym::CONSTRUCTION;
use crate::input::{Field, Why, Wrong, making};
use crate::log::{Entry, Fabric, Fact, FreeTags, Here, Id, Ids, Subject};
use crate::store::Read;

/// Heads beside those of an exported table.
const TYPED: [&str; 3] = ["width", "length", "mass"];

/// Whether these are the heads of a table of cloths.
pub fn are_heads(heads: &[String]) -> bool {
    let has = |head: &str| heads.iter().any(|one| one == head);
    has("name") && !["readings", "gauge", "pulled"].into_iter().any(has)
}

/// Refuses heads that are not known, or that stand there twice.
///
/// # Errors
///
/// The first of them.
pub fn check_heads(heads: &[String]) -> Result<(), TableError> {
    let known = |head: &String| head.is_empty() || FABRICS.iter().chain(&TYPED).any(|known| known == head);
    match heads.iter().find(|head| !known(head)) {
        Some(head) => Err(TableError::UnknownColumn(head.clone())),
        None => Ok(()),
    }
}

/// What rows are read against.
pub struct Cloths<'r> {
    read: &'r dyn Read,
    /// The cloths that were not retired.
    live: Vec<Fabric>,
    /// Tags that are worn, those of earlier rows too, with who wears them.
    worn: HashMap<u16, String>,
    /// Tags that were ever given.
    given: Vec<u16>,
    tags: FreeTags,
    ids: Ids,
}

impl<'r> Cloths<'r> {
    /// Against what the log holds.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn of(read: &'r dyn Read, here: Here) -> Result<Self, ImportError> {
        let mut live = read.fabrics()?;
        let given = live.iter().map(|fabric| fabric.tag.number()).collect();
        let newest = live.iter().map(|fabric| fabric.id).max();
        live.retain(|fabric| !fabric.dropped);
        let tags = read.free_tags()?;
        let worn = live.iter().map(|fabric| (fabric.tag.number(), fabric.name.clone())).collect();
        Ok(Self { read, live, worn, given, tags, ids: Ids::after(here, newest) })
    }

    /// The entries of a row: a cloth with its marks; the entry that is there where the log knows it.
    ///
    /// # Errors
    ///
    /// The first cell that cannot be read, or a tag that is taken.
    pub fn entries(&mut self, cells: &HashMap<&str, &str>) -> Result<Vec<Entry>, RowFault> {
        let cell = |head: &str| as_typed(cells.get(head).copied().unwrap_or_default());
        let mut change = added(&typed(&cell)?)?;
        let id = match cell("id") {
            "" => None,
            text => Some(Id::from_elsewhere(&text.to_uppercase()).ok_or_else(|| wrong(Field::Id, text, Why::NotAnId))?),
        };
        if let Some(known) = self.known(id, &change)? {
            return Ok(vec![known]);
        }
        let is_dropped = yes_or_no(Field::Retire, cell("dropped"))?.unwrap_or(false);
        let tag = match change.tag {
            Some(tag) => tag,
            None => {
                self.tags.next(&self.given).ok_or_else(|| wrong(Field::Tag, "", Why::NoTagLeft(self.tags.range)))?
            }
        };
        change.tag = Some(tag);
        let name = change.name.clone().unwrap_or_default();
        if !is_dropped {
            // Two that an exported table names apart may share a tag.
            if let Some(by) = self.worn.get(&tag).filter(|_| id.is_none()) {
                return Err(wrong(Field::Tag, &tag.to_string(), Why::OnACloth { by: by.clone() }));
            }
            self.worn.insert(tag, name);
        }
        self.given.push(tag);
        let fabric = id.unwrap_or_else(|| self.ids.next());
        let mut entries = vec![Entry::new(fabric, Fact::FabricAdded(change))];
        for (field, grain, head) in [
            (Field::WashedLengthwise, tenter_core::Grain::Lengthwise, "washed_lengthwise"),
            (Field::WashedCrosswise, tenter_core::Grain::Crosswise, "washed_crosswise"),
        ] {
            if !cell(head).is_empty() {
                let marks = making::marks(field, cell(head), None, Unit::Mm)?;
                let fact = Fact::FabricWashed { fabric, grain, marks, note: String::new() };
                entries.push(Entry::new(self.ids.next(), fact));
            }
        }
        if is_dropped {
            entries.push(Entry::new(self.ids.next(), Fact::FabricDropped { fabric, note: String::new() }));
        }
        Ok(entries)
    }

    /// The entry that added a cloth which the log holds: the one with the identifier; where none was typed, the one with
    /// the name, and with the tag where that was typed.
    fn known(&self, id: Option<Id>, change: &crate::log::FabricChange) -> Result<Option<Entry>, RowFault> {
        let same_name = |fabric: &&Fabric| change.name.as_deref() == Some(fabric.name.as_str());
        let known = match id {
            Some(id) => self.read.fabric(id)?.map(|fabric| fabric.id),
            None => {
                let mut same = self.live.iter().filter(same_name);
                same.find(|fabric| change.tag.is_none_or(|tag| fabric.tag.number() == tag)).map(|fabric| fabric.id)
            }
        };
        let Some(known) = known else { return Ok(None) };
        Ok(self.read.history(Subject::Fabric(known))?.into_iter().next())
    }
}

fn wrong(field: Field, text: &str, why: Why) -> RowFault {
    Wrong::new(field, text, why).into()
}

/// The cells of a row as a cloth.
fn typed<'c>(cell: &impl Fn(&str) -> &'c str) -> Result<TypedCloth, RowFault> {
    let text = |head: &str| Some(cell(head)).filter(|text| !text.is_empty()).map(str::to_owned);
    // A bare number has the unit of the head.
    let with_unit = |head: &str, unit: &str| {
        text(head).map(|text| {
            let is_bare = text.parse::<f64>().is_ok();
            if is_bare { format!("{text}{unit}") } else { text }
        })
    };
    Ok(TypedCloth {
        name: text("name"),
        tag: text("tag"),
        fibre: text("fibre"),
        construction: match cell("construction") {
            "" => None,
            text => Some(CONSTRUCTION.read(Field::Construction, text)?),
        },
        width: with_unit("width_mm", "mm").or_else(|| text("width")),
        length: with_unit("length_mm", "mm").or_else(|| text("length")),
        mass: with_unit("g_per_m2", " g/m2").or_else(|| text("mass")),
        finish: text("finish"),
        drape: text("drape"),
        purpose: text("purpose"),
        one_way: yes_or_no(Field::OneWay, cell("one_way"))?,
        colour: text("colour"),
        place: text("place"),
        note: text("note"),
        seen: text("seen"),
        price: text("price"),
        bought: None,
        washed: yes_or_no(Field::Washed, cell("washed"))?,
    })
}

fn yes_or_no(field: Field, text: &str) -> Result<Option<bool>, RowFault> {
    match text.to_lowercase().as_str() {
        "" => Ok(None),
        "yes" | "y" | "1" | "true" => Ok(Some(true)),
        "n" | "0" | "false" => Ok(Some(false)),
        other if is_no(other) => Ok(Some(false)),
        other => Err(wrong(field, other, Why::NotYesOrNo)),
    }
}
