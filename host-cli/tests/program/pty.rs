//! A pseudo-terminal of a size that the test says.

use std::fs::File;
use std::io::Read as _;
use std::process::{Command, Stdio};

use rustix::pty::{OpenptFlags, grantpt, ioctl_tiocgptpeer, openpt, unlockpt};
use rustix::termios::{Winsize, tcsetwinsize};

/// Both ends of a terminal.
pub struct Pty {
    /// The end with the keyboard and the display.
    pub keyboard: File,
    /// The end that a program has.
    pub line: File,
}

impl Pty {
    /// A terminal of so many columns and rows.
    pub fn of(columns: u16, rows: u16) -> Self {
        let flags = OpenptFlags::RDWR | OpenptFlags::NOCTTY;
        let keyboard = openpt(flags).unwrap();
        grantpt(&keyboard).unwrap();
        unlockpt(&keyboard).unwrap();
        let size = Winsize { ws_row: rows, ws_col: columns, ws_xpixel: 0, ws_ypixel: 0 };
        tcsetwinsize(&keyboard, size).unwrap();
        let line = File::from(ioctl_tiocgptpeer(&keyboard, flags).unwrap());
        Self { keyboard: File::from(keyboard), line }
    }

    /// The command with this terminal as its input, output and error stream, and an environment that says nothing else
    /// of the window or of colours.
    pub fn attach(&self, command: &mut Command) {
        let end = || Stdio::from(self.line.try_clone().unwrap());
        for name in ["COLUMNS", "NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE", "LC_ALL", "LC_CTYPE"] {
            command.env_remove(name);
        }
        command.env("TERM", "xterm-256color").env("LANG", "C.UTF-8").stdin(end()).stdout(end()).stderr(end());
    }
}

/// Runs a command in a terminal of so many columns to its end; all that it wrote.
pub fn shown(mut command: Command, columns: u16, environment: &[(&str, &str)]) -> Vec<u8> {
    let Pty { mut keyboard, line } = {
        let pty = Pty::of(columns, 50);
        pty.attach(&mut command);
        pty
    };
    let mut running = command.envs(environment.iter().copied()).spawn().unwrap();
    // The display ends when nobody holds the program's end any more.
    drop((command, line));
    let (mut bytes, mut buffer) = (Vec::new(), [0; 4096]);
    while let Ok(count @ 1..) = keyboard.read(&mut buffer) {
        bytes.extend_from_slice(&buffer[..count]);
    }
    running.wait().unwrap();
    bytes
}
