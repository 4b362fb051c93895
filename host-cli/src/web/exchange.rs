//! The desk's end of handing over: entries go to and from the app on a phone, by a script or as files. Either way twice
//! is once.

use super::form::{Form, Input, Kind};
use super::part::{Link, Part};
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

/// The page, and what it takes in.
pub fn exchange(visit: &mut Visit<'_>) -> Answered {
    if visit.request.method == Method::Get {
        return Ok(page(200, ""));
    }
    let file = visit.sent.file("file").map(|file| (file.bytes.clone(), file.name.clone()));
    let by_form = file.is_some();
    let (bytes, name) = file.unwrap_or_else(|| (visit.request.body.clone(), "what the phone sent".to_owned()));
    let merged = jsonl::Exported::begin(bytes.as_slice(), &name).and_then(|pieces| visit.log.merge_all(pieces));
    let (status, words) = match merged {
        Ok(merged) => (200, told(merged)),
        Err(ImportError::Store(error)) => return Err(error.into()),
        Err(error) => (422, errors::imported(&error)),
    };
    Ok(if by_form { page(status, &words) } else { Response::plain(status, &words) })
}

/// The whole log as a file.
pub fn log(visit: &Visit<'_>) -> Answered {
    let mut bytes = Vec::new();
    match jsonl::write(&*visit.log, true, &mut bytes, &mut || ()) {
        Ok(_) => Ok(Response::kept("text/plain; charset=utf-8", FILE, bytes)),
        Err(ExportError::Store(error)) => Err(error.into()),
        Err(error) => Ok(page(500, &errors::exported(&error))),
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

fn page(status: u16, done: &str) -> Response {
    let mut page = Shell::new(Place::More, "Exchange with a phone");
    if !done.is_empty() {
        page.push(Part::Notice(done.to_owned(), Vec::new()));
    }
    page.push(Part::Head("With the app on this phone".to_owned()));
    page.push(Part::Words("Open this page in the browser of the phone that has the app. The app asks you before anything goes to and fro.".to_owned()));
    let app = Form::new("app", "/exchange", "Open the app")
        .ask(Input::text("address", "Address of the app").hint("It begins with https"));
    page.push(Part::Form(Box::new(app)));
    page.push(Part::Html("<p id=\"told\" role=\"status\"></p><script src=\"/desk.js\" defer></script>".to_owned()));
    page.push(Part::Head("With a file".to_owned()));
    let mut file =
        Form::new("bring", "/exchange", "Take it in").ask(Input::new("file", "The file from the phone", Kind::File));
    file.sends_files = true;
    page.push(Part::Form(Box::new(file)));
    page.push(Part::Links(vec![
        Link::new(format!("/exchange/{FILE}"), "Save a file for the phone").about("It holds all that is here"),
    ]));
    let mut response = page.with_status(status);
    // The app is opened from here, and they talk.
    response.set("cross-origin-opener-policy", "unsafe-none");
    response
}

#[cfg(test)]
mod tests {
    use super::super::{Request, respond};
    use crate::log::{FabricChange, Fact, Here};
    use crate::store::memory::Memory;
    use crate::store::{Change as _, Read as _};

    #[test]
    fn a_log_goes_to_and_fro_and_twice_is_once() {
        let here = Here { now: || "2026-03-01T12:00:00Z".parse().unwrap(), ..Here::desk() };
        let (mut one, mut other) = (Memory::new(here), Memory::new(here));
        let change = FabricChange { tag: Some(7), name: Some("twill".into()), ..FabricChange::default() };
        one.add(&[Fact::FabricAdded(change)]).unwrap();
        let file = respond(&Request::get("/exchange/tenter-log.txt"), &mut one);
        assert_eq!(file.status, 200);
        let send = |body: &[u8]| Request {
            body: body.to_vec(),
            content_type: "text/plain".into(),
            ..Request::post("/exchange", &[])
        };
        let said = |log: &mut Memory, body: &[u8]| {
            let answer = respond(&send(body), log);
            (answer.status, String::from_utf8(answer.body).unwrap())
        };
        assert_eq!(said(&mut other, &file.body), (200, "1 entry came here.\n".to_owned()));
        assert_eq!(said(&mut other, &file.body), (200, "All of it was here already.\n".to_owned()));
        assert_eq!(other.fabrics().unwrap(), one.fabrics().unwrap());
        let (status, words) = said(&mut other, &file.body[..file.body.len() - 3]);
        assert!(status == 422 && words.contains("nothing was imported"), "{words}");
        let form = [
            b"--x\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.txt\"\r\n\r\n",
            file.body.as_slice(),
            b"\r\n--x--\r\n",
        ]
        .concat();
        let form = Request { content_type: "multipart/form-data; boundary=x".into(), ..send(&form) };
        let page = respond(&form, &mut other);
        assert!(page.status == 200 && String::from_utf8(page.body).unwrap().contains("All of it was here already."));
    }
}
