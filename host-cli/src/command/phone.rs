//! `tenter phone`: the app for a phone.

use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};

use crate::app::{Module, folder, one_file};
use crate::cli::phone::PhoneArgs;
use crate::error::Error;
use crate::input::{FileFault, Misuse};
use crate::plain::shown;
use crate::store::Access;
use crate::text::TextOutput;
use crate::whole_file::WholeFile;
use crate::words::done;

/// The module's name beside the program.
const BESIDE: &str = "tenter.wasm.gz";

/// Runs the verb.
///
/// # Errors
///
/// No module, or a place that cannot be written.
pub fn run(args: &PhoneArgs, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let file = args.module.clone().or_else(|| if Module::carried().is_some() { None } else { beside() });
    let bytes = file.as_deref().map(read).transpose()?;
    let module = match (&bytes, &file) {
        (Some(bytes), Some(file)) => Module::read(bytes).ok_or_else(|| not_a_module(file))?,
        _ => Module::carried().ok_or(Misuse::NoAppModule)?,
    };
    if let Some(out) = &args.out {
        write_folder(module, out)?;
        screen.say(&done::app(&shown(out)))?;
        screen.say(done::APP_FOLDER)?;
    }
    if let Some(out) = &args.one_file {
        write_file(out, one_file(module).as_bytes())?;
        screen.say(&done::app(&shown(out)))?;
        screen.say(done::APP_FILE)?;
        screen.say(done::APP_FILE_LIMITS)?;
    }
    Ok(0)
}

fn beside() -> Option<PathBuf> {
    Some(std::env::current_exe().ok()?.with_file_name(BESIDE)).filter(|file| file.is_file())
}

fn read(file: &Path) -> Result<Vec<u8>, Error> {
    fs::read(file).map_err(|error| Error::file(Access::Read, file, &error))
}

fn not_a_module(file: &Path) -> Error {
    Error::file(Access::Read, file, FileFault::NotAppModule)
}

fn write_folder(module: Module<'_>, out: &Path) -> Result<(), Error> {
    for file in folder(module) {
        let path = file.path.split('/').fold(out.to_owned(), |path, part| path.join(part));
        let parent = path.parent().unwrap_or(out);
        fs::create_dir_all(parent).map_err(|error| Error::file(Access::Make, parent, &error))?;
        // A link that somebody laid there is not followed.
        if path.is_symlink() {
            fs::remove_file(&path).map_err(|error| Error::file(Access::Write, &path, &error))?;
        }
        // Not for its owner alone: a web server reads it.
        fs::write(&path, &file.bytes).map_err(|error| Error::file(Access::Write, &path, &error))?;
    }
    Ok(())
}

fn write_file(path: &Path, bytes: &[u8]) -> Result<(), Error> {
    let mut file = WholeFile::begin(path)?;
    let written = file.write_all(bytes).map_err(Error::from);
    written.map_err(|error| file.explain(error))?;
    file.finish()
}
