//! Several people's pulls of one cloth: a row each on one scale, and what all say together.

use super::svg::{self, Anchor, circle, line, polygon, rect, text};
use super::{Picture, Size, fit, words};
use crate::finding::axis::{Axis, Spread, count, step, ticks};
use crate::finding::class::{ClassPulls, Hand};
use crate::words::class as told;
use crate::words::typeset::minus;

const WIDTH: f64 = 340.0;
const LEFT: f64 = 100.0;
const RIGHT: f64 = 326.0;
const TOP: f64 = 16.0;
const ROW: f64 = 34.0;
/// Below the rows: the scale and the signs.
const FOOT: f64 = 72.0;

/// Draws them.
#[must_use]
pub fn draw(class: &ClassPulls) -> Picture {
    let rows = count(class.hands.len()) + 1.0;
    let foot = TOP + ROW * rows;
    let title = format!("Pulls of {} by several people", words::isolated(&class.fabric.name));
    let mut picture = Picture::new(Size::Pixels, WIDTH, foot + FOOT, &title, &description(class));
    let axis = axis(class);
    // What all say lies behind every row, so that each is seen against it.
    let band = [class.compared.mean - class.half, class.compared.mean + class.half].map(|at| axis.at(at.into()));
    picture.draw(rect("tn-shade", (band[0], TOP), band[1] - band[0], foot - TOP).at("fill-opacity", 0.6));
    grid(&mut picture, &axis, foot);
    let mean = axis.at(class.compared.mean.into());
    picture.draw(line("tn-dash", (mean, TOP), (mean, foot)).at("stroke-width", 1.2));
    for (place, hand) in class.hands.iter().enumerate() {
        row(&mut picture, &axis, TOP + ROW * count(place), hand);
    }
    let all = Hand { name: None, is_said: false, pulls: Vec::new(), mean: class.compared.mean, half: class.half };
    let y = TOP + ROW * count(class.hands.len());
    picture.draw(line("tn-rule", (8.0, y), (RIGHT, y)));
    picture.draw(text("tn-bold", (8.0, y + 15.0), 13.0, Anchor::Start, "all"));
    figure(&mut picture, y, &all);
    trust(&mut picture, &axis, y + 22.0, &all);
    signs(&mut picture, foot + FOOT - 26.0);
    picture
}

fn description(class: &ClassPulls) -> String {
    let each = class.hands.iter().map(|hand| format!("{}: {}.", told::called(hand), told::mean(hand.mean, hand.half)));
    let sentences: Vec<String> = each.chain([told::lead(class), told::spread(class)]).collect();
    minus(&sentences.join(" "))
}

fn axis(class: &ClassPulls) -> Axis {
    let (low, high) = class.ends();
    let step = step(f64::from(high - low).max(1.0), 6.0);
    let [low, high] = [(f64::from(low) / step).floor(), (f64::from(high) / step).ceil()].map(|at| at * step);
    Axis::new(Spread::Even, low, high, LEFT, RIGHT)
}

fn grid(picture: &mut Picture, axis: &Axis, foot: f64) {
    for tick in ticks(axis.low(), axis.high(), step(axis.high() - axis.low(), 6.0)) {
        let x = axis.at(tick);
        picture.draw(line("tn-grid", (x, TOP), (x, foot)));
        picture.draw(line("tn-rule", (x, foot), (x, foot + 4.0)));
        picture.draw(text("tn-small", (x, foot + 16.0), 11.0, Anchor::Middle, words::percent(tick)));
    }
    picture.draw(line("tn-rule", (LEFT, foot), (RIGHT, foot)));
}

fn row(picture: &mut Picture, axis: &Axis, y: f64, hand: &Hand) {
    let name = fit::shortened(&told::called(hand), 7.0);
    picture.draw(text("tn-bold", (8.0, y + 15.0), 13.0, Anchor::Start, name));
    figure(picture, y, hand);
    for (place, pull) in hand.pulls.iter().enumerate() {
        // Rings of equal pulls are stacked.
        let below = hand.pulls.iter().take(place).filter(|other| (*other - pull).abs() < 0.05).count();
        picture.draw(circle("tn-ring", (axis.at((*pull).into()), y + 10.0 - 5.0 * count(below.min(2))), 2.5));
    }
    trust(picture, axis, y + 22.0, hand);
}

fn figure(picture: &mut Picture, y: f64, hand: &Hand) {
    let mean = minus(&told::mean(hand.mean, hand.half));
    picture.draw(text("tn-small", (8.0, y + 29.0), 11.0, Anchor::Start, mean));
}

/// The mean as a tick on a band as wide as what it is worth.
fn trust(picture: &mut Picture, axis: &Axis, y: f64, hand: &Hand) {
    let at = |value: f32| axis.at(value.into());
    let (low, high) = (f64::from(hand.mean - hand.half), f64::from(hand.mean + hand.half));
    let (from, x, to) = (at(hand.mean - hand.half), at(hand.mean), at(hand.mean + hand.half));
    let (from, to) = (from.min(x - 2.0), to.max(x + 2.0));
    picture.draw(rect("tn-trust", (from, y - 3.5), to - from, 7.0));
    for (end, out, off) in [(from, -1.0, axis.is_before(low)), (to, 1.0, axis.is_beyond(high))] {
        if off {
            picture.draw(polygon("tn-ink", &[(end + 7.0 * out, y), (end, y - 5.5), (end, y + 5.5)]));
        }
    }
    picture.draw(line("tn-line", (x, y - 8.0), (x, y + 8.0)).at("stroke-width", 2.0));
}

fn signs(picture: &mut Picture, y: f64) {
    let below = y + 18.0;
    let small = |x: f64, y: f64, words: &str| text("tn-small", (x, y), 11.0, Anchor::Start, words);
    picture.draw(polygon("tn-ink", &[(8.0, y - 4.0), (13.0, y - 10.0), (18.0, y - 4.0), (13.0, y + 2.0)]));
    picture.draw(small(36.0, y, "mean of one person"));
    picture.draw(rect("tn-ink", (172.0, y - 6.5), 22.0, 5.0));
    picture.draw(small(200.0, y, "its trust, 95 % sure"));
    picture.draw(circle("tn-ring", (13.0, below - 4.0), 2.5));
    picture.draw(small(36.0, below, "one pull"));
    picture.draw(svg::rect("tn-shade", (172.0, below - 10.0), 22.0, 12.0).at("fill-opacity", 0.6));
    picture.draw(small(200.0, below, "mean of all, 95 % sure"));
}
