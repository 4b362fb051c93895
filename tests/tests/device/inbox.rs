//! Tests that belong to no fabric yet, or to the wrong one; typed as a user types.

use std::path::PathBuf;

use tempfile::TempDir;
use tenter::command::device::sync::Options;
use tenter::store::{self, Read as _, WhichTests};

use crate::cable::{Cable, all, stock, typed};
use crate::pocket::{Pocket, tests};

/// A log on disk with six tests from a handheld: tags 2, 3, 4, 1, 2, 3.
fn fetched() -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let db = folder.path().join("log.sqlite3");
    let mut store = store::open(&db, tenter::log::Here::desk()).unwrap();
    stock(&mut store);
    let options = Options { name: Some(7), ..Options::default() };
    Cable::to(Pocket::with(&tests(6))).sync(&mut store, options).0.unwrap();
    (folder, db)
}

/// The end of the identifier of the test with this number.
fn short(db: &std::path::Path, number: u32) -> String {
    let all = all(&store::open(db, tenter::log::Here::desk()).unwrap());
    all.iter().find(|(one, _)| *one == number).unwrap().1.id.short()
}

#[test]
fn the_inbox_says_why_and_what_to_type() {
    let (_folder, db) = fetched();
    let text = typed(&db, "device inbox").unwrap();
    let first = short(&db, 2);
    assert!(text.contains(&first), "{text}");
    assert!(text.contains("on several:"), "{text}");
    assert!(text.contains("Organ felt,") && text.contains("Stage twill"), "{text}");
    assert!(text.contains("on no cloth"), "{text}");
    assert!(text.contains("3 tests without a cloth\n"), "{text}");
    assert!(text.contains(&format!("tenter device assign {first} TAG gives one to a cloth")), "{text}");
    assert!(text.contains("tenter cloth add NAME --tag 4, then tenter device assign --all"), "{text}");
    let json: serde_json::Value = serde_json::from_str(&typed(&db, "device inbox --json").unwrap()).unwrap();
    let tags: Vec<_> = json.as_array().unwrap().iter().map(|test| test["tag"].as_u64().unwrap()).collect();
    assert_eq!(tags, [3, 4, 3]);
    assert_eq!(json[0]["worn_by"].as_array().unwrap().len(), 2);
}

#[test]
fn a_test_is_given_to_a_fabric_and_moved_to_another() {
    let (_folder, db) = fetched();
    let id = short(&db, 3);
    let said = typed(&db, &format!("device assign {id} 1")).unwrap();
    assert!(said.starts_with(&format!("given  {id}  lengthwise 9.5 % ± ")), "{said}");
    assert!(said.ends_with(": to 1 Vestry twill\n"), "{said}");
    let said = typed(&db, &format!("device assign {} #2", id.to_uppercase())).unwrap();
    assert!(said.ends_with(": from 1 Vestry twill to 2 Doorway rib\n"), "{said}");
    let said = typed(&db, &format!("device assign {id} 2")).unwrap().replace("\n  ", " ");
    assert!(said.ends_with(" belongs to 2 Doorway rib already; nothing was changed\n"), "{said}");
    let store = store::open(&db, tenter::log::Here::desk()).unwrap();
    let rib = store.fabrics_tagged(2).unwrap()[0].id;
    let numbers: Vec<_> =
        store.tests(WhichTests::Of(rib)).unwrap().iter().map(|test| test.said.device.unwrap().number).collect();
    assert_eq!(numbers, [1, 3, 5]);
    // Stored, given, given: nothing of what was said is gone.
    let (_, test) = all(&store).into_iter().find(|(number, _)| *number == 3).unwrap();
    assert_eq!(store.history(tenter::log::Subject::Test(test.id)).unwrap().len(), 3);
}

#[test]
fn all_of_the_inbox_goes_where_a_tag_is_clear_now() {
    let (_folder, db) = fetched();
    let text = typed(&db, "device assign --all").unwrap();
    assert_eq!(text, "0 tests given to their cloths; 3 still without: see tenter device inbox\n");
    typed(&db, "cloth add Fern --tag 4").unwrap();
    let text = typed(&db, "device inbox").unwrap();
    assert!(text.contains("now on Fern"), "{text}");
    let text = typed(&db, "device assign --all").unwrap();
    assert!(text.ends_with("1 test given to their cloths; 2 still without: see tenter device inbox\n"), "{text}");
    // One of two cloths with one tag gets another; then the tag is clear.
    let twill = store::open(&db, tenter::log::Here::desk()).unwrap().fabrics_tagged(3).unwrap()[1].id;
    typed(&db, &format!("cloth edit {twill} --tag 30")).unwrap();
    let text = typed(&db, "device assign --all").unwrap();
    assert_eq!(text.matches(": to 3 Organ felt\n").count(), 2, "{text}");
    assert!(text.ends_with("2 tests given to their cloths; every test has one now\n"), "{text}");
    assert_eq!(typed(&db, "device inbox").unwrap(), "every test has its cloth\n");
}

#[test]
fn complaints_say_what_to_type() {
    let (_folder, db) = fetched();
    let wrong = |words: &str| typed(&db, words).unwrap_err();
    assert_eq!(wrong("device assign zzzzzz 1"), "no test is called 'zzzzzz'; see tenter device inbox");
    assert_eq!(wrong("device assign Z 1"), "no test is called 'Z'; see tenter device inbox");
    let id = short(&db, 3);
    let said = wrong(&format!("device assign {id} 99"));
    assert_eq!(said, "no cloth has tag 99; tenter cloth list shows the tags");
    let said = wrong(&format!("device assign {id}"));
    assert!(said.starts_with("missing <TAG>"), "{said}");
    let said = wrong(&format!("device assign {id} --all"));
    assert!(said.contains("do not go together"), "{said}");
    let said = wrong("device sync --name 0 --port tcp:x");
    assert_eq!(said, "--name '0': type a whole number from 1 to 4294967295");
    let said = wrong("device list --port tcp:nowhere");
    assert!(said.starts_with("cannot open 'tcp:nowhere'"), "{said}");
}
