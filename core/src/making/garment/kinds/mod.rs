//! The order of work of each kind: groups of rows, each group in its own order.

mod bottoms;
mod close;
mod outer;
mod tops;

use super::{Detail, Details, GarmentKind, WorkRow};

/// What a kind usually has, and its work.
#[derive(Debug)]
pub(super) struct Kind {
    /// What it has unless something else is said.
    pub usual: Details,
    /// The work, in its order.
    pub groups: &'static [&'static [WorkRow]],
}

const fn kind(usual: &[Detail], groups: &'static [&'static [WorkRow]]) -> Kind {
    Kind { usual: Details::of(usual), groups }
}

impl GarmentKind {
    pub(super) const fn kind(self) -> &'static Kind {
        match self {
            Self::UnlinedJacket => &outer::UNLINED_JACKET,
            Self::LinedCoat => &outer::LINED_COAT,
            Self::ChildsOuterwear => &outer::CHILDS_OUTERWEAR,
            Self::HoodedPullover => &tops::HOODED_PULLOVER,
            Self::Shirt => &tops::SHIRT,
            Self::TShirt => &tops::T_SHIRT,
            Self::Dress => &tops::DRESS,
            Self::Skirt => &bottoms::SKIRT,
            Self::Trousers => &bottoms::TROUSERS,
            Self::Jeans => &bottoms::JEANS,
            Self::Leggings => &close::LEGGINGS,
            Self::Swimwear => &close::SWIMWEAR,
        }
    }
}
