//! Drawing on the frame: text, bars, boxes and large digits. Nothing here can fail.
//!
//! A text is said piece by piece and then put somewhere. The formatting of `core::fmt` would do, at the price of three
//! kilobytes.

use embedded_graphics::image::GetPixel;
use embedded_graphics::mono_font::MonoFont;
use embedded_graphics::mono_font::iso_8859_1::FONT_6X10;
use embedded_graphics::pixelcolor::BinaryColor;
use embedded_graphics::prelude::{OriginDimensions as _, Point};
use heapless::Vec;
use tenter_core::Decimal;

use crate::frame::Frame;

/// The only font, 21 characters a line; titles show it at twice its size, which costs no second font.
const FONT: &MonoFont<'static> = &FONT_6X10;
const GLYPH_WIDTH: i32 = 6;
const GLYPH_HEIGHT: i32 = 10;

/// A line and more.
type Words = Vec<char, 42>;

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
    /// Whether it lights pixels, not darkens them.
    pub lit: bool,
    /// What was said and is not put anywhere yet.
    words: Words,
}

impl<'f> Pen<'f> {
    /// A pen that lights pixels.
    pub const fn new(frame: &'f mut Frame) -> Self {
        Self { frame, lit: true, words: Words::new() }
    }

    /// Says a text; what goes beyond a line is cut.
    #[inline(never)]
    pub fn say(&mut self, text: &str) -> &mut Self {
        for character in text.chars() {
            let _ = self.words.push(character);
        }
        self
    }

    /// Says a number.
    #[inline(never)]
    pub fn number(&mut self, number: Decimal) -> &mut Self {
        self.say(&number.text())
    }

    /// Says a count.
    #[inline(never)]
    pub fn count(&mut self, count: u32) -> &mut Self {
        self.number(Decimal::new(count.into(), 0))
    }

    /// Puts what was said, its top at `y`.
    #[inline(never)]
    pub fn put(&mut self, at: At, x: i32, y: i32) {
        self.write(1, at, x, y);
    }

    /// Puts it twice as large.
    #[inline(never)]
    pub fn put_large(&mut self, at: At, x: i32, y: i32) {
        self.write(2, at, x, y);
    }

    fn write(&mut self, zoom: i32, at: At, x: i32, y: i32) {
        let words = core::mem::take(&mut self.words);
        let width = zoom * GLYPH_WIDTH * i32::try_from(words.len()).unwrap_or(0);
        let left = match at {
            // Nothing touches the edge.
            At::Left => x.max(1),
            At::Middle => x - width / 2,
            At::Right => x + 1 - width,
        };
        for (column, character) in (0..).zip(&words) {
            self.glyph(zoom, left + zoom * GLYPH_WIDTH * column, y, *character);
        }
    }

    /// Draws a character out of the font's picture; those that Western European languages do not use show as `?`. The
    /// library's own drawing of text does the same for every kind of target, at the price of a kilobyte.
    fn glyph(&mut self, zoom: i32, left: i32, top: i32, character: char) {
        // The font's own dots are little crosses.
        for dot in dots(character) {
            self.fill(left + 2 * zoom, top + dot * zoom, 2 * zoom, 2 * zoom);
        }
        if !dots(character).is_empty() {
            return;
        }
        let glyphs_a_row = i32::try_from(FONT.image.size().width).unwrap_or(0) / GLYPH_WIDTH;
        let index = i32::try_from(FONT.glyph_mapping.index(character)).unwrap_or(0);
        let (column, row) =
            (index.checked_rem(glyphs_a_row).unwrap_or(0), index.checked_div(glyphs_a_row).unwrap_or(0));
        for (dx, dy) in (0..GLYPH_WIDTH).flat_map(|dx| (0..GLYPH_HEIGHT).map(move |dy| (dx, dy))) {
            let place = Point::new(column * GLYPH_WIDTH + dx, row * GLYPH_HEIGHT + dy);
            if FONT.image.pixel(place) == Some(BinaryColor::On) {
                self.fill(left + zoom * dx, top + zoom * dy, zoom, zoom);
            }
        }
    }

    /// Fills a box.
    pub fn fill(&mut self, x: i32, y: i32, width: i32, height: i32) {
        for (x, y) in (x..x + width).flat_map(|x| (y..y + height).map(move |y| (x, y))) {
            self.frame.set(x, y, self.lit);
        }
    }

    /// Draws the outline of a box.
    pub fn outline(&mut self, x: i32, y: i32, width: i32, height: i32) {
        self.fill(x, y, width, 1);
        self.fill(x, y + height - 1, width, 1);
        self.fill(x, y, 1, height);
        self.fill(x + width - 1, y, 1, height);
    }

    /// Puts what was said as large digits (also `.`, `-`, `:` and space), 13 pixels apart and 24 high, in the middle of
    /// the line less `beside` pixels; where they end.
    #[inline(never)]
    pub fn put_digits(&mut self, beside: i32, y: i32) -> i32 {
        let words = core::mem::take(&mut self.words);
        let digits = || words.iter().map(|digit| u8::try_from(*digit).unwrap_or(b'-'));
        let width: i32 = digits().map(advance).sum();
        digits().fold((128 - width - beside) / 2, |x, digit| x + self.digit(x, y, digit))
    }

    fn digit(&mut self, x: i32, y: i32, digit: u8) -> i32 {
        match digit {
            b'.' => self.fill(x, y + 21, 3, 3),
            // In the middle of its cell, or figures such as 101 fall apart.
            b'1' => self.fill(x + 4, y, 3, 24),
            b':' => {
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

/// Where the dots of a mark are, from the top of its line.
const fn dots(character: char) -> &'static [i32] {
    match character {
        '.' => &[6],
        ':' => &[3, 6],
        _ => &[],
    }
}

/// The strokes of a large digit: top, upper left, upper right, middle, lower left, lower right, bottom.
const STROKES: [(i32, i32, i32, i32); 7] =
    [(1, 0, 9, 3), (0, 1, 3, 11), (8, 1, 3, 11), (1, 11, 9, 3), (0, 12, 3, 11), (8, 12, 3, 11), (1, 21, 9, 3)];

/// Which strokes make a digit, one bit each in the order of [`STROKES`].
const fn strokes(digit: u8) -> u8 {
    match digit {
        b'0' => 0b111_0111,
        b'2' => 0b101_1101,
        b'3' => 0b110_1101,
        b'4' => 0b010_1110,
        b'5' => 0b110_1011,
        b'6' => 0b111_1011,
        b'7' => 0b010_0101,
        b'8' => 0b111_1111,
        b'9' => 0b110_1111,
        b'-' => 0b000_1000,
        _ => 0,
    }
}

const fn advance(digit: u8) -> i32 {
    match digit {
        b'.' | b':' => 5,
        _ => 13,
    }
}
