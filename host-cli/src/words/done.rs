//! What a command did, in a line.

use crate::log::Tag;
use crate::plain::isolated;

/// The last cut of a cloth is taken back.
pub const CUT_BACK: &str = "cut taken back";
/// The last cut of a cloth has another length.
pub const CUT_RIGHT: &str = "cut corrected";
/// A guided test ended before its first reading.
pub const NOTHING_MEASURED: &str = "nothing was measured";
/// A page to look at.
pub const PLAN: &str = "the plan; open it in a browser";
/// Whoever has the address of the pages has the log.
pub const OPEN_TO_OTHERS: &str = "anyone who scans this code, or types the whole address, can read and change your log";
/// The pages are for this machine.
pub const OPEN_HERE: &str = "only this machine can open it; for a phone in your network pass --listen 0.0.0.0";

/// A cloth is off the list.
#[must_use]
pub fn retired_cloth(tag: Tag, name: &str) -> String {
    format!("retired  {tag}  {}; its tests and history stay: tenter cloth return {tag}", isolated(name))
}

/// A cloth is back on the list.
#[must_use]
pub fn returned_cloth(tag: Tag, name: &str) -> String {
    format!("back  {tag}  {}", isolated(name))
}

/// A test, as its line tells it, does not count any more.
#[must_use]
pub fn retired_test(about: &str, tag: Tag, letters: &str) -> String {
    format!("retired  {about}; it stays in the history: tenter pull {tag} --return {letters}")
}

/// The same counts again.
#[must_use]
pub fn returned_test(about: &str) -> String {
    format!("back  {about}")
}

/// The same has another grain.
#[must_use]
pub fn corrected_test(about: &str, tag: Tag) -> String {
    format!("corrected  {about}; see tenter cloth show {tag}")
}

/// A pattern, a view or a role is off the list.
#[must_use]
pub fn retired_pattern(what: &str) -> String {
    format!("retired  {what}; tenter pattern return brings it back")
}

/// An unfinished test is deleted.
#[must_use]
pub fn forgotten(tag: Tag) -> String {
    format!("forgotten: the unfinished test of cloth {tag}; stored tests stay")
}

/// An unfinished test is kept.
#[must_use]
pub fn kept(tag: Tag) -> String {
    format!("kept; go on with tenter pull {tag} --resume")
}

/// A role of a garment was cut, or not after all.
#[must_use]
pub fn role_cut(what: &str, role: &str, length: &str, cloth: &str) -> String {
    format!("{what}  {}: {length} of {cloth}", isolated(role))
}

/// A photograph is in a file.
#[must_use]
pub fn photograph_copied(number: &str, tag: Tag, file: &str) -> String {
    format!("photograph {number} of cloth {tag} is in {file}")
}

/// A retired photograph can be taken out of the log.
pub const STILL_KEPT: &str = "tenter log forget-photos takes its bytes out of the log as well, for good";

/// The samples are in a file.
#[must_use]
pub fn samples(file: &str) -> String {
    format!(
        "{file} now holds the cloths of a sewing evening that makes a choir's trousers and the coats of a school play. \
         All of it is invented. Your own log is as it was."
    )
}

/// Before the commands that show the samples.
pub const LOOK_ROUND: &str = "Look round with";
/// Before the command that deletes them.
pub const DELETE: &str = "Delete it with";

/// What to type to look at the samples; the file as a shell takes it.
#[must_use]
pub fn look_round(file: &str) -> [String; 3] {
    ["cloth list", "fit 'Choir trousers' A", "cloth show 5"].map(|verb| format!("  tenter --db {file} {verb}"))
}

/// What to type to delete them.
#[must_use]
pub fn delete(file: &str) -> String {
    format!("  {} {file}", if cfg!(windows) { "del" } else { "rm" })
}

/// The pages of the manual are in a folder.
#[must_use]
pub fn manual(pages: usize, first: &str) -> String {
    format!("{pages} pages; read one with man -l {first}")
}

/// A log is whole.
#[must_use]
pub fn whole_log(place: &str, entries: u64) -> String {
    format!("{place} is whole; it holds {entries} entries")
}

/// A log is not.
#[must_use]
pub fn damaged_log(place: &str) -> String {
    format!("{place} is damaged; restore a copy, or import your last export with --db NEWFILE")
}

/// The clock of the handheld is right now; how it was.
#[must_use]
pub fn clock_set(now: &str, was: &str) -> String {
    format!("clock set to {now}; {was}")
}

/// A swatch book.
#[must_use]
pub fn book(cloths: &str) -> String {
    format!("{cloths}; open it in a browser")
}

/// Cards or gauges on paper.
#[must_use]
pub fn to_print(what: &str) -> String {
    format!("{what}; print at 100 % and check the line of 100 mm")
}

/// How to end the pages.
pub const HOW_TO_END: &str = "Ctrl-C ends it";
/// There is no browser that this machine opens of itself.
pub const NO_BROWSER: &str = "no browser could be opened; type the address into one";
/// The pages ended.
pub const ENDED: &str = "ended; everything you sent is stored";

/// The app for a phone is in a folder or in one file.
#[must_use]
pub fn app(place: &str) -> String {
    format!("wrote the app to {place}")
}

/// What to do with the folder.
pub const APP_FOLDER: &str =
    "copy it to a web space whose address begins with https, and open that address on the phone once";
/// What to do with the one file.
pub const APP_FILE: &str = "open it from the phone's own files";
/// What a person must know of the one file.
pub const APP_FILE_LIMITS: &str = "the browser keeps what you store for that file alone: do not rename or move it, other pages that you open from \
     your files may read it, and clearing the browser's data deletes it; so export often";

/// What the pulls of a class say, as a page.
pub const CLASS: &str = "the pulls of the class; open it in a browser";

/// Retired photographs are out of the log, so many thousands of bytes of them.
#[must_use]
pub fn photographs_gone(kilobytes: usize) -> String {
    match kilobytes {
        0 => "no retired photograph is in the log".to_owned(),
        _ => format!("taken out  retired photographs, {kilobytes} kB; exported files may still hold them"),
    }
}

/// Plans, cards and gauges of some garments.
#[must_use]
pub fn sheets(garments: &str) -> String {
    to_print(&format!("plans, cards and gauges of {garments}"))
}

/// A sheet on which a class writes its readings.
#[must_use]
pub fn class_sheet() -> String {
    to_print("the sheet for a class")
}
