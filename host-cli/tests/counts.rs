//! Which tests of a cloth count, and for how much: the real program on cloth that was pulled more than once.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use program::{Program, Ran};
use serde_json::Value;

/// Settled, the marks read twice, three pulls, growth after half an hour: 8.1 % on 25 cm.
const CAREFUL: &str =
    "--marks 25cm --settling --to 27cm --to 27.1cm --to 27cm --back 25.1cm@30min --marks 25cm --at 2025-03-20";

fn ok(program: &Program, line: &str) -> String {
    let ran = program.line(line);
    assert!(matches!(ran.code, Some(0 | 3)) && ran.err.is_empty(), "{line}: {ran:?}");
    ran.out
}

/// A woven, and a view that asks 5 % and little growth.
fn woven() -> Program {
    let program = Program::new();
    ok(&program, "cloth add twill --construction woven");
    ok(&program, "pattern add skirt A main --crosswise 5% --growth-at-most 3%");
    program
}

fn flat(ran: &Ran) -> String {
    ran.out.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn first(program: &Program) -> Value {
    program.run(&["fit", "skirt", "--json"]).json()["roles"][0]["fabrics"][0].clone()
}

fn letters(program: &Program, test: usize) -> String {
    let id = program.tests("1")[test]["id"].as_str().unwrap().to_lowercase();
    id[id.len() - 6..].to_owned()
}

/// A careful test with growth, then a hasty one on short marks without: both count, growth is kept, and it still meets.
#[test]
fn a_hasty_test_does_not_displace_a_careful_one() {
    let program = woven();
    ok(&program, &format!("pull 1 {CAREFUL}"));
    assert_eq!(program.line("fit skirt").code, Some(0));
    let before = first(&program);
    ok(&program, "pull 1 --marks 10cm --to 10.9cm --at 2025-03-21");
    let after = first(&program);
    assert_eq!((&after["answer"], &after["reason"]), (&"meets".into(), &"measured".into()), "{after}");
    assert_eq!(after["grains"][0]["tests"].as_array().unwrap().len(), 2);
    assert_eq!(before["grains"][0]["parts"][1]["ask"], "growth");
    assert_eq!(after["grains"][0]["parts"][1]["chance"], before["grains"][0]["parts"][1]["chance"], "growth as it was");
    // Nearer to the careful one: 8.13 % and 9 %, by hand from the readings; the plain mean is 8.57 %.
    let percent = program.shown("1")["grains"][0]["stretch"]["percent"].as_f64().unwrap();
    assert!(percent > 8.13 && percent < 8.57, "{percent}");
    let shown = flat(&program.line("cloth show 1"));
    let (careful, hasty) = (letters(&program, 0), letters(&program, 1));
    assert!(shown.contains(&format!("from 2 tests judged together: {careful}, {hasty}")), "{shown}");
}

/// A single layer reads 12.5 % where the fold gave 6.1 %: it counts for less, and says so.
#[test]
fn a_single_layer_does_not_win() {
    let program = woven();
    ok(&program, "pull 1 --marks 25cm --settling --to 26.5cm --to 26.6cm --to 26.5cm --marks 25cm --at 2025-03-20");
    ok(&program, "pull 1 --marks 10cm --held flat --to 11.25cm --at 2025-03-21");
    let grain = program.shown("1")["grains"][0].clone();
    let percent = grain["stretch"]["percent"].as_f64().unwrap();
    // By hand: 6.13 % and 12.5 %; half way is 9.3 %.
    assert!(percent < 8.0, "{percent}");
    assert_eq!(grain["tests"][1]["widened"], serde_json::json!(["single-layer"]));
    assert_eq!(grain["tests"][0]["widened"], serde_json::json!([]));
    let shown = flat(&program.line("cloth show 1"));
    let layer = letters(&program, 1);
    assert!(shown.contains(&format!("{layer} counts for less: a single layer curls and reads high")), "{shown}");
}

/// Tests from before a wash count for less than those after it; where there are no others, that is said.
#[test]
fn a_wash_lies_between_two_tests() {
    let program = woven();
    ok(&program, &format!("pull 1 {CAREFUL}"));
    assert_eq!(program.shown("1")["grains"][0]["tests"][0]["before_wash"], false);
    ok(&program, "cloth edit 1 --washed yes");
    let grain = || program.shown("1")["grains"][0].clone();
    assert_eq!(grain()["tests"][0]["widened"], serde_json::json!(["before-wash"]));
    let fit = flat(&program.line("fit skirt"));
    assert!(fit.contains("you washed the cloth after this test: pull it again"), "{fit}");
    ok(&program, "pull 1 --marks 25cm --settling --to 26.5cm --to 26.6cm --to 26.5cm --marks 25cm");
    // 8.13 % before and 6.13 % after, by hand: the later one is worth more.
    let percent = grain()["stretch"]["percent"].as_f64().unwrap();
    assert!(percent < 7.0 && percent > 6.13, "{percent}");
    assert_eq!(grain()["tests"][1]["before_wash"], false);
    let shown = flat(&program.line("cloth show 1"));
    assert!(shown.contains("counts for less: you washed the cloth since"), "{shown}");
    // It was a mistake: nothing was washed.
    ok(&program, "cloth edit 1 --washed no");
    assert_eq!(grain()["tests"][0]["before_wash"], false);
}

/// Marks of a swatch that was washed say nothing of the cloth, until the cloth is said to be washed.
#[test]
fn a_washed_swatch_is_not_a_washed_cloth() {
    let program = woven();
    ok(&program, &format!("pull 1 {CAREFUL}"));
    assert_eq!(program.run(&["wash", "1", "--lengthwise", "50cm to 49cm"]).code, Some(0));
    assert_eq!(program.shown("1")["grains"][0]["tests"][0]["before_wash"], false);
}

/// Two careful tests that cannot both be right give no answer, in the headline and with exit code 3.
#[test]
fn a_contradiction_stands_in_the_headline() {
    let program = woven();
    ok(&program, &format!("pull 1 {CAREFUL}"));
    let told =
        program.line("pull 1 --marks 25cm --settling --to 35cm --to 35.1cm --to 35cm --marks 25cm --at 2025-03-21").out;
    assert!(told.contains("TESTS DISAGREE"), "{told}");
    let fit = program.line("fit skirt");
    assert_eq!(fit.code, Some(3), "{}", fit.out);
    assert!(fit.out.contains("CLOSE        1  twill, TESTS DISAGREE"), "{}", fit.out);
    assert!(flat(&fit).contains("pull it again, or retire the one that went wrong"), "{}", fit.out);
    assert_eq!(first(&program)["reason"], "tests disagree");
    let shown = program.line("cloth show 1").out;
    assert!(shown.contains("crosswise\n  TESTS DISAGREE\n"), "{shown}");
    let grain = &program.shown("1")["grains"][0];
    assert!(grain["disagrees"].is_string(), "{grain}");
    // Without the one that went wrong it meets again.
    let wrong = letters(&program, 1);
    assert_eq!(program.run(&["pull", "1", "--retire", &wrong]).code, Some(0));
    assert_eq!(program.line("fit skirt").code, Some(0));
}

/// Readings that were stored though tenter doubts them give no answer alone, and none of the figure beside others.
#[test]
fn a_doubtful_test_never_carries_an_answer() {
    let program = woven();
    // 80 % on a woven.
    let doubtful = "pull 1 --marks 10cm --settling --to 18cm --to 18cm --to 18cm --as-read --at 2025-03-20";
    assert_eq!(program.line(&doubtful.replace(" --as-read", "")).code, Some(3), "not stored");
    assert_eq!(program.tests("1").len(), 0);
    ok(&program, doubtful);
    ok(&program, "pattern add cape A main --crosswise 5%");
    let alone = program.line("fit cape");
    assert_eq!(alone.code, Some(3), "{}", alone.out);
    assert!(flat(&alone).contains("tenter doubts"), "{}", alone.out);
    ok(&program, &format!("pull 1 {CAREFUL}"));
    assert_eq!(program.line("fit cape").code, Some(0));
    let shown = program.shown("1");
    assert_eq!(shown["grains"][0]["stretch"]["percent"], 8.133);
    assert!(program.line("cloth show 1").out.contains("doubted"), "{}", program.line("cloth show 1").out);
}

/// Growth has its time: an early reading can say meets, and never over; a role keeps the time that was typed.
#[test]
fn growth_has_its_time() {
    let program = woven();
    let three = "check --marks 25cm --settling --to 27cm --to 27.1cm --to 27cm --marks 25cm";
    let growth = |back: &str, limit: &str| program.line(&format!("{three} --back {back} --growth-at-most {limit}"));
    // 4.8 % left after a minute: at 30 min it may be less, at 1 min it is too much.
    let early = growth("26.2cm@60s", "1%");
    assert_eq!(early.code, Some(3), "{early:?}");
    assert!(flat(&early).contains("read growth again 30 min after release"), "{}", early.out);
    assert_eq!(growth("26.2cm@60s", "1%@1min").code, Some(1));
    assert_eq!(growth("26.2cm@30min", "1%").code, Some(1));
    // It may still fall, so little is little enough.
    assert_eq!(growth("25cm@60s", "4%").code, Some(0));
    let refused = |line: &str, part: &str| {
        let ran = program.line(line);
        assert!(ran.code == Some(2) && ran.err.contains(part) && ran.err.lines().count() == 1, "{line}: {}", ran.err);
    };
    refused(&format!("{three} --growth-at-most 3%@soon"), "type the time since release after the @");
    refused(&format!("{three} --growth-at-most 3%@1h --recovery-at-least 90%@2h"), "type the same time after both");
    ok(&program, "pattern add skirt B main --crosswise 5% --growth-at-most 3%@1h");
    let seconds = || {
        let shown: Value = program.line("pattern show skirt B --json").json();
        shown["roles"][0]["demand"]["rest_seconds"].clone()
    };
    assert_eq!(seconds(), 3600);
    assert!(ok(&program, "pattern show skirt B").contains("growth at most 3 % after 1 h"));
    ok(&program, "pattern edit skirt B main --growth-at-most 2%");
    assert_eq!(seconds(), 3600);
    ok(&program, "pattern edit skirt B main --recovery-at-least 90%@30min");
    // 30 min goes without saying, as in every log before.
    assert_eq!(seconds(), Value::Null);
}

/// The marks read again, and the number of pulls that was planned, are stored, exported and read again.
#[test]
fn looks_and_plans_are_kept() {
    let program = woven();
    let line =
        "pull 1 --marks 25cm --settling --planned 5 --marks 25.1cm --to 27cm --to 27cm --marks 25cm --at 2025-03-20";
    ok(&program, line);
    let stored = program.run(&["export"]).out;
    assert!(stored.contains(r#""looks":[{"after_pulls":0,"gauge_mm":251.0},{"after_pulls":2,"gauge_mm":250.0}]"#));
    assert!(stored.contains(r#""planned":5"#), "{stored}");
    let table = program.run(&["export", "--csv", "tests"]).out;
    assert!(table.contains("251@marks 270 270 250@marks"), "{table}");
    // In one breath it is the same test.
    let breath = "check 25cm 27cm 27cm 25.1cm@marks --settling --json";
    let flags = "check --marks 25cm --to 27cm --to 27cm --marks 25.1cm --settling --json";
    assert_eq!(program.line(breath).json(), program.line(flags).json());
    let once = program.line("check --marks 25cm --to 27cm --to 27cm --settling --json").json();
    let twice = program.line("check --marks 25cm --to 27cm --to 27cm --marks 25cm --settling --json").json();
    let u = |json: &Value| json["stretch"]["u"].as_f64().unwrap();
    assert!(u(&twice) < u(&once), "a second reading of the marks is worth something");
    let ran = program.line("check --marks 25cm --to 27cm --planned 0");
    assert!(ran.code == Some(2) && ran.err.contains("--planned '0'"), "{}", ran.err);
}

/// A card says how often the cloth was pulled for the figure that it shows, whatever grain was pulled last.
#[test]
fn a_card_counts_the_pulls_of_its_figure() {
    let program = woven();
    ok(&program, &format!("pull 1 {CAREFUL}"));
    ok(&program, "pull 1 --grain lengthwise --marks 10cm --to 10.2cm --at 2025-03-22");
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("card.svg");
    let ran = program.run(&["report", "picture", "card", "1", "--out", out.to_str().unwrap()]);
    assert_eq!(ran.code, Some(0), "{ran:?}");
    let card = std::fs::read_to_string(out).unwrap();
    assert!(card.contains("3 pulls by hand") && !card.contains("1 pull by hand"), "{card}");
}
