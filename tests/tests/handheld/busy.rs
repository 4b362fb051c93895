//! A machine with too much to do, which lets the emulator wait at any moment: no key is lost, none is another.

use std::sync::atomic::{AtomicBool, Ordering::Relaxed};
use std::thread;
use std::time::Duration;

use rand::rngs::StdRng;
use rand::{Rng as _, SeedableRng as _};
use tenter_firmware::ui::{Action, Screen};
use tenter_tests::emulator::{Board as _, Key, Stopper};
use tenter_tests::handheld::Handheld;
use tenter_tests::thorough;

use crate::boards;
use crate::walk::{Walk, as_text, golden};
use crate::whole_test::ROOM;

/// Lets an emulator stand still over and over, until it is told to end.
fn hinder(stopper: Stopper, seed: u64, end: &AtomicBool) {
    let mut random = StdRng::seed_from_u64(seed);
    while !end.load(Relaxed) {
        thread::sleep(Duration::from_millis(random.random_range(0..150)));
        // The last may fall after the emulator's end.
        let _ = stopper.stop_for(Duration::from_millis(random.random_range(60..300)));
    }
}

/// A pull and its growth, whose clock draws between the keys; then the same kind of walk by the only button.
#[test]
fn keys_count_however_often_the_emulator_must_wait() {
    use Action::{Accept, Back, Less, More, Next, Step};
    for round in 0..thorough(1, 20) {
        let (_folder, options) = boards::qemu_options();
        let mut board = boards::start_qemu(options);
        let (stopper, end) = (board.stopper().unwrap(), AtomicBool::new(false));
        thread::scope(|scope| {
            scope.spawn(|| hinder(stopper, round, &end));
            let walked = scope.spawn(|| {
                board.wait_for_photo(&mut |photo| as_text(photo) == golden("home")).unwrap();
                let mut twin = Handheld::default();
                twin.log(true, ROOM);
                let mut walk = Walk::new(&mut board, twin, "lm3s6965evb-busy");
                for _ in 0..3 {
                    walk.tap(Key::Next, Next); // Measure, settled, let go.
                }
                walk.tap(Key::More, More(1));
                walk.tap(Key::More, More(1));
                walk.tap(Key::Less, Less(1)); // 100.5 mm.
                walk.tap(Key::Next, Next); // Take it.
                walk.tap(Key::Back, Back); // The list.
                walk.tap(Key::More, More(1));
                walk.tap(Key::More, More(1));
                walk.tap(Key::Next, Next); // Read it back.
                walk.wait(2_300);
                walk.tap(Key::Next, Next);
                assert_eq!(walk.twin.model.screen, Screen::Recovered);
                for action in [Accept, Accept] {
                    walk.only(action);
                }
                for action in [Step, Step, Accept] {
                    walk.only(action);
                }
            });
            let walked = walked.join();
            end.store(true, Relaxed);
            walked.unwrap();
        });
    }
}
