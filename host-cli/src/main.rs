//! The program `tenter`: parse, run, print one line on error.

#![allow(clippy::std_instead_of_core)]

use std::io::{IsTerminal, Write};
use std::process::ExitCode;

use tenter::cli::Parsed;
use tenter::command;
use tenter::error::{EXIT_CODE, Error};
use tenter::log::Here;
use tenter::text as report;
use tenter::text::TextOutput;
use tenter::text::filter::Filter;

fn main() -> ExitCode {
    let (words, here) = (std::env::args_os().collect::<Vec<_>>(), Here::desk());
    match command::units::parse(&words, here) {
        Ok(Parsed::Run(line)) => {
            let mut plain = anstream::AutoStream::auto(std::io::stdout());
            // A pipe gets every byte as it is, for it may be an export.
            let mut gate;
            let out: &mut dyn Write = if obeys(&std::io::stdout()) {
                gate = Filter::new(plain);
                &mut gate
            } else {
                &mut plain
            };
            let (width, unicode) = (report::terminal_width(), report::terminal_is_unicode());
            match command::run(&line, &mut TextOutput { out, width, unicode, here })
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

/// Whether what is written comes before a terminal: it is one, or it is asked for colours as one would be.
fn obeys(stream: &impl IsTerminal) -> bool {
    stream.is_terminal() || std::env::var_os("CLICOLOR_FORCE").is_some_and(|force| force != "0")
}

fn fail(error: &Error) -> ExitCode {
    if error.is_closed_pipe() {
        return ExitCode::SUCCESS;
    }
    let _ = writeln!(Filter::new(anstream::stderr()), "tenter: {error}");
    ExitCode::from(EXIT_CODE)
}
