//! Sizes, openings, elastic and zips, as text.

use crate::finding::size::Sized;
use crate::text::advice;
use crate::text::lines::Lines;
use crate::words::size as words;

/// The text.
#[must_use]
pub fn render(sized: &Sized, why: bool, columns: usize) -> String {
    let mut text = Lines::new(columns);
    if let Some(answer) = sized.answer {
        advice::head(&mut text, advice::style(Some(answer)), words::headline(answer, sized.bags), "");
    }
    advice::write(&mut text, &words::spoken(sized, why), why);
    text.finish()
}
