//! `tenter pull` as a user runs it: what is stored, shown and complained about.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use program::Program;
use serde_json::Value;
use tenter::store::Read as _;

fn letters(test: &Value) -> String {
    let id = test["id"].as_str().unwrap();
    id[id.len() - 6..].to_lowercase()
}

/// The readings typed are the readings kept, under the letters that are printed.
#[test]
fn a_test_is_stored_and_shown() {
    let program = Program::with_cloth();
    let ran = program.run(&[
        "pull",
        "1",
        "--marks",
        "10cm",
        "--settling",
        "--to",
        "12.4cm",
        "--to",
        "12,5 cm",
        "--to",
        "126mm",
        "--back",
        "10.2cm@60s",
        "--wants",
        "15%",
        "--note",
        "after the wash",
    ]);
    assert_eq!(ran.code, Some(0), "{ran:?}");
    assert!(ran.out.starts_with("MEETS  stretch at least 15 %"), "{}", ran.out);
    let tests = program.tests("1");
    assert_eq!(tests.len(), 1);
    assert_eq!(tests[0]["extended_mm"], serde_json::json!([124.0, 125.0, 126.0]));
    assert_eq!(tests[0]["note"], "after the wash");
    assert!(ran.out.contains(&format!("stored    {} on 1  Doorway rib", letters(&tests[0]))), "{}", ran.out);
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.out);
    assert!(program.run(&["cloth", "show", "1"]).out.contains(&letters(&tests[0])));
}

/// The shape of `check` with the test, the tag and who pulled beside it; nothing else.
#[test]
fn json_is_that_of_check_with_test_and_tag() {
    let program = Program::with_cloth();
    let readings = "--marks 10cm --to 10.6cm --back 10.1cm@60s --wants 5% --json";
    let keys = |value: &Value| value.as_object().unwrap().keys().cloned().collect::<Vec<_>>();
    let mut checked = keys(&program.line(&format!("check {readings}")).json());
    let json = program.line(&format!("pull 2 {readings}")).json();
    checked.extend(["test", "tag", "by", "together"].map(str::to_owned));
    checked.sort();
    assert_eq!(keys(&json), checked);
    assert_eq!(json["tag"], 2);
    assert_eq!(json["test"], program.tests("2")[0]["id"]);
    assert_eq!(json["together"], Value::Null);
}

/// Those of `check`, on the same readings.
#[test]
fn exit_codes_are_those_of_check() {
    let program = Program::with_cloth();
    let three = "--marks 250mm --settling --to 270mm --to 271mm --to 270mm --marks 250mm";
    for (wants, code) in [("5%", 0), ("15%", 1), ("..3%", 1), ("8%", 3)] {
        for verb in ["check", "pull 1"] {
            assert_eq!(program.line(&format!("{verb} {three} --wants {wants}")).code, Some(code), "{verb} {wants}");
        }
    }
}

/// One line that says what to type, exit code 2, and a log as it was.
#[test]
fn bad_input_leaves_nothing_stored() {
    let program = Program::with_cloth();
    let good = "--marks 10cm --to 11cm";
    let cases = [
        ("pull 1 --marks 10cm --to 9cm".to_owned(), "--to '9cm': the extended length is shorter"),
        ("pull 1 --marks 10cm".to_owned(), "missing --to"),
        ("pull 1 --to 10cm".to_owned(), "missing --marks"),
        (format!("pull 3 {good}"), "no cloth has tag 3"),
        (format!("pull ribbon {good}"), "no cloth is called 'ribbon'; tenter cloth list"),
        (format!("pull 1 {good} --wants lots"), "--wants 'lots'"),
        (format!("pull 1 {good} --confidence 100"), "--confidence '100'"),
        (format!("pull 1 {good} --table mine"), "--table 'mine'"),
        (format!("pull 1 {good} --at tomorrow"), "--at 'tomorrow': type a day such as yesterday, 2025-03-20"),
        (format!("pull 1 {good} --at 2999-01-01"), "--at '2999-01-01': that day lies ahead"),
        (format!("pull 1 {good} --retire abc"), "do not go together"),
        ("pull 1 --retire abcdef".to_owned(), "--retire 'abcdef': no test of cloth 1 ends so; see tenter cloth show 1"),
        ("pull 1 --return abcdef".to_owned(), "--return 'abcdef': no test of cloth 1 ends so"),
        ("pull".to_owned(), "missing <TAG>"),
    ];
    for (line, want) in cases {
        let ran = program.line(&line);
        assert!(ran.err.contains(want), "{line}: {}", ran.err);
        assert_eq!((ran.err.matches('\n').count(), ran.code, ran.out.as_str()), (1, Some(2), ""), "{line}: {ran:?}");
    }
    assert_eq!(program.line("cloth retire 2").code, Some(0));
    let dropped = program.line(&format!("pull 2 {good}"));
    assert!(dropped.err.contains("bring it back with tenter cloth return 2"), "{}", dropped.err);
    assert_eq!((program.tests("1").len(), program.tests("2").len()), (0, 0));
}

/// 24 % and then 60 % on the same marks lie farther apart than two days of one hand explain.
#[test]
fn a_retest_that_disagrees_says_so() {
    let program = Program::with_cloth();
    let old = "pull 1 --marks 10cm --settling --to 12.4cm --to 12.4cm --to 12.4cm --at 2025-03-20";
    assert!(!program.line(old).out.contains("together"));
    let near = program.line("pull 1 --marks 10cm --settling --to 12.5cm --to 12.5cm --to 12.5cm --at 2025-03-20");
    let told = near.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(told.contains("2 tests of this grain judged together give 24."), "{told}");
    assert!(!near.out.contains("DISAGREE"), "{}", near.out);
    let new = program.line("pull 1 --marks 10cm --settling --to 16cm --to 16cm --to 16cm --at 2025-03-21");
    assert!(new.out.contains("TESTS DISAGREE"), "{}", new.out);
    assert!(program.line("cloth show 1").out.contains("TESTS DISAGREE"));
    // Another grain is another thing.
    let along = program.line("pull 1 --grain lengthwise --marks 10cm --to 10.4cm --json").json();
    assert_eq!(along["together"], Value::Null);
}

/// What the cloth is judged as now comes first, then what this test says by itself; no plain answer, and no exit code of
/// one, where the tests disagree.
#[test]
fn the_answer_is_that_of_all_tests() {
    let program = Program::with_cloth();
    let pull = |to: &str, day: &str, wants: &str| {
        program.line(&format!("pull 2 --marks 20cm --settling --to {to} --to {to} --to {to} --at {day} {wants}"))
    };
    let first = pull("25cm", "2025-03-20", "--wants 15%");
    assert!(first.out.starts_with("MEETS  stretch at least 15 %"), "{}", first.out);
    // 8 % by itself is short of 15 %; with 25 % on another day nobody can say.
    let second = pull("21.6cm", "2025-03-21", "--wants 15%");
    assert_eq!(second.code, Some(3), "{second:?}");
    assert!(second.out.starts_with("TESTS DISAGREE\n"), "{}", second.out);
    let told = second.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(told.contains("this test short by itself; stretch at least 15 %: chance"), "{told}");
    assert!(!told.contains("suits") && !told.contains(" next "), "{told}");
    assert_eq!(pull("21.6cm", "2025-03-21", "").code, Some(3), "nothing asked, and still no answer");
    let json = pull("21.6cm", "2025-03-22", "--wants 15% --json").json();
    assert_eq!((&json["answer"], &json["together"]["answer"]), (&"short".into(), &"close".into()));
    assert_eq!(json["together"]["parts"][0]["ask"], "stretch");
    let list = program.line("cloth list");
    assert!(list.out.contains("DISAGREE"), "{}", list.out);
    assert_eq!(program.line("cloth list --json").json()[1]["disagree"], serde_json::json!(["crosswise"]));
    // The one that went wrong is retired: the others agree, and answer.
    let wrong = letters(&program.tests("2")[0]);
    assert_eq!(program.line(&format!("pull 2 --retire {wrong}")).code, Some(0));
    assert!(!program.line("cloth list").out.contains("DISAGREE"));
    let last = pull("21.7cm", "2025-03-23", "--wants 5%");
    assert_eq!(last.code, Some(0), "{last:?}");
    assert!(last.out.starts_with("MEETS  stretch at least 5 %"), "{}", last.out);
    assert!(last.out.contains("meets by itself; stretch at least 5 %"), "{}", last.out);
}

/// Tests of one day are one day of one hand: they make the ± of these pulls smaller, and not that of another day. The wall
/// clock of the place ends the day.
#[test]
fn tests_of_one_day_are_one_day() {
    let figure = |times: &[&str]| {
        let program = Program::with_cloth();
        for at in times {
            let pulls = "--marks 25cm --settling --to 35cm --to 35.1cm --to 34.9cm --marks 25cm";
            let words = format!("pull 1 {pulls} --at");
            let mut words: Vec<&str> = words.split(' ').collect();
            words.push(at);
            let mut command = program.command(&words);
            let ran = command.env("TZ", "Asia/Tokyo").output().unwrap();
            assert_eq!(ran.status.code(), Some(0), "{ran:?}");
        }
        let shown = program.command(&["cloth", "show", "1", "--json"]).env("TZ", "Asia/Tokyo").output().unwrap();
        let shown: Value = serde_json::from_slice(&shown.stdout).unwrap();
        ["u", "u_here"].map(|key| shown["grains"][0]["stretch"][key].as_f64().unwrap())
    };
    let [one, one_here] = figure(&["2025-03-20 12:00"]);
    // 08:30 and 09:30 in Tokyo are two days of UTC.
    let [same_day, same_day_here] = figure(&["2025-03-20 08:30", "2025-03-20 09:30"]);
    let [two_days, _] = figure(&["2025-03-20 23:30", "2025-03-21 00:30"]);
    assert!(same_day_here < 0.8 * one_here, "{same_day_here} {one_here}");
    assert!(same_day > 0.93 * one && same_day < one, "{same_day} {one}");
    assert!(two_days < 0.8 * one, "{two_days} {one}");
}

/// Retests on other days say how much this person's days differ, of every cloth of that kind.
#[test]
fn retests_on_other_days_are_learnt_from() {
    let worth = |extended: &[&str]| {
        let program = Program::with_cloth();
        for (index, to) in extended.iter().enumerate() {
            let line =
                format!("pull 1 --marks 25cm --settling --to {to} --to {to} --to {to} --at 2025-03-{}", 10 + index);
            program.line(&line);
        }
        assert_eq!(program.log().faults().unwrap(), Vec::new());
        program.line("cloth add jersey --construction knit");
        program.line("pull 3 --marks 25cm --settling --to 35cm");
        let other = "check --construction knit --marks 25cm --settling --to 35cm --to 35cm --to 35cm --json";
        let stretch = program.line(other).json()["stretch"].clone();
        let days = stretch["u"].as_f64().unwrap().powi(2) - stretch["u_here"].as_f64().unwrap().powi(2);
        (days.sqrt(), program.line("cloth show 3").out, program.shown("3")["grains"][0]["retest_share"].clone())
    };
    let (assumed, text, share) = worth(&["35cm"]);
    assert_eq!(share, 0.0);
    assert!(!text.contains("several days"), "{text}");
    let (steady, text, share) = worth(&["35cm", "35.1cm", "35cm", "34.9cm", "35cm", "35.1cm"]);
    assert!(share.as_f64().unwrap() > 0.2, "{share}");
    assert!(text.contains("another day adds to it"), "{text}");
    let (changing, ..) = worth(&["33cm", "36.5cm", "34cm", "38cm", "32.5cm", "37cm"]);
    assert!(steady < 0.9 * assumed && changing > 1.1 * assumed, "{steady} {assumed} {changing}");
}

/// All of them count, in the order of the days on which they were pulled, whatever was typed last.
#[test]
fn all_tests_count_in_the_order_they_were_pulled() {
    let program = Program::with_cloth();
    let pull = |to: &str, more: &[&str]| {
        let mut words = vec!["pull", "1", "--marks", "10cm", "--settling", "--to", to];
        words.extend(more);
        let ran = program.run(&words);
        assert_eq!(ran.code, Some(0), "{ran:?}");
        ran.out
    };
    pull("12.4cm", &["--at", "2025-03-20 14:30"]);
    pull("12.5cm", &["--at", "2025-03-20 14:29"]);
    pull("12.6cm", &[]);
    let grain = program.shown("1")["grains"][0].clone();
    // 24 and 25 % on one day, 26 % on another: 25.25 % if only days scattered, 25 % if only pulls did.
    let percent = grain["stretch"]["percent"].as_f64().unwrap();
    assert!(percent > 24.9 && percent < 25.25, "{percent}");
    let extended: Vec<_> = program.tests("1").iter().map(|test| test["extended_mm"][0].clone()).collect();
    assert_eq!(extended, [125.0, 124.0, 126.0]);
    let counted: Vec<_> = grain["tests"].as_array().unwrap().iter().map(|test| test["id"].clone()).collect();
    let stored: Vec<_> = program.tests("1").iter().map(|test| test["id"].clone()).collect();
    assert_eq!(counted, stored);
}

/// A dropped test no longer counts and comes back as it was.
#[test]
fn drop_and_undrop() {
    let program = Program::with_cloth();
    program.line("pull 1 --marks 10cm --to 12.4cm --at 2025-03-20");
    program.line("pull 1 --marks 10cm --to 15cm --at 2025-03-21");
    let stretch = || program.shown("1")["grains"][0]["stretch"]["percent"].clone();
    let test = letters(&program.tests("1")[1]);
    let both = stretch();
    assert!(both.as_f64().is_some_and(|both| both > 24.0 && both < 50.0), "{both}");
    let dropped = program.run(&["pull", "1", "--retire", &test, "--note", "a pin slipped"]);
    let remedy = format!(
        "retired  {test}, crosswise 50.0 % of 2025-03-21; it stays in the history: tenter pull 1 --return {test}\n"
    );
    assert_eq!((dropped.code, dropped.out.replace("\n  ", " ")), (Some(0), remedy));
    assert_eq!(stretch(), 24.0);
    assert!(program.run(&["pull", "1", "--retire", &test]).err.contains("it is retired already"));
    // Capital letters and the whole identifier mean the same test.
    let whole = program.tests("1")[1]["id"].as_str().unwrap().to_owned();
    assert_eq!(program.run(&["pull", "1", "--return", &whole]).code, Some(0));
    assert_eq!(stretch(), both);
    assert!(program.run(&["pull", "1", "--return", &test]).err.contains("it counts; nothing to bring back"));
    // A test of another fabric is none of this one.
    assert!(program.run(&["pull", "2", "--retire", &test]).err.contains("no test of cloth 2 ends so"));
}

/// With the construction said, `check` trusts the figures as `pull` does; without a log it assumes, and begins none.
#[test]
fn check_can_use_her_hand() {
    let program = Program::new();
    let readings = "--marks 10cm --settling --to 12.4cm --to 12.5cm --json";
    let u = |line: String| program.line(&line).json()["stretch"]["u"].as_f64().unwrap();
    let assumed = u(format!("check {readings}"));
    assert_eq!(u(format!("check --construction knit {readings}")), assumed);
    let folder = program.run(&["check", "--construction", "knit", "--marks", "10cm", "--to", "9cm"]);
    assert_eq!(folder.code, Some(2));
    assert!(!program.path().exists(), "check began a log");

    let program = Program::with_cloth();
    let u = |line: String| program.line(&line).json()["stretch"]["u"].as_f64().unwrap();
    // Ten pulls that all read the same: steadier than assumed.
    let steady = format!("pull 1 --marks 20cm --settling{}", " --to 25cm".repeat(10));
    assert_eq!(program.line(&steady).code, Some(0));
    let hers = u(format!("check --construction knit {readings}"));
    assert!(hers < assumed, "{hers} is not below {assumed}");
    assert_eq!(u(format!("check --construction woven {readings}")), assumed);
    assert_eq!(u(format!("pull 1 {readings}")), hers);
    let both = program.line(&format!("check --construction knit --scatter 1 {readings}"));
    assert!(both.err.contains("do not go together"), "{}", both.err);
    assert_eq!(program.log().faults().unwrap(), Vec::new());
}

/// A test pulled along the other grain than was said counts for that grain, in the log, in SQL and in what is exported.
#[test]
fn a_grain_is_put_right() {
    let program = Program::with_cloth();
    program.line("pull 1 --marks 20cm --settling --to 21cm --to 21cm --to 21cm");
    let id = program.tests("1")[0]["id"].as_str().unwrap().to_lowercase();
    let put_right = program.line(&format!("pull 1 --regrain {} warp", &id[20..]));
    assert!(put_right.code == Some(0) && put_right.out.contains("lengthwise 5.0 %"), "{put_right:?}");
    let shown = program.shown("1");
    assert_eq!(
        (&shown["tests"][0]["grain"], &shown["grains"][0]["grain"]),
        (&"lengthwise".into(), &"lengthwise".into())
    );
    let again = program.line(&format!("pull 1 --regrain {} lengthwise", &id[20..]));
    assert!(again.code == Some(2) && again.err.contains("is lengthwise already"), "{again:?}");
    let wrong = program.line(&format!("pull 1 --regrain {} sideways", &id[20..]));
    assert!(wrong.code == Some(2) && wrong.err.contains("lengthwise, crosswise, bias"), "{wrong:?}");
    let exported = program.run(&["export"]).out;
    assert!(
        exported.contains(r#""kind":"test-regrained""#) && exported.contains(r#""grain":"lengthwise""#),
        "{exported}"
    );
    let table = program.run(&["export", "--csv", "tests"]).out;
    assert!(table.contains(",lengthwise,200,"), "{table}");
}
