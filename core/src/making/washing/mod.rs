//! Washing: how much a cloth changes, and what that makes of a length to buy.

mod fibres;
mod stands;
mod usual;

pub use fibres::{FIBRES, FibreShrinkage, Prewash, PrewashCloth};
pub use stands::Washing;
pub use usual::{LIMITS, USUAL, Usual, WashLimit};

use super::error::{MakingError, positive};
use super::scaled::{Round, scaled};
use crate::answer::Figure;
use crate::answer::confidence::Confidence;
use crate::answer::source::Source;
use crate::number::num;
use crate::number::ratio::Ratio;
use crate::reading::length::Length;
use crate::reading::scale::Scale;
use crate::reading::slip::units_of;
use crate::statistics::uncertainty::{self, Variance};

/// The change between marks before and after washing, (after − before) / before: negative for shrinkage. Its
/// uncertainty is that of the scale alone, both lengths read on it; formula as in ISO 5077.
///
/// # Errors
///
/// [`MakingError::BeforeWashing`] unless the marks are apart, [`MakingError::AfterWashing`] unless they are between half
/// and one and a half times as far apart afterwards: beyond that a unit was mistaken, or the cloth is felted.
///
/// ```
/// use tenter_core::{Length, Scale, making::washing::change};
///
/// // A 20 cm square that comes out at 17 cm.
/// let shrunk = change(Length::from_mm(200), Length::from_mm(170), Scale::default()).unwrap();
/// assert_eq!(shrunk.ratio.percent(1).to_string(), "-15.0");
/// assert!((shrunk.u - 0.19).abs() < 0.01);
/// ```
pub fn change(before: Length, after: Length, scale: Scale) -> Result<Figure, MakingError> {
    let (first, last) = (positive(before, MakingError::BeforeWashing)?, positive(after, MakingError::AfterWashing)?);
    if 2 * last < first || 2 * last > 3 * first {
        return Err(MakingError::AfterWashing);
    }
    let ratio = Ratio::new(last - first, first).ok_or(MakingError::BeforeWashing)?;
    let reading = Variance::certain(scale.variance());
    let (first, last) = (num::float(first), num::float(last));
    let both = uncertainty::sum(&[reading.times(100.0 / first), reading.times(100.0 * last / (first * first))]);
    Ok(Figure { u: both.u(), dof: both.dof, ..Figure::exact(ratio) })
}

/// A change in the wash beyond this many percent either way is doubted: the most that [`FIBRES`] lists. The tool's
/// own limit.
pub const USUAL_CHANGE: u8 = 20;

/// Whether a change in the wash is beyond [`USUAL_CHANGE`], so that the lengths should be read again.
///
/// ```
/// use tenter_core::{Length, Scale, making::washing::{change, is_doubtful}};
///
/// let to = |after| change(Length::from_mm(500), Length::from_mm(after), Scale::default()).unwrap();
/// assert!(is_doubtful(to(380)) && is_doubtful(to(620)));
/// assert!(!is_doubtful(to(400)) && !is_doubtful(to(485)));
/// ```
#[must_use]
pub fn is_doubtful(change: Figure) -> bool {
    Ratio::new(USUAL_CHANGE.into(), 100).is_some_and(|usual| change.ratio.abs() > usual)
}

/// The length after a wash that was probably meant, where [`change`] refuses it: the change of unit that leaves the
/// least change. `None` where no unit explains it.
///
/// ```
/// use tenter_core::{Length, making::washing::likely_after};
///
/// // 50 cm to 485 cm: 48.5 cm was meant.
/// assert_eq!(likely_after(Length::from_mm(500), Length::from_mm(4850)), Some(Length::from_mm(485)));
/// ```
#[must_use]
pub fn likely_after(before: Length, after: Length) -> Option<Length> {
    let usual = |likely: &Length| change(before, *likely, Scale::default()).is_ok_and(|change| !is_doubtful(change));
    let apart = |likely: &Length| likely.steps().abs_diff(before.steps());
    units_of(after).filter(usual).min_by_key(apart)
}

/// The change to count on when buying: as bad as it may be at the confidence, down to the next 0.1 %, and never above 0.
/// Cloth that came out longer once is not bought shorter.
///
/// ```
/// use tenter_core::{Confidence, Figure, Ratio, making::washing::counted_on};
///
/// let shrunk = Figure { u: 0.5, ..Figure::exact(Ratio::new(-5, 100).unwrap()) };
/// assert_eq!(counted_on(shrunk, Confidence::default()).percent(1).to_string(), "-5.9");
/// assert_eq!(counted_on(Figure::exact(shrunk.ratio), Confidence::default()), shrunk.ratio);
/// ```
#[must_use]
pub fn counted_on(change: Figure, confidence: Confidence) -> Ratio {
    let worst =
        if change.u == 0.0 { None } else { Ratio::new(num::round(10.0 * change.at_least(confidence) - 0.5), 1000) };
    worst.unwrap_or(change.ratio).min(change.ratio).min(Ratio::ZERO)
}

/// The length to buy so that `need` is left after washing: need / (1 + change), up to the next step, which for a shrinkage
/// s is need / (1 − s) and not need × (1 + s).
///
/// # Errors
///
/// [`MakingError::Cloth`] unless the need is above zero, [`MakingError::AfterWashing`] for a change of −100 % and below,
/// [`MakingError::TooLarge`].
///
/// ```
/// use tenter_core::{Length, Ratio, Unit, making::washing::to_buy};
///
/// let need = Length::parse("2yd", Unit::Mm).unwrap();
/// let buy = to_buy(need, Ratio::new(-10, 100).unwrap()).unwrap();
/// assert_eq!(buy.show(Unit::Inch).to_string(), "80 in"); // 2.22 yd, not 2.20.
/// ```
pub fn to_buy(need: Length, change: Ratio) -> Result<Length, MakingError> {
    positive(need, MakingError::Cloth)?;
    let left = left_of(change)?;
    scaled(need, change.denominator(), left, Round::Up).ok_or(MakingError::TooLarge)
}

/// What is left of a length after washing, down to the last whole step.
///
/// # Errors
///
/// [`MakingError::Cloth`] unless the length is above zero, [`MakingError::AfterWashing`] for a change of −100 % and below,
/// [`MakingError::TooLarge`].
///
/// ```
/// use tenter_core::{Length, Ratio, making::washing::left};
///
/// // 60 in of cotton that loses 10 %.
/// let left = left(Length::from_inch_64ths(60 * 64), Ratio::new(-10, 100).unwrap()).unwrap();
/// assert_eq!(left, Length::from_inch_64ths(54 * 64));
/// ```
pub fn left(bought: Length, change: Ratio) -> Result<Length, MakingError> {
    positive(bought, MakingError::Cloth)?;
    scaled(bought, left_of(change)?, change.denominator(), Round::Down).ok_or(MakingError::TooLarge)
}

/// The numerator of 1 + change, over the same denominator.
pub(crate) fn left_of(change: Ratio) -> Result<i64, MakingError> {
    let left = change.numerator().checked_add(change.denominator()).ok_or(MakingError::TooLarge)?;
    if left > 0 { Ok(left) } else { Err(MakingError::AfterWashing) }
}

/// What to make of a change in the wash.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Remedy {
    /// Under 1 % either way: leave the pattern as it is.
    Ignore,
    /// From 1 % on, shorter or longer: wash the cloth before you cut it.
    WashFirst,
    /// A loss of 10 % or more: the cloth is not finished; wash it more than once before cutting.
    WashTwice,
}

/// The inside leg seam on which a loss is shown: 75 cm, or 30 in. The tool's own example.
pub const INSEAM: [Length; 2] = [Length::from_mm(750), Length::from_inch_64ths(30 * 64)];

impl Remedy {
    /// Where its threshold comes from. 1 % is the least that guides tell of any cloth, and 7 mm on a leg; factories
    /// leave up to 3 % alone, which is 2 cm.
    #[must_use]
    pub const fn source(self) -> Source {
        match self {
            Self::Ignore => Source::Own,
            Self::WashFirst => Source::Published("R. M. Tondl, Sewing with Knits, Nebraska Extension NF00-415, 2000"),
            Self::WashTwice => Source::CommonPractice,
        }
    }

    /// The remedy for a change, compared exactly.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::washing::Remedy};
    ///
    /// let of = |percent| Remedy::of(Ratio::new(percent, 100).unwrap());
    /// assert_eq!((of(0), of(-3), of(2)), (Remedy::Ignore, Remedy::WashFirst, Remedy::WashFirst));
    /// assert_eq!(of(-10), Remedy::WashTwice);
    /// ```
    #[must_use]
    pub fn of(change: Ratio) -> Self {
        let percent = |percent| Ratio::new(percent, 100).unwrap_or(Ratio::ZERO);
        if change <= percent(-10) {
            Self::WashTwice
        } else if change.abs() >= percent(1) {
            Self::WashFirst
        } else {
            Self::Ignore
        }
    }
}

/// By how much a change shortens a length, or lengthens it, to the nearest step; below zero for a loss. `None` beyond
/// 1.3 km.
///
/// ```
/// use tenter_core::{Length, Ratio, making::washing::of_length};
///
/// // 3 % is more than two centimetres on an inside leg of 75 cm.
/// let change = of_length(Length::from_mm(750), Ratio::new(-3, 100).unwrap());
/// assert_eq!(change, Some(Length::from_steps(-36_000))); // 22.5 mm.
/// ```
#[must_use]
pub fn of_length(length: Length, change: Ratio) -> Option<Length> {
    scaled(length, change.numerator(), change.denominator(), Round::Nearest)
}
