//! The contract of the store, which every engine keeps: a file of SQLite, a server of PostgreSQL, and memory. The same laws
//! run against all of them, with random logs, kills, and many who write at once; then what only a server has.

#[path = "../../../host-cli/tests/program/desk.rs"]
mod desk;
mod engine;
#[path = "../../../host-cli/tests/program/kill.rs"]
mod kill;
mod killed;
mod laws;
mod load;
mod moving;
mod properties;
mod server;
mod sync;
mod together;

use tenter_tests::program::program as tenter;

/// A swatch of one colour as a PNG.
fn swatch_png(colour: [u8; 3]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, 40, 30);
    encoder.set_color(png::ColorType::Rgb);
    encoder.write_header().unwrap().write_image_data(&colour.repeat(40 * 30)).unwrap();
    bytes
}
