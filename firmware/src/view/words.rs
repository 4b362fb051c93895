//! The words of the small screen, 21 characters a line.

use tenter_core::making::pairing::{Advice, Between, Match, Which};
use tenter_core::making::sizing::{Reach, Usage};
use tenter_core::{Answer, Doubt, Note};

use crate::ui::{ListRow, MemoryFault, Restart, Screen, TagUse};

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
        Some(Answer::Short | Answer::Over) => ["Not for this.", ""],
        Some(Answer::Unknown) if read_back => ["It did not extend:", "judge by growth."],
        Some(Answer::Unknown) => ["Read it after release", "too: Read again."],
        Some(Answer::Close) => ["Not to be believed:", "read it all again."],
    }
}

/// A row, or its first words where the model says the rest.
pub const fn row(row: ListRow, measured: bool) -> &'static str {
    match row {
        ListRow::Start if measured => "Go on measuring",
        ListRow::Start => "Measure",
        ListRow::Demand => "For ",
        ListRow::Grain => "Grain ",
        ListRow::Gauge => "Marks ",
        ListRow::Settled => "Done",
        ListRow::SkipSettling | ListRow::SkipRest => "Skip it",
        ListRow::Released => "Let go now",
        ListRow::PullAgain => "Pull again",
        ListRow::Finish => "Answer",
        ListRow::ReadAgain => "Read again",
        ListRow::Correct => "Correct or drop",
        ListRow::DialAgain => "Dial it again",
        ListRow::Drop => "Drop it",
        ListRow::GoOn => "Go on with it",
        ListRow::ThatTag => "Yes, this cloth",
        ListRow::OtherTag => "Another tag",
        ListRow::By => "By ",
        ListRow::LookAgain => "Read marks again",
        ListRow::Discard => "Throw away",
        ListRow::Keep => "Keep it",
        ListRow::ThrowAway => "Throw it away",
        ListRow::MeasureAnyway if measured => "Done, not saved",
        ListRow::MeasureAnyway => "Measure, do not save",
        ListRow::GoBack => "Back",
        ListRow::TryAgain => "Try again",
        ListRow::Saved => "Saved tests",
        ListRow::Join => "Join with another",
        ListRow::PassOver => "Fits over?",
    }
}

/// Why there is no log.
pub const fn fault(fault: Option<MemoryFault>) -> &'static str {
    match fault {
        None | Some(MemoryFault::Silent) => "Memory: no answer",
        Some(MemoryFault::Newer) => "Memory: newer program",
        Some(MemoryFault::TooSmall) => "Memory: too small",
    }
}

/// Why it started by itself.
pub const fn restart(restart: Option<Restart>) -> &'static str {
    match restart {
        None => "The power went",
        Some(Restart::Panic) => "Restarted: own fault",
        Some(Restart::Watchdog) => "Restarted: it hung",
    }
}

/// What is known of a tag that is not free, behind its number.
pub const fn tag_use(tag: &TagUse) -> &'static str {
    match tag {
        TagUse::Free => " is free",
        TagUse::Given => ": given before",
        TagUse::Cloth(_) => " is on:",
        TagUse::Unknown => " is not known",
    }
}

pub const fn note(note: Note) -> &'static str {
    match note {
        Note::OnePull => "One pull: do 2 more",
        Note::NoSettlingPull => "1st pull reads low",
        Note::FirstPullSettled => "1st pull not counted",
        Note::ShortGauge => "Short marks read high",
        Note::BetweenLines => "Read between lines",
        Note::EarlyRest => "Read back early",
        Note::RecoveryNotReadable => "Judge by growth",
        Note::GradesDisagree => "Go by the worse grade",
        Note::ComesBackPoorly => "It will bag",
        Note::ShorterThanBefore => "Shorter: read again",
    }
}

/// Why not to believe the readings.
pub const fn doubt(doubt: Doubt) -> &'static str {
    match doubt {
        Doubt::OddPull { .. } => "One pull is far off",
        Doubt::OddLook => "The two looks differ",
        Doubt::OddRecovered => "One reading far off",
        Doubt::Rising => "They rise: a slip?",
        Doubt::Falling => "They fall: pull firm",
        Doubt::NotReleased { .. } => "Not let go?",
        Doubt::GrowthRises { .. } => "It grew after release",
        Doubt::SlipOfUnit(_) => "Check marks and unit",
        Doubt::UnusualStretch => "More than cloth gives",
        Doubt::RatioForStretch { .. } => "Is so much asked for?",
        Doubt::ShortMarks { .. } => "Marks: too short",
        Doubt::WiderThanCloth => "Wider than the cloth",
    }
}

/// How two cloths go together.
pub const fn pairing(answer: Match) -> &'static str {
    match answer {
        Match::Alike => "ALIKE",
        Match::Handle => "HANDLE",
        Match::BandToBody => "BAND",
        Match::Unlike => "UNLIKE",
        Match::TooFirm => "TOO FIRM",
        Match::Close(_) => "CLOSE",
    }
}

/// Between which two it is too close to call.
pub const fn between(answer: Match) -> Option<&'static str> {
    match answer {
        Match::Close(Between::AlikeAndHandle) => Some("alike, or to handle?"),
        Match::Close(Between::HandleAndUnlike) => Some("to handle, or unlike?"),
        Match::Close(Between::GivesAndTooFirm) => Some("does it give enough?"),
        _ => None,
    }
}

/// Whether a difference in length shows.
pub const fn shows(answer: Answer) -> &'static str {
    match answer {
        Answer::Meets => "which will not show",
        Answer::Close => "which may show",
        _ => "which shows",
    }
}

/// What to do about a seam; with a cloth where one is meant.
pub const fn advice(advice: Advice) -> (&'static str, Option<Which>) {
    match advice {
        Advice::NoHandling => ("Sew as one cloth.", None),
        Advice::QuarterMarks => ("Mark both in quarters", None),
        Advice::Below(which) => ("Below: ", Some(which)),
        Advice::StayStitch(which) => ("Stay-stitch ", Some(which)),
        Advice::CentreOutwards => ("Sew from the middle", None),
        Advice::BandOnTop(which) => ("Pull on top: ", Some(which)),
        Advice::TapeEdge(which) => ("Tape edge: ", Some(which)),
        Advice::OtherCloth(which) => ("Or not ", Some(which)),
        Advice::PullAgain(None) => ("Pull both again", None),
        Advice::PullAgain(which) => ("Pull again: ", which),
        Advice::ReadGrowth => ("Read both back too", None),
        Advice::ReadGrowthAgain(None) => ("Read growth again", None),
        Advice::ReadGrowthAgain(which) => ("Growth again: ", which),
        Advice::WashAgain => ("Wash both again", None),
        Advice::WillBag(which) => ("Will bag: ", Some(which)),
        Advice::WashJoinedSample => ("Wash a joined sample", None),
        Advice::StitchThatGives => ("Stitch that gives", None),
    }
}

/// What to do about an opening.
pub const fn opening(reach: &Reach) -> &'static str {
    match (reach.answer, reach.usage) {
        (Answer::Meets, Usage::Nothing) => "As wide: it passes.",
        (Answer::Meets, Usage::Half) => "It passes with ease.",
        (Answer::Meets, _) => "It passes, but tight.",
        (Answer::Close, _) => "Wider, or pull again.",
        _ => "Cut wider, or a zip.",
    }
}

/// What the buttons do: left and right at the foot of the screen.
pub const fn hint(screen: Screen, one_button: bool, can_save: bool) -> (&'static str, &'static str) {
    match (screen, one_button) {
        (Screen::Saving, _) => ("", ""),
        (screen, true) if screen.is_dial() => ("tap +", "hold: next"),
        (screen, false) if screen.is_dial() => ("- +", "next: take it"),
        (Screen::Shelf, true) => ("tap: older", "hold: take"),
        (Screen::Shelf, false) => ("- +", "next: take it"),
        (Screen::Reach, true) => ("", "hold: done"),
        (Screen::Reach, false) => ("back", "next: done"),
        (Screen::Pair, true) => ("tap: more", "hold: done"),
        (Screen::Pair, false) => ("- + more", "next: done"),
        (Screen::Pull, true) => ("", "tap: let go"),
        (Screen::Pull, false) => ("back", "next: let go"),
        (Screen::Rest, true) => ("", "hold: dial it"),
        (Screen::Rest, false) => ("back", "next: dial it"),
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
