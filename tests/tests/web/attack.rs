//! Who is not let in, and what nobody can break.

use tenter_tests::browser::{WalkStep, walk};

use crate::server::{Server, field};

#[test]
fn foreign_names_and_foreign_forms_are_refused() {
    let server = Server::empty(&[]);
    let port = server.host.rsplit(':').next().unwrap().to_owned();
    let before = server.count();
    for host in
        ["evil.example", &format!("evil.example:{port}"), "127.0.0.1", &format!("127.0.0.1:{port}.evil.example"), ""]
    {
        let answer = server.ask("GET", "/", &format!("Host: {host}\r\n"), b"");
        assert!(answer.is_none_or(|answer| matches!(answer.status, 400 | 403)), "{host}");
    }
    let twice = format!("Host: {0}\r\nHost: evil.example\r\n", server.host);
    assert!(server.ask("GET", "/", &twice, b"").is_none_or(|answer| matches!(answer.status, 400 | 403)));
    let form = "Content-Type: application/x-www-form-urlencoded\r\n";
    for origin in ["Origin: null\r\n", "Origin: http://evil.example\r\n", "Origin: https://127.0.0.1\r\n", ""] {
        let heads = format!("Host: {}\r\n{origin}{form}", server.host);
        let answer = server.ask("POST", "/cloths/new", &heads, b"name=Stolen+rib").unwrap();
        assert_eq!(answer.status, 403, "{origin}");
    }
    let site = format!("Host: {0}\r\nOrigin: http://{0}\r\nSec-Fetch-Site: cross-site\r\n{form}", server.host);
    assert_eq!(server.ask("POST", "/cloths/new", &site, b"name=Stolen+rib").unwrap().status, 403);
    for method in ["PUT", "DELETE", "OPTIONS", "PATCH"] {
        let heads = format!("Host: {0}\r\nOrigin: http://{0}\r\n", server.host);
        assert_eq!(server.ask(method, "/cloths/new", &heads, b"").unwrap().status, 405, "{method}");
    }
    assert_eq!(server.count(), before, "nothing was stored");
}

#[test]
fn a_network_needs_the_token() {
    let server = Server::empty(&["--listen", "0.0.0.0"]);
    let port = server.host.rsplit(':').next().unwrap();
    let token = server.address.split("token=").nth(1).expect("a token").to_owned();
    let local = format!("127.0.0.1:{port}");
    let ask = |target: &str, cookie: &str| {
        let bytes = format!("GET {target} HTTP/1.1\r\nHost: {local}\r\nConnection: close\r\n{cookie}\r\n");
        let mut stream = std::net::TcpStream::connect(&local).unwrap();
        std::io::Write::write_all(&mut stream, bytes.as_bytes()).unwrap();
        let mut said = String::new();
        std::io::Read::read_to_string(&mut stream, &mut said).unwrap();
        said
    };
    assert!(ask("/", "").starts_with("HTTP/1.1 403"));
    assert!(ask("/?token=0", "").starts_with("HTTP/1.1 403"));
    assert!(ask("/log/tenter-log.jsonl", &format!("Cookie: tenter-{port}=wrong\r\n")).starts_with("HTTP/1.1 403"));
    let paired = ask(&format!("/?token={token}"), "");
    assert!(paired.starts_with("HTTP/1.1 303") && paired.contains("HttpOnly; SameSite=Strict"), "{paired}");
    assert!(ask("/", &format!("Cookie: tenter-{port}={token}\r\n")).starts_with("HTTP/1.1 200"));
}

#[test]
fn what_is_too_large_is_refused() {
    let server = Server::empty(&[]);
    let heads =
        format!("Host: {0}\r\nOrigin: http://{0}\r\nContent-Type: application/x-www-form-urlencoded\r\n", server.host);
    let large = vec![b'a'; 300 << 10];
    assert_eq!(server.ask("POST", "/cloths/new", &heads, &large).unwrap().status, 413);
    // Said to be small, and sent in pieces without end.
    let mut chunked =
        format!("POST /cloths/new HTTP/1.1\r\n{heads}Transfer-Encoding: chunked\r\nConnection: close\r\n\r\n")
            .into_bytes();
    for _ in 0..64 {
        chunked.extend(b"4000\r\n");
        chunked.extend(vec![b'a'; 0x4000]);
        chunked.extend(b"\r\n");
    }
    let said = server.raw(&chunked);
    assert!(said.is_empty() || said.starts_with(b"HTTP/1.1 413"), "{}", String::from_utf8_lossy(&said));
    // A head without end.
    let mut head = format!("GET / HTTP/1.1\r\nHost: {}\r\n", server.host).into_bytes();
    for number in 0..20_000 {
        head.extend(format!("X-{number}: y\r\n").as_bytes());
    }
    let said = server.raw(&head);
    assert!(!said.starts_with(b"HTTP/1.1 200"), "{}", String::from_utf8_lossy(&said));
    assert_eq!(server.get("/").status, 200, "it goes on");
}

/// A head and a body that never end are left, and others are served meanwhile.
#[test]
fn who_is_slow_is_left() {
    // Far longer than a busy machine lets a whole head wait between its bytes.
    let server = Server::empty(&["--patience", "2"]);
    let mut stream = std::net::TcpStream::connect(&server.host).unwrap();
    std::io::Write::write_all(&mut stream, b"GET / HTTP/1.1\r\nHost: ").unwrap();
    assert_eq!(server.get("/").status, 200);
    let mut said = Vec::new();
    // Ends when the server closes.
    std::io::Read::read_to_end(&mut stream, &mut said).unwrap();
    assert!(said.is_empty() || said.starts_with(b"HTTP/1.1 408"), "{}", String::from_utf8_lossy(&said));
    let mut stream = std::net::TcpStream::connect(&server.host).unwrap();
    let begun = format!(
        "POST /cloths/new HTTP/1.1\r\nHost: {0}\r\nOrigin: http://{0}\r\nContent-Length: 100\r\n\r\nname=",
        server.host
    );
    std::io::Write::write_all(&mut stream, begun.as_bytes()).unwrap();
    let mut said = Vec::new();
    std::io::Read::read_to_end(&mut stream, &mut said).unwrap();
    assert!(said.starts_with(b"HTTP/1.1 408"), "{}", String::from_utf8_lossy(&said));
}

#[test]
fn no_path_leads_out() {
    let server = Server::empty(&[]);
    let long = format!("/{}", "a/".repeat(5000));
    let paths = [
        "/../../etc/passwd",
        "/%2e%2e/%2e%2e/etc/passwd",
        "/log/../../../etc/passwd",
        "/log/..%2f..%2fetc%2fpasswd",
        "//etc/passwd",
        "/photos/../../etc/passwd",
        "/cloths/%00",
        "/cloths/%ff%fe",
        "/guide/%2e%2e",
        "/style.css/..",
        "/log/tenter-log.jsonl%00.csv",
        &long,
    ];
    for path in paths {
        let answer = server.ask("GET", path, &format!("Host: {}\r\n", server.host), b"");
        assert!(answer.is_none_or(|answer| matches!(answer.status, 400 | 404 | 414)), "{path}");
    }
    for garbage in [
        &b"\r\n\r\n"[..],
        b"GET\r\n\r\n",
        b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03",
        b"GET / HTTP/9.9\r\n\r\n",
        b"\0\0\0\0",
    ] {
        let mut stream = std::net::TcpStream::connect(&server.host).unwrap();
        std::io::Write::write_all(&mut stream, garbage).unwrap();
        stream.shutdown(std::net::Shutdown::Write).unwrap();
        let mut said = Vec::new();
        let _ = std::io::Read::read_to_end(&mut stream, &mut said);
        assert!(!said.starts_with(b"HTTP/1.1 200"));
    }
    assert_eq!(server.get("/").status, 200, "it goes on");
}

/// Texts that would run, break out of an attribute or a comment, turn the page round, or hide.
const HOSTILE: [&str; 6] = [
    "<script>alert('in')</script>",
    "\"><img src=x onerror=alert('in')>",
    "'\"--><svg onload=alert('in')>",
    "\u{202e}desrever\u{2066}",
    "{{ 7*7 }}${7*7}&lt;b&gt;",
    "javascript:alert('in')",
];

/// Hostile texts in every field of every form are shown as texts, by the server's bytes and by a real browser.
#[test]
fn hostile_texts_are_shown_as_texts() {
    let server = Server::empty(&[]);
    let mut pages = Vec::new();
    for text in HOSTILE {
        let once = field(&server.get("/cloths/new").text(), "cloth", "once");
        let fields: Vec<(&str, &str)> =
            ["name", "fibre", "colour", "place", "note", "seen"].iter().map(|name| (*name, text)).collect();
        let cloth =
            server.post("/cloths/new", &[&[("once", once.as_str()), ("construction", "knit")][..], &fields].concat());
        assert_eq!(cloth.status, 303, "{text}: {}", cloth.text());
        pages.push(cloth.head("location").to_owned());
        // Every field refuses or takes it; what is refused is shown again, as text.
        let every = [
            "name",
            "construction",
            "length",
            "width",
            "fibre",
            "colour",
            "seen",
            "price",
            "place",
            "mass",
            "finish",
            "drape",
            "purpose",
            "tag",
            "note",
            "once",
        ];
        let refused = server.post("/cloths/new", &every.map(|name| (name, text)));
        assert_eq!(refused.status, 422);
        assert_harmless(&refused.text(), text);
        let pattern = server.post(
            "/patterns/new",
            &[("pattern", text), ("view", text), ("role", text), ("note", text), ("crosswise", "5%")],
        );
        assert_eq!(pattern.status, 303, "{text}: {}", pattern.text());
        let to = pattern.head("location").to_owned();
        let list = server.get("/patterns").text();
        let links = list
            .split("href=\"")
            .skip(1)
            .map(|rest| rest.split('"').next().unwrap().replace("&#38;", "&").replace("&amp;", "&"));
        pages.extend(links.filter(|link| link.starts_with(&to)));
        let begin = format!("{to}/begin");
        let garment = server.post(&begin, &[("name", text), ("whom", text), ("note", text)]);
        assert_eq!(garment.status, 303, "{text}: {}", garment.text());
        pages.push(garment.head("location").to_owned());
        pages.push(format!("{}/plan", garment.head("location")));
        let coded: String = text.bytes().map(|byte| format!("%{byte:02X}")).collect();
        for asked in [
            "/cloths?words=",
            "/cloths?for=",
            "/cloths?sort=",
            "/pair?one=",
            "/size?girth=",
            "/print/gauge?wants=",
            "/hang?width=",
            "/measure/form?from=",
        ] {
            let answer = server.get(&format!("{asked}{coded}"));
            assert!(answer.status < 500, "{asked}{text}");
            assert_harmless(&answer.text(), text);
        }
    }
    pages.extend(
        ["/", "/cloths", "/patterns", "/garments", "/measure", "/print/book", "/print/cards"].map(str::to_owned),
    );
    for page in &pages {
        let answer = server.get(page);
        assert_eq!(answer.status, 200, "{page}");
        HOSTILE.iter().for_each(|text| assert_harmless(&answer.text(), text));
        assert!(answer.head("content-security-policy").starts_with("default-src 'none'"), "{page}");
    }
    let steps: Vec<WalkStep> = pages
        .iter()
        .map(|page| WalkStep {
            go: Some(page.clone()),
            ask: Some("document.querySelectorAll('main img[src=x], main svg[onload], main script').length".into()),
            ..WalkStep::default()
        })
        .collect();
    let walk = walk(&server.base(), (360, 740), true, &steps).unwrap();
    assert_eq!(walk.dialogs, Vec::<String>::new());
    for (seen, page) in walk.seen.iter().zip(&pages) {
        // The book's own script stands in its page.
        assert!(seen.result == 0 || page.starts_with("/print/book"), "{page}: {}", seen.result);
    }
    let elsewhere =
        walk.requests.iter().filter(|address| !address.starts_with(&server.base()) && !address.starts_with("data:"));
    assert_eq!(elsewhere.collect::<Vec<_>>(), Vec::<&String>::new());
}

fn assert_harmless(page: &str, text: &str) {
    if text.contains('<') {
        assert!(!page.contains(text), "{text} stands in the page as it is");
    }
    assert!(!page.contains("onerror=alert") || !page.contains("<img src=x"), "{text}");
}
