//! How long pages take to answer from a log of generated pulls, beside the SQL that they need: every row that a page is made
//! from, read once, in the order in which it is read. No figure is asserted.
//!
//!     bench_pages PULLS FILE

use std::path::Path;
use std::time::Instant;

use rusqlite::types::Value;
use tenter::log::{Entry, Here};
use tenter::store::sqlite::Sqlite;
use tenter::store::{Read as _, Store as _};
use tenter::web::{Request, respond};
use tenter_tests::bench_log::entries;

/// The least of five runs, in milliseconds.
fn best(mut run: impl FnMut()) -> f64 {
    let mut times = [0.0; 5];
    for time in &mut times {
        let start = Instant::now();
        run();
        *time = start.elapsed().as_secs_f64() * 1000.0;
    }
    times.into_iter().fold(f64::INFINITY, f64::min)
}

/// Reads every value of every row.
fn read_all(connection: &rusqlite::Connection, sql: &[String]) {
    for sql in sql {
        let mut select = connection.prepare_cached(sql).unwrap();
        let columns = select.column_count();
        let mut rows = select.query([]).unwrap();
        while let Some(row) = rows.next().unwrap() {
            for column in 0..columns {
                std::hint::black_box(row.get::<_, Value>(column).unwrap());
            }
        }
    }
}

fn main() {
    let mut arguments = std::env::args().skip(1);
    let (Some(pulls), Some(file)) = (arguments.next().and_then(|text| text.parse().ok()), arguments.next()) else {
        eprintln!("type bench_pages PULLS FILE");
        std::process::exit(2);
    };
    let mut log = Sqlite::open(Path::new(&file), Here::desk()).unwrap();
    log.merge(&mut entries(pulls).map(Ok::<Entry, _>)).unwrap();
    let (fabrics, pattern) = (log.fabrics().unwrap(), log.patterns().unwrap()[0].clone());
    let (cloth, role) = (fabrics[fabrics.len() / 2].id, pattern.roles[0].id);
    let of = |id: tenter::log::Id| id.to_string().to_lowercase();
    let connection = rusqlite::Connection::open(&file).unwrap();
    let all = "SELECT * FROM test WHERE fabric IS NOT NULL AND dropped = 0 ORDER BY fabric, grain, pulled, id";
    let everything: Vec<String> =
        ["SELECT * FROM fabric ORDER BY tag, id", all, "SELECT * FROM role", "SELECT * FROM garment"]
            .map(str::to_owned)
            .to_vec();
    let one: Vec<String> = ["fabric WHERE id", "test WHERE fabric", "entry WHERE subject"]
        .map(|from| format!("SELECT * FROM {from} = '{cloth}'"))
        .to_vec();
    println!("cloths {}", fabrics.len());
    for (name, target, sql) in [
        ("list", "/cloths".to_owned(), &everything),
        ("list-for-a-role", format!("/cloths?for={role}"), &everything),
        ("fit", format!("/patterns/{}/fit?view=A", of(pattern.id)), &everything),
        ("cloth", format!("/cloths/{}", of(cloth)), &one),
        ("cloth-for-a-role", format!("/cloths/{}?for={role}", of(cloth)), &one),
        ("home", "/".to_owned(), &everything[..1].to_vec()),
    ] {
        let mut bytes = 0;
        let page = best(|| {
            let response = respond(&Request::get(&target), &mut log);
            assert_eq!(response.status, 200, "{target}");
            bytes = response.body.len();
        });
        let plain = best(|| read_all(&connection, sql));
        println!("page {name} {page:.2} {plain:.2} {:.2} {bytes}", page / plain);
    }
}
