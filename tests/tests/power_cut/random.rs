//! Days of a handheld at random, with the power cut at a random byte, or one reading of the chip a lie: 10 000 of each, 200 000 with
//! `TENTER_THOROUGH=1`, from one seed, so that they are the same each time.

use rand::rngs::StdRng;
use rand::{Rng as _, SeedableRng as _};
use tenter_firmware::log::{DEMAND_SLOTS, Log, PAGE_BYTES};
use tenter_tests::fake_eeprom::{FakeEeprom, Lie, Rest, Trouble};

use crate::RING_START;
use crate::misread::{day, sync};
use crate::promised::{Op, Pending, Promised};

/// Any.
const SEED: u64 = 20_261_128;
/// After so many cuts or lies another chip begins.
const LIFE: u32 = 100;

fn tries() -> u32 {
    if std::env::var_os("TENTER_THOROUGH").is_some() { 200_000 } else { 10_000 }
}

fn op(random: &mut StdRng) -> Op {
    match random.random_range(0..16) {
        0..8 => Op::Save([1, 1, 1, 2, 2, 3, 4][random.random_range(0..7)]),
        8..12 => Op::Acknowledge(random.random_range(0..6)),
        12 => Op::SetDemand(random.random_range(0..DEMAND_SLOTS), random.random()),
        13 => Op::SetCount(random.random_range(0..=DEMAND_SLOTS)),
        14 => Op::Name(random.random_range(1..4)),
        _ => Op::SetRepeatability(random.random_range(400..402), random.random_range(0..3)),
    }
}

fn chip(random: &mut StdRng) -> FakeEeprom {
    FakeEeprom::erased(RING_START + random.random_range(4..14))
}

#[test]
fn no_random_power_cut_loses_a_test() {
    let mut random = StdRng::seed_from_u64(SEED);
    let (mut cuts, mut kept) = (0, 0);
    while cuts < tries() {
        let mut chip = chip(&mut random);
        let (mut promised, mut pending) = (Promised::default(), Pending::default());
        for _ in 0..LIFE {
            let trouble = chip.trouble.clone();
            let mut log = Log::open(chip).unwrap();
            let rest = Rest::ALL[random.random_range(0..3)];
            let cut = Trouble::Cut(random.random_range(0..=PAGE_BYTES), rest);
            trouble.set(Some((random.random_range(0..12), cut)));
            // A ring that is full is not written to: then the host comes.
            for turn in 0.. {
                let op = if turn % 20 == 19 { Op::Acknowledge(99) } else { op(&mut random) };
                promised.apply(&mut log, &op, &mut pending);
                if trouble.get().is_none() {
                    break;
                }
            }
            chip = log.into_storage();
            chip.power_on();
            promised.hold(&mut chip, &mut pending);
            cuts += 1;
        }
        kept += promised.saved.len();
    }
    println!("seed {SEED}: {cuts} random power cuts, {kept} tests were said to be saved, none was lost");
    assert!(kept > cuts as usize, "{kept} in {cuts}");
}

#[test]
fn no_random_misreading_loses_a_test() {
    let mut random = StdRng::seed_from_u64(SEED);
    let mut lies = 0;
    while lies < tries() {
        let (mut chip, mut promised) = (chip(&mut random), Promised::default());
        for _ in 0..LIFE {
            let op = op(&mut random);
            let (image, before) = (chip.image.clone(), promised.clone());
            chip.reads = 0;
            day(&mut chip, &mut promised, &mut Pending::default(), &op);
            let lie = match random.random_range(0..6) {
                0 => Lie::High,
                1 => Lie::Low,
                2 => Lie::Deaf,
                _ => Lie::Bit(random.random_range(0..PAGE_BYTES * 8)),
            };
            let reading = random.random_range(0..chip.reads);
            let told = format!("seed {SEED}, lie {lies}: {op:?}, reading {reading}, {lie:?}");
            let mut misread = FakeEeprom::holding(image);
            misread.lie.set(Some((reading, lie)));
            let (mut promised, mut pending) = (before, Pending::default());
            day(&mut misread, &mut promised, &mut pending, &op);
            misread.lie.set(None);
            promised.hold(&mut misread, &mut pending);
            let mut misread = FakeEeprom::holding(misread.image);
            misread.lie.set(Some((reading, lie)));
            sync(&mut misread, &promised, &told);
            lies += 1;
        }
    }
    println!("seed {SEED}: {lies} random misreadings of a day and of the sync after it, no test was lost");
}
