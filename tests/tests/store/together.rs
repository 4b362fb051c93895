//! Laws of a log in many hands at once.

use std::collections::BTreeSet;
use std::sync::Barrier;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::Instant;

use tenter::log::{Id, Subject, fold};
use tenter::store::{Change as _, StoreError};
use tenter_tests::emulator::HANGS;

use crate::desk::Desk;
use crate::engine::{Engine, on_every_shared_engine};
use crate::laws::{arrivals, cloth};

on_every_shared_engine!(
    each_writer_reads_what_the_others_stored,
    a_follower_misses_nothing,
    two_programs_write_at_once,
    several_programs_begin_a_log_at_once,
);

const WRITERS: usize = 6;
const EACH: usize = 40;

/// Changes the log, and asks again while others keep it busy, as the error says to do: how long they take is the machine's
/// affair. Nothing was stored by a change that was told so; the laws would see it.
fn in_turn<T>(mut change: impl FnMut() -> Result<T, StoreError>) -> T {
    let begun = Instant::now();
    loop {
        match change() {
            Err(StoreError::Busy { .. }) if begun.elapsed() < HANGS => {}
            said => return said.unwrap(),
        }
    }
}

/// Everybody adds the highest tag and one: no tag is there twice, and what the tables say is what the entries say.
fn each_writer_reads_what_the_others_stored(engine: Engine) {
    let home = engine.home();
    let start = Barrier::new(WRITERS);
    thread::scope(|scope| {
        for _ in 0..WRITERS {
            scope.spawn(|| {
                let mut log = home.open();
                start.wait();
                for _ in 0..EACH {
                    in_turn(|| {
                        log.change(|read| {
                            let highest = read.fabrics()?.last().map_or(0, |fabric| fabric.tag.number());
                            Ok::<_, StoreError>((vec![cloth(highest + 1)], ()))
                        })
                    });
                }
            });
        }
    });
    let log = home.open();
    let fabrics = log.fabrics().unwrap();
    let tags: Vec<usize> = fabrics.iter().map(|fabric| fabric.tag.number().into()).collect();
    assert_eq!(tags, (1..=WRITERS * EACH).collect::<Vec<_>>());
    for fabric in &fabrics {
        assert_eq!(fold::fabric(log.history(Subject::Fabric(fabric.id)).unwrap()).as_ref(), Some(fabric));
    }
    let ids: Vec<Id> = arrivals(&*log, 0).into_iter().map(|(_, id)| id).collect();
    assert!(ids.is_sorted_by(|a, b| a < b), "identifiers rise in the order of arrival");
}

/// Somebody who asks again and again for what came after the last number has seen everything in the end, once.
fn a_follower_misses_nothing(engine: Engine) {
    let home = engine.home();
    let (start, over) = (Barrier::new(WRITERS + 1), AtomicBool::new(false));
    let (seen, numbers) = thread::scope(|scope| {
        let follower = scope.spawn(|| {
            let log = home.open();
            let (mut seen, mut last, mut numbers) = (Vec::new(), 0, Vec::new());
            start.wait();
            loop {
                // Whoever stops writing has stopped before the last look.
                let end = over.load(Ordering::SeqCst);
                for (number, id) in arrivals(&*log, last) {
                    last = number;
                    numbers.push(number);
                    seen.push(id);
                }
                if end {
                    return (seen, numbers);
                }
            }
        });
        let writers: Vec<_> = (0..WRITERS)
            .map(|_| {
                scope.spawn(|| {
                    let mut log = home.open();
                    start.wait();
                    for tag in 1..=EACH {
                        in_turn(|| log.add(&[cloth(u16::try_from(tag).unwrap())]));
                    }
                })
            })
            .collect();
        writers.into_iter().for_each(|writer| writer.join().unwrap());
        over.store(true, Ordering::SeqCst);
        follower.join().unwrap()
    });
    assert_eq!(numbers, (1..=(WRITERS * EACH) as u64).collect::<Vec<_>>());
    assert_eq!(seen.iter().collect::<BTreeSet<_>>().len(), WRITERS * EACH);
}

/// Two at once, each adding many: all are there, and each has a tag of its own.
fn two_programs_write_at_once(engine: Engine) {
    let (desk, home) = (Desk::new(), engine.home());
    thread::scope(|scope| {
        for writer in ["left", "right"] {
            let (desk, home) = (&desk, &home);
            scope.spawn(move || {
                for count in 0..100 {
                    desk.ok_in_turn(home.address(), &["cloth", "add", &format!("{writer} {count}")]);
                }
            });
        }
    });
    let log = home.open();
    let tags: Vec<u16> = log.fabrics().unwrap().iter().map(|fabric| fabric.tag.number()).collect();
    assert_eq!((tags, log.faults()), ((1..=200).collect::<Vec<u16>>(), Ok(Vec::new())));
}

/// Six programs begin the same log at once, again and again.
fn several_programs_begin_a_log_at_once(engine: Engine) {
    for round in 0..20 {
        let (desk, home) = (Desk::new(), engine.home());
        thread::scope(|scope| {
            for writer in 0..6 {
                let (desk, home) = (&desk, &home);
                scope.spawn(move || desk.ok_in_turn(home.address(), &["cloth", "add", &format!("cloth {writer}")]));
            }
        });
        assert_eq!(home.open().count().unwrap(), 6, "round {round}");
    }
}
