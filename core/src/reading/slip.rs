//! The commonest slip: a length in another unit than the one that was meant.

use crate::number::num;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::length::Length;
use crate::reading::pull_test::{MAX_LENGTH, MIN_GAUGE};

/// One reading of a pull test.
///
/// ```
/// use tenter_core::Reading;
///
/// assert_eq!(Reading::Extended { pull: 2 }.word(), "extended");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Reading {
    /// The distance between the marks before the pull.
    Gauge,
    /// The distance between the marks while held.
    Extended {
        /// Which pull, counted from 0.
        pull: u8,
    },
    /// The distance between the marks after release.
    Recovered {
        /// Which reading after release, counted from 0 in the order of [`PullTest::rests`](crate::PullTest::rests).
        rest: u8,
    },
}

impl Reading {
    /// The word for its kind: `gauge`, `extended` or `recovered`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Gauge => "gauge",
            Self::Extended { .. } => "extended",
            Self::Recovered { .. } => "recovered",
        }
    }
}

/// A reading with the length that was probably meant.
///
/// ```
/// use tenter_core::{Length, Reading, Slip};
///
/// let slip = Slip { reading: Reading::Gauge, likely: Length::from_mm(100) };
/// assert_eq!(slip.likely, Length::from_mm(100));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Slip {
    /// The reading to type again.
    pub reading: Reading,
    /// What it would be in the unit that was probably meant.
    pub likely: Length,
}

/// What one length may be times another: millimetres for centimetres, centimetres for inches, millimetres for inches,
/// centimetres for metres. Each both ways.
const UNITS: [(i64, i64); 4] = [(10, 1), (254, 100), (254, 10), (100, 1)];

/// Marks closer than this were rather typed in the wrong unit than the pull: 30 mm. The tool's own limit.
const SHORTEST_USUAL: Length = Length::from_mm(30);

/// `length` in every unit that it may have been meant in.
pub(crate) fn units_of(length: Length) -> impl Iterator<Item = Length> {
    let units = if length > Length::ZERO { &UNITS[..] } else { &[] };
    units.iter().flat_map(|(a, b)| [(*a, *b), (*b, *a)]).filter_map(move |(times, den): (i64, i64)| {
        // Whole steps, to the nearest: what was typed in another unit comes back exactly.
        let doubled = (2 * i64::from(length.steps()) * times + den).unsigned_abs();
        i32::try_from(num::divide(doubled, 2 * den.unsigned_abs()).0).ok().map(Length::from_steps)
    })
}

fn stretch(gauge: Length, extended: Length) -> Option<Ratio> {
    let (gauge, extended) = (i64::from(gauge.steps()), i64::from(extended.steps()));
    Ratio::new(extended - gauge, gauge)
}

/// The reading that was probably typed in another unit, where `gauge` to `extended` gives more stretch, or less, than
/// cloth does: the change of unit that leaves the least stretch which is usual for the construction. `None` where no
/// change of unit explains it.
///
/// ```
/// use tenter_core::{Construction, Length, Reading, likely_slip};
///
/// // 10 cm to 105 cm: 10.5 cm was meant.
/// let slip = likely_slip(Length::from_mm(100), Length::from_mm(1050), 0, Construction::Other);
/// assert_eq!(slip.unwrap().likely, Length::from_mm(105));
/// assert_eq!(slip.unwrap().reading, Reading::Extended { pull: 0 });
/// ```
#[must_use]
pub fn likely_slip(gauge: Length, extended: Length, pull: u8, construction: Construction) -> Option<Slip> {
    if extended <= gauge && i64::from(extended.steps()) * 2 > i64::from(gauge.steps()) {
        return None; // A little short is a misreading, and no change of unit is that small.
    }
    let usual = construction.usual_stretch();
    let plausible = |gauge: Length, extended: Length| {
        let stretch = stretch(gauge, extended)?;
        let lengths = gauge >= MIN_GAUGE && extended > gauge && extended <= MAX_LENGTH;
        (lengths && stretch <= usual).then_some(stretch)
    };
    let of_pull = units_of(extended)
        .filter_map(|likely| Some((plausible(gauge, likely)?, Slip { reading: Reading::Extended { pull }, likely })))
        .min_by_key(|(stretch, _)| *stretch);
    let of_gauge = units_of(gauge)
        .filter_map(|likely| Some((plausible(likely, extended)?, Slip { reading: Reading::Gauge, likely })))
        .min_by_key(|(stretch, _)| *stretch);
    let (first, second) = if gauge < SHORTEST_USUAL { (of_gauge, of_pull) } else { (of_pull, of_gauge) };
    first.or(second).map(|(_, slip)| slip)
}

/// The recovered length that was probably meant where it lies far outside the marks and the pull: the first change of
/// unit that puts it between them. `None` where no change of unit explains it.
pub(crate) fn likely_recovered(gauge: Length, extended: Length, recovered: Length, rest: u8) -> Option<Slip> {
    let likely = units_of(recovered).find(|likely| (gauge..=extended).contains(likely))?;
    Some(Slip { reading: Reading::Recovered { rest }, likely })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slip(gauge: &str, extended: &str) -> Option<(Reading, Length)> {
        let read = |text| Length::parse(text, crate::reading::length::Unit::Cm).unwrap();
        likely_slip(read(gauge), read(extended), 0, Construction::Other).map(|slip| (slip.reading, slip.likely))
    }

    #[test]
    fn finds_the_unit_that_was_meant() {
        let length = |text| Length::parse(text, crate::reading::length::Unit::Cm).unwrap();
        let pull = Reading::Extended { pull: 0 };
        assert_eq!(slip("10cm", "105cm"), Some((pull, length("10.5cm"))));
        assert_eq!(slip("10mm", "10.5cm"), Some((Reading::Gauge, length("10cm"))));
        assert_eq!(slip("10cm", "10.5in"), Some((pull, length("10.5cm"))));
        assert_eq!(slip("4in", "105in"), Some((pull, length("105mm"))));
        assert_eq!(slip("25cm", "26.8mm"), Some((pull, length("26.8cm"))));
        assert_eq!(slip("4 in", "4.25cm"), Some((pull, length("4.25in"))));
        assert_eq!(slip("10cm", "10.5m"), Some((pull, length("10.5cm"))));
        assert_eq!(slip("10cm", "85cm"), None);
        assert_eq!(slip("10cm", "1.05m"), Some((pull, length("10.5cm"))));
        assert_eq!(slip("25cm", "24cm"), None);
    }
}
