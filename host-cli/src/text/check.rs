//! `check` as a short text: the answer, the figures with their trust, what to do next.

use anstyle::Style;

use crate::finding::check::Checked;
use crate::text::gauge::{self, GaugeText};
use crate::text::lines::{Lines, style, width};
use crate::text::{doubt, figures};
use crate::words::answer;
use crate::words::check as words;
use crate::words::doubt as doubt_words;
use crate::words::figures as figure_words;
use crate::words::terms::{duration, garment};

/// How many garments are named; `--json` names all of them.
const GARMENTS: usize = 3;

/// The text for a terminal of so many columns, with colours that a pipe or `NO_COLOR` takes away again.
#[must_use]
pub fn render(checked: &Checked, columns: usize, unicode: bool) -> String {
    let mut text = Lines::new(columns);
    write(&mut text, checked, unicode);
    text.finish()
}

/// Writes the text where more may follow.
pub fn write(text: &mut Lines, checked: &Checked, unicode: bool) {
    let evaluation = &checked.evaluation;
    match evaluation.answer {
        _ if !evaluation.doubts.is_empty() => doubt::write(text, &checked.input, evaluation),
        Some(answer) => {
            let decided = evaluation.deciding().map(words::part).unwrap_or_default();
            headline(text, style(answer::tone(answer)), answer::headline(answer), &decided);
            text.blank();
        }
        None => {}
    }
    below(text, checked, unicode);
}

/// Writes what stands below the answer.
pub fn below(text: &mut Lines, checked: &Checked, unicode: bool) {
    let evaluation = &checked.evaluation;
    measured(text, checked);
    drawn(text, checked, unicode);
    asked(text, checked);
    text.blank();
    for next in &checked.next {
        text.row("next", &words::next(*next, checked.input.unit));
    }
    suits(text, checked);
    let made = checked.input.rules.construction;
    for note in evaluation.notes.iter().filter_map(|note| words::note(*note, evaluation.answer, made)) {
        text.row("note", note);
    }
    if let Some(unit) = checked.input.bare {
        text.row("units", doubt_words::bare(unit));
    }
    text.row("how", &words::how(&checked.input));
}

/// Writes a headline, with what it is about beside it or below it.
pub fn headline(text: &mut Lines, style: Style, headline: &str, about: &str) {
    if width(headline).saturating_add(2).saturating_add(width(about)) <= text.columns() && !about.is_empty() {
        text.line(format_args!("{style}{headline}{style:#}  {about}"));
    } else {
        text.line(format_args!("{style}{headline}{style:#}"));
        if !about.is_empty() {
            text.hanging("  ", 2, about);
        }
    }
}

fn measured(text: &mut Lines, checked: &Checked) {
    let (evaluation, confidence) = (&checked.evaluation, checked.input.rules.confidence);
    figures::write(text, &evaluation.figures, checked.class(), &evaluation.notes, confidence);
    for (seconds, forecast) in &checked.forecasts {
        figures::write_forecast(text, forecast, &duration(*seconds));
    }
    if let Some(error) = checked.no_forecast {
        text.row("forecast", &words::no_forecast(error));
    }
}

/// Stretch to scale, with what is asked of it.
fn drawn(text: &mut Lines, checked: &Checked, unicode: bool) {
    let stretch = checked.evaluation.figures.stretch;
    let confidence = checked.input.rules.confidence;
    let asked = checked.input.demand.stretch(checked.input.test.grain());
    let columns = text.columns();
    text.blank();
    text.block(&gauge::draw(&GaugeText { stretch, beside: &[], confidence, asked, columns, unicode }));
}

/// What the headline does not tell.
fn asked(text: &mut Lines, checked: &Checked) {
    for (index, part) in checked.other_parts().enumerate() {
        if index == 0 {
            text.blank();
        }
        let style = style(answer::tone(part.answer));
        text.row(&format!("{style}{}{style:#}", answer::word(part.answer)), &words::part(part));
    }
}

fn suits(text: &mut Lines, checked: &Checked) {
    if checked.evaluation.doubts.is_empty()
        && let Some(ruled_out) = figure_words::ruled_out(&checked.evaluation.figures, checked.input.rules.confidence)
    {
        text.row("suits", &ruled_out);
    }
    // The most demanding first: what a cloth can do is told by the most it can do.
    for suit in checked.suits.iter().take(GARMENTS) {
        text.row("suits", &format!("{} [{}]", garment(suit), suit.source));
    }
    if let Some(more @ 1..) = checked.suits.len().checked_sub(GARMENTS) {
        text.row("suits", &words::more_garments(more));
    }
    if checked.evaluation.figures.rest.is_none() && checked.suits.iter().take(GARMENTS).any(|suit| suit.close) {
        text.row("suits", words::CLOSE_NOT_READ);
    }
}
