//! `tenter pull`, killed at any instant (SIGKILL, as a power cut would): what was said to be stored is stored, once.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

#[path = "program/kill.rs"]
mod kill;
mod program;

use core::time::Duration;
use std::collections::BTreeMap;
use std::io::Write as _;
use std::time::Instant;

use kill::{kill, kills, started_and_killed};
use program::Program;
use tenter::store::{Drafts as _, Read as _, WhichTests};
use tenter_core::Length;

/// How often each extended length was stored, in steps.
fn stored(program: &Program) -> BTreeMap<i32, usize> {
    let mut counts = BTreeMap::new();
    for test in program.log().tests(WhichTests::All).unwrap() {
        *counts.entry(test.said.test.pulls()[0].steps()).or_default() += 1;
    }
    counts
}

/// How long a run takes that nobody kills.
fn whole_run(run: impl Fn()) -> Duration {
    let begun = Instant::now();
    (0..5).for_each(|_| run());
    begun.elapsed() / 5
}

/// Each pull with a reading of its own.
#[test]
fn what_was_said_to_be_stored_is_stored_once() {
    let program = Program::with_cloth();
    let limit = whole_run(|| drop(program.line("pull 2 --marks 10cm --to 11cm"))).mul_f64(1.3);
    let mut promised = Vec::new();
    let kills = kills();
    for turn in 0..kills {
        // From 100.01 mm on, in hundredths of a millimetre.
        let to = Length::from_steps(160_000 + 16 * i32::try_from(turn + 1).unwrap());
        let text = format!("{}mm", f64::from(to.steps()) / 1600.0);
        let (out, err) =
            started_and_killed(program.command(&["pull", "1", "--marks", "100mm", "--to", &text]), turn, limit);
        assert_eq!(err, "");
        if out.contains("\n  stored    ") {
            promised.push(to.steps());
        }
    }
    let mut counts = stored(&program);
    counts.remove(&Length::from_mm(110).steps());
    for steps in &promised {
        assert_eq!(counts.get(steps), Some(&1), "{steps} steps were said to be stored");
    }
    assert!(counts.values().all(|count| *count == 1), "stored twice: {counts:?}");
    assert_eq!(program.log().faults().unwrap(), Vec::new());
    println!("{kills} kills: {} said to be stored, {} stored", promised.len(), counts.len());
    // Kills came before and after the instant that decides.
    assert!((1..kills as usize).contains(&counts.len()), "{} of {kills} were stored", counts.len());
}

/// Guided tests killed and resumed until they are finished: each is stored once, with all its readings.
#[test]
fn a_guided_test_is_stored_once_however_often_it_is_killed() {
    let program = Program::with_cloth();
    let whole = || drop(program.typed(&["pull", "2"], "\n\n10\nn\n0\n11\nf\n"));
    let limit = whole_run(whole).mul_f64(1.3);
    let (mut killed, mut finished) = (0, 0);
    while killed < kills() {
        let to = Length::from_steps(160_000 + 16 * i32::try_from(finished + 1).unwrap());
        let answers = format!("\n\n100mm\nn\n0\n{}\nf\n", f64::from(to.steps()) / 1600.0);
        // The answers still to be given depend on how far it came.
        loop {
            let draft = program.log().draft(&format!("pull/{}", program.shown("1")["id"].as_str().unwrap())).unwrap();
            let stored = stored(&program).contains_key(&to.steps());
            if stored && draft.is_none() {
                break;
            }
            let done = draft.map_or(0, |text| answered(&text));
            let rest: String = answers.split_inclusive('\n').skip(done).collect();
            let flags: &[&str] = if done > 0 { &["pull", "1", "--resume"] } else { &["pull", "1"] };
            let mut running = program.started(flags);
            let _ = running.stdin.take().unwrap().write_all(rest.as_bytes());
            // A test that is stored and not yet forgotten is forgotten by the next run.
            kill(running, killed, limit);
            killed += 1;
        }
        finished += 1;
    }
    let mut counts = stored(&program);
    counts.remove(&Length::from_mm(110).steps());
    assert_eq!(counts.len(), usize::try_from(finished).unwrap());
    assert!(counts.values().all(|count| *count == 1), "stored twice: {counts:?}");
    assert_eq!(program.log().faults().unwrap(), Vec::new());
    println!("{killed} kills: {finished} guided tests, each stored once");
    assert!(finished < killed, "no kill came in between");
}

/// How many of the seven answers a draft holds.
fn answered(text: &str) -> usize {
    use tenter::guide::{Draft, NextQuestion};
    match Draft::read(text).unwrap().stage {
        NextQuestion::Held => 0,
        NextQuestion::Settling => 1,
        NextQuestion::Gauge => 2,
        NextQuestion::Again => 3,
        NextQuestion::Wait => 4,
        NextQuestion::Pull => 5,
        NextQuestion::Next => 6,
        NextQuestion::Done => 7,
        stage => panic!("{stage:?} was not asked for"),
    }
}
