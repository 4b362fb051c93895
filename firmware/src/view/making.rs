//! Two cloths in one seam, and whether an opening passes over.

use tenter_core::making::pairing::{Advice, Pair, Which};
use tenter_core::{Decimal, Rules};

use super::pen::{At, Pen};
use super::result::{sure, title};
use super::{head, list, words};
use crate::ui::{MakingState, Model};

/// A saved test, to be known by its tag.
pub fn shelf(pen: &mut Pen<'_>, model: &Model) {
    let making = &model.making;
    head(pen.say(if making.first.is_some() { "Join it with tag" } else { "Saved tests: tag" }));
    let Some(cloth) = &making.cloth else {
        return pen.say(if model.log.present { "None yet." } else { "No log answers." }).put(At::Middle, 64, 26);
    };
    pen.count(cloth.tag.into()).put_digits(0, 14);
    pen.say(cloth.grain.word()).say(" ").number(cloth.stretch.ratio.percent(1)).say(" %").put(At::Middle, 64, 43);
}

/// What to do with it.
pub fn cloth(pen: &mut Pen<'_>, model: &Model) {
    if let Some(cloth) = &model.making.cloth {
        pen.say("Tag ").count(cloth.tag.into()).say(" ").say(cloth.grain.word());
    }
    list(pen, model);
}

/// How two cloths go together, and on the second page what to do.
pub fn pair(pen: &mut Pen<'_>, model: &Model) {
    let Some(pair) = model.making.pair() else { return };
    if model.row > 0 {
        return advice(pen, &model.making, &pair);
    }
    let confidence = Rules::default().confidence;
    title(pen.say(words::pairing(pair.answer)), pair.chance.map(|chance| (chance, "chance")));
    let half = Decimal::round(pair.gap.half_width(confidence), 1);
    pen.say("apart ").number(pair.gap.ratio.percent(1)).say(" \u{b1}").number(half).say(" pt").put(At::Left, 0, 22);
    let shows = match &pair.growth {
        Some(growth) => {
            // As finely as a tape reads.
            let is_inch = model.making.cloth.is_some_and(|cloth| cloth.inch);
            let (unit_mm, decimals, unit) = if is_inch { (25.4, 1, " in") } else { (1.0, 0, " mm") };
            let half = growth.half_width_mm(model.making.seam, confidence);
            pen.say("growth ").number(Decimal::round(growth.length.mm() / unit_mm, decimals));
            pen.say(" \u{b1}").number(Decimal::round(half / unit_mm, decimals)).say(unit);
            words::shows(growth.answer)
        }
        None => {
            pen.say("growth not read");
            ""
        }
    };
    pen.put(At::Left, 0, 33);
    // Where the gap is sure, only the growth is in doubt.
    let is_sure = confidence.is_sure(pair.chances.alike);
    let doubt = if is_sure { None } else { words::between(pair.answer) };
    pen.say(doubt.unwrap_or(shows)).put(At::Left, 0, 44);
}

/// The first lines of what to do; those that are left out hold for every seam.
fn advice(pen: &mut Pen<'_>, making: &MakingState, pair: &Pair) {
    let mut y = 0;
    pair.advise(|line| {
        if y < 50 {
            advise(pen, making, line.advice, y);
            y += 11;
        }
    });
}

#[inline(never)] // Long, and asked for at every line.
fn advise(pen: &mut Pen<'_>, making: &MakingState, advice: Advice, y: i32) {
    let (words, which) = words::advice(advice);
    pen.say(words);
    if let Some(which) = which {
        name(pen, making, which);
    }
    pen.put(At::Left, 0, y);
}

/// Says a cloth by its tag, or by its turn where both have the same.
fn name(pen: &mut Pen<'_>, making: &MakingState, which: Which) {
    let [first, second] = [making.first, making.cloth].map(|cloth| cloth.map_or(0, |cloth| cloth.tag));
    let (tag, turn) = match which {
        Which::First => (first, "1st"),
        Which::Second => (second, "2nd"),
    };
    if first == second {
        pen.say(turn);
    } else {
        pen.say("tag ").count(tag.into());
    }
}

/// Whether an opening passes over.
pub fn reach(pen: &mut Pen<'_>, model: &Model) {
    let (Some(reach), Some(cloth)) = (model.making.reach(), &model.making.cloth) else { return };
    title(pen.say(words::answer(reach.answer)), Some(sure(reach.answer, reach.chance)));
    pen.say("asks ").number(reach.needed.ratio().percent(1)).say(" of ");
    pen.number(cloth.stretch.ratio.percent(1)).say(" %").put(At::Left, 0, 22);
    if let Some(used) = reach.used {
        pen.say("that is ").number(used.percent(0)).say(" % of it").put(At::Left, 0, 33);
    }
    pen.say(words::opening(&reach)).put(At::Left, 0, 44);
}
