//! A drawcord: how long it is, and what is done for it in which order.

use super::casing::{DrawnThrough, Tunnel, tunnel};
use crate::answer::source::Source;
use crate::making::error::{MakingError, positive};
use crate::making::printed::Printed;
use crate::reading::length::Length;

/// How a cord is held when it is drawn in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Fastened {
    /// By a cord stop on each end.
    Stops,
    /// Tied in a bow.
    Tied,
}

/// A drawcord of an adult's garment. For a child's the [rules](super::super::caution::CORDS) say what may hang out, and whether
/// there may be one.
///
/// ```
/// use tenter_core::Length;
/// use tenter_core::making::elastic::{Drawcord, Fastened};
///
/// let hem = Drawcord::of(Length::from_mm(1100), Length::from_mm(4), Fastened::Stops, false).unwrap();
/// assert_eq!((hem.cut, hem.tunnel.depth), (Length::from_mm(1400), Length::from_mm(10)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Drawcord {
    /// What to cut: the edge laid open at its full width, and both ends.
    pub cut: Length,
    /// One end, outside its eyelet.
    pub end: Length,
    /// Its casing.
    pub tunnel: Tunnel,
    /// Where the ends come from.
    pub source: Source,
}

impl Drawcord {
    /// The cord for an edge, its own width being its diameter, or its breadth where it is flat.
    ///
    /// # Errors
    ///
    /// [`MakingError::Seam`] unless the edge is above zero, [`MakingError::Width`] unless the cord has a width,
    /// [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::Length;
    /// use tenter_core::making::elastic::{Drawcord, Fastened};
    ///
    /// let [edge, cord] = [36 * 64, 16].map(Length::from_inch_64ths);
    /// let waist = Drawcord::of(edge, cord, Fastened::Tied, true).unwrap();
    /// assert_eq!(waist.cut, Length::from_inch_64ths(56 * 64)); // 10 in at each end.
    /// ```
    pub fn of(edge: Length, width: Length, fastened: Fastened, in_inches: bool) -> Result<Self, MakingError> {
        positive(edge, MakingError::Seam)?;
        let end = match fastened {
            Fastened::Stops => Printed::new(150, 48),
            Fastened::Tied => Printed::new(250, 80),
        };
        let end = end.seen(in_inches);
        let both = end.steps().checked_mul(2).and_then(|ends| ends.checked_add(edge.steps()));
        let cut = both.map(Length::from_steps).ok_or(MakingError::TooLarge)?;
        Ok(Self {
            cut,
            end,
            tunnel: tunnel(DrawnThrough::Cord, width, false, in_inches)?,
            source: Source::CommonPractice,
        })
    }
}

/// What is done for a drawcord.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum CordTask {
    /// Interface the single layer where each eyelet comes.
    BackEyelets,
    /// Set the eyelets there before the casing is folded; the hole smaller than the barrel, and without splits.
    SetEyelets,
    /// Fold and stitch the casing.
    FoldCasing,
    /// Draw the cord in.
    DrawIn,
    /// Sew it fast at the middle of the back with a bar tack, so that it cannot be pulled out.
    BarTackAtBack,
    /// Put a stop on each end. Not on a child's: nothing may be fixed to a free end there.
    PutOnStops,
    /// Seal the ends, and knot each 10 to 16 mm (3/8 to 5/8 in) from its end. A child's cord has no knots.
    SealAndKnot,
    /// Seal the ends.
    Seal,
}

/// One thing to do for a drawcord.
///
/// ```
/// use tenter_core::making::elastic::{CordTask, Fastened, cord_tasks};
///
/// assert_eq!(cord_tasks(Fastened::Stops, false).next().unwrap().task, CordTask::BackEyelets);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct CordTaskLine {
    /// What to do.
    pub task: CordTask,
    /// Where it comes from.
    pub source: Source,
}

/// What is done for a drawcord, in the order of the work. On a child's garment nothing is fixed to the ends (16 CFR 1120, EN
/// 14682), and whether it may have a cord at all is asked first.
///
/// ```
/// use tenter_core::making::elastic::{CordTask, Fastened, cord_tasks};
///
/// assert!(!cord_tasks(Fastened::Stops, true).any(|line| line.task == CordTask::PutOnStops));
/// ```
pub fn cord_tasks(fastened: Fastened, for_child: bool) -> impl Iterator<Item = CordTaskLine> {
    const CASINGS: Source = Source::CommonPractice;
    const MANUAL: Source = Source::Published("US Army TM 10-8400-203-23: eyelets and drawcords");
    let ends = match fastened {
        _ if for_child => &[(CordTask::Seal, MANUAL)][..],
        Fastened::Stops => &[(CordTask::PutOnStops, Source::CommonPractice), (CordTask::SealAndKnot, MANUAL)],
        Fastened::Tied => &[(CordTask::SealAndKnot, MANUAL)],
    };
    let first = [
        (CordTask::BackEyelets, CASINGS),
        (CordTask::SetEyelets, MANUAL),
        (CordTask::FoldCasing, CASINGS),
        (CordTask::DrawIn, CASINGS),
        (CordTask::BarTackAtBack, MANUAL),
    ];
    first.into_iter().chain(ends.iter().copied()).map(|(task, source)| CordTaskLine { task, source })
}
