//! Many writers on one log, clients and the server killed in the middle: what was said to be stored is there, once.

use core::time::Duration;
use std::collections::BTreeSet;
use std::path::Path;
use std::process::Stdio;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::{Barrier, Mutex};
use std::thread;
use std::time::Instant;

use tenter::log::{FabricChange, Fact, Here, Id, Ids};
use tenter::store::postgres::{Postgres, Server};
use tenter::store::{Change as _, Once, Read as _, StoreError};
use tenter_tests::cluster::Cluster;
use tenter_tests::thorough;

use crate::desk::Desk;

const WRITERS: usize = 30;
/// Between two looks whether something has happened, so that looking takes nothing from the server.
const LOOK: Duration = Duration::from_millis(2);

/// Opens the log, however often the server must be waited for.
fn open(address: &str, drafts: &Path, server: &Cluster) -> Postgres {
    loop {
        drop(server.client("postgres"));
        match Postgres::open(&Server::parse(address).unwrap(), drafts, Here::desk()) {
            Ok(log) => return log,
            Err(StoreError::Lost { .. } | StoreError::Unreachable { .. }) => {}
            Err(error) => panic!("{error:?}"),
        }
    }
}

/// Thirty people each add cloths, each under the highest tag and one. Beside them programs do the same that are killed, and the
/// server is killed and comes back. Somebody whose connection was lost sends the same once more.
#[test]
fn thirty_writers_while_clients_and_the_server_are_killed() {
    let each = thorough(12, 400);
    let kills = thorough(2, 12);
    let server = Cluster::start(&[], |_| {});
    let (address, desk) = (server.database(), Desk::new());
    // The program is built and the log begun before the clock runs.
    desk.ok(&address, &["log", "check"]);
    let all = u32::try_from(WRITERS).unwrap() * each;
    let (done, sent_again, over) = (AtomicU32::new(0), AtomicU32::new(0), AtomicBool::new(false));
    let (stored, told) = (Mutex::new(Vec::new()), Mutex::new(BTreeSet::new()));
    let start = Barrier::new(WRITERS + 2);
    let begun = Instant::now();
    let killed = thread::scope(|scope| {
        let writer = |writer: usize| {
            let mut log = open(&address, &desk.path("drafts"), &server);
            let mut mine = Vec::new();
            start.wait();
            for number in 0..each {
                let once = Ids::after(Here::desk(), None).next();
                let name = format!("writer {writer} cloth {number}");
                let id = loop {
                    let sent = log.change_once(once, |read| {
                        let highest = read.fabrics()?.last().map_or(0, |fabric| fabric.tag.number());
                        let (tag, name) = (Some(highest + 1), Some(name.clone()));
                        Ok::<_, StoreError>((
                            vec![Fact::FabricAdded(FabricChange { tag, name, ..FabricChange::default() })],
                            (),
                        ))
                    });
                    match sent {
                        Ok(Once::Now(entries, ())) => break entries[0].id,
                        Ok(Once::Before(entry)) => break entry.id,
                        Err(StoreError::Lost { .. } | StoreError::Unreachable { .. }) => {
                            sent_again.fetch_add(1, Ordering::SeqCst);
                            log = open(&address, &desk.path("drafts"), &server);
                        }
                        Err(error) => panic!("{error:?}"),
                    }
                };
                mine.push((id, name));
                done.fetch_add(1, Ordering::SeqCst);
            }
            stored.lock().unwrap().extend(mine);
        };
        let writers: Vec<_> = (0..WRITERS).map(|number| scope.spawn(move || writer(number))).collect();
        let clients = scope.spawn(|| {
            start.wait();
            let mut number = 0_u32;
            while !over.load(Ordering::SeqCst) {
                let name = format!("program {number}");
                let mut command = desk.command(&address, &["cloth", "add", &name]);
                let mut running = command.stdout(Stdio::piped()).stderr(Stdio::null()).spawn().unwrap();
                // Every other one is killed, as soon as somebody else has stored something.
                if number.is_multiple_of(2) {
                    let now = done.load(Ordering::SeqCst);
                    while done.load(Ordering::SeqCst) == now && !over.load(Ordering::SeqCst) {
                        thread::sleep(LOOK);
                    }
                    running.kill().unwrap();
                }
                let output = running.wait_with_output().unwrap();
                if String::from_utf8_lossy(&output.stdout).contains("added") {
                    told.lock().unwrap().insert(name);
                }
                number += 1;
            }
            number
        });
        let server = &server;
        let killer = scope.spawn({
            let (start, done) = (&start, &done);
            move || {
                start.wait();
                for kill in 1..=kills {
                    // At even shares of the work, whatever time it takes.
                    while done.load(Ordering::SeqCst) < all * kill / (kills + 1) {
                        thread::sleep(LOOK);
                    }
                    server.kill();
                }
            }
        });
        writers.into_iter().for_each(|writer| writer.join().unwrap());
        over.store(true, Ordering::SeqCst);
        killer.join().unwrap();
        clients.join().unwrap()
    });
    let took = begun.elapsed().as_secs_f64();

    let log = open(&address, &desk.path("drafts"), &server);
    let fabrics = log.fabrics().unwrap();
    let (stored, told) = (stored.into_inner().unwrap(), told.into_inner().unwrap());
    assert_eq!(stored.len(), all as usize);
    for (id, name) in &stored {
        assert_eq!(log.fabric(*id).unwrap().map(|fabric| fabric.name).as_ref(), Some(name));
    }
    let names: BTreeSet<&str> = fabrics.iter().map(|fabric| fabric.name.as_str()).collect();
    assert_eq!(names.len(), fabrics.len(), "something is there twice");
    assert!(told.iter().all(|name| names.contains(name.as_str())), "a program said so and it is not there");
    let tags: Vec<usize> = fabrics.iter().map(|fabric| fabric.tag.number().into()).collect();
    assert_eq!(tags, (1..=fabrics.len()).collect::<Vec<_>>(), "each tag once");
    let mut ids: Vec<Id> = Vec::new();
    let mut keep = |number: u64, line: &str| {
        ids.push(serde_json::from_str::<tenter::log::Entry>(line).unwrap().id);
        assert_eq!(number, ids.len() as u64);
        Ok(())
    };
    log.each_arrival(0, &mut keep).unwrap();
    assert!(ids.is_sorted_by(|a, b| a < b), "identifiers rise in the order of arrival");
    assert_eq!((ids.len(), log.faults()), (fabrics.len(), Ok(Vec::new())));
    println!(
        "{WRITERS} writers, {all} changes in {took:.1} s ({:.0} a second), {kills} kills of the server, {} of {killed} programs \
         killed, {} said that it was stored; {} sent again",
        f64::from(all) / took,
        killed.div_ceil(2),
        told.len(),
        sent_again.into_inner()
    );
}
