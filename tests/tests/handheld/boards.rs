//! Both boards, each with the real image and an erased memory.

use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use tempfile::TempDir;
use tenter_core::Repeatability;
use tenter_core::saved::SavedTest;
use tenter_firmware::log::{Log, PAGE_BYTES, Storage, StoragePage};
use tenter_tests::emulator::{self, Board as _, Pico, Qemu, pico};

static QEMU_IMAGE: LazyLock<PathBuf> = LazyLock::new(|| emulator::build_image("lm3s6965evb").unwrap());
static PICO_IMAGE: LazyLock<PathBuf> = LazyLock::new(|| emulator::build_image("pico").unwrap());

/// The emulated Cortex-M3 board.
pub fn qemu_options() -> (TempDir, emulator::Options) {
    let folder = tempfile::tempdir().unwrap();
    let eeprom = folder.path().join("eeprom");
    emulator::erase_eeprom(&eeprom).unwrap();
    (folder, emulator::Options::new(&*QEMU_IMAGE, eeprom))
}

pub fn start_qemu(options: emulator::Options) -> Qemu {
    Qemu::start(options).unwrap()
}

/// The board one can build.
pub fn pico_options() -> (TempDir, pico::Options) {
    let folder = tempfile::tempdir().unwrap();
    let eeprom = folder.path().join("eeprom");
    (folder, pico::Options::new(&*PICO_IMAGE, eeprom))
}

/// Started: its log is read, its first picture stands, and it sleeps.
pub fn start_pico(options: pico::Options) -> Pico {
    let mut board = Pico::start(options).unwrap();
    until_it_sleeps(&mut board);
    board
}

/// Waits until a board that was switched on is done with starting; in how many of its own milliseconds.
pub fn until_it_sleeps(board: &mut Pico) -> f64 {
    loop {
        let stats = board.stats().unwrap();
        if stats.asleep_ms > 0.0 {
            return stats.ms - stats.asleep_ms;
        }
        assert!(stats.ms < 60_000.0, "it does not come to rest");
        board.wait(50).unwrap();
    }
}

/// The memory behind a board, read from its file.
#[derive(Debug)]
struct File(Vec<u8>);

impl Storage for File {
    type Error = ();

    fn pages(&self) -> u16 {
        u16::try_from(self.0.len() / PAGE_BYTES).unwrap()
    }

    fn read(&mut self, page: u16, buffer: &mut StoragePage) -> Result<(), ()> {
        let start = usize::from(page) * PAGE_BYTES;
        buffer.copy_from_slice(self.0.get(start..start + PAGE_BYTES).ok_or(())?);
        Ok(())
    }

    fn write(&mut self, _: u16, _: &StoragePage) -> Result<(), ()> {
        Err(())
    }
}

/// The log in the memory behind a board.
fn log_in(eeprom: &Path) -> Log<File> {
    Log::open(File(std::fs::read(eeprom).unwrap())).unwrap()
}

/// Its owner's hand, as it is kept in the memory behind a board.
pub fn hand_in(eeprom: &Path) -> Option<Repeatability> {
    log_in(eeprom).repeatability()
}

/// Every whole test in the memory behind a board, by its number.
pub fn saved_in(eeprom: &Path) -> Vec<(u32, SavedTest)> {
    let mut log = log_in(eeprom);
    let mut found = Vec::new();
    let mut from = 1;
    while let Some((number, saved)) = log.fetch(from).unwrap() {
        from = number + 1;
        found.push((number, saved));
    }
    found
}
