//! Rows as what they mean, and back.

use jiff::Timestamp;
use rusqlite::types::Type;
use rusqlite::{Row, ToSql};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use tenter_core::{Length, Scatter, record};

use crate::log::pattern::DemandField;
use crate::log::{
    ClothNeed, ClothPhoto, Construction, CutFor, Device, Drape, Entry, Fabric, Finish, Garment, GarmentKind, Id,
    Lesson, MassPerArea, MassRange, Pattern, Person, Photo, PhotoName, Pooled, Purpose, Role, Shop, StoredTest, Tested,
};
use crate::store::{line_of, time_of};

/// Columns of a cloth, in the order of [`fabric`].
pub const FABRIC: &str = "id, tag, name, fibre, construction, width, length, mg_per_m2, place, note, washed, shop, \
    washed_lengthwise, washed_crosswise, dropped, last_washed, more";
/// Columns of a test, in the order of [`test`].
pub const TEST: &str = "id, fabric, tag, pulled, clock_unset, device, number, note, record, dropped, as_read, \
    pulled_by";
/// Columns of a pattern, in the order of [`pattern`].
pub const PATTERN: &str = "id, name, note, dropped";
/// Columns of a role, in the order of [`role`].
pub const ROLE: &str = "id, pattern, view, name, asks, note, dropped";

type Result<T> = rusqlite::Result<T>;

/// A column that does not hold what it must.
pub fn wrong(column: usize, error: impl std::error::Error + Send + Sync + 'static) -> rusqlite::Error {
    rusqlite::Error::FromSqlConversionFailure(column, Type::Text, Box::new(error))
}

/// An identifier in a column.
///
/// # Errors
///
/// What is no identifier.
pub fn id(row: &Row<'_>, column: usize) -> Result<Id> {
    row.get_ref(column)?.as_str()?.parse().map_err(|error| wrong(column, error))
}

fn optional_id(row: &Row<'_>, column: usize) -> Result<Option<Id>> {
    let text: Option<String> = row.get(column)?;
    text.map(|text| text.parse().map_err(|error| wrong(column, error))).transpose()
}

fn json<T: DeserializeOwned>(row: &Row<'_>, column: usize) -> Result<Option<T>> {
    let text: Option<String> = row.get(column)?;
    text.map(|text| serde_json::from_str(&text).map_err(|error| wrong(column, error))).transpose()
}

fn length(row: &Row<'_>, column: usize) -> Result<Option<Length>> {
    row.get::<_, Option<i32>>(column).map(|steps| steps.map(Length::from_steps))
}

fn time(row: &Row<'_>, column: usize) -> Result<Option<Timestamp>> {
    let ms: Option<i64> = row.get(column)?;
    Ok(ms.map(time_of))
}

/// A value as JSON text.
///
/// # Errors
///
/// What cannot be written.
pub fn text<T: Serialize>(value: &T) -> Result<String> {
    serde_json::to_string(value).map_err(|error| rusqlite::Error::ToSqlConversionFailure(Box::new(error)))
}

/// An entry of `id, body`.
///
/// # Errors
///
/// A damaged row, here and below.
pub fn entry(row: &Row<'_>) -> Result<Entry> {
    Entry::of_body(id(row, 0)?, row.get_ref(1)?.as_str()?).map_err(|error| wrong(1, error))
}

/// An entry of `id, body` as one line of JSON.
///
/// # Errors
///
/// As above.
pub fn entry_line(row: &Row<'_>) -> Result<String> {
    Ok(line_of(id(row, 0)?, row.get_ref(1)?.as_str()?))
}

fn construction(word: &str) -> Construction {
    Construction::from_word(word).unwrap_or_default()
}

/// What else is known of a cloth, as JSON in one column.
#[derive(Default, Serialize, Deserialize)]
#[serde(default)]
pub struct More {
    #[serde(skip_serializing_if = "Option::is_none")]
    finish: Option<Finish>,
    #[serde(skip_serializing_if = "Option::is_none")]
    drape: Option<Drape>,
    #[serde(skip_serializing_if = "Option::is_none")]
    purpose: Option<Purpose>,
    one_way: bool,
    colour: String,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    photos: Vec<ClothPhoto>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    lessons: Vec<Lesson>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    cuts: Vec<CutFor>,
}

impl More {
    /// Of a cloth.
    pub fn of(fabric: &Fabric) -> Self {
        let Fabric { finish, drape, purpose, one_way, .. } = *fabric;
        Self {
            finish,
            drape,
            purpose,
            one_way,
            colour: fabric.colour.clone(),
            photos: fabric.photos.clone(),
            lessons: fabric.lessons.clone(),
            cuts: fabric.cuts.clone(),
        }
    }

    /// Tells a cloth.
    pub fn put(self, fabric: &mut Fabric) {
        let Self { finish, drape, purpose, one_way, colour, photos, lessons, cuts } = self;
        (fabric.finish, fabric.drape, fabric.purpose, fabric.one_way) = (finish, drape, purpose, one_way);
        (fabric.colour, fabric.photos, fabric.lessons, fabric.cuts) = (colour, photos, lessons, cuts);
    }
}

/// A cloth of [`FABRIC`].
///
/// # Errors
///
/// As above.
pub fn fabric(row: &Row<'_>) -> Result<Fabric> {
    let mass = row.get::<_, Option<u32>>(7)?;
    let more: More = json(row, 16)?.unwrap_or_default();
    let mut fabric = Fabric {
        fibre: row.get(3)?,
        construction: construction(row.get_ref(4)?.as_str()?),
        width: length(row, 5)?,
        length: length(row, 6)?,
        mass: mass.map(MassPerArea::from_mg_per_m2),
        place: row.get(8)?,
        note: row.get(9)?,
        washed: row.get(10)?,
        shop: json::<Shop>(row, 11)?,
        washed_lengthwise: json(row, 12)?,
        washed_crosswise: json(row, 13)?,
        dropped: row.get(14)?,
        last_washed: time(row, 15)?,
        ..Fabric::named(id(row, 0)?, row.get::<_, u16>(1)?, row.get_ref(2)?.as_str()?)
    };
    more.put(&mut fabric);
    Ok(fabric)
}

/// The columns of [`FABRIC`].
///
/// # Errors
///
/// What cannot be written, here and below.
pub fn fabric_values(fabric: &Fabric) -> Result<Vec<Box<dyn ToSql>>> {
    let steps = |length: Option<Length>| length.map(Length::steps);
    Ok(vec![
        Box::new(fabric.id.to_string()),
        Box::new(fabric.tag.number()),
        Box::new(fabric.name.clone()),
        Box::new(fabric.fibre.clone()),
        Box::new(fabric.construction.word()),
        Box::new(steps(fabric.width)),
        Box::new(steps(fabric.length)),
        Box::new(fabric.mass.map(MassPerArea::mg_per_m2)),
        Box::new(fabric.place.clone()),
        Box::new(fabric.note.clone()),
        Box::new(fabric.washed),
        Box::new(fabric.shop.as_ref().map(text).transpose()?),
        Box::new(fabric.washed_lengthwise.as_ref().map(text).transpose()?),
        Box::new(fabric.washed_crosswise.as_ref().map(text).transpose()?),
        Box::new(fabric.dropped),
        Box::new(fabric.last_washed.map(Timestamp::as_millisecond)),
        Box::new(text(&More::of(fabric))?),
    ])
}

/// A test of [`TEST`].
///
/// # Errors
///
/// As above.
pub fn test(row: &Row<'_>) -> Result<StoredTest> {
    let device = match (row.get(5)?, row.get(6)?) {
        (Some(device), Some(number)) => Some(Device { device, number }),
        _ => None,
    };
    let said = Tested {
        fabric: optional_id(row, 1)?,
        tag: row.get(2)?,
        pulled: time_of(row.get(3)?),
        clock_unset: row.get(4)?,
        device,
        pulled_by: optional_id(row, 11)?,
        note: row.get(7)?,
        as_read: row.get_ref(10)?.as_str()?.split_whitespace().map(str::to_owned).collect(),
        test: record::decode_test(row.get_ref(8)?.as_blob()?).map_err(|error| wrong(8, error))?,
    };
    Ok(StoredTest { id: id(row, 0)?, said, dropped: row.get(9)? })
}

/// The columns of [`TEST`], then `grain, stretch_percent, growth_percent, hand_dof, hand_sum`.
///
/// # Errors
///
/// As above.
pub fn test_values(test: &StoredTest, fabric: Option<Id>) -> Result<Vec<Box<dyn ToSql>>> {
    let said = &test.said;
    let mut buffer = [0; record::MAX_TEST_BYTES];
    let bytes = record::encode_test(&said.test, &mut buffer)
        .map_err(|error| rusqlite::Error::ToSqlConversionFailure(Box::new(error)))?;
    let figures = tenter_core::Figures::of(&said.test, Scatter::ASSUMED)
        .map_err(|error| rusqlite::Error::ToSqlConversionFailure(Box::new(error)))?;
    let hand = Pooled::of(&said.test);
    Ok(vec![
        Box::new(test.id.to_string()),
        Box::new(fabric.map(|fabric| fabric.to_string())),
        Box::new(said.tag),
        Box::new(said.pulled.as_millisecond()),
        Box::new(said.clock_unset),
        Box::new(said.device.map(|device| device.device)),
        Box::new(said.device.map(|device| device.number)),
        Box::new(said.note.clone()),
        Box::new(bytes.to_vec()),
        Box::new(test.dropped),
        Box::new(said.as_read.join(" ")),
        Box::new(said.pulled_by.map(|person| person.to_string())),
        Box::new(said.test.grain().word()),
        Box::new(f64::from(figures.stretch.ratio.percent_f32())),
        Box::new(figures.rest.map(|rest| f64::from(rest.growth.ratio.percent_f32()))),
        Box::new(hand.dof),
        Box::new(hand.sum),
    ])
}

/// A garment of `body`.
///
/// # Errors
///
/// As above.
pub fn garment(row: &Row<'_>) -> Result<Garment> {
    json(row, 0)?.ok_or(rusqlite::Error::QueryReturnedNoRows)
}

/// `id, number, name, due, done, dropped, body` of a garment.
///
/// # Errors
///
/// As above.
pub fn garment_values(garment: &Garment) -> Result<Vec<Box<dyn ToSql>>> {
    Ok(vec![
        Box::new(garment.id.to_string()),
        Box::new(garment.number),
        Box::new(garment.name.clone()),
        Box::new(garment.by.map(|by| by.to_string())),
        Box::new(garment.done.map(Timestamp::as_millisecond)),
        Box::new(garment.dropped),
        Box::new(text(garment)?),
    ])
}

/// A person of `id, name, same_as`.
///
/// # Errors
///
/// As above.
pub fn person(row: &Row<'_>) -> Result<Person> {
    Ok(Person { id: id(row, 0)?, name: row.get(1)?, same_as: optional_id(row, 2)? })
}

/// What the tests of a person on a construction say, of `construction, pulled_by` and the four sums.
///
/// # Errors
///
/// As above.
pub fn said(row: &Row<'_>) -> Result<(Option<Id>, Construction, Pooled)> {
    let text = row.get_ref(1)?.as_str()?;
    let person = (!text.is_empty()).then(|| text.parse().map_err(|error| wrong(1, error))).transpose()?;
    let [dof, sum, session_dof, session_sum] = [row.get(2)?, row.get(3)?, row.get(4)?, row.get(5)?];
    Ok((person, construction(row.get_ref(0)?.as_str()?), Pooled { dof, sum, session_dof, session_sum }))
}

/// A photograph of `jpeg`.
///
/// # Errors
///
/// As above, or bytes that are no photograph.
pub fn photo(row: &Row<'_>) -> Result<Photo> {
    Photo::new(row.get(0)?).ok_or_else(|| wrong(0, crate::log::photo::Foreign))
}

/// The name of a photograph.
///
/// # Errors
///
/// As above.
pub fn photo_name(row: &Row<'_>) -> Result<PhotoName> {
    row.get_ref(0)?.as_str()?.parse().map_err(|error| wrong(0, error))
}

/// A pattern of [`PATTERN`], without roles.
///
/// # Errors
///
/// As above.
pub fn pattern(row: &Row<'_>) -> Result<Pattern> {
    Ok(Pattern { id: id(row, 0)?, name: row.get(1)?, note: row.get(2)?, roles: Vec::new(), dropped: row.get(3)? })
}

/// What a role asks, as JSON in one column.
#[derive(Serialize, Deserialize)]
pub struct RoleAsks {
    demand: DemandField,
    constructions: Vec<Construction>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    kind: Option<GarmentKind>,
    #[serde(default)]
    mass: MassRange,
    #[serde(default)]
    drapes: Vec<Drape>,
    #[serde(default)]
    finishes: Vec<Finish>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    purpose: Option<Purpose>,
    cloth: Option<ClothNeed>,
}

impl RoleAsks {
    /// Of a role.
    pub fn of(role: &Role) -> Self {
        Self {
            demand: DemandField(role.demand),
            constructions: role.constructions.clone(),
            kind: role.kind,
            mass: role.mass,
            drapes: role.drapes.clone(),
            finishes: role.finishes.clone(),
            purpose: role.purpose,
            cloth: role.cloth,
        }
    }

    /// Tells a role.
    pub fn put(self, role: &mut Role) {
        let DemandField(demand) = self.demand;
        *role = Role {
            demand,
            constructions: self.constructions,
            kind: self.kind,
            mass: self.mass,
            drapes: self.drapes,
            finishes: self.finishes,
            purpose: self.purpose,
            cloth: self.cloth,
            ..role.clone()
        };
    }
}

/// A role of [`ROLE`].
///
/// # Errors
///
/// As above.
pub fn role(row: &Row<'_>) -> Result<Role> {
    let asks: RoleAsks = json(row, 4)?.ok_or(rusqlite::Error::QueryReturnedNoRows)?;
    let mut role = Role::named(id(row, 0)?, id(row, 1)?, row.get_ref(3)?.as_str()?);
    (role.view, role.note, role.dropped) = (row.get(2)?, row.get(5)?, row.get(6)?);
    asks.put(&mut role);
    Ok(role)
}

/// The columns of [`ROLE`].
///
/// # Errors
///
/// As above.
pub fn role_values(role: &Role) -> Result<Vec<Box<dyn ToSql>>> {
    Ok(vec![
        Box::new(role.id.to_string()),
        Box::new(role.pattern.to_string()),
        Box::new(role.view.clone()),
        Box::new(role.name.clone()),
        Box::new(text(&RoleAsks::of(role))?),
        Box::new(role.note.clone()),
        Box::new(role.dropped),
    ])
}
