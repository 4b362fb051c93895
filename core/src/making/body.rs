//! What a body and a garment ask of a cloth.

use super::error::{MakingError, positive};
use super::sizing::Stretch;
use crate::answer::rebound::RECOVERY_FROM_PERCENT;
use crate::answer::source::Source;
use crate::answer::suits::Suit;
use crate::making::garment::GarmentKind;
use crate::number::ratio::Ratio;
use crate::reading::length::Length;
use crate::reading::limit::{Demand, Limit, Range};
use crate::reading::pull_test::Grain;

/// Along which line of the body a movement extends the skin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Direction {
    /// Along the limb or the back.
    Along,
    /// Around it, or across the back.
    Around,
}

/// How far a movement extends the skin.
///
/// ```
/// use tenter_core::making::body::MOVEMENTS;
///
/// let knee = MOVEMENTS.iter().find(|row| row.name == "knee bend").unwrap();
/// assert_eq!(knee.most, 45_000);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Movement {
    /// The movement, or the place where no movement is named.
    pub name: &'static str,
    /// Along which line; none where the source does not say.
    pub line: Option<Direction>,
    /// The least extension, in thousandths of a percent.
    pub least: u32,
    /// The most extension, in thousandths of a percent.
    pub most: u32,
    /// Where it comes from.
    pub source: Source,
}

impl Movement {
    /// The stretch that cloth needs for the most of it in a garment with ease: (1 + extension) · body / garment − 1, none
    /// where the ease suffices.
    ///
    /// # Errors
    ///
    /// [`MakingError::Body`] or [`MakingError::Garment`] unless both are above zero, [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::{Length, making::body::MOVEMENTS};
    ///
    /// let back = MOVEMENTS.iter().find(|row| row.name == "arms forward, back width").unwrap();
    /// let [body, garment] = [420, 480].map(Length::from_mm);
    /// assert_eq!(back.needs(body, body).unwrap().ratio().percent(0).to_string(), "26");
    /// assert_eq!(back.needs(body, garment).unwrap().ratio().percent(2).to_string(), "10.25");
    /// ```
    pub fn needs(&self, body: Length, garment: Length) -> Result<Stretch, MakingError> {
        let (body, garment) = (positive(body, MakingError::Body)?, positive(garment, MakingError::Garment)?);
        let reached = (100_000 + i64::from(self.most)) * body;
        let held = 100_000 * garment;
        Ratio::new((reached - held).max(0), held).and_then(Stretch::new).ok_or(MakingError::TooLarge)
    }
}

const fn movement(name: &'static str, line: Option<Direction>, least: u32, most: u32, source: Source) -> Movement {
    Movement { name, line, least: 1000 * least, most: 1000 * most, source }
}

const WEEKLY: Source =
    Source::Published("In the Stretch, article in a weekly news magazine, 16 Oct 1964, reporting a fibre maker");
const SIZING: Source = Source::Published(
    "Gupta and Zakaria (eds), Anthropometry, Apparel Sizing and Design, 2014, p. 186: chest 112 to 120 cm",
);
const KIRK: Source = Source::Memory("W. Kirk and S. M. Ibrahim, Textile Research Journal 36 (1966) 37-47");

/// Every row that was found.
pub const MOVEMENTS: &[Movement] = &[
    movement("knee bend", None, 45, 45, WEEKLY),
    movement("shoulder shrug", None, 16, 16, WEEKLY),
    movement("arms forward, back width", Some(Direction::Around), 26, 26, SIZING),
    movement("arms forward, arm reach", Some(Direction::Along), 7, 7, SIZING),
    movement("back, across", Some(Direction::Around), 13, 16, KIRK),
    movement("elbow, lengthwise", Some(Direction::Along), 35, 40, KIRK),
    movement("elbow, around", Some(Direction::Around), 15, 22, KIRK),
    movement("knee, lengthwise", Some(Direction::Along), 35, 45, KIRK),
    movement("knee, around", Some(Direction::Around), 12, 14, KIRK),
    movement("seat", None, 25, 30, KIRK),
];

/// What a garment that lies close asks of the way its cloth comes back.
///
/// ```
/// use tenter_core::making::body::CLOSE_FIT;
///
/// assert_eq!((CLOSE_FIT.recovery_at_least, CLOSE_FIT.rest_seconds), (80_000, 3600));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CloseFit {
    /// The most growth, in thousandths of a percent.
    pub growth_at_most: u32,
    /// Where that comes from.
    pub growth_source: Source,
    /// The least recovery, in thousandths of a percent, where the cloth stretches enough to tell.
    pub recovery_at_least: u32,
    /// Where that comes from.
    pub recovery_source: Source,
    /// When both are asked, in seconds after release.
    pub rest_seconds: u32,
}

/// What every garment that lies close asks, unless its pattern says otherwise. The growth is the most that
/// [`GrowthClass::Good`](crate::GrowthClass::Good) has; no published limit of growth was found.
pub const CLOSE_FIT: CloseFit = CloseFit {
    growth_at_most: 3_000,
    growth_source: Source::Own,
    recovery_at_least: 80_000,
    recovery_source: Source::Published(
        "Japan Textile Inspection Association, JIS L 1096 B-1: recovery at least 80 % one hour after release",
    ),
    rest_seconds: 3600,
};

/// A demand with what a garment that lies close asks besides. Where the demand asks for growth or for recovery it stays as
/// it is. Recovery is asked where at least [`RECOVERY_FROM_PERCENT`] of stretch is.
///
/// ```
/// use tenter_core::making::body::close_fit;
/// use tenter_core::{Demand, Grain, Range, Unit};
///
/// let asked = |text| close_fit(Demand::for_grain(Grain::Crosswise, Range::parse(text, Unit::Mm).unwrap()));
/// assert_eq!(asked("40%").recovery_at_least.unwrap().to_string(), "80 %");
/// assert_eq!(asked("5%").recovery_at_least, None);
/// assert_eq!(asked("5%").growth_at_most.unwrap().to_string(), "3 %");
/// ```
#[must_use]
pub fn close_fit(demand: Demand) -> Demand {
    if demand.growth_at_most.is_some() || demand.recovery_at_least.is_some() {
        return demand;
    }
    let from = Ratio::new(RECOVERY_FROM_PERCENT, 100);
    let stretches = [demand.crosswise, demand.lengthwise, demand.bias]
        .iter()
        .any(|range| range.at_least.zip(from).is_some_and(|(least, from)| least.ratio() >= from));
    let limit = |milli| Limit::milli_percent(milli).ok();
    Demand {
        growth_at_most: limit(CLOSE_FIT.growth_at_most),
        recovery_at_least: limit(CLOSE_FIT.recovery_at_least).filter(|_| stretches),
        rest_seconds: CLOSE_FIT.rest_seconds,
        ..demand
    }
}

/// Whether a kind of garment lies close, so that cloth which comes back poorly bags in it (common practice, no source).
///
/// ```
/// use tenter_core::making::{body::lies_close, garment::GarmentKind};
///
/// assert!(lies_close(GarmentKind::Leggings) && !lies_close(GarmentKind::LinedCoat));
/// ```
#[must_use]
pub const fn lies_close(kind: GarmentKind) -> bool {
    matches!(kind, GarmentKind::Jeans | GarmentKind::Leggings | GarmentKind::Swimwear)
}

/// A demand from a garment, a movement or both, the grain that runs around the body being `around`, *lengthwise* or
/// *crosswise* (*bias*: both ask along it).
///
/// A garment's figure is asked around the body and its other figure along it. A movement is asked along the line it is given
/// with, [its own](Movement::line) where the source names one, as much as [`Movement::needs`] leaves after ease. Of two least figures the larger is
/// asked; a most that lies below it is dropped, since a body does not give way. A garment that lies close asks for growth
/// and recovery as well, as [`close_fit`] has it.
///
/// # Errors
///
/// [`MakingError::TooLarge`] for a need above 1000 %.
///
/// ```
/// use tenter_core::making::body::{Direction, demand};
/// use tenter_core::{Grain, Ratio, SUITS, making::sizing::Stretch};
///
/// let trousers = SUITS.iter().find(|row| row.garment == "fitted trousers in stretch woven").unwrap();
/// let knee = (Direction::Along, Stretch::new(Ratio::new(12, 100).unwrap()).unwrap());
/// let demand = demand(Some(trousers), Some(knee), Grain::Crosswise).unwrap();
/// assert_eq!(demand.crosswise.at_least.unwrap().to_string(), "20 %");
/// assert_eq!(demand.lengthwise.at_least.unwrap().to_string(), "12 %");
/// ```
pub fn demand(
    garment: Option<&Suit>,
    movement: Option<(Direction, Stretch)>,
    around: Grain,
) -> Result<Demand, MakingError> {
    let milli = |figure: u32| Limit::milli_percent(figure).map_err(|_| MakingError::TooLarge);
    let (mut round, mut along) = (Range::default(), Range::default());
    if let Some(suit) = garment {
        round.at_least = Some(milli(suit.at_least)?);
        round.at_most = suit.at_most.map(milli).transpose()?;
        along.at_least = suit.other_grain.filter(|figure| *figure > 0).map(milli).transpose()?;
    }
    if let Some((line, needed)) = movement {
        let needed = milli(milli_up(needed.ratio()).ok_or(MakingError::TooLarge)?)?;
        let side = match line {
            Direction::Along => &mut along,
            Direction::Around => &mut round,
        };
        side.at_least = larger(side.at_least, needed);
        side.at_most = side.at_most.filter(|most| most.ratio() >= needed.ratio());
    }
    let mut demand = Demand::default();
    match around {
        Grain::Crosswise => (demand.crosswise, demand.lengthwise) = (round, along),
        Grain::Lengthwise => (demand.lengthwise, demand.crosswise) = (round, along),
        Grain::Bias => {
            if let Some(least) = along.at_least {
                round.at_least = larger(round.at_least, least);
                round.at_most = round.at_most.filter(|most| most.ratio() >= least.ratio());
            }
            demand.bias = round;
        }
    }
    Ok(if garment.is_some_and(|suit| suit.close) { close_fit(demand) } else { demand })
}

/// The larger of two least figures; a need of nothing asks nothing.
fn larger(one: Option<Limit>, other: Limit) -> Option<Limit> {
    if other.ratio() <= Ratio::ZERO || one.is_some_and(|one| one.ratio() >= other.ratio()) { one } else { Some(other) }
}

/// A ratio in thousandths of a percent, up to the next.
fn milli_up(ratio: Ratio) -> Option<u32> {
    let near = ratio.percent(3).scaled();
    let below = Ratio::new(near, 100_000)? < ratio;
    u32::try_from(near.checked_add(below.into())?).ok()
}
