//! Every public item of core has an example: rustdoc lists the items, as JSON, which is unstable, hence
//! `RUSTC_BOOTSTRAP` and a target folder of its own. (Its lint `missing_doc_code_examples` passes over whatever is
//! public by re-export only, which here is nearly everything.)

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;

/// What has a page or a section of its own. Fields and variants are shown by the example of their type.
const KINDS: [&str; 9] =
    ["struct", "enum", "union", "trait", "function", "constant", "assoc_const", "type_alias", "macro"];

#[test]
fn every_public_item_of_core_has_an_example() {
    let items = public_items();
    let bare: Vec<_> = items.iter().filter(|item| !has_example(&item.docs)).map(|item| &item.place).collect();
    assert!(bare.is_empty(), "no example:\n{bare:#?}");
    // So that a change of rustdoc's format cannot empty the list unseen.
    for name in ["Length", "parse", "MAX_DEMAND_BYTES", "quantile"] {
        assert!(items.iter().any(|item| item.name == name), "{name} is not listed");
    }
    println!("doc examples: every public item of core has one ({} items)", items.len());
}

#[test]
fn a_bare_item_is_seen() {
    assert!(has_example("Adds.\n\n```\nassert_eq!(1 + 1, 2);\n```"));
    for docs in ["", "Adds.", "Adds `one`.", "```text\n1 + 1\n```", "```ignore\n1 + 1\n```"] {
        assert!(!has_example(docs), "{docs}");
    }
}

struct Item {
    name: String,
    docs: String,
    place: String,
}

/// A fenced block that is run as a test.
fn has_example(docs: &str) -> bool {
    let fences = docs.lines().map(str::trim).filter(|line| line.starts_with("```"));
    fences.step_by(2).any(|opening| opening == "```" || opening == "```should_panic")
}

fn public_items() -> Vec<Item> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap();
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or(root.join("target"), PathBuf::from).join("doc-examples");
    let output = Command::new(env!("CARGO"))
        .current_dir(root)
        .args(["rustdoc", "--quiet", "-p", "tenter-core", "--lib", "--target-dir"])
        .arg(&target)
        .args(["--", "-Zunstable-options", "--output-format", "json"])
        .env("RUSTC_BOOTSTRAP", "1")
        .output()
        .unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let json = fs::read(target.join("doc/tenter_core.json")).unwrap();
    let doc: Value = serde_json::from_slice(&json).unwrap();
    let ours = doc["index"].as_object().unwrap().values().filter(|item| item["crate_id"] == 0);
    ours.filter(|item| item["visibility"] == "public" && KINDS.iter().any(|kind| !item["inner"][kind].is_null()))
        .map(|item| {
            let name = item["name"].as_str().unwrap().to_string();
            let (file, line) = (&item["span"]["filename"], &item["span"]["begin"][0]);
            let docs = item["docs"].as_str().unwrap_or_default().to_string();
            Item { place: format!("{}:{line}: {name}", file.as_str().unwrap_or("?")), name, docs }
        })
        .collect()
}
