//! Readings and demands, valid by construction.

pub(crate) mod construction;
pub(crate) mod length;
pub(crate) mod limit;
pub(crate) mod load;
pub(crate) mod look;
pub(crate) mod pull_test;
pub(crate) mod scale;
pub(crate) mod slip;
pub(crate) mod test_error;

pub use construction::{Construction, MOST_STRETCH, MOST_STRETCH_WOVEN, USUAL_STRETCH, USUAL_STRETCH_WOVEN};
pub use length::{Length, LengthError, ShowLength, Unit};
pub use limit::{DEFAULT_REST_SECONDS, Demand, Limit, LimitError, Range};
pub use look::{Look, MAX_LOOKS};
pub use pull_test::{
    Grain, Held, Load, MAX_LENGTH, MAX_PULLS, MAX_REST_SECONDS, MAX_RESTS, MIN_GAUGE, PullTest, Rest, TestError,
};
pub use scale::{Ends, Scale};
pub use slip::{Reading, Slip, likely_slip};
