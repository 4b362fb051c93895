//! Sizes, openings, elastic and zips, in words.

use tenter_core::making::elastic::{Care, Casing, Rule, Span};
use tenter_core::making::sizing::{LENGTH_UNREDUCED, Reach, Reduction, Stretch, Usage};
use tenter_core::making::source::Source;
use tenter_core::making::zip::{End, Fit, Ready, ZipSeries};
use tenter_core::{Answer, Length, Ratio, Unit};

use crate::finding::size::{Passes, Size, SizeLine, Sized};
use crate::input::size::Girth;
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::quantity::{percent, tape};
use crate::words::terms as words;

const REACH: Source = Source::Derived("needed stretch = body / garment − 1");
const ARITHMETIC: Source = Source::Derived("arithmetic");

/// The lines.
#[must_use]
pub fn spoken(sized: &Sized) -> Vec<Spoken> {
    sized.lines.iter().map(speak).collect()
}

/// The worst answer as a head.
#[must_use]
pub const fn headline(answer: Answer) -> &'static str {
    match answer {
        Answer::Meets => "FITS",
        Answer::Short | Answer::Over => "DOES NOT FIT",
        Answer::Close | Answer::Unknown => "TOO CLOSE TO CALL",
    }
}

/// One line.
#[must_use]
pub fn speak(line: &SizeLine) -> Spoken {
    let unit = line.unit;
    match &line.size {
        Size::Girth { girth, opening, needed, reach } => {
            let about = if *opening { "opening" } else { "girth" };
            let why = format!("body {}, garment {}", girth.body.show(unit), girth.garment.show(unit));
            let text = match reach {
                None => format!("{}: needs {} of stretch", isolated(&girth.name), percent(needed.ratio())),
                Some(reach) => reaches(girth, *opening, reach, unit),
            };
            Spoken::new(about, text, why, REACH)
        }
        Size::NearlyAll { name } => {
            let text = format!("{} uses over half of the stretch: it will be tight to wear", isolated(name));
            Spoken::note("note", text, "use a part of the stretch, not all of it", Usage::SOURCE)
        }
        Size::MostReduction { stretch, most, half } => {
            Spoken::note("smaller", smaller(*stretch, *most, *half), "1 − 1 / (1 + stretch)", ARITHMETIC)
        }
        Size::LengthsStay => {
            let text = "leave lengths as the pattern has them; reduce girths only";
            Spoken::note("length", text, "movement changes lengths much more than girths", LENGTH_UNREDUCED)
        }
        Size::Reduce { reduction, needed, judged } => {
            let judged = judged.map(|(answer, chance)| format!(": {} ({})", answer.word(), words::percent(chance)));
            let text = format!(
                "{} smaller needs {} of stretch{}",
                percent(reduction.ratio()),
                percent(needed.ratio()),
                judged.unwrap_or_default()
            );
            Spoken::new("reduce", text, "1 / (1 − reduction) − 1", ARITHMETIC)
        }
        Size::Elastic { rule, measure, cut, passes } => {
            let text = elastic(rule, *cut, passes.as_ref(), unit);
            Spoken::new("elastic", text, format!("for {}", measure.show(unit)), rule.source)
        }
        Size::NoElasticRule => {
            let text = "no rule was found for this kind at this place; try it on with pins";
            Spoken::new("elastic", text, "nothing in print", Source::CommonPractice)
        }
        Size::LoopNotChecked => {
            let text = "check that the closed loop passes over the widest part; these rules leave that out";
            Spoken::new("elastic", text, "needed stretch = widest / loop − 1", ARITHMETIC)
        }
        Size::Casing { casing, width, depth } => {
            let why = format!("for elastic {} wide", width.show(unit));
            Spoken::new("casing", tunnel(casing, *depth, unit), why, casing.source)
        }
        Size::Care(line) => Spoken::new("care", care(line.care, unit), "by its kind and how it is held", line.source),
        Size::Zip { edge, ready, best } => {
            let why = format!("the edge measures {}", edge.show(unit));
            Spoken::new("zip", zip(*ready, *best, unit), why, ZipSeries::SOURCE)
        }
    }
}

fn reaches(girth: &Girth, opening: bool, reach: &Reach, unit: Unit) -> String {
    let fits = match (reach.answer, opening) {
        (Answer::Meets, true) => "passes",
        (Answer::Meets, false) => "fits",
        (Answer::Short | Answer::Over, true) => "does NOT pass",
        (Answer::Short | Answer::Over, false) => "does NOT fit",
        (Answer::Close | Answer::Unknown, _) => "is too close to call",
    };
    let name = isolated(&girth.name);
    let ease = Length::from_steps(reach.ease.length.steps().saturating_abs()).show(unit);
    if reach.usage == Usage::Nothing {
        return format!("{name} {fits}: {ease} larger than the body, no stretch needed");
    }
    let used = reach.used.map(|used| format!(", uses {} of what it has", share(used))).unwrap_or_default();
    let (needed, chance) = (percent(reach.needed.ratio()), words::percent(reach.chance));
    format!("{name} {fits}: {ease} smaller than the body, needs {needed} of stretch{used}; chance {chance}")
}

fn share(used: Ratio) -> String {
    if Ratio::new(1, 2) == Some(used) { "half".to_owned() } else { format!("{} %", used.percent(0)) }
}

fn smaller(stretch: Stretch, most: Reduction, half: Option<Reduction>) -> String {
    let (stretch, most) = (percent(stretch.ratio()), percent(most.ratio()));
    let half = half.map(|half| format!("; at half: {}", percent(half.ratio()))).unwrap_or_default();
    format!("{stretch} stretch does not mean cutting it {stretch} smaller. At full stretch: {most} smaller{half}")
}

fn span(span: Span, unit: Unit) -> String {
    if span.least == span.most {
        tape(span.least, unit)
    } else {
        format!("{} to {}", tape(span.least, unit), tape(span.most, unit))
    }
}

fn elastic(rule: &Rule, cut: Span, passes: Option<&Passes>, unit: Unit) -> String {
    let overlap = if rule.overlap > Length::ZERO {
        format!(", {} of it to overlap", rule.overlap.show(unit))
    } else {
        String::new()
    };
    let mut text = format!("cut {}{overlap} ({})", span(cut, unit), rule.name);
    if let Some(Passes { widest, gives, reach }) = passes {
        let fits = match reach.answer {
            Answer::Meets => "the shortest passes",
            Answer::Short | Answer::Over => "the shortest does NOT pass",
            Answer::Close | Answer::Unknown => "the shortest is too close to call for",
        };
        let (widest, needed) = (widest.show(unit), percent(reach.needed.ratio()));
        text.push_str(&format!("; {fits} {widest}: it needs {needed} of stretch and has {}", percent(gives.ratio)));
    }
    text
}

fn tunnel(casing: &Casing, depth: Span, unit: Unit) -> String {
    let turn = casing.turn.map(|turn| format!(", after {} turned under", turn.show(unit)));
    format!("tunnel of {}{}", span(depth, unit), turn.unwrap_or_default())
}

fn care(care: Care, unit: Unit) -> String {
    match care {
        Care::CasingOnly => "draw braided elastic into a casing: stitching narrows and damages it".to_owned(),
        Care::ShorterBy(by) => format!("cut it up to {} shorter: stitching through slackens it", by.show(unit)),
        Care::Preshrink => "wash it once before you cut it".to_owned(),
        Care::TryPinnedLoop => "pin the loop and try it over head or hand before you sew".to_owned(),
    }
}

fn zip(ready: Ready, best: bool, unit: Unit) -> String {
    let length = ready.length.show(unit);
    let how = match ready.fit {
        Fit::Exact => format!("{length}, as it is"),
        Fit::Ease => format!("{length}; ease the edge on to it, the rest does not show"),
        Fit::Short(by) => {
            format!("{length} leaves {} open; stabilise the edge, do not stretch the tape", by.show(unit))
        }
        Fit::Shorten { by, at } => {
            let at = if at == End::Top { "top" } else { "bottom" };
            format!("{length}, shortened by {} at the {at}", by.show(unit))
        }
    };
    if best { format!("take {how}") } else { format!("or {how}") }
}
