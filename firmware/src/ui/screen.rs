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
    /// One pull that does not count.
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
    /// What next.
    Choice,
    /// Throw the test away?
    Discard,
    /// The answer, its figures, what would settle it.
    Result,
    /// Dialling the tag number.
    Tag,
    /// Being written.
    Saving,
    /// Written.
    Saved,
    /// Not written.
    NotSaved,
}

impl Screen {
    /// The rows of its list; none for a screen that is no list.
    #[must_use]
    pub const fn rows(self) -> &'static [Row] {
        match self {
            Self::Home => &[Row::Start, Row::Demand, Row::Grain, Row::Gauge],
            Self::Settle => &[Row::Settled, Row::SkipSettling],
            Self::Release => &[Row::Released, Row::SkipRest],
            Self::Choice => &[Row::PullAgain, Row::Finish, Row::ReadAgain, Row::Correct, Row::Discard],
            Self::Discard => &[Row::Keep, Row::ThrowAway],
            Self::Full | Self::NoLog => &[Row::MeasureAnyway, Row::GoBack],
            Self::NotSaved => &[Row::TryAgain, Row::GoBack],
            _ => &[],
        }
    }

    /// Whether a clock on it runs.
    #[must_use]
    pub const fn has_clock(self) -> bool {
        matches!(self, Self::Pull | Self::Rest)
    }
}

/// A row of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Row {
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
    /// Dial the newest reading again.
    Correct,
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
}
