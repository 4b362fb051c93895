//! How to measure, in our own drawings; what the signs and the words mean. The words themselves are those of the guide for
//! readers (`host-cli/guide`).

use askama::Template;
use tenter_core::{Confidence, Figure, Figures, Grain, Length, Limit, PullTest, Range, Ratio, Scatter, Table, Unit};

use super::drawing;
use super::part::{AnswerTag, Link, PagePart, Row};
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit};
use crate::finding::drawn::GrainStretch;
use crate::finding::verdict::Verdict;
use crate::picture::gauge::{self, Gauge};
use crate::words::page::sentences;

#[derive(Template)]
#[template(path = "web/measuring.html")]
struct Measuring {
    steps: Vec<(String, &'static str)>,
    mistakes: Vec<String>,
}

/// The part of the guide that an address names.
pub fn show(_: &mut Visit<'_>, part: &str) -> Answered {
    let mut page = match part {
        "measuring" => {
            let mut page = Shell::new(Place::More, "How to measure");
            let text = include_str!("../../guide/measuring.md");
            let steps = items(text, "## Step by step").into_iter().zip(DRAWINGS);
            let steps = steps.map(|(step, name)| (step, drawing::of(name))).collect();
            let mistakes = items(text, "## Usual mistakes");
            page.push(PagePart::Html(Measuring { steps, mistakes }.render().unwrap_or_default()));
            page
        }
        "signs" => signs(),
        "words" => of_guide("Words", include_str!("../../guide/glossary.md")),
        "trust" => of_guide("How far to trust an answer", include_str!("../../guide/trust.md")),
        _ => return Ok(super::shell::nowhere()),
    };
    page.push(PagePart::Links(vec![
        Link::new("/measure", "Measure a swatch").first(),
        Link::new("/guide/measuring", "How to measure"),
        Link::new("/guide/signs", "What the signs mean"),
        Link::new("/guide/words", "Words"),
        Link::new("/guide/trust", "How far to trust an answer"),
    ]));
    Ok(page.page())
}

/// The drawing beside each step of the guide, in their order.
const DRAWINGS: [&str; 9] = ["", "grain", "fold", "", "pull", "marks", "read", "rest", ""];

/// A test of three pulls, to be drawn as an example.
fn example() -> Option<Figure> {
    let mut test = PullTest::new(Length::from_mm(250), Grain::Crosswise).ok()?;
    for to in [268, 269, 270] {
        test.add_pull(Length::from_mm(to)).ok()?;
    }
    Figures::of(&test, Scatter::ASSUMED).ok().map(|figures| figures.stretch)
}

/// The points of a list below a heading.
fn items(markdown: &str, head: &str) -> Vec<String> {
    let below = markdown.split_once(head).map(|(_, below)| below).unwrap_or_default();
    let below = below.split("\n## ").next().unwrap_or_default();
    let mut items: Vec<String> = Vec::new();
    for line in below.lines() {
        let point = line.strip_prefix("* ").or_else(|| {
            line.split_once(". ").filter(|(number, _)| number.parse::<u8>().is_ok()).map(|(_, point)| point)
        });
        match (point, items.last_mut()) {
            (Some(point), _) => items.push(point.to_owned()),
            (None, Some(item)) if line.starts_with("  ") => {
                item.push(' ');
                item.push_str(line.trim());
            }
            _ => {}
        }
    }
    items.iter().map(|item| plain(item)).filter(|item| !item.is_empty()).collect()
}

/// A text of the guide as a page prints it.
fn plain(text: &str) -> String {
    sentences(&without_links(text).replace(['`', '*'], ""))
}

/// The answers with their signs, and a picture that shows the others.
fn signs() -> Shell {
    let mut page = Shell::new(Place::More, "What the signs mean");
    let asked = Limit::parse("5%", Unit::Mm).ok();
    let row = GrainStretch {
        grain: Grain::Crosswise,
        stretch: example(),
        asked: Range { at_least: asked, at_most: None },
        answer: None,
        pulls: [72, 76, 79].into_iter().filter_map(|pull| Ratio::new(pull, 1000)).collect(),
    };
    let (title, confidence) = ("an example", Confidence::default());
    let picture = gauge::draw(&Gauge { title, rows: &[row], confidence, table: &Table::OWN, key: false });
    page.push(PagePart::Patch(String::new(), vec![
        PagePart::Picture(picture.inline(), String::new()),
        PagePart::Words("The tick is what was measured. The band is its ±: tenter is 95\u{a0}% sure that the true value lies within it. The hatched box between brackets is what is asked. Each ring is one pull.".to_owned()),
    ]));
    let said = [
        (Verdict::Meets, "It does what is asked."),
        (Verdict::Close, "The test cannot tell. The page tells you what would settle it."),
        (Verdict::Unknown, "What is asked was not measured."),
        (Verdict::TooLittle, "The cloth suits, but there is not enough of it."),
        (Verdict::Short, "It gives too little."),
        (Verdict::Over, "It gives or grows too much."),
        (Verdict::Choose, "The role asks nothing, so you choose."),
        (Verdict::OtherKind, "It is another kind of cloth than is asked."),
    ];
    for (verdict, words) in said {
        page.push(PagePart::Answer(AnswerTag { about: words.to_owned(), ..AnswerTag::of(verdict, "") }));
    }
    page
}

#[derive(Template)]
#[template(path = "web/guide.html")]
struct Guide {
    rows: Vec<Row>,
    lines: Vec<String>,
}

/// A part of the guide for readers: the rows of its tables and the points of its lists.
fn of_guide(title: &str, markdown: &str) -> Shell {
    let rows = markdown.lines().filter(|line| line.starts_with('|')).filter_map(|line| {
        let (label, words) = line.trim().trim_matches('|').split_once('|')?;
        let (label, words) = (label.trim(), words.trim());
        (!label.starts_with("---") && label != "word").then(|| Row {
            small: String::new(),
            label: plain(label),
            words: plain(words),
        })
    });
    let (rows, lines) = (rows.collect(), items(markdown, "\n"));
    let mut page = Shell::new(Place::More, title);
    page.push(PagePart::Html(Guide { rows, lines }.render().unwrap_or_default()));
    page
}

/// Markdown without the addresses of its links.
fn without_links(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once("](") {
        let (words, open) = before.rsplit_once('[').map_or((before, ""), |(head, words)| (head, words));
        out.push_str(words);
        out.push_str(open);
        rest = after.split_once(')').map_or("", |(_, rest)| rest);
    }
    out + rest
}
