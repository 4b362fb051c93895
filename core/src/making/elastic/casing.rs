//! How deep a casing is.

use super::Span;
use crate::answer::source::Source;
use crate::making::error::{MakingError, positive};
use crate::reading::length::Length;

/// What is drawn through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Drawn {
    /// Elastic of a width.
    Elastic,
    /// A cord of a diameter.
    Cord,
}

/// A rule for the depth of the finished tunnel beyond the width of what runs in it.
///
/// ```
/// use tenter_core::making::elastic::CASINGS;
///
/// assert!(CASINGS.iter().all(|casing| casing.extra.least <= casing.extra.most));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Casing {
    /// What is drawn through.
    pub drawn: Drawn,
    /// What the tunnel has beyond the width.
    pub extra: Span,
    /// What is pressed under first, where the source says so.
    pub turn: Option<Length>,
    /// Where it comes from.
    pub source: Source,
}

impl Casing {
    /// The depth of the tunnel for elastic or cord of a width.
    ///
    /// # Errors
    ///
    /// [`MakingError::Width`] unless the width is above zero, [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::{Length, making::elastic::CASINGS};
    ///
    /// let inch = Length::from_inch_64ths(64);
    /// assert!(CASINGS.iter().all(|casing| casing.depth(inch).unwrap().least >= inch));
    /// ```
    pub fn depth(&self, width: Length) -> Result<Span, MakingError> {
        let and = |extra| plus(width, extra);
        positive(width, MakingError::Width)?;
        Ok(Span { least: and(self.extra.least)?, most: and(self.extra.most)? })
    }

    /// What to allow at the edge: the tunnel and what is pressed under.
    ///
    /// # Errors
    ///
    /// [`MakingError::Width`] unless the width is above zero, [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::{Length, making::{elastic::CASINGS, source::Source}};
    ///
    /// // Press 1/4 in under, then about 1 in for a 1 in elastic.
    /// let usual = CASINGS.iter().find(|casing| casing.source == Source::CommonPractice).unwrap();
    /// assert_eq!(usual.allowance(Length::from_inch_64ths(64)).unwrap().least, Length::from_inch_64ths(80));
    /// ```
    pub fn allowance(&self, width: Length) -> Result<Span, MakingError> {
        let turn = self.turn.unwrap_or(Length::ZERO);
        let depth = self.depth(width)?;
        Ok(Span { least: plus(depth.least, turn)?, most: plus(depth.most, turn)? })
    }
}

fn plus(one: Length, other: Length) -> Result<Length, MakingError> {
    one.steps().checked_add(other.steps()).map(Length::from_steps).ok_or(MakingError::TooLarge)
}

const fn casing(drawn: Drawn, least: Length, most: Length, turn: Option<Length>, source: Source) -> Casing {
    Casing { drawn, extra: Span { least, most }, turn, source }
}

const QUARTER: Length = Length::from_inch_64ths(16);
const TWO_MM: Length = Length::from_mm(2);
const EIGHTH: Length = Length::from_inch_64ths(8);
const HALF: Length = Length::from_inch_64ths(32);

/// Every rule that was found, and what everybody does.
pub const CASINGS: &[Casing] = &[
    casing(Drawn::Elastic, Length::ZERO, Length::ZERO, Some(QUARTER), Source::CommonPractice),
    casing(Drawn::Elastic, TWO_MM, TWO_MM, Some(Length::from_mm(5)), Source::CommonPractice),
    casing(Drawn::Elastic, EIGHTH, EIGHTH, None, Source::CommonPractice),
    casing(
        Drawn::Elastic,
        QUARTER,
        QUARTER,
        None,
        Source::Published("Sewing guideline 12.150, Easy Waistband Casings: Elastic and Drawstrings"),
    ),
    casing(Drawn::Elastic, QUARTER, QUARTER, Some(QUARTER), Source::CommonPractice),
    casing(Drawn::Elastic, QUARTER, HALF, None, Source::CommonPractice),
    casing(Drawn::Cord, QUARTER, QUARTER, None, Source::CommonPractice),
];
