//! Drawing on the frame: text, bars, boxes and large digits. Nothing here can fail.

use core::convert::Infallible;
use core::fmt::{self, Write};

use embedded_graphics::mono_font::ascii::FONT_6X10;
use embedded_graphics::mono_font::{MonoFont, MonoTextStyle};
use embedded_graphics::pixelcolor::BinaryColor;
use embedded_graphics::prelude::{DrawTarget, OriginDimensions, Pixel, Point, Size};
use embedded_graphics::text::Baseline;
use embedded_graphics::text::renderer::TextRenderer as _;
use heapless::String;

use crate::frame::Frame;

/// The only font, 21 characters a line; titles show it at twice its size, which costs no second font.
const FONT: &MonoFont<'static> = &FONT_6X10;
const GLYPH_WIDTH: i32 = 6;

/// A line of text. One size for all of them: each further one would be compiled anew.
pub type Line = String<42>;

/// Where a text stands about its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum At {
    /// It begins there.
    Left,
    /// Its middle is there.
    Middle,
    /// It ends there.
    Right,
}

/// Draws on a frame, lit on dark or, inverted, dark on lit.
#[derive(Debug)]
pub struct Pen<'f> {
    frame: &'f mut Frame,
    on: BinaryColor,
}

impl<'f> Pen<'f> {
    /// A pen that lights pixels.
    pub const fn new(frame: &'f mut Frame) -> Self {
        Self { frame, on: BinaryColor::On }
    }

    /// The same picture with a pen that darkens pixels.
    pub const fn dark(&mut self) -> Pen<'_> {
        Pen { frame: self.frame, on: BinaryColor::Off }
    }

    /// Writes a text, its top at `y`; what does not fit 21 characters is cut.
    pub fn text(&mut self, at: At, x: i32, y: i32, words: fmt::Arguments<'_>) {
        self.write(1, at, Point::new(x, y), words);
    }

    /// Writes a text of twice the size.
    pub fn title(&mut self, at: At, x: i32, y: i32, words: fmt::Arguments<'_>) {
        self.write(2, at, Point::new(x, y), words);
    }

    fn write(&mut self, zoom: i32, at: At, point: Point, words: fmt::Arguments<'_>) {
        let mut line = Line::new();
        let _ = line.write_fmt(words); // A longer text is cut there.
        let width = zoom * GLYPH_WIDTH * i32::try_from(line.len()).unwrap_or(0);
        let left = match at {
            At::Left => point.x,
            At::Middle => point.x - width / 2,
            At::Right => point.x + 1 - width,
        };
        let style = MonoTextStyle::new(FONT, self.on);
        let mut target = Zoomed { frame: self.frame, zoom, origin: Point::new(left, point.y) };
        let Ok(_) = style.draw_string(&line, Point::zero(), Baseline::Top, &mut target);
    }

    /// Fills a box.
    pub fn fill(&mut self, x: i32, y: i32, width: i32, height: i32) {
        for (x, y) in (x..x + width).flat_map(|x| (y..y + height).map(move |y| (x, y))) {
            self.frame.set(x, y, self.on.is_on());
        }
    }

    /// Draws the outline of a box.
    pub fn outline(&mut self, x: i32, y: i32, width: i32, height: i32) {
        self.fill(x, y, width, 1);
        self.fill(x, y + height - 1, width, 1);
        self.fill(x, y, 1, height);
        self.fill(x + width - 1, y, 1, height);
    }

    /// Writes large digits (also `.`, `-`, `:` and space), 13 pixels apart and 24 high; where it ends.
    pub fn digits(&mut self, x: i32, y: i32, text: &str) -> i32 {
        text.chars().fold(x, |x, digit| x + self.digit(x, y, digit))
    }

    /// The width that [`Pen::digits`] takes.
    pub fn digits_width(text: &str) -> i32 {
        text.chars().map(advance).sum()
    }

    fn digit(&mut self, x: i32, y: i32, digit: char) -> i32 {
        match digit {
            '.' => self.fill(x, y + 21, 3, 3),
            // In the middle of its cell, or figures such as 101 fall apart.
            '1' => self.fill(x + 4, y, 3, 24),
            ':' => {
                self.fill(x, y + 6, 3, 3);
                self.fill(x, y + 15, 3, 3);
            }
            _ => {
                // Strokes from the top: bar, left and right, bar, left and right, bar.
                let strokes = strokes(digit);
                for (bit, (dx, dy, width, height)) in STROKES.into_iter().enumerate() {
                    if strokes >> bit & 1 == 1 {
                        self.fill(x + dx, y + dy, width, height);
                    }
                }
            }
        }
        advance(digit)
    }
}

/// A frame whose pixels are drawn larger, from an origin on.
struct Zoomed<'f> {
    frame: &'f mut Frame,
    zoom: i32,
    origin: Point,
}

impl OriginDimensions for Zoomed<'_> {
    fn size(&self) -> Size {
        Size::new(128, 64)
    }
}

impl DrawTarget for Zoomed<'_> {
    type Color = BinaryColor;
    type Error = Infallible;

    fn draw_iter<I: IntoIterator<Item = Pixel<BinaryColor>>>(&mut self, pixels: I) -> Result<(), Infallible> {
        for Pixel(point, color) in pixels {
            let corner = self.origin + point * self.zoom;
            for (dx, dy) in (0..self.zoom).flat_map(|dx| (0..self.zoom).map(move |dy| (dx, dy))) {
                self.frame.set(corner.x + dx, corner.y + dy, color.is_on());
            }
        }
        Ok(())
    }
}

/// The strokes of a large digit: top, upper left, upper right, middle, lower left, lower right, bottom.
const STROKES: [(i32, i32, i32, i32); 7] =
    [(1, 0, 9, 3), (0, 1, 3, 11), (8, 1, 3, 11), (1, 11, 9, 3), (0, 12, 3, 11), (8, 12, 3, 11), (1, 21, 9, 3)];

/// Which strokes make a digit, one bit each in the order of [`STROKES`].
const fn strokes(digit: char) -> u8 {
    match digit {
        '0' => 0b111_0111,
        '2' => 0b101_1101,
        '3' => 0b110_1101,
        '4' => 0b010_1110,
        '5' => 0b110_1011,
        '6' => 0b111_1011,
        '7' => 0b010_0101,
        '8' => 0b111_1111,
        '9' => 0b110_1111,
        '-' => 0b000_1000,
        _ => 0,
    }
}

const fn advance(digit: char) -> i32 {
    match digit {
        '.' | ':' => 5,
        _ => 13,
    }
}
