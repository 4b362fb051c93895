//! Boards in emulators: their keys pressed, their display photographed, their line spoken on, their power cut.

pub mod line;
pub mod photo;
pub mod pico;
pub mod qemu;
mod qmp;
pub mod transport;

pub use line::Line;
pub use photo::Photo;
pub use pico::Pico;
pub use qemu::{Options, Qemu, SerialVia, Stopper};
pub use transport::BoardLine;

use std::{
    io,
    path::{Path, PathBuf},
    process::{Command, Stdio},
    time::{Duration, Instant},
};

/// Ends a wait for what never comes. No machine is so busy that it takes that long.
pub const HANGS: Duration = Duration::from_secs(300);

/// Bytes of the memory for the log, a 24C256.
pub const EEPROM_SIZE: usize = 32 * 1024;

/// A key of the device.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Key {
    Less,
    More,
    Next,
    Back,
    Select,
}

impl Key {
    pub const ALL: [Key; 5] = [Key::Less, Key::More, Key::Next, Key::Back, Key::Select];
}

/// A board under test, whatever emulates it.
pub trait Board {
    fn press(&mut self, key: Key) -> io::Result<()>;

    fn release(&mut self, key: Key) -> io::Result<()>;

    /// Lets the board run this long by its own clock.
    fn wait(&mut self, ms: u32) -> io::Result<()>;

    /// Time since power-on by the board's own clock; the board may be so far and no further.
    fn elapsed(&mut self) -> io::Result<Duration>;

    /// What the display shows now.
    fn photo(&mut self) -> io::Result<Photo>;

    /// Sends on the line.
    fn send(&mut self, bytes: &[u8]) -> io::Result<()>;

    /// What has come on the line; waits for the first byte, and gives nothing if none comes in time.
    fn receive(&mut self, timeout_ms: u32) -> io::Result<Vec<u8>>;

    /// Cuts the power between two instructions. Only the memory for the log keeps what it holds.
    fn power_cut(&mut self) -> io::Result<()>;

    /// Starts the board again, all keys released.
    fn power_on(&mut self) -> io::Result<()>;

    /// Presses a key for this long, by the board's own clock, and lets it be up for at least as long before the next.
    fn tap(&mut self, key: Key, ms: u32) -> io::Result<()> {
        self.press(key)?;
        self.wait(ms)?;
        self.release(key)?;
        self.wait(ms)
    }

    /// The first photo that is as wanted. The error shows the last one that was not, when nobody would wait any longer.
    fn wait_for_photo(&mut self, wanted: &mut dyn FnMut(&Photo) -> bool) -> io::Result<Photo> {
        const STEP_MS: u32 = 30;
        let began = Instant::now();
        loop {
            let photo = self.photo()?;
            if wanted(&photo) {
                return Ok(photo);
            }
            if began.elapsed() > HANGS {
                return Err(io::Error::new(io::ErrorKind::TimedOut, format!("the picture does not come:\n{photo}")));
            }
            self.wait(STEP_MS)?;
        }
    }
}

/// Builds a board's image by `firmware/build` and says where it is.
pub fn build_image(board: &str) -> io::Result<PathBuf> {
    build(board)?.lines().next().map(PathBuf::from).ok_or_else(|| io::Error::other("no path"))
}

/// Text, data and bss of a board's image, in bytes.
pub fn image_sizes(board: &str) -> io::Result<(u32, u32, u32)> {
    let said = build(board)?;
    let sizes: Vec<u32> =
        said.lines().nth(1).into_iter().flat_map(str::split_whitespace).flat_map(str::parse).collect();
    match sizes[..] {
        [text, data, bss] => Ok((text, data, bss)),
        _ => Err(io::Error::other(format!("firmware/build {board} said {said}"))),
    }
}

fn build(board: &str) -> io::Result<String> {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("../firmware/build");
    let mut command = Command::new(script);
    // Of the test's own compiler; another one may have to run here.
    command.arg(board).env_remove("LD_LIBRARY_PATH").stderr(Stdio::piped());
    let output = command.output()?;
    if output.status.success() {
        return Ok(String::from_utf8_lossy(&output.stdout).into_owned());
    }
    Err(io::Error::other(format!("firmware/build {board}: {}", String::from_utf8_lossy(&output.stderr))))
}

/// Makes the file behind an erased memory for the log.
pub fn erase_eeprom(path: &Path) -> io::Result<()> {
    std::fs::write(path, vec![0xFF; EEPROM_SIZE])
}
