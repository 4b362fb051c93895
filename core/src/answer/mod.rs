//! What the readings come to: figures, their trust, the answer, what would settle it, and names for it.

pub(crate) mod bars;
pub(crate) mod class;
pub(crate) mod confidence;
pub(crate) mod doubt;
pub(crate) mod evaluation;
pub(crate) mod figure;
pub(crate) mod figures;
pub mod forecast;
pub(crate) mod joint;
pub(crate) mod judgement;
pub(crate) mod learnt;
pub(crate) mod note;
pub(crate) mod readings;
pub(crate) mod rebound;
pub(crate) mod rest;
pub(crate) mod settle;
pub(crate) mod several;
pub mod source;
pub(crate) mod suits;
pub(crate) mod verdict;

pub use bars::Looks;
pub use class::{Class, GrowthClass, RecoveryClass, TABLES, Table};
pub use confidence::Confidence;
pub use doubt::{Context, Doubt, MAX_DOUBTS, implausible};
pub use evaluation::{Ask, Evaluation, Part, Rules, Side, judge};
pub use figure::{Even, Figure, SessionUncertainty};
pub use figures::{Figures, RestFigures};
pub use joint::{MAX_SITTINGS, Sitting, Widening};
pub use learnt::{days, retests};
pub use note::{EARLY_REST_SECONDS, Note, RECOVERY_READABLE_POINTS, recovery_is_readable};
pub use rebound::{RECOVERY_FROM_PERCENT, Rebound, ReboundGrade};
pub use settle::{ASSURANCE, Plan, Settle};
pub use several::{Judgement, judge_each};
pub use source::Source;
pub use suits::{SUITS, Suit, suits};
pub use verdict::Answer;
