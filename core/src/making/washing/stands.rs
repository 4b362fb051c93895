//! How a cloth stands to its first wash.

use super::{Usual, counted_on, left};
use crate::answer::Figure;
use crate::answer::confidence::Confidence;
use crate::making::care::{Care, Described};
use crate::making::error::MakingError;
use crate::number::ratio::Ratio;
use crate::reading::length::Length;
use crate::reading::pull_test::Grain;

/// How a cloth stands to its first wash along one grain, and with it all that the wash takes: off a length on hand, off a
/// length that is needed, and off marks. It is decided here and nowhere else, so that nothing is taken off twice.
///
/// ```
/// use tenter_core::making::care::Described;
/// use tenter_core::making::washing::{Washing, change};
/// use tenter_core::{Confidence, Grain, Length, Scale};
///
/// let cloth = Described { fibre: "cotton", ..Described::default() };
/// let six = change(Length::from_mm(500), Length::from_mm(470), Scale::default()).unwrap(); // −6 %.
/// let before = Washing::of(&cloth, false, Some(six), Grain::Lengthwise);
/// assert_eq!(before.leaves(Length::from_mm(2000)), Ok(Length::from_mm(1880)));
/// assert!(before.counted(Confidence::default()) < six.ratio, "when buying, as bad as it may be");
/// // Once it is washed nothing comes off any more.
/// let after = Washing::of(&cloth, true, Some(six), Grain::Lengthwise);
/// assert_eq!(after.leaves(Length::from_mm(1880)), Ok(Length::from_mm(1880)));
/// assert_eq!((after.counted(Confidence::default()).numerator(), after.to_come()), (0, None));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Washing {
    /// It was washed: what it loses is gone.
    Done,
    /// It will be washed, and marks were measured before and after.
    Measured(Figure),
    /// It will be washed, and nobody measured: what such cloth usually loses.
    Usual(Usual),
    /// It is not washed before it is cut: its finish forbids it.
    NotWetted,
}

impl Washing {
    /// How it stands: washed already, else by the marks along the grain, else by what it is made of.
    #[must_use]
    pub fn of(cloth: &Described<'_>, washed: bool, marks: Option<Figure>, grain: Grain) -> Self {
        match marks {
            _ if washed => Self::Done,
            Some(change) => Self::Measured(change),
            None if !Care::of(cloth).before.rule.wets() => Self::NotWetted,
            None => Self::Usual(Usual::of(cloth, grain)),
        }
    }

    /// Off the need: the change to count on when buying or cutting, at most 0, as bad as it may be at the confidence.
    #[must_use]
    pub fn counted(&self, confidence: Confidence) -> Ratio {
        match self {
            Self::Done | Self::NotWetted => Ratio::ZERO,
            Self::Measured(change) => counted_on(*change, confidence),
            Self::Usual(usual) => usual.change(),
        }
    }

    /// Off the length on hand: what a wash leaves of it, by what was measured. Where nothing was measured nothing is
    /// known, and the length stays until somebody lays a tape along it.
    ///
    /// # Errors
    ///
    /// [`MakingError::Cloth`] for a length below zero, [`MakingError::AfterWashing`], [`MakingError::TooLarge`].
    pub fn leaves(&self, on_hand: Length) -> Result<Length, MakingError> {
        match self {
            Self::Measured(change) if on_hand != Length::ZERO => left(on_hand, change.ratio),
            _ => Ok(on_hand),
        }
    }

    /// Off the marks: the change that is still to come and was measured, with its uncertainty.
    #[must_use]
    pub const fn to_come(&self) -> Option<Figure> {
        match self {
            Self::Measured(change) => Some(*change),
            _ => None,
        }
    }

    /// The allowance, where nothing was measured.
    #[must_use]
    pub const fn allowance(&self) -> Option<Usual> {
        match self {
            Self::Usual(usual) => Some(*usual),
            _ => None,
        }
    }

    /// Whether what the wash takes is known: measured, behind it, or nothing.
    #[must_use]
    pub const fn is_known(&self) -> bool {
        !matches!(self, Self::Usual(_))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::making::care::Finish;
    use crate::making::washing::change;
    use crate::reading::scale::Scale;

    #[test]
    fn a_waxed_cloth_loses_nothing_and_marks_outweigh_what_is_usual() {
        let waxed = Described { finish: Some(Finish::Waxed), fibre: "cotton", ..Described::default() };
        let along = |marks| Washing::of(&waxed, false, marks, Grain::Lengthwise);
        assert_eq!(along(None), Washing::NotWetted);
        let marks = change(Length::from_mm(500), Length::from_mm(490), Scale::default()).ok();
        assert_eq!(along(marks).to_come(), marks);
    }

    #[test]
    fn what_nobody_measured_leaves_the_length_on_hand_as_it_is() {
        let usual = Washing::of(&Described::default(), false, None, Grain::Lengthwise);
        assert_eq!(usual.leaves(Length::from_mm(2000)), Ok(Length::from_mm(2000)));
        assert!(!usual.is_known() && usual.counted(Confidence::default()) < Ratio::ZERO);
        assert_eq!(usual.leaves(Length::ZERO), Ok(Length::ZERO));
    }
}
