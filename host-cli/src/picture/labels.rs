//! Words beside points: each where it covers no point and no other word, or nowhere.

use std::collections::HashMap;

use super::fit;
use super::svg::{Anchor, Point};

/// A rectangle with its sides along the axes.
#[derive(Debug, Clone, Copy)]
pub struct Box2 {
    /// The left side.
    pub left: f64,
    /// The upper side.
    pub top: f64,
    /// The right side.
    pub right: f64,
    /// The lower side.
    pub foot: f64,
}

impl Box2 {
    fn meets(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.foot && other.top < self.foot
    }

    fn holds(&self, other: &Self) -> bool {
        self.left <= other.left && other.right <= self.right && self.top <= other.top && other.foot <= self.foot
    }
}

/// A word with its place.
#[derive(Debug, Clone)]
pub struct Label {
    /// The word.
    pub words: String,
    /// Where it begins, or ends.
    pub at: Point,
    /// Which of the two.
    pub anchor: Anchor,
    /// A line from the point to a word that stands away from it.
    pub leader: Option<(Point, Point)>,
}

/// How words stand to their points.
#[derive(Debug, Clone, Copy)]
pub struct Style {
    /// The radius of a point.
    pub radius: f64,
    /// The font size.
    pub size: f64,
    /// Whether a word may stand away from its point, with a line between them.
    pub led: bool,
}

/// The cells of a raster, so that only neighbours are compared.
#[derive(Default)]
struct Taken {
    cells: HashMap<(u32, u32), Vec<Box2>>,
}

const CELL: f64 = 24.0;

impl Taken {
    fn cells(taken: &Box2) -> impl Iterator<Item = (u32, u32)> {
        // Pictures are some hundred pixels wide; anything else falls into the last cell.
        let cell = |at: f64| (0..200_u32).find(|cell| at < f64::from(cell + 1) * CELL).unwrap_or(200);
        let (top, foot) = (cell(taken.top), cell(taken.foot));
        (cell(taken.left)..=cell(taken.right)).flat_map(move |x| (top..=foot).map(move |y| (x, y)))
    }

    fn add(&mut self, taken: Box2) {
        for cell in Self::cells(&taken) {
            self.cells.entry(cell).or_default().push(taken);
        }
    }

    fn is_free(&self, wanted: &Box2) -> bool {
        let mut others = Self::cells(wanted).filter_map(|cell| self.cells.get(&cell)).flatten();
        !others.any(|other| other.meets(wanted))
    }
}

/// Places words of a font size beside their points, in the order given, off the obstacles; what fits nowhere is left
/// out.
#[must_use]
pub fn placed(obstacles: &[Box2], wanted: &[(Point, String)], style: &Style, bounds: Box2) -> Vec<Label> {
    let mut taken = Taken::default();
    obstacles.iter().for_each(|obstacle| taken.add(*obstacle));
    let mut labels = Vec::new();
    for (point, words) in wanted {
        let fits = places(*point, words, style).find(|(_, room)| bounds.holds(room) && taken.is_free(room));
        if let Some((label, room)) = fits {
            taken.add(room);
            labels.push(label);
        }
    }
    labels
}

/// The places of a word beside its point, the best first: beside, slanted, then further away on a line.
fn places(point: Point, words: &str, style: &Style) -> impl Iterator<Item = (Label, Box2)> {
    let Style { radius, size, led: far_too } = *style;
    let wide = fit::width(words) * size;
    let beside = radius + 2.0;
    let near = [(beside, 0.35), (-beside, 0.35), (radius, -0.4), (-radius, -0.4), (radius, 1.1), (-radius, 1.1)];
    let far = [(14.0, -1.4), (-14.0, -1.4), (14.0, 2.1), (-14.0, 2.1), (24.0, 0.35), (-24.0, 0.35)];
    let near = near.into_iter().map(|place| (place, false));
    let far = far.into_iter().filter(move |_| far_too).map(|place| (place, true));
    near.chain(far).map(move |((right, lines), led)| {
        let at = (point.0 + right, point.1 + lines * size);
        let (left, anchor) = if right > 0.0 { (at.0, Anchor::Start) } else { (at.0 - wide, Anchor::End) };
        let room = Box2 { left, top: at.1 - 0.8 * size, right: left + wide, foot: at.1 + 0.2 * size };
        let leader = led.then_some((point, (at.0 - right.signum(), at.1 - 0.3 * size)));
        (Label { words: words.to_owned(), at, anchor, leader }, room)
    })
}
