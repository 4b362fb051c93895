#![doc = include_str!("lib.md")]
#![no_std]

#[cfg(test)]
extern crate std;

mod answer;
mod chance;
mod class;
mod decimal;
mod figures;
pub mod forecast;
pub mod framing;
mod length;
mod limit;
pub mod line;
mod list;
pub mod making;
mod note;
mod num;
mod pull_test;
mod ratio;
pub mod record;
pub mod rectangular;
pub mod saved;
mod scale;
pub mod scatter;
mod settle;
pub mod stats;
pub mod student;
mod suits;
mod test_error;
pub mod uncertainty;
pub mod wire;

pub use answer::{Answer, Ask, Evaluation, Part, Rules, Side, judge};
pub use class::{Class, GrowthClass, RecoveryClass, TABLES, Table};
pub use decimal::{Decimal, Text};
pub use figures::{Confidence, Correlation, Figure, Figures, RestFigures};
pub use length::{Length, LengthError, ShowLength, Unit};
pub use limit::{Demand, Limit, LimitError, Range};
pub use note::{EARLY_REST_SECONDS, Note, RECOVERY_READABLE_POINTS, recovery_is_readable};
pub use pull_test::{
    Grain, Held, Load, MAX_LENGTH, MAX_PULLS, MAX_REST_SECONDS, MAX_RESTS, MIN_GAUGE, PullTest, Rest, TestError,
};
pub use ratio::Ratio;
pub use scale::{Ends, Scale};
pub use scatter::Scatter;
pub use settle::{Plan, Settle};
pub use suits::{SUITS, Suit, suits};
