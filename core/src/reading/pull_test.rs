//! The readings of one pull test, kept valid from the first to the last.

use heapless::Vec;
use serde::{Deserialize, Serialize};

use crate::number::words;
use crate::reading::construction::Construction;
use crate::reading::length::Length;
pub use crate::reading::load::Load;
use crate::reading::look::{Look, MAX_LOOKS};
use crate::reading::scale::Scale;
use crate::reading::slip::{likely_recovered, likely_slip};
pub use crate::reading::test_error::TestError;

/// The longest gauge or extended length taken, 10 m: beyond it a unit was mistyped.
pub const MAX_LENGTH: Length = Length::from_mm(10_000);

/// The shortest gauge length taken, 1 mm: one division of the default scale.
pub const MIN_GAUGE: Length = Length::from_mm(1);

/// The most counted pulls of one test.
pub const MAX_PULLS: usize = 10;

/// The most readings after release of one test.
pub const MAX_RESTS: usize = 10;

/// The longest rest taken, 30 days, in seconds.
pub const MAX_REST_SECONDS: u32 = 30 * 24 * 3600;

/// The grain that is pulled. The order of the variants is part of the stored format.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Grain {
    /// Along the warp of a woven, the wales of a knit.
    Lengthwise,
    /// Along the weft of a woven, the courses of a knit.
    #[default]
    Crosswise,
    /// At 45° to both.
    Bias,
}

words!(Grain { Lengthwise => "lengthwise", Crosswise => "crosswise", Bias => "bias" });

/// How the swatch was held. The order of the variants is part of the stored format.
///
/// The figures of two ways of holding are not comparable: a single layer at a cut edge reads high.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Held {
    /// One layer, flat, away from edges.
    Flat,
    /// Folded along the line that is pulled.
    #[default]
    Folded,
    /// A cut strip.
    Strip,
    /// A sewn loop.
    Loop,
}

words!(Held { Flat => "flat", Folded => "folded", Strip => "strip", Loop => "loop" });

/// A reading after release.
///
/// ```
/// use tenter_core::{Length, Rest};
///
/// let rest = Rest { after_pull: 0, seconds: 60, recovered: Length::from_mm(101) };
/// assert_eq!(rest.seconds, 60);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Rest {
    /// The pull it follows, counted from 0.
    pub after_pull: u8,
    /// Time since release, in seconds.
    pub seconds: u32,
    /// The distance between the marks then.
    pub recovered: Length,
}

/// One swatch, one grain: gauge length, one or more pulls, readings after release, how it was done.
///
/// Every value of this type is valid: an invalid reading is refused where it is added.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// test.add_pull(Length::from_mm(105))?;
/// test.add_rest(60, Length::from_mm(101))?;
/// assert_eq!(test.pulls().len(), 1);
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct PullTest {
    gauge: Length,
    grain: Grain,
    scale: Scale,
    held: Held,
    load: Load,
    settled: bool,
    gauge_before_settling: bool,
    planned: Option<u8>,
    /// Looks at the gauge length after the first, which is `gauge`.
    later_looks: Vec<Look, { MAX_LOOKS - 1 }>,
    pulls: Vec<Length, MAX_PULLS>,
    rests: Vec<Rest, MAX_RESTS>,
}

impl PullTest {
    /// A test without readings yet, on a 1 mm scale read at one end, folded and by hand, no settling pull.
    ///
    /// # Errors
    ///
    /// [`TestError::GaugeTooShort`] or [`TestError::GaugeTooLong`].
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest, TestError};
    ///
    /// assert_eq!(PullTest::new(Length::ZERO, Grain::Bias), Err(TestError::GaugeTooShort));
    /// ```
    pub fn new(gauge: Length, grain: Grain) -> Result<Self, TestError> {
        if gauge < MIN_GAUGE {
            return Err(TestError::GaugeTooShort);
        }
        if gauge > MAX_LENGTH {
            return Err(TestError::GaugeTooLong);
        }
        Ok(Self {
            gauge,
            grain,
            scale: Scale::default(),
            held: Held::default(),
            load: Load::default(),
            settled: false,
            gauge_before_settling: false,
            planned: None,
            later_looks: Vec::new(),
            pulls: Vec::new(),
            rests: Vec::new(),
        })
    }

    /// Sets the scale.
    ///
    /// # Errors
    ///
    /// [`TestError::DivisionTooCoarse`] when a division is longer than the gauge length.
    ///
    /// ```
    /// use tenter_core::{Ends, Grain, Length, PullTest, Scale, TestError};
    ///
    /// let test = PullTest::new(Length::from_mm(100), Grain::Bias)?;
    /// let coarse = Scale::new(Length::from_mm(101), Ends::One).unwrap();
    /// assert_eq!(test.with_scale(coarse), Err(TestError::DivisionTooCoarse));
    /// # Ok::<(), TestError>(())
    /// ```
    pub fn with_scale(mut self, scale: Scale) -> Result<Self, TestError> {
        if scale.division() > self.gauge {
            return Err(TestError::DivisionTooCoarse);
        }
        self.scale = scale;
        Ok(self)
    }

    /// Sets how the swatch was held.
    ///
    /// ```
    /// use tenter_core::{Grain, Held, Length, PullTest};
    ///
    /// let test = PullTest::new(Length::from_mm(100), Grain::Bias)?.with_held(Held::Strip);
    /// assert_eq!(test.held(), Held::Strip);
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub const fn with_held(mut self, held: Held) -> Self {
        self.held = held;
        self
    }

    /// Sets what pulled.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, Load, PullTest};
    ///
    /// let newton = Load::Force { millinewtons: 1000 };
    /// let test = PullTest::new(Length::from_mm(100), Grain::Bias)?.with_load(newton);
    /// assert_eq!(test.load(), newton);
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub const fn with_load(mut self, load: Load) -> Self {
        self.load = load;
        self
    }

    /// States whether a settling pull was made first and not counted.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest};
    ///
    /// let test = PullTest::new(Length::from_mm(100), Grain::Bias)?.with_settling_pull(true);
    /// assert!(test.settled());
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub const fn with_settling_pull(mut self, made: bool) -> Self {
        self.settled = made;
        self
    }

    /// States that the first look at the gauge length came before the settling pull, which moves it.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest};
    ///
    /// let test = PullTest::new(Length::from_mm(100), Grain::Bias)?;
    /// assert!(test.with_settling_pull(true).with_gauge_before_settling(true).gauge_before_settling());
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub const fn with_gauge_before_settling(mut self, read_before: bool) -> Self {
        self.gauge_before_settling = read_before;
        self
    }

    /// Puts the grain right that was stated when the test was begun; the readings stay.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest, TestError};
    ///
    /// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// assert_eq!(test.with_grain(Grain::Lengthwise).grain(), Grain::Lengthwise);
    /// # Ok::<(), TestError>(())
    /// ```
    #[must_use]
    pub const fn with_grain(mut self, grain: Grain) -> Self {
        self.grain = grain;
        self
    }

    /// States how many pulls were planned before the first was made.
    ///
    /// # Errors
    ///
    /// [`TestError::BadPlan`] unless it lies from 1 to [`MAX_PULLS`].
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest, TestError};
    ///
    /// let test = PullTest::new(Length::from_mm(100), Grain::Bias)?;
    /// assert_eq!(test.clone().with_planned_pulls(5)?.planned_pulls(), Some(5));
    /// assert_eq!(test.with_planned_pulls(0), Err(TestError::BadPlan));
    /// # Ok::<(), TestError>(())
    /// ```
    pub fn with_planned_pulls(mut self, pulls: u8) -> Result<Self, TestError> {
        if !(1..=MAX_PULLS).contains(&usize::from(pulls)) {
            return Err(TestError::BadPlan);
        }
        self.planned = Some(pulls);
        Ok(self)
    }

    /// Adds another look at the gauge length, the cloth lying free, after the pulls made so far.
    ///
    /// # Errors
    ///
    /// [`TestError::LooksDisagree`] unless it lies within a tenth of the first, [`TestError::TooManyLooks`]; the test is
    /// as it was.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest, TestError};
    ///
    /// let mut test = PullTest::new(Length::from_mm(250), Grain::Bias)?;
    /// test.add_look(Length::from_mm(251))?;
    /// assert_eq!(test.looks().count(), 2);
    /// assert_eq!(test.add_look(Length::from_mm(25)), Err(TestError::LooksDisagree));
    /// # Ok::<(), TestError>(())
    /// ```
    pub fn add_look(&mut self, length: Length) -> Result<(), TestError> {
        let apart = i64::from(length.steps()) - i64::from(self.gauge.steps());
        if apart.abs() * 10 > i64::from(self.gauge.steps()) {
            return Err(TestError::LooksDisagree);
        }
        let after_pulls = u8::try_from(self.pulls.len()).unwrap_or(u8::MAX);
        self.later_looks.push(Look { after_pulls, length }).map_err(|_| TestError::TooManyLooks)
    }

    /// Adds a pull.
    ///
    /// # Errors
    ///
    /// [`TestError::ExtendedBelowGauge`], [`TestError::ExtendedTooLong`] (over [`MAX_LENGTH`]),
    /// [`TestError::MoreThanCloth`] (more stretch than any cloth gives), [`TestError::TooManyPulls`]; the test is as it
    /// was.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest, TestError};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// assert_eq!(test.add_pull(Length::from_mm(99)), Err(TestError::ExtendedBelowGauge { likely: None }));
    /// # Ok::<(), TestError>(())
    /// ```
    pub fn add_pull(&mut self, extended: Length) -> Result<(), TestError> {
        self.refuse(extended, self.pulls.len(), Construction::Other)?;
        self.pulls.push(extended).map_err(|_| TestError::TooManyPulls)
    }

    /// Adds a pull from a log, which may hold up to eleven times the gauge: earlier programs took that. Such a test can be
    /// read and shown, and never gets a plain answer.
    ///
    /// # Errors
    ///
    /// As for [`PullTest::add_pull`], the most stretch being 1000 %.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// assert!(test.add_pull(Length::from_mm(1050)).is_err());
    /// test.add_stored_pull(Length::from_mm(1050))?;
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    pub fn add_stored_pull(&mut self, extended: Length) -> Result<(), TestError> {
        match self.refuse(extended, self.pulls.len(), Construction::Other) {
            Err(TestError::MoreThanCloth { .. })
                if extended <= MAX_LENGTH && i64::from(extended.steps()) <= 11 * i64::from(self.gauge.steps()) => {}
            refused => refused?,
        }
        self.pulls.push(extended).map_err(|_| TestError::TooManyPulls)
    }

    /// Refuses pulls that give more stretch than cloth of this construction does.
    ///
    /// # Errors
    ///
    /// [`TestError::MoreThanCloth`] for the first pull that does, with what was probably meant.
    ///
    /// ```
    /// use tenter_core::{Construction, Grain, Length, PullTest};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(267))?;
    /// assert!(test.possible_for(Construction::Knit).is_ok());
    /// let refused = test.possible_for(Construction::Woven).unwrap_err();
    /// assert_eq!(refused.likely().unwrap().likely.show(tenter_core::Unit::Mm).to_string(), "105.118125 mm");
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    pub fn possible_for(&self, construction: Construction) -> Result<(), TestError> {
        self.pulls.iter().enumerate().try_for_each(|(index, pull)| self.refuse(*pull, index, construction))
    }

    /// Refuses a pull that no such cloth gives.
    fn refuse(&self, extended: Length, index: usize, construction: Construction) -> Result<(), TestError> {
        let likely = || likely_slip(self.gauge, extended, u8::try_from(index).unwrap_or(u8::MAX), construction);
        if extended < self.gauge {
            return Err(TestError::ExtendedBelowGauge { likely: likely() });
        }
        let most = construction.most_percent();
        let (gauge, extended) = (i64::from(self.gauge.steps()), i64::from(extended.steps()));
        if (extended - gauge) * 100 > gauge * i64::from(most) {
            return Err(TestError::MoreThanCloth { most, likely: likely() });
        }
        if extended > i64::from(MAX_LENGTH.steps()) {
            return Err(TestError::ExtendedTooLong { likely: likely() });
        }
        Ok(())
    }

    /// Adds a reading `seconds` after the release of the newest pull; readings stay in the order of time.
    ///
    /// A reading a little below the gauge is kept: growth is then negative and recovery above 100 %.
    ///
    /// # Errors
    ///
    /// [`TestError::RestBeforePull`], [`TestError::RecoveredAboveExtended`], [`TestError::RecoveredFarBelowGauge`]
    /// (under nine tenths of it), [`TestError::RestTooLong`], [`TestError::RestTwice`] (the same second twice),
    /// [`TestError::TooManyRests`]; the test is as it was.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest, TestError};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(105))?;
    /// assert_eq!(test.add_rest(60, Length::from_mm(106)), Err(TestError::RecoveredAboveExtended { likely: None }));
    /// # Ok::<(), TestError>(())
    /// ```
    pub fn add_rest(&mut self, seconds: u32, recovered: Length) -> Result<(), TestError> {
        let (Some(extended), Some(index)) = (self.pulls.last(), self.pulls.len().checked_sub(1)) else {
            return Err(TestError::RestBeforePull);
        };
        let likely = || {
            let rest = u8::try_from(self.rests.len()).unwrap_or(u8::MAX);
            likely_recovered(self.gauge, *extended, recovered, rest)
        };
        if recovered > *extended {
            return Err(TestError::RecoveredAboveExtended { likely: likely() });
        }
        if i64::from(recovered.steps()) * 10 < i64::from(self.gauge.steps()) * 9 {
            return Err(TestError::RecoveredFarBelowGauge { likely: likely() });
        }
        if seconds > MAX_REST_SECONDS {
            return Err(TestError::RestTooLong);
        }
        let after_pull = u8::try_from(index).unwrap_or(u8::MAX);
        let key = (after_pull, seconds);
        let place = self.rests.partition_point(|rest| (rest.after_pull, rest.seconds) < key);
        if self.rests.get(place).is_some_and(|rest| (rest.after_pull, rest.seconds) == key) {
            return Err(TestError::RestTwice);
        }
        if self.rests.is_full() {
            return Err(TestError::TooManyRests);
        }
        // Each later reading moves up by one.
        let mut moved = Rest { after_pull, seconds, recovered };
        for later in self.rests.iter_mut().skip(place) {
            core::mem::swap(later, &mut moved);
        }
        self.rests.push(moved).map_err(|_| TestError::TooManyRests)
    }

    /// The distance between the marks before the pull, as first read.
    #[must_use]
    pub const fn gauge(&self) -> Length {
        self.gauge
    }

    /// The grain that was pulled.
    #[must_use]
    pub const fn grain(&self) -> Grain {
        self.grain
    }

    /// The scale the lengths were read on.
    #[must_use]
    pub const fn scale(&self) -> Scale {
        self.scale
    }

    /// How the swatch was held.
    #[must_use]
    pub const fn held(&self) -> Held {
        self.held
    }

    /// What pulled.
    #[must_use]
    pub const fn load(&self) -> Load {
        self.load
    }

    /// Whether a settling pull was made first and not counted.
    #[must_use]
    pub const fn settled(&self) -> bool {
        self.settled
    }

    /// Whether the first look at the gauge length came before the settling pull.
    #[must_use]
    pub const fn gauge_before_settling(&self) -> bool {
        self.gauge_before_settling
    }

    /// How many pulls were planned before the first was made, where somebody said so.
    #[must_use]
    pub const fn planned_pulls(&self) -> Option<u8> {
        self.planned
    }

    /// Every look at the gauge length, the first at [`PullTest::gauge`].
    pub fn looks(&self) -> impl Iterator<Item = Look> + Clone + '_ {
        core::iter::once(Look { after_pulls: 0, length: self.gauge }).chain(self.later_looks.iter().copied())
    }

    /// Which pull settled the cloth and so does not count: the first of several, where none was made before.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(105))?;
    /// assert_eq!(test.settling_pull(), None); // Better one first pull than none.
    /// test.add_pull(Length::from_mm(106))?;
    /// assert_eq!(test.settling_pull(), Some(0));
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub fn settling_pull(&self) -> Option<usize> {
        (!self.settled && self.pulls.len() > 1).then_some(0)
    }

    /// The extended lengths, one a pull, in the order they were made.
    #[must_use]
    pub fn pulls(&self) -> &[Length] {
        &self.pulls
    }

    /// The test where there is a pull.
    pub(crate) fn pulled(&self) -> Result<&Self, TestError> {
        if self.pulls.is_empty() { Err(TestError::NoPull) } else { Ok(self) }
    }

    /// The readings after release, by pull and then by time.
    #[must_use]
    pub fn rests(&self) -> &[Rest] {
        &self.rests
    }

    /// Takes back the newest reading, a look or a rest before the pull it follows; false when there is none but the
    /// first look.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, PullTest};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(105))?;
    /// assert!(test.undo() && test.pulls().is_empty() && !test.undo());
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    pub fn undo(&mut self) -> bool {
        if self.later_looks.last().is_some_and(|look| usize::from(look.after_pulls) == self.pulls.len()) {
            return self.later_looks.pop().is_some();
        }
        let newest = self.pulls.len().checked_sub(1);
        let rests_follow = self.rests.last().is_some_and(|rest| Some(usize::from(rest.after_pull)) == newest);
        if rests_follow { self.rests.pop().is_some() } else { self.pulls.pop().is_some() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn test_100_to(extended: i16) -> PullTest {
        let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
        test.add_pull(Length::from_mm(extended)).unwrap();
        test
    }

    #[test]
    fn keeps_what_happens_in_real_cloth() {
        let mut test = test_100_to(105);
        test.add_rest(60, Length::from_mm(99)).unwrap();
        assert_eq!(test.add_rest(61, Length::from_mm(89)), Err(TestError::RecoveredFarBelowGauge { likely: None }));
    }

    #[test]
    fn what_no_cloth_gives_is_refused_with_what_was_meant() {
        let mut test = test_100_to(400);
        let likely = |error: TestError| error.likely().map(|slip| slip.likely);
        let refused = test.add_pull(Length::from_mm(401)).unwrap_err();
        assert_eq!(likely(refused), Some(Length::from_steps(252_598)));
        assert!(matches!(refused, TestError::MoreThanCloth { most: 300, .. }), "{refused:?}");
        assert_eq!(likely(test.add_pull(Length::from_mm(1050)).unwrap_err()), Some(Length::from_mm(105)));
        assert_eq!(likely(test.add_rest(60, Length::from_mm(1010)).unwrap_err()), Some(Length::from_mm(101)));
        assert_eq!(likely(test.add_rest(60, Length::from_mm(10)).unwrap_err()), Some(Length::from_mm(100)));
    }

    #[test]
    fn orders_rests_and_refuses_doubles() {
        let mut test = test_100_to(110);
        test.add_rest(1800, Length::from_mm(101)).unwrap();
        test.add_rest(60, Length::from_mm(103)).unwrap();
        assert_eq!(test.add_rest(60, Length::from_mm(102)), Err(TestError::RestTwice));
        test.add_pull(Length::from_mm(111)).unwrap();
        test.add_rest(60, Length::from_mm(103)).unwrap();
        let order: std::vec::Vec<_> = test.rests().iter().map(|r| (r.after_pull, r.seconds)).collect();
        assert_eq!(order, [(0, 60), (0, 1800), (1, 60)]);
    }

    #[test]
    fn full_and_undone() {
        let mut test = test_100_to(105);
        for _ in 1..MAX_PULLS {
            test.add_pull(Length::from_mm(106)).unwrap();
        }
        assert_eq!(test.add_pull(Length::from_mm(106)), Err(TestError::TooManyPulls));
        for seconds in 0..10 {
            test.add_rest(seconds, Length::from_mm(101)).unwrap();
        }
        assert_eq!(test.add_rest(99, Length::from_mm(101)), Err(TestError::TooManyRests));
        let mut undone = 0;
        while test.undo() {
            undone += 1;
        }
        assert_eq!(undone, MAX_PULLS + MAX_RESTS);
    }
}
