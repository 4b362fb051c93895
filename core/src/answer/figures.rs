//! Stretch, growth and recovery of a pull test.

use crate::answer::Figure;
use crate::answer::readings::Readings;
use crate::answer::rest::Pick;
use crate::reading::construction::Construction;
use crate::reading::pull_test::{PullTest, TestError};
use crate::statistics::scatter::Scatter;

/// What the readings at one rest give.
///
/// ```
/// use tenter_core::{Figures, Grain, Length, PullTest, Scatter};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// test.add_pull(Length::from_mm(150))?;
/// test.add_rest(60, Length::from_mm(105))?;
/// let rest = Figures::of(&test, Scatter::ASSUMED)?.rest.unwrap();
/// assert_eq!(rest.growth.ratio.percent(1).to_string(), "5.0");
/// assert_eq!(rest.recovery.unwrap().ratio.percent(1).to_string(), "90.0");
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct RestFigures {
    /// The rest, in seconds; the longest of several.
    pub seconds: u32,
    /// How many readings were made then.
    pub readings: u32,
    /// Growth: (recovered − gauge) / gauge.
    pub growth: Figure,
    /// Recovery: (extended − recovered) / (extended − gauge), the share of the extension given back. Over several
    /// pulls it is that of the mean lengths. None where nothing was extended.
    pub recovery: Option<Figure>,
}

/// The figures of a pull test.
///
/// Stretch is that of the mean extended length over the pulls that count, on the mean of the looks at the gauge length.
/// The first of several pulls does not count where no settling pull was made before.
///
/// ```
/// use tenter_core::{Figures, Grain, Length, PullTest, Scatter};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?.with_settling_pull(true);
/// for extended in [105, 106, 105, 104, 106] {
///     test.add_pull(Length::from_mm(extended))?;
/// }
/// let figures = Figures::of(&test, Scatter::ASSUMED)?;
/// assert_eq!(figures.stretch.ratio.percent(1).to_string(), "5.2");
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Figures {
    /// Stretch: (extended − gauge) / gauge.
    pub stretch: Figure,
    /// Growth and recovery; none without a reading after release.
    pub rest: Option<RestFigures>,
}

impl Figures {
    /// Computes the figures of cloth whose construction is not known, at the longest rest.
    ///
    /// # Errors
    ///
    /// [`TestError::NoPull`] without a pull.
    ///
    /// ```
    /// use tenter_core::{Figures, Grain, Length, PullTest, Scatter, TestError};
    ///
    /// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// assert_eq!(Figures::of(&test, Scatter::ASSUMED), Err(TestError::NoPull));
    /// # Ok::<(), TestError>(())
    /// ```
    pub fn of(test: &PullTest, scatter: Scatter) -> Result<Self, TestError> {
        Self::of_cloth(test, scatter, Construction::Other)
    }

    /// The same for cloth of a known construction, which says what a first pull is worth.
    ///
    /// # Errors
    ///
    /// [`TestError::NoPull`] without a pull.
    ///
    /// ```
    /// use tenter_core::{Construction, Figures, Grain, Length, PullTest, Scatter};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(150))?;
    /// let of = |construction| Figures::of_cloth(&test, Scatter::ASSUMED, construction).map(|all| all.stretch);
    /// // A first pull falls shorter of the next ones on a knit than on a woven cloth.
    /// assert!(of(Construction::Knit)?.shift != of(Construction::Woven)?.shift);
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    pub fn of_cloth(test: &PullTest, scatter: Scatter, construction: Construction) -> Result<Self, TestError> {
        Ok(Readings::of(test.pulled()?, scatter, construction, Pick::Longest).figures(true))
    }
}
