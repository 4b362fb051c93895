//! Using a handheld as a person does: a key at a time, looking at the display.

use std::path::PathBuf;
use std::time::Instant;

use tenter_firmware::ui::{Action, Screen};
use tenter_tests::emulator::{Board, Key, Photo};
use tenter_tests::handheld::Handheld;
use tenter_tests::picture;

/// A press as a finger makes it: 80 to 150 ms (from memory).
const TAP_MS: u32 = 80;
/// A hold of the only button, surely long enough to accept and too short to go back.
const HOLD_MS: u32 = 1100;
/// A hold that surely goes back.
const BACK_MS: u32 = 2_600;
/// Seconds by which a board may be ahead at once: taps take some of its time, and it counts whole ones.
const AHEAD: u64 = 12;

/// A board, and the same handheld without a board that says what the display must show.
pub struct Walk<'b, B> {
    pub board: &'b mut B,
    pub twin: Handheld,
    shots: u32,
    name: &'static str,
    /// When the twin last did something.
    acted: Instant,
}

impl<'b, B: Board> Walk<'b, B> {
    /// A walk that begins at home; its photographs are kept under a name.
    pub fn new(board: &'b mut B, twin: Handheld, name: &'static str) -> Self {
        let mut walk = Self { board, twin, shots: 0, name, acted: Instant::now() };
        walk.see();
        walk
    }

    /// Taps a key, does the same to the twin, and compares the pictures.
    pub fn tap(&mut self, key: Key, action: Action) {
        self.board.tap(key, TAP_MS).unwrap();
        self.act(action);
    }

    /// Taps or holds the only button.
    pub fn only(&mut self, action: Action) {
        let press = match action {
            Action::Step => TAP_MS,
            Action::Back => BACK_MS,
            _ => HOLD_MS,
        };
        self.board.tap(Key::Select, press).unwrap();
        self.act(action);
    }

    fn act(&mut self, action: Action) {
        self.twin.act(action);
        self.acted = Instant::now();
        self.see();
    }

    /// Lets time pass on both sides.
    pub fn wait(&mut self, ms: u32) {
        self.board.wait(ms).unwrap();
        self.twin.wait(ms);
        self.see();
    }

    /// Waits until the display shows what the twin shows, and keeps the photograph.
    ///
    /// Where seconds count, an emulator that goes by the clock on the wall may be ahead by those that have passed there:
    /// then the twin follows.
    fn see(&mut self) {
        let (twin, acted) = (self.twin.clone(), self.acted);
        let mut twins = vec![twin.clone()];
        let mut wanted = vec![photo_of(&twin)];
        let mut seen = None;
        let photo = self.board.wait_for_photo(&mut |photo| {
            while twins.len() as u64 <= acted.elapsed().as_secs() + AHEAD {
                let next = later(&twin, twins.len() as u32);
                wanted.push(photo_of(&next));
                twins.push(next);
            }
            seen = wanted.iter().position(|wanted| wanted == photo);
            seen.is_some()
        });
        let photo = photo.unwrap_or_else(|error| panic!("{}: {error}\nwanted:\n{}", self.name, wanted[0]));
        self.twin = twins[seen.unwrap()].clone();
        self.shots += 1;
        photo.save(&folder(self.name).join(format!("{:02}.png", self.shots))).unwrap();
    }
}

/// A twin some seconds later.
fn later(twin: &Handheld, seconds: u32) -> Handheld {
    let mut twin = twin.clone();
    if twin.model.has_clock() {
        twin.wait(1_000 * seconds);
    } else if twin.model.screen == Screen::Recovered {
        twin.model.rest_seconds += seconds;
    }
    twin
}

/// What a board's display shows when the twin shows its picture.
pub fn photo_of(twin: &Handheld) -> Photo {
    let frame = twin.frame();
    Photo::from_fn(|x, y| u8::from(frame.is_lit(x, y)) * 255)
}

/// Where photographs go for people to look at.
pub fn folder(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("photographs").join(name);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// A golden picture by name.
pub fn golden(name: &str) -> String {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("golden/screens").join(name).with_extension("txt");
    std::fs::read_to_string(path).unwrap()
}

/// A photograph as the goldens are written.
pub fn as_text(photo: &Photo) -> String {
    picture::text_of(|x, y| photo.lit(x, y))
}
