//! The handheld as text.

use jiff::Timestamp;
use tenter_core::record::{LabelledDemand, RecordError};
use tenter_core::wire::{Identity, Listing};
use tenter_core::{Confidence, Decimal, Figure, Unit};

use crate::log::handheld::FromHandheld;
use crate::log::{Fabric, StoredTest};
use crate::text::lines::Lines;
use crate::text::table;
use crate::text::table::Column;
use crate::words::bidi::isolated;
use crate::words::quantity;
use crate::words::terms as words;

/// A handheld whose program does not know what a hand is.
pub const OLD_HAND: &str =
    "note: the handheld's program is older and reckons with the assumed scatter, not with your own hand";

/// Who is there and what waits.
#[derive(Debug)]
pub struct There {
    /// Who.
    pub identity: Identity,
    /// By how many seconds its clock is ahead, where it is set.
    pub ahead: Option<i64>,
    /// What it says it holds.
    pub listing: Listing,
    /// The tests not yet fetched.
    pub waiting: Vec<Waiting>,
}

/// A test on the handheld.
#[derive(Debug)]
pub struct Waiting {
    /// Its number there.
    pub number: u32,
    /// The test, where it can be read.
    pub test: Result<FromHandheld, RecordError>,
    /// The one fabric that wears its tag.
    pub fabric: Option<Fabric>,
    /// Whether it is in the log already.
    pub in_log: bool,
}

/// A test that has just been stored, or was before.
#[derive(Debug)]
pub struct Arrived<'a> {
    /// The test.
    pub test: &'a StoredTest,
    /// Its number on the handheld.
    pub number: u32,
    /// The fabric it went to.
    pub fabric: Option<&'a Fabric>,
    /// Its stretch.
    pub stretch: Option<Figure>,
    /// Whether it was in the log before.
    pub was_known: bool,
}

/// What a synchronisation did.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Tests that came over the line.
    pub fetched: u64,
    /// Of these, new in the log.
    pub stored: u64,
    /// Of these, without a fabric.
    pub in_inbox: u64,
    /// In the log before.
    pub known: u64,
    /// Under a number that another test had before.
    pub bear_again: u64,
}

/// A test without a fabric.
#[derive(Debug)]
pub struct Unclaimed {
    /// The test.
    pub test: StoredTest,
    /// The live fabrics that wear its tag: none, or several.
    pub worn: Vec<Fabric>,
    /// Its stretch.
    pub stretch: Option<Figure>,
}

/// What shall be on the handheld.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Wanted {
    /// The demands with their labels, and the roles they come from.
    pub demands: Vec<(LabelledDemand, String)>,
    /// Roles that ask nothing of stretch, growth or recovery.
    pub nothing_asked: Vec<String>,
}

/// Which ports there are, and what to type.
#[must_use]
pub fn which_port(ports: &[String]) -> String {
    match ports {
        [] => {
            "say where the handheld is: no serial port was found; plug it in, or type --port tcp:HOST:PORT".to_owned()
        }
        [port, ..] => format!(
            "say where the handheld is: --port {port}, or TENTER_PORT={port} once for all (serial ports here: {})",
            ports.join(", ")
        ),
    }
}

/// A moment, where the reader is.
#[must_use]
pub fn moment(at: Timestamp) -> String {
    quantity::minute(at)
}

/// How the handheld's clock was.
#[must_use]
pub fn clock_was(ahead: Option<i64>) -> String {
    match ahead {
        None => "it was not set".to_owned(),
        // Both clocks tell whole seconds.
        Some(-1..=1) => "it was right".to_owned(),
        Some(seconds) => format!("it was {}", off(seconds)),
    }
}

fn off(seconds: i64) -> String {
    let side = if seconds > 0 { "ahead" } else { "behind" };
    let size = u32::try_from(seconds.unsigned_abs()).unwrap_or(u32::MAX);
    format!("{} {side}", long_duration(size))
}

fn long_duration(seconds: u32) -> String {
    match seconds {
        days if days >= 172_800 => format!("{} days", days / 86_400),
        hours if hours >= 7200 => format!("{} h", hours / 3600),
        minutes if minutes >= 600 => format!("{} min", minutes / 60),
        other => words::duration(other),
    }
}

/// The first line of a synchronisation.
#[must_use]
pub fn greeting(device: u32, fresh: bool, ahead: Option<i64>) -> String {
    let named = if fresh { ", named just now" } else { "" };
    format!("handheld {device}{named}; clock set, {}", clock_was(ahead))
}

/// A stretch with what it is worth: `6.1 % ± 1.1`.
fn stretch(figure: Option<Figure>) -> String {
    figure.map_or_else(String::new, |figure| {
        let half = Decimal::round(figure.half_width(Confidence::default()), 1);
        format!("{} % ± {half}", figure.ratio.percent(1))
    })
}

fn named(fabric: &Fabric) -> String {
    format!("{} {}", fabric.tag, isolated(&fabric.name))
}

/// A test that arrived.
#[must_use]
pub fn arrived(arrived: &Arrived<'_>) -> String {
    let Arrived { test, number, fabric, stretch: figure, was_known } = arrived;
    let what = if *was_known { "known" } else { "stored" };
    let place = match (fabric, test.said.tag) {
        (Some(fabric), _) => named(fabric),
        (None, Some(tag)) => format!("inbox, tag {tag}"),
        (None, None) => "inbox, no tag".to_owned(),
    };
    let grain = test.said.test.grain().word();
    let clock = if test.said.clock_unset { format!("  ({})", quantity::DAY_NOT_KNOWN) } else { String::new() };
    format!("{what:<7}{number:>5}  {grain:<10} {:>14}  {place}{clock}", stretch(*figure))
}

fn tests(count: u64) -> String {
    if count == 1 { "1 test".to_owned() } else { format!("{count} tests") }
}

/// What a synchronisation did.
#[must_use]
pub fn summary(counts: &Counts) -> Vec<String> {
    let Counts { fetched, stored, in_inbox, known, bear_again } = *counts;
    let mut lines = Vec::new();
    if fetched == 0 {
        lines.push("nothing new on the handheld".to_owned());
        return lines;
    }
    let before = if known > 0 { format!(", {known} in the log before") } else { String::new() };
    lines.push(format!("{} stored{before}", tests(stored)));
    if in_inbox > 0 {
        lines.push(format!("{in_inbox} without a fabric: see tenter device inbox"));
    }
    if bear_again > 0 {
        lines.push(format!(
            "note: {} under a number that another test had before, so the handheld's memory was exchanged or cleared; \
             both are kept",
            tests(bear_again)
        ));
    }
    lines
}

/// What is wrong with tests that cannot be read; none where all can.
#[must_use]
pub fn unread(unread: &[(u32, RecordError)], given_up: bool) -> Option<String> {
    let of = |newer: bool| {
        let these = unread.iter().filter(move |(_, error)| (*error == RecordError::Newer) == newer);
        these.map(|(number, _)| number.to_string()).collect::<Vec<_>>()
    };
    let (newer, damaged) = (of(true), of(false));
    let mut parts = Vec::new();
    if !newer.is_empty() {
        let numbers = newer.join(", ");
        parts.push(format!("number {numbers} was written by a newer program: update tenter and sync again"));
    }
    if !damaged.is_empty() {
        let numbers = damaged.join(", ");
        parts.push(if given_up {
            format!("number {numbers} arrived damaged and was given up")
        } else {
            format!("number {numbers} arrived damaged: sync again, or give it up with --give-up-damaged")
        });
    }
    let kept = if newer.is_empty() && given_up { "" } else { "; the handheld keeps everything from there on" };
    (!parts.is_empty()).then(|| format!("{}{kept}", parts.join("; ")))
}

/// Who is there and what waits.
#[must_use]
pub fn there(there: &There, width: usize) -> String {
    let There { identity, ahead, listing, waiting } = there;
    let mut text = Lines::new(width);
    match identity.device {
        0 => text.words("handheld not named yet"),
        device => text.words(&format!("handheld {device}")),
    }
    text.row("program", &identity.version);
    let on = long_duration(identity.uptime_s);
    let clock = match ahead {
        None => "not set".to_owned(),
        Some(0) => "right".to_owned(),
        Some(seconds) => off(*seconds),
    };
    text.row("clock", &format!("{clock}; on for {on}"));
    text.row("memory", &format!("{} pages free; most tests take one", listing.free_pages));
    if waiting.is_empty() {
        text.row("tests", "all fetched");
        return text.finish();
    }
    let columns = [
        ("number", Column::Number),
        ("tag", Column::Number),
        ("fabric", Column::Text),
        ("grain", Column::Word),
        ("stretch", Column::Number),
        ("saved", Column::Word),
        ("", Column::Word),
    ];
    text.blank();
    text.block(&table::render(&columns, waiting.iter().map(waits), width));
    let fresh = waiting.iter().filter(|waiting| !waiting.in_log).count();
    let fresh = u64::try_from(fresh).unwrap_or(u64::MAX);
    text.words(&format!("{} to fetch: tenter device sync", tests(fresh)));
    text.finish()
}

fn waits(waiting: &Waiting) -> Vec<String> {
    let number = waiting.number.to_string();
    let test = match &waiting.test {
        Ok(test) => test,
        Err(error) => {
            let word = if *error == RecordError::Newer { "newer program" } else { "damaged" };
            return [&number, "", "", "", "", "", word].map(str::to_owned).to_vec();
        }
    };
    let figures = tenter_core::Figures::of(&test.saved.test, tenter_core::Scatter::ASSUMED).ok();
    vec![
        number,
        test.tag().map(|tag| tag.to_string()).unwrap_or_default(),
        waiting.fabric.as_ref().map(|fabric| fabric.name.clone()).unwrap_or_default(),
        test.saved.test.grain().word().to_owned(),
        figures.map(|figures| quantity::percent(figures.stretch.ratio)).unwrap_or_default(),
        test.saved_at().map_or_else(|| quantity::DAY_NOT_KNOWN.to_owned(), quantity::minute),
        if waiting.in_log { "in the log" } else { "" }.to_owned(),
    ]
}

/// The tests without a fabric, and what to type.
#[must_use]
pub fn inbox(unclaimed: &[Unclaimed], width: usize) -> String {
    if unclaimed.is_empty() {
        return "every test has its fabric\n".to_owned();
    }
    let columns = [
        ("test", Column::Word),
        ("tag", Column::Number),
        ("grain", Column::Word),
        ("marks", Column::Number),
        ("stretch", Column::Number),
        ("pulled", Column::Word),
        ("", Column::Text),
    ];
    let rows = unclaimed.iter().map(|one| {
        let said = &one.test.said;
        let why = match (said.tag, one.worn.as_slice()) {
            (None, _) => "no tag was dialled".to_owned(),
            (Some(_), []) => "on no fabric".to_owned(),
            (Some(_), [fabric]) => format!("now on {}", isolated(&fabric.name)),
            (Some(_), several) => {
                let names: Vec<_> = several.iter().map(|fabric| isolated(&fabric.name)).collect();
                format!("on several: {}", names.join(", "))
            }
        };
        vec![
            one.test.id.short(),
            said.tag.map(|tag| tag.to_string()).unwrap_or_default(),
            said.test.grain().word().to_owned(),
            said.test.gauge().show(Unit::Mm).to_string(),
            stretch(one.stretch),
            if said.clock_unset { quantity::DAY_NOT_KNOWN.to_owned() } else { quantity::minute(said.pulled) },
            why,
        ]
    });
    let mut text = Lines::new(width);
    text.block(&table::render(&columns, rows, width));
    let first = unclaimed.first().map(|one| one.test.id.short()).unwrap_or_default();
    let count = u64::try_from(unclaimed.len()).unwrap_or(u64::MAX);
    text.words(&format!("{} without a fabric", tests(count)));
    if unclaimed.iter().any(|one| one.worn.len() == 1) {
        text.row("next", "tenter device assign --all gives each to the fabric that now wears its tag");
    }
    text.row("next", &format!("tenter device assign {first} TAG gives one to a fabric"));
    let missing = unclaimed.iter().find(|one| one.worn.is_empty()).and_then(|one| one.test.said.tag);
    if let Some(tag) = missing {
        text.row("or", &format!("tenter cloth add NAME --tag {tag}, then tenter device assign --all"));
    }
    text.finish()
}

/// A test that was given to a fabric.
#[must_use]
pub fn assigned(test: &StoredTest, figure: Option<Figure>, before: Option<&Fabric>, fabric: &Fabric) -> String {
    let what = format!("{}  {} {}", test.id.short(), test.said.test.grain().word(), stretch(figure));
    let to = named(fabric);
    match before {
        Some(before) if before.id == fabric.id => format!("{what} belongs to {to} already; nothing was changed"),
        Some(before) => format!("moved  {what}: from {} to {to}", named(before)),
        None => format!("given  {what}: to {to}"),
    }
}

/// How many tests were given to fabrics, and how many wait still.
#[must_use]
pub fn assigned_all(moved: usize, left: usize) -> String {
    let count = |count: usize| tests(u64::try_from(count).unwrap_or(u64::MAX));
    match left {
        0 => format!("{} given to their fabrics; every test has one now", count(moved)),
        _ => format!("{} given to their fabrics; {left} still without: see tenter device inbox", count(moved)),
    }
}

/// A view that asks nothing that the handheld could judge.
#[must_use]
pub fn asks_nothing(pattern: &str, view: &str) -> String {
    format!(
        "{} {} asks no stretch, growth or recovery, so there is nothing to send; see tenter pattern --help",
        crate::error::one_line(pattern),
        crate::error::one_line(view)
    )
}

/// What was put on the handheld, and what was not.
#[must_use]
pub fn demands(wanted: &Wanted, sent: usize) -> Vec<String> {
    if wanted.demands.is_empty() {
        return vec!["the handheld holds no demands now".to_owned()];
    }
    let mut lines: Vec<String> =
        wanted.demands.iter().take(sent).map(|(demand, _)| format!("sent  {}", isolated(demand.label()))).collect();
    let left: Vec<&str> = wanted.demands.iter().skip(sent).map(|(_, role)| role.as_str()).collect();
    if !left.is_empty() {
        lines.push(format!(
            "no room for {}: the handheld holds {sent}; choose with --role",
            left.iter().map(|role| isolated(role)).collect::<Vec<_>>().join(", ")
        ));
    }
    if !wanted.nothing_asked.is_empty() {
        let roles: Vec<_> = wanted.nothing_asked.iter().map(|role| isolated(role)).collect();
        lines.push(format!("not sent, since it asks no stretch, growth or recovery: {}", roles.join(", ")));
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ports_that_are_there_are_named() {
        assert!(which_port(&[]).ends_with("plug it in, or type --port tcp:HOST:PORT"));
        let two = which_port(&["COM3".to_owned(), "COM4".to_owned()]);
        assert!(two.contains("--port COM3,") && two.ends_with("(serial ports here: COM3, COM4)"), "{two}");
    }

    #[test]
    fn clocks() {
        let said = [
            (None, "not set"),
            (Some(0), "right"),
            (Some(-1), "right"),
            (Some(-2), "2 s behind"),
            (Some(599), "599 s ahead"),
        ];
        let later = [(Some(-600), "10 min behind"), (Some(7200), "2 h ahead"), (Some(-i64::MAX), "49710 days behind")];
        for (ahead, words) in said.into_iter().chain(later) {
            assert_eq!(clock_was(ahead), format!("it was {words}"));
        }
    }
}
