//! The flags of `demo`.

use std::path::PathBuf;

use clap::Args;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter demo samples.sqlite3
      tenter --db samples.sqlite3 cloth list
      tenter --db samples.sqlite3 fit 'Choir trousers' A

The cloths, the people and the shop are invented. A sewing evening makes a choir's trousers and coats for a school \
play, and a class of twelve has pulled one of the cloths. Your own log is not touched, and a file that is there \
already is not overwritten. Delete the file when you have seen enough.";

/// `demo`, as typed.
#[derive(Args, Debug, Clone)]
pub struct DemoArgs {
    /// File to make
    #[arg(value_name = "FILE", default_value = "demo.sqlite3")]
    pub file: PathBuf,
}
