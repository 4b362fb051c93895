//! What a line's end must not part: a number from its unit, a figure from its ±.

/// A space at which no line ends.
const NO_BREAK: char = '\u{a0}';
/// Where no line ends though there is no space.
const JOINER: char = '\u{2060}';

/// What stands behind a number.
const UNITS: [&str; 12] = ["%", "mm", "cm", "m", "in", "yd", "g", "N", "s", "min", "h", "points"];

/// A text in which no line may end within a figure.
///
/// ```
/// use tenter::words::tied::tied;
///
/// assert_eq!(tied("crosswise 8.5 % ± 0.8, slight"), "crosswise 8.5\u{a0}%\u{a0}±\u{a0}0.8, slight");
/// ```
#[must_use]
pub fn tied(text: &str) -> String {
    let mut tied = String::with_capacity(text.len());
    let mut words = text.split(' ').peekable();
    while let Some(word) = words.next() {
        // A line may end behind a slash, but not within g/m² or a path.
        tied.push_str(&word.replace('/', &format!("/{JOINER}")));
        if let Some(next) = words.peek() {
            tied.push(if is_one(word, next) { NO_BREAK } else { ' ' });
        }
    }
    tied
}

/// The same with plain spaces, as a terminal shows it.
#[must_use]
pub fn untied(text: &str) -> String {
    text.replace(NO_BREAK, " ").replace(JOINER, "")
}

/// Whether a number and its unit meet here, or a figure and its ±.
fn is_one(before: &str, after: &str) -> bool {
    let unit = after.trim_end_matches([',', ';', ':', '.', ')', ']']).split('/').next().unwrap_or_default();
    let digit = |c: char| c.is_ascii_digit();
    before.ends_with(digit) && UNITS.contains(&unit)
        || matches!(before, "%" | "points") && after.starts_with('±')
        || before == "±" && after.starts_with(digit)
}
