//! Keeping photographs and what was learned with a cloth.

use super::{Done, Refused, find};
use crate::input::learned::{TypedLearned, learned};
use crate::input::{Field, Why, Wrong};
use crate::log::{ClothPhoto, Fabric, Fact, Id, PhotoSaid};
use crate::store::Read;

/// What is done with one of several that a cloth has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// Shown before the others.
    First,
    /// Retired.
    Retire,
    /// Returned.
    Return,
}

/// Keeps a photograph with a cloth; hands the cloth back. One that was retired comes back.
///
/// # Errors
///
/// No such cloth, or one that has this photograph already.
pub fn photo(read: &dyn Read, which: &str, said: &PhotoSaid) -> Done<Fabric> {
    let fabric = find::live_fabric(read, which)?;
    let known = (1..).zip(&fabric.photos).find(|(_, photo)| photo.said.photo == said.photo);
    let fact = match known {
        Some((number, photo)) if !photo.dropped => return Err(Refused::PhotoThere { tag: fabric.tag, number }),
        Some((_, photo)) => Fact::PhotoRestored { fabric: fabric.id, of: photo.id },
        None => Fact::PhotoAdded { fabric: fabric.id, said: said.clone() },
    };
    Ok((vec![fact], fabric))
}

/// Puts a photograph first, retires it or returns it; hands the cloth back.
///
/// # Errors
///
/// No such cloth or photograph, or nothing that changes.
pub fn turn_photo(read: &dyn Read, which: &str, number: &str, turn: Turn) -> Done<Fabric> {
    let fabric = find::live_fabric(read, which)?;
    let (tag, count, text) = (fabric.tag, fabric.photos.len(), number.to_owned());
    let photo = numbered(number, count).and_then(|index| fabric.photos.get(index));
    let ClothPhoto { id: of, dropped, .. } = *photo.ok_or(Refused::NoPhoto { tag, text, count })?;
    let id = fabric.id;
    let fact = match turn {
        Turn::First => Fact::PhotoFirst { fabric: id, of },
        Turn::Retire if !dropped => Fact::PhotoDropped { fabric: id, of },
        Turn::Return if dropped => Fact::PhotoRestored { fabric: id, of },
        Turn::Retire | Turn::Return => {
            return Err(Refused::AlreadySo { text: number.to_owned(), retire: turn == Turn::Retire });
        }
    };
    Ok((vec![fact], fabric))
}

/// The place in a list of what has a number from 1 on.
fn numbered(text: &str, count: usize) -> Option<usize> {
    let number: usize = text.trim().trim_start_matches('#').parse().ok()?;
    number.checked_sub(1).filter(|index| *index < count)
}

/// The photograph of a cloth that is meant by its number.
///
/// # Errors
///
/// No such cloth or photograph.
pub fn photo_of(read: &dyn Read, which: &str, number: &str) -> Result<(Fabric, PhotoSaid), Refused> {
    let fabric = find::live_fabric(read, which)?;
    let (tag, count, text) = (fabric.tag, fabric.photos.len(), number.to_owned());
    let photo = numbered(number, count).and_then(|index| fabric.photos.get(index));
    let said = photo.ok_or(Refused::NoPhoto { tag, text, count })?.said.clone();
    Ok((fabric, said))
}

/// Remembers what was learned of a cloth, from a garment where one taught it; hands the cloth back.
///
/// # Errors
///
/// No such cloth, a text that cannot be read, or nothing said.
pub fn learn(read: &dyn Read, which: &str, typed: &TypedLearned, garment: Option<Id>) -> Done<Fabric> {
    let mut learned = learned(typed)?;
    let fabric = find::fabric(read, which)?;
    if learned.is_empty() {
        return Err(Refused::NothingLearned);
    }
    learned.garment = garment;
    Ok((vec![Fact::FabricLearned { fabric: fabric.id, learned }], fabric))
}

/// Retires what was learned, or returns it; hands the cloth back.
///
/// # Errors
///
/// No such cloth or lesson, or nothing that changes.
pub fn turn_lesson(read: &dyn Read, which: &str, number: &str, retire: bool) -> Done<Fabric> {
    let fabric = find::fabric(read, which)?;
    let lesson = numbered(number, fabric.lessons.len()).and_then(|index| fabric.lessons.get(index));
    let (tag, count, text) = (fabric.tag, fabric.lessons.len(), number.to_owned());
    let lesson = lesson.ok_or(Refused::NoLesson { tag, text: text.clone(), count })?;
    if lesson.dropped == retire {
        return Err(Refused::AlreadySo { text, retire });
    }
    let (id, lesson) = (fabric.id, lesson.id);
    let fact = match retire {
        true => Fact::LessonDropped { fabric: id, lesson },
        false => Fact::LessonRestored { fabric: id, lesson },
    };
    Ok((vec![fact], fabric))
}

/// A photograph that cannot be taken.
#[must_use]
pub fn not_taken(file: &str, fault: crate::input::PhotoFault) -> Refused {
    Wrong::new(Field::Photo, file, Why::Photo(fault)).into()
}
