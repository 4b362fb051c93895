//! Lines of text that fit the terminal, however narrow or wide it is.

use core::fmt;

use anstream::adapter::strip_str;
use anstyle::{AnsiColor, Style};
use textwrap::WordSeparator;
use textwrap::core::Word;
use textwrap::wrap_algorithms::wrap_first_fit;
use unicode_segmentation::UnicodeSegmentation as _;
use unicode_width::{UnicodeWidthChar as _, UnicodeWidthStr as _};

use crate::plain;
use crate::words::answer::Tone;
use crate::words::tied;

/// Columns of a row's label, with the space before and after it.
const LABEL: usize = 12;
/// Columns that a row leaves free on its right.
const MARGIN: usize = 2;
/// Columns that are used at most: longer lines are tiring to read.
const WIDEST: usize = 100;
/// Where fewer columns are left beside a label, its words stand below it.
const LEAST: usize = 20;

/// A text that grows line by line, for a terminal of so many columns.
#[derive(Debug)]
pub struct Lines {
    text: String,
    columns: usize,
}

impl Lines {
    /// Nothing yet.
    #[must_use]
    pub const fn new(columns: usize) -> Self {
        Self { text: String::new(), columns }
    }

    /// Columns of the terminal.
    #[must_use]
    pub const fn columns(&self) -> usize {
        self.columns
    }

    /// What was written.
    #[must_use]
    pub fn finish(self) -> String {
        self.text
    }

    /// A label and its words beside it.
    pub fn row(&mut self, label: &str, words: &str) {
        let label = padded(&format!("  {label}"), LABEL - 1);
        self.wrapped(&format!("{label} "), LABEL, MARGIN, words);
    }

    /// Words from the left edge on, later lines set in.
    pub fn words(&mut self, words: &str) {
        self.hanging("", 2, words);
    }

    /// A heading: in bold, its later lines too.
    pub fn heading(&mut self, words: &str) {
        let indent = words.len().saturating_sub(words.trim_start().len());
        let room = self.columns.min(WIDEST).saturating_sub(indent);
        for line in wrap(words, room, room) {
            self.line(format_args!("{:indent$}{HEADING}{line}{HEADING:#}", ""));
        }
    }

    /// Words after a label that is spaced already, later lines set in by `indent`.
    pub fn hanging(&mut self, label: &str, indent: usize, words: &str) {
        self.wrapped(label, indent, 0, words);
    }

    fn wrapped(&mut self, label: &str, indent: usize, margin: usize, words: &str) {
        let columns = self.columns.min(WIDEST);
        let room = columns.saturating_sub(indent).saturating_sub(margin).max(LEAST);
        let below = " ".repeat(indent);
        // A long label takes from the margin before it takes from the words.
        let left = columns.saturating_sub(width(label));
        let beside = left.saturating_sub(margin).max(left.min(room));
        let (first, mut start) = if beside < LEAST { (room, below.as_str()) } else { (beside, label) };
        if beside < LEAST {
            let room = columns.saturating_sub(2);
            wrap(label.trim(), room, room).iter().for_each(|line| self.line(format_args!("  {line}")));
        }
        for line in wrap(words, first, room) {
            self.line(format_args!("{start}{line}"));
            start = &below;
        }
    }

    /// An empty line.
    pub fn blank(&mut self) {
        self.text.push('\n');
    }

    /// Lines that fit already, such as a table.
    pub fn block(&mut self, text: &str) {
        text.lines().for_each(|line| self.line(format_args!("{line}")));
    }

    /// One line, as it is.
    pub fn line(&mut self, words: fmt::Arguments<'_>) {
        // Writing into a string cannot fail.
        let _ = fmt::Write::write_fmt(&mut self.text, format_args!("{words}\n"));
    }
}

/// Columns that a text takes in a terminal, its colours left aside.
///
/// A cluster counts as much as its letters one by one, as most terminals draw it, or as the whole, whichever is more.
///
/// ```
/// use tenter::text::lines::width;
///
/// assert_eq!((width("rib"), width("生地"), width("\u{1b}[1mrib\u{1b}[0m")), (3, 4, 3));
/// ```
#[must_use]
pub fn width(text: &str) -> usize {
    strip_str(text).to_string().graphemes(true).map(width_of_cluster).sum()
}

fn width_of_cluster(cluster: &str) -> usize {
    cluster.chars().filter_map(|c| c.width()).sum::<usize>().max(cluster.width())
}

/// A text with spaces after it, up to so many columns.
#[must_use]
pub fn padded(text: &str, columns: usize) -> String {
    format!("{text}{}", " ".repeat(columns.saturating_sub(width(text))))
}

/// Words broken into lines, the first of at most `first` columns, the others of at most `room`: between words, and in a
/// script that knows no spaces between its letters; a longer word stays whole.
#[must_use]
pub fn wrap(words: &str, first: usize, room: usize) -> Vec<String> {
    let tied = tied::tied(words);
    let words: Vec<Word<'_>> = WordSeparator::UnicodeBreakProperties.find_words(&tied).collect();
    #[allow(clippy::cast_precision_loss)] // Columns of a terminal.
    let lines = wrap_first_fit(&words, &[first as f64, room as f64]);
    let mut carry = "";
    let whole = |line: &[Word<'_>]| line.iter().map(|word| format!("{}{}", word.word, word.whitespace)).collect();
    let isolated = |line: String| {
        let mut line = format!("{carry}{}", tied::untied(line.trim()));
        carry = "";
        if plain::is_open(&line) {
            line.push(plain::CLOSE);
            carry = plain::OPEN_TEXT;
        }
        line
    };
    lines.into_iter().map(whole).map(isolated).filter(|line| !line.is_empty()).collect()
}

/// Bold, in the colour of an answer.
#[must_use]
pub const fn style(tone: Tone) -> Style {
    let colour = match tone {
        Tone::Good => AnsiColor::Green,
        Tone::Doubtful => AnsiColor::Yellow,
        Tone::Bad => AnsiColor::Red,
        Tone::Quiet => return Style::new(),
    };
    colour.on_default().bold()
}

/// A heading, in bold.
pub const HEADING: Style = Style::new().bold();

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_row_has_its_label_beside_or_above_it() {
        let mut text = Lines::new(40);
        text.row("cloth", "a row leaves two columns free on its right");
        text.row("hem facings and all godets", "this label is too long");
        text.row("生地", "wide");
        let want = "  cloth     a row leaves two columns\n            free on its right\n  hem facings and all godets\n            \
                    this label is too long\n  生地      wide\n";
        assert_eq!(text.finish(), want);
    }

    /// Common practice, no source: a line never ends between a number and its unit.
    #[test]
    fn numbers_stay_with_their_units() {
        let broken = |words: &str, room| wrap(words, room, room);
        assert_eq!(broken("takes 1.73 m", 10), ["takes", "1.73 m"]);
        assert_eq!(broken("at most 3 %; woven", 10), ["at most", "3 %; woven"]);
        assert_eq!(broken("growth 1.2 % ± 0.3", 14), ["growth", "1.2 % ± 0.3"]);
        assert_eq!(broken("with 3.5 N/cm (5 in) more", 10), ["with", "3.5 N/cm", "(5 in)", "more"]);
        assert_eq!(broken("pulls 3 more", 8), ["pulls 3", "more"]);
    }

    /// The rules of Chinese and Japanese lines, as UAX #14 has them for classes ID, NS, OP and CL.
    #[test]
    fn ideographs_are_broken_anywhere_but_at_brackets_and_stops() {
        let broken = |words: &str, room| wrap(words, room, room);
        assert_eq!(broken("伸縮性ニット生地", 8), ["伸縮性", "ニット生", "地"]);
        assert_eq!(broken("水通し、陰干し。", 6), ["水通", "し、陰", "干し。"]);
        assert_eq!(broken("裏毛「短い」", 6), ["裏毛", "「短", "い」"]);
        assert_eq!(broken("upholsterer's word", 6), ["upholsterer's", "word"]);
    }

    #[test]
    fn an_isolate_is_closed_and_opened_at_a_break() {
        let words = format!("on {}, knit", plain::isolated("قماش أزرق"));
        assert_eq!(wrap(&words, 8, 8), ["on \u{2068}قماش\u{2069}", "\u{2068}أزرق\u{2069},", "knit"]);
    }

    proptest! {
        /// Nothing is lost, and a line that is too wide is one word or one figure.
        #[test]
        fn words_are_kept(before in "[a-z0-9%± m]{0,40}", name in "[a-zقما生地🧵「」、 ]{0,40}", room in 4_usize..40) {
            let words = format!("{before} {} end", plain::isolated(&name));
            let bare = |text: &str| plain::plain(text).split_whitespace().collect::<String>();
            let lines = wrap(&words, room, room);
            prop_assert_eq!(bare(&lines.concat()), bare(&words));
            for line in &lines {
                prop_assert!(!plain::is_open(line), "{:?}", line);
                let one = wrap(line, 1, 1).len() == 1;
                prop_assert!(width(line) <= room || one, "{:?} in {}", line, room);
            }
        }
    }
}
