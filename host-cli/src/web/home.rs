//! The first page.

use super::part::{Link, PagePart};
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit};
use crate::finding::make::Workroom;
use crate::log::GarmentState;

use crate::words::quantity::counted;

/// What most come for first, and where everything else is.
pub fn show(visit: &mut Visit<'_>) -> Answered {
    let mut page = Shell::new(Place::Home, "Does this cloth give enough?");
    page.push(PagePart::Soft("Pull a swatch, and see how far to trust the reading.".to_owned()));
    let fabrics = visit.log.fabrics()?;
    let live = fabrics.iter().filter(|fabric| !fabric.dropped).count();
    let patterns = visit.log.patterns()?.iter().filter(|pattern| !pattern.dropped).count();
    let open = Workroom::read(&*visit.log, visit.here)?.list(|state| state == GarmentState::Open).len();
    page.push(PagePart::Links(vec![
        Link::new("/measure", "Measure a swatch").about("Step by step, here or in a shop").first(),
        Link::new("/cloths", "Cloths").about(&counted(live, "cloth")),
        Link::new("/patterns", "Patterns").about(&counted(patterns, "pattern")),
        Link::new("/garments", "Garments").about(&format!("{open} being made")),
        Link::new("/guide", "How to measure").about("Fold, marks, pull, read"),
        Link::new("/more", "More").about("Two cloths in a seam, sizes, paper, the log"),
    ]));
    Ok(page.page())
}
