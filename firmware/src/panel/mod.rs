//! Panels: where a picture is shown. Strips of eight rows that did not change are not sent again.

mod oled;
mod ssd0323;

use crate::frame::{Frame, PAGES, Page};
pub use oled::Oled;
pub use ssd0323::Ssd0323;

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

    /// Whether it has forgotten what it was told, or does not answer: then it is to be started again. No panel that cannot
    /// say so is.
    fn is_lost(&mut self) -> bool {
        false
    }

    /// Shows strip `page` (0 at the top).
    ///
    /// # Errors
    ///
    /// A fault of the bus; the strip may then be half shown, and the call may be repeated.
    fn show(&mut self, page: u8, strip: &Page) -> Result<(), Self::Error>;
}

/// A panel that remembers what it shows, by checksum, and is started whenever it needs that.
#[derive(Debug)]
pub struct CachedPanel<P> {
    panel: P,
    /// What it shows; nothing of it is known before it was started.
    shown: Option<[Option<u32>; PAGES]>,
}

impl<P: Panel> CachedPanel<P> {
    /// Wakes a panel up. One that does not answer is tried again with each picture.
    pub fn new(panel: P) -> Self {
        let mut screen = Self { panel, shown: None };
        // What a panel holds at power-on is noise.
        screen.show(&Frame::default());
        screen
    }

    /// Shows a picture; only strips that changed are sent. True when all of it is shown.
    pub fn show(&mut self, frame: &Frame) -> bool {
        if self.shown.is_some() && self.panel.is_lost() {
            self.shown = None;
        }
        if self.shown.is_none() {
            if self.panel.start().is_err() {
                return false;
            }
            self.shown = Some([None; PAGES]);
        }
        let mut whole = true;
        for ((number, strip), shown) in (0_u8..).zip(frame.pages()).zip(self.shown.iter_mut().flatten()) {
            let checksum = tenter_core::record::checksum(strip);
            if *shown != Some(checksum) {
                *shown = self.panel.show(number, strip).is_ok().then_some(checksum);
                whole &= shown.is_some();
            }
        }
        if !whole {
            // A panel that lost its power has forgotten how to draw.
            self.shown = None;
        }
        whole
    }
}
