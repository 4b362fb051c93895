//! Cords and drawstrings on children's clothes.

use crate::answer::source::Source;
use crate::reading::length::Length;

/// Whose rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Region {
    /// 16 CFR 1120 with ASTM F1816, upper outerwear.
    UnitedStates,
    /// EN 14682, up to 14 years.
    Europe,
}

/// Where on the garment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum CordPlace {
    /// Hood, head or neck.
    HoodOrNeck,
    /// Waist, or a bottom hem.
    WaistOrHem,
    /// The same, drawn in.
    WaistOrHemDrawnIn,
    /// The back.
    Back,
    /// A tied belt of a robe.
    RobeBelt,
}

/// What a rule allows.
///
/// ```
/// use tenter_core::{Length, making::caution::Allowed};
///
/// assert!(Allowed::EndsUpTo(Length::from_mm(75)).allows(Length::from_mm(75)));
/// assert!(!Allowed::Nothing.allows(Length::from_mm(1)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Allowed {
    /// No cord at all.
    Nothing,
    /// No free ends; a fixed loop of at most so much round.
    LoopUpTo(Length),
    /// Each end at most so long outside its channel, garment laid open; no toggle or knot on it, a cord in one piece sewn
    /// fast in the middle.
    EndsUpTo(Length),
}

impl Allowed {
    /// Whether an end of this length may hang out, compared exactly. Zero is no end.
    ///
    /// ```
    /// use tenter_core::{Length, making::caution::Allowed};
    ///
    /// let loop_only = Allowed::LoopUpTo(Length::from_mm(150));
    /// assert!(!loop_only.allows(Length::from_mm(10)) && loop_only.allows(Length::ZERO));
    /// ```
    #[must_use]
    pub fn allows(self, end: Length) -> bool {
        match self {
            Self::Nothing | Self::LoopUpTo(_) => end <= Length::ZERO,
            Self::EndsUpTo(most) => end <= most,
        }
    }
}

/// A rule for cords.
///
/// ```
/// use tenter_core::making::caution::{Allowed, CORDS};
///
/// assert!(CORDS.iter().any(|rule| rule.allowed == Allowed::Nothing));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cord {
    /// Whose rule.
    pub region: Region,
    /// For which sizes or ages, in the rule's own terms.
    pub who: &'static str,
    /// Where on the garment.
    pub place: CordPlace,
    /// What it allows.
    pub allowed: Allowed,
    /// Where it was read.
    pub source: Source,
}

const US: Source = Source::Published("16 CFR 1120 with ASTM F1816-18, upper outerwear: 3 in, 75 mm");
const FINNISH: Source = Source::Published("EN 14682, after the Finnish safety authority's page on cords");
const SUMMARY: Source = Source::Published(
    "EN 14682:2007, after a test house's summary in Chinese; the editions in force are later, so look there",
);
const BELTS: Source = Source::CommonPractice;

const fn cord(region: Region, who: &'static str, place: CordPlace, allowed: Allowed, source: Source) -> Cord {
    Cord { region, who, place, allowed, source }
}

/// The rules that were read. Tell which one applies from where the garment is worn or sold.
pub const CORDS: &[Cord] = &[
    cord(Region::UnitedStates, "sizes 2T to 12", CordPlace::HoodOrNeck, Allowed::Nothing, US),
    cord(Region::UnitedStates, "sizes 2T to 16", CordPlace::WaistOrHem, Allowed::EndsUpTo(Length::from_mm(75)), US),
    cord(Region::Europe, "under 7 years, up to 134 cm", CordPlace::HoodOrNeck, Allowed::Nothing, FINNISH),
    cord(Region::Europe, "7 to 14 years", CordPlace::HoodOrNeck, Allowed::LoopUpTo(Length::from_mm(150)), SUMMARY),
    cord(Region::Europe, "to 14 years", CordPlace::WaistOrHem, Allowed::EndsUpTo(Length::from_mm(140)), SUMMARY),
    cord(Region::Europe, "to 14 years", CordPlace::WaistOrHemDrawnIn, Allowed::EndsUpTo(Length::from_mm(280)), SUMMARY),
    cord(Region::Europe, "to 14 years", CordPlace::Back, Allowed::Nothing, SUMMARY),
    cord(Region::Europe, "children's robes", CordPlace::RobeBelt, Allowed::EndsUpTo(Length::from_mm(360)), BELTS),
];
