//! The handheld as text.

use jiff::Timestamp;
use tenter_core::record::RecordError;
use tenter_core::{Confidence, Decimal, Figure, Unit};

use crate::deed::handheld::{Assigned, WantedDemands};
use crate::finding::handheld::{Arrived, ClockState, Counts, There, Unclaimed, Waiting};
use crate::log::{Fabric, Here, Id};
use crate::plain::isolated;
use crate::text::lines::Lines;
use crate::text::table;
use crate::text::table::Column;
use crate::words::quantity::{self, counted};
use crate::words::terms as words;

/// A handheld whose program does not know what repeatability is.
pub const OLD_HAND: &str =
    "note: the handheld's program is older; it uses the assumed scatter and not your repeatability";

/// For a handheld whose program is from before it was told how days differ.
pub const OLD_DAYS: &str =
    "note: the handheld's program is older; it uses the assumed difference between days and not your retests";

/// For a handheld whose program is from before tags were agreed.
pub const OLD_TAGS: &str =
    "note: the handheld's program is older; it does not know which tags are free, so its tests wait in the inbox";

/// Who is on the handheld now.
#[must_use]
pub fn people(all: &[(Id, String)], sent: usize) -> Vec<String> {
    let names = |some: &[(Id, String)]| some.iter().map(|(_, name)| isolated(name)).collect::<Vec<_>>().join(", ");
    let (on, left) = all.split_at(sent.min(all.len()));
    let mut lines = Vec::new();
    match on {
        [] => lines.push("the handheld names nobody now".to_owned()),
        [(_, owner), others @ ..] => {
            lines.push(format!("the handheld is {}'s", isolated(owner)));
            if !others.is_empty() {
                lines.push(format!("it also offers {}", names(others)));
            }
        }
    }
    if !left.is_empty() {
        lines.push(format!("no room for {}: the handheld holds {sent}", names(left)));
    }
    lines
}

/// A moment, where the reader is.
#[must_use]
pub fn moment(at: Timestamp, here: Here) -> String {
    quantity::minute(at, here)
}

/// How the handheld's clock was.
#[must_use]
pub fn clock_was(clock: ClockState) -> String {
    match clock {
        ClockState::NotSet => "it was not set".to_owned(),
        ClockState::Right => "it was right".to_owned(),
        ClockState::Off(seconds) => format!("it was {}", off(seconds)),
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
pub fn greeting(device: u32, fresh: bool, clock: ClockState) -> String {
    let named = if fresh { ", named just now" } else { "" };
    format!("handheld {device}{named}; clock set, {}", clock_was(clock))
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

/// What a synchronisation did.
#[must_use]
pub fn summary(counts: &Counts) -> Vec<String> {
    let Counts { fetched, stored, in_inbox, known, number_reused } = *counts;
    let mut lines = Vec::new();
    if fetched == 0 {
        lines.push("nothing new on the handheld".to_owned());
        return lines;
    }
    let before = if known > 0 { format!(", {known} in the log before") } else { String::new() };
    lines.push(format!("{} stored{before}", counted(stored, "test")));
    if in_inbox > 0 {
        lines.push(format!("{in_inbox} without a cloth: see tenter device inbox"));
    }
    if number_reused > 0 {
        lines.push(format!(
            "note: {} under a number that another test had before, so the handheld's memory was exchanged or cleared; \
             both are kept",
            counted(number_reused, "test")
        ));
    }
    lines
}

/// Who is there and what waits.
#[must_use]
pub fn there(there: &There, width: usize, here: Here) -> String {
    let There { identity, listing, waiting, .. } = there;
    let mut text = Lines::new(width);
    match identity.device {
        0 => text.words("handheld not named yet"),
        device => text.words(&format!("handheld {device}")),
    }
    text.row("program", &identity.version);
    let on = long_duration(identity.uptime_s);
    let clock = match there.clock() {
        ClockState::NotSet => "not set".to_owned(),
        ClockState::Right => "right".to_owned(),
        ClockState::Off(seconds) => off(seconds),
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
        ("cloth", Column::Text),
        ("grain", Column::Word),
        ("stretch", Column::Number),
        ("saved", Column::Word),
        ("", Column::Word),
    ];
    text.blank();
    text.block(&table::render(&columns, waiting.iter().map(|one| waits(one, here)), width));
    let fresh = waiting.iter().filter(|waiting| !waiting.in_log).count();
    text.words(&format!("{} to fetch: tenter device sync", counted(fresh, "test")));
    text.finish()
}

fn waits(waiting: &Waiting, here: Here) -> Vec<String> {
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
        test.saved_at().map_or_else(|| quantity::DAY_NOT_KNOWN.to_owned(), |at| quantity::minute(at, here)),
        if waiting.in_log { "in the log" } else { "" }.to_owned(),
    ]
}

/// The tests without a cloth, and what to type.
#[must_use]
pub fn inbox(unclaimed: &[Unclaimed], unit: Unit, width: usize, here: Here) -> String {
    if unclaimed.is_empty() {
        return "every test has its cloth\n".to_owned();
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
            (Some(_), []) => "on no cloth".to_owned(),
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
            quantity::reading(said.test.gauge(), unit),
            stretch(one.stretch),
            if said.clock_unset { quantity::DAY_NOT_KNOWN.to_owned() } else { quantity::minute(said.pulled, here) },
            why,
        ]
    });
    let mut text = Lines::new(width);
    text.block(&table::render(&columns, rows, width));
    let first = unclaimed.first().map(|one| one.test.id.short()).unwrap_or_default();
    text.words(&format!("{} without a cloth", counted(unclaimed.len(), "test")));
    if unclaimed.iter().any(|one| one.worn.len() == 1) {
        text.row("next", "tenter device assign --all gives each to the cloth that now has its tag");
    }
    text.row("next", &format!("tenter device assign {first} TAG gives one to a cloth"));
    let missing = unclaimed.iter().find(|one| one.worn.is_empty()).and_then(|one| one.test.said.tag);
    if let Some(tag) = missing {
        text.row("or", &format!("tenter cloth add NAME --tag {tag}, then tenter device assign --all"));
    }
    text.finish()
}

/// A test that was given to a cloth.
#[must_use]
pub fn assigned(moved: &Assigned, figure: Option<Figure>) -> String {
    let Assigned { test, before, fabric } = moved;
    let what = format!("{}  {} {}", test.id.short(), test.said.test.grain().word(), stretch(figure));
    let to = named(fabric);
    match before {
        Some(before) if before.id == fabric.id => format!("{what} belongs to {to} already; nothing was changed"),
        Some(before) => format!("moved  {what}: from {} to {to}", named(before)),
        None => format!("given  {what}: to {to}"),
    }
}

/// How many tests were given to cloths, and how many wait still.
#[must_use]
pub fn assigned_all(moved: usize, left: usize) -> String {
    let moved = counted(moved, "test");
    match left {
        0 => format!("{moved} given to their cloths; every test has one now"),
        _ => format!("{moved} given to their cloths; {left} still without: see tenter device inbox"),
    }
}

/// What was put on the handheld, and what was not.
#[must_use]
pub fn demands(wanted: &WantedDemands, sent: usize) -> Vec<String> {
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
    fn clocks() {
        let said = [(None, "not set"), (Some(0), "right"), (Some(-2), "2 s behind"), (Some(599), "599 s ahead")];
        let later = [(Some(-600), "10 min behind"), (Some(7200), "2 h ahead"), (Some(-i64::MAX), "49710 days behind")];
        for (ahead, words) in said.into_iter().chain(later) {
            assert_eq!(clock_was(ClockState::of(ahead)), format!("it was {words}"));
        }
    }
}
