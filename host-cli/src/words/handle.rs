//! How to sew one cloth, in words.

use tenter_core::making::handling::{
    Basis, Do, FinishLine, FinishReason, GarmentPlace, Instead, Layer, Layered, Needle, NeedlePoint, Practice,
    SeamAllowance, SeamFinish, Sewing, Sewn, Stay, Thread, ThreadFibre, Trimming,
};
use tenter_core::making::printed::Printed;
use tenter_core::making::source::Source;
use tenter_core::making::stitch::Stitch;
use tenter_core::{Answer, Confidence, Decimal, Grain, Ratio, Unit};

use crate::finding::handle::{Handle, Handled, NoSeams, SeamAt};
use crate::words::advice::Spoken;
use crate::words::memory;
use crate::words::pair::stitch;
use crate::words::plan::work::kind as garment_kind;
use crate::words::quantity::printed;
use crate::words::terms as words;

/// The lines, in the reader's unit.
#[must_use]
pub fn spoken(handled: &Handled, unit: Unit) -> Vec<Spoken> {
    handled.lines.iter().map(|line| speak(line, handled.most, handled.confidence, unit)).collect()
}

/// One line; `most` is the most that the cloth stretches.
#[must_use]
pub fn speak(line: &Handle, most: Option<Ratio>, confidence: Confidence, unit: Unit) -> Spoken {
    let most =
        || most.map_or_else(|| "not pulled".to_owned(), |most| format!("stretches {} % at most", most.percent(1)));
    match line {
        Handle::WantsKnit(kind) => {
            let text = format!("for {} choose a knit: this cloth is woven", garment_kind(*kind));
            Spoken::new("cloth", text, "what such a garment is usually made of", Source::CommonPractice)
        }
        Handle::Needle(needle) => {
            Spoken::new("needle", self::needle(needle), "by its make, its mass and its finish", needle.source)
        }
        Handle::Thread(thread) => Spoken::new("thread", self::thread(thread), "by its mass", thread.source),
        Handle::Stitch(at, sewing) => {
            let text = format!("{}: {}", seams(at), sewn(sewing));
            Spoken::new("stitch", text, wanted(sewing), sewing.source)
        }
        Handle::Finish(at, line) => {
            Spoken::new("edges", format!("{}: {}", seams(at), finish(line, unit)), reason(line.reason), line.source)
        }
        Handle::Allowance(at, allowance) => {
            let text = format!("{}: {}", seams(at), self::allowance(*allowance, unit));
            Spoken::new("allowance", text, "what the finish of the seam needs", allowance.source)
        }
        Handle::Trimming(at, line) => {
            Spoken::new("trim", format!("{}: {}", seams(at), trim(line, unit)), "so that it lies flat", line.source)
        }
        Handle::Stay(at, line) => {
            Spoken::new("stay", format!("{}: {}", seams(at), stay(line.stay, unit)), most(), line.source)
        }
        Handle::Place { places, what, always, source } => {
            let names: Vec<&str> = places.iter().map(|place| self::place(*place)).collect();
            let why = if *always { "for any cloth".to_owned() } else { most() };
            Spoken::new("place", format!("{}: {}", names.join(", "), done(*what, unit)), why, *source)
        }
        Handle::Machine(line) => Spoken::new("machine", practice(line.practice), most(), line.source),
        Handle::Layer(layer, layered) => layer_line(*layer, layered, confidence),
        Handle::LastTime(told) => memory::last_time(told),
        Handle::NoSeams(why) => {
            let text = match why {
                NoSeams::Interfacing => {
                    "it is an interfacing: sew it with the needle and stitch of the cloth that it lies behind"
                }
                NoSeams::Elastic => {
                    "it is elastic: lap its ends and sew them with a zigzag; how long to cut it: tenter size --elastic"
                }
            };
            Spoken::new("sew", text, "it has no seams of its own", Source::CommonPractice)
        }
    }
}

/// The needle.
#[must_use]
pub fn needle(needle: &Needle) -> String {
    let size = |size: u8| match Needle::older_number(size) {
        Some(older) => format!("{size}/{older}"),
        None => size.to_string(),
    };
    let range = if needle.finest == needle.thickest {
        size(needle.finest)
    } else {
        format!("{} to {}", size(needle.finest), size(needle.thickest))
    };
    let skips = needle.if_it_skips.map(|other| format!("; {} if it skips stitches", point(other)));
    format!("{}, size {range}{}", point(needle.point), skips.unwrap_or_default())
}

const fn point(point: NeedlePoint) -> &'static str {
    match point {
        NeedlePoint::Sharp => "sharp point",
        NeedlePoint::Universal => "universal point",
        NeedlePoint::Jeans => "jeans point",
        NeedlePoint::Ballpoint => "ballpoint",
        NeedlePoint::Stretch => "stretch point",
    }
}

fn thread(thread: &Thread) -> String {
    let fibre = match thread.fibre {
        ThreadFibre::Polyester => "polyester",
        ThreadFibre::FineCottonOrPolyester => "fine cotton or polyester",
    };
    let tex = |(finest, thickest): (u8, u8)| {
        if finest == thickest { format!("Tex {finest}") } else { format!("Tex {finest} to {thickest}") }
    };
    let top = thread.top.map(|top| format!("; {} for topstitching", tex(top)));
    format!("{fibre}, {}{}", tex(thread.tex), top.unwrap_or_default())
}

fn seams(at: &[SeamAt]) -> String {
    let along = |grain| at.contains(&SeamAt::Along(grain));
    let both = along(Grain::Lengthwise) && along(Grain::Crosswise);
    let name = |at: &SeamAt| match at {
        SeamAt::Along(Grain::Lengthwise) if both => Some("straight seams"),
        SeamAt::Along(Grain::Crosswise) if both => None,
        SeamAt::Along(Grain::Lengthwise) => Some("lengthwise seams"),
        SeamAt::Along(Grain::Crosswise) => Some("crosswise seams"),
        SeamAt::Along(Grain::Bias) => Some("bias seams"),
        SeamAt::Crotch => Some("crotch"),
        SeamAt::Underarm => Some("underarm"),
        SeamAt::Shoulder => Some("shoulder"),
        SeamAt::Neck => Some("neck"),
        SeamAt::Hem => Some("hem"),
    };
    at.iter().filter_map(name).collect::<Vec<_>>().join(", ")
}

/// The stitch of a seam and its settings.
#[must_use]
pub fn sewn(sewing: &Sewing) -> String {
    let mut text = row(&sewing.first);
    if let Some(instead) = &sewing.instead {
        text.push_str(&format!("; without {}, {}", machine(sewing.first.stitch), row(instead)));
    }
    if let Some(second) = &sewing.second {
        text.push_str(&format!("; and a second row, {}", row(second)));
    }
    if let Some(top) = sewing.topstitch {
        text.push_str(&format!("; topstitch {} mm", tenths(top)));
    }
    match sewing.basis {
        Basis::NotMeasured => text.push_str(" (it was not pulled along them)"),
        _ if !sewing.is_enough() => text.push_str("; it may crack, so stretch a sample first"),
        _ => {}
    }
    text
}

/// The machine that a stitch needs.
const fn machine(stitch: Stitch) -> &'static str {
    match stitch {
        Stitch::Overlock => "an overlocker",
        _ => "one",
    }
}

/// A row of stitches with its settings.
#[must_use]
pub fn row(sewn: &Sewn) -> String {
    let name = stitch(sewn.stitch);
    match (sewn.stitch, sewn.width) {
        (Stitch::Overlock | Stitch::Coverstitch, _) => name.to_owned(),
        (Stitch::NarrowZigzag | Stitch::WideZigzag, Some(width)) => {
            format!("zigzag {} mm wide, {} mm long", Decimal::new(width.into(), 1), tenths(sewn.length))
        }
        _ => format!("{name}, {} mm", tenths(sewn.length)),
    }
}

fn tenths((least, most): (u8, u8)) -> String {
    let mm = |tenths: u8| Decimal::new(tenths.into(), 1);
    if least == most { mm(least).to_string() } else { format!("{} to {}", mm(least), mm(most)) }
}

fn wanted(sewing: &Sewing) -> String {
    let percent = sewing.wanted.percent(1);
    let wanted = match sewing.basis {
        Basis::Asked => format!("the view asks the seam to give {percent} %"),
        Basis::Stretch => format!("the cloth gives {percent} % along the seam"),
        Basis::NotMeasured => format!("not pulled along the seam, so taken to give {percent} %"),
        Basis::Held => "the seam is held".to_owned(),
        Basis::OffTheGrain => "the seam leaves the grain, and no give is asked".to_owned(),
    };
    let gives = |sewn: &Sewn| sewn.gives().map(|gives| format!("{} gives {} %", row(sewn), gives.percent(0)));
    let rows = [Some(&sewing.first), sewing.instead.as_ref(), sewing.second.as_ref()];
    let gives: Vec<String> = rows.into_iter().flatten().filter_map(gives).collect();
    let geometry =
        [Some(&sewing.first), sewing.instead.as_ref()].into_iter().flatten().any(|sewn| sewn.width.is_some());
    let caveat = if geometry { ", by geometry, where the cloth is free to narrow" } else { "" };
    if gives.is_empty() { wanted } else { format!("{wanted}; {}{caveat}", gives.join(", ")) }
}

/// What a finish is, and what else will do.
#[must_use]
pub fn finish(line: &FinishLine, unit: Unit) -> String {
    let first = match (line.finish, line.reason) {
        (SeamFinish::Nothing, FinishReason::Covered) => "leave them, they are covered".to_owned(),
        (SeamFinish::Nothing, _) => "leave them, it does not fray".to_owned(),
        (finish, _) => finished(finish, line.by_hand, unit),
    };
    let other = |other| finished(other, line.by_hand, unit);
    match (line.finish, line.instead) {
        (SeamFinish::Nothing, Some(instead)) => format!("{first}; if yours does, {}", other(instead)),
        (SeamFinish::ByTheStitch, _) => format!("{first}; without one leave them, it does not fray"),
        (_, Some(instead)) => format!("{first}; or {}", other(instead)),
        (_, None) => first,
    }
}

fn finished(finish: SeamFinish, by_hand: bool, unit: Unit) -> String {
    let open = if by_hand { "open the seam with your fingers and a roller" } else { "press the seam open" };
    let width = |mm: i16, eighths: i16| printed(Printed::new(mm, eighths), unit);
    match finish {
        SeamFinish::Nothing => "leave them".to_owned(),
        SeamFinish::ByTheStitch => "the overlock neatens them".to_owned(),
        SeamFinish::OverlockedSingly => format!("overlock each edge, {open}"),
        SeamFinish::OverlockedTogether => "overlock both edges together".to_owned(),
        SeamFinish::ZigzaggedSingly => "zigzag each edge".to_owned(),
        SeamFinish::ZigzaggedTogether => "zigzag both edges together".to_owned(),
        SeamFinish::French => format!(
            "French seam: wrong sides together at {}, trim to {}, turn, sew again at {}",
            width(10, 3),
            width(3, 1),
            width(6, 2)
        ),
        SeamFinish::Felled => {
            format!("flat-felled: cut the under edge to {}, fold the upper one over it, stitch", width(6, 2))
        }
        SeamFinish::BoundSingly => format!("{open}, bind each edge with tape"),
        SeamFinish::BoundTogether => "bind both edges together with tape".to_owned(),
    }
}

const fn reason(reason: FinishReason) -> &'static str {
    match reason {
        FinishReason::Covered => "a lining or another layer covers them",
        FinishReason::DoesNotFray => "it does not fray",
        FinishReason::Sheer => "it is light and shows through",
        FinishReason::Hardwearing => "the garment is worn and washed hard",
        FinishReason::InsideSeen => "the inside of the garment is seen",
        FinishReason::Frays => "it frays",
    }
}

/// A seam allowance.
#[must_use]
pub fn allowance(allowance: SeamAllowance, unit: Unit) -> String {
    printed(allowance.width, unit)
}

/// What is trimmed.
#[must_use]
pub fn trim(line: &Trimming, unit: Unit) -> String {
    let to = printed(line.to, unit);
    let each = if line.grade { ", the inner layer narrower" } else { "" };
    let range = if unit == Unit::Inch { "1/4 to 1/2 in" } else { "6 to 13 mm" };
    let clip = if line.clip { format!("; clip the curve every {range}") } else { String::new() };
    format!("trim to {to} when sewn{each}{clip}")
}

/// What keeps an edge.
#[must_use]
pub fn stay(stay: Stay, unit: Unit) -> String {
    match stay {
        Stay::StayStitch => {
            let within = printed(Printed::new(3, 1), unit);
            format!("stay-stitch as soon as it is cut, within {within} of the seam line, from wide to narrow")
        }
        Stay::Tape => "sew a tape that does not stretch into the seam".to_owned(),
        Stay::ClearElastic => "sew clear elastic into the seam".to_owned(),
        Stay::LeftFree => "handle it little, sew no straight row along it: it must stretch".to_owned(),
        Stay::Hung => "let it hang for a day, then level it".to_owned(),
    }
}

const fn place(place: GarmentPlace) -> &'static str {
    match place {
        GarmentPlace::Pocket => "pocket opening",
        GarmentPlace::Gathers => "gathers",
        GarmentPlace::Buttonhole => "buttonhole",
        GarmentPlace::Eyelet => "eyelet",
        GarmentPlace::Zip => "under a closed zip",
        GarmentPlace::FrontFacing => "fronts and facing along a separating zip",
        GarmentPlace::Facing => "facing of hem and back neck",
        GarmentPlace::BiasHem => "hem on the bias",
    }
}

fn done(what: Do, unit: Unit) -> String {
    match what {
        Do::Stabilise => "stabilise it".to_owned(),
        Do::StabiliseStrip { width, allowance } => {
            let (width, allowance) = (printed(width, unit), printed(allowance, unit));
            format!("a strip of {width} that does not stretch, for a seam of {allowance}")
        }
        Do::Interface { that_gives: true } => "interface it with one that stretches with the cloth".to_owned(),
        Do::Interface { that_gives: false } => "interface it, so that it does not stretch".to_owned(),
        Do::HangADay => "let it hang for a day before you level it".to_owned(),
    }
}

const fn practice(practice: Practice) -> &'static str {
    match practice {
        Practice::WalkingFoot => "walking foot, less pressure on the presser foot",
        Practice::StretchSample => "sew a sample and stretch it hard; if the thread breaks, loosen the upper tension",
        Practice::CentreOutwards => "sew each seam from its centre outwards, in two halves",
        Practice::LieFlat => "do not let the cloth hang off the table while you cut and sew",
    }
}

fn layer_line(layer: Layer, layered: &Layered, confidence: Confidence) -> Spoken {
    let (about, name) = match layer {
        Layer::Lining => ("lining", "with the lining"),
        Layer::Interfacing => ("facing", "at hem and back neck, with the facing,"),
    };
    let asked = match layered.answer {
        Answer::Meets => ", enough",
        Answer::Short => ", too little",
        _ => ", too close to call",
    };
    let instead = |instead: &Instead| match instead {
        Instead::ThatGives => "one that stretches",
        Instead::Bias => "one cut on the bias",
        Instead::Pleat => "a wider one with a pleat",
    };
    let instead: Vec<&str> = layered.instead.iter().map(instead).collect();
    let instead = if instead.is_empty() { String::new() } else { format!("; take {}", instead.join(", or ")) };
    let firm = if layer == Layer::Interfacing { "; along a separating zip it is held firm" } else { "" };
    let text = format!("{name} it gives {}{asked}{instead}{firm}", words::figure(&layered.stretch, confidence));
    let why = format!("two layers stretch as far as the lesser; chance {}", words::percent(layered.chance));
    Spoken::new(about, text, why, layered.source)
}

/// What is said of the layers of a cloth in a head line.
#[must_use]
pub const fn layers(answer: Answer) -> &'static str {
    match answer {
        Answer::Meets => "it gives enough with its layers",
        Answer::Short | Answer::Over => "it gives too little with its layers",
        Answer::Close | Answer::Unknown => "it may give too little with its layers",
    }
}
