//! The scatter from pull to pull that is assumed of a hand and a cloth of which nothing is known.

use crate::number::num;
use crate::statistics::uncertainty::Variance;

/// Standard deviation of one pull at 1 % of stretch and below, in points of stretch.
///
/// Fitted, with [`ASSUMED_EXPONENT`] and [`ASSUMED_DOF`], by maximum likelihood to 150 readings in 39 pulls of eight
/// hand-knit swatches at 1, 2, 5 and 10 N (Singal et al., *Nature Communications* 15 (2024) 2622, data under MIT licence),
/// each group of up to five pulls of one swatch at one force giving a variance that is taken to follow
/// σ² · F(n − 1, ν). By band of stretch the same data pool to 0.5 points below 5 %, 1.1 from 5 to 12 %, 1.8 from 12
/// to 50 % and 2.8 above; the curve replaces those steps. `tenter-tests` fits it again on each test run.
pub const ASSUMED_AT_ONE_PERCENT: f32 = 0.46;

/// The power of the stretch with which the assumed standard deviation grows.
pub const ASSUMED_EXPONENT: f32 = 0.37;

/// What the assumption is worth: as much as a standard deviation of one's own with this many degrees of freedom.
pub const ASSUMED_DOF: f32 = 7.5;

/// The assumed variance of one pull, in points², for cloth that stretches by `stretch` percent.
#[must_use]
pub fn variance(stretch: f32) -> Variance {
    let points = ASSUMED_AT_ONE_PERCENT * num::rough_pow(stretch, ASSUMED_EXPONENT);
    Variance { value: points * points, dof: ASSUMED_DOF }
}
