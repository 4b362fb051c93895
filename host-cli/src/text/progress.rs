//! How far a long work has come, on a terminal.

use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressStyle};

/// Works that end within this time show nothing.
const PATIENCE: Duration = Duration::from_secs(1);
/// Steps between two looks at the clock.
const STRIDE: u64 = 256;

/// Counts the steps of a work; shown on the terminal's error stream once the work has taken a second.
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

    /// One more is done.
    pub fn step(&mut self) {
        self.done += 1;
        if !self.done.is_multiple_of(STRIDE) {
            return;
        }
        if self.bar.is_none() && self.begun.elapsed() > PATIENCE {
            self.bar = Some(bar(self.what, self.total));
        }
        if let Some(bar) = &self.bar {
            bar.set_position(self.done);
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

/// Drawn where the error stream is a terminal, nowhere else.
fn bar(what: &'static str, total: Option<u64>) -> ProgressBar {
    let (bar, template) = match total {
        Some(total) => (ProgressBar::new(total), "{msg}  {human_pos} of {human_len}, {eta} left"),
        None => (ProgressBar::no_length(), "{msg}  {human_pos}"),
    };
    let style = ProgressStyle::with_template(template).unwrap_or_else(|_| ProgressStyle::default_bar());
    bar.with_style(style).with_message(what)
}
