//! Requests that a browser would never send, drawn from a seed: the server answers or hangs up, and never breaks.

use std::io::{Read as _, Write as _};
use std::net::{Shutdown, TcpStream};

use tenter_tests::thorough;

use crate::server::Server;

/// Numbers after G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8 (2003), 14; the same in every run.
struct Drawn(u64);

impl Drawn {
    fn below(&mut self, most: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 % u64::try_from(most).unwrap()).unwrap()
    }

    fn one<'o>(&mut self, of: &[&'o str]) -> &'o str {
        of[self.below(of.len())]
    }
}

const METHODS: [&str; 6] = ["GET", "POST", "POST", "HEAD", "PUT", "\u{0}"];
const PARTS: [&str; 24] = [
    "cloths",
    "new",
    "measure",
    "form",
    "patterns",
    "garments",
    "log",
    "exchange",
    "people",
    "compare",
    "photos",
    "print",
    "book",
    "gauge",
    "guide",
    "size",
    "inbox",
    "units",
    "plan",
    "fit",
    "..",
    "%00",
    "01KJM7S4000000000000000001",
    "%E2%80%AE",
];
const FIELDS: [&str; 16] = [
    "name=x",
    "once=01KJM7S4000000000000000001",
    "once=zzzz",
    "length=1e999m",
    "marks=25cm",
    "pulls=26.9+27",
    "for=%ff",
    "from=-1",
    "from=99999999999999999999",
    "wants=5%25",
    "girth=",
    "step=4294967296",
    "=&=&",
    "view=%F0%9F%91%97",
    "unit=inch",
    "a=b&a=c",
];
const HEADS: [&str; 8] = [
    "Content-Type: application/x-www-form-urlencoded",
    "Content-Type: multipart/form-data; boundary=",
    "Content-Length: 5",
    "Content-Length: -1",
    "Transfer-Encoding: chunked",
    "Expect: 100-continue",
    "Range: bytes=0-",
    "Cookie: \u{ff}=;;",
];

const PAGES: [&str; 12] = [
    "/",
    "/cloths",
    "/cloths/new",
    "/patterns",
    "/patterns/new",
    "/garments",
    "/measure",
    "/people",
    "/size",
    "/units",
    "/tags",
    "/exchange",
];

/// A request made of pieces, and in every second one some bytes that are others, more or fewer; whether it is sound as far
/// as its heads go, so that it comes to a page.
fn request(drawn: &mut Drawn, host: &str) -> (Vec<u8>, bool) {
    let path: Vec<&str> = (0..drawn.below(5)).map(|_| drawn.one(&PARTS)).collect();
    let path = if drawn.below(2) == 0 { format!("/{}", path.join("/")) } else { drawn.one(&PAGES).to_owned() };
    let fields: Vec<&str> = (0..drawn.below(6)).map(|_| drawn.one(&FIELDS)).collect();
    let (method, fields) = (drawn.one(&METHODS), fields.join("&"));
    let mut heads: Vec<String> = (0..drawn.below(2) * drawn.below(3)).map(|_| drawn.one(&HEADS).to_owned()).collect();
    let mut sound = heads.is_empty() && method != "\u{0}";
    heads.push(format!("Host: {host}"));
    heads.push(format!("Origin: http://{host}"));
    heads.push(format!("Content-Length: {}", fields.len()));
    heads.push("Content-Type: application/x-www-form-urlencoded".to_owned());
    heads.push("Connection: close".to_owned());
    let mut bytes = format!("{method} {path}?{fields} HTTP/1.1\r\n{}\r\n\r\n{fields}", heads.join("\r\n")).into_bytes();
    for _ in 0..drawn.below(2) * drawn.below(6) {
        sound = false;
        let at = drawn.below(bytes.len());
        match drawn.below(3) {
            0 => bytes[at] = u8::try_from(drawn.below(256)).unwrap(),
            1 => drop(bytes.remove(at)),
            _ => bytes.insert(at, u8::try_from(drawn.below(256)).unwrap()),
        }
    }
    (bytes, sound)
}

#[test]
fn no_request_breaks_the_server_or_stores_what_it_should_not() {
    let server = Server::evening();
    let (before, mut drawn) = (server.count(), Drawn(0x7465_6e74_6572));
    let (mut statuses, mut unanswered) = (std::collections::BTreeMap::<u16, usize>::new(), 0);
    let rounds = thorough(300, 60_000);
    for round in 0..rounds {
        let (bytes, sound) = request(&mut drawn, &server.host);
        let mut stream = TcpStream::connect(&server.host).unwrap();
        // It may hang up before it heard all.
        let _ = stream.write_all(&bytes);
        if !sound {
            // It would wait for the rest.
            let _ = stream.shutdown(Shutdown::Write);
        }
        let mut said = Vec::new();
        let _ = stream.read_to_end(&mut said);
        let status =
            said.strip_prefix(b"HTTP/1.1 ").and_then(|said| std::str::from_utf8(&said[..3]).ok()?.parse().ok());
        match status {
            Some(status) => *statuses.entry(status).or_default() += 1,
            None => unanswered += 1,
        }
        assert!(!sound || status.is_some(), "{round}: no answer");
        let shown = String::from_utf8_lossy(&bytes);
        assert!(status.is_none_or(|status| status < 500), "{round}: {shown:?}: {}", String::from_utf8_lossy(&said));
    }
    println!("{rounds} requests: {statuses:?}, {unanswered} without an answer");
    let led_on = statuses.get(&303).copied().unwrap_or_default();
    assert!(server.count() - before <= led_on * 2, "more was stored than was answered");
    assert_eq!(server.get("/").status, 200, "it goes on");
    assert!(statuses.contains_key(&200) && statuses.contains_key(&404), "no request came to a page: {statuses:?}");
}
