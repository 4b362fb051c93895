//! `tenter demo`: a file of its own, which shows a newcomer every answer, and nothing else is touched.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use program::{Program, Ran, words};
use serde_json::Value;

const EVENING: &str = include_str!("../demo/evening.jsonl");

/// The program in a folder, with `TENTER_DB` naming the log of [`Program`], which stands for the real one.
fn in_folder(program: &Program, folder: &Path, line: &str) -> Ran {
    let words = words(line);
    let mut command = program.command(&words.iter().map(String::as_str).collect::<Vec<_>>());
    command.current_dir(folder).output().unwrap().into()
}

/// What the demo advises works as it is printed, in a folder of any name.
#[test]
fn what_it_advises_runs() {
    let program = Program::new();
    let folder = tempfile::tempdir().unwrap();
    for file in ["", "evening.sqlite3", "'two words.sqlite3'"] {
        let made = in_folder(&program, folder.path(), &format!("demo {file}"));
        assert_eq!(made.code, Some(0), "{}", made.err);
        let advised: Vec<&str> = made.out.lines().filter_map(|line| line.strip_prefix("  tenter ")).collect();
        assert_eq!(advised.len(), 3, "{}", made.out);
        for line in advised {
            let ran = in_folder(&program, folder.path(), line);
            assert_ne!(ran.code, Some(2), "{line}: {}", ran.err);
            assert!(!ran.out.contains("empty"), "{line}: {}", ran.out);
        }
        let named = if file.is_empty() { "demo.sqlite3" } else { file };
        assert!(made.out.ends_with(&format!("{named}\n")), "{}", made.out);
        assert!(folder.path().join(named.trim_matches('\'')).is_file());
    }
}

/// A file that is there stays as it is, whatever it holds; the log of the reader is not even opened.
#[test]
fn nothing_else_is_touched() {
    let program = Program::new();
    let folder = tempfile::tempdir().unwrap();
    let there = folder.path().join("demo.sqlite3");
    fs::write(&there, "a shopping list").unwrap();
    let told = in_folder(&program, folder.path(), "demo");
    assert_eq!((told.code, told.err.lines().count()), (Some(2), 1), "{}", told.err);
    assert!(told.err.contains("demo.sqlite3: it is there already"), "{}", told.err);
    assert_eq!(fs::read_to_string(&there).unwrap(), "a shopping list");
    for line in ["demo other.sqlite3 --db third.sqlite3", "--db third.sqlite3 demo other.sqlite3"] {
        let told = in_folder(&program, folder.path(), line);
        assert!(told.code == Some(2) && told.err.contains("without --db"), "{}", told.err);
    }
    assert_eq!(in_folder(&program, folder.path(), "demo new.sqlite3").code, Some(0));
    let mut names: Vec<_> =
        fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    assert_eq!(names, ["demo.sqlite3", "new.sqlite3"]);
    assert!(!program.path().exists(), "the real log was begun");
    // The place of the real log is refused by name.
    let home = tempfile::tempdir().unwrap();
    let own = home.path().join("tenter/log.sqlite3");
    fs::create_dir(home.path().join("tenter")).unwrap();
    let mut command = program.command(&["demo", own.to_str().unwrap()]);
    let told: Ran = command.env("XDG_DATA_HOME", home.path()).output().unwrap().into();
    assert!(told.code == Some(2) && told.err.contains("your own log"), "{}", told.err);
    assert!(!own.exists());
}

/// The file is what `tenter export` writes, so that anybody can edit it, and nothing of it lies ahead.
#[test]
fn the_data_are_an_exported_log() {
    let program = Program::demo();
    assert_eq!(program.run(&["export"]).out, EVENING);
    let stamps: Vec<Value> = EVENING.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    let stamps: Vec<&str> = stamps.iter().filter_map(|entry| entry["at"].as_str()).collect();
    assert!(stamps.is_sorted() && stamps.iter().all(|at| *at < "2026-11-25"), "{stamps:?}");
}

/// Every answer is there to be seen, for cloth and for its amount; a cloth seen in a shop, one cut, one washed, one
/// retired, one that stays long after the pull, and twelve people's pulls of one cloth.
#[test]
fn a_newcomer_sees_every_case() {
    let program = Program::demo();
    let mut answers = BTreeSet::new();
    for (pattern, view) in [("Choir trousers", "A"), ("Choir trousers", "B"), ("Play coat", "-")] {
        let fit = program.run(&["fit", pattern, view, "--json"]).json();
        for role in fit["roles"].as_array().unwrap() {
            let fabrics = role["fabrics"].as_array().unwrap();
            assert!(fabrics.iter().any(|one| one["answer"] == "meets" && one["cloth"] != "short"), "{}", role["role"]);
            for one in fabrics {
                answers.insert(one["answer"].as_str().unwrap_or("not made so").to_owned());
                if one["answer"] == "meets" && one["cloth"] == "short" {
                    answers.insert("too little".to_owned());
                }
            }
        }
    }
    for answer in ["meets", "short", "over", "close", "unknown", "too little"] {
        assert!(answers.contains(answer), "{answer}: {answers:?}");
    }
    let kinds = ["fabric-washed", "fabric-cut", "fabric-dropped", "\"shop\"", "\"seconds\":1800"];
    kinds.iter().for_each(|kind| assert!(EVENING.contains(kind), "{kind}"));
    assert_eq!(program.tests("5").len(), 12);
    let gym = program.shown("11");
    // 131 mm after release on 100 mm marks: 31 %, by hand.
    assert_eq!(gym["grains"][0]["growth"]["percent"], 31.0, "{gym}");
}
