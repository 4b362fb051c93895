//! A width as patterns print it.

use crate::reading::length::Length;

/// A width as a metric pattern prints it and as an inch pattern does; neither is the other converted.
///
/// ```
/// use tenter_core::{Length, making::printed::Printed};
///
/// let allowance = Printed::new(15, 5); // 15 mm, 5/8 in.
/// assert_eq!(allowance.inch, Length::from_inch_64ths(40));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Printed {
    /// In whole millimetres.
    pub metric: Length,
    /// In eighths of an inch.
    pub inch: Length,
}

impl Printed {
    /// So many millimetres, and so many eighths of an inch.
    ///
    /// ```
    /// use tenter_core::{Length, making::printed::Printed};
    ///
    /// assert_eq!(Printed::new(6, 2).metric, Length::from_mm(6));
    /// ```
    #[must_use]
    pub const fn new(mm: i16, eighths: i16) -> Self {
        Self { metric: Length::from_mm(mm), inch: Length::from_inch_64ths(8 * eighths) }
    }

    /// The one of the two that a reader in inches or in metric units sees.
    ///
    /// ```
    /// use tenter_core::{Length, making::printed::Printed};
    ///
    /// assert_eq!(Printed::new(25, 8).seen(true), Length::INCH);
    /// ```
    #[must_use]
    pub const fn seen(self, in_inches: bool) -> Length {
        if in_inches { self.inch } else { self.metric }
    }
}
