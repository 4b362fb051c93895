//! A handheld at the page: the browser's serial port is one of the test, and behind it stands the program that ships.

use std::io::{Read as _, Write as _};
use std::net::{TcpListener, TcpStream};
use std::thread::{self, JoinHandle};

use serde_json::{Value, json};
use tenter_core::saved::{Clock, SavedTest};
use tenter_core::{Grain, Length, PullTest};
use tenter_firmware::desk::Records;
use tenter_firmware::link::{RequestHandler, Responder};
use tenter_firmware::log::StoragePage;
use tenter_tests::fake_eeprom::FakeEeprom;

use super::Shop;

/// Pages of a 24C256.
const PAGES: u16 = 512;
/// 2026-11-25 00:00 UTC.
const NOVEMBER: u32 = 1_795_564_800;

/// What a memory chip holds.
type Chip = Vec<StoragePage>;

/// What stands on the page about the handheld once that is settled.
const SETTLED: &str =
    "document.getElementById('fetched').textContent !== '' && !document.getElementById('fetch').disabled";

/// Tests that are said to be in the browser's database, by their number on the handheld.
const STORED: &str = "(async () => {
    const done = (request) => new Promise((resolve) => { request.onsuccess = () => resolve(request.result); });
    const database = await done(indexedDB.open('tenter'));
    const rows = await done(database.transaction('entries').objectStore('entries').getAll());
    database.close();
    const said = rows.map((row) => JSON.parse(row.line)).filter(({ kind }) => kind === 'test-stored');
    return said.map(({ device, number }) => [device, number]).sort(([, one], [, other]) => one - other);
})()";

/// The chip of a handheld on which so many tests were saved, each unlike all others.
fn saved(count: u32) -> Chip {
    let mut chip = FakeEeprom::erased(PAGES);
    let mut records = Records::open(&mut chip);
    for nth in 1..=count {
        let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
        test.add_pull(Length::from_steps(1600 * 105 + i32::try_from(nth).unwrap())).unwrap();
        let clock = Clock { uptime_s: 60 * nth, unix_s: Some(NOVEMBER + 600 * nth) };
        records.log().unwrap().save(&SavedTest::new(7, clock, test)).unwrap();
    }
    drop(records);
    chip.image
}

/// A handheld with this chip behind a socket of this machine. It hangs up in the middle of the answer after so many; then
/// its chip is back.
fn plugged_in(chip: Chip, whole: usize) -> (u16, JoinHandle<Chip>) {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let port = listener.local_addr().unwrap().port();
    let handheld = thread::spawn(move || {
        let mut chip = FakeEeprom::holding(chip);
        talk(listener.accept().unwrap().0, Records::open(&mut chip), whole);
        chip.image
    });
    (port, handheld)
}

fn talk(mut line: TcpStream, mut records: Records<&mut FakeEeprom>, whole: usize) {
    let (mut responder, mut bytes, mut answers) = (Responder::new(), [0; 512], 0);
    while let Ok(count @ 1..) = line.read(&mut bytes) {
        for byte in &bytes[..count] {
            let Some(answer) = responder.receive(*byte, &mut records) else { continue };
            let is_whole = answers < whole;
            answers += 1;
            let said = if is_whole { answer } else { &answer[..answer.len() / 2] };
            if line.write_all(said).is_err() || !is_whole {
                return;
            }
        }
    }
}

/// Fetches by the button; what the page says, and what is on the chip then.
fn fetch(shop: &mut Shop, chip: Chip, whole: usize) -> (String, Chip) {
    let (port, handheld) = plugged_in(chip, whole);
    shop.goto("/hand-over");
    shop.tell("serial", json!({ "port": port }));
    shop.tell("click", json!({ "selector": "#fetch" }));
    shop.tell("wait", json!({ "script": SETTLED }));
    let line = shop.eval("[self.line.opened.baudRate, self.line.closed]");
    assert_eq!(line, json!([115_200, true]), "the port is let go");
    let said = shop.eval("document.getElementById('fetched').textContent").as_str().unwrap().trim().to_owned();
    shop.tell("unplug", json!({}));
    (said, handheld.join().unwrap())
}

/// How many tests wait on a chip, and the number of its handheld.
fn on(chip: &Chip) -> (u16, u32) {
    let mut chip = FakeEeprom::holding(chip.clone());
    let mut records = Records::open(&mut chip);
    let device = records.log().unwrap().device_id();
    (RequestHandler::listing(&mut records).unwrap().unacknowledged, device)
}

#[test]
fn a_handheld_is_read_at_the_page_and_a_cut_line_loses_nothing() {
    let mut shop = Shop::open();
    shop.tell("unserve", json!({}));
    // Who is there, its number, its clock, its list, 32 tests, who is there: the plug is pulled within the second batch. The first
    // is stored, and nothing was acknowledged.
    let (said, chip) = fetch(&mut shop, saved(40), 4 + 32 + 1 + 3);
    assert!(said.contains("What was stored is safe"), "{said}");
    let numbers =
        |stored: &Value| stored.as_array().unwrap().iter().map(|one| one[1].as_u64().unwrap()).collect::<Vec<_>>();
    let some = shop.eval(STORED);
    let (waiting, device) = on(&chip);
    assert_eq!(numbers(&some), (1..=32).collect::<Vec<_>>(), "{some}");
    assert_eq!(waiting, 40);
    assert_ne!(device, 0, "it was named");
    let (said, chip) = fetch(&mut shop, chip, usize::MAX);
    let wanted = format!("8 tests came from handheld {device}. 32 were here already. 8 have no cloth yet.");
    assert_eq!(said, wanted);
    let all = shop.eval(STORED);
    assert_eq!(numbers(&all), (1..=40).collect::<Vec<_>>());
    assert!(all.as_array().unwrap().iter().all(|one| one[0] == device));
    assert_eq!(on(&chip), (0, device));
    // They stand in the browser's database: a worker that was stopped since shows them.
    shop.tell("stop_workers", json!({}));
    shop.goto("/inbox");
    assert!(shop.text().contains("40 tests not handed over yet"), "{}", shop.text());
    let (said, _) = fetch(&mut shop, chip, usize::MAX);
    assert_eq!(said, format!("Nothing new is on handheld {device}."));
}

/// Where nobody answers, the page says so in the end; where no port is chosen, at once.
#[test]
fn a_silent_line_and_no_port_are_told() {
    let mut shop = Shop::open();
    shop.goto("/hand-over");
    let quiet = TcpListener::bind("127.0.0.1:0").unwrap();
    shop.tell("serial", json!({ "port": quiet.local_addr().unwrap().port() }));
    let heard = quiet.accept().unwrap().0;
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
