//! How a cloth is made.

use serde::{Deserialize, Serialize};

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
