//! What a page answers.

/// Nothing is fetched from elsewhere, no script or style stands in a page, forms come back here, and no other page frames
/// this one.
const POLICY: &str = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' data: blob:; \
                      connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// An answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Response {
    /// The status after RFC 9110.
    pub status: u16,
    /// The heads, each once.
    pub headers: Vec<(&'static str, String)>,
    /// What is sent.
    pub body: Vec<u8>,
}

impl Response {
    fn new(status: u16, kind: &str, body: impl Into<Vec<u8>>) -> Self {
        let headers = [
            ("content-type", kind),
            ("content-security-policy", POLICY),
            ("x-content-type-options", "nosniff"),
            ("referrer-policy", "same-origin"),
            ("cross-origin-opener-policy", "same-origin"),
            ("cross-origin-resource-policy", "same-origin"),
            ("cache-control", "no-store"),
        ];
        Self { status, headers: headers.map(|(name, value)| (name, value.to_owned())).into(), body: body.into() }
    }

    /// A page of ours.
    #[must_use]
    pub fn page(status: u16, html: String) -> Self {
        Self::new(status, "text/html; charset=utf-8", html)
    }

    /// A line of plain text.
    #[must_use]
    pub fn plain(status: u16, words: &str) -> Self {
        Self::new(status, "text/plain; charset=utf-8", format!("{words}\n"))
    }

    /// A file that a page needs.
    #[must_use]
    pub fn file(kind: &str, body: impl Into<Vec<u8>>) -> Self {
        Self::new(200, kind, body)
    }

    /// A file to be kept under a name.
    #[must_use]
    pub fn kept(kind: &str, name: &str, body: impl Into<Vec<u8>>) -> Self {
        let mut response = Self::new(200, kind, body);
        response.headers.push(("content-disposition", format!("attachment; filename=\"{name}\"")));
        response
    }

    /// Where to go on after a form was taken.
    #[must_use]
    pub fn see(target: &str) -> Self {
        let mut response = Self::new(303, "text/plain; charset=utf-8", "");
        response.headers.push(("location", target.to_owned()));
        response
    }

    /// With a policy of its own.
    #[must_use]
    pub fn under(mut self, policy: String) -> Self {
        for (name, value) in &mut self.headers {
            if *name == "content-security-policy" {
                value.clone_from(&policy);
            }
        }
        self
    }

    /// Sets a head anew.
    pub fn set(&mut self, name: &'static str, value: &str) {
        self.headers.retain(|(found, _)| *found != name);
        self.headers.push((name, value.to_owned()));
    }

    /// The value of a head.
    #[must_use]
    pub fn header(&self, name: &str) -> Option<&str> {
        self.headers.iter().find(|(found, _)| *found == name).map(|(_, value)| value.as_str())
    }
}
