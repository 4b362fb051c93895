//! `tenter completions` and `tenter man`: both made from the one definition of the command line.

use std::fs;
use std::io::Write as _;
use std::path::Path;

use clap::Command;

use crate::cli::definition;
use crate::cli::manual::{CompletionsArgs, ManArgs};
use crate::error::Error;
use crate::input::FileFault;
use crate::plain::{reason, shown};
use crate::store::Access;
use crate::text::TextOutput;
use crate::whole_file::WholeFile;
use crate::words::done;

/// Writes the completions of a shell.
///
/// # Errors
///
/// An output that cannot be written; here and below.
pub fn completions(args: &CompletionsArgs, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let mut text = Vec::new();
    clap_complete::generate(args.shell, &mut definition(), "tenter", &mut text);
    screen.out.write_all(&text)?;
    Ok(0)
}

/// Writes the manual.
///
/// # Errors
///
/// As above.
pub fn man(args: &ManArgs, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let Some(folder) = &args.out else {
        screen.out.write_all(&page(definition())?)?;
        return Ok(0);
    };
    let denied =
        |path: &Path, error: &std::io::Error| Error::file(Access::Write, path, FileFault::Pages(reason(error)));
    fs::create_dir_all(folder).map_err(|error| denied(folder, &error))?;
    let mut definition = definition();
    definition.build();
    let pages = pages(&definition);
    for page in &pages {
        let name = page.get_display_name().unwrap_or_else(|| page.get_name()).replace(' ', "-");
        let path = folder.join(format!("{name}.1"));
        let text = self::page(page.clone())?;
        let mut file = WholeFile::begin_here(&path)?;
        file.write_all(&text).map_err(|error| file.explain(error.into()))?;
        file.finish()?;
    }
    writeln!(screen.out, "{}", done::manual(pages.len(), &shown(&folder.join("tenter.1"))))?;
    Ok(0)
}

/// The program and every verb below it, each with its whole name.
fn pages(command: &Command) -> Vec<Command> {
    let below = command.get_subcommands().flat_map(pages);
    std::iter::once(command.clone()).chain(below).collect()
}

fn page(command: Command) -> Result<Vec<u8>, Error> {
    let mut text = Vec::new();
    clap_mangen::Man::new(command).render(&mut text)?;
    Ok(text)
}
