//! The least rights: who may write can add and read and no more; who may read can only read.

use tenter_tests::cluster;

use crate::desk::Desk;

/// An address as somebody else.
fn as_user(address: &str, user: &str) -> String {
    address.replacen("tenter@", &format!("{user}@"), 1)
}

#[test]
fn roles_hold_what_they_promise() {
    let desk = Desk::new();
    let address = cluster::shared().database();
    desk.ok(&address, &["cloth", "add", "Vestry twill", "--length", "2m"]);
    let database = address.split_once("@/").unwrap().1.split_once('?').unwrap().0.to_owned();
    let mut owner = cluster::shared().client(&database);
    let roles = desk.ok(&address, &["log", "roles"]);
    // Twice: after a newer version it is run again.
    for _ in 0..2 {
        owner.batch_execute(&roles).unwrap();
    }
    owner
        .batch_execute(
            "CREATE ROLE anna LOGIN IN ROLE tenter_writer; CREATE ROLE boris LOGIN IN ROLE tenter_reader; CREATE ROLE carla LOGIN",
        )
        .unwrap();
    let [anna, boris, carla] = ["anna", "boris", "carla"].map(|user| as_user(&address, user));

    // Everything that the program does, as anna.
    desk.ok(&anna, &["cloth", "add", "Doorway rib"]);
    desk.ok(&anna, &["cloth", "cut", "1", "50cm"]);
    desk.ok(&anna, &["pull", "2", "--marks", "10cm", "--to", "10.6cm", "--to", "10.7cm"]);
    desk.ok(&anna, &["pattern", "add", "Choir trousers", "A", "main", "--crosswise", "5%"]);
    desk.ok(&anna, &["export", "all.jsonl"]);
    desk.ok(&format!("{anna}&log=own"), &["import", "all.jsonl"]);

    // And nothing else: what was stored stays, whatever she types into another program.
    let mut typed = postgres::Client::connect(&anna, postgres::NoTls).unwrap();
    for sql in [
        "DELETE FROM tenter.entry",
        "UPDATE tenter.entry SET body = '{}'",
        "TRUNCATE tenter.entry CASCADE",
        "DELETE FROM tenter.fabric",
        "DELETE FROM tenter.test",
        "UPDATE tenter.log SET name = 'other'",
        "UPDATE tenter.about SET schema = 9",
        "DROP TABLE tenter.entry",
        "DROP SCHEMA tenter CASCADE",
        "CREATE TABLE tenter.more (id integer)",
    ] {
        let code = typed.batch_execute(sql).unwrap_err().code().cloned();
        assert_eq!(code, Some(postgres::error::SqlState::INSUFFICIENT_PRIVILEGE), "{sql}");
    }

    assert_eq!(desk.ok(&boris, &["cloth", "list"]), desk.ok(&address, &["cloth", "list"]));
    assert_eq!(desk.ok(&boris, &["export", "-"]), desk.ok(&address, &["export", "-"]));
    let before = desk.ok(&address, &["export", "-"]);
    let other = desk.path("other.sqlite3");
    desk.ok(other.to_str().unwrap(), &["cloth", "add", "x"]);
    desk.ok(other.to_str().unwrap(), &["export", "other.jsonl"]);
    for arguments in [&["cloth", "add", "x"][..], &["cloth", "cut", "1", "1cm"], &["import", "other.jsonl"]] {
        let told = desk.refused(&boris, arguments);
        assert!(told.contains("you may not write") && told.contains("log roles"), "{told}");
    }
    assert!(desk.refused(&format!("{boris}&log=new"), &["cloth", "list"]).contains("you may not write"));
    assert_eq!(desk.ok(&address, &["export", "-"]), before);
    assert!(desk.refused(&carla, &["cloth", "list"]).contains("you may not read"));
}

/// Somebody without the right to make tables cannot begin the first log of a database.
#[test]
fn only_the_owner_begins_the_first_log() {
    let desk = Desk::new();
    let address = cluster::shared().database();
    cluster::shared().client("postgres").batch_execute("CREATE ROLE dora LOGIN").unwrap();
    let told = desk.refused(&as_user(&address, "dora"), &["cloth", "list"]);
    assert!(told.contains("you may not make"), "{told}");
}
