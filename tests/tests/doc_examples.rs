//! Every public type and function of core that has something to teach has an example: rustdoc lists the items, as JSON, which is unstable, hence
//! `RUSTC_BOOTSTRAP` and a target folder of its own. (Its lint `missing_doc_code_examples` passes over whatever is
//! public by re-export only, which here is nearly everything.)

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;

/// What an example can teach. Constants, fields and variants are shown by the examples of what takes them.
const KINDS: [&str; 6] = ["struct", "enum", "union", "trait", "function", "macro"];

/// Methods of a type whose own example uses them, so that a second one would only restate it.
const SHOWN_BY_THEIR_TYPE: [&str; 9] =
    ["on", "add", "and", "without", "of_width", "to_buy", "counts_as", "scatter_for", "is_sure"];

#[test]
fn every_public_type_and_function_of_core_has_an_example() {
    let items = public_items();
    let taught = items.iter().filter(|item| item.teaches && !SHOWN_BY_THEIR_TYPE.contains(&item.name.as_str()));
    let bare: Vec<_> = taught.filter(|item| !has_example(&item.docs)).map(|item| &item.place).collect();
    assert!(bare.is_empty(), "no example:\n{bare:#?}");
    // So that a change of rustdoc's format cannot empty the list unseen.
    for (name, teaches) in [("Length", true), ("parse", true), ("quantile", true), ("Grain", false), ("grain", false)] {
        assert!(items.iter().any(|item| item.name == name && item.teaches == teaches), "{name} is not listed");
    }
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
    /// Not a getter, and not an enum of plain variants: those say all there is to them.
    teaches: bool,
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
    let index = doc["index"].as_object().unwrap();
    let ours = index.values().filter(|item| item["crate_id"] == 0);
    ours.filter(|item| item["visibility"] == "public" && KINDS.iter().any(|kind| !item["inner"][kind].is_null()))
        .map(|item| {
            let name = item["name"].as_str().unwrap().to_string();
            let (file, line) = (&item["span"]["filename"], &item["span"]["begin"][0]);
            let docs = item["docs"].as_str().unwrap_or_default().to_string();
            let teaches = !is_getter(&item["inner"]) && !is_plain(&item["inner"], index);
            Item { teaches, place: format!("{}:{line}: {name}", file.as_str().unwrap_or("?")), name, docs }
        })
        .collect()
}

/// A function that takes `self` and nothing else.
fn is_getter(inner: &Value) -> bool {
    let inputs = inner["function"]["sig"]["inputs"].as_array();
    inputs.is_some_and(|inputs| inputs.len() == 1 && inputs[0][0] == "self")
}

/// An enum whose variants hold nothing.
fn is_plain(inner: &Value, index: &serde_json::Map<String, Value>) -> bool {
    let variants = inner["enum"]["variants"].as_array();
    variants
        .is_some_and(|variants| variants.iter().all(|id| index[&id.to_string()]["inner"]["variant"]["kind"] == "plain"))
}
