//! Two cloths in one seam, in words.

use tenter_core::making::garment::SeamKind;
use tenter_core::making::pairing::{
    Advice, AdviceLine, AdviceReason, BAND_ABOVE_POINTS, Between, Give, HANDLE_FROM_POINTS, Least, Match, Mismatch,
    PairDoubt, Which,
};
use tenter_core::making::stitch::Stitch;
use tenter_core::{Answer, Decimal, Unit};

use crate::finding::pair::{NamedCloth, Pairing};
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::quantity;
use crate::words::terms as words;

/// The answer as a head, and what it means, or what leaves it open.
#[must_use]
pub fn headline(pairing: &Pairing) -> (&'static str, String) {
    let pair = &pairing.pair;
    let means = match (pair.answer, pair.open) {
        (Match::Alike, _) => "sew them as one cloth".to_owned(),
        (Match::Handle, _) => "you can join them, with care".to_owned(),
        (Match::BandToBody, _) => "cut the band shorter and pull it to match".to_owned(),
        (Match::Unlike, _) => "their stretch is too far apart for this seam".to_owned(),
        (Match::TooFirm, _) => pair.give.as_ref().map(|give| self::give(pairing, give)).unwrap_or_default(),
        (Match::Close(_), Some(open)) => self::open(pairing, open),
        (Match::Close(_), None) => String::new(),
    };
    let head = match pair.answer {
        Match::Alike => "ALIKE",
        Match::Handle => "HANDLE",
        Match::BandToBody => "BAND TO BODY",
        Match::Unlike => "UNLIKE",
        Match::TooFirm => "TOO FIRM",
        Match::Close(_) => "TOO CLOSE TO CALL",
    };
    (head, means)
}

/// What leaves the answer open.
fn open(pairing: &Pairing, open: PairDoubt) -> String {
    let far = match pairing.pair.answer {
        Match::Close(Between::HandleAndUnlike) => "the readings do not tell whether their stretch is too far apart",
        _ => "the readings do not tell whether they stretch alike",
    };
    match open {
        PairDoubt::Stretch => far.to_owned(),
        PairDoubt::Growth => "they stretch alike, but the readings do not tell whether their growth shows".to_owned(),
        PairDoubt::Washing => "they stretch alike, but the readings do not tell whether the wash shows".to_owned(),
        PairDoubt::Give => {
            let asked = pairing.pair.give.map(|give| give.asked.to_string()).unwrap_or_default();
            format!("the readings do not tell whether the seam gives the {asked} that your view asks")
        }
    }
}

/// What leaves the answer open, in a word.
#[must_use]
pub const fn open_word(open: PairDoubt) -> &'static str {
    match open {
        PairDoubt::Stretch => "stretch",
        PairDoubt::Growth => "growth",
        PairDoubt::Washing => "washing",
        PairDoubt::Give => "give",
    }
}

/// Whether the seam gives what is asked along it.
#[must_use]
pub fn give(pairing: &Pairing, give: &Give) -> String {
    let gives = quantity::number(pairing.pair.stretch.ratio.percent(1));
    let asked = give.asked;
    match give.answer {
        Answer::Meets => format!("the seam gives {gives} %, and your view asks {asked}"),
        Answer::Short => format!("the seam gives {gives} %: less than the {asked} that your view asks"),
        _ => format!("the seam gives {gives} %, and your view asks {asked}: too close to call"),
    }
}

/// The answer as a word.
#[must_use]
pub const fn word(answer: Match) -> &'static str {
    match answer {
        Match::Alike => "alike",
        Match::Handle => "handle",
        Match::BandToBody => "band to body",
        Match::Unlike => "unlike",
        Match::TooFirm => "too firm",
        Match::Close(_) => "close",
    }
}

/// The name of a seam.
#[must_use]
pub const fn seam_name(seam: SeamKind) -> &'static str {
    match seam {
        SeamKind::Panel => "panel seam",
        SeamKind::Princess => "princess seam",
        SeamKind::Yoke => "yoke seam",
        SeamKind::CentreBack => "centre back seam",
        SeamKind::Shoulder => "shoulder seam",
        SeamKind::HoodCentre => "centre seam of the hood",
        SeamKind::HoodToNeck => "hood on the neck",
        SeamKind::CollarToNeck => "collar on the neck",
        SeamKind::Neckband => "band on the neck",
        SeamKind::Armhole => "armhole seam",
        SeamKind::Raglan => "raglan seam",
        SeamKind::Sleeve => "sleeve seam",
        SeamKind::Side => "side seam",
        SeamKind::SleeveAndSide => "sleeve and side in one seam",
        SeamKind::Waist => "waist seam",
        SeamKind::Waistband => "waistband on the waist",
        SeamKind::Cuff => "cuff on its edge",
        SeamKind::HemBand => "band on the lower edge",
        SeamKind::OutsideLeg => "outside leg seam",
        SeamKind::InsideLeg => "inside leg seam",
        SeamKind::Crotch => "crotch seam",
        SeamKind::BackSeat => "back seat seam",
        SeamKind::Strap => "strap",
        SeamKind::FrontEdge => "front edge with its zip",
        SeamKind::LiningToFacing => "lining on the facing",
    }
}

/// Which seam it is, and how the grain of each side lies along it.
#[must_use]
pub fn runs(pairing: &Pairing) -> String {
    let [one, other] = [&pairing.sides[0], &pairing.sides[1]].map(|side| side.grain);
    let grain =
        if one == other { format!("both {}", one.word()) } else { format!("{} on {}", one.word(), other.word()) };
    match (pairing.seam.name, pairing.seam.grains) {
        (Some(name), None) => format!("{}, {grain}", seam_name(name)),
        (Some(name), Some(_)) => format!("{}, {grain} as you typed", seam_name(name)),
        (None, _) => grain,
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
pub fn named(cloth: &NamedCloth) -> String {
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
        "{} points ± {}: alike {}, handle {}, too far apart {}",
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
    let fine = quantity::seam_unit(unit);
    let length = quantity::tape(mismatch.length, fine);
    let half = mismatch.half_width_mm(pairing.seam.length, pairing.confidence);
    let half = match fine {
        Unit::Inch => format!("{} in", Decimal::round(half / 25.4, 1)),
        Unit::Mm | Unit::Cm => format!("{} mm", Decimal::round(half, 0)),
    };
    let seam = quantity::width(pairing.seam.length, unit);
    let shows = match mismatch.answer {
        Answer::Meets => "does not show",
        Answer::Over => "shows",
        _ => "may show",
    };
    match mismatch.longer.filter(|_| !length.starts_with("0 ")) {
        Some(which) => {
            format!("{} comes out {length} longer over {seam}, ± {half}; that {shows}", name(pairing, which))
        }
        None => format!("both come out alike over {seam}, ± {half}; that {shows}"),
    }
}

/// The limits that the answer rests on.
#[must_use]
pub fn limits(unit: Unit) -> String {
    let shows = if unit == Unit::Inch { "3/16 in" } else { "5 mm" };
    format!(
        "these limits are the tool's own: alike under {HANDLE_FROM_POINTS} points, too far apart over \
         {BAND_ABOVE_POINTS}, where only a band can be joined; a difference in length shows from 1 % of the seam or {shows}, \
         whichever is less"
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
        AdviceReason::Band => "a band is cut shorter, whatever its stretch".to_owned(),
        AdviceReason::SameStretch => format!("{gap}, under {HANDLE_FROM_POINTS}"),
        AdviceReason::Gap => gap,
        AdviceReason::Mismatch => "one side comes out longer than the other".to_owned(),
        AdviceReason::OffGrain => "its edge would stretch before it is sewn, or while you sew it".to_owned(),
        AdviceReason::Give => pair.give.as_ref().map(|give| self::give(pairing, give)).unwrap_or_default(),
        AdviceReason::Grows => "it grows by more than 6 %".to_owned(),
        AdviceReason::TooClose => match pair.open {
            Some(PairDoubt::Stretch) | None => {
                format!("{gap} ± {}", Decimal::round(pair.gap.half_width(pairing.confidence), 1))
            }
            Some(open) => self::open(pairing, open),
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
        Advice::TapeEdge(which) => {
            ("first", format!("tape the edge of {} with a tape that does not give", name(pairing, which)))
        }
        Advice::OtherCloth(which) => ("cloth", other_cloth(pairing, which)),
        Advice::CentreOutwards => ("sew", "from the centre outwards, so that nothing creeps to one end".to_owned()),
        Advice::BandOnTop(which) => {
            ("sew", format!("{} on top as a band cut shorter, pulled to match", name(pairing, which)))
        }
        Advice::PullAgain(Some(which)) => {
            ("measure", format!("pull {} again, three times, on marks farther apart", name(pairing, which)))
        }
        Advice::PullAgain(None) => ("measure", "pull both again, three times, on marks farther apart".to_owned()),
        Advice::ReadGrowth => ("measure", "read both after release: their growth was not compared".to_owned()),
        Advice::ReadGrowthAgain(Some(which)) => (
            "measure",
            format!("read the growth of {} again, on marks farther apart, 30 min after release", name(pairing, which)),
        ),
        Advice::ReadGrowthAgain(None) => {
            ("measure", "read the growth of both again, on marks farther apart, 30 min after release".to_owned())
        }
        Advice::WashAgain => ("measure", "wash both again, with longer marks".to_owned()),
        Advice::WillBag(which) => ("wear", will_bag(pairing, which)),
        Advice::WashJoinedSample => ("sample", "sew a joined sample and wash it before you cut".to_owned()),
        Advice::StitchThatGives => {
            let gives = Stitch::that_gives(pairing.lesser_stretch());
            ("stitch", format!("take a {}, which gives more", stitch(gives)))
        }
    };
    Spoken::new(about, text, why, said.source)
}

/// Another cloth in the place of one, for what this one does not do.
fn other_cloth(pairing: &Pairing, which: Which) -> String {
    let named = name(pairing, which);
    match (pairing.pair.answer, pairing.pair.give) {
        (Match::TooFirm, Some(give)) => format!("take one that gives {} or more instead of {named}", give.asked),
        _ => {
            let like = name(pairing, which.other());
            format!("or take one that stretches like {like} instead of {named}")
        }
    }
}

fn will_bag(pairing: &Pairing, which: Which) -> String {
    let growth = pairing.side(which).edge.growth;
    let growth = growth.map(|growth| quantity::number(growth.ratio.percent(1))).unwrap_or_default();
    format!("{} grows {growth} %, poor: it will bag, whatever the seam", name(pairing, which))
}
