//! The whole log, a JSON object a line.
//!
//! The first line is the [header](HEADER), then comes one entry a line, then one photograph a line, under its name and as
//! base64 (RFC 4648, § 4), then the [last line](last_line) with the numbers of both: a file that was cut off is known as
//! such, even where the cut lies between two lines.

use std::borrow::Cow;
use std::io::{BufRead, Read as _, Write};

use jiff::Timestamp;
use serde::Deserialize;
use serde_json::Value;

use super::{BadLine, ExportError, Fault, ImportError, Many, sound};
use crate::log::{EVER, Entry, Photo, PhotoName};
use crate::plain::reason;
use crate::store::{LogPiece, Read, caught};

/// The first line.
pub const HEADER: &str = r#"{"tenter":"log","format":1}"#;
/// The format this version writes, and the newest it reads.
pub const FORMAT: u64 = 1;
/// The longest line taken, in bytes; entries are far shorter.
const MAX_LINE: u64 = 1 << 20;
/// The most entries taken from one file.
pub const MAX_ENTRIES: u64 = 4_000_000;
/// The most photographs taken from one file: they are held in memory until all are there.
pub const MAX_PHOTOS: u64 = 20_000;

/// The last line, after so many entries and photographs.
#[must_use]
pub fn last_line(entries: u64, photos: u64) -> String {
    match photos {
        0 => format!(r#"{{"end":"log","entries":{entries}}}"#),
        photos => format!(r#"{{"end":"log","entries":{entries},"photos":{photos}}}"#),
    }
}

/// A photograph as a line of an exported log.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct PhotoLine {
    photo: PhotoName,
    jpeg: String,
}

/// A photograph as a line.
#[must_use]
pub fn photo_line(photo: &Photo) -> String {
    format!(r#"{{"photo":"{}","jpeg":"{}"}}"#, photo.name(), photo.base64())
}

/// An entry without the names of people.
fn nameless(line: &str) -> String {
    let without = |line: &str| {
        let mut entry: Entry = serde_json::from_str(line)?;
        if entry.fact.forget_names() { entry.line().map(Some) } else { Ok(None) }
    };
    // A line of a log is always an entry; one that is none holds nothing that could be kept.
    without(line)
        .map_or_else(|_: serde_json::Error| String::new(), |changed| changed.unwrap_or_else(|| line.to_owned()))
}

/// Writes all entries, oldest first, with the names of people or without, with `step` after each, then all photographs; how many entries.
///
/// # Errors
///
/// A log that cannot be read, or an output that cannot be written.
pub fn write(read: &dyn Read, names: bool, out: &mut dyn Write, step: &mut dyn FnMut()) -> Result<u64, ExportError> {
    let mut count = 0;
    writeln!(out, "{HEADER}")?;
    caught(|own| {
        read.each_entry(&mut |entry| {
            let line = if names { Cow::Borrowed(entry) } else { Cow::Owned(nameless(entry)) };
            own.keep(writeln!(out, "{line}").map_err(ExportError::from))?;
            count += 1;
            step();
            Ok(())
        })
    })?;
    let mut photos = 0;
    caught(|own| {
        read.each_photo(&mut |photo| {
            photos += 1;
            own.keep(writeln!(out, "{}", photo_line(&photo)).map_err(ExportError::from))
        })
    })?;
    writeln!(out, "{}", last_line(count, photos))?;
    Ok(count)
}

/// A file of some entries and photographs, each a line as this program wrote it.
#[must_use]
pub fn file_of(entries: &[String], photos: &[String]) -> String {
    let last = last_line(entries.len() as u64, photos.len() as u64);
    let lines = entries.iter().chain(photos).map(String::as_str);
    core::iter::once(HEADER).chain(lines).chain([last.as_str()]).flat_map(|line| [line, "\n"]).collect()
}

/// Reads a line that this program wrote and kept itself, so that nothing in it need be doubted.
///
/// # Errors
///
/// [`Fault`] where it is neither an entry nor a photograph.
pub fn kept_line(line: &str) -> Result<LogPiece, Fault> {
    if line.starts_with("{\"photo\":") {
        let value = serde_json::from_str(line).map_err(|error| Fault::NotAnEntry(short(&error)))?;
        return photo(value).map(LogPiece::from);
    }
    kept_entry(line).map(LogPiece::from)
}

/// Reads an entry as [`kept_line`] does.
///
/// # Errors
///
/// [`Fault`] where it is none.
pub fn kept_entry(line: &str) -> Result<Entry, Fault> {
    serde_json::from_str(line).map_err(|error| Fault::NotAnEntry(short(&error)))
}

/// Reads an entry from the line of another log, if it could have been written by this program until
/// [`latest`](crate::log::Here::latest).
///
/// # Errors
///
/// [`Fault`] where it could not.
pub fn entry_of_line(line: &str, latest: Timestamp) -> Result<Entry, Fault> {
    let value = serde_json::from_str(line).map_err(|error| Fault::NotAnEntry(short(&error)))?;
    entry(&value, latest)
}

/// Writes all entries as an exported log without photographs.
///
/// # Errors
///
/// A log that cannot be read, or an output that cannot be written.
pub fn write_entries(read: &dyn Read, out: &mut dyn Write) -> Result<(), ExportError> {
    let mut count = 0;
    writeln!(out, "{HEADER}")?;
    caught(|own| {
        read.each_entry(&mut |entry| {
            count += 1;
            own.keep(writeln!(out, "{entry}").map_err(ExportError::from))
        })
    })?;
    Ok(writeln!(out, "{}", last_line(count, 0))?)
}

/// The lines of the entries of an exported log without photographs, if it is whole; what they say is not looked at.
///
/// # Errors
///
/// Bytes that are none, or of a newer version, or cut off.
pub fn lines<'t>(bytes: &'t [u8], file: &str) -> Result<Vec<&'t str>, ImportError> {
    Exported::begin(bytes, file, EVER)?;
    let wrong = |line, fault| Err(ImportError::Line(BadLine { file: file.to_owned(), line, fault }));
    let Ok(text) = core::str::from_utf8(bytes) else { return wrong(1, Fault::NotUtf8) };
    let mut lines: Vec<&str> = text.lines().skip(1).collect();
    let found = (lines.len() as u64).saturating_sub(1);
    match lines.pop().map(serde_json::from_str::<End>) {
        Some(Ok(end)) if end.end == "log" && end.entries == found => Ok(lines),
        Some(Ok(end)) if end.end == "log" => wrong(found + 2, Fault::Count { stated: end.entries, found }),
        _ => wrong(found + 2, Fault::CutOff),
    }
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
    #[serde(default)]
    photos: u64,
}

/// Entries and photographs from the lines of an exported log, one by one.
#[derive(Debug)]
pub struct Exported<R> {
    lines: R,
    file: String,
    /// The line being read, from 1 on.
    line: u64,
    entries: u64,
    photos: u64,
    ended: bool,
    latest: Timestamp,
}

impl<R: BufRead> Exported<R> {
    /// Reads the header. Entries after [`latest`](crate::log::Here::latest) are not believed; those of any time come in with
    /// [`EVER`].
    ///
    /// # Errors
    ///
    /// A file that is no exported log, or that of a newer version.
    pub fn begin(lines: R, file: &str, latest: Timestamp) -> Result<Self, ImportError> {
        let mut this = Self { lines, file: file.to_owned(), line: 0, entries: 0, photos: 0, ended: false, latest };
        let first = match this.next_line() {
            Ok(Some(first)) => first,
            Ok(None) => return Err(this.wrong(Fault::Empty)),
            Err(_) => return Err(this.wrong(Fault::Foreign)),
        };
        let first = first.strip_prefix('\u{feff}').unwrap_or(&first);
        match serde_json::from_str::<Header>(first) {
            Ok(Header { tenter, format: found }) if tenter == "log" && found > FORMAT => {
                Err(this.wrong(Fault::Newer { found, known: FORMAT }))
            }
            Ok(header) if header.tenter == "log" && header.format == FORMAT => Ok(this),
            _ => Err(this.wrong(Fault::Foreign)),
        }
    }

    fn wrong(&self, fault: Fault) -> ImportError {
        ImportError::Line(BadLine { file: self.file.clone(), line: self.line, fault })
    }

    /// The next line that holds anything.
    fn next_line(&mut self) -> Result<Option<String>, ImportError> {
        loop {
            let mut bytes = Vec::new();
            self.line += 1;
            let read = self.lines.by_ref().take(MAX_LINE).read_until(b'\n', &mut bytes);
            if let Err(error) = read {
                return Err(self.wrong(Fault::System(reason(&error))));
            }
            if bytes.is_empty() {
                self.line -= 1;
                return Ok(None);
            }
            if bytes.len() as u64 == MAX_LINE {
                return Err(self.wrong(Fault::TooLong));
            }
            let Ok(text) = String::from_utf8(bytes) else {
                return Err(self.wrong(Fault::NotUtf8));
            };
            if !text.trim().is_empty() {
                return Ok(Some(text));
            }
        }
    }

    fn next_piece(&mut self) -> Result<Option<LogPiece>, ImportError> {
        let Some(text) = self.next_line()? else {
            return if self.ended { Ok(None) } else { Err(self.wrong(Fault::CutOff)) };
        };
        if self.ended {
            return Err(self.wrong(Fault::Trailing));
        }
        let value: Value = serde_json::from_str(&text)
            .map_err(|error| self.wrong(Fault::NotJson { column: error.column(), ended: text.ends_with('\n') }))?;
        if let Ok(end) = End::deserialize(&value)
            && end.end == "log"
        {
            self.ended = true;
            if end.entries != self.entries {
                return Err(self.wrong(Fault::Count { stated: end.entries, found: self.entries }));
            }
            if end.photos != self.photos {
                return Err(self.wrong(Fault::PhotoCount { stated: end.photos, found: self.photos }));
            }
            return self.next_piece();
        }
        if value.get("photo").is_some() && value.get("kind").is_none() {
            self.photos += 1;
            if self.photos > MAX_PHOTOS {
                return Err(self.wrong(Fault::TooMany { most: MAX_PHOTOS, what: Many::Photographs }));
            }
            return photo(value).map(LogPiece::from).map(Some).map_err(|fault| self.wrong(fault));
        }
        self.entries += 1;
        if self.entries > MAX_ENTRIES {
            return Err(self.wrong(Fault::TooMany { most: MAX_ENTRIES, what: Many::Entries }));
        }
        entry(&value, self.latest).map(LogPiece::from).map(Some).map_err(|fault| self.wrong(fault))
    }
}

impl<R: BufRead> Iterator for Exported<R> {
    type Item = Result<LogPiece, ImportError>;

    fn next(&mut self) -> Option<Self::Item> {
        self.next_piece().transpose()
    }
}

/// A photograph from its line, if it bears the name of its bytes.
fn photo(value: Value) -> Result<Photo, Fault> {
    let line = PhotoLine::deserialize(value).map_err(|error| Fault::NotAnEntry(short(&error)))?;
    let photo = Photo::from_base64(&line.jpeg).ok_or(Fault::NotAPhoto)?;
    if photo.name() == line.photo { Ok(photo) } else { Err(Fault::NotAPhoto) }
}

/// An entry from its JSON, if nothing of it would be lost and it could have been written by this program until `latest`.
fn entry(value: &Value, latest: Timestamp) -> Result<Entry, Fault> {
    let foreign = |error: serde_json::Error| Fault::NotAnEntry(short(&error));
    let entry = Entry::deserialize(value).map_err(foreign)?;
    let kept = entry.line().and_then(|line| serde_json::from_str(&line)).map_err(foreign)?;
    if let Some(name) = lost(value, &kept) {
        return Err(Fault::UnknownField(name));
    }
    sound::check(&entry, value, latest)?;
    Ok(entry)
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
