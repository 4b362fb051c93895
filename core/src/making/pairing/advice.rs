//! What to do about two cloths in one seam.

use heapless::Vec;

use super::{Between, Least, Match, Pair, PairDoubt, Which};
use crate::answer::source::Source;
use crate::answer::verdict::Answer;
use crate::making::handling::{Stay, StayLine};
use crate::making::stitch::Stitch;
use crate::reading::construction::Construction;

impl Pair {
    /// What to do, each line with its reason and source: only what the figures call for.
    ///
    /// ```
    /// use tenter_core::making::pairing::{Advice, SeamEdge, Joint, Pair, Which};
    /// use tenter_core::{Confidence, Figure, Length, Ratio};
    ///
    /// let edge = |percent| SeamEdge::new(Figure::exact(Ratio::new(percent, 100).unwrap()));
    /// let pair = Pair::of(&edge(5), &edge(20), &Joint::of(Length::from_mm(600)), Confidence::default()).unwrap();
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
    /// use tenter_core::making::pairing::{Advice, SeamEdge, Joint, Pair};
    /// use tenter_core::{Confidence, Figure, Length, Ratio};
    ///
    /// let edge = SeamEdge::new(Figure::exact(Ratio::new(5, 100).unwrap()));
    /// let pair = Pair::of(&edge, &edge, &Joint::of(Length::from_mm(600)), Confidence::default()).unwrap();
    /// let mut first = None;
    /// pair.advise(|line| first = first.or(Some(line.advice)));
    /// assert_eq!(first, Some(Advice::NoHandling));
    /// ```
    pub fn advise(&self, mut take: impl FnMut(AdviceLine)) {
        let mut say = |advice, reason, source| take(AdviceLine { advice, reason, source });
        let (fuller, reason) = self.fuller();
        match self.answer {
            Match::Alike => say(Advice::NoHandling, AdviceReason::SameStretch, Source::Own),
            Match::TooFirm | Match::Close(Between::GivesAndTooFirm) => {
                if let (Least::Cloth(which), Match::TooFirm) = (self.least, self.answer) {
                    say(Advice::OtherCloth(which), AdviceReason::Give, Source::Own);
                }
            }
            Match::Unlike => {
                if let Some(which) = self.stretchier {
                    say(Advice::TapeEdge(which), AdviceReason::Gap, TAPED);
                    say(Advice::OtherCloth(which), AdviceReason::Gap, Source::CommonPractice);
                }
            }
            Match::Handle | Match::Close(Between::AlikeAndHandle | Between::HandleAndUnlike) => {
                say(Advice::QuarterMarks, reason, UNLIKE);
                if let Some(which) = fuller {
                    say(Advice::Below(which), reason, ON_TOP);
                    match self.side(which).1 {
                        _ if self.is_panel_in_woven(which) => say(Advice::TapeEdge(which), reason, TAPED),
                        Some(StayLine { stay: Stay::StayStitch, source }) => {
                            say(Advice::StayStitch(which), AdviceReason::OffGrain, source);
                        }
                        Some(StayLine { stay: Stay::Tape, source }) => {
                            say(Advice::TapeEdge(which), AdviceReason::OffGrain, source);
                        }
                        Some(_) | None => {}
                    }
                }
                say(Advice::CentreOutwards, reason, Source::CommonPractice);
            }
            Match::BandToBody => {
                say(Advice::QuarterMarks, AdviceReason::Band, UNLIKE);
                if let Some(which) = self.stretchier {
                    say(Advice::BandOnTop(which), AdviceReason::Band, UNLIKE);
                }
            }
        }
        match (self.open, self.least) {
            (None, _) => {}
            (Some(PairDoubt::Stretch), _) => {
                say(Advice::PullAgain(self.vaguer[0]), AdviceReason::TooClose, Source::Own);
            }
            (Some(PairDoubt::Give), Least::Cloth(which)) => {
                say(Advice::PullAgain(Some(which)), AdviceReason::TooClose, Source::Own);
            }
            (Some(PairDoubt::Give), Least::Stitch) => {}
            (Some(PairDoubt::Growth), _) => {
                say(Advice::ReadGrowthAgain(self.vaguer[1]), AdviceReason::TooClose, Source::Own);
            }
            (Some(PairDoubt::Washing), _) => say(Advice::WashAgain, AdviceReason::TooClose, Source::Own),
        }
        for (which, (.., grows)) in [Which::First, Which::Second].into_iter().zip(self.sides) {
            if grows {
                say(Advice::WillBag(which), AdviceReason::Grows, Source::Own);
            }
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

    /// The cloth that has more to take up, and why: by what decides, so that the two never contradict each other. Where
    /// the gap in stretch is large it is the stretchier one; else the one that becomes longer, where that may show.
    fn fuller(&self) -> (Option<Which>, AdviceReason) {
        let shows = |mismatch: Option<super::Mismatch>| mismatch.filter(|mismatch| mismatch.answer != Answer::Meets);
        let longer = || shows(self.growth).or(shows(self.washing)).and_then(|mismatch| mismatch.longer);
        if self.chances.alike < 0.5 {
            return (self.stretchier, AdviceReason::Gap);
        }
        match (longer(), self.open) {
            (Some(which), _) => (Some(which), AdviceReason::Mismatch),
            // Their stretch is alike, and neither was seen to become longer.
            (None, Some(PairDoubt::Growth | PairDoubt::Washing)) => (None, AdviceReason::TooClose),
            (None, _) => (self.stretchier, AdviceReason::TooClose),
        }
    }

    const fn side(&self, which: Which) -> (Construction, Option<StayLine>, bool) {
        let [first, second] = self.sides;
        match which {
            Which::First => first,
            Which::Second => second,
        }
    }

    /// A knit beside a woven, which is not stretched onto it.
    fn is_panel_in_woven(&self, which: Which) -> bool {
        let made = |which| self.side(which).0;
        made(which) == Construction::Knit && made(which.other()) == Construction::Woven
    }
}

const UNLIKE: Source = Source::CommonPractice;
const ON_TOP: Source = Source::CommonPractice;
const ONE_GARMENT: Source = Source::CommonPractice;
const TAPED: Source =
    Source::Published("Successful Sewing, school text, 2013, p. 288: tape knits at shoulder, armhole and neck");

/// The most lines of [`Pair::advice`].
pub const MOST_LINES: usize = 10;

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
    /// Sew a tape that does not stretch into the edge of this cloth.
    TapeEdge(Which),
    /// Choose another cloth in the place of this one.
    OtherCloth(Which),
    /// Sew from the centre outwards.
    CentreOutwards,
    /// This cloth is the short, stretchy band: on top, pulled to match.
    BandOnTop(Which),
    /// Pull this swatch again, or both, longer marked.
    PullAgain(Option<Which>),
    /// Read the growth of both cloths.
    ReadGrowth,
    /// Read the growth of this cloth again, or of both.
    ReadGrowthAgain(Option<Which>),
    /// Measure again what washing does to both.
    WashAgain,
    /// This cloth grows so much that it will bag, whatever the seam.
    WillBag(Which),
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
    /// One side is a band.
    Band,
    /// The edge would stretch before or in the seam.
    OffGrain,
    /// The seam gives less than is asked along it.
    Give,
    /// It grows by more than 6 %.
    Grows,
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
