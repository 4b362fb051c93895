//! Many writers on one shared log, with programs and the server killed in the middle: what was said to be stored is there,
//! once.

use core::fmt;
use core::time::Duration;
use std::collections::BTreeSet;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::{Barrier, Mutex};
use std::thread;
use std::time::Instant;

use tenter::log::{Entry, FabricChange, Fact, Here, Id, Ids};
use tenter::store::postgres::{Postgres, Server};
use tenter::store::{Change as _, Once, Read as _, StoreError};

use crate::cluster::Cluster;
use crate::program::program;

/// Between two looks whether something has happened, so that looking takes nothing from the server.
const LOOK: Duration = Duration::from_millis(2);

/// How long the writers write.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Until {
    /// Each until it has made so many changes.
    Changes(u32),
    /// All until so much time is over.
    Over(Duration),
}

/// What is to be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Load {
    /// How many write at the same time.
    pub writers: u32,
    /// How long.
    pub until: Until,
    /// How often the server is killed, at even shares of the work.
    pub kills: u32,
}

/// What was done.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LoadDone {
    /// How many wrote.
    pub writers: u32,
    /// Changes that were said to be stored.
    pub changes: u32,
    /// How long it took.
    pub took: Duration,
    /// How long the writers waited for each change, sorted.
    pub waits: Vec<Duration>,
    /// How often the server was killed.
    pub kills: u32,
    /// Programs that were started, every other one of which was killed.
    pub programs: u32,
    /// Programs that said that their cloth was stored.
    pub told: u32,
    /// Changes that were sent again after a connection was lost.
    pub sent_again: u32,
}

impl fmt::Display for LoadDone {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let seconds = self.took.as_secs_f64();
        let wait = |share: usize| {
            let at = (self.waits.len() * share / 100).min(self.waits.len().saturating_sub(1));
            self.waits.get(at).copied().unwrap_or_default().as_millis()
        };
        write!(
            f,
            "{} writers, {} changes in {seconds:.1} s ({:.0} a second; half waited {} ms or less, one in a hundred over {} ms), \
             {} kills of the server, {} of {} programs killed, {} said that it was stored; {} sent again",
            self.writers,
            self.changes,
            f64::from(self.changes) / seconds,
            wait(50),
            wait(99),
            self.kills,
            self.programs.div_ceil(2),
            self.programs,
            self.told,
            self.sent_again
        )
    }
}

/// Opens the log, however often the server must be waited for.
fn open(address: &str, drafts: &Path, server: &Cluster) -> Postgres {
    loop {
        drop(server.client("postgres"));
        match Postgres::open(&Server::parse(address).expect("an address"), drafts, Here::desk()) {
            Ok(log) => return log,
            Err(StoreError::Lost { .. } | StoreError::Unreachable { .. }) => {}
            Err(error) => panic!("{error:?}"),
        }
    }
}

/// Adds a cloth under the highest tag and one. Somebody whose connection was lost sends the same once more.
fn add(log: &mut Postgres, name: &str, again: &mut dyn FnMut() -> Postgres) -> Id {
    let once = Ids::after(Here::desk(), None).next();
    loop {
        let sent = log.change_once(once, |read| {
            let highest = read.fabrics()?.last().map_or(0, |fabric| fabric.tag.number());
            let (tag, name) = (Some(highest + 1), Some(name.to_owned()));
            Ok::<_, StoreError>((vec![Fact::FabricAdded(FabricChange { tag, name, ..FabricChange::default() })], ()))
        });
        match sent {
            Ok(Once::Now(entries, ())) => return entries.first().expect("an entry").id,
            Ok(Once::Before(entry)) => return entry.id,
            Err(StoreError::Lost { .. } | StoreError::Unreachable { .. }) => *log = again(),
            Err(error) => panic!("{error:?}"),
        }
    }
}

/// The program on a log, with nothing of the machine's.
fn tenter(address: &str, folder: &Path, words: &[&str]) -> Command {
    let mut command = Command::new(program());
    for name in ["PGPASSWORD", "PGPASSFILE", "PGUSER", "PGSSLROOTCERT", "XDG_DATA_HOME"] {
        command.env_remove(name);
    }
    command.env("TENTER_DB", address).env("HOME", folder).current_dir(folder).args(words).stdin(Stdio::null());
    command
}

/// Writers, programs that are killed, and the server that is killed, all on a new log of a server of its own.
///
/// # Panics
///
/// Where something that was said to be stored is not there, or is there twice; where two cloths have one tag, or identifiers
/// do not rise in the order of arrival; and where the log is not whole in the end.
#[must_use]
pub fn run(load: &Load) -> LoadDone {
    let server = Cluster::start(&[], |_| {});
    let address = server.database();
    let folder = tempfile::tempdir().expect("a folder");
    let drafts = folder.path().join("drafts");
    // The program is built and the log begun before the clock runs.
    let begun = tenter(&address, folder.path(), &["log", "check"]).output().expect("the program starts");
    assert!(begun.status.success(), "{begun:?}");
    let (done, sent_again, over) = (AtomicU32::new(0), AtomicU32::new(0), AtomicBool::new(false));
    let (stored, told) = (Mutex::new(Vec::new()), Mutex::new(BTreeSet::new()));
    let start = Barrier::new(usize::try_from(load.writers).expect("few") + 3);
    let (programs, took) = thread::scope(|scope| {
        let (server, address, drafts, start) = (&server, &address, &drafts, &start);
        let (done, sent_again, over, stored, told) = (&done, &sent_again, &over, &stored, &told);
        let writer = move |writer: u32| {
            let mut log = open(address, drafts, server);
            let mut mine = Vec::new();
            start.wait();
            let begun = Instant::now();
            for number in 0.. {
                let is_over = match load.until {
                    Until::Changes(each) => number >= each,
                    Until::Over(time) => begun.elapsed() >= time,
                };
                if is_over {
                    break;
                }
                let (name, sent) = (format!("writer {writer} cloth {number}"), Instant::now());
                let id = add(&mut log, &name, &mut || {
                    sent_again.fetch_add(1, Ordering::SeqCst);
                    open(address, drafts, server)
                });
                mine.push((id, name, sent.elapsed()));
                done.fetch_add(1, Ordering::SeqCst);
            }
            stored.lock().expect("nobody panicked").extend(mine);
        };
        let writers: Vec<_> = (0..load.writers).map(|number| scope.spawn(move || writer(number))).collect();
        let folder = folder.path();
        let clients = scope.spawn(move || {
            start.wait();
            let mut number = 0_u32;
            while !over.load(Ordering::SeqCst) {
                let name = format!("program {number}");
                let mut command = tenter(address, folder, &["cloth", "add", &name]);
                let running = command.stdout(Stdio::piped()).stderr(Stdio::null()).spawn();
                let mut running = running.expect("the program starts");
                // Every other one is killed, as soon as somebody else has stored something.
                if number.is_multiple_of(2) {
                    let now = done.load(Ordering::SeqCst);
                    while done.load(Ordering::SeqCst) == now && !over.load(Ordering::SeqCst) {
                        thread::sleep(LOOK);
                    }
                    running.kill().expect("it is ours");
                }
                let output = running.wait_with_output().expect("it ends");
                if String::from_utf8_lossy(&output.stdout).contains("added") {
                    told.lock().expect("nobody panicked").insert(name);
                }
                number += 1;
            }
            number
        });
        let killer = scope.spawn(move || {
            start.wait();
            let begun = Instant::now();
            for kill in 1..=load.kills {
                // At even shares of the work, whatever time it takes, or of the time.
                let is_due = || match load.until {
                    Until::Changes(each) => {
                        done.load(Ordering::SeqCst) >= load.writers * each * kill / (load.kills + 1)
                    }
                    Until::Over(time) => begun.elapsed() >= time * kill / (load.kills + 1),
                };
                while !is_due() {
                    thread::sleep(LOOK);
                }
                server.kill();
            }
        });
        start.wait();
        let begun = Instant::now();
        writers.into_iter().for_each(|writer| writer.join().expect("a writer that went wrong"));
        let took = begun.elapsed();
        over.store(true, Ordering::SeqCst);
        killer.join().expect("somebody who kills");
        (clients.join().expect("somebody who starts programs"), took)
    });
    let (stored, told) = (stored.into_inner().expect("whole"), told.into_inner().expect("whole"));
    assert_eq!(u32::try_from(stored.len()).ok(), Some(done.into_inner()));
    whole(&open(&address, &drafts, &server), &stored, &told);
    let mut waits: Vec<Duration> = stored.iter().map(|(_, _, wait)| *wait).collect();
    waits.sort();
    LoadDone {
        writers: load.writers,
        changes: u32::try_from(stored.len()).expect("few"),
        took,
        waits,
        kills: load.kills,
        programs,
        told: u32::try_from(told.len()).expect("few"),
        sent_again: sent_again.into_inner(),
    }
}

/// Everything is there, once, under tags and identifiers that rise.
fn whole(log: &Postgres, stored: &[(Id, String, Duration)], told: &BTreeSet<String>) {
    let fabrics = log.fabrics().expect("cloths");
    let called: std::collections::BTreeMap<Id, &str> =
        fabrics.iter().map(|fabric| (fabric.id, fabric.name.as_str())).collect();
    for (id, name, _) in stored {
        assert_eq!(called.get(id), Some(&name.as_str()));
    }
    let names: BTreeSet<&str> = called.values().copied().collect();
    assert_eq!(names.len(), fabrics.len(), "something is there twice");
    assert!(told.iter().all(|name| names.contains(name.as_str())), "a program said so and it is not there");
    let tags: Vec<usize> = fabrics.iter().map(|fabric| fabric.tag.number().into()).collect();
    assert_eq!(tags, (1..=fabrics.len()).collect::<Vec<_>>(), "each tag once");
    let mut ids: Vec<Id> = Vec::new();
    let mut keep = |number: u64, line: &str| {
        ids.push(serde_json::from_str::<Entry>(line).expect("an entry").id);
        assert_eq!(number, ids.len() as u64);
        Ok(())
    };
    log.each_arrival(0, &mut keep).expect("arrivals");
    assert!(ids.is_sorted_by(|a, b| a < b), "identifiers rise in the order of arrival");
    assert_eq!((ids.len(), log.faults()), (fabrics.len(), Ok(Vec::new())));
}
