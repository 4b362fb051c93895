//! Several windows, several versions of the app, and no room.

use std::fs;

use serde_json::json;

use super::{ADD, Shop};

const MANY: &str = "Promise.all(Array.from({ length: 40 }, (_, place) => (ADD)(`WHICH ${place}`)))";

fn many(which: &str) -> String {
    MANY.replace("ADD", ADD).replace("WHICH", which)
}

#[test]
fn two_windows_at_once_give_every_cloth_a_tag_of_its_own() {
    let mut shop = Shop::open();
    let url = shop.at("/cloths");
    shop.goto("/cloths");
    shop.tell("open", json!({ "page": "b", "url": url }));
    // Both begin, and neither waits for the other.
    shop.eval(&format!("void (self.mine = {})", many("one")));
    shop.tell("eval", json!({ "page": "b", "script": many("other") }));
    shop.eval("self.mine");
    let tags: Vec<u64> = shop.cloths().into_iter().map(|(tag, _)| tag).collect();
    let first = tags[0];
    assert!(first >= 1000, "a phone's own tags: {first}");
    assert_eq!(tags, (first..first + 80).collect::<Vec<u64>>());
}

/// A version with another byte in it takes over between two requests, and none is lost.
#[test]
fn the_app_is_renewed_amid_requests() {
    let mut shop = Shop::open();
    let (site, next) = (shop.path("site"), shop.path("next"));
    copy(&site, &next);
    let worker = fs::read_to_string(next.join("worker.js")).unwrap();
    fs::write(next.join("worker.js"), format!("{worker}self.renewed = true;\n")).unwrap();
    shop.goto("/cloths");
    shop.tell("folder", json!({ "folder": next }));
    let renew = "navigator.serviceWorker.getRegistration().then((registration) => registration.update())";
    let add = format!(
        "(async () => {{
            const changed = new Promise((resolve) => navigator.serviceWorker.addEventListener('controllerchange', resolve));
            const before = {};
            {renew};
            await changed;
            await before;
            await {};
        }})()",
        many("before"),
        many("after"),
    );
    shop.eval(&add);
    let renewed = shop.tell("in_worker", json!({ "script": "self.renewed ?? false" }));
    assert!(renewed.as_array().unwrap().iter().any(|is| is == true), "{renewed}");
    let tags: Vec<u64> = shop.cloths().into_iter().map(|(tag, _)| tag).collect();
    let first = tags[0];
    assert!(first >= 1000, "a phone's own tags: {first}");
    assert_eq!(tags, (first..first + 80).collect::<Vec<u64>>());
}

/// A version of which a file is missing, or is another's, does not take over.
#[test]
fn half_a_version_is_not_installed() {
    let mut shop = Shop::open();
    let site = shop.path("site");
    for (name, spoil) in [("missing", None), ("other", Some("self.other = 1;\n"))] {
        let next = shop.path(name);
        copy(&site, &next);
        let worker = fs::read_to_string(next.join("worker.js")).unwrap();
        fs::write(next.join("worker.js"), format!("{worker}self.renewed = true;\n")).unwrap();
        match spoil {
            Some(text) => fs::write(next.join("app/page.js"), text).unwrap(),
            None => fs::remove_file(next.join("app/page.js")).unwrap(),
        }
        shop.goto("/cloths");
        shop.tell("folder", json!({ "folder": next }));
        let became = shop.eval(
            "(async () => {
                const registration = await navigator.serviceWorker.getRegistration();
                const active = registration.active;
                await registration.update();
                const next = registration.installing ?? registration.waiting;
                // There is none where it was quick to fail.
                if (next !== null) {
                    await new Promise((resolve) => {
                        next.addEventListener('statechange', () => next.state === 'redundant' && resolve());
                        if (next.state === 'redundant') resolve();
                    });
                }
                return registration.active === active && registration.waiting === null ? 'kept' : 'renewed';
            })()",
        );
        assert_eq!(became, "kept", "{name}");
        shop.add(name);
    }
    assert_eq!(shop.cloths().len(), 2);
}

/// The database is of a newer app than the worker: it says what to do, and nothing is changed.
#[test]
fn an_older_worker_leaves_a_newer_database_alone() {
    let mut shop = Shop::open();
    shop.add("Slate twill");
    let raise = "(async () => {
        const open = (version) => new Promise((resolve, reject) => {
            const opening = indexedDB.open('tenter', version);
            opening.onsuccess = () => resolve(opening.result);
            opening.onerror = () => reject(opening.error);
        });
        const database = await open(1000);
        const count = await new Promise((resolve) => {
            const request = database.transaction('entries').objectStore('entries').count();
            request.onsuccess = () => resolve(request.result);
        });
        database.close();
        return count;
    })()";
    assert_eq!(shop.eval(raise), 1, "the worker let go of its database");
    let answered = shop.eval("fetch('/cloths').then(async (page) => [page.status, await page.text()])");
    assert_eq!(answered[0], 503);
    let text = answered[1].as_str().unwrap();
    assert!(text.contains("reload this page"), "{text}");
    assert_eq!(shop.eval(raise), 1);
}

/// No room left: a clear sentence, and nothing of the step or of what was there before is lost.
#[test]
fn a_full_phone_says_so_and_loses_nothing() {
    let mut shop = Shop::open();
    shop.add("before");
    let origin = shop.origin.clone();
    shop.tell("quota", json!({ "origin": origin, "bytes": 1 }));
    // The browser looks at the room anew every now and then only, so this goes on until it does.
    let until_refused = "(async () => {
        for (let place = 0; ; place += 1) {
            const page = new DOMParser().parseFromString(await (await fetch('/cloths/new')).text(), 'text/html');
            const fields = new URLSearchParams(new FormData(page.querySelector('form#cloth')));
            fields.set('name', `during ${place}`);
            const answer = await fetch('/cloths/new', { method: 'POST', body: fields });
            if (!answer.ok) return [place, answer.status, await answer.text()];
            await new Promise((resolve) => setTimeout(resolve, 250));
        }
    })()";
    let refused = shop.eval(until_refused);
    let text = refused[2].as_str().unwrap().to_owned();
    assert_eq!(refused[1], 507, "{text}");
    assert!(text.contains("no room left") && text.contains("Nothing of your last step was stored"), "{text}");
    let before: Vec<String> = (0..refused[0].as_u64().unwrap()).map(|place| format!("during {place}")).collect();
    // By name: a phone that has given all of its tags goes on with others, which may be lower.
    let sorted = |mut names: Vec<String>| {
        names.sort();
        names
    };
    let kept: Vec<String> = [vec!["before".to_owned()], before].concat();
    assert_eq!(sorted(shop.names()), sorted(kept.clone()));
    shop.goto("/cloths");
    let (text, refused) = (shop.text(), format!("during {}", kept.len() - 1));
    assert!(text.contains("before") && !text.contains(&refused), "what was refused is not shown: {text}");
    shop.tell("quota", json!({ "origin": origin }));
    shop.add("after");
    assert_eq!(sorted(shop.names()), sorted([kept, vec!["after".to_owned()]].concat()));
}

fn copy(from: &std::path::Path, to: &std::path::Path) {
    fs::create_dir_all(to.join("app")).unwrap();
    for folder in ["", "app"] {
        for file in fs::read_dir(from.join(folder)).unwrap() {
            let file = file.unwrap();
            if file.file_type().unwrap().is_file() {
                fs::copy(file.path(), to.join(folder).join(file.file_name())).unwrap();
            }
        }
    }
}
