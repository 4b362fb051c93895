//! The board lm3s6965evb in QEMU 7.2 or later.
//!
//! The board's clock goes by the instructions it has run (`-icount`), and while it sleeps with the clock on the wall: it may
//! sleep longer than it meant to on a busy machine, and never misses what happens while it is awake.

use super::{
    Board, EEPROM_SIZE, HANGS, Key, Line, Photo,
    qmp::{Qmp, Wires},
};
use serde_json::{Value, json};
use std::{
    fs::{self, File},
    io::{self, Write},
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    thread,
    time::{Duration, Instant},
};
use tempfile::TempDir;

/// Who speaks on the board's line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SerialVia {
    /// The driver itself, through `send` and `receive`.
    Driver,
    /// Another program, over the socket that `serial_path` names.
    Socket,
    /// Another program, over the pseudo-terminal that `serial_path` names.
    Pty,
}

/// What to start and how.
#[derive(Clone, Debug)]
pub struct Options {
    pub image: PathBuf,
    /// The file behind the memory for the log, `EEPROM_SIZE` bytes.
    pub eeprom: PathBuf,
    /// An instruction takes 2ⁿ ns of the board's time, so that counts of instructions repeat exactly.
    pub icount: u8,
    /// Let the file keep the first so many writes of the board and no later one, unknown to the board.
    pub freeze_after_writes: Option<u32>,
    pub serial_via: SerialVia,
    /// Leave the model's flaw that every key reads pressed after reset until it was pressed and released once.
    pub keys_pressed_at_start: bool,
}

impl Options {
    pub fn new(image: impl Into<PathBuf>, eeprom: impl Into<PathBuf>) -> Self {
        Self {
            image: image.into(),
            eeprom: eeprom.into(),
            icount: 6,
            freeze_after_writes: None,
            serial_via: SerialVia::Driver,
            keys_pressed_at_start: false,
        }
    }
}

/// A board in QEMU. Dropping it ends the process, and so does the end of the thread that started it.
#[derive(Debug)]
pub struct Qemu {
    options: Options,
    folder: TempDir,
    running: Option<Running>,
}

#[derive(Debug)]
struct Running {
    child: Guard,
    qmp: Qmp,
    line: Option<Line>,
    serial_path: PathBuf,
    began: Instant,
}

impl Qemu {
    pub fn start(options: Options) -> io::Result<Self> {
        // A short path: the names of sockets end at 108 bytes.
        let folder = tempfile::Builder::new().prefix("qemu").tempdir()?;
        let mut qemu = Self { options, folder, running: None };
        qemu.power_on()?;
        Ok(qemu)
    }

    /// Where another program finds the line. A `Line` can be opened on it.
    pub fn serial_path(&mut self) -> io::Result<PathBuf> {
        Ok(self.running()?.serial_path.clone())
    }

    /// Instructions since start. Exact while the processor sleeps.
    pub fn instructions(&mut self) -> io::Result<u64> {
        let replay = self.running()?.qmp.run("query-replay", json!({}))?;
        replay["icount"].as_u64().ok_or_else(|| io::Error::other(format!("query-replay: {replay}")))
    }

    /// Processor time the emulator has used, in steps of 10 ms: next to none while the board sleeps.
    pub fn cpu_time(&mut self) -> io::Result<Duration> {
        let text = fs::read_to_string(format!("/proc/{}/stat", self.running()?.child.0.id()))?;
        // proc(5): fields 14 and 15 are user and system time in ticks. The name, field 2, may hold spaces.
        let after_name = text.rsplit(')').next().unwrap_or_default();
        let ticks = |field: usize| {
            let parsed = after_name.split_whitespace().nth(field - 3).and_then(|field| field.parse::<u64>().ok());
            parsed.ok_or_else(|| io::Error::other(format!("not as proc(5) says: {text}")))
        };
        Ok(Duration::from_millis((ticks(14)? + ticks(15)?) * 10))
    }

    /// The board's memory from an address on.
    pub fn memory(&mut self, address: u32, size: u32) -> io::Result<Vec<u8>> {
        let path = self.folder.path().join("memory");
        self.running()?.qmp.run("pmemsave", json!({"val": address, "size": size, "filename": path}))?;
        fs::read(path)
    }

    /// What QEMU itself has said, such as commands that the display does not know. The remark of every start is left out.
    pub fn complaints(&self) -> io::Result<String> {
        let text = fs::read_to_string(self.folder.path().join("stderr"))?;
        Ok(text.lines().filter(|line| !line.contains("period zero")).map(|line| format!("{line}\n")).collect())
    }

    /// Takes the processor away from the emulator for a while, as a busy machine does: it stands still between two of its own
    /// instructions and knows nothing of it, while the clock on the wall goes on.
    pub fn stopper(&mut self) -> io::Result<Stopper> {
        Ok(Stopper(self.running()?.child.0.id()))
    }

    /// Lets the board stand still for good.
    pub fn stop(&mut self) -> io::Result<()> {
        self.running()?.qmp.run("stop", json!({})).map(drop)
    }

    /// Ends QEMU at once by SIGKILL.
    pub fn kill(&mut self) {
        self.running = None;
    }

    fn running(&mut self) -> io::Result<&mut Running> {
        self.running.as_mut().ok_or_else(|| io::Error::new(io::ErrorKind::NotConnected, "the board is off"))
    }

    fn line(&mut self) -> io::Result<&mut Line> {
        let line = self.running()?.line.as_mut();
        line.ok_or_else(|| io::Error::new(io::ErrorKind::ResourceBusy, "the line was left to another program"))
    }

    fn key(&mut self, key: Key, down: bool) -> io::Result<()> {
        let event = json!({"type": "key", "data": {"down": down, "key": qcode(key)}});
        self.running()?.qmp.run("input-send-event", json!({"events": [event]})).map(drop)
    }

    /// The command line. The machine starts halted, so that keys and line are in order before the first instruction.
    fn command(&self) -> io::Result<Command> {
        let path = |name| self.folder.path().join(name);
        let server = |name| format!("unix:{},server=on,wait=off", path(name).display());
        // Asks the kernel to end QEMU with the thread that started it, even if that is killed.
        let mut command = Command::new("setpriv");
        command.args(["--pdeathsig", "KILL", "qemu-system-arm", "-M", "lm3s6965evb", "-display", "none"]);
        command.args(["-monitor", "none", "-S", "-qmp", &server("qmp"), "-qtest", &server("qtest")]);
        command.args(["-qtest-log", "/dev/null", "-serial"]);
        match self.options.serial_via {
            SerialVia::Pty => command.arg("pty"),
            _ => command.arg(server("line")),
        };
        command.args(["-serial", "null"]);
        command.arg("-blockdev").arg(self.store().to_string());
        command.arg("-device").arg(format!("at24c-eeprom,bus=i2c,address=0x50,rom-size={EEPROM_SIZE},drive=ee"));
        command.arg("-icount").arg(format!("shift={}", self.options.icount));
        command.arg("-kernel").arg(&self.options.image);
        command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(File::create(path("stderr"))?);
        Ok(command)
    }

    /// The file behind the memory. QEMU writes all of it at the end of each write transaction, in one call, so the
    /// n-th call is the board's n-th write.
    fn store(&self) -> Value {
        let file = json!({"driver": "file", "filename": self.options.eeprom});
        match self.options.freeze_after_writes {
            None => json!({"driver": "raw", "node-name": "ee", "file": file}),
            Some(kept) => {
                let count = |n| json!({"event": "pwritev", "state": n, "new_state": n + 1});
                let refuse = json!({"event": "pwritev", "state": kept + 1, "iotype": "write", "errno": 5,
                                    "once": false, "immediately": true});
                let mut store =
                    json!({"driver": "blkdebug", "node-name": "ee", "image": file, "inject-error": [refuse]});
                if kept > 0 {
                    store["set-state"] = (1..=kept).map(count).collect(); // QEMU refuses an empty list
                }
                store
            }
        }
    }

    /// Opens a socket as soon as QEMU has made it.
    fn connect<T>(&self, child: &mut Guard, open: impl Fn(&Path) -> io::Result<T>, name: &str) -> io::Result<T> {
        let began = Instant::now();
        loop {
            match open(&self.folder.path().join(name)) {
                Ok(open) => return Ok(open),
                Err(error) if child.0.try_wait()?.is_some() || began.elapsed() > HANGS => {
                    let said = fs::read_to_string(self.folder.path().join("stderr")).unwrap_or_default();
                    let text = format!("QEMU did not start ({error}); tests/install installs it. It said: {said}");
                    return Err(io::Error::other(text));
                }
                Err(_) => thread::sleep(Duration::from_millis(2)),
            }
        }
    }
}

impl Board for Qemu {
    fn press(&mut self, key: Key) -> io::Result<()> {
        self.key(key, true)
    }

    fn release(&mut self, key: Key) -> io::Result<()> {
        self.key(key, false)
    }

    /// QEMU holds the key by the board's clock, queues what is asked for meanwhile, and lets as much time pass after it.
    ///
    /// Around it a key is down that the board has not. For QEMU makes the first event of an empty queue at once, when the clock
    /// of a sleeping board may still stand where it fell asleep: its first leap might be over the whole press. And a board that
    /// has just drawn has not looked at its keys since, and takes one that is down at its first look for stuck.
    ///
    /// Later too the clock leaps, where a busy machine lets QEMU wait while the board sleeps, but over the next step of the
    /// queue at the most. A tap that a leap ends is still a tap. A hold is a row of short steps, for it must outlast the leap.
    fn tap(&mut self, key: Key, ms: u32) -> io::Result<()> {
        const STEP_MS: u32 = 100;
        let absent = |name: char| json!({"type": "qcode", "data": name});
        // All keys go down one after the other and up in the opposite order: so many steps of the queue.
        let further = (ms / STEP_MS).saturating_sub(1) / 2;
        let steps = 2 * further + 1;
        let mut keys = vec![absent('a'), qcode(key)];
        keys.extend(('b'..='z').map(absent).take(further as usize));
        self.running()?.qmp.run("send-key", json!({"keys": keys, "hold-time": ms / steps})).map(drop)
    }

    fn wait(&mut self, ms: u32) -> io::Result<()> {
        thread::sleep(Duration::from_millis(ms.into()));
        Ok(())
    }

    /// Asleep it goes by the clock on the wall, and awake by its instructions, which take less time there.
    fn elapsed(&mut self) -> io::Result<Duration> {
        let awake = Duration::from_nanos(self.instructions()? << self.options.icount);
        Ok(self.running()?.began.elapsed() + awake)
    }

    fn photo(&mut self) -> io::Result<Photo> {
        let path = self.folder.path().join("photo.ppm");
        self.running()?.qmp.run("screendump", json!({"filename": path}))?;
        Photo::read(&path)
    }

    fn send(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.line()?.write_all(bytes)
    }

    fn receive(&mut self, timeout_ms: u32) -> io::Result<Vec<u8>> {
        self.line()?.receive(Duration::from_millis(timeout_ms.into()))
    }

    fn power_cut(&mut self) -> io::Result<()> {
        self.kill();
        Ok(())
    }

    fn power_on(&mut self) -> io::Result<()> {
        self.kill();
        for socket in ["qmp", "qtest", "line"] {
            let _ = fs::remove_file(self.folder.path().join(socket));
        }
        let mut child = Guard(self.command()?.spawn()?);
        let mut qmp = self.connect(&mut child, Qmp::open, "qmp")?;
        let mut wires = self.connect(&mut child, Wires::open, "qtest")?;
        if !self.options.keys_pressed_at_start {
            release_all(&mut wires, &mut qmp)?;
        }
        start_ticking(&mut wires)?;
        let serial_path = match self.options.serial_via {
            SerialVia::Pty => terminal(&mut qmp)?,
            _ => self.folder.path().join("line"),
        };
        let line = match self.options.serial_via {
            SerialVia::Driver => Some(Line::open(&serial_path)?),
            _ => None,
        };
        let began = Instant::now();
        qmp.run("cont", json!({}))?;
        self.running = Some(Running { child, qmp, line, serial_path, began });
        Ok(())
    }
}

/// Releases all keys, which the model holds after reset.
fn release_all(wires: &mut Wires, qmp: &mut Qmp) -> io::Result<()> {
    let devices = qmp.run("qom-list", json!({"path": "/machine/unattached"}))?;
    let mut ports: Vec<(u32, &str)> = devices
        .as_array()
        .into_iter()
        .flatten()
        .filter(|device| device["type"] == "child<pl061_luminary>")
        .filter_map(|device| device["name"].as_str())
        .filter_map(|name| Some((name.strip_prefix("device[")?.strip_suffix(']')?.parse().ok()?, name)))
        .collect();
    ports.sort(); // GPIO A to G
    let [_, _, _, _, (_, e), (_, f), _] = ports[..] else {
        return Err(io::Error::other(format!("seven GPIO ports expected: {ports:?}")));
    };
    for (port, pin) in [(e, 0), (e, 1), (e, 2), (e, 3), (f, 1)] {
        wires.set_pin(&format!("/machine/unattached/{port}"), pin, true)?;
    }
    Ok(())
}

/// Lets a timer that the board does not use tick without interrupts.
///
/// QEMU's queue of keys goes by the board's clock too, but while the board sleeps its clock goes on to the next moment of one
/// of its own timers and no sooner (`QEMU_TIMER_ATTR_EXTERNAL` in QEMU's `include/qemu/timer.h`). A key would be let go, and
/// the next pressed, seconds late.
fn start_ticking(wires: &mut Wires) -> io::Result<()> {
    const TIMER_1: u32 = 0x4003_1000;
    const TICK_MS: u32 = 10;
    // Configuration: 32 bits. Mode: periodic. Load: cycles of the board's 12.5 MHz. Control: on. (LM3S6965 data sheet, § 9.)
    for (register, value) in [(0x00, 0), (0x04, 2), (0x28, TICK_MS * 12_500), (0x0C, 1)] {
        wires.write(TIMER_1 + register, value)?;
    }
    Ok(())
}

/// Stops an emulator's process and lets it go on.
#[derive(Clone, Copy, Debug)]
pub struct Stopper(u32);

impl Stopper {
    /// Lets it stand still this long.
    pub fn stop_for(self, time: Duration) -> io::Result<()> {
        self.signal("STOP")?;
        thread::sleep(time);
        self.signal("CONT")
    }

    fn signal(self, name: &str) -> io::Result<()> {
        let sent = Command::new("sh").args(["-c", "kill -s \"$0\" \"$1\"", name, &self.0.to_string()]).status()?;
        if sent.success() { Ok(()) } else { Err(io::Error::other(format!("{name} was not sent: {sent}"))) }
    }
}

/// The key of a keyboard that stands for one of the board.
fn qcode(key: Key) -> Value {
    let name = match key {
        Key::Less => "down",
        Key::More => "up",
        Key::Next => "right",
        Key::Back => "left",
        Key::Select => "ctrl",
    };
    json!({"type": "qcode", "data": name})
}

/// The pseudo-terminal that QEMU made for the line.
fn terminal(qmp: &mut Qmp) -> io::Result<PathBuf> {
    let chardevs = qmp.run("query-chardev", json!({}))?;
    let serial = chardevs.as_array().into_iter().flatten().find(|chardev| chardev["label"] == "serial0");
    let name = serial.and_then(|serial| serial["filename"].as_str()?.strip_prefix("pty:"));
    name.map(PathBuf::from).ok_or_else(|| io::Error::other(format!("no pseudo-terminal: {chardevs}")))
}

/// Ends its process when dropped.
#[derive(Debug)]
struct Guard(Child);

impl Drop for Guard {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}
