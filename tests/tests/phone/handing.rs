//! Handing over: with the desk's page, and with files. Either way twice is once.

use std::fs;
use std::io::{BufRead as _, BufReader, Lines};
use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};

use serde_json::json;
use tenter_tests::program::program;

use super::Shop;

/// `tenter serve` on a log of its own.
struct Desk {
    child: Child,
    address: String,
    /// What it says later; it ends where nobody listens any more.
    _said: Lines<BufReader<ChildStdout>>,
}

impl Desk {
    fn serve(log: &Path) -> Self {
        let mut command = tenter(log, &["serve", "--no-open", "--port", "0"]);
        let mut child = command.stdout(Stdio::piped()).spawn().unwrap();
        let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
        let first = lines.next().unwrap().unwrap();
        let address = first.split_whitespace().last().unwrap().trim_end_matches('/').to_owned();
        assert!(address.starts_with("http://"), "{first}");
        Self { child, address, _said: lines }
    }
}

impl Drop for Desk {
    fn drop(&mut self) {
        drop(self.child.kill());
        drop(self.child.wait());
    }
}

fn tenter(log: &Path, words: &[&str]) -> Command {
    let mut command = Command::new(program());
    command.args(words).env("TENTER_DB", log).env("TZ", "UTC").env("COLUMNS", "120");
    command
}

fn run(log: &Path, words: &[&str]) -> String {
    let output = tenter(log, words).output().unwrap();
    assert!(output.status.success(), "tenter {words:?}: {}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).unwrap()
}

/// How many cloths of this name the desk has.
fn count(log: &Path, name: &str) -> usize {
    run(log, &["export", "-"]).lines().filter(|line| line.contains("fabric-added") && line.contains(name)).count()
}

/// The desk's page opens the app, the person says yes, and both have what the other had, photographs too.
#[test]
fn the_desk_s_page_and_the_app_exchange_entries_once_the_person_agrees() {
    let mut shop = Shop::open();
    let log = shop.path("log.sqlite3");
    run(&log, &["cloth", "add", "Desk rib"]);
    let photo = shop.path("photo.png");
    let colours: Vec<u8> = (0..64 * 48).flat_map(|at| [u8::try_from(at % 251).unwrap(), 90, 160]).collect();
    let mut png = png::Encoder::new(fs::File::create(&photo).unwrap(), 64, 48);
    png.set_color(png::ColorType::Rgb);
    png.write_header().unwrap().write_image_data(&colours).unwrap();
    run(&log, &["cloth", "picture", "1", photo.to_str().unwrap()]);
    let desk = Desk::serve(&log);
    shop.add("Shop twill");
    let exchange = format!("{}/exchange", desk.address);
    for round in 0..2 {
        shop.tell("open", json!({ "page": "desk", "url": exchange }));
        let press = format!(
            "(() => {{ const form = document.getElementById('app'); form.elements.namedItem('address').value = {}; form.requestSubmit(); }})()",
            json!(shop.at("/"))
        );
        shop.tell("popup", json!({ "page": "desk", "as": "app", "script": press }));
        shop.tell("wait", json!({ "page": "app", "script": "document.getElementById('live')?.hidden === false" }));
        let asked =
            shop.tell("eval", json!({ "page": "app", "script": "document.getElementById('asking').textContent" }));
        assert!(asked.as_str().unwrap().contains(&desk.address), "the person sees who asks: {asked}");
        if round == 0 {
            assert_eq!(count(&log, "Shop twill"), 0, "nothing goes before the person agrees");
        }
        shop.tell("click", json!({ "page": "app", "selector": "#yes" }));
        let done = "document.getElementById('asking').textContent.includes('came to this phone')";
        shop.tell("wait", json!({ "page": "app", "script": done }));
        let told =
            shop.tell("eval", json!({ "page": "app", "script": "document.getElementById('asking').textContent" }));
        let told = told.as_str().unwrap();
        assert_eq!(told.contains("0 new entries"), round == 1, "{told}");
        assert_eq!(
            told.contains("of yours has arrived") || told.contains("of yours have arrived"),
            round == 0,
            "{told}"
        );
        assert_eq!(count(&log, "Shop twill"), 1);
    }
    shop.goto("/cloths");
    let text = shop.text();
    assert!(text.contains("Desk rib") && text.contains("Shop twill") && !text.contains("not handed over"), "{text}");
    // The photograph is kept, and is there for a worker that was stopped since.
    shop.tell("stop_workers", json!({}));
    let kinds = shop.eval(
        "(async () => {
            const done = (request) => new Promise((resolve) => { request.onsuccess = () => resolve(request.result); });
            const database = await done(indexedDB.open('tenter'));
            const names = await done(database.transaction('photos').objectStore('photos').getAllKeys());
            database.close();
            const answers = await Promise.all(names.map((name) => fetch(`/photos/${name}`)));
            return answers.map((answer) => [answer.status, answer.headers.get('content-type')]);
        })()",
    );
    assert_eq!(kinds, json!([[200, "image/jpeg"], [200, "image/jpeg"]]));
}

/// A page of others that opens the app gets nothing unless the person agrees.
#[test]
fn a_page_of_others_gets_nothing_without_the_person() {
    let mut shop = Shop::open();
    shop.add("Shop twill");
    // Another origin on this machine: the same server under another name.
    let stranger = shop.at("/index.html").replace("127.0.0.1", "localhost");
    shop.tell("open", json!({ "page": "stranger", "url": stranger, "scripts": false }));
    shop.tell("open", json!({ "page": "stranger", "url": stranger.replace("/index.html", "/app/icon.svg") }));
    let press = format!(
        "(() => {{ self.heard = []; self.addEventListener('message', (event) => self.heard.push(event.data)); self.app = window.open({}); }})()",
        json!(shop.at("/hand-over"))
    );
    shop.tell("popup", json!({ "page": "stranger", "as": "app", "script": press }));
    shop.tell("wait", json!({ "page": "stranger", "script": "self.heard.length > 0" }));
    let ask = "for (const tenter of ['desk', 'taken', 'refused']) self.app.postMessage({ tenter, log: 'x', reason: 'x' }, '*')";
    shop.tell("eval", json!({ "page": "stranger", "script": ask }));
    shop.tell("wait", json!({ "page": "app", "script": "document.getElementById('live')?.hidden === false" }));
    shop.tell("click", json!({ "page": "app", "selector": "#no" }));
    let heard = shop.tell("eval", json!({ "page": "stranger", "script": "self.heard" }));
    assert_eq!(heard, json!([{ "tenter": "here" }]), "nothing of the log");
    assert_eq!(shop.names(), ["Shop twill"]);
}

/// Without a network between them: the file goes to the desk, and the desk's file tells what has arrived.
#[test]
fn files_hand_over_both_ways() {
    let mut shop = Shop::open();
    let log = shop.path("log.sqlite3");
    run(&log, &["cloth", "add", "Desk rib"]);
    shop.add("Shop twill");
    shop.tell("unserve", json!({}));
    let (there, back) = (shop.path("tenter-log.txt"), shop.path("for-phone.txt"));
    for _ in 0..2 {
        let file = shop.eval("fetch('/hand-over/tenter-log.txt').then((file) => file.text())");
        fs::write(&there, file.as_str().unwrap()).unwrap();
        run(&log, &["import", there.to_str().unwrap()]);
        assert_eq!(count(&log, "Shop twill"), 1);
        run(&log, &["export", back.to_str().unwrap()]);
        shop.goto("/hand-over");
        shop.tell("upload", json!({ "selector": "#file", "file": back }));
        shop.tell("click", json!({ "selector": "#bring button" }));
        shop.tell(
            "wait",
            json!({ "script": "document.getElementById('asking').textContent.includes('came to this phone')" }),
        );
    }
    let text = shop.text();
    assert!(text.contains("Everything was handed over") && !text.contains("not handed over"), "{text}");
    let mut names = shop.names();
    names.sort();
    assert_eq!(names, ["Desk rib", "Shop twill"]);
}
