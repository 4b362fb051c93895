//! Fills a log with generated pulls and measures questions to it, in milliseconds; no figure is asserted.
//!
//!     bench_log PULLS FILE

use std::path::Path;
use std::time::Instant;

use tenter::cli::{self, Parsed};
use tenter::log::Entry;
use tenter::store::{Read as _, Store as _, postgres::Postgres, postgres::Server, sqlite::Sqlite};
use tenter::text::TextOutput;
use tenter_tests::bench_log::{PATTERN, ROLES, entries};
use tenter_tests::cluster::Cluster;

/// The least of three runs, in milliseconds, with what the last run gave.
fn best<T>(mut run: impl FnMut() -> T) -> (f64, T) {
    let mut least = f64::INFINITY;
    let mut last = None;
    for _ in 0..3 {
        let start = Instant::now();
        last = Some(run());
        least = least.min(start.elapsed().as_secs_f64() * 1000.0);
    }
    (least, last.unwrap())
}

fn run(file: &str, words: &[&str]) -> String {
    let mut all = vec!["tenter", "--db", file];
    all.extend(words);
    let Ok(Parsed::Run(line)) = cli::parse(&all) else { panic!("{all:?}") };
    let mut out = Vec::new();
    tenter::command::run(
        &line,
        &mut TextOutput { out: &mut out, width: 80, unicode: true, here: tenter::log::Here::desk() },
    )
    .unwrap();
    String::from_utf8(out).unwrap()
}

/// The question of `fit` in plain SQL: for each role every fabric with its figures and a yes or no by plain division.
fn plain_sql(connection: &rusqlite::Connection) -> usize {
    let mut rows = 0;
    for (_, crosswise, lengthwise, growth, made) in ROLES {
        let (least, most) = crosswise.split_once("..").unwrap_or((crosswise, ""));
        let number = |text: &str| text.trim_end_matches('%').parse::<f64>().ok();
        let sql = "SELECT f.tag, f.name, f.width, f.length, c.stretch_percent, l.stretch_percent, c.growth_percent, \
            CASE WHEN ?5 IS NOT NULL AND f.construction <> ?5 THEN 5 \
                 WHEN c.stretch_percent IS NULL OR (?3 IS NOT NULL AND l.stretch_percent IS NULL) THEN 4 \
                 WHEN c.stretch_percent < coalesce(?1, -100) OR c.stretch_percent > coalesce(?2, 1000) \
                   OR l.stretch_percent < coalesce(?3, -100) OR c.growth_percent > ?4 THEN 3 \
                 WHEN f.length < 1920000 THEN 2 ELSE 1 END AS answer \
            FROM fabric f \
            LEFT JOIN test c ON c.id = (SELECT id FROM test WHERE fabric = f.id AND grain = 'crosswise' AND dropped = 0 \
              ORDER BY pulled DESC, id DESC LIMIT 1) \
            LEFT JOIN test l ON l.id = (SELECT id FROM test WHERE fabric = f.id AND grain = 'lengthwise' AND dropped = 0 \
              ORDER BY pulled DESC, id DESC LIMIT 1) \
            WHERE f.dropped = 0 ORDER BY answer, c.stretch_percent DESC, f.tag";
        let mut select = connection.prepare_cached(sql).unwrap();
        let asked = (number(least), number(most), number(lengthwise), number(growth), made.map(|made| made.word()));
        let mut found = select.query(asked).unwrap();
        while let Some(row) = found.next().unwrap() {
            let _: (u32, String, i64) = (row.get(0).unwrap(), row.get(1).unwrap(), row.get(7).unwrap());
            rows += 1;
        }
    }
    rows
}

fn main() {
    let mut arguments = std::env::args().skip(1);
    let (Some(pulls), Some(file)) = (arguments.next().and_then(|text| text.parse().ok()), arguments.next()) else {
        eprintln!("type bench_log PULLS FILE");
        std::process::exit(2);
    };
    let mut store = Sqlite::open(Path::new(&file), tenter::log::Here::desk()).unwrap();
    let start = Instant::now();
    let merged = store.merge(&mut entries(pulls).map(Ok)).unwrap();
    println!("fill {:.1}", start.elapsed().as_secs_f64() * 1000.0);
    println!("entries {}", merged.new);
    let size = |path: &str| std::fs::metadata(path).map(|file| file.len()).unwrap_or_default();

    let (fit, text) = best(|| run(&file, &["fit", PATTERN, "A"]));
    assert!(text.contains("main") && text.contains("gusset"), "{text}");
    println!("fit {fit:.2}");
    let text_of_fit = text;
    let connection = rusqlite::Connection::open(&file).unwrap();
    let (sql, rows) = best(|| plain_sql(&connection));
    assert!(rows > 0);
    println!("sql {sql:.2}");
    let (list, text) = best(|| run(&file, &["cloth", "list", "vestry", "--stretch", "20%..30%"]));
    assert!(text.contains("in the stash"), "{text}");
    println!("list {list:.2}");

    let mut lines = Vec::new();
    let (export, ()) = best(|| {
        lines.clear();
        store
            .each_entry(&mut |line| {
                lines.push(line.to_owned());
                Ok(())
            })
            .unwrap();
    });
    println!("export {export:.2}");
    let copy = format!("{file}.copy");
    let mut other = Sqlite::open(Path::new(&copy), tenter::log::Here::desk()).unwrap();
    let start = Instant::now();
    let parsed = lines.iter().map(|line| Ok(serde_json::from_str::<Entry>(line).unwrap()));
    let again = other.merge(&mut { parsed }).unwrap();
    assert_eq!(again.new, merged.new);
    println!("import {:.1}", start.elapsed().as_secs_f64() * 1000.0);
    println!("bytes {}", size(&file) + size(&format!("{file}-wal")));
    on_a_server(&file, &lines, &text_of_fit);
}

/// The same log on a PostgreSQL server of its own, the same question to it.
fn on_a_server(file: &str, lines: &[String], expected: &str) {
    let cluster = Cluster::start(&[], |_| {});
    let address = cluster.database();
    let drafts = format!("{file}.drafts");
    let server = Server::parse(&address).unwrap();
    let mut log = Postgres::open(&server, Path::new(&drafts), tenter::log::Here::desk()).unwrap();
    let start = Instant::now();
    let mut parsed = lines.iter().map(|line| Ok(serde_json::from_str::<Entry>(line).unwrap()));
    log.merge(&mut parsed).unwrap();
    println!("server_import {:.1}", start.elapsed().as_secs_f64() * 1000.0);
    let database = address.split_once("@/").and_then(|(_, rest)| rest.split_once('?')).unwrap().0.to_owned();
    cluster.client(&database).batch_execute("ANALYZE").unwrap();
    let (fit, text) = best(|| run(&address, &["fit", PATTERN, "A"]));
    assert_eq!(text, expected, "the same answer to the digit");
    println!("server_fit {fit:.2}");
    let mut client = cluster.client(&database);
    let size = client.query_one("SELECT pg_database_size(current_database())", &[]).unwrap();
    println!("server_bytes {}", size.get::<_, i64>(0));
}
