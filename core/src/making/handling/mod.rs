//! How to handle one cloth and each of its seams: needle, thread, stitch, finish, allowance, stay. Every choice carries
//! its source, and those of one seam agree with each other.

mod asked;
mod cloth;
mod finish;
mod layer;
mod needle;
mod place;
mod practice;
mod seam;
mod sewing;
mod stay;
mod trimming;

pub use asked::{Runs, SeamUse};
pub use cloth::{Cloth, Weave};
pub use finish::{FinishLine, FinishReason, SeamFinish, finish};
pub use layer::{Instead, Layer, Layered};
pub use needle::{Needle, NeedlePoint, Thread, ThreadFibre, needle, thread};
pub use place::{Do, GarmentPlace, PlaceLine, at};
pub use practice::{Practice, PracticeLine, practices};
pub use seam::Seam;
pub use sewing::{Basis, Sewing, Sewn, hem, sewing};
pub use stay::{Stay, StayLine, stay};
pub use trimming::{SeamAllowance, Trimming, allowance, trimming};

/// Under this stretch, in percent, cloth counts as rigid: the edge of the tool's own ladder, within reading error.
pub const RIGID_UNDER_PERCENT: i64 = 2;

/// From this stretch on, in percent, a woven is handled as a stretch woven, other cloth as stretching: where the US
/// method for stretch wovens begins (ASTM D3107, scope).
pub const STRETCHES_FROM_PERCENT: i64 = 12;

#[cfg(test)]
mod tests;
