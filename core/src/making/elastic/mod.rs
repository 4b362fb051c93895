//! Elastic: how long to cut it, how deep its casing is, and the check that no rule contains, that the loop passes the
//! widest part.

mod casing;
mod drawcord;
mod recommended;

pub use casing::{CASINGS, Casing, DrawnThrough, Tunnel, tunnel};
pub use drawcord::{CordTask, CordTaskLine, Drawcord, Fastened, cord_tasks};
pub use recommended::{Lap, Recommended, is_recommended, recommended};

use heapless::Vec;

use super::error::{MakingError, positive};
use super::scaled::{Round, scaled};
use super::sizing::Reach;
use crate::answer::Figure;
use crate::answer::confidence::Confidence;
use crate::answer::source::Source;
use crate::number::words;
use crate::reading::length::Length;

/// A kind of elastic.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Kind {
    /// Woven or non-roll: keeps its width, gives least.
    Firm,
    /// Knitted: keeps its width, gives more.
    Soft,
    /// Braided: narrows when stretched.
    Braided,
    /// Ribbing used as a band.
    Ribbing,
}

words!(Kind {
    Firm => "firm",
    Soft => "soft",
    Braided => "braided",
    Ribbing => "ribbing",
});

/// Where it goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Edging {
    /// A waist.
    Waist,
    /// A waist that is meant to sit tight.
    SnugWaist,
    /// Any edge that is drawn in.
    Edge,
    /// The front half of a swimsuit's leg.
    SwimLegFront,
    /// The back half of a swimsuit's leg.
    SwimLegBack,
    /// A wrist.
    Wrist,
    /// An ankle, or the leg of trousers or briefs.
    Leg,
    /// A neck, a cuff or another opening with a band.
    Opening,
}

words!(Edging {
    Waist => "waist",
    SnugWaist => "snug-waist",
    Edge => "edge",
    SwimLegFront => "swim-leg-front",
    SwimLegBack => "swim-leg-back",
    Wrist => "wrist",
    Leg => "leg",
    Opening => "opening",
});

/// What a rule takes of the body or the edge.
///
/// ```
/// use tenter_core::making::elastic::ElasticCut;
///
/// assert_ne!(ElasticCut::Share { least: (2, 3), most: (3, 4) }, ElasticCut::Share { least: (1, 1), most: (1, 1) });
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum ElasticCut {
    /// So much less, from the least to the most that is taken off.
    Less {
        /// The least taken off.
        least: Length,
        /// The most taken off.
        most: Length,
    },
    /// A share of it, each end as a fraction.
    Share {
        /// The smaller share.
        least: (u8, u8),
        /// The larger share.
        most: (u8, u8),
    },
}

/// A length from the least to the most that a rule allows.
///
/// ```
/// use tenter_core::{Length, making::elastic::Span};
///
/// let span = Span { least: Length::from_mm(700), most: Length::from_mm(720) };
/// assert!(span.least < span.most);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Span {
    /// The least.
    pub least: Length,
    /// The most.
    pub most: Length,
}

/// A rule for the length to cut.
///
/// ```
/// use tenter_core::making::elastic::{Kind, Edging, RULES};
///
/// let firm = RULES.iter().find(|rule| rule.kind == Some(Kind::Firm) && rule.place == Edging::Waist).unwrap();
/// assert!(!firm.name.is_empty());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rule {
    /// A short name.
    pub name: &'static str,
    /// The kind it is for; none for any.
    pub kind: Option<Kind>,
    /// Where.
    pub place: Edging,
    /// What it takes.
    pub cut: ElasticCut,
    /// The part of the cut length that is lapped to close the loop, where the source says so.
    pub overlap: Length,
    /// Where it comes from.
    pub source: Source,
}

impl Rule {
    /// The length to cut for a body measure or an edge.
    ///
    /// # Errors
    ///
    /// [`MakingError::Body`] unless the measure is above zero, [`MakingError::RuleTakesAll`] where nothing is left,
    /// [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::{Length, making::elastic::{Kind, Edging, rules}};
    ///
    /// let neck = Length::from_inch_64ths(16 * 64);
    /// let rule = rules(Kind::Ribbing, Edging::Opening).next().unwrap();
    /// assert_eq!(rule.cut(neck).unwrap().most, Length::from_inch_64ths(12 * 64));
    /// ```
    pub fn cut(&self, measure: Length) -> Result<Span, MakingError> {
        positive(measure, MakingError::Body)?;
        let share = |(num, den): (u8, u8)| scaled(measure, num.into(), den.into(), Round::Nearest);
        let less = |off: Length| measure.steps().checked_sub(off.steps()).map(Length::from_steps);
        let (least, most) = match self.cut {
            ElasticCut::Less { least, most } => (less(most), less(least)),
            ElasticCut::Share { least, most } => (share(least), share(most)),
        };
        let (Some(least), Some(most)) = (least, most) else { return Err(MakingError::TooLarge) };
        if least <= self.overlap {
            return Err(MakingError::RuleTakesAll);
        }
        Ok(Span { least, most })
    }
}

/// The rules for a kind and a place, those for any elastic included; ribbing has its own only.
///
/// ```
/// use tenter_core::making::elastic::{Kind, Edging, rules};
///
/// assert!(rules(Kind::Braided, Edging::Waist).all(|rule| rule.kind.is_none()));
/// ```
pub fn rules(kind: Kind, place: Edging) -> impl Iterator<Item = &'static Rule> {
    RULES.iter().filter(move |rule| rule.place == place && rule.kind.map_or(kind != Kind::Ribbing, |own| own == kind))
}

/// Whether the closed loop passes the widest part of the body, hips for a waist: needed is widest / loop − 1. The loop
/// is what is left of `cut` after `overlap`.
///
/// # Errors
///
/// [`MakingError::Body`] or [`MakingError::Garment`] unless the widest part and the loop are above zero.
///
/// ```
/// use tenter_core::{Answer, Confidence, Figure, Length, Ratio, making::elastic::passes};
///
/// // Waist 30 in, loop 28 in, hip 40 in: 42.9 % is needed, and a firm elastic with 40 % jams.
/// let inches = |count: i16| Length::from_inch_64ths(count * 64);
/// let firm = Figure::exact(Ratio::new(40, 100).unwrap());
/// let reach = passes(inches(28), Length::ZERO, inches(40), firm, Confidence::default()).unwrap();
/// assert_eq!(reach.needed.ratio().percent(1).to_string(), "42.9");
/// assert_eq!(reach.answer, Answer::Short);
/// ```
pub fn passes(
    cut: Length,
    overlap: Length,
    widest: Length,
    elastic: Figure,
    confidence: Confidence,
) -> Result<Reach, MakingError> {
    let closed = Length::from_steps(cut.steps().saturating_sub(overlap.steps()));
    Reach::of(widest, closed, elastic, confidence)
}

const fn inches(eighths: i16) -> Length {
    Length::from_inch_64ths(8 * eighths)
}

const fn less(least: i16, most: i16) -> ElasticCut {
    ElasticCut::Less { least: inches(least), most: inches(most) }
}

const fn share(least: (u8, u8), most: (u8, u8)) -> ElasticCut {
    ElasticCut::Share { least, most }
}

const fn rule(name: &'static str, kind: Option<Kind>, place: Edging, cut: ElasticCut) -> Rule {
    Rule { name, kind, place, cut, overlap: Length::ZERO, source: Source::CommonPractice }
}

/// Rules of the trade. They disagree, since elastics do: the elastic's own stretch decides.
pub const RULES: &[Rule] = &[
    rule("2 in less", None, Edging::Waist, less(16, 16)),
    rule("2 to 3 in less", None, Edging::Waist, less(16, 24)),
    rule("2 to 4 in less", None, Edging::SnugWaist, less(16, 32)),
    rule("firm, up to 1 in less", Some(Kind::Firm), Edging::Waist, less(0, 8)),
    rule("soft, 3 to 5 in less", Some(Kind::Soft), Edging::Waist, less(24, 40)),
    rule("woven, as long as the body", Some(Kind::Firm), Edging::Waist, share((1, 1), (1, 1))),
    rule("knitted, 90 to 95 %", Some(Kind::Soft), Edging::Waist, share((90, 100), (95, 100))),
    rule("92 % of the edge", None, Edging::Edge, share((92, 100), (92, 100))),
    Rule { overlap: inches(4), ..rule("front as long as the edge", None, Edging::SwimLegFront, share((1, 1), (1, 1))) },
    Rule {
        overlap: inches(4),
        ..rule("back three quarters of the edge", None, Edging::SwimLegBack, share((3, 4), (3, 4)))
    },
    rule("1/2 in less", None, Edging::Wrist, less(4, 4)),
    rule("85 to 90 %", None, Edging::Leg, share((85, 100), (90, 100))),
    rule("two thirds to three quarters", Some(Kind::Ribbing), Edging::Opening, share((2, 3), (3, 4))),
    rule("70 to 80 % of the edge", Some(Kind::Ribbing), Edging::Wrist, share((70, 100), (80, 100))),
    rule("70 to 80 % of the edge", Some(Kind::Ribbing), Edging::Leg, share((70, 100), (80, 100))),
    rule("80 to 90 % of the edge", Some(Kind::Ribbing), Edging::Waist, share((80, 100), (90, 100))),
    rule("80 to 90 % of the edge", Some(Kind::Ribbing), Edging::Edge, share((80, 100), (90, 100))),
];

/// What else to see to.
///
/// ```
/// use tenter_core::making::elastic::ElasticCare;
///
/// assert_ne!(ElasticCare::CasingOnly, ElasticCare::Preshrink);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum ElasticCare {
    /// Put it in a casing: it narrows when stretched and stitching hurts it.
    CasingOnly,
    /// Stitching through it slackens it: cut it up to so much shorter again.
    ShorterBy(Length),
    /// Wash it before measuring, above all one with rayon.
    Preshrink,
    /// No one percentage works: pin the loop and pass it over head or hand before sewing.
    TryPinnedLoop,
}

/// One line of care.
///
/// ```
/// use tenter_core::making::elastic::{ElasticCare, Kind, care};
///
/// assert!(care(Kind::Braided, true).iter().any(|line| line.care == ElasticCare::CasingOnly));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct CareLine {
    /// What to see to.
    pub care: ElasticCare,
    /// Where it comes from.
    pub source: Source,
}

/// What else to see to for a kind of elastic, sewn through or drawn into a casing.
///
/// ```
/// use tenter_core::making::elastic::{ElasticCare, Kind, care};
///
/// assert!(care(Kind::Ribbing, true).iter().any(|line| line.care == ElasticCare::TryPinnedLoop));
/// assert!(!care(Kind::Firm, false).iter().any(|line| matches!(line.care, ElasticCare::ShorterBy(_))));
/// ```
#[must_use]
pub fn care(kind: Kind, stitched_through: bool) -> Vec<CareLine, 2> {
    let mut lines = Vec::new();
    let mut say = |care| {
        let _ = lines.push(CareLine { care, source: Source::CommonPractice }); // Room for both lines.
    };
    match (kind, stitched_through) {
        (Kind::Ribbing, _) => {
            say(ElasticCare::TryPinnedLoop);
            return lines;
        }
        (Kind::Braided, true) => say(ElasticCare::CasingOnly),
        (Kind::Firm | Kind::Soft, true) => say(ElasticCare::ShorterBy(inches(8))),
        (_, false) => {}
    }
    say(ElasticCare::Preshrink);
    lines
}
