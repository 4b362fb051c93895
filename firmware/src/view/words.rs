//! The words of the small screen, 21 characters a line.

use core::fmt;

use tenter_core::{Answer, Decimal, Note};

use crate::ui::{Row, Screen};

pub const fn answer(answer: Answer) -> &'static str {
    match answer {
        Answer::Meets => "MEETS",
        Answer::Short => "SHORT",
        Answer::Over => "OVER",
        Answer::Close => "CLOSE",
        Answer::Unknown => "UNKNOWN",
    }
}

/// What to do when nothing would settle it by measuring again.
pub const fn next(answer: Option<Answer>, read_back: bool) -> [&'static str; 2] {
    match answer {
        None => ["Choose a demand to", "hear if it is enough."],
        Some(Answer::Meets) => ["It will do. Pull the", "other grain too?"],
        Some(Answer::Short | Answer::Over) => ["Leave it for this.", ""],
        Some(Answer::Unknown) if read_back => ["It did not extend:", "judge by growth."],
        Some(Answer::Unknown) => ["Read it after release", "too: Read again."],
        Some(Answer::Close) => ["On the limit: pull", "more, mark longer."],
    }
}

pub const fn row(row: Row, measured: bool) -> &'static str {
    match row {
        Row::Start if measured => "Go on measuring",
        Row::Start => "Measure",
        Row::Demand => "For no demand",
        Row::Grain | Row::Gauge => "",
        Row::Settled => "Done",
        Row::SkipSettling | Row::SkipRest => "Skip it",
        Row::Released => "Let go now",
        Row::PullAgain => "Pull again",
        Row::Finish => "Answer",
        Row::ReadAgain => "Read again",
        Row::Correct => "Correct the last",
        Row::Discard => "Throw away",
        Row::Keep => "Keep it",
        Row::ThrowAway => "Throw it away",
        Row::MeasureAnyway if measured => "Done, not saved",
        Row::MeasureAnyway => "Measure, do not save",
        Row::GoBack => "Back",
        Row::TryAgain => "Try again",
    }
}

pub const fn note(note: Note) -> &'static str {
    match note {
        Note::OnePull => "One pull: do 2 more",
        Note::NoSettlingPull => "Unsettled reads low",
        Note::ShortGauge => "Short marks read high",
        Note::BetweenLines => "Read between lines",
        Note::EarlyRest => "Read back early",
        Note::RecoveryNotReadable => "Judge by growth",
        Note::GradesDisagree => "Go by the worse grade",
        Note::ShorterThanBefore => "Shorter: read again",
    }
}

/// What the buttons do: left and right at the foot of the screen.
pub const fn hint(screen: Screen, one_button: bool, can_save: bool) -> (&'static str, &'static str) {
    match (screen, one_button) {
        (Screen::Saving, _) => ("", ""),
        (Screen::Gauge | Screen::Extended | Screen::Recovered | Screen::Tag, true) => ("tap +", "hold: next"),
        (Screen::Gauge | Screen::Extended | Screen::Recovered | Screen::Tag, false) => ("- +", "next: take it"),
        (Screen::Pull | Screen::Rest, true) => ("", "hold: dial it"),
        (Screen::Pull | Screen::Rest, false) => ("back", "next: dial it"),
        (Screen::Result, true) if !can_save => ("tap: more", "hold: done"),
        (Screen::Result, false) if !can_save => ("- + more", "next: done"),
        (Screen::Result, true) => ("tap: more", "hold: save"),
        (Screen::Result, false) => ("- + more", "next: save"),
        (Screen::Saved, true) => ("", "hold: done"),
        (Screen::Saved, false) => ("", "next: done"),
        (_, true) => ("tap: on", "hold: choose"),
        (_, false) => ("- +", "next: choose"),
    }
}

/// A time since release.
pub struct Duration(pub u32);

impl fmt::Display for Duration {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            long if long >= 120 => write!(f, "{} min", long / 60),
            short => write!(f, "{short} s"),
        }
    }
}

/// A chance in whole percent, never rounded to certainty.
pub struct Percent(pub f32);

impl fmt::Display for Percent {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let tenths = Decimal::round(self.0 * 100.0, 1);
        match tenths.scaled() {
            ..=0 => f.write_str("<0.1%"),
            1000.. => f.write_str(">99.9%"),
            _ => write!(f, "{tenths}%"),
        }
    }
}
