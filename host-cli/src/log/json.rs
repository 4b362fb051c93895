//! Core's types as JSON, readable by anybody and exact: lengths in millimetres, percentages in percent.

use serde::de::{DeserializeOwned, Error as _};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use tenter_core::{Demand, Length, Limit, Range, Unit};

/// Reads a text of this program's own in the one way in which all are read.
///
/// # Errors
///
/// A text that is something else.
pub fn read<T: DeserializeOwned>(text: &str) -> Result<T, serde_json::Error> {
    serde_json::from_value(serde_json::from_str(text)?)
}

/// Steps of length in a millimetre.
const STEPS_PER_MM: f64 = Length::STEPS_PER_MM as f64;

/// A length as a number of millimetres. 1/1600 mm is a finite decimal, so every length comes back as it was.
pub mod mm {
    use super::{Deserialize, Deserializer, Length, STEPS_PER_MM, Serializer, length};

    /// Writes it.
    ///
    /// # Errors
    ///
    /// The serializer's.
    pub fn serialize<S: Serializer>(length: &Length, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(f64::from(length.steps()) / STEPS_PER_MM)
    }

    /// Reads it.
    ///
    /// # Errors
    ///
    /// A number that is no length.
    pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Length, D::Error> {
        length::<D>(f64::deserialize(deserializer)?)
    }
}

/// A unit by its symbol.
pub mod unit {
    use super::{Deserialize, Deserializer, Serializer, Unit};

    /// Writes it.
    ///
    /// # Errors
    ///
    /// The serializer's.
    pub fn serialize<S: Serializer>(unit: &Unit, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(unit.symbol())
    }

    /// Reads it.
    ///
    /// # Errors
    ///
    /// A symbol of no unit.
    pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Unit, D::Error> {
        let symbol = String::deserialize(deserializer)?;
        Unit::from_symbol(&symbol).ok_or_else(|| serde::de::Error::custom("a unit other than mm, cm and in"))
    }
}

/// A length, or null.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Mm(#[serde(with = "mm")] pub Length);

fn length<'de, D: Deserializer<'de>>(mm: f64) -> Result<Length, D::Error> {
    let steps = mm * STEPS_PER_MM;
    if steps.abs() > f64::from(i32::MAX) || steps.is_nan() {
        return Err(D::Error::custom("a length beyond 1.3 km"));
    }
    let whole = steps.round();
    if (steps - whole).abs() > 1e-3 {
        return Err(D::Error::custom("a length that is no whole number of 1/1600 mm"));
    }
    #[allow(clippy::cast_possible_truncation)] // Within an i32 as checked above.
    Ok(Length::from_steps(whole as i32))
}

/// A limit: `{"percent":5}`, or a printed gauge as `{"gauge_mm":101.6,"extended_mm":136.525}`.
#[derive(Clone, Copy, Debug, Serialize, Deserialize)]
#[serde(untagged)]
enum LimitJson {
    Percent {
        percent: f64,
    },
    Marks {
        #[serde(with = "mm")]
        gauge_mm: Length,
        #[serde(with = "mm")]
        extended_mm: Length,
    },
}

impl From<Limit> for LimitJson {
    fn from(limit: Limit) -> Self {
        match limit.printed_marks() {
            Some((gauge_mm, extended_mm)) => Self::Marks { gauge_mm, extended_mm },
            // A percentage is kept in thousandths, so three decimals are all of it.
            None => Self::Percent { percent: limit.ratio().percent(3).to_string().parse().unwrap_or_default() },
        }
    }
}

impl TryFrom<LimitJson> for Limit {
    type Error = String;

    fn try_from(limit: LimitJson) -> Result<Self, String> {
        match limit {
            LimitJson::Percent { percent } => {
                Self::parse(&percent.to_string(), tenter_core::Unit::Mm).map_err(|error| error.to_string())
            }
            LimitJson::Marks { gauge_mm, extended_mm } => {
                Self::marks(gauge_mm, extended_mm).map_err(|error| error.to_string())
            }
        }
    }
}

#[derive(Default, Serialize, Deserialize)]
struct RangeJson {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    least: Option<LimitJson>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    most: Option<LimitJson>,
}

impl From<Range> for RangeJson {
    fn from(range: Range) -> Self {
        Self { least: range.at_least.map(LimitJson::from), most: range.at_most.map(LimitJson::from) }
    }
}

impl TryFrom<RangeJson> for Range {
    type Error = String;

    fn try_from(range: RangeJson) -> Result<Self, String> {
        let limit = |limit: Option<LimitJson>| limit.map(Limit::try_from).transpose();
        let range = Self { at_least: limit(range.least)?, at_most: limit(range.most)? };
        match (range.at_least, range.at_most) {
            (Some(least), Some(most)) if least.ratio() > most.ratio() => {
                Err("a least figure above the most".to_owned())
            }
            _ => Ok(range),
        }
    }
}

#[derive(Serialize, Deserialize)]
struct DemandJson {
    #[serde(default, skip_serializing_if = "is_empty")]
    lengthwise: RangeJson,
    #[serde(default, skip_serializing_if = "is_empty")]
    crosswise: RangeJson,
    #[serde(default, skip_serializing_if = "is_empty")]
    bias: RangeJson,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    growth_most: Option<LimitJson>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    recovery_least: Option<LimitJson>,
    /// The time of growth and recovery, where it is not 30 min.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    rest_seconds: Option<u32>,
}

const fn is_empty(range: &RangeJson) -> bool {
    range.least.is_none() && range.most.is_none()
}

/// A demand, as `{"crosswise":{"least":{"percent":5}},"growth_most":{"percent":3}}`.
pub mod demand {
    use super::{Demand, DemandJson, Deserialize, Deserializer, Limit, LimitJson, Serialize, Serializer};
    use serde::de::Error as _;
    use tenter_core::DEFAULT_REST_SECONDS;

    /// Writes it.
    ///
    /// # Errors
    ///
    /// The serializer's.
    pub fn serialize<S: Serializer>(demand: &Demand, serializer: S) -> Result<S::Ok, S::Error> {
        let json = DemandJson {
            lengthwise: demand.lengthwise.into(),
            crosswise: demand.crosswise.into(),
            bias: demand.bias.into(),
            growth_most: demand.growth_at_most.map(LimitJson::from),
            recovery_least: demand.recovery_at_least.map(LimitJson::from),
            rest_seconds: Some(demand.rest_seconds).filter(|seconds| *seconds != DEFAULT_REST_SECONDS),
        };
        json.serialize(serializer)
    }

    /// Reads it.
    ///
    /// # Errors
    ///
    /// Limits that cannot be.
    pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Demand, D::Error> {
        let json = DemandJson::deserialize(deserializer)?;
        let limit = |limit: Option<LimitJson>| limit.map(Limit::try_from).transpose().map_err(D::Error::custom);
        Ok(Demand {
            lengthwise: json.lengthwise.try_into().map_err(D::Error::custom)?,
            crosswise: json.crosswise.try_into().map_err(D::Error::custom)?,
            bias: json.bias.try_into().map_err(D::Error::custom)?,
            growth_at_most: limit(json.growth_most)?,
            recovery_at_least: limit(json.recovery_least)?,
            rest_seconds: json.rest_seconds.unwrap_or(DEFAULT_REST_SECONDS),
        })
    }
}

/// A field that a change may leave alone (absent), clear (null) or set: for `#[serde(deserialize_with)]`.
///
/// # Errors
///
/// What the field's own type says.
#[allow(clippy::option_option)] // Absent, null and a value are three things.
pub fn some<'de, D: Deserializer<'de>, T: Deserialize<'de>>(deserializer: D) -> Result<Option<Option<T>>, D::Error> {
    Option::<T>::deserialize(deserializer).map(Some)
}
