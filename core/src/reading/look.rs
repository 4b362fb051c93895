//! Looks at the gauge length, and which of them count.

use crate::reading::length::Length;
use crate::reading::pull_test::PullTest;

/// The most looks at the gauge length of one test, the first among them.
pub const MAX_LOOKS: usize = 6;

/// A look at the gauge length: the marks of the cloth lying free.
///
/// ```
/// use tenter_core::{Grain, Length, Look, PullTest};
///
/// let test = PullTest::new(Length::from_mm(100), Grain::Bias)?;
/// assert_eq!(test.looks().next(), Some(Look { after_pulls: 0, length: Length::from_mm(100) }));
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Look {
    /// How many of the test's pulls were made before it.
    pub after_pulls: u8,
    /// The distance between the marks.
    pub length: Length,
}

impl PullTest {
    /// Whether every look that counts came before the cloth was settled, so that settling has moved the marks since.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(105))?;
    /// test.add_pull(Length::from_mm(106))?;
    /// assert!(test.gauge_is_unsettled());
    /// test.add_look(Length::from_mm(101))?;
    /// assert!(!test.gauge_is_unsettled());
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub fn gauge_is_unsettled(&self) -> bool {
        let before = self.settling_pull().is_some() || self.settled() && self.gauge_before_settling();
        before && !self.looks().enumerate().any(|at| self.is_after_settling(at))
    }

    /// The looks that count: those after the settling pull where there are any, and of a single first pull those before
    /// it.
    pub fn counted_looks(&self) -> impl Iterator<Item = Look> + Clone + '_ {
        let unsettled = self.gauge_is_unsettled();
        let one_first_pull = !self.settled() && self.settling_pull().is_none();
        self.looks().enumerate().filter_map(move |(index, look)| {
            let counts =
                if one_first_pull { look.after_pulls == 0 } else { unsettled || self.is_after_settling((index, look)) };
            counts.then_some(look)
        })
    }

    fn is_after_settling(&self, (index, look): (usize, Look)) -> bool {
        if self.settled() { !self.gauge_before_settling() || index > 0 } else { look.after_pulls > 0 }
    }
}
