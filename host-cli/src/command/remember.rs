//! `tenter cloth picture` and `tenter cloth learned`: what is remembered with a cloth.

use std::io::Write as _;
use std::path::Path;

use super::find;
use crate::cli::remember::{ClothPictureArgs, LearnedArgs};
use crate::deed::Refused;
use crate::deed::remember::{self as deed, Turn};
use crate::error::Error;
use crate::finding::memory;
#[cfg(feature = "pictures")]
use crate::input::FileFault;
#[cfg(not(feature = "pictures"))]
use crate::input::Misuse;
use crate::input::learned::TypedLearned;
use crate::json::cloth as cloth_json;
use crate::log::Fabric;
use crate::plain::shown;
use crate::store::{Change as _, LogPlace, Read, Store};
use crate::text::TextOutput;
use crate::text::memory as report;
use crate::whole_file::WholeFile;
use crate::words::done;

/// Runs `cloth picture`.
///
/// # Errors
///
/// What was typed wrong, a photograph that cannot be taken, or a log that cannot be read or written; here and below.
pub fn picture(
    args: &ClothPictureArgs,
    store: &mut dyn Store,
    db: &LogPlace,
    screen: &mut TextOutput<'_>,
) -> Result<(), Error> {
    let which = args.fabric.as_str();
    if let Some(number) = &args.copy {
        return copy(args, number, store, db, screen);
    }
    let turned = [(&args.first, Turn::First), (&args.retire, Turn::Retire), (&args.r#return, Turn::Return)];
    if let Some((Some(number), turn)) = turned.into_iter().find(|(number, _)| number.is_some()) {
        store.change(|read| deed::turn_photo(read, which, number, turn))?;
    } else if let Some(file) = &args.file {
        add(args, file, store)?;
    }
    let fabric = find::fabric(store, which)?;
    pictures(&fabric, args.show.json, store, screen)?;
    if args.retire.is_some() && !args.show.json {
        screen.say(done::STILL_KEPT)?;
    }
    Ok(())
}

#[cfg(feature = "pictures")]
fn add(args: &ClothPictureArgs, file: &str, store: &mut dyn Store) -> Result<(), Error> {
    use std::io::Read as _;

    use crate::input::cloth::short;
    use crate::input::{Field, photo};
    use crate::store::{Access, LogPiece};

    let path = Path::new(file);
    let wrong = |error: std::io::Error| Error::file(Access::Read, path, &error);
    let opened = std::fs::File::open(path).map_err(wrong)?;
    if opened.metadata().map_err(wrong)?.is_dir() {
        return Err(Error::file(Access::Read, path, FileFault::Folder));
    }
    let mut bytes = Vec::new();
    // A byte more than is taken tells that it is too large.
    opened.take(photo::MAX_FILE_BYTES + 1).read_to_end(&mut bytes).map_err(wrong)?;
    let note = short(Field::Note, args.note.as_deref().unwrap_or_default())?;
    let taken = photo::take(&bytes).map_err(|fault| deed::not_taken(file, fault))?;
    let said = taken.said(note);
    // What cannot be said leaves no photograph behind; what is said never names one that is not there.
    deed::photo(store, &args.fabric, &said)?;
    let bytes = [taken.photo, taken.thumbnail].map(|photo| Ok::<_, Error>(LogPiece::from(photo)));
    store.merge_all(bytes.into_iter())?;
    store.change(|read| deed::photo(read, &args.fabric, &said))?;
    Ok(())
}

#[cfg(not(feature = "pictures"))]
fn add(_: &ClothPictureArgs, _: &str, _: &mut dyn Store) -> Result<(), Error> {
    Err(Misuse::NoPhotographs.into())
}

/// Writes a photograph to a file.
fn copy(
    args: &ClothPictureArgs,
    number: &str,
    read: &dyn Read,
    db: &LogPlace,
    screen: &mut TextOutput<'_>,
) -> Result<(), Error> {
    let (fabric, said) = deed::photo_of(read, &args.fabric, number)?;
    let photo = read.photo(said.photo)?.ok_or(Refused::PhotoMissing(fabric.tag))?;
    let path = Path::new(args.file.as_deref().unwrap_or_default());
    super::refuse_the_log_itself(path, db)?;
    let mut file = WholeFile::begin(path)?;
    file.write_all(photo.jpeg()).map_err(|error| file.explain(error.into()))?;
    file.finish()?;
    Ok(screen.say(&done::photograph_copied(number, fabric.tag, &shown(path)))?)
}

fn pictures(fabric: &Fabric, json: bool, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    if json {
        writeln!(screen.out, "{}", cloth_json::fabric(fabric))?;
    } else {
        let seen = memory::photos(read, fabric)?;
        write!(screen.out, "{}", report::photos(fabric, &seen, screen.here, screen.width))?;
    }
    Ok(())
}

/// Runs `cloth learned`.
///
/// # Errors
///
/// As above.
pub fn learned(args: &LearnedArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let which = args.fabric.as_str();
    match (&args.retire, &args.r#return) {
        (Some(number), _) => store.change(|read| deed::turn_lesson(read, which, number, true))?,
        (None, Some(number)) => store.change(|read| deed::turn_lesson(read, which, number, false))?,
        (None, None) => store.change(|read| deed::learn(read, which, &TypedLearned::from(&args.learned), None))?,
    };
    let fabric = find::fabric(store, which)?;
    if args.show.json {
        writeln!(screen.out, "{}", cloth_json::fabric(&fabric))?;
    } else {
        let garments = store.garments()?;
        write!(screen.out, "{}", report::lessons(&fabric, &garments, screen.here, screen.width))?;
    }
    Ok(())
}
