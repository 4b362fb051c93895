//! How a cloth is made.

use serde::{Deserialize, Serialize};

use crate::number::ratio::Ratio;
use crate::number::words;

/// How a cloth is made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Construction {
    /// Warp and weft.
    Woven,
    /// Wales and courses.
    Knit,
    /// Felt, film, net, leather; or not known.
    #[default]
    Other,
}

words!(Construction { Woven => "woven", Knit => "knit", Other => "other" });

/// The most stretch that a woven gives in percent, on the bias too. Stretch wovens are sold at about 10 to 50 %, and a
/// weave of yarns that do not stretch locks on the bias at √2 − 1 = 41 %. The limit is the tool's own.
pub const MOST_STRETCH_WOVEN: u16 = 100;

/// The most stretch that a knit gives, or a cloth whose construction is not known, in percent. A hand-knit rib gives
/// 203 % at 30 N (the open data of Nature Communications 2024, doi 10.1038/s41467-024-46498-z). The limit is the tool's
/// own.
pub const MOST_STRETCH: u16 = 300;

/// Stretch above this many percent is unusual for a woven: the tool's own limit.
pub const USUAL_STRETCH_WOVEN: u16 = 60;

/// Stretch above this many percent is unusual for a knit and for a cloth whose construction is not known: a little more
/// than the 203 % of the rib named at [`MOST_STRETCH`]. The tool's own limit.
pub const USUAL_STRETCH: u16 = 220;

impl Construction {
    /// The most stretch that such cloth gives; a reading beyond it is refused.
    ///
    /// ```
    /// assert_eq!(tenter_core::Construction::Woven.most_stretch().percent(0).to_string(), "100");
    /// ```
    #[must_use]
    pub fn most_stretch(self) -> Ratio {
        percent(self.most_percent())
    }

    /// The same in percent.
    pub(crate) const fn most_percent(self) -> u16 {
        match self {
            Self::Woven => MOST_STRETCH_WOVEN,
            Self::Knit | Self::Other => MOST_STRETCH,
        }
    }

    /// The most stretch that such cloth usually gives; a reading beyond it is doubted.
    ///
    /// ```
    /// assert_eq!(tenter_core::Construction::Knit.usual_stretch().percent(0).to_string(), "220");
    /// ```
    #[must_use]
    pub fn usual_stretch(self) -> Ratio {
        percent(match self {
            Self::Woven => USUAL_STRETCH_WOVEN,
            Self::Knit | Self::Other => USUAL_STRETCH,
        })
    }
}

fn percent(whole: u16) -> Ratio {
    Ratio::new(whole.into(), 100).unwrap_or(Ratio::ZERO) // The denominator is positive.
}
