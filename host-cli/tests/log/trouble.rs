//! What can be wrong with the file of a log: each is told in one line, and nothing is lost.

use std::fs;
use std::os::unix::fs::{MetadataExt as _, PermissionsExt as _};
use std::path::Path;
use std::process::Command;

use rusqlite::Connection;
use tenter::store::{self, Read as _, sqlite};

use crate::desk::{Desk, complaint};

/// Runs a program of the system that the test cannot do without.
fn system(program: &str, arguments: &[&str]) -> String {
    let output = Command::new(program).args(arguments).output().unwrap_or_else(|error| panic!("{program}: {error}"));
    assert!(output.status.success(), "{program} {arguments:?}: {output:?}");
    String::from_utf8(output.stdout).unwrap()
}

/// All into the main file, so that its bytes are all there is.
fn settled(path: &Path) {
    let connection = Connection::open(path).unwrap();
    connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(())).unwrap();
}

#[test]
fn a_newer_log_is_left_untouched() {
    let desk = Desk::new();
    desk.fill("log.db");
    let path = desk.path("log.db");
    Connection::open(&path).unwrap().pragma_update(None, "user_version", sqlite::NEWEST + 1).unwrap();
    settled(&path);
    let before = fs::read(&path).unwrap();
    for arguments in [&["cloth", "list"][..], &["cloth", "add", "new"], &["export"]] {
        let told = desk.refused("log.db", arguments);
        assert!(told.contains("newer tenter") && told.contains("use that version"), "{told}");
    }
    assert_eq!(fs::read(&path).unwrap(), before);
}

#[test]
fn other_files_are_left_untouched() {
    let desk = Desk::new();
    fs::write(desk.path("text.db"), "shopping: thread, elastic 2 cm\n").unwrap();
    fs::write(desk.path("short.db"), "SQLite").unwrap();
    let foreign = Connection::open(desk.path("foreign.db")).unwrap();
    foreign.execute_batch("CREATE TABLE recipes (name TEXT); INSERT INTO recipes VALUES ('bread')").unwrap();
    drop(foreign);
    fs::create_dir(desk.path("folder.db")).unwrap();
    for log in ["text.db", "short.db", "foreign.db"] {
        let before = fs::read(desk.path(log)).unwrap();
        let told = desk.refused(log, &["cloth", "add", "new"]);
        assert!(told.contains("is not a tenter log"), "{told}");
        assert_eq!(fs::read(desk.path(log)).unwrap(), before, "{log}");
    }
    assert!(desk.refused("folder.db", &["cloth", "list"]).contains("may not write"));
    assert!(desk.refused("text.db/below/log.db", &["cloth", "list"]).contains("may not"));
}

/// Pages overwritten with noise, in 60 ways: the right answer or one line, never a panic, never a wrong answer.
#[test]
fn a_damaged_file_is_told_in_one_line() {
    let desk = Desk::new();
    desk.demo("good.db");
    settled(&desk.path("good.db"));
    let good = fs::read(desk.path("good.db")).unwrap();
    let mut noise: u64 = 42;
    let mut random = || {
        // A linear congruential generator (Knuth, MMIX), for the same noise each time.
        noise = noise.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(noise >> 33).unwrap()
    };
    let questions = [&["cloth", "list"][..], &["fit", "Choir", "A"], &["cloth", "add", "new"], &["export"]];
    let whole = questions.map(|arguments| {
        fs::write(desk.path("whole.db"), &good).unwrap();
        desk.run("whole.db", arguments).stdout
    });
    let (mut told, mut right) = (0, 0);
    for round in 0..60 {
        let mut bytes = good.clone();
        for _ in 0..=round % 4 {
            let page = random() % (bytes.len() / 4096);
            bytes[page * 4096..(page + 1) * 4096].fill_with(|| u8::try_from(random() % 256).unwrap());
        }
        for (arguments, whole) in questions.iter().zip(&whole) {
            for ending in ["-wal", "-shm"] {
                let _ = fs::remove_file(desk.path(&format!("bad.db{ending}")));
            }
            fs::write(desk.path("bad.db"), &bytes).unwrap();
            let output = desk.run("bad.db", arguments);
            let error = String::from_utf8_lossy(&output.stderr).into_owned();
            assert!(output.status.code().is_some_and(|code| code <= 3), "{arguments:?}: {output:?}");
            if output.status.code() == Some(2) {
                assert_eq!(error.lines().count(), 1, "{arguments:?}: {error}");
                told += 1;
            } else {
                let said = String::from_utf8_lossy(&output.stdout);
                assert_eq!(said, String::from_utf8_lossy(whole), "{arguments:?} in round {round}");
                right += 1;
            }
        }
    }
    println!("240 questions to damaged files: {told} refused in one line, {right} answered right");
    assert!(told > 60 && right > 0, "{told} told, {right} right");
}

/// Nobody else may read it, nor what lies beside it while it is open, nor an export.
#[test]
fn other_users_cannot_read_it() {
    let desk = Desk::new();
    let log = desk.path("new/folder/log.db");
    let mut command = desk.command("new/folder/log.db", &["cloth", "list"]);
    assert!(command.output().unwrap().status.success());
    let store = store::open(&log, tenter::log::Here::desk()).unwrap();
    let _ = store.count().unwrap();
    let mode = |path: &Path| fs::metadata(path).unwrap().permissions().mode() & 0o777;
    for ending in ["", "-wal", "-shm"] {
        assert_eq!(mode(&desk.path(&format!("new/folder/log.db{ending}"))), 0o600, "{ending}");
    }
    assert_eq!(mode(&desk.path("new/folder")), 0o700);
    desk.ok("new/folder/log.db", &["export", "out.jsonl"]);
    assert_eq!(mode(&desk.path("out.jsonl")) & 0o077, 0);
}

fn is_root() -> bool {
    fs::metadata("/proc/self").unwrap().uid() == 0
}

/// Another user is refused in one line: by root, who may be anybody, as that user; by anybody else, as the owner of what
/// nobody may read.
#[test]
fn another_user_is_refused() {
    let desk = Desk::new();
    desk.fill("log.db");
    let folder = desk.path("").to_owned();
    fs::set_permissions(&folder, fs::Permissions::from_mode(0o755)).unwrap();
    let program = desk.path("tenter");
    fs::copy(env!("CARGO_BIN_EXE_tenter"), &program).unwrap();
    let close = |file: u32, place: u32| {
        fs::set_permissions(desk.path("log.db"), fs::Permissions::from_mode(file)).unwrap();
        fs::set_permissions(&folder, fs::Permissions::from_mode(place)).unwrap();
    };
    if !is_root() {
        close(0, 0o555);
    }
    let as_nobody = |arguments: &[&str]| {
        let mut command = Command::new(if is_root() { "setpriv".as_ref() } else { program.as_os_str() });
        if is_root() {
            command.args(["--reuid=65534", "--regid=65534", "--clear-groups"]).arg(&program);
        }
        command.args(arguments).env("TENTER_DB", desk.path("log.db")).output().unwrap()
    };
    for arguments in [&["cloth", "list"][..], &["cloth", "add", "new"]] {
        let told = complaint(&as_nobody(arguments));
        assert!(told.contains("may not") && told.contains("--db"), "{told}");
    }
    let elsewhere = folder.join("below/log.db");
    let told = complaint(&as_nobody(&["--db", elsewhere.to_str().unwrap(), "cloth", "add", "new"]));
    assert!(told.contains("may not make"), "{told}");
    close(0o600, 0o755);
    assert_eq!(desk.ok("log.db", &["cloth", "list", "--json"]).matches("\"tag\"").count(), 2);
}

/// Runs the test that asks in a name space of its own, where an ordinary user may mount too; whether that was needed.
fn ran_in_a_name_space(test: &str) -> bool {
    if is_root() {
        return false;
    }
    let mut unshare = Command::new("unshare");
    unshare.args(["--user", "--map-root-user", "--mount"]).arg(std::env::current_exe().unwrap());
    let output = unshare.args(["--exact", test]).output().unwrap();
    assert!(output.status.success(), "as an ordinary user without name spaces this needs root: {output:?}");
    true
}

/// A small file system of its own; goes away with the value.
struct Mount {
    path: std::path::PathBuf,
}

impl Mount {
    fn new(desk: &Desk, size: &str) -> Self {
        let path = desk.path("mount");
        fs::create_dir(&path).unwrap();
        system("mount", &["-t", "tmpfs", "-o", &format!("size={size}"), "tmpfs", path.to_str().unwrap()]);
        Self { path }
    }

    /// Changes an option of it, and takes no other over from before: in a name space some of them have no meaning.
    fn remount(&self, option: &str) {
        let options = format!("remount,{option}");
        let place = self.path.to_str().unwrap();
        system("mount", &["--options-mode", "ignore", "-t", "tmpfs", "-o", &options, "tmpfs", place]);
    }
}

impl Drop for Mount {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(&self.path).status();
    }
}

/// A full disk is told in one line; what was said to be stored is there, and goes on being there once there is room.
#[test]
fn a_full_disk_is_told() {
    if ran_in_a_name_space("trouble::a_full_disk_is_told") {
        return;
    }
    let desk = Desk::new();
    let mount = Mount::new(&desk, "640k");
    let mut stored = 0;
    let told = loop {
        let output = desk.run("mount/log.db", &["cloth", "add", &format!("cloth {stored} {}", "x".repeat(300))]);
        if output.status.success() {
            stored += 1;
            assert!(stored < 2000, "it never fills");
            continue;
        }
        break complaint(&output);
    };
    assert!(told.contains("full") && told.contains("make room"), "{told}");
    assert!(stored > 10, "{stored}");
    // Nor does an export or an import on it leave half of anything.
    let names = || {
        let found = fs::read_dir(&mount.path).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
        let mut names: Vec<String> = found.collect();
        names.sort();
        names
    };
    let before = names();
    let told = desk.refused("mount/log.db", &["export", "mount/out.jsonl"]);
    assert!(told.contains("cannot write") && told.contains("no space left"), "{told}");
    assert_eq!(names(), before);
    // What is there can be read, with not a byte to spare and nothing beside the file.
    fs::write(desk.path("mount/rest"), vec![0; 4 << 20]).unwrap_err();
    for arguments in [&["cloth", "list"][..], &["cloth", "show", "1"], &["export", "-"], &["export", "out.jsonl"]] {
        let output = desk.run("mount/log.db", arguments);
        assert!(output.status.success(), "{arguments:?}: {output:?}");
    }
    let told = desk.refused("mount/log.db", &["cloth", "add", "no room"]);
    assert!(told.contains("full") && told.contains("make room"), "{told}");
    fs::remove_file(desk.path("mount/rest")).unwrap();
    desk.demo("other.db");
    desk.ok("other.db", &["export", "demo.jsonl"]);
    let told = desk.refused("mount/log.db", &["import", "demo.jsonl"]);
    assert!(told.contains("full") && told.contains("nothing was changed"), "{told}");
    mount.remount("size=8m");
    let store = store::open(&desk.path("mount/log.db"), tenter::log::Here::desk()).unwrap();
    assert_eq!(store.faults().unwrap(), Vec::new());
    assert_eq!(store.count().unwrap(), stored);
    drop(store);
    desk.ok("mount/log.db", &["cloth", "add", "one more"]);
}

/// A folder that cannot be written: one line, whatever is asked.
#[test]
fn a_read_only_folder_is_told() {
    if ran_in_a_name_space("trouble::a_read_only_folder_is_told") {
        return;
    }
    let desk = Desk::new();
    let mount = Mount::new(&desk, "8m");
    desk.fill("mount/log.db");
    mount.remount("ro");
    for arguments in
        [&["cloth", "add", "new"][..], &["cloth", "retire", "1"], &["--db", "mount/new/log.db", "cloth", "list"]]
    {
        let told = desk.refused("mount/log.db", arguments);
        assert!(told.contains("may not") && told.contains("--db"), "{told}");
    }
    // It can be read, and taken elsewhere.
    for arguments in [&["cloth", "list"][..], &["cloth", "show", "1"], &["log", "check"], &["export", "out.jsonl"]] {
        let output = desk.run("mount/log.db", arguments);
        assert!(output.status.success(), "{arguments:?}: {output:?}");
    }
    assert_eq!(desk.ok("copy.db", &["import", "out.jsonl"]), "6 new, 0 known\n");
    mount.remount("rw");
    assert_eq!(store::open(&desk.path("mount/log.db"), tenter::log::Here::desk()).unwrap().count().unwrap(), 6);
}

/// The `sqlite3` program of the system opens the file, finds it whole, and reads what was stored.
#[test]
fn the_sqlite3_program_reads_it() {
    let desk = Desk::new();
    desk.demo("log.db");
    let path = desk.path("log.db");
    let path = path.to_str().unwrap();
    let ask = |sql: &str| system("sqlite3", &[path, sql]).trim().to_owned();
    assert_eq!(ask("PRAGMA integrity_check; PRAGMA foreign_key_check"), "ok");
    assert_eq!(ask("PRAGMA journal_mode"), "wal");
    assert_eq!(ask("SELECT tag FROM fabric WHERE name = 'Vestry twill'"), "1");
    // 271, 272 and 271 mm on 250 mm marks: 8.5333 %, by hand.
    let stretch = "SELECT printf('%.4f', stretch_percent) FROM test WHERE fabric = (SELECT id FROM fabric WHERE tag = 1) \
                   AND grain = 'crosswise'";
    assert_eq!(ask(stretch), "8.5333");
    assert_eq!(ask("SELECT count(*) FROM fabric"), "16");
}

/// From an empty file, and from every earlier schema on: `tests/log/schemas/N.sql` is a log as schema N kept it. A new migration
/// without one fails here.
#[test]
fn every_earlier_schema_is_brought_up_to_date() {
    let schemas = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/log/schemas");
    for schema in 1..=sqlite::NEWEST {
        let dump = fs::read_to_string(schemas.join(format!("{schema}.sql")))
            .unwrap_or_else(|error| panic!("keep a log of schema {schema} as tests/log/schemas/{schema}.sql: {error}"));
        let desk = Desk::new();
        let old = Connection::open(desk.path("log.db")).unwrap();
        old.execute_batch(&dump).unwrap();
        old.pragma_update(None, "application_id", sqlite::APPLICATION_ID).unwrap();
        old.pragma_update(None, "user_version", schema).unwrap();
        drop(old);
        let shown = desk.ok("log.db", &["cloth", "show", "1"]);
        assert!(shown.contains("Vestry twill") && shown.contains("8.5 %"), "{shown}");
        let fit = desk.run("log.db", &["fit", "Choir", "A"]);
        // Growth was read after a minute, and is asked after half an hour.
        assert_eq!(fit.status.code(), Some(3), "{fit:?}");
        let store = store::open(&desk.path("log.db"), tenter::log::Here::desk()).unwrap();
        assert_eq!(store.faults().unwrap(), Vec::new());
        // The same tables as a log that was begun today.
        desk.ok("new.db", &["cloth", "list"]);
        let tables = |log: &str| {
            let path = desk.path(log);
            let mut lines: Vec<String> =
                system("sqlite3", &[path.to_str().unwrap(), ".schema"]).lines().map(str::to_owned).collect();
            lines.sort();
            lines
        };
        assert_eq!(tables("log.db"), tables("new.db"), "schema {schema}");
    }
}
