//! The whole program of the handheld on a board of wishes: its keys are pressed, its display takes everything, its memory
//! is given.

use std::convert::Infallible;

use tenter_firmware::app::App;
use tenter_firmware::frame::Page;
use tenter_firmware::keys::Key;
use tenter_firmware::log::Storage;
use tenter_firmware::panel::Panel;

/// A display that shows everything.
#[derive(Debug)]
pub struct AnyPanel;

impl Panel for AnyPanel {
    type Error = Infallible;

    fn start(&mut self) -> Result<(), Infallible> {
        Ok(())
    }

    fn show(&mut self, _: u8, _: &Page) -> Result<(), Infallible> {
        Ok(())
    }
}

/// The program, and milliseconds since it was switched on.
#[derive(Debug)]
pub struct Pressed<S: Storage> {
    /// The program.
    pub app: App<AnyPanel, S>,
    now: u32,
}

impl<S: Storage> Pressed<S> {
    /// Switched on, with all keys seen up.
    pub fn on(storage: S) -> Self {
        let mut app = App::new(AnyPanel, storage);
        app.start();
        let mut pressed = Self { app, now: 0 };
        pressed.levels([false; 5], 50);
        pressed
    }

    fn levels(&mut self, levels: [bool; 5], ms: u32) {
        self.app.step(levels, self.now);
        self.now += ms;
        self.app.step(levels, self.now);
    }

    /// Taps a key.
    pub fn tap(&mut self, key: Key) {
        self.levels(Key::ALL.map(|other| other == key), 50);
        self.levels([false; 5], 50);
    }

    /// Taps several, one after the other.
    pub fn taps(&mut self, keys: &[Key]) {
        for key in keys {
            self.tap(*key);
        }
    }

    /// Lets time pass.
    pub fn wait(&mut self, ms: u32) {
        self.levels([false; 5], ms);
    }

    /// From home to the dial of the tag: one pull of so many half millimetres.
    pub fn to_the_tag(&mut self, above: usize) {
        use Key::{Back, More, Next};
        self.taps(&[Next, Next, Next]); // Measure, settled, let go.
        self.taps(&vec![More; above]);
        self.taps(&[Next, Back, More, Next, Next]); // Take it; no more pulls; the answer; its tag.
    }
}
