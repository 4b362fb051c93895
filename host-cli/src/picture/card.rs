//! One cloth on a card of A6, to print, cut and staple the swatch to; and sheets of four on A4.

use tenter_core::{Confidence, Figure, Grain, Length, Unit};

use super::svg::{Anchor, Element, circle, line, polygon, rect, text};
use super::true_scale::{check_line, stretch_scale, stretch_scale_height};
use super::{Picture, Size, fit, words};
use crate::finding::axis::count;
use crate::words::quantity;
use crate::words::terms::duration;
use crate::words::typeset::set;

/// What stands on a card.
#[derive(Debug, Clone)]
pub struct Card<'a> {
    /// The tag number.
    pub tag: &'a str,
    /// The name.
    pub name: &'a str,
    /// What it is made of; empty where nobody said.
    pub fibre: &'a str,
    /// Usable width of the cloth.
    pub width: Option<Length>,
    /// Length of the piece.
    pub length: Option<Length>,
    /// Mass per area, with its unit; empty where nobody said.
    pub mass: &'a str,
    /// Stretch along each grain, in the order of the rows; none where it was not measured.
    pub stretch: &'a [(Grain, Option<Figure>)],
    /// Growth along a grain, with the seconds after release.
    pub growth: Option<(Grain, Figure, u32)>,
    /// How sure the trust is.
    pub confidence: Confidence,
    /// A photograph, as an address that holds it.
    pub photo: Option<&'a str>,
    /// The day of the measurement, as it is to be read.
    pub date: &'a str,
    /// How it was measured, and handling: each a line.
    pub notes: &'a [&'a str],
    /// The unit of lengths.
    pub unit: Unit,
}

/// Width of a card, A6, in millimetres.
pub const WIDTH: f64 = 105.0;
/// Height of a card, A6, in millimetres.
pub const HEIGHT: f64 = 148.0;
const LEFT: f64 = 8.0;
const RIGHT: f64 = 97.0;
/// The lowest line: below it a sheet has its check line.
const LAST: f64 = HEIGHT - 9.0;
/// Where the swatch is stapled, on a card of two grains.
const SWATCH: (f64, f64) = (44.0, 80.0);
/// Where a photograph begins, beside the swatch.
const PHOTO: f64 = 67.0;
/// What a third grain takes from the swatch.
const THIRD_GRAIN: f64 = 10.0;
/// How far a text is shrunk before anything of it is left out.
const SMALLEST: f64 = 0.8;
/// Size and distance of the lines at the foot.
const FOOT: (f64, f64) = (3.1, 4.2);

/// Draws one card.
#[must_use]
pub fn draw(card: &Card<'_>) -> Picture {
    let mut picture = Picture::new(Size::Millimetres, WIDTH, HEIGHT, &title(card), &description(card));
    content(card).into_iter().for_each(|element| picture.draw(element));
    picture
}

/// A card that is laid out, to be put on a sheet.
#[derive(Debug)]
pub struct CardLayout {
    title: String,
    description: String,
    content: Vec<Element>,
}

/// Lays out a card.
#[must_use]
pub fn laid(card: &Card<'_>) -> CardLayout {
    CardLayout { title: title(card), description: description(card), content: content(card) }
}

/// Draws sheets of four cards, as many as are needed.
#[must_use]
pub fn sheets(cards: &[Card<'_>]) -> Vec<Picture> {
    cards.chunks(4).map(|four| sheet(four.iter().map(laid).collect())).collect()
}

/// Draws a sheet of at most four cards.
#[must_use]
pub fn sheet(cards: Vec<CardLayout>) -> Picture {
    let titles: Vec<&str> = cards.iter().map(|card| card.title.as_str()).collect();
    let descriptions: Vec<String> = cards.iter().map(|card| format!("{}: {}", card.title, card.description)).collect();
    let mut sheet = Picture::new(Size::Millimetres, 210.0, 297.0, &titles.join("; "), &descriptions.join(" "));
    for (place, card) in cards.into_iter().enumerate() {
        let (column, row) = (count(place % 2), count(place / 2));
        let view = format!("0 0 {WIDTH} {HEIGHT}");
        // A viewport of its own: nothing of a card can reach its neighbour.
        let mut frame = Element::new("svg").at("x", WIDTH * column).at("y", 0.5 + HEIGHT * row);
        frame = frame.at("width", WIDTH).at("height", HEIGHT).with("viewBox", view);
        card.content.into_iter().for_each(|element| frame.push(element));
        sheet.draw(frame);
    }
    cut_marks().into_iter().chain(check_line((55.0, 145.5))).for_each(|element| sheet.draw(element));
    sheet
}

/// Where to cut: a cross in the middle and marks towards the edges.
fn cut_marks() -> Vec<Element> {
    let (x, y) = (WIDTH, 0.5 + HEIGHT);
    let mut marks = vec![line("tn-rule", (x - 5.0, y), (x + 5.0, y)), line("tn-rule", (x, y - 2.0), (x, y + 5.0))];
    for (from, to) in [(0.0, 12.0), (45.0, 60.0), (150.0, 165.0), (198.0, 210.0)] {
        marks.push(line("tn-rule", (from, y), (to, y)));
    }
    for (from, to) in [(0.0, 14.0), (66.0, 82.0), (214.0, 230.0), (283.0, 297.0)] {
        marks.push(line("tn-rule", (x, from), (x, to)));
    }
    marks
}

fn title(card: &Card<'_>) -> String {
    format!("Card {} {}", words::isolated(card.tag), words::isolated(card.name))
}

fn description(card: &Card<'_>) -> String {
    let mut parts = vec![facts(card)];
    if !card.fibre.is_empty() {
        parts.push(words::isolated(card.fibre));
    }
    for (grain, figure) in card.stretch {
        let seen = figure.map_or_else(|| "not measured".to_owned(), |figure| words::figure(&figure, card.confidence));
        parts.push(format!("{} stretch {seen}", grain.word()));
    }
    parts.extend(growth(card));
    parts.extend(card.notes.iter().map(|note| words::isolated(note)));
    if !card.date.is_empty() {
        parts.push(words::isolated(card.date));
    }
    parts.retain(|part| !part.is_empty());
    parts.join("; ") + "."
}

fn facts(card: &Card<'_>) -> String {
    let width = card.width.map(|width| format!("{} wide", quantity::width(width, card.unit)));
    let length = card.length.map(|length| format!("{} long", quantity::cloth(length, card.unit)));
    let mass = (!card.mass.is_empty()).then(|| card.mass.to_owned());
    [width, length, mass].into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn growth(card: &Card<'_>) -> Option<String> {
    let (grain, figure, seconds) = card.growth?;
    let figure = words::figure(&figure, card.confidence);
    Some(format!("{} growth {figure}, after {}", grain.word(), duration(seconds)))
}

fn content(card: &Card<'_>) -> Vec<Element> {
    let mut drawn = tag(card.tag);
    drawn.extend(lines("tn-bold", card.name, (44.0, 13.0), 4.6, RIGHT - 44.0, 3));
    let facts = facts(card);
    let known = [card.fibre, &facts].into_iter().filter(|words| !words.is_empty());
    for (place, words) in known.enumerate() {
        drawn.extend(lines("", words, (LEFT, 33.5 + 5.5 * count(place)), 3.4, RIGHT - LEFT, 1));
    }
    let more = count(card.stretch.len().saturating_sub(2));
    let swatch = (SWATCH.0, SWATCH.1 - THIRD_GRAIN * more.min(1.0));
    drawn.extend(self::swatch(swatch, card.photo));
    let top = swatch.1 + 4.0;
    drawn.extend(stretch_scale((LEFT, top), RIGHT - LEFT, card.stretch, card.confidence));
    drawn.extend(foot(card, top + stretch_scale_height(card.stretch.len()) + 4.0));
    drawn
}

/// The tag number on a swing tag.
fn tag(tag: &str) -> Vec<Element> {
    let outline = [(LEFT, 13.0), (LEFT + 5.0, 8.0), (40.0, 8.0), (40.0, 27.0), (LEFT + 5.0, 27.0), (LEFT, 22.0)];
    let words = fit::shortened(tag.trim(), 8.0);
    let size = (25.0 / fit::width(&words).max(0.5)).min(13.0);
    vec![
        polygon("tn-hollow", &outline).at("stroke-width", 0.4),
        circle("tn-hollow", (LEFT + 3.2, 17.5), 1.2),
        text("tn-bold", (26.5, 17.5 + size * 0.36), size, Anchor::Middle, words),
    ]
}

/// A text in at most so many lines, from its first baseline on; smaller where it would not fit.
fn lines(class: &'static str, words: &str, at: (f64, f64), size: f64, room: f64, most: usize) -> Vec<Element> {
    let (size, wrapped) = fit::shrunk(words, room, (size, size * SMALLEST), most);
    let placed = wrapped.into_iter().enumerate();
    placed
        .map(|(place, line)| text(class, (at.0, at.1 + 1.25 * size * count(place)), size, Anchor::Start, line))
        .collect()
}

/// The place for the swatch, with the way its grain should lie.
fn swatch((top, foot): (f64, f64), photo: Option<&str>) -> Vec<Element> {
    let right = if photo.is_some() { PHOTO - 2.0 } else { RIGHT };
    let middle = f64::midpoint(top, foot);
    let arrow = |tip: f64, back: f64| polygon("tn-ink", &[(14.0, tip), (15.3, tip + back), (12.7, tip + back)]);
    let mut drawn = vec![
        rect("tn-rule", (LEFT, top), right - LEFT, foot - top).at("rx", 2.0).with("stroke-dasharray", "2 1.4"),
        line("tn-line", (14.0, top + 7.0), (14.0, foot - 7.0)).at("stroke-width", 0.4),
        arrow(top + 4.5, 3.0),
        arrow(foot - 4.5, -3.0),
        text("tn-small", (17.5, middle - 1.0), 3.2, Anchor::Start, "staple or pin the swatch here,"),
        text("tn-small", (17.5, middle + 3.4), 3.2, Anchor::Start, "lengthwise grain along the arrow"),
    ];
    drawn.extend(photo.map(|photo| {
        let image = Element::new("image").at("x", PHOTO).at("y", top).at("width", RIGHT - PHOTO);
        image.at("height", foot - top).with("preserveAspectRatio", "xMidYMid slice").with("href", photo)
    }));
    drawn
}

/// Growth, how it was measured, the notes, and lines to write on where room is left.
fn foot(card: &Card<'_>, from: f64) -> Vec<Element> {
    let mut drawn = Vec::new();
    let growth = growth(card).unwrap_or_else(|| "growth not measured".to_owned());
    let words: Vec<String> =
        [growth.as_str(), &trust(card)].into_iter().chain(card.notes.iter().copied()).map(set).collect();
    let (scale, rows) = foot_rows(&words, LAST - from);
    let mut y = from;
    for row in rows {
        drawn.push(text("", (LEFT, y), FOOT.0 * scale, Anchor::Start, row));
        y += FOOT.1 * scale;
    }
    y += 4.0;
    while y <= LAST {
        drawn.push(line("tn-grid", (LEFT, y), (RIGHT, y)));
        y += 7.0;
    }
    drawn
}

/// The lines at the foot, and how far they are shrunk so that all of them fit. Where they do not at the smallest, they
/// run on, and what is left out at the end has its ellipsis.
fn foot_rows(words: &[String], height: f64) -> (f64, Vec<String>) {
    let rows = |scale: f64, words: &[String], most: usize| -> Vec<String> {
        words.iter().flat_map(|words| fit::wrapped(words, (RIGHT - LEFT) / (FOOT.0 * scale), most)).collect()
    };
    let fits = |scale: f64, rows: &[String]| FOOT.1 * scale * (count(rows.len()) - 1.0) <= height;
    for scale in [1.0, 0.95, 0.9, 0.85, SMALLEST] {
        let rows = rows(scale, words, usize::MAX);
        if fits(scale, &rows) {
            return (scale, rows);
        }
    }
    let most = (1..64).take_while(|rows| FOOT.1 * SMALLEST * (f64::from(*rows) - 1.0) <= height).count();
    (SMALLEST, rows(SMALLEST, &[words.join("; ")], most))
}

fn trust(card: &Card<'_>) -> String {
    let sure = crate::words::terms::whole(card.confidence.percent());
    let trust = format!("± and black strip: {sure} % sure");
    if card.date.is_empty() { trust } else { format!("{trust}; {}", card.date) }
}
