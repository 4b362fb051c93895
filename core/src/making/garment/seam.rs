//! Seams: which parts they join, how they run in each, and what is asked of them.

use super::{GarmentKind, GarmentPart};
use crate::answer::source::Source;
use crate::making::handling::{Runs, SeamUse};
use crate::number::ratio::Ratio;
use crate::number::words;

/// What an edge or a seam must pass over when the garment is put on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Over {
    /// Nothing that is wider than the place where it sits.
    Nothing,
    /// The head.
    Head,
    /// The hand or the foot.
    Hand,
    /// The hips or the shoulders.
    Hips,
}

/// A seam by what a maker calls it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum SeamKind {
    /// A seam between panels with straight edges.
    Panel,
    /// A seam between panels that shape bust, waist or back.
    Princess,
    /// The seam below a yoke.
    Yoke,
    /// The centre back.
    CentreBack,
    /// A shoulder seam.
    Shoulder,
    /// The centre seam of a hood.
    HoodCentre,
    /// A hood to the neck.
    HoodToNeck,
    /// A collar to the neck.
    CollarToNeck,
    /// A band to the neck of a knit.
    Neckband,
    /// A sleeve into the armhole.
    Armhole,
    /// A raglan sleeve to front and back.
    Raglan,
    /// The underarm seam of a sleeve.
    Sleeve,
    /// A side seam.
    Side,
    /// The underarm seam of the sleeve and the side seam in one.
    SleeveAndSide,
    /// A bodice to a skirt.
    Waist,
    /// A waistband to the waist.
    Waistband,
    /// A cuff to a sleeve.
    Cuff,
    /// A band to the lower edge.
    HemBand,
    /// The outside leg.
    OutsideLeg,
    /// The inside leg.
    InsideLeg,
    /// The crotch, front to back.
    Crotch,
    /// The back half of the crotch, sewn before the fly.
    BackSeat,
    /// A shoulder strap.
    Strap,
    /// The front edge with its zip and facing.
    FrontEdge,
    /// The lining to the facings.
    LiningToFacing,
}

words!(SeamKind {
    Panel => "panel",
    Princess => "princess",
    Yoke => "yoke",
    CentreBack => "centre-back",
    Shoulder => "shoulder",
    HoodCentre => "hood-centre",
    HoodToNeck => "hood-to-neck",
    CollarToNeck => "collar-to-neck",
    Neckband => "neckband",
    Armhole => "armhole",
    Raglan => "raglan",
    Sleeve => "sleeve",
    Side => "side",
    SleeveAndSide => "sleeve-and-side",
    Waist => "waist",
    Waistband => "waistband",
    Cuff => "cuff",
    HemBand => "hem-band",
    OutsideLeg => "outside-leg",
    InsideLeg => "inside-leg",
    Crotch => "crotch",
    BackSeat => "back-seat",
    Strap => "strap",
    FrontEdge => "front-edge",
    LiningToFacing => "lining-to-facing",
});

/// What a seam joins and how it runs.
///
/// ```
/// use tenter_core::Grain;
/// use tenter_core::making::garment::{GarmentPart, SeamKind};
///
/// let band = SeamKind::Waistband.row();
/// assert_eq!((band.parts, band.runs[0].grain()), ([GarmentPart::Main, GarmentPart::Waistband], Grain::Crosswise));
/// assert_eq!(SeamKind::Side.row().runs[0].grain(), Grain::Lengthwise);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct SeamRow {
    /// The seam.
    pub seam: SeamKind,
    /// The parts that it joins.
    pub parts: [GarmentPart; 2],
    /// How it runs in each.
    pub runs: [Runs; 2],
    /// Whether it is curved.
    pub curved: bool,
    /// Whether the body pulls at it when it moves.
    pub strained: bool,
    /// Whether it keeps its length, whatever the cloth gives.
    pub held: bool,
    /// Whether its allowances end up between two layers.
    pub enclosed: bool,
    /// What it must pass over.
    pub over: Over,
    /// Where that comes from.
    pub source: Source,
}

/// How a seam runs follows from the shape of the pieces.
const SHAPE: Source = Source::Derived("from the shape of the pieces, cut with their length along warp or wales");

/// A rib band is cut with its length crosswise and stretched on.
const BAND: Source =
    Source::Published("Association of Sewing and Design Professionals, Standards: ribbed bands run crosswise");

const fn row(seam: SeamKind, parts: [GarmentPart; 2], runs: [Runs; 2]) -> SeamRow {
    SeamRow {
        seam,
        parts,
        runs,
        curved: false,
        strained: false,
        held: false,
        enclosed: false,
        over: Over::Nothing,
        source: SHAPE,
    }
}

const fn alike(seam: SeamKind, part: GarmentPart, runs: Runs) -> SeamRow {
    row(seam, [part, part], [runs, runs])
}

const fn curved(row: SeamRow) -> SeamRow {
    SeamRow { curved: true, ..row }
}

const fn strained(row: SeamRow) -> SeamRow {
    SeamRow { strained: true, ..row }
}

const fn held(row: SeamRow) -> SeamRow {
    SeamRow { held: true, ..row }
}

const fn enclosed(row: SeamRow) -> SeamRow {
    SeamRow { enclosed: true, ..row }
}

const fn band(row: SeamRow, over: Over) -> SeamRow {
    SeamRow { over, source: BAND, ..row }
}

impl SeamKind {
    /// What it joins and how it runs.
    #[must_use]
    pub const fn row(self) -> SeamRow {
        use GarmentPart::{
            Collar, Cuff, Facing, HemBand, Hood, Lining, Main, Neckband, Panel, Skirt, Sleeve, Waistband, Yoke,
        };
        use Runs::{Around, Crosswise, Lengthwise, Slanting};
        match self {
            Self::Panel => row(self, [Main, Panel], [Lengthwise, Lengthwise]),
            // Off the grain over bust and shoulder blade, lengthwise below.
            Self::Princess => curved(row(self, [Main, Panel], [Lengthwise, Lengthwise])),
            Self::Yoke => row(self, [Main, Yoke], [Crosswise, Crosswise]),
            Self::CentreBack => alike(self, Main, Lengthwise),
            Self::Shoulder => held(alike(self, Main, Slanting)),
            Self::HoodCentre => curved(alike(self, Hood, Slanting)),
            Self::HoodToNeck => curved(row(self, [Main, Hood], [Around, Crosswise])),
            Self::CollarToNeck => enclosed(curved(row(self, [Main, Collar], [Around, Crosswise]))),
            Self::Neckband => band(curved(row(self, [Main, Neckband], [Around, Crosswise])), Over::Head),
            Self::Armhole => curved(row(self, [Main, Sleeve], [Around, Around])),
            Self::Raglan => curved(row(self, [Main, Sleeve], [Slanting, Slanting])),
            Self::Sleeve => alike(self, Sleeve, Lengthwise),
            Self::Side => alike(self, Main, Lengthwise),
            Self::SleeveAndSide => alike(self, Main, Lengthwise),
            // It keeps the width of the waist under the weight of the skirt.
            Self::Waist => held(curved(row(self, [Main, Skirt], [Crosswise, Crosswise]))),
            // A woven band is cut along its length.
            Self::Waistband => held(enclosed(curved(row(self, [Main, Waistband], [Crosswise, Lengthwise])))),
            Self::Cuff => enclosed(row(self, [Sleeve, Cuff], [Crosswise, Lengthwise])),
            Self::HemBand => band(row(self, [Main, HemBand], [Crosswise, Crosswise]), Over::Hips),
            Self::OutsideLeg => alike(self, Main, Lengthwise),
            Self::InsideLeg => alike(self, Main, Slanting),
            Self::Crotch | Self::BackSeat => strained(curved(alike(self, Main, Slanting))),
            Self::Strap => alike(self, Main, Lengthwise),
            Self::FrontEdge => held(enclosed(row(self, [Main, Facing], [Lengthwise, Lengthwise]))),
            Self::LiningToFacing => row(self, [Lining, Facing], [Lengthwise, Lengthwise]),
        }
    }

    /// The same in a garment of knit, where the bands of waist and wrist are cut crosswise and stretched on, a neck is judged
    /// across, and the seam of bodice and skirt passes shoulders or hips.
    ///
    /// ```
    /// use tenter_core::Grain;
    /// use tenter_core::making::garment::{Over, SeamKind};
    ///
    /// let cuff = SeamKind::Cuff.in_knit();
    /// assert_eq!((cuff.runs[1].grain(), cuff.over), (Grain::Crosswise, Over::Hand));
    /// ```
    #[must_use]
    pub const fn in_knit(self) -> SeamRow {
        let row = self.row();
        match self {
            Self::Waistband => {
                band(SeamRow { runs: [Runs::Crosswise; 2], held: false, enclosed: false, ..row }, Over::Hips)
            }
            Self::Cuff => band(SeamRow { runs: [Runs::Crosswise; 2], enclosed: false, ..row }, Over::Hand),
            Self::Waist => SeamRow { over: Over::Hips, ..row },
            // The neck of a knit stretches over the head by its give across; nobody pulls it on the bias for that.
            Self::Neckband => SeamRow { runs: [Runs::Crosswise; 2], ..row },
            _ => row,
        }
    }
}

impl SeamRow {
    /// What it is asked in a garment, of which the view asks the seam to give `asked`.
    ///
    /// ```
    /// use tenter_core::making::garment::{GarmentKind, SeamKind};
    ///
    /// let shoulder = SeamKind::Shoulder.row().asked(GarmentKind::TShirt, None, false);
    /// assert!(shoulder.held && !shoulder.passes);
    /// ```
    #[must_use]
    pub const fn asked(&self, kind: GarmentKind, asked: Option<Ratio>, lined: bool) -> SeamUse {
        let [runs, _] = self.runs;
        SeamUse {
            asked: if self.held { None } else { asked },
            runs,
            curved: self.curved,
            strained: self.strained,
            held: self.held,
            passes: !matches!(self.over, Over::Nothing),
            enclosed: self.enclosed,
            lined,
            opens: false,
            garment: Some(kind),
        }
    }
}
