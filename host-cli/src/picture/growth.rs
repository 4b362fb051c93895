//! Growth over time after release: the readings with what they are worth, and what is to come as a band.

use tenter_core::forecast::Forecast;
use tenter_core::{Confidence, Limit};

use super::svg::{self, Anchor, circle, line, polygon, rect, text};
use super::{Picture, Size, fit, words};
use crate::finding::axis::{Axis, Spread, step, ticks};
pub use crate::finding::drawn::{GrowthReading, to_come};
use crate::words::terms::duration;
use crate::words::typeset::minus;

/// What is drawn.
#[derive(Debug, Clone)]
pub struct Growth<'a> {
    /// What the picture is of, such as the name of a cloth and the grain.
    pub title: &'a str,
    /// The readings, in any order.
    pub readings: &'a [GrowthReading],
    /// Growth to come, each at its seconds after release, in rising order; empty where there is none.
    pub to_come: &'a [(u32, Forecast)],
    /// The most growth that is asked.
    pub at_most: Option<Limit>,
    /// How sure the drawn trust is.
    pub confidence: Confidence,
}

const WIDTH: f64 = 400.0;
const HEIGHT: f64 = 250.0;
const LEFT: f64 = 46.0;
const RIGHT: f64 = 384.0;
const TOP: f64 = 34.0;
const FOOT: f64 = 188.0;
/// The forecast's own certainty, whatever is asked elsewhere: the band held about 95 % of the simulated cloths.
const BAND: &str = "to come, about 95 % sure";

/// Draws growth over time.
#[must_use]
pub fn draw(growth: &Growth<'_>) -> Picture {
    let title = format!("Growth of {} after release", words::isolated(growth.title));
    let mut picture = Picture::new(Size::Pixels, WIDTH, HEIGHT, &title, &description(growth));
    let (time, percent) = axes(growth);
    grid(&mut picture, &time, &percent);
    if let Some(most) = growth.at_most {
        limit(&mut picture, &percent, most);
    }
    band(&mut picture, &time, &percent, growth);
    if growth.readings.is_empty() {
        let middle = (f64::midpoint(LEFT, RIGHT), f64::midpoint(TOP, FOOT));
        picture.draw(text("", middle, 13.0, Anchor::Middle, "not read yet"));
    }
    for reading in growth.readings {
        point(&mut picture, &time, &percent, reading, growth.confidence);
    }
    legend(&mut picture, growth);
    picture
}

fn description(growth: &Growth<'_>) -> String {
    let mut sentences: Vec<String> = Vec::new();
    for reading in in_order(growth.readings) {
        let seen = words::figure(&reading.growth, growth.confidence);
        sentences.push(format!("{} after release: {seen}.", duration(reading.seconds)));
    }
    if sentences.is_empty() {
        sentences.push("Not read yet.".to_owned());
    }
    for (seconds, to_come) in growth.to_come {
        sentences.push(format!("Expected at {}: {}.", duration(*seconds), expected(to_come)));
    }
    if let Some(most) = growth.at_most {
        sentences.push(format!("Asked: at most {}.", words::limit(most)));
    }
    sentences.join(" ")
}

fn expected(to_come: &Forecast) -> String {
    let round = |value| tenter_core::Decimal::round(value, 1);
    let rough = if to_come.rough { ", rough" } else { "" };
    minus(&format!("{} % ± {}{rough}", round(to_come.percent), round(to_come.half_width)))
}

fn in_order(readings: &[GrowthReading]) -> Vec<GrowthReading> {
    let mut readings = readings.to_vec();
    readings.sort_by_key(|reading| reading.seconds);
    readings
}

/// Time from 30 s to 1 h, and percent from 0; both reach further where a reading does.
fn axes(growth: &Growth<'_>) -> (Axis, Axis) {
    let times = growth.readings.iter().map(|reading| reading.seconds);
    let times = times.chain(growth.to_come.iter().map(|(seconds, _)| *seconds)).map(f64::from);
    let (first, last) = times.fold((30.0, 3600.0), |(first, last), at| (f64::min(first, at), f64::max(last, at)));
    let seen = growth.readings.iter().map(|reading| f64::from(reading.growth.ratio.percent_f32()));
    let middles = seen.chain(growth.to_come.iter().map(|(_, to_come)| to_come.percent.into()));
    let limit = growth.at_most.map_or(0.0, |most| f64::from(most.ratio().percent_f32()) * 1.2);
    let (least, most) =
        middles.fold((0.0, limit.max(1.5)), |(least, most), at| (f64::min(least, at), f64::max(most, at)));
    let ends = growth.readings.iter().map(|reading| reading.growth.interval(growth.confidence));
    let bands = growth.to_come.iter().map(|(_, to)| (to.percent - to.half_width, to.percent + to.half_width));
    let (lowest, highest) = ends
        .chain(bands)
        .fold((least, most), |(low, high), (from, to)| (f64::min(low, from.into()), f64::max(high, to.into())));
    // A very wide trust runs off the picture, or it would flatten everything else.
    let reach = most - least;
    let low = lowest.max(least - reach * 0.6);
    let high = highest.min(most + reach).max(most * 1.08);
    let step = step(high - low, 5.0);
    let percent = Axis::new(Spread::Even, (low / step).floor() * step, (high / step).ceil() * step, FOOT, TOP);
    (Axis::new(Spread::Log, first.max(1.0) * 0.8, last * 1.2, LEFT, RIGHT), percent)
}

fn grid(picture: &mut Picture, time: &Axis, percent: &Axis) {
    picture.draw(text("tn-small", (8.0, 18.0), 11.0, Anchor::Start, "growth, % of the relaxed length"));
    for tick in ticks(percent.low(), percent.high(), step(percent.high() - percent.low(), 5.0)) {
        let y = percent.at(tick);
        let class = if tick.abs() < 1e-9 { "tn-rule" } else { "tn-grid" };
        picture.draw(line(class, (LEFT, y), (RIGHT, y)));
        picture.draw(text("tn-small", (LEFT - 6.0, y + 4.0), 11.0, Anchor::End, words::percent(tick)));
    }
    let mut taken = 0.0;
    for seconds in [1, 5, 10, 30, 60, 120, 300, 900, 1800, 3600, 7200, 21_600, 86_400, 604_800, 2_592_000] {
        let at = f64::from(seconds);
        if time.is_before(at) || time.is_beyond(at) {
            continue;
        }
        let x = time.at(at);
        picture.draw(line("tn-grid", (x, TOP), (x, FOOT)));
        let label = tick_label(seconds);
        let half = fit::width(&label) * 5.5;
        if x - half > taken && x + half < WIDTH {
            picture.draw(text("tn-small", (x, FOOT + 15.0), 11.0, Anchor::Middle, label));
            taken = x + half + 5.0;
        }
    }
    picture.draw(text(
        "tn-small",
        (RIGHT, FOOT + 31.0),
        11.0,
        Anchor::End,
        "time after release, each doubling equally wide",
    ));
}

fn tick_label(seconds: u32) -> String {
    match seconds {
        60 => "1 min".to_owned(),
        day if day >= 86_400 => format!("{} d", day / 86_400),
        other => duration(other),
    }
}

/// What is too much, hatched from the limit upwards.
fn limit(picture: &mut Picture, percent: &Axis, most: Limit) {
    let y = percent.at(most.ratio().percent_f32().into());
    picture.draw(line("tn-ask-line", (LEFT, y), (RIGHT, y)).at("stroke-width", 2.0));
    let up = (y - 6.0).max(TOP);
    let slants = ticks(LEFT, RIGHT - 6.0, 8.0).map(|x| ((x, y), (x + (y - up), up)));
    picture.draw(svg::strokes("tn-ask-line", slants).at("stroke-width", 0.7));
    // The words stand above the plot, where no reading and no band can lie, with a piece of the line before them.
    let words = fit::shortened(&format!("asked at most {}", words::limit(most)), 14.0);
    let (from, y) = (RIGHT - fit::width(&words) * 11.0 - 26.0, 16.0);
    picture.draw(line("tn-ask-line", (from, y), (from + 20.0, y)).at("stroke-width", 2.0));
    let slants = [0.0, 7.0, 14.0].map(|x| ((from + x, y), (from + x + 6.0, y - 6.0)));
    picture.draw(svg::strokes("tn-ask-line", slants).at("stroke-width", 0.7));
    picture.draw(text("tn-asked", (RIGHT, 18.0), 11.0, Anchor::End, words));
}

/// The forecast: a band that opens from the last reading, its middle dashed, a ring at each stated time.
fn band(picture: &mut Picture, time: &Axis, percent: &Axis, growth: &Growth<'_>) {
    if growth.to_come.is_empty() {
        return;
    }
    let ordered = in_order(growth.readings);
    let start = ordered.last().map(|last| {
        let middle = last.growth.ratio.percent_f32();
        (last.seconds, middle, last.growth.half_width(growth.confidence))
    });
    let to_come = growth.to_come.iter().map(|(seconds, to)| (*seconds, to.percent, to.half_width));
    let knots: Vec<(u32, f32, f32)> = start.into_iter().chain(to_come).collect();
    let place = |(seconds, value): (u32, f32)| (time.at(seconds.into()), percent.at(value.into()));
    let mut outline: Vec<svg::Point> = knots.iter().map(|(at, middle, half)| place((*at, middle + half))).collect();
    outline.extend(knots.iter().rev().map(|(at, middle, half)| place((*at, middle - half))));
    picture.draw(polygon("tn-shade", &outline).at("fill-opacity", 0.7));
    let middle: Vec<svg::Point> = knots.iter().map(|(at, middle, _)| place((*at, *middle))).collect();
    picture.draw(svg::polyline("tn-dash", &middle).at("stroke-width", 1.5));
    for (seconds, to_come) in growth.to_come {
        let (x, y) = place((*seconds, to_come.percent));
        picture.draw(circle("tn-hollow", (x, y), 4.5).at("stroke-width", 1.5));
    }
}

fn point(picture: &mut Picture, time: &Axis, percent: &Axis, reading: &GrowthReading, confidence: Confidence) {
    let x = time.at(reading.seconds.into());
    let (low, high) = reading.growth.interval(confidence);
    let (bottom, top) = (percent.at(low.into()), percent.at(high.into()));
    let y = percent.at(reading.growth.ratio.percent_f32().into());
    // Never so short that the tick hides it.
    let (top, bottom) = (top.min(y - 2.0), bottom.max(y + 2.0));
    picture.draw(rect("tn-trust", (x - 4.0, top), 8.0, bottom - top));
    picture.draw(line("tn-line", (x - 9.0, y), (x + 9.0, y)).at("stroke-width", 2.5));
}

fn legend(picture: &mut Picture, growth: &Growth<'_>) {
    let y = HEIGHT - 10.0;
    picture.draw(rect("tn-trust", (16.0, y - 10.0), 8.0, 12.0));
    picture.draw(line("tn-line", (12.0, y - 4.0), (28.0, y - 4.0)).at("stroke-width", 2.5));
    let read = format!("read, with its {}", words::trust(growth.confidence));
    picture.draw(text("tn-small", (33.0, y), 11.0, Anchor::Start, read));
    if !growth.to_come.is_empty() {
        picture.draw(rect("tn-shade", (204.0, y - 10.0), 22.0, 12.0).at("fill-opacity", 0.7));
        picture.draw(circle("tn-hollow", (215.0, y - 4.0), 4.0).at("stroke-width", 1.5));
        picture.draw(text("tn-small", (232.0, y), 11.0, Anchor::Start, BAND));
    }
}
