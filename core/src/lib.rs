#![doc = include_str!("lib.md")]
#![no_std]

#[cfg(test)]
extern crate std;

// The folders are the layers, the lowest first: each uses itself and those before it.
mod answer;
pub mod making;
mod number;
mod reading;
mod statistics;
pub mod wire;

pub use answer::forecast;
pub use answer::{
    ASSURANCE, Answer, Ask, Class, Confidence, Context, Doubt, EARLY_REST_SECONDS, Evaluation, Even, Figure, Figures,
    GrowthClass, Judgement, Looks, MAX_DOUBTS, MAX_SITTINGS, Note, Part, Plan, RECOVERY_FROM_PERCENT,
    RECOVERY_READABLE_POINTS, Rebound, ReboundGrade, RecoveryClass, RestFigures, Rules, SUITS, SessionUncertainty,
    Settle, Side, Sitting, Source, Suit, TABLES, Table, Widening, days, implausible, judge, judge_each,
    recovery_is_readable, retests, suits,
};
pub use number::{Decimal, Ratio, Text};
pub use reading::{
    Construction, DEFAULT_REST_SECONDS, Demand, Ends, Grain, Held, Length, LengthError, Limit, LimitError, Load, Look,
    MAX_LENGTH, MAX_LOOKS, MAX_PULLS, MAX_REST_SECONDS, MAX_RESTS, MIN_GAUGE, MOST_STRETCH, MOST_STRETCH_WOVEN,
    PullTest, Range, Reading, Rest, Scale, ShowLength, Slip, TestError, USUAL_STRETCH, USUAL_STRETCH_WOVEN, Unit,
    likely_slip,
};
pub use statistics::{
    Repeatability, Scatter, components, discordant, line, mixture, persons, rectangular, repeatability, rounded,
    scatter, stats, student, uncertainty,
};
pub use wire::{framing, record, saved};

#[cfg(test)]
mod words_of_enums {
    use crate::making::{care, elastic, garment, handling, stitch::Stitch};
    use crate::{Answer, Ask, Construction, Ends, Grain, Held, ReboundGrade};

    #[test]
    fn every_word_comes_back() {
        macro_rules! comes_back {
            ($($name:ty),+) => {$(
                for one in <$name>::ALL {
                    assert_eq!(<$name>::from_word(one.word()), Some(one), "{one:?}");
                }
                assert_eq!(<$name>::from_word(""), None);
            )+};
        }
        comes_back!(
            Answer,
            Ask,
            Construction,
            Ends,
            Grain,
            Held,
            Stitch,
            elastic::Kind,
            elastic::Edging,
            handling::GarmentPlace,
            care::Drape,
            care::Finish,
            care::Purpose,
            garment::GarmentKind,
            ReboundGrade
        );
    }
}
