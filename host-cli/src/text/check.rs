//! `check` as a short text: the answer, the figures with their trust, what to do next.

use anstyle::{AnsiColor, Style};
use tenter_core::forecast::ForecastError;
use tenter_core::{Answer, Ask, Decimal, Evaluation, Figure, Load, Note, Part, PullTest, Settle, Side};

use crate::input::CheckInput;
use crate::text::Checked;
use crate::text::gauge as gauge_text;
use crate::text::gauge::GaugeText;
use crate::text::lines::Lines;
use crate::text::lines::width;
use crate::words::figures;
use crate::words::terms as words;

/// How many garments are named; `--json` names all of them.
const GARMENTS: usize = 3;
/// How far a first pull reads low on knits, in points: 2.6 at 2 N and 3.0 at 5 N on the mean of thirteen swatches
/// (computed from the data of Singal et al., Nature Communications 15 (2024) 2622).
const FIRST_PULL_POINTS: f32 = 3.0;

/// The text for a terminal of so many columns, with colours that a pipe or `NO_COLOR` takes away again.
#[must_use]
pub fn render(checked: &Checked<'_>, columns: usize, unicode: bool) -> String {
    let mut text = Lines::new(columns);
    write(&mut text, checked, unicode);
    text.finish()
}

/// Writes the text where more may follow.
pub fn write(text: &mut Lines, checked: &Checked<'_>, unicode: bool) {
    let (input, evaluation) = (checked.input, checked.evaluation);
    headline(text, evaluation);
    figures(text, checked);
    drawn(text, checked, unicode);
    asked(text, &evaluation.parts);
    text.blank();
    for next in next_steps(checked) {
        text.row("next", &next);
    }
    suits(text, checked);
    // The figure's own row says when recovery is not readable.
    for note in evaluation.notes.iter().filter(|note| **note != Note::RecoveryNotReadable) {
        text.row("note", words::note(*note));
    }
    text.row("how", &how(input));
}

fn headline(text: &mut Lines, evaluation: &Evaluation) {
    let Some(answer) = evaluation.answer else {
        return;
    };
    let style = style(answer);
    let decided = evaluation.deciding().map(words::part).unwrap_or_default();
    let headline = words::headline(answer);
    if headline.len().saturating_add(2).saturating_add(width(&decided)) <= text.columns() {
        text.line(format_args!("{style}{headline}{style:#}  {decided}"));
    } else {
        text.line(format_args!("{style}{headline}{style:#}"));
        text.hanging("  ", 2, &decided);
    }
    text.blank();
}

/// Colour helps the eye; the words carry the answer.
const fn style(answer: Answer) -> Style {
    let colour = match answer {
        Answer::Meets => AnsiColor::Green,
        Answer::Short | Answer::Over => AnsiColor::Red,
        Answer::Close | Answer::Unknown => AnsiColor::Yellow,
    };
    colour.on_default().bold()
}

fn figures(text: &mut Lines, checked: &Checked<'_>) {
    let (input, evaluation) = (checked.input, checked.evaluation);
    let figures = &evaluation.figures;
    let class = input.table.class(figures.stretch.ratio).name;
    figures::write(text, figures, class, &evaluation.notes, input.rules.confidence);
    if figures.rest.is_none() {
        return;
    }
    for (at, name) in [(1800, "30 min"), (3600, "1 h")] {
        // Somebody who read twice wants to know why there is no forecast.
        if let Err(error @ (ForecastError::TooEarly | ForecastError::TooClose)) =
            figures::write_forecast(text, &input.test, at, name)
            && at == 3600
        {
            text.row("forecast", &format!("none yet: {error}"));
        }
    }
}

/// Stretch to scale, with what is asked of it.
fn drawn(text: &mut Lines, checked: &Checked<'_>, unicode: bool) {
    let stretch = checked.evaluation.figures.stretch;
    let confidence = checked.input.rules.confidence;
    let asked = checked.input.demand.stretch(checked.input.test.grain());
    let columns = text.columns();
    text.blank();
    text.block(&gauge_text::draw(&GaugeText { stretch, beside: &[], confidence, asked, columns, unicode }));
}

fn asked(text: &mut Lines, parts: &[Part]) {
    if parts.len() < 2 {
        return;
    }
    text.blank();
    for part in parts {
        let style = style(part.answer);
        text.row(&format!("{style}{}{style:#}", part.answer.word()), &words::part(part));
    }
}

fn next_steps(checked: &Checked<'_>) -> Vec<String> {
    let (input, evaluation) = (checked.input, checked.evaluation);
    let Some(answer) = evaluation.answer else {
        return vec!["add --wants 5% to hear whether that is enough for a view".to_owned()];
    };
    match answer {
        Answer::Meets if evaluation.notes.contains(&Note::ShorterThanBefore) => {
            vec!["do not trust this yet: lay it flat and read again".to_owned()]
        }
        Answer::Meets => vec!["it will do; pull the other grain too if the view asks for it".to_owned()],
        Answer::Close => vec![settle_words(evaluation.settle.as_ref(), input)],
        Answer::Unknown if evaluation.figures.rest.is_some() => {
            vec!["it did not extend, so recovery has no meaning; judge by growth".to_owned()]
        }
        Answer::Unknown => vec!["read the length after release and add it, such as --back 101mm@60s".to_owned()],
        Answer::Short | Answer::Over => {
            let refused = evaluation.parts.iter().filter(|part| matches!(part.answer, Answer::Short | Answer::Over));
            refused.map(|part| refused_words(part, checked)).collect()
        }
    }
}

fn settle_words(settle: Option<&Settle>, input: &CheckInput) -> String {
    settle.map_or_else(
        || "these readings should not be believed: read the marks again and pull again".to_owned(),
        |settle| words::settle(settle, input.unit),
    )
}

/// Whether the cloth would not be refused if its first pull had read as low as a knit's does.
fn first_pull_may_explain(part: &Part, stretch: &Figure, checked: &Checked<'_>) -> bool {
    let test = &checked.input.test;
    let missing = part.limit.ratio().percent_f32() - stretch.at_most(checked.input.rules.confidence);
    !test.settled() && test.pulls().len() == 1 && missing < FIRST_PULL_POINTS
}

/// What a refused cloth would still do.
fn refused_words(part: &Part, checked: &Checked<'_>) -> String {
    let confidence = checked.input.rules.confidence;
    let rest = checked.evaluation.figures.rest;
    let figure = match part.ask {
        Ask::Stretch => Some(checked.evaluation.figures.stretch),
        Ask::Growth => rest.map(|rest| rest.growth),
        Ask::Recovery => rest.and_then(|rest| rest.recovery),
    };
    let Some(figure) = figure else { return String::new() };
    let what = part.ask.word();
    if part.side == Side::AtLeast && part.ask == Ask::Stretch && first_pull_may_explain(part, &figure, checked) {
        return "make a settling pull and pull again before you leave it: a knit's first pull reads low".to_owned();
    }
    match part.side {
        Side::AtLeast => {
            let sure = figure.at_least(confidence).max(0.0);
            format!("leave it for this; its {what} is sure to reach {} % only", Decimal::floor(sure, 1))
        }
        Side::AtMost => {
            let sure = figure.at_most(confidence);
            format!("leave it for this; its {what} may be as much as {} %", Decimal::ceil(sure, 1))
        }
    }
}

fn suits(text: &mut Lines, checked: &Checked<'_>) {
    // The most demanding first: what a cloth can do is told by the most it can do.
    for suit in checked.suits.iter().rev().take(GARMENTS) {
        text.row("suits", &format!("{} [{}]", words::garment(suit), suit.source));
    }
    if let Some(more @ 1..) = checked.suits.len().checked_sub(GARMENTS) {
        text.row("suits", &format!("and {more} more that ask less; --json lists them"));
    }
}

fn how(input: &CheckInput) -> String {
    let test: &PullTest = &input.test;
    let pulls = match test.pulls().len() {
        1 => "1 pull".to_owned(),
        pulls => format!("{pulls} pulls"),
    };
    let load = match test.load() {
        Load::Hand => "by hand".to_owned(),
        Load::Force { millinewtons } => format!("with {} N", Decimal::new(millinewtons.into(), 3)),
    };
    let scale = test.scale().division().show(input.unit);
    let gauge = test.gauge().show(input.unit);
    let (grain, held) = (test.grain().word(), test.held().word());
    let confidence = words::whole(input.rules.confidence.percent());
    format!("{grain}, {held}, {pulls} {load}, marks {gauge}, scale {scale}, ± at {confidence} %")
}
