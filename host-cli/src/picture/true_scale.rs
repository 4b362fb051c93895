//! Pictures in millimetres of paper, to lay cloth on: a pull gauge for one demand, the stretch of a swatch as long as it
//! is, and a line that tells whether the printer kept the scale.

use tenter_core::{Confidence, Figure, Grain, Length, Limit, Range, Unit};

use super::svg::{self, Anchor, Element, Point, line, polygon, polyline, rect, text};
use super::{Picture, Size, fit, words};
use crate::finding::axis::{count, step, ticks};

/// A gauge to print and to pull a swatch on.
#[derive(Debug, Clone)]
pub struct PullGauge<'a> {
    /// What it is for, such as a role of a view.
    pub title: &'a str,
    /// The stretch that is asked.
    pub asked: Range,
}

/// Printable width that A4 and US Letter share.
const WIDTH: f64 = 190.0;
const HEIGHT: f64 = 108.0;
const ZERO: f64 = 12.0;
/// Longest extended length that is drawn.
const REACH: f64 = 168.0;
const RAIL: f64 = 28.0;
const LANE: f64 = 24.0;
/// Room for the title, in em.
const TITLE: f64 = 34.0;
/// Relaxed lengths to choose from, the best first: a longer one reads finer.
const RELAXED_MM: [i16; 5] = [100, 50, 25, 20, 10];

/// Where the marks of a pull gauge lie, in millimetres from its zero.
struct Marks {
    gauge: Length,
    /// In which all marks are named.
    unit: Unit,
    least: Option<f64>,
    most: Option<f64>,
}

impl Marks {
    /// The printed gauge where the demand has one that fits, else the longest of our own that does.
    fn of(asked: &Range) -> Option<Self> {
        let limits = || [asked.at_least, asked.at_most].into_iter().flatten();
        limits().next()?;
        let printed = limits().filter_map(Limit::printed_marks).map(|(gauge, to)| (gauge, words::unit(gauge, to)));
        let mut gauges = printed.chain(RELAXED_MM.map(|mm| (Length::from_mm(mm), Unit::Mm)));
        let fits = |(gauge, _): &(Length, Unit)| limits().all(|limit| extended(*gauge, limit) <= REACH);
        let (gauge, unit) = gauges.find(fits)?;
        let at = |limit: Option<Limit>| limit.map(|limit| extended(gauge, limit));
        Some(Self { gauge, unit, least: at(asked.at_least), most: at(asked.at_most) })
    }
}

impl Marks {
    fn shown(&self, length: Length) -> String {
        length.show(self.unit).to_string()
    }
}

fn extended(gauge: Length, limit: Limit) -> f64 {
    f64::from(gauge.mm()) * (1.0 + f64::from(limit.ratio().percent_f32()) / 100.0)
}

/// What a gauge for a role of a view is for; a long pattern or role is shortened, so that gauges of one view differ.
#[must_use]
pub fn title(view: &str, role: &str, grain: Grain) -> String {
    let end = format!(": {}, {}", fit::shortened(role, 14.0), grain.word());
    format!("{}{end}", fit::shortened(view, TITLE - fit::width(&end)))
}

/// Draws a pull gauge; none where no stretch is asked.
#[must_use]
pub fn pull_gauge(gauge: &PullGauge<'_>) -> Option<Picture> {
    let marks = Marks::of(&gauge.asked)?;
    let asked = words::range(gauge.asked)?;
    let title = format!("Pull gauge for {}", words::isolated(gauge.title));
    let relaxed = marks.shown(marks.gauge);
    let description = format!(
        "Stretch {asked}. Lay the swatch's marks at 0 and {relaxed} and pull. True only when the check line measures \
         100 mm."
    );
    let mut picture = Picture::new(Size::Millimetres, WIDTH, HEIGHT, &title, &description);
    picture.draw(text("tn-bold", (ZERO, 8.0), 5.0, Anchor::Start, fit::shortened(gauge.title, TITLE)));
    let asked = fit::shortened(&format!("stretch {asked}"), 42.0);
    picture.draw(text("", (ZERO, 14.0), 3.6, Anchor::Start, asked));
    lane(&mut picture, &marks);
    rails(&mut picture);
    names(&mut picture, gauge, &marks);
    how_to(&mut picture, &marks);
    check_line((ZERO, HEIGHT - 5.0)).into_iter().for_each(|element| picture.draw(element));
    Some(picture)
}

/// The two rails of the frame with their hooks, 5 mm apart.
fn rails(picture: &mut Picture) {
    let (from, to) = (ZERO - 6.0, WIDTH - 4.0);
    for (rail, inward) in [(RAIL, 1.0), (RAIL + 6.0 + LANE, -1.0)] {
        let top = if inward > 0.0 { rail } else { rail + 1.0 };
        picture.draw(rect("tn-ink", (from, top), to - from, 2.0).at("rx", 1.0));
        for (place, x) in ticks(0.0, to - ZERO - 3.0, 5.0).map(|mm| ZERO + mm).enumerate() {
            let long = if place % 2 == 0 { 1.0 } else { 0.0 };
            let edge = if inward > 0.0 { rail + 2.0 } else { rail + 1.0 };
            let tip = edge + (1.3 + long * 0.8) * inward;
            let hook = [(x, edge), (x, tip), (x - 1.1, tip), (x - 1.1, tip - 0.7 * inward)];
            picture.draw(polyline("tn-line", &hook).at("stroke-width", 0.35));
        }
    }
}

/// The cloth between the rails: woven as far as it lies relaxed, hatched where it is pulled enough.
fn lane(picture: &mut Picture, marks: &Marks) {
    let (top, foot) = (RAIL + 4.5, RAIL + 4.5 + LANE);
    let relaxed = ZERO + f64::from(marks.gauge.mm());
    let end = WIDTH - 6.0;
    picture.draw(rect("tn-hollow", (ZERO, top), relaxed - ZERO, LANE).at("stroke-width", 0.2));
    picture.draw(weave(ZERO, relaxed, top));
    let from = ZERO + marks.least.unwrap_or_else(|| marks.gauge.mm().into());
    let to = marks.most.map_or(end, |most| ZERO + most);
    picture.draw(rect("tn-ask-box", (from, top), to - from, LANE));
    picture.draw(svg::hatch("tn-ask-line", (from, top), to - from, LANE, 3.0).at("stroke-width", 0.2));
    if marks.most.is_some() {
        // Crosses say "no further" without a colour.
        for (x, y) in ticks(to + 4.0, end - 1.0, 6.0).flat_map(|x| [(x, top + 12.0), (x, foot - 5.0)]) {
            picture.draw(line("tn-rule", (x - 1.2, y - 1.2), (x + 1.2, y + 1.2)).at("stroke-width", 0.4));
            picture.draw(line("tn-rule", (x - 1.2, y + 1.2), (x + 1.2, y - 1.2)).at("stroke-width", 0.4));
        }
    }
    percents(picture, marks, end);
    let stroke = |x: f64, width: f64| line("tn-line", (x, top - 1.0), (x, foot + 1.0)).at("stroke-width", width);
    picture.draw(stroke(ZERO, 0.9));
    picture.draw(stroke(relaxed, 0.5).with("stroke-dasharray", "2 1.2"));
    for (x, inward) in [(marks.least, 1.0), (marks.most, -1.0)] {
        let Some(x) = x.map(|mm| ZERO + mm) else { continue };
        picture.draw(stroke(x, 0.9));
        let middle = f64::midpoint(top, foot);
        picture.draw(polygon("tn-ink", &[(x, middle - 2.5), (x + 3.0 * inward, middle), (x, middle + 2.5)]));
    }
}

/// Percentages along the lane, so that the stretch can be read where the swatch ends.
fn percents(picture: &mut Picture, marks: &Marks, end: f64) {
    let gauge = f64::from(marks.gauge.mm());
    let reach = 100.0 * (end - ZERO - gauge) / gauge;
    let step = step(reach, (end - ZERO - gauge) / 11.0);
    for percent in ticks(0.0, reach, step) {
        let x = ZERO + gauge * (1.0 + percent / 100.0);
        picture.draw(line("tn-line", (x, RAIL + 4.5), (x, RAIL + 6.5)).at("stroke-width", 0.25));
        let label = rect("tn-paper", (x - 3.6, RAIL + 7.0), 7.2, 3.2).at("rx", 0.8);
        // A line that is named needs no second number.
        let is_near = |mm: &f64| (ZERO + mm - x).abs() < 5.0;
        if percent > 0.0 && x + 4.0 < end && !marks.least.iter().chain(&marks.most).any(is_near) {
            picture.draw(label);
            picture.draw(text("tn-small", (x, RAIL + 9.5), 2.6, Anchor::Middle, words::percent(percent)));
        }
    }
}

/// Short threads over and under one another, as in a plain weave.
fn weave(from: f64, to: f64, top: f64) -> Element {
    let rows = (0..8_u32).map(move |row| (row, top + 1.5 + 3.0 * f64::from(row)));
    let threads = rows.flat_map(move |(row, y)| {
        let threads = (0..60_u32).map(move |column| (column, from + 1.5 + 3.0 * f64::from(column)));
        threads.take_while(move |(_, x)| x + 1.3 < to).map(move |(column, x)| {
            let (across, along) = if (row + column) % 2 == 0 { (1.2, 0.0) } else { (0.0, 1.2) };
            ((x - across, y - along), (x + across, y + along))
        })
    });
    svg::strokes("tn-grid", threads).at("stroke-width", 0.8)
}

/// A mark with its name.
struct Named {
    mm: f64,
    words: String,
}

/// The mark that is pulled to: its name says the length, on the scale of the demand.
fn named(mm: Option<f64>, limit: Option<Limit>, marks: &Marks, what: &str) -> Option<Named> {
    let (mm, limit) = (mm?, limit?);
    let printed = limit.printed_marks().filter(|(gauge, _)| *gauge == marks.gauge);
    let length =
        printed.map_or_else(|| format!("{} mm", svg::number((mm * 10.0).round() / 10.0)), |(_, to)| marks.shown(to));
    Some(Named { mm, words: format!("{length}: {what}") })
}

fn draw_name(picture: &mut Picture, named: Named, from: f64, y: f64, anchor: Anchor) {
    let x = ZERO + named.mm;
    picture.draw(line("tn-rule", (x, from), (x, y - 1.2)).at("stroke-width", 0.25));
    let aside = if anchor == Anchor::Start { 1.2 } else { -1.2 };
    picture.draw(text("", (x + aside, y), 3.4, anchor, named.words));
}

/// What to pull to stands above the frame, what to lay on below it, so that no line runs through a word.
fn names(picture: &mut Picture, gauge: &PullGauge<'_>, marks: &Marks) {
    let wide = |named: &Named| 3.4 * fit::width(&named.words) + 3.0;
    let (near, far) = (RAIL - 2.5, RAIL - 7.0);
    let least = named(marks.least, gauge.asked.at_least, marks, "least, pull to here");
    let most = named(marks.most, gauge.asked.at_most, marks, "most, not past here");
    let left_fits = least.as_ref().is_none_or(|least| ZERO + least.mm - wide(least) > 2.0);
    let right_fits = most.as_ref().is_none_or(|most| ZERO + most.mm + wide(most) < WIDTH);
    if let Some(least) = least {
        let (y, anchor) = if left_fits { (near, Anchor::End) } else { (far, Anchor::Start) };
        draw_name(picture, least, RAIL, y, anchor);
    }
    if let Some(most) = most {
        let y = if right_fits || !left_fits { near } else { far };
        draw_name(picture, most, RAIL, y, if right_fits { Anchor::Start } else { Anchor::End });
    }
    let foot = RAIL + 9.0 + LANE;
    let zero = Named { mm: 0.0, words: "0: hold one mark here".to_owned() };
    let words = format!("{}: the other mark, relaxed", marks.shown(marks.gauge));
    let relaxed = Named { mm: marks.gauge.mm().into(), words };
    let below = if relaxed.mm > wide(&zero) { foot + 4.5 } else { foot + 9.0 };
    draw_name(picture, zero, foot, below, Anchor::Start);
    draw_name(picture, relaxed, foot, foot + 4.5, Anchor::Start);
}

fn how_to(picture: &mut Picture, marks: &Marks) {
    let stop = if marks.most.is_some() { " Crosses: too far." } else { "" };
    let least = if marks.least.is_some() {
        "2  Pull by the fold to the first firm resistance: enough if the mark reaches the hatched part."
    } else {
        "2  Pull by the fold to the first firm resistance: the mark must stay within the hatched part."
    };
    let steps = [
        format!(
            "1  Mark the folded swatch {} apart. Lay it between the hooks, loose, on 0 and on the dashed line.",
            marks.shown(marks.gauge)
        ),
        format!("{least}{stop}"),
        "3  One pull says little: pull three times, and measure with a tape what lies near a line.".to_owned(),
    ];
    for (place, words) in steps.into_iter().enumerate() {
        picture.draw(text("tn-small", (ZERO, HEIGHT - 25.0 + 4.4 * count(place)), 3.2, Anchor::Start, words));
    }
}

/// A line of 100 mm with posts at its ends, and what to do when it is not; 6 mm high, its baseline at y.
#[must_use]
pub fn check_line(at: Point) -> Vec<Element> {
    let (x, y) = at;
    let post = |x: f64| line("tn-line", (x, y - 2.0), (x, y + 2.0)).at("stroke-width", 0.3);
    let words = "check: this line is 100 mm long; if not, print at 100 %, not fitted to the page";
    vec![
        line("tn-line", (x, y), (x + 100.0, y)).at("stroke-width", 0.3),
        post(x),
        post(x + 100.0),
        text("tn-small", (x + 50.0, y - 1.2), 2.5, Anchor::Middle, words),
    ]
}

/// Height of [`stretch_scale`] for so many grains, in millimetres.
#[must_use]
pub fn stretch_scale_height(grains: usize) -> f64 {
    12.0 * count(grains) + 5.0
}

/// The stretch of a swatch as long as it is: a piece of cloth relaxed and pulled, and below it a black strip as wide as
/// what the reading leaves open.
/// From its upper left corner, `width` millimetres wide.
#[must_use]
pub fn stretch_scale(
    corner: Point,
    width: f64,
    grains: &[(Grain, Option<Figure>)],
    confidence: Confidence,
) -> Vec<Element> {
    let (x, mut y) = corner;
    let percent = |figure: &Figure| f64::from(figure.ratio.percent_f32());
    let most = grains
        .iter()
        .filter_map(|(_, figure)| figure.as_ref())
        .map(|figure| percent(figure).max(f64::from(figure.interval(confidence).1).min(percent(figure) * 1.5 + 5.0)));
    let most = most.fold(10.0, f64::max);
    let gauge = [50.0, 40.0, 25.0, 20.0, 10.0, 5.0].into_iter().find(|gauge| gauge * (1.0 + most / 100.0) <= width);
    let gauge = gauge.unwrap_or(width / (1.0 + most / 100.0));
    let at = |percent: f64| (x + gauge * (1.0 + percent / 100.0)).clamp(x, x + width);
    let mut drawn = Vec::new();
    for (grain, figure) in grains {
        let seen = figure.map_or_else(|| "not measured".to_owned(), |figure| words::figure(&figure, confidence));
        drawn.push(text("tn-bold", (x, y + 3.2), 3.4, Anchor::Start, grain.word()));
        drawn.push(text("", (x + 24.0, y + 3.2), 3.4, Anchor::Start, seen));
        let bar = y + 4.6;
        drawn.push(rect("tn-shade", (x, bar), gauge, 3.4));
        drawn.push(rect("tn-line", (x, bar), gauge, 3.4));
        if let Some(figure) = figure {
            let end = at(percent(figure));
            drawn.push(rect("tn-line", (x + gauge, bar), end - x - gauge, 3.4));
            drawn.push(svg::hatch("tn-rule", (x + gauge, bar), end - x - gauge, 3.4, 1.5).at("stroke-width", 0.2));
            drawn.push(line("tn-line", (end, bar - 0.6), (end, bar + 3.4)).at("stroke-width", 0.5));
            let (low, high) = figure.interval(confidence);
            let (from, to) = (at(low.into()), at(high.into()));
            drawn.push(rect("tn-ink", (from, bar + 3.5), to - from, 1.2).at("stroke-width", 0.0));
        }
        y += 12.0;
    }
    drawn.extend(percent_axis(x, y, width, gauge));
    drawn
}

/// The percentages below the bars, counted from the relaxed length.
fn percent_axis(x: f64, y: f64, width: f64, gauge: f64) -> Vec<Element> {
    let y = y - 1.6;
    let reach = 100.0 * (width - gauge) / gauge;
    let mut drawn = vec![line("tn-rule", (x, y), (x + width, y))];
    let relaxed = format!("relaxed, {} mm", svg::number(gauge));
    drawn.push(text("tn-small", (x, y + 3.6), 2.6, Anchor::Start, relaxed));
    let step = step(reach, (width - gauge) / 8.0);
    for percent in ticks(0.0, reach, step) {
        let tick = x + gauge * (1.0 + percent / 100.0);
        drawn.push(line("tn-rule", (tick, y), (tick, y + 1.0)));
        if tick + 3.5 <= x + width && (percent > 0.0 || gauge > 24.0) {
            drawn.push(text("tn-small", (tick, y + 3.6), 2.6, Anchor::Middle, words::percent(percent)));
        }
    }
    drawn
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gauges_of_one_view_differ_however_long_its_name_is() {
        let long = "a pattern with a name that goes on and on ".repeat(5);
        assert_eq!(title("Choir trousers A", "main", Grain::Bias), "Choir trousers A: main, bias");
        for (role, end) in [("hem facing", "…: hem facing, lengthwise"), (&long, "…, lengthwise")] {
            let asked = Range::parse("5%", Unit::Mm).unwrap();
            let drawn =
                pull_gauge(&PullGauge { title: &title(&long, role, Grain::Lengthwise), asked }).unwrap().inline();
            assert!(drawn.contains(&format!("{end}</text>")), "{drawn}");
        }
    }

    /// A gauge off an envelope speaks of one unit: 5 in are 127 mm too, but nobody wrote that.
    #[test]
    fn a_printed_gauge_keeps_its_unit() {
        for (asked, want) in [
            ("4in to 5in", ["5 in: least", "4 in: the other"]),
            ("100mm to 127mm", ["127 mm: least", "100 mm: the other"]),
            ("27%", ["127 mm: least", "100 mm: the other"]),
        ] {
            let asked = Range::parse(asked, Unit::Mm).unwrap();
            let drawn = pull_gauge(&PullGauge { title: "", asked }).unwrap().inline();
            assert!(want.iter().all(|words| drawn.contains(words)), "{want:?}: {drawn}");
        }
    }
}
