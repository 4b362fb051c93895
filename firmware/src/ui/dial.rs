//! Entering a number: with two keys quickly, with one button digit by digit.

use tenter_core::Length;

/// What is dialled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DialKind {
    /// Half millimetres.
    Metric,
    /// Sixteenths of an inch.
    Inch,
    /// Whole millimetres, as a tape reads.
    Tape,
    /// Quarter inches, as a tape reads.
    InchTape,
    /// Whole numbers.
    Count,
}

impl DialKind {
    /// The places of the number, in finest steps: 10 mm, 1 mm, ½ mm; 1 in, ¼ in, 1/16 in; 10 in, 1 in, ¼ in; 100, 10, 1.
    const fn places(self) -> [i32; 3] {
        match self {
            Self::Metric => [20, 2, 1],
            Self::Inch => [16, 4, 1],
            Self::InchTape => [40, 4, 1],
            Self::Tape | Self::Count => [100, 10, 1],
        }
    }

    /// Steps of 1/1600 mm in the finest step; 1 for a count.
    const fn unit(self) -> i32 {
        match self {
            Self::Metric => 800,
            Self::Inch => 2540,
            Self::Tape => 1600,
            Self::InchTape => 10_160,
            Self::Count => 1,
        }
    }
}

/// A number being entered, always within its limits.
///
/// ```
/// use tenter_core::Length;
/// use tenter_firmware::ui::Dial;
///
/// let mut dial = Dial::length(false, Length::from_mm(100), Length::from_mm(100), Length::from_mm(300));
/// dial.more(3);
/// assert_eq!(dial.as_length(), Length::from_steps(101 * 1600 + 800));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Dial {
    kind: DialKind,
    value: i32,
    least: i32,
    most: i32,
    /// The place that the only button changes, from the coarsest.
    place: u8,
    /// The place it begins with.
    first: u8,
}

impl Dial {
    /// A length in half millimetres, or in sixteenths of an inch, between two limits. Limits that are no whole steps
    /// are narrowed.
    #[must_use]
    pub fn length(inch: bool, start: Length, least: Length, most: Length) -> Self {
        Self::of(if inch { DialKind::Inch } else { DialKind::Metric }, start, least, most)
    }

    /// A length of a tape, from 50 mm to 2 m, in whole millimetres or in quarter inches.
    #[must_use]
    pub fn tape(inch: bool, start: Length) -> Self {
        let kind = if inch { DialKind::InchTape } else { DialKind::Tape };
        Self::of(kind, start, Length::from_mm(50), Length::from_mm(2000))
    }

    fn of(kind: DialKind, start: Length, least: Length, most: Length) -> Self {
        let unit = kind.unit();
        let floor = |length: Length| length.steps().div_euclid(unit);
        let least = floor(Length::from_steps(least.steps().saturating_add(unit - 1)));
        let most = floor(most).max(least);
        Self { kind, value: floor(start).clamp(least, most), least, most, place: 0, first: 0 }
    }

    /// A whole number from 1 to 999.
    #[must_use]
    pub fn count(start: u16) -> Self {
        Self { kind: DialKind::Count, value: i32::from(start).clamp(1, 999), least: 1, most: 999, place: 0, first: 0 }
    }

    /// The same, where the number lies near: the only button begins at the second place, which goes on into the first.
    #[must_use]
    pub const fn finely(self) -> Self {
        Self { place: 1, first: 1, ..self }
    }

    /// What is dialled.
    #[must_use]
    pub const fn kind(&self) -> DialKind {
        self.kind
    }

    /// The number as a length.
    #[must_use]
    pub const fn as_length(&self) -> Length {
        Length::from_steps(self.value.saturating_mul(self.kind.unit()))
    }

    /// The number as a count.
    #[must_use]
    pub fn as_count(&self) -> u16 {
        u16::try_from(self.value).unwrap_or(u16::MAX)
    }

    /// The size of the place that the only button changes.
    #[must_use]
    pub fn place(&self) -> i32 {
        self.kind.places().get(usize::from(self.place)).copied().unwrap_or(1)
    }

    /// Raises the number by so many finest steps, to its limit at most.
    pub fn more(&mut self, steps: u16) {
        self.value = self.value.saturating_add(steps.into()).min(self.most);
    }

    /// Lowers the number by so many finest steps, to its limit at least.
    pub fn less(&mut self, steps: u16) {
        self.value = self.value.saturating_sub(steps.into()).max(self.least);
    }

    /// The only button's tap: raises the digit at hand by one; past the last it begins again.
    pub fn step(&mut self) {
        let size = self.place();
        let wheel = match self.place.checked_sub(1) {
            _ if self.place == self.first => i32::MAX,
            None => i32::MAX,
            Some(before) => self.kind.places().get(usize::from(before)).copied().unwrap_or(i32::MAX),
        };
        let next = self.value.saturating_add(size);
        let wrapped =
            if next.div_euclid(wheel) > self.value.div_euclid(wheel) { next.saturating_sub(wheel) } else { next };
        // Past the upper end the coarsest digit begins again at the lower end.
        self.value = if wrapped > self.most { self.least.saturating_add(self.value.rem_euclid(size)) } else { wrapped };
        self.value = self.value.clamp(self.least, self.most);
    }

    /// The only button's hold: goes to the next finer digit; true when the number is complete.
    pub fn accept(&mut self) -> bool {
        let last = usize::from(self.place).saturating_add(1) >= self.kind.places().len();
        if !last {
            self.place = self.place.saturating_add(1);
        }
        last
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn hundred() -> Dial {
        Dial::length(false, Length::from_mm(100), Length::from_mm(100), Length::from_mm(300))
    }

    #[test]
    fn one_button_reaches_187_5() {
        let mut dial = hundred();
        for (taps, done) in [(8, false), (7, false), (1, true)] {
            for _ in 0..taps {
                dial.step();
            }
            assert_eq!(dial.accept(), done);
        }
        assert_eq!(dial.as_length(), Length::from_steps(187 * 1600 + 800));
    }

    #[test]
    fn digits_go_round() {
        let mut dial = hundred();
        dial.accept();
        for _ in 0..10 {
            dial.step();
        }
        assert_eq!(dial.as_length(), Length::from_mm(100));
    }

    #[test]
    fn inches_start_on_their_marks() {
        let four = Length::from_inch_64ths(256);
        let mut dial = Dial::length(true, four, four, Length::from_inch_64ths(1280));
        dial.more(22);
        assert_eq!(dial.as_length(), Length::from_inch_64ths(344));
    }

    proptest! {
        #[test]
        fn stays_within_its_limits(
            inch: bool, start: i32, least in 0..16_000_000i32, span in 0..16_000_000i32,
            moves in prop::collection::vec((0..4u8, any::<u16>()), 0..40),
        ) {
            let (low, high) = (Length::from_steps(least), Length::from_steps(least + span));
            let mut dial = Dial::length(inch, Length::from_steps(start), low, high);
            for (kind, amount) in moves {
                match kind {
                    0 => dial.more(amount),
                    1 => dial.less(amount),
                    2 => dial.step(),
                    _ => { dial.accept(); }
                }
                prop_assert!(dial.as_length() >= low);
                prop_assert!(dial.as_length() <= high || span < 2540);
            }
        }
    }
}
