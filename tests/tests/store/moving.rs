//! A log moves from one engine to another by export and import: nothing is lost, and every answer is the same to the digit.

use crate::desk::Desk;
use crate::engine::{Engine, on_every_shared_engine};

on_every_shared_engine!(the_samples_move_there_and_back);

/// What is asked of the samples; code 3 is an answer too.
const QUESTIONS: [&[&str]; 9] = [
    &["cloth", "list", "--json"],
    &["cloth", "show", "1", "--json"],
    &["cloth", "show", "5", "--json"],
    &["fit", "Choir trousers", "A", "--json"],
    &["fit", "Choir trousers", "A"],
    &["pattern", "list", "--json"],
    &["export", "--csv", "tests", "-"],
    &["export", "--csv", "cloths", "-"],
    &["export", "-"],
];

fn the_samples_move_there_and_back(engine: Engine) {
    let desk = Desk::new();
    let samples = desk.path("samples.sqlite3");
    let samples = samples.to_str().unwrap();
    desk.ok(samples, &["demo", samples]);
    let there = engine.home();
    desk.ok(samples, &["export", "all.jsonl"]);
    let counted = desk.ok(there.address(), &["import", "all.jsonl"]);
    assert!(counted.contains(" new, 0 known"), "{counted}");
    let again = desk.ok(there.address(), &["import", "all.jsonl"]);
    assert!(again.starts_with("0 new, "), "{again}");
    desk.ok(there.address(), &["export", "back.jsonl"]);
    let back = desk.path("back.sqlite3");
    let back = back.to_str().unwrap();
    desk.ok(back, &["import", "back.jsonl"]);
    for log in [there.address(), back] {
        for question in QUESTIONS {
            let (said, expected) = (desk.run(log, question), desk.run(samples, question));
            assert_eq!(said.status, expected.status, "{question:?}: {said:?}");
            let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
            assert_eq!(text(&said.stdout), text(&expected.stdout), "{question:?} on {log}");
            assert!(said.stdout.len() > 100, "{question:?}");
        }
    }
    let file = |name| std::fs::read(desk.path(name)).unwrap();
    assert_eq!(file("all.jsonl"), file("back.jsonl"), "byte for byte");
}
