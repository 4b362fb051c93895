//! The desk's end of handing over by a script: entries go to and from the app on a phone. Twice is once.

use super::form::{Form, FormField};
use super::part::{Link, PagePart};
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit};
use super::{Method, Response};
use crate::exchange::{ExportError, ImportError, jsonl};
use crate::store::{Change as _, Merged};
use crate::words::errors;
use crate::words::quantity::counted;

/// The script that speaks with the app.
pub const SCRIPT: &str = include_str!("../../phone/page/desk.js");

/// The name under which a log travels: phones hand on files that end so, where others are refused.
pub const FILE: &str = "tenter-log.txt";

/// The page, and what its script sends.
pub fn exchange(visit: &mut Visit<'_>) -> Answered {
    if visit.request.method == Method::Get {
        return Ok(page());
    }
    let pieces = jsonl::Exported::begin(visit.request.body.as_slice(), "what the phone sent", visit.here.latest());
    match pieces.and_then(|pieces| visit.log.merge_all(pieces)) {
        Ok(merged) => Ok(Response::plain(200, &told(merged))),
        Err(ImportError::Store(error)) => Err(error.into()),
        Err(error) => Ok(Response::plain(422, &errors::imported(&error))),
    }
}

/// The whole log, names included: both ends are one person's.
pub fn log(visit: &Visit<'_>) -> Answered {
    let mut bytes = Vec::new();
    match jsonl::write(&*visit.log, true, &mut bytes, &mut || ()) {
        Ok(_) => Ok(Response::kept("text/plain; charset=utf-8", FILE, bytes)),
        Err(ExportError::Store(error)) => Err(error.into()),
        Err(error) => Ok(Response::plain(500, &errors::exported(&error))),
    }
}

/// The entries alone, for another program to compare with its own.
pub fn entries(visit: &Visit<'_>) -> Answered {
    let mut bytes = Vec::new();
    match jsonl::write_entries(&*visit.log, &mut bytes) {
        Ok(()) => Ok(Response::file("text/plain; charset=utf-8", bytes)),
        Err(ExportError::Store(error)) => Err(error.into()),
        Err(error) => Ok(Response::plain(500, &errors::exported(&error))),
    }
}

/// The names of the photographs, for the same.
pub fn photos(visit: &Visit<'_>) -> Answered {
    let names: Vec<String> = visit.log.photo_names()?.iter().map(ToString::to_string).collect();
    Ok(Response::file("application/json", serde_json::json!(names).to_string()))
}

/// Takes what another program sends, as the page does; what became of it is for that program.
pub fn take(visit: &mut Visit<'_>) -> Answered {
    let pieces = jsonl::Exported::begin(visit.request.body.as_slice(), "what came", visit.log.here().latest());
    match pieces.and_then(|pieces| visit.log.merge_all(pieces)) {
        Ok(merged) => Ok(Response::file("application/json", serde_json::json!(merged).to_string())),
        Err(ImportError::Store(error)) => Err(error.into()),
        Err(error) => Ok(Response::plain(422, &errors::imported(&error))),
    }
}

fn told(merged: Merged) -> String {
    let entries = match merged.new {
        0 => return "All of it was here already.".to_owned(),
        1 => "1 entry".to_owned(),
        new => format!("{new} entries"),
    };
    match merged.photos {
        0 => format!("{entries} came here."),
        photos => format!("{entries} and {} came here.", counted(photos, "photograph")),
    }
}

fn page() -> Response {
    let mut page = Shell::new(Place::More, "Exchange with a phone");
    let how = "Open this page in the browser of the phone that has the app. The app asks you before it sends or fetches anything.";
    page.push(PagePart::Words(how.to_owned()));
    let app = Form::new("app", "/exchange", "Open the app")
        .ask(FormField::text("address", "Address of the app").hint("It begins with https"));
    page.push(PagePart::Form(Box::new(app)));
    page.push(PagePart::Html("<p id=\"told\" role=\"status\"></p><script src=\"/desk.js\" defer></script>".to_owned()));
    let file =
        Link::new("/log", "The log as a file").about("Where the browser has no scripts, or the phone no network");
    page.push(PagePart::Links(vec![file]));
    let mut response = page.page();
    // The app is opened from here, and they talk.
    response.set("cross-origin-opener-policy", "unsafe-none");
    response
}

#[cfg(test)]
mod tests {
    use super::super::{Request, respond};
    use crate::log::{FabricChange, Fact, Here};
    use crate::store::memory::Memory;
    use crate::store::{Change as _, Merged, Read as _};

    #[test]
    fn a_log_goes_to_and_fro_and_twice_is_once() {
        let here = Here { now: || "2026-03-01T12:00:00Z".parse().unwrap(), ..Here::desk() };
        let (mut one, mut other) = (Memory::new(here), Memory::new(here));
        let change = FabricChange { tag: Some(7), name: Some("twill".into()), ..FabricChange::default() };
        one.add(&[Fact::FabricAdded(change)]).unwrap();
        let file = respond(&Request::get("/exchange/tenter-log.txt"), &mut one);
        assert_eq!(file.status, 200);
        let said = |log: &mut Memory, body: &[u8]| {
            let sent =
                Request { body: body.to_vec(), content_type: "text/plain".into(), ..Request::post("/exchange", &[]) };
            let answer = respond(&sent, log);
            (answer.status, String::from_utf8(answer.body).unwrap())
        };
        assert_eq!(said(&mut other, &file.body), (200, "1 entry came here.\n".to_owned()));
        assert_eq!(said(&mut other, &file.body), (200, "All of it was here already.\n".to_owned()));
        assert_eq!(other.fabrics().unwrap(), one.fabrics().unwrap());
        let (status, words) = said(&mut other, &file.body[..file.body.len() - 3]);
        assert!(status == 422 && words.contains("nothing was imported"), "{words}");
        // The same for another program.
        let mut third = Memory::new(here);
        let entries = respond(&Request::get("/exchange/entries.txt"), &mut one);
        assert_eq!(crate::exchange::jsonl::lines(&entries.body, "one").unwrap().len(), 1);
        let sent = Request { body: entries.body, ..Request::post("/exchange/take", &[]) };
        for merged in [Merged { new: 1, ..Merged::default() }, Merged { known: 1, ..Merged::default() }] {
            assert_eq!(serde_json::from_slice::<Merged>(&respond(&sent, &mut third).body).unwrap(), merged);
        }
        assert_eq!(respond(&Request::get("/exchange/photos.json"), &mut one).body, b"[]");
        assert_eq!(respond(&Request::get("/exchange/take"), &mut one).status, 404);
    }
}
