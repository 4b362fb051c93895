//! Two cloths in one seam, in words.

use tenter_core::making::pairing::{
    Advice, AdviceLine, AdviceReason, BAND_ABOVE_POINTS, Between, HANDLE_FROM_POINTS, Least, Match, Mismatch, Which,
};
use tenter_core::making::stitch::Stitch;
use tenter_core::{Answer, Decimal, Unit};

use crate::finding::pair::{Named, PairDoubt, Pairing};
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::quantity;
use crate::words::terms as words;

/// The answer as a head, and what it means.
#[must_use]
pub const fn headline(pairing: &Pairing) -> (&'static str, &'static str) {
    match pairing.pair.answer {
        Match::Alike => ("ALIKE", "sew them as one cloth"),
        Match::Handle => ("HANDLE", "they can be joined, with care"),
        Match::BandToBody => ("BAND TO BODY", "cut one shorter and pull it to match"),
        Match::Close(Between::AlikeAndHandle) => ("TOO CLOSE TO CALL", "between alike and handle"),
        Match::Close(Between::HandleAndBand) => ("TOO CLOSE TO CALL", "between handle and band to body"),
    }
}

/// What a close answer hangs on.
#[must_use]
pub const fn doubt(doubt: PairDoubt) -> &'static str {
    match doubt {
        PairDoubt::Stretch => "only their stretch leaves it open",
        PairDoubt::Growth => "their stretch is settled; only their growth leaves it open",
        PairDoubt::Washing => "their stretch is settled; only the wash leaves it open",
    }
}

/// The answer as a word.
#[must_use]
pub const fn word(answer: Match) -> &'static str {
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
        Stitch::Overlock => "overlock of four threads",
        Stitch::TwinNeedle => "twin needle",
        Stitch::Coverstitch => "coverstitch",
    }
}

/// A cloth by its tag and name.
#[must_use]
pub fn named(cloth: &Named) -> String {
    format!("{} {}", cloth.tag, isolated(&cloth.name))
}

fn name(pairing: &Pairing, which: Which) -> String {
    named(&pairing.side(which).cloth)
}

/// How far the seam gives, and what stops it there.
#[must_use]
pub fn seam(pairing: &Pairing) -> String {
    let least = match pairing.pair.least {
        Least::Cloth(which) => format!("as far as {}", name(pairing, which)),
        Least::Stitch => "as far as the stitch".to_owned(),
    };
    format!("gives {}, {least}", words::figure(&pairing.pair.stretch, pairing.confidence))
}

/// How far the stretch of the two differs, with the chance of each answer.
#[must_use]
pub fn gap(pairing: &Pairing) -> String {
    let (pair, chances) = (&pairing.pair, pairing.pair.chances);
    format!(
        "{} points ± {}: alike {}, handle {}, band to body {}",
        pair.gap.ratio.percent(1),
        Decimal::round(pair.gap.half_width(pairing.confidence), 1),
        words::percent(chances.alike),
        words::percent(chances.handle),
        words::percent(chances.band)
    )
}

/// By how much one side comes out longer, and whether that shows.
#[must_use]
pub fn mismatch(pairing: &Pairing, mismatch: &Mismatch, unit: Unit) -> String {
    let length = mismatch.length.show(quantity::seam_unit(unit));
    let seam = quantity::width(pairing.seam, unit);
    let shows = match mismatch.answer {
        Answer::Meets => "does not show",
        Answer::Over => "shows",
        _ => "may show",
    };
    match mismatch.longer {
        Some(which) => format!("{} comes out {length} longer over {seam}; that {shows}", name(pairing, which)),
        None => format!("both come out alike over {seam}"),
    }
}

/// The limits that the answer rests on.
#[must_use]
pub fn limits() -> String {
    format!(
        "these limits are the tool's own: alike under {HANDLE_FROM_POINTS} points, band to body over \
         {BAND_ABOVE_POINTS}; a difference in length shows from 1 % of the seam or 5 mm, whichever is less"
    )
}

/// The advice.
#[must_use]
pub fn spoken(pairing: &Pairing) -> Vec<Spoken> {
    pairing.pair.advice().iter().map(|line| speak(pairing, line)).collect()
}

fn speak(pairing: &Pairing, said: &AdviceLine) -> Spoken {
    let pair = &pairing.pair;
    let gap = format!("their stretch differs by {} points", pair.gap.ratio.percent(1));
    let why = match said.reason {
        AdviceReason::Gap | AdviceReason::Mismatch if pairing.is_band => {
            "a band is cut shorter, whatever its stretch".to_owned()
        }
        AdviceReason::SameStretch => format!("{gap}, under {HANDLE_FROM_POINTS}"),
        AdviceReason::Gap => gap,
        AdviceReason::Mismatch => "one side comes out longer than the other".to_owned(),
        AdviceReason::TooClose => match pairing.doubt() {
            Some(doubt @ (PairDoubt::Growth | PairDoubt::Washing)) => self::doubt(doubt).to_owned(),
            _ => format!("{gap} ± {}", Decimal::round(pair.gap.half_width(pairing.confidence), 1)),
        },
        AdviceReason::NotMeasured => "that was not measured".to_owned(),
        AdviceReason::Washing => "the wash shortens one more than the other".to_owned(),
        AdviceReason::Stitch => format!("the stitch gives {} %, the cloths more", pair.stretch.ratio.percent(0)),
    };
    let (about, text) = match said.advice {
        Advice::NoHandling => ("sew", "as one cloth; nothing special".to_owned()),
        Advice::QuarterMarks => ("mark", "quarter both edges and pin mark to mark".to_owned()),
        Advice::Below(which) => ("sew", format!("{} below, on the feed, the other on top", name(pairing, which))),
        Advice::StayStitch(which) => {
            ("first", format!("stay-stitch the edge of {} inside the seam allowance", name(pairing, which)))
        }
        Advice::CentreOutwards => ("sew", "from the centre outwards, so that nothing creeps to one end".to_owned()),
        Advice::BandOnTop(which) => {
            ("sew", format!("{} on top as a band cut shorter, pulled to match", name(pairing, which)))
        }
        Advice::PullAgain => ("measure", again(pairing).to_owned()),
        Advice::ReadGrowth => ("measure", "read both after release: their growth was not compared".to_owned()),
        Advice::WashJoinedSample => ("sample", "sew a joined sample and wash it before you cut".to_owned()),
        Advice::StitchThatGives => {
            let other = Stitch::that_gives(pairing.lesser_stretch());
            ("stitch", format!("this one holds the seam back; take a {}", stitch(other)))
        }
    };
    Spoken::new(about, text, why, said.source)
}

/// What to measure where the answer is too close to call.
fn again(pairing: &Pairing) -> &'static str {
    match pairing.doubt() {
        Some(PairDoubt::Growth) => "pull both again and read them after release, with longer marks",
        Some(PairDoubt::Washing) => "wash both again, with longer marks",
        Some(PairDoubt::Stretch) | None => "pull both again, with longer marks; the answer lies on a limit",
    }
}
