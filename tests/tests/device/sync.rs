//! An undisturbed synchronisation, and what is unusual about what is fetched.

use tenter::command::device::sync::Options;
use tenter::command::device::{self, list};
use tenter::store::Read as _;
use tenter::store::sqlite::Sqlite;
use tenter_core::saved::{self, Clock, MAX_SAVED_BYTES, SavedTest};

use crate::cable::{Cable, all, here, log, printed};
use crate::pocket::{Chip, NOVEMBER, Pocket, test, tests};

fn named(number: u32) -> Options {
    Options { name: Some(number), ..Options::default() }
}

/// What was printed, without what each figure is worth: that is the core's to check.
fn without_worth(text: &str) -> String {
    let mut parts = text.split(" ± ");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |text, part| text + part.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.'))
}

#[test]
fn everything_comes_over_and_is_given_to_its_fabric() {
    let (cable, mut store) = (Cable::to(Pocket::with(&tests(4))), log());
    let (result, text) = cable.sync(&mut store, named(4711));
    result.unwrap();
    // Tags 2, 3, 4, 1: one fabric wears 2, two wear 3, none wears 4.
    // 106, 107 and 108 mm on 100 mm marks, not settled: the first settles it, so (107 + 108) mm / 2 is 7.5 %, and so on up.
    let wanted = "\
handheld 4711, named just now; clock set, it was not set
stored     1  crosswise     7.5 %  2 Doorway rib
stored     2  crosswise     8.5 %  inbox, tag 3
stored     3  lengthwise    9.5 %  inbox, tag 4
stored     4  crosswise    10.5 %  1 Vestry twill
4 tests stored
2 without a cloth: see tenter device inbox
";
    assert_eq!(without_worth(&text), wanted, "{text}");
    let stored = all(&store);
    assert_eq!(stored.len(), 4);
    for ((number, stored), saved) in stored.iter().zip(tests(4)) {
        assert_eq!(stored.said.test, saved.test);
        assert_eq!(stored.said.tag, Some(saved.tag));
        assert_eq!(stored.said.device.unwrap().device, 4711);
        assert!(!stored.said.clock_unset);
        assert_eq!(stored.said.pulled.as_second(), i64::from(NOVEMBER + 600 * number));
    }
    let world = &mut cable.world();
    assert_eq!(world.pocket.device(), 4711);
    assert!(world.pocket.waiting().is_empty());
    // What the person pulled, the two of known cloths, each with two pulls that count: 2 × (2 − 1) degrees of freedom.
    let state = world.pocket.records().log().unwrap().repeatability().unwrap();
    assert_eq!(state.dof(), 2.0);
    assert_eq!(store.faults().unwrap(), Vec::new());
}

#[test]
fn the_second_time_changes_nothing() {
    let (cable, mut store) = (Cable::to(Pocket::with(&tests(70))), log());
    cable.sync(&mut store, Options::default()).0.unwrap();
    let (entries, image) = (store.count().unwrap(), cable.world().pocket.chip.image());
    let device = cable.world().pocket.device();
    assert_ne!(device, 0, "a random number, never 0");
    let (result, text) = cable.sync(&mut store, Options::default());
    result.unwrap();
    assert_eq!(text, format!("handheld {device}; clock set, it was right\nnothing new on the handheld\n"));
    assert_eq!(store.count().unwrap(), entries);
    assert!(cable.world().pocket.chip.image() == image, "the chip was written");
}

#[test]
fn a_handheld_keeps_its_number() {
    let (cable, mut store) = (Cable::to(Pocket::with(&tests(1))), log());
    cable.sync(&mut store, named(41)).0.unwrap();
    let said = cable.sync(&mut store, named(42)).0.unwrap_err().to_string();
    assert_eq!(said, "--name '42': this handheld is number 41 and keeps it; leave --name out");
    cable.sync(&mut store, named(41)).0.unwrap();
}

#[test]
fn listing_changes_nothing_on_either_side() {
    let (cable, mut store) = (Cable::to(Pocket::with(&tests(2))), log());
    let (image, entries) = (cable.world().pocket.chip.image(), store.count().unwrap());
    let list = |store: &dyn tenter::store::Read, json| {
        let (result, text) = printed(|screen| list::run(&mut cable.session()?, json, store, screen));
        result.unwrap();
        text
    };
    let text = list(&store, false);
    assert!(text.starts_with("handheld not named yet\n"), "{text}");
    assert!(text.contains("not set; on for 10 s"), "{text}");
    assert!(text.contains("Doorway rib"), "{text}");
    assert!(text.ends_with("2 tests to fetch: tenter device sync\n"), "{text}");
    assert_eq!(store.count().unwrap(), entries);
    assert!(cable.world().pocket.chip.image() == image);
    // One was fetched and stored, but the answer to that was lost.
    cable.world().pocket.records().log().unwrap().set_device_id(9).unwrap();
    let image = cable.world().pocket.chip.image();
    cable.sync(&mut store, Options::default()).0.unwrap();
    cable.world().pocket = Pocket::on(Chip::holding(image));
    cable.world().pocket.save(&test(3));
    let json: serde_json::Value = serde_json::from_str(&list(&store, true)).unwrap();
    assert_eq!(json["device"], 9);
    let in_log: Vec<_> = json["tests"].as_array().unwrap().iter().map(|test| test["in_log"].as_bool()).collect();
    assert_eq!(in_log, [Some(true), Some(true), Some(false)], "{json}");
    assert!(list(&store, false).ends_with("1 test to fetch: tenter device sync\n"));
}

#[test]
fn a_clock_that_was_never_set_is_said_to_be_unset() {
    let unset = |nth| SavedTest { clock: Clock { uptime_s: 5 * nth, unix_s: None }, ..test(nth) };
    let cable = Cable::to(Pocket::with(&[unset(1), unset(5), test(6), unset(9)]));
    let mut store = log();
    let before = here().now();
    let (_, text) = cable.sync(&mut store, Options::default());
    assert_eq!(text.matches("(day not known)").count(), 3, "{text}");
    let all: Vec<_> = all(&store).into_iter().map(|(_, test)| test.said).collect();
    assert_eq!(all.iter().map(|said| said.clock_unset).collect::<Vec<_>>(), [true, true, false, true]);
    // Numbers rise with time: the first two were saved before the third, whose time is known.
    assert!(all.is_sorted_by(|a, b| a.pulled < b.pulled));
    assert_eq!(all[2].pulled.as_second(), i64::from(NOVEMBER + 3600));
    assert_eq!(all[3].pulled, before);
}

#[test]
fn the_clock_is_set_and_how_far_it_was_off_is_said() {
    let cable = Cable::to(Pocket::with(&[]));
    let clock = || printed(|screen| device::clock(&mut cable.session()?, screen)).1;
    assert!(clock().ends_with("; it was not set\n"));
    assert!(clock().ends_with("; it was right\n"));
    let now = u32::try_from(here().now().as_second()).unwrap();
    tenter_firmware::link::RequestHandler::set_clock(cable.world().pocket.records(), now - 7300);
    let said = clock();
    assert!(said.ends_with("; it was 2 h behind\n"), "{said}");
    tenter_firmware::link::RequestHandler::set_clock(cable.world().pocket.records(), now + 90);
    let said = clock();
    assert!(said.ends_with("; it was 90 s ahead\n"), "{said}");
}

#[test]
fn what_cannot_be_read_stays_on_the_handheld_with_all_that_follows() {
    let mut pocket = Pocket::with(&tests(5));
    pocket.altered.insert(3, b"no record".to_vec());
    let (cable, mut store) = (Cable::to(pocket), log());
    let said = cable.sync(&mut store, Options::default()).0.unwrap_err().to_string();
    let wanted = "number 3 arrived damaged: sync again, or give it up with --give-up-damaged; \
                  the handheld keeps everything from there on";
    assert_eq!(said, wanted);
    let numbers = |store: &Sqlite| all(store).into_iter().map(|(number, _)| number).collect::<Vec<_>>();
    assert_eq!(numbers(&store), [1, 2, 4, 5], "the others are safe");
    assert_eq!(cable.world().pocket.waiting(), [3, 4, 5]);
    // On the line and not on the chip: the next time it comes whole.
    cable.world().pocket.altered.clear();
    let (result, text) = cable.sync(&mut store, Options::default());
    result.unwrap();
    assert!(text.contains("1 test stored, 2 in the log before\n"), "{text}");
    assert_eq!(numbers(&store), [1, 2, 3, 4, 5]);
    assert!(cable.world().pocket.waiting().is_empty());
}

#[test]
fn a_damaged_test_can_be_given_up_and_one_of_a_newer_program_cannot() {
    let give_up = Options { give_up_damaged: true, ..Options::default() };
    let mut newer = [9, 9, 9].to_vec();
    newer.extend(tenter_core::record::checksum(&newer).to_le_bytes());
    let mut pocket = Pocket::with(&tests(5));
    pocket.altered.insert(2, b"no record".to_vec());
    pocket.altered.insert(4, newer);
    let (cable, mut store) = (Cable::to(pocket), log());
    let said = cable.sync(&mut store, give_up).0.unwrap_err().to_string();
    let wanted = "number 4 was written by a newer program: update tenter and sync again; \
                  number 2 arrived damaged and was given up; the handheld keeps everything from there on";
    assert_eq!(said, wanted);
    assert_eq!(cable.world().pocket.waiting(), [4, 5]);
}

/// A memory that was exchanged or wiped gives the same numbers again, perhaps under the same name.
#[test]
fn a_number_that_is_given_again_is_another_test() {
    let (cable, mut store) = (Cable::to(Pocket::with(&tests(3))), log());
    cable.sync(&mut store, named(7)).0.unwrap();
    let again: Vec<_> = (11..=14).map(test).collect();
    cable.world().pocket = Pocket::with(&again);
    let (result, text) = cable.sync(&mut store, named(7));
    result.unwrap();
    assert!(text.contains("note: 3 tests under a number that another test had before"), "{text}");
    let tests: Vec<_> = all(&store).into_iter().map(|(number, test)| (number, test.said.test)).collect();
    let wanted = [(1, test(1)), (1, again[0].clone()), (2, test(2)), (2, again[1].clone()), (3, test(3))];
    for (number, saved) in wanted {
        assert!(tests.contains(&(number, saved.test)), "{number}");
    }
    assert_eq!(tests.len(), 7);
}

#[test]
fn an_older_handheld_is_no_error() {
    let mut pocket = Pocket::with(&tests(2));
    pocket.is_old = true;
    let (cable, mut store) = (Cable::to(pocket), log());
    let (result, text) = cable.sync(&mut store, Options::default());
    result.unwrap();
    assert!(text.replace("\n  ", " ").ends_with("it uses the assumed scatter and not your repeatability\n"), "{text}");
    assert!(cable.world().pocket.waiting().is_empty());
}

/// The longest test there is, and a log so full that many batches are needed.
#[test]
fn a_full_handheld_is_emptied() {
    let mut longest = test(1);
    while longest.test.add_pull(tenter_core::Length::from_steps(234_567)).is_ok() {}
    assert!(saved::encode(&longest, &mut [0; MAX_SAVED_BYTES]).unwrap().len() > 50);
    let mut pocket = Pocket::with(&[longest]);
    let mut nth = 1;
    while !pocket.records().log().unwrap().is_full() {
        nth += 1;
        pocket.save(&test(nth));
    }
    assert!(nth > 400, "{nth}");
    let (cable, mut store) = (Cable::to(pocket), log());
    cable.sync(&mut store, Options::default()).0.unwrap();
    assert_eq!(u32::try_from(all(&store).len()).unwrap(), nth);
    assert!(cable.world().pocket.waiting().is_empty());
}
