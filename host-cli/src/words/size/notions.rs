//! Elastic, cords and zips, in words.

use tenter_core::making::elastic::{
    Casing, CordTask, Drawcord, Edging, ElasticCare, Kind, Lap, Recommended, Rule, Span, Tunnel,
};
use tenter_core::making::source::Source;
use tenter_core::making::zip::{BELOW_STOP, Chain, End, Fit, Ready, UseCode, ZipEnds, ZipSeries};
use tenter_core::{Answer, Length, Unit};

use super::ARITHMETIC;
use crate::finding::size::{Passes, Size};
use crate::words::advice::Spoken;
use crate::words::quantity::{percent, printed, seam_unit, tape, to_sew};
use crate::words::terms;

/// One line about a notion; about anything else nothing, since that is said elsewhere.
pub(super) fn speak(size: &Size, unit: Unit) -> Spoken {
    match size {
        Size::Elastic { kind, recommended, measure, passes } => {
            let text = elastic(*kind, recommended, passes.as_ref(), unit);
            let about = if *kind == Kind::Ribbing { "rib" } else { "elastic" };
            Spoken::new(about, text, format!("for {}", tape(*measure, unit)), recommended.source)
        }
        Size::ElasticRule { rule, cut } => {
            Spoken::note("rule", self::rule(rule, *cut, unit), "one of several in use", rule.source)
        }
        Size::NoElasticRule => {
            let text = "no rule was found for this kind at this place; try it on with pins";
            Spoken::new("elastic", text, "nothing in print", Source::CommonPractice)
        }
        Size::LoopNotChecked { place, closed } => {
            let over = passed(*place);
            let text =
                format!("the closed loop of {} must stretch over {over}: measure them both", to_sew(*closed, unit));
            Spoken::new("elastic", text, "needed stretch = widest / loop − 1", ARITHMETIC)
        }
        Size::Casing { tunnel, width } => {
            let why = format!("for {} wide", tape(*width, unit));
            Spoken::new("casing", casing(tunnel, unit), why, tunnel.source)
        }
        Size::CasingRule { casing, depth } => {
            Spoken::note("rule", self::tunnel(casing, *depth, unit), "one of several in use", casing.source)
        }
        Size::Care(line) => Spoken::new("care", care(line.care, unit), "by its kind and how it is held", line.source),
        Size::Cord { cord, edge } => {
            let why = format!("the edge laid open measures {}", tape(*edge, unit));
            Spoken::new("cord", self::cord(cord, unit), why, cord.source)
        }
        Size::CordTask(line) => Spoken::new("cord", task(line.task, unit), "in this order", line.source),
        Size::CordRule(rule) => terms::cord(rule, unit),
        Size::Zip { edge, ends, ready, best } => {
            let why = format!("the edge measures {}", tape(*edge, unit));
            Spoken::new("zip", zip(*ends, *ready, *best, unit), why, ZipSeries::SOURCE)
        }
        Size::Chain(chain) => Spoken::new("chain", self::chain(*chain), "by the garment", chain.source),
        Size::Shortened(ends) => {
            Spoken::new("shorten", shortened(*ends, unit), "the slider must not run off", Source::CommonPractice)
        }
        Size::EdgeAsFinished => {
            let text = "measure the finished edge, or pass what neck and hem take: --zip-neck, --zip-hem";
            Spoken::note("edge", text, "it was taken as it is", ZipSeries::SOURCE)
        }
        Size::EdgeGrows(by) => {
            let text = format!("it grows by {} and would wave: hold the edge with a firm strip", to_sew(*by, unit));
            Spoken::new("edge", text, "growth × edge, over 3 mm", Source::Own)
        }
        Size::Girth { .. }
        | Size::NearlyAll { .. }
        | Size::WillBag { .. }
        | Size::Opacity { .. }
        | Size::Wearable { .. }
        | Size::WithEase
        | Size::MostReduction { .. }
        | Size::LengthsStay
        | Size::LengthsToo(_)
        | Size::Reduce { .. } => Spoken::note("", "", "", Source::Own),
    }
}

fn span(span: Span, unit: Unit) -> String {
    let (least, most) = (to_sew(span.least, unit), to_sew(span.most, unit));
    if least == most { least } else { format!("{least} to {most}") }
}

fn elastic(kind: Kind, found: &Recommended, passes: Option<&Passes>, unit: Unit) -> String {
    let lap = match found.lap {
        Lap::Lapped(lap) => format!("{} of it to lap", printed(lap, unit)),
        Lap::Seamed(lap) => format!("{} of it for the seam", printed(lap, unit)),
    };
    let tried = if kind == Kind::Ribbing { "" } else { "; tack it and try it on" };
    let mut text = format!("cut {}, {lap}{tried}", to_sew(found.cut, unit));
    if let Some(Passes { widest, needed, judged }) = passes {
        let (widest, needed) = (tape(*widest, unit), percent(needed.ratio()));
        text.push_str(&match judged {
            None => format!("; it must stretch by {needed} to pass {widest}, so measure how far it does"),
            Some((gives, answer)) => {
                let fits = match answer {
                    Answer::Meets => "it passes",
                    Answer::Short | Answer::Over => "it does NOT pass",
                    Answer::Close | Answer::Unknown => "it is too close to call for",
                };
                format!("; {fits} {widest}: it needs {needed} of stretch and has {}", percent(gives.ratio))
            }
        });
    }
    text
}

/// What a loop passes over when it is put on.
const fn passed(place: Edging) -> &'static str {
    match place {
        Edging::Waist | Edging::SnugWaist => "the hips",
        Edging::Wrist => "the hand",
        Edging::Leg | Edging::SwimLegFront | Edging::SwimLegBack => "the foot",
        Edging::Opening | Edging::Edge => "the widest part",
    }
}

fn rule(rule: &Rule, cut: Span, unit: Unit) -> String {
    let overlap = if rule.overlap > Length::ZERO {
        format!(", {} of it to overlap", tape(rule.overlap, unit))
    } else {
        String::new()
    };
    format!("{}{overlap} ({})", span(cut, unit), rule.name)
}

fn casing(tunnel: &Tunnel, unit: Unit) -> String {
    let unit = seam_unit(unit);
    let [turn, depth, allowance] = [tunnel.turn, tunnel.depth, tunnel.allowance].map(|one| to_sew(one, unit));
    format!("press {turn} under, then fold a tunnel of {depth}: allow {allowance}")
}

fn tunnel(casing: &Casing, depth: Span, unit: Unit) -> String {
    let unit = seam_unit(unit);
    let turn = casing.turn.map(|turn| format!(", after {} turned under", to_sew(turn, unit)));
    format!("tunnel of {}{}", span(depth, unit), turn.unwrap_or_default())
}

fn care(care: ElasticCare, unit: Unit) -> String {
    match care {
        ElasticCare::CasingOnly => "draw braided elastic into a casing: stitching narrows and damages it".to_owned(),
        ElasticCare::ShorterBy(by) => {
            format!("cut it up to {} shorter: stitching through slackens it", to_sew(by, unit))
        }
        ElasticCare::Preshrink => "wash it once before you cut it".to_owned(),
        ElasticCare::TryPinnedLoop => "pin the loop and try it over head or hand before you sew".to_owned(),
    }
}

fn cord(cord: &Drawcord, unit: Unit) -> String {
    format!("cut {}: the edge laid open, and {} at each end", to_sew(cord.cut, unit), to_sew(cord.end, unit))
}

/// One thing to do for a drawcord.
#[must_use]
pub fn task(task: CordTask, unit: Unit) -> String {
    match task {
        CordTask::BackEyelets => "interface the single layer where each eyelet comes".to_owned(),
        CordTask::SetEyelets => "set the eyelets there before you fold the casing, each in a tight hole".to_owned(),
        CordTask::FoldCasing => "fold and stitch the casing".to_owned(),
        CordTask::DrawIn => "draw the cord in".to_owned(),
        CordTask::BarTackAtBack => "bar-tack it at the middle of the back".to_owned(),
        CordTask::PutOnStops => "put a cord stop on each end".to_owned(),
        CordTask::SealAndKnot => {
            let from = if unit == Unit::Inch { "3/8 to 5/8 in" } else { "10 to 16 mm" };
            format!("seal the ends and knot each {from} from its end")
        }
        CordTask::Seal => "seal the ends; no knot, no stop, nothing fixed to them".to_owned(),
    }
}

fn zip(ends: ZipEnds, ready: Ready, best: bool, unit: Unit) -> String {
    let length = tape(ready.length, unit);
    let kind = match ends {
        ZipEnds::Closed => "closed",
        ZipEnds::Open => "separating",
    };
    let how = match ready.fit {
        Fit::Exact => format!("{length} {kind}, as it is"),
        Fit::Ease => format!("{length} {kind}; ease the edge on to it, the rest does not show"),
        Fit::AboveHem(by) => format!("{length} {kind}; it ends {} above the fold of the hem", to_sew(by, unit)),
        Fit::Short(by) => {
            let by = to_sew(by, unit);
            format!("{length} {kind} leaves {by} open; stabilise the edge, do not stretch the tape")
        }
        Fit::Shorten { by, at } => {
            let at = if at == End::Top { "top" } else { "bottom" };
            format!("{length} {kind}, shortened by {} at the {at}", to_sew(by, unit))
        }
    };
    if best { format!("take {how}") } else { format!("or {how}") }
}

fn shortened(ends: ZipEnds, unit: Unit) -> String {
    match ends {
        ZipEnds::Closed => format!(
            "sew a new stop, 6 to 10 wide zigzags over the teeth, then cut {} below it",
            printed(BELOW_STOP, unit)
        ),
        ZipEnds::Open => {
            "pull teeth from the top and put on new stops; on a coil sew a bar tack. Never cut the bottom".to_owned()
        }
    }
}

fn chain(chain: Chain) -> String {
    let size = if chain.lightest == chain.heaviest {
        chain.lightest.to_string()
    } else {
        format!("{} to {}", chain.lightest, chain.heaviest)
    };
    let mouth = Chain::mouth(chain.heaviest);
    let mouth = mouth.map_or_else(|| "over 7 mm".to_owned(), |mouth| format!("up to {}", mouth.show(Unit::Mm)));
    let code = match chain.code {
        UseCode::A => "A",
        UseCode::B => "B",
        UseCode::C => "C",
        UseCode::D => "D",
    };
    format!("size {size}, a slider mouth of {mouth}; code {code} of BS 3084")
}
