//! Every page at every width: nothing runs off the window, no word leaves its picture or covers another, everybody can
//! use it, and it asks nothing of the network.

use std::path::Path;

use serde_json::json;
use tenter_tests::browser::{self, OUTSIDE, OVERLAPPING, View, WIDTHS};

use crate::{Desk, kept};

/// What is wrong with what is seen. Pages to be printed at true size are as wide as their paper, whatever the window.
fn wrong(paper: bool) -> String {
    let wide = if paper { "false" } else { "document.documentElement.scrollWidth > innerWidth" };
    format!("({{wide: {wide}, outside: {OUTSIDE}, overlapping: {OVERLAPPING}}})")
}

fn assert_looks_right(name: &str, file: &Path, paper: bool) {
    let script = wrong(paper);
    let views: Vec<View> = WIDTHS
        .iter()
        .flat_map(|width| [false, true].map(|dark| View::new(*width, dark)))
        .map(|view| {
            let png = kept(&format!("{name}-{}-{}.png", view.width, if view.dark { "dark" } else { "light" }));
            View { axe: true, ..view.asked(&script).photographed(png) }
        })
        .collect();
    let visit = browser::visit(file, &views).unwrap();
    for (seen, view) in visit.views.iter().zip(&views) {
        assert_eq!(seen.result, json!({"wide": false, "outside": [], "overlapping": []}), "{name} at {}", view.width);
        assert_eq!(seen.violations, Vec::<String>::new(), "{name} at {}, dark {}", view.width, view.dark);
    }
    assert_eq!(visit.errors, Vec::<String>::new(), "{name}");
    let own = format!("/{}", file.file_name().unwrap().to_string_lossy());
    // A photograph stands in the page itself.
    let is_own = |address: &String| address.ends_with(&own) || address.starts_with("data:image/jpeg;base64,");
    assert!(visit.requests.iter().all(is_own), "{:?}", visit.requests);
}

#[test]
fn the_book() {
    let desk = Desk::evening();
    assert_looks_right("book", &desk.report(&["book"]), false);
}

#[test]
fn the_book_of_a_view() {
    let desk = Desk::evening();
    let file = desk.report(&["book", "--view", "Choir trousers", "A"]);
    assert_looks_right("book-view", &file, false);
}

#[test]
fn the_book_of_an_empty_log() {
    let desk = Desk::empty();
    assert_looks_right("book-empty", &desk.report(&["book"]), false);
}

#[test]
fn the_plan_sheet() {
    let words = ["sheet", "choir", "a", "--zip", "65cm", "--elastic", "soft waist 76cm", "--child", "--cord", "--why"];
    let desk = Desk::evening();
    assert_looks_right("sheet", &desk.report(&words), false);
}

/// A cloth that would do is not offered without saying that there is too little of it.
#[test]
fn too_little_is_said_wherever_a_cloth_is_offered() {
    let desk = Desk::evening();
    let pages: [&[&str]; 2] = [&["book", "--view", "choir", "a"], &["sheet", "choir", "a", "--use", "main=5"]];
    for words in pages {
        // Practice sateen: the main cloth takes 2.20 m, woven cotton may lose 6 %, and 0.90 m lie at home: 2.20 / 0.94 is
        // 2.34, to the next 5 cm 2.35; subtraction.
        let page = std::fs::read_to_string(desk.report(words)).unwrap();
        let missing = page.matches("1.45\u{a0}m missing").count();
        assert!(missing >= 1 && page.matches("○ too little").count() == missing, "{words:?}: {missing}");
    }
}

/// A card tells of the bias where it was pulled, and along which grain the cloth grew; a day that nobody knows it does not
/// make up.
#[test]
fn a_card_says_what_was_measured() {
    let desk = Desk::empty();
    desk.run(&["cloth", "add", "Organza lawn"]);
    desk.run(&["pull", "1", "--marks", "25cm", "--to", "26cm", "--back", "25.1cm@60s"]);
    desk.run(&["pull", "1", "--marks", "25cm", "--to", "30cm", "--back", "26cm@60s", "--grain", "bias"]);
    let card = std::fs::read_to_string(desk.report(&["picture", "card", "1"])).unwrap();
    // 30 / 25 − 1 and 26 / 25 − 1, arithmetic.
    assert!(card.contains("bias stretch 20.0 %") && card.contains("bias growth 4.0 %"), "{card}");
    let exported = desk.run(&["export", "-"]);
    let unset = exported.replace("\"kind\":\"test-stored\",", "\"kind\":\"test-stored\",\"clock_unset\":true,");
    std::fs::write(desk.path("unset.jsonl"), unset).unwrap();
    let other = Desk::empty();
    other.run(&["import", desk.path("unset.jsonl").to_str().unwrap()]);
    let card = std::fs::read_to_string(other.report(&["picture", "card", "1"])).unwrap();
    assert!(card.contains("day not known"), "{card}");
}

#[test]
fn cards_and_gauges() {
    let desk = Desk::evening();
    assert_looks_right("cards", &desk.report(&["cards"]), true);
    assert_looks_right("gauges", &desk.report(&["gauge", "--view", "choir", "a"]), true);
}

/// The check finds what it looks for: a page with a wide box, a word outside its picture, one upon another, white on white, and a request.
#[test]
fn what_is_wrong_is_found() {
    let desk = Desk::empty();
    let file = desk.path("wrong.html");
    let page = "<!DOCTYPE html><html><head><title>Wrong</title></head><body><main><h1>Wrong</h1>\
                <p style=\"width:3000px;color:#eee;background:#fff\">faint and wide</p><img src=\"other.png\" alt=\"\">\
                <figure id=\"f\"><svg viewBox=\"0 0 10 10\" role=\"img\" aria-label=\"x\"><text x=\"300\">far</text></svg></figure>\
                <svg id=\"g\" viewBox=\"0 0 99 99\" role=\"img\" aria-label=\"y\"><text y=\"50\">one</text><text y=\"50\">two</text></svg>\
                </main></body></html>";
    std::fs::write(&file, page).unwrap();
    let view = View { axe: true, ..View::new(360, false).asked(&wrong(false)) };
    let visit = browser::visit(&file, &[view]).unwrap();
    let seen = &visit.views[0];
    assert_eq!((&seen.result["wide"], &seen.result["outside"]), (&json!(true), &json!(["f: far"])));
    assert_eq!(seen.result["overlapping"], json!(["g: one / two"]));
    let found = |rule: &str| seen.violations.iter().any(|violation| violation.starts_with(rule));
    assert!(found("html-has-lang") && found("color-contrast"), "{:?}", seen.violations);
    assert!(visit.requests.iter().any(|address| address.ends_with("other.png")), "{:?}", visit.requests);
}
