//! Pictures as SVG: pure functions from plain structs, the same bytes every time.
//!
//! Shapes, patterns and words carry the meaning, colour only helps, so that a grey printer and a colour-blind eye lose
//! nothing. Each picture is one `img` to a screen reader, with a title and a description in words. A page may set the
//! custom properties `--tn-ink`, `--tn-soft`, `--tn-faint`, `--tn-paper`, `--tn-ask` and `--tn-ask-fill` on `.tn`; a
//! reader that knows none takes the light colours.

pub mod card;
pub mod class;
pub mod drawn;
pub mod fit;
pub mod gauge;
pub mod growth;
mod labels;
pub mod stash_map;
pub mod strip;
pub mod svg;
pub mod true_scale;
mod words;

use svg::Element;

/// The style sheet of all pictures: in every file of its own, and once in a page that holds pictures.
pub const STYLE: &str = include_str!("style.css");

/// A finished picture.
#[derive(Debug, Clone)]
pub struct Picture {
    root: Element,
}

/// The unit of a picture's size.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Size {
    /// Pixels of a page; may be scaled.
    Pixels,
    /// Millimetres of paper; true only when printed at 100 %.
    Millimetres,
}

impl Picture {
    fn new(size: Size, width: f64, height: f64, title: &str, description: &str) -> Self {
        let (unit, class) = match size {
            Size::Pixels => ("", "tn"),
            Size::Millimetres => ("mm", "tn tn-print"),
        };
        let (across, down) = (svg::number(width), svg::number(height));
        let mut root = Element::new("svg")
            .with("xmlns", "http://www.w3.org/2000/svg")
            .class(class)
            .with("role", "img")
            .with("width", format!("{across}{unit}"))
            .with("height", format!("{down}{unit}"))
            .with("viewBox", format!("0 0 {across} {down}"));
        root.push(Element::new("title").text(title));
        root.push(Element::new("desc").text(description));
        root.push(svg::rect("tn-paper", (0.0, 0.0), width, height));
        Self { root }
    }

    fn draw(&mut self, element: Element) {
        self.root.push(element);
    }

    /// The picture as a file of its own.
    #[must_use]
    pub fn file(&self) -> String {
        let mut root = self.root.clone();
        root.push_front(Element::new("style").verbatim(STYLE));
        format!("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{}\n", root.render())
    }

    /// The picture as a part of an HTML page that holds [`STYLE`] once.
    #[must_use]
    pub fn inline(&self) -> String {
        self.root.render()
    }
}
