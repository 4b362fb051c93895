//! Whether there is enough of a fabric: its length, its width, and what washing takes away.

use tenter_core::{Length, Ratio};

use crate::log::fabric::WashMarks;
use crate::log::{Cloth, Fabric};

/// What a role takes: a length of a width, washed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Need {
    length: Length,
    width: Length,
}

impl From<Cloth> for Need {
    fn from(cloth: Cloth) -> Self {
        Self { length: cloth.length, width: cloth.width }
    }
}

/// Whether there is enough.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClothAnswer {
    /// The role does not say how much it takes.
    NotSaid,
    /// How long the fabric is, or how wide, is not known.
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
    /// The cloth is narrower than the pattern says, so the length was reckoned by area: an estimate, lay it out.
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

/// Whether a fabric has what is needed.
#[must_use]
pub fn answer(fabric: &Fabric, need: Option<Need>) -> ClothAnswer {
    let Some(need) = need else { return ClothAnswer::NotSaid };
    let kept = |marks: Option<WashMarks>| marks.filter(|_| !fabric.washed).and_then(share_kept);
    let width = fabric.width.map(|width| scaled(width, kept(fabric.washed_crosswise), false));
    // Narrower cloth takes more length: as much area. The layout may ask for more still.
    let by_area = width.is_some_and(|width| width < need.width && width > Length::ZERO);
    let length = match width {
        Some(width) if by_area => {
            scaled(need.length, Ratio::new(need.width.steps().into(), width.steps().into()), true)
        }
        _ => need.length,
    };
    // Before the wash it must be need / (1 − s): dividing by the share that is kept.
    let kept_length = kept(fabric.washed_lengthwise);
    let before = kept_length.and_then(|kept| Ratio::new(kept.denominator(), kept.numerator()));
    let needed =
        Needed { length: scaled(length, before, true), by_area, washing_known: fabric.washed || kept_length.is_some() };
    match fabric.length {
        None => ClothAnswer::NotKnown { needed },
        Some(_) if width.is_none() => ClothAnswer::NotKnown { needed },
        Some(had) if had >= needed.length => ClothAnswer::Enough { needed },
        Some(had) => ClothAnswer::Short { needed, missing: Length::from_steps(needed.length.steps() - had.steps()) },
    }
}

/// After over before.
fn share_kept(marks: WashMarks) -> Option<Ratio> {
    Ratio::new(marks.after.steps().into(), marks.before.steps().into()).filter(|share| share.numerator() > 0)
}

/// A length times a ratio, rounded down, or up where it is a need.
fn scaled(length: Length, ratio: Option<Ratio>, up: bool) -> Length {
    let Some(ratio) = ratio else { return length };
    let product = i128::from(length.steps()) * i128::from(ratio.numerator());
    let den = i128::from(ratio.denominator()).max(1);
    let steps = if up { (product + den - 1).div_euclid(den) } else { product.div_euclid(den) };
    Length::from_steps(i32::try_from(steps).unwrap_or(i32::MAX))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::Ids;

    fn fabric(length: i16, width: i16) -> Fabric {
        let mut fabric = Fabric::named(Ids::default().next(), 1, "cloth");
        fabric.length = Some(Length::from_mm(length));
        fabric.width = Some(Length::from_mm(width));
        fabric
    }

    fn need(length: i16, width: i16) -> Option<Need> {
        Some(Need { length: Length::from_mm(length), width: Length::from_mm(width) })
    }

    /// 2 yd at 10 % shrinkage take 2.22 yd, not 2.20: need / (1 − s), arithmetic.
    #[test]
    fn washing_is_divided_by_what_is_kept() {
        let mut fabric = fabric(2500, 1500);
        let (before, after, division) = (Length::from_mm(200), Length::from_mm(180), Length::from_mm(1));
        fabric.washed_lengthwise = Some(WashMarks { before, after, division });
        let needed = answer(&fabric, need(1829, 1500)).needed().unwrap();
        assert_eq!(needed.length.show(tenter_core::Unit::Mm).to_string(), "2032.2225 mm");
        assert!(needed.washing_known);
        fabric.washed = true;
        assert_eq!(answer(&fabric, need(1829, 1500)).needed().unwrap().length, Length::from_mm(1829));
    }

    #[test]
    fn narrow_cloth_takes_the_same_area_and_says_that_it_is_an_estimate() {
        let needed = answer(&fabric(2000, 1000), need(1500, 1400)).needed().unwrap();
        assert_eq!((needed.length, needed.by_area), (Length::from_mm(2100), true));
        let missing = Length::from_mm(100);
        assert!(
            matches!(answer(&fabric(2000, 1000), need(1500, 1400)), ClothAnswer::Short { missing: m, .. } if m == missing)
        );
        let wide = answer(&fabric(2000, 1600), need(1500, 1400)).needed().unwrap();
        assert_eq!((wide.length, wide.by_area), (Length::from_mm(1500), false));
    }

    #[test]
    fn what_is_not_known_is_not_made_up() {
        let mut unknown = fabric(2000, 1500);
        unknown.width = None;
        assert!(matches!(answer(&unknown, need(1500, 1400)), ClothAnswer::NotKnown { .. }));
        assert_eq!(answer(&unknown, None), ClothAnswer::NotSaid);
    }
}
