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
        writeln!(lines, "{}", entry.line().unwrap()).unwrap();
        count += 1;
    }
    writeln!(lines, "{{\"end\":\"log\",\"entries\":{count}}}").unwrap();
    std::fs::write(desk.path("large.jsonl"), lines).unwrap();
    desk.run(&["import", "large.jsonl"]);
    let file = desk.report(&["book", "--view", bench_log::PATTERN, "A"]);
    // 12 kB a fabric with the answers for six roles: what a telephone can hold.
    let size = std::fs::metadata(&file).unwrap().len();
    assert!(size < 2000 * 12_000, "{size} bytes");
    let all = "const frame = () => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)));
        const all = [...document.querySelectorAll('article')];
        const last = all[all.length - 1];
        const seen = () => all.filter(node => node.checkVisibility()).length;
        const inView = () => { const box = last.getBoundingClientRect(); return box.top < innerHeight && box.bottom > 0; };";
    // At first only some are there; scrolling on brings the others.
    let scrolled = "const first = seen();
        for (let turn = 0; turn < 100 && !last.checkVisibility(); turn += 1) {
            scrollTo(0, document.body.scrollHeight);
            await frame();
        }
        last.scrollIntoView();
        await frame();
        return [first < 200, seen(), inView(), last.querySelector('svg').getBoundingClientRect().width > 200];";
    let linked = "location.hash = last.id; await frame(); await frame(); return [last.checkVisibility(), inView()];";
    let found = "return [document.querySelector('output').value, seen(), document.activeElement.name];";
    let asked = |script: &str| format!("(async () => {{ {all} {script} }})()");
    let views = [
        View::new(360, false).asked(&asked(scrolled)),
        View::new(360, false).asked(&asked(linked)),
        View::new(360, true).keyed(&[TAB, "1999"]).asked(&asked(found)),
    ];
    let visit = browser::visit(&file, &views).unwrap();
    assert_eq!(visit.views[0].result, json!([true, 2000, true, true]));
    assert_eq!(visit.views[1].result, json!([true, true]), "a link to a fabric that is not shown yet");
    assert_eq!(
        visit.views[2].result,
        json!(["2 of 2000 cloths", 2, "words"]),
        "the tag of one and the name of another"
    );
    assert_eq!(visit.errors, Vec::<String>::new());
}
