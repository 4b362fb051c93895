//! Seams by name: how the grain of each side lies along them, and whether their edges are straight.

use crate::answer::source::Source;
use crate::number::words;
use crate::reading::construction::Construction;
use crate::reading::pull_test::Grain;

/// A seam of a garment. Its first side is the body of the garment, its second the piece that is set on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum SeamName {
    /// Down the side of the body.
    Side,
    /// Between two panels with straight edges.
    Panel,
    /// Between two panels that shape bust, waist or back.
    Princess,
    /// Along the underside of a sleeve.
    Sleeve,
    /// An opening with a zip.
    Zip,
    /// Down the outside of a leg.
    OutsideLeg,
    /// Up the inside of a leg.
    InsideLeg,
    /// Over the shoulder.
    Shoulder,
    /// From neck to underarm, along a raglan sleeve.
    Raglan,
    /// Round the armhole.
    Armhole,
    /// Across the back, the front or the hip.
    Yoke,
    /// Round the waist, bodice to skirt.
    Waist,
    /// Round the hem, such as a band or a facing.
    Hem,
    /// From the front waist through the crotch to the back waist.
    Seat,
    /// Round the neck: a collar, a hood, a facing.
    Neck,
    /// A band round the neck.
    Neckband,
    /// A cuff on a sleeve or a leg.
    Cuff,
    /// A waistband.
    Waistband,
}

words!(SeamName {
    Side => "side",
    Panel => "panel",
    Princess => "princess",
    Sleeve => "sleeve",
    Zip => "zip",
    OutsideLeg => "outside-leg",
    InsideLeg => "inside-leg",
    Shoulder => "shoulder",
    Raglan => "raglan",
    Armhole => "armhole",
    Yoke => "yoke",
    Waist => "waist",
    Hem => "hem",
    Seat => "seat",
    Neck => "neck",
    Neckband => "neckband",
    Cuff => "cuff",
    Waistband => "waistband",
});

/// How the edges of a seam lie before they are sewn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Shape {
    /// Straight, so that the grain holds it.
    #[default]
    Straight,
    /// Curved: part of it lies off the grain.
    Curved,
}

/// How a seam runs.
///
/// ```
/// use tenter_core::making::pairing::{Run, SeamName};
/// use tenter_core::{Construction, Grain};
///
/// let run = Run::of(SeamName::Cuff, Construction::Knit);
/// assert_eq!((run.grains, run.is_band), ([Grain::Crosswise; 2], true));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Run {
    /// The grain of the body and that of the piece along the seam. An edge that slants, or goes all round, lies on the
    /// bias for most of its length.
    pub grains: [Grain; 2],
    /// How its edges lie.
    pub shape: Shape,
    /// Whether the piece is a band that is cut shorter and pulled to match.
    pub is_band: bool,
    /// Where that comes from.
    pub source: Source,
}

impl Run {
    /// How a seam runs, the piece being made so. Only a knit piece is a band that is pulled to match: a woven cuff or
    /// waistband is cut along its lengthwise grain and does not give.
    ///
    /// ```
    /// use tenter_core::making::pairing::{Run, SeamName};
    /// use tenter_core::{Construction, Grain};
    ///
    /// let run = |seam| Run::of(seam, Construction::Woven).grains;
    /// assert_eq!(run(SeamName::Side), [Grain::Lengthwise; 2]);
    /// assert_eq!(run(SeamName::Yoke), [Grain::Crosswise; 2]);
    /// assert_eq!(run(SeamName::Waistband), [Grain::Crosswise, Grain::Lengthwise]);
    /// ```
    #[must_use]
    pub const fn of(seam: SeamName, piece: Construction) -> Self {
        use Grain::{Bias, Crosswise, Lengthwise};
        use Shape::{Curved, Straight};
        let (grains, shape) = match seam {
            SeamName::Side | SeamName::Panel | SeamName::Sleeve | SeamName::Zip | SeamName::OutsideLeg => {
                ([Lengthwise; 2], Straight)
            }
            // Off the grain over bust and shoulder blade, lengthwise below.
            SeamName::Princess => ([Lengthwise; 2], Curved),
            SeamName::Shoulder | SeamName::Raglan => ([Bias; 2], Straight),
            SeamName::Armhole | SeamName::Seat | SeamName::InsideLeg => ([Bias; 2], Curved),
            SeamName::Yoke | SeamName::Hem => ([Crosswise; 2], Straight),
            SeamName::Waist | SeamName::Neck => ([Crosswise; 2], Curved),
            SeamName::Neckband | SeamName::Cuff | SeamName::Waistband => {
                let piece = if matches!(piece, Construction::Woven) { Lengthwise } else { Crosswise };
                ([Crosswise, piece], if matches!(seam, SeamName::Cuff) { Straight } else { Curved })
            }
        };
        let band = matches!(seam, SeamName::Neckband | SeamName::Cuff | SeamName::Waistband);
        let is_band = band && matches!(piece, Construction::Knit);
        let source = match seam {
            SeamName::Neckband | SeamName::Cuff | SeamName::Waistband if is_band => RIB,
            _ => FROM_SHAPE,
        };
        Self { grains, shape, is_band, source }
    }
}

const FROM_SHAPE: Source = Source::Derived("the shape of the pieces: body, leg and sleeve are cut along the grain");
const RIB: Source = Source::Published(
    "Association of Sewing and Design Professionals, Standards: ribbing is cut with its stretch round the body",
);
