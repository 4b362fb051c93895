//! How to measure, for somebody who pulls for the first time.

/// What the sheet is called.
pub const TITLE: &str = "Pull test: our readings";
/// What its gauge is called where no cloth is named.
pub const GAUGE: &str = "the swatch";

/// One step a sentence.
pub const STEPS: [&str; 7] = [
    "Fold the cloth so that two layers lie on each other along the grain that you pull.",
    "Put two pins or chalk marks 10 cm apart along that grain, well away from the edge.",
    "Pull once, as far as it goes easily, and let go. This first pull only settles the cloth: do not write it down.",
    "Lay it flat and measure between the marks. Write this under marks.",
    "Pull again, just as far as it goes easily, and hold. Somebody else reads the distance. Write it under pull 1.",
    "Let go and pull twice more. Look away from the last reading: write what you see.",
    "Let it lie for one minute, measure between the marks, and write this under after 1 min.",
];

/// What to do with the sheet.
pub const AFTER: &str =
    "Use the same unit for the whole line. Type the lines into a table as they stand: name, cloth, marks, readings.";
