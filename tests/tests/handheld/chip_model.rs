//! The model of the memory chip that the second board's emulator carries, against its data sheet.

use std::fs;

use tenter_tests::emulator::{Board as _, EEPROM_SIZE};

use crate::boards;

const EEPROM: u8 = 0x50;

/// Microchip's data sheet of the AT24C128C/AT24C256C, § 7.2: "the lower six bits of the word address are internally
/// incremented [...] When the incremented word address reaches the page boundary, the address counter will roll over to
/// the beginning of the same page"; § 7.3: no acknowledge while the write cycle runs. 5 ms is its longest write cycle and
/// reads roll over at the end of the memory (§ 8), both from memory.
#[test]
fn the_model_of_the_memory_behaves_as_the_data_sheet_says() {
    let (_folder, options) = boards::pico_options();
    let eeprom = options.eeprom.clone();
    let mut board = boards::start_pico(options);

    // Eight bytes from the fourth last of page 65 on: four of them come round to its beginning.
    assert!(board.i2c(EEPROM, &[0x10, 0x7C, 1, 2, 3, 4, 5, 6, 7, 8], 0).unwrap().is_some());
    let file = fs::read(&eeprom).unwrap();
    assert_eq!(file[0x107C..0x1084], [1, 2, 3, 4, 0xFF, 0xFF, 0xFF, 0xFF]);
    assert_eq!(file[0x1040..0x1045], [5, 6, 7, 8, 0xFF]);

    // It answers to nothing for the write cycle, then again.
    assert_eq!(board.i2c(EEPROM, &[0x10, 0x7C], 1).unwrap(), None);
    board.wait(4).unwrap();
    assert_eq!(board.i2c(EEPROM, &[0x10, 0x7C], 1).unwrap(), None);
    board.wait(2).unwrap();
    assert_eq!(board.i2c(EEPROM, &[0x10, 0x7C], 5).unwrap(), Some(vec![1, 2, 3, 4, 0xFF]));

    // 66 bytes from the start of page 66 on: the last two replace the first two.
    let long: Vec<u8> = [0x10, 0x80].into_iter().chain(1..=66).collect();
    assert!(board.i2c(EEPROM, &long, 0).unwrap().is_some());
    assert_eq!(fs::read(&eeprom).unwrap()[0x1080..0x1083], [65, 66, 3]);
    board.wait(6).unwrap();

    // A read runs over the end of the memory to its beginning, and the next one goes on from there.
    assert!(board.i2c(EEPROM, &[0x00, 0x00, 0x11, 0x22], 0).unwrap().is_some());
    board.wait(6).unwrap();
    assert_eq!(board.i2c(EEPROM, &[0x7F, 0xFF], 2).unwrap(), Some(vec![0xFF, 0x11]));
    assert_eq!(board.i2c(EEPROM, &[], 1).unwrap(), Some(vec![0x22]));
    // Nobody else answers.
    assert_eq!(board.i2c(0x51, &[0x00, 0x00], 1).unwrap(), None);
    assert_eq!(fs::read(&eeprom).unwrap().len(), EEPROM_SIZE);
}
