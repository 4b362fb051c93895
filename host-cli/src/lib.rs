//! The command line of tenter: reads what a person typed, asks the core, and writes the result.
//!
//! `cli` defines the verbs, `input` turns texts into readings, `command` has one file a verb, `report` turns
//! results into bytes and nothing else.

#![allow(clippy::std_instead_of_core)] // A program for a desk, not for a microcontroller.

pub mod cli;
pub mod command;
pub mod error;
pub mod exchange;
pub mod finding;
pub mod guide;
pub mod input;
pub mod json;
pub mod link;
pub mod log;
pub mod page;
pub mod picture;
pub mod store;
pub mod text;
pub mod whole_file;
pub mod words;
