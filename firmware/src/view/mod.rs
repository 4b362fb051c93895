//! Draws a model; reads it only.

mod bar;
mod making;
mod pen;
mod result;
mod words;

use tenter_core::record::LabelledDemand;
use tenter_core::{Decimal, Length, Ratio, Table, Unit};

use crate::frame::Frame;
use crate::ui::{DialKind, ListRow, Model, ReadingAt, Screen, TagUse, readings};
use pen::{At, Pen};

/// Draws what a model shows.
///
/// ```
/// use tenter_firmware::{frame::Frame, ui::Model, view};
///
/// let mut frame = Frame::default();
/// view::draw(&Model::default(), &mut frame);
/// assert_ne!(frame, Frame::default());
/// ```
pub fn draw(model: &Model, frame: &mut Frame) {
    frame.clear();
    let mut pen = Pen::new(frame);
    match model.screen {
        Screen::Home => home(&mut pen, model),
        Screen::Gauge => dial(pen.say("Marks apart"), model),
        Screen::Extended => extended(&mut pen, model),
        Screen::Recovered => recovered(&mut pen, model),
        Screen::Look => dial(pen.say("Marks now read"), model),
        Screen::Tag => dial(pen.say(if model.log.agreed { "Tag: next free one" } else { "Tag on the cloth" }), model),
        Screen::Pull => pull(&mut pen, model),
        Screen::Rest => rest(&mut pen, model),
        Screen::Result => result::draw(&mut pen, model),
        Screen::Saving => saving(&mut pen),
        Screen::Saved => saved(&mut pen, model),
        Screen::Settle => list(pen.say("Pull once, then mark"), model),
        Screen::Release => list(pen.say("Let go, lay it flat"), model),
        Screen::Choice => choice(&mut pen, model),
        Screen::Readings => all_readings(&mut pen, model),
        Screen::Reading => list(said_reading(&mut pen, model), model),
        Screen::Resume => resume(&mut pen, model),
        Screen::TagTaken => tag_taken(&mut pen, model),
        Screen::Discard => list(pen.say("Throw it away?"), model),
        Screen::Full => list(pen.say("Log full: sync first"), model),
        Screen::NoLog => list(pen.say(words::fault(model.log.fault)), model),
        Screen::NotSaved => list(pen.say("Not saved"), model),
        Screen::Shelf => making::shelf(&mut pen, model),
        Screen::Cloth => making::cloth(&mut pen, model),
        Screen::Seam => dial(pen.say("Length of the seam"), model),
        Screen::Pair => making::pair(&mut pen, model),
        Screen::Opening => dial(pen.say("Opening, all round"), model),
        Screen::Body => dial(pen.say("Fits over, round"), model),
        Screen::Reach => making::reach(&mut pen, model),
    }
    hint(&mut pen, model);
}

/// What the buttons do here.
fn hint(pen: &mut Pen<'_>, model: &Model) {
    // An empty shelf is only read, as what was saved is.
    let is_empty = model.screen == Screen::Shelf && model.making.cloth.is_none();
    let screen = if is_empty { Screen::Saved } else { model.screen };
    let (left, right) = words::hint(screen, model.one_button, model.can_save());
    pen.say(left).put(At::Left, 0, 54);
    pen.say(right).put(At::Right, 126, 54);
}

/// Puts what was said at the head of the screen.
#[inline(never)]
fn head(pen: &mut Pen<'_>) {
    pen.put(At::Left, 0, 0);
    pen.fill(0, 10, 128, 1);
}

/// A list under what was said.
#[inline(never)]
fn list(pen: &mut Pen<'_>, model: &Model) {
    head(pen);
    let rows = model.screen.rows();
    lines(pen, model, rows.len(), |pen, index| {
        if let Some(row) = rows.get(index) {
            label(pen, model, *row);
        }
    });
}

/// The lines of a list, of which each is said by its turn.
fn lines(pen: &mut Pen<'_>, model: &Model, count: usize, say: impl Fn(&mut Pen<'_>, usize)) {
    const SHOWN: usize = 4;
    let chosen = usize::from(model.row);
    let first = chosen.saturating_sub(SHOWN - 1);
    for (index, y) in (first..count).zip([12, 23, 34, 45]) {
        if index == chosen {
            pen.fill(0, y - 1, 128, 11);
            pen.lit = false;
        }
        say(pen, index);
        pen.put(At::Left, 2, y);
        pen.lit = true;
    }
    // Small arrows tell that the list goes on.
    let last_shown = first + SHOWN >= count;
    for row in 0..3 {
        if first > 0 {
            pen.fill(122 - row, 6 + row, 1 + 2 * row, 1);
        }
        if !last_shown {
            pen.fill(122 - row, 53 - row, 1 + 2 * row, 1);
        }
    }
}

fn label(pen: &mut Pen<'_>, model: &Model, row: ListRow) {
    match row {
        ListRow::Demand => demand(pen, model.demand.as_ref().map_or("no demand", LabelledDemand::label)),
        ListRow::By => pen.say(words::row(row, false)).say(model.by.as_ref().map_or("nobody named", |by| &by.name)),
        ListRow::ThatTag if model.tag_use == TagUse::Unknown => pen.say("Use it all the same"),
        ListRow::ThatTag if model.tag_use == TagUse::Given => pen.say("Same cloth as then"),
        _ => pen.say(words::row(row, model.is_measured())),
    };
    match row {
        ListRow::Grain => pen.say(model.grain.word()),
        ListRow::Gauge => pen.say(&model.gauge.show(if model.inch { Unit::Inch } else { Unit::Mm }).text()),
        _ => pen,
    };
}

/// A demand by its label. Of a long one the end shows: two roles of a view differ there.
fn demand<'p, 'f>(pen: &'p mut Pen<'f>, label: &str) -> &'p mut Pen<'f> {
    const LINE: usize = 20;
    let count = label.chars().count();
    if count + 4 <= LINE {
        return pen.say("For ").say(label);
    }
    let from = label.char_indices().nth(count.saturating_sub(LINE)).map_or(0, |(at, _)| at);
    let end = label.get(from..).unwrap_or(label);
    // From a whole word on.
    pen.say(if from == 0 { end } else { end.split_once(' ').map_or(end, |(_, words)| words) })
}

/// Every reading, the newest first.
fn all_readings(pen: &mut Pen<'_>, model: &Model) {
    let Some(test) = &model.test else { return };
    head(pen.say("Which reading?"));
    let all = readings::newest_first(test);
    lines(pen, model, all.len(), |pen, index| {
        if let Some(at) = all.get(index) {
            say_reading(pen, model, *at);
        }
    });
}

fn say_reading(pen: &mut Pen<'_>, model: &Model, at: ReadingAt) {
    let Some(test) = &model.test else { return };
    match at {
        ReadingAt::Pull(index) => {
            pen.say("Pull ").count(small(index.saturating_add(1)));
        }
        ReadingAt::Rest(index) => {
            after(pen.say("After "), test.rests().get(index).map_or(0, |rest| rest.seconds));
        }
        ReadingAt::Look(_) => {
            pen.say("Marks");
        }
    }
    if let Some(length) = readings::length(test, at) {
        pen.say(": ").say(&length.show(model.unit()).text());
    }
}

fn said_reading<'p, 'f>(pen: &'p mut Pen<'f>, model: &Model) -> &'p mut Pen<'f> {
    if let Some(at) = model.correcting {
        say_reading(pen, model, at);
    }
    pen
}

/// The power went in the middle of a test.
fn resume(pen: &mut Pen<'_>, model: &Model) {
    list(pen.say(words::restart(model.restart)), model);
    let (pulls, rests) = counts(model);
    pen.say("Kept: ").count(small(pulls)).say(if pulls == 1 { " pull" } else { " pulls" });
    if rests > 0 {
        pen.say(", ").count(small(rests)).say(" back");
    }
    pen.put(At::Left, 2, 40);
}

/// The tag may be another cloth's.
fn tag_taken(pen: &mut Pen<'_>, model: &Model) {
    pen.say("Tag ").count(model.tag.into());
    list(pen.say(words::tag_use(&model.tag_use)), model);
    if let TagUse::Cloth(cloth) = &model.tag_use {
        pen.say(&cloth.name).put(At::Middle, 64, 40);
    }
}

fn counts(model: &Model) -> (usize, usize) {
    model.test.as_ref().map_or((0, 0), |test| (test.pulls().len(), test.rests().len()))
}

fn home(pen: &mut Pen<'_>, model: &Model) {
    if model.restart.is_some() {
        return list(pen.say(words::restart(model.restart)), model);
    }
    pen.say("tenter   ");
    match (model.log.present, model.log.unsent) {
        (false, _) => pen.say("no log"),
        (true, 0) => pen.say("all sent"),
        (true, unsent) => pen.count(unsent.into()).say(" to send"),
    };
    list(pen, model);
}

fn choice(pen: &mut Pen<'_>, model: &Model) {
    let (pulls, rests) = counts(model);
    list(pen.say("Pulls ").count(small(pulls)).say("  read back ").count(small(rests)), model);
}

/// A number of readings.
fn small(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

fn saving(pen: &mut Pen<'_>) {
    pen.say("Saving").put_large(At::Middle, 64, 10);
    pen.say("Do not switch off.").put(At::Middle, 64, 33);
}

fn saved(pen: &mut Pen<'_>, model: &Model) {
    pen.say("Saved").put_large(At::Middle, 64, 6);
    if let TagUse::Cloth(cloth) = &model.tag_use {
        pen.say("for ").count(model.tag.into()).put(At::Middle, 64, 27);
        pen.say(&cloth.name).put(At::Middle, 64, 36);
    } else {
        pen.say("Pin tag ").count(model.tag.into()).say(" to it.").put(At::Middle, 64, 29);
    }
    if model.log.dated {
        pen.count(model.log.room.into()).say(" tests left").put(At::Middle, 64, 45);
    } else {
        pen.say("Date missing: sync it").put(At::Middle, 64, 45);
    }
}

/// The number on the dial, large, with its unit, and the place that the only button changes underlined.
#[inline(never)]
fn dialled(pen: &mut Pen<'_>, model: &Model, y: i32) {
    let dial = &model.dial;
    let steps = dial.as_length().steps();
    let (number, unit, beside) = match dial.kind() {
        DialKind::Metric => (Decimal::new(i64::from(steps / 160), 1), "mm", 14),
        DialKind::Tape => (Decimal::new(i64::from(steps / 1600), 0), "mm", 14),
        DialKind::Count => (Decimal::new(dial.as_count().into(), 0), "", 0),
        DialKind::Inch | DialKind::InchTape => return inches(pen, steps / 2540, y),
    };
    let end = pen.number(number).put_digits(beside, y);
    pen.say(unit).put(At::Left, end, y + 15);
    if model.one_button {
        underline(pen, dial.place(), dial.kind() == DialKind::Metric, end, y + 26);
    }
}

/// Underlines the digit that a tap raises.
fn underline(pen: &mut Pen<'_>, place: i32, has_decimal: bool, end: i32, y: i32) {
    // From the right: the decimal, the point, then tens and units.
    let from_end = match (has_decimal, place) {
        (true, 20) => 13 + 5 + 26,
        (true, 2) => 13 + 5 + 13,
        (false, 100) => 39,
        (false, 10) => 26,
        _ => 13,
    };
    pen.fill(end - from_end, y, 11, 2);
}

/// Whole inches large, sixteenths beside them.
fn inches(pen: &mut Pen<'_>, sixteenths: i32, y: i32) {
    let count = |count: i32| count.unsigned_abs();
    let mut end = pen.count(count(sixteenths / 16)).put_digits(50, y) + 2;
    let rest = sixteenths % 16;
    if rest > 0 {
        let halvings = rest.trailing_zeros();
        let (above, below) = (rest >> halvings, 16 >> halvings);
        pen.count(count(above)).say("/").count(count(below)).put_large(At::Left, end, y + 2);
        // A figure more where there are two.
        end += 12 * (3 + i32::from(above > 9) + i32::from(below > 9));
    }
    pen.say("in").put(At::Left, end + 3, y + 15);
}

#[inline(never)]
fn dial(pen: &mut Pen<'_>, model: &Model) {
    head(pen);
    dialled(pen, model, 18);
}

fn extended(pen: &mut Pen<'_>, model: &Model) {
    let Some(test) = &model.test else { return };
    let turn = match model.correcting {
        Some(ReadingAt::Pull(index)) => index,
        _ => test.pulls().len(),
    };
    pen.say("Pull ").count(small(turn.saturating_add(1))).say(" read");
    head(pen);
    if model.has_clock() {
        // The cloth rests meanwhile.
        time(pen.say("lies "), model.seconds()).put(At::Right, 126, 0);
    }
    dialled(pen, model, 14);
    if let Some((percent, class)) = live(model, test.gauge()) {
        pen.number(percent.percent(1)).say(" %  ").say(class).put(At::Middle, 64, 43);
    }
}

fn recovered(pen: &mut Pen<'_>, model: &Model) {
    let Some(test) = &model.test else { return };
    head(after(pen.say("After "), model.rest_seconds).say(" reads"));
    dialled(pen, model, 14);
    if let Some((growth, _)) = live(model, test.gauge()) {
        pen.say("growth ").number(growth.percent(1)).say(" %").put(At::Middle, 64, 43);
    }
}

/// Says a time since release.
#[inline(never)]
fn after<'p, 'f>(pen: &'p mut Pen<'f>, seconds: u32) -> &'p mut Pen<'f> {
    if seconds >= 120 { pen.count(seconds / 60).say(" min") } else { pen.count(seconds).say(" s") }
}

/// The change against the gauge length that the dialled length means, and its class.
fn live(model: &Model, gauge: Length) -> Option<(Ratio, &'static str)> {
    let (gauge, length) = (i64::from(gauge.steps()), i64::from(model.dial.as_length().steps()));
    let ratio = Ratio::new(length - gauge, gauge)?;
    Some((ratio, Table::OWN.class(ratio).name))
}

fn pull(pen: &mut Pen<'_>, model: &Model) {
    let turn = model.test.as_ref().map_or(0, |test| test.pulls().len()).saturating_add(1);
    head(pen.say("Pull ").count(small(turn)).say(": hold, read"));
    clock(pen, model.seconds(), 15);
    pen.say("press as you let go").put(At::Middle, 64, 43);
}

fn clock(pen: &mut Pen<'_>, seconds: u32, y: i32) {
    time(pen, seconds).put_digits(0, y);
}

/// Says minutes and seconds.
fn time<'p, 'f>(pen: &'p mut Pen<'f>, seconds: u32) -> &'p mut Pen<'f> {
    let seconds_only = seconds % 60;
    pen.count((seconds / 60).min(99)).say(if seconds_only < 10 { ":0" } else { ":" });
    pen.count(seconds_only)
}

/// A countdown that is seen from the corner of the eye: the screen fills from the left, and turns over when it is time.
fn rest(pen: &mut Pen<'_>, model: &Model) {
    let Some(target) = model.rest_target() else {
        head(pen.say("Rest, then read"));
        return clock(pen, model.seconds(), 18);
    };
    let seconds = model.seconds();
    if seconds >= target {
        pen.fill(0, 0, 128, 54);
        pen.lit = false;
        pen.say("READ NOW").put_large(At::Middle, 64, 8);
        after(pen.say("after "), seconds).put(At::Middle, 64, 36);
        pen.lit = true;
        return;
    }
    head(after(pen.say("Rest, read at "), target));
    clock(pen, target - seconds, 15);
    let width = 124 * i32::try_from(seconds).unwrap_or(0) / i32::try_from(target).unwrap_or(1).max(1);
    pen.outline(0, 43, 128, 10);
    pen.fill(2, 45, width, 6);
}
