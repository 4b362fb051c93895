//! The log as CSV for a spreadsheet: UTF-8, a line of heads, decimal points, lengths in millimetres, one row a test or a
//! cloth. [`mod@write`] makes such tables, [`read`] takes readings typed into one.

mod class;
mod cloths;
mod patterns;
mod people;
pub mod read;
pub mod write;

use crate::input::{TypedReading, TypedTest};

/// The heads of the tests. `import --csv` reads those before `stretch_percent`, and [`BY`], and leaves the rest alone.
pub const TESTS: [&str; 25] = [
    "id",
    "tag",
    "name",
    "construction",
    "pulled",
    "grain",
    "gauge",
    "readings",
    "division",
    "ends",
    "held",
    "settling",
    "load",
    "planned",
    "note",
    "stretch_percent",
    "stretch_low",
    "stretch_high",
    "growth_percent",
    "growth_low",
    "growth_high",
    "recovery_percent",
    "growth_seconds",
    "device",
    BY,
];

/// The heads of the cloths.
pub const FABRICS: [&str; 21] = [
    "id",
    "tag",
    "name",
    "fibre",
    "construction",
    "width_mm",
    "length_mm",
    "g_per_m2",
    "place",
    "note",
    "washed",
    "seen",
    "price",
    "washed_lengthwise",
    "washed_crosswise",
    "dropped",
    "finish",
    "drape",
    "purpose",
    "one_way",
    "colour",
];

/// The heads of the patterns: a row for each role of each view, and one for a pattern without roles.
pub const PATTERNS: [&str; 20] = [
    "id",
    "pattern_id",
    "pattern",
    "pattern_note",
    "view",
    "role",
    "garment_kind",
    "crosswise",
    "lengthwise",
    "bias",
    "growth_most",
    "recovery_least",
    "constructions",
    "mass",
    "drapes",
    "finishes",
    "purpose",
    "cloth",
    "note",
    "rest_seconds",
];

/// The heads of the garments.
pub const GARMENTS: [&str; 12] =
    ["id", "number", "name", "pattern", "view", "cloths", "for", "by", "state", "done", "note", "class"];

/// Marks with which a formula begins, also as wide and small letters have them (Unicode, Halfwidth and Fullwidth Forms, and
/// Small Form Variants), which a spreadsheet set to an East Asian language takes for the same.
const FORMULA: [char; 13] = [
    '=', '+', '-', '@', '\u{2212}', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}', '\u{fe66}', '\u{fe62}', '\u{fe63}',
    '\u{fe6b}',
];

/// Whether a character is not seen before a formula: blanks of every kind, and those without a width.
fn is_unseen(c: char) -> bool {
    c.is_whitespace()
        || c.is_control()
        || matches!(c, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{2060}'..='\u{2064}' | '\u{feff}')
}

/// A text that a spreadsheet will not take for a formula: one that begins with = + - @, a tab or a carriage return gets
/// an apostrophe before it (a common precaution against what is called CSV injection), and so does one that has nothing but
/// blanks before such a mark, which a spreadsheet may drop.
#[must_use]
pub fn harmless(text: &str) -> String {
    let guarded = text.starts_with(['\t', '\r', '\'']) || text.trim_start_matches(is_unseen).starts_with(FORMULA);
    if guarded { format!("'{text}") } else { text.to_owned() }
}

/// The text that [`harmless`] was given; one that begins with an apostrophe of its own is left alone.
#[must_use]
pub fn as_typed(text: &str) -> &str {
    text.strip_prefix('\'').filter(|rest| harmless(rest) == text).unwrap_or(text)
}

/// A settling pull made after the marks were read.
pub const AFTER_MARKS: &str = "after-marks";

/// How many of the heads of the tests are read; those after them are worked out.
pub const READ: usize = 15;

/// The head of who pulled: the last, because it came later; it is read too.
pub const BY: &str = "by";

/// How a test was made, in the columns from `grain` to `planned`. The readings stand in the order in which they were made:
/// `105 106 101@60s 100.5@marks` is two pulls, a reading a minute after the second, and the marks read again.
#[must_use]
pub fn made(test: &TypedTest) -> [String; 9] {
    let readings: Vec<String> = test.readings.iter().map(TypedReading::row).collect();
    [
        test.grain.word().to_owned(),
        test.marks.clone().unwrap_or_default(),
        readings.join(" "),
        test.division.clone().unwrap_or_default(),
        test.ends.word().to_owned(),
        test.held.word().to_owned(),
        match (test.settling, test.marks_before_settling) {
            (true, true) => AFTER_MARKS,
            (true, false) => "yes",
            (false, _) => "no",
        }
        .to_owned(),
        test.load.clone().unwrap_or_else(|| "hand".to_owned()),
        test.planned.clone().unwrap_or_default(),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_made_harmless_comes_back() {
        for text in [
            "\u{ff1d}1",
            " =1",
            "\u{a0}@x",
            "\u{feff}+1",
            "=1+1",
            "-5 cm",
            "'twas dry",
            "'=",
            "''",
            "'",
            "",
            "plain",
            "@",
            "'plain",
        ] {
            assert_eq!(as_typed(&harmless(text)), text);
        }
        assert_eq!(as_typed("'twas typed"), "'twas typed");
    }

    /// Whatever stands before the mark and cannot be seen, and in whatever width the mark is written.
    #[test]
    fn no_cell_begins_a_formula() {
        for before in ["", " ", "\u{a0}", "\u{3000}", "\u{feff}", "\u{200b}", "\t", "\u{2060} "] {
            for mark in ["=", "+", "-", "@", "\u{ff1d}", "\u{ff0b}", "\u{ff0d}", "\u{ff20}", "\u{2212}", "\u{fe66}"] {
                let text = format!("{before}{mark}HYPERLINK(1)");
                assert_eq!(harmless(&text), format!("'{text}"));
                assert_eq!(as_typed(&harmless(&text)), text);
            }
        }
        assert_eq!(harmless("drill \u{ff1d}"), "drill \u{ff1d}");
    }
}
