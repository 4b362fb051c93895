//! What each call of the log does, refuses and leaves alone.

use tenter_core::Repeatability;
use tenter_core::record::RecordError;
use tenter_firmware::log::{DEMAND_SLOTS, Log, LogError, PAGE_BYTES};
use tenter_tests::fake_eeprom::{FakeEeprom, NoAnswer, Rest, Trouble};

use crate::RING_START;
use crate::promised::{demand_of, test_of};

#[test]
fn the_tests_take_the_pages_they_should() {
    for pages in 1..=4 {
        let mut log = Log::open(FakeEeprom::erased(64)).unwrap();
        let before = log.free_pages();
        log.save(&test_of(1, pages)).unwrap();
        assert_eq!(usize::from(before - log.free_pages()), pages);
    }
}

#[test]
fn a_full_log_says_so_and_overwrites_nothing() {
    let mut log = Log::open(FakeEeprom::erased(RING_START + 11)).unwrap();
    let mut saved = 0;
    while !log.is_full() {
        let room = log.room();
        saved = log.save(&test_of(u16::try_from(saved).unwrap(), 2)).unwrap();
        assert!(log.room() < room);
    }
    // Five of two pages leave one page: enough for a small test, not for every test.
    assert_eq!((saved, log.free_pages()), (4, 3));
    assert_eq!(log.save(&test_of(50, 4)), Err(LogError::Full));
    assert_eq!(log.save(&test_of(51, 2)), Ok(5));
    assert_eq!(log.save(&test_of(52, 2)), Err(LogError::Full));
    assert_eq!(log.save(&test_of(53, 1)), Ok(6));
    assert_eq!(log.save(&test_of(54, 1)), Err(LogError::Full));
    assert_eq!((log.oldest(), log.unacknowledged(), log.free_pages(), log.room()), (Ok(Some(1)), 6, 0, 0));
    log.acknowledge(2).unwrap();
    assert_eq!((log.oldest(), log.unacknowledged(), log.free_pages(), log.room()), (Ok(Some(3)), 4, 4, 1));
}

#[test]
fn what_the_host_has_is_kept_until_it_is_overwritten() {
    let mut log = Log::open(FakeEeprom::erased(RING_START + 11)).unwrap();
    for tag in 1..=11 {
        log.save(&test_of(tag, 1)).unwrap();
    }
    log.acknowledge(11).unwrap();
    assert_eq!((log.oldest(), log.unacknowledged(), log.free_pages()), (Ok(None), 0, 11));
    assert_eq!(log.fetch(11), Ok(Some((11, test_of(11, 1)))));
    assert_eq!(log.fetch(0), Ok(Some((1, test_of(1, 1)))));
    log.save(&test_of(12, 2)).unwrap();
    assert_eq!(log.fetch(0), Ok(Some((3, test_of(3, 1)))));
    assert_eq!(log.fetch(12), Ok(Some((12, test_of(12, 2)))));
    let mut log = Log::open(log.into_storage()).unwrap();
    assert_eq!(log.fetch(0), Ok(Some((3, test_of(3, 1)))));
    assert_eq!(log.fetch(13), Ok(None));
}

#[test]
fn acknowledgements_only_go_forward_and_never_ahead() {
    let mut log = Log::open(FakeEeprom::erased(64)).unwrap();
    assert_eq!(log.acknowledge(0), Ok(()));
    assert_eq!(log.acknowledge(1), Err(LogError::NeverSaved));
    for tag in 1..=5 {
        log.save(&test_of(tag, 1)).unwrap();
    }
    assert_eq!(log.acknowledge(6), Err(LogError::NeverSaved));
    assert_eq!(log.acknowledge(u32::MAX), Err(LogError::NeverSaved));
    for (up_to, left) in [(3, 2), (3, 2), (1, 2), (0, 2), (5, 0), (5, 0)] {
        assert_eq!(log.acknowledge(up_to), Ok(()));
        assert_eq!(log.unacknowledged(), left);
        log = Log::open(log.into_storage()).unwrap();
        assert_eq!(log.unacknowledged(), left);
    }
    let writes = log.into_storage().wear()[..2].iter().sum::<usize>();
    assert_eq!(writes, 2, "what changes nothing is not written");
}

#[test]
fn a_number_is_given_once() {
    let mut log = Log::open(FakeEeprom::erased(64)).unwrap();
    assert_eq!(log.device_id(), 0);
    assert_eq!(log.set_device_id(9), Ok(()));
    assert_eq!(log.set_device_id(9), Ok(()));
    assert_eq!(log.set_device_id(8), Err(LogError::Named));
    assert_eq!(log.set_device_id(0), Err(LogError::Named));
    let chip = log.into_storage();
    assert_eq!(Log::open(chip.clone()).unwrap().device_id(), 9);
    for damaged in 0..2 {
        let mut chip = chip.clone();
        chip.image[damaged][20] ^= 1;
        assert_eq!(Log::open(chip).unwrap().device_id(), 9, "page {damaged}");
    }
}

#[test]
fn a_hand_is_kept_whatever_else_is_written() {
    let mut log = Log::open(FakeEeprom::erased(64)).unwrap();
    assert_eq!(log.repeatability(), None);
    for [ratio, dof] in [[500, 22], [500, 22], [1_000, 1], [100_000, 1_000_000]] {
        assert_eq!(log.set_repeatability(ratio, dof), Ok(()));
        assert_eq!(log.repeatability(), Repeatability::from_thousandths(ratio, dof));
    }
    let writes = log.into_storage();
    assert_eq!(writes.history.len(), 6, "three hands, each over both pages; the same again is not written");
    let mut log = Log::open(writes).unwrap();
    log.save(&test_of(1, 1)).unwrap();
    log.acknowledge(1).unwrap();
    log.set_device_id(9).unwrap();
    log.set_demand_count(3).unwrap();
    let chip = log.into_storage();
    for damaged in 0..2 {
        let mut chip = chip.clone();
        chip.image[damaged][20] ^= 1;
        assert_eq!(Log::open(chip).unwrap().repeatability(), Repeatability::new(100.0, 1e6), "page {damaged}");
    }
    // What is no hand forgets it, and leaves the rest.
    let mut log = Log::open(chip).unwrap();
    assert_eq!(log.set_repeatability(500, 0), Ok(()));
    let log = Log::open(log.into_storage()).unwrap();
    assert_eq!((log.repeatability(), log.device_id(), log.demand_count()), (None, 9, 3));
}

#[test]
fn demands_beyond_the_slots_are_refused_and_equal_ones_not_written() {
    let mut log = Log::open(FakeEeprom::erased(64)).unwrap();
    let demand = demand_of(1, true);
    assert_eq!(log.set_demand(DEMAND_SLOTS, &demand), Err(LogError::NoSlot));
    assert_eq!(log.set_demand_count(DEMAND_SLOTS + 1), Err(LogError::NoSlot));
    assert_eq!(log.set_demand(DEMAND_SLOTS - 1, &demand), Ok(()));
    for damaged in [&b"no demand"[..], &[0; 300]] {
        let refused = Err(LogError::Record(RecordError::Damaged));
        assert_eq!(log.set_demand_record(DEMAND_SLOTS - 1, damaged), refused);
    }
    assert_eq!(log.demand(DEMAND_SLOTS - 1), Ok(None), "not in use");
    assert_eq!(log.set_demand_count(DEMAND_SLOTS), Ok(()));
    assert_eq!(log.demand(DEMAND_SLOTS - 1), Ok(Some(demand.clone())));
    assert_eq!(log.demand(0), Ok(None), "never written");
    let mut chip = log.into_storage();
    for damaged in 0..2 {
        let mut chip = chip.clone();
        chip.image[damaged][20] ^= 1;
        assert_eq!(Log::open(chip).unwrap().demand_count(), DEMAND_SLOTS, "page {damaged}");
    }
    chip.history.clear();
    let mut log = Log::open(chip).unwrap();
    assert_eq!(log.set_demand(DEMAND_SLOTS - 1, &demand), Ok(()));
    assert_eq!(log.set_demand_count(DEMAND_SLOTS), Ok(()));
    assert!(log.into_storage().history.is_empty());
}

#[test]
fn numbers_go_on_behind_those_the_host_has() {
    let mut log = Log::open(FakeEeprom::erased(RING_START + 11)).unwrap();
    for tag in 1..=7 {
        log.save(&test_of(tag, 1)).unwrap();
    }
    log.acknowledge(7).unwrap();
    let mut chip = log.into_storage();
    chip.image[usize::from(RING_START)..].fill([0xFF; PAGE_BYTES]);
    assert_eq!(Log::open(chip).unwrap().save(&test_of(8, 1)), Ok(8));
}

#[test]
fn parts_of_two_attempts_never_make_a_test() {
    let mut chip = FakeEeprom::erased(RING_START + 11);
    let trouble = chip.trouble.clone();
    // Written to the end, but the answer to the last page is lost; so saved again, and cut in the first page.
    let mut log = Log::open(&mut chip).unwrap();
    trouble.set(Some((2, Trouble::Unheard)));
    assert_eq!(log.save(&test_of(1, 3)), Err(LogError::Chip(NoAnswer)));
    trouble.set(Some((0, Trouble::Cut(30, Rest::Garbage))));
    assert_eq!(log.save(&test_of(1, 3)), Err(LogError::Chip(NoAnswer)));
    // The second and third page of the first attempt are still there. Another test, cut before its second page.
    chip.power_on();
    let mut log = Log::open(&mut chip).unwrap();
    trouble.set(Some((1, Trouble::Cut(0, Rest::Old))));
    assert_eq!(log.save(&test_of(2, 3)), Err(LogError::Chip(NoAnswer)));
    chip.power_on();
    let mut log = Log::open(&mut chip).unwrap();
    assert_eq!((log.fetch_record(0), log.unacknowledged()), (Ok(None), 0));
}
