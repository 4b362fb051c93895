//! The unit of bare numbers and of the texts: the first that was said in a log holds there from then on.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use program::Program;
use serde_json::Value;
use tenter::store::Read as _;

const INCH: f64 = 25.4;

fn gauge(json: &Value) -> f64 {
    json["gauge_mm"].as_f64().unwrap()
}

#[test]
fn the_first_unit_is_remembered() {
    let program = Program::with_cloth();
    let bare = "check 10 10.6 --json";
    assert_eq!(gauge(&program.line(bare).json()), 100.0);
    // Whoever only looks in inches has not chosen them, nor has the environment.
    assert_eq!(gauge(&program.line(&format!("{bare} --units in")).json()), 10.0 * INCH);
    program.line("cloth list --units in");
    let list = program.command(&["cloth", "edit", "1", "--note", "soft"]).env("TENTER_UNITS", "in").output().unwrap();
    assert!(list.status.success());
    assert_eq!(gauge(&program.line(bare).json()), 100.0);
    program.line("cloth edit 1 --length 3yd --units in");
    let entries = program.log_entries();
    // In every verb, without a word: readings, texts and pages.
    assert_eq!(gauge(&program.line(bare).json()), 10.0 * INCH);
    let stored = program.line("pull 1 --marks 4 --settling --to 5 --to 5 --to 5");
    assert!(stored.out.contains("numbers without a unit are read in inches"), "{}", stored.out);
    assert_eq!(gauge(&program.tests("1")[0]), 4.0 * INCH);
    assert!(program.line("cloth show 1").out.contains("4 in"));
    assert_eq!(program.log_entries(), entries + 1, "only the test");
    let guided = program.typed(&["pull", "2"], "");
    assert!(guided.err.contains("8 in suits a woven"), "{}", guided.err);
    // Another unit holds for once; so that what a bare number means in this log never changes.
    assert_eq!(gauge(&program.line(&format!("{bare} --units cm")).json()), 100.0);
    assert_eq!(gauge(&program.line(bare).json()), 10.0 * INCH);
    // The environment goes before the log.
    let words: Vec<&str> = bare.split(' ').collect();
    let ran = program.command(&words).env("TENTER_UNITS", "cm").output().unwrap();
    assert_eq!(gauge(&serde_json::from_slice(&ran.stdout).unwrap()), 100.0);
    // Marks with a unit of their own are read in that.
    assert_eq!(gauge(&program.line("check 100mm 106 --json").json()), 100.0);
    assert_eq!(program.log().faults().unwrap(), Vec::new());
}

/// What is typed wrong is not remembered, and `check` begins no log.
#[test]
fn nothing_is_remembered_without_need() {
    let program = Program::new();
    assert_eq!(program.line("check 4 4.5 --units in").code, Some(0));
    assert!(!program.path().exists());
    let program = Program::with_cloth();
    let before = program.log_entries();
    assert_eq!(program.line("cloth show 99 --units in").code, Some(2));
    assert_eq!(program.log_entries(), before);
    program.line("check 10 10.6");
    assert_eq!(program.log_entries(), before, "nothing was said of units");
}

/// Another person's log brings its cloths and not its units; an empty log takes both.
#[test]
fn a_merged_log_keeps_its_own_unit() {
    let (inches, centimetres, fresh) = (Program::with_cloth(), Program::with_cloth(), Program::new());
    inches.line("cloth edit 1 --length 3yd --units in");
    centimetres.line("cloth edit 1 --length 3m --units cm");
    let file = inches.path().with_file_name("log.jsonl");
    let file = file.to_str().unwrap();
    assert_eq!(inches.run(&["export", file]).code, Some(0));
    for (program, mm) in [(&centimetres, 100.0), (&fresh, 10.0 * INCH)] {
        assert_eq!(program.run(&["import", file]).code, Some(0));
        assert_eq!(gauge(&program.line("check 10 10.6 --json").json()), mm);
    }
    let text = std::fs::read_to_string(file).unwrap();
    assert!(text.contains("\"kind\":\"units-set\",\"units\":\"in\""), "{text}");
    std::fs::write(file, text.replace("\"units\":\"in\"", "\"units\":\"ell\"")).unwrap();
    let refused = Program::new().run(&["import", file]);
    assert_eq!((refused.code, refused.err.matches('\n').count()), (Some(2), 1), "{refused:?}");
    assert!(refused.err.contains("a unit other than mm, cm and in"), "{}", refused.err);
}
