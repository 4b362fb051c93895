//! The first visit, and everything after it without a network.

use serde_json::json;

use super::Shop;

#[test]
fn after_the_first_visit_no_network_is_needed() {
    let mut shop = Shop::open();
    assert!(shop.text().contains("Cloths"));
    shop.tell("unserve", json!({}));
    // The form itself, with the keys of the phone.
    shop.goto("/cloths/new");
    let at = shop.tell("send", json!({ "form": "form#cloth", "fields": { "name": "Slate twill" } }));
    assert!(at.as_str().unwrap().starts_with(&shop.at("/cloths/")), "{at}");
    let text = shop.text();
    assert!(text.contains("Slate twill") && text.contains("1 change not handed over yet"), "{text}");
    // A worker that was stopped, and a browser that was closed.
    for _ in 0..5 {
        shop.tell("stop_workers", json!({}));
        shop.goto("/cloths");
        assert!(shop.text().contains("Slate twill"));
    }
    shop.tell("close", json!({}));
    shop.launch();
    shop.goto("/");
    shop.goto("/cloths");
    assert!(shop.text().contains("Slate twill"));
    let requests = shop.tell("requests", json!({}));
    let requests: Vec<&str> = requests.as_array().unwrap().iter().map(|path| path.as_str().unwrap()).collect();
    let app =
        |path: &&&str| **path == "/" || **path == "/worker.js" || path.starts_with("/app/") || **path == "/index.html";
    let others: Vec<&&str> = requests.iter().filter(|path| !app(path)).collect();
    assert!(others.is_empty(), "a page was asked of the network: {others:?}");
}

#[test]
fn pages_work_without_their_scripts() {
    let mut shop = Shop::open();
    shop.tell("unserve", json!({}));
    let url = shop.at("/cloths/new");
    shop.tell("open", json!({ "url": url, "scripts": false }));
    shop.tell("send", json!({ "form": "form#cloth", "fields": { "name": "Slate twill" } }));
    let url = shop.at("/cloths");
    shop.tell("open", json!({ "url": url, "scripts": true }));
    assert_eq!(shop.names(), ["Slate twill"]);
}

/// Without scripts on the first visit there is no app, and the page says so.
#[test]
fn the_first_visit_says_that_it_needs_scripts() {
    let mut shop = Shop::open();
    shop.tell("close", json!({}));
    let profile = shop.path("another");
    shop.tell("launch", json!({ "profile": profile }));
    let url = shop.at("/");
    shop.tell("open", json!({ "url": url, "scripts": false }));
    let text = shop.text();
    assert!(text.contains("The first visit needs scripts"), "{text}");
}

/// A form that another page sends is not taken, a form of ours that is sent twice is stored once.
#[test]
fn forms_of_others_are_refused_and_forms_sent_twice_are_stored_once() {
    let mut shop = Shop::open();
    let sent = shop.eval(
        "(async () => {
            const page = new DOMParser().parseFromString(await (await fetch('/cloths/new')).text(), 'text/html');
            const fields = new URLSearchParams(new FormData(page.querySelector('form#cloth')));
            fields.set('name', 'Slate twill');
            const send = (more) => fetch('/cloths/new', { method: 'POST', body: fields, ...more });
            const answers = await Promise.all([send(), send(), send()]);
            const foreign = await send({ referrerPolicy: 'no-referrer' });
            return [answers.map((answer) => answer.status), new Set(answers.map((answer) => answer.url)).size, foreign.status];
        })()",
    );
    assert_eq!(sent, json!([[200, 200, 200], 1, 403]));
    assert_eq!(shop.names(), ["Slate twill"]);
}

/// A photograph as a camera gives it is made small by the page, kept, and shown by a worker that was stopped since.
#[test]
fn a_photograph_is_made_small_and_kept() {
    let mut shop = Shop::open();
    let file = shop.path("camera.png");
    let colours: Vec<u8> =
        (0..1600 * 1000).flat_map(|at: u32| [u8::try_from(at % 1600 / 7).unwrap(), 90, 160]).collect();
    let mut png = png::Encoder::new(std::fs::File::create(&file).unwrap(), 1600, 1000);
    png.set_color(png::ColorType::Rgb);
    png.write_header().unwrap().write_image_data(&colours).unwrap();
    shop.tell("unserve", json!({}));
    shop.goto("/cloths/new");
    let cloth = shop.tell("send", json!({ "form": "form#cloth", "fields": { "name": "Slate twill" } }));
    let photos = format!("{}/photos", cloth.as_str().unwrap());
    shop.tell("open", json!({ "url": photos }));
    shop.tell("upload", json!({ "selector": "#photo input[type=file]", "file": file }));
    shop.tell("send", json!({ "form": "form#photo" }));
    shop.tell("stop_workers", json!({}));
    shop.tell("open", json!({ "url": photos }));
    let sizes = shop.eval(
        "(async () => {
            const done = (request) => new Promise((resolve) => { request.onsuccess = () => resolve(request.result); });
            const database = await done(indexedDB.open('tenter'));
            const names = await done(database.transaction('photos').objectStore('photos').getAllKeys());
            database.close();
            const sizes = await Promise.all(names.map(async (name) => {
                const picture = await createImageBitmap(await (await fetch(`/photos/${name}`)).blob());
                return [picture.width, picture.height];
            }));
            return sizes.sort(([one], [other]) => one - other);
        })()",
    );
    assert_eq!(sizes, json!([[320, 200], [1200, 750]]));
    assert!(shop.eval("document.querySelectorAll('main img').length").as_u64().unwrap() >= 1);
}
