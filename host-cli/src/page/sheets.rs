//! Plans, cards and gauges of several garments in one print.

use askama::Template;

use super::rendered;

/// Everything for one garment.
pub(super) struct Garment {
    /// Which it is, and for whom.
    pub whose: String,
    /// Its plan.
    pub plan: String,
    /// The cards of its cloths.
    pub cards: Vec<String>,
    /// The gauges of its view.
    pub gauges: Vec<String>,
}

#[derive(Template)]
#[template(path = "sheets.html")]
struct Page {
    title: String,
    garments: Vec<Garment>,
}

/// One page: each plan begins on a sheet of its own, and so does what is drawn to scale.
pub(super) fn page(garments: Vec<Garment>) -> String {
    let title = if garments.len() == 1 { "1 garment".to_owned() } else { format!("{} garments", garments.len()) };
    rendered(&Page { title, garments })
}
