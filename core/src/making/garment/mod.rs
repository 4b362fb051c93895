//! Kinds of garment as data: what each usually has, its seams and how they run, and its work in order.
//!
//! A program that asks for no plan carries none of the rows.

mod detail;
mod kinds;
mod part;
mod place;
mod plan;
mod row;
mod seam;
mod shared;
mod work;

pub use detail::{Detail, Details};
pub use part::GarmentPart;
pub use place::{CordAt, Hem, Holds, Manner, Notion, PieceMark, StayedEdge, Zone};
pub use plan::{GarmentPlan, PartCloth, Task, TaskReason};
pub use row::{ClothCondition, WorkRow};
pub use seam::{Over, SeamKind, SeamRow};
pub use work::{Stage, Work};

use serde::{Deserialize, Serialize};

use crate::number::words;
use crate::reading::construction::Construction;

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

impl GarmentKind {
    /// What it usually has.
    #[must_use]
    pub const fn usual(self) -> Details {
        self.kind().usual
    }

    /// Its work in order, with every detail that it may have.
    pub fn rows(self) -> impl Iterator<Item = &'static WorkRow> {
        self.kind().groups.iter().copied().flatten()
    }

    /// The details that change its work, and so may be asked for.
    pub fn details(self) -> impl Iterator<Item = Detail> {
        Detail::ALL.into_iter().filter(move |detail| {
            let names = |row: &WorkRow| row.with.has(*detail) || row.any.has(*detail) || row.without.has(*detail);
            // What is washed and marked is told of every kind; what is sewn shows what a kind can have.
            let sewn = || self.rows().any(|row| row.stage > Stage::Mark && names(row));
            *detail == Detail::Child || self.usual().has(*detail) || sewn()
        })
    }

    /// Whether a detail changes its work.
    ///
    /// ```
    /// use tenter_core::making::garment::{Detail, GarmentKind};
    ///
    /// assert!(GarmentKind::Dress.has(Detail::Darts) && !GarmentKind::Trousers.has(Detail::Hood));
    /// ```
    #[must_use]
    pub fn has(self, detail: Detail) -> bool {
        self.details().any(|one| one == detail)
    }

    /// The detail that is meant by another name for it: the zip of jeans is that of their fly.
    ///
    /// ```
    /// use tenter_core::making::garment::{Detail, GarmentKind};
    ///
    /// assert_eq!(GarmentKind::Jeans.meant(Detail::ClosedZip), Detail::Fly);
    /// assert_eq!(GarmentKind::Skirt.meant(Detail::ClosedZip), Detail::ClosedZip);
    /// ```
    #[must_use]
    pub const fn meant(self, detail: Detail) -> Detail {
        match (self, detail) {
            (Self::Jeans, Detail::ClosedZip) => Detail::Fly,
            _ => detail,
        }
    }

    /// These details without what it may not have: the cord of a pullover runs in its hood, and that of a child has none
    /// there (16 CFR 1120 with ASTM F1816; EN 14682).
    ///
    /// ```
    /// use tenter_core::making::garment::{Detail, GarmentKind};
    ///
    /// let details = GarmentKind::HoodedPullover.usual().with(Detail::Child);
    /// assert!(details.has(Detail::Cord) && !GarmentKind::HoodedPullover.allowed(details).has(Detail::Cord));
    /// ```
    #[must_use]
    pub const fn allowed(self, details: Details) -> Details {
        match self {
            Self::HoodedPullover if details.has(Detail::Child) => details.less(Detail::Cord),
            _ => details,
        }
    }

    /// Whether it is worn over other clothes, so that its inside is seen where it has no lining.
    #[must_use]
    pub const fn is_outerwear(self) -> bool {
        matches!(self, Self::UnlinedJacket | Self::LinedCoat | Self::ChildsOuterwear)
    }

    /// Whether its lining closes it, so that its raw edges lie covered; one that hangs from the waist leaves them to fray in
    /// the wash.
    ///
    /// ```
    /// use tenter_core::making::garment::GarmentKind;
    ///
    /// assert!(GarmentKind::LinedCoat.lining_closes() && !GarmentKind::Skirt.lining_closes());
    /// ```
    #[must_use]
    pub const fn lining_closes(self) -> bool {
        !matches!(self, Self::Skirt | Self::Trousers | Self::Jeans | Self::Dress)
    }

    /// What it is usually made of.
    #[must_use]
    pub const fn construction(self) -> Construction {
        match self {
            Self::HoodedPullover | Self::TShirt | Self::Leggings | Self::Swimwear => Construction::Knit,
            _ => Construction::Woven,
        }
    }
}
