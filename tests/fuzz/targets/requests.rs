//! What a browser may ask of the pages: an answer each time, and never one that fails inside.

#![no_main]

use jiff::Timestamp;
use libfuzzer_sys::fuzz_target;
use tenter::log::{FabricChange, Fact, Here};
use tenter::store::Change as _;
use tenter::store::memory::Memory;
use tenter::web::{Request, respond};

/// A place where time stands still.
fn here() -> Here {
    let now = || Timestamp::constant(1_790_000_000, 0);
    Here { now, random: || 7, offset: |_| jiff::tz::Offset::UTC }
}

fuzz_target!(|text: &str| {
    let (target, body) = text.split_once('\n').unwrap_or((text, ""));
    let mut log = Memory::new(here());
    let change = FabricChange { tag: Some(1), name: Some("drill".to_owned()), ..FabricChange::default() };
    log.add(&[Fact::FabricAdded(change)]).expect("a log in memory takes it");
    for request in [Request::get(target), Request { body: body.as_bytes().to_vec(), ..Request::post(target, &[]) }] {
        let response = respond(&request, &mut log);
        assert!(response.status != 500, "{text:?}: {}", String::from_utf8_lossy(&response.body));
    }
});
