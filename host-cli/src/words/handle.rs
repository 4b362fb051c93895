//! How to sew one cloth, in words.

use tenter_core::making::handling::{Do, Instead, Layer, Layered, Needle, NeedlePoint, Place, Practice, SeamLine};
use tenter_core::making::stitch::Stitch;
use tenter_core::{Answer, Confidence, Decimal, Length, Ratio, Unit};

use crate::finding::handle::{Handle, Handled};
use crate::words::advice::Spoken;
use crate::words::pair::stitch;
use crate::words::quantity;
use crate::words::terms as words;

/// The lines.
#[must_use]
pub fn spoken(handled: &Handled) -> Vec<Spoken> {
    handled.lines.iter().map(|line| speak(line, handled.most, handled.confidence)).collect()
}

/// One line; `most` is the most that the cloth stretches.
#[must_use]
pub fn speak(line: &Handle, most: Option<Ratio>, confidence: Confidence) -> Spoken {
    let most =
        || most.map_or_else(|| "not pulled".to_owned(), |most| format!("stretches {} % at most", most.percent(1)));
    match line {
        Handle::Needle(needle) => Spoken::new("needle", self::needle(needle), most(), needle.source),
        Handle::Stitch(seam) => Spoken::new("stitch", sewn(seam), wanted(seam), seam.source),
        Handle::StraightCracks(seam) => {
            let text = "a straight stitch would crack: it gives 20 % at most";
            Spoken::note("stitch", text, wanted(seam), Stitch::GIVE_SOURCE)
        }
        Handle::Place { places, what, always, source } => {
            let names: Vec<&str> = places.iter().map(|place| self::place(*place)).collect();
            let why = if *always { "for any cloth".to_owned() } else { most() };
            Spoken::new("place", format!("{}: {}", names.join(", "), done(*what)), why, *source)
        }
        Handle::Machine(line) => Spoken::new("machine", practice(line.practice), most(), line.source),
        Handle::Layer(layer, layered) => layer_line(*layer, layered, confidence),
        Handle::Allowance(allowance) => {
            let text = format!("{}, trimmed to {}", inches(allowance.cut), inches(allowance.trimmed));
            Spoken::new("allowance", text, "of a seam", allowance.source)
        }
    }
}

/// The needle.
#[must_use]
pub fn needle(needle: &Needle) -> String {
    let point = match needle.point {
        NeedlePoint::Universal => "universal",
        NeedlePoint::Ballpoint => "ballpoint",
        NeedlePoint::Stretch => "stretch",
    };
    let size = if needle.finest == needle.thickest {
        needle.finest.to_string()
    } else {
        format!("{} to {}", needle.finest, needle.thickest)
    };
    format!("{point} point, size {size}")
}

/// The stitch and its length.
#[must_use]
pub fn sewn(seam: &SeamLine) -> String {
    let length = seam.length_tenths.map(|(least, most)| {
        let mm = |tenths: u8| Decimal::new(tenths.into(), 1);
        if least == most { format!(", {} mm", mm(least)) } else { format!(", {} to {} mm", mm(least), mm(most)) }
    });
    format!("{}{}", stitch(seam.stitch), length.unwrap_or_default())
}

fn wanted(seam: &SeamLine) -> String {
    format!("the seam must give {} %", seam.wanted.percent(1))
}

/// An allowance as the trade prints it, and what a metric tape shows.
fn inches(length: Length) -> String {
    format!("{} ({})", length.show(Unit::Inch), quantity::tape(length, Unit::Cm))
}

const fn place(place: Place) -> &'static str {
    match place {
        Place::Shoulder => "shoulder seam",
        Place::NeckEdge => "neck edge",
        Place::Pocket => "pocket opening",
        Place::Gathers => "gathers",
        Place::Buttonhole => "buttonhole",
        Place::Eyelet => "eyelet",
        Place::Zip => "under a zip",
        Place::Facing => "facing",
        Place::Hem => "hem",
        Place::BiasHem => "hem on the bias",
        Place::RawSeams => "raw seams, unlined",
    }
}

fn done(what: Do) -> String {
    match what {
        Do::Tape => "tape it".to_owned(),
        Do::StayStitch => "stay-stitch it before anything else".to_owned(),
        Do::Stabilise => "stabilise it".to_owned(),
        Do::StabiliseStrip { width, allowance } => {
            format!("a strip of {} that does not stretch, for a seam of {}", inches(width), inches(allowance))
        }
        Do::Interface { that_gives: true } => "interface it with one that stretches with the cloth".to_owned(),
        Do::Interface { that_gives: false } => "interface it".to_owned(),
        Do::HemThatGives => "zigzag it, or sew two rows while stretching it slightly".to_owned(),
        Do::HangADay => "let it hang for a day before you level it".to_owned(),
        Do::BindWithTape => "bind them with tape".to_owned(),
    }
}

const fn practice(practice: Practice) -> &'static str {
    match practice {
        Practice::WalkingFoot => "walking foot, less pressure on the presser foot",
        Practice::StretchSample => "sew a sample and stretch it hard; if the thread breaks, loosen it",
        Practice::LieFlat => "do not let the cloth hang off the table while you cut and sew",
    }
}

fn layer_line(layer: Layer, layered: &Layered, confidence: Confidence) -> Spoken {
    let (about, name) = match layer {
        Layer::Lining => ("lining", "with the lining"),
        Layer::Interfacing => ("facing", "with the facing"),
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
    let text = format!("{name} it gives {}{asked}{instead}", words::figure(&layered.stretch, confidence));
    let why = format!("two layers stretch as far as the lesser; chance {}", words::percent(layered.chance));
    Spoken::new(about, text, why, layered.source)
}

/// What is said of the layers of a cloth in a head line.
#[must_use]
pub const fn layers(answer: Answer) -> &'static str {
    match answer {
        Answer::Meets => "its layers stretch with it",
        Answer::Short | Answer::Over => "its layers hold it back",
        Answer::Close | Answer::Unknown => "its layers may hold it back",
    }
}
