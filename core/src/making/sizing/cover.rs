//! How thin a cloth becomes where it is stretched.

use crate::answer::source::Source;
use crate::number::ratio::Ratio;

/// The home test that decides: nobody has published a limit at which a stretched cloth shows what is under it. Over the edge
/// of a black and a white paper at the stretch of wear, an edge that is seen fails.
pub const HOME_TEST: Source =
    Source::Derived("a black and white edge under the cloth at the stretch of wear; not validated");

/// The mass per area of a cloth of `mass` g/m² stretched by `round` and by `along`: mass / ((1 + round) (1 + along)), to the
/// nearest whole gram. It compares cloths and stretches of one colour and make; it is no limit. None where it does not fit, or
/// for a stretch below zero.
///
/// ```
/// use tenter_core::{Ratio, making::sizing::mass_stretched};
///
/// assert_eq!(mass_stretched(250, Ratio::new(1, 2).unwrap(), Ratio::ZERO), Some(167));
/// ```
#[must_use]
pub fn mass_stretched(mass: u16, round: Ratio, along: Ratio) -> Option<u16> {
    if round < Ratio::ZERO || along < Ratio::ZERO {
        return None;
    }
    let once = shrunk(1000 * i64::from(mass), round)?;
    u16::try_from(shrunk(once, along)?.checked_add(500)? / 1000).ok()
}

/// A number of thousandths divided by 1 + stretch.
fn shrunk(thousandths: i64, stretch: Ratio) -> Option<i64> {
    let (num, den) = (stretch.numerator(), stretch.denominator());
    let whole = num.checked_add(den).filter(|whole| *whole > 0)?;
    Some(thousandths.checked_mul(den)?.checked_add(whole / 2)? / whole)
}
