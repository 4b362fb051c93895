//! The host's end of a serial line.

use super::HANGS;
use std::{
    fs::{File, OpenOptions},
    io::{self, Read, Write},
    os::unix::{fs::OpenOptionsExt, net::UnixStream},
    path::Path,
    sync::mpsc::{self, Receiver, RecvTimeoutError},
    thread,
    time::Duration,
};

/// A line with a thread that always reads: QEMU stands still as a whole while nobody takes what the board sends.
#[derive(Debug)]
pub struct Line {
    end: End,
    incoming: Receiver<Vec<u8>>,
    /// What `read` was given and had no room for.
    rest: Vec<u8>,
    timeout: Duration,
}

#[derive(Debug)]
enum End {
    Socket(UnixStream),
    Terminal(File),
}

impl Line {
    /// Opens QEMU's end of a socket, or of a pseudo-terminal (QEMU looks for a reader there only once a second).
    pub fn open(path: &Path) -> io::Result<Self> {
        const O_NOCTTY: i32 = 0o400;
        let (tx, incoming) = mpsc::channel();
        let end = if path.starts_with("/dev") {
            let terminal = OpenOptions::new().read(true).write(true).custom_flags(O_NOCTTY).open(path)?;
            forward(terminal.try_clone()?, tx);
            End::Terminal(terminal)
        } else {
            let socket = UnixStream::connect(path)?;
            forward(socket.try_clone()?, tx);
            End::Socket(socket)
        };
        let mut line = Self { end, incoming, rest: Vec::new(), timeout: Duration::ZERO };
        line.set_timeout(HANGS)?;
        Ok(line)
    }

    /// How long `read` and `write` wait for the other side.
    pub fn set_timeout(&mut self, timeout: Duration) -> io::Result<()> {
        self.timeout = timeout;
        match &self.end {
            End::Socket(socket) => socket.set_write_timeout(Some(timeout)),
            End::Terminal(_) => Ok(()),
        }
    }

    /// What has come; waits for the first byte, and gives nothing if none comes in time.
    pub fn receive(&mut self, timeout: Duration) -> io::Result<Vec<u8>> {
        let mut got = std::mem::take(&mut self.rest);
        if got.is_empty() {
            match self.incoming.recv_timeout(timeout) {
                Ok(piece) => got = piece,
                Err(RecvTimeoutError::Timeout) => return Ok(got),
                Err(RecvTimeoutError::Disconnected) => return Err(io::ErrorKind::BrokenPipe.into()),
            }
        }
        got.extend(self.incoming.try_iter().flatten());
        Ok(got)
    }
}

/// Ends by itself when the line closes.
fn forward(mut from: impl Read + Send + 'static, to: mpsc::Sender<Vec<u8>>) {
    thread::spawn(move || {
        let mut buffer = [0; 4096];
        while let Ok(count @ 1..) = from.read(&mut buffer) {
            if to.send(buffer[..count].to_vec()).is_err() {
                break;
            }
        }
    });
}

impl Read for Line {
    fn read(&mut self, bytes: &mut [u8]) -> io::Result<usize> {
        let mut got = self.receive(self.timeout)?;
        if got.is_empty() {
            return Err(io::ErrorKind::TimedOut.into());
        }
        let count = got.len().min(bytes.len());
        bytes[..count].copy_from_slice(&got[..count]);
        self.rest = got.split_off(count);
        Ok(count)
    }
}

impl Write for Line {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        match &mut self.end {
            End::Socket(socket) => socket.write(bytes),
            End::Terminal(file) => file.write(bytes),
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl Drop for Line {
    fn drop(&mut self) {
        if let End::Socket(socket) = &self.end {
            // The reading thread holds a copy of the socket: closing ours alone would leave it connected.
            let _ = socket.shutdown(std::net::Shutdown::Both);
        }
    }
}
