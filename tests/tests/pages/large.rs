//! The book of a workroom: two thousand fabrics.

use std::fmt::Write as _;

use serde_json::json;
use tenter_tests::bench_log;
use tenter_tests::browser::{self, TAB, View};

use crate::Desk;

#[test]
fn a_book_of_two_thousand_fabrics_opens_scrolls_and_is_searched() {
    let desk = Desk::empty();
    let pulls = 2000 * bench_log::PULLS_A_TEST * bench_log::TESTS.len();
    let mut lines = "{\"tenter\":\"log\",\"format\":1}\n".to_owned();
    let mut count = 0;
    for entry in bench_log::entries(pulls) {
        writeln!(lines, "{}", serde_json::to_string(&entry).unwrap()).unwrap();
        count += 1;
    }
    writeln!(lines, "{{\"end\":\"log\",\"entries\":{count}}}").unwrap();
    std::fs::write(desk.path("large.jsonl"), lines).unwrap();
    desk.run(&["import", "large.jsonl"]);
    let file = desk.report(&["book", "--view", bench_log::PATTERN, "A"]);
    // 12 kB a fabric with the answers for six roles: what a telephone can hold.
    let size = std::fs::metadata(&file).unwrap().len();
    assert!(size < 2000 * 12_000, "{size} bytes");
    let scrolled = "(async () => {
        const all = document.querySelectorAll('article');
        const last = all[all.length - 1];
        last.scrollIntoView();
        await new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)));
        const [box, picture] = [last, last.querySelector('svg')].map(node => node.getBoundingClientRect());
        return [all.length, box.top < innerHeight && box.bottom > 0, picture.width > 200];
    })()";
    let found = "[document.querySelector('output').value, [...document.querySelectorAll('article')].filter(node => node.checkVisibility()).length]";
    let views = [View::new(360, false).asked(scrolled), View::new(360, true).keyed(&[TAB, "1999"]).asked(found)];
    let visit = browser::visit(&file, &views).unwrap();
    assert_eq!(visit.views[0].result, json!([2000, true, true]));
    assert_eq!(visit.views[1].result, json!(["2 of 2000 cloths", 2]), "the tag of one and the name of another");
    assert_eq!(visit.errors, Vec::<String>::new());
}
