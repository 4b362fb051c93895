//! The result in three pages: the answer, the figures, what would settle it.

use tenter_core::{Answer, Ask, Confidence, Decimal, Doubt, Evaluation, Figure, Note, Part, Rules, Settle, Table};

use super::pen::{At, Pen};
use super::{after, bar, words};
use crate::ui::Model;

pub fn draw(pen: &mut Pen<'_>, model: &Model) {
    let Some(evaluation) = &model.evaluation else { return };
    let confidence = Rules::default().confidence;
    match model.row {
        0 => answer(pen, evaluation, confidence),
        1 => figures(pen, model, evaluation, confidence),
        _ => next(pen, evaluation),
    }
}

fn answer(pen: &mut Pen<'_>, evaluation: &Evaluation, confidence: Confidence) {
    let stretch = &evaluation.figures.stretch;
    match evaluation.answer {
        Some(answer) => {
            // Of readings that are not believed no chance is told.
            let believed =
                |part: &&Part| part.answer == answer && (answer != Answer::Close || evaluation.doubts.is_empty());
            let chance = evaluation.deciding().filter(believed).and_then(|part| part.chance);
            title(pen.say(words::answer(answer)), chance.map(|chance| sure(answer, chance)));
        }
        None => title(pen.say(Table::OWN.class(stretch.ratio).name), None),
    }
    // The figure that decides, with its bar: a picture of another one would contradict the answer.
    let decides = evaluation.deciding().map(|part| part.ask).unwrap_or(Ask::Stretch);
    let (ask, figure) = figure_of(evaluation, decides).map_or((Ask::Stretch, stretch), |figure| (decides, figure));
    pen.say(ask.word())
        .say(" ")
        .number(figure.ratio.percent(1))
        .say(" % \u{b1}")
        .number(half_width(figure, confidence));
    pen.put(At::Left, 0, 20);
    let scale = bar::draw(pen, 30, ask, figure, evaluation, confidence);
    // What else is to be said of the release takes the place of the scale's digits.
    if !of_release(pen, evaluation, ask) {
        scale.label(pen, 45, ask, evaluation);
    }
}

/// The figure that is asked about; none where it was not read.
fn figure_of(evaluation: &Evaluation, ask: Ask) -> Option<&Figure> {
    let rest = evaluation.figures.rest.as_ref();
    match ask {
        Ask::Stretch => Some(&evaluation.figures.stretch),
        Ask::Growth => rest.map(|rest| &rest.growth),
        Ask::Recovery => rest.and_then(|rest| rest.recovery.as_ref()),
    }
}

/// How sure an answer is, of the chance that the cloth meets what is asked: that of *short* is the chance that it does not.
pub fn sure(answer: Answer, chance: f32) -> (f32, &'static str) {
    match answer {
        Answer::Meets => (chance, "sure"),
        Answer::Short | Answer::Over => (1.0 - chance, "sure"),
        Answer::Close | Answer::Unknown => (chance, "to meet"),
    }
}

/// Puts what stands against the cloth after release, asked or not; whether there is anything.
fn of_release(pen: &mut Pen<'_>, evaluation: &Evaluation, shown: Ask) -> bool {
    let open = |part: &&Part| part.ask != Ask::Stretch && part.ask != shown && part.answer != Answer::Meets;
    let worst = evaluation
        .parts
        .iter()
        .filter(open)
        .reduce(|had, part| if part.answer.outweighs(part.chance, (had.answer, had.chance)) { part } else { had });
    let rest = evaluation.figures.rest.as_ref();
    let doubt = evaluation
        .doubts
        .iter()
        .find(|doubt| matches!(doubt, Doubt::NotReleased { .. } | Doubt::GrowthRises { .. } | Doubt::OddRecovered));
    if let Some(part) = worst {
        match figure_of(evaluation, part.ask) {
            Some(figure) => {
                pen.say(part.ask.word()).say(" ").number(figure.ratio.percent(1)).say(" % ");
                pen.say(words::answer(part.answer))
            }
            None => pen.say(part.ask.word()).say(" not read"),
        };
    } else if let Some(doubt) = doubt {
        pen.say(words::doubt(*doubt));
    } else if let Some(rest) =
        rest.filter(|_| shown != Ask::Growth && evaluation.notes.contains(&Note::ComesBackPoorly))
    {
        pen.say("It bags: grows ").number(rest.growth.ratio.percent(1)).say(" %");
    } else {
        return false;
    }
    pen.put(At::Left, 0, 45);
    true
}

/// Puts what was said as a title, with a chance in the corner and what it is of.
#[inline(never)]
pub fn title(pen: &mut Pen<'_>, chance: Option<(f32, &str)>) {
    pen.put_large(At::Left, 1, 0);
    if let Some((chance, of)) = chance {
        // Never rounded to certainty.
        let tenths = Decimal::round(100.0 * chance, 1);
        match tenths.scaled() {
            ..=0 => pen.say("<0.1"),
            1000.. => pen.say(">99.9"),
            _ => pen.number(tenths),
        };
        pen.say("%").put(At::Right, 127, 1);
        pen.say(of).put(At::Right, 127, 11);
    }
}

fn figures(pen: &mut Pen<'_>, model: &Model, evaluation: &Evaluation, confidence: Confidence) {
    let figures = &evaluation.figures;
    figure(pen.say("stretch"), 0, &figures.stretch, confidence);
    pen.say(Table::OWN.class(figures.stretch.ratio).name).put(At::Left, 12, 11);
    if let Some(hand) = model.log.repeatability {
        // How much of the ± rests on the user's own tests.
        pen.say("yours ").number(Decimal::round(100.0 * hand.share(), 0)).say(" %").put(At::Right, 127, 11);
    }
    let Some(rest) = &figures.rest else {
        return pen.say("not read back").put(At::Left, 0, 26);
    };
    figure(pen.say("growth"), 22, &rest.growth, confidence);
    match &rest.recovery {
        Some(_) if evaluation.notes.contains(&Note::RecoveryNotReadable) => {
            pen.say("recover  not readable").put(At::Left, 0, 33);
        }
        Some(recovery) => figure(pen.say("recover"), 33, recovery, confidence),
        None => {}
    }
    after(pen.say("after "), rest.seconds).put(At::Left, 12, 44);
}

/// Half the width of the interval; whole points from ten on, which fit the line.
fn half_width(figure: &Figure, confidence: Confidence) -> Decimal {
    let half = figure.half_width(confidence);
    Decimal::round(half, if half < 9.95 { 1 } else { 0 })
}

/// A figure behind the name that was said.
#[inline(never)]
fn figure(pen: &mut Pen<'_>, y: i32, figure: &Figure, confidence: Confidence) {
    pen.put(At::Left, 0, y);
    pen.number(figure.ratio.percent(1)).put(At::Right, 77, y);
    pen.say(" \u{b1}").number(half_width(figure, confidence)).say(" %").put(At::Left, 78, y);
}

fn next(pen: &mut Pen<'_>, evaluation: &Evaluation) {
    let y = match &evaluation.settle {
        Some(settle) => settles(pen, settle),
        None => {
            let [first, second] = words::next(evaluation.answer, evaluation.figures.rest.is_some());
            pen.say(first).put(At::Left, 0, 0);
            pen.say(second).put(At::Left, 0, 11);
            24
        }
    };
    let places = [y, y + 10, y + 20].into_iter().filter(|y| *y < 50);
    let doubts = evaluation.doubts.iter().map(|doubt| words::doubt(*doubt));
    let notes = evaluation.notes.iter().map(|note| words::note(*note));
    for (text, y) in doubts.chain(notes).zip(places) {
        pen.say(text).put(At::Left, 0, y);
    }
}

/// What would settle it; where the notes may begin.
fn settles(pen: &mut Pen<'_>, settle: &Settle) -> i32 {
    if let Some(seconds) = settle.wait_until {
        pen.say("Too early. Read again").put(At::Left, 0, 0);
        after(pen.say("after "), seconds).put(At::Left, 0, 11);
        return 24;
    }
    let Some(plan) = settle.plan else {
        match settle.complete {
            Some(pulls) => pen.say("Make all ").count(pulls.into()).say(" pulls").put(At::Left, 0, 0),
            None => {
                pen.say("No test this small").put(At::Left, 0, 0);
                pen.say("would settle it.").put(At::Left, 0, 11);
            }
        }
        return 24;
    };
    match plan.days {
        0 => pen.say("To settle it, in all:"),
        1 => pen.say("Another day would do:"),
        days => pen.count(days.into()).say(" more days would do:"),
    }
    .put(At::Left, 0, 0);
    pen.count(plan.pulls.into()).say(if plan.known_load { " pulls by a weight" } else { " pulls" }).put(
        At::Left,
        0,
        11,
    );
    pen.count(plan.looks.into()).say(if plan.looks == 1 { " look at the marks" } else { " looks at the marks" });
    pen.put(At::Left, 0, 22);
    if plan.rests > 0 {
        pen.count(plan.rests.into()).say(" readings back").put(At::Left, 0, 33);
        return 44;
    }
    35
}
