//! A garment from the choice of its cloths to its wear.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use std::fs;

use program::{Program, Ran, words};
use serde_json::Value;

fn type_in(program: &Program, line: &str) -> Ran {
    let line = words(line);
    program.run(&line.iter().map(String::as_str).collect::<Vec<_>>())
}

fn ok(program: &Program, line: &str) -> Ran {
    let ran = type_in(program, line);
    assert_eq!(ran.code, Some(0), "{line}: {}", ran.err);
    ran
}

fn refused(program: &Program, line: &str, want: &str) {
    let ran = type_in(program, line);
    assert_eq!((ran.code, ran.err.lines().count()), (Some(2), 1), "{line}: {ran:?}");
    assert!(ran.err.contains(want), "{line}: {}", ran.err);
}

/// A coat of a main cloth and a lining, and enough of both; washed, so that no allowance is added.
fn workroom() -> Program {
    let program = Program::new();
    for line in [
        "cloth add 'Footlight drill' --construction woven --width 150cm --length 5m --washed",
        "cloth add 'Wings lining' --construction woven --width 150cm --length 3m --washed",
        "pattern add 'Play coat' - main --cloth '2.2m at 150cm' --construction woven",
        "pattern add 'Play coat' - lining --cloth '2m at 150cm' --construction woven",
        "pattern add 'Play coat' - buttons --construction woven",
    ] {
        ok(&program, line);
    }
    program
}

fn length(program: &Program, tag: &str) -> f64 {
    program.shown(tag)["length_mm"].as_f64().unwrap()
}

fn shown(program: &Program, garment: &str) -> Value {
    ok(program, &format!("make show {garment} --json")).json()
}

#[test]
fn a_garment_from_start_to_wear() {
    let program = workroom();
    let begun = ok(
        &program,
        "make start 'Play coat' --use main=1 --use lining=2 --for 'the innkeeper' --by 2026-12-12 --note 'two pockets'",
    );
    assert!(begun.out.starts_with("begun  1  Play coat, for the innkeeper, by 2026-12-12\n"), "{}", begun.out);
    let garment = shown(&program, "1");
    assert_eq!((&garment["state"], &garment["for"]), (&"open".into(), &"the innkeeper".into()));
    assert_eq!(garment["not_chosen"], serde_json::json!(["buttons"]));
    assert_eq!((&garment["uses"][0]["takes_mm"], &garment["uses"][0]["cut_mm"]), (&2200.0.into(), &Value::Null));
    // One plan, for whom and by when, of the cloths chosen; and it stays the plan once they are cut.
    let plan = |program: &Program| type_in(program, "make plan 1").out;
    let before = plan(&program);
    assert!(before.starts_with("garment 1, Play coat, for the innkeeper, by 2026-12-12\n"), "{before}");
    assert!(before.contains("main: 1 Footlight drill") && before.contains("lining: 2 Wings lining"), "{before}");

    ok(&program, "make cut 1 --role lining");
    assert_eq!((length(&program, "1"), length(&program, "2")), (5000.0, 1000.0));
    ok(&program, "make cut 1");
    assert_eq!((length(&program, "1"), length(&program, "2")), (2800.0, 1000.0));
    assert_eq!(plan(&program), before, "what is cut is there for its own plan");
    refused(&program, "make cut 1", "everything is cut for garment 1");
    ok(&program, "make uncut 1 --role main");
    assert_eq!(length(&program, "1"), 5000.0);
    ok(&program, "make cut 1 --role main --length 2.5m");
    assert_eq!(length(&program, "1"), 2500.0);

    ok(&program, "make done 1 --needle 'universal 90' --stitch 'straight 3'");
    ok(&program, "make wore 1 'hem dragged' --role lining");
    refused(&program, "make done 1", "garment 1 is done already");
    let garment = shown(&program, "1");
    assert_eq!(garment["state"], "done");
    let learned = garment["learned"].as_array().unwrap();
    assert_eq!((&learned[0]["tag"], &learned[0]["needle"]), (&1.into(), &"universal 90".into()));
    assert_eq!((&learned[1]["tag"], &learned[1]["wore"]), (&2.into(), &"hem dragged".into()));
    let cloth = ok(&program, "cloth show 1").out;
    let cloth = cloth.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(cloth.contains("made garment 1, Play coat"), "{cloth}");
    assert!(cloth.contains("cut 2.50 m for garment 1, Play coat; 2.50 m on hand"), "{cloth}");
    assert!(cloth.contains("needle universal 90, stitch straight 3 (garment 1, Play coat)"), "{cloth}");
    ok(&program, "make reopen 1");
    assert_eq!(shown(&program, "1")["state"], "open");
}

/// A length that an open garment keeps is not there for another.
#[test]
fn one_length_is_not_promised_twice() {
    let program = workroom();
    let missing = |program: &Program| {
        let fit = type_in(program, "fit 'Play coat' --role lining --json").json();
        let candidates = fit["roles"][0]["fabrics"].as_array().unwrap().clone();
        candidates.iter().find(|one| one["tag"] == 2).unwrap().clone()
    };
    let before = missing(&program);
    ok(&program, "make start 'Play coat' --use lining=2 --name 'first coat'");
    let told = type_in(&program, "fit 'Play coat' --role lining").out;
    let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(told.contains("2.00 m is kept for garment 1, first coat"), "{told}");
    assert_ne!(missing(&program), before);
    assert!(ok(&program, "cloth show 2").out.contains("2.00 m is kept for garment 1, first coat"));
    assert!(ok(&program, "cloth list").out.contains("2.00 m of 2 is kept for garment 1"));
    let list = ok(&program, "cloth list --json").json();
    assert_eq!(list[1]["kept"][0]["length_mm"], 2000.0);
    // Its own plan may use it, that of another may not: 3 m hold one coat of 2 m.
    ok(&program, "make start 'Play coat' --use lining=2 --name 'second coat'");
    assert!(type_in(&program, "make plan 'second coat'").out.contains("missing"));
    // Given up, cut or done, nothing is kept.
    ok(&program, "make retire 'first coat'");
    assert!(!type_in(&program, "make plan 'second coat'").out.contains("missing"));
    ok(&program, "make cut 2");
    assert!(!ok(&program, "cloth list").out.contains("is kept for"));
    assert_eq!(length(&program, "2"), 1000.0);
    refused(&program, "make return 'first coat' --units x", "--units");
    ok(&program, "make return 'first coat'");
    refused(&program, "make cut 1", "'lining' takes 2.00 m of cloth 2, and 1.00 m is on hand");
}

#[test]
fn the_late_ones_come_first() {
    let program = workroom();
    for (name, by) in [("no day", ""), ("far", "--by 2126-01-01"), ("long ago", "--by 2020-01-01"), ("done", "")] {
        ok(&program, &format!("make start 'Play coat' --name '{name}' {by}"));
    }
    ok(&program, "make done 4");
    let listed = ok(&program, "make list --json").json();
    let names: Vec<&str> = listed.as_array().unwrap().iter().map(|one| one["name"].as_str().unwrap()).collect();
    assert_eq!(names, ["long ago", "far", "no day"]);
    assert!(listed[0]["days_left"].as_i64().unwrap() < -2000 && listed[2]["days_left"].is_null());
    let text = ok(&program, "make list").out;
    assert!(text.lines().nth(1).unwrap().contains("days late"), "{text}");
    assert_eq!(ok(&program, "make list --all --json").json().as_array().unwrap().len(), 4);
    ok(&program, "make edit far --by unknown");
    assert!(shown(&program, "far")["by"].is_null());
}

#[test]
fn what_does_not_fit_is_refused() {
    let program = workroom();
    refused(&program, "make show 1", "no garment was begun yet");
    refused(&program, "make start Shirt", "no pattern is called 'Shirt'");
    refused(&program, "make start 'Play coat' --use main=9", "no cloth has tag 9");
    refused(&program, "make start 'Play coat' --use hood=1", "no role is called 'hood'");
    refused(&program, "make start 'Play coat' --use main", "--use 'main'");
    refused(&program, "make start 'Play coat' --use main=1 --use main=2", "this role has a cloth already");
    refused(&program, "make start 'Play coat' --by soon", "--by 'soon'");
    refused(&program, "make start 'Play coat' --number 0", "--number '0'");
    ok(&program, "make start 'Play coat' --use main=1 --use buttons=1 --name coat");
    refused(&program, "make start 'Play coat' --number 1", "'coat' has this number; 2 is free");
    refused(&program, "make edit coat", "type what changed");
    refused(&program, "make cut coat --length 1m", "several roles are to be cut");
    refused(&program, "make cut coat --role buttons", "the pattern does not say how much 'buttons' takes");
    refused(&program, "make cut coat --role main --length 9m", "takes 9.00 m of cloth 1, and 5.00 m is on hand");
    refused(&program, "make uncut coat", "nothing was cut for garment 1");
    ok(&program, "make cut coat --role main");
    refused(&program, "make edit coat --use main=2", "cloth 1 is cut for 'main' already");
    refused(&program, "make reopen coat", "garment 1 is still open");
    refused(&program, "make return coat", "garment 1 is there already");
    refused(&program, "make wore coat ' '", "type what worked or how it wore");
    refused(&program, "make plan coat --use main=2", "make edit coat ROLE=TAG");
    ok(&program, "make retire coat");
    refused(&program, "make cut coat", "garment 1 is retired");
    ok(&program, "make start 'Play coat' --name 'coat for one'");
    ok(&program, "make start 'Play coat' --name 'coat for two'");
    refused(&program, "make show coat", "'coat' is on 2 garments: 2 coat for one, 3 coat for two");
}

/// The name of a person can be taken out of the file, and nothing else is lost.
#[test]
fn a_name_is_forgotten_for_good() {
    let program = workroom();
    ok(&program, "make start 'Play coat' --use main=1 --for Wilhelmina --by 2026-12-12");
    ok(&program, "make edit 1 --for 'Wilhelmina Oak'");
    let held = || {
        let bytes = |ending: &str| fs::read(program.path().with_file_name(format!("log.sqlite3{ending}")));
        let all: Vec<u8> = ["", "-wal"].into_iter().filter_map(|ending| bytes(ending).ok()).flatten().collect();
        all.windows(10).any(|part| part == b"Wilhelmina")
    };
    assert!(held());
    let before = ok(&program, "export -").out;
    assert_eq!(shown(&program, "Wilhelmina")["number"], 1);
    ok(&program, "make forget 1");
    assert!(!held());
    let after = ok(&program, "export -").out;
    assert_eq!(after, before.replace(",\"for\":\"Wilhelmina\"", "").replace(",\"for\":\"Wilhelmina Oak\"", ""));
    let garment = shown(&program, "1");
    assert_eq!((&garment["for"], &garment["by"]), (&"".into(), &"2026-12-12".into()));
    // An older export does not bring it back.
    let file = program.path().with_file_name("old.jsonl");
    fs::write(&file, before).unwrap();
    let told = ok(&program, &format!("import {}", file.display()));
    // A name that is gone here is no difference.
    assert!(told.out.contains("0 new") && !told.out.contains("differ"), "{}", told.out);
    assert!(!held());
}

/// A teacher's table: one row a garment.
#[test]
fn garments_as_a_table() {
    let program = workroom();
    ok(&program, "make start 'Play coat' --use main=1 --use lining=2 --for '=Ruth' --by 2026-12-12");
    ok(&program, "make start 'Play coat'");
    ok(&program, "make done 2");
    let table = ok(&program, "export --csv garments").out;
    let rows: Vec<&str> = table.lines().collect();
    assert_eq!(rows[0], "id,number,name,pattern,view,cloths,for,by,state,done,note,class");
    assert!(rows[1].ends_with(",1,Play coat,Play coat,'-,main=1 lining=2,'=Ruth,2026-12-12,open,,,"), "{}", rows[1]);
    assert!(rows[2].contains(",done,2") && rows.len() == 3, "{}", rows[2]);
}

/// The page to hand out says for whom it is and by when.
#[test]
fn the_printed_plan_says_for_whom() {
    let program = workroom();
    ok(&program, "make start 'Play coat' --use main=1 --for '<i>Ruth</i>' --by 2026-12-12");
    let file = program.path().with_file_name("plan.html");
    let words = ["make", "plan", "1", "--out", file.to_str().unwrap()];
    let ran = program.run(&words);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let page = fs::read_to_string(file).unwrap();
    assert!(page.contains("Ruth") && !page.contains("<i>Ruth</i>") && page.contains("by 2026-12-12"));
    let log = program.path();
    let ran = program.run(&["make", "plan", "1", "--out", log.to_str().unwrap()]);
    assert!(ran.err.contains("it is the log itself"), "{}", ran.err);
    assert_eq!(ok(&program, "make plan 1 --json --confidence 50.1").json()["garment"]["number"], 1);
}

/// What was chosen when a garment was begun stands on its plan for good; what is typed with the plan counts for that once.
#[test]
fn a_garment_keeps_what_was_chosen_for_it() {
    let program = workroom();
    let plan = |more: &str| {
        let told = type_in(&program, &format!("make plan 1 {more}"));
        assert_ne!(told.code, Some(2), "{}", told.err);
        told.out.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    refused(&program, "make start 'Play coat' --use main=1 --with hood", "add its kind, such as --kind trousers");
    refused(&program, "make start 'Play coat' --use main=1 --zip long", "--zip 'long'");
    refused(&program, "make start 'Play coat' --use main=1 --seam main+hood=60cm", "no role is called 'hood'");
    ok(
        &program,
        "make start 'Play coat' --use main=1 --use lining=2 --kind lined-coat --with separating-zip --zip 62cm",
    );
    assert_eq!(shown(&program, "1")["choices"]["zip"], "62cm");
    let told = plan("");
    for words in ["planned as a lined coat", "separating zip", "take 65 cm separating, shortened by 3 cm"] {
        assert!(told.contains(words), "{words}: {told}");
    }
    assert!(plan("--zip 60cm").contains("take 60 cm separating, as it is"));
    assert_eq!(plan(""), told);
    // Changed for good; what it is said to lack it no longer has.
    ok(&program, "make edit 1 --zip 60cm --with hood --without welt-pockets");
    let told = plan("");
    assert!(told.contains("take 60 cm separating, as it is") && told.contains("with hood"), "{told}");
    assert!(!told.contains("welt"), "{told}");
    ok(&program, "make edit 1 --with welt-pockets");
    assert!(plan("").contains("the welts"));
    refused(&program, "make edit 1 --zip 60cm", "type what changed");
    // An import brings it along.
    let file = program.path().with_file_name("all.jsonl");
    fs::write(&file, ok(&program, "export -").out).unwrap();
    let other = Program::new();
    ok(&other, &format!("import {}", file.display()));
    assert_eq!(shown(&other, "1")["choices"], shown(&program, "1")["choices"]);
}

/// Stages are ticked off, the list shows which is next, and the plan which are done.
#[test]
fn stages_are_ticked_off() {
    let program = workroom();
    let begun = ok(&program, "make start 'Play coat' --use main=1 --use lining=2 --kind lined-coat");
    assert!(begun.out.contains("next: to buy; when it is done, type tenter make tick 1 buy"), "{}", begun.out);
    let next = |program: &Program| {
        let list = ok(program, "make list").out;
        list.lines().nth(1).unwrap().trim_end().to_owned()
    };
    assert!(next(&program).ends_with("to buy"), "{}", next(&program));
    // What is washed already needs no wash first.
    ok(&program, "make tick 1 bought");
    assert!(next(&program).ends_with("sew a sample"), "{}", next(&program));
    let ticked = ok(&program, "make tick 1 'sew a sample'");
    assert!(ticked.out.contains("cut it, then type tenter make cut 1"), "{}", ticked.out);
    assert!(next(&program).ends_with("lay out and cut"), "{}", next(&program));
    let plan = type_in(&program, "make plan 1").out;
    assert!(plan.contains("sew a sample, done\n") && plan.contains("lay out and cut\n"), "{plan}");
    // Cutting ticks itself off.
    ok(&program, "make cut 1");
    assert!(next(&program).ends_with("interface"), "{}", next(&program));
    // It is cut: the sample stays open, and what follows the cut comes next.
    ok(&program, "make untick 1 sample");
    assert!(next(&program).ends_with("interface"), "{}", next(&program));
    let stages = shown(&program, "1")["stages"].as_array().unwrap().clone();
    let done = |stage: &str| stages.iter().find(|one| one["stage"] == stage).unwrap()["done"].as_bool().unwrap();
    assert!(done("buy") && done("prewash") && done("cut") && !done("sample") && !done("press"));
    assert!(ok(&program, "make show 1").out.contains("to buy, wash first, lay out and cut"));
    refused(&program, "make tick 1 zip", "garment 1 has no stage 'zip'; type some of: buy, prewash, sample");
    refused(&program, "make tick 1 ironing", "ironing");
    // On the printed page too.
    let file = program.path().with_file_name("plan.html");
    type_in(&program, &format!("make plan 1 --out {}", file.display()));
    assert_eq!(fs::read_to_string(file).unwrap().matches("<small>done</small>").count(), 2);
    ok(&program, "make done 1");
    assert!(shown(&program, "1")["stages"].as_array().unwrap().iter().all(|one| one["done"] == true));
}
