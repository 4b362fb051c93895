//! Stages of the work on a garment.

use tenter_core::making::garment::Stage;

use super::Words;

/// Stages by what makers call them.
pub const STAGE: Words<Stage> = Words { all: &Stage::ALL, word: Stage::word, others, unclear: &[] };

const fn others(stage: Stage) -> &'static [&'static str] {
    match stage {
        Stage::Buy => &["bought", "shopping", "to buy"],
        Stage::Prewash => &["wash", "washed", "wash first", "washing"],
        Stage::Sample => &["sew a sample", "test seam"],
        Stage::Cut => &["lay out and cut", "layout", "cutting", "cut out"],
        Stage::Fuse => &["interface", "interfaced", "interfacing", "fusing", "fused"],
        Stage::Mark => &["marked", "marking", "stay-stitch", "stay-stitching", "mark and stay-stitch"],
        Stage::Flat => &["while the pieces lie flat", "darts", "fly"],
        Stage::Pockets => &["pocket"],
        Stage::Eyelets => &["eyelets and cord", "cord"],
        Stage::Seams => &["seam", "sewn", "sewing"],
        Stage::Zip => &["zipper"],
        Stage::Facing => &["lining", "buttonholes", "fastening", "facings", "hook and eye"],
        Stage::Casings => &["casing", "elastic"],
        Stage::Hems => &["hem", "hemmed"],
        Stage::Press => &["last press", "pressed"],
    }
}
