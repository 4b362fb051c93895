//! The same walk on the desk and on the phone gives the same bytes.

use std::sync::atomic::{AtomicU64, Ordering};

use jiff::tz::Offset;
use serde_json::{Value, json};
use tenter::log::{Desk, Here};
use tenter::store::memory::Memory;
use tenter::store::{Drafts as _, LogWithDrafts};
use tenter::web::{Request, Response, respond};

use super::Shop;

/// What the app puts into the head of each page.
const APP: &str = concat!(
    "<link rel=\"manifest\" href=\"/app/manifest.webmanifest\">\n<link rel=\"icon\" href=\"/app/icon.svg\" type=\"image/svg+xml\">\n",
    "<link rel=\"apple-touch-icon\" href=\"/app/icon-192.png\">\n<script src=\"/app/page.js\" defer></script>\n"
);

/// The phone's clock, chance and zone, as those of [`here`].
const FIXED: &str = "(() => {
    let drawn = 0n;
    Date.now = () => 1772366400000;
    Date.prototype.getTimezoneOffset = () => -60;
    crypto.getRandomValues = (array) => array.fill(drawn += 1n);
})()";

static DRAWN: AtomicU64 = AtomicU64::new(0);

fn here() -> Here {
    fn draw() -> u128 {
        u128::from(DRAWN.fetch_add(1, Ordering::Relaxed) + 1)
    }
    Here {
        now: || jiff::Timestamp::from_millisecond(1_772_366_400_000).unwrap(),
        random: || draw() << 64 | draw(),
        offset: |_| Offset::from_seconds(3600).unwrap(),
    }
}

/// One step: an address, and the fields of a form where one is sent.
type Step = (&'static str, Option<Vec<(&'static str, &'static str)>>);

fn walk() -> Vec<Step> {
    let once = |letter: &'static str| ("once", letter);
    let cloth = |id, name, more: &[(&'static str, &'static str)]| {
        let fields: Vec<_> = [&[once(id), ("name", name), ("construction", "knit")], more].concat();
        ("/cloths/new", Some(fields))
    };
    vec![
        ("/", None),
        ("/style.css", None),
        ("/cloths/new", None),
        cloth("01KJM7S4000000000000000001", "Slate twill", &[("length", "2.4m"), ("fibre", "cotton 95, elastane 5")]),
        cloth(
            "01KJM7S4000000000000000002",
            "\u{5e4}\u{5e9}\u{5ea}\u{5df} <b>\"bold\"</b> & 'more'",
            &[("seen", "\u{5e03}\u{5e97}"), ("price", "12.50/m")],
        ),
        cloth("01KJM7S4000000000000000001", "Sent twice", &[]),
        cloth("01KJM7S4000000000000000003", "", &[("width", "wide")]),
        ("/cloths", None),
        ("/cloths?words=twill", None),
        ("/patterns", None),
        ("/garments", None),
        ("/measure", None),
        ("/more", None),
        ("/log", None),
        ("/guide", None),
        ("/inbox", None),
        ("/exchange/nothing", None),
        ("/nowhere", None),
    ]
}

/// Follows one forwarding, as a browser does.
fn answer(log: &mut dyn LogWithDrafts, (target, fields): &Step) -> Response {
    let request = fields.as_ref().map_or_else(|| Request::get(target), |fields| Request::post(target, fields));
    let answer = respond(&request, log);
    match answer.header("location") {
        Some(there) => respond(&Request::get(there), log),
        None => answer,
    }
}

/// A page of the phone without what it wears there.
fn undressed(page: &str) -> String {
    let page = page.replacen(APP, "", 1);
    match page.split_once("\n<p class=\"waiting") {
        Some((before, after)) => before.to_owned() + after.split_once("</p>").unwrap().1,
        None => page,
    }
}

#[test]
fn the_same_walk_gives_the_same_bytes() {
    let mut shop = Shop::open();
    shop.tell("unserve", json!({}));
    let desk = shop.eval(
        "(async () => {
            const done = (request) => new Promise((resolve) => { request.onsuccess = () => resolve(request.result); });
            const database = await done(indexedDB.open('tenter'));
            const desk = await done(database.transaction('drafts').objectStore('drafts').get('desk'));
            database.close();
            return desk;
        })()",
    );
    shop.tell("in_worker", json!({ "script": FIXED }));
    let mut log = Memory::new(here());
    log.set_draft(Desk::NAME, desk.as_str()).unwrap();
    let mut pages = 0;
    for step in walk() {
        let fields: Value = step.1.as_ref().map_or(Value::Null, |fields| json!(fields));
        let ask = format!(
            "(async (target, fields) => {{
                const answer = await fetch(target, fields && {{ method: 'POST', body: new URLSearchParams(fields) }});
                return [answer.status, answer.headers.get('content-type'), await answer.text()];
            }})({}, {fields})",
            json!(step.0)
        );
        let phone = shop.eval(&ask);
        let native = answer(&mut log, &step);
        assert_eq!(phone[0], native.status, "{step:?}");
        assert_eq!(phone[1].as_str(), native.header("content-type"), "{step:?}");
        let body = String::from_utf8(native.body).unwrap();
        assert_eq!(undressed(phone[2].as_str().unwrap()), body, "{step:?}");
        pages += usize::from(native.status == 200);
    }
    assert!(pages >= 12, "only {pages} pages of the walk are there");
}
