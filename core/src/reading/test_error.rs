//! Why a reading is invalid, and what to give instead.

use core::fmt;

use crate::reading::slip::Slip;

/// Why a reading is invalid.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, TestError};
///
/// assert_eq!(PullTest::new(Length::ZERO, Grain::Crosswise), Err(TestError::GaugeTooShort));
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// assert!(matches!(test.add_pull(Length::from_mm(90)), Err(TestError::ExtendedBelowGauge { .. })));
/// # Ok::<(), TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum TestError {
    /// The gauge length is under [`MIN_GAUGE`](crate::reading::MIN_GAUGE).
    GaugeTooShort,
    /// The gauge length is over [`MAX_LENGTH`](crate::reading::MAX_LENGTH).
    GaugeTooLong,
    /// A scale division is longer than the gauge length.
    DivisionTooCoarse,
    /// The extended length is shorter than the gauge length.
    ExtendedBelowGauge {
        /// What was probably meant.
        likely: Option<Slip>,
    },
    /// The extended length is over [`MAX_LENGTH`](crate::reading::MAX_LENGTH).
    ExtendedTooLong {
        /// What was probably meant.
        likely: Option<Slip>,
    },
    /// The stretch is more than such cloth gives: see
    /// [`Construction::most_stretch`](crate::Construction::most_stretch).
    MoreThanCloth {
        /// The most that such cloth gives, in percent.
        most: u16,
        /// What was probably meant.
        likely: Option<Slip>,
    },
    /// More than [`MAX_PULLS`](crate::reading::MAX_PULLS) pulls.
    TooManyPulls,
    /// There is no pull yet.
    NoPull,
    /// A reading after release without a pull before it.
    RestBeforePull,
    /// The recovered length is longer than the extended length.
    RecoveredAboveExtended {
        /// What was probably meant.
        likely: Option<Slip>,
    },
    /// The recovered length is under nine tenths of the gauge length.
    RecoveredFarBelowGauge {
        /// What was probably meant.
        likely: Option<Slip>,
    },
    /// The rest is over [`MAX_REST_SECONDS`](crate::reading::MAX_REST_SECONDS).
    RestTooLong,
    /// Two readings at the same second after the same pull.
    RestTwice,
    /// More than [`MAX_RESTS`](crate::reading::MAX_RESTS) readings after release.
    TooManyRests,
    /// A look at the gauge length lies more than a tenth from the first.
    LooksDisagree,
    /// More than [`MAX_LOOKS`](crate::reading::MAX_LOOKS) looks at the gauge length.
    TooManyLooks,
    /// The planned number of pulls is 0, or over [`MAX_PULLS`](crate::reading::MAX_PULLS).
    BadPlan,
}

impl TestError {
    /// The reading that is wrong.
    #[must_use]
    pub const fn field(self) -> &'static str {
        match self {
            Self::GaugeTooShort | Self::GaugeTooLong | Self::LooksDisagree | Self::TooManyLooks => "gauge length",
            Self::DivisionTooCoarse => "scale division",
            Self::ExtendedBelowGauge { .. } | Self::ExtendedTooLong { .. } | Self::MoreThanCloth { .. } => {
                "extended length"
            }
            Self::TooManyPulls | Self::NoPull | Self::BadPlan => "pulls",
            Self::RecoveredAboveExtended { .. } | Self::RecoveredFarBelowGauge { .. } => "recovered length",
            Self::RestBeforePull | Self::RestTooLong | Self::RestTwice | Self::TooManyRests => "reading after release",
        }
    }

    /// The reading that was probably typed in another unit, with what was meant; none where no unit explains it.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// let refused = test.add_pull(Length::from_mm(1050)).unwrap_err();
    /// assert_eq!(refused.likely().unwrap().likely, Length::from_mm(105));
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub const fn likely(self) -> Option<Slip> {
        match self {
            Self::ExtendedBelowGauge { likely }
            | Self::ExtendedTooLong { likely }
            | Self::MoreThanCloth { likely, .. }
            | Self::RecoveredAboveExtended { likely }
            | Self::RecoveredFarBelowGauge { likely } => likely,
            _ => None,
        }
    }
}

impl fmt::Display for TestError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::GaugeTooShort => {
                "the gauge length must be 1 mm or more; type the distance between the marks, such as 100mm"
            }
            Self::GaugeTooLong => "a gauge length over 10 m; check the unit and type one such as 100mm",
            Self::DivisionTooCoarse => "a scale division longer than the gauge length; type one such as 1mm or 1/16in",
            Self::ExtendedBelowGauge { .. } => {
                "the extended length is shorter than the gauge length; type the length read while pulling"
            }
            Self::ExtendedTooLong { .. } => "an extended length over 10 m; check the unit",
            Self::MoreThanCloth { most, .. } => {
                return write!(f, "more than {most} % of stretch, which no such cloth gives; check the unit");
            }
            Self::TooManyPulls => "more than 10 pulls; give the last ten",
            Self::NoPull => "no pull yet; give the length read while pulling, such as 105mm",
            Self::RestBeforePull => "a reading after release needs a pull before it; give the extended length first",
            Self::RecoveredAboveExtended { .. } => {
                "the recovered length is longer than the extended length; type the length read after release"
            }
            Self::RecoveredFarBelowGauge { .. } => {
                "the recovered length is under nine tenths of the gauge length; read it again, cloth laid flat"
            }
            Self::RestTooLong => "a rest over 30 days; type the time since release, such as 60s or 30min",
            Self::RestTwice => "two readings at the same time after one release; give each time once",
            Self::TooManyRests => {
                "more than 10 readings after release; give the ones that matter, such as 60s and 30min"
            }
            Self::LooksDisagree => "the gauge lengths differ by more than a tenth; read the marks again and type both",
            Self::TooManyLooks => "more than 6 looks at the gauge length; give six",
            Self::BadPlan => "the planned pulls must be from 1 to 10; type one such as 5",
        })
    }
}

impl core::error::Error for TestError {}
