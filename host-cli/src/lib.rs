//! The program tenter: reads what a person typed, asks the core, and writes the result.
//!
//! The folders are layers, and each uses only those above it in this list:
//!
//! | folder | what it does |
//! |---|---|
//! | [`plain`] | texts from elsewhere, made safe to show |
//! | [`log`] | what is kept: entries, and what they make |
//! | [`store`] | where it is kept |
//! | [`input`] | texts as readings, demands and rules |
//! | [`exchange`] | files, each format both ways |
//! | [`finding`] | what is found, as data |
//! | [`deed`] | what can be done, with its rules |
//! | `link` | the line to a handheld |
//! | [`words`] | findings and errors in words |
//! | [`text`], [`json`], [`picture`], [`page`] | findings on a terminal, for programs, drawn and printed |
//! | [`guide`] | a pull test step by step |
//! | [`web`] | a request to a page → its answer |
//! | `serve` | those pages behind a server on this machine |
//! | `app` | those pages as an app for a phone: its files |
//! | `error`, `cli`, `command` | the command line |
//!
//! Everything but the command line, the serial line and SQLite builds without the feature `desk`, for example for a
//! browser.

#![allow(clippy::std_instead_of_core)] // A program for a desk, not for a microcontroller.

#[cfg(feature = "desk")]
pub mod app;
#[cfg(feature = "desk")]
pub mod cli;
#[cfg(feature = "desk")]
pub mod command;
pub mod deed;
#[cfg(feature = "desk")]
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
pub mod plain;
#[cfg(feature = "serve")]
pub mod serve;
pub mod store;
pub mod text;
pub mod web;
#[cfg(feature = "desk")]
pub mod whole_file;
pub mod words;
