//! What a wash takes away, in words.

use tenter_core::making::washing::Remedy;
use tenter_core::{Confidence, Figure, Grain};

use crate::words::advice::Spoken;
use crate::words::terms as words;

/// The change along a grain, and what to do about it.
#[must_use]
pub fn line(grain: Grain, change: &Figure, confidence: Confidence) -> Spoken {
    let remedy = match Remedy::of(change.ratio) {
        Remedy::Ignore => "too little to matter",
        Remedy::Allow => "allow for it when you buy and cut",
        Remedy::WashFirst => "wash it first, and once more; do not cut it as it is",
    };
    let about = if grain == Grain::Lengthwise { "along" } else { "across" };
    let text = format!("{}: {remedy}", words::figure(change, confidence));
    Spoken::new(about, text, "up to 3 % ignore, to 10 % allow for it, beyond wash before cutting", Remedy::SOURCE)
}
