//! Wear and reading, counted.

use tenter_firmware::log::Log;
use tenter_tests::fake_eeprom::FakeEeprom;

use crate::RING_START;
use crate::promised::test_of;

/// Ten thousand everyday tests, acknowledged ten at a time, on a 24C256.
#[test]
fn the_ring_spreads_the_wear() {
    let mut log = Log::open(FakeEeprom::erased(512)).unwrap();
    for tag in 1..=10_000 {
        let seq = log.save(&test_of(tag, 1)).unwrap();
        if tag % 10 == 0 {
            log.acknowledge(seq).unwrap();
        }
    }
    let wear = log.into_storage().wear();
    let (state, ring, settings) = (&wear[..2], &wear[RING_START.into()..448], &wear[448..450]);
    let (least, most) = (*ring.iter().min().unwrap(), *ring.iter().max().unwrap());
    println!("10 000 tests: {least} to {most} writes of each ring page, {state:?} of the state pages");
    // 10 000 / 430 = 23.3; 1 000 acknowledgements over two pages, and one more for the layout; 999 tags given.
    assert_eq!((least, most), (23, 24));
    assert_eq!((state, settings.iter().sum()), (&[501, 501][..], 999));
}

/// Reading page by page is slow on I2C (1.5 ms a page at 400 kHz): how many pages each step takes.
#[test]
fn steps_read_few_pages() {
    let mut log = Log::open(FakeEeprom::erased(512)).unwrap();
    for tag in 1..=400 {
        log.save(&test_of(tag, 1)).unwrap();
    }
    let mut chip = log.into_storage();
    chip.reads = 0;
    let mut log = Log::open(&mut chip).unwrap();
    let mut from = 1;
    while let Some((seq, _)) = log.fetch(from).unwrap() {
        from = seq + 1;
    }
    log.acknowledge(400).unwrap();
    // Opening: two of the state, each of the ring and twice more the one where the next record goes, two of what is
    // remembered, and twice both places of the test in hand, which are erased. Fetching: the one before and the one itself. Acknowledging: its own page read back.
    assert_eq!(chip.reads, (2 + 430 + 2 + 2 + 4) + (2 * 400) + 1);
}
