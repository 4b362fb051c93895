//! `tenter pull` step by step: the real program with lines on its standard input, killed and resumed.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use std::io::{BufRead as _, BufReader, Read as _, Write as _};

use program::Program;
use serde_json::{Value, json};
use tenter::guide::{Draft, NextQuestion};
use tenter::log::Id;
use tenter::store::{Drafts as _, Read as _, WhichTests};

/// Marks 10 cm apart, no reading after release, three pulls.
const THREE: &str = "\n\n10\nn\n0\n12.4\n\n12.5\n\n12.4\n\n";

fn draft_name(program: &Program, tag: &str) -> String {
    format!("pull/{}", program.shown(tag)["id"].as_str().unwrap())
}

/// What was typed is what is stored; questions go to standard error, the answer to standard output.
#[test]
fn a_guided_test_is_stored() {
    let program = Program::with_cloth();
    let lines = "3\n\n\n10\n2\n\n12.4\n\n10.2@60s\n\n\n12,5 cm\n\n102mm@1min\n2\n";
    let ran = program.typed(&["pull", "1", "--wants", "5%", "--note", "evening", "--grain", "lengthwise"], lines);
    assert_eq!(ran.code, Some(0), "{ran:?}");
    assert!(ran.out.starts_with("MEETS") && ran.out.contains("lengthwise, strip, 2 pulls by hand"), "{}", ran.out);
    assert!(ran.err.contains("stretch 25.0 % this time, 24.5 % over 2 pulls, easy"), "{}", ran.err);
    assert!(ran.err.lines().chain(ran.out.lines()).all(|line| line.chars().count() <= 80), "{ran:?}");
    assert!(!ran.err.contains('\u{1b}') && !ran.err.contains('\u{7}'), "{}", ran.err);
    let tests = program.tests("1");
    assert_eq!((tests.len(), &tests[0]["extended_mm"]), (1, &json!([124.0, 125.0])));
    assert_eq!((&tests[0]["note"], &tests[0]["grain"]), (&json!("evening"), &json!("lengthwise")));
    assert_eq!(program.log().draft(&draft_name(&program, "1")).unwrap(), None);
    // Nothing is left to resume or to forget.
    for flag in ["--resume", "--discard"] {
        let ran = program.run(&["pull", "1", flag]);
        assert_eq!((ran.code, ran.err.matches('\n').count()), (Some(2), 1), "{ran:?}");
        assert!(ran.err.contains("cloth 1 has no unfinished test"), "{}", ran.err);
    }
}

/// The dialogue in the guide is the one that is led.
#[test]
fn the_guide_shows_the_dialogue() {
    let program = Program::with_cloth();
    let readme = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/guide/measuring.md")).unwrap();
    let block = readme.split("```dialogue\n$ tenter pull 1\n").nth(1).unwrap().split("```").next().unwrap();
    let ran = program.typed(&["pull", "1"], "\n\n\n10.1\n2\n\n1240\n12.4\n\n10.2@60s\nf\n");
    let lines = |text: &str| text.trim_end().lines().map(|line| line.trim_end().to_owned()).collect::<Vec<_>>();
    assert_eq!(lines(&ran.err), lines(block));
}

/// What is planned and asked beforehand is kept with the test: how many pulls, and when growth is read.
#[test]
fn what_was_planned_is_kept() {
    let program = Program::with_cloth();
    let arguments = ["pull", "1", "--planned", "2", "--growth-at-most", "3%@60s"];
    let ran = program.typed(&arguments, "\n\n10\n10.1\n\n12.4\n\n10.1\n\n12.5\n\n10.1\n\n");
    assert!(ran.err.contains("3) 30 min  0) never [1 min]: "), "{}", ran.err);
    assert!(ran.out.contains("2 pulls by hand"), "{ran:?}");
    let test = program.log().tests(WhichTests::All).unwrap().remove(0).said.test;
    assert_eq!((test.planned_pulls(), test.looks().count(), test.rests().len()), (Some(2), 2, 2));
    let asked = program.typed(&["pull", "2", "--growth-at-most", "3%"], "\n\n20\nn\nq\n");
    assert!(asked.err.contains("0) never [30 min]: "), "{}", asked.err);
    // A resumed test may be told how many.
    let ran = program.typed(&["pull", "2", "--resume", "--planned", "1"], "\n21.2\n\n20.1@30min\n\n");
    assert_eq!(ran.code, Some(3), "{ran:?}");
    assert_eq!(program.log().tests(WhichTests::All).unwrap().remove(1).said.test.planned_pulls(), Some(1));
}

/// With --json, standard output holds the object and nothing else.
#[test]
fn json_stays_clean() {
    let program = Program::with_cloth();
    let json = program.typed(&["pull", "1", "--json"], THREE).json();
    assert_eq!((&json["pulls"], &json["gauge_mm"]), (&json!(3), &json!(100.0)));
    assert_eq!(json["test"], program.tests("1")[0]["id"]);
}

/// A wrong flag is said before anything is measured.
#[test]
fn flags_are_read_first() {
    let program = Program::with_cloth();
    for (flags, want) in [
        (["--wants", "lots"], "--wants 'lots'"),
        (["--load", "heavy"], "--load 'heavy'"),
        (["--division", "0"], "--division '0'"),
        (["--planned", "11"], "--planned '11'"),
        (["--at", "2999-01-01"], "--at '2999-01-01'"),
        (["--confidence", "100"], "--confidence '100'"),
        (["--table", "mine"], "--table 'mine'"),
    ] {
        let ran = program.typed(&["pull", "1", flags[0], flags[1]], "");
        assert_eq!((ran.code, ran.err.matches('\n').count()), (Some(2), 1), "{ran:?}");
        assert!(ran.err.contains(want), "{}", ran.err);
    }
}

/// The end of the input and q keep what was typed; so does a wrong line.
#[test]
fn broken_off_and_resumed() {
    let program = Program::with_cloth();
    let ran = program.typed(&["pull", "1", "--wants", "15%", "--at", "2025-03-20"], "\n\n10\nn\n0\n12.4\nlots\n");
    assert_eq!((ran.code, ran.out.as_str()), (Some(3), ""), "{ran:?}");
    assert!(ran.err.ends_with("kept; go on with tenter pull 1 --resume\n"), "{}", ran.err);
    assert_eq!(program.tests("1").len(), 0);
    // Offered, and gone on with; q keeps it again.
    let ran = program.typed(&["pull", "1"], "what\nr\n\n12.5\nq\n");
    assert!(ran.err.contains("a test was broken off: crosswise, marks 10 cm, 1 pull, begun"), "{}", ran.err);
    assert!(ran.err.contains("type r, n or discard"), "{}", ran.err);
    // What was asked and the day are still known.
    let ran = program.typed(&["pull", "1", "--resume"], "f\n");
    assert_eq!(ran.code, Some(0), "{ran:?}");
    assert!(ran.out.starts_with("MEETS  stretch at least 15 %"), "{}", ran.out);
    let tests = program.tests("1");
    assert_eq!((tests.len(), &tests[0]["extended_mm"]), (1, &json!([124.0, 125.0])));
    assert!(program.run(&["cloth", "show", "1"]).out.contains("2025-03-20"));
}

/// Begun anew, dropped, discarded: stored tests stay. Readings given on the command line leave the draft alone.
#[test]
fn a_draft_can_be_let_go() {
    let program = Program::with_cloth();
    let broken_off = || assert_eq!(program.typed(&["pull", "1"], "\n\n10\nn\n0\n12.4\n").code, Some(3));
    broken_off();
    assert_eq!(program.line("pull 1 --marks 10cm --to 11cm").code, Some(0));
    let anew = program.typed(&["pull", "1"], &format!("n\n{THREE}"));
    assert!(anew.out.contains("3 pulls by hand"), "{anew:?}");
    // What was broken off is still there, and one letter does not delete it.
    let kept = program.typed(&["pull", "1"], "d\n");
    assert!(kept.err.contains("marks 10 cm, 1 pull") && kept.err.contains("type discard in full"), "{kept:?}");
    assert!(program.typed(&["pull", "1"], "discard\n").err.contains("discarded; stored tests stay"));
    broken_off();
    let forgotten = program.run(&["pull", "1", "--discard"]);
    assert_eq!(forgotten.out, "forgotten: the unfinished test of cloth 1; stored tests stay\n");
    assert_eq!(program.tests("1").len(), 2);
    // A draft of another fabric is none of this one.
    broken_off();
    assert_eq!(program.run(&["pull", "2", "--resume"]).code, Some(2));
    // Nothing typed, nothing kept.
    assert!(program.typed(&["pull", "2"], "").err.ends_with("nothing was measured\n"));
    assert_eq!(program.run(&["pull", "2", "--discard"]).code, Some(2));
    // A draft that cannot be read is not in the way of being forgotten.
    program.log().set_draft(&draft_name(&program, "2"), Some("{")).unwrap();
    assert!(program.typed(&["pull", "2"], THREE).err.contains("tenter pull 2 --discard"));
    assert_eq!(program.run(&["pull", "2", "--discard"]).code, Some(0));
}

/// Begun anew twice: three tests lie there, are listed the newest first, and are gone on with one by one.
#[test]
fn beginning_anew_destroys_no_readings() {
    let program = Program::with_cloth();
    assert_eq!(program.typed(&["pull", "1"], "\n\n10\nn\n0\n12.4\n").code, Some(3));
    for gauge in ["11", "12"] {
        assert_eq!(program.typed(&["pull", "1"], &format!("n\n\n\n{gauge}\nn\n0\n13.9\n")).code, Some(3));
    }
    let listed = program.typed(&["pull", "1"], "");
    let newest_first = ["1  a test was broken off", "marks 12 cm", "2  a", "marks 11 cm", "3  a", "marks 10 cm"];
    let places: Vec<Option<usize>> = newest_first.iter().map(|part| listed.err.find(part)).collect();
    assert!(places.is_sorted() && places.iter().all(Option::is_some), "{}", listed.err);
    let refused = program.run(&["pull", "1", "--discard"]);
    assert!(refused.code == Some(2) && refused.err.contains("3 unfinished tests"), "{refused:?}");
    assert_eq!(program.typed(&["pull", "1"], "3\n\n12.5\n\n12.6\n\n").code, Some(0));
    assert!(program.typed(&["pull", "1"], "discard 1\n").err.contains("discarded"));
    assert_eq!(program.typed(&["pull", "1"], "r\nf\n").code, Some(0));
    let marks: Vec<Value> = program.tests("1").iter().map(|test| test["gauge_mm"].clone()).collect();
    assert_eq!(marks.len(), 2);
    assert!(marks.contains(&json!(100.0)) && marks.contains(&json!(110.0)), "{marks:?}");
    assert!(program.run(&["pull", "1", "--discard"]).err.contains("no unfinished test"));
}

/// Two readings, SIGKILL, resume, finish: one test with the readings of both halves.
#[test]
fn killed_and_resumed() {
    let program = Program::with_cloth();
    let mut running = program.started(&["pull", "1"]);
    let mut input = running.stdin.take().unwrap();
    input.write_all(b"\n\n10\nn\n0\n12.4\n\n12.5\n").unwrap();
    // Taken once the stretch of the second pull is shown.
    let mut said = BufReader::new(running.stderr.take().unwrap()).lines().map(Result::unwrap);
    assert!(said.any(|line| line.contains("over 2 pulls")));
    running.kill().unwrap();
    running.wait().unwrap();
    let ran = program.typed(&["pull", "1", "--resume"], "\n12.6\n\n");
    assert_eq!(ran.code, Some(0), "{ran:?}");
    let extended: Vec<Value> = program.tests("1").iter().map(|test| test["extended_mm"].clone()).collect();
    assert_eq!(extended, [json!([124.0, 125.0, 126.0])]);
}

/// Killed after the test was stored and before the draft was forgotten: it is neither lost nor stored again.
#[test]
fn stored_once() {
    let program = Program::with_cloth();
    program.typed(&["pull", "1"], "\n\n10\nn\n0\n12.4\n");
    let name = draft_name(&program, "1");
    let text = program.log().draft(&name).unwrap().unwrap();
    assert_eq!(program.typed(&["pull", "1", "--resume"], "f\n").code, Some(0));
    // As if the kill had come between the two.
    program.log().set_draft(&name, Some(&text)).unwrap();
    assert_eq!(program.run(&["pull", "1", "--resume"]).code, Some(2));
    assert_eq!((program.tests("1").len(), program.log().draft(&name).unwrap()), (1, None));
    // Killed after the last answer and before it was stored: it is stored without another question.
    let mut done = Draft::read(&text).unwrap();
    let known: Id = program.tests("1")[0]["id"].as_str().unwrap().parse().unwrap();
    assert_eq!(done.id, known);
    done.id = tenter::log::Ids::after(tenter::log::Here::desk(), Some(known)).next();
    done.stage = NextQuestion::Done;
    program.log().set_draft(&name, Some(&done.text())).unwrap();
    assert_eq!(program.run(&["pull", "1", "--resume"]).code, Some(0));
    assert_eq!(program.tests("1").len(), 2);
}

/// Two windows resume one draft and measure on: both tests are kept.
#[test]
fn two_windows() {
    let program = Program::with_cloth();
    program.typed(&["pull", "1"], "\n\n10\nn\n0\n12.4\n");
    let mut slow = program.started(&["pull", "1", "--resume"]);
    let mut said = String::new();
    let mut err = slow.stderr.take().unwrap();
    // The slow window has read the draft once it asks.
    while !said.contains("[again]") {
        let mut byte = [0];
        assert_eq!(err.read(&mut byte).unwrap(), 1, "{said}");
        said.push(char::from(byte[0]));
    }
    assert_eq!(program.typed(&["pull", "1", "--resume"], "\n12.5\nf\n").code, Some(0));
    slow.stdin.take().unwrap().write_all(b"\n12.7\nf\n").unwrap();
    err.read_to_string(&mut said).unwrap();
    assert_eq!(slow.wait().unwrap().code(), Some(0), "{said}");
    let mut extended: Vec<String> = program.tests("1").iter().map(|test| test["extended_mm"].to_string()).collect();
    extended.sort();
    assert_eq!(extended, ["[124.0,125.0]", "[124.0,127.0]"]);
    assert_eq!(program.log().tests(WhichTests::All).unwrap().len(), 2);
    assert_eq!(program.log().faults().unwrap(), Vec::new());
}
