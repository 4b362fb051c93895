//! Using a handheld as a person does: a key at a time, looking at the display.

use std::path::PathBuf;
use std::time::{Duration, Instant};

use tenter_firmware::ui::{Action, Screen};
use tenter_tests::emulator::{Board, HANGS, Key, Photo};
use tenter_tests::handheld::Handheld;
use tenter_tests::picture;

/// A press as a finger makes it: 80 to 150 ms (from memory).
const TAP_MS: u32 = 80;
/// A hold of the only button, surely long enough to accept and too short to go back.
const HOLD_MS: u32 = 1100;
/// A hold that surely goes back.
const BACK_MS: u32 = 2_600;
/// Time between two looks at the display.
const LOOK_MS: u32 = 30;
/// A board, and the same handheld without a board that says what the display must show.
pub struct Walk<'b, B> {
    pub board: &'b mut B,
    pub twin: Handheld,
    shots: u32,
    name: &'static str,
    /// What the board's clock said when the twin's stood at nothing.
    began: Duration,
}

impl<'b, B: Board> Walk<'b, B> {
    /// A walk that begins at home; its photographs are kept under a name.
    pub fn new(board: &'b mut B, twin: Handheld, name: &'static str) -> Self {
        let began = board.elapsed().unwrap().saturating_sub(Duration::from_millis(twin.now.into()));
        let mut walk = Self { board, twin, shots: 0, name, began };
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
    /// The board's clock went on while keys were held and pictures drawn: where seconds count, the twin follows, second by
    /// second, and never past that clock.
    fn see(&mut self) {
        let mut twins = vec![self.twin.clone()];
        let mut wanted = vec![photo_of(&self.twin)];
        let asked = Instant::now();
        let (photo, seen) = loop {
            let photo = self.board.photo().unwrap();
            let passed = (self.board.elapsed().unwrap() - self.began).as_millis();
            while !wanted.contains(&photo) && passed >= twins.last().unwrap().now.into() {
                let Some(next) = later(twins.last().unwrap()) else { break };
                wanted.push(photo_of(&next));
                twins.push(next);
            }
            if let Some(seen) = wanted.iter().position(|wanted| *wanted == photo) {
                break (photo, seen);
            }
            assert!(asked.elapsed() < HANGS, "{}: it shows\n{photo}\nwanted:\n{}", self.name, wanted[0]);
            self.board.wait(LOOK_MS).unwrap();
        };
        self.twin = twins.swap_remove(seen);
        self.shots += 1;
        photo.save(&folder(self.name).join(format!("{:02}.png", self.shots))).unwrap();
    }
}

/// A twin a second later, where its picture may differ for that.
fn later(twin: &Handheld) -> Option<Handheld> {
    let mut twin = twin.clone();
    match twin.model.screen {
        _ if twin.model.has_clock() => twin.wait(1_000),
        // The clock stood when the key was pressed.
        Screen::Recovered => {
            twin.now += 1_000;
            twin.model.rest_seconds += 1;
        }
        _ => return None,
    }
    Some(twin)
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
