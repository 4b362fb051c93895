//! The program `tenter`: parse, run, print one line on error.

#![allow(clippy::std_instead_of_core)]

use std::io::Write as _;
use std::process::ExitCode;

use tenter::cli::Parsed;
use tenter::command;
use tenter::error::{EXIT_CODE, Error};
use tenter::log::Here;
use tenter::text as report;
use tenter::text::Screen;

fn main() -> ExitCode {
    let (words, here) = (std::env::args_os().collect::<Vec<_>>(), Here::desk());
    match command::units::parse(&words, here) {
        Ok(Parsed::Run(line)) => {
            let mut out = anstream::AutoStream::auto(std::io::stdout());
            let (width, unicode) = (report::terminal_width(), report::terminal_is_unicode());
            match command::run(&line, &mut Screen { out: &mut out, width, unicode, here })
                .and_then(|code| Ok(out.flush().map(|()| code)?))
            {
                Ok(code) => ExitCode::from(code),
                Err(error) => fail(&error),
            }
        }
        Ok(Parsed::Show(text)) => {
            // Ignore a closed pipe (`head`).
            let _ = write!(anstream::stdout(), "{}", text.ansi());
            ExitCode::SUCCESS
        }
        Err(error) => fail(&error),
    }
}

fn fail(error: &Error) -> ExitCode {
    if error.is_closed_pipe() {
        return ExitCode::SUCCESS;
    }
    let _ = writeln!(anstream::stderr(), "tenter: {error}");
    ExitCode::from(EXIT_CODE)
}
