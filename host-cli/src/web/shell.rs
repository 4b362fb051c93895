//! What surrounds every page: its head, and the ways to the others.

use askama::Template;

use super::Response;
use super::part::PagePart;
use crate::log::Tag;

/// The style sheet of all pages.
pub const STYLE: &str =
    concat!(include_str!("../../templates/web/style.css"), "\n", include_str!("../picture/style.css"));

/// The script of all pages; without it they do the same, with more presses, and send photographs as they are.
#[cfg(feature = "serve")]
pub const SCRIPT: &str =
    concat!(include_str!("../../templates/web/page.js"), "\n", include_str!("../../templates/web/photo.js"));

/// The same in the app, which has a script of its own beside it.
#[cfg(not(feature = "serve"))]
pub const SCRIPT: &str = include_str!("../../templates/web/page.js");

/// What stands beside the name of the page in the browser: a strip of cloth between two marks.
pub const ICON: &str = include_str!("../../templates/web/icon.svg");

/// Where a page stands among the others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The first page.
    Home,
    /// A pull test.
    Measure,
    /// Cloths.
    Cloths,
    /// Patterns, and what suits them.
    Patterns,
    /// Garments being made.
    Garments,
    /// Everything else.
    More,
}

/// A page that grows part by part.
#[derive(Debug)]
pub struct Shell {
    place: Place,
    title: String,
    tag: Option<Tag>,
    parts: Vec<String>,
    script: bool,
}

#[derive(Template)]
#[template(path = "web/shell.html")]
struct Page<'a> {
    title: &'a str,
    tag: Option<Tag>,
    script: bool,
    places: [(&'static str, &'static str, bool); 5],
    parts: &'a [String],
}

impl Shell {
    /// A page without parts.
    pub fn new(place: Place, title: &str) -> Self {
        Self { place, title: title.to_owned(), tag: None, parts: Vec::new(), script: true }
    }

    /// Puts in a paragraph.
    pub fn words(&mut self, words: &str) {
        self.push(PagePart::told(words));
    }

    /// Puts in a part.
    pub fn push(&mut self, part: PagePart) {
        self.parts.push(part.html());
    }

    /// Puts the tag of a cloth before the title.
    pub const fn tag(&mut self, tag: Tag) {
        self.tag = Some(tag);
    }

    /// The answer.
    pub fn page(self) -> Response {
        self.with_status(200)
    }

    /// The answer under another status.
    pub fn with_status(self, status: u16) -> Response {
        let place = |href, name, place| (href, name, self.place == place);
        let page = Page {
            title: &self.title,
            tag: self.tag,
            script: self.script,
            places: [
                place("/measure", "Measure", Place::Measure),
                place("/cloths", "Cloths", Place::Cloths),
                place("/patterns", "Patterns", Place::Patterns),
                place("/garments", "Garments", Place::Garments),
                place("/more", "More", Place::More),
            ],
            parts: &self.parts,
        };
        // A template that writes into a string cannot fail.
        Response::page(status, page.render().unwrap_or_default())
    }
}

/// The answer where there is no such page.
pub fn nowhere() -> Response {
    Shell::new(Place::Home, "There is no such page").with_status(404)
}
