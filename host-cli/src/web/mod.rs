//! Pages in a browser: a request and a log → an answer. Nothing else is read or written, so the same pages come from a
//! server at home and from the browser of a phone that keeps the log itself.
//!
//! Pages are plain HTML and work without a script; a script of our own only makes them quicker. Findings, words and
//! pictures are those of the command line; nothing is decided here.

mod advice;
mod choices;
mod cloths;
mod drawing;
mod exchange;
mod fields;
mod form;
mod garments;
mod guide;
mod home;
mod measure;
mod more;
mod part;
mod patterns;
mod people;
mod printed;
mod request;
mod response;
mod shell;
mod size;
mod tags;
#[cfg(test)]
mod tests;
mod visit;

pub use request::{Method, Request};
pub use response::Response;
pub use shell::{Place, Shell};

use crate::deed::Refused;
use crate::store::{LogWithDrafts, StoreError};
use crate::words::errors;
use part::PagePart;
use visit::{Answered, Visit};

/// How many bytes may be sent to an address: a photograph and a log are large, a form is not.
#[must_use]
pub fn most_bytes(path: &str) -> u64 {
    match path {
        "/log" | "/exchange" | "/exchange/take" => 256 << 20,
        photo if photo.ends_with("/photos") => 33 << 20,
        _ => 256 << 10,
    }
}

/// Answers where the log cannot be opened or read.
#[must_use]
pub fn unreadable(error: &StoreError) -> Response {
    let mut page = Shell::new(Place::Home, "The log cannot be used");
    page.words(&errors::store(error));
    page.with_status(503)
}

/// Answers a request from a log: the time, chance and the clock on the wall are those of the log
/// ([`Read::here`](crate::store::Read::here)).
///
/// ```
/// use tenter::log::Here;
/// use tenter::store::memory::Memory;
/// use tenter::web::{Request, respond};
///
/// let mut log = Memory::new(Here::desk());
/// assert_eq!(respond(&Request::get("/"), &mut log).status, 200);
/// assert_eq!(respond(&Request::get("/nowhere"), &mut log).status, 404);
/// ```
pub fn respond(request: &Request, log: &mut dyn LogWithDrafts) -> Response {
    let answered = Visit::new(log, request).and_then(|mut visit| route(&mut visit));
    match answered {
        Ok(response) => response,
        Err(Refused::Store(error)) => unreadable(&error),
        Err(refused) => not_so(&refused),
    }
}

fn route(visit: &mut Visit<'_>) -> Answered {
    let parts = visit.request.parts().unwrap_or_else(|| vec![String::new()]);
    let parts: Vec<&str> = parts.iter().map(String::as_str).collect();
    let gets = visit.request.method == Method::Get;
    match parts.as_slice() {
        [] if gets => home::show(visit),
        ["style.css"] if gets => Ok(Response::file("text/css; charset=utf-8", shell::STYLE)),
        ["page.js"] if gets => Ok(Response::file("text/javascript; charset=utf-8", shell::SCRIPT)),
        ["icon.svg"] if gets => Ok(Response::file("image/svg+xml", shell::ICON)),
        ["exchange"] => exchange::exchange(visit),
        ["exchange", exchange::FILE] if gets => exchange::log(visit),
        ["exchange", "entries.txt"] if gets => exchange::entries(visit),
        ["exchange", "photos.json"] if gets => exchange::photos(visit),
        ["exchange", "take"] if !gets => exchange::take(visit),
        ["desk.js"] if gets => Ok(Response::file("text/javascript; charset=utf-8", exchange::SCRIPT)),
        ["cloths"] if gets => cloths::list(visit),
        ["cloths", "new"] => cloths::edit::add(visit),
        ["cloths", id] if gets => cloths::one::show(visit, id),
        ["cloths", id, "edit"] => cloths::edit::edit(visit, id),
        ["cloths", id, "buy"] => cloths::edit::buy(visit, id),
        ["cloths", id, "cut"] => cloths::deeds::cut(visit, id),
        ["cloths", id, "wash"] => cloths::deeds::wash(visit, id),
        ["cloths", id, "retire"] => cloths::deeds::retire(visit, id),
        ["cloths", id, "return"] => cloths::deeds::restore(visit, id),
        ["cloths", id, "learned"] => cloths::deeds::learned(visit, id),
        ["cloths", id, "photos"] => cloths::photos::all(visit, id),
        ["cloths", id, "tests", test] => cloths::deeds::test(visit, id, test),
        ["measure"] => measure::begin(visit),
        ["measure", "form"] => measure::at_once(visit),
        ["measure", id] => measure::step(visit, id),
        ["measure", id, "store"] => measure::store(visit, id),
        ["inbox"] => measure::inbox(visit),
        ["patterns"] if gets => patterns::list(visit),
        ["patterns", "new"] => patterns::add(visit),
        ["patterns", id] if gets => patterns::show(visit, id),
        ["patterns", id, "new"] => patterns::new_role(visit, id),
        ["patterns", id, "fit"] if gets => patterns::fit::show(visit, id),
        ["patterns", id, "plan"] if gets => patterns::plan::plan(visit, id),
        ["patterns", id, "plan", "choices"] if gets => patterns::plan::choose(visit, id),
        ["patterns", id, "map"] if gets => patterns::fit::map(visit, id),
        ["patterns", id, "gauges"] if gets => patterns::fit::gauges(visit, id),
        ["patterns", id, "book"] if gets => patterns::fit::book_of(visit, id),
        ["patterns", id, what @ ("edit" | "retire" | "return")] => patterns::change(visit, id, what),
        ["patterns", id, "roles", role] => patterns::edit_role(visit, id, role),
        ["patterns", id, "begin"] => garments::begin(visit, id),
        ["garments"] if gets => garments::list(visit),
        ["garments", id] if gets => garments::show(visit, id),
        ["garments", id, "plan"] if gets => garments::plan_of(visit, id),
        ["garments", id, "edit"] => garments::edit(visit, id),
        ["garments", id, what] => garments::act(visit, id, what),
        ["pair"] if gets => advice::pair(visit),
        ["handle"] if gets => advice::handle(visit),
        ["hang"] if gets => advice::hang(visit),
        ["size"] if gets => size::size(visit),
        ["people"] => people::list(visit),
        ["people", "compare"] if gets => people::compare(visit),
        ["more"] if gets => more::show(visit),
        ["units"] => more::units(visit),
        ["print", "book"] if gets => more::book(visit),
        ["print", "cards"] if gets => more::cards(visit),
        ["print", "class"] if gets => more::worksheet(visit),
        ["print", "sheets"] if gets => more::sheets(visit),
        ["tags"] => tags::show(visit),
        ["print", "gauge"] if gets => more::gauge(visit),
        ["log"] => more::log(visit),
        ["log", name] if gets => more::file(visit, name),
        ["guide"] if gets => guide::show(visit, "measuring"),
        ["guide", part] if gets => guide::show(visit, part),
        ["photos", name] if gets => cloths::photos::file(visit, name),
        _ => Ok(shell::nowhere()),
    }
}

/// Answers where what an address names is not there, or cannot be done.
fn not_so(refused: &Refused) -> Response {
    let mut page = Shell::new(Place::Home, "That cannot be done");
    for line in errors::page::refused(refused).1 {
        page.push(PagePart::Words(line));
    }
    page.with_status(404)
}
