//! The cable cut after every byte, in both directions, and another handheld behind the same cable.

use tenter::command::device::sync::Options;
use tenter::error::Error;
use tenter::link::LinkError;
use tenter::store::Read as _;
use tenter::store::sqlite::Sqlite;

use tenter_core::saved::SavedTest;
use tenter_tests::thorough;

use crate::cable::{Cable, all, log};
use crate::pocket::{Pocket, test, tests};

/// Small batches, so that there are cuts before, in and after each.
fn options() -> Options {
    Options { name: Some(7), batch: 2, ..Options::default() }
}

fn numbers(store: &Sqlite) -> Vec<u32> {
    all(store).into_iter().map(|(number, _)| number).collect()
}

/// The numbers behind "stored" in what was printed.
pub fn said_stored(text: &str) -> Vec<u32> {
    let lines = text.lines().filter_map(|line| line.strip_prefix("stored"));
    lines.filter_map(|line| line.split_whitespace().next()?.parse().ok()).collect()
}

/// How many bytes a whole synchronisation takes, and which of them to cut at: every one until the tests are acknowledged, and
/// of the tags and names that follow every eighth.
fn cuts(saved: &[SavedTest], options: &Options) -> impl Iterator<Item = usize> + use<> {
    let [before, all] = [true, false].map(|knows_no_tags| {
        let cable = Cable::to(Pocket::with(saved).knowing_no_tags(knows_no_tags));
        cable.sync(&mut log(), options.clone()).0.unwrap();
        cable.world().passed
    });
    assert!(500 < before && before < all, "{before} {all}");
    (0..all).filter(move |cut| thorough(*cut < before || cut % 8 == 0, true))
}

#[test]
fn a_cut_after_any_byte_loses_nothing_and_doubles_nothing() {
    let saved = tests(5);
    let whole = Cable::to(Pocket::with(&saved));
    let (mut store, mut partial) = (log(), 0);
    whole.sync(&mut store, options()).0.unwrap();
    let wanted = all(&store);
    for cut in cuts(&saved, &options()) {
        let cable = Cable::to(Pocket::with(&saved));
        cable.world().left = Some(cut);
        let mut store = log();
        let (result, text) = cable.sync(&mut store, options());
        assert!(matches!(result, Err(Error::Link(LinkError::Closed | LinkError::Silent))), "{cut}: {result:?}");
        let (stored, waiting) = (numbers(&store), cable.world().pocket.waiting());
        for number in 1..=5 {
            assert!(stored.contains(&number) || waiting.contains(&number), "{cut}: {number} is nowhere");
        }
        for number in said_stored(&text) {
            assert!(stored.contains(&number), "{cut}: {number} was said to be stored");
        }
        partial += usize::from((1..5).contains(&stored.len()));
        cable.mend();
        let (result, _) = cable.sync(&mut store, options());
        result.unwrap();
        assert_eq!(numbers(&store), [1, 2, 3, 4, 5], "{cut}");
        let same = all(&store).into_iter().zip(&wanted).all(|((_, got), (_, want))| {
            // The fabrics of each log have identifiers of their own.
            got.id == want.id
                && got.said.test == want.said.test
                && got.said.fabric.is_some() == want.said.fabric.is_some()
        });
        assert!(same, "{cut}");
        assert!(cable.world().pocket.waiting().is_empty(), "{cut}");
        assert_eq!(cable.world().pocket.device(), 7, "{cut}");
        assert_eq!(store.faults().unwrap(), Vec::new(), "{cut}");
        // No test was given to its fabric twice: four fabrics, five tests, three of them given, and tags lent once.
        assert_eq!(store.count().unwrap(), 4 + 5 + 3 + 1, "{cut}");
    }
    assert!(partial > 100, "only {partial} cuts left a part of the tests in the log");
}

/// Unplugged, and another plugged in behind the same adapter, after any byte: nothing of the second one is acknowledged
/// that is not in the log, and no test of it is taken for one of the first.
#[test]
fn another_handheld_behind_the_same_cable_is_found_out() {
    let (first, second): (Vec<_>, Vec<_>) = ((1..=4).map(test).collect(), (21..=26).map(test).collect());
    let mut exchanged = 0;
    for at in cuts(&first, &options()).skip(1) {
        let cable = Cable::to(Pocket::with(&first));
        let mut other = Pocket::with(&second);
        other.records().log().unwrap().set_device_id(8).unwrap();
        cable.world().exchange = Some((at, other));
        let mut store = log();
        let (result, _) = cable.sync(&mut store, options());
        exchanged += usize::from(matches!(result, Err(Error::Link(LinkError::Exchanged))));
        let stored: Vec<_> = all(&store).into_iter().map(|(_, test)| test.said).collect();
        let waiting = cable.world().pocket.waiting();
        for (number, saved) in (1..).zip(&second) {
            let is_stored = stored.iter().any(|said| said.test == saved.test && said.tag == Some(saved.tag));
            assert!(
                waiting.contains(&number) || is_stored,
                "{at}: {number} of the second is nowhere {result:?} {waiting:?}"
            );
        }
        for said in stored {
            let from = if first.iter().any(|saved| saved.test == said.test) { 7 } else { 8 };
            assert_eq!(said.device.unwrap().device, from, "{at}");
        }
    }
    assert!(exchanged > 100, "found out {exchanged} times");
}

/// A handheld whose memory misreads a test passes it over. It keeps all of them until they came.
#[test]
fn a_test_that_did_not_come_is_not_acknowledged() {
    for overlooked in 1..=5 {
        let cable = Cable::to(Pocket::with(&tests(5)));
        cable.world().pocket.overlooks = Some(overlooked);
        let mut store = log();
        let (result, _) = cable.sync(&mut store, options());
        assert!(
            matches!(result, Err(Error::Link(LinkError::Missing { listed: 5, sent: 4 }))),
            "{overlooked}: {result:?}"
        );
        assert_eq!(cable.world().pocket.waiting(), [1, 2, 3, 4, 5], "{overlooked}");
        cable.sync(&mut store, options()).0.unwrap();
        assert_eq!(numbers(&store), [1, 2, 3, 4, 5], "{overlooked}");
        assert!(cable.world().pocket.waiting().is_empty(), "{overlooked}");
    }
}

/// What is saved while it is read waits for the next time: there is an end.
#[test]
fn a_handheld_that_never_runs_out_is_read_to_what_it_listed() {
    let cable = Cable::to(Pocket::with(&tests(3)));
    cable.world().pocket.is_endless = true;
    let mut store = log();
    cable.sync(&mut store, options()).0.unwrap();
    assert_eq!(numbers(&store), [1, 2, 3]);
    let waiting = cable.world().pocket.waiting();
    assert!(waiting.len() > 2 && waiting.iter().all(|number| *number > 3), "{waiting:?}");
    // Nor does one get further that says there is no end of numbers.
    let cable = Cable::to(Pocket::with(&tests(3)));
    cable.world().pocket.is_endless = true;
    cable.world().pocket.claims_all_numbers = true;
    let mut store = log();
    cable.sync(&mut store, options()).0.unwrap();
    assert_eq!(numbers(&store), [1, 2, 3]);
}
