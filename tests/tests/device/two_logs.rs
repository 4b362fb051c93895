//! One handheld, two machines: logs that are merged later hold every test once.

use tenter::command::device::sync::Options;
use tenter::log::{Entry, Here, StoredTest};
use tenter::store::sqlite::Sqlite;
use tenter::store::{Change as _, Merged, Read as _, Store as _, WhichTests};
use tenter_core::saved::{Clock, SavedTest};

use crate::cable::{Cable, a_moment_passes, all, log};
use crate::pocket::{Chip, Pocket, test, tests};

/// All entries of a log, by way of the text in which they are exported.
fn entries(store: &Sqlite) -> Vec<Entry> {
    let mut entries = Vec::new();
    let mut read = |line: &str| {
        entries.push(serde_json::from_str(line).unwrap());
        Ok(())
    };
    store.each_entry(&mut read).unwrap();
    entries
}

fn merge(into: &mut Sqlite, from: &Sqlite) -> Merged {
    into.merge(&mut entries(from).into_iter().map(Ok)).unwrap()
}

/// Two logs that fetched the same tests from one handheld before either let it forget them.
fn fetched_twice(saved: &[SavedTest]) -> (Sqlite, Sqlite) {
    let mut pocket = Pocket::with(saved);
    pocket.records().log().unwrap().set_device_id(7).unwrap();
    let image = pocket.chip.image();
    let (mut here, mut there) = (log(), log());
    for store in [&mut here, &mut there] {
        Cable::to(Pocket::on(Chip::holding(image.clone()))).sync(store, Options::default()).0.unwrap();
        a_moment_passes();
    }
    (here, there)
}

#[test]
fn merged_either_way_every_test_is_there_once_and_both_logs_agree() {
    let (mut here, mut there) = fetched_twice(&tests(6));
    let (mine, theirs) = (here.count().unwrap(), there.count().unwrap());
    // Six tests and four cloths are one and the same; gifts are each log's own.
    assert_eq!(merge(&mut here, &there), Merged { new: theirs - 10, known: 10, ..Merged::default() });
    assert_eq!(merge(&mut there, &here), Merged { new: mine - 10, known: theirs, ..Merged::default() });
    let numbers: Vec<_> = all(&here).into_iter().map(|(number, _)| number).collect();
    assert_eq!(numbers, [1, 2, 3, 4, 5, 6]);
    assert_eq!(all(&here), all(&there));
    assert_eq!(entries(&here), entries(&there));
    for store in [&here, &there] {
        assert_eq!(store.faults().unwrap(), Vec::new());
    }
}

#[test]
fn where_the_day_is_not_known_no_test_is_doubled_either() {
    let unset = |nth| SavedTest { clock: Clock { uptime_s: 5 * nth, unix_s: None }, ..test(nth) };
    let (mut here, there) = fetched_twice(&[unset(1), unset(2), unset(3)]);
    // The day that each log has for them is that of its own fetching, and stays.
    let merged = merge(&mut here, &there);
    assert_eq!((merged.known, merged.differ), (4 + 3, 3), "four cloths and three tests");
    let readings: Vec<_> = all(&here).into_iter().map(|(_, test)| test.said.test).collect();
    assert_eq!(readings, [1, 2, 3].map(|nth| test(nth).test));
}

/// A gift that one of the logs corrected by hand outlives the merge.
#[test]
fn what_was_put_right_by_hand_stays() {
    let (mut here, mut there) = fetched_twice(&tests(1));
    let fabric = there.fabrics_tagged(1).unwrap()[0].id;
    let id = all(&there)[0].1.id;
    let fact = tenter::log::Fact::TestAssigned { test: id, fabric };
    // Two logs order what they say by the millisecond; a hand is slower.
    let before = Here::desk().now();
    while Here::desk().now() <= before {}
    there.add(std::slice::from_ref(&fact)).unwrap();
    merge(&mut here, &there);
    let of: Vec<StoredTest> = here.tests(WhichTests::Of(fabric)).unwrap();
    assert_eq!(of.len(), 1);
}
