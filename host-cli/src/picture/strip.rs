//! The stretch of a cloth as a strip, across above and along below, on a scale that it shares with all others of a list:
//! what is asked as a hatched box between brackets, what the reading is worth as a band, the value as a thin tick.

use tenter_core::{Confidence, Figure, Range};

use super::svg::{self, Anchor, line, polygon, rect, text};
use super::{Picture, Size, words};
use crate::finding::axis::{Axis, Spread};

const WIDTH: f64 = 280.0;
const LEFT: f64 = 6.0;
const RIGHT: f64 = 270.0;
/// The height of a lane.
const LANE: f64 = 19.0;
/// Where the scale has its lines, in percent: closer where most cloths lie.
const STOPS: [f64; 7] = [0.0, 5.0, 15.0, 30.0, 60.0, 100.0, 200.0];

/// One scale for a list of cloths.
#[derive(Debug, Clone, Copy)]
pub struct StripScale {
    axis: Axis,
    confidence: Confidence,
}

/// A lane of a strip.
#[derive(Debug, Clone, Copy)]
pub struct Lane {
    /// What it is called.
    pub name: &'static str,
    /// The stretch; none where it was not measured.
    pub stretch: Option<Figure>,
    /// What is asked.
    pub asked: Range,
}

impl StripScale {
    /// A scale on which all of these have room.
    #[must_use]
    pub fn of(lanes: impl IntoIterator<Item = Lane>, confidence: Confidence) -> Self {
        let most = |lane: Lane| {
            let limits = [lane.asked.at_least, lane.asked.at_most].into_iter().flatten();
            let limits = limits.map(|limit| f64::from(limit.ratio().percent_f32()));
            let stretch = lane.stretch.map(|stretch| f64::from(stretch.ratio.percent_f32()));
            limits.chain(stretch).fold(0.0, f64::max)
        };
        let most = lanes.into_iter().map(most).fold(15.0, f64::max) * 1.08;
        let high = if most > 300.0 { 300.0 } else { most };
        Self { axis: Axis::new(Spread::Root, 0.0, high, LEFT, RIGHT), confidence }
    }

    fn stops(&self) -> impl Iterator<Item = (f64, f64)> {
        STOPS.into_iter().filter(|stop| *stop <= self.axis.high()).map(|stop| (stop, self.axis.at(stop)))
    }

    /// The scale itself, to stand above the strips.
    #[must_use]
    pub fn head(&self) -> Picture {
        let title = "The scale of stretch in percent, the same for all cloths";
        let mut picture = Picture::new(Size::Pixels, WIDTH, 18.0, title, "");
        let mut free_from = 0.0;
        for (stop, x) in self.stops() {
            picture.draw(line("tn-rule", (x, 13.0), (x, 18.0)));
            if x >= free_from {
                let (at, anchor) = match x {
                    first if first < LEFT + 12.0 => (0.0, Anchor::Start),
                    last if last > RIGHT - 12.0 => (WIDTH, Anchor::End),
                    between => (between, Anchor::Middle),
                };
                picture.draw(text("tn-small", (at, 11.0), 11.0, anchor, words::percent(stop)));
                free_from = x + 32.0;
            }
        }
        picture.draw(line("tn-rule", (LEFT, 17.5), (RIGHT, 17.5)));
        picture
    }

    /// The strip of a cloth.
    #[must_use]
    pub fn strip(&self, name: &str, lanes: &[Lane]) -> Picture {
        let count = crate::finding::axis::count(lanes.len());
        let said: Vec<String> = lanes.iter().map(|lane| self.said(lane)).collect();
        let title = format!("Stretch of {}", words::isolated(name));
        let mut picture = Picture::new(Size::Pixels, WIDTH, LANE * count, &title, &said.join(" "));
        let grid = self.stops().map(|(_, x)| ((x, 0.0), (x, LANE * count)));
        picture.draw(svg::strokes("tn-grid", grid));
        for (place, lane) in lanes.iter().enumerate() {
            self.lane(&mut picture, LANE.mul_add(crate::finding::axis::count(place), LANE / 2.0), lane);
        }
        picture
    }

    fn said(&self, lane: &Lane) -> String {
        let seen = lane.stretch.map(|stretch| words::figure(&stretch, self.confidence));
        let asked = words::range(lane.asked).map(|asked| format!("; asked {asked}")).unwrap_or_default();
        format!("{}: {}{asked}.", lane.name, seen.unwrap_or_else(|| "not measured".to_owned()))
    }

    fn lane(&self, picture: &mut Picture, y: f64, lane: &Lane) {
        self.asked(picture, y, &lane.asked);
        let Some(stretch) = lane.stretch else {
            picture.draw(line("tn-dash", (LEFT, y), (RIGHT, y)));
            return;
        };
        picture.draw(line("tn-rule", (LEFT, y), (RIGHT, y)));
        let (low, high) = stretch.interval(self.confidence);
        let (low, high) = (f64::from(low), f64::from(high));
        let (from, to) = (self.axis.at(low.max(0.0)), self.axis.at(high));
        let x = self.axis.at(f64::from(stretch.ratio.percent_f32()).max(0.0));
        // Never so narrow that the tick hides it.
        let (from, to) = (from.min(x - 1.5), to.max(x + 1.5));
        picture.draw(rect("tn-trust", (from, y - 3.5), to - from, 7.0));
        picture.draw(line("tn-line", (x, y - 7.5), (x, y + 7.5)).at("stroke-width", 2.0));
        if self.axis.is_beyond(high) {
            picture.draw(polygon("tn-ink", &[(RIGHT + 8.0, y), (RIGHT, y - 5.0), (RIGHT, y + 5.0)]));
        }
    }

    fn asked(&self, picture: &mut Picture, y: f64, asked: &Range) {
        if asked.is_empty() {
            return;
        }
        let end =
            |limit: Option<tenter_core::Limit>| limit.map(|limit| self.axis.at(limit.ratio().percent_f32().into()));
        let (least, most) = (end(asked.at_least), end(asked.at_most));
        let (from, to) = (least.unwrap_or(LEFT), most.unwrap_or(RIGHT));
        picture.draw(rect("tn-ask-box", (from, y - 8.0), to - from, 16.0));
        picture.draw(svg::hatch("tn-ask-line", (from, y - 8.0), to - from, 16.0, 7.0).at("stroke-width", 0.6));
        for (post, inward) in [(least, 1.0), (most, -1.0)].into_iter().filter_map(|(x, inward)| Some((x?, inward))) {
            let foot = (post + 4.0 * inward).clamp(LEFT, RIGHT);
            let bracket = [(foot, y - 8.5), (post, y - 8.5), (post, y + 8.5), (foot, y + 8.5)];
            picture.draw(svg::polyline("tn-ask-line", &bracket).at("stroke-width", 1.8));
        }
    }
}
