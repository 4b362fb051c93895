//! The log as a user keeps it: the real program and its file, exported, imported, interrupted and damaged.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.
#![allow(clippy::std_instead_of_core)]

mod desk;
mod exchange;
mod tables;
mod trouble;
