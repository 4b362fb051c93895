//! Whether there is enough of a cloth: its length, its width, and what washing takes away.

use tenter_core::making::amount::Amount;
use tenter_core::making::error::MakingError;
use tenter_core::{Confidence, Grain, Length};

use super::known;
use crate::log::{ClothNeed, Fabric};

/// What a role takes: a length of a width, washed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Need {
    length: Length,
    width: Length,
}

impl From<ClothNeed> for Need {
    fn from(cloth: ClothNeed) -> Self {
        Self { length: cloth.length, width: cloth.width }
    }
}

/// Whether there is enough.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClothAnswer {
    /// The role does not say how much it takes.
    NotSaid,
    /// How long the cloth is, or how wide, is not known.
    NotKnown {
        /// The length it takes as it lies, washing change included.
        needed: Needed,
    },
    /// There is enough.
    Enough {
        /// The length it takes as it lies.
        needed: Needed,
    },
    /// There is not.
    Short {
        /// The length it takes as it lies.
        needed: Needed,
        /// What is missing.
        missing: Length,
    },
}

/// A length that is needed of the cloth as it lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Needed {
    /// The length.
    pub length: Length,
    /// The cloth is narrower than the pattern says, so the length was worked out by area: an estimate, lay it out.
    pub by_area: bool,
    /// What washing takes from the length is in it, or the cloth was washed; else it is not known.
    pub washing_known: bool,
}

impl ClothAnswer {
    /// Whether something is missing.
    #[must_use]
    pub const fn is_short(&self) -> bool {
        matches!(self, Self::Short { .. })
    }

    /// The length it takes as it lies, where that is said.
    #[must_use]
    pub const fn needed(&self) -> Option<Needed> {
        match *self {
            Self::NotSaid => None,
            Self::NotKnown { needed } | Self::Enough { needed } | Self::Short { needed, .. } => Some(needed),
        }
    }
}

/// Whether a cloth has what is needed.
#[must_use]
pub fn answer(fabric: &Fabric, need: Option<Need>, confidence: Confidence) -> ClothAnswer {
    let Some(need) = need else { return ClothAnswer::NotSaid };
    let washing = |grain| known::washing(fabric, grain).filter(|_| !fabric.washed);
    let along = washing(Grain::Lengthwise);
    let width = fabric.width.filter(|width| *width > Length::ZERO);
    let length = || {
        let amount = Amount::new(along, confidence)?;
        let amount = match width {
            Some(width) => amount.of_width(need.width, width, washing(Grain::Crosswise), confidence)?,
            None => amount,
        };
        Ok((amount.to_buy(need.length)?, amount.is_by_area()))
    };
    // What cannot be worked out is more than any cloth has.
    let (length, by_area) = length().unwrap_or_else(|_: MakingError| (Length::from_steps(i32::MAX), false));
    let needed = Needed { length, by_area, washing_known: fabric.washed || along.is_some() };
    match fabric.length {
        None => ClothAnswer::NotKnown { needed },
        Some(_) if width.is_none() => ClothAnswer::NotKnown { needed },
        Some(had) if had >= needed.length => ClothAnswer::Enough { needed },
        Some(had) => ClothAnswer::Short { needed, missing: Length::from_steps(needed.length.steps() - had.steps()) },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::{Ids, WashMarks};

    fn fabric(length: i16, width: i16) -> Fabric {
        let mut fabric = Fabric::named(Ids::default().next(), 1, "cloth");
        fabric.length = Some(Length::from_mm(length));
        fabric.width = Some(Length::from_mm(width));
        fabric
    }

    fn need(length: i16, width: i16) -> Option<Need> {
        Some(Need { length: Length::from_mm(length), width: Length::from_mm(width) })
    }

    /// 1829 mm at 10 % shrinkage take 2041.3 mm: marks at 20 cm read to a millimetre leave room for 10.4 %, 1829 / 0.896.
    #[test]
    fn washing_is_divided_by_what_is_kept() {
        let mut fabric = fabric(2500, 1500);
        let (before, after, division) = (Length::from_mm(200), Length::from_mm(180), Length::from_mm(1));
        fabric.washed_lengthwise = Some(WashMarks { before, after, division });
        let needed = answer(&fabric, need(1829, 1500), Confidence::default()).needed().unwrap();
        assert_eq!(needed.length.show(tenter_core::Unit::Mm).to_string(), "2041.295 mm");
        assert!(needed.washing_known);
        fabric.washed = true;
        assert_eq!(
            answer(&fabric, need(1829, 1500), Confidence::default()).needed().unwrap().length,
            Length::from_mm(1829)
        );
    }

    #[test]
    fn narrow_cloth_takes_the_same_area_and_says_that_it_is_an_estimate() {
        let needed = answer(&fabric(2000, 1000), need(1500, 1400), Confidence::default()).needed().unwrap();
        assert_eq!((needed.length, needed.by_area), (Length::from_mm(2100), true));
        let missing = Length::from_mm(100);
        assert!(
            matches!(answer(&fabric(2000, 1000), need(1500, 1400), Confidence::default()), ClothAnswer::Short { missing: m, .. } if m == missing)
        );
        let wide = answer(&fabric(2000, 1600), need(1500, 1400), Confidence::default()).needed().unwrap();
        assert_eq!((wide.length, wide.by_area), (Length::from_mm(1500), false));
    }

    #[test]
    fn what_is_not_known_is_not_made_up() {
        let mut unknown = fabric(2000, 1500);
        unknown.width = None;
        assert!(matches!(answer(&unknown, need(1500, 1400), Confidence::default()), ClothAnswer::NotKnown { .. }));
        assert_eq!(answer(&unknown, None, Confidence::default()), ClothAnswer::NotSaid);
    }
}
