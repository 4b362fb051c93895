//! How deep a casing is.

use super::Span;
use crate::answer::source::Source;
use crate::making::error::{MakingError, positive};
use crate::making::printed::Printed;
use crate::reading::length::Length;

/// What is drawn through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum DrawnThrough {
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
    pub drawn: DrawnThrough,
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

const fn casing(drawn: DrawnThrough, least: Length, most: Length, turn: Option<Length>, source: Source) -> Casing {
    Casing { drawn, extra: Span { least, most }, turn, source }
}

const QUARTER: Length = Length::from_inch_64ths(16);
const TWO_MM: Length = Length::from_mm(2);
const EIGHTH: Length = Length::from_inch_64ths(8);
const HALF: Length = Length::from_inch_64ths(32);

/// Every rule that was found, and what everybody does.
pub const CASINGS: &[Casing] = &[
    casing(DrawnThrough::Elastic, Length::ZERO, Length::ZERO, Some(QUARTER), Source::CommonPractice),
    casing(DrawnThrough::Elastic, TWO_MM, TWO_MM, Some(Length::from_mm(5)), Source::CommonPractice),
    casing(DrawnThrough::Elastic, EIGHTH, EIGHTH, None, Source::CommonPractice),
    casing(
        DrawnThrough::Elastic,
        QUARTER,
        QUARTER,
        None,
        Source::Published("Sewing guideline 12.150, Easy Waistband Casings: Elastic and Drawstrings"),
    ),
    casing(DrawnThrough::Elastic, QUARTER, QUARTER, Some(QUARTER), Source::CommonPractice),
    casing(DrawnThrough::Elastic, QUARTER, HALF, None, Source::CommonPractice),
    casing(DrawnThrough::Cord, QUARTER, QUARTER, None, Source::CommonPractice),
];

/// The one casing to make: a tunnel in which what is drawn moves but does not twist, and what is pressed under first.
///
/// ```
/// use tenter_core::Length;
/// use tenter_core::making::elastic::{DrawnThrough, tunnel};
///
/// // 20 mm of elastic in 23 mm, 6 mm pressed under before.
/// let casing = tunnel(DrawnThrough::Elastic, Length::from_mm(20), false, false).unwrap();
/// assert_eq!((casing.depth, casing.allowance), (Length::from_mm(23), Length::from_mm(29)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Tunnel {
    /// The finished depth, from the fold to the stitching.
    pub depth: Length,
    /// What is pressed under first.
    pub turn: Length,
    /// What to leave beyond the fold: both together.
    pub allowance: Length,
    /// Where it comes from.
    pub source: Source,
}

/// Beyond the width: 3 mm (1/8 in), 6 mm (1/4 in) in thick cloth and for a cord, so that it is never too tight.
const ROOM: Printed = Printed::new(3, 1);
const MORE_ROOM: Printed = Printed::new(6, 2);
const TURN: Printed = Printed::new(6, 2);

/// The casing for elastic or cord of a width: its width and 3 mm, 6 mm in thick cloth or for a cord, and 6 mm to turn under.
/// For a reader in inches 1/8 and 1/4 in.
///
/// # Errors
///
/// [`MakingError::Width`] unless the width is above zero, [`MakingError::TooLarge`].
///
/// ```
/// use tenter_core::Length;
/// use tenter_core::making::elastic::{DrawnThrough, tunnel};
///
/// // 1 in of elastic: 1/4 in pressed under, then 1 1/8 in.
/// let casing = tunnel(DrawnThrough::Elastic, Length::INCH, false, true).unwrap();
/// assert_eq!((casing.turn, casing.depth), (Length::from_inch_64ths(16), Length::from_inch_64ths(72)));
/// ```
pub fn tunnel(drawn: DrawnThrough, width: Length, thick: bool, in_inches: bool) -> Result<Tunnel, MakingError> {
    const SOURCE: Source = Source::Derived(
        "between 2 mm (school course) and 1/4 in (guideline 12.150, for what moves but does not twist): 1/8 in, 1/4 in \
         where it is thick or a cord",
    );
    positive(width, MakingError::Width)?;
    let room = if thick || drawn == DrawnThrough::Cord { MORE_ROOM } else { ROOM };
    let depth = plus(width, room.seen(in_inches))?;
    let turn = TURN.seen(in_inches);
    Ok(Tunnel { depth, turn, allowance: plus(depth, turn)?, source: SOURCE })
}
