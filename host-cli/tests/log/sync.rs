//! Two logs of one person, or of two, take from each other what each lacks.

use std::fs;

use serde_json::Value;
use tenter::log::Id;

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

/// Two copies of one log, each changed by somebody else: both hear of it, the later counts, and the history holds both.
#[test]
fn what_both_changed_is_told_and_kept() {
    let desk = Desk::new();
    desk.fill("a.db");
    let all = desk.ok("a.db", &["export"]);
    assert!(desk.piped("b.db", &["import", "-"], all.as_bytes()).status.success());
    desk.ok("a.db", &["people", "here", "Anna"]);
    desk.ok("b.db", &["people", "here", "Ruth"]);
    desk.ok("a.db", &["cloth", "edit", "2", "--name", "Foyer rib", "--place", "loft"]);
    desk.ok("b.db", &["cloth", "edit", "2", "--name", "Gallery rib", "--width", "150cm"]);
    desk.ok("b.db", &["cloth", "cut", "1", "10cm"]);
    let json: Value = serde_json::from_str(&desk.ok("a.db", &["sync", "b.db", "--json"])).unwrap();
    let both = json["changed_in_both"].as_array().unwrap();
    assert_eq!(both.len(), 1, "{both:?}");
    assert_eq!((both[0]["field"].as_str(), both[0]["counts"].as_str()), (Some("name"), Some("there")));
    assert_eq!(both[0]["here"]["fact"]["name"], "Foyer rib");
    for log in ["a.db", "b.db"] {
        let shown = desk.ok(log, &["cloth", "show", "2"]).split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(shown.contains("changed: name 'Foyer rib', place 'loft' (Anna)"), "{shown}");
        assert!(shown.contains("changed: name 'Gallery rib', width 150 cm (Ruth)"), "{shown}");
    }
    // In words, from the other side.
    desk.ok("a.db", &["cloth", "edit", "2", "--name", "Choir rib"]);
    desk.ok("b.db", &["cloth", "retire", "1"]);
    desk.ok("b.db", &["cloth", "edit", "2", "--name", "Nave rib"]);
    let told = desk.ok("b.db", &["sync", "a.db"]).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(told.contains("both logs changed cloth 2 Nave rib: its name"), "{told}");
    assert!(told.contains(", Ruth: name 'Nave rib'; this is later and counts"), "{told}");
    assert!(told.contains("in a.db, ") && told.contains(", Anna: name 'Choir rib'"), "{told}");
    assert!(!told.contains("cloth 1"), "one side alone retired it: {told}");
    assert!(desk.ok("a.db", &["sync", "b.db"]).starts_with("nothing was new in either log\n"));
}

/// A laptop whose clock runs years ahead: what it stored keeps its time, and nothing that is stored later anywhere follows it,
/// but what is said of the same cloth, whose order counts.
#[test]
fn a_clock_that_runs_ahead_drags_nothing_along() {
    let desk = Desk::new();
    let lines = "{\"tenter\":\"log\",\"format\":1}\n\
        {\"id\":\"01ZZZZZZZZ0000000000000007\",\"kind\":\"fabric-added\",\"tag\":7,\"name\":\"Loft calico\"}\n\
        {\"end\":\"log\",\"entries\":1}\n";
    let ahead = Id::from_elsewhere("01ZZZZZZZZ0000000000000007").unwrap();
    assert!(ahead.at() > jiff::Timestamp::now() + jiff::SignedDuration::from_hours(24 * 365));
    assert!(desk.piped("laptop.db", &["import", "-"], lines.as_bytes()).status.success());
    desk.ok("desk.db", &["cloth", "add", "Nave twill"]);
    desk.ok("desk.db", &["sync", "laptop.db"]);
    desk.ok("desk.db", &["cloth", "add", "Aisle gabardine"]);
    desk.ok("laptop.db", &["cloth", "add", "Pantry crash", "--tag", "20"]);
    desk.ok("desk.db", &["cloth", "edit", "7", "--place", "loft"]);
    desk.ok("desk.db", &["sync", "laptop.db"]);
    for log in ["desk.db", "laptop.db"] {
        let shown = |cloth: &str| -> Value {
            serde_json::from_str(&desk.ok(log, &["cloth", "show", cloth, "--json"])).unwrap()
        };
        let said = |cloth: &str| -> Vec<Id> {
            let history = shown(cloth)["history"].as_array().unwrap().clone();
            history.iter().map(|entry| entry["id"].as_str().unwrap().parse().unwrap()).collect()
        };
        for cloth in ["Nave twill", "Aisle gabardine", "Pantry crash"] {
            assert!(said(cloth).iter().all(|id| id.at() <= jiff::Timestamp::now()), "{cloth} in {log}");
        }
        let ids = said("Loft calico");
        assert!(ids.len() == 2 && ids[0] == ahead && ids[1] > ahead, "{ids:?} in {log}");
        assert_eq!(shown("Loft calico")["place"], "loft", "what was said later counts in {log}");
    }
}
