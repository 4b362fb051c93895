//! Panels: where a picture is shown. Strips of eight rows that did not change are not sent again.

mod ssd0323;
mod ssd1306;

use crate::frame::{Frame, PAGES, Page};
pub use ssd0323::Ssd0323;
pub use ssd1306::Ssd1306;

/// A display of 128 × 64 pixels.
pub trait Panel {
    /// What can go wrong on the bus.
    type Error;

    /// Wakes the panel up.
    ///
    /// # Errors
    ///
    /// A fault of the bus; the call may be repeated.
    fn start(&mut self) -> Result<(), Self::Error>;

    /// Shows strip `page` (0 at the top).
    ///
    /// # Errors
    ///
    /// A fault of the bus; the strip may then be half shown, and the call may be repeated.
    fn show(&mut self, page: u8, strip: &Page) -> Result<(), Self::Error>;
}

/// A panel that remembers what it shows, by checksum.
#[derive(Debug)]
pub struct CachedPanel<P> {
    panel: P,
    shown: [Option<u32>; PAGES],
}

impl<P: Panel> CachedPanel<P> {
    /// Wakes a panel up. One that does not answer is tried again with each picture.
    pub fn new(mut panel: P) -> Self {
        let _ = panel.start(); // What fails here is tried again at the next picture.
        let mut screen = Self { panel, shown: [None; PAGES] };
        // What a panel holds at power-on is noise.
        screen.show(&Frame::default());
        screen
    }

    /// Shows a picture; only strips that changed are sent. True when all of it is shown.
    pub fn show(&mut self, frame: &Frame) -> bool {
        let mut whole = true;
        for ((number, strip), shown) in (0u8..).zip(frame.pages()).zip(&mut self.shown) {
            let checksum = tenter_core::record::checksum(strip);
            if *shown == Some(checksum) {
                continue;
            }
            *shown = self.panel.show(number, strip).is_ok().then_some(checksum);
            whole &= shown.is_some();
        }
        if !whole {
            // A panel that lost its power has forgotten how to draw.
            let _ = self.panel.start();
        }
        whole
    }
}
