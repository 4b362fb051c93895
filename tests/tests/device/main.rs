//! `tenter device` against the handheld's own program over a pretend memory: whatever breaks, every test is there once.

mod cable;
mod cut;
mod demands;
mod inbox;
mod kill;
mod misfiled;
mod pocket;
mod sync;
mod two_logs;
