//! A file and a log of any engine take from each other what each lacks, however often that is cut off.

use std::fs;
use std::time::Instant;

use crate::desk::Desk;
use crate::engine::{Engine, on_every_shared_engine};
use crate::kill::{kills, started_and_killed};

on_every_shared_engine!(the_samples_join_a_log_of_another_desk, what_is_cut_off_is_done_again);

fn the_samples_join_a_log_of_another_desk(engine: Engine) {
    let (desk, there) = (Desk::new(), engine.home());
    desk.demo("samples.db");
    desk.fill_memory(there.address());
    desk.ok(there.address(), &["pull", "1", "--marks", "10cm", "--to", "10.2cm", "--by", "Ruth"]);
    let told = desk.ok("samples.db", &["sync", there.address()]);
    assert!(told.starts_with("your log took ") && told.contains(" took ") && told.contains("4 photographs"), "{told}");
    let (here, other) = (desk.ok("samples.db", &["export"]), desk.ok(there.address(), &["export"]));
    assert_eq!(here, other, "byte for byte");
    let questions: [&[&str]; 2] = [&["cloth", "list", "--json"], &["fit", "Choir trousers", "A", "--json"]];
    for question in questions {
        let said = ["samples.db", there.address()].map(|log| desk.run(log, question).stdout);
        assert!(said[0] == said[1] && said[0].len() > 2, "{question:?}");
    }
    // Who pulls at a desk is remembered there, and goes nowhere.
    let people = |log| desk.ok(log, &["people", "list"]);
    let (here, other) = (people("samples.db"), people(there.address()));
    assert!(here.contains("Ruth") && !here.contains("pulls here"), "{here}");
    assert!(other.contains("Ada") && other.contains("pulls here"), "{other}");
    let again = desk.ok("samples.db", &["sync", there.address()]);
    assert!(again.starts_with("nothing was new in either log\n"), "{again}");
    assert!(desk.refused(there.address(), &["sync", there.address()]).contains("that is the same log"));
}

/// Killed at any instant, and begun again: nothing is lost or doubled.
fn what_is_cut_off_is_done_again(engine: Engine) {
    let (desk, kills) = (Desk::new(), kills() / 4);
    desk.demo("samples.db");
    desk.fill_memory("memory.db");
    let memory = desk.ok("memory.db", &["export"]);
    fs::write(desk.path("memory.jsonl"), memory).unwrap();
    fs::copy(desk.path("samples.db"), desk.path("all.db")).unwrap();
    desk.ok("all.db", &["import", "memory.jsonl"]);
    let all = desk.ok("all.db", &["export"]);
    let mut limit = None;
    let mut cut_off = 0;
    for kill in 0..kills {
        let there = engine.home();
        desk.ok(there.address(), &["import", "memory.jsonl"]);
        fs::copy(desk.path("samples.db"), desk.path("here.db")).unwrap();
        let words = ["sync", there.address()];
        if let Some(limit) = limit {
            let said = started_and_killed(desk.command("here.db", &words), kill, limit).0;
            cut_off += u32::from(said.is_empty());
        }
        let begun = Instant::now();
        desk.ok("here.db", &words);
        limit.get_or_insert(begun.elapsed().mul_f64(1.2));
        assert_eq!(there.open().faults().unwrap(), Vec::new());
        for log in ["here.db", there.address()] {
            assert_eq!(desk.ok(log, &["export"]), all, "{log} after kill {kill}");
        }
    }
    assert!(cut_off > 0, "no kill came before the end");
}
