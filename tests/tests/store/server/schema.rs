//! Schemas: older ones are brought up to date, newer and foreign ones are left untouched.

use std::fs;
use std::path::Path;

use postgres::Client;
use tenter::store::postgres::{FIRST, NEWEST};
use tenter_tests::cluster;

use crate::desk::Desk;

/// A database of its own: its address, and its owner's connection.
fn database() -> (String, Client) {
    let address = cluster::shared().database();
    let client = Client::connect(&address, postgres::NoTls).unwrap();
    (address, client)
}

/// Every column of every table, and every index.
fn tables(client: &mut Client) -> Vec<String> {
    let sql = "SELECT concat_ws(' ', table_name, column_name, data_type, collation_name, is_nullable, column_default) \
        FROM information_schema.columns WHERE table_schema = 'tenter' \
        UNION ALL SELECT indexdef FROM pg_indexes WHERE schemaname = 'tenter' \
        UNION ALL SELECT concat_ws(' ', conrelid::regclass, pg_get_constraintdef(oid)) FROM pg_constraint \
            WHERE connamespace = 'tenter'::regnamespace ORDER BY 1";
    client.query(sql, &[]).unwrap().iter().map(|row| row.get(0)).collect()
}

/// From nothing, and from every schema on that there was: `schemas/N.sql` is a log as schema N kept it. A new migration without one
/// fails here.
#[test]
fn every_earlier_schema_is_brought_up_to_date() {
    let desk = Desk::new();
    let (new, mut fresh) = database();
    desk.ok(&new, &["cloth", "list"]);
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/store/schemas");
    for schema in FIRST..=NEWEST {
        let dump = fs::read_to_string(folder.join(format!("{schema}.sql"))).unwrap_or_else(|error| {
            panic!("keep a log of schema {schema} as tests/tests/store/schemas/{schema}.sql: {error}")
        });
        let (address, mut old) = database();
        old.batch_execute(&dump).unwrap();
        drop(old);
        let shown = desk.ok(&address, &["cloth", "show", "1"]);
        assert!(shown.contains("Vestry twill") && shown.contains("8.5 %"), "{shown}");
        assert!(desk.ok(&address, &["log", "check"]).contains("is whole"));
        let fit = desk.ok(&address, &["fit", "Choir", "A"]);
        assert!(fit.contains("MEETS        1  Vestry twill"), "{fit}");
        desk.ok(&address, &["cloth", "add", "new"]);
        let mut client = Client::connect(&address, postgres::NoTls).unwrap();
        assert_eq!(tables(&mut client), tables(&mut fresh), "schema {schema}");
    }
    assert!(tables(&mut fresh).len() > 60);
}

#[test]
fn a_newer_log_is_left_untouched() {
    let desk = Desk::new();
    let (address, mut owner) = database();
    desk.ok(&address, &["cloth", "add", "Vestry twill"]);
    owner.execute("UPDATE tenter.about SET schema = $1", &[&(NEWEST + 1)]).unwrap();
    let mut all = || {
        let sql = "SELECT concat(log, id, subject, arrival, body) FROM tenter.entry UNION ALL SELECT name FROM tenter.log \
            UNION ALL SELECT concat(schema) FROM tenter.about";
        owner.query(sql, &[]).unwrap().iter().map(|row| row.get::<_, String>(0)).collect::<Vec<_>>()
    };
    let before = all();
    for log in [address.clone(), format!("{address}&log=another")] {
        for arguments in [&["cloth", "list"][..], &["cloth", "add", "new"], &["export"]] {
            let told = desk.refused(&log, arguments);
            assert!(told.contains("newer tenter") && told.contains("use that version"), "{told}");
        }
    }
    assert_eq!(all(), before);
}

#[test]
fn tables_of_others_are_left_untouched() {
    let desk = Desk::new();
    let (address, mut owner) = database();
    owner.batch_execute("CREATE SCHEMA tenter; CREATE TABLE tenter.recipes AS SELECT 'bread' AS name").unwrap();
    let told = desk.refused(&address, &["cloth", "add", "new"]);
    assert!(told.contains("is not a tenter log"), "{told}");
    assert_eq!(tables(&mut owner).len(), 1);
    // Beside our own they do not matter.
    let (address, mut owner) = database();
    owner.batch_execute("CREATE TABLE public.entry (name text); CREATE TABLE public.log (name text)").unwrap();
    desk.ok(&address, &["cloth", "add", "new"]);
    assert_eq!(owner.query("SELECT FROM public.entry", &[]).unwrap().len(), 0);
}

/// Texts in another encoding could not hold every name.
#[test]
fn a_database_that_cannot_hold_every_text_is_refused() {
    let desk = Desk::new();
    let mut owner = cluster::shared().client("postgres");
    owner.batch_execute("CREATE DATABASE latin ENCODING 'LATIN1' LOCALE 'C' TEMPLATE template0").unwrap();
    let told = desk.refused(&cluster::shared().address("latin"), &["cloth", "list"]);
    assert!(told.contains("LATIN1") && told.contains("ENCODING 'UTF8'"), "{told}");
}

/// Logs of one database know nothing of each other.
#[test]
fn logs_of_one_database_are_apart() {
    let desk = Desk::new();
    let (address, _) = database();
    let other = format!("{address}&log=school%20play");
    desk.ok(&address, &["cloth", "add", "Vestry twill"]);
    desk.ok(&other, &["cloth", "add", "Curtain velvet"]);
    assert!(desk.ok(&other, &["cloth", "show", "1"]).contains("Curtain velvet"));
    desk.ok(&address, &["export", "all.jsonl"]);
    // The same entries in both, under the same identifiers.
    assert!(desk.ok(&other, &["import", "all.jsonl"]).contains("1 new, 0 known"));
    assert!(desk.ok(&address, &["log", "check"]).contains("1 entries"));
    assert!(desk.ok(&other, &["log", "check"]).contains("school play is whole; it holds 2 entries"));
}
