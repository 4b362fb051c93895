//! Kinds of garment as data.

use serde::{Deserialize, Serialize};

use crate::number::words;

/// A kind of garment: it decides which seams, edges, closings and steps of work there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum GarmentKind {
    /// A woven jacket without a lining.
    UnlinedJacket,
    /// A lined coat.
    LinedCoat,
    /// A knit pullover with a hood.
    HoodedPullover,
    /// A skirt.
    Skirt,
    /// Trousers other than jeans.
    Trousers,
    /// Jeans.
    Jeans,
    /// A woven shirt or blouse.
    Shirt,
    /// A dress.
    Dress,
    /// A knit top with a neckband.
    TShirt,
    /// Leggings or tights.
    Leggings,
    /// Swimwear, a leotard or a bra top.
    Swimwear,
    /// A child's jacket, coat or anorak.
    ChildsOuterwear,
}

words!(GarmentKind {
    UnlinedJacket => "unlined-jacket",
    LinedCoat => "lined-coat",
    HoodedPullover => "hooded-pullover",
    Skirt => "skirt",
    Trousers => "trousers",
    Jeans => "jeans",
    Shirt => "shirt",
    Dress => "dress",
    TShirt => "t-shirt",
    Leggings => "leggings",
    Swimwear => "swimwear",
    ChildsOuterwear => "childs-outerwear",
});
