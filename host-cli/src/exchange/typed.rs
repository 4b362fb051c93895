//! Readings typed by hand in a table: CSV with `,`, `;` or tabs between the cells.
//!
//! Needs the columns `tag`, `pulled`, `gauge` and `readings`; takes `grain`, `division`, `ends`, `held`, `settling`, `load`,
//! `note` and `id`; leaves alone what `export --csv tests` adds. A bare number is in millimetres; a cell may carry its unit.

use std::collections::HashMap;

use clap::ValueEnum;
use crc::{CRC_82_DARC, Crc};
use jiff::civil::DateTime;
use jiff::{Timestamp, tz};
use tenter_core::Unit;

use crate::cli::reading::{EndsArg, GrainArg, HeldArg, Reading, TestArgs, TestFlags};
use crate::error::{Error, one_line};
use crate::exchange::table::TESTS;
use crate::exchange::table::as_typed;
use crate::exchange::table::made;
use crate::input::fabric;
use crate::input::pull_test;
use crate::input::when;
use crate::log::{Entry, Fact, Id, Subject, Tested};
use crate::store::Read;

/// What the identifier of a typed row is drawn from; never to be changed, so that a file imported again is known.
const DRAW: Crc<u128> = Crc::<u128>::new(&CRC_82_DARC);
/// The columns that must be there.
const NEEDED: [&str; 4] = ["tag", "pulled", "gauge", "readings"];
/// The clock that is ahead of all others, in hours before UTC: that of the Line Islands (IANA time zone database,
/// `Pacific/Kiritimati`).
const FIRST_CLOCK: i8 = 14;
/// How many bad lines are told one by one.
const TOLD: usize = 20;

/// Reads every row; the entries of all, or what is wrong with each bad line.
///
/// # Errors
///
/// [`Error::Table`] with a line for each bad row, or a line about the heads.
pub fn entries(text: &str, read: &dyn Read, now: Timestamp) -> Result<Vec<Entry>, Error> {
    let text = text.trim_start_matches('\u{feff}');
    let mut table = csv::ReaderBuilder::new();
    let table = table.delimiter(delimiter(text)).flexible(true).trim(csv::Trim::All);
    let mut reader = table.from_reader(text.as_bytes());
    let heads: Vec<String> =
        reader.headers().map_err(|error| unreadable(&error))?.iter().map(str::to_lowercase).collect();
    check_heads(&heads)?;
    let mut rows = Rows { read, tags: HashMap::new(), now, drawn: HashMap::new() };
    for one in read.fabrics()?.into_iter().filter(|one| !one.dropped) {
        rows.tags.entry(one.tag).or_default().push(one.id);
    }
    let (mut entries, mut wrong) = (Vec::new(), Vec::new());
    for row in reader.records() {
        let row = row.map_err(|error| unreadable(&error))?;
        let line = row.position().map_or(0, csv::Position::line);
        if row.iter().all(str::is_empty) {
            continue;
        }
        let cells: HashMap<&str, &str> = heads.iter().map(String::as_str).zip(row.iter()).collect();
        let beyond = row.iter().skip(heads.len()).find(|cell| !cell.is_empty());
        match beyond.map_or_else(|| rows.entry(&cells), |cell| Err(too_many(cell))) {
            Ok(entry) => entries.push(entry),
            Err(error) => wrong.push(format!("line {line}: {}", in_column(&error))),
        }
    }
    if wrong.is_empty() { Ok(entries) } else { Err(bad_lines(&wrong)) }
}

/// As where a decimal comma stands between commas: every cell behind it would be taken for another.
fn too_many(cell: &str) -> Error {
    Error::Usage(format!(
        "'{}' stands in no column; type a point for a decimal comma, or put \"\" round a cell that holds the mark between cells",
        one_line(cell)
    ))
}

/// A complaint about a flag, as one about a column.
fn in_column(error: &Error) -> String {
    let text = error.to_string();
    let Some(rest) = text.strip_prefix("--") else { return text };
    match rest.strip_prefix("to '").or_else(|| rest.strip_prefix("back '")) {
        Some(reading) => format!("readings '{reading}"),
        None => rest.to_owned(),
    }
}

fn unreadable(error: &csv::Error) -> Error {
    Error::Usage(format!("this is no table: {}; save it as CSV, UTF-8", one_line(&error.to_string())))
}

fn bad_lines(wrong: &[String]) -> Error {
    let mut text = format!("nothing was imported; {} lines are wrong", wrong.len());
    if wrong.len() == 1 {
        text = "nothing was imported; one line is wrong".to_owned();
    }
    for line in wrong.iter().take(TOLD) {
        text.push_str("\n  ");
        text.push_str(line);
    }
    if let Some(more @ 1..) = wrong.len().checked_sub(TOLD) {
        text.push_str(&format!("\n  and {more} more"));
    }
    Error::Table(text)
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

fn check_heads(heads: &[String]) -> Result<(), Error> {
    for head in NEEDED {
        if !heads.iter().any(|known| known == head) {
            let known = TESTS.iter().take(14).filter(|known| !["name", "construction"].contains(known));
            let known: Vec<&str> = known.copied().collect();
            let all = known.join(", ");
            return Err(Error::Usage(format!(
                "the table has no column {head}; its first line names the columns, of {all}"
            )));
        }
    }
    for (index, head) in heads.iter().enumerate().filter(|(_, head)| !head.is_empty()) {
        if !TESTS.contains(&head.as_str()) {
            return Err(Error::Usage(format!("column '{}' is not known; leave it out", one_line(head))));
        }
        if heads.iter().skip(index + 1).any(|other| other == head) {
            return Err(Error::Usage(format!("column {head} is there twice; leave one out")));
        }
    }
    Ok(())
}

/// What rows are read against.
struct Rows<'r> {
    read: &'r dyn Read,
    /// Who wears a tag, dropped fabrics left out.
    tags: HashMap<u16, Vec<Id>>,
    now: Timestamp,
    /// How many rows said the same so far.
    drawn: HashMap<Vec<u8>, u32>,
}

impl Rows<'_> {
    fn entry(&mut self, cells: &HashMap<&str, &str>) -> Result<Entry, Error> {
        let cell = |head: &str| cells.get(head).copied().unwrap_or_default();
        let (pulled, named) = self.when(cell("pulled"))?;
        let test = pull_test(&test_args(&cell)?, Unit::Mm)?;
        let note = fabric::short("note", as_typed(cell("note")))?;
        let mut said = Tested { fabric: None, tag: None, pulled, clock_unset: false, device: None, note, test };
        let id = match cell("id") {
            "" => {
                if pulled > self.now {
                    let remedy = "that lies ahead; type the day on which it was pulled";
                    return Err(Error::argument("pulled", cell("pulled"), remedy));
                }
                let tag = fabric::tag(cell("tag"))?;
                said.fabric = Some(self.worn(tag)?);
                self.draw(named, tag, &said)
            }
            text => {
                let id = Id::from_elsewhere(&text.to_uppercase());
                let id = id.ok_or_else(|| Error::argument("id", text, "leave it empty for a new test"))?;
                return self.named(id, cells, said);
            }
        };
        Ok(Entry::new(id, Fact::TestStored(said)))
    }

    /// When it was pulled, and the time that its identifier holds. An exported table states the instant. A typed one
    /// states what the clock showed: its identifier holds the instant at which the first clock on Earth showed that, the
    /// same wherever the table is read, and never ahead.
    fn when(&self, text: &str) -> Result<(Timestamp, Timestamp), Error> {
        if let Ok(at) = text.parse::<Timestamp>() {
            return Ok((at, at));
        }
        let pulled = when::past("pulled", text, self.now)?;
        let showed = text.trim().parse::<DateTime>().ok();
        let first = showed.and_then(|showed| tz::Offset::constant(FIRST_CLOCK).to_timestamp(showed).ok());
        Ok((pulled, first.unwrap_or(pulled)))
    }

    /// The fabric that wears a tag.
    fn worn(&self, tag: u16) -> Result<Id, Error> {
        let wrong = |remedy: &str| Err(Error::argument("tag", &tag.to_string(), remedy));
        match self.tags.get(&tag).map(Vec::as_slice) {
            Some([id]) => Ok(*id),
            Some([_, ..]) => wrong("two fabrics wear it; give one a new tag"),
            _ => wrong("no fabric wears it; add it with tenter cloth add first"),
        }
    }

    /// The identifier of a typed test, drawn from what it says and not from how that was typed: the same table saved by
    /// another program is the same. A row that stands there a second time is a second test.
    fn draw(&mut self, named: Timestamp, tag: u16, said: &Tested) -> Id {
        let mut says = tag.to_string();
        for text in made(&said.test).iter().chain([&said.note]) {
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

    /// A row of an exported table. One that says what the log says is the entry that is there; one of no fabric, whose
    /// name is empty then, goes to the inbox it came from.
    fn named(&self, id: Id, cells: &HashMap<&str, &str>, mut said: Tested) -> Result<Entry, Error> {
        let tag = fabric::tag(cells.get("tag").copied().unwrap_or_default());
        let Some(stored) = self.read.test(id)? else {
            if cells.get("name") == Some(&"") {
                said.tag = tag.ok();
            } else {
                said.fabric = Some(self.worn(tag?)?);
            }
            return Ok(Entry::new(id, Fact::TestStored(said)));
        };
        let now = &stored.said;
        let worn = tag.and_then(|tag| self.worn(tag));
        let moved = worn.is_ok_and(|fabric| now.fabric.is_some_and(|is| is != fabric));
        if !moved && (now.pulled, &now.note, &now.test) == (said.pulled, &said.note, &said.test) {
            let first = self.read.history(Subject::Test(id))?.into_iter().next();
            return Ok(first.unwrap_or_else(|| Entry::new(id, Fact::TestStored(stored.said))));
        }
        said.fabric = now.fabric;
        Ok(Entry::new(id, Fact::TestStored(said)))
    }
}

/// The cells as the flags of `check`, which read them.
fn test_args<'c>(cell: &impl Fn(&str) -> &'c str) -> Result<TestArgs, Error> {
    let typed = |head: &str| Some(cell(head)).filter(|text| !text.is_empty()).map(str::to_owned);
    let readings: Vec<Reading> = cell("readings")
        .split_whitespace()
        .map(|word| if word.contains('@') { Reading::Back(word.to_owned()) } else { Reading::To(word.to_owned()) })
        .collect();
    if readings.is_empty() {
        let remedy = "type the pulled lengths with spaces between, and 101@60s for one after release";
        return Err(Error::argument("readings", "", remedy));
    }
    let flags = TestFlags {
        marks: typed("gauge").or_else(|| Some(String::new())),
        to: Vec::new(),
        back: Vec::new(),
        settling: match cell("settling").to_lowercase().as_str() {
            "yes" | "y" | "1" | "true" => true,
            "" | "no" | "n" | "0" | "false" => false,
            other => return Err(Error::argument("settling", other, "type yes or no")),
        },
        grain: word("grain", cell("grain"), GrainArg::Crosswise)?,
        division: typed("division"),
        ends: word("ends", cell("ends"), EndsArg::One)?,
        held: word("held", cell("held"), HeldArg::Folded)?,
        load: typed("load").unwrap_or_else(|| "hand".to_owned()),
    };
    Ok(TestArgs { flags, readings })
}

/// One of the words of a flag, or what stands for an empty cell.
fn word<T: ValueEnum>(head: &str, text: &str, empty: T) -> Result<T, Error> {
    if text.is_empty() {
        return Ok(empty);
    }
    T::from_str(text, true).map_err(|_| {
        let words: Vec<String> =
            T::value_variants().iter().filter_map(|one| Some(one.to_possible_value()?.get_name().to_owned())).collect();
        Error::argument(head, text, format!("type one of {}", words.join(", ")))
    })
}
