//! The app as one file, opened from the disk.

use std::fs;

use serde_json::json;
use tenter_tests::phone::{Phone, write_app};

use super::CLOTHS;

/// Where the page inside stands: its heading.
const HEADING: &str = "document.getElementById('page').contentDocument?.querySelector('h1')?.textContent";

/// A cloth is stored by the form itself, and is there after the browser was killed; nothing is asked of any network.
#[test]
fn one_file_keeps_what_is_stored() {
    let folder = tempfile::tempdir().unwrap();
    let (file, profile) = (folder.path().join("tenter.html"), folder.path().join("profile"));
    let said = write_app(&["--one-file", file.to_str().unwrap()]);
    for limit in ["do not rename or move it", "other pages", "clearing the browser's data"] {
        assert!(said.split_whitespace().collect::<Vec<_>>().join(" ").contains(limit), "{limit}: {said}");
    }
    println!("one file: {} bytes", fs::metadata(&file).unwrap().len());
    let url = format!("file://{}", file.display());
    let mut phone = Phone::start().unwrap();
    let mut tell = |what: &str, with| phone.tell(what, with).unwrap();
    tell("launch", json!({ "profile": profile }));
    tell("open", json!({ "url": url }));
    tell("wait", json!({ "script": format!("{HEADING} !== undefined") }));
    // A link, a form, and where the form leads.
    let inside = |script: &str| json!({ "script": format!("(() => {{ const page = document.getElementById('page').contentDocument; {script} }})()") });
    tell("eval", inside("page.querySelector('a[href=\"/cloths\"]').click()"));
    tell("wait", json!({ "script": format!("{HEADING} === 'Cloths'") }));
    tell("eval", json!({ "script": "location.hash = '/cloths/new'" }));
    tell("wait", json!({ "script": format!("{HEADING} === 'A new cloth'") }));
    let hostile = "Slate \"twill\" <b>&amp;</b>";
    let typed = format!(
        "page.querySelector('#cloth [name=name]').value = {}; page.querySelector('#cloth button').click()",
        json!(hostile)
    );
    tell("eval", inside(&typed));
    tell("wait", json!({ "script": format!("{HEADING} === {}", json!(hostile)) }));
    tell("kill", json!({}));
    tell("launch", json!({ "profile": profile }));
    tell("open", json!({ "url": format!("{url}#/cloths") }));
    tell("wait", json!({ "script": format!("{HEADING} === 'Cloths'") }));
    let text = tell("eval", inside("return page.body.innerText"));
    let text = text.as_str().unwrap();
    assert!(text.contains(hostile) && text.contains("1 change not handed over yet"), "{text}");
    assert_eq!(tell("eval", json!({ "script": CLOTHS })).as_array().unwrap().len(), 1);
}
