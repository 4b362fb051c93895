//! What the pages of the log of the evening say, as it was looked at: the findings behind them as JSON, and one part of
//! each page as HTML, its pictures named and not drawn (those have goldens of their own), its style left out (that is the
//! templates' own file).
//!
//! A changed one is looked at, as a page too, and accepted by
//! `TENTER_ACCEPT=1 cargo test -p tenter-tests --test pages golden`.

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

use jiff::Timestamp;
use serde_json::Value;

use crate::Desk;

fn golden(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("golden/pages").join(name)
}

/// The findings behind the pages.
const FOUND: [(&str, &[&str]); 3] = [
    ("cloth.json", &["cloth", "show", "9", "--json"]),
    ("fit.json", &["fit", "Choir trousers", "A", "--json"]),
    (
        "plan.json",
        &["fit", "choir", "a", "--sheet", "--zip", "65cm", "--elastic", "soft waist 76cm", "--why", "--json"],
    ),
];

/// Parts of pages, each from the first of its marks up to the second.
const SHOWN: [(&str, &[&str], [&str; 2]); 6] = [
    ("book.html", &["book"], ["<body>", "<h2 id=\"how\">"]),
    ("book-cloth.html", &["book"], ["<h2><bdi>Doorway rib", "</article>"]),
    (
        "book-view.html",
        &["book", "--view", "Choir trousers", "A", "--units", "in", "--table", "richardson-2008"],
        ["<section class=\"patch aside role\"", "</section>"],
    ),
    (
        "book-view-cloth.html",
        &["book", "--view", "Choir trousers", "A", "--units", "in", "--table", "richardson-2008"],
        ["<h2><bdi>Practice sateen", "</article>"],
    ),
    (
        "sheet.html",
        &["sheet", "choir", "a", "--zip", "65cm", "--elastic", "soft waist 76cm", "--why"],
        ["<body>", "</body>"],
    ),
    ("cards.html", &["cards", "1", "9", "11"], ["<main>", "</main>"]),
];

/// The part of a page between two marks, a tag a line; pictures by their titles, scripts left out.
fn part(page: &str, [from, to]: [&str; 2]) -> String {
    let page = page.split_once(from).unwrap_or_else(|| panic!("no {from}")).1;
    let page = page.split_once(to).unwrap_or_else(|| panic!("no {to}")).0;
    let mut told = String::new();
    let mut rest = page;
    while let Some((before, later)) = rest.split_once("<svg") {
        let title = later.split_once("<title>").unwrap().1.split_once("</title>").unwrap().0;
        writeln!(told, "{before}[picture: {title}]").unwrap();
        // A sheet of cards holds pictures within its picture.
        let mut open = 1;
        rest = later;
        while open > 0 {
            let (inside, after) = rest.split_once("</svg>").unwrap();
            open = open + inside.matches("<svg").count() - 1;
            rest = after;
        }
    }
    told.push_str(rest);
    let told = told.replace("</li>", "</li>\n").replace("</tr>", "</tr>\n").replace("</div>", "</div>\n");
    told.lines().map(str::trim).filter(|line| !line.is_empty()).flat_map(|line| [line, "\n"]).collect()
}

/// Every golden by its name, as it is now.
fn seen() -> Vec<(&'static str, String)> {
    let desk = Desk::evening();
    // The day a page is made stands on it.
    let today = Timestamp::now().to_zoned_datetime(jiff::tz::TimeZone::UTC).date().to_string();
    let found = FOUND.map(|(name, words)| {
        let json: Value = serde_json::from_str(&desk.told(words)).unwrap();
        (name, serde_json::to_string_pretty(&json).unwrap() + "\n")
    });
    let shown = SHOWN.map(|(name, words, marks)| {
        let page = fs::read_to_string(desk.report(words)).unwrap().replace(&today, "TODAY");
        (name, part(&page, marks))
    });
    found.into_iter().chain(shown).collect()
}

/// The lines that are in one text only, with those around them: `-` was, `+` is.
fn difference(was: &str, is: &str) -> String {
    similar::TextDiff::from_lines(was, is).unified_diff().context_radius(2).to_string()
}

#[test]
fn pages_say_what_was_looked_at() {
    let seen = seen();
    let mut changed = String::new();
    for (name, is) in &seen {
        if std::env::var_os("TENTER_ACCEPT").is_some() {
            fs::create_dir_all(golden("")).unwrap();
            fs::write(golden(name), is).unwrap();
        }
        let was = fs::read_to_string(golden(name)).unwrap_or_default();
        if was != *is {
            write!(changed, "\n{name}:\n{}", difference(&was, is)).unwrap();
        }
    }
    assert!(changed.is_empty(), "these changed; look at them:{changed}");
    assert_eq!(fs::read_dir(golden("")).unwrap().count(), seen.len(), "a golden part that is made no more");
}

#[test]
fn the_same_log_gives_the_same_bytes() {
    let (one, other) = (Desk::evening(), Desk::evening());
    for (_, words, _) in SHOWN {
        assert!(fs::read(one.report(words)).unwrap() == fs::read(other.report(words)).unwrap(), "{words:?}");
    }
}

/// What is changed is told by line, and what is not is left out.
#[test]
fn a_difference_can_be_read() {
    let was: String = (1..=9).map(|line| format!("line {line}\n")).collect();
    let told = difference(&was, &was.replace("line 5", "line five"));
    assert!(told.contains("-line 5\n+line five\n") && !told.contains("line 1\n") && !told.contains("line 9"), "{told}");
}
