//! Saved tests taken out again, on both boards: two cloths in one seam, and an opening that must pass over.

use std::path::Path;

use tenter_core::making::pairing::Match;
use tenter_core::saved::{Clock, SavedTest};
use tenter_core::{Answer, Grain, Length, PullTest};
use tenter_firmware::log::{Log, PAGE_BYTES};
use tenter_firmware::ui::{Action, Screen};
use tenter_tests::emulator::{Board, EEPROM_SIZE, Key};
use tenter_tests::fake_eeprom::FakeEeprom;
use tenter_tests::handheld::Handheld;

use crate::walk::Walk;
use crate::whole_test::ROOM;
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

/// Writes a shell, tag 3, and then a stretchy hem facing, tag 4, into the memory behind a board; the same handheld
/// without a board.
fn shelve(eeprom: &Path) -> Handheld {
    let pages = u16::try_from(EEPROM_SIZE / PAGE_BYTES).unwrap();
    let mut log = Log::open(FakeEeprom::erased(pages)).unwrap();
    let mut twin = Handheld::default();
    for (tag, extended) in [(3, 105), (4, 122)] {
        let test = test_to(extended);
        log.save(&SavedTest::new(tag, Clock { uptime_s: 60, unix_s: None }, test.clone())).unwrap();
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
    println!("pico: deepest stack {} bytes", board.stats().unwrap().stack_bytes);
}

/// Measures by one button: 100 mm to so many tens of millimetres and ones more, back at 101 mm; saved under the next tag.
fn measure_and_save<B: Board>(walk: &mut Walk<'_, B>, tens: usize, ones: usize) {
    use Action::{Accept, Back, Step};
    let script = [
        vec![Accept, Accept, Step], // Measure, settled, let go.
        vec![Step; tens],
        vec![Accept],
        vec![Step; ones],
        vec![Accept; 2],                        // That, and no half millimetre.
        vec![Back, Step, Step, Accept, Accept], // The list; read it back.
        vec![Step, Accept, Accept],             // 101.0 mm.
        vec![Step, Accept, Accept],             // The answer, its tag.
        vec![Accept, Accept, Accept, Accept],   // Saved, and home.
    ];
    for action in script.concat() {
        walk.only(action);
    }
    assert_eq!(walk.twin.model.screen, Screen::Home);
}

/// Measures a shell and a hem facing, saves both, pairs them in 500 mm of seam, and asks whether 500 mm of the panel pass
/// over 500 mm: all of it by hand.
fn from_swatch_to_answer<B: Board>(board: &mut B, eeprom: &Path, name: &'static str, one_button: bool) {
    let mut twin = Handheld::default();
    twin.log(true, ROOM);
    let mut walk = Walk::new(board, twin, name);
    measure_and_save(&mut walk, 0, 5);
    // Each takes one page of the two that are kept for it.
    walk.twin.log(true, ROOM);
    measure_and_save(&mut walk, 2, 2);
    // A length takes one key, or a hold for each of its three digits.
    let length = if one_button { 3 } else { 1 };
    let keys = |walk: &mut Walk<'_, B>, downs: usize, nexts: usize| {
        for (times, step, key, action) in
            [(downs, Action::Step, Key::More, Action::More(1)), (nexts, Action::Accept, Key::Next, Action::Next)]
        {
            (0..times).for_each(|_| if one_button { walk.only(step) } else { walk.tap(key, action) });
        }
    };
    keys(&mut walk, 4, 1); // The newest.
    keys(&mut walk, 0, 3 + length); // Join it with the one before it, in 500 mm.
    assert_eq!(walk.twin.model.screen, Screen::Pair);
    // 22 % and 5 % are 17 points apart.
    assert_eq!(walk.twin.model.making.pair().map(|pair| pair.answer), Some(Match::Handle));
    keys(&mut walk, 1, 1); // What to do; done.
    keys(&mut walk, 4, 2); // The newest again.
    keys(&mut walk, 1, 1 + 2 * length); // Its second row; as wide as what passes.
    assert_eq!(walk.twin.model.screen, Screen::Reach);
    assert_eq!(walk.twin.model.making.reach().map(|reach| reach.answer), Some(Answer::Meets));
    keys(&mut walk, 0, 1);
    let twin = walk.twin;
    assert_eq!(twin.model.screen, Screen::Home);
    let saved = boards::saved_in(eeprom).into_iter().map(|(_, saved)| (saved.tag, saved.test));
    assert_eq!(saved.collect::<Vec<_>>(), twin.saved);
}

#[test]
fn from_swatch_to_answer_on_the_emulated_cortex_m3_board() {
    let (_folder, options) = boards::qemu_options();
    let eeprom = options.eeprom.clone();
    from_swatch_to_answer(&mut boards::start_qemu(options), &eeprom, "lm3s6965evb-swatch-to-answer", false);
}

#[test]
fn from_swatch_to_answer_on_the_board_one_can_build() {
    let (_folder, options) = boards::pico_options();
    let eeprom = options.eeprom.clone();
    from_swatch_to_answer(&mut boards::start_pico(options), &eeprom, "pico-swatch-to-answer", true);
}
