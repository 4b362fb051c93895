//! The scale a length is read on, and what one reading of it is worth.

use serde::{Deserialize, Serialize};

use crate::number::num;
use crate::number::words;
use crate::reading::length::Length;

/// How many ends of a length are read on the scale. The order of the variants is part of the stored format.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Ends {
    /// One mark is held at the scale's zero, the other is read.
    #[default]
    One,
    /// Both marks are read and subtracted.
    Both,
}

words!(Ends { One => "one", Both => "both" });

/// The scale: its division and how many ends are read on it.
///
/// A reading is known only to lie within half a division either way, evenly: u = d/√12 for each end that is read
/// (JCGM 100:2008 § 4.3.7).
///
/// ```
/// use tenter_core::{Ends, Length, Scale};
///
/// let tape = Scale::new(Length::from_mm(1), Ends::One).unwrap();
/// assert!((tape.u_mm() - 0.2887).abs() < 1e-4);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Scale {
    division: Length,
    ends: Ends,
}

impl Default for Scale {
    fn default() -> Self {
        Self { division: Length::from_mm(1), ends: Ends::One }
    }
}

impl Scale {
    /// A scale with this distance between its lines; returns `None` unless the division is above zero.
    ///
    /// ```
    /// use tenter_core::{Ends, Length, Scale};
    ///
    /// assert!(Scale::new(Length::ZERO, Ends::One).is_none());
    /// ```
    #[must_use]
    pub fn new(division: Length, ends: Ends) -> Option<Self> {
        (division > Length::ZERO).then_some(Self { division, ends })
    }

    /// The distance between two neighbouring lines.
    #[must_use]
    pub const fn division(self) -> Length {
        self.division
    }

    /// How many ends are read.
    #[must_use]
    pub const fn ends(self) -> Ends {
        self.ends
    }

    /// The standard uncertainty of one length read on this scale, in millimetres.
    ///
    /// ```
    /// use tenter_core::{Ends, Length, Scale};
    ///
    /// let both = Scale::new(Length::from_mm(1), Ends::Both).unwrap();
    /// assert!((both.u_mm() - 0.4082).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn u_mm(self) -> f32 {
        num::sqrt(self.variance()) / 1600.0
    }

    /// The variance of one length, in steps².
    pub(crate) fn variance(self) -> f32 {
        let division = num::float(self.division.steps().into());
        let one_end = division * division / 12.0;
        match self.ends {
            Ends::One => one_end,
            Ends::Both => 2.0 * one_end,
        }
    }

    /// Whether `length` falls on a line of this scale.
    ///
    /// ```
    /// use tenter_core::{Length, Scale};
    ///
    /// assert!(Scale::default().has_line_at(Length::from_mm(105)));
    /// assert!(!Scale::default().has_line_at(Length::from_steps(800)));
    /// ```
    #[must_use]
    pub fn has_line_at(self, length: Length) -> bool {
        length.is_multiple_of(self.division)
    }

    /// Whether the scale is divided in fractions of an inch rather than in tenths of a millimetre.
    ///
    /// ```
    /// use tenter_core::{Ends, Length, Scale};
    ///
    /// assert!(Scale::new(Length::from_inch_64ths(4), Ends::One).unwrap().is_inch());
    /// assert!(!Scale::default().is_inch());
    /// ```
    #[must_use]
    pub fn is_inch(self) -> bool {
        let sixty_fourth = Length::from_inch_64ths(1);
        let tenth_of_mm = Length::from_steps(160);
        self.division.is_multiple_of(sixty_fourth) && !self.division.is_multiple_of(tenth_of_mm)
    }
}
