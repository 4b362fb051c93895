//! Every public type and function of core that has something to teach has an example: rustdoc lists the items, as JSON, which is unstable, hence
//! `RUSTC_BOOTSTRAP` and a target folder of its own. (Its lint `missing_doc_code_examples` passes over whatever is
//! public by re-export only, which here is nearly everything.)

use std::collections::HashSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;

/// What an example can teach. Constants, fields and variants are shown by the examples of what takes them.
const KINDS: [&str; 6] = ["struct", "enum", "union", "trait", "function", "macro"];

#[test]
fn every_public_type_and_function_of_core_has_an_example() {
    let items = public_items();
    let bare = items.iter().filter(|item| item.teaches && !has_example(&item.docs));
    let bare: Vec<_> = bare.map(|item| &item.place).collect();
    assert!(bare.is_empty(), "no example:\n{bare:#?}");
    // So that a change of rustdoc's format cannot empty the list unseen.
    for (name, teaches) in [("Length", true), ("parse", false), ("quantile", true), ("Grain", false), ("grain", false)]
    {
        assert!(items.iter().any(|item| item.name == name && item.teaches == teaches), "{name} is not listed");
    }
}

/// The programs in `core/examples` run, and say what the front page and the README of core say.
#[test]
fn the_example_programs_answer() {
    let printed = |name: &str| {
        let mut cargo = Command::new(env!("CARGO"));
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap();
        let output = cargo.current_dir(root).args(["run", "--quiet", "-p", "tenter-core", "--example", name]).output();
        let output = output.unwrap();
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).unwrap()
    };
    let one = printed("judge_one_test");
    let said = [
        "stretch 5.3 % ± 1.8; these pulls alone ± 1.5",
        "close, chance 93.9 %",
        "2 more days, each with 10 pulls with a hung mass and 5 looks at the marks would settle it",
    ];
    assert_eq!(one.lines().collect::<Vec<_>>(), said);
    let several = printed("choose_among_cloths");
    let answers: Vec<&str> = several.lines().map(|line| line.split(',').next().unwrap()).collect();
    assert_eq!(answers, ["grey twill: meets", "black gabardine: close", "navy poplin: short"]);
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
    /// Not a getter, not an enum of plain variants or the reading of its words, and not shown by its type's example.
    teaches: bool,
    docs: String,
    place: String,
}

/// A fenced block that is run as a test.
fn has_example(docs: &str) -> bool {
    let fences = docs.lines().map(str::trim).filter(|line| line.starts_with("```"));
    fences.step_by(2).any(|opening| opening == "```" || opening == "```should_panic")
}

/// The lines of the examples in a documentation.
fn examples(docs: &str) -> String {
    docs.split("```").skip(1).step_by(2).collect()
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
    let by_id = |id: &Value| &index[&id.to_string()];
    let impls = index.values().map(|item| &item["inner"]["impl"]).filter(|one| !one["for"]["resolved_path"].is_null());
    let mut shown: HashSet<String> = HashSet::new();
    for one in impls {
        let Some(of) = index.get(&one["for"]["resolved_path"]["id"].to_string()) else { continue };
        let example: String = examples(of["docs"].as_str().unwrap_or_default());
        let calls = |name: &str| [format!(".{name}("), format!("::{name}(")].iter().any(|call| example.contains(call));
        let methods = one["items"].as_array().unwrap().iter();
        shown.extend(methods.filter(|id| by_id(id)["name"].as_str().is_some_and(calls)).map(Value::to_string));
    }
    let ours = index.values().filter(|item| item["crate_id"] == 0);
    ours.filter(|item| item["visibility"] == "public" && KINDS.iter().any(|kind| !item["inner"][kind].is_null()))
        .map(|item| {
            let name = item["name"].as_str().unwrap().to_string();
            let (file, line) = (&item["span"]["filename"], &item["span"]["begin"][0]);
            let docs = item["docs"].as_str().unwrap_or_default().to_string();
            let teaches = !is_getter(&item["inner"])
                && !is_plain(&item["inner"], index)
                && name != "from_word"
                && !shown.contains(&item["id"].to_string());
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
