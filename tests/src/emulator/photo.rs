//! Photographs of a display of 128 × 64 pixels.

use std::{fmt, fs::File, io, path::Path};

/// What a display showed, 0 dark to 255 bright.
#[derive(Clone, PartialEq, Eq)]
pub struct Photo {
    grey: Vec<u8>,
}

impl Photo {
    pub const WIDTH: usize = 128;
    pub const HEIGHT: usize = 64;
    /// Screen pixels a display pixel has in picture files, each way.
    const SCALE: usize = 4;

    /// From a function of column and row.
    pub fn from_fn(grey: impl Fn(usize, usize) -> u8) -> Self {
        let places = (0..Self::HEIGHT).flat_map(|y| (0..Self::WIDTH).map(move |x| (x, y)));
        Self { grey: places.map(|(x, y)| grey(x, y)).collect() }
    }

    /// From a frame as an SSD1306 holds it: a byte is eight pixels of a column, lowest bit on top.
    pub fn from_pages(frame: &[u8]) -> Self {
        Self::from_fn(|x, y| if frame[y / 8 * Self::WIDTH + x] >> (y % 8) & 1 == 1 { 0xFF } else { 0 })
    }

    /// Reads a picture of a screen that shows every display pixel as 4 × 4, in the portable pixmap format: `P6`, width,
    /// height, 255, then three bytes a dot.
    pub fn read(path: &Path) -> io::Result<Self> {
        let bytes = std::fs::read(path)?;
        let head = format!("P6\n{} {}\n255\n", Self::WIDTH * Self::SCALE, Self::HEIGHT * Self::SCALE);
        let dots = bytes.strip_prefix(head.as_bytes());
        let dots = dots.filter(|dots| dots.len() == Self::WIDTH * Self::HEIGHT * Self::SCALE * Self::SCALE * 3);
        let dots = dots.ok_or_else(|| io::Error::new(io::ErrorKind::InvalidData, "not a picture of this size"))?;
        Ok(Self::from_fn(|x, y| dots[(y * Self::SCALE * Self::WIDTH + x) * Self::SCALE * 3]))
    }

    /// Writes a PNG file, large enough to look at.
    pub fn save(&self, path: &Path) -> io::Result<()> {
        let (width, height) = (Self::WIDTH * Self::SCALE, Self::HEIGHT * Self::SCALE);
        let mut encoder = png::Encoder::new(io::BufWriter::new(File::create(path)?), width as u32, height as u32);
        encoder.set_color(png::ColorType::Grayscale);
        encoder.set_depth(png::BitDepth::Eight);
        let places = (0..height).flat_map(|y| (0..width).map(move |x| (x, y)));
        let bytes: Vec<u8> = places.map(|(x, y)| self.grey(x / Self::SCALE, y / Self::SCALE)).collect();
        let mut writer = encoder.write_header()?;
        writer.write_image_data(&bytes)?;
        Ok(writer.finish()?)
    }

    pub fn grey(&self, x: usize, y: usize) -> u8 {
        self.grey[y * Self::WIDTH + x]
    }

    pub fn lit(&self, x: usize, y: usize) -> bool {
        self.grey(x, y) >= 0x80
    }

    pub fn is_dark(&self) -> bool {
        self.grey.iter().all(|&grey| grey == 0)
    }
}

/// The picture as text, two rows a line.
impl fmt::Display for Photo {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for y in (0..Self::HEIGHT).step_by(2) {
            let line = (0..Self::WIDTH).map(|x| match (self.lit(x, y), self.lit(x, y + 1)) {
                (true, true) => '█',
                (true, false) => '▀',
                (false, true) => '▄',
                (false, false) => ' ',
            });
            writeln!(f, "{}", line.collect::<String>().trim_end())?;
        }
        Ok(())
    }
}

impl fmt::Debug for Photo {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Photo\n{self}")
    }
}
