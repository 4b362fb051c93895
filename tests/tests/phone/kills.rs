//! Nothing that was answered is lost, whenever the browser is killed.

use serde_json::{Value, json};
use tenter_tests::thorough;

use super::{ADD, Shop};

/// Kills at the moment of an answer, and at other moments; what was answered before is there afterwards, and nothing is
/// there that was not sent.
#[test]
fn kills_lose_nothing_that_was_answered() {
    let mut shop = Shop::open();
    shop.tell("unserve", json!({}));
    let (mut answered, mut sent) = (Vec::new(), Vec::new());
    let rounds = thorough(20, 200);
    for round in 0..rounds {
        let names: Vec<String> = (0..4).map(|place| format!("cloth {round} {place}")).collect();
        let mut storm = json!({ "names": names, "script": ADD });
        if round % 2 == 0 {
            storm["kill_at"] = json!(1 + round / 2 % 3);
        } else {
            // From at once to long after the answer, so that some kills surely come before it is stored.
            storm["kill_at"] = json!(round / 2 % 4);
            storm["kill_after_ms"] = json!((round * 7) % 40);
        }
        shop.goto("/cloths");
        let got = shop.tell("storm", storm);
        sent.extend(names);
        answered.extend(got.as_array().unwrap().iter().map(|name| name.as_str().unwrap().to_owned()));
        // All were answered before the moment came.
        if got.as_array().map(Vec::len) == Some(4) {
            drop(shop.phone.tell("kill", json!({})));
        }
        shop.launch();
    }
    shop.goto("/cloths");
    let there = shop.names();
    println!("{rounds} kills, {} cloths answered, {} there, {} sent", answered.len(), there.len(), sent.len());
    assert!(answered.len() >= rounds / 2, "kills at an answer have one answer each");
    assert!(answered.len() < sent.len(), "no kill came in the middle");
    for name in &answered {
        assert_eq!(there.iter().filter(|one| *one == name).count(), 1, "{name} was answered");
    }
    assert!(there.iter().all(|name| sent.contains(name)));
    let whole = shop.eval("fetch('/cloths').then((page) => page.status)");
    assert_eq!(whole, Value::from(200));
}
