//! The picture: one bit a pixel, in the order in which SSD1306-class panels take it.

use core::convert::Infallible;

use embedded_graphics::pixelcolor::BinaryColor;
use embedded_graphics::prelude::{DrawTarget, OriginDimensions, Pixel, Size};

/// Columns of the picture.
pub const WIDTH: usize = 128;
/// Rows of the picture.
pub const HEIGHT: usize = 64;
/// Strips of eight rows.
pub const PAGES: usize = HEIGHT / 8;

/// One strip of eight rows: a byte a column, the top pixel lowest.
pub type Page = [u8; WIDTH];

/// A picture of 128 × 64 pixels; what lies outside is not drawn.
///
/// ```
/// use embedded_graphics::{pixelcolor::BinaryColor, prelude::*};
/// use tenter_firmware::frame::Frame;
///
/// let mut frame = Frame::default();
/// Pixel(Point::new(3, 9), BinaryColor::On).draw(&mut frame).unwrap();
/// assert!(frame.is_lit(3, 9));
/// assert_eq!(frame.pages()[1][3], 0b10);
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Frame {
    pages: [Page; PAGES],
}

impl Default for Frame {
    fn default() -> Self {
        Self { pages: [[0; WIDTH]; PAGES] }
    }
}

impl Frame {
    /// Makes every pixel dark.
    pub fn clear(&mut self) {
        for page in &mut self.pages {
            page.fill(0);
        }
    }

    /// The strips from top to bottom.
    #[must_use]
    pub const fn pages(&self) -> &[Page; PAGES] {
        &self.pages
    }

    /// Lights or darkens a pixel; outside the picture there is none.
    pub fn set(&mut self, x: i32, y: i32, lit: bool) {
        let (Ok(x), Ok(y)) = (usize::try_from(x), usize::try_from(y)) else { return };
        if let Some(byte) = self.pages.get_mut(y / 8).and_then(|page| page.get_mut(x)) {
            let bit = 1 << (y % 8);
            if lit {
                *byte |= bit;
            } else {
                *byte &= !bit;
            }
        }
    }

    /// Whether a pixel is lit; outside the picture none is.
    #[must_use]
    pub fn is_lit(&self, x: usize, y: usize) -> bool {
        self.pages.get(y / 8).and_then(|page| page.get(x)).is_some_and(|byte| byte >> (y % 8) & 1 == 1)
    }
}

impl OriginDimensions for Frame {
    fn size(&self) -> Size {
        Size::new(128, 64)
    }
}

impl DrawTarget for Frame {
    type Color = BinaryColor;
    type Error = Infallible;

    fn draw_iter<I: IntoIterator<Item = Pixel<BinaryColor>>>(&mut self, pixels: I) -> Result<(), Infallible> {
        for Pixel(point, color) in pixels {
            self.set(point.x, point.y, color.is_on());
        }
        Ok(())
    }
}
