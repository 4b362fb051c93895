//! What a wash takes away, as text.

use tenter_core::Unit;

use crate::finding::wash::Washed;
use crate::log::Fabric;
use crate::text::lines::Lines;
use crate::text::{advice, doubt};
use crate::words::pair::named;
use crate::words::washing as words;

/// The text; `stored` is the cloth that the marks were stored with.
#[must_use]
pub fn render(washed: &Washed, stored: Option<&Fabric>, why: bool, unit: Unit, columns: usize) -> String {
    let mut text = Lines::new(columns);
    if let Some(change) = washed.doubted() {
        doubt::washed(&mut text, &change);
    }
    advice::write(&mut text, &words::spoken(washed, unit), why);
    if let Some(cloth) = stored {
        text.row("stored", &format!("with {}; {}", named(&cloth.into()), words::stored(cloth)));
    }
    text.finish()
}
