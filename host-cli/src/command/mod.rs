//! One file a verb: read options, ask the core, hand the result to a report.

pub mod check;

use std::io::Write;

use crate::cli::Verb;
use crate::error::Error;

/// Runs a verb and writes its result to `out`; the exit code.
///
/// # Errors
///
/// What was typed wrong, or an output that cannot be written.
pub fn run(verb: &Verb, out: &mut impl Write) -> Result<u8, Error> {
    match verb {
        Verb::Check { args, readings } => check::run(args, readings, out),
    }
}
