//! The one length of elastic to cut, by its kind and its place.

use super::{Edging, Kind};
use crate::answer::source::Source;
use crate::making::error::{MakingError, positive};
use crate::making::printed::Printed;
use crate::making::scaled::{Round, scaled};
use crate::reading::length::Length;

/// A row: for which kind and place, what share of the measure the closed loop has, and what closes it.
struct Row {
    kind: Option<Kind>,
    place: Edging,
    share: (u8, u8),
    less: Length,
    lap: Lap,
    source: Source,
}

/// How a loop is closed.
///
/// ```
/// use tenter_core::making::{elastic::Lap, printed::Printed};
///
/// assert_eq!(Lap::Seamed(Printed::new(12, 4)).length(), Printed::new(12, 4));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Lap {
    /// So much in all is laid over itself and stitched; a wide elastic is butted on a tape instead, without a lap.
    Lapped(Printed),
    /// A band of cloth is seamed: so much in all goes into the seam.
    Seamed(Printed),
}

impl Lap {
    /// How much of the cut length it takes.
    #[must_use]
    pub const fn length(self) -> Printed {
        match self {
            Self::Lapped(length) | Self::Seamed(length) => length,
        }
    }
}

/// Elastic to cut. It is tacked and tried on before it is sewn.
///
/// ```
/// use tenter_core::Length;
/// use tenter_core::making::elastic::{Edging, Kind, Lap, recommended};
///
/// let wrist = recommended(Kind::Soft, Edging::Wrist, Length::from_mm(170), false).unwrap();
/// assert!(matches!(wrist.lap, Lap::Lapped(_)) && wrist.cut > wrist.closed);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Recommended {
    /// Where it goes.
    pub place: Edging,
    /// The loop when it is closed.
    pub closed: Length,
    /// What closes it.
    pub lap: Lap,
    /// What to cut: both together.
    pub cut: Length,
    /// Where it comes from.
    pub source: Source,
}

const NOTHING: Length = Length::ZERO;
const HALF_INCH: Length = Length::from_inch_64ths(32);
const INCH: Length = Length::from_inch_64ths(64);
const CASED: Lap = Lap::Lapped(Printed::new(25, 8));
const NARROW: Lap = Lap::Lapped(Printed::new(20, 6));
const SWIM: Lap = Lap::Lapped(Printed::new(12, 4));
const BAND: Lap = Lap::Seamed(Printed::new(12, 4));

const fn row(kind: Option<Kind>, place: Edging, share: (u8, u8), less: Length, lap: Lap) -> Row {
    Row { kind, place, share, less, lap, source: Source::CommonPractice }
}

/// Each in the middle of the range that is practised; the rows of a kind stand before those of any.
const ROWS: &[Row] = &[
    row(Some(Kind::Ribbing), Edging::Opening, (3, 4), NOTHING, BAND),
    row(Some(Kind::Ribbing), Edging::Wrist, (3, 4), NOTHING, BAND),
    row(Some(Kind::Ribbing), Edging::Leg, (3, 4), NOTHING, BAND),
    row(Some(Kind::Ribbing), Edging::Edge, (85, 100), NOTHING, BAND),
    row(Some(Kind::Ribbing), Edging::Waist, (85, 100), NOTHING, BAND),
    row(Some(Kind::Ribbing), Edging::SnugWaist, (80, 100), NOTHING, BAND),
    row(Some(Kind::Firm), Edging::Waist, (1, 1), HALF_INCH, CASED),
    row(Some(Kind::Firm), Edging::SnugWaist, (1, 1), INCH, CASED),
    row(None, Edging::Waist, (92, 100), NOTHING, CASED),
    row(None, Edging::SnugWaist, (90, 100), NOTHING, CASED),
    row(None, Edging::Edge, (92, 100), NOTHING, NARROW),
    row(None, Edging::Opening, (92, 100), NOTHING, NARROW),
    row(None, Edging::Wrist, (1, 1), HALF_INCH, NARROW),
    row(None, Edging::Leg, (87, 100), NOTHING, NARROW),
    row(None, Edging::SwimLegFront, (1, 1), NOTHING, SWIM),
    row(None, Edging::SwimLegBack, (3, 4), NOTHING, SWIM),
];

/// The one recommendation for a kind and a place; the rules that it stands among are [`rules`](super::rules). Ribbing has
/// none for the leg of a swimsuit.
///
/// # Errors
///
/// [`MakingError::Body`] unless the measure is above zero, [`MakingError::RuleTakesAll`] where nothing is left or where there
/// is no rule, [`MakingError::TooLarge`].
///
/// ```
/// use tenter_core::Length;
/// use tenter_core::making::elastic::{Edging, Kind, recommended};
///
/// // A neck of 40 cm: a rib band of 30 cm, and 12 mm for its seam.
/// let neck = recommended(Kind::Ribbing, Edging::Opening, Length::from_mm(400), false).unwrap();
/// assert_eq!((neck.closed, neck.cut), (Length::from_mm(300), Length::from_mm(312)));
/// ```
pub fn recommended(kind: Kind, place: Edging, measure: Length, in_inches: bool) -> Result<Recommended, MakingError> {
    positive(measure, MakingError::Body)?;
    let found = ROWS.iter().find(|row| row.place == place && row.kind.map_or(kind != Kind::Ribbing, |own| own == kind));
    let row = found.ok_or(MakingError::RuleTakesAll)?;
    let (num, den) = row.share;
    let share = scaled(measure, num.into(), den.into(), Round::Nearest).ok_or(MakingError::TooLarge)?;
    let closed = Length::from_steps(share.steps().saturating_sub(row.less.steps()));
    positive(closed, MakingError::RuleTakesAll)?;
    let lap = row.lap.length().seen(in_inches);
    let cut = closed.steps().checked_add(lap.steps()).map(Length::from_steps).ok_or(MakingError::TooLarge)?;
    Ok(Recommended { place, closed, lap: row.lap, cut, source: row.source })
}

/// Whether there is a recommendation for a kind and a place.
///
/// ```
/// use tenter_core::making::elastic::{Edging, Kind, is_recommended};
///
/// assert!(!is_recommended(Kind::Ribbing, Edging::SwimLegBack));
/// ```
#[must_use]
pub fn is_recommended(kind: Kind, place: Edging) -> bool {
    ROWS.iter().any(|row| row.place == place && row.kind.map_or(kind != Kind::Ribbing, |own| own == kind))
}
