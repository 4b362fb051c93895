//! Pages in a browser: a request and a log → an answer. Nothing else is read or written, so the same pages come from a
//! server at home and from the browser of a phone that keeps the log itself.
//!
//! Pages are plain HTML and work without a script; scripts of our own only make them quicker. Findings, words and pictures
//! are those of the command line; nothing is decided here.

mod home;
mod request;
mod response;
mod shell;

pub use request::{Method, Request};
pub use response::Response;
pub use shell::{Place, Shell};

use crate::store::LogWithDrafts;

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
    let parts = request.parts().unwrap_or_else(|| vec![String::new()]);
    let parts: Vec<&str> = parts.iter().map(String::as_str).collect();
    match (request.method, parts.as_slice()) {
        (Method::Get, []) => home::show(log),
        (Method::Get, ["style.css"]) => Response::file("text/css; charset=utf-8", shell::STYLE),
        _ => shell::nowhere(),
    }
}
