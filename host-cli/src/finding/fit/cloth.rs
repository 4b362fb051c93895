//! Whether there is enough of a cloth: its length, its width, how it is laid, and what washing takes away.

use tenter_core::making::amount::{Amount, missing};
use tenter_core::making::error::MakingError;
use tenter_core::making::washing::Washing;
use tenter_core::making::yardage::{OneWay, OneWayExtra};
use tenter_core::{Confidence, Grain, Length, Ratio};

use super::known;
use crate::log::{ClothNeed, Fabric, GarmentKind, Role};

/// What a role takes: a length of a width, washed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Need {
    cloth: ClothNeed,
    kind: Option<GarmentKind>,
}

impl Need {
    /// What a role takes, where that is said.
    #[must_use]
    pub fn of(role: &Role) -> Option<Self> {
        Some(Self { cloth: role.cloth?, kind: role.kind })
    }
}

/// Whether there is enough.
#[derive(Clone, Copy, Debug, PartialEq)]
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
        /// What is missing, of all that is cut from it.
        missing: Length,
    },
}

/// A length that is needed of the cloth as it lies: exact, and never rounded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Needed {
    /// The length for this role.
    pub length: Length,
    /// The length that other roles take of the same cloth.
    pub besides: Length,
    /// The cloth is narrower than the pattern says, so the length was worked out by area: an estimate, lay it out.
    pub by_area: bool,
    /// It is so much narrower that pieces may not fit at all.
    pub far_narrower: bool,
    /// What a layout one way up takes besides, which is in the length.
    pub one_way: Option<OneWayExtra>,
    /// How the cloth stands to its first wash.
    pub washing: Washing,
    /// The change of length in the wash that is counted on, which is in the length; at most 0.
    pub counted: Ratio,
}

impl Needed {
    /// All that is cut from the cloth.
    #[must_use]
    pub const fn in_all(&self) -> Length {
        Length::from_steps(self.length.steps().saturating_add(self.besides.steps()))
    }
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

/// Whether a cloth has what is needed, `besides` what other roles take of it.
#[must_use]
pub fn answer(fabric: &Fabric, need: Option<Need>, besides: Length, confidence: Confidence) -> ClothAnswer {
    Laid::of(fabric).answer(need, besides, confidence)
}

/// A cloth as it is laid out for cutting: the same for whatever is cut from it.
#[derive(Clone, Copy, Debug)]
pub struct Laid {
    length: Option<Length>,
    width: Option<Length>,
    along: Washing,
    across: Washing,
    way: Option<OneWay>,
}

impl Laid {
    /// What is known of a cloth.
    #[must_use]
    pub fn of(fabric: &Fabric) -> Self {
        let [along, across] = [Grain::Lengthwise, Grain::Crosswise].map(|grain| known::at_wash(fabric, grain));
        let way = OneWay::of(&fabric.described(), fabric.one_way);
        let width = fabric.width.filter(|width| *width > Length::ZERO);
        Self { length: fabric.length, width, along, across, way }
    }

    /// Whether it has what is needed, `besides` what other roles take of it.
    #[must_use]
    pub fn answer(&self, need: Option<Need>, besides: Length, confidence: Confidence) -> ClothAnswer {
        let Some(need) = need else { return ClothAnswer::NotSaid };
        let needed = self.needed(need, besides, confidence);
        match self.length.filter(|_| self.width.is_some()) {
            None => ClothAnswer::NotKnown { needed },
            Some(had) => match missing(had, [needed.length, besides]) {
                Length::ZERO => ClothAnswer::Enough { needed },
                missing => ClothAnswer::Short { needed, missing },
            },
        }
    }

    fn needed(&self, Need { cloth, kind }: Need, besides: Length, confidence: Confidence) -> Needed {
        let one_way = self.way.filter(|_| !cloth.one_way).map(|way| way.extra(cloth.length, kind));
        let worked_out = || {
            let amount = Amount::new(&self.along, confidence)?;
            let amount = match self.width {
                Some(width) => amount.of_width(cloth.width, width, &self.across, confidence)?,
                None => amount,
            };
            let amount = amount.and(one_way.map_or(Length::ZERO, |extra| extra.length));
            Ok((amount, amount.to_buy(cloth.length)?))
        };
        match worked_out() {
            Ok((amount, length)) => Needed {
                length,
                besides,
                by_area: amount.is_by_area(),
                far_narrower: amount.is_far_narrower(),
                one_way,
                washing: self.along,
                counted: amount.change(),
            },
            // What cannot be worked out is more than any cloth has.
            Err::<_, MakingError>(_) => Needed {
                length: Length::from_steps(i32::MAX),
                besides,
                by_area: false,
                far_narrower: false,
                one_way,
                washing: self.along,
                counted: Ratio::ZERO,
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::{Construction, Finish, Ids, WashMarks};

    /// A cloth that was washed, so that nothing comes off any more.
    fn fabric(length: i16, width: i16) -> Fabric {
        let mut fabric = Fabric::named(Ids::default().next(), 1, "cloth");
        fabric.length = Some(Length::from_mm(length));
        fabric.width = Some(Length::from_mm(width));
        fabric.washed = true;
        fabric
    }

    fn need(length: i16, width: i16) -> Need {
        let cloth = ClothNeed { length: Length::from_mm(length), width: Length::from_mm(width), one_way: false };
        Need { cloth, kind: None }
    }

    fn answered(fabric: &Fabric, need: Need) -> ClothAnswer {
        answer(fabric, Some(need), Length::ZERO, Confidence::default())
    }

    /// 1829 mm at 10 % shrinkage take 2041.3 mm: marks at 20 cm read to a millimetre leave room for 10.4 %, 1829 / 0.896.
    #[test]
    fn washing_is_divided_by_what_is_kept() {
        let mut fabric = fabric(2500, 1500);
        let (before, after, division) = (Length::from_mm(200), Length::from_mm(180), Length::from_mm(1));
        fabric.washed_lengthwise = Some(WashMarks { before, after, division });
        assert_eq!(answered(&fabric, need(1829, 1500)).needed().unwrap().length, Length::from_mm(1829));
        fabric.washed = false;
        let needed = answered(&fabric, need(1829, 1500)).needed().unwrap();
        assert_eq!(needed.length.show(tenter_core::Unit::Mm).to_string(), "2041.295 mm");
        assert!(needed.washing.is_known());
    }

    /// Woven cotton that nobody measured: 6 % (see the core's table), 1880 / 0.94 = 2000 mm; waxed, it is not washed.
    #[test]
    fn what_nobody_measured_is_allowed_for() {
        let mut fabric = fabric(1999, 1500);
        (fabric.washed, fabric.fibre, fabric.construction) = (false, "cotton".to_owned(), Construction::Woven);
        let answer = answered(&fabric, need(1880, 1500));
        let needed = answer.needed().unwrap();
        assert_eq!((needed.length, needed.washing.is_known()), (Length::from_mm(2000), false));
        assert!(matches!(answer, ClothAnswer::Short { missing, .. } if missing == Length::from_mm(1)));
        fabric.finish = Some(Finish::Waxed);
        assert_eq!(answered(&fabric, need(1880, 1500)).needed().unwrap().length, Length::from_mm(1880));
    }

    /// 1500 mm of 140 cm are 1750 mm of 120 by area, and a quarter of a yard, 228.6 mm, for the change of width.
    #[test]
    fn narrow_cloth_takes_the_same_area_and_says_that_it_is_an_estimate() {
        let answer = answered(&fabric(1978, 1200), need(1500, 1400));
        let needed = answer.needed().unwrap();
        assert_eq!((needed.length.steps(), needed.by_area), (17_500 * 160 + 22_860 * 16, true));
        assert!(matches!(answer, ClothAnswer::Short { missing, .. } if missing.steps() == 6 * 160));
        let wide = answered(&fabric(2000, 1600), need(1500, 1400)).needed().unwrap();
        assert_eq!((wide.length, wide.by_area), (Length::from_mm(1500), false));
        assert!(answered(&fabric(2000, 1000), need(1500, 1400)).needed().unwrap().far_narrower);
    }

    /// Trousers of 2 m with a pile take 15 % more, 30 cm, unless the pattern's length is for one way.
    #[test]
    fn one_way_takes_more_once() {
        let mut fabric = fabric(3000, 1500);
        (fabric.finish, fabric.construction) = (Some(Finish::Pile), Construction::Woven);
        let mut need = Need { kind: Some(GarmentKind::Trousers), ..need(2000, 1500) };
        assert_eq!(answered(&fabric, need).needed().unwrap().length, Length::from_mm(2300));
        need.cloth.one_way = true;
        assert_eq!(answered(&fabric, need).needed().unwrap().length, Length::from_mm(2000));
    }

    #[test]
    fn what_other_roles_take_is_added() {
        let (of, besides) = (fabric(2300, 1500), Length::from_mm(2400));
        let answer = answer(&of, Some(need(800, 1500)), besides, Confidence::default());
        assert_eq!(answer.needed().unwrap().in_all(), Length::from_mm(3200));
        assert!(matches!(answer, ClothAnswer::Short { missing, .. } if missing == Length::from_mm(900)));
    }

    #[test]
    fn what_is_not_known_is_not_made_up() {
        let mut unknown = fabric(2000, 1500);
        unknown.width = None;
        assert!(matches!(answered(&unknown, need(1500, 1400)), ClothAnswer::NotKnown { .. }));
        assert_eq!(answer(&unknown, None, Length::ZERO, Confidence::default()), ClothAnswer::NotSaid);
    }
}
