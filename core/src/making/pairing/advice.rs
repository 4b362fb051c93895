//! What to do about two cloths in one seam.

use heapless::Vec;

use super::{Between, Least, Match, Pair, Which};
use crate::answer::source::Source;
use crate::answer::verdict::Answer;
use crate::making::stitch::Stitch;

impl Pair {
    /// What to do, each line with its reason and source: only what the figures call for.
    ///
    /// ```
    /// use tenter_core::making::pairing::{Advice, Edge, Pair, Which};
    /// use tenter_core::{Confidence, Figure, Length, Ratio};
    ///
    /// let edge = |percent| Edge { stretch: Figure::exact(Ratio::new(percent, 100).unwrap()), growth: None, washing: None };
    /// let pair = Pair::of(&edge(5), &edge(20), Length::from_mm(600), None, Confidence::default()).unwrap();
    /// assert!(pair.advice().iter().any(|line| line.advice == Advice::Below(Which::Second)));
    /// ```
    #[must_use]
    pub fn advice(&self) -> Vec<AdviceLine, MOST_LINES> {
        let mut lines = Vec::new();
        self.advise(|line| {
            let _ = lines.push(line); // Room for every line.
        });
        lines
    }

    /// As [`Pair::advice`], line by line: what of them is not looked at takes no room in a program.
    ///
    /// ```
    /// use tenter_core::making::pairing::{Advice, Edge, Pair};
    /// use tenter_core::{Confidence, Figure, Length, Ratio};
    ///
    /// let edge = Edge { stretch: Figure::exact(Ratio::new(5, 100).unwrap()), growth: None, washing: None };
    /// let pair = Pair::of(&edge, &edge, Length::from_mm(600), None, Confidence::default()).unwrap();
    /// let mut first = None;
    /// pair.advise(|line| first = first.or(Some(line.advice)));
    /// assert_eq!(first, Some(Advice::NoHandling));
    /// ```
    pub fn advise(&self, mut take: impl FnMut(AdviceLine)) {
        let mut say = |advice, reason, source| take(AdviceLine { advice, reason, source });
        let reason = match self.answer {
            Match::Close(_) => AdviceReason::TooClose,
            _ if self.chances.alike < 0.5 => AdviceReason::Gap,
            _ => AdviceReason::Mismatch,
        };
        match self.answer {
            Match::Alike => say(Advice::NoHandling, AdviceReason::SameStretch, Source::Own),
            Match::Handle | Match::Close(Between::AlikeAndHandle) => {
                say(Advice::QuarterMarks, reason, UNLIKE);
                if let Some(which) = self.fuller() {
                    say(Advice::Below(which), reason, ON_TOP);
                    say(Advice::StayStitch(which), reason, Source::CommonPractice);
                }
                say(Advice::CentreOutwards, reason, Source::CommonPractice);
            }
            Match::BandToBody | Match::Close(Between::HandleAndBand) => {
                say(Advice::QuarterMarks, reason, UNLIKE);
                if let Some(which) = self.stretchier {
                    say(Advice::BandOnTop(which), reason, UNLIKE);
                }
            }
        }
        if matches!(self.answer, Match::Close(_)) {
            say(Advice::PullAgain, AdviceReason::TooClose, Source::Own);
        }
        if self.growth.is_none() {
            say(Advice::ReadGrowth, AdviceReason::NotMeasured, Source::Own);
        }
        match self.washing {
            None => say(Advice::WashJoinedSample, AdviceReason::NotMeasured, ONE_GARMENT),
            Some(washing) if washing.answer != Answer::Meets => {
                say(Advice::WashJoinedSample, AdviceReason::Washing, ONE_GARMENT);
            }
            Some(_) => {}
        }
        if self.least == Least::Stitch {
            say(Advice::StitchThatGives, AdviceReason::Stitch, Stitch::GIVE_SOURCE);
        }
    }

    /// The cloth that has more to take up: the one that stretches more, or becomes longer where both stretch the same.
    fn fuller(&self) -> Option<Which> {
        self.stretchier.or(self.growth.and_then(|growth| growth.longer)).or(self.washing.and_then(|wash| wash.longer))
    }
}

const UNLIKE: Source = Source::CommonPractice;
const ON_TOP: Source = Source::CommonPractice;
const ONE_GARMENT: Source = Source::CommonPractice;

/// The most lines of [`Pair::advice`].
pub const MOST_LINES: usize = 8;

/// What to do about a seam.
///
/// ```
/// use tenter_core::making::pairing::{Advice, Which};
///
/// assert_ne!(Advice::Below(Which::First), Advice::Below(Which::Second));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Advice {
    /// The same stretch: sew as one cloth.
    NoHandling,
    /// Mark both edges in quarters and match the marks.
    QuarterMarks,
    /// This cloth lies below, on the feed.
    Below(Which),
    /// Stay-stitch this cloth before the seam.
    StayStitch(Which),
    /// Sew from the centre outwards.
    CentreOutwards,
    /// This cloth is the short, stretchy band: on top, pulled to match.
    BandOnTop(Which),
    /// Pull both swatches again, longer marked.
    PullAgain,
    /// Read the growth of both cloths.
    ReadGrowth,
    /// Sew a joined sample and wash it.
    WashJoinedSample,
    /// Take a stitch that gives more.
    StitchThatGives,
}

/// Why.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum AdviceReason {
    /// Both stretch alike.
    SameStretch,
    /// The gap in stretch.
    Gap,
    /// A difference in length over the seam that shows, or may.
    Mismatch,
    /// The readings cannot tell.
    TooClose,
    /// Nothing was measured.
    NotMeasured,
    /// They change differently in washing, or may.
    Washing,
    /// The stitch gives less than both cloths.
    Stitch,
}

/// One line of advice.
///
/// ```
/// use tenter_core::making::{pairing::{Advice, AdviceLine, AdviceReason}, source::Source};
///
/// let line = AdviceLine { advice: Advice::CentreOutwards, reason: AdviceReason::Gap, source: Source::CommonPractice };
/// assert_eq!(line.source.to_string(), "common practice, no source");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct AdviceLine {
    /// What to do.
    pub advice: Advice,
    /// Why.
    pub reason: AdviceReason,
    /// Where it comes from.
    pub source: Source,
}
