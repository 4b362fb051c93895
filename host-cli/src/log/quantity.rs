//! Mass per area and price per length.

use std::fmt;

use serde::{Deserialize, Serialize};
use tenter_core::Length;

/// An avoirdupois ounce per square yard in milligrams per square metre: 28.349 523 125 g (exact, international
/// agreement of 1959) over 0.836 127 36 m² (exact, 0.9144 m squared).
const MG_PER_M2_IN_OZ_PER_YD2: f64 = 33_905.747_479_807;
/// The heaviest cloth taken: 10 kg/m².
const MOST_MG_PER_M2: f64 = 10_000_000.0;

/// Mass per area of a cloth.
///
/// ```
/// use tenter::log::MassPerArea;
///
/// assert_eq!(MassPerArea::parse("180 g/m2").unwrap().to_string(), "180 g/m²");
/// assert_eq!(MassPerArea::parse("5.3oz/yd2").unwrap().to_string(), "179.7 g/m²");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct MassPerArea {
    /// Milligrams per square metre.
    mg_per_m2: u32,
}

impl MassPerArea {
    /// Reads `180g/m2`, `180 g/m²`, `5.3 oz/yd²`; none for anything else, or outside 0.001 … 10 000 g/m².
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (number, unit) = number_and_unit(text)?;
        let factor = match unit.to_lowercase().replace(['^', ' '], "").as_str() {
            "g/m2" | "g/m²" | "gsm" => 1000.0,
            "oz/yd2" | "oz/yd²" | "oz" => MG_PER_M2_IN_OZ_PER_YD2,
            _ => return None,
        };
        let mg = (number * factor).round();
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Within 1 and 10⁷.
        (1.0..=MOST_MG_PER_M2).contains(&mg).then_some(Self { mg_per_m2: mg as u32 })
    }

    /// So many milligrams per square metre.
    #[must_use]
    pub const fn from_mg_per_m2(mg_per_m2: u32) -> Self {
        Self { mg_per_m2 }
    }

    /// In milligrams per square metre.
    #[must_use]
    pub const fn mg_per_m2(self) -> u32 {
        self.mg_per_m2
    }

    /// In whole grams per square metre.
    #[must_use]
    pub const fn whole_g_per_m2(self) -> u32 {
        self.mg_per_m2.saturating_add(500) / 1000
    }

    /// In grams per square metre.
    #[must_use]
    pub fn g_per_m2(self) -> f64 {
        f64::from(self.mg_per_m2) / 1000.0
    }
}

impl fmt::Display for MassPerArea {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let tenths = (self.g_per_m2() * 10.0).round() / 10.0;
        write!(f, "{tenths} g/m²")
    }
}

/// The length that a price is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// A metre.
    Metre,
    /// A yard, 0.9144 m.
    Yard,
}

/// What a length of cloth costs.
///
/// ```
/// use tenter::log::Price;
/// use tenter_core::Length;
///
/// let price = Price::parse("12.50 EUR/m").unwrap();
/// assert_eq!(price.of(Length::from_mm(1600)), "20.00 EUR");
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Price {
    /// In hundredths of the currency.
    pub hundredths: u32,
    /// The currency, as it was typed; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub currency: String,
    /// The length it is for.
    pub per: Per,
}

impl Price {
    /// Reads `12.50/m`, `12.50 EUR/m`, `£9/yd`; none for anything else.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (amount, per) = text.rsplit_once('/')?;
        let per = match per.trim().to_lowercase().as_str() {
            "m" | "metre" | "meter" => Per::Metre,
            "yd" | "yard" => Per::Yard,
            _ => return None,
        };
        // The currency stands before the number or after it.
        let amount = amount.trim();
        let start = amount.find(|c: char| c.is_ascii_digit())?;
        let (before, rest) = amount.split_at_checked(start)?;
        let end = rest.find(|c: char| !c.is_ascii_digit() && !matches!(c, '.' | ',')).unwrap_or(rest.len());
        let (number, after) = rest.split_at_checked(end)?;
        let currency = format!("{}{}", before.trim(), after.trim());
        let odd = |c: char| c.is_ascii_digit() || c.is_whitespace() || c.is_control() || c == '-';
        if currency.chars().count() > 8 || currency.chars().any(odd) {
            return None;
        }
        let number: f64 = number.replace(',', ".").parse().ok()?;
        let hundredths = (number * 100.0).round();
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Within 0 and 10⁸.
        (0.0..=1e8).contains(&hundredths).then_some(Self { hundredths: hundredths as u32, currency, per })
    }

    /// What `length` costs, rounded up to the next hundredth, with the currency.
    #[must_use]
    pub fn of(&self, length: Length) -> String {
        let per: i64 = match self.per {
            Per::Metre => Length::METRE.steps().into(),
            Per::Yard => Length::YARD.steps().into(),
        };
        let hundredths = (i64::from(self.hundredths) * i64::from(length.steps()).max(0) + per - 1) / per;
        self.amount(hundredths)
    }

    fn amount(&self, hundredths: i64) -> String {
        let amount = format!("{}.{:02}", hundredths / 100, hundredths % 100);
        if self.currency.is_empty() { amount } else { format!("{amount} {}", self.currency) }
    }
}

impl fmt::Display for Price {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let per = match self.per {
            Per::Metre => "m",
            Per::Yard => "yd",
        };
        write!(f, "{}/{per}", self.amount(self.hundredths.into()))
    }
}

/// `180 g/m2` as 180 and `g/m2`.
fn number_and_unit(text: &str) -> Option<(f64, &str)> {
    let text = text.trim();
    let end = text.find(|c: char| !c.is_ascii_digit() && !matches!(c, '.' | ','))?;
    let (number, unit) = text.split_at_checked(end)?;
    Some((number.replace(',', ".").parse().ok()?, unit.trim()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn masses() {
        // 1 oz/yd² = 33.906 g/m²: NIST SP 811 (2008), Appendix B.8, "ounce (avoirdupois) per square yard" 3.390 575 E−02 kg/m².
        let ounce = MassPerArea::parse("1 oz/yd²").unwrap();
        assert!((ounce.g_per_m2() - 33.90575).abs() < 0.0005, "{ounce:?}");
        for (text, want) in [("180g/m2", "180 g/m²"), ("92,5 g/m²", "92.5 g/m²"), ("200 gsm", "200 g/m²")] {
            assert_eq!(MassPerArea::parse(text).unwrap().to_string(), want);
        }
        for text in ["", "180", "g/m2", "-3 g/m2", "0g/m2", "99999g/m2", "5 stone", "1.2.3 g/m2", "NaN g/m2"] {
            assert_eq!(MassPerArea::parse(text), None, "{text}");
        }
    }

    #[test]
    fn prices() {
        for (text, shown) in
            [("12.50/m", "12.50/m"), ("9 £/yd", "9.00 £/yd"), ("€4,2/m", "4.20 €/m"), ("0/m", "0.00/m")]
        {
            assert_eq!(Price::parse(text).unwrap().to_string(), shown);
        }
        for text in ["", "12.50", "/m", "twelve/m", "-3/m", "12/ell", "1.2.3/m", "1e9/m", "99999999999/m"] {
            assert_eq!(Price::parse(text), None, "{text}");
        }
        // A yard is 0.9144 m (exact): 9.144 m are ten yards.
        let yards = Price::parse("9/yd").unwrap();
        assert_eq!(yards.of(Length::from_mm(9144)), "90.00");
        assert_eq!(yards.of(Length::from_mm(1)), "0.01", "a started hundredth counts");
    }
}
