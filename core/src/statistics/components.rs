//! What is assumed of a cloth and a hand before anything is read: five components of variance, in one place.
//!
//! Each is the scale and the degrees of freedom of a scaled inverse chi-square distribution: the variance differs from
//! cloth to cloth, and the degrees of freedom say by how much. Points are percent of the gauge length. The
//! open data are those of Singal et al., *Nature Communications* 15 (2024) 2622 (MIT licence): eight hand-knit swatches,
//! up to five pulls each at known forces. `tenter-tests` fits them again on each test run.

use crate::reading::construction::Construction;
use crate::statistics::uncertainty::Variance;

/// Standard deviation of one placing of the cloth, in points: of a look at the unloaded length (gauge or recovered), and of
/// a pull that hardly stretches. How the cloth is laid and how it recovers are this one number.
///
/// Open data, settled pulls on a fixed gauge at 0, 1, 2, 5 and 10 N: sd² = A² + (B S)² pools to A = 0.781; the scale of its
/// inverse chi-square over swatches is 0.735 of that variance.
pub const PLACING: f32 = 0.67;

/// Degrees of freedom of [`PLACING`] and of the two constants beside it.
///
/// The spread of the variance between the eight swatches, with each count of pulls divided by 1.46 because forces on
/// one run repeat each other; a bootstrap over whole swatches gives 3.7 (5 %) to infinitely many, with a median of 8.3.
pub const PLACING_DOF: f32 = 7.0;

/// How the standard deviation of a pull grows with the stretch, in points for each point, under a known load: B of the
/// fit that [`PLACING`] describes.
pub const PULL_PER_POINT_LOAD: f32 = 0.0092;

/// The same by hand. The force of a hand repeats within about 12 % in one sitting (a proxy: clinicians who pull a gauge),
/// and stretch follows force with an elasticity of 0.46 from 5 to 10 N (open data). That hands pull cloth like
/// that is this tool's own assumption; no published data were found.
pub const PULL_PER_POINT_HAND: f32 = 0.048;

/// Standard deviation from day to day by hand, as a share of the stretch.
///
/// The force of a hand differs by about 19 % between days (a proxy: one clinician), times the elasticity of 0.46: 8.7 %
/// root mean square. **This tool's own assumption**; no published data on hands that pull cloth were found.
pub const SESSION_HAND: f32 = 0.076;

/// The same under a known load: 2 % of force at the steepest elasticity of the open data, 1.09. The tool's own
/// assumption.
pub const SESSION_LOAD: f32 = 0.02;

/// Degrees of freedom of [`SESSION_HAND`] and [`SESSION_LOAD`]. The tool's own assumption.
pub const SESSION_DOF: f32 = 8.0;

/// What a first pull and settling do to a cloth of some construction.
///
/// Open data: a first pull on its own gauge reads 1.5 (5 to 12 % of stretch) to 4.8 points (over 50 %) lower than later ones,
/// about ½ √stretch; the gauge read before the first pull differs from later looks by 1.8 points (root mean square).
/// Wovens: nothing, for want of data. Other or unknown cloth: half the shift, and wider.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct FirstPull {
    /// A first pull reads low by this times the root of the stretch, in points.
    pub shift: f32,
    /// The standard deviation of that, times the root of the stretch.
    pub spread: f32,
    /// Standard deviation of a gauge length read before settling, in points, beside [`PLACING`].
    pub unsettled: f32,
}

impl FirstPull {
    pub const fn of(construction: Construction) -> Self {
        match construction {
            Construction::Knit => Self { shift: 0.5, spread: 0.3, unsettled: 1.6 },
            Construction::Other => Self { shift: 0.25, spread: 0.33, unsettled: 1.131_370_8 },
            Construction::Woven => Self { shift: 0.0, spread: 0.0, unsettled: 0.0 },
        }
    }
}

/// The assumed variance of one pull by hand without the scale, in points², for cloth that stretches by `stretch` percent.
#[must_use]
pub(crate) fn hand_variance(stretch: f32) -> Variance {
    let grows = PULL_PER_POINT_HAND * stretch.max(0.0);
    Variance { value: PLACING * PLACING + grows * grows, dof: PLACING_DOF }
}
