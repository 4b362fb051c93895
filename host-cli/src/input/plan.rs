//! What a plan sheet is made for, as typed.

use tenter_core::making::garment::{Detail, GarmentKind};
use tenter_core::making::yardage::ShopCut;
use tenter_core::making::zip::ZipEnds;

/// What a plan sheet is made for, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedPlan {
    /// The cloths for roles: `main=1`.
    pub uses: Vec<String>,
    /// What the garment is; none for the kind of the view.
    pub kind: Option<GarmentKind>,
    /// What it has beyond the usual.
    pub with: Vec<Detail>,
    /// What it does not have, of the usual.
    pub without: Vec<Detail>,
    /// The lengths of seams between two roles: `main+hood:neck=60cm`.
    pub seams: Vec<String>,
    /// An edge for a zip, as cut or finished.
    pub zip: Option<String>,
    /// What the neck or waist seam takes of it.
    pub zip_neck: Option<String>,
    /// What the hem takes of it.
    pub zip_hem: Option<String>,
    /// Whether the zip parts at its lower end; none for as the garment has it.
    pub zip_ends: Option<ZipEnds>,
    /// Elastic: its kind, its place and the body measure.
    pub elastic: Vec<String>,
    /// Whether the garment is for a child.
    pub child: bool,
    /// Whether it has a cord.
    pub cord: bool,
    /// Whether it is sleepwear.
    pub sleepwear: bool,
    /// Whether it fits tightly.
    pub tight: bool,
    /// To what the reader's shop cuts cloth; none for as shops do where lengths are told in the reader's unit.
    pub shop_cut: Option<ShopCut>,
}
