//! What a form sent.

use super::Request;
use crate::log::{Here, Id, Ids};

/// The name under which a form carries the identifier of the entry that it makes.
pub const ONCE: &str = "once";

/// The fields of a form, or of what stands behind a question mark.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Fields {
    texts: Vec<(String, String)>,
    files: Vec<Upload>,
}

/// A file that was sent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Upload {
    /// The field.
    pub field: String,
    /// What the file is called at home; empty where none was chosen.
    pub name: String,
    /// Its bytes.
    pub bytes: Vec<u8>,
}

impl Fields {
    /// What stands behind the question mark.
    pub fn of_query(request: &Request) -> Self {
        Self { texts: decoded(request.query.as_bytes()), files: Vec::new() }
    }

    /// What a form sent; nothing of a kind that no form of ours sends.
    pub fn of_body(request: &Request) -> Self {
        let kind = request.content_type.split(';').next().unwrap_or_default().trim();
        if kind.eq_ignore_ascii_case("application/x-www-form-urlencoded") {
            return Self { texts: decoded(&request.body), files: Vec::new() };
        }
        if kind.eq_ignore_ascii_case("multipart/form-data") {
            return boundary(&request.content_type).map(|it| multipart(&request.body, it)).unwrap_or_default();
        }
        Self::default()
    }

    /// A field as it was typed; empty where there is none.
    pub fn get(&self, name: &str) -> &str {
        self.texts.iter().find(|(key, _)| key == name).map(|(_, value)| value.as_str()).unwrap_or_default()
    }

    /// Every value of a field.
    pub fn all<'f>(&'f self, name: &'f str) -> impl Iterator<Item = &'f str> {
        self.texts.iter().filter(move |(key, _)| key == name).map(|(_, value)| value.as_str())
    }

    /// Whether a field was sent, perhaps empty.
    pub fn has(&self, name: &str) -> bool {
        self.texts.iter().any(|(key, _)| key == name)
    }

    /// A field in which something was typed.
    pub fn typed(&self, name: &str) -> Option<String> {
        Some(self.get(name).trim()).filter(|text| !text.is_empty()).map(str::to_owned)
    }

    /// A file that was chosen.
    pub fn file(&self, name: &str) -> Option<&Upload> {
        self.files.iter().find(|file| file.field == name && !(file.name.is_empty() && file.bytes.is_empty()))
    }

    /// All fields, in their order.
    pub fn texts(&self) -> &[(String, String)] {
        &self.texts
    }

    /// The identifier of the entry that the form makes; a new one where it brought none that can be.
    pub fn once(&self, here: Here) -> Id {
        Id::from_elsewhere(self.get(ONCE), here.latest()).unwrap_or_else(|| fresh(here))
    }
}

/// An identifier for what a form will make.
pub fn fresh(here: Here) -> Id {
    Ids::after(here, None).next()
}

fn decoded(bytes: &[u8]) -> Vec<(String, String)> {
    form_urlencoded::parse(bytes).map(|(name, value)| (name.into_owned(), value.into_owned())).collect()
}

/// The line between the parts of a form with files (RFC 2046, § 5.1.1).
fn boundary(content_type: &str) -> Option<&str> {
    let parameters = content_type.split(';').skip(1);
    let mut found = parameters.filter_map(|one| one.trim().split_once('='));
    let (_, value) = found.find(|(name, _)| name.eq_ignore_ascii_case("boundary"))?;
    Some(value.trim_matches('"')).filter(|it| !it.is_empty() && it.len() <= 70)
}

/// The parts of a form with files (RFC 7578): texts, and files as they are.
fn multipart(body: &[u8], boundary: &str) -> Fields {
    let mut fields = Fields::default();
    let line = format!("\r\n--{boundary}");
    // The first line has none before it.
    let first = line.get(2..).unwrap_or_default().as_bytes();
    let Some(mut rest) = body.strip_prefix(first) else { return fields };
    while let Some(part) = rest.strip_prefix(b"\r\n") {
        let Some(end) = find(part, line.as_bytes()) else { break };
        let Some((part, after)) = part.split_at_checked(end) else { break };
        rest = after.get(line.len()..).unwrap_or_default();
        let Some(at) = find(part, b"\r\n\r\n") else { continue };
        let (heads, bytes) = (part.get(..at).unwrap_or_default(), part.get(at.saturating_add(4)..).unwrap_or_default());
        let heads = String::from_utf8_lossy(heads);
        let disposition = heads.lines().find(|head| head.to_ascii_lowercase().starts_with("content-disposition:"));
        let Some(disposition) = disposition else { continue };
        let Some(field) = parameter(disposition, "name") else { continue };
        match parameter(disposition, "filename") {
            Some(name) => fields.files.push(Upload { field, name, bytes: bytes.to_vec() }),
            None => fields.texts.push((field, String::from_utf8_lossy(bytes).into_owned())),
        }
    }
    fields
}

/// A parameter in quotes; browsers write a quote within as `%22` (HTML, § 4.10.22.8).
fn parameter(head: &str, name: &str) -> Option<String> {
    let start = head.find(&format!("; {name}=\""))?.saturating_add(name.len()).saturating_add(4);
    let value = head.get(start..)?;
    Some(value.get(..value.find('"')?)?.replace("%22", "\"").replace("%0D%0A", " "))
}

fn find(bytes: &[u8], wanted: &[u8]) -> Option<usize> {
    let first = *wanted.first()?;
    let mut from = 0;
    loop {
        let at = bytes.get(from..)?.iter().position(|byte| *byte == first)?.saturating_add(from);
        if bytes.get(at..)?.starts_with(wanted) {
            return Some(at);
        }
        from = at.saturating_add(1);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::web::Method;

    fn sent(content_type: &str, body: &[u8]) -> Fields {
        let request = Request {
            method: Method::Post,
            content_type: content_type.to_owned(),
            body: body.to_vec(),
            ..Request::get("/")
        };
        Fields::of_body(&request)
    }

    #[test]
    fn plain_forms_are_read() {
        let fields = sent("application/x-www-form-urlencoded; charset=utf-8", b"a=1&b=%C3%A4+%26&a=2&c=&%ff=x");
        assert_eq!((fields.get("a"), fields.get("b"), fields.typed("c")), ("1", "ä &", None));
        assert_eq!(fields.all("a").collect::<Vec<_>>(), ["1", "2"]);
        assert!(fields.has("c") && !fields.has("d"));
        assert_eq!(sent("text/plain", b"a=1"), Fields::default());
    }

    /// The example of RFC 7578, § 4, in the form that browsers send.
    #[test]
    fn forms_with_files_are_read() {
        let body = b"--AaB03x\r\ncontent-disposition: form-data; name=\"field1\"\r\n\r\nJoe owes \xe2\x82\xac100.\r\n--AaB03x\r\n\
                     Content-Disposition: form-data; name=\"photo\"; filename=\"a%22b.jpg\"\r\nContent-Type: image/jpeg\r\n\r\n\
                     \x00\r\n--AaB0\r\n\r\n\xff\r\n--AaB03x--\r\n";
        let fields = sent("multipart/form-data; boundary=AaB03x", body);
        assert_eq!(fields.get("field1"), "Joe owes €100.");
        let file = fields.file("photo").unwrap();
        assert_eq!((file.name.as_str(), file.bytes.as_slice()), ("a\"b.jpg", &b"\x00\r\n--AaB0\r\n\r\n\xff"[..]));
        for cut in 0..body.len() {
            let _ = sent("multipart/form-data; boundary=AaB03x", &body[..cut]);
        }
        assert_eq!(sent("multipart/form-data", body), Fields::default());
        assert_eq!(sent("multipart/form-data; boundary=\"\"", body), Fields::default());
    }
}
