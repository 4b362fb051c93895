//! Readings typed by hand in a table, or cloths, which `cloths` reads: CSV with `,`, `;` or tabs between the cells.
//!
//! Needs the columns `tag`, `pulled`, `gauge` and `readings`; takes `grain`, `division`, `ends`, `held`, `settling`, `load`,
//! `note`, `by` and `id`; leaves alone what `export --csv tests` adds. A cell may carry its unit. A bare number
//! has the unit of the gauge, and a bare gauge is in centimetres; in a table that `export` wrote, which has more
//! columns, and in a row with an `id`, it is in millimetres.

use std::collections::HashMap;

use crc::{CRC_82_DARC, Crc};
use jiff::Timestamp;
use jiff::tz::Offset;
use tenter_core::{Ends, Grain, Held, PullTest, Unit};

use super::class::{self, ClassRows};
use super::cloths::{self, Cloths};
use super::patterns::{self, Patterns};
use super::people::Pullers;
use super::{AFTER_MARKS, BY, READ, TESTS, as_typed, made};
use crate::exchange::{ImportError, RowFault, TableError};
use crate::input::doubt::{ClothFacts, Doubted, possible};
use crate::input::named::{NameMatch, named};
use crate::input::synonym::{ENDS, GRAIN, HELD, Words};
use crate::input::{self, Field, TypedReading, TypedTest, Why, Wrong, cloth, pull_test, row, when};
use crate::log::{EVER, Entry, Fact, Here, Id, Marks, Subject, Tag, Tested};
use crate::store::{Read, StoreError};

/// What the identifier of a typed row is drawn from; never to be changed, so that a file imported again is known.
const DRAW: Crc<u128> = Crc::<u128>::new(&CRC_82_DARC);
/// The columns that must be there.
const NEEDED: [&str; 4] = ["tag", "pulled", "gauge", "readings"];
/// The clock that is ahead of all others, in hours before UTC: that of the Line Islands (IANA time zone database,
/// `Pacific/Kiritimati`).
const FIRST_CLOCK: i8 = 14;

/// What is believed of a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Trust {
    /// Whether somebody stands by every reading.
    pub as_read: bool,
    /// The latest time of an identifier or an instant, which an exported table states: [`Here::latest`].
    pub latest: Timestamp,
}

/// The largest table taken, in bytes.
pub const MAX_BYTES: u64 = 64 << 20;

/// Reads every row; the entries of all, or what is wrong with each bad line.
///
/// # Errors
///
/// [`ImportError::Table`] with each bad row, or with what is wrong about the heads.
pub fn entries(text: &[u8], read: &dyn Read, trust: Trust, here: Here) -> Result<Vec<Entry>, ImportError> {
    let Trust { as_read, latest } = trust;
    let text = core::str::from_utf8(text).map_err(|_| TableError::NotUtf8)?;
    let text = text.trim_start_matches('\u{feff}');
    let mut table = csv::ReaderBuilder::new();
    let table = table.delimiter(delimiter(text)).flexible(true).trim(csv::Trim::All);
    let mut reader = table.from_reader(text.as_bytes());
    let heads: Vec<String> =
        reader.headers().map_err(|error| unreadable(&error))?.iter().map(str::to_lowercase).collect();
    if class::are_heads(&heads) {
        class::check_heads(&heads)?;
        once(&heads)?;
        let mut rows = ClassRows::of(read, as_read, here)?;
        return each(reader, &heads, &mut |cells| rows.entries(cells));
    }
    if patterns::are_heads(&heads) {
        patterns::check_heads(&heads)?;
        once(&heads)?;
        let mut patterns = Patterns::of(read, here, latest)?;
        return each(reader, &heads, &mut |cells| patterns.entries(cells));
    }
    if cloths::are_heads(&heads) {
        cloths::check_heads(&heads)?;
        once(&heads)?;
        let mut cloths = Cloths::of(read, here, latest)?;
        return each(reader, &heads, &mut |cells| cloths.entries(cells));
    }
    check_heads(&heads)?;
    let worked_out = |head: &String| TESTS.iter().skip(READ).any(|other| *other != BY && other == head);
    let exported = heads.iter().any(worked_out);
    let bare = if exported { Unit::Mm } else { input::BARE };
    let (tags, names) = (HashMap::new(), Vec::new());
    let pullers = Pullers::of(read, here)?;
    let retired = HashMap::new();
    let mut rows = Rows { read, tags, retired, names, pullers, here, bare, trust, drawn: HashMap::new() };
    let (live, retired): (Vec<_>, Vec<_>) = read.fabrics()?.into_iter().partition(|one| !one.dropped);
    rows.retired.extend(retired.into_iter().map(|one| (one.tag, one.id)));
    for one in live {
        let known = ClothFacts { construction: Some(one.construction), width: one.width };
        rows.tags.insert(one.tag, (one.id, known));
        rows.names.push((one.name, one.tag));
    }
    each(reader, &heads, &mut |cells| rows.entries(cells))
}

/// What a table names anew.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct NewNames {
    /// Cloths, with their tags.
    pub cloths: Vec<(u16, String)>,
    /// People.
    pub people: Vec<String>,
}

/// The cloths and the people that entries of a table name and the log does not know.
///
/// # Errors
///
/// A log that cannot be read.
pub fn new_names(entries: &[Entry], read: &dyn Read) -> Result<NewNames, StoreError> {
    let mut names = NewNames::default();
    for entry in entries {
        match &entry.fact {
            Fact::FabricAdded(change) if read.fabric(entry.id)?.is_none() => {
                names.cloths.extend(change.tag.zip(change.name.clone()));
            }
            Fact::PersonNamed { name, .. } => names.people.push(name.clone()),
            _ => {}
        }
    }
    Ok(names)
}

/// Reads the cells of a row, by head.
type ReadRow<'r> = dyn FnMut(&HashMap<&str, &str>) -> Result<Vec<Entry>, RowFault> + 'r;

/// The entries of every row, or what is wrong with each bad line.
fn each(mut reader: csv::Reader<&[u8]>, heads: &[String], read: &mut ReadRow<'_>) -> Result<Vec<Entry>, ImportError> {
    let (mut entries, mut wrong) = (Vec::new(), Vec::new());
    for row in reader.records() {
        let row = row.map_err(|error| unreadable(&error))?;
        let line = row.position().map_or(0, csv::Position::line);
        if row.iter().all(str::is_empty) {
            continue;
        }
        let cells: HashMap<&str, &str> = heads.iter().map(String::as_str).zip(row.iter()).collect();
        let beyond = row.iter().skip(heads.len()).find(|cell| !cell.is_empty());
        match beyond.map_or_else(|| read(&cells), |cell| Err(RowFault::TooMany(cell.to_owned()))) {
            Ok(read) => entries.extend(read),
            Err(RowFault::Store(error)) => return Err(error.into()),
            Err(fault) => wrong.push((line, fault)),
        }
    }
    if wrong.is_empty() { Ok(entries) } else { Err(TableError::Rows(wrong).into()) }
}

fn unreadable(error: &csv::Error) -> TableError {
    TableError::NotATable(error.to_string())
}

/// The mark that stands most often in the first line.
fn delimiter(text: &str) -> u8 {
    let heads = text.lines().next().unwrap_or_default();
    let count = |mark: char| heads.matches(mark).count();
    [(';', b';'), ('\t', b'\t'), (',', b',')]
        .into_iter()
        .max_by_key(|(mark, _)| count(*mark))
        .map_or(b',', |(_, mark)| mark)
}

fn check_heads(heads: &[String]) -> Result<(), TableError> {
    if let Some(head) = NEEDED.into_iter().find(|head| !heads.iter().any(|known| known == head)) {
        let known = TESTS.into_iter().take(READ).filter(|known| !["name", "construction"].contains(known));
        return Err(TableError::NoColumn { head, known: known.collect() });
    }
    if let Some(head) = heads.iter().find(|head| !head.is_empty() && !TESTS.contains(&head.as_str())) {
        return Err(TableError::UnknownColumn(head.clone()));
    }
    once(heads)
}

/// Refuses a head that stands there twice.
fn once(heads: &[String]) -> Result<(), TableError> {
    for (index, head) in heads.iter().enumerate().filter(|(_, head)| !head.is_empty()) {
        if heads.iter().skip(index + 1).any(|other| other == head) {
            return Err(TableError::ColumnTwice(head.clone()));
        }
    }
    Ok(())
}

/// What rows are read against.
struct Rows<'r> {
    read: &'r dyn Read,
    /// Who has a tag, retired cloths left out.
    tags: HashMap<Tag, (Id, ClothFacts)>,
    /// Retired cloths by their tags: an exported table holds their tests too.
    retired: HashMap<Tag, Id>,
    /// The names of those cloths, with their tags.
    names: Vec<(String, Tag)>,
    pullers: Pullers,
    here: Here,
    /// The unit of a bare gauge.
    bare: Unit,
    trust: Trust,
    /// How many rows said the same so far.
    drawn: HashMap<Vec<u8>, u32>,
}

impl Rows<'_> {
    fn entries(&mut self, cells: &HashMap<&str, &str>) -> Result<Vec<Entry>, RowFault> {
        let cell = |head: &str| cells.get(head).copied().unwrap_or_default();
        let (pulled, named) = when(cell("pulled"), self.here)?;
        let bare = if cell("id").is_empty() { self.bare } else { Unit::Mm };
        let test = pull_test(&typed(&cell)?, bare)?;
        let note = cloth::short(Field::Note, as_typed(cell("note")))?;
        let (pulled_by, person) = self.pullers.named(as_typed(cell(BY)))?;
        let (device, as_read) = (None, Vec::new());
        let (fabric, tag) = (None, None);
        let mut said = Tested {
            fabric,
            tag,
            pulled,
            clock_unset: false,
            device,
            pulled_by,
            marks: Marks::default(),
            note,
            as_read,
            test,
        };
        let id = match cell("id") {
            "" => {
                if pulled > self.here.now() {
                    return Err(Wrong::new(Field::Pulled, cell("pulled"), Why::Ahead).into());
                }
                let tag = self.tag(cell("tag"))?;
                let (fabric, known) = self.cloth(tag)?;
                said.as_read = believe(&said.test, cell("gauge"), known, (self.bare, self.trust.as_read))?;
                said.fabric = Some(fabric);
                self.draw(named, tag, cell(BY), &said)
            }
            text => {
                let id = identifier(text, self.trust.latest, |id| Ok(self.read.test(id)?.is_some()))?;
                if pulled > self.trust.latest && self.read.test(id)?.is_none_or(|stored| stored.said.pulled != pulled) {
                    return Err(Wrong::new(Field::Pulled, cell("pulled"), Why::Ahead).into());
                }
                return Ok(person.into_iter().chain([self.named(id, cells, said)?]).collect());
            }
        };
        Ok(person.into_iter().chain([Entry::new(id, Fact::TestStored(said))]).collect())
    }

    /// The tag of a cell, or that of the cloth whose name or part of a name stands there.
    fn tag(&self, text: &str) -> Result<Tag, Wrong> {
        let none = || Wrong::new(Field::Tag, text, Why::NotANumber { most: u16::MAX.into() });
        let tag = Tag::parse(text).filter(|tag| tag.number() > 0).ok_or_else(none);
        let names: Vec<&str> = self.names.iter().map(|(name, _)| name.as_str()).collect();
        let of = |place: &usize| self.names.get(*place);
        match named(text, &names) {
            NameMatch::One(place) if tag.is_err() => of(&place).map_or(tag, |(_, tag)| Ok(*tag)),
            NameMatch::Several(places) if tag.is_err() => {
                let found = places.iter().filter_map(of).map(|(name, _)| name.clone()).collect();
                Err(Wrong::new(Field::Tag, text, Why::NotOneOf(found)))
            }
            _ => tag,
        }
    }

    /// The cloth with a tag, a retired one where no other has it.
    fn with_tag(&self, tag: Tag) -> Result<Id, Wrong> {
        let retired = || self.retired.get(&tag).copied();
        self.cloth(tag).map(|(id, _)| id).or_else(|wrong| retired().ok_or(wrong))
    }

    /// The cloth with a tag, and what is known of it.
    fn cloth(&self, tag: Tag) -> Result<(Id, ClothFacts), Wrong> {
        let shared = || self.tags.keys().any(|other| other.number() == tag.number());
        self.tags.get(&tag).copied().ok_or_else(|| {
            Wrong::new(Field::Tag, &tag.to_string(), if shared() { Why::OnTwoCloths } else { Why::OnNoCloth })
        })
    }

    /// The identifier of a typed test, drawn from what it says and not from how that was typed: the same table saved by
    /// another program is the same. A row that stands there a second time is a second test.
    fn draw(&mut self, named: Timestamp, tag: Tag, by: &str, said: &Tested) -> Id {
        let mut says = tag.to_string();
        let [said_before @ .., planned] = made(&TypedTest::of(&said.test));
        // A column that came later counts where it says something, so that what was imported before is known again.
        let by = by.to_lowercase();
        let later = [&planned, &by].into_iter().filter(|later| !later.is_empty());
        for text in said_before.iter().chain([&said.note]).chain(later) {
            says.push('\0');
            says.push_str(text);
        }
        let mut bytes = named.as_millisecond().to_le_bytes().to_vec();
        bytes.extend(says.as_bytes());
        let before = self.drawn.entry(bytes.clone()).or_default();
        let mut draw = DRAW.digest();
        draw.update(&bytes);
        draw.update(&before.to_le_bytes());
        *before += 1;
        Id::of(named, draw.finalize())
    }

    /// A row of an exported table. One that says what the log says is the entry that is there; one of no cloth, whose
    /// name is empty then, goes to the inbox it came from.
    fn named(&self, id: Id, cells: &HashMap<&str, &str>, mut said: Tested) -> Result<Entry, RowFault> {
        let tag = self.tag(cells.get("tag").copied().unwrap_or_default());
        let Some(stored) = self.read.test(id)? else {
            if cells.get("name") == Some(&"") {
                said.tag = tag.ok().map(Tag::number);
            } else {
                said.fabric = Some(self.with_tag(tag?)?);
            }
            return Ok(Entry::new(id, Fact::TestStored(said)));
        };
        let now = &stored.said;
        let worn = tag.and_then(|tag| self.with_tag(tag));
        let moved = worn.is_ok_and(|fabric| now.fabric.is_some_and(|is| is != fabric));
        let other = cells.contains_key(BY) && said.pulled_by != now.pulled_by;
        if !moved && !other && (now.pulled, &now.note, &now.test) == (said.pulled, &said.note, &said.test) {
            let first = self.read.history(Subject::Test(id))?.into_iter().next();
            return Ok(first.unwrap_or_else(|| Entry::new(id, Fact::TestStored(stored.said))));
        }
        said.fabric = now.fabric;
        Ok(Entry::new(id, Fact::TestStored(said)))
    }
}

/// The identifier that a cell states: one that a clock can have given, or that is `known` here.
pub(super) fn identifier(
    text: &str,
    latest: Timestamp,
    known: impl FnOnce(Id) -> Result<bool, StoreError>,
) -> Result<Id, RowFault> {
    let upper = text.to_uppercase();
    let wrong = || Wrong::new(Field::Id, text, Why::NotAnId);
    let id = Id::from_elsewhere(&upper, EVER).ok_or_else(wrong)?;
    if id.at() <= latest || known(id)? { Ok(id) } else { Err(wrong().into()) }
}

/// The cells of a row as a test.
pub(super) fn typed<'c>(cell: &impl Fn(&str) -> &'c str) -> Result<TypedTest, Wrong> {
    let text = |head: &str| Some(cell(head)).filter(|text| !text.is_empty()).map(str::to_owned);
    let readings: Vec<TypedReading> =
        row::words(cell("readings")).iter().map(|word| TypedReading::in_a_row(word)).collect();
    if readings.is_empty() {
        return Err(Wrong::new(Field::Readings, "", Why::NoReadings));
    }
    Ok(TypedTest {
        marks: Some(cell("gauge").to_owned()),
        readings,
        settling: match cell("settling").to_lowercase().as_str() {
            "yes" | "y" | "1" | "true" | AFTER_MARKS => true,
            "" | "no" | "n" | "0" | "false" => false,
            other => return Err(Wrong::new(Field::Settling, other, Why::NotYesOrNo)),
        },
        grain: word(cell("grain"), Field::Grain, &GRAIN, Grain::Crosswise)?,
        division: text("division"),
        ends: word(cell("ends"), Field::Ends, &ENDS, Ends::One)?,
        held: word(cell("held"), Field::Held, &HELD, Held::Folded)?,
        load: text("load"),
        planned: text("planned"),
        marks_before_settling: cell("settling").eq_ignore_ascii_case(AFTER_MARKS),
    })
}

/// A word of a cell; where that is empty, the usual one.
fn word<T: Copy>(cell: &str, field: Field, words: &Words<T>, usual: T) -> Result<T, Wrong> {
    if cell.is_empty() { Ok(usual) } else { words.read(field, cell) }
}

/// When it was pulled, and the time that its identifier holds. An exported table states the instant. A typed one states
/// what the clock showed: its identifier holds the instant at which the first clock on Earth showed that, the same wherever
/// the table is read, and never ahead.
pub(super) fn when(text: &str, here: Here) -> Result<(Timestamp, Timestamp), Wrong> {
    if let Ok(at) = text.parse::<Timestamp>() {
        return Ok((at, at));
    }
    let showed = when::stated(Field::Pulled, text)?;
    let pulled = when::past(Field::Pulled, text, here)?;
    let first = Offset::constant(FIRST_CLOCK).to_timestamp(showed).ok();
    Ok((pulled, first.unwrap_or(pulled)))
}

/// Refuses readings that cannot be, and those that should not be believed unless somebody stands by them; the words of what
/// they stand by.
pub(super) fn believe(
    test: &PullTest,
    gauge: &str,
    known: ClothFacts,
    (bare, as_read): (Unit, bool),
) -> Result<Vec<String>, RowFault> {
    let typed = input::unit_of(gauge);
    let unit = typed.unwrap_or(input::BARE);
    possible(test, known.construction, unit)?;
    match Doubted::of(test, known, typed.is_none() && bare == input::BARE, unit) {
        Some(doubted) if !as_read => Err(RowFault::Doubted(Box::new(doubted))),
        doubted => Ok(doubted.map(|doubted| doubted.words()).unwrap_or_default()),
    }
}
