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

/// A text that a spreadsheet will not take for a formula: one that begins with = + - @, a tab or a carriage return gets
/// an apostrophe before it (a common precaution against what is called CSV injection).
#[must_use]
pub fn harmless(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r', '\'']) { format!("'{text}") } else { text.to_owned() }
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
        for text in ["=1+1", "-5 cm", "'twas dry", "'=", "''", "'", "", "plain", "@", "'plain"] {
            assert_eq!(as_typed(&harmless(text)), text);
        }
        assert_eq!(as_typed("'twas typed"), "'twas typed");
    }
}
