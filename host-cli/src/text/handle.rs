//! How to sew one cloth, in words.

use tenter_core::making::handling::{
    Cloth, Do, Instead, Layer, Layered, NeedlePoint, Place, PlaceLine, Practice, at, needle, practices, seam,
    seam_allowance,
};
use tenter_core::making::stitch::Stitch;
use tenter_core::{Answer, Confidence, Decimal, Figure, Length, Ratio, Unit};

use crate::text::pair::stitch;
use crate::words::advice::Spoken;
use crate::words::quantity;
use crate::words::terms as words;

/// One cloth with what is layered on it.
#[derive(Debug)]
pub struct Handled {
    /// The cloth.
    pub cloth: Cloth,
    /// The stretch that the view wants along its seams.
    pub wants: Option<Ratio>,
    /// Linings and facings.
    pub layers: Vec<(Layer, Layered)>,
    /// How sure an answer is.
    pub confidence: Confidence,
}

/// The lines that the figures call for.
#[must_use]
pub fn spoken(handled: &Handled) -> Vec<Spoken> {
    let cloth = &handled.cloth;
    let mut lines = Vec::new();
    let most = cloth.most_stretch().map(|figure| format!("stretches {} % at most", figure.ratio.percent(1)));
    let most = most.unwrap_or_else(|| "not pulled".to_owned());
    if let Some(needle) = needle(cloth) {
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
        lines.push(Spoken::new("needle", format!("{point} point, size {size}"), most.clone(), needle.source));
    }
    let sewn = seam(cloth, handled.wants);
    let length = sewn.length_tenths.map(|(least, most)| {
        let mm = |tenths: u8| Decimal::new(tenths.into(), 1);
        if least == most { format!(", {} mm", mm(least)) } else { format!(", {} to {} mm", mm(least), mm(most)) }
    });
    let text = format!("{}{}", stitch(sewn.stitch), length.unwrap_or_default());
    let why = format!("the seam is to give {} %", sewn.wanted.percent(1));
    lines.push(Spoken::new("stitch", text, why.clone(), sewn.source));
    if sewn.stitch != Stitch::Straight {
        let text = "a plain straight stitch gives 20 % at most and would crack";
        lines.push(Spoken::new("stitch", text, why, Stitch::GIVE_SOURCE));
    }
    let lined = handled.layers.iter().any(|(layer, _)| *layer == Layer::Lining);
    let places = Place::ALL.into_iter().filter(|place| !(lined && *place == Place::RawSeams));
    let places: Vec<PlaceLine> = places.filter_map(|place| at(cloth, place)).collect();
    // What is done alike to several places is one line.
    let alike = places
        .chunk_by(|one, next| (one.what, one.source, is_for_any(one)) == (next.what, next.source, is_for_any(next)));
    lines.extend(alike.filter_map(|places| placed(places, &most)));
    for line in practices(cloth) {
        let text = match line.practice {
            Practice::WalkingFoot => "walking foot, less pressure on the presser foot",
            Practice::StretchSample => "sew a sample and stretch it hard; if the thread breaks, loosen it",
            Practice::LieFlat => "do not let the cloth hang off the table while you cut and sew",
        };
        lines.push(Spoken::new("machine", text, most.clone(), line.source));
    }
    lines.extend(handled.layers.iter().map(|(layer, layered)| layer_line(*layer, layered, handled.confidence)));
    let allowance = seam_allowance();
    let text = format!("{}, trimmed to {}", inches(allowance.cut), inches(allowance.trimmed));
    lines.push(Spoken::new("allowance", text, "of a seam", allowance.source));
    lines
}

/// A layer on a cloth that gives `own`, against what is wanted; where nothing is, against holding the cloth back.
#[must_use]
pub fn layered(
    own: Figure,
    layer: Layer,
    gives: Figure,
    wants: Option<Ratio>,
    confidence: Confidence,
) -> (Layer, Layered) {
    let mut layered = Layered::of(own, layer, gives, wants.unwrap_or(own.ratio), confidence);
    // Against itself a cloth would be a coin toss.
    if wants.is_none() && !layered.loses {
        (layered.answer, layered.chance, layered.instead) = (Answer::Meets, 1.0, &[]);
    }
    (layer, layered)
}

/// An allowance as the trade prints it, and what a metric tape shows.
fn inches(length: Length) -> String {
    format!("{} ({})", length.show(Unit::Inch), quantity::tape(length, Unit::Cm))
}

/// Whether it is done to every cloth, whatever it gives.
fn is_for_any(line: &PlaceLine) -> bool {
    matches!(line.place, Place::Eyelet | Place::RawSeams | Place::BiasHem)
        || line.what == Do::Interface { that_gives: false }
}

fn placed(places: &[PlaceLine], most: &str) -> Option<Spoken> {
    let line = places.first()?;
    let name = |line: &PlaceLine| match line.place {
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
    };
    let names: Vec<&str> = places.iter().map(name).collect();
    let what = match line.what {
        Do::Tape => "tape it".to_owned(),
        Do::StayStitch => "stay-stitch it before anything else".to_owned(),
        Do::Stabilise => "stabilise".to_owned(),
        Do::StabiliseStrip { width, allowance } => {
            format!("a strip of {} that does not give, for a seam of {}", inches(width), inches(allowance))
        }
        Do::Interface { that_gives: true } => "interface it with one that gives as the cloth gives".to_owned(),
        Do::Interface { that_gives: false } => "interface it".to_owned(),
        Do::HemThatGives => "one that gives: zigzag, or two rows slightly stretched".to_owned(),
        Do::HangADay => "let it hang for a day before you level it".to_owned(),
        Do::BindWithTape => "bind them with tape".to_owned(),
    };
    let why = if is_for_any(line) { "for any cloth" } else { most };
    Some(Spoken::new("place", format!("{}: {what}", names.join(", ")), why, line.source))
}

fn layer_line(layer: Layer, layered: &Layered, confidence: Confidence) -> Spoken {
    let (about, name) = match layer {
        Layer::Lining => ("lining", "with the lining"),
        Layer::Interfacing => ("facing", "with the facing"),
    };
    let mut text = format!("{name} it gives {}", words::figure(&layered.stretch, confidence));
    let asked = match layered.answer {
        Answer::Meets => ", enough",
        Answer::Short => ", too little",
        _ => ", too close to call",
    };
    text.push_str(asked);
    let instead: Vec<&str> = layered
        .instead
        .iter()
        .map(|instead| match instead {
            Instead::ThatGives => "one that gives",
            Instead::Bias => "cut on the bias",
            Instead::Pleat => "a wider one with a pleat",
        })
        .collect();
    if !instead.is_empty() {
        text.push_str(&format!("; take {}", instead.join(", or ")));
    }
    let why = format!("two layers give as far as the lesser; chance {}", words::percent(layered.chance));
    Spoken::new(about, text, why, layered.source)
}
