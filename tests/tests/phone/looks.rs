//! The pages that only the app has, at every size, by day and by night, and hostile texts in all fields. Every other page is
//! that of the desk to the byte (`same.rs`), and is looked at there (`tests/web/looks.rs`).

use std::path::{Path, PathBuf};

use serde_json::{Value, json};
use tenter_tests::browser::WRONG;

use super::Shop;

/// Texts from right to left, of wide letters, that would be a script, that look like an address of the app, and that never end.
const HOSTILE: [&str; 5] = [
    "\u{5e4}\u{5e9}\u{5ea}\u{5df} \u{202e}\u{627}\u{644}\u{642}\u{645}\u{627}\u{634}",
    "\u{9ebb}\u{5e03}\u{5e97}\u{3092}\u{6e2c}\u{308b}\u{ff08}\u{4f38}\u{3073}\u{ff09}",
    "\"><img src=x onerror=\"self.hit=1\"><script>self.hit=1</script>",
    "' href=\"/cloths\" src=\"/x\" action=\"/y\" {{once}} ${1} </main>",
    "Aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa",
];

/// Sends the form of a new cloth with texts in these fields, or in all that can be typed; status, and the page's words.
fn send(fields: &Value, text: &str) -> String {
    format!(
        "(async (only, text) => {{
            const html = await (await fetch('/cloths/new')).text();
            const form = new DOMParser().parseFromString(html, 'text/html').querySelector('form#cloth');
            const fields = new URLSearchParams(new FormData(form));
            const typed = [...form.querySelectorAll('input:not([type=hidden]):not([type=radio]):not([type=checkbox]), textarea')];
            for (const {{ name }} of typed) if (only === null || only.includes(name)) fields.set(name, text);
            const answer = await fetch('/cloths/new', {{ method: 'POST', body: fields }});
            const page = await answer.text();
            const back = new DOMParser().parseFromString(page, 'text/html');
            const kept = typed.map(({{ name }}) => back.querySelector(`form#cloth [name=\"${{name}}\"]`)?.value === text);
            return [answer.status, answer.url, kept.every(Boolean), back.querySelectorAll('img[src=x], script:not([src])').length];
        }})({fields}, {})",
        json!(text)
    )
}

fn kept(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("phone");
    std::fs::create_dir_all(&folder).unwrap();
    folder.join(name)
}

#[test]
fn the_app_s_own_pages_suit_every_window_and_everybody() {
    let mut shop = Shop::open();
    shop.tell("watch", json!({}));
    let mut cloth = String::new();
    for text in HOSTILE {
        let refused = shop.eval(&send(&Value::Null, text));
        assert_eq!(refused, json!([422, shop.at("/cloths/new"), true, 0]), "{text}");
        let stored = shop.eval(&send(&json!(["name", "colour", "place", "note", "seen"]), text));
        assert_eq!((&stored[0], &stored[3]), (&json!(200), &json!(0)), "{text}");
        cloth = stored[1].as_str().unwrap().to_owned();
    }
    let names: Vec<String> = HOSTILE.iter().map(|text| text.replace('\u{202e}', "")).collect();
    let there: Vec<String> = shop.names().iter().map(|name| name.replace('\u{202e}', "")).collect();
    assert_eq!(there, names);
    let pages = [
        ("start", shop.at("/index.html")),
        ("first", shop.at("/")),
        ("cloths", shop.at("/cloths")),
        ("cloth", cloth),
        ("hand-over", shop.at("/hand-over")),
    ];
    let mut wrong = Vec::new();
    for (name, url) in &pages {
        // The first page is opened as whoever visits for the first time sees it: its script would lead on.
        let scripts = *name != "start";
        shop.tell("open", json!({ "url": url, "scripts": scripts }));
        for (width, dark) in [(360, false), (360, true), (390, false), (768, false), (1280, false), (1280, true)] {
            let png = kept(&format!("{name}-{width}-{}.png", if dark { "dark" } else { "light" }));
            let axe = scripts && matches!(width, 360 | 1280);
            let seen =
                shop.tell("look", json!({ "width": width, "dark": dark, "axe": axe, "script": WRONG, "png": png }));
            let fine = json!({ "wrong": { "wide": false, "small": [], "thumb": [] }, "violations": [] });
            if seen != fine {
                wrong.push(format!("{name} {width} {dark}: {seen}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    shop.tell("open", json!({ "url": pages[1].1 }));
    assert_eq!(shop.eval("self.hit ?? null"), Value::Null);
    // Refusals are what was asked for; a browser notes them.
    let complaints = shop.tell("complaints", json!({}));
    let complaints: Vec<&str> = complaints.as_array().unwrap().iter().filter_map(Value::as_str).collect();
    assert!(complaints.iter().all(|one| one.contains("422")), "{complaints:?}");
}

/// From the first page to a stored cloth with the keys alone.
#[test]
fn a_cloth_is_added_with_the_keys_alone() {
    let mut shop = Shop::open();
    shop.tell("unserve", json!({}));
    shop.goto("/");
    for link in ["a[href='/cloths']", "a[href='/cloths/new']"] {
        shop.tell("tab_to", json!({ "selector": link }));
        shop.tell("keys", json!({ "keys": ["<Enter>"], "goes": true }));
    }
    shop.tell("tab_to", json!({ "selector": "#cloth [name=name]" }));
    let at = shop.tell("keys", json!({ "keys": ["Slate twill", "<Enter>"], "goes": true }));
    assert!(at.as_str().unwrap().starts_with(&shop.at("/cloths/01")), "{at}");
    assert_eq!(shop.names(), ["Slate twill"]);
}
