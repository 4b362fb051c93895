//! The result in three pages: the answer, the figures, what would settle it.

use tenter_core::{Confidence, Decimal, Figure, Note, Rules, Settle, Table};

use super::pen::{At, Pen};
use super::{bar, words};
use crate::ui::Model;

pub fn draw(pen: &mut Pen<'_>, model: &Model) {
    let confidence = Rules::default().confidence;
    match model.row {
        0 => answer(pen, model, confidence),
        1 => figures(pen, model, confidence),
        _ => next(pen, model),
    }
}

fn answer(pen: &mut Pen<'_>, model: &Model, confidence: Confidence) {
    let Some(evaluation) = &model.evaluation else { return };
    let stretch = evaluation.figures.stretch;
    match evaluation.answer {
        Some(answer) => {
            pen.title(At::Left, 0, 0, words::answer(answer));
            if let Some(chance) = evaluation.deciding().and_then(|part| part.chance) {
                pen.format(At::Right, 127, 1, format_args!("{}", words::Percent(chance)));
                pen.text(At::Right, 127, 11, "chance");
            }
        }
        None => pen.title(At::Left, 0, 0, Table::OWN.class(stretch.ratio).name),
    }
    let half = Decimal::round(stretch.half_width(confidence), 1);
    pen.format(At::Left, 0, 22, format_args!("stretch {} % +-{half}", stretch.ratio.percent(1)));
    bar::stretch(pen, 34, evaluation, confidence);
}

fn figures(pen: &mut Pen<'_>, model: &Model, confidence: Confidence) {
    let Some(evaluation) = &model.evaluation else { return };
    let figures = evaluation.figures;
    figure(pen, 0, "stretch", &figures.stretch, confidence);
    pen.text(At::Left, 12, 11, Table::OWN.class(figures.stretch.ratio).name);
    if let Some(hand) = model.log.hand {
        // How much of the trust in it rests on her own pulls.
        pen.format(At::Right, 127, 11, format_args!("yours {} %", Decimal::round(100.0 * hand.share(), 0)));
    }
    let Some(rest) = figures.rest else {
        return pen.text(At::Left, 0, 26, "not read back");
    };
    figure(pen, 22, "growth", &rest.growth, confidence);
    match rest.recovery {
        Some(_) if evaluation.notes.contains(&Note::RecoveryNotReadable) => {
            pen.text(At::Left, 0, 33, "recover  not readable");
        }
        Some(recovery) => figure(pen, 33, "recover", &recovery, confidence),
        None => {}
    }
    pen.format(At::Left, 12, 44, format_args!("after {}", words::Duration(rest.seconds)));
}

fn figure(pen: &mut Pen<'_>, y: i32, name: &str, figure: &Figure, confidence: Confidence) {
    let half = Decimal::round(figure.half_width(confidence), 1);
    pen.format(At::Left, 0, y, format_args!("{name:<7}{:>6} +-{half} %", figure.ratio.percent(1)));
}

fn next(pen: &mut Pen<'_>, model: &Model) {
    let Some(evaluation) = &model.evaluation else { return };
    let [first, second] = match evaluation.settle {
        Some(settle) => return settles(pen, model, &settle),
        None => words::next(evaluation.answer, evaluation.figures.rest.is_some()),
    };
    pen.text(At::Left, 0, 0, first);
    pen.text(At::Left, 0, 11, second);
    notes(pen, &evaluation.notes, 24);
}

fn settles(pen: &mut Pen<'_>, model: &Model, settle: &Settle) {
    let unit = model.unit();
    pen.text(At::Left, 0, 0, "To settle it:");
    match (settle.pulls, settle.gauge) {
        (None, None) => {
            let plan = settle.plan;
            pen.format(At::Left, 0, 11, format_args!("{} pulls, marks {}", plan.pulls, plan.gauge.show(unit)));
        }
        (pulls, gauge) => {
            let mut y = 11;
            if let Some(pulls) = pulls {
                pen.format(At::Left, 0, y, format_args!("{pulls} pulls here"));
                y += 11;
            }
            if let Some(gauge) = gauge {
                let or = if pulls.is_some() { "or " } else { "" };
                pen.format(At::Left, 0, y, format_args!("{or}marks {}", gauge.show(unit)));
            }
        }
    }
    if let Some(evaluation) = &model.evaluation {
        notes(pen, &evaluation.notes, 35);
    }
}

fn notes(pen: &mut Pen<'_>, notes: &[Note], y: i32) {
    let places = [y, y + 10, y + 20].into_iter().filter(|y| *y < 50);
    for (note, y) in notes.iter().zip(places) {
        pen.text(At::Left, 0, y, words::note(*note));
    }
}
