//! A board's line, as the host's link code wants it.

use std::io::{self, Read, Write};
use std::time::Duration;

use tenter::link::Transport;

use super::{Board, HANGS};

/// The line of a board that runs while the host waits.
#[derive(Debug)]
pub struct BoardLine<'b, B> {
    board: &'b mut B,
    patience: Duration,
    unread: Vec<u8>,
}

impl<'b, B: Board> BoardLine<'b, B> {
    pub const fn new(board: &'b mut B) -> Self {
        Self { board, patience: HANGS, unread: Vec::new() }
    }
}

impl<B: Board> Read for BoardLine<'_, B> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        if self.unread.is_empty() {
            let patience = u32::try_from(self.patience.as_millis()).unwrap_or(u32::MAX);
            self.unread = self.board.receive(patience)?;
        }
        if self.unread.is_empty() {
            return Err(io::ErrorKind::TimedOut.into());
        }
        let count = self.unread.len().min(buffer.len());
        for (place, byte) in buffer.iter_mut().zip(self.unread.drain(..count)) {
            *place = byte;
        }
        Ok(count)
    }
}

impl<B: Board> Write for BoardLine<'_, B> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.board.send(bytes)?;
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl<B: Board> Transport for BoardLine<'_, B> {
    fn set_patience(&mut self, patience: Duration) -> io::Result<()> {
        self.patience = patience;
        Ok(())
    }
}
