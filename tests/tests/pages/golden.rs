//! The pages and pictures of the log of the evening, byte for byte as they were looked at.
//!
//! A changed one is looked at and accepted by `TENTER_ACCEPT=1 cargo test -p tenter-tests --test pages golden`.

use std::fs;
use std::path::{Path, PathBuf};

use jiff::Timestamp;

use crate::Desk;

fn golden(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("golden/pages").join(name)
}

const MADE: [(&str, &[&str]); 9] = [
    ("book.html", &["book"]),
    ("book-view.html", &["book", "--view", "Choir trousers", "A", "--units", "in", "--table", "richardson-2008"]),
    ("cards.html", &["cards", "1", "9", "11"]),
    ("sheet.html", &["sheet", "choir", "a", "--zip", "65cm", "--elastic", "soft waist 76cm", "--why"]),
    ("gauge.html", &["gauge", "--wants", "4in to 5 3/8in", "--name", "play coat, cuff"]),
    ("stretch.svg", &["picture", "stretch", "4", "--view", "Choir trousers", "A", "--role", "waistband"]),
    ("growth.svg", &["picture", "growth", "9"]),
    ("map.svg", &["picture", "map", "--view", "Play coat", "-", "--role", "lining"]),
    ("card.svg", &["picture", "card", "1"]),
];

#[test]
fn pages_are_as_looked_at() {
    let desk = Desk::evening();
    let accept = std::env::var_os("TENTER_ACCEPT").is_some();
    let mut changed = Vec::new();
    for (name, words) in MADE {
        // The day a page is made stands on it.
        let today = Timestamp::now().to_zoned_datetime(jiff::tz::TimeZone::UTC).date().to_string();
        let seen = fs::read_to_string(desk.report(words)).unwrap().replace(&today, "TODAY");
        if accept {
            fs::create_dir_all(golden("")).unwrap();
            fs::write(golden(name), &seen).unwrap();
        }
        if fs::read_to_string(golden(name)).unwrap_or_default() != seen {
            changed.push(name);
        }
    }
    assert!(changed.is_empty(), "these changed; look at them: {changed:?}");
    assert_eq!(fs::read_dir(golden("")).unwrap().count(), MADE.len(), "a golden page that is made no more");
}

#[test]
fn the_same_log_gives_the_same_bytes() {
    let (one, other) = (Desk::evening(), Desk::evening());
    for (_, words) in MADE {
        assert!(fs::read(one.report(words)).unwrap() == fs::read(other.report(words)).unwrap(), "{words:?}");
    }
}
