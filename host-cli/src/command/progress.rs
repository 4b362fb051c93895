//! Shows how far something is that takes more than a second, where a person looks on.

use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressStyle};

/// What takes no longer needs no bar.
const PATIENCE: Duration = Duration::from_secs(1);

/// How far something is.
#[derive(Debug)]
pub struct Progress {
    total: u64,
    began: Instant,
    bar: Option<ProgressBar>,
}

impl Progress {
    /// Nothing of `total` is done yet.
    #[must_use]
    pub fn of(total: u64) -> Self {
        Self { total, began: Instant::now(), bar: None }
    }

    /// So many are done.
    pub fn at(&mut self, done: u64) {
        if self.bar.is_none() && self.began.elapsed() > PATIENCE {
            // On standard error, and hidden by itself where that is no terminal.
            let style = ProgressStyle::with_template("{pos} of {len} {bar:30}");
            let bar = ProgressBar::new(self.total.max(done));
            self.bar = Some(style.map_or_else(|_| bar.clone(), |style| bar.clone().with_style(style)));
        }
        if let Some(bar) = &self.bar {
            bar.set_position(done);
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
