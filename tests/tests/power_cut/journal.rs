//! The test in hand: whenever the power goes, every reading that was taken is there again.

use std::cell::RefCell;
use std::rc::Rc;

use rand::rngs::StdRng;
use rand::{Rng as _, SeedableRng as _};
use tenter_core::{Length, PullTest};
use tenter_firmware::keys::Key;
use tenter_firmware::log::{Log, PAGE_BYTES, Storage, StoragePage};
use tenter_firmware::ui::Screen;
use tenter_tests::fake_eeprom::{FakeEeprom, NoAnswer, Rest, Trouble};
use tenter_tests::pressed::Pressed;
use tenter_tests::thorough;

/// A chip that stays when the power goes.
#[derive(Clone, Debug)]
struct Soldered(Rc<RefCell<FakeEeprom>>);

impl Storage for Soldered {
    type Error = NoAnswer;

    fn pages(&self) -> u16 {
        self.0.borrow().pages()
    }

    fn read(&mut self, page: u16, buffer: &mut StoragePage) -> Result<(), NoAnswer> {
        self.0.borrow_mut().read(page, buffer)
    }

    fn write(&mut self, page: u16, bytes: &StoragePage) -> Result<(), NoAnswer> {
        self.0.borrow_mut().write(page, bytes)
    }
}

/// All tests that were saved and that the host does not have, with their numbers.
fn saved(chip: &Soldered) -> Vec<(u32, PullTest)> {
    let mut log = Log::open(chip.clone()).unwrap();
    let (mut all, mut from) = (Vec::new(), log.oldest().unwrap().unwrap_or(u32::MAX));
    while let Some((seq, saved)) = log.fetch(from).unwrap() {
        all.push((seq, saved.test));
        from = seq + 1;
    }
    all
}

/// A hand that mostly goes on, and now and then does anything else.
fn key(random: &mut StdRng) -> Key {
    match random.random_range(0..20) {
        0..=10 => Key::Next,
        11..=15 => Key::More,
        16..=17 => Key::Less,
        _ => Key::Back,
    }
}

/// Keys at random until the power goes in the middle of a write, over and over on the same chip.
#[test]
fn no_reading_is_lost_with_the_power() {
    let chip = Soldered(Rc::new(RefCell::new(FakeEeprom::erased(128))));
    let mut random = StdRng::seed_from_u64(7);
    let cuts = thorough(200, 10_000);
    let (mut resumed, mut finished, mut with_readings_back) = (0, 0, 0);
    for cut in 0..cuts {
        let mut board = Pressed::on(chip.clone());
        if board.app.model().screen == Screen::Resume {
            resumed += 1;
            board.tap(Key::Next);
        }
        let before_all = saved(&chip);
        let after = Trouble::Cut(random.random_range(0..=PAGE_BYTES), Rest::ALL[random.random_range(0..3)]);
        chip.0.borrow().trouble.set(Some((random.random_range(0..12), after)));
        let mut before = board.app.model().draft().cloned();
        let (mut presses, mut known) = (0, before_all.last().map(|(number, _)| *number));
        while !chip.0.borrow().is_dead() && presses < 400 {
            before = board.app.model().draft().cloned();
            known = known.max(board.app.model().saved);
            let pressed = key(&mut random);
            if random.random_range(0..8) == 0 {
                board.wait(61_000);
            }
            board.tap(pressed);
            presses += 1;
        }
        let shown = board.app.model().draft().cloned();
        drop(board);
        chip.0.borrow_mut().power_on();
        let now_all = saved(&chip);
        assert!(now_all.starts_with(&before_all), "cut {cut}: a saved test is gone");
        let new = &now_all[before_all.len()..];
        finished += new.len();
        let board = Pressed::on(chip.clone());
        let there = (board.app.model().screen == Screen::Resume).then(|| board.app.model().test.clone()).flatten();
        with_readings_back += usize::from(there.as_ref().is_some_and(|test| !test.rests().is_empty()));
        if presses >= 400 {
            assert_eq!(there, shown, "cut {cut}: nothing was cut");
        } else {
            // What was in hand before the last key, or after it; where the last key saved it, it is saved instead.
            // A number that no earlier key was told: the last one saved it.
            match new.last().filter(|(number, _)| Some(*number) > known) {
                Some((_, test)) => assert!(there.is_none() && before.as_ref() == Some(test), "cut {cut}: {there:?}"),
                None => assert!(there == before || there == shown, "cut {cut}: {before:?} {there:?}"),
            }
        }
        if Log::open(chip.clone()).unwrap().is_full() {
            let mut log = Log::open(chip.clone()).unwrap();
            let newest = log.next_seq() - 1;
            log.acknowledge(newest).unwrap();
        }
    }
    println!(
        "{cuts} cuts: {resumed} tests in hand were offered again, {with_readings_back} of them read back, {finished} were saved"
    );
    assert!(resumed > 50 && finished > 0 && with_readings_back > 0, "{resumed} {finished} {with_readings_back}");
}

/// What one has chosen is there again too, and a tag is not given twice.
#[test]
fn ways_and_tags_are_remembered() {
    let chip = Soldered(Rc::new(RefCell::new(FakeEeprom::erased(128))));
    let mut board = Pressed::on(chip.clone());
    board.taps(&[Key::More, Key::More, Key::Next, Key::More, Key::Next, Key::Next]); // Another grain; 250 mm.
    let (grain, gauge) = (board.app.model().grain, board.app.model().gauge);
    assert_eq!(gauge, Length::from_mm(250));
    board.taps(&[Key::Less; 3]);
    board.to_the_tag(9);
    board.tap(Key::Next);
    assert_eq!((board.app.model().screen, board.app.model().tag), (Screen::Saved, 1));
    drop(board);
    let mut board = Pressed::on(chip);
    assert_eq!(
        (board.app.model().screen, board.app.model().grain, board.app.model().gauge),
        (Screen::Home, grain, gauge)
    );
    board.to_the_tag(9);
    board.tap(Key::Next);
    assert_eq!((board.app.model().screen, board.app.model().tag), (Screen::Saved, 2));
}
