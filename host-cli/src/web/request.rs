//! What a page is asked for, whoever carries it: a server at home, or a browser that asks itself.

use percent_encoding::percent_decode_str;

/// What is asked of an address.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// To show it; nothing is changed.
    Get,
    /// To take what was sent.
    Post,
}

/// A request.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Request {
    /// What is asked.
    pub method: Method,
    /// The path of the address as it was sent, from its first slash on.
    pub path: String,
    /// What stands behind the question mark, as it was sent; empty where there is none.
    pub query: String,
    /// The head `Content-Type`; empty where there is none.
    pub content_type: String,
    /// What was sent.
    pub body: Vec<u8>,
}

impl Request {
    /// Asks for a page: `/cloths?words=wool`.
    #[must_use]
    pub fn get(target: &str) -> Self {
        let (path, query) = target.split_once('?').unwrap_or((target, ""));
        let (path, query) = (path.to_owned(), query.to_owned());
        Self { method: Method::Get, path, query, content_type: String::new(), body: Vec::new() }
    }

    /// Sends a form.
    #[must_use]
    pub fn post(target: &str, fields: &[(&str, &str)]) -> Self {
        let mut form = form_urlencoded::Serializer::new(String::new());
        let body = form.extend_pairs(fields).finish().into_bytes();
        let content_type = "application/x-www-form-urlencoded".to_owned();
        Self { method: Method::Post, content_type, body, ..Self::get(target) }
    }

    /// The parts of the path between slashes, decoded; none where it is no path that a page has.
    #[must_use]
    pub fn parts(&self) -> Option<Vec<String>> {
        let path = self.path.strip_prefix('/')?;
        if path.is_empty() {
            return Some(Vec::new());
        }
        let decoded = |part: &str| percent_decode_str(part).decode_utf8().ok().map(|text| text.into_owned());
        let parts: Option<Vec<String>> = path.split('/').map(decoded).collect();
        parts.filter(|parts| parts.iter().all(|part| !part.is_empty() && part != "." && part != ".."))
    }
}
