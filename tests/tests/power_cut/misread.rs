//! One reading in the life of a chip lies: a bit, a line that stays high or low, no answer.

use tenter_firmware::log::{Log, PAGE_BYTES};
use tenter_tests::fake_eeprom::{FakeEeprom, Lie};

use crate::RING_START;
use crate::promised::{Op, Pending, Promised, scenario};

/// Switches on, does it, and lets the host fetch what is waiting, as a person would after a day.
pub fn day(chip: &mut FakeEeprom, promised: &mut Promised, pending: &mut Pending, op: &Op) {
    // A chip that does not answer is switched off and on.
    let mut log = match Log::open(&mut *chip) {
        Ok(log) => log,
        Err(_) => Log::open(&mut *chip).unwrap(),
    };
    promised.apply(&mut log, op, pending);
    // It goes on without being switched off.
    promised.apply(&mut log, &Op::Save(1), pending);
}

/// What a host that trusts the handheld does: it fetches, and acknowledges the last that came.
pub fn sync(chip: &mut FakeEeprom, promised: &Promised, told: &str) {
    let Ok(mut log) = Log::open(&mut *chip) else { return };
    let (mut from, mut fetched) = (promised.acknowledged + 1, Vec::new());
    loop {
        match log.fetch(from) {
            Ok(Some((seq, _))) => {
                fetched.push(seq);
                from = seq + 1;
            }
            Ok(None) => break,
            Err(_) => return,
        }
    }
    if let Some(last) = fetched.last() {
        let released: Vec<u32> = promised.waiting().filter(|seq| seq <= last).collect();
        assert!(released.iter().all(|seq| fetched.contains(seq)), "{told}: {fetched:?} of {released:?}");
        if log.acknowledge(*last).is_ok() {
            assert!(log.unacknowledged() == 0, "{told}");
        }
    }
}

/// Every reading of every step lies once, in each way; one bit of each page, another each time.
#[test]
fn no_single_misreading_loses_a_test() {
    let mut promised = Promised::default();
    let mut chip = FakeEeprom::erased(RING_START + 11);
    let (mut lies, mut step) = (0, 0);
    for op in scenario() {
        let (image, before) = (chip.image.clone(), promised.clone());
        chip.reads = 0;
        day(&mut chip, &mut promised, &mut Pending::default(), &op);
        for reading in 0..chip.reads {
            step += 1;
            for lie in [Lie::Bit(step * 37 % (PAGE_BYTES * 8)), Lie::High, Lie::Low, Lie::Deaf] {
                let told = format!("{op:?}, reading {reading}, {lie:?}");
                let mut chip = FakeEeprom::holding(image.clone());
                chip.lie.set(Some((reading, lie)));
                let (mut promised, mut pending) = (before.clone(), Pending::default());
                day(&mut chip, &mut promised, &mut pending, &op);
                chip.lie.set(None);
                promised.hold(&mut chip, &mut pending);

                let mut chip = FakeEeprom::holding(chip.image);
                chip.lie.set(Some((reading, lie)));
                sync(&mut chip, &promised, &told);
                lies += 2;
            }
        }
    }
    assert!(lies > 10_000, "{lies}");
    println!("{lies} readings lied, no test was lost");
}
