//! Lengths as whole steps of 1/1600 mm, the largest step in which 0.01 mm and 1/64 inch are both whole numbers.

use core::fmt;

use crate::number::decimal::{self, DecimalError, Fraction, Text, push};

/// The unit in which a bare number is read and a length is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Unit {
    /// Millimetre.
    #[default]
    Mm,
    /// Centimetre.
    Cm,
    /// Inch of 25.4 mm, shown in fractions down to 1/64.
    Inch,
}

impl Unit {
    /// The short name used in texts.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::Cm => "cm",
            Self::Inch => "in",
        }
    }

    /// The unit with this short name.
    ///
    /// ```
    /// use tenter_core::Unit;
    ///
    /// assert_eq!(Unit::from_symbol("in"), Some(Unit::Inch));
    /// assert_eq!(Unit::from_symbol("ell"), None);
    /// ```
    #[must_use]
    pub fn from_symbol(symbol: &str) -> Option<Self> {
        [Self::Mm, Self::Cm, Self::Inch].into_iter().find(|unit| unit.symbol() == symbol)
    }

    /// The unit in which a text gives its length: centimetres for metres and inches for yards too. `None` where the text
    /// has no unit, or none that is known.
    ///
    /// ```
    /// use tenter_core::Unit;
    ///
    /// assert_eq!(Unit::typed("4 1/8\""), Some(Unit::Inch));
    /// assert_eq!(Unit::typed("10 Centimetres"), Some(Unit::Cm));
    /// assert_eq!(Unit::typed("100"), None);
    /// ```
    #[must_use]
    pub fn typed(text: &str) -> Option<Self> {
        let text = text.trim();
        let unit = text.get(text.find(|c: char| !is_number_part(c))?..)?;
        parse_unit(unit).map(|(_, unit)| unit)
    }

    const fn steps(self) -> i64 {
        match self {
            Self::Mm => Length::STEPS_PER_MM as i64,
            Self::Cm => 10 * Length::STEPS_PER_MM as i64,
            Self::Inch => Length::INCH.0 as i64,
        }
    }
}

/// A length: a whole number of steps of 1/1600 mm (0.01 mm = 16 steps, 1/64 in = 635, 1 in = 40 640), within
/// ± 1.3 km. Both scales are exact in it, so no conversion rounds.
///
/// ```
/// use tenter_core::{Length, Unit};
///
/// let eighth = Length::parse("4 1/8 in", Unit::Mm)?;
/// assert_eq!(eighth.steps(), 167_640);
/// assert_eq!(eighth.show(Unit::Mm).to_string(), "104.775 mm");
/// # Ok::<(), tenter_core::LengthError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Length(i32);

impl Length {
    /// No length at all.
    pub const ZERO: Self = Self(0);

    /// How many steps there are in a millimetre, 1600: the least with which 0.01 mm and 1/64 in are both whole.
    pub const STEPS_PER_MM: i32 = 1600;

    /// One metre.
    pub const METRE: Self = Self(1000 * Self::STEPS_PER_MM);

    /// One inch, 25.4 mm exactly (international agreement of 1959).
    pub const INCH: Self = Self(254 * Self::STEPS_PER_MM / 10);

    /// One yard, 36 in.
    pub const YARD: Self = Self(36 * Self::INCH.0);

    /// A length of so many steps of 1/1600 mm.
    ///
    /// ```
    /// assert_eq!(tenter_core::Length::from_steps(1600), tenter_core::Length::from_mm(1));
    /// ```
    #[must_use]
    pub const fn from_steps(steps: i32) -> Self {
        Self(steps)
    }

    /// Whole millimetres.
    ///
    /// ```
    /// assert_eq!(tenter_core::Length::from_mm(100).steps(), 160_000);
    /// ```
    #[must_use]
    pub const fn from_mm(mm: i16) -> Self {
        Self(Self::STEPS_PER_MM * mm as i32)
    }

    /// Whole 64ths of an inch.
    ///
    /// ```
    /// assert_eq!(tenter_core::Length::from_inch_64ths(256).steps(), 4 * 40_640);
    /// ```
    #[must_use]
    pub const fn from_inch_64ths(count: i16) -> Self {
        Self(635 * count as i32)
    }

    /// The number of steps of 1/1600 mm.
    #[must_use]
    pub const fn steps(self) -> i32 {
        self.0
    }

    /// The length in millimetres, to the nearest `f32`: for drawing and for formulas, never for a comparison.
    #[must_use]
    pub fn mm(self) -> f32 {
        crate::number::num::float(i64::from(self.0)) / 1600.0
    }

    /// Reads a length as people write it: `10cm`, `104.5 mm`, `10,5 cm`, `4in`, `4 1/8 in`, `4-1/8"`, `4½ in`,
    /// `1.2 m`, `2 yd`; a bare number is taken in `default`.
    ///
    /// # Errors
    ///
    /// A text that is no length, or no whole number of steps, is refused with the reason; nothing is rounded.
    ///
    /// ```
    /// use tenter_core::{Length, LengthError, Unit};
    ///
    /// assert_eq!(Length::parse("10,5 cm", Unit::Mm), Ok(Length::from_mm(105)));
    /// assert_eq!(Length::parse("1/3 mm", Unit::Mm), Err(LengthError::NotAWholeStep));
    /// ```
    pub fn parse(text: &str, default: Unit) -> Result<Self, LengthError> {
        let text = text.trim();
        if text.is_empty() {
            return Err(LengthError::Empty);
        }
        if text.starts_with(['-', '\u{2212}']) {
            return Err(LengthError::Negative);
        }
        let end = text.find(|c: char| !is_number_part(c)).unwrap_or(text.len());
        let (number, unit) = text.split_at_checked(end).ok_or(LengthError::NotANumber)?;
        let value = parse_number(number.trim())?;
        let unit = unit.trim();
        let steps_per_unit = match parse_unit(unit) {
            Some((steps, _)) => steps,
            None if unit.is_empty() => default.steps(),
            None => return Err(LengthError::UnknownUnit),
        };
        let scaled = i128::from(value.num) * i128::from(steps_per_unit);
        let den = i128::from(value.den);
        match (scaled.checked_rem(den), scaled.checked_div(den)) {
            (Some(0), Some(steps)) => i32::try_from(steps).map(Self).map_err(|_| LengthError::TooLong),
            (Some(_), _) => Err(LengthError::NotAWholeStep),
            (None, _) => Err(LengthError::ZeroDenominator),
        }
    }

    /// The length as text with its unit: millimetres and centimetres exactly, inches in fractions down to 1/64 or,
    /// where the length is no such fraction, in thousandths.
    ///
    /// ```
    /// use tenter_core::{Length, Unit};
    ///
    /// assert_eq!(Length::from_mm(105).show(Unit::Cm).to_string(), "10.5 cm");
    /// assert_eq!(Length::from_inch_64ths(344).show(Unit::Inch).to_string(), "5 3/8 in");
    /// assert_eq!(Length::from_mm(100).show(Unit::Inch).to_string(), "3.937 in");
    /// ```
    #[must_use]
    pub const fn show(self, unit: Unit) -> ShowLength {
        ShowLength { length: self, unit }
    }

    pub(crate) fn is_multiple_of(self, other: Self) -> bool {
        self.0.checked_rem(other.0) == Some(0)
    }
}

fn is_number_part(c: char) -> bool {
    c.is_ascii_digit() || matches!(c, '.' | ',' | '/' | '-' | ' ' | '\u{a0}' | '\u{2044}') || vulgar(c).is_some()
}

const fn vulgar(c: char) -> Option<Fraction> {
    let (num, den) = match c {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    };
    Some(Fraction { num, den })
}

/// Reads `12`, `10.5`, `1/2`, `4 1/8`, `4-1/8`, `4½`.
fn parse_number(text: &str) -> Result<Fraction, LengthError> {
    if let Some((at, fraction)) = text.char_indices().find_map(|(at, c)| vulgar(c).map(|v| ((at, c), v))) {
        let (at, c) = at;
        let whole = text.get(..at).unwrap_or("").trim_end_matches(['-', ' ', '\u{a0}']);
        return match text.get(at.saturating_add(c.len_utf8())..) {
            Some("") => mixed(whole, fraction),
            _ => Err(LengthError::NotANumber),
        };
    }
    let Some((head, den)) = text.split_once(['/', '\u{2044}']) else {
        return Ok(decimal::parse(text)?);
    };
    let head = head.trim();
    let (whole, num) = head.rsplit_once([' ', '-', '\u{a0}']).unwrap_or(("", head));
    let fraction = Fraction { num: whole_number(num)?, den: whole_number(den.trim())? };
    if fraction.den == 0 {
        return Err(LengthError::ZeroDenominator);
    }
    if fraction.num >= fraction.den {
        let part = |part| u32::try_from(part).map_err(|_| LengthError::TooLong);
        return Err(LengthError::ImproperFraction { above: part(fraction.num)?, below: part(fraction.den)? });
    }
    mixed(whole.trim_end_matches(['-', ' ', '\u{a0}']), fraction)
}

fn mixed(whole: &str, fraction: Fraction) -> Result<Fraction, LengthError> {
    let whole = if whole.is_empty() { 0 } else { whole_number(whole)? };
    let num = whole.checked_mul(fraction.den).and_then(|n| n.checked_add(fraction.num));
    num.map(|num| Fraction { num, den: fraction.den }).ok_or(LengthError::TooLong)
}

fn whole_number(text: &str) -> Result<i64, LengthError> {
    match decimal::parse(text)? {
        Fraction { num, den: 1 } if !text.ends_with(['.', ',']) => Ok(num),
        _ => Err(LengthError::NotANumber),
    }
}

/// The steps of a unit as people write it, and the unit that its lengths are shown in.
fn parse_unit(text: &str) -> Option<(i64, Unit)> {
    let is = |names: &[&str]| names.iter().any(|name| text.eq_ignore_ascii_case(name));
    if is(&["mm", "mms", "millimetre", "millimetres", "millimeter", "millimeters"]) {
        Some((Unit::Mm.steps(), Unit::Mm))
    } else if is(&["cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"]) {
        Some((Unit::Cm.steps(), Unit::Cm))
    } else if is(&["in", "inch", "inches", "\"", "''", "″", "”"]) {
        Some((Unit::Inch.steps(), Unit::Inch))
    } else if is(&["m", "metre", "metres", "meter", "meters"]) {
        Some((Length::METRE.0.into(), Unit::Cm))
    } else if is(&["yd", "yds", "yard", "yards"]) {
        Some((Length::YARD.0.into(), Unit::Inch))
    } else {
        None
    }
}

/// A length on its way to a text; see [`Length::show`].
///
/// ```
/// use tenter_core::{Length, ShowLength, Unit};
///
/// let shown: ShowLength = Length::from_mm(7).show(Unit::Mm);
/// assert_eq!(format!("{shown:>7}"), "   7 mm");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ShowLength {
    length: Length,
    unit: Unit,
}

impl ShowLength {
    /// The text without the machinery of `core::fmt`, for a small processor; the same as `to_string` gives.
    #[must_use]
    pub fn text(self) -> Text {
        let size = self.length.0.unsigned_abs();
        let steps = u64::from(size);
        let mut text = Text::new();
        if self.length.0 < 0 {
            push(&mut text, "-");
        }
        match self.unit {
            // One step is 0.000625 mm and 0.0000625 cm.
            Unit::Mm => decimal::write(&mut text, steps * 625, 1_000_000, true),
            Unit::Cm => decimal::write(&mut text, steps * 625, 10_000_000, true),
            Unit::Inch if size.is_multiple_of(635) => write_inches(&mut text, size / 635),
            Unit::Inch => {
                let (whole, rest) = (size / 40_640, size % 40_640);
                let thousandths = u64::from(whole) * 1000 + u64::from((rest * 1000 + 20_320) / 40_640);
                decimal::write(&mut text, thousandths, 1000, true);
            }
        }
        push(&mut text, " ");
        push(&mut text, self.unit.symbol());
        text
    }
}

impl fmt::Display for ShowLength {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.text())
    }
}

fn write_inches(text: &mut Text, sixty_fourths: u32) {
    let (whole, rest) = (sixty_fourths / 64, sixty_fourths % 64);
    if whole > 0 || rest == 0 {
        decimal::write(text, whole.into(), 1, false);
    }
    if rest > 0 {
        if whole > 0 {
            push(text, " ");
        }
        let halvings = rest.trailing_zeros().min(6);
        decimal::write(text, (rest >> halvings).into(), 1, false);
        push(text, "/");
        decimal::write(text, 64 >> halvings, 1, false);
    }
}

/// Why a text is no length.
///
/// ```
/// use tenter_core::{Length, LengthError, Unit};
///
/// assert_eq!(Length::parse("41/8in", Unit::Mm), Err(LengthError::ImproperFraction { above: 41, below: 8 }));
/// assert_eq!(Length::parse("1,250", Unit::Mm), Err(LengthError::AmbiguousComma));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum LengthError {
    /// There is no text.
    Empty,
    /// The text begins with a minus sign.
    Negative,
    /// No number stands before the unit.
    NotANumber,
    /// `1,250` may be one and a quarter or one thousand two hundred and fifty.
    AmbiguousComma,
    /// The unit is none of mm, cm, m, in, yd.
    UnknownUnit,
    /// A fraction with a zero below the line.
    ZeroDenominator,
    /// A fraction of one and more: `41/8` may be 4 1/8 or 5 1/8.
    ImproperFraction {
        /// The number above the line.
        above: u32,
        /// The number below the line.
        below: u32,
    },
    /// Finer than 1/1600 mm, so it would have to be rounded.
    NotAWholeStep,
    /// Beyond 1.3 km.
    TooLong,
}

impl From<DecimalError> for LengthError {
    fn from(error: DecimalError) -> Self {
        match error {
            DecimalError::NotANumber => Self::NotANumber,
            DecimalError::AmbiguousComma => Self::AmbiguousComma,
            DecimalError::TooLarge => Self::TooLong,
            DecimalError::TooFine => Self::NotAWholeStep,
        }
    }
}

impl fmt::Display for LengthError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Empty => "no length given; type one such as 104.5mm, 10,5cm or 4 1/8in",
            Self::Negative => "a length cannot be negative; type it without the minus sign",
            Self::NotANumber => "not a length; type one such as 104.5mm, 10,5cm or 4 1/8in",
            Self::AmbiguousComma => "a comma with three digits can be read two ways; type 1.250 or 1250",
            Self::UnknownUnit => "unknown unit; type mm, cm, m, in or yd after the number",
            Self::ImproperFraction { above, below } => return write_meanings(f, *above, *below),
            Self::ZeroDenominator => "a fraction cannot have 0 below the line; type one such as 4 1/8in",
            Self::NotAWholeStep => {
                "finer than any scale; type hundredths of a millimetre or 64ths of an inch, such as 104.25mm"
            }
            Self::TooLong => "longer than 1.3 km; check the number and its unit",
        })
    }
}

impl core::error::Error for LengthError {}

/// What `above/below` may mean: a space left out, or the fraction itself. `41/8` is 4 1/8 or 5 1/8.
fn write_meanings(f: &mut fmt::Formatter<'_>, above: u32, below: u32) -> fmt::Result {
    f.write_str("a fraction of one or more; type ")?;
    let mut place = 10;
    while let (Some(whole), Some(part)) = (above.checked_div(place), above.checked_rem(place)) {
        if whole == 0 {
            break;
        }
        // A space is not left out before a zero.
        if part < below && part >= place / 10 {
            write!(f, "{whole} {part}/{below} or ")?;
        }
        place = place.saturating_mul(10);
    }
    match (above.checked_div(below), above.checked_rem(below)) {
        (Some(whole), Some(part)) if part > 0 => write!(f, "{whole} {part}/{below}"),
        (Some(whole), _) => write!(f, "{whole}"),
        _ => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::string::ToString;

    fn steps(text: &str) -> Result<i32, LengthError> {
        Length::parse(text, Unit::Mm).map(Length::steps)
    }

    #[test]
    fn reads_what_people_write() {
        for (text, want) in [
            ("10cm", 160_000),
            ("104.5 mm", 167_200),
            ("10,5 cm", 168_000),
            ("4in", 162_560),
            ("4 1/8 in", 167_640),
            ("4-1/8\"", 167_640),
            ("4 - 1/8 inch", 167_640),
            ("4⅛″", 167_640),
            ("4 ⅛ IN", 167_640),
            ("½ in", 20_320),
            ("1/2in", 20_320),
            ("100", 160_000),
            ("1.5m", 2_400_000),
            ("2 yd", 2_926_080),
            ("0.01mm", 16),
            ("1/64 in", 635),
            ("0", 0),
            ("10cms", 160_000),
            ("10 centimetres", 160_000),
            ("10 CENTIMETERS", 160_000),
            ("104.5 Millimetres", 167_200),
            ("2.5yds", 3_657_600),
        ] {
            assert_eq!(steps(text), Ok(want), "{text}");
        }
    }

    #[test]
    fn refuses_with_a_reason() {
        use LengthError::*;
        for (text, want) in [
            ("", Empty),
            ("  ", Empty),
            ("-5mm", Negative),
            ("mm", NotANumber),
            ("10 5 cm", NotANumber),
            ("4 1/8 1/2 in", NotANumber),
            ("½½", NotANumber),
            ("1e3mm", UnknownUnit),
            ("5 furlongs", UnknownUnit),
            ("NaN", NotANumber),
            ("inf mm", NotANumber),
            ("1,000 mm", AmbiguousComma),
            ("1/0 in", ZeroDenominator),
            ("1/3 mm", NotAWholeStep),
            ("0.0001mm", NotAWholeStep),
            ("2000 m", TooLong),
            ("99999999999999999999999mm", TooLong),
            ("1/2/3in", NotANumber),
            ("4.5 1/2 in", NotANumber),
            ("41/8", ImproperFraction { above: 41, below: 8 }),
            ("4 8/8in", ImproperFraction { above: 8, below: 8 }),
        ] {
            assert_eq!(steps(text), Err(want), "{text}");
        }
    }

    #[test]
    fn a_fraction_of_one_and_more_is_asked_for() {
        let told = |text| Length::parse(text, Unit::Inch).unwrap_err().to_string();
        assert_eq!(told("41/8"), "a fraction of one or more; type 4 1/8 or 5 1/8");
        assert_eq!(told("111/16"), "a fraction of one or more; type 11 1/16 or 1 11/16 or 6 15/16");
        assert_eq!(told("3/2"), "a fraction of one or more; type 1 1/2");
        assert_eq!(told("8/8"), "a fraction of one or more; type 1");
    }

    #[test]
    fn shows_fractions_and_decimals() {
        let show = |steps, unit| Length::from_steps(steps).show(unit).to_string();
        assert_eq!(show(635, Unit::Inch), "1/64 in");
        assert_eq!(show(20_320, Unit::Inch), "1/2 in");
        assert_eq!(show(-167_640, Unit::Inch), "-4 1/8 in");
        assert_eq!(show(0, Unit::Inch), "0 in");
        assert_eq!(show(1, Unit::Mm), "0.000625 mm");
        assert_eq!(show(1, Unit::Cm), "0.0000625 cm");
        assert_eq!(show(i32::MIN, Unit::Mm), "-1342177.28 mm");
        assert_eq!(show(i32::MAX, Unit::Inch), "52841.625 in");
    }
}
