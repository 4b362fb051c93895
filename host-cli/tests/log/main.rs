//! The log as a user keeps it: the real program and its file, exported, imported, interrupted and damaged.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.
#![allow(clippy::std_instead_of_core)]

#[path = "../program/desk.rs"]
mod desk;
mod exchange;
mod faults;
mod safe;
mod sync;
mod tables;
mod trouble;

/// Where the program is.
fn tenter() -> &'static str {
    env!("CARGO_BIN_EXE_tenter")
}

/// A swatch of one colour as a PNG.
fn swatch_png(colour: [u8; 3]) -> Vec<u8> {
    let mut bytes = std::io::Cursor::new(Vec::new());
    image::RgbImage::from_pixel(40, 30, image::Rgb(colour)).write_to(&mut bytes, image::ImageFormat::Png).unwrap();
    bytes.into_inner()
}
