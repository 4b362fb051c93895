//! What comes from elsewhere hides nothing and takes no room, the one file is the whole log, and what is wrong with it is found
//! and mended.

use std::fs;
use std::os::unix::fs::{PermissionsExt as _, symlink};
use std::path::Path;
use std::process::Command;

use jiff::Timestamp;
use rusqlite::Connection;
use tenter::log::{FabricChange, Fact, Here};
use tenter::store::{self, Change as _, Drafts as _, LogFault, LogWithDrafts as _, Read as _, Store as _, StoreError};

use crate::desk::{Desk, complaint};

/// The lines of an exported log between its first and its last.
fn export_of(entries: &[&str]) -> String {
    let lines: String = entries.iter().map(|entry| format!("{entry}\n")).collect();
    format!("{{\"tenter\":\"log\",\"format\":1}}\n{lines}{{\"end\":\"log\",\"entries\":{}}}\n", entries.len())
}

/// Of a time (RFC 9562 does not know it; the ULID specification: 48 bits of milliseconds, then 80 of chance).
fn id_at(time: &str, drawn: u128) -> String {
    tenter::log::Id::of(time.parse::<Timestamp>().unwrap(), drawn).to_string()
}

fn cloth_at(time: &str, name: &str) -> String {
    let id = id_at(time, 7);
    format!("{{\"id\":\"{id}\",\"kind\":\"fabric-added\",\"tag\":7,\"name\":\"{name}\",\"construction\":\"knit\"}}")
}

fn test_at(time: &str, pulled: &str, more: &str) -> String {
    let id = id_at(time, 8);
    format!(
        "{{\"id\":\"{id}\",\"kind\":\"test-stored\",\"tag\":1,\"pulled\":\"{pulled}\",\"test\":{{\"grain\":\"crosswise\",\
         \"gauge_mm\":100,\"pulls\":[{{\"extended_mm\":110}}],\"division_mm\":1,\"held\":\"folded\"{more}}}}}"
    )
}

fn count(desk: &Desk, log: &str) -> u64 {
    store::open(&desk.path(log), Here::desk()).unwrap().count().unwrap()
}

/// F5: by every door, an identifier or a time that lies more than a day ahead, and what comes after is not dragged along.
#[test]
fn a_time_that_no_clock_has_given_is_refused_at_every_door() {
    let desk = Desk::new();
    desk.fill("log.db");
    let said = "2026-03-01T12:00:00Z";
    for (name, line) in [
        ("id", cloth_at("2150-01-01T00:00:00Z", "from afar")),
        ("end", cloth_at("2199-12-31T23:59:59.999Z", "from afar")),
        ("pulled", test_at(said, "2150-01-01T00:00:00Z", "")),
        ("last second", test_at(said, "9999-12-30T22:00:00.5Z", "")),
    ] {
        fs::write(desk.path("ahead.jsonl"), export_of(&[&line])).unwrap();
        let told = desk.refused("log.db", &["import", "ahead.jsonl"]);
        assert!(
            told.contains("line 2") && told.contains("ahead of your clock") && told.contains("--ahead"),
            "{name}: {told}"
        );
        if name == "last second" {
            assert!(
                desk.refused("log.db", &["import", "ahead.jsonl", "--ahead"]).contains("ahead"),
                "none can hold it"
            );
            continue;
        }
        // Two logs that take from each other.
        desk.ok(&format!("{name}.db"), &["import", "ahead.jsonl", "--ahead"]);
        let told = desk.refused("log.db", &["sync", &format!("{name}.db")]);
        assert!(told.contains("ahead of your clock"), "{name}: {told}");
    }
    // A table states identifiers and instants too.
    let head = "id,tag,name,pulled,grain,gauge,readings,stretch_percent\n";
    let (ahead, now) = (id_at("2150-01-01T00:00:00Z", 3), id_at(said, 3));
    for (id, pulled) in [(&ahead, said), (&now, "2150-01-01T00:00:00Z"), (&now, "9999-12-30T22:00:00.5Z")] {
        fs::write(desk.path("ahead.csv"), format!("{head}{id},1,rib,{pulled},crosswise,100,110,\n")).unwrap();
        let output = desk.run("log.db", &["import", "ahead.csv"]);
        assert_eq!(output.status.code(), Some(2), "{output:?}");
    }
    fs::write(desk.path("ahead.csv"), format!("id,name,tag\n{ahead},rib,9\n")).unwrap();
    assert_eq!(desk.run("log.db", &["import", "ahead.csv"]).status.code(), Some(2));
    assert_eq!(count(&desk, "log.db"), 6, "nothing came in");
    // Within a day it may come from another clock.
    let soon = Timestamp::now().saturating_add(jiff::SignedDuration::from_hours(20)).unwrap().to_string();
    fs::write(desk.path("soon.jsonl"), export_of(&[&cloth_at(&soon, "from a fast clock")])).unwrap();
    desk.ok("log.db", &["import", "soon.jsonl"]);
    // Whatever a log holds, its export goes in again, and what is added next bears today's time.
    desk.ok("id.db", &["cloth", "add", "later"]);
    let exported = desk.ok("id.db", &["export", "-"]);
    fs::write(desk.path("id.jsonl"), &exported).unwrap();
    assert_eq!(desk.ok("copy.db", &["import", "id.jsonl", "--ahead"]), "2 new, 0 known\n");
    assert_eq!(desk.ok("copy.db", &["export", "-"]), exported);
    let years: Vec<&str> =
        exported.match_indices("\"at\":\"").filter_map(|(at, _)| exported.get(at + 6..at + 10)).collect();
    assert_eq!(years, [&Timestamp::now().to_string()[..4], "2150"]);
}

/// F5: her own clock at 2200 names nothing, and she is told to set it.
#[test]
fn a_clock_of_another_century_names_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let here = Here { now: || "2200-06-01T12:00:00Z".parse().unwrap(), ..Here::desk() };
    let mut log = store::open(&folder.path().join("log.db"), here).unwrap();
    let change = FabricChange { tag: Some(1), name: Some("drill".to_owned()), ..FabricChange::default() };
    let refused = log.add(&[Fact::FabricAdded(change)]).unwrap_err();
    assert_eq!(refused, StoreError::Clock { shows: here.now() });
    assert_eq!(tenter::words::errors::store(&refused), "the clock shows 1 June 2200; set it, then type this again");
    assert_eq!(log.count(), Ok(0));
}

/// F2: one row whose time cannot be told, as an earlier version took it, hides nothing, and can be retired.
#[test]
fn one_bad_row_hides_nothing() {
    let desk = Desk::new();
    desk.demo("log.db");
    let raw = Connection::open(desk.path("log.db")).unwrap();
    // The second after the last that jiff reads back from milliseconds.
    let changed = raw.execute(
        "UPDATE test SET pulled = 253402207200500 WHERE id = (SELECT max(id) FROM test WHERE \
        fabric = (SELECT id FROM fabric WHERE tag = 1))",
        [],
    );
    assert_eq!(changed, Ok(1));
    drop(raw);
    for arguments in [
        &["cloth", "list"][..],
        &["cloth", "show", "1"],
        &["fit", "Choir", "A"],
        &["export", "--csv", "tests", "-"],
        &["report", "book", "--out", "book.html"],
    ] {
        let output = desk.run("log.db", arguments);
        assert!(output.status.code().is_some_and(|code| code != 2), "{arguments:?}: {output:?}");
    }
}

/// F4: whatever other windows have open, the one file is the whole log after every verb.
#[test]
fn the_one_file_is_the_log_after_every_commit() {
    let desk = Desk::new();
    // A window that waits for an answer.
    let mut waiting = store::open(&desk.path("log.db"), Here::desk()).unwrap();
    waiting.set_draft("pull/x", Some("begun")).unwrap();
    for number in 1..=20_u64 {
        desk.ok("log.db", &["cloth", "add", &format!("cloth {number}")]);
        fs::copy(desk.path("log.db"), desk.path("copy.db")).unwrap();
        assert_eq!(count(&desk, "copy.db"), number);
    }
    waiting.set_draft("pull/x", Some("gone on")).unwrap();
    fs::copy(desk.path("log.db"), desk.path("copy.db")).unwrap();
    let copy = store::open(&desk.path("copy.db"), Here::desk()).unwrap();
    assert_eq!(copy.draft("pull/x").unwrap().as_deref(), Some("gone on"));
}

/// F4: a copy that is laid over a log whose `-wal` was left by a kill is not mixed with it: it is refused, and read once that
/// is deleted. The file that the `-wal` belongs to goes on with it.
#[test]
fn a_copy_over_what_a_kill_left_is_not_mixed_with_it() {
    let desk = Desk::new();
    let (log, wal) = (desk.path("log.db"), desk.path("log.db-wal"));
    desk.fill("log.db");
    fs::copy(&log, desk.path("safe.db")).unwrap();
    desk.ok("log.db", &["cloth", "add", "after the copy"]);
    // Somebody who reads keeps what is added now out of the file, until the kill.
    let reader = Connection::open(&log).unwrap();
    reader.execute_batch("BEGIN; SELECT count(*) FROM entry").unwrap();
    let mut writer = store::open(&log, Here::desk()).unwrap();
    for name in ["one", "two", "three"] {
        let change = FabricChange { tag: Some(30), name: Some(name.to_owned()), ..FabricChange::default() };
        writer.add(&[Fact::FabricAdded(change)]).unwrap();
    }
    assert!(fs::metadata(&wal).unwrap().len() > 0, "nothing is left beside the file");
    for (from, to) in [(&log, "killed.db"), (&wal, "killed.db-wal")] {
        fs::copy(from, desk.path(to)).unwrap();
    }
    drop((reader, writer));
    let left = fs::read(desk.path("killed.db-wal")).unwrap();
    // As the kill left it.
    assert_eq!(count(&desk, "killed.db"), 10);
    // The copy from before, laid in its place.
    fs::copy(desk.path("safe.db"), &log).unwrap();
    fs::write(&wal, &left).unwrap();
    for arguments in [&["cloth", "list"][..], &["cloth", "add", "new"], &["export", "-"], &["log", "check"]] {
        let told = desk.refused("log.db", arguments);
        assert!(told.contains("log.db-wal belongs to the file before") && told.contains("delete"), "{told}");
    }
    assert_eq!(fs::read(&log).unwrap(), fs::read(desk.path("safe.db")).unwrap(), "nothing was changed");
    let _ = fs::remove_file(desk.path("log.db-shm"));
    fs::remove_file(&wal).unwrap();
    assert_eq!(count(&desk, "log.db"), 6);
    assert!(desk.ok("log.db", &["log", "check"]).contains("is whole"));
}

/// F4: what the tables say is held against what the entries say; what differs is told, and made anew.
#[test]
fn a_check_finds_what_differs_and_makes_it_anew() {
    let desk = Desk::new();
    desk.demo("log.db");
    desk.swatch("red.png", [200, 30, 40]);
    desk.ok("log.db", &["cloth", "picture", "1", "red.png"]);
    let path = desk.path("log.db");
    store::open(&path, Here::desk()).unwrap().set_draft("pull/x", Some("begun")).unwrap();
    let questions = [&["cloth", "list"][..], &["cloth", "show", "1"], &["fit", "Choir", "A"], &["export", "-"]];
    let answers = || questions.map(|arguments| desk.run("log.db", arguments).stdout);
    let whole = answers();
    assert!(desk.ok("log.db", &["log", "check"]).contains("is whole"));
    for (damage, told) in [
        ("UPDATE fabric SET length = 1 WHERE tag = 1", "row of fabric"),
        ("DELETE FROM role", "rows of role"),
        ("UPDATE test SET record = x'00'", "rows of test"),
        ("DELETE FROM arrival WHERE number = 3", "not all numbered"),
        ("INSERT INTO orphan VALUES ('01KNDF0W00ZJVFW13CDDH771ST', '01KNDF0W00ZJVFW13CDDH771ST')", "row of orphan"),
        ("UPDATE hand SET hand_sum = hand_sum + 1", "of hand"),
        ("DELETE FROM garment", "rows of garment"),
        ("PRAGMA foreign_keys = 0; DELETE FROM fabric WHERE tag = 1", "names something that is not there"),
    ] {
        let raw = Connection::open(&path).unwrap();
        raw.execute_batch(damage).unwrap();
        drop(raw);
        let output = desk.run("log.db", &["log", "check"]);
        let said = String::from_utf8(output.stdout).unwrap();
        assert_eq!(output.status.code(), Some(1), "{damage}: {said}");
        assert!(said.contains(told) && said.contains("tenter log check --rebuild"), "{damage}: {said}");
        let mended = desk.ok("log.db", &["log", "check", "--rebuild"]);
        assert!(mended.contains("made anew") && mended.contains("is whole"), "{damage}: {mended}");
        assert_eq!(answers(), whole, "{damage}");
    }
    let log = store::open(&path, Here::desk()).unwrap();
    assert_eq!(log.draft("pull/x").unwrap().as_deref(), Some("begun"));
    let mut photos = 0;
    log.each_photo(&mut |_| {
        photos += 1;
        Ok(())
    })
    .unwrap();
    assert_eq!(photos, 4, "two photographs and their thumbnails");
}

/// An entry that this version cannot read is told, and neither lost nor in the way of the others.
#[test]
fn an_entry_that_cannot_be_read_is_kept() {
    let desk = Desk::new();
    desk.fill("log.db");
    let path = desk.path("log.db");
    let raw = Connection::open(&path).unwrap();
    let strange = "{\"kind\":\"not-known\"}";
    let id = id_at("2026-03-01T12:00:00Z", 5);
    raw.execute("INSERT INTO entry VALUES (?1, ?1, ?2)", [&id, strange]).unwrap();
    raw.execute("INSERT INTO arrival (entry) VALUES (?1)", [&id]).unwrap();
    drop(raw);
    let mut log = store::open(&path, Here::desk()).unwrap();
    assert_eq!(log.faults().unwrap(), [LogFault::Unreadable { count: 1 }]);
    log.rebuild().unwrap();
    assert_eq!((log.count(), log.fabrics().unwrap().len()), (Ok(7), 2));
    let mut last = String::new();
    log.each_arrival(6, &mut |_, line| {
        line.clone_into(&mut last);
        Ok(())
    })
    .unwrap();
    assert!(last.contains("not-known"), "{last}");
}

/// F7: the draft of a guided test is forgotten with the test that is stored, or neither is done.
#[test]
fn a_test_and_its_draft_are_one() {
    let desk = Desk::new();
    desk.fill("log.db");
    let raw = Connection::open(desk.path("log.db")).unwrap();
    raw.execute_batch("CREATE TRIGGER no BEFORE DELETE ON draft BEGIN SELECT RAISE(ABORT, 'the disk fails'); END")
        .unwrap();
    let answers = b"\n\n100mm\nn\n0\n110mm\nf\n";
    let output = desk.piped("log.db", &["pull", "1"], answers);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    assert_eq!(count(&desk, "log.db"), 6, "the test is not there either");
    raw.execute_batch("DROP TRIGGER no").unwrap();
    drop(raw);
    let drafts = || store::open(&desk.path("log.db"), Here::desk()).unwrap().drafts_under("pull").unwrap().len();
    assert_eq!(drafts(), 1, "her readings are kept");
    let output = desk.piped("log.db", &["pull", "1", "--resume"], b"f\n");
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    assert_eq!((count(&desk, "log.db"), drafts()), (7, 0));
    let mut log = store::open(&desk.path("log.db"), Here::desk()).unwrap();
    log.set_draft("pull/y", Some("begun")).unwrap();
    log.take_finished(&mut core::iter::empty(), "pull/y").unwrap();
    assert_eq!(log.draft("pull/y"), Ok(None));
}

/// F8: a pipe under the name of a log is no log, and nobody waits for it.
#[test]
fn a_pipe_is_no_log() {
    let desk = Desk::new();
    assert!(Command::new("mkfifo").arg(desk.path("pipe.db")).status().unwrap().success());
    let told = desk.refused("pipe.db", &["cloth", "list"]);
    assert!(told.contains("is not a tenter log"), "{told}");
    let told = desk.refused("log.db", &["--db", "/dev/zero", "cloth", "list"]);
    assert!(told.contains("is not a tenter log"), "{told}");
}

/// F10: a file without an end is refused after what a table may have.
#[test]
fn a_table_without_an_end_is_refused() {
    let desk = Desk::new();
    let told = desk.refused("log.db", &["import", "--csv", "/dev/zero"]);
    assert!(told.contains("larger than 64 MB"), "{told}");
}

/// F11: what no verb writes does not come in by a file either.
#[test]
fn an_import_takes_only_what_a_verb_writes() {
    let desk = Desk::new();
    let said = "2026-03-01T12:00:00Z";
    let id = id_at(said, 9);
    let entry = |fields: &str| format!("{{\"id\":\"{id}\",{fields}}}");
    let many = vec!["\"knit\""; 100_000].join(",");
    let role = "\"kind\":\"role-added\",\"pattern\":\"01KNDF0W00ZJVFW13CDDH771ST\",\"view\":\"A\"";
    for (line, told) in [
        (cloth_at(said, "\u{a0} "), "a name without letters"),
        (cloth_at(said, &"x".repeat(900_000)), "longer than 400 characters"),
        (cloth_at(said, &"ü".repeat(401)), "longer than 400 characters"),
        (entry("\"kind\":\"pattern-added\",\"name\":\" \""), "a name without letters"),
        (entry("\"kind\":\"pattern-added\""), "a name without letters"),
        (entry(&format!("{role},\"name\":\"\"")), "a name without letters"),
        (
            entry(&format!("{role},\"name\":\"main\",\"demand\":{{\"recovery_least\":{{\"percent\":200}}}}")),
            "above 100 %",
        ),
        (entry(&format!("{role},\"name\":\"main\",\"constructions\":[{many}]")), "more than 256 values"),
        (
            entry("\"kind\":\"person-named\",\"person\":\"01KNDF0W00ZJVFW13CDDH771ST\",\"name\":\"\u{2003}\""),
            "without letters",
        ),
        (test_at(said, said, ",\"millinewtons\":4294967295"), "beyond 1000 N"),
    ] {
        fs::write(desk.path("odd.jsonl"), export_of(&[&line])).unwrap();
        let refused = desk.refused("log.db", &["import", "odd.jsonl"]);
        assert!(refused.contains("line 2") && refused.contains(told) && refused.len() < 300, "{told}: {refused}");
    }
    // The longest of each comes in.
    fs::write(desk.path("long.jsonl"), export_of(&[&cloth_at(said, &"ü".repeat(400))])).unwrap();
    assert_eq!(desk.ok("log.db", &["import", "long.jsonl"]), "1 new, 0 known\n");
}

/// F13: a log that came with rights for others is hers alone after the next verb.
#[test]
fn a_log_is_closed_to_others() {
    let desk = Desk::new();
    desk.fill("log.db");
    let mode = |path: &Path| fs::metadata(path).unwrap().permissions().mode() & 0o777;
    fs::set_permissions(desk.path("log.db"), fs::Permissions::from_mode(0o644)).unwrap();
    desk.ok("log.db", &["cloth", "list"]);
    assert_eq!(mode(&desk.path("log.db")), 0o600);
}

/// F9: pages of the manual and of the app are not written through links that somebody laid where they go.
#[test]
fn the_manual_follows_no_link() {
    let desk = Desk::new();
    desk.fill("log.db");
    fs::create_dir(desk.path("man")).unwrap();
    symlink(desk.path("log.db"), desk.path("man/tenter-pull.1")).unwrap();
    let before = fs::read(desk.path("log.db")).unwrap();
    desk.ok("log.db", &["man", "--out", "man"]);
    assert_eq!(fs::read(desk.path("log.db")).unwrap(), before);
    assert!(fs::read_to_string(desk.path("man/tenter-pull.1")).unwrap().contains(".TH"));
    // A folder with an escape in its name is shown without it, in a pipe too.
    let told = desk.run("log.db", &["man", "--out", "a\u{1b}]0;title\u{7}\u{202e}b"]);
    assert!(!told.stdout.contains(&0x1b) && !String::from_utf8(told.stdout).unwrap().contains('\u{202e}'));
    let told = complaint(&desk.run("log.db", &["--db", "/dev/null/\u{1b}]0;x\u{7}\u{2028}a", "cloth", "list"]));
    assert!(!told.contains(['\u{1b}', '\u{2028}']), "{told}");
}
