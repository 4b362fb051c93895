//! Who is let in: pure checks of the head of a request, before anything of it is done.
//!
//! A page elsewhere can make a browser send requests here. It can neither choose the head `Host` of its victim's browser
//! (so a name that leads here, but is not ours, is refused: DNS rebinding) nor hide where a form comes from (`Origin`).

use std::fmt;
use std::net::{IpAddr, SocketAddr};

/// The secret of one run of the server, which a phone brings along.
#[derive(Clone, PartialEq, Eq)]
pub struct Token(String);

impl Token {
    /// A token of 120 random bits, as 24 letters and digits that nobody confuses.
    #[must_use]
    pub fn new(random: u128) -> Self {
        const LETTERS: &[u8; 32] = b"0123456789abcdefghjkmnpqrstvwxyz";
        let letter = |place: u32| {
            let five = usize::try_from((random >> (5 * place)) & 31).unwrap_or_default();
            LETTERS.get(five).map_or('0', |letter| char::from(*letter))
        };
        Self((0..24).map(letter).collect())
    }

    /// The token as a text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.0
    }

    /// Whether a text is the token; how long that takes tells nothing of where it differs.
    #[must_use]
    pub fn is(&self, text: &str) -> bool {
        let differ = self.0.bytes().zip(text.bytes()).fold(0, |differ, (one, other)| differ | (one ^ other));
        differ == 0 && self.0.len() == text.len()
    }
}

impl fmt::Debug for Token {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Token")
    }
}

/// What is let in.
#[derive(Clone, Debug)]
pub struct Guard {
    /// Where the server listens.
    pub listens: SocketAddr,
    /// The token that everybody must bring; none where only this machine can come.
    pub token: Option<Token>,
}

/// What the guard looks at.
#[derive(Clone, Copy, Debug, Default)]
pub struct Head<'h> {
    /// Whether something is sent, and not only asked for.
    pub sends: bool,
    /// The head `Host`.
    pub host: Option<&'h str>,
    /// The head `Origin`.
    pub origin: Option<&'h str>,
    /// The head `Sec-Fetch-Site`, of browsers that know it.
    pub fetch_site: Option<&'h str>,
    /// The head `Cookie`.
    pub cookie: Option<&'h str>,
    /// What stands behind the question mark.
    pub query: &'h str,
}

/// What becomes of a request.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Admission {
    /// It is let in.
    Admitted,
    /// It brought the token in its address: it is asked again, with the token kept.
    Paired,
    /// It comes under a name that is not ours.
    ForeignHost,
    /// A page elsewhere sent it.
    ForeignOrigin,
    /// It brought no token.
    NotPaired,
}

impl Guard {
    /// The name of the cookie that keeps the token: one a port, since cookies know none.
    #[must_use]
    pub fn cookie(&self) -> String {
        format!("tenter-{}", self.listens.port())
    }

    /// Looks at a request.
    #[must_use]
    pub fn admits(&self, head: &Head<'_>) -> Admission {
        let Some(host) = head.host.filter(|host| self.is_ours(host)) else { return Admission::ForeignHost };
        let own = |origin: &str| origin.strip_prefix("http://").is_some_and(|from| from.eq_ignore_ascii_case(host));
        // Browsers tell where a form comes from; what tells nothing is no browser of ours.
        let from_here = !head.sends || head.origin.is_some_and(own);
        let site = head.fetch_site.is_none_or(|site| !head.sends || matches!(site, "same-origin" | "none"));
        if !from_here || !site || head.origin.is_some_and(|origin| !own(origin)) {
            return Admission::ForeignOrigin;
        }
        let Some(token) = &self.token else { return Admission::Admitted };
        let name = self.cookie();
        let cookies = head.cookie.into_iter().flat_map(|cookies| cookies.split(';'));
        let mut kept = cookies.filter_map(|cookie| cookie.trim().split_once('='));
        if kept.any(|(key, value)| key == name && token.is(value)) {
            return Admission::Admitted;
        }
        let brought = head.query.split('&').filter_map(|pair| pair.strip_prefix("token="));
        let mut brought = brought.filter(|_| !head.sends);
        if brought.any(|value| token.is(value)) { Admission::Paired } else { Admission::NotPaired }
    }

    /// Whether this is a name under which the server may be called: its address and port; where it listens for everybody,
    /// any address, but no name that others can give.
    fn is_ours(&self, host: &str) -> bool {
        let (name, port) = match host.rsplit_once(':') {
            Some((name, port)) if !name.ends_with(':') && !port.ends_with(']') => (name, port.parse().ok()),
            _ => (host, Some(80)),
        };
        if port != Some(self.listens.port()) {
            return false;
        }
        let listens = self.listens.ip();
        if name.eq_ignore_ascii_case("localhost") {
            return listens.is_loopback() || listens.is_unspecified();
        }
        let bare = name.strip_prefix('[').and_then(|name| name.strip_suffix(']')).unwrap_or(name);
        match bare.parse::<IpAddr>() {
            Ok(address) => address == listens || listens.is_unspecified(),
            Err(_) => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn guard(listens: &str, token: bool) -> Guard {
        Guard { listens: listens.parse().unwrap(), token: token.then(|| Token::new(1 << 100 | 77)) }
    }

    fn get(host: &str) -> Head<'_> {
        Head { host: Some(host), ..Head::default() }
    }

    fn post<'h>(host: &'h str, origin: &'h str) -> Head<'h> {
        Head { sends: true, origin: Some(origin), ..get(host) }
    }

    #[test]
    fn only_our_own_names_are_answered() {
        let guard = guard("127.0.0.1:7400", false);
        for host in ["127.0.0.1:7400", "localhost:7400", "LOCALHOST:7400"] {
            assert_eq!(guard.admits(&get(host)), Admission::Admitted, "{host}");
        }
        for host in [
            "",
            "evil.example:7400",
            "127.0.0.1",
            "127.0.0.1:7401",
            "127.0.0.1:7400.evil.example",
            "[::1]:7400",
            "localhost.evil.example:7400",
            "127.0.0.2:7400",
            "x@127.0.0.1:7400",
        ] {
            assert_eq!(guard.admits(&get(host)), Admission::ForeignHost, "{host}");
        }
        assert_eq!(guard.admits(&Head::default()), Admission::ForeignHost);
        assert_eq!(super::tests::guard("[::1]:80", false).admits(&get("[::1]")), Admission::Admitted);
    }

    #[test]
    fn only_our_own_forms_are_taken() {
        let guard = guard("127.0.0.1:7400", false);
        let host = "127.0.0.1:7400";
        assert_eq!(guard.admits(&post(host, "http://127.0.0.1:7400")), Admission::Admitted);
        for origin in [
            "null",
            "http://evil.example",
            "https://127.0.0.1:7400",
            "http://127.0.0.1:7401",
            "http://localhost:7400",
            "",
        ] {
            assert_eq!(guard.admits(&post(host, origin)), Admission::ForeignOrigin, "{origin}");
        }
        assert_eq!(guard.admits(&Head { origin: None, ..post(host, "") }), Admission::ForeignOrigin);
        let site = Head { fetch_site: Some("cross-site"), ..post(host, "http://127.0.0.1:7400") };
        assert_eq!(guard.admits(&site), Admission::ForeignOrigin);
        // Fetched by a page elsewhere; but a link from elsewhere is followed.
        assert_eq!(guard.admits(&Head { origin: Some("http://evil.example"), ..get(host) }), Admission::ForeignOrigin);
        assert_eq!(guard.admits(&Head { fetch_site: Some("cross-site"), ..get(host) }), Admission::Admitted);
    }

    #[test]
    fn a_network_is_let_in_with_the_token_alone() {
        let guard = guard("0.0.0.0:7400", true);
        let token = guard.token.clone().unwrap();
        let host = "192.168.1.20:7400";
        assert_eq!(token.text().len(), 24);
        assert_eq!(guard.admits(&get(host)), Admission::NotPaired);
        assert_eq!(guard.admits(&get("desk.home:7400")), Admission::ForeignHost, "a name may lead anywhere tomorrow");
        let brought = format!("a=b&token={}", token.text());
        assert_eq!(guard.admits(&Head { query: &brought, ..get(host) }), Admission::Paired);
        assert_eq!(guard.admits(&Head { query: "token=", ..get(host) }), Admission::NotPaired);
        let cookie = format!("x=y; tenter-7400={}", token.text());
        assert_eq!(guard.admits(&Head { cookie: Some(&cookie), ..get(host) }), Admission::Admitted);
        let longer = format!("{cookie}0");
        for wrong in [longer.as_str(), "tenter-7400=", "tenter-7400", "tenter-7401=x"] {
            assert_eq!(guard.admits(&Head { cookie: Some(wrong), ..get(host) }), Admission::NotPaired, "{wrong}");
        }
        let sent = Head { query: &brought, ..post(host, "http://192.168.1.20:7400") };
        assert_eq!(guard.admits(&sent), Admission::NotPaired, "a form must have been seen first");
    }
}
