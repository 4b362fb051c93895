//! JSON Lines: lossless both ways, all or nothing, twice is once.

use std::fs;

use crate::desk::{Desk, complaint};

#[test]
fn a_log_comes_back_as_it_was() {
    let desk = Desk::new();
    desk.fill("a.db");
    assert_eq!(desk.ok("a.db", &["export", "a.jsonl"]), "6 entries in a.jsonl\n");
    let exported = fs::read_to_string(desk.path("a.jsonl")).unwrap();
    assert_eq!(exported.lines().count(), 8, "a header, six entries and the last line: {exported}");
    assert_eq!(exported.lines().next(), Some(r#"{"tenter":"log","format":1}"#));
    assert_eq!(exported.lines().last(), Some(r#"{"end":"log","entries":6}"#));
    assert_eq!(desk.ok("a.db", &["export"]), exported, "to a pipe as to a file");
    assert_eq!(desk.ok("b.db", &["import", "a.jsonl"]), "6 new, 0 known\n");
    assert_eq!(desk.ok("b.db", &["export", "-"]), exported);
    for question in [&["cloth", "list", "--json"][..], &["cloth", "show", "1", "--json"], &["cloth", "show", "2"]] {
        assert_eq!(desk.ok("a.db", question), desk.ok("b.db", question), "{question:?}");
    }
    assert_eq!(desk.ok("b.db", &["import", "a.jsonl"]), "0 new, 6 known\n");
    assert_eq!(desk.ok("a.db", &["import", "a.jsonl"]), "0 new, 6 known\n");
    assert_eq!(desk.ok("b.db", &["export"]), exported);
}

/// Both sides' history is there, in one order, whichever side imports; a tag on two cloths is told, and the command
/// that is proposed mends it.
#[test]
fn two_logs_merge() {
    let desk = Desk::new();
    desk.fill("a.db");
    desk.ok("b.db", &["cloth", "add", "Organ jersey", "--length", "3m"]);
    desk.ok("b.db", &["cloth", "cut", "1", "1m"]);
    desk.ok("a.db", &["export", "a.jsonl"]);
    desk.ok("b.db", &["export", "b.jsonl"]);
    let told = desk.ok("a.db", &["import", "b.jsonl"]);
    assert!(told.starts_with("2 new, 0 known\n"), "{told}");
    let shared = told.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(shared.contains("several cloths have tag 1: 1a Vestry \"twill\" ü, 2 m, 1b Organ jersey"), "{told}");
    let json = desk.ok("b.db", &["import", "a.jsonl", "--json"]);
    let json: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!((&json["new"], &json["known"], &json["shared_tags"][0]["tag"]), (&6.into(), &0.into(), &1.into()));
    assert_eq!(desk.ok("a.db", &["export"]), desk.ok("b.db", &["export"]));
    assert!(shared.ends_with("tenter cloth renumber"), "{told}");
    assert!(desk.ok("a.db", &["cloth", "show", "1b"]).contains("cut 1.00 m"));
    desk.ok("a.db", &["cloth", "renumber"]);
    assert_eq!(desk.ok("a.db", &["import", "b.jsonl"]), "0 new, 2 known\n", "no tag is on two any more");
    assert!(desk.ok("a.db", &["cloth", "show", "3"]).contains("cut 1.00 m"));
}

/// A plan is for the cloth that was meant: a tag that two wear is not guessed at, an identifier is understood.
#[test]
fn a_plan_does_not_guess_which_of_two_cloths_is_meant() {
    let desk = Desk::new();
    desk.ok("a.db", &["cloth", "add", "Vestry twill"]);
    desk.ok("b.db", &["cloth", "add", "Organ jersey"]);
    desk.ok("b.db", &["export", "b.jsonl"]);
    desk.ok("a.db", &["import", "b.jsonl"]);
    desk.ok("a.db", &["pattern", "add", "Skirt", "-", "main"]);
    let plans: [&[&str]; 2] = [&["fit", "skirt", "--sheet"], &["report", "sheet", "skirt", "--out", "plan.html"]];
    for plan in plans {
        let told = desk.refused("a.db", &[plan, &["--use", "main=1"]].concat());
        assert!(told.contains("2 cloths have tag 1") && told.contains("1b Organ jersey"), "{told}");
    }
    let listed: serde_json::Value = serde_json::from_str(&desk.ok("a.db", &["cloth", "list", "--json"])).unwrap();
    for fabric in listed.as_array().unwrap() {
        let (id, name) = (fabric["id"].as_str().unwrap(), fabric["name"].as_str().unwrap());
        let plan = desk.ok("a.db", &["fit", "skirt", "--sheet", "--use", &format!("main={id}")]);
        let letter = fabric["letter"].as_str().unwrap();
        assert!(plan.contains(&format!("main: 1{letter} {name}, your choice")), "{plan}");
    }
}

/// A log may be exported into the log it came from: reading does not keep writers out.
#[test]
fn a_pipe_from_a_log_to_itself_ends() {
    let desk = Desk::new();
    desk.fill("a.db");
    let exported = desk.ok("a.db", &["export"]);
    let output = desk.piped("a.db", &["import", "-"], exported.as_bytes());
    assert_eq!(String::from_utf8(output.stdout).unwrap(), "0 new, 6 known\n");
}

/// Every fault is named with its line, and nothing of the file is taken.
#[test]
fn what_is_no_whole_log_is_refused_as_a_whole() {
    let desk = Desk::new();
    desk.fill("a.db");
    let good = desk.ok("a.db", &["export"]);
    desk.ok("b.db", &["cloth", "list"]);
    let line = |number: usize| good.lines().nth(number - 1).unwrap();
    let changed = |from: &str, to: &str| {
        assert!(good.contains(from), "{from}");
        good.replacen(from, to, 1)
    };
    let without = |number: usize| good.replace(&format!("{}\n", line(number)), "");
    let cases = [
        (String::new(), "line 0: the file is empty"),
        ("tag,date\n1,2026-11-20\n".to_owned(), "line 1: not a tenter export"),
        (r#"{"tenter":"stash","format":1}"#.to_owned(), "line 1: not a tenter export"),
        (without(1), "line 1: not a tenter export"),
        (changed("\"format\":1", "\"format\":2"), "line 1: written by a newer tenter (format 2, this one knows 1)"),
        (without(8), "line 7: the file is cut off after this line"),
        (good[..good.len() - line(8).len() - 20].to_owned(), "line 7: cut off at its character"),
        (without(4), "line 7: 6 entries were exported and 5 are here"),
        (format!("{good}{good}"), "line 9: something follows the last line"),
        (changed("\"kind\":\"fabric-cut\"", "\"kind\" \"fabric-cut\""), "line 4: damaged at its character"),
        (changed("fabric-cut", "fabric-torn"), "line 4: not an entry of a log: unknown variant `fabric-torn`"),
        (changed("800.0", "-800.0"), "line 4: not an entry of a log: a length below zero"),
        (changed("800.0", "800.00001"), "line 4: not an entry of a log: a length that is no whole number"),
        (changed("\"tag\":1", "\"tag\":0"), "line 2: not an entry of a log: tags begin at 1"),
        (changed("\"tag\":1", "\"tag\":70000"), "line 2: not an entry of a log: invalid value"),
        (changed("\"tag\":1", "\"tag\":1,\"lustre\":\"dull\""), "line 2: this version does not know 'lustre'"),
        (changed("hem; facing", "side\\u001b[31m"), "line 4: a text holds characters that cannot be printed"),
        (changed("{\"id\":\"0", "{\"id\":\"7"), "line 2: not an entry of a log: its time lies ahead of your clock"),
        (changed("{\"id\":\"0", "{\"id\":\"8"), "line 2: not an entry of a log: its identifier is invalid"),
        (
            changed("\"at\":\"20", "\"at\":\"19"),
            "line 2: not an entry of a log: its time is not that of its identifier",
        ),
    ];
    for (text, want) in cases {
        let told = complaint(&desk.piped("b.db", &["import", "-"], text.as_bytes()));
        assert!(told.contains(want) && told.ends_with("; nothing was imported\n"), "{want}: {told}");
        assert_eq!(desk.ok("b.db", &["export"]).lines().count(), 2, "{want}: something was imported");
    }
    let mut bytes = good.clone().into_bytes();
    bytes[60] = 0xff;
    let told = complaint(&desk.piped("b.db", &["import", "-"], &bytes));
    assert!(told.contains("line 2: not UTF-8"), "{told}");
    let long = format!("{}\n\"{}\"\n", line(1), "a".repeat(2 << 20));
    let told = complaint(&desk.piped("b.db", &["import", "-"], long.as_bytes()));
    assert!(told.contains("line 2: longer than any entry"), "{told}");
}

/// A file that went through a mail program: line ends of another system, a byte order mark, an empty line.
#[test]
fn what_mail_does_to_a_file_does_no_harm() {
    let desk = Desk::new();
    desk.fill("a.db");
    let sent = format!("\u{feff}{}\r\n", desk.ok("a.db", &["export"]).replace('\n', "\r\n"));
    let output = desk.piped("b.db", &["import", "-"], sent.as_bytes());
    assert_eq!(String::from_utf8(output.stdout).unwrap(), "6 new, 0 known\n");
    assert_eq!(desk.ok("a.db", &["export"]), desk.ok("b.db", &["export"]));
}

/// An entry that says something else under the same identifier never changes the log, and is told.
#[test]
fn an_edited_entry_is_told() {
    let desk = Desk::new();
    desk.fill("a.db");
    let before = desk.ok("a.db", &["export"]);
    let output = desk.piped("a.db", &["import", "-"], before.replace("hem; facing", "pockets").as_bytes());
    let told = String::from_utf8(output.stdout).unwrap();
    assert!(told.starts_with("0 new, 6 known\n") && told.contains("1 of the known differ"), "{told}");
    assert_eq!(desk.ok("a.db", &["export"]), before);
}

/// Places that cannot be written, and the log itself, are refused before the work begins.
#[test]
fn what_is_written_destroys_nothing() {
    let desk = Desk::new();
    desk.fill("a.db");
    let before = fs::read(desk.path("a.db")).unwrap();
    for name in ["a.db", "./a.db"] {
        assert!(desk.refused("a.db", &["export", name]).contains("it is the log itself"));
    }
    // A page or a picture has no business there either.
    let reports: [&[&str]; 5] =
        [&["book"], &["cards", "1"], &["sheet", "none"], &["gauge", "--wants", "5%"], &["picture", "map"]];
    for words in reports {
        let words = [&["report"], words, &["--out", "./a.db"]].concat();
        assert!(desk.refused("a.db", &words).contains("it is the log itself"), "{words:?}");
    }
    assert_eq!(fs::read(desk.path("a.db")).unwrap(), before);
    assert!(desk.refused("a.db", &["export", "."]).contains("it is a folder"));
    assert!(desk.refused("a.db", &["export", "none/a.jsonl"]).contains("no such file or directory"));
    assert!(desk.refused("a.db", &["import", "none.jsonl"]).contains("cannot read none.jsonl: no such file"));
    assert!(desk.refused("a.db", &["import", "."]).contains("it is a folder"));
    assert!(desk.refused("a.db", &["import", "a.db"]).contains("a.db, line 1: not a tenter export"));
}

/// Photographs go with the log, each in a line of its own under the SHA-256 of its bytes, in any order, once.
#[test]
fn photographs_come_back_as_they_were() {
    let desk = Desk::new();
    desk.fill_memory("a.db");
    let exported = desk.ok("a.db", &["export"]);
    let entries = exported.lines().filter(|line| line.contains("\"kind\":")).count();
    assert_eq!(exported.lines().last(), Some(format!(r#"{{"end":"log","entries":{entries},"photos":4}}"#).as_str()));
    let told = desk.piped("b.db", &["import", "-"], exported.as_bytes());
    let told = String::from_utf8(told.stdout).unwrap();
    assert_eq!(told, format!("{entries} new, 0 known\n4 new photographs\n"));
    assert_eq!(desk.ok("b.db", &["export"]), exported);
    let again = desk.piped("b.db", &["import", "-"], exported.as_bytes());
    assert_eq!(String::from_utf8(again.stdout).unwrap(), format!("0 new, {entries} known\n"));
    assert_eq!(desk.ok("b.db", &["export"]), exported);
    desk.ok("b.db", &["cloth", "picture", "1", "copy.jpg", "--copy", "1"]);
    desk.ok("a.db", &["cloth", "picture", "1", "first.jpg", "--copy", "1"]);
    assert_eq!(fs::read(desk.path("copy.jpg")).unwrap(), fs::read(desk.path("first.jpg")).unwrap());
    // Photographs before the entries that name them.
    let mut lines: Vec<&str> = exported.lines().collect();
    let last = lines.len() - 1;
    lines[1..last].reverse();
    let turned = format!("{}\n", lines.join("\n"));
    assert!(desk.piped("c.db", &["import", "-"], turned.as_bytes()).status.success());
    assert_eq!(desk.ok("c.db", &["export"]), exported);
    // Without one, the rest is read, and the photograph comes when its line does.
    let photo = exported.lines().find(|line| line.starts_with("{\"photo\"")).unwrap();
    let without = exported.replace(&format!("{photo}\n"), "").replace("\"photos\":4", "\"photos\":3");
    assert!(desk.piped("d.db", &["import", "-"], without.as_bytes()).status.success());
    let shown = desk.ok("d.db", &["cloth", "show", "1"]);
    assert!(desk.ok("d.db", &["export"]).lines().count() + 1 == exported.lines().count(), "{shown}");
    assert!(desk.piped("d.db", &["import", "-"], exported.as_bytes()).status.success());
    assert_eq!(desk.ok("d.db", &["export"]), exported);
}

/// A photograph that was damaged, cut off, lost or exchanged is found out, and nothing of the file is taken.
#[test]
fn a_damaged_photograph_is_refused_with_the_whole_file() {
    let desk = Desk::new();
    desk.fill_memory("a.db");
    let good = desk.ok("a.db", &["export"]);
    desk.ok("b.db", &["cloth", "list"]);
    let photos: Vec<&str> = good.lines().filter(|line| line.starts_with("{\"photo\"")).collect();
    let (one, other) = (photos[0], photos[1]);
    let jpeg = |line: &str| line.split('"').nth(7).unwrap().to_owned();
    let changed = |from: &str, to: &str| good.replacen(from, to, 1);
    let cases = [
        (changed(&jpeg(one), &jpeg(other)), "the photograph is not the one it says it is"),
        (changed(&jpeg(one), &jpeg(one).replacen('A', "B", 1)), "the photograph is not the one it says it is"),
        (changed(&jpeg(one), &jpeg(one)[..40]), "the photograph is not the one it says it is"),
        (changed(&jpeg(one), "!"), "the photograph is not the one it says it is"),
        (changed(&format!("{one}\n"), ""), "4 photographs were exported and 3 are here"),
        (changed("{\"photo\":\"", "{\"note\":\"x\",\"photo\":\""), "not an entry of a log: unknown field"),
        (good.split("{\"end\"").next().unwrap().to_owned(), "the file is cut off after this line"),
        (good[..good.len() / 2].to_owned(), "cut off at its character"),
    ];
    for (text, want) in cases {
        let told = complaint(&desk.piped("b.db", &["import", "-"], text.as_bytes()));
        assert!(told.contains(want) && told.ends_with("; nothing was imported\n"), "{want}: {told}");
        assert_eq!(desk.ok("b.db", &["export"]).lines().count(), 2, "{want}: something was imported");
    }
}
