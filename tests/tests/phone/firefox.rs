//! The same app in another browser: Firefox, through WebDriver BiDi (W3C).

use std::fs;

use serde_json::json;
use tenter_tests::browser::WRONG;

use super::Shop;

/// Installed, offline, closed and opened again: a cloth by its form, with a hostile name; without the page's scripts too; then
/// the file for the desk.
#[test]
fn firefox_keeps_what_is_stored_without_a_network() {
    let mut shop = Shop::open_in("firefox-esr");
    shop.tell("unserve", json!({}));
    shop.goto("/cloths/new");
    let name = "\u{5e4}\u{5e9}\u{5ea}\u{5df} <b>\u{5e03}</b>";
    let at = shop.tell("send", json!({ "form": "form#cloth", "fields": { "name": name } }));
    assert!(at.as_str().unwrap().starts_with(&shop.at("/cloths/01")), "{at}");
    for width in [360, 1280] {
        let look = json!({ "width": width, "axe": true, "script": WRONG });
        let seen = shop.tell("look", look);
        assert_eq!(seen, json!({ "wrong": { "wide": false, "small": [], "thumb": [] }, "violations": [] }), "{width}");
    }
    shop.tell("close", json!({}));
    shop.launch();
    shop.goto("/cloths");
    let text = shop.text();
    assert!(text.contains(name) && text.contains("1 change not handed over yet"), "{text}");
    assert_eq!(shop.names(), [name]);
    let file = shop.eval("fetch('/hand-over/tenter-log.txt').then((file) => file.text())");
    let back = shop.path("back.txt");
    fs::write(&back, file.as_str().unwrap()).unwrap();
    shop.goto("/hand-over");
    shop.tell("upload", json!({ "selector": "#file", "file": back }));
    shop.tell("click", json!({ "selector": "#bring button" }));
    shop.tell(
        "wait",
        json!({ "script": "document.getElementById('asking').textContent.includes('came to this phone')" }),
    );
    assert!(!shop.text().contains("not handed over yet"));
}
