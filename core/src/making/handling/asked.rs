//! What a seam is asked.

use crate::making::garment::GarmentKind;
use crate::number::ratio::Ratio;
use crate::reading::pull_test::Grain;

/// How a seam lies on the grain of the pieces that it joins. In a knit the wales are lengthwise.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Runs {
    /// Along the warp or the wales: side, sleeve, panel, zip front, lower leg.
    #[default]
    Lengthwise,
    /// Along the weft or the courses: yoke, waist, hem, neckband, cuff.
    Crosswise,
    /// All along the bias, as the side seams of a skirt that is cut on it.
    Bias,
    /// Short and off the grain: shoulder, raglan, upper inside leg, pocket mouth.
    Slanting,
    /// All round an opening, across every grain: armhole, neck.
    Around,
}

impl Runs {
    /// Every way.
    pub const ALL: [Self; 5] = [Self::Lengthwise, Self::Crosswise, Self::Bias, Self::Slanting, Self::Around];

    /// The grain whose stretch counts along the seam: that of the bias where it leaves the straight grains.
    ///
    /// ```
    /// use tenter_core::{Grain, making::handling::Runs};
    ///
    /// assert_eq!([Runs::Crosswise, Runs::Slanting].map(Runs::grain), [Grain::Crosswise, Grain::Bias]);
    /// ```
    #[must_use]
    pub const fn grain(self) -> Grain {
        match self {
            Self::Lengthwise => Grain::Lengthwise,
            Self::Crosswise => Grain::Crosswise,
            Self::Bias | Self::Slanting | Self::Around => Grain::Bias,
        }
    }

    /// A seam along a grain; the bias as one that lies on it all along.
    ///
    /// ```
    /// use tenter_core::{Grain, making::handling::Runs};
    ///
    /// assert_eq!(Runs::along(Grain::Lengthwise), Runs::Lengthwise);
    /// ```
    #[must_use]
    pub const fn along(grain: Grain) -> Self {
        match grain {
            Grain::Lengthwise => Self::Lengthwise,
            Grain::Crosswise => Self::Crosswise,
            Grain::Bias => Self::Bias,
        }
    }
}

/// What a seam is asked. The default is a straight seam along the warp of an unlined garment with ease, of which nobody
/// has said how far it must give.
///
/// ```
/// use tenter_core::making::{garment::GarmentKind, handling::{Runs, SeamUse}};
///
/// let shoulder = SeamUse { held: true, runs: Runs::Slanting, garment: Some(GarmentKind::TShirt), ..SeamUse::default() };
/// assert_eq!(shoulder.asked, None);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
#[allow(clippy::struct_excessive_bools)] // Each is a question of its own.
pub struct SeamUse {
    /// How far the view asks that the seam gives; none where it does not say, and the cloth's own stretch along the
    /// seam counts.
    pub asked: Option<Ratio>,
    /// How it lies on the grain.
    pub runs: Runs,
    /// It is curved: neck, armhole, seat, princess over the bust.
    pub curved: bool,
    /// The body pulls at it when it moves: crotch, seat, underarm.
    pub strained: bool,
    /// It must keep its length, whatever the cloth gives: a shoulder, the edge of a separating zip, a woven waist.
    pub held: bool,
    /// It must pass over head, hips, hand or foot: neck, hem, cuff and leg of a knit, a pull-on waist.
    pub passes: bool,
    /// Its allowances end up between two layers: behind a facing, in a collar, a cuff, a waistband.
    pub enclosed: bool,
    /// A lining covers it.
    pub lined: bool,
    /// A pocket or a zip is set into it.
    pub opens: bool,
    /// The garment; none where that was not said.
    pub garment: Option<GarmentKind>,
}
