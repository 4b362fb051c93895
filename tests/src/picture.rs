//! Pictures of the handheld's display: as text, and as PNG for people.

use std::fs::File;
use std::io::{self, BufWriter};
use std::path::Path;

use tenter_firmware::frame::{Frame, HEIGHT, WIDTH};

/// How many times larger a PNG is than the display.
const ZOOM: usize = 4;

/// The picture as text: two rows of pixels a line, `█`, `▀`, `▄` and space.
#[must_use]
pub fn text(frame: &Frame) -> String {
    text_of(|x, y| frame.is_lit(x, y))
}

/// The same for any picture of that size.
pub fn text_of(lit: impl Fn(usize, usize) -> bool) -> String {
    let mut text = String::new();
    for y in (0..HEIGHT).step_by(2) {
        let line: String = (0..WIDTH)
            .map(|x| match (lit(x, y), lit(x, y + 1)) {
                (true, true) => '█',
                (true, false) => '▀',
                (false, true) => '▄',
                (false, false) => ' ',
            })
            .collect();
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text
}

/// Saves a grey picture of the display, enlarged. `lit` tells the grey of a pixel, 0 to 255.
///
/// # Errors
///
/// When the file cannot be written.
pub fn save_png(path: &Path, columns: usize, rows: usize, lit: impl Fn(usize, usize) -> u8) -> io::Result<()> {
    let (width, height) = (columns * ZOOM, rows * ZOOM);
    let size = |size: usize| u32::try_from(size).map_err(io::Error::other);
    let mut encoder = png::Encoder::new(BufWriter::new(File::create(path)?), size(width)?, size(height)?);
    encoder.set_color(png::ColorType::Grayscale);
    encoder.set_depth(png::BitDepth::Eight);
    let pixels: Vec<u8> =
        (0..height).flat_map(|y| (0..width).map(move |x| (x / ZOOM, y / ZOOM))).map(|(x, y)| lit(x, y)).collect();
    encoder.write_header().map_err(io::Error::other)?.write_image_data(&pixels).map_err(io::Error::other)
}

/// Saves many screens side by side, with a gap between them.
///
/// # Errors
///
/// When the file cannot be written.
pub fn save_sheet(path: &Path, across: usize, frames: &[Frame]) -> io::Result<()> {
    let rows = frames.len().div_ceil(across);
    let (cell_width, cell_height) = (WIDTH + 4, HEIGHT + 4);
    save_png(path, across * cell_width, rows * cell_height, |x, y| {
        let (column, row) = (x / cell_width, y / cell_height);
        let (x, y) = (x % cell_width, y % cell_height);
        match frames.get(row * across + column) {
            Some(frame) if x < WIDTH && y < HEIGHT => u8::from(frame.is_lit(x, y)) * 255,
            _ => 90,
        }
    })
}
