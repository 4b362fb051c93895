//! What the app weighs, and how long it takes with two thousand cloths. Bytes are asserted; times are printed.

use std::fs;
use std::path::Path;
use std::process::Command;

use serde_json::json;
use tenter::exchange::jsonl;
use tenter_tests::bench_log::{self, PULLS_A_TEST, TESTS};
use tenter_tests::phone::sizes;

use super::Shop;

/// The most that the whole app may take of a phone's network, in bytes: what it takes, and a tenth. The aim is 500 000, which
/// the whole job as pages does not meet.
const MOST: usize = 960_000;

/// Bytes of the files as a web server sends them, packed with gzip where that helps.
fn packed(site: &Path) -> usize {
    let packed = "cat worker.js index.html app/*.js app/*.css app/*.svg app/*.webmanifest | gzip -9 | wc -c; \
                  cat app/*.bin app/*.png | wc -c";
    let output = Command::new("sh").args(["-c", packed]).current_dir(site).output().unwrap();
    let text = String::from_utf8(output.stdout).unwrap();
    text.lines().map(|line| line.trim().parse::<usize>().unwrap()).sum()
}

#[test]
fn the_app_is_small() {
    let folder = tempfile::tempdir().unwrap();
    let site = folder.path().join("site");
    let said = tenter_tests::phone::write_app(&["--out", site.to_str().unwrap()]);
    assert!(said.contains("https"), "{said}");
    let whole = packed(&site);
    println!("module: {}; whole app packed: {whole} bytes", sizes());
    assert!(whole <= MOST, "{whole} bytes");
    let worker = fs::read_to_string(site.join("worker.js")).unwrap();
    assert!(!worker.contains("const FILES = {}"));
}

#[test]
fn two_thousand_cloths_answer() {
    let mut shop = Shop::open();
    let lines: Vec<String> =
        bench_log::entries(2_000 * PULLS_A_TEST * TESTS.len()).map(|entry| entry.line().unwrap()).collect();
    let log = jsonl::file_of(&lines, &[]);
    let entries = lines.len();
    shop.goto("/cloths");
    let brought = shop.eval(&format!(
        "fetch('/hand-over', {{ method: 'POST', body: {}, headers: {{ 'content-type': 'text/plain' }} }}).then((answer) => answer.status)",
        json!(log)
    ));
    assert_eq!(brought, 200);
    let timed = |target: &str| {
        format!(
            "(async () => {{ const begun = performance.now(); const page = await fetch({}); const text = await page.text(); return [page.status, performance.now() - begun, text.length]; }})()",
            json!(target)
        )
    };
    // A browser holds back the processor of pages alone, not of workers; what lies here is a quarter of what it would be there.
    let told = |what: &str, ms: f64| {
        println!("{entries} entries, {what}: {ms:.0} ms, on a processor four times slower {:.0} ms", 4.0 * ms);
    };
    for (what, stop) in [("first page of a stopped worker", true), ("a page after that", false)] {
        for target in ["/", "/cloths", "/cloths?sort=across", "/cloths/new"] {
            if stop {
                shop.tell("stop_workers", json!({}));
            }
            let answer = shop.eval(&timed(target));
            assert_eq!(answer[0], 200);
            told(&format!("{what}, {target}"), answer[1].as_f64().unwrap());
        }
    }
    let begun = shop.eval("performance.now()");
    shop.add("one more");
    let ended = shop.eval("performance.now()");
    told("a form asked for and sent", ended.as_f64().unwrap() - begun.as_f64().unwrap());
}
