//! The real program killed at any instant while it synchronises.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{Read as _, Write as _};
use std::net::Shutdown;
use std::os::unix::net::{UnixListener, UnixStream};
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::mpsc::{self, Receiver};
use std::sync::{Arc, Mutex};
use std::thread;
use std::time::Duration;

use rand::rngs::StdRng;
use rand::{Rng as _, SeedableRng as _};
use tenter::store::{self, Read as _};
use tenter_core::framing::{Accumulator, MAX_REQUEST_FRAME, decode_request};
use tenter_core::wire::LinkRequest;
use tenter_tests::program::program;
use tenter_tests::thorough;

use crate::cable::{all, stock};
use crate::cut::said_stored;
use crate::pocket::{Pocket, test};

/// Tests that are saved before each.
const SAVED: u32 = 3;
/// From so many waiting tests on they are fetched for once without a kill.
const MOST: usize = 30;

/// How the handheld answers, set before each program.
#[derive(Default)]
struct Line {
    /// Answers that are left. When there are none it hears nothing more, and tells of each question that it did not hear.
    left: AtomicUsize,
    /// Whether it hears nothing from the moment on when it is told what it may forget.
    is_deaf_to_forgetting: AtomicBool,
}

/// Answers one program after the other, for as long as this test runs, and tells of each answer.
fn serve(socket: &Path, pocket: Arc<Mutex<Pocket>>, line: Arc<Line>) -> Receiver<()> {
    let listener = UnixListener::bind(socket).unwrap();
    let (tell, answers) = mpsc::channel();
    thread::spawn(move || {
        for stream in listener.incoming() {
            let (mut stream, mut bytes) = (stream.unwrap(), [0; 256]);
            let mut questions = Accumulator::<MAX_REQUEST_FRAME>::new();
            while let Ok(count @ 1..) = stream.read(&mut bytes) {
                let forgets = bytes[..count].iter().any(|byte| questions.push(*byte).is_some_and(is_forgetting));
                if forgets && line.is_deaf_to_forgetting.load(Ordering::SeqCst) {
                    line.left.store(0, Ordering::SeqCst);
                }
                if line.left.fetch_update(Ordering::SeqCst, Ordering::SeqCst, |left| left.checked_sub(1)).is_err() {
                    tell.send(()).unwrap();
                    continue;
                }
                let mut pocket = pocket.lock().unwrap();
                let answer: Vec<u8> = bytes[..count].iter().flat_map(|byte| pocket.hear(*byte)).collect();
                if stream.write_all(&answer).is_err() {
                    break;
                }
                tell.send(()).unwrap();
            }
        }
    });
    answers
}

/// Whether a message tells the handheld up to which test it may forget.
fn is_forgetting(message: &[u8]) -> bool {
    matches!(decode_request(message), Ok((_, LinkRequest::Acknowledge { .. })))
}

/// Waits until everything that programs had sent is answered: they are served one after the other.
fn all_is_answered(socket: &Path) {
    let mut line = UnixStream::connect(socket).unwrap();
    line.shutdown(Shutdown::Write).unwrap();
    line.read_to_end(&mut Vec::new()).unwrap();
}

fn command(db: &Path, socket: &Path) -> Command {
    let mut command = Command::new(program());
    command.args(["device", "sync"]).env("TENTER_DB", db).env("TENTER_PORT", format!("unix:{}", socket.display()));
    command.env("TENTER_PATIENCE", "600");
    command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
    command
}

#[test]
fn killed_at_any_instant_it_loses_nothing_and_doubles_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let (db, socket) = (folder.path().join("log.sqlite3"), folder.path().join("line"));
    stock(&mut store::open(&db, tenter::log::Here::desk()).unwrap());
    let pocket = Arc::new(Mutex::new(Pocket::with(&[])));
    let line = Arc::new(Line { left: AtomicUsize::new(usize::MAX), ..Line::default() });
    let answers = serve(&socket, pocket.clone(), line.clone());
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
    let output = command(&db, &socket).output().unwrap();
    assert!(output.status.success(), "{output:?}");
    all_is_answered(&socket);
    // After how many answers a kill may come. It follows how many there are, which grows with what waits.
    let mut latest = answers.try_iter().count();
    let mut chance = StdRng::seed_from_u64(20_261_125);
    let (mut killed, mut said_and_killed, mut in_between) = (0, 0, 0);
    let kills = thorough(60, 200);
    for round in 0..kills {
        // It lets the handheld forget only at its end, which few of those that are killed reach.
        if pocket.lock().unwrap().waiting().len() > MOST {
            assert!(command(&db, &socket).status().unwrap().success(), "{round}");
            all_is_answered(&socket);
            latest = answers.try_iter().count().min(latest);
        }
        save(&mut saved);
        let answered = chance.random_range(0..=latest);
        // Half of the kills come while a question waits for its answer, however busy the machine is.
        let in_question = chance.random_bool(0.5);
        line.left.store(if in_question { answered } else { usize::MAX }, Ordering::SeqCst);
        // Some when all is stored and the handheld may forget it: few others get so far.
        let forgetting = round % 10 == 0;
        line.is_deaf_to_forgetting.store(forgetting, Ordering::SeqCst);
        if forgetting {
            line.left.store(usize::MAX, Ordering::SeqCst);
        }
        let wanted = answered + usize::from(in_question);
        let mut child = command(&db, &socket).spawn().unwrap();
        let mut heard = 0;
        let is_over = |heard| if forgetting { line.left.load(Ordering::SeqCst) == 0 } else { heard >= wanted };
        while !is_over(heard) && child.try_wait().unwrap().is_none() {
            heard += usize::from(answers.recv_timeout(Duration::from_millis(1)).is_ok());
        }
        // The others somewhere between this answer and the next question.
        if !in_question && !forgetting {
            thread::sleep(Duration::from_micros(chance.random_range(0..3000)));
        }
        child.kill().unwrap();
        let output = child.wait_with_output().unwrap();
        killed += u32::from(!output.status.success());
        let said = said_stored(&String::from_utf8(output.stdout).unwrap());
        said_and_killed += u32::from(!said.is_empty() && !output.status.success());
        all_is_answered(&socket);
        line.left.store(usize::MAX, Ordering::SeqCst);
        line.is_deaf_to_forgetting.store(false, Ordering::SeqCst);
        heard += answers.try_iter().count();
        latest = if output.status.success() { heard } else { latest.max(heard + 1) };
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
        assert_eq!(store.faults().unwrap(), Vec::new(), "{round}");
    }
    println!(
        "{killed} of {kills} killed, {said_and_killed} after it had said something, {in_between} before it let the handheld forget"
    );
    assert!(
        killed > kills / 3 && said_and_killed > 0 && in_between >= kills / 10,
        "{killed} {said_and_killed} {in_between}"
    );
    let output = command(&db, &socket).output().unwrap();
    assert!(output.status.success(), "{output:?}");
    let stored: Vec<_> = all(&store::open(&db, tenter::log::Here::desk()).unwrap())
        .into_iter()
        .map(|(number, stored)| (number, stored.said.test))
        .collect();
    assert_eq!(stored, saved.into_iter().collect::<Vec<_>>());
    assert!(pocket.lock().unwrap().waiting().is_empty());
}
