//! The swatch book: every cloth with its pictures, a map of the stash, search and filters; beside what a view asks
//! where one is chosen.

use askama::Template;
use tenter_core::{Confidence, Table};

use super::cloth::ClothArticle;
use super::{class, rendered, together};
use crate::finding::cloth::Shown;
use crate::finding::fit::Candidate;
use crate::finding::fit::Fitted;
use crate::finding::fit::Reason;
use crate::finding::fit::RoleFit;
use crate::finding::fit::Stock;
use crate::finding::fit::asked::other_kinds;
use crate::finding::verdict::Verdict;
use crate::log::Tag;
use crate::picture::drawn;
use crate::picture::gauge::{self, GaugeKey};
use crate::words::answer;
use crate::words::figures::poorly as poorly_words;
use crate::words::fit::{because, chance, not_asked};
use crate::words::page::told;
use crate::words::pattern::{self, asks};
use crate::words::terms as words;

/// The scripts of the page, each as it stands between its tags: whoever serves the page may allow these and no others.
pub const SCRIPTS: [&str; 2] = [
    "document.documentElement.classList.add(\"scripted\")",
    concat!("\n", include_str!("../../templates/book.js"), "\n"),
];

/// How many cloths of a role are listed beside its map.
const LISTED: usize = 12;

/// A book that grows cloth by cloth.
#[derive(Debug)]
pub struct Book<'a> {
    stock: &'a Stock,
    view: Option<&'a Fitted<'a>>,
    confidence: Confidence,
    table: &'static Table,
    cloths: Vec<ClothArticle>,
}

/// A role of the view with its map and what suits it.
#[derive(Debug)]
struct Role {
    name: String,
    asks: String,
    map: String,
    best: Vec<Fit>,
    others: String,
}

/// A cloth that may suit a role.
#[derive(Debug)]
struct Fit {
    id: String,
    tag: Tag,
    name: String,
    sign: &'static str,
    word: &'static str,
    class: &'static str,
    /// How likely it will do, and what is missing of it.
    worth: Vec<String>,
}

#[derive(Template)]
#[template(path = "book.html")]
struct Page<'a> {
    title: String,
    summary: String,
    map: String,
    roles: Vec<Role>,
    key: String,
    trust: String,
    table: String,
    cloths: &'a [ClothArticle],
}

impl<'a> Book<'a> {
    /// An empty book of a stash, beside a view where one is chosen.
    #[must_use]
    pub const fn new(
        stock: &'a Stock,
        view: Option<&'a Fitted<'a>>,
        confidence: Confidence,
        table: &'static Table,
    ) -> Self {
        Self { stock, view, confidence, table, cloths: Vec::new() }
    }

    /// Puts in a cloth.
    pub fn add(&mut self, shown: &Shown<'_>) {
        self.cloths.push(ClothArticle::of(shown, self.view));
    }

    /// The page, dated `made`.
    #[must_use]
    pub fn page(&self, made: &str) -> String {
        let roles: Vec<Role> =
            self.view.map(|view| view.roles.iter().map(|role| self.role(role, view)).collect()).unwrap_or_default();
        let map = if roles.is_empty() { drawn::map(self.stock, None, self.confidence).inline() } else { String::new() };
        let key = GaugeKey { confidence: self.confidence, pulls: true, asked: !roles.is_empty() };
        let trust = words::whole(self.confidence.percent());
        rendered(&Page {
            title: self.title(),
            summary: self.summary(made),
            map,
            key: gauge::key(&key).inline(),
            trust: format!("The bar is the ± of the reading: the cloth lies within it, {trust}\u{a0}% sure."),
            table: format!("{}: {}", self.table.source, self.table.note),
            cloths: &self.cloths,
            roles,
        })
    }

    fn title(&self) -> String {
        self.view.map_or_else(
            || "Swatch book".to_owned(),
            |fitted| format!("Swatch book for {}", pattern::title(fitted.pattern, fitted.view)),
        )
    }

    fn summary(&self, made: &str) -> String {
        let count = match self.cloths.len() {
            0 => "No cloth yet".to_owned(),
            1 => "1 cloth".to_owned(),
            many => format!("{many} cloths"),
        };
        let seen = self.stock.fabrics.iter().filter(|fabric| fabric.is_seen()).count();
        let seen = if seen == 0 { String::new() } else { format!(", {seen} of them seen in a shop") };
        format!("{count}{seen}. As of {made}.")
    }

    fn role(&self, role: &RoleFit<'_>, view: &Fitted<'_>) -> Role {
        let considered = || role.candidates.iter().filter(|one| !matches!(one.reason, Reason::OtherKind(_)));
        let others = considered().count().saturating_sub(LISTED);
        let mut more = Vec::new();
        if others > 0 {
            more.push(format!("{others} more in the book below"));
        }
        more.extend(
            other_kinds(role)
                .into_iter()
                .map(|(feature, others)| format!("{} {}", others.len(), not_asked(feature, role.role))),
        );
        Role {
            name: role.role.name.clone(),
            asks: together(&asks(role.role, view.unit)),
            map: drawn::map(self.stock, Some(role), self.confidence).inline(),
            best: considered().take(LISTED).map(|candidate| fit(candidate, view)).collect(),
            others: more.join("; "),
        }
    }
}

fn fit(candidate: &Candidate<'_>, view: &Fitted<'_>) -> Fit {
    let fabric = candidate.fabric;
    let verdict = candidate.verdict();
    // What the map does not show, such as growth, may be what is short; and of a cloth that does there may be too little.
    let why = (verdict != Verdict::Meets && !verdict.is_open()).then(|| because(candidate, view));
    let poorly = candidate.poorly.as_ref().filter(|_| why.is_none());
    let poorly = poorly.and_then(|figures| poorly_words(figures, view.confidence));
    let worth = [chance(candidate.answer, candidate.chance, candidate.disagrees()), why, poorly];
    Fit {
        id: fabric.id.to_string().to_lowercase(),
        tag: fabric.tag,
        name: fabric.name.clone(),
        sign: answer::sign(verdict),
        word: answer::word(verdict),
        class: class(verdict),
        worth: worth.into_iter().flatten().map(|one| told(&one)).collect(),
    }
}
