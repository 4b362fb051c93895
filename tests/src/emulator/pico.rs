//! A Raspberry Pi Pico class board in rp2040js, by `tests/emulators/pico.mjs`: everything in simulated time, so fast
//! and the same each time. Needs node and what `tests/install` fetches.

use super::{Board, Key, Photo};
use serde::Deserialize;
use serde_json::{Value, json};
use std::{
    io::{self, BufRead, BufReader, Lines, Write},
    path::{Path, PathBuf},
    process::{Child, ChildStdin, ChildStdout, Command, Stdio},
    time::Duration,
};

/// What to start and how.
#[derive(Clone, Debug)]
pub struct Options {
    /// The ELF file.
    pub image: PathBuf,
    /// The file behind the memory for the log; made erased when it is not there.
    pub eeprom: PathBuf,
    /// Cut the power when so many data bytes more have reached the memory; of a page only these are written. Holds for
    /// the first start.
    pub cut_after_bytes: Option<u64>,
    /// Leave the display off the bus.
    pub without_display: bool,
    /// Leave the memory off the bus.
    pub without_eeprom: bool,
}

impl Options {
    pub fn new(image: impl Into<PathBuf>, eeprom: impl Into<PathBuf>) -> Self {
        Self {
            image: image.into(),
            eeprom: eeprom.into(),
            cut_after_bytes: None,
            without_display: false,
            without_eeprom: false,
        }
    }
}

/// What the emulator has counted since the board was switched on.
#[derive(Clone, Debug, Deserialize)]
pub struct Stats {
    /// Simulated time.
    pub ms: f64,
    /// How much of it the processor slept.
    pub asleep_ms: f64,
    /// How often its sleep was ended.
    pub wakes: u64,
    pub instructions: u64,
    /// The processor's clock as the firmware has set it.
    pub clock_hz: f64,
    /// The line's speed as the firmware has set it.
    pub baud: f64,
    /// Bytes lost on the line since a FIFO was full or the line closed.
    pub line_lost: u64,
    /// Data bytes that the memory has taken.
    pub eeprom_bytes: u64,
    /// Write cycles.
    pub eeprom_writes: u64,
    /// Starts not acknowledged since a write cycle ran.
    pub eeprom_refused: u64,
    pub display_bytes: u64,
    /// The deepest stack so far.
    pub stack_bytes: u64,
    /// What the firmware did that the emulator does not know.
    pub notes: Vec<String>,
}

/// A board in the emulator. Dropping it ends the process; so does the end of this one, which closes its standard input.
#[derive(Debug)]
pub struct Pico {
    options: Options,
    running: Option<Running>,
}

#[derive(Debug)]
struct Running {
    child: Child,
    requests: ChildStdin,
    answers: Lines<BufReader<ChildStdout>>,
}

impl Pico {
    pub fn start(options: Options) -> io::Result<Self> {
        let mut pico = Self { options, running: None };
        pico.power_on()?;
        Ok(pico)
    }

    /// False after a power cut, be it asked for or after the bytes of `cut_after_bytes`.
    pub fn has_power(&self) -> bool {
        self.running.is_some()
    }

    pub fn stats(&mut self) -> io::Result<Stats> {
        Ok(serde_json::from_value(self.ask(json!({"do": "stats"}))?)?)
    }

    /// Cut the power when so many data bytes more have reached the memory.
    pub fn cut_after_bytes(&mut self, count: Option<u64>) -> io::Result<()> {
        self.ask(json!({"do": "cut", "after_bytes": count})).map(drop)
    }

    /// Resets the display alone, as a loose wire would; or lets it answer nothing, or answer again.
    pub fn display(&mut self, reset: bool, deaf: bool) -> io::Result<()> {
        self.ask(json!({"do": "display", "reset": reset, "deaf": deaf})).map(drop)
    }

    /// A transfer on the I2C bus from outside, which takes no time: what was read, or `None` if it was refused.
    pub fn i2c(&mut self, address: u8, write: &[u8], read: usize) -> io::Result<Option<Vec<u8>>> {
        let answer = self.ask(json!({"do": "i2c", "address": address, "write": to_hex(write), "read": read}))?;
        Ok(if answer["ack"] == true { Some(from_hex(&answer["hex"])?) } else { None })
    }

    fn key(&mut self, key: Key, down: bool) -> io::Result<()> {
        let key = match key {
            Key::Less => "less",
            Key::More => "more",
            Key::Next => "next",
            Key::Back => "back",
            Key::Select => "select",
        };
        self.ask(json!({"do": "key", "key": key, "down": down})).map(drop)
    }

    fn ask(&mut self, request: Value) -> io::Result<Value> {
        let no_power = || io::Error::new(io::ErrorKind::NotConnected, "the board has no power");
        let running = self.running.as_mut().ok_or_else(no_power)?;
        writeln!(running.requests, "{request}")?;
        let answer = running.answer()?;
        match answer["stopped"].as_str() {
            Some("cut") => self.running = None,
            Some(other) => return Err(io::Error::other(format!("the processor stopped: {other}"))),
            None => {}
        }
        Ok(answer)
    }
}

impl Board for Pico {
    fn press(&mut self, key: Key) -> io::Result<()> {
        self.key(key, true)
    }

    fn release(&mut self, key: Key) -> io::Result<()> {
        self.key(key, false)
    }

    /// Ends early, and well, when the power is cut on the way.
    fn wait(&mut self, ms: u32) -> io::Result<()> {
        self.ask(json!({"do": "run", "ms": ms})).map(drop)
    }

    fn elapsed(&mut self) -> io::Result<Duration> {
        Ok(Duration::from_secs_f64(self.stats()?.ms / 1000.0))
    }

    fn photo(&mut self) -> io::Result<Photo> {
        let answer = self.ask(json!({"do": "photo"}))?;
        Ok(Photo::from_pages(&from_hex(&answer["photo"])?))
    }

    /// Puts the bytes on the line; they arrive one by one as time passes.
    fn send(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.ask(json!({"do": "send", "hex": to_hex(bytes)})).map(drop)
    }

    fn receive(&mut self, timeout_ms: u32) -> io::Result<Vec<u8>> {
        from_hex(&self.ask(json!({"do": "received", "ms": timeout_ms}))?["hex"])
    }

    fn power_cut(&mut self) -> io::Result<()> {
        self.running = None;
        Ok(())
    }

    fn power_on(&mut self) -> io::Result<()> {
        self.running = None;
        self.running = Some(Running::start(&mut self.options)?);
        Ok(())
    }
}

impl Running {
    fn start(options: &mut Options) -> io::Result<Self> {
        let manifest = Path::new(env!("CARGO_MANIFEST_DIR"));
        let program = manifest.join("emulators/pico.mjs");
        let mut command = Command::new("node");
        command.arg(program).arg("--modules").arg(manifest.join("../target/rp2040js"));
        command.arg("--image").arg(&options.image).arg("--eeprom").arg(&options.eeprom);
        if let Some(count) = options.cut_after_bytes.take() {
            command.arg("--cut-after-bytes").arg(count.to_string());
        }
        let absent = [(options.without_display, "display"), (options.without_eeprom, "eeprom")];
        let absent: Vec<&str> = absent.into_iter().filter(|(absent, _)| *absent).map(|(_, name)| name).collect();
        command.arg(format!("--without={}", absent.join(",")));
        let mut child = command.stdin(Stdio::piped()).stdout(Stdio::piped()).spawn()?;
        let (Some(requests), Some(answers)) = (child.stdin.take(), child.stdout.take()) else {
            return Err(io::Error::other("no pipes to node"));
        };
        let mut running = Self { child, requests, answers: BufReader::new(answers).lines() };
        running.answer()?;
        Ok(running)
    }

    fn answer(&mut self) -> io::Result<Value> {
        let line = self.answers.next().ok_or(io::ErrorKind::UnexpectedEof)??;
        let answer: Value = serde_json::from_str(&line)?;
        match answer["error"].as_str() {
            Some(error) => Err(io::Error::other(error.to_owned())),
            None => Ok(answer),
        }
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn to_hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

fn from_hex(text: &Value) -> io::Result<Vec<u8>> {
    let invalid = || io::Error::new(io::ErrorKind::InvalidData, format!("not hex: {text}"));
    let digits = text.as_str().ok_or_else(invalid)?.as_bytes();
    let pair = |pair: &[u8]| u8::from_str_radix(std::str::from_utf8(pair).ok()?, 16).ok();
    digits.chunks(2).map(|digits| pair(digits).ok_or_else(invalid)).collect()
}
