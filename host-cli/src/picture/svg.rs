//! A small writer of SVG: elements whose texts and attributes cannot break out, numbers without float noise, the same
//! bytes every time.

use std::fmt::Write as _;

pub use crate::finding::axis::number;
use crate::finding::axis::ticks;

/// An element with its attributes and what it holds.
#[derive(Debug, Clone, PartialEq)]
pub struct Element {
    name: &'static str,
    attributes: Vec<(&'static str, String)>,
    children: Vec<Node>,
}

#[derive(Debug, Clone, PartialEq)]
enum Node {
    Element(Element),
    Text(String),
    /// Written as it is: our own style sheet, never a text from outside.
    Verbatim(&'static str),
}

/// Where a text stands to its x.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// The text begins there.
    Start,
    /// Its middle lies there.
    Middle,
    /// It ends there.
    End,
}

/// A point; x to the right, y downwards.
pub type Point = (f64, f64);

impl Element {
    /// An empty element.
    #[must_use]
    pub const fn new(name: &'static str) -> Self {
        Self { name, attributes: Vec::new(), children: Vec::new() }
    }

    /// The same with an attribute that is a text.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<String>) -> Self {
        self.attributes.push((name, value.into()));
        self
    }

    /// The same with an attribute that is a number.
    #[must_use]
    pub fn at(self, name: &'static str, value: f64) -> Self {
        self.with(name, number(value))
    }

    /// The same with the style class that `picture::STYLE` draws.
    #[must_use]
    pub fn class(self, class: &'static str) -> Self {
        self.with("class", class)
    }

    /// The same with a text inside.
    #[must_use]
    pub fn text(mut self, text: impl Into<String>) -> Self {
        self.children.push(Node::Text(text.into()));
        self
    }

    /// The same with one of our own style sheets inside, written as it is.
    #[must_use]
    pub fn verbatim(mut self, text: &'static str) -> Self {
        self.children.push(Node::Verbatim(text));
        self
    }

    /// Puts an element inside, after what is there.
    pub fn push(&mut self, child: Self) {
        self.children.push(Node::Element(child));
    }

    /// Puts an element inside, before what is there.
    pub fn push_front(&mut self, child: Self) {
        self.children.insert(0, Node::Element(child));
    }

    /// The bytes.
    #[must_use]
    pub fn render(&self) -> String {
        let mut out = String::new();
        self.write(&mut out);
        out
    }

    // Writing into a string cannot fail.
    fn write(&self, out: &mut String) {
        let _ = write!(out, "<{}", self.name);
        for (name, value) in &self.attributes {
            let _ = write!(out, " {name}=\"{}\"", escaped(value));
        }
        if self.children.is_empty() {
            out.push_str("/>");
        } else {
            out.push('>');
            for child in &self.children {
                match child {
                    // A line for each element keeps changes readable; spaces inside a text would show.
                    Node::Element(element) => {
                        out.push('\n');
                        element.write(out);
                    }
                    Node::Text(text) => out.push_str(&escaped(text)),
                    Node::Verbatim(text) => out.push_str(text),
                }
            }
            let _ = write!(out, "</{}>", self.name);
        }
    }
}

/// A text as XML may hold it: the five special characters as references, a character that XML 1.0 forbids as U+FFFD.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            // As they are, a reader would turn them into spaces or into one another.
            '\t' | '\n' | '\r' => {
                let _ = write!(out, "&#{};", u32::from(c));
            }
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            _ => out.push(c),
        }
    }
    out
}

/// A straight line.
#[must_use]
pub fn line(class: &'static str, from: Point, to: Point) -> Element {
    Element::new("line").class(class).at("x1", from.0).at("y1", from.1).at("x2", to.0).at("y2", to.1)
}

/// Many straight lines as one element: grids and hatching.
#[must_use]
pub fn strokes(class: &'static str, lines: impl IntoIterator<Item = (Point, Point)>) -> Element {
    let mut path = String::new();
    for ((x1, y1), (x2, y2)) in lines {
        // Writing into a string cannot fail.
        let _ = write!(path, "M{},{}L{},{}", number(x1), number(y1), number(x2), number(y2));
    }
    Element::new("path").class(class).with("d", path)
}

/// Slanted lines in a box from its upper left corner, `step` apart on a raster that begins at 0, so that boxes above one
/// another match.
#[must_use]
pub fn hatch(class: &'static str, corner: Point, width: f64, height: f64, step: f64) -> Element {
    let (from, to, top) = (corner.0, corner.0 + width, corner.1);
    let lines = ticks(from - height, to, step).filter_map(move |start| {
        let (left, right) = (start.max(from), (start + height).min(to));
        let at = |x: f64| (x, top + height - (x - start));
        (right - left > 0.04 * step).then(|| (at(left), at(right)))
    });
    strokes(class, lines)
}

/// A rectangle from its upper left corner; a negative size counts as none.
#[must_use]
pub fn rect(class: &'static str, corner: Point, width: f64, height: f64) -> Element {
    let rect = Element::new("rect").class(class).at("x", corner.0).at("y", corner.1);
    rect.at("width", width.max(0.0)).at("height", height.max(0.0))
}

/// A circle.
#[must_use]
pub fn circle(class: &'static str, centre: Point, radius: f64) -> Element {
    Element::new("circle").class(class).at("cx", centre.0).at("cy", centre.1).at("r", radius)
}

/// A closed shape.
#[must_use]
pub fn polygon(class: &'static str, points: &[Point]) -> Element {
    Element::new("polygon").class(class).with("points", listed(points))
}

/// An open line through points.
#[must_use]
pub fn polyline(class: &'static str, points: &[Point]) -> Element {
    Element::new("polyline").class(class).with("points", listed(points))
}

fn listed(points: &[Point]) -> String {
    let texts: Vec<String> = points.iter().map(|(x, y)| format!("{},{}", number(*x), number(*y))).collect();
    texts.join(" ")
}

/// A text on one line, its baseline at y.
#[must_use]
pub fn text(class: &'static str, at: Point, size: f64, anchor: Anchor, words: impl Into<String>) -> Element {
    let anchor = match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    };
    let text = Element::new("text").class(class).at("x", at.0).at("y", at.1).at("font-size", size);
    text.with("text-anchor", anchor).text(words)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_never_odd() {
        for (value, want) in [
            (0.1 + 0.2, "0.3"),
            (-0.001, "0"),
            (-0.0, "0"),
            (105.0, "105"),
            (100.0, "100"),
            (1.005, "1"),
            (-2.5, "-2.5"),
            (f64::NAN, "0"),
            (f64::INFINITY, "0"),
            (1e300, "1000000"),
        ] {
            assert_eq!(number(value), want, "{value}");
        }
    }

    #[test]
    fn texts_cannot_break_out() {
        let element = Element::new("g").with("id", "a\"b'\n").text("</g>&\u{1}");
        assert_eq!(element.render(), "<g id=\"a&quot;b&#39;&#10;\">&lt;/g&gt;&amp;\u{fffd}</g>");
    }
}
