//! Damage that no power cut explains: flipped bits, worn pages, chips that hold anything.

use std::collections::BTreeMap;

use proptest::prelude::*;
use tenter_core::record::checksum;
use tenter_firmware::log::{DEMAND_SLOTS, Log, LogError, PAGE_BYTES, StoragePage};
use tenter_tests::fake_eeprom::FakeEeprom;

use crate::RING_START;
use crate::promised::{Op, Pending, Promised, scenario, test_of};

/// A full, used chip, and what it promised.
fn used() -> (FakeEeprom, Promised) {
    let mut promised = Promised::default();
    let mut log = Log::open(FakeEeprom::erased(RING_START + 11)).unwrap();
    for op in scenario() {
        promised.apply(&mut log, &op, &mut Pending::default());
    }
    for pages in [1, 2, 4, 1] {
        promised.apply(&mut log, &Op::Save(pages), &mut Pending::default());
    }
    assert_eq!(promised.waiting().count(), 4);
    (log.into_storage(), promised)
}

#[test]
fn a_flipped_bit_loses_at_most_the_record_it_hits() {
    let (chip, promised) = used();
    let mut lost = BTreeMap::new();
    for page in 0..chip.image.len() {
        for bit in 0..PAGE_BYTES * 8 {
            let mut chip = chip.clone();
            chip.image[page][bit / 8] ^= 1 << (bit % 8);
            let mut log = Log::open(&mut chip).unwrap();
            let missing = promised.waiting().filter(|seq| match log.fetch(*seq).unwrap() {
                Some((found, test)) if found == *seq => {
                    assert_eq!(promised.saved[seq], test);
                    false
                }
                _ => true,
            });
            let missing: Vec<_> = missing.collect();
            assert!(missing.len() <= 1, "page {page} bit {bit}: {missing:?}");
            missing.iter().for_each(|seq| *lost.entry(*seq).or_insert(0) += 1);
            assert_eq!((log.device_id(), log.demand_count()), (promised.device, promised.count));
            assert_eq!(log.repeatability(), promised.hand);
            let demands = (0..promised.count).filter(|slot| {
                let demand = log.demand(*slot).unwrap();
                demand.as_ref().inspect(|demand| assert_eq!(promised.demands.get(slot), Some(*demand))).is_none()
            });
            assert!(demands.count() + missing.len() <= 1, "page {page} bit {bit}");
        }
    }
    // One page, two, four and one: every bit of them, and nothing else.
    let bits: Vec<_> = promised.waiting().map(|seq| lost[&seq]).collect();
    assert_eq!(bits, [1, 2, 4, 1].map(|pages| pages * 512));
}

#[test]
fn a_worn_page_is_passed_over() {
    for worn in RING_START..RING_START + 11 {
        let mut promised = Promised::default();
        let mut chip = FakeEeprom::erased(RING_START + 11);
        chip.worn = vec![worn];
        let mut log = Log::open(chip).unwrap();
        for pages in [1, 2, 1, 4, 1, 2, 1, 4, 1, 3, 1, 1, 1] {
            let before = promised.saved.len();
            promised.apply(&mut log, &Op::Save(pages), &mut Pending::default());
            assert_eq!(promised.saved.len(), before + 1, "page {worn}");
            promised.apply(&mut log, &Op::Acknowledge(0), &mut Pending::default());
        }
        promised.hold(&mut log.into_storage(), &mut Pending::default());
    }
}

#[test]
fn a_chip_that_keeps_nothing_is_told_from_a_full_one() {
    let mut chip = FakeEeprom::erased(64);
    chip.worn = (0..64).collect();
    let mut log = Log::open(chip).unwrap();
    assert_eq!(log.save(&test_of(1, 1)), Err(LogError::NotKept));
    assert_eq!(log.set_device_id(5), Err(LogError::NotKept));
    assert_eq!((log.device_id(), log.unacknowledged(), log.free_pages()), (0, 0, 64 - RING_START));
}

#[test]
fn chips_too_small_or_too_new_are_refused_untouched() {
    assert_eq!(Log::open(FakeEeprom::erased(0)).err(), Some(LogError::TooSmall));
    assert_eq!(Log::open(FakeEeprom::erased(RING_START + 3)).err(), Some(LogError::TooSmall));
    assert!(Log::open(FakeEeprom::erased(RING_START + 4)).is_ok());
    let mut chip = FakeEeprom::erased(64);
    Log::open(&mut chip).unwrap().set_device_id(1).unwrap();
    chip.image[1][0] = 3;
    let (body, sum) = chip.image[1].split_last_chunk_mut().unwrap();
    *sum = checksum(body).to_le_bytes();
    let before = chip.history.len();
    assert_eq!(Log::open(&mut chip).err(), Some(LogError::Newer));
    assert_eq!(chip.history.len(), before);
}

/// A page as a hostile chip may hold it: with a good checksum over anything.
fn sealed_page() -> impl Strategy<Value = StoragePage> {
    let small = prop_oneof![3 => 0..6u8, 1 => any::<u8>()];
    (prop::collection::vec(small, PAGE_BYTES), any::<bool>()).prop_map(|(bytes, seal)| {
        let mut page: StoragePage = bytes.try_into().unwrap();
        let (body, sum) = page.split_last_chunk_mut().unwrap();
        if seal {
            *sum = checksum(body).to_le_bytes();
        }
        page
    })
}

proptest! {
    /// Whatever a chip holds: no panic, no endless loop, and what is saved can be fetched.
    #[test]
    fn any_image_opens(image in prop::collection::vec(sealed_page(), 22..40), from in 0..9u32) {
        let chip = FakeEeprom::holding(image);
        match Log::open(chip) {
            Err(error) => prop_assert_eq!(error, LogError::Newer),
            Ok(mut log) => {
                let _ = (log.oldest().unwrap(), log.fetch_record(from).unwrap(), log.room(), log.demand_count());
                (0..DEMAND_SLOTS).for_each(|slot| drop(log.demand(slot).unwrap()));
                let _ = log.acknowledge(from);
                log.acknowledge(log.next_seq() - 1).unwrap();
                prop_assert_eq!((log.unacknowledged(), log.is_full()), (0, false));
                if let Ok(seq) = log.save(&test_of(1, 3)) {
                    prop_assert_eq!(log.fetch(seq).unwrap(), Some((seq, test_of(1, 3))));
                } else {
                    prop_assert_eq!(log.next_seq(), u32::MAX);
                }
            }
        }
    }
}
