//! What a page of the program wears on a phone: the app's folder before its addresses, what makes it an app, and how
//! much was not handed over yet.

use tenter::web::Response;

/// The address of what hands over.
pub const HAND_OVER: &str = "/hand-over";

/// How much was not handed over yet; nothing where all was.
#[must_use]
pub fn waiting(tests: u64, others: u64) -> Option<String> {
    let counted = |count: u64, one: &str, many: &str| match count {
        1 => format!("1 {one}"),
        _ => format!("{count} {many}"),
    };
    match (tests, others) {
        (0, 0) => None,
        (0, others) => Some(format!("{} not handed over yet", counted(others, "change", "changes"))),
        (tests, _) => Some(format!("{} not handed over yet", counted(tests, "test", "tests"))),
    }
}

/// Dresses an answer.
pub fn dress(response: &mut Response, base: &str, tests: u64, others: u64) {
    for (name, value) in &mut response.headers {
        match *name {
            "location" if value.starts_with('/') && !value.starts_with("//") => value.insert_str(0, base),
            "content-security-policy" => value.push_str("; manifest-src 'self'"),
            _ => {}
        }
    }
    if response.header("content-type").is_none_or(|kind| !kind.starts_with("text/html")) {
        return;
    }
    let Ok(page) = core::str::from_utf8(&response.body) else { return };
    // A book or a plan that is handed on as a file is no page of the app.
    let Some((head, rest)) = page.split_once("</head>").filter(|_| response.header("content-disposition").is_none())
    else {
        return;
    };
    let app = r#"<link rel="manifest" href="/app/manifest.webmanifest">
<link rel="icon" href="/app/icon.svg" type="image/svg+xml">
<link rel="apple-touch-icon" href="/app/icon-192.png">
<script src="/app/page.js" defer></script>
"#;
    let sign = waiting(tests, others).map_or_else(String::new, |words| {
        format!("\n<p class=\"waiting links\" role=\"status\"><a href=\"{HAND_OVER}\">{words}</a></p>")
    });
    let main = rest.find("<main").and_then(|at| rest.get(at..)?.find('>').map(|end| at + end + 1)).unwrap_or_default();
    let (before, rest) = rest.split_at(main);
    response.body = below(base, &format!("{head}{app}</head>{before}{sign}{rest}")).into_bytes();
}

/// Puts the app's folder before every address that begins at the root. In a page of ours every quotation mark of a text
/// is escaped, so that what looks like such an address is one.
fn below(base: &str, page: &str) -> String {
    if base.is_empty() {
        return page.to_owned();
    }
    let mut dressed = String::with_capacity(page.len() + page.len() / 16);
    let mut rest = page;
    while let Some(at) = rest.find("=\"/") {
        let (before, after) = rest.split_at(at);
        let is_address = ["href", "src", "action"].iter().any(|name| before.ends_with(name));
        let (open, after) = after.split_at(2);
        dressed.push_str(before);
        dressed.push_str(open);
        if is_address && !after.starts_with("//") {
            dressed.push_str(base);
        }
        rest = after;
    }
    dressed.push_str(rest);
    dressed
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_waits_is_counted_in_words() {
        assert_eq!(waiting(0, 0), None);
        assert_eq!(waiting(1, 5).unwrap(), "1 test not handed over yet");
        assert_eq!(waiting(7, 5).unwrap(), "7 tests not handed over yet");
        assert_eq!(waiting(0, 1).unwrap(), "1 change not handed over yet");
    }

    #[test]
    fn addresses_lie_below_the_folder_and_nothing_else_is_changed() {
        let page = r#"<a href="/x?y=1"> href=&quot;/no&quot; <form action="/"><img src="/p"><a href="https://e/">=/ data-x="/z""#;
        let dressed = r#"<a href="/t/x?y=1"> href=&quot;/no&quot; <form action="/t/"><img src="/t/p"><a href="https://e/">=/ data-x="/z""#;
        assert_eq!(below("/t", page), dressed);
        assert_eq!(below("", page), page);
    }

    #[test]
    fn every_page_tells_what_waits_and_a_file_does_not() {
        let html = "<html><head></head><body><main>x</main></body></html>".to_owned();
        let mut page = Response::page(200, html.clone());
        dress(&mut page, "", 7, 0);
        let text = String::from_utf8(page.body).unwrap();
        assert!(text.contains("7 tests not handed over yet</a></p>x</main>"), "{text}");
        let mut file = Response::kept("text/html; charset=utf-8", "book.html", html.clone());
        dress(&mut file, "/t", 7, 0);
        assert_eq!(file.body, html.into_bytes());
        let mut on = Response::see("/cloths");
        dress(&mut on, "/t", 0, 0);
        assert_eq!(on.header("location"), Some("/t/cloths"));
    }
}
