//! A handheld's chip that holds anything, and of which one reading lies: what was saved after that is there.

#![no_main]

use libfuzzer_sys::fuzz_target;
use tenter_core::saved::{Clock, SavedTest};
use tenter_core::{Grain, Length, PullTest};
use tenter_firmware::log::{Log, PAGE_BYTES, Storage, StoragePage};

/// Pages of the chip: eighteen before the ring, and a few of it.
const PAGES: usize = 30;

struct Chip {
    image: Vec<StoragePage>,
    /// How many readings are still true before one is a lie, and which bit that turns.
    lie: Option<(usize, usize)>,
}

impl Storage for Chip {
    type Error = ();

    fn pages(&self) -> u16 {
        PAGES as u16
    }

    fn read(&mut self, page: u16, buffer: &mut StoragePage) -> Result<(), ()> {
        *buffer = self.image[usize::from(page)];
        self.lie = match self.lie {
            Some((0, bit)) => {
                buffer[bit / 8 % PAGE_BYTES] ^= 1 << (bit % 8);
                None
            }
            Some((more, bit)) => Some((more - 1, bit)),
            None => None,
        };
        Ok(())
    }

    fn write(&mut self, page: u16, bytes: &StoragePage) -> Result<(), ()> {
        self.image[usize::from(page)] = *bytes;
        Ok(())
    }
}

fuzz_target!(|bytes: &[u8]| {
    let [count, bit, other, image @ ..] = bytes else { return };
    let mut pages = vec![[0xff; PAGE_BYTES]; PAGES];
    for (byte, new) in pages.as_flattened_mut().iter_mut().zip(image) {
        *byte = *new;
    }
    let lie = Some((usize::from(*count), usize::from(*bit) * 256 + usize::from(*other)));
    let Ok(mut log) = Log::open(Chip { image: pages, lie }) else { return };
    let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).expect("a gauge length");
    test.add_pull(Length::from_mm(110)).expect("a pull");
    let saved = SavedTest::new(7, Clock { uptime_s: 1, unix_s: None }, test);
    // Whatever was there: a full ring and a worn-out number are said, and what is said to be saved is there.
    let Ok(number) = log.save(&saved) else { return };
    let mut chip = log.into_storage();
    chip.lie = None;
    let mut log = Log::open(chip).expect("a chip that answers");
    let found = log.fetch(number).expect("a chip that answers");
    assert_eq!(found.map(|(found, test)| (found, test)), Some((number, saved)), "{number}");
});
