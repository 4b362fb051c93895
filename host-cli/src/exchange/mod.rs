//! The file formats, each both ways: [`jsonl`] loses nothing, [`table`] is for a spreadsheet.

mod error;
pub mod jsonl;
mod sound;
pub mod table;

pub use error::{BadLine, ExportError, Fault, ImportError, Many, RowFault, TableError, Unsound};
