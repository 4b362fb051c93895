//! The lines of an exported log.
//!
//! The first line is the [header](HEADER), then comes one entry a line, then the [last line](last_line) with their
//! number: a file that was cut off is known as such, even where the cut lies between two lines.

use std::io::{BufRead, Read as _};

use jiff::Timestamp;
use serde::Deserialize;
use serde_json::Value;
use tenter_core::Length;

use crate::error::{Error, one_line, reason};
use crate::log::json::Mm;
use crate::log::{Entry, FabricChange, Fact, Id};

/// The first line.
pub const HEADER: &str = r#"{"tenter":"log","format":1}"#;
/// The format this version writes, and the newest it reads.
pub const FORMAT: u64 = 1;
/// The longest line taken, in bytes; entries are far shorter.
const MAX_LINE: u64 = 1 << 20;

/// The last line, after so many entries.
#[must_use]
pub fn last_line(entries: u64) -> String {
    format!(r#"{{"end":"log","entries":{entries}}}"#)
}

#[derive(Deserialize)]
struct Header {
    tenter: String,
    format: u64,
}

#[derive(Deserialize)]
struct End {
    end: String,
    entries: u64,
}

/// Entries from the lines of an exported log, one by one.
#[derive(Debug)]
pub struct Exported<R> {
    lines: R,
    file: String,
    /// The line being read, from 1 on.
    line: u64,
    entries: u64,
    ended: bool,
}

impl<R: BufRead> Exported<R> {
    /// Reads the header.
    ///
    /// # Errors
    ///
    /// A file that is no exported log, or that of a newer version.
    pub fn begin(lines: R, file: &str) -> Result<Self, Error> {
        let mut this = Self { lines, file: one_line(file), line: 0, entries: 0, ended: false };
        let foreign = "no log that tenter exported; say a file made by tenter export";
        let first = match this.next_line() {
            Ok(Some(first)) => first,
            Ok(None) => return Err(this.wrong("the file is empty; say one made by tenter export")),
            Err(_) => return Err(this.wrong(foreign)),
        };
        let first = first.strip_prefix('\u{feff}').unwrap_or(&first);
        match serde_json::from_str::<Header>(first) {
            Ok(header) if header.tenter == "log" && header.format > FORMAT => {
                let found = header.format;
                Err(this.wrong(&format!(
                    "written by a newer tenter (format {found}, this one knows {FORMAT}); use that version"
                )))
            }
            Ok(header) if header.tenter == "log" && header.format == FORMAT => Ok(this),
            _ => Err(this.wrong(foreign)),
        }
    }

    fn wrong(&self, remedy: &str) -> Error {
        Error::Line { file: self.file.clone(), line: self.line, remedy: remedy.to_owned() }
    }

    /// The next line that holds anything.
    fn next_line(&mut self) -> Result<Option<String>, Error> {
        loop {
            let mut bytes = Vec::new();
            self.line += 1;
            let read = self.lines.by_ref().take(MAX_LINE).read_until(b'\n', &mut bytes);
            if let Err(error) = read {
                return Err(self.wrong(&format!("cannot be read: {}", reason(&error))));
            }
            if bytes.is_empty() {
                self.line -= 1;
                return Ok(None);
            }
            if bytes.len() as u64 == MAX_LINE {
                return Err(self.wrong("longer than any entry; the file is damaged: copy or export it again"));
            }
            let Ok(text) = String::from_utf8(bytes) else {
                return Err(self.wrong("no text; the file is damaged: copy or export it again"));
            };
            if !text.trim().is_empty() {
                return Ok(Some(text));
            }
        }
    }

    fn next_entry(&mut self) -> Result<Option<Entry>, Error> {
        let Some(text) = self.next_line()? else {
            return if self.ended {
                Ok(None)
            } else {
                Err(self.wrong("the file is cut off after this line; copy or export it again"))
            };
        };
        if self.ended {
            return Err(self.wrong("something follows the last line; import each file by itself"));
        }
        let value: Value = serde_json::from_str(&text).map_err(|error| {
            let what = if text.ends_with('\n') { "damaged" } else { "cut off" };
            self.wrong(&format!("{what} at its character {}; copy or export the file again", error.column()))
        })?;
        if let Ok(end) = End::deserialize(&value)
            && end.end == "log"
        {
            self.ended = true;
            return if end.entries == self.entries {
                self.next_entry()
            } else {
                let (wrote, here) = (end.entries, self.entries);
                Err(self.wrong(&format!("{wrote} entries were exported and {here} are here; copy or export it again")))
            };
        }
        self.entries += 1;
        entry(&value).map(Some).map_err(|what| self.wrong(&what))
    }
}

impl<R: BufRead> Iterator for Exported<R> {
    type Item = Result<Entry, Error>;

    fn next(&mut self) -> Option<Self::Item> {
        self.next_entry().transpose()
    }
}

/// An entry from its JSON, if nothing of it would be lost and it could have been written by this program.
fn entry(value: &Value) -> Result<Entry, String> {
    let entry = Entry::deserialize(value).map_err(|error| format!("no entry of a log: {}", short(&error)))?;
    let kept = serde_json::to_value(&entry).map_err(|error| format!("no entry of a log: {}", short(&error)))?;
    if let Some(name) = lost(value, &kept) {
        return Err(format!("'{}' is nothing this version knows; use the one that wrote it", one_line(&name)));
    }
    if unprintable(value) {
        return Err("a text holds characters that cannot be printed".to_owned());
    }
    match unsound(&entry, value) {
        Some(what) => Err(format!("no entry of a log: {what}")),
        None => Ok(entry),
    }
}

/// The complaint of the JSON reader, without its place.
fn short(error: &serde_json::Error) -> String {
    let text = error.to_string();
    let words = text.split(", expected one of").next().unwrap_or(&text);
    words.chars().take(120).map(|c| if c.is_control() { ' ' } else { c }).collect()
}

/// The name of a field that is in `given` and not in `kept`, unless it says nothing.
fn lost(given: &Value, kept: &Value) -> Option<String> {
    match (given, kept) {
        (Value::Object(given), Value::Object(kept)) => given.iter().find_map(|(name, value)| match kept.get(name) {
            Some(kept) => lost(value, kept),
            None => says_something(value).then(|| name.clone()),
        }),
        (Value::Array(given), Value::Array(kept)) => given.iter().zip(kept).find_map(|(given, kept)| lost(given, kept)),
        _ => None,
    }
}

fn says_something(value: &Value) -> bool {
    match value {
        Value::Null | Value::Bool(false) => false,
        Value::String(text) => !text.is_empty(),
        Value::Array(list) => !list.is_empty(),
        Value::Object(fields) => !fields.is_empty(),
        Value::Bool(true) | Value::Number(_) => true,
    }
}

/// No text that can be typed holds a control character.
fn unprintable(value: &Value) -> bool {
    match value {
        Value::String(text) => text.chars().any(char::is_control),
        Value::Array(list) => list.iter().any(unprintable),
        Value::Object(fields) => fields.values().any(unprintable),
        Value::Null | Value::Bool(_) | Value::Number(_) => false,
    }
}

/// What no verb of this program would have written.
fn unsound(entry: &Entry, value: &Value) -> Option<&'static str> {
    if value.get("id").and_then(Value::as_str).and_then(Id::from_elsewhere) != Some(entry.id) {
        return Some("its identifier cannot be");
    }
    if entry.at != entry.id.at() && entry.at != Timestamp::default() {
        return Some("its time is not that of its identifier");
    }
    let negative = |length: Length| length < Length::ZERO;
    match &entry.fact {
        Fact::FabricAdded(change) if change.tag.is_none() || change.name.is_none() => {
            Some("a fabric needs tag and name")
        }
        Fact::FabricAdded(change) | Fact::FabricChanged { change, .. } => unsound_change(change),
        Fact::FabricCut { length, .. } if negative(*length) => Some("a length below zero"),
        Fact::FabricWashed { marks, .. } if marks.before <= Length::ZERO || negative(marks.after) => {
            Some("marks that cannot be")
        }
        Fact::FabricWashed { marks, .. } if marks.division <= Length::ZERO => Some("a scale without divisions"),
        Fact::RoleAdded { change, .. } | Fact::RoleChanged { change, .. } => {
            let cloth = change.cloth.flatten()?;
            (negative(cloth.length) || cloth.width <= Length::ZERO).then_some("a length of cloth that cannot be")
        }
        _ => None,
    }
}

fn unsound_change(change: &FabricChange) -> Option<&'static str> {
    let negative = |length: Option<Option<Mm>>| length.flatten().is_some_and(|Mm(length)| length < Length::ZERO);
    if change.tag == Some(0) {
        return Some("tags begin at 1");
    }
    if change.name.as_ref().is_some_and(String::is_empty) {
        return Some("a fabric without a name");
    }
    (negative(change.width) || negative(change.length)).then_some("a length below zero")
}
