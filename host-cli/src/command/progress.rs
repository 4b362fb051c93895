//! How far a long work has come, on the terminal's error stream.

use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressStyle};

/// Works that end within this time show nothing.
const PATIENCE: Duration = Duration::from_secs(1);
/// Steps between two looks at the clock.
const STRIDE: u64 = 256;

/// Counts the steps of a work; shown once the work has taken a second, and only where the error stream is a terminal.
#[derive(Debug)]
pub struct Progress {
    what: &'static str,
    total: Option<u64>,
    done: u64,
    begun: Instant,
    bar: Option<ProgressBar>,
}

impl Progress {
    /// A work on `total` things, where their number is known.
    #[must_use]
    pub fn of(what: &'static str, total: Option<u64>) -> Self {
        Self { what, total, done: 0, begun: Instant::now(), bar: None }
    }

    /// One more of many quick steps is done.
    pub fn step(&mut self) {
        self.done += 1;
        if self.done.is_multiple_of(STRIDE) {
            self.draw();
        }
    }

    /// So many slow steps are done.
    pub fn at(&mut self, done: u64) {
        self.done = done;
        self.draw();
    }

    fn draw(&mut self) {
        if self.bar.is_none() && self.begun.elapsed() > PATIENCE {
            self.bar = Some(bar(self.what, self.total.map(|total| total.max(self.done))));
        }
        if let Some(bar) = &self.bar {
            bar.set_position(self.done);
        }
    }

    /// Writes lines while the bar steps aside.
    pub fn aside<R>(&self, write: impl FnOnce() -> R) -> R {
        match &self.bar {
            Some(bar) => bar.suspend(write),
            None => write(),
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        if let Some(bar) = &self.bar {
            bar.finish_and_clear();
        }
    }
}

fn bar(what: &'static str, total: Option<u64>) -> ProgressBar {
    let (bar, template) = match total {
        Some(total) => (ProgressBar::new(total), "{msg}  {human_pos} of {human_len}, {eta} left"),
        None => (ProgressBar::no_length(), "{msg}  {human_pos}"),
    };
    let style = ProgressStyle::with_template(template).unwrap_or_else(|_| ProgressStyle::default_bar());
    bar.with_style(style).with_message(what)
}
