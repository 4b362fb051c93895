//! The screens, and where one comes back to.

/// A screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Screen {
    /// What to measure.
    #[default]
    Home,
    /// Dialling a gauge length of one's own.
    Gauge,
    /// The log is full.
    Full,
    /// No log answers.
    NoLog,
    /// One pull that does not count; then the marks are laid.
    Settle,
    /// Pull and hold, with a running clock.
    Pull,
    /// Dialling the extended length.
    Extended,
    /// Let go.
    Release,
    /// Waiting for the reading after release.
    Rest,
    /// Dialling the recovered length.
    Recovered,
    /// Dialling the gauge length as it reads now.
    Look,
    /// What next.
    Choice,
    /// The readings, the newest first.
    Readings,
    /// What to do with one of them.
    Reading,
    /// The power went in the middle of a test.
    Resume,
    /// Throw the test away?
    Discard,
    /// The answer, its figures, what would settle it.
    Result,
    /// Dialling the tag number.
    Tag,
    /// The tag may be another cloth's.
    TagTaken,
    /// Being written.
    Saving,
    /// Written.
    Saved,
    /// Not written.
    NotSaved,
    /// Choosing a saved test.
    Shelf,
    /// What to do with its cloth.
    Cloth,
    /// Dialling the length of a seam.
    Seam,
    /// How two cloths go together.
    Pair,
    /// Dialling the finished girth of an opening.
    Opening,
    /// Dialling the girth it must pass over.
    Body,
    /// Whether it passes.
    Reach,
}

impl Screen {
    /// The rows of its list; none for a screen that is no list.
    #[must_use]
    pub const fn rows(self) -> &'static [ListRow] {
        match self {
            Self::Home => {
                &[ListRow::Start, ListRow::Demand, ListRow::Grain, ListRow::Gauge, ListRow::Saved, ListRow::By]
            }
            Self::Reading => &[ListRow::DialAgain, ListRow::Drop],
            Self::Resume => &[ListRow::GoOn, ListRow::Discard],
            Self::TagTaken => &[ListRow::ThatTag, ListRow::OtherTag],
            Self::Settle => &[ListRow::Settled, ListRow::SkipSettling],
            Self::Release => &[ListRow::Released, ListRow::SkipRest],
            Self::Choice => &[
                ListRow::PullAgain,
                ListRow::Finish,
                ListRow::ReadAgain,
                ListRow::Correct,
                ListRow::LookAgain,
                ListRow::PassOver,
                ListRow::Discard,
            ],
            Self::Cloth => &[ListRow::Join, ListRow::PassOver, ListRow::GoBack],
            Self::Discard => &[ListRow::Keep, ListRow::ThrowAway],
            Self::Full | Self::NoLog => &[ListRow::MeasureAnyway, ListRow::GoBack],
            Self::NotSaved => &[ListRow::TryAgain, ListRow::GoBack],
            _ => &[],
        }
    }

    /// Its pages, where it has some.
    #[must_use]
    pub const fn pages(self) -> Option<u8> {
        match self {
            Self::Result => Some(3),
            Self::Pair => Some(2),
            _ => None,
        }
    }

    /// Whether a number is dialled on it.
    #[must_use]
    pub const fn is_dial(self) -> bool {
        matches!(
            self,
            Self::Gauge
                | Self::Extended
                | Self::Recovered
                | Self::Look
                | Self::Tag
                | Self::Seam
                | Self::Opening
                | Self::Body
        )
    }

    /// Whether it is about a saved test, or about an opening.
    #[must_use]
    pub const fn is_making(self) -> bool {
        matches!(self, Self::Shelf | Self::Cloth | Self::Seam | Self::Pair | Self::Opening | Self::Body | Self::Reach)
    }

    /// Whether a clock on it runs.
    #[must_use]
    pub const fn has_clock(self) -> bool {
        matches!(self, Self::Pull | Self::Rest)
    }
}

/// A row of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListRow {
    /// Begin, or go on with the test at hand.
    Start,
    /// The demand to hold the cloth against.
    Demand,
    /// The grain to pull.
    Grain,
    /// The gauge length.
    Gauge,
    /// The settling pull was made.
    Settled,
    /// No settling pull.
    SkipSettling,
    /// Let go now.
    Released,
    /// No reading after release.
    SkipRest,
    /// One pull more.
    PullAgain,
    /// To the answer.
    Finish,
    /// Another reading after the same release.
    ReadAgain,
    /// Dial a reading again, or drop it.
    Correct,
    /// Another look at the gauge length.
    LookAgain,
    /// Dial a reading again.
    DialAgain,
    /// Drop a reading.
    Drop,
    /// Go on with a test after the power went.
    GoOn,
    /// The tag is meant.
    ThatTag,
    /// Another tag.
    OtherTag,
    /// Who pulls.
    By,
    /// Throw the test away.
    Discard,
    /// Keep it after all.
    Keep,
    /// Throw it away for good.
    ThrowAway,
    /// Measure without a log.
    MeasureAnyway,
    /// Back.
    GoBack,
    /// Write again.
    TryAgain,
    /// The saved tests.
    Saved,
    /// Join it with another cloth.
    Join,
    /// Whether an opening of it passes over.
    PassOver,
}
