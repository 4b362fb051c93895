//! Files that cannot be taken or written.

use super::input::{column, wrong};
use super::store::store;
use crate::exchange::{BadLine, ExportError, Fault, ImportError, Many, RowFault, TableError, Unsound};
#[cfg(feature = "serve")]
use crate::link::pages::PagesError;
use crate::plain::one_line;
use crate::words::doubt;
use crate::words::quantity::counted;

/// How many bad lines of a table are told one by one.
const TOLD: usize = 20;

/// Why a file was not taken.
#[must_use]
pub fn imported(error: &ImportError) -> String {
    match error {
        ImportError::Line(BadLine { file, line, fault }) => {
            format!("{}, line {line}: {}; nothing was imported", one_line(file), of_line(fault))
        }
        ImportError::Table(error) => of_table(error),
        ImportError::Store(error) => store(error),
        #[cfg(feature = "serve")]
        ImportError::Pages(error) => pages(error),
    }
}

/// Why the pages of another tenter cannot be used.
#[cfg(feature = "serve")]
#[must_use]
pub fn pages(error: &PagesError) -> String {
    match error {
        PagesError::Address => {
            "that is no address of pages; type it as tenter serve prints it, such as http://192.168.1.20:7436/?token=...".to_owned()
        }
        PagesError::Unreachable(system) => {
            format!("nothing answers there: {}; is tenter serve running, and do both use one network?", one_line(system))
        }
        PagesError::Lost => "the connection was lost; what was stored is safe: type the same again".to_owned(),
        PagesError::Foreign => {
            "what answers there is no tenter, or an older one; type the address that tenter serve prints".to_owned()
        }
        PagesError::NotLetIn(words) => {
            format!("not let in: {} Type the whole address with its token, or put the token into TENTER_TOKEN", one_line(words))
        }
        PagesError::Refused(words) => format!("the other tenter refuses: {}", one_line(words)),
    }
}

/// Why a file was not written; the system's own words where it is the system's.
#[must_use]
pub fn exported(error: &ExportError) -> String {
    match error {
        ExportError::Store(error) => store(error),
        ExportError::Output(error) => format!("cannot write the result: {error}"),
        ExportError::Test(error) => error.to_string(),
    }
}

fn of_line(fault: &Fault) -> String {
    match fault {
        Fault::Empty => "the file is empty; pass one written by tenter export".to_owned(),
        Fault::Foreign => "not a tenter export; pass a file written by tenter export".to_owned(),
        Fault::Newer { found, known } => {
            format!("written by a newer tenter (format {found}, this one knows {known}); use that version")
        }
        Fault::System(system) => format!("cannot be read: {system}"),
        Fault::TooLong => "longer than any entry; the file is damaged: copy or export it again".to_owned(),
        Fault::LongText { most } => format!("a text is longer than {most} characters, the most that is stored"),
        Fault::TooMany { most, what } => match what {
            Many::Entries => format!("the file holds more than {most} entries, the most that is imported"),
            Many::Photographs => format!("the file holds more than {most} photographs, the most that is imported"),
            Many::InAList => format!("a list holds more than {most} values, the most that is stored"),
        },
        Fault::NotUtf8 => "not UTF-8; the file is damaged: copy or export it again".to_owned(),
        Fault::CutOff => "the file is cut off after this line; copy or export it again".to_owned(),
        Fault::Trailing => "something follows the last line; import each file by itself".to_owned(),
        Fault::NotJson { column, ended } => {
            let what = if *ended { "damaged" } else { "cut off" };
            format!("{what} at its character {column}; copy or export the file again")
        }
        Fault::Count { stated, found } => {
            format!("{stated} entries were exported and {found} are here; copy or export it again")
        }
        Fault::PhotoCount { stated, found } => {
            format!("{stated} photographs were exported and {found} are here; copy or export it again")
        }
        Fault::NotAPhoto => "the photograph is not the one it says it is; copy or export the file again".to_owned(),
        Fault::NotAnEntry(words) => format!("not an entry of a log: {words}"),
        Fault::UnknownField(name) => {
            format!("this version does not know '{}'; use the version that wrote it", one_line(name))
        }
        Fault::Unprintable => "a text holds characters that cannot be printed".to_owned(),
        Fault::Unsound(what) => format!("not an entry of a log: {}", unsound(*what)),
    }
}

const fn unsound(what: Unsound) -> &'static str {
    match what {
        Unsound::Id => "its identifier is invalid",
        Unsound::Time => "its time is not that of its identifier",
        Unsound::Ahead => "its time lies ahead of your clock; set the clock, or pass --ahead to tenter import",
        Unsound::Load => "a load beyond 1000 N",
        Unsound::Recovery => "a recovery above 100 %",
        Unsound::Unnamed => "a cloth needs tag and name",
        Unsound::Unnumbered => "a garment needs number and name",
        Unsound::NumberZero => "the numbers of garments begin at 1",
        Unsound::NoGarmentName => "a garment without a name",
        Unsound::TagZero => "tags begin at 1",
        Unsound::EmptyName => "a name without letters",
        Unsound::Negative => "a length below zero",
        Unsound::Marks => "marks that are not apart",
        Unsound::Division => "a scale without divisions",
        Unsound::Cloth => "an invalid length of cloth",
    }
}

fn of_table(error: &TableError) -> String {
    match error {
        TableError::NotUtf8 => "the table is not UTF-8; save it once more as CSV, UTF-8".to_owned(),
        TableError::NotATable(words) => {
            format!("this is not a table: {}; save it as CSV, UTF-8", one_line(words))
        }
        TableError::NoColumn { head, known } => {
            format!("the table has no column {head}; its first line names the columns, of {}", known.join(", "))
        }
        TableError::UnknownColumn(head) => format!("column '{}' is not known; leave it out", one_line(head)),
        TableError::ColumnTwice(head) => format!("column {head} is there twice; leave one out"),
        TableError::Rows(rows) => of_rows(rows),
    }
}

fn of_rows(rows: &[(u64, RowFault)]) -> String {
    let mut text = match rows.len() {
        1 => "nothing was imported; one line is wrong".to_owned(),
        many => format!("nothing was imported; {} are wrong", counted(many, "line")),
    };
    for (line, fault) in rows.iter().take(TOLD) {
        text.push_str(&format!("\n  line {line}: {}", of_row(fault)));
    }
    if let Some(more @ 1..) = rows.len().checked_sub(TOLD) {
        text.push_str(&format!("\n  and {more} more"));
    }
    text
}

fn of_row(fault: &RowFault) -> String {
    match fault {
        RowFault::Cell(cell) => wrong(cell, column),
        RowFault::TooMany(cell) => format!(
            "'{}' stands in no column; type a point for a decimal comma, or put \"\" round a cell that holds the mark between cells",
            one_line(cell)
        ),
        RowFault::Doubted(doubted) => {
            let said = doubt::doubted(doubted).join("; ");
            format!("{said}; type the row again, or pass --as-read if it is what you read")
        }
        RowFault::Store(error) => store(error),
    }
}
