//! A table of anybody's: tests, cloths, patterns or a class.

#![no_main]

use jiff::Timestamp;
use libfuzzer_sys::fuzz_target;
use tenter::exchange::table::{self, read::Trust};
use tenter::log::{FabricChange, Fact, Here};
use tenter::store::memory::Memory;
use tenter::store::{Change as _, Store as _};

/// A place where time stands still.
fn here() -> Here {
    let now = || Timestamp::constant(1_790_000_000, 0);
    Here { now, random: || 7, offset: |_| jiff::tz::Offset::UTC }
}

fuzz_target!(|bytes: &[u8]| {
    let mut log = Memory::new(here());
    let change = FabricChange { tag: Some(1), name: Some("drill".to_owned()), ..FabricChange::default() };
    log.add(&[Fact::FabricAdded(change)]).expect("a log in memory takes it");
    let trust = Trust { as_read: true, latest: here().latest() };
    if let Ok(entries) = table::read::entries(bytes, &log, trust, here()) {
        log.merge(&mut entries.into_iter().map(Ok)).expect("a log in memory takes it");
        let mut out = Vec::new();
        table::write::tests(&log, true, &mut out, &mut || {}).expect("what was taken has figures");
        table::write::fabrics(&log, &mut out).expect("what was taken can be told");
        table::write::patterns(&log, &mut out).expect("what was taken can be told");
    }
});
