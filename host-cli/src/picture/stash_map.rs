//! The stash as points: stretch crosswise to the right, lengthwise upwards, what a view asks as a box. A cloth that was
//! measured along one grain only lies in the margin of the other.

use tenter_core::{Answer, Confidence, Figure, Limit, Range};

use super::labels::{self, Box2, Style};
use super::svg::{Anchor, Element, Point, circle, line, polygon, rect, text};
use super::{Picture, Size, fit, words};
use crate::finding::axis::{Axis, Spread};
use crate::finding::verdict::Verdict;

/// What is drawn.
#[derive(Debug, Clone)]
pub struct StashMap<'a> {
    /// What the points are, such as "the stash".
    pub title: &'a str,
    /// The cloths.
    pub spots: &'a [Spot<'a>],
    /// What the chosen view asks; none where no view is chosen.
    pub asked: Option<ViewAsks<'a>>,
    /// How sure the drawn trust is.
    pub confidence: Confidence,
}

/// One cloth.
#[derive(Debug, Clone, Copy)]
pub struct Spot<'a> {
    /// The tag that is pinned to it.
    pub tag: &'a str,
    /// Stretch crosswise; none where it was not measured.
    pub crosswise: Option<Figure>,
    /// Stretch lengthwise; none where it was not measured.
    pub lengthwise: Option<Figure>,
    /// The answer to what the view asks; none where none is chosen.
    pub answer: Option<Answer>,
}

/// What a view asks.
#[derive(Debug, Clone, Copy)]
pub struct ViewAsks<'a> {
    /// Its name.
    pub name: &'a str,
    /// Stretch crosswise.
    pub crosswise: Range,
    /// Stretch lengthwise.
    pub lengthwise: Range,
}

impl ViewAsks<'_> {
    /// Whether it can be drawn: what asks for bias, growth or recovery alone has no place on the map.
    const fn has_box(&self) -> bool {
        !(self.crosswise.is_empty() && self.lengthwise.is_empty())
    }
}

/// The margin of the cloths without a crosswise figure lies between these, the map right of them.
const MARGIN_LEFT: f64 = 50.0;
const LEFT: f64 = 104.0;
const TOP: f64 = 28.0;
/// So many cloths have room on a map that a phone shows whole.
const FEW: usize = 40;

/// The size of the map and what follows from it.
#[derive(Debug, Clone, Copy)]
struct Frame {
    width: f64,
}

impl Frame {
    const fn of(spots: usize) -> Self {
        Self { width: if spots <= FEW { 400.0 } else { 560.0 } }
    }

    fn height(self) -> f64 {
        self.width + 18.0
    }

    fn right(self) -> f64 {
        self.width - 24.0
    }

    /// The margin of the cloths without a lengthwise figure lies below this.
    fn foot(self) -> f64 {
        self.width - 120.0
    }

    fn margin_foot(self) -> f64 {
        self.width - 82.0
    }
}

const TICKS: [f64; 13] = [0.0, 2.0, 5.0, 10.0, 20.0, 30.0, 50.0, 75.0, 100.0, 150.0, 200.0, 500.0, 1000.0];

/// The left half of a circle of radius 1, as a polygon.
const HALF: [Point; 7] =
    [(0.0, -1.0), (-0.5, -0.87), (-0.87, -0.5), (-1.0, 0.0), (-0.87, 0.5), (-0.5, 0.87), (0.0, 1.0)];

/// Draws the map.
#[must_use]
pub fn draw(map: &StashMap<'_>) -> Picture {
    let title = format!("Stretch of {}", words::isolated(map.title));
    let frame = map.frame();
    let mut picture = Picture::new(Size::Pixels, frame.width, frame.height(), &title, &description(map));
    let high = map.high();
    let across = Axis::new(Spread::Root, 0.0, high, LEFT + 6.0, frame.right());
    let up = Axis::new(Spread::Root, 0.0, high, frame.foot() - 6.0, TOP);
    margins(&mut picture, frame);
    let box_of = map.asked.filter(ViewAsks::has_box);
    let (fill, sides) = box_of.map(|asked| demand(&across, &up, &asked, frame)).unwrap_or_default();
    fill.into_iter().for_each(|element| picture.draw(element));
    grid(&mut picture, &across, &up, frame);
    sides.into_iter().for_each(|element| picture.draw(element));
    let placed: Vec<(Point, &Spot<'_>)> =
        map.spots.iter().filter_map(|spot| Some((place(spot, &across, &up, frame)?, spot))).collect();
    for (_, spot) in &placed {
        crosses(&mut picture, &across, &up, spot, map);
    }
    let radius = map.radius();
    for (at, spot) in &placed {
        mark(*at, radius, spot.answer).into_iter().for_each(|element| picture.draw(element));
    }
    tags(&mut picture, &placed, (radius, frame), &obstacles(&placed, &across, &up, map));
    legend(&mut picture, map);
    picture
}

impl StashMap<'_> {
    /// The upper end of both axes: the next tick beyond every figure and limit.
    fn high(&self) -> f64 {
        let figures = self.spots.iter().flat_map(|spot| [spot.crosswise, spot.lengthwise]).flatten();
        let figures = figures.map(|figure| figure.ratio.percent_f32());
        let ranges = self.asked.iter().flat_map(|asked| [asked.crosswise, asked.lengthwise]);
        let limits = ranges.flat_map(|range| [range.at_least, range.at_most]).flatten();
        let limits = limits.map(|limit| limit.ratio().percent_f32());
        let most = figures.chain(limits).map(f64::from).fold(8.0, f64::max);
        TICKS.into_iter().find(|tick| *tick >= most * 1.05).unwrap_or(most * 1.05)
    }

    const fn frame(&self) -> Frame {
        Frame::of(self.spots.len())
    }

    /// Many points are drawn smaller.
    fn radius(&self) -> f64 {
        match self.spots.len() {
            0..=80 => 5.0,
            81..=400 => 3.5,
            _ => 2.2,
        }
    }
}

fn description(map: &StashMap<'_>) -> String {
    let seen = |spot: &&Spot<'_>| spot.crosswise.is_some() || spot.lengthwise.is_some();
    let drawn = map.spots.iter().filter(seen).count();
    let mut text = format!("{drawn} of {} measured along at least one grain.", map.spots.len());
    let Some(asked) = &map.asked else { return text };
    text.push_str(&format!(" {} asks", words::isolated(asked.name)));
    for (grain, range) in [("crosswise", asked.crosswise), ("lengthwise", asked.lengthwise)] {
        let range = words::range(range).unwrap_or_else(|| "nothing".to_owned());
        text.push_str(&format!(" {grain} {range};"));
    }
    for answer in [Answer::Meets, Answer::Close, Answer::Short, Answer::Over, Answer::Unknown] {
        let tags: Vec<&str> =
            map.spots.iter().filter(|spot| spot.answer == Some(answer)).map(|spot| spot.tag).collect();
        let shown: Vec<String> = tags.iter().take(20).map(|tag| words::isolated(tag)).collect();
        let more = tags.len().saturating_sub(shown.len());
        if !tags.is_empty() {
            let more = if more > 0 { format!(" and {more} more") } else { String::new() };
            text.push_str(&format!(" {}: {}{more}.", words::answer(answer), shown.join(", ")));
        }
    }
    text
}

fn percent(figure: Figure) -> f64 {
    figure.ratio.percent_f32().into()
}

/// Where a cloth is drawn; nowhere without any figure.
fn place(spot: &Spot<'_>, across: &Axis, up: &Axis, frame: Frame) -> Option<Point> {
    match (spot.crosswise, spot.lengthwise) {
        (None, None) => None,
        (crosswise, lengthwise) => Some((
            crosswise.map_or(f64::midpoint(MARGIN_LEFT, LEFT), |figure| across.at(percent(figure))),
            lengthwise.map_or(f64::midpoint(frame.foot(), frame.margin_foot()), |figure| up.at(percent(figure))),
        )),
    }
}

fn margins(picture: &mut Picture, frame: Frame) {
    picture.draw(
        rect("tn-rule", (MARGIN_LEFT, TOP), LEFT - MARGIN_LEFT, frame.foot() - TOP).with("stroke-dasharray", "2 3"),
    );
    picture.draw(
        rect("tn-rule", (LEFT, frame.foot()), frame.right() - LEFT, frame.margin_foot() - frame.foot())
            .with("stroke-dasharray", "2 3"),
    );
    let corner = f64::midpoint(MARGIN_LEFT, LEFT);
    picture.draw(text("tn-small", (corner, frame.foot() + 16.0), 10.0, Anchor::Middle, "one grain"));
    picture.draw(text("tn-small", (corner, frame.foot() + 28.0), 10.0, Anchor::Middle, "only"));
    picture.draw(text("tn-small", (8.0, 16.0), 11.0, Anchor::Start, "stretch lengthwise, small figures spread wider"));
    picture.draw(text("tn-small", (frame.right(), frame.margin_foot() + 30.0), 11.0, Anchor::End, "stretch crosswise"));
}

fn grid(picture: &mut Picture, across: &Axis, up: &Axis, frame: Frame) {
    let (mut last_x, mut last_y) = (f64::NEG_INFINITY, f64::INFINITY);
    for tick in TICKS.into_iter().filter(|tick| *tick <= across.high()) {
        let (x, y) = (across.at(tick), up.at(tick));
        picture.draw(line("tn-grid", (x, TOP), (x, frame.foot())));
        picture.draw(line("tn-grid", (LEFT, y), (frame.right(), y)));
        if x - last_x > 32.0 {
            picture.draw(text("tn-small", (x, frame.margin_foot() + 14.0), 11.0, Anchor::Middle, words::percent(tick)));
            last_x = x;
        }
        if last_y - y > 14.0 {
            picture.draw(text("tn-small", (MARGIN_LEFT - 6.0, y + 4.0), 11.0, Anchor::End, words::percent(tick)));
            last_y = y;
        }
    }
    picture.draw(rect("tn-rule", (LEFT, TOP), frame.right() - LEFT, frame.foot() - TOP));
}

/// What is asked as a box. Along a grain where nothing is asked it runs through the margin: there a cloth that was
/// measured along the other grain alone can do. The grid comes between the filling and the sides.
fn demand(across: &Axis, up: &Axis, asked: &ViewAsks<'_>, frame: Frame) -> (Option<Element>, Vec<Element>) {
    let at = |axis: &Axis, limit: Option<Limit>| limit.map(|limit| axis.at(limit.ratio().percent_f32().into()));
    let (least_x, most_x) = (at(across, asked.crosswise.at_least), at(across, asked.crosswise.at_most));
    let (least_y, most_y) = (at(up, asked.lengthwise.at_least), at(up, asked.lengthwise.at_most));
    let from_x = least_x.unwrap_or(if asked.crosswise.is_empty() { MARGIN_LEFT } else { LEFT });
    let to_y = least_y.unwrap_or(if asked.lengthwise.is_empty() { frame.margin_foot() } else { frame.foot() });
    let (to_x, from_y) = (most_x.unwrap_or(frame.right()), most_y.unwrap_or(TOP));
    let side = |from, to| line("tn-ask-line", from, to).at("stroke-width", 2.5);
    let upright = [least_x, most_x].into_iter().flatten().map(|x| side((x, from_y), (x, to_y)));
    let level = [least_y, most_y].into_iter().flatten().map(|y| side((from_x, y), (to_x, y)));
    let fill = rect("tn-ask-box", (from_x, from_y), to_x - from_x, to_y - from_y);
    (Some(fill), upright.chain(level).collect())
}

/// What the figures of a cloth are worth.
fn crosses(picture: &mut Picture, across: &Axis, up: &Axis, spot: &Spot<'_>, map: &StashMap<'_>) {
    let Some((x, y)) = place(spot, across, up, map.frame()) else { return };
    // Hundreds of crosses would hide the points.
    let opacity = match map.spots.len() {
        0..=80 => 0.75,
        81..=400 => 0.4,
        _ => 0.15,
    };
    if let Some(figure) = spot.crosswise {
        let (low, high) = figure.interval(map.confidence);
        picture.draw(
            line("tn-line", (across.at(low.into()), y), (across.at(high.into()), y)).at("stroke-opacity", opacity),
        );
    }
    if let Some(figure) = spot.lengthwise {
        let (low, high) = figure.interval(map.confidence);
        picture.draw(line("tn-line", (x, up.at(low.into())), (x, up.at(high.into()))).at("stroke-opacity", opacity));
    }
}

/// The sign of an answer: a full point does, a half one may, an empty shape does not.
fn mark(at: Point, radius: f64, answer: Option<Answer>) -> Vec<Element> {
    let ((x, y), r) = (at, radius);
    match answer {
        None | Some(Answer::Meets) => vec![circle("tn-ink", at, r)],
        Some(Answer::Close) => {
            let half = HALF.map(|(dx, dy)| (x + dx * r, y + dy * r));
            vec![circle("tn-hollow", at, r), polygon("tn-ink", &half)]
        }
        Some(Answer::Short) => vec![polygon("tn-hollow", &[(x - r, y - r * 0.8), (x + r, y - r * 0.8), (x, y + r)])],
        Some(Answer::Over) => vec![polygon("tn-hollow", &[(x - r, y + r * 0.8), (x + r, y + r * 0.8), (x, y - r)])],
        Some(Answer::Unknown) => vec![rect("tn-hollow", (x - r * 0.8, y - r * 0.8), r * 1.6, r * 1.6)],
    }
}

/// What no tag may cover: the points, and their crosses as long as these are few.
fn obstacles(placed: &[(Point, &Spot<'_>)], across: &Axis, up: &Axis, map: &StashMap<'_>) -> Vec<Box2> {
    let r = map.radius();
    let mut taken = Vec::new();
    for ((x, y), spot) in placed {
        taken.push(Box2 { left: x - r, top: y - r, right: x + r, foot: y + r });
        if map.spots.len() > 80 {
            continue;
        }
        let ends = |figure: Option<Figure>| figure.map(|figure| figure.interval(map.confidence));
        if let Some((low, high)) = ends(spot.crosswise) {
            taken.push(Box2 {
                left: across.at(low.into()),
                top: y - 1.0,
                right: across.at(high.into()),
                foot: y + 1.0,
            });
        }
        if let Some((low, high)) = ends(spot.lengthwise) {
            taken.push(Box2 { left: x - 1.0, top: up.at(high.into()), right: x + 1.0, foot: up.at(low.into()) });
        }
    }
    taken
}

/// The tags beside the points, where they fit; those that do first.
fn tags(picture: &mut Picture, placed: &[(Point, &Spot<'_>)], (radius, frame): (f64, Frame), obstacles: &[Box2]) {
    let size = if placed.len() > 80 { 9.0 } else { 11.0 };
    let bounds = Box2 { left: MARGIN_LEFT + 1.0, top: TOP - 8.0, right: frame.width - 2.0, foot: frame.margin_foot() };
    let mut order: Vec<&(Point, &Spot<'_>)> = placed.iter().collect();
    order.sort_by_key(|(_, spot)| spot.answer.map(|answer| place_of(answer.into())));
    let wanted: Vec<(Point, String)> = order.iter().map(|(at, spot)| (*at, fit::shortened(spot.tag, 8.0))).collect();
    // Among very many points a leader tells nothing.
    let led = placed.len() <= 400;
    for label in labels::placed(obstacles, &wanted, &Style { radius, size, led }, bounds) {
        if let Some((from, to)) = label.leader {
            picture.draw(line("tn-rule", from, to).at("stroke-width", 0.7));
        }
        picture.draw(text("", label.at, size, label.anchor, label.words));
    }
}

/// The place of an answer among all, the best first; those that refuse a cloth come last alike.
fn place_of(verdict: Verdict) -> Option<usize> {
    Verdict::ALL.iter().position(|one| *one == verdict || one.is_refused() && verdict.is_refused())
}

fn legend(picture: &mut Picture, map: &StashMap<'_>) {
    let frame = map.frame();
    let y = frame.margin_foot() + 54.0;
    let trust = format!("lines: {}", words::trust(map.confidence));
    let unseen = map.spots.iter().filter(|spot| spot.crosswise.is_none() && spot.lengthwise.is_none()).count();
    let unseen = if unseen > 0 { format!("; {unseen} not measured at all") } else { String::new() };
    picture.draw(text("tn-small", (8.0, frame.height() - 12.0), 11.0, Anchor::Start, format!("{trust}{unseen}")));
    let Some(asked) = &map.asked else { return };
    let known = [Answer::Meets, Answer::Close, Answer::Short, Answer::Over, Answer::Unknown];
    let mut x = 14.0;
    for answer in known.into_iter().filter(|answer| map.spots.iter().any(|spot| spot.answer == Some(*answer))) {
        mark((x, y - 4.0), 5.0, Some(answer)).into_iter().for_each(|element| picture.draw(element));
        let words = words::answer(answer);
        picture.draw(text("tn-small", (x + 9.0, y), 11.0, Anchor::Start, words));
        x += 26.0 + fit::width(words) * 11.0 * 0.85;
    }
    let y = y + 18.0;
    let room = (frame.width - 40.0) / 11.0;
    if !asked.has_box() {
        let end = " asks for no stretch across or along";
        let words = format!("{}{end}", fit::shortened(asked.name, room - fit::width(end)));
        picture.draw(text("tn-small", (8.0, y), 11.0, Anchor::Start, words));
        return;
    }
    picture.draw(rect("tn-ask-box", (9.0, y - 10.0), 18.0, 12.0));
    picture.draw(line("tn-ask-line", (9.0, y - 10.0), (9.0, y + 2.0)).at("stroke-width", 2.5));
    let asked = fit::shortened(&format!("asked by {}", asked.name), room);
    picture.draw(text("tn-small", (33.0, y), 11.0, Anchor::Start, asked));
}

#[cfg(test)]
mod tests {
    use tenter_core::Unit;

    use super::*;

    #[test]
    fn what_asks_nothing_of_either_grain_has_no_box() {
        let [some, none] = ["5%", ""].map(|text| Range::parse(text, Unit::Mm).unwrap_or_default());
        for (crosswise, lengthwise, has_box) in [(some, none, true), (none, some, true), (none, none, false)] {
            let asked = Some(ViewAsks { name: "gusset", crosswise, lengthwise });
            let confidence = Confidence::default();
            let drawn = draw(&StashMap { title: "", spots: &[], asked, confidence }).inline();
            assert_eq!((drawn.contains("tn-ask-box"), drawn.contains("asks for no stretch")), (has_box, !has_box));
        }
    }
}
