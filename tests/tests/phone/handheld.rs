//! A handheld at the page: the browser's serial port is one of the test, and behind it stands the program that ships.

use std::io::{Read as _, Write as _};
use std::net::{TcpListener, TcpStream};
use std::sync::{Arc, Mutex};
use std::thread;

use serde_json::{Value, json};

use super::Shop;
use super::pocket::{Chip, Pocket, tests};

/// What stands on the page about the handheld once that is settled.
const SETTLED: &str = "document.getElementById('fetched').textContent !== '' && !document.getElementById('fetch').disabled";

/// Tests that are said to be in the browser's database, by their number on the handheld.
const STORED: &str = "(async () => {
    const done = (request) => new Promise((resolve) => { request.onsuccess = () => resolve(request.result); });
    const database = await done(indexedDB.open('tenter'));
    const rows = await done(database.transaction('entries').objectStore('entries').getAll());
    database.close();
    const said = rows.map((row) => JSON.parse(row.line)).filter(({ kind }) => kind === 'test-stored');
    return said.map(({ device, number }) => [device, number]).sort(([, one], [, other]) => one - other);
})()";

/// A handheld behind a socket of this machine. It hangs up once it has said so many bytes.
fn plugged_in(chip: Chip, most: usize) -> u16 {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let port = listener.local_addr().unwrap().port();
    thread::spawn(move || talk(listener.accept().unwrap().0, Pocket::on(chip), most));
    port
}

fn talk(mut line: TcpStream, mut pocket: Pocket, most: usize) {
    let (mut bytes, mut said) = ([0; 512], 0);
    while let Ok(count @ 1..) = line.read(&mut bytes) {
        for byte in &bytes[..count] {
            let answer = pocket.hear(*byte);
            let left = answer.len().min(most - said);
            said += left;
            if line.write_all(&answer[..left]).is_err() || said == most {
                return;
            }
        }
    }
}

fn fetch(shop: &mut Shop, chip: &Chip, most: usize) -> String {
    shop.goto("/hand-over");
    shop.tell("serial", json!({ "port": plugged_in(chip.clone(), most) }));
    shop.tell("click", json!({ "selector": "#fetch" }));
    shop.tell("wait", json!({ "script": SETTLED }));
    let line = shop.eval("[self.line.opened.baudRate, self.line.closed]");
    assert_eq!(line, json!([115_200, true]), "the port is let go");
    shop.eval("document.getElementById('fetched').textContent").as_str().unwrap().to_owned()
}

/// What waits on a chip, and who it is.
fn on(chip: &Chip) -> (Vec<u32>, u32) {
    let mut pocket = Pocket::on(chip.clone());
    (pocket.waiting(), pocket.device())
}

#[test]
fn a_handheld_is_read_at_the_page_and_a_cut_line_loses_nothing() {
    let mut shop = Shop::open();
    shop.tell("unserve", json!({}));
    let chip = Pocket::with(&tests(40)).chip;
    // The plug is pulled within the second batch: the first is stored, and nothing was acknowledged.
    let said = fetch(&mut shop, &chip, 4_000);
    assert!(said.contains("What was stored is safe"), "{said}");
    let numbers = |stored: &Value| stored.as_array().unwrap().iter().map(|one| one[1].as_u64().unwrap()).collect::<Vec<_>>();
    let some = shop.eval(STORED);
    let (waiting, device) = on(&chip);
    assert_eq!(numbers(&some), (1..=32).collect::<Vec<_>>(), "{some}");
    assert_eq!(waiting.len(), 40);
    assert_ne!(device, 0, "it was named");
    let said = fetch(&mut shop, &chip, usize::MAX);
    assert_eq!(said.trim(), format!("8 tests came from handheld {device}. 32 were here already. 8 have no cloth yet."));
    let all = shop.eval(STORED);
    assert_eq!(numbers(&all), (1..=40).collect::<Vec<_>>());
    assert!(all.as_array().unwrap().iter().all(|one| one[0] == device));
    assert_eq!(on(&chip), (Vec::new(), device));
    // They stand in the browser's database: a worker that was stopped since shows them.
    shop.tell("stop_workers", json!({}));
    shop.goto("/inbox");
    assert!(shop.text().contains("40 tests not handed over yet"), "{}", shop.text());
    let said = fetch(&mut shop, &chip, usize::MAX);
    assert_eq!(said.trim(), format!("Nothing new is on handheld {device}."));
}

/// Where nobody answers, the page says so in the end; where no port is chosen, at once.
#[test]
fn a_silent_line_and_no_port_are_told() {
    let mut shop = Shop::open();
    shop.goto("/hand-over");
    let quiet = TcpListener::bind("127.0.0.1:0").unwrap();
    shop.tell("serial", json!({ "port": quiet.local_addr().unwrap().port() }));
    let heard = Arc::new(Mutex::new(quiet.accept().unwrap().0));
    shop.tell("click", json!({ "selector": "#fetch" }));
    shop.tell("wait", json!({ "script": SETTLED }));
    let said = shop.text();
    assert!(said.contains("The handheld does not answer"), "{said}");
    assert!(!said.contains("tenter device"), "a page names no command: {said}");
    drop(heard);
    shop.eval("navigator.serial.requestPort = async () => { throw new DOMException('x', 'NotFoundError'); }");
    shop.tell("click", json!({ "selector": "#fetch" }));
    shop.tell("wait", json!({ "script": "document.getElementById('fetched').textContent === 'No port was chosen.'" }));
}
