//! Stitches.

use tenter_core::making::stitch::Stitch;

use super::Words;

/// Stitches.
pub const STITCH: Words<Stitch> = Words {
    all: &Stitch::ALL,
    word: Stitch::word,
    others,
    unclear: &[("zigzag", &[Stitch::NarrowZigzag, Stitch::WideZigzag])],
};

const fn others(stitch: Stitch) -> &'static [&'static str] {
    match stitch {
        Stitch::Straight => &["straight stitch", "plain", "plain stitch", "lockstitch"],
        Stitch::NarrowZigzag => &["narrow zigzag stitch", "small zigzag"],
        Stitch::Triple => &["triple stitch", "triple straight", "triple straight stitch"],
        Stitch::TwinNeedle => &["twin", "double needle", "twin needle stitch"],
        Stitch::Coverstitch => &["covering stitch"],
        Stitch::WideZigzag => &["wide zigzag stitch"],
        Stitch::Overlock => &["overlocked", "overlocker", "overlock stitch", "serged", "serger"],
    }
}
