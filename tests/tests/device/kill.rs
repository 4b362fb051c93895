//! The real program killed at any instant while it synchronises.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{Read as _, Write as _};
use std::os::unix::net::UnixListener;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::{Arc, Mutex};
use std::thread;
use std::time::{Duration, Instant};

use rand::rngs::StdRng;
use rand::{Rng as _, SeedableRng as _};
use tenter::store;
use tenter_tests::program::program;

use crate::cable::{all, stock};
use crate::cut::said_stored;
use crate::pocket::{Pocket, test};

const KILLS: u32 = 200;
/// Tests that are saved before each.
const SAVED: u32 = 3;

/// Answers one program after the other, for as long as this test runs.
fn serve(socket: &Path, pocket: Arc<Mutex<Pocket>>) {
    let listener = UnixListener::bind(socket).unwrap();
    thread::spawn(move || {
        for stream in listener.incoming() {
            let (mut stream, mut bytes) = (stream.unwrap(), [0; 256]);
            while let Ok(count @ 1..) = stream.read(&mut bytes) {
                let mut pocket = pocket.lock().unwrap();
                let answer: Vec<u8> = bytes[..count].iter().flat_map(|byte| pocket.hear(*byte)).collect();
                if stream.write_all(&answer).is_err() {
                    break;
                }
            }
        }
    });
}

fn command(db: &Path, socket: &Path) -> Command {
    let mut command = Command::new(program());
    command.args(["device", "sync"]).env("TENTER_DB", db).env("TENTER_PORT", format!("unix:{}", socket.display()));
    command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
    command
}

#[test]
fn killed_at_any_instant_it_loses_nothing_and_doubles_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let (db, socket) = (folder.path().join("log.sqlite3"), folder.path().join("line"));
    stock(&mut store::open(&db, tenter::log::Here::desk()).unwrap());
    let pocket = Arc::new(Mutex::new(Pocket::with(&[])));
    serve(&socket, pocket.clone());
    let mut saved = BTreeMap::new();
    let save = |saved: &mut BTreeMap<u32, _>| {
        for _ in 0..SAVED {
            let nth = u32::try_from(saved.len()).unwrap() + 1;
            pocket.lock().unwrap().save(&test(nth));
            saved.insert(nth, test(nth).test);
        }
    };
    let _ = program(); // It may have to be built.
    save(&mut saved);
    let began = Instant::now();
    let output = command(&db, &socket).output().unwrap();
    assert!(output.status.success(), "{output:?}");
    // How late a kill may come. It follows how long the program takes, which grows with what waits.
    let mut latest = began.elapsed();
    let mut chance = StdRng::seed_from_u64(20_261_125);
    let (mut killed, mut said_and_killed, mut in_between) = (0, 0, 0);
    for round in 0..KILLS {
        save(&mut saved);
        let mut child = command(&db, &socket).spawn().unwrap();
        thread::sleep(latest.mul_f64(chance.random_range(0.0..1.0)));
        child.kill().unwrap();
        let output = child.wait_with_output().unwrap();
        latest = latest.mul_f64(if output.status.success() { 0.8 } else { 1.2 });
        killed += u32::from(!output.status.success());
        let said = said_stored(&String::from_utf8(output.stdout).unwrap());
        said_and_killed += u32::from(!said.is_empty() && !output.status.success());
        // What it had sent is still being answered.
        thread::sleep(Duration::from_millis(2));
        let waiting: BTreeSet<u32> = pocket.lock().unwrap().waiting().into_iter().collect();
        let store = store::open(&db, tenter::log::Here::desk()).unwrap();
        let stored = all(&store);
        let numbers: BTreeSet<u32> = stored.iter().map(|(number, _)| *number).collect();
        assert_eq!(numbers.len(), stored.len(), "{round}: a test is there twice");
        for number in said {
            assert!(numbers.contains(&number), "{round}: {number} was said to be stored");
        }
        for (number, test) in &saved {
            assert!(numbers.contains(number) || waiting.contains(number), "{round}: {number} is nowhere");
            let found = stored.iter().find(|(one, _)| one == number);
            assert!(found.is_none_or(|(_, stored)| stored.said.test == *test), "{round}: {number} is another");
        }
        in_between += u32::from(waiting.iter().any(|number| numbers.contains(number)));
        assert_eq!(store.faults().unwrap(), Vec::<String>::new(), "{round}");
    }
    println!(
        "{killed} of {KILLS} killed, {said_and_killed} after it had said something, {in_between} before it let the handheld forget"
    );
    assert!(killed > KILLS / 3 && said_and_killed > 0 && in_between > 0, "{killed} {said_and_killed} {in_between}");
    let output = command(&db, &socket).output().unwrap();
    assert!(output.status.success(), "{output:?}");
    let stored: Vec<_> = all(&store::open(&db, tenter::log::Here::desk()).unwrap())
        .into_iter()
        .map(|(number, stored)| (number, stored.said.test))
        .collect();
    assert_eq!(stored, saved.into_iter().collect::<Vec<_>>());
    assert!(pocket.lock().unwrap().waiting().is_empty());
}
