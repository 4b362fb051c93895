//! Saved tests taken out again, on both boards: two cloths in one seam, and an opening that must pass over.

use std::path::Path;

use tenter_core::saved::{Clock, SavedTest};
use tenter_core::{Grain, Length, PullTest};
use tenter_firmware::log::{Log, PAGE_BYTES};
use tenter_firmware::ui::{Action, Screen};
use tenter_tests::emulator::{EEPROM_SIZE, Key};
use tenter_tests::fake_eeprom::FakeEeprom;
use tenter_tests::handheld::Handheld;

use crate::walk::Walk;
use crate::{boards, budget};

/// As many pulls and readings as a test holds, from 100 mm on.
fn test_to(extended: i16) -> PullTest {
    let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap().with_settling_pull(true);
    for _ in 0..10 {
        test.add_pull(Length::from_mm(extended)).unwrap();
        test.add_rest(60, Length::from_mm(101)).unwrap();
    }
    test
}

/// Writes a shell, tag 3, and then a stretchy side panel, tag 4, into the memory behind a board; the same handheld
/// without a board.
fn shelve(eeprom: &Path) -> Handheld {
    let pages = u16::try_from(EEPROM_SIZE / PAGE_BYTES).unwrap();
    let mut log = Log::open(FakeEeprom::erased(pages)).unwrap();
    let mut twin = Handheld::default();
    for (tag, extended) in [(3, 105), (4, 122)] {
        let test = test_to(extended);
        log.save(&SavedTest { tag, clock: Clock { uptime_s: 60, unix_s: None }, test: test.clone() }).unwrap();
        twin.saved.push((tag, test));
    }
    twin.log(true, log.room());
    std::fs::write(eeprom, log.into_storage().image.concat()).unwrap();
    twin
}

#[test]
fn with_one_button_on_the_emulated_cortex_m3_board() {
    use Action::{Accept, Step};
    let (_folder, options) = boards::qemu_options();
    let twin = shelve(&options.eeprom);
    let mut board = boards::start_qemu(options);
    let mut walk = Walk::new(&mut board, twin, "lm3s6965evb-making");
    let to_shelf = [Step, Step, Step, Step, Accept];
    // Round to the newest again; join it with the older one; the hundreds of 600 mm and the rest; what to do; done.
    let pair = [Step, Step, Accept, Accept, Accept, Step, Accept, Accept, Accept];
    for action in to_shelf.into_iter().chain(pair) {
        walk.only(action);
    }
    assert_eq!(walk.twin.model.screen, Screen::Pair);
    walk.only(Step);
    walk.only(Accept);
    // The newest, its second row; 500 mm over 600 mm.
    let reach = [Accept, Step, Accept, Accept, Accept, Accept, Step, Accept, Accept, Accept];
    for action in to_shelf.into_iter().chain(reach) {
        walk.only(action);
    }
    assert_eq!(walk.twin.model.screen, Screen::Reach);
    walk.only(Accept);
    assert_eq!(walk.twin.model.screen, Screen::Home);
    budget::assert_ram(&mut board);
}

#[test]
fn with_five_keys_on_the_board_one_can_build() {
    use Action::{Less, More, Next};
    let (_folder, options) = boards::pico_options();
    let twin = shelve(&options.eeprom);
    let mut board = boards::start_pico(options);
    let mut walk = Walk::new(&mut board, twin, "pico-making");
    let to_shelf = [(Key::More, More(1)); 4].into_iter().chain([(Key::Next, Next)]);
    // The older one and back, and it stays at the newest; join; 501 mm; what to do; done.
    let pair = [(Key::More, More(1)), (Key::Less, Less(1)), (Key::Less, Less(1)), (Key::Next, Next)];
    let pair = pair.into_iter().chain([(Key::Next, Next), (Key::Next, Next), (Key::More, More(1)), (Key::Next, Next)]);
    for (key, action) in to_shelf.clone().chain(pair) {
        walk.tap(key, action);
    }
    assert_eq!(walk.twin.model.screen, Screen::Pair);
    walk.tap(Key::More, More(1));
    walk.tap(Key::Next, Next);
    // The older one, its second row; 500 mm over 501 mm.
    let reach = [More(1), Next, More(1), Next, Next, More(1), Next];
    let reach = reach.map(|action| (if action == Next { Key::Next } else { Key::More }, action));
    for (key, action) in to_shelf.chain(reach) {
        walk.tap(key, action);
    }
    assert_eq!(walk.twin.model.screen, Screen::Reach);
    walk.tap(Key::Back, Action::Back);
    assert_eq!(walk.twin.model.screen, Screen::Body);
}
