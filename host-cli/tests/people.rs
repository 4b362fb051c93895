//! Who pulled, tags of a desk, letters after two logs are joined, and a class.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use std::fs;

use program::{Program, words};

/// Runs a line that must succeed; what it printed.
fn ok(program: &Program, line: &str) -> String {
    let line = words(line);
    let ran = program.run(&line.iter().map(String::as_str).collect::<Vec<_>>());
    assert_eq!(ran.code, Some(0), "{line:?}: {}{}", ran.out, ran.err);
    ran.out
}

/// Runs a line that must be refused; what it said.
fn refused(program: &Program, line: &str) -> String {
    let line = words(line);
    let ran = program.run(&line.iter().map(String::as_str).collect::<Vec<_>>());
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{line:?}");
    ran.err
}

fn pulled(program: &Program, by: &str) -> String {
    ok(program, &format!("pull 1 10cm 10.4cm 10.5cm 10.4cm --settling {by}"))
}

/// What stands behind the day on which a test was pulled.
fn named(told: &str) -> &str {
    let day = told.lines().find(|line| line.contains("pulled 2")).unwrap();
    day.split_once("pulled ").unwrap().1.get(16..).unwrap()
}

#[test]
fn the_first_person_who_is_named_is_remembered() {
    let program = Program::with_cloth();
    assert_eq!(named(&pulled(&program, "")), "");
    let told = pulled(&program, "--by Anna");
    assert!(named(&told) == " by Anna" && told.contains("tenter now assumes that Anna pulls here"), "{told}");
    assert_eq!(named(&pulled(&program, "")), " by Anna");
    let told = pulled(&program, "--by ' ben '");
    assert!(named(&told) == " by ben" && !told.contains("tenter takes"), "{told}");
    assert_eq!(named(&pulled(&program, "--by Ben")), " by ben", "one person, whatever the capitals");
    let mut line = program.command(&["pull", "1", "10cm", "10.4cm", "10.5cm", "--json"]);
    let out = String::from_utf8(line.env("TENTER_BY", "Cleo").output().unwrap().stdout).unwrap();
    assert!(out.contains(r#""by":"Cleo""#), "{out}");
    assert_eq!(named(&pulled(&program, "")), " by Anna", "only for one window");
    let list: serde_json::Value = serde_json::from_str(&ok(&program, "people list --json")).unwrap();
    let told: Vec<(Option<&str>, u64, bool)> = list
        .as_array()
        .unwrap()
        .iter()
        .map(|one| (one["name"].as_str(), one["tests"].as_u64().unwrap(), one["here"].as_bool().unwrap()))
        .collect();
    assert_eq!(told, [(Some("Anna"), 3, true), (Some("ben"), 2, false), (Some("Cleo"), 1, false), (None, 1, false)]);
    ok(&program, "people here --nobody");
    assert_eq!(named(&pulled(&program, "")), "");
}

/// Two persons on one cloth on one day are two sessions: the mean of both is worth more than one person's two tests.
#[test]
fn two_persons_are_two_sessions() {
    let half = |by: [&str; 2]| {
        let program = Program::with_cloth();
        by.iter().for_each(|by| drop(pulled(&program, by)));
        let shown = program.shown("1");
        shown["grains"][0]["stretch"]["high"].as_f64().unwrap() - shown["grains"][0]["stretch"]["low"].as_f64().unwrap()
    };
    let (one, two) = (half(["--by Anna", "--by Anna"]), half(["--by Anna", "--by Ben"]));
    assert!(two < 0.95 * one, "{two} against {one}");
}

#[test]
fn people_are_renamed_merged_given_tests_and_forgotten() {
    let program = Program::with_cloth();
    pulled(&program, "--by Ana");
    pulled(&program, "--by Ben");
    ok(&program, "people rename ana Anna");
    assert!(refused(&program, "people rename Ben anna").contains("2 people are called anna"));
    assert!(refused(&program, "people rename Bo Cleo").contains("type one of Anna, Ben"));
    let test = program.shown("1")["tests"][0]["id"].as_str().unwrap()[20..].to_owned();
    ok(&program, &format!("pull 1 --whose {test} Dora"));
    assert_eq!(program.shown("1")["tests"][0]["by"], "Dora");
    assert!(refused(&program, &format!("pull 1 --whose {test} dora")).contains("was pulled by dora already"));
    ok(&program, "people merge Dora Ben");
    let by = |program: &Program| {
        let tests = program.shown("1")["tests"].as_array().unwrap().clone();
        tests.iter().map(|test| test["by"].as_str().map(str::to_owned)).collect::<Vec<_>>()
    };
    assert_eq!(by(&program), [Some("Ben".to_owned()), Some("Ben".to_owned())]);
    assert!(refused(&program, "people merge Ben Ben").contains("only one person is called Ben"));
    assert!(ok(&program, "export").contains("Ben"));
    let nameless = ok(&program, "export --without-names");
    assert!(!nameless.contains("Ben") && !nameless.contains("Anna") && nameless.contains("person-named"), "{nameless}");
    assert!(!ok(&program, "export --csv tests --without-names").contains("Ben"));
    ok(&program, "people forget Ben");
    assert_eq!(by(&program), [None, None]);
    assert!(!ok(&program, "export").contains("\"Ben\""));
    let bytes = fs::read(program.path()).unwrap();
    assert!(!bytes.windows(3).any(|three| three == b"Ben"), "nothing of it stays in the file");
}

#[test]
fn a_desk_gives_tags_of_its_range() {
    let program = Program::with_cloth();
    assert!(ok(&program, "log tags").contains("all tags that nobody else holds; the next is 3"));
    assert!(ok(&program, "log tags 100-101").contains("the next is 100"));
    assert!(ok(&program, "cloth add X").contains("100  X"));
    assert!(ok(&program, "cloth add Y").contains("101  Y"));
    let told = refused(&program, "cloth add Z");
    assert!(
        told.contains("all tags of 100-101 are in use; type tenter log tags") && told.contains("102-103"),
        "{told}"
    );
    assert!(refused(&program, "log tags 9-1").contains("such as 100-199"));
    ok(&program, "log tags all");
    assert!(ok(&program, "cloth add Z").contains("102  Z"));
}

#[test]
fn cloths_that_share_a_tag_are_called_by_letters_until_they_are_renumbered() {
    let (program, other) = (Program::with_cloth(), Program::with_cloth());
    pulled(&other, "--by Anna");
    ok(&program, "log tags 50-99");
    let export = other.path().with_file_name("other.jsonl");
    ok(&other, &format!("export {}", export.display()));
    let told = ok(&program, &format!("import {}", export.display()));
    assert!(told.contains("1a Doorway rib, 1b Doorway rib") && told.contains("tenter cloth renumber"), "{told}");
    let told = refused(&program, "cloth show 1");
    assert!(told.contains("2 cloths have tag 1: 1a Doorway rib, 1b Doorway rib; type the letter"), "{told}");
    for line in ["cloth show 1b", "cloth show '#1B'", "handle 1a", "cloth learned 1b --wore well"] {
        let line = words(line);
        let ran = program.run(&line.iter().map(String::as_str).collect::<Vec<_>>());
        assert!(ran.code != Some(2), "{line:?}: {}", ran.err);
    }
    let list: serde_json::Value = serde_json::from_str(&ok(&program, "cloth list --json")).unwrap();
    assert_eq!((&list[1]["tag"], &list[1]["letter"]), (&1.into(), &"b".into()));
    let told = ok(&program, "cloth renumber 1a");
    assert!(told.contains("write 1 label") && told.contains("1a") && told.contains("50"), "{told}");
    assert!(ok(&program, "cloth show 1").starts_with("1  "), "the other needs no letter any more");
    let told = ok(&program, "cloth renumber --json");
    let told: serde_json::Value = serde_json::from_str(&told).unwrap();
    assert_eq!((&told[0]["was"], &told[0]["tag"], told.as_array().unwrap().len()), (&"2b".into(), &51.into(), 1));
    assert!(refused(&program, "cloth renumber").contains("no two cloths share a tag"));
}

fn table(program: &Program, text: &str) -> String {
    let file = program.path().with_file_name("class.csv");
    fs::write(&file, text).unwrap();
    file.display().to_string()
}

#[test]
fn what_a_class_wrote_is_read_in_all_or_none() {
    let program = Program::with_cloth();
    let bad = table(
        &program,
        "name,cloth,marks,settling,readings\n\
         Ada,Moor,10cm,yes,10.4 10.5\n,Moor,10cm,yes,10.4\nBo,99,10cm,yes,10.4\nBo,Moor,10cm,yes,9\n",
    );
    let told = refused(&program, &format!("import {bad}"));
    for line in ["3 lines are wrong", "line 3: missing name", "line 4: tag '99': no cloth", "line 5: readings '9'"] {
        assert!(told.contains(line), "{told}");
    }
    assert!(ok(&program, "people list").contains("nobody has pulled yet"));
    let good = table(
        &program,
        "Name;Cloth;Readings;Settling\nAda;Moor;10 10.4 10.5 10.4 10.1@1min;yes\nAda;Moor;10 10.4 10.5 10.4 10.1@1min;yes\n\
         Ben;moor;10 10.6 10.7 10.6;yes\nben;vestry twill;10 10.6 10.7 10.6;yes\nCleo;1;10 13 13.1;yes\n",
    );
    let told = ok(&program, &format!("import {good}"));
    assert!(told.contains("9 new, 0 known") && told.contains("3 Moor") && told.contains("Ada, Ben, Cleo"), "{told}");
    let told = ok(&program, &format!("import {good}"));
    assert!(told.contains("0 new, 5 known"), "two equal rows are two tests, and both are known: {told}");
    let shown = program.shown("3");
    assert_eq!(shown["tests"].as_array().unwrap().len(), 3);
    assert_eq!(shown["tests"][0]["gauge_mm"], 100.0, "the marks come first");
}

/// By hand: means of Ada 4.333 % (6 pulls) and Ben 6.333 % (3 pulls); s_r² = (5 · 0.266 67 + 2 · 0.333 33) / 7 = 0.285 71, and
/// its limit 2.8 · 0.534 52 = 1.497; n = (9 − 45/9)/1 = 4; the mean of all pulls is 5, s_d² = 6 · 0.444 44 + 3 · 1.777 78 =
/// 8; s_L² = (8 − 0.285 71)/4 = 1.928 57; the limit of two persons 2.8 · √2.214 29 = 4.167.
#[test]
fn a_class_learns_from_its_own_scatter() {
    let program = Program::new();
    let class = table(
        &program,
        "name,cloth,settling,readings\nAda,Moor,yes,10 10.4 10.5 10.4\nAda,Moor,yes,10 10.4 10.5 10.4\nBen,Moor,yes,10 10.6 10.7 10.6\n",
    );
    assert!(refused(&program, "people compare Moor").contains("Moor"));
    ok(&program, &format!("import {class}"));
    let told: serde_json::Value = serde_json::from_str(&ok(&program, "people compare moor --json")).unwrap();
    let near = |key: &str, want: f64| {
        let found = told[key].as_f64().unwrap();
        assert!((found - want).abs() < 0.002, "{key}: {found}, want {want}");
    };
    near("repeatability_limit", 1.497);
    near("reproducibility_limit", 4.167);
    near("mean_percent", 5.333);
    assert_eq!((&told["people"][0]["name"], &told["people"][1]["name"]), (&"Ada".into(), &"Ben".into()));
    let text = ok(&program, "people compare 1 --without-names");
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        text.contains("two pulls by one person differ by less than 1.5 points") && text.contains("less than 4.2."),
        "{text}"
    );
    assert!(!text.contains("Ada"), "{text}");
    let page = program.path().with_file_name("class.html");
    ok(&program, &format!("report class 1 --out {}", page.display()));
    let page = fs::read_to_string(page).unwrap();
    assert!(page.contains("2 people on one cloth") && page.contains("Ada") && page.contains("<svg"), "{page}");
    assert!(refused(&program, "people compare 1 --grain bias").contains("fewer than two people pulled cloth 1"));
}

#[test]
fn a_form_and_all_sheets_are_printed() {
    let program = Program::demo();
    let file = |name: &str| program.path().with_file_name(name);
    ok(&program, &format!("report form 5 --lines 12 --out {}", file("form.html").display()));
    let form = fs::read_to_string(file("form.html")).unwrap();
    assert_eq!(form.matches("<th scope=\"row\"").count(), 12);
    assert!(form.contains("5 Practice sateen") && form.contains("pull 3") && form.contains("Pull gauge for"), "{form}");
    ok(&program, "make start 'Choir trousers' A --use main=1 --for Ines");
    ok(&program, &format!("report sheets --out {}", file("all.html").display()));
    let all = fs::read_to_string(file("all.html")).unwrap();
    assert!(all.contains("Ines") && all.contains("Pull gauge for"), "names and gauges");
    assert_eq!(all.matches("<main").count(), 1);
    let ids: Vec<&str> = all.split(" id=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
    let mut once = ids.clone();
    once.sort_unstable();
    once.dedup();
    assert_eq!(ids.len(), once.len(), "an anchor stands there twice");
    ok(&program, &format!("report sheets --without-names --out {}", file("none.html").display()));
    assert!(!fs::read_to_string(file("none.html")).unwrap().contains("Ines"));
    // Those of a class stand together, by whom they are for; others stay out.
    ok(&program, "make start 'Choir trousers' A --use main=1 --for Zoe --class 'Tuesday class'");
    ok(&program, "make start 'Choir trousers' A --use main=1 --for Bo --class 'tuesday class'");
    ok(&program, &format!("report sheets --class 'TUESDAY class' --out {}", file("class.html").display()));
    let class = fs::read_to_string(file("class.html")).unwrap();
    let at = |name: &str| class.find(name).unwrap_or_else(|| panic!("{name} is missing"));
    assert!(at("for Bo, tuesday class") < at("for Zoe, Tuesday class") && !class.contains("Ines"));
    assert!(class.matches("Pull gauge for").count() >= 2, "each has its gauges");
    let told = refused(&program, &format!("report sheets --class Monday --out {}", file("none.html").display()));
    assert!(told.contains("no garment of the class 'Monday'"), "{told}");
    let shown: serde_json::Value = serde_json::from_str(&ok(&program, "make show Bo --json")).unwrap();
    assert_eq!(shown["class"], "tuesday class");
    ok(&program, "make edit Bo --class 'Monday class'");
    ok(&program, &format!("report sheets --class 'Tuesday class' --out {}", file("class.html").display()));
    assert!(!fs::read_to_string(file("class.html")).unwrap().contains("for Bo"));
}

/// The tables come back in as they went out: into an empty log, row for row and under the same identifiers.
#[test]
fn tables_come_back_as_they_went_out() {
    let (program, empty) = (Program::demo(), Program::new());
    for table in ["cloths", "patterns", "tests"] {
        let (out, again) = (program.path().with_file_name(table), empty.path().with_file_name(table));
        ok(&program, &format!("export --csv {table} {}", out.display()));
        ok(&empty, &format!("import --csv {}", out.display()));
        assert!(ok(&empty, &format!("import --csv {}", out.display())).starts_with("0 new"), "{table}");
        ok(&empty, &format!("export --csv {table} {}", again.display()));
        let read = |path: &std::path::Path| {
            let text = fs::read_to_string(path).unwrap();
            // What is worked out of a test leans on all that the log holds.
            let columns = if table == "tests" { 15 } else { usize::MAX };
            let row = |line: &str| line.split(',').take(columns).collect::<Vec<_>>().join(",");
            text.lines().map(row).collect::<Vec<_>>()
        };
        assert_eq!(read(&out), read(&again), "{table}");
    }
}

/// A log begins with tags of its own, and every copy knows whose are whose.
#[test]
fn copies_of_a_log_agree_on_their_tags() {
    let (desk, laptop) = (Program::new(), Program::new());
    let told = ok(&desk, "cloth add 'Loft calico' woven --tags 100-199");
    assert!(told.contains("100"), "{told}");
    let file = desk.path().with_file_name("log.jsonl");
    ok(&desk, &format!("export {}", file.display()));
    assert!(refused(&laptop, "cloth add x --tags 9-1").contains("such as 100-199, or all"));
    ok(&laptop, &format!("import {}", file.display()));
    ok(&laptop, "cloth add 'Pantry crash' --tag 99");
    ok(&laptop, "cloth add 'Scullery huck'");
    assert_eq!(laptop.shown("Scullery huck")["tag"], 200, "it steps over those of the desk");
    let told = refused(&laptop, "log tags 150-249");
    assert!(told.contains("another desk gives the tags 100-199; type others, such as 250-349"), "{told}");
    let told = ok(&laptop, "log tags 250-349");
    assert_eq!(told, "this desk gives the tags 250-349; the next is 250\nanother desk gives the tags 100-199\n");
    ok(&desk, &format!("sync {} --tags 100-199", laptop.path().display()));
    let told = ok(&desk, "log tags");
    assert!(told.contains("another desk gives the tags 250-349") && told.contains("next is 101"), "{told}");
    let told = ok(&desk, "log tags --free 250-349");
    assert!(told.starts_with("nobody holds the tags 250-349 any more\n"), "{told}");
    assert!(refused(&desk, "log tags --free 250-349").contains("nobody holds exactly these"));
}
