//! An exported log of anybody: what is taken is exported again, and that is taken as it was.

#![no_main]

use jiff::Timestamp;
use libfuzzer_sys::fuzz_target;
use tenter::exchange::jsonl::{self, Exported};
use tenter::log::Here;
use tenter::store::memory::Memory;
use tenter::store::{Change as _, Read as _, WhichTests};

/// A place where time stands still.
fn here() -> Here {
    let now = || Timestamp::constant(1_790_000_000, 0);
    Here { now, random: || 7, offset: |_| jiff::tz::Offset::UTC }
}

fuzz_target!(|lines: &[u8]| {
    // A line that ends the file right is hard to find by chance.
    let entries = lines.split(|byte| *byte == b'\n').filter(|line| !line.is_empty()).count() as u64;
    let whole =
        [jsonl::HEADER.as_bytes(), b"\n", lines, b"\n", jsonl::last_line(entries, 0).as_bytes(), b"\n"].concat();
    for file in [lines, &whole] {
        let mut log = Memory::new(here());
        let Ok(exported) = Exported::begin(file, "file", here().latest()) else { continue };
        if log.merge_all(exported).is_err() {
            assert_eq!(log.count(), Ok(0), "nothing of it is taken");
            continue;
        }
        let written = |log: &Memory| {
            let mut bytes = Vec::new();
            jsonl::write(log, true, &mut bytes, &mut || {}).expect("a log in memory can be written");
            bytes
        };
        let (first, mut again) = (written(&log), Memory::new(here()));
        let exported = Exported::begin(first.as_slice(), "file", here().latest()).expect("our own");
        again.merge_all(exported).expect("what export writes, import takes");
        assert_eq!(written(&again), first);
        let _ = (log.fabrics(), log.tests(WhichTests::All), log.patterns(), log.garments(), log.repeatability());
    }
});
