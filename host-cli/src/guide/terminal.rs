//! The thin loop round the guide: lines from standard input, words and a running clock on standard error.
//!
//! The terminal stays in its ordinary mode, in which it edits and shows the line that is typed, so nothing need be
//! mended when the program is killed. The clock stands in the line above and is drawn over it in place.

use std::io::{self, BufRead as _, IsTerminal as _, Write as _};
use std::sync::mpsc::{self, Receiver, RecvTimeoutError};
use std::thread;
use std::time::Duration;

use super::{ClockLine, Draft, Guide, NextQuestion};
use crate::log::Here;
use crate::plain::{one_line, printable};
use crate::text as report;
use crate::text::lines::Lines;

/// Between two looks at the clock.
const TICK: Duration = Duration::from_millis(250);

/// Where a person types and reads.
#[derive(Debug)]
pub struct Terminal {
    lines: Receiver<io::Result<String>>,
    /// Whether the clock can be drawn in place.
    live: bool,
    /// Whether what comes is shown, because no terminal does it.
    echo: bool,
    here: Here,
}

/// How a guided test ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ended {
    /// It can be stored.
    Finished,
    /// It was left for later.
    Left,
}

impl Terminal {
    /// Standard input and standard error; the clock runs where both are a terminal that can move its cursor.
    #[must_use]
    pub fn new(here: Here) -> Self {
        let (send, lines) = mpsc::channel();
        thread::spawn(move || {
            let mut input = io::stdin().lock();
            loop {
                let mut bytes = Vec::new();
                let line = match input.read_until(b'\n', &mut bytes) {
                    Ok(0) => return,
                    Ok(_) => Ok(String::from_utf8_lossy(&bytes).into_owned()),
                    Err(error) => Err(error),
                };
                let ended = line.is_err();
                if send.send(line).is_err() || ended {
                    return;
                }
            }
        });
        let dumb = std::env::var_os("TERM").is_none_or(|term| term == "dumb");
        let typed = io::stdin().is_terminal();
        Self { lines, live: !dumb && typed && io::stderr().is_terminal(), echo: !typed, here }
    }

    /// Says something, wrapped where the window is narrow.
    ///
    /// # Errors
    ///
    /// A terminal that was closed.
    pub fn say(&self, words: &str) -> io::Result<()> {
        self.write(&wrapped("", words))
    }

    /// Says what came of an answer, set in.
    ///
    /// # Errors
    ///
    /// As above.
    pub fn reply(&self, words: &str) -> io::Result<()> {
        self.write(&wrapped("  ", words))
    }

    /// Asks for a line; none at the end of the input.
    ///
    /// # Errors
    ///
    /// A terminal that was closed.
    pub fn ask(&self, question: &str) -> io::Result<Option<String>> {
        self.await_line(question, &mut || None)
    }

    /// Leads through a test. `keep` is told of every answer before the next question is asked.
    ///
    /// # Errors
    ///
    /// What `keep` says, or a terminal that was closed.
    pub fn run<E: From<io::Error>>(
        &self,
        mut guide: Guide,
        keep: &mut dyn FnMut(&Draft) -> Result<(), E>,
    ) -> Result<(Guide, Ended), E> {
        let mut said = None;
        while guide.draft.stage != NextQuestion::Done {
            let ask = guide.ask();
            // After a mistake the question alone is enough.
            if said != Some(guide.draft.stage) {
                ask.say.iter().try_for_each(|line| self.say(line))?;
            }
            said = Some(guide.draft.stage);
            let running = guide.clone();
            let mut clock = || running.clock(self.here.now());
            let Some(line) = self.await_line(&ask.question, &mut clock)? else {
                return Ok((guide, Ended::Left));
            };
            let before = guide.draft.clone();
            let (next, reply) = guide.step(&line, self.here.now());
            guide = next;
            if guide.draft != before {
                keep(&guide.draft)?;
            }
            reply.say.iter().try_for_each(|line| self.reply(line))?;
            if reply.leave {
                return Ok((guide, Ended::Left));
            }
        }
        Ok((guide, Ended::Finished))
    }

    /// Shows a question, and above it a clock for as long as no line comes.
    fn await_line(&self, question: &str, clock: &mut dyn FnMut() -> Option<ClockLine>) -> io::Result<Option<String>> {
        let Some(first) = clock().filter(|_| self.live) else {
            self.write(&safe(question))?;
            return self.lines.recv().ok().transpose()?.map(|line| self.echoed(line)).transpose();
        };
        self.write(&format!("{}\n{}", cut(&whole(&first)), safe(question)))?;
        let mut rang = first.due;
        loop {
            match (self.lines.recv_timeout(TICK), clock()) {
                (Err(RecvTimeoutError::Disconnected), _) => return Ok(None),
                (Ok(line), None) => return self.echoed(line?).map(Some),
                // The cursor stands below the question now.
                (Ok(line), Some(last)) => {
                    self.over(2, &last.shows, "")?;
                    return self.echoed(line?).map(Some);
                }
                (Err(RecvTimeoutError::Timeout), None) => {}
                (Err(RecvTimeoutError::Timeout), Some(now)) => {
                    // A bell, once, when the time has come: the person may be looking at the cloth.
                    self.over(1, &whole(&now), if now.due && !rang { "\u{7}" } else { "" })?;
                    rang |= now.due;
                }
            }
        }
    }

    /// Piped lines are shown as if they were typed.
    fn echoed(&self, line: String) -> io::Result<String> {
        if self.echo {
            self.say(&one_line(line.trim()))?;
        }
        Ok(line)
    }

    /// Writes over a line so many above the cursor, which stays where it is (ECMA-48: CUU, EL; DECSC, DECRC).
    fn over(&self, above: u8, text: &str, bell: &str) -> io::Result<()> {
        self.write(&format!("\u{1b}7\u{1b}[{above}A\r\u{1b}[2K{}\u{1b}8{bell}", cut(text)))
    }

    fn write(&self, text: &str) -> io::Result<()> {
        let mut out = io::stderr();
        out.write_all(text.as_bytes())?;
        out.flush()
    }
}

/// Lines that fit the window, an empty one where there are no words.
fn wrapped(margin: &str, words: &str) -> String {
    let mut text = Lines::new(report::terminal_width());
    if words.is_empty() {
        text.blank();
    }
    text.hanging(margin, margin.len(), words);
    safe(&text.finish())
}

/// A text that a terminal only shows, whatever name is in it.
fn safe(text: &str) -> String {
    text.chars().map(printable).collect()
}

/// A set in line that cannot wrap, so that it can be drawn over in place.
fn cut(text: &str) -> String {
    let width = report::terminal_width().saturating_sub(3);
    format!("  {}", text.chars().take(width).collect::<String>())
}

fn whole(clock: &ClockLine) -> String {
    format!("{}   {}", clock.shows, clock.hint)
}
