//! Slips of a person who types: none is answered as if it were a reading, and none is stored.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use program::{Program, Ran, words};

fn ran(program: &Program, line: &str) -> Ran {
    let words = words(line);
    program.run(&words.iter().map(String::as_str).collect::<Vec<_>>())
}

/// One line on stderr with every one of these in it, and exit code 2.
fn refused(line: &str, says: &[&str]) {
    let ran = self::ran(&Program::new(), line);
    assert_eq!(ran.code, Some(2), "{line}: {ran:?}");
    assert!(ran.out.is_empty(), "{line}: {}", ran.out);
    for words in says {
        assert!(ran.err.contains(words), "{line}: '{words}' is not in: {}", ran.err);
    }
    assert_eq!(ran.err.trim_end().lines().count(), 1, "{line}: {}", ran.err);
}

/// Exit code 3, the reason first, no plain answer.
fn doubted(line: &str, kind: &str, says: &[&str]) {
    let ran = self::ran(&Program::new(), line);
    assert_eq!(ran.code, Some(3), "{line}: {ran:?}");
    assert!(ran.out.starts_with("READ AGAIN"), "{line}: {}", ran.out);
    let flat = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in says {
        assert!(flat.contains(words), "{line}: '{words}' is not in: {flat}");
    }
    let json = self::ran(&Program::new(), &format!("{line} --json")).json();
    assert!(!["meets", "short", "over"].contains(&json["answer"].as_str().unwrap_or_default()), "{json}");
    assert_eq!(json["suits"], serde_json::json!([]), "{line}");
    assert!(json["doubts"].as_array().unwrap().iter().any(|doubt| doubt["kind"] == kind), "{json}");
    assert_ne!(self::ran(&Program::new(), &format!("{line} --as-read")).code, Some(2));
}

/// The same figures as a line that spells everything out.
fn same(line: &str, spelled: &str) {
    let of = |line: &str| {
        let ran = self::ran(&Program::new(), &format!("{line} --json"));
        assert_ne!(ran.code, Some(2), "{line}: {}", ran.err);
        let mut json = ran.json();
        json["bare_unit"].take();
        json
    };
    assert_eq!(of(line), of(spelled), "{line}");
}

#[test]
fn what_no_cloth_gives_is_refused_with_what_was_meant() {
    let ten = "10 cm to 105 cm is 950 % stretch, more than any cloth gives; did you mean 10.5 cm? Type --to 10.5cm";
    refused("check --marks 10cm --to 105 --wants 5%", &["--to '105'", ten]);
    refused("check --marks 10cm --to 105 --construction knit", &["more than any cloth gives"]);
    refused("check --marks 10mm --to 10.5cm", &["950 % stretch", "did you mean 100 mm? Type --marks 100mm"]);
    refused("check --marks 25cm --to 26.8mm", &["shorter than the gauge length", "Type --to 268mm"]);
    refused("check --marks 25cm --to 265 --to 26.5cm", &["960 % stretch", "Type --to 26.5cm"]);
    refused("check --marks 10cm --to 10.5in --construction woven", &["more than any woven gives", "Type --to 10.5cm"]);
    refused("check --marks 10cm --to 10.5cm --back 102@1m", &["longer than the extended length", "Type --back 10.2cm"]);
}

#[test]
fn a_pull_that_cannot_be_is_not_stored() {
    let program = Program::with_cloth();
    for line in ["pull 1 --marks 10cm --to 105 --wants 5%", "pull 1 10 105", "pull 2 --marks 10cm --to 10.5in"] {
        let ran = program.line(line);
        assert_eq!(ran.code, Some(2), "{line}: {ran:?}");
        assert!(ran.err.contains("10.5cm"), "{line}: {}", ran.err);
    }
    assert!(program.tests("1").is_empty() && program.tests("2").is_empty());
}

fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Nothing doubtful is stored, unless the person stands by it.
#[test]
fn a_doubtful_pull_is_stored_as_read_or_not_at_all() {
    let program = Program::with_cloth();
    let line = "pull 2 --marks 10cm --to 17cm";
    let ran = program.line(line);
    assert_eq!(ran.code, Some(3), "{ran:?}");
    assert!(ran.out.starts_with("READ AGAIN  not stored"), "{}", ran.out);
    assert!(ran.out.contains("10 cm to 17 cm is 70 % stretch"), "{}", ran.out);
    assert_eq!(program.line(&format!("{line} --json")).json()["stored"], false);
    assert!(program.tests("2").is_empty());
    let stored = program.line(&format!("{line} --as-read"));
    assert_eq!(stored.code, Some(0));
    // What the person stood by is kept with the test, and shown with it.
    let said = "stored as read, though doubted: unusual stretch";
    assert!(stored.out.contains(said), "{}", stored.out);
    assert!(one_line(&program.line("cloth show 2").out).contains(said), "{}", program.line("cloth show 2").out);
    assert_eq!(program.tests("2").len(), 1);
    assert_eq!(program.tests("2")[0]["as_read"], serde_json::json!(["unusual-stretch"]));
    // So where a guide asked twice, and after an export.
    program.typed(&["pull", "2"], "\n\n10\nn\n0\n17\n17\nf\n");
    assert_eq!(program.tests("2")[1]["as_read"], serde_json::json!(["unusual-stretch"]));
    let plain = program.line("pull 2 --marks 20cm --to 22cm");
    assert!(!plain.out.contains("stored as read"), "{}", plain.out);
    let file = program.path().with_file_name("log.jsonl");
    let (file, other) = (file.to_str().unwrap(), Program::new());
    assert_eq!(program.run(&["export", file]).code, Some(0));
    assert_eq!(other.run(&["import", file]).code, Some(0));
    assert_eq!(other.tests("2"), program.tests("2"));
    // A doubt about what is asked is none about the readings.
    let asked = program.line("pull 1 --marks 10cm --to 16cm --wants 160%");
    assert_eq!((asked.code, program.tests("1").len()), (Some(3), 1), "{asked:?}");
}

#[test]
fn what_should_not_be_believed_is_to_be_read_again() {
    doubted("check --marks 10cm --to 10.5in --wants 5%", "slip-of-unit", &["did you mean 10.5 cm?"]);
    doubted("check 100 105 --wants 5%", "slip-of-unit", &["100 cm", "did you mean 10 cm?"]);
    doubted(
        "check --marks 10cm --to 16cm --wants 160%",
        "ratio-for-stretch",
        &["160 % may be meant as 60 %", "type 60%"],
    );
    doubted("check --marks 10cm --to 10.5cm --wants 105%", "ratio-for-stretch", &["105 % may be meant as 5 %"]);
    doubted("check --marks 2cm --to 2.1cm --wants 5%", "short-marks", &["mark 10 cm"]);
    doubted("check --marks 10cm --to 17cm --construction woven --wants 5%", "unusual-stretch", &["70 % stretch"]);
    doubted("check 25 30 --back 29.9@1m --growth-at-most 3%", "not-released", &["29.9 cm after release"]);
    doubted("check 25 30 --back 25.2@1m --back 25.8@30m --growth-at-most 5%", "growth-rises", &["later length"]);
}

#[test]
fn texts_that_can_be_read_two_ways_are_asked_for() {
    refused("check --marks 4in --to 41/8 --wants 5%", &["type 4 1/8 or 5 1/8"]);
    refused("check --marks 10cm --to 10.5cm --wants 0.05", &["0.05 % is less than can be read; type 5%"]);
    refused("check --marks 10cm --to 10.5cm --wants 0.5", &["type 50% or 0.5%"]);
}

#[test]
fn texts_as_people_type_them() {
    let plain = "check --marks 10cm --to 10.5cm --wants";
    for wants in ["'5 percent'", "'about 5%'", "'5 Percent'", "5"] {
        same(&format!("{plain} {wants}"), &format!("{plain} 5%"));
    }
    same(&format!("{plain} 20-30%"), &format!("{plain} 20%..30%"));
    let spelled = "check --marks 10cm --to 10.5cm";
    for line in [
        "check --marks 10cms --to '10.5 Centimetres'",
        "check --marks 10CM --to 10.5",
        "check --marks 10 --to 10.5",
        "check --marks 10 --to 105mm",
        "check 10cm 10.5cm",
        "check 10 10.5",
        "check --marks 10cm 10.5cm",
    ] {
        same(line, spelled);
    }
    same("check '4 in' '4 1/4'", "check --marks 4in --to '4 1/4in'");
    same("check 4 4.25 --units in", "check --marks 4in --to 4.25in --units in");
    same("check --marks 10cm --to 10.5 --units in", "check --marks 10cm --to 10.5cm --units in");
    for word in ["weft", "across", "Crosswise", "crossgrain", "course"] {
        same(&format!("{spelled} --grain {word}"), spelled);
    }
    for word in ["warp", "wale", "along", "straight", "selvage", "selvedge"] {
        same(&format!("{spelled} --grain {word}"), &format!("{spelled} --grain lengthwise"));
    }
    for word in ["Knit", "knitted", "jersey"] {
        same(&format!("{spelled} --construction {word}"), &format!("{spelled} --construction knit"));
    }
}

#[test]
fn a_whole_test_in_one_breath() {
    same(
        "check 25 26.5 26.6 26.5 --back 25.2@1m --wants 5%",
        "check --marks 25cm --to 26.5cm --to 26.6cm --to 26.5cm --back 25.2cm@60s --wants 5%",
    );
    same("check 25 26.5 25.2@1m 26.6", "check --marks 25cm --to 26.5cm --back 25.2cm@60s --to 26.6cm");
    let program = Program::with_cloth();
    assert_eq!(program.line("pull 1 25 26.5 26.6 26.5").code, Some(0));
    let test = &program.tests("1")[0];
    assert_eq!((&test["gauge_mm"], &test["extended_mm"]), (&250.0.into(), &serde_json::json!([265.0, 266.0, 265.0])));
}

#[test]
fn the_answer_says_which_unit_was_taken() {
    let says = |line: &str| Program::new().line(line).out;
    assert!(says("check 25 26.5").contains("numbers without a unit are read in centimetres"));
    assert!(says("check 10 10.5 --units in").contains("numbers without a unit are read in inches"));
    assert!(!says("check 25cm 26.5").contains("without a unit"));
    let program = Program::new();
    let inches = program.command(&["check", "4", "4.25", "--json"]).env("TENTER_UNITS", "in").output().unwrap();
    let json: serde_json::Value = serde_json::from_slice(&inches.stdout).unwrap();
    assert_eq!((&json["gauge_mm"], &json["bare_unit"]), (&101.6.into(), &"in".into()));
}

#[test]
fn a_wash_that_cannot_be_is_refused_and_a_bare_one_is_in_centimetres() {
    refused("wash --lengthwise '50cm to 485'", &["more than half", "did you mean 48.5 cm"]);
    refused("wash --lengthwise '50 to 80'", &["more than half"]);
    let json = |line: &str| ran(&Program::new(), line).json();
    let (bare, spelled) =
        (json("wash --lengthwise '50 to 48.5' --json"), json("wash --lengthwise '50cm to 48.5cm' --json"));
    assert_eq!(bare, spelled);
}

#[test]
fn a_wash_that_changes_much_is_to_be_read_again() {
    let program = Program::with_cloth();
    let line = "wash 1 --lengthwise '50cm to 38.5cm'";
    let ran = self::ran(&program, line);
    assert_eq!(ran.code, Some(3), "{ran:?}");
    assert!(ran.out.starts_with("READ AGAIN") && ran.out.contains("\u{2212}23 % lengthwise"), "{}", ran.out);
    assert_eq!(self::ran(&program, &format!("{line} --json")).json()["tag"], serde_json::Value::Null);
    let stored = self::ran(&program, &format!("{line} --as-read"));
    assert!(stored.code == Some(0) && stored.out.contains("stored"), "{stored:?}");
    assert_eq!(self::ran(&program, "wash 1 --lengthwise '50cm to 41cm'").code, Some(0));
}

#[test]
fn a_table_follows_the_same_rules() {
    let program = Program::with_cloth();
    let import = |rows: &str, more: &[&str]| {
        let table = format!("tag,pulled,gauge,readings\n{rows}\n");
        program.typed(&[&["import", "--csv", "-"], more].concat(), &table)
    };
    let refused = import("1,2026-01-02,25cm,265", &[]);
    assert_eq!(refused.code, Some(2), "{refused:?}");
    assert!(refused.err.contains("line 2") && refused.err.contains("26.5 cm"), "{}", refused.err);
    let woven = import("2,2026-01-02,10cm,17", &[]);
    assert_eq!(woven.code, Some(2), "{woven:?}");
    assert!(woven.err.contains("line 2: 10 cm to 17 cm is 70 %") && woven.err.contains("--as-read"), "{}", woven.err);
    let millimetres = import("1,2026-01-02,250,265", &[]);
    assert!(millimetres.err.contains("did you mean 25 cm?"), "{}", millimetres.err);
    assert!(program.tests("1").is_empty() && program.tests("2").is_empty());
    assert_eq!(import("2,2026-01-02,10cm,17", &["--as-read"]).code, Some(0));
    assert_eq!(program.tests("2").len(), 1);
    assert_eq!(import("1,2026-01-02,25cm,26.8\n1,2026-01-03,25,26.8", &[]).code, Some(0));
    let tests = program.tests("1");
    assert_eq!(tests[0]["extended_mm"], serde_json::json!([268.0]));
    assert_eq!(tests[0]["extended_mm"], tests[1]["extended_mm"]);
}
