//! Two fabrics in one seam, as text and JSON.

use serde::Serialize;
use tenter_core::making::pairing::{
    Advice, AdviceLine, AdviceReason, BAND_ABOVE_POINTS, Between, Edge, HANDLE_FROM_POINTS, Least, Match, Mismatch,
    Pair, Which,
};
use tenter_core::making::stitch::Stitch;
use tenter_core::{Answer, Confidence, Decimal, Grain, Length, Unit};

use crate::json::FigureJson;
use crate::json::figure;
use crate::json::millimetres;
use crate::json::rounded;
use crate::log::Fabric;
use crate::text::lines::Lines;
use crate::words::advice;
use crate::words::advice::Spoken;
use crate::words::bidi::isolated;
use crate::words::quantity;
use crate::words::terms as words;

/// Two fabrics in one seam.
#[derive(Debug)]
pub struct Paired<'a> {
    /// The fabrics.
    pub fabrics: [&'a Fabric; 2],
    /// Their grains along the seam.
    pub grains: [Grain; 2],
    /// What is known of them there.
    pub edges: [Edge; 2],
    /// The length of the seam.
    pub seam: Length,
    /// The stitch, if it was chosen.
    pub stitch: Option<Stitch>,
    /// What the core says.
    pub pair: &'a Pair,
    /// How sure an answer is.
    pub confidence: Confidence,
    /// The unit of the text.
    pub unit: Unit,
}

/// The answer as a head line.
const fn headline(answer: Match) -> &'static str {
    match answer {
        Match::Alike => "ALIKE",
        Match::Handle => "HANDLE",
        Match::BandToBody => "BAND TO BODY",
        Match::Close(Between::AlikeAndHandle) => "TOO CLOSE TO CALL between alike and handle",
        Match::Close(Between::HandleAndBand) => "TOO CLOSE TO CALL between handle and band to body",
    }
}

const fn word(answer: Match) -> &'static str {
    match answer {
        Match::Alike => "alike",
        Match::Handle => "handle",
        Match::BandToBody => "band to body",
        Match::Close(_) => "close",
    }
}

/// The name of a stitch.
#[must_use]
pub const fn stitch(stitch: Stitch) -> &'static str {
    match stitch {
        Stitch::Straight => "straight stitch",
        Stitch::NarrowZigzag => "narrow zigzag",
        Stitch::Triple => "triple stitch",
        Stitch::WideZigzag => "wide zigzag",
        Stitch::Overlock => "overlock",
    }
}

/// The text.
#[must_use]
pub fn text(paired: &Paired<'_>, why: bool, columns: usize) -> String {
    let (pair, confidence) = (paired.pair, paired.confidence);
    let mut text = Lines::new(columns);
    let chances = pair.chances;
    text.words(headline(pair.answer));
    text.blank();
    for ((fabric, grain), edge) in paired.fabrics.iter().zip(paired.grains).zip(&paired.edges) {
        let growth = edge.growth.map(|growth| format!(", growth {}", words::figure(&growth, confidence)));
        let stretch = words::figure(&edge.stretch, confidence);
        let words = format!("{} {}, {stretch}{}", isolated(&fabric.name), grain.word(), growth.unwrap_or_default());
        text.row(&fabric.tag.to_string(), &words);
    }
    let least = match pair.least {
        Least::Cloth(which) => format!("as far as {}", name(paired, which)),
        Least::Stitch => "as far as the stitch".to_owned(),
    };
    text.row("seam", &format!("gives {} – {least}", words::figure(&pair.stretch, confidence)));
    text.row(
        "gap",
        &format!(
            "{} points ± {}: alike {}, handle {}, band to body {}",
            pair.gap.ratio.percent(1),
            Decimal::round(pair.gap.half_width(confidence), 1),
            words::percent(chances.alike),
            words::percent(chances.handle),
            words::percent(chances.band)
        ),
    );
    for (what, mismatch) in [("growth", pair.growth), ("washing", pair.washing)] {
        let Some(mismatch) = mismatch else { continue };
        text.row(what, &mismatched(paired, &mismatch));
    }
    text.blank();
    advice::write(&mut text, &spoken(paired), why);
    let limits = format!(
        "limits of the tool's own: alike under {HANDLE_FROM_POINTS} points, band to body over {BAND_ABOVE_POINTS}; a mismatch shows from 1 % of \
         the seam or 5 mm, whichever comes first"
    );
    text.row("note", &limits);
    text.finish()
}

fn mismatched(paired: &Paired<'_>, mismatch: &Mismatch) -> String {
    let length = mismatch.length.show(quantity::seam_unit(paired.unit));
    let longer = mismatch.longer.map(|which| format!("{} comes out longer by ", name(paired, which)));
    let shows = match mismatch.answer {
        Answer::Meets => "does not show",
        Answer::Over => "shows",
        _ => "may show",
    };
    let seam = quantity::width(paired.seam, paired.unit);
    format!("{}{length} over {seam}; it {shows}", longer.unwrap_or_else(|| "both alike, ".to_owned()))
}

fn name(paired: &Paired<'_>, which: Which) -> String {
    let [first, second] = paired.fabrics;
    let fabric = match which {
        Which::First => first,
        Which::Second => second,
    };
    format!("{} {}", fabric.tag, isolated(&fabric.name))
}

/// The advice in words.
#[must_use]
pub fn spoken(paired: &Paired<'_>) -> Vec<Spoken> {
    paired.pair.advice().iter().map(|line| speak(paired, line)).collect()
}

fn speak(paired: &Paired<'_>, said: &AdviceLine) -> Spoken {
    let pair = paired.pair;
    let gap = format!("the stretch differs by {} points", pair.gap.ratio.percent(1));
    let why = match said.reason {
        AdviceReason::SameStretch => format!("{gap}, under {HANDLE_FROM_POINTS}"),
        AdviceReason::Gap => gap,
        AdviceReason::Mismatch => "one side comes out longer than the other".to_owned(),
        AdviceReason::TooClose => format!("{gap} ± {}", Decimal::round(pair.gap.half_width(paired.confidence), 1)),
        AdviceReason::NotMeasured => "it was not measured".to_owned(),
        AdviceReason::Washing => "the wash does not take the same from both".to_owned(),
        AdviceReason::Stitch => format!("the stitch gives {} %, the cloths more", pair.stretch.ratio.percent(0)),
    };
    let (about, text) = match said.advice {
        Advice::NoHandling => ("sew", "as one cloth; nothing special".to_owned()),
        Advice::QuarterMarks => ("mark", "quarter both edges and pin mark on mark".to_owned()),
        Advice::Below(which) => ("sew", format!("{} below, on the feed, the other on top", name(paired, which))),
        Advice::StayStitch(which) => {
            ("before", format!("stay-stitch the edge of {} inside the seam allowance", name(paired, which)))
        }
        Advice::CentreOutwards => ("sew", "from the centre outwards, so that nothing creeps to one end".to_owned()),
        Advice::BandOnTop(which) => {
            ("sew", format!("{} on top as a band cut shorter, pulled to match", name(paired, which)))
        }
        Advice::PullAgain => ("measure", "pull both again, with longer marks; the answer lies on a limit".to_owned()),
        Advice::ReadGrowth => ("measure", "read both after release: their growth was not compared".to_owned()),
        Advice::WashJoinedSample => ("wash", "sew a joined sample and wash it before you cut".to_owned()),
        Advice::StitchThatGives => {
            let other = Stitch::that_gives(paired.edges[0].stretch.ratio.min(paired.edges[1].stretch.ratio));
            ("stitch", format!("it holds the seam back; take a {}", stitch(other)))
        }
    };
    Spoken::new(about, text, why, said.source)
}

#[derive(Serialize)]
struct PairJson {
    tags: [u16; 2],
    seam_mm: f64,
    answer: &'static str,
    alike: f64,
    handle: f64,
    band: f64,
    stretch: FigureJson,
    gap: FigureJson,
    growth_mismatch_mm: Option<f64>,
    washing_mismatch_mm: Option<f64>,
    lines: Vec<Spoken>,
}

/// The JSON text, on one line.
#[must_use]
pub fn json(paired: &Paired<'_>) -> String {
    let pair = paired.pair;
    let json = PairJson {
        tags: paired.fabrics.map(|fabric| fabric.tag),
        seam_mm: millimetres(paired.seam),
        answer: word(pair.answer),
        alike: rounded(pair.chances.alike, 4),
        handle: rounded(pair.chances.handle, 4),
        band: rounded(pair.chances.band, 4),
        stretch: figure(&pair.stretch, paired.confidence),
        gap: figure(&pair.gap, paired.confidence),
        growth_mismatch_mm: pair.growth.map(|mismatch| millimetres(mismatch.length)),
        washing_mismatch_mm: pair.washing.map(|mismatch| millimetres(mismatch.length)),
        lines: spoken(paired),
    };
    serde_json::to_string(&json).unwrap_or_default()
}
