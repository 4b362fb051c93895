//! The parts of which pages are made.

use askama::Template;

use super::form::{FieldKind, Form};
use crate::finding::verdict::Verdict;
use crate::page::{class, together};
use crate::words::advice::Spoken;
use crate::words::answer;
use crate::words::page::told;

/// A part of a page. Texts are escaped; only our own pictures and parts are written as they are.
#[derive(Clone, Debug)]
pub enum PagePart {
    /// A paragraph.
    Words(String),
    /// A paragraph that stands back.
    Soft(String),
    /// A heading.
    Head(String),
    /// An answer, large.
    Answer(AnswerTag),
    /// Something to heed: what, and why.
    Notice(String, Vec<String>),
    /// Labels with what is said of each.
    Rows(Vec<Row>),
    /// Ways to go on.
    Links(Vec<Link>),
    /// A table: what it is called, its heads, its rows.
    Table(String, Vec<&'static str>, Vec<Vec<Cell>>),
    /// Things with their answers, and why.
    Answers(Vec<AnswerLine>),
    /// A picture that is larger than a phone: what it is called, and itself.
    Wide(String, String),
    /// A picture of ours with words below.
    Picture(String, String),
    /// A form.
    Form(Box<Form>),
    /// Parts that belong together.
    Patch(String, Vec<PagePart>),
    /// Parts that are folded away at first, unless they are open.
    Fold(String, bool, Vec<PagePart>),
    /// HTML of ours.
    Html(String),
}

/// An answer in sign and word.
#[derive(Clone, Debug)]
pub struct AnswerTag {
    /// Its class in the style sheet.
    pub class: &'static str,
    /// Its sign.
    pub sign: &'static str,
    /// Its word.
    pub word: &'static str,
    /// What it is about.
    pub about: String,
}

/// A label with what is said.
#[derive(Clone, Debug)]
pub struct Row {
    /// The label; empty where it is that of the row before.
    pub label: String,
    /// What is said.
    pub words: String,
    /// What stands behind it.
    pub small: String,
}

/// A way to go on.
#[derive(Clone, Debug)]
pub struct Link {
    /// Where to.
    pub href: String,
    /// What it is called.
    pub words: String,
    /// What is there.
    pub about: String,
    /// Whether it is what most would do.
    pub first: bool,
}

/// A thing with its answer.
#[derive(Clone, Debug)]
pub struct AnswerLine {
    /// Where it leads.
    pub href: String,
    /// What it is.
    pub words: String,
    /// Its answer.
    pub told: AnswerTag,
    /// Why.
    pub why: String,
}

/// A cell of a table.
#[derive(Clone, Debug, Default)]
pub struct Cell {
    /// What it says.
    pub words: String,
    /// Where it leads; nowhere when empty.
    pub href: String,
    /// Whether it is a figure.
    pub figure: bool,
}

impl AnswerTag {
    /// An answer as in a list.
    pub fn of(verdict: impl Into<Verdict>, about: &str) -> Self {
        let verdict = verdict.into();
        let (sign, word) = (answer::sign(verdict), answer::word(verdict));
        Self { class: class(verdict), sign, word, about: told(about) }
    }

    /// An answer at the head of a page.
    pub fn headline(verdict: impl Into<Verdict>, about: &str) -> Self {
        let verdict = verdict.into();
        Self { word: answer::headline(verdict), ..Self::of(verdict, about) }
    }
}

impl Row {
    /// A row of our own words.
    pub fn new(label: &str, words: &str) -> Self {
        Self { label: label.to_owned(), words: told(words), small: String::new() }
    }

    /// Lines of advice, with the reasons where they are wanted.
    pub fn spoken(lines: &[Spoken], why: bool) -> Vec<Self> {
        let row = |line: &Spoken| {
            let small = if why { together(&format!("{} [{}]", line.why, line.source)) } else { String::new() };
            Self { small, ..Self::new(line.about, &line.text) }
        };
        let mut rows: Vec<Self> = lines.iter().map(row).filter(|row| !row.words.is_empty()).collect();
        let labels: Vec<String> = rows.iter().map(|row| row.label.clone()).collect();
        for (row, before) in rows.iter_mut().skip(1).zip(&labels) {
            if row.label == *before {
                row.label.clear();
            }
        }
        rows
    }
}

impl Link {
    /// A way to go on.
    pub fn new(href: impl Into<String>, words: &str) -> Self {
        Self { href: href.into(), words: words.to_owned(), about: String::new(), first: false }
    }

    /// With what is there.
    pub fn about(mut self, about: &str) -> Self {
        about.clone_into(&mut self.about);
        self
    }

    /// As what most would do.
    pub const fn first(mut self) -> Self {
        self.first = true;
        self
    }
}

impl Cell {
    /// A cell of words.
    pub fn new(words: impl AsRef<str>) -> Self {
        Self { words: together(words.as_ref()), ..Self::default() }
    }

    /// A cell with a figure.
    pub fn figure(words: impl AsRef<str>) -> Self {
        Self { figure: true, ..Self::new(words) }
    }

    /// A cell that leads somewhere.
    pub fn link(href: impl Into<String>, words: impl AsRef<str>) -> Self {
        Self { href: href.into(), ..Self::new(words) }
    }
}

#[derive(Template)]
#[template(path = "web/part.html")]
struct PartPage<'p> {
    part: &'p PagePart,
}

#[derive(Template)]
#[template(path = "web/form.html")]
struct FormPage<'p> {
    form: &'p Form,
}

impl PagePart {
    /// Our own words as a paragraph.
    pub fn told(words: &str) -> Self {
        Self::Words(told(words))
    }

    /// The part as HTML. A template that writes into a string cannot fail.
    pub fn html(&self) -> String {
        PartPage { part: self }.render().unwrap_or_default()
    }
}

impl Form {
    /// The form as HTML.
    pub fn html(&self) -> String {
        FormPage { form: self }.render().unwrap_or_default()
    }
}
