//! Our own drawings of how a swatch is marked, pulled and read: lines in the colour of the text, so that they are seen by
//! day and by night.

/// The drawing of this name, as SVG with its own words for a reader of the screen; empty where there is none.
#[must_use]
pub fn of(name: &str) -> &'static str {
    match name {
        "fold" => include_str!("../../templates/web/drawings/fold.svg"),
        "marks" => include_str!("../../templates/web/drawings/marks.svg"),
        "pull" => include_str!("../../templates/web/drawings/pull.svg"),
        "read" => include_str!("../../templates/web/drawings/read.svg"),
        "rest" => include_str!("../../templates/web/drawings/rest.svg"),
        "grain" => include_str!("../../templates/web/drawings/grain.svg"),
        _ => "",
    }
}
