//! A stretch gauge drawn to scale: what was measured as a point, what it is worth as a bar, what is asked as a hatched
//! box, one row a grain above a common axis with the names of the classes.

use tenter_core::{Class, Confidence, Figure, Range, Table};

use super::svg::{self, Anchor, Element, circle, line, polygon, rect, text};
use super::{Picture, Size, fit, words};
use crate::finding::axis::{Axis, Spread, count, step, ticks, upper_end};
pub use crate::finding::drawn::GrainStretch;

/// What is drawn.
#[derive(Debug, Clone)]
pub struct Gauge<'a> {
    /// What the picture is of, such as the name of a cloth.
    pub title: &'a str,
    /// One row a grain.
    pub rows: &'a [GrainStretch],
    /// How sure the drawn trust is.
    pub confidence: Confidence,
    /// Whose names stand below the axis.
    pub table: &'static Table,
    /// Whether the signs are explained; a page of many gauges does so once, with [`key`].
    pub key: bool,
}

const WIDTH: f64 = 400.0;
const LEFT: f64 = 20.0;
const RIGHT: f64 = 380.0;
const TOP: f64 = 12.0;
const ROW: f64 = 76.0;
/// Below the rows: the axis with its classes.
const FOOT: f64 = 62.0;
/// Below that: the signs.
const KEY: f64 = 26.0;

/// Draws a gauge.
#[must_use]
pub fn draw(gauge: &Gauge<'_>) -> Picture {
    let foot = TOP + ROW * count(gauge.rows.len());
    let title = format!("Stretch of {}", words::isolated(gauge.title));
    let height = foot + FOOT + if gauge.key { KEY } else { 0.0 };
    let mut picture = Picture::new(Size::Pixels, WIDTH, height, &title, &description(gauge));
    let axis = axis(gauge.rows, gauge.confidence);
    grid(&mut picture, &axis, gauge.rows.len());
    for (place, row) in gauge.rows.iter().enumerate() {
        draw_row(&mut picture, &axis, TOP + ROW * count(place), row, gauge);
    }
    classes(&mut picture, &axis, foot + 22.0, gauge.table);
    if gauge.key {
        let pulls = gauge.rows.iter().any(|row| !row.pulls.is_empty());
        let asked = gauge.rows.iter().any(|row| !row.asked.is_empty());
        signs(&mut picture, foot + FOOT + KEY - 10.0, &GaugeKey { confidence: gauge.confidence, pulls, asked });
    }
    picture
}

/// What is explained.
#[derive(Debug, Clone, Copy)]
pub struct GaugeKey {
    /// How sure the drawn trust is.
    pub confidence: Confidence,
    /// Whether single pulls are drawn.
    pub pulls: bool,
    /// Whether something is asked.
    pub asked: bool,
}

/// The signs of all gauges of a page.
#[must_use]
pub fn key(key: &GaugeKey) -> Picture {
    let description =
        "A tick is what was measured, the band what it is worth, a ring one pull; hatched is what is asked.";
    let mut picture = Picture::new(Size::Pixels, WIDTH, KEY, "The signs of the gauges", description);
    signs(&mut picture, KEY - 9.0, key);
    picture
}

fn description(gauge: &Gauge<'_>) -> String {
    let sentence = |row: &GrainStretch| {
        let seen = row.stretch.map_or_else(|| "not measured".to_owned(), |stretch| measured(&stretch, gauge));
        let asked = words::range(row.asked).map(|asked| format!("; asked {asked}")).unwrap_or_default();
        let answer = row.answer.map(|answer| format!(": {}", words::answer(answer))).unwrap_or_default();
        format!("{}: {seen}{asked}{answer}.", row.grain.word())
    };
    let mut sentences: Vec<String> = gauge.rows.iter().map(sentence).collect();
    sentences.push(format!("± is {}.", words::trust(gauge.confidence)));
    sentences.join(" ")
}

fn measured(stretch: &Figure, gauge: &Gauge<'_>) -> String {
    format!("{}, {}", words::figure(stretch, gauge.confidence), gauge.table.class(stretch.ratio).name)
}

/// From 0 or a little below to beyond everything that matters; a very wide trust runs off the end.
fn axis(rows: &[GrainStretch], confidence: Confidence) -> Axis {
    let limits = rows.iter().flat_map(|row| [row.asked.at_least, row.asked.at_most]).flatten();
    let limits = limits.map(|limit| f64::from(limit.ratio().percent_f32()));
    let figures = rows.iter().filter_map(|row| row.stretch).map(|stretch| stretch.ratio);
    let figures = figures.chain(rows.iter().flat_map(|row| row.pulls.iter().copied()));
    let most = limits.chain(figures.map(|ratio| f64::from(ratio.percent_f32()))).fold(4.0, f64::max);
    let ends = rows.iter().filter_map(|row| row.stretch).map(|stretch| stretch.interval(confidence));
    let (lowest, highest) =
        ends.fold((0.0, most), |(low, high), (from, to)| (f64::min(low, from.into()), f64::max(high, to.into())));
    let high = upper_end(most, highest);
    Axis::new(Spread::Even, lowest.max(-0.06 * high), high, LEFT, RIGHT)
}

fn grid(picture: &mut Picture, axis: &Axis, rows: usize) {
    let foot = TOP + ROW * count(rows);
    let stops: Vec<f64> = ticks(axis.low(), axis.high(), step(axis.high(), 6.0)).collect();
    let lanes = (0..rows).map(|lane| lane_middle(TOP + ROW * count(lane)));
    let across = lanes.flat_map(|middle| stops.iter().map(move |tick| (*tick, middle)));
    let upright = across.map(|(tick, middle)| ((axis.at(tick), middle - 14.0), (axis.at(tick), middle + 14.0)));
    picture.draw(svg::strokes("tn-grid", upright));
    picture
        .draw(svg::strokes("tn-rule", stops.iter().map(|tick| ((axis.at(*tick), foot), (axis.at(*tick), foot + 4.0)))));
    for tick in stops {
        let x = axis.at(tick);
        let label = if tick.abs() < 1e-9 { "0 %".to_owned() } else { words::percent(tick) };
        picture.draw(text("tn-small", (x, foot + 16.0), 11.0, Anchor::Middle, label));
    }
    picture.draw(line("tn-rule", (LEFT, foot), (RIGHT, foot)));
}

/// Where a row's figures lie, from its top.
fn lane_middle(top: f64) -> f64 {
    top + 40.0
}

fn draw_row(picture: &mut Picture, axis: &Axis, y: f64, row: &GrainStretch, gauge: &Gauge<'_>) {
    picture.draw(text("tn-bold", (LEFT, y + 12.0), 13.0, Anchor::Start, row.grain.word()));
    let seen = row.stretch.map_or_else(|| "not measured".to_owned(), |stretch| measured(&stretch, gauge));
    picture.draw(text("", (LEFT + 90.0, y + 12.0), 13.0, Anchor::Start, seen));
    if let Some(answer) = row.answer {
        picture.draw(text("tn-bold", (RIGHT, y + 12.0), 13.0, Anchor::End, words::answer(answer)));
    }
    let middle = lane_middle(y);
    demand(picture, axis, middle, &row.asked);
    picture.draw(line("tn-rule", (LEFT, middle), (RIGHT, middle)));
    // A ring each above the lane, so that the trust does not cover them.
    for pull in &row.pulls {
        picture.draw(circle("tn-ring", (axis.at(pull.percent_f32().into()), y + 21.0), 2.5));
    }
    if let Some(stretch) = row.stretch {
        trust(picture, axis, middle, &stretch, gauge.confidence);
    }
    if let Some(asked) = words::range(row.asked) {
        let asked = fit::shortened(&format!("asked {asked}"), 33.0);
        picture.draw(text("tn-asked", (LEFT, y + 65.0), 11.0, Anchor::Start, asked));
    }
}

/// What is asked: a hatched box with a post at each end that is asked, open where it is not.
fn demand(picture: &mut Picture, axis: &Axis, y: f64, asked: &Range) {
    if asked.is_empty() {
        return;
    }
    let end = |limit: Option<tenter_core::Limit>| limit.map(|limit| axis.at(limit.ratio().percent_f32().into()));
    let (least, most) = (end(asked.at_least), end(asked.at_most));
    let (from, to) = (least.unwrap_or(LEFT), most.unwrap_or(RIGHT));
    picture.draw(rect("tn-ask-box", (from, y - 11.0), to - from, 22.0));
    picture.draw(svg::hatch("tn-ask-line", (from, y - 11.0), to - from, 22.0, 7.0).at("stroke-width", 0.6));
    for (post, inward) in [(least, 1.0), (most, -1.0)].into_iter().filter_map(|(x, inward)| Some((x?, inward))) {
        let foot = (post + 5.0 * inward).clamp(LEFT, RIGHT);
        let bracket = [(foot, y - 13.0), (post, y - 13.0), (post, y + 13.0), (foot, y + 13.0)];
        picture.draw(svg::polyline("tn-ask-line", &bracket).at("stroke-width", 2.0));
    }
}

/// What was measured: a tick on a band as wide as what it is worth; an arrowhead where that runs off the axis.
fn trust(picture: &mut Picture, axis: &Axis, y: f64, stretch: &Figure, confidence: Confidence) {
    let (low, high) = stretch.interval(confidence);
    let (low, high) = (f64::from(low), f64::from(high));
    let (from, to) = (axis.at(low), axis.at(high));
    let x = axis.at(stretch.ratio.percent_f32().into());
    // Never so narrow that the tick hides it.
    let (from, to) = (from.min(x - 2.0), to.max(x + 2.0));
    picture.draw(rect("tn-trust", (from, y - 4.5), to - from, 9.0));
    picture.draw(tick(x, y, 11.0));
    for (x, out, off) in [(from, -1.0, axis.is_before(low)), (to, 1.0, axis.is_beyond(high))] {
        if off {
            picture.draw(polygon("tn-ink", &[(x + 8.0 * out, y), (x, y - 7.0), (x, y + 7.0)]));
        }
    }
}

/// The tick of a value, so high on either side.
fn tick(x: f64, y: f64, reach: f64) -> Element {
    line("tn-line", (x, y - reach), (x, y + reach)).at("stroke-width", 2.5)
}

/// The classes below the axis; a name that does not fit its class goes to a second line.
fn classes(picture: &mut Picture, axis: &Axis, y: f64, table: &Table) {
    let mut from = axis.at(0.0);
    let mut second_line_ends = LEFT;
    for (place, class) in table.classes.iter().enumerate() {
        let to = class.up_to.map_or(RIGHT, |milli| axis.at(f64::from(milli) / 1000.0));
        if to - from < 0.5 {
            continue;
        }
        let shade = if place % 2 == 0 { "tn-shade" } else { "tn-hollow" };
        picture.draw(rect(shade, (from, y), to - from, 5.0));
        second_line_ends = name(picture, class, (from, to), y, second_line_ends);
        from = to;
    }
    picture.draw(rect("tn-rule", (axis.at(0.0), y), RIGHT - axis.at(0.0), 5.0));
}

/// Writes a name; where the second line is taken up to.
fn name(picture: &mut Picture, class: &Class, (from, to): (f64, f64), y: f64, taken: f64) -> f64 {
    let wide = fit::width(class.name) * 11.0;
    let middle = f64::midpoint(from, to);
    if wide <= to - from {
        picture.draw(text("tn-small", (middle, y + 17.0), 11.0, Anchor::Middle, class.name));
        return taken;
    }
    let at = middle.clamp(LEFT + wide / 2.0, RIGHT - wide / 2.0);
    if at - wide / 2.0 < taken {
        return taken;
    }
    picture.draw(line("tn-rule", (middle, y + 5.0), (middle, y + 19.0)));
    picture.draw(text("tn-small", (at, y + 29.0), 11.0, Anchor::Middle, class.name));
    at + wide / 2.0 + 4.0
}

/// The signs in a line, from the left as far as there are any.
fn signs(picture: &mut Picture, y: f64, key: &GaugeKey) {
    let small = |x: f64, words: String| text("tn-small", (x, y), 11.0, Anchor::Start, words);
    let x = LEFT + 6.0;
    picture.draw(tick(x, y - 4.0, 6.5));
    picture.draw(small(x + 9.0, "measured".to_owned()));
    let x = LEFT + 78.0;
    picture.draw(rect("tn-trust", (x, y - 8.0), 22.0, 8.0));
    picture.draw(small(x + 28.0, words::trust(key.confidence)));
    if key.pulls {
        let x = LEFT + 216.0;
        picture.draw(circle("tn-ring", (x, y - 4.0), 2.5));
        picture.draw(small(x + 7.0, "one pull".to_owned()));
    }
    if key.asked {
        let x = LEFT + 288.0;
        picture.draw(rect("tn-ask-box", (x, y - 10.0), 22.0, 12.0));
        picture.draw(svg::hatch("tn-ask-line", (x, y - 10.0), 22.0, 12.0, 7.0).at("stroke-width", 0.6));
        picture.draw(small(x + 28.0, "asked".to_owned()));
    }
}
