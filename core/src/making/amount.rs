//! How much to buy, and what a length on hand counts as: through washing and another width, with what both are worth.

use super::error::{MakingError, positive};
use super::washing::{self, Washing};
use super::yardage::{self, Extra};
use crate::answer::confidence::Confidence;
use crate::number::ratio::Ratio;
use crate::reading::length::Length;

/// What lies between a length of cloth before the wash and the length that a pattern asks for.
///
/// [`Amount::to_buy`] and [`Amount::counts_as`] are inverses: a length on hand counts as enough exactly where it is no
/// shorter than the length to buy. Both are exact, to the step of 1/1600 mm that is on the safe side; what a shop cuts
/// comes last and once, with [`ShopCut::up`](super::yardage::ShopCut::up).
///
/// ```
/// use tenter_core::making::amount::Amount;
/// use tenter_core::making::washing::{Washing, change};
/// use tenter_core::making::yardage::ShopCut;
/// use tenter_core::{Confidence, Length, Scale, Unit};
///
/// // Marks 10 cm apart come out of the wash at 9.7 cm. How much for 1.7 m?
/// let along = Washing::Measured(change(Length::from_mm(100), Length::from_mm(97), Scale::default())?);
/// let amount = Amount::new(&along, Confidence::default())?;
/// let (need, had) = (Length::from_mm(1700), Length::from_mm(1760));
/// let buy = amount.to_buy(need)?;
/// assert_eq!(buy.show(Unit::Cm).to_string(), "176.5316875 cm"); // 1.7 m / 0.963: it may lose 3.7 %.
/// assert_eq!(ShopCut::TenCentimetres.up(buy)?, Length::from_mm(1800));
/// assert!(amount.counts_as(had)? < need); // So 1.76 m is not enough.
/// # Ok::<(), tenter_core::making::error::MakingError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Amount {
    /// The change of length in the wash that is counted on, at most 0.
    change: Ratio,
    /// The width that the pattern asks for, and that of the cloth after the wash, where it is narrower.
    narrower: Option<(Length, Length)>,
    /// What the layout takes besides.
    extra: Length,
}

impl Amount {
    /// For a length that stands so to the wash, as wide as asked.
    ///
    /// Counted on is the worst change at `confidence`; a cloth that grows in the wash counts as one that keeps its length.
    ///
    /// # Errors
    ///
    /// [`MakingError::AfterWashing`] where nothing may be left of the length.
    pub fn new(along: &Washing, confidence: Confidence) -> Result<Self, MakingError> {
        let change = along.counted(confidence);
        washing::left_of(change)?;
        Ok(Self { change, narrower: None, extra: Length::ZERO })
    }

    /// The same for a cloth `has` wide before the wash, which stands so to it across, where the pattern asks for `wants`.
    /// Narrower cloth takes as much area ([`yardage::by_area`]), by more than a twentieth [`Extra::Narrower`] too; wider
    /// cloth takes no less length.
    ///
    /// # Errors
    ///
    /// [`MakingError::Width`] unless both widths are above zero, [`MakingError::AfterWashing`] where nothing may be left of
    /// the width, [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::{Confidence, Length, making::{amount::Amount, washing::Washing, yardage::Extra}};
    ///
    /// let [wants, has] = [1400, 1200].map(Length::from_mm);
    /// let narrow = Amount::new(&Washing::Done, Confidence::default())?;
    /// let narrow = narrow.of_width(wants, has, &Washing::Done, Confidence::default())?;
    /// let by_area = Length::from_mm(2100); // 1.8 m of 140 cm.
    /// let quarter = Extra::Narrower.length();
    /// assert_eq!(narrow.to_buy(Length::from_mm(1800))?.steps(), by_area.steps() + quarter.steps());
    /// assert!(narrow.is_by_area() && !narrow.is_far_narrower());
    /// # Ok::<(), tenter_core::making::error::MakingError>(())
    /// ```
    pub fn of_width(
        self,
        wants: Length,
        has: Length,
        across: &Washing,
        confidence: Confidence,
    ) -> Result<Self, MakingError> {
        positive(wants, MakingError::Width)?;
        positive(has, MakingError::Width)?;
        // What a width usually loses and nobody measured lies within what a layout leaves at the edge.
        let usable = match across {
            Washing::Measured(_) => washing::left(has, across.counted(confidence))?,
            _ => has,
        };
        positive(usable, MakingError::Width)?;
        let narrower = (usable < wants).then_some((wants, usable));
        let is_much = 20 * i64::from(usable.steps()) < 19 * i64::from(wants.steps());
        Ok(Self { narrower, ..self }.and(if is_much { Extra::Narrower.length() } else { Length::ZERO }))
    }

    /// The same with a length that the layout takes besides, such as
    /// [`OneWay::extra`](super::yardage::OneWay::extra).
    ///
    /// ```
    /// use tenter_core::{Confidence, Length, making::{amount::Amount, washing::Washing}};
    ///
    /// let amount = Amount::new(&Washing::Done, Confidence::default()).unwrap().and(Length::from_mm(300));
    /// assert_eq!(amount.to_buy(Length::from_mm(2000)), Ok(Length::from_mm(2300)));
    /// ```
    #[must_use]
    pub fn and(self, extra: Length) -> Self {
        let steps = self.extra.steps().saturating_add(extra.steps().max(0));
        Self { extra: Length::from_steps(steps), ..self }
    }

    /// The change of length that is counted on, at most 0.
    #[must_use]
    pub const fn change(&self) -> Ratio {
        self.change
    }

    /// What the layout takes besides.
    #[must_use]
    pub const fn extra(&self) -> Length {
        self.extra
    }

    /// Whether the cloth is narrower than asked, so that its length is one of equal area: an estimate, lay it out.
    #[must_use]
    pub const fn is_by_area(&self) -> bool {
        self.narrower.is_some()
    }

    /// Whether it is so much narrower, by more than a quarter, that pieces may not fit at all: the length is then hardly
    /// an estimate.
    #[must_use]
    pub fn is_far_narrower(&self) -> bool {
        self.narrower.is_some_and(|(wants, usable)| 4 * i64::from(usable.steps()) < 3 * i64::from(wants.steps()))
    }

    /// The length to buy so that `need` is there after the wash; never less than `need`.
    ///
    /// # Errors
    ///
    /// [`MakingError::Cloth`] unless the need is above zero, [`MakingError::TooLarge`] beyond 1.3 km.
    pub fn to_buy(&self, need: Length) -> Result<Length, MakingError> {
        let length = match self.narrower {
            Some((wants, usable)) => yardage::by_area(need, wants, usable)?,
            None => need,
        };
        let length = length.steps().checked_add(self.extra.steps()).ok_or(MakingError::TooLarge)?;
        washing::to_buy(Length::from_steps(length), self.change)
    }

    /// The length of the pattern's width that a length on hand counts as, after the wash; never more than is on hand.
    ///
    /// # Errors
    ///
    /// [`MakingError::Cloth`] for a length below zero. Nothing on hand counts as nothing.
    pub fn counts_as(&self, had: Length) -> Result<Length, MakingError> {
        if had == Length::ZERO {
            return Ok(had);
        }
        let left = washing::left(had, self.change)?;
        let left = Length::from_steps(left.steps().saturating_sub(self.extra.steps()).max(0));
        match self.narrower {
            Some((wants, usable)) => yardage::same_area(left, usable, wants),
            None => Ok(left),
        }
    }
}

/// What is missing of a length on hand for all that is cut from it: the lengths are added up first, whatever garment,
/// view or role each is for. Zero where there is enough; a sum beyond 1.3 km counts as that.
///
/// ```
/// use tenter_core::{Length, making::amount::missing};
///
/// // Main 1.90 m, hood 0.50 m and facing 0.80 m from a cloth of 2.30 m.
/// let needs = [1900, 500, 800].map(Length::from_mm);
/// assert_eq!(missing(Length::from_mm(2300), needs), Length::from_mm(900));
/// ```
#[must_use]
pub fn missing(on_hand: Length, needs: impl IntoIterator<Item = Length>) -> Length {
    Length::from_steps(total(needs).steps().saturating_sub(on_hand.steps().max(0)).max(0))
}

/// The lengths added up; a sum beyond 1.3 km counts as that.
///
/// ```
/// use tenter_core::{Length, making::amount::total};
///
/// assert_eq!(total([1900, 500, 800].map(Length::from_mm)), Length::from_mm(3200));
/// ```
#[must_use]
pub fn total(needs: impl IntoIterator<Item = Length>) -> Length {
    Length::from_steps(needs.into_iter().fold(0, |sum: i32, need| sum.saturating_add(need.steps().max(0))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::making::yardage::ShopCut;
    use crate::reading::scale::Scale;
    use proptest::prelude::*;

    fn change(before: i32, after: i32) -> Option<Washing> {
        let change = washing::change(Length::from_steps(before), Length::from_steps(after), Scale::default());
        change.ok().map(Washing::Measured)
    }

    proptest! {
        /// What is on hand counts as enough exactly where it is no less than what would be bought.
        #[test]
        fn buying_and_counting_are_inverses(
            need in 1..8_000_000i32,
            had in 0..16_000_000i32,
            marks in (160_000..1_600_000i32, 60..150i32),
            widths in (800_000..4_000_000i32, 800_000..4_000_000i32),
            (washed, wide) in (any::<bool>(), any::<bool>()),
            extra in 0..1_000_000i32,
        ) {
            let confidence = Confidence::default();
            let change = change(marks.0, marks.0 / 100 * marks.1).filter(|_| washed).unwrap_or(Washing::Done);
            let mut amount = Amount::new(&change, confidence).unwrap().and(Length::from_steps(extra));
            if wide {
                let (wants, has) = (Length::from_steps(widths.0), Length::from_steps(widths.1));
                amount = amount.of_width(wants, has, &change, confidence).unwrap();
            }
            let (need, had) = (Length::from_steps(need), Length::from_steps(had));
            let (buy, counts_as) = (amount.to_buy(need).unwrap(), amount.counts_as(had).unwrap());
            prop_assert!(buy >= need && counts_as <= had);
            prop_assert_eq!(had >= buy, counts_as >= need);
            prop_assert!(amount.counts_as(buy).unwrap() >= need);
        }

        /// The more it shrinks, the more is bought; and a shop's cut only ever rounds up, by less than one cut.
        #[test]
        fn more_shrinkage_is_never_bought_shorter(
            need in 1..8_000_000i32,
            marks in 160_000..1_600_000i32,
            (less, more) in (60..150i32, 60..150i32),
            cut in 0..3usize,
        ) {
            let buy = |after: i32| {
                let amount = Amount::new(&change(marks, marks / 100 * after).unwrap(), Confidence::default()).unwrap();
                amount.to_buy(Length::from_steps(need)).unwrap()
            };
            prop_assert!(buy(less.min(more)) >= buy(less.max(more)));
            let cut = ShopCut::ALL[cut];
            let rounded = cut.up(buy(less)).unwrap();
            prop_assert!(rounded >= buy(less) && rounded.steps() - buy(less).steps() < cut.step().steps());
            prop_assert_eq!(rounded.steps() % cut.step().steps(), 0);
            prop_assert_eq!(cut.up(rounded), Ok(rounded), "once is enough");
        }

        /// What is missing of several is never less than of one of them, and adding comes before comparing.
        #[test]
        fn sums_come_before_shortages(had in 0..9_000_000i32, needs in prop::collection::vec(0..4_000_000i32, 0..6)) {
            let lengths = needs.iter().copied().map(Length::from_steps);
            let short = missing(Length::from_steps(had), lengths.clone());
            let sum: i32 = needs.iter().sum();
            prop_assert_eq!(short.steps(), (sum - had).max(0));
            for one in lengths {
                prop_assert!(missing(Length::from_steps(had), [one]) <= short);
            }
        }
    }

    /// 2 yd at 10 % shrinkage take 2.22 yd and not 2.20: need / (1 − s), worked out by hand.
    #[test]
    fn a_shrinkage_is_divided_by_what_is_left() {
        let exact = Washing::Measured(crate::answer::Figure::exact(Ratio::new(-10, 100).unwrap()));
        let amount = Amount::new(&exact, Confidence::default()).unwrap();
        assert_eq!(amount.to_buy(Length::from_inch_64ths(72 * 64)), Ok(Length::from_inch_64ths(80 * 64)));
        assert_eq!(amount.counts_as(Length::from_inch_64ths(80 * 64)), Ok(Length::from_inch_64ths(72 * 64)));
    }

    #[test]
    fn a_cloth_that_grows_in_the_wash_is_bought_no_shorter() {
        let amount = Amount::new(&change(800_000, 816_000).unwrap(), Confidence::default()).unwrap();
        assert_eq!(amount.to_buy(Length::from_mm(2000)), Ok(Length::from_mm(2000)));
        assert_eq!(amount.counts_as(Length::from_mm(2000)), Ok(Length::from_mm(2000)));
    }

    #[test]
    fn nothing_on_hand_counts_as_nothing_and_no_width_is_refused() {
        let amount = Amount::new(&Washing::Done, Confidence::default()).unwrap();
        assert_eq!((amount.counts_as(Length::ZERO), amount.change()), (Ok(Length::ZERO), Ratio::ZERO));
        assert_eq!(amount.counts_as(Length::from_steps(-1)), Err(MakingError::Cloth));
        let no_width = amount.of_width(Length::from_mm(1400), Length::ZERO, &Washing::Done, Confidence::default());
        assert_eq!(no_width, Err(MakingError::Width));
    }

    /// 140 to 100 cm is 29 % narrower: a sleeve may not fit across.
    #[test]
    fn a_cloth_far_narrower_is_hardly_an_estimate() {
        let of = |has| {
            let amount = Amount::new(&Washing::Done, Confidence::default()).unwrap();
            amount.of_width(Length::from_mm(1400), Length::from_mm(has), &Washing::Done, Confidence::default()).unwrap()
        };
        assert_eq!([1000, 1050, 1400].map(|has| of(has).is_far_narrower()), [true, false, false]);
        assert_eq!([1000, 1050, 1400].map(|has| of(has).is_by_area()), [true, true, false]);
    }
}
