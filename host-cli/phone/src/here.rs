//! What only the browser can tell: the time, chance, and what the phone's clock shows.

use jiff::Timestamp;
use jiff::tz::Offset;
use tenter::log::Here;

#[cfg(target_arch = "wasm32")]
mod browser {
    #[link(wasm_import_module = "here")]
    unsafe extern "C" {
        /// Milliseconds since 1970.
        pub safe fn now() -> f64;
        /// 64 random bits.
        pub safe fn chance() -> u64;
        /// By how many seconds the clock on the wall is ahead of UTC at a time in milliseconds since 1970.
        pub safe fn offset(ms: f64) -> i32;
    }
}

/// A desk's stand-ins, for tests of this crate.
#[cfg(not(target_arch = "wasm32"))]
mod browser {
    pub const fn now() -> f64 {
        1_772_366_400_000.0
    }

    pub const fn chance() -> u64 {
        7
    }

    pub const fn offset(_: f64) -> i32 {
        3600
    }
}

/// The browser.
#[must_use]
pub fn here() -> Here {
    Here { now, random, offset }
}

// A date of a browser has less than 2^53 milliseconds (ECMA-262, § 21.4.1.1), so nothing is lost.
#[allow(clippy::cast_possible_truncation)]
fn now() -> Timestamp {
    Timestamp::from_millisecond(browser::now() as i64).unwrap_or_default()
}

fn random() -> u128 {
    u128::from(browser::chance()) << 64 | u128::from(browser::chance())
}

#[allow(clippy::cast_precision_loss)]
fn offset(at: Timestamp) -> Offset {
    Offset::from_seconds(browser::offset(at.as_millisecond() as f64)).unwrap_or(Offset::UTC)
}
