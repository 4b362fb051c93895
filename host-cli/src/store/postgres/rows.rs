//! Rows as what they mean, and back. Rows go to the server as JSON, whose fields are its columns.

use jiff::Timestamp;
use postgres::Row;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use tenter_core::{Length, Scatter, record};

use super::super::sqlite::{More, RoleAsks};
use crate::log::{
    Construction, Device, Entry, Fabric, Garment, Id, MassPerArea, Pattern, Person, Photo, PhotoName, Pooled, Role,
    StoredTest, Tested,
};
use crate::store::{line_of, time_of};

/// Columns of a cloth.
pub const FABRIC: &str = "id, tag, name, fibre, construction, width, length, mg_per_m2, place, note, washed, shop, \
    washed_lengthwise, washed_crosswise, dropped, last_washed, more";
/// Columns of a test as they are read.
pub const TEST: &str = "id, fabric, tag, pulled, clock_unset, device, number, note, record, dropped, as_read, \
    pulled_by";
/// Columns of a test that are computed from it.
pub const TEST_FIGURES: &str = "grain, stretch_percent, growth_percent, hand_dof, hand_sum";
/// Columns of a pattern.
pub const PATTERN: &str = "id, name, note, dropped";
/// Columns of a garment.
pub const GARMENT: &str = "id, number, name, due, done, dropped, body";
/// Columns of a role.
pub const ROLE: &str = "id, pattern, view, name, asks, note, dropped";

/// A row that does not hold what it must.
#[derive(Clone, Copy, Debug)]
pub struct Damaged;

type Result<T> = core::result::Result<T, Damaged>;

impl From<postgres::Error> for Damaged {
    fn from(_: postgres::Error) -> Self {
        Self
    }
}

/// An identifier in a column.
///
/// # Errors
///
/// What is no identifier.
pub fn id(row: &Row, column: usize) -> Result<Id> {
    row.try_get::<_, &str>(column)?.parse().map_err(|_| Damaged)
}

fn optional_id(row: &Row, column: usize) -> Result<Option<Id>> {
    row.try_get::<_, Option<&str>>(column)?.map(|text| text.parse().map_err(|_| Damaged)).transpose()
}

/// A number in a column that is wider than what is meant.
fn number<T: TryFrom<i64>>(row: &Row, column: usize) -> Result<Option<T>> {
    let number: Option<i64> = row.try_get(column)?;
    number.map(|number| T::try_from(number).map_err(|_| Damaged)).transpose()
}

fn length(row: &Row, column: usize) -> Result<Option<Length>> {
    Ok(row.try_get::<_, Option<i32>>(column)?.map(Length::from_steps))
}

/// A tag in a column.
///
/// # Errors
///
/// A number that no tag has.
pub fn tag(row: &Row, column: usize) -> Result<Option<u16>> {
    let tag: Option<i32> = row.try_get(column)?;
    tag.map(|tag| u16::try_from(tag).map_err(|_| Damaged)).transpose()
}

fn time(row: &Row, column: usize) -> Result<Option<Timestamp>> {
    let ms: Option<i64> = row.try_get(column)?;
    Ok(ms.map(time_of))
}

/// The text of JSON in a column.
struct Json(String);

impl<'r> postgres::types::FromSql<'r> for Json {
    fn from_sql(
        _: &postgres::types::Type,
        raw: &'r [u8],
    ) -> core::result::Result<Self, Box<dyn std::error::Error + Sync + Send>> {
        Ok(Self(std::str::from_utf8(raw)?.to_owned()))
    }

    postgres::types::accepts!(JSON, TEXT);
}

/// The text of JSON in a column.
///
/// # Errors
///
/// A column that holds none.
pub fn text(row: &Row, column: usize) -> Result<String> {
    Ok(row.try_get::<_, Json>(column)?.0)
}

fn json<T: DeserializeOwned>(row: &Row, column: usize) -> Result<Option<T>> {
    let text: Option<Json> = row.try_get(column)?;
    text.map(|Json(text)| serde_json::from_str(&text).map_err(|_| Damaged)).transpose()
}

/// What must be there.
///
/// # Errors
///
/// Where it is not.
pub fn required<T>(value: Option<T>) -> Result<T> {
    value.ok_or(Damaged)
}

/// An entry of `id, body`.
///
/// # Errors
///
/// A damaged row, here and below.
pub fn entry(row: &Row) -> Result<Entry> {
    Entry::of_body(id(row, 0)?, &text(row, 1)?).map_err(|_| Damaged)
}

/// An entry of `id, body` as one line of JSON.
///
/// # Errors
///
/// As above.
pub fn entry_line(row: &Row) -> Result<String> {
    Ok(line_of(id(row, 0)?, &text(row, 1)?))
}

/// A cloth of [`FABRIC`].
///
/// # Errors
///
/// As above.
pub fn fabric(row: &Row) -> Result<Fabric> {
    let more: More = json(row, 16)?.unwrap_or_default();
    let mut fabric = Fabric {
        fibre: row.try_get(3)?,
        construction: Construction::from_word(row.try_get(4)?).unwrap_or_default(),
        width: length(row, 5)?,
        length: length(row, 6)?,
        mass: number(row, 7)?.map(MassPerArea::from_mg_per_m2),
        place: row.try_get(8)?,
        note: row.try_get(9)?,
        washed: row.try_get(10)?,
        shop: json(row, 11)?,
        washed_lengthwise: json(row, 12)?,
        washed_crosswise: json(row, 13)?,
        dropped: row.try_get(14)?,
        last_washed: time(row, 15)?,
        ..Fabric::named(id(row, 0)?, required(tag(row, 1)?)?, row.try_get(2)?)
    };
    more.put(&mut fabric);
    Ok(fabric)
}

/// The columns of [`FABRIC`].
pub fn of_fabric(fabric: &Fabric) -> Value {
    json!({
        "id": fabric.id,
        "tag": fabric.tag.number(),
        "name": fabric.name,
        "fibre": fabric.fibre,
        "construction": fabric.construction.word(),
        "width": fabric.width.map(Length::steps),
        "length": fabric.length.map(Length::steps),
        "mg_per_m2": fabric.mass.map(MassPerArea::mg_per_m2),
        "place": fabric.place,
        "note": fabric.note,
        "washed": fabric.washed,
        "shop": fabric.shop,
        "washed_lengthwise": fabric.washed_lengthwise,
        "washed_crosswise": fabric.washed_crosswise,
        "dropped": fabric.dropped,
        "last_washed": fabric.last_washed.map(Timestamp::as_millisecond),
        "more": More::of(fabric),
    })
}

/// A test of [`TEST`].
///
/// # Errors
///
/// As above.
pub fn test(row: &Row) -> Result<StoredTest> {
    let device = match (number(row, 5)?, number(row, 6)?) {
        (Some(device), Some(number)) => Some(Device { device, number }),
        _ => None,
    };
    let said = Tested {
        fabric: optional_id(row, 1)?,
        tag: tag(row, 2)?,
        pulled: required(time(row, 3)?)?,
        clock_unset: row.try_get(4)?,
        device,
        pulled_by: optional_id(row, 11)?,
        note: row.try_get(7)?,
        as_read: row.try_get::<_, &str>(10)?.split_whitespace().map(str::to_owned).collect(),
        test: record::decode_test(row.try_get(8)?).map_err(|_| Damaged)?,
    };
    Ok(StoredTest { id: id(row, 0)?, said, dropped: row.try_get(9)? })
}

/// The columns of [`TEST`] and [`TEST_FIGURES`].
///
/// # Errors
///
/// A test that cannot be written or worked out.
pub fn of_test(test: &StoredTest, fabric: Option<Id>) -> Result<Value> {
    let said = &test.said;
    let mut buffer = [0; record::MAX_TEST_BYTES];
    let bytes = record::encode_test(&said.test, &mut buffer).map_err(|_| Damaged)?;
    let figures = tenter_core::Figures::of(&said.test, Scatter::ASSUMED).map_err(|_| Damaged)?;
    let hand = Pooled::of(&said.test);
    Ok(json!({
        "id": test.id,
        "fabric": fabric,
        "tag": said.tag,
        "pulled": said.pulled.as_millisecond(),
        "clock_unset": said.clock_unset,
        "device": said.device.map(|device| device.device),
        "number": said.device.map(|device| device.number),
        "note": said.note,
        // As PostgreSQL reads bytes in hexadecimal.
        "record": bytes.iter().fold("\\x".to_owned(), |text, byte| format!("{text}{byte:02x}")),
        "dropped": test.dropped,
        "as_read": said.as_read.join(" "),
        "pulled_by": said.pulled_by,
        "grain": said.test.grain().word(),
        "stretch_percent": f64::from(figures.stretch.ratio.percent_f32()),
        "growth_percent": figures.rest.map(|rest| f64::from(rest.growth.ratio.percent_f32())),
        "hand_dof": hand.dof,
        "hand_sum": hand.sum,
    }))
}

/// A garment of `body`.
///
/// # Errors
///
/// As above.
pub fn garment(row: &Row) -> Result<Garment> {
    required(json(row, 0)?)
}

/// The columns of [`GARMENT`].
pub fn of_garment(garment: &Garment) -> Value {
    json!({
        "id": garment.id,
        "number": garment.number,
        "name": garment.name,
        "due": garment.by.map(|by| by.to_string()),
        "done": garment.done.map(Timestamp::as_millisecond),
        "dropped": garment.dropped,
        "body": garment,
    })
}

/// A person of `id, name, same_as`.
///
/// # Errors
///
/// As above.
pub fn person(row: &Row) -> Result<Person> {
    Ok(Person { id: id(row, 0)?, name: row.try_get(1)?, same_as: optional_id(row, 2)? })
}

/// What the tests of a person on a construction say, of `construction, pulled_by` and the four sums.
///
/// # Errors
///
/// As above.
pub fn said(row: &Row) -> Result<(Option<Id>, Construction, Pooled)> {
    let text: &str = row.try_get(1)?;
    let person = (!text.is_empty()).then(|| text.parse().map_err(|_| Damaged)).transpose()?;
    let [dof, sum] = [row.try_get(2)?, row.try_get(3)?];
    let [session_dof, session_sum] = [row.try_get(4)?, row.try_get(5)?];
    let construction = Construction::from_word(row.try_get(0)?).unwrap_or_default();
    Ok((person, construction, Pooled { dof, sum, session_dof, session_sum }))
}

/// A photograph of `jpeg`.
///
/// # Errors
///
/// As above, or bytes that are no photograph.
pub fn photo(row: &Row) -> Result<Photo> {
    required(Photo::new(row.try_get(0)?))
}

/// The name of a photograph.
///
/// # Errors
///
/// As above.
pub fn photo_name(row: &Row) -> Result<PhotoName> {
    row.try_get::<_, &str>(0)?.parse().map_err(|_| Damaged)
}

/// A pattern of [`PATTERN`], without roles.
///
/// # Errors
///
/// As above.
pub fn pattern(row: &Row) -> Result<Pattern> {
    let (name, note, dropped) = (row.try_get(1)?, row.try_get(2)?, row.try_get(3)?);
    Ok(Pattern { id: id(row, 0)?, name, note, roles: Vec::new(), dropped })
}

/// The columns of [`PATTERN`].
pub fn of_pattern(pattern: &Pattern) -> Value {
    json!({ "id": pattern.id, "name": pattern.name, "note": pattern.note, "dropped": pattern.dropped })
}

/// A role of [`ROLE`].
///
/// # Errors
///
/// As above.
pub fn role(row: &Row) -> Result<Role> {
    let asks: RoleAsks = required(json(row, 4)?)?;
    let mut role = Role::named(id(row, 0)?, id(row, 1)?, row.try_get(3)?);
    role.view = row.try_get(2)?;
    role.note = row.try_get(5)?;
    role.dropped = row.try_get(6)?;
    asks.put(&mut role);
    Ok(role)
}

/// The columns of [`ROLE`].
pub fn of_role(role: &Role) -> Value {
    json!({
        "id": role.id,
        "pattern": role.pattern,
        "view": role.view,
        "name": role.name,
        "asks": RoleAsks::of(role),
        "note": role.note,
        "dropped": role.dropped,
    })
}
