//! The stitch of a seam and of a hem.

use super::asked::SeamUse;
use super::cloth::{Cloth, Weave};
use crate::answer::source::Source;
use crate::making::care::Finish;
use crate::making::stitch::{Stitch, zigzag_gives};
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::pull_test::Grain;

/// A stitch with its settings in tenths of a millimetre.
///
/// ```
/// use tenter_core::making::{handling::Sewn, stitch::Stitch};
///
/// let row = Sewn { stitch: Stitch::Straight, width: None, length: (25, 25) };
/// assert!(row.gives().is_some());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Sewn {
    /// The stitch.
    pub stitch: Stitch,
    /// Its width; none where it has none.
    pub width: Option<u8>,
    /// Its length, from the shortest to the longest.
    pub length: (u8, u8),
}

impl Sewn {
    /// How far it gives along the seam; none where it follows any cloth.
    ///
    /// ```
    /// use tenter_core::making::{handling::Sewn, stitch::Stitch};
    ///
    /// let narrow = Sewn { stitch: Stitch::NarrowZigzag, width: Some(5), length: (25, 25) };
    /// assert_eq!(narrow.gives().unwrap().percent(0).to_string(), "22");
    /// ```
    #[must_use]
    pub fn gives(&self) -> Option<Ratio> {
        match self.width {
            Some(width) if matches!(self.stitch, Stitch::NarrowZigzag | Stitch::WideZigzag) => {
                Some(zigzag_gives(width, self.length.1))
            }
            _ => self.stitch.gives(),
        }
    }

    /// Whether it gives as far as is wanted.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::{handling::Sewn, stitch::Stitch}};
    ///
    /// let row = Sewn { stitch: Stitch::Straight, width: None, length: (25, 25) };
    /// assert!(row.allows(Ratio::new(5, 100).unwrap()));
    /// ```
    #[must_use]
    pub fn allows(&self, wanted: Ratio) -> bool {
        self.gives().is_none_or(|gives| wanted <= gives)
    }
}

/// What the wanted give of a seam rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Basis {
    /// The view asks it.
    Asked,
    /// The cloth gives it along the seam.
    Stretch,
    /// The cloth was not pulled along the seam: a woven is taken as rigid, a knit to give a half.
    NotMeasured,
    /// The seam is held: nothing is wanted.
    Held,
    /// A woven off the grain: its bias gives whatever is made of it, and nothing is wanted.
    OffTheGrain,
}

/// How a seam is sewn.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, SeamUse, sewing};
///
/// assert!(sewing(&Cloth::new(Construction::Woven), &SeamUse::default()).second.is_none());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Sewing {
    /// How far the seam is wanted to give.
    pub wanted: Ratio,
    /// What that rests on.
    pub basis: Basis,
    /// The stitch to take.
    pub first: Sewn,
    /// What to take without the machine for it.
    pub instead: Option<Sewn>,
    /// What is sewn over or beside it, where the body pulls at the seam.
    pub second: Option<Sewn>,
    /// The length of topstitching that is meant to be seen, in tenths of a millimetre.
    pub topstitch: Option<(u8, u8)>,
    /// Where it comes from.
    pub source: Source,
}

impl Sewing {
    /// Whether the stitch gives as far as is wanted.
    ///
    /// ```
    /// use tenter_core::Construction;
    /// use tenter_core::making::handling::{Cloth, SeamUse, sewing};
    ///
    /// assert!(sewing(&Cloth::new(Construction::Knit), &SeamUse::default()).is_enough());
    /// ```
    #[must_use]
    pub fn is_enough(&self) -> bool {
        self.first.allows(self.wanted)
    }
}

/// A seam should be slightly more elastic than its cloth: the rule that all of it follows.
const RULE: Source = Source::Published("ASTM D6193, 4.2.2: a seam slightly more elastic than its cloth");
const FOUR_THREADS: Source =
    Source::Published("Fischer, Sewing for Fashion Designers, 2015, p. 259: four-thread overlock for knits that give");
const STRAINED: Source = Source::CommonPractice;

/// A knit that nobody pulled is taken to give so much: where "stretchy" knits begin in most tables (the tool's own).
const UNKNOWN_KNIT_PERCENT: i64 = 50;

/// How far a seam is wanted to give, and by what.
fn wanted(cloth: &Cloth, seam: &SeamUse) -> (Ratio, Basis) {
    let is_knit = cloth.construction == Construction::Knit;
    let on_bias = seam.runs.grain() == Grain::Bias;
    if let Some(asked) = seam.asked {
        return (asked.max(Ratio::ZERO), Basis::Asked);
    }
    // What is held by clear elastic and passes over still gives.
    if seam.held && !(seam.passes && is_knit) {
        return (Ratio::ZERO, Basis::Held);
    }
    // A woven gives on the bias whatever is made of it, and no seam is asked for that.
    if on_bias && !is_knit {
        return (Ratio::ZERO, Basis::OffTheGrain);
    }
    let along = cloth.along(seam.runs.grain());
    let stretch = if on_bias { along.or(cloth.most_stretch()) } else { along };
    let unknown = Ratio::new(UNKNOWN_KNIT_PERCENT, 100).filter(|_| is_knit).unwrap_or(Ratio::ZERO);
    stretch.map_or((unknown, Basis::NotMeasured), |figure| (figure.ratio.max(Ratio::ZERO), Basis::Stretch))
}

/// How to sew a seam of a cloth: what the view asks of *that seam* decides, not the most that the cloth could give.
///
/// A knit is overlocked, or sewn with the narrowest zigzag that gives enough. The triple stitch is for crotch and underarm
/// only, where the body pulls.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::{handling::{Cloth, SeamUse, sewing}, stitch::Stitch};
/// use tenter_core::{Figure, Ratio};
///
/// let percent = |percent| Ratio::new(percent, 100).unwrap();
/// let twill = Cloth { crosswise: Some(Figure::exact(percent(25))), ..Cloth::new(Construction::Woven) };
/// let side = SeamUse { asked: Some(percent(5)), ..SeamUse::default() };
/// assert_eq!(sewing(&twill, &side).first.stitch, Stitch::Straight);
/// ```
#[must_use]
pub fn sewing(cloth: &Cloth, seam: &SeamUse) -> Sewing {
    let (wanted, basis) = wanted(cloth, seam);
    let length = straight_length(cloth);
    let straight = Sewn { stitch: Stitch::Straight, width: None, length };
    let triple = Sewn { stitch: Stitch::Triple, width: None, length: (25, 25) };
    let zigzag = zigzag(cloth, wanted);
    let is_knit = cloth.construction == Construction::Knit;
    let strained = seam.strained.then_some(if triple.allows(wanted) { triple } else { zigzag });
    // Beside an overlock the body's own movement counts, at most 45 % at the knee, unless the view asks for more.
    let beside = strained.map(|row| if seam.asked.is_none() { triple } else { row });
    let (first, instead, second, source) = if is_knit {
        let overlock = Sewn { stitch: Stitch::Overlock, width: None, length: (25, 25) };
        (overlock, Some(zigzag), beside, if strained.is_some() { STRAINED } else { FOUR_THREADS })
    } else if straight.allows(wanted) {
        (strained.unwrap_or(straight), None, None, if strained.is_some() { STRAINED } else { RULE })
    } else {
        (strained.unwrap_or(zigzag), None, None, RULE)
    };
    let topstitch = (is_dense(cloth) && !is_knit).then_some((35, 40));
    Sewing { wanted, basis, first, instead, second, topstitch, source }
}

/// How to hem a cloth: a knit hem that must pass takes a coverstitch, else a twin needle or a zigzag of 3.5 by 1.4 mm,
/// unstretched; a woven one a straight row.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::{handling::{Cloth, SeamUse, hem}, stitch::Stitch};
///
/// let knit = Cloth::new(Construction::Knit);
/// assert_eq!(hem(&knit, &SeamUse::default()).first.stitch, Stitch::Coverstitch);
/// ```
#[must_use]
pub fn hem(cloth: &Cloth, seam: &SeamUse) -> Sewing {
    let seam = SeamUse { strained: false, ..*seam };
    let sewn = sewing(cloth, &seam);
    if cloth.construction != Construction::Knit {
        return sewn;
    }
    let cover = Sewn { stitch: Stitch::Coverstitch, width: None, length: (25, 30) };
    let twin = Sewn { stitch: Stitch::TwinNeedle, width: None, length: (30, 30) };
    let zigzag = Sewn { stitch: Stitch::WideZigzag, width: Some(35), length: (14, 14) };
    let instead = if twin.allows(sewn.wanted) { twin } else { zigzag };
    Sewing { first: cover, instead: Some(instead), source: Source::CommonPractice, ..sewn }
}

/// Denim, canvas, and cloth that shows every hole: sewn long.
const fn is_dense(cloth: &Cloth) -> bool {
    let long = matches!(cloth.finish, Finish::Waxed | Finish::LeatherLike | Finish::Coated);
    long || matches!(cloth.weave, Weave::Denim | Weave::Canvas)
}

/// The length of a straight stitch, by the working table that is named at the needle.
fn straight_length(cloth: &Cloth) -> (u8, u8) {
    let mass = cloth.mass_or_usual();
    match cloth.weave {
        _ if cloth.finish == Finish::LeatherLike => (30, 35),
        Weave::Canvas => (30, 35),
        Weave::Denim if mass >= 475 => (30, 35),
        Weave::Denim if mass < 340 => (25, 30),
        Weave::Denim => (30, 30),
        Weave::Ordinary if is_dense(cloth) || cloth.finish == Finish::Membrane => (30, 30),
        Weave::Ordinary => match mass {
            ..80 => (15, 20),
            80..100 => (20, 20),
            100..150 => (20, 25),
            150..330 => (25, 25),
            330.. => (30, 30),
        },
    }
}

/// The narrowest zigzag that gives as far as is wanted, or the widest.
fn zigzag(cloth: &Cloth, wanted: Ratio) -> Sewn {
    let long = if cloth.finish == Finish::Brushed || cloth.mass_or_usual() >= 300 { 30 } else { 25 };
    let settings = [(5, long), (10, long), (15, 25), (20, 20), (20, 15), (30, 15)];
    let sewn = settings.map(|(width, length)| {
        let stitch = if width < 20 { Stitch::NarrowZigzag } else { Stitch::WideZigzag };
        Sewn { stitch, width: Some(width), length: (length, length) }
    });
    let widest = Sewn { stitch: Stitch::WideZigzag, width: Some(30), length: (15, 15) };
    sewn.into_iter().find(|sewn| sewn.allows(wanted)).unwrap_or(widest)
}
