//! The stash as text.

use tenter_core::forecast::forecast;
use tenter_core::{Confidence, Figure, Range, Unit};

use crate::finding::cloth::{Listed, Shown, Standing};
use crate::finding::memory::made_of;
use crate::finding::tag::Renumbered;
use crate::plain::isolated;
use crate::text::figures;
use crate::text::gauge::{self, GaugeText};
use crate::text::lines::{Lines, style};
use crate::text::table::{self, Column};
use crate::words::answer::Tone;
use crate::words::cloth as words;
use crate::words::figures as figure_words;
use crate::words::quantity::counted;
use crate::words::terms::{bare_figure, duration, garment};
use crate::words::{check, counts, memory, quantity, washing};

/// When growth is foreseen, in seconds after release.
const FORESEEN: u32 = 3600;

/// The list.
#[must_use]
pub fn list(listed: &[Listed], all: usize, retired: bool, confidence: Confidence, unit: Unit, width: usize) -> String {
    let mut text = Lines::new(width);
    if all == 0 {
        text.words(if retired { words::NONE_RETIRED } else { words::NONE });
        return text.finish();
    }
    let disagree = listed.iter().any(|listed| !listed.disagree.is_empty());
    let mut columns = vec![
        ("tag", Column::Number),
        ("name", Column::Text),
        ("kind", Column::Word),
        ("across", Column::Measured("%")),
        ("along", Column::Measured("%")),
        ("on hand", Column::Number),
        ("wide", Column::Number),
        ("where", Column::Text),
    ];
    columns.extend(disagree.then_some(("", Column::Text)));
    let stretch =
        |stretch: Option<Figure>| stretch.map(|stretch| bare_figure(&stretch, confidence)).unwrap_or_default();
    let rows = listed.iter().map(|listed| {
        let fabric = &listed.fabric;
        let mut row = vec![
            fabric.tag.to_string(),
            fabric.name.clone(),
            fabric.construction.word().to_owned(),
            stretch(listed.crosswise),
            stretch(listed.lengthwise),
            fabric.length.map(|length| quantity::cloth(length, unit)).unwrap_or_default(),
            fabric.width.map(|width| quantity::width(width, unit)).unwrap_or_default(),
            words::place(fabric),
        ];
        row.extend(disagree.then(|| counts::disagree(&listed.disagree)));
        row
    });
    if !listed.is_empty() {
        text.block(&table::render(&columns, rows, width));
    }
    text.words(&words::count(listed.len(), all, retired));
    for (listed, kept) in listed.iter().flat_map(|listed| listed.kept.iter().map(move |kept| (listed, kept))) {
        let tag = listed.fabric.tag;
        text.row("kept", &memory::kept_of(tag, kept.length, &kept.garment, unit));
    }
    text.finish()
}

/// Everything about one cloth.
#[must_use]
pub fn shown(shown: &Shown<'_>, columns: usize, unicode: bool) -> String {
    let fabric = shown.fabric;
    let mut text = Lines::new(columns);
    text.heading(&words::title(fabric));
    if fabric.dropped {
        text.row("retired", &words::retired(fabric));
    }
    about(&mut text, shown);
    for standing in &shown.standing {
        measured(&mut text, shown, standing, unicode);
    }
    if !shown.standing.is_empty() {
        text.blank();
    }
    for grain in shown.unmeasured() {
        text.row(grain.word(), &words::not_measured(fabric, grain));
    }
    if let Some(ruled_out) = shown.comes_back_worst().and_then(|worst| figure_words::ruled_out(worst, shown.confidence))
    {
        text.row("suits", &ruled_out);
    }
    for suit in shown.suits() {
        text.row("suits", &format!("{} [{}]", garment(suit), suit.source));
    }
    let is_read = shown.standing.iter().any(|standing| standing.figures.rest.is_some());
    if !is_read && shown.suits().iter().any(|suit| suit.close) {
        text.row("suits", check::CLOSE_NOT_READ);
    }
    if let Some(repeatability) = shown.repeatability() {
        text.row("trust", &check::repeatability(&repeatability));
    }
    if !shown.tests.is_empty() {
        text.blank();
        text.heading("  tests");
        tests(shown, columns.saturating_sub(2)).lines().for_each(|line| text.line(format_args!("  {line}")));
    }
    text.blank();
    text.heading("  history");
    for (day, words) in words::steps(shown) {
        text.row(&day, &words);
    }
    text.finish()
}

fn about(text: &mut Lines, shown: &Shown<'_>) {
    let fabric = shown.fabric;
    text.row("cloth", &words::facts(fabric, shown.unit).join(", "));
    match &fabric.shop {
        Some(shop) => {
            let price = shop.price.as_ref().map(|price| format!(", {price}")).unwrap_or_default();
            text.row("seen", &format!("{}{price}; not bought", isolated(&shop.place)));
        }
        None if fabric.place.is_empty() => {}
        None => text.row("where", &isolated(&fabric.place)),
    }
    if !fabric.note.is_empty() {
        text.row("note", &isolated(&fabric.note));
    }
    for kept in shown.kept {
        text.row("kept", &memory::kept(kept.length, &kept.garment, shown.unit));
    }
    for seen in shown.photos {
        text.row("photo", &memory::photo(seen, shown.here));
    }
    for (number, lesson) in (1..).zip(&fabric.lessons) {
        text.row("learned", &memory::lesson(number, lesson, shown.garments, shown.here));
    }
    for garment in made_of(fabric, shown.garments) {
        text.row("made", &memory::called(garment));
    }
    for (grain, stands, marks) in shown.washing() {
        if let Some(line) = washing::line(grain, &stands, marks, (shown.confidence, shown.unit)) {
            text.row("washing", &format!("{} {}", line.about, line.text));
        }
    }
    for line in words::care(fabric) {
        text.row(line.about, &line.text);
    }
}

fn measured(text: &mut Lines, shown: &Shown<'_>, standing: &Standing, unicode: bool) {
    text.blank();
    text.heading(&format!("  {}", standing.grain.word()));
    if let Some(disagreement) = &standing.disagrees {
        let tone = style(Tone::Doubtful);
        text.line(format_args!("  {tone}{}{tone:#}", counts::DISAGREE));
        text.hanging("  ", 2, &counts::disagreement(disagreement, shown.confidence, shown.here));
    }
    let stretch = standing.figures.stretch;
    let class = shown.table.class(stretch.ratio).name;
    figures::write(text, &standing.figures, class, &standing.notes, shown.confidence);
    // Where it cannot be foreseen, there is nothing to say here.
    if let Ok(forecast) = forecast(&standing.released.said.test, FORESEEN) {
        figures::write_forecast(text, &forecast, &duration(FORESEEN));
    }
    let beside: Vec<Figure> = shown.standing.iter().map(|standing| standing.figures.stretch).collect();
    let (confidence, columns) = (shown.confidence, text.columns());
    let asked = Range::default();
    text.block(&gauge::draw(&GaugeText { stretch, beside: &beside, confidence, asked, columns, unicode }));
    if let Some(from) = counts::from(standing, quantity::marks_unit(shown.unit)) {
        text.row("from", &from);
    }
}

fn tests(shown: &Shown<'_>, width: usize) -> String {
    let named = shown.tests.iter().any(|test| shown.people.name(test.said.pulled_by).is_some());
    let mut columns = vec![
        ("test", Column::Word),
        ("pulled", Column::Word),
        ("grain", Column::Word),
        ("marks", Column::Number),
        ("pulls", Column::Number),
        ("stretch", Column::Number),
        ("growth", Column::Number),
        ("by", Column::Word),
        ("", Column::Text),
    ];
    columns.retain(|(head, _)| named || *head != "by");
    let rows = shown.tests.iter().rev().map(|test| {
        let said = &test.said;
        let figures = shown.figures(test);
        let figure = |figure: Option<Figure>| figure.map(|figure| quantity::percent(figure.ratio)).unwrap_or_default();
        let by = shown.people.name(said.pulled_by).unwrap_or_default().to_owned();
        let mut row = vec![
            test.id.short(),
            quantity::pulled(said, shown.here),
            said.test.grain().word().to_owned(),
            quantity::reading(said.test.gauge(), shown.unit),
            said.test.pulls().len().to_string(),
            figure(figures.map(|figures| figures.stretch)),
            figure(figures.and_then(|figures| figures.rest).map(|rest| rest.growth)),
        ];
        row.extend(named.then_some(by));
        row.push(words::status(shown, test));
        row
    });
    table::render(&columns, rows, width)
}

/// The labels to write anew.
#[must_use]
pub fn renumbered(all: &[Renumbered], columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.words(&format!("write {}:", counted(all.len(), "label")));
    let heads = [("was", Column::Word), ("is now", Column::Number), ("cloth", Column::Text), ("where", Column::Text)];
    let rows = all.iter().map(|one| {
        let Renumbered { fabric, tag } = one;
        vec![fabric.tag.to_string(), tag.to_string(), fabric.name.clone(), fabric.place.clone()]
    });
    text.block(&table::render(&heads, rows, columns));
    text.finish()
}
