//! Photographs of a cloth.

use super::super::fields::{Fields, Upload, fresh};
use super::super::form::{FieldKind, Form, FormField};
use super::super::part::{Link, PagePart};
use super::super::shell::{Place, Shell, nowhere};
use super::super::visit::{Answered, Visit, cloth};
use super::super::{Method, Response};
use crate::deed::remember::{self as deed, Turn};
use crate::deed::{Refused, find};
use crate::finding::memory;
use crate::input::cloth::short;
use crate::input::{Field, PhotoFault, Why, Wrong};
#[cfg(not(feature = "pictures"))]
use crate::log::Colour;
use crate::log::{Fabric, Photo, PhotoSaid};
use crate::store::{Change as _, LogPiece, StoreError};
use crate::words::cloth as words;

/// A photograph by its name. It never changes: its name is that of its bytes.
pub fn file(visit: &Visit<'_>, name: &str) -> Answered {
    let Ok(name) = name.parse() else { return Ok(nowhere()) };
    let Some(photo) = visit.log.photo(name)? else { return Ok(nowhere()) };
    let mut response = Response::file("image/jpeg", photo.jpeg());
    response.set("cache-control", "private, max-age=31536000, immutable");
    Ok(response)
}

/// The photographs of a cloth, and one more.
pub fn all(visit: &mut Visit<'_>, id: &str) -> Answered {
    let fabric = visit.fabric(id)?;
    let address = format!("{}/photos", cloth(fabric.id));
    if visit.request.method == Method::Get {
        return page(visit, &fabric, form(visit, &address), 200);
    }
    let which = fabric.id.to_string();
    for (name, turn) in [("first", Turn::First), ("retire", Turn::Retire), ("return", Turn::Return)] {
        if let Some(number) = visit.sent.typed(name) {
            let turned = visit.once(|read| Ok((deed::turn_photo(read, &which, &number, turn)?.0, ())));
            return answered(visit, &fabric, &address, turned.map(drop));
        }
    }
    let added = add(visit, &fabric);
    answered(visit, &fabric, &address, added)
}

fn answered(visit: &Visit<'_>, fabric: &Fabric, address: &str, done: Result<(), Refused>) -> Answered {
    match done {
        Ok(()) => Ok(Response::see(address)),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => page(visit, fabric, form(visit, address).refused(&refused), 422),
    }
}

fn form(visit: &Visit<'_>, address: &str) -> Form {
    Form::new("photo", address, "Keep the photograph")
        .once(fresh(visit.here))
        .ask(FormField::new("photo", "A photograph", FieldKind::Photo).of(&[Field::Photo]))
        .ask(FormField::text("note", "What it shows").of(&[Field::Note]))
}

/// The photograph that was sent, small, and what is said of it.
#[cfg(feature = "pictures")]
fn taken(file: &Upload, _: &Fields, note: String) -> Result<([Photo; 2], PhotoSaid), PhotoFault> {
    let taken = crate::input::photo::take(&file.bytes)?;
    let said = taken.said(note);
    Ok(([taken.photo, taken.thumbnail], said))
}

/// The same where a browser's script has read the photograph and made it small.
#[cfg(not(feature = "pictures"))]
fn taken(file: &Upload, sent: &Fields, note: String) -> Result<([Photo; 2], PhotoSaid), PhotoFault> {
    let jpeg = |file: &Upload, most: u16| {
        let photo = Photo::new(file.bytes.clone()).ok_or(PhotoFault::UnknownFormat)?;
        let (width, height) = photo.size().ok_or(PhotoFault::Damaged)?;
        if width.max(height) > most {
            return Err(PhotoFault::TooManyPixels);
        }
        Ok((photo, (width, height)))
    };
    let (photo, (width_px, height_px)) = jpeg(file, 1200)?;
    let (thumbnail, _) = jpeg(sent.file("thumbnail").ok_or(PhotoFault::UnknownFormat)?, 320)?;
    let colour = Colour::try_from(sent.get("colour").to_owned()).map_err(|_| PhotoFault::Damaged)?;
    let said = PhotoSaid { photo: photo.name(), thumbnail: thumbnail.name(), width_px, height_px, colour, note };
    Ok(([photo, thumbnail], said))
}

fn add(visit: &mut Visit<'_>, fabric: &Fabric) -> Result<(), Refused> {
    let file = visit.sent.file("photo").ok_or_else(|| Wrong::new(Field::Photo, "", Why::Missing))?;
    let note = short(Field::Note, visit.sent.get("note"))?;
    let (pieces, said) = taken(file, &visit.sent, note).map_err(|fault| deed::not_taken(&file.name, fault))?;
    let which = fabric.id.to_string();
    // What cannot be said leaves no photograph behind; what is said never names one that is not there.
    match deed::photo(&*visit.log, &which, &said) {
        // Sent twice.
        Err(Refused::PhotoThere { .. }) => return Ok(()),
        said => said?,
    };
    visit.log.merge_all(pieces.into_iter().map(|photo| Ok::<_, StoreError>(LogPiece::from(photo))))?;
    visit.once(|read| Ok((deed::photo(read, &which, &said)?.0, ())))?;
    Ok(())
}

fn page(visit: &Visit<'_>, fabric: &Fabric, form: Form, status: u16) -> Answered {
    let fabric = find::fabric(&*visit.log, &fabric.id.to_string())?;
    let address = format!("{}/photos", cloth(fabric.id));
    let mut page = Shell::new(Place::Cloths, &format!("Photographs of {}", words::title(&fabric)));
    page.push(PagePart::Form(Box::new(form)));
    let seen = memory::photos(&*visit.log, &fabric)?;
    for one in &seen {
        page.push(PagePart::Html(super::one::photographs(&fabric, core::slice::from_ref(one))));
        let turn = |id, button: &str, name: &str| {
            PagePart::Form(Box::new(
                Form::new(id, &address, button)
                    .numbered(one.number)
                    .once(fresh(visit.here))
                    .with(name, one.number.to_string())
                    .quiet(),
            ))
        };
        if one.photo.dropped {
            page.push(turn("return", &format!("Return photograph {}", one.number), "return"));
        } else {
            if one.number > 1 {
                page.push(turn("first", "Show it first", "first"));
            }
            page.push(turn("retire", "Retire it", "retire"));
        }
    }
    page.push(PagePart::Links(vec![Link::new(cloth(fabric.id), "Back to the cloth")]));
    Ok(page.with_status(status))
}
