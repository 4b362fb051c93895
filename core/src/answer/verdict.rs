//! The answers there are, and which of several decides.

use crate::number::words;

/// The answer to what is asked of a cloth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Answer {
    /// The chance of conforming reaches the confidence.
    Meets,
    /// The chance of falling short of a least figure reaches the confidence.
    Short,
    /// The chance of lying above a most figure reaches the confidence.
    Over,
    /// Too close to call.
    Close,
    /// What is asked was not measured.
    Unknown,
}

impl Answer {
    /// Whether this answer decides over an earlier one: because it is worse, or because it is the same and its chance of
    /// a yes is smaller. A chance that is not known counts as 0.
    ///
    /// ```
    /// use tenter_core::Answer::{Close, Meets, Unknown};
    ///
    /// assert!(Close.outweighs(Some(0.6), (Meets, Some(0.99))));
    /// assert!(Close.outweighs(Some(0.6), (Close, Some(0.7))));
    /// assert!(!Close.outweighs(Some(0.6), (Unknown, None)));
    /// ```
    #[must_use]
    pub fn outweighs(self, chance: Option<f32>, (had, its_chance): (Self, Option<f32>)) -> bool {
        if self == had { chance.unwrap_or(0.0) < its_chance.unwrap_or(0.0) } else { self.rank() > had.rank() }
    }

    /// The worse of two answers: a plain no, then what was not measured, then what is too close, then a yes. Of
    /// two plain noes the first.
    ///
    /// ```
    /// use tenter_core::Answer::{Close, Meets, Short, Unknown};
    ///
    /// assert_eq!(Meets.worse(Close).worse(Unknown).worse(Short), Short);
    /// ```
    #[must_use]
    pub const fn worse(self, other: Self) -> Self {
        if other.rank() > self.rank() { other } else { self }
    }

    /// What is left of an answer when the readings are doubted: *close* for *meets*, *short* and *over*.
    ///
    /// ```
    /// use tenter_core::Answer;
    ///
    /// assert_eq!(Answer::Meets.doubted(), Answer::Close);
    /// assert_eq!(Answer::Unknown.doubted(), Answer::Unknown);
    /// ```
    #[must_use]
    pub const fn doubted(self) -> Self {
        match self {
            Self::Meets | Self::Short | Self::Over | Self::Close => Self::Close,
            Self::Unknown => Self::Unknown,
        }
    }

    /// The place in the order of answers, the best first: 0 a yes, 1 too close, 2 not measured, 3 a plain no.
    ///
    /// ```
    /// use tenter_core::Answer;
    ///
    /// let mut answers = [Answer::Over, Answer::Unknown, Answer::Meets];
    /// answers.sort_by_key(|answer| answer.rank());
    /// assert_eq!(answers, [Answer::Meets, Answer::Unknown, Answer::Over]);
    /// ```
    #[must_use]
    pub const fn rank(self) -> u8 {
        match self {
            Self::Meets => 0,
            Self::Close => 1,
            Self::Unknown => 2,
            Self::Short | Self::Over => 3,
        }
    }
}

words!(Answer { Meets => "meets", Short => "short", Over => "over", Close => "close", Unknown => "unknown" });
