//! How a cloth stands to what is asked of it, all in all.

use tenter_core::Answer;

/// The answer about a cloth, with what a pull test alone cannot know: how much there is of it, and how it is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// It meets what is asked.
    Meets,
    /// It meets what is asked, but there is not enough of it.
    TooLittle,
    /// Nothing is asked of it: the choice is the reader's.
    Choose,
    /// Too close to call.
    Close,
    /// Not measured.
    Unknown,
    /// It gives too little.
    Short,
    /// It gives or grows too much.
    Over,
    /// It is of another kind than asked, such as a knit for a role that wants a woven, or a lining for the outside.
    OtherKind,
}

impl From<Answer> for Verdict {
    fn from(answer: Answer) -> Self {
        match answer {
            Answer::Meets => Self::Meets,
            Answer::Close => Self::Close,
            Answer::Unknown => Self::Unknown,
            Answer::Short => Self::Short,
            Answer::Over => Self::Over,
        }
    }
}

impl Verdict {
    /// Every verdict, the best first.
    pub const ALL: [Self; 8] = [
        Self::Meets,
        Self::TooLittle,
        Self::Choose,
        Self::Close,
        Self::Unknown,
        Self::Short,
        Self::Over,
        Self::OtherKind,
    ];

    /// Whether the cloth is refused for what it is or does.
    #[must_use]
    pub const fn is_refused(self) -> bool {
        matches!(self, Self::Short | Self::Over | Self::OtherKind)
    }

    /// Whether it may still do, once more is known.
    #[must_use]
    pub const fn is_open(self) -> bool {
        matches!(self, Self::Close | Self::Unknown)
    }
}
