//! `tenter serve` as browsers and attackers meet it: the real program on a free port, asked over a plain socket and by a real
//! browser.

mod attack;
mod looks;
mod server;
mod shared;
mod sync;
mod twice;
mod walk;
