//! Any input at all: nothing panics, nothing absurd comes out. As many cases a property as `PROPTEST_CASES` says,
//! 256 by default; arithmetic overflow counts as a panic in the builds that check for it.

#[path = "../crc32/mod.rs"]
mod crc32;
mod given;

mod answers;
mod corpus;
mod making;
mod numbers;
mod readings;
mod records;
mod texts;
