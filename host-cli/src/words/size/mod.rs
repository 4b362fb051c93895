//! Sizes, openings, elastic, cords and zips, in words.

mod notions;

use tenter_core::making::sizing::{HOME_TEST, LENGTH_UNREDUCED, Reach, Reduction, Stretch, Usage, Wearable};
use tenter_core::making::source::Source;
use tenter_core::{Answer, GrowthClass, Length, Ratio, Unit};

use crate::finding::size::{Size, SizeLine, Sized};
use crate::input::size::Girth;
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::quantity::{percent, tape};
use crate::words::terms as words;

const REACH: Source = Source::Derived("needed stretch = body / garment − 1");
pub(super) const ARITHMETIC: Source = Source::Derived("arithmetic");

/// The lines; with `asides` also what stands beside the recommendations.
#[must_use]
pub fn spoken(sized: &Sized, asides: bool) -> Vec<Spoken> {
    sized.lines.iter().filter(|line| asides || !line.is_aside()).map(speak).collect()
}

/// The worst answer as a head.
#[must_use]
pub const fn headline(answer: Answer, bags: bool) -> &'static str {
    match answer {
        Answer::Meets if bags => "FITS, BUT IT WILL BAG",
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
            let why = format!("body {}, garment {}", tape(girth.body, unit), tape(girth.garment, unit));
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
        Size::WillBag { name, growth, class } => {
            let text = if *class == GrowthClass::Poor {
                format!("{} will bag: the cloth grows by {}", isolated(name), percent(*growth))
            } else {
                format!("{} may bag: the cloth grows by {}, so keep it loose", isolated(name), percent(*growth))
            };
            let source = Source::Own;
            Spoken::note(
                "growth",
                text,
                "growth over 3 % is for loose garments, over 6 % for none that stretch",
                source,
            )
        }
        Size::Opacity { name, needed, mass } => opacity(name, *needed, *mass),
        Size::Wearable { stretch, wearable, known } => {
            Spoken::note("smaller", worn(*stretch, wearable, *known), "of knits, by their stretch", wearable.source)
        }
        Size::WithEase => {
            let text = "cut it no smaller than the body: a woven needs ease, whatever it gives";
            Spoken::note("smaller", text, "it is no knit", Source::CommonPractice)
        }
        Size::MostReduction { stretch, most, half } => {
            Spoken::note("limit", smaller(*stretch, *most, *half), "1 − 1 / (1 + stretch)", ARITHMETIC)
        }
        Size::LengthsStay => {
            let text = "leave lengths as the pattern has them; reduce girths only";
            Spoken::note("length", text, "movement changes lengths much more than girths", LENGTH_UNREDUCED)
        }
        Size::LengthsToo(reduction) => {
            let most = percent(reduction.ratio());
            let text = format!("cut lengths up to {most} shorter as well: it gives both ways");
            Spoken::note("length", text, "swimwear and leggings of four-way cloth; half of the girths'", Source::Own)
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
        other => notions::speak(other, unit),
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
    let ease = tape(Length::from_steps(reach.ease.length.steps().saturating_abs()), unit);
    if reach.usage == Usage::Nothing {
        return format!("{name} {fits}: {ease} larger than the body, no stretch needed");
    }
    let used = reach.used.map(|used| format!(", uses {} of what it has", share(used))).unwrap_or_default();
    let left = reach.left.filter(|_| !opening && reach.answer == Answer::Meets);
    let left = left.map(|left| format!(", leaves {} to move", percent(left))).unwrap_or_default();
    let (needed, chance) = (percent(reach.needed.ratio()), words::percent(reach.chance));
    format!("{name} {fits}: {ease} smaller than the body, needs {needed} of stretch{used}{left}; chance {chance}")
}

fn share(used: Ratio) -> String {
    if Ratio::new(1, 2) == Some(used) { "half".to_owned() } else { format!("{} %", used.percent(0)) }
}

fn opacity(name: &str, needed: Stretch, mass: Option<(u16, u16)>) -> Spoken {
    let (name, needed) = (isolated(name), percent(needed.ratio()));
    let thinner = mass.map(|(mass, there)| format!("{mass} g/m² become {there} g/m² at {name}; "));
    let text = format!(
        "{}stretch it by {needed} over black paper laid on white: if you see the edge, it shows through",
        thinner.unwrap_or_default()
    );
    Spoken::new("opacity", text, "mass / (1 + stretch), to compare cloths; no limit is published", HOME_TEST)
}

fn worn(stretch: Stretch, wearable: &Wearable, known: bool) -> String {
    let whole = |reduction: Reduction| reduction.ratio().percent(0);
    let (least, most) = (whole(wearable.least), whole(wearable.most));
    let cut = if wearable.is_zero() {
        "as wide as the body".to_owned()
    } else if wearable.least == wearable.most {
        format!("{most} % smaller than the body")
    } else {
        format!("{least} to {most} % smaller than the body")
    };
    let woven = if known { "" } else { "; a woven never is" };
    format!("a knit that stretches {} is usually cut {cut}{woven}", percent(stretch.ratio()))
}

fn smaller(stretch: Stretch, most: Reduction, half: Option<Reduction>) -> String {
    let (stretch, most) = (percent(stretch.ratio()), percent(most.ratio()));
    let half = half.map(|half| format!("; at half: {}", percent(half.ratio()))).unwrap_or_default();
    format!("{stretch} stretch does not mean cutting it {stretch} smaller. At full stretch: {most} smaller{half}")
}
