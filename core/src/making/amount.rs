//! How much to buy, and what a length on hand counts as: through washing and another width, with what both are worth.

use super::error::{MakingError, positive};
use super::washing;
use super::yardage;
use crate::answer::Figure;
use crate::answer::confidence::Confidence;
use crate::number::ratio::Ratio;
use crate::reading::length::Length;

/// What lies between a length of cloth before the wash and the length that a pattern asks for.
///
/// [`Amount::to_buy`] and [`Amount::counts_as`] are inverses: a length on hand counts as enough exactly where it is no
/// shorter than the length to buy. Both are exact, to the step of 1/1600 mm that is on the safe side.
///
/// ```
/// use tenter_core::making::{amount::Amount, washing::change};
/// use tenter_core::{Confidence, Length, Scale, Unit};
///
/// // Marks 10 cm apart come out of the wash at 9.7 cm. How much for 1.7 m?
/// let along = change(Length::from_mm(100), Length::from_mm(97), Scale::default())?;
/// let amount = Amount::new(Some(along), Confidence::default())?;
/// let (need, had) = (Length::from_mm(1700), Length::from_mm(1760));
/// assert_eq!(amount.to_buy(need)?.show(Unit::Cm).to_string(), "176.5316875 cm"); // 1.7 m / 0.963: it may lose 3.7 %.
/// assert!(amount.counts_as(had)? < need); // So 1.76 m is not enough.
/// # Ok::<(), tenter_core::making::error::MakingError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Amount {
    /// The change of length in the wash that is counted on, at most 0; none where it is not known.
    change: Option<Ratio>,
    /// The width that the pattern asks for, and that of the cloth after the wash, where it is narrower.
    narrower: Option<(Length, Length)>,
}

impl Amount {
    /// For a length that changes by `along` in the wash, `None` where that is not known or is over, as wide as asked.
    ///
    /// Counted on is the worst change at `confidence` ([`washing::counted_on`]); a cloth that grows in the wash counts as
    /// one that keeps its length.
    ///
    /// # Errors
    ///
    /// [`MakingError::AfterWashing`] where nothing may be left of the length.
    pub fn new(along: Option<Figure>, confidence: Confidence) -> Result<Self, MakingError> {
        let change = along.map(|along| washing::counted_on(along, confidence));
        if let Some(change) = change {
            washing::left_of(change)?;
        }
        Ok(Self { change, narrower: None })
    }

    /// The same for a cloth `has` wide before the wash, which changes its width by `across`, where the pattern asks for
    /// `wants`. Narrower cloth takes as much area ([`yardage::by_area`]); wider cloth takes no less length.
    ///
    /// # Errors
    ///
    /// [`MakingError::Width`] unless both widths are above zero, [`MakingError::AfterWashing`] where nothing may be left of
    /// the width, [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::{Confidence, Length, making::amount::Amount};
    ///
    /// let [wants, has] = [1400, 1000].map(Length::from_mm);
    /// let narrow = Amount::new(None, Confidence::default())?.of_width(wants, has, None, Confidence::default())?;
    /// assert_eq!(narrow.to_buy(Length::from_mm(1500))?, Length::from_mm(2100));
    /// assert!(narrow.is_by_area());
    /// # Ok::<(), tenter_core::making::error::MakingError>(())
    /// ```
    pub fn of_width(
        self,
        wants: Length,
        has: Length,
        across: Option<Figure>,
        confidence: Confidence,
    ) -> Result<Self, MakingError> {
        positive(wants, MakingError::Width)?;
        positive(has, MakingError::Width)?;
        let usable = match across {
            Some(across) => washing::left(has, washing::counted_on(across, confidence))?,
            None => has,
        };
        positive(usable, MakingError::Width)?;
        Ok(Self { narrower: (usable < wants).then_some((wants, usable)), ..self })
    }

    /// The change of length that is counted on, at most 0; `None` where none is known.
    #[must_use]
    pub const fn change(&self) -> Option<Ratio> {
        self.change
    }

    /// Whether the cloth is narrower than asked, so that its length is one of equal area: an estimate, lay it out.
    #[must_use]
    pub const fn is_by_area(&self) -> bool {
        self.narrower.is_some()
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
        washing::to_buy(length, self.change.unwrap_or(Ratio::ZERO))
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
        let left = washing::left(had, self.change.unwrap_or(Ratio::ZERO))?;
        match self.narrower {
            Some((wants, usable)) => yardage::same_area(left, usable, wants),
            None => Ok(left),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reading::scale::Scale;
    use proptest::prelude::*;

    fn change(before: i32, after: i32) -> Option<Figure> {
        washing::change(Length::from_steps(before), Length::from_steps(after), Scale::default()).ok()
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
        ) {
            let confidence = Confidence::default();
            let change = change(marks.0, marks.0 / 100 * marks.1).filter(|_| washed);
            let mut amount = Amount::new(change, confidence).unwrap();
            if wide {
                let (wants, has) = (Length::from_steps(widths.0), Length::from_steps(widths.1));
                amount = amount.of_width(wants, has, change, confidence).unwrap();
            }
            let (need, had) = (Length::from_steps(need), Length::from_steps(had));
            let (buy, counts_as) = (amount.to_buy(need).unwrap(), amount.counts_as(had).unwrap());
            prop_assert!(buy >= need && counts_as <= had);
            prop_assert_eq!(had >= buy, counts_as >= need);
            prop_assert!(amount.counts_as(buy).unwrap() >= need);
        }
    }

    /// 2 yd at 10 % shrinkage take 2.22 yd and not 2.20: need / (1 − s), worked out by hand.
    #[test]
    fn a_shrinkage_is_divided_by_what_is_left() {
        let exact = Figure::exact(Ratio::new(-10, 100).unwrap());
        let amount = Amount::new(Some(exact), Confidence::default()).unwrap();
        assert_eq!(amount.to_buy(Length::from_inch_64ths(72 * 64)), Ok(Length::from_inch_64ths(80 * 64)));
        assert_eq!(amount.counts_as(Length::from_inch_64ths(80 * 64)), Ok(Length::from_inch_64ths(72 * 64)));
    }

    #[test]
    fn a_cloth_that_grows_in_the_wash_is_bought_no_shorter() {
        let amount = Amount::new(change(800_000, 816_000), Confidence::default()).unwrap();
        assert_eq!(amount.to_buy(Length::from_mm(2000)), Ok(Length::from_mm(2000)));
        assert_eq!(amount.counts_as(Length::from_mm(2000)), Ok(Length::from_mm(2000)));
    }

    #[test]
    fn nothing_on_hand_counts_as_nothing_and_no_width_is_refused() {
        let amount = Amount::new(None, Confidence::default()).unwrap();
        assert_eq!((amount.counts_as(Length::ZERO), amount.change()), (Ok(Length::ZERO), None));
        assert_eq!(amount.counts_as(Length::from_steps(-1)), Err(MakingError::Cloth));
        let no_width = amount.of_width(Length::from_mm(1400), Length::ZERO, None, Confidence::default());
        assert_eq!(no_width, Err(MakingError::Width));
    }
}
