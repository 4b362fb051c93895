//! How to sew one cloth, as text.

use tenter_core::Unit;

use crate::finding::handle::Handled;
use crate::finding::pair::NamedCloth;
use crate::text::advice;
use crate::text::lines::Lines;
use crate::words::handle as words;
use crate::words::pair::named;

/// The text.
#[must_use]
pub fn render(cloth: &NamedCloth, handled: &Handled, why: bool, unit: Unit, columns: usize) -> String {
    let mut text = Lines::new(columns);
    let layers = handled.answer.map(words::layers).unwrap_or_default();
    advice::head(&mut text, advice::style(handled.answer), &named(cloth), layers);
    advice::write(&mut text, &words::spoken(handled, unit), why);
    text.finish()
}
