//! The log of the handheld under power cuts, disturbed writes, damaged pages and wear.
//!
//! What is asked of it: everything reported as saved is there afterwards, nothing is torn, nothing is there twice, and
//! no number is ever reported for two tests.

mod any_order;
mod damage;
mod effort;
mod journal;
mod misread;
mod promised;
mod random;
mod rules;

use promised::{Op, Pending, Promised, scenario};
use tenter_firmware::log::{Log, PAGE_BYTES, StoragePage};
use tenter_tests::fake_eeprom::{FakeEeprom, Rest, torn};

/// The first page of the ring; see the table in `firmware/src/log/mod.rs`.
const RING_START: u16 = 18;

/// Every moment of the scenario at which power can fail: the chip's pages before the write, the write, what was
/// promised and what was being done.
fn every_write(
    mut check: impl FnMut(&[StoragePage], (u16, StoragePage, StoragePage), &Promised, &Pending),
) -> (usize, usize) {
    let mut promised = Promised::default();
    let mut chip = FakeEeprom::erased(RING_START + 11);
    let (mut writes, mut full) = (0, 0);
    for op in scenario() {
        let before = promised.clone();
        let mut image = chip.image.clone();
        chip.history.clear();
        let mut log = Log::open(&mut chip).unwrap();
        let count = promised.saved.len();
        promised.apply(&mut log, &op, &mut Pending::default());
        full += usize::from(matches!(op, Op::Save(_)) && promised.saved.len() == count);

        let mut pending = Pending::default();
        let saved = promised.saved.iter().filter(|(seq, _)| !before.saved.contains_key(seq));
        pending.saved = saved.map(|(_, test)| test.clone()).collect();
        pending.acknowledged = vec![promised.acknowledged];
        (pending.devices, pending.counts) = (vec![promised.device], vec![promised.count]);
        pending.hands = vec![promised.hand];
        let changed = promised.demands.iter().filter(|(slot, demand)| before.demands.get(slot) != Some(demand));
        pending.demands = changed.map(|(slot, demand)| (*slot, vec![demand.clone()])).collect();
        for write in &chip.history {
            check(&image, *write, &before, &pending);
            image[usize::from(write.0)] = write.2;
            writes += 1;
        }
    }
    (writes, full)
}

#[test]
fn power_may_fail_after_every_byte_of_every_write() {
    let mut cuts = 0;
    let (writes, full) = every_write(|image, (page, old, new), promised, pending| {
        for rest in Rest::ALL {
            for written in 0..=PAGE_BYTES {
                let mut chip = FakeEeprom::holding(image.to_vec());
                chip.image[usize::from(page)] = torn(&old, &new, written, rest);
                let (mut promised, mut pending) = (promised.clone(), pending.clone());
                promised.hold(&mut chip, &mut pending);
                // And life goes on.
                promised.number = 10_000;
                promised.apply(&mut Log::open(&mut chip).unwrap(), &Op::Save(2), &mut Pending::default());
                promised.hold(&mut chip, &mut pending);
                cuts += 1;
            }
        }
    });
    assert!(writes > 100 && full > 3, "{writes} writes, {full} times full");
    println!("{cuts} cuts in {writes} writes; {full} times full");
}
