//! Draws a model; reads it only.

mod bar;
mod pen;
mod result;
mod words;

use core::fmt::{self, Write as _};

use tenter_core::{Length, Ratio, Table, Unit};

use crate::frame::Frame;
use crate::ui::{Kind, Model, Row, Screen};
use pen::{At, Line, Pen};

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
        Screen::Gauge => dial(&mut pen, model, "Marks apart"),
        Screen::Extended => extended(&mut pen, model),
        Screen::Recovered => recovered(&mut pen, model),
        Screen::Tag => dial(&mut pen, model, "Tag on the cloth"),
        Screen::Pull => pull(&mut pen, model),
        Screen::Rest => rest(&mut pen, model),
        Screen::Result => result::draw(&mut pen, model),
        Screen::Saving => message(&mut pen, "Saving", &["Do not switch off."]),
        Screen::Saved => saved(&mut pen, model),
        Screen::Settle => list(&mut pen, model, "Pull once, let go"),
        Screen::Release => list(&mut pen, model, "Let go, lay it flat"),
        Screen::Choice => choice(&mut pen, model),
        Screen::Discard => list(&mut pen, model, "Throw it away?"),
        Screen::Full => list(&mut pen, model, "Log full: sync first"),
        Screen::NoLog => list(&mut pen, model, "No log answers"),
        Screen::NotSaved => list(&mut pen, model, "Not saved"),
    }
    hint(&mut pen, model);
}

/// What the buttons do here.
fn hint(pen: &mut Pen<'_>, model: &Model) {
    let (left, right) = words::hint(model.screen, model.one_button, model.can_save());
    pen.text(At::Left, 0, 55, left);
    pen.text(At::Right, 127, 55, right);
}

fn head(pen: &mut Pen<'_>, words: &str) {
    pen.text(At::Left, 0, 0, words);
    pen.fill(0, 10, 128, 1);
}

fn head_of(pen: &mut Pen<'_>, words: fmt::Arguments<'_>) {
    pen.format(At::Left, 0, 0, words);
    head(pen, "");
}

fn list(pen: &mut Pen<'_>, model: &Model, title: &str) {
    head(pen, title);
    rows(pen, model);
}

fn rows(pen: &mut Pen<'_>, model: &Model) {
    const SHOWN: usize = 4;
    let rows = model.screen.rows();
    let chosen = usize::from(model.row);
    let first = chosen.saturating_sub(SHOWN - 1);
    for ((index, row), y) in rows.iter().enumerate().skip(first).zip([12, 23, 34, 45]) {
        let mut words = Line::new();
        let _ = label(&mut words, model, *row); // What is longer than a line is cut.
        if index == chosen {
            pen.fill(0, y - 1, 128, 11);
            pen.dark().text(At::Left, 2, y, &words);
        } else {
            pen.text(At::Left, 2, y, &words);
        }
    }
    // Small arrows tell that the list goes on.
    let last_shown = first + SHOWN >= rows.len();
    for row in 0..3 {
        if first > 0 {
            pen.fill(122 - row, 6 + row, 1 + 2 * row, 1);
        }
        if !last_shown {
            pen.fill(122 - row, 53 - row, 1 + 2 * row, 1);
        }
    }
}

fn label(words: &mut Line, model: &Model, row: Row) -> fmt::Result {
    match (row, &model.demand) {
        (Row::Demand, Some(labelled)) => write!(words, "For {}", labelled.label()),
        (Row::Grain, _) => write!(words, "Grain {}", model.grain.word()),
        (Row::Gauge, _) => write!(words, "Marks {}", model.gauge.show(if model.inch { Unit::Inch } else { Unit::Mm })),
        (row, _) => words.write_str(words::row(row, model.is_measured())),
    }
}

fn home(pen: &mut Pen<'_>, model: &Model) {
    match (model.log.present, model.log.unsent) {
        (false, _) => head(pen, "tenter   no log"),
        (true, 0) => head(pen, "tenter   all sent"),
        (true, unsent) => head_of(pen, format_args!("tenter   {unsent} to send")),
    }
    rows(pen, model);
}

fn choice(pen: &mut Pen<'_>, model: &Model) {
    let (pulls, rests) = model.test.as_ref().map_or((0, 0), |test| (test.pulls().len(), test.rests().len()));
    head_of(pen, format_args!("Pulls {pulls}  read back {rests}"));
    rows(pen, model);
}

fn message(pen: &mut Pen<'_>, title: &str, lines: &[&str]) {
    pen.title(At::Middle, 64, 10, title);
    for (place, line) in (0i32..).zip(lines) {
        pen.text(At::Middle, 64, 33 + 10 * place, line);
    }
}

fn saved(pen: &mut Pen<'_>, model: &Model) {
    pen.title(At::Middle, 64, 6, "Saved");
    let tag = if model.next_tag > 1 { model.next_tag - 1 } else { 999 };
    pen.format(At::Middle, 64, 29, format_args!("Pin tag {tag} to it."));
    pen.format(At::Middle, 64, 41, format_args!("Room for {} more", model.log.room));
}

/// A large number with its unit, and the place that the only button changes underlined.
fn number(pen: &mut Pen<'_>, model: &Model, y: i32) {
    let dial = &model.dial;
    let mut text: Line = Line::new();
    let (unit, whole) = match dial.kind() {
        Kind::Metric => {
            let halves = dial.as_length().steps() / 800;
            let _ = write!(text, "{}.{}", halves / 2, if halves % 2 == 0 { 0 } else { 5 });
            ("mm", true)
        }
        Kind::Inch => return inches(pen, dial.as_length(), y),
        Kind::Count => {
            let _ = write!(text, "{}", dial.as_count());
            ("", false)
        }
    };
    let unit_width = if whole { 14 } else { 0 };
    let x = (128 - Pen::digits_width(&text) - unit_width) / 2;
    let end = pen.digits(x, y, &text);
    pen.text(At::Left, end, y + 15, unit);
    if model.one_button {
        underline(pen, dial.place(), whole, end, y + 26);
    }
}

/// Underlines the digit that a tap raises.
fn underline(pen: &mut Pen<'_>, place: i32, metric: bool, end: i32, y: i32) {
    // From the right: the decimal, the point, then tens and units; counts have no decimal.
    let from_end = match (metric, place) {
        (true, 20) => 13 + 5 + 26,
        (true, 2) => 13 + 5 + 13,
        (false, 100) => 39,
        (false, 10) => 26,
        _ => 13,
    };
    pen.fill(end - from_end, y, 11, 2);
}

/// Whole inches large, sixteenths beside them.
fn inches(pen: &mut Pen<'_>, length: Length, y: i32) {
    let sixteenths = length.steps() / 2540;
    let mut text: Line = Line::new();
    let _ = write!(text, "{}", sixteenths / 16);
    let x = (128 - Pen::digits_width(&text) - 50) / 2;
    let end = pen.digits(x, y, &text);
    let mut fraction: Line = Line::new();
    let rest = sixteenths % 16;
    if rest > 0 {
        let halvings = rest.trailing_zeros();
        let _ = write!(fraction, "{}/{}", rest >> halvings, 16 >> halvings);
    }
    pen.title(At::Left, end + 2, y + 2, &fraction);
    let width = i32::try_from(12 * fraction.len()).unwrap_or(0);
    pen.text(At::Left, end + 5 + width, y + 15, "in");
}

fn dial(pen: &mut Pen<'_>, model: &Model, title: &str) {
    head(pen, title);
    number(pen, model, 18);
}

fn extended(pen: &mut Pen<'_>, model: &Model) {
    let Some(test) = &model.test else { return };
    head_of(pen, format_args!("Pull {} reads", test.pulls().len() + 1));
    number(pen, model, 14);
    if let Some((percent, class)) = live(model, test.gauge()) {
        pen.format(At::Middle, 64, 43, format_args!("{} %  {class}", percent.percent(1)));
    }
}

fn recovered(pen: &mut Pen<'_>, model: &Model) {
    let Some(test) = &model.test else { return };
    head_of(pen, format_args!("After {} reads", words::Duration(model.rest_seconds)));
    number(pen, model, 14);
    if let Some((growth, _)) = live(model, test.gauge()) {
        pen.format(At::Middle, 64, 43, format_args!("growth {} %", growth.percent(1)));
    }
}

/// The change against the gauge length that the dialled length means, and its class.
fn live(model: &Model, gauge: Length) -> Option<(Ratio, &'static str)> {
    let (gauge, length) = (i64::from(gauge.steps()), i64::from(model.dial.as_length().steps()));
    let ratio = Ratio::new(length - gauge, gauge)?;
    Some((ratio, Table::OWN.class(ratio).name))
}

fn pull(pen: &mut Pen<'_>, model: &Model) {
    head(pen, "Pull and hold, read");
    clock(pen, model.seconds(), 18);
}

fn clock(pen: &mut Pen<'_>, seconds: u32, y: i32) {
    let mut text: Line = Line::new();
    let _ = write!(text, "{}:{:02}", (seconds / 60).min(99), seconds % 60);
    let x = (128 - Pen::digits_width(&text)) / 2;
    pen.digits(x, y, &text);
}

/// A countdown that is seen from the corner of the eye: the screen fills from the left, and turns over when it is time.
fn rest(pen: &mut Pen<'_>, model: &Model) {
    let Some(target) = model.rest_target() else {
        head(pen, "Rest, then read");
        return clock(pen, model.seconds(), 18);
    };
    let seconds = model.seconds();
    if seconds >= target {
        pen.fill(0, 0, 128, 54);
        let mut pen = pen.dark();
        pen.title(At::Middle, 64, 8, "READ NOW");
        pen.format(At::Middle, 64, 36, format_args!("after {}", words::Duration(seconds)));
        return;
    }
    head_of(pen, format_args!("Rest, read at {}", words::Duration(target)));
    clock(pen, target - seconds, 15);
    let width = 124 * i32::try_from(seconds).unwrap_or(0) / i32::try_from(target).unwrap_or(1).max(1);
    pen.outline(0, 43, 128, 10);
    pen.fill(2, 45, width, 6);
}
