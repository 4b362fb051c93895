//! Readings typed by hand in a table: CSV with `,`, `;` or tabs between the cells.
//!
//! Needs the columns `tag`, `pulled`, `gauge` and `readings`; takes `grain`, `division`, `ends`, `held`, `settling`, `load`,
//! `note` and `id`; leaves alone what `export --csv tests` adds. A bare number is in millimetres; a cell may carry its unit.

use std::collections::HashMap;

use clap::ValueEnum;
use crc::{CRC_82_DARC, Crc};
use jiff::Timestamp;
use tenter_core::Unit;

use super::{fabric, pull_test, when};
use crate::cli::reading::{EndsArg, GrainArg, HeldArg, Reading, TestArgs, TestFlags};
use crate::error::{Error, one_line};
use crate::log::{Entry, Fact, Id, Tested};
use crate::report::csv::{TESTS, as_typed};
use crate::store::Read;

/// What the identifier of a typed row is drawn from; never to be changed, so that a file imported again is known.
const DRAW: Crc<u128> = Crc::<u128>::new(&CRC_82_DARC);
/// The columns that must be there.
const NEEDED: [&str; 4] = ["tag", "pulled", "gauge", "readings"];
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
    let mut tags = HashMap::new();
    for one in read.fabrics()?.into_iter().filter(|one| !one.dropped) {
        tags.entry(one.tag).or_insert_with(Vec::new).push(one.id);
    }
    let (mut entries, mut wrong) = (Vec::new(), Vec::new());
    for row in reader.records() {
        let row = row.map_err(|error| unreadable(&error))?;
        let line = row.position().map_or(0, csv::Position::line);
        if row.iter().all(str::is_empty) {
            continue;
        }
        let cells: HashMap<&str, &str> = heads.iter().map(String::as_str).zip(row.iter()).collect();
        match entry(&cells, &tags, now) {
            Ok(entry) => entries.push(entry),
            Err(error) => wrong.push(format!("line {line}: {}", error.to_string().replace("--", ""))),
        }
    }
    if wrong.is_empty() { Ok(entries) } else { Err(bad_lines(&wrong)) }
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
    match heads.iter().find(|head| !TESTS.contains(&head.as_str())) {
        Some(head) => Err(Error::Usage(format!("column '{}' is not known; leave it out", one_line(head)))),
        None => Ok(()),
    }
}

fn entry(cells: &HashMap<&str, &str>, tags: &HashMap<u16, Vec<Id>>, now: Timestamp) -> Result<Entry, Error> {
    let cell = |head: &str| cells.get(head).copied().unwrap_or_default();
    let tag = fabric::tag(cell("tag"))?;
    let on = match tags.get(&tag).map(Vec::as_slice) {
        Some([id]) => *id,
        Some([_, ..]) => return Err(Error::argument("tag", cell("tag"), "two fabrics wear it; give one a new tag")),
        _ => return Err(Error::argument("tag", cell("tag"), "no fabric wears it; add it with tenter stash add first")),
    };
    // An exported table states the instant, a typed one the day.
    let pulled = match cell("pulled").parse::<Timestamp>() {
        Ok(at) => at,
        Err(_) => when::past("pulled", cell("pulled"), now)?,
    };
    let test = pull_test(&test_args(&cell)?, Unit::Mm)?;
    let note = fabric::short("note", as_typed(cell("note")))?;
    let id = match cell("id") {
        "" => {
            let mut draw = DRAW.digest();
            for head in TESTS.iter().take(14) {
                draw.update(cell(head).as_bytes());
                draw.update(&[0]);
            }
            Id::of(pulled, draw.finalize())
        }
        text => text.parse().map_err(|_| Error::argument("id", text, "leave it empty for a new test"))?,
    };
    let said = Tested { fabric: Some(on), tag: None, pulled, clock_unset: false, device: None, note, test };
    Ok(Entry::new(id, Fact::TestStored(said)))
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
        gauge: typed("gauge").or_else(|| Some(String::new())),
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
