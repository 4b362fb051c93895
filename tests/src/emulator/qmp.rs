//! QEMU's two control lines: QMP for the machine, qtest for single wires.

use super::HANGS;
use serde_json::{Value, json};
use std::{
    io::{self, BufRead, BufReader, Write},
    os::unix::net::UnixStream,
    path::Path,
};

/// A line-by-line conversation over a socket.
#[derive(Debug)]
struct Talk(BufReader<UnixStream>);

impl Talk {
    fn open(path: &Path) -> io::Result<Self> {
        let socket = UnixStream::connect(path)?;
        socket.set_read_timeout(Some(HANGS))?;
        Ok(Self(BufReader::new(socket)))
    }

    fn say(&mut self, line: &str) -> io::Result<()> {
        self.0.get_mut().write_all(format!("{line}\n").as_bytes())
    }

    fn hear(&mut self) -> io::Result<String> {
        let mut line = String::new();
        match self.0.read_line(&mut line)? {
            0 => Err(io::ErrorKind::UnexpectedEof.into()),
            _ => Ok(line),
        }
    }
}

/// The machine protocol.
#[derive(Debug)]
pub struct Qmp(Talk);

impl Qmp {
    pub fn open(path: &Path) -> io::Result<Self> {
        let mut qmp = Self(Talk::open(path)?);
        qmp.0.hear()?; // the greeting
        qmp.run("qmp_capabilities", json!({}))?;
        Ok(qmp)
    }

    /// Runs a command and gives what it returns.
    pub fn run(&mut self, command: &str, arguments: Value) -> io::Result<Value> {
        self.0.say(&json!({"execute": command, "arguments": arguments}).to_string())?;
        loop {
            let mut answer: Value = serde_json::from_str(&self.0.hear()?)?;
            if let Some(value) = answer.get_mut("return") {
                return Ok(value.take());
            }
            if let Some(error) = answer.get("error") {
                return Err(io::Error::other(format!("{command}: {error}")));
            }
            // Anything else is news about the machine.
        }
    }
}

/// Sets single wires over a qtest line, also while the machine stands still.
#[derive(Debug)]
pub struct Wires(Talk);

impl Wires {
    pub fn open(path: &Path) -> io::Result<Self> {
        Ok(Self(Talk::open(path)?))
    }

    /// Sets an input pin of a port.
    pub fn set_pin(&mut self, port: &str, pin: u8, high: bool) -> io::Result<()> {
        self.run(&format!("set_irq_in {port} unnamed-gpio-in {pin} {}", u8::from(high)))
    }

    /// Writes a register.
    pub fn write(&mut self, address: u32, value: u32) -> io::Result<()> {
        self.run(&format!("writel {address:#x} {value:#x}"))
    }

    fn run(&mut self, command: &str) -> io::Result<()> {
        self.0.say(command)?;
        let answer = self.0.hear()?;
        if answer.starts_with("OK") { Ok(()) } else { Err(io::Error::other(format!("{command}: {answer}"))) }
    }
}
