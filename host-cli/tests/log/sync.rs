//! Two logs of one person, or of two, take from each other what each lacks.

use std::fs;

use serde_json::Value;

use crate::desk::Desk;

/// Both logs as they are exported: the same to the byte once they hold the same.
fn both(desk: &Desk) -> [String; 2] {
    ["a.db", "b.db"].map(|log| desk.ok(log, &["export"]))
}

/// Six entries in one log, and nine with four photographs in the other, of which each had tag 1.
#[test]
fn each_log_takes_what_it_lacks_and_once() {
    let desk = Desk::new();
    desk.fill("a.db");
    desk.fill_memory("b.db");
    desk.ok("b.db", &["pull", "1", "--marks", "10cm", "--to", "10.2cm", "--by", "Ruth"]);
    let entries = |log| desk.ok(log, &["export"]).lines().filter(|line| line.contains("\"kind\":")).count();
    let (ours, theirs) = (entries("a.db"), entries("b.db"));
    let told = desk.ok("a.db", &["sync", "b.db"]);
    let lines: Vec<&str> = told.lines().collect();
    assert_eq!(lines[0], format!("your log took {theirs} entries and 4 photographs from b.db"));
    assert_eq!(lines[1], format!("b.db took {ours} entries from your log"));
    assert!(told.contains("several cloths have tag 1: 1a ") && !told.contains("something else"), "{told}");
    let [a, b] = both(&desk);
    assert_eq!(a, b);
    assert_eq!(a.lines().filter(|line| line.contains("\"kind\":")).count(), ours + theirs);
    assert_eq!(["a.db", "b.db"].map(|log| desk.ok(log, &["people", "list"]).contains("Ruth")), [true; 2]);
    // From either side, and as often as you like.
    for (log, other) in [("a.db", "b.db"), ("b.db", "a.db")] {
        let again = desk.ok(log, &["sync", other]);
        assert!(again.starts_with("nothing was new in either log\n"), "{again}");
        let json: Value = serde_json::from_str(&desk.ok(log, &["sync", other, "--json"])).unwrap();
        assert_eq!(json["taken"], serde_json::json!({ "new": 0, "photos": 0 }));
        assert_eq!(json["given"], json["taken"]);
        assert_eq!(json["differ"], serde_json::json!([]));
        assert_eq!(json["shared_tags"][0]["tags"], serde_json::json!(["1a", "1b"]));
    }
    assert_eq!(both(&desk), [a, b]);
    desk.ok("b.db", &["cloth", "edit", "2", "--width", "150cm"]);
    assert_eq!(desk.ok("a.db", &["sync", "b.db"]).lines().next(), Some("your log took 1 entry from b.db"));
}

#[test]
fn what_differs_is_told_and_stays() {
    let desk = Desk::new();
    desk.fill("a.db");
    let edited = desk.ok("a.db", &["export"]).replace("hem; facing", "pockets");
    assert!(desk.piped("b.db", &["import", "-"], edited.as_bytes()).status.success());
    let before = both(&desk);
    let told = desk.ok("a.db", &["sync", "b.db"]);
    let flat = told.split_whitespace().collect::<Vec<_>>().join(" ");
    let line = before[0].lines().find(|line| line.contains("hem; facing")).unwrap();
    let entry: Value = serde_json::from_str(line).unwrap();
    let id = entry["id"].as_str().unwrap();
    let note = format!("1 entry says something else in b.db, and each log keeps its own; it is {id}");
    assert!(flat.starts_with("nothing was new in either log") && flat.contains(&note), "{told}");
    let json: Value = serde_json::from_str(&desk.ok("a.db", &["sync", "b.db", "--json"])).unwrap();
    assert_eq!(json["differ"], serde_json::json!([id]));
    assert_eq!(both(&desk), before);
}

/// What was taken out of a log for good does not come back from a copy: neither a name nor a picture.
#[test]
fn what_was_forgotten_stays_forgotten() {
    let desk = Desk::new();
    desk.fill_memory("a.db");
    let all = desk.ok("a.db", &["export"]);
    assert!(desk.piped("b.db", &["import", "-"], all.as_bytes()).status.success());
    desk.ok("a.db", &["cloth", "picture", "1", "--remove", "1"]);
    desk.ok("a.db", &["log", "forget-photos"]);
    desk.ok("b.db", &["cloth", "cut", "1", "10cm"]);
    let photos = |log| desk.ok(log, &["export"]).lines().filter(|line| line.starts_with("{\"photo\"")).count();
    assert_eq!([photos("a.db"), photos("b.db")], [2, 4]);
    let told = desk.ok("a.db", &["sync", "b.db"]);
    assert_eq!(told, "your log took 1 entry from b.db\nb.db took 1 entry from your log\n");
    assert_eq!([photos("a.db"), photos("b.db")], [2, 4]);
}

#[test]
fn a_log_that_is_none_or_the_same_is_refused() {
    let desk = Desk::new();
    desk.fill("a.db");
    let before = fs::read(desk.path("a.db")).unwrap();
    for name in ["a.db", "./a.db"] {
        assert!(desk.refused("a.db", &["sync", name]).contains("that is the same log"), "{name}");
    }
    let told = desk.refused("a.db", &["sync", "b.db"]);
    assert!(told.contains("there is no log at b.db; to copy yours there, type tenter --db b.db sync "), "{told}");
    assert!(!desk.path("b.db").exists());
    fs::write(desk.path("c.db"), "no log").unwrap();
    assert!(desk.refused("a.db", &["sync", "c.db"]).contains("c.db"));
    assert_eq!(fs::read(desk.path("a.db")).unwrap(), before);
    // What it says to type does it.
    let typed = told.split("type tenter ").nth(1).unwrap().trim();
    assert!(desk.ok("a.db", &typed.split(' ').collect::<Vec<_>>()).starts_with("your log took 6 entries from "));
    let [a, b] = both(&desk);
    assert_eq!(a, b);
}
