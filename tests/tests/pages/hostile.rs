//! What somebody typed stays text: in every page, for every field.

use serde_json::json;
use tenter_tests::browser::{self, View};

use crate::Desk;

const SCRIPT: &str = "<script>document.title='taken'</script>";
const IMAGE: &str = "\"'><img src=x onerror=\"document.title='taken'\">";
const CLOSING: &str = "</title></style></svg></script><b id=taken>&lt;&amp;";

/// A photograph that stands in the page.
const PHOTOGRAPH: &str = "data:image/jpeg;base64,";
/// How a page stands: its scripts, what must not be, whether the title was changed.
const STANDING: &str = "[document.scripts.length, document.querySelectorAll('img:not([src^=\"data:image/jpeg;base64,\"]), #taken, b[id]').length, document.title === 'taken']";

fn desk() -> Desk {
    let desk = Desk::evening();
    let place = "<iframe src=https://example.org>";
    desk.run(&["cloth", "add", SCRIPT, "--fibre", IMAGE, "--place", place, "--note", CLOSING, "--length", "2m"]);
    desk.run(&["cloth", "add", "a bolt", "--seen", IMAGE, "--price", "3/m"]);
    desk.run(&["cloth", "cut", "33", "10cm", "--note", SCRIPT]);
    let pull = ["pull", "33", "--marks", "25cm", "--to", "27cm", "--back", "25.2cm@60s", "--note", IMAGE];
    desk.run(&pull);
    desk.run(&["pattern", "add", SCRIPT, IMAGE, CLOSING, "--crosswise", "5%", "--cloth", "1m at 140cm"]);
    desk.run(&["pattern", "add", SCRIPT, IMAGE, SCRIPT, "--crosswise", "5%"]);
    desk
}

#[test]
fn what_was_typed_stays_text_on_every_page() {
    let desk = desk();
    let pages: [(&[&str], u64); 6] = [
        (&["book"], 2),
        (&["book", "--view", SCRIPT, IMAGE], 2),
        (&["cards"], 0),
        // A word with `=` chooses a cloth, so pattern and view are named by their beginnings.
        (&["sheet", "<script>document", "\"'><img src", "--why"], 0),
        (&["gauge", "--wants", "5%", "--name", SCRIPT], 0),
        (&["gauge", "--view", SCRIPT, IMAGE], 0),
    ];
    for (words, scripts) in pages {
        let file = desk.report(words);
        let visit = browser::visit(&file, &[View::new(1280, false).asked(STANDING)]).unwrap();
        assert_eq!(visit.views[0].result, json!([scripts, 0, false]), "{words:?}");
        assert_eq!(visit.errors, Vec::<String>::new(), "{words:?}");
        let own = |address: &String| address.ends_with("/made.html") || address.starts_with(PHOTOGRAPH);
        assert!(visit.requests.iter().all(own), "{:?}", visit.requests);
    }
}

/// Escaped is not lost: the reader sees what was typed.
#[test]
fn what_was_typed_is_read_as_it_was() {
    let asked = "(() => {
        const all = document.querySelectorAll('article')[15];
        return [all.querySelector('h2').textContent, ...[...all.querySelectorAll('header p bdi')].map(node => node.textContent)]; })()";
    let desk = desk();
    let file = desk.report(&["book"]);
    let visit = browser::visit(&file, &[View::new(1280, false).asked(asked)]).unwrap();
    assert_eq!(visit.views[0].result, json!([SCRIPT, "<iframe src=https://example.org>", CLOSING]));
}

#[test]
fn a_picture_of_it_is_sound_xml() {
    let desk = desk();
    for words in [&["picture", "stretch", "33"][..], &["picture", "card", "33"], &["picture", "growth", "33"]] {
        let text = std::fs::read_to_string(desk.report(words)).unwrap();
        let document = roxmltree::Document::parse(&text).unwrap();
        assert!(document.descendants().all(|node| !node.has_tag_name("script")), "{words:?}");
        let told: String = document.descendants().filter_map(|node| node.text()).collect();
        assert!(told.contains(SCRIPT), "{words:?}: {told}");
    }
}
