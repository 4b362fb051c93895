//! A sheet to print for people who pull together: how to measure, a pull gauge, and lines for their readings. What stands
//! on it goes into a table with the same heads, which `import` reads.

use askama::Template;
use tenter_core::Range;

use super::rendered;
use crate::picture::true_scale::{PullGauge, pull_gauge};
use crate::words::form as words;

/// The most lines that one sheet holds beside all else.
pub const MOST_LINES: usize = 14;

struct Column {
    head: &'static str,
    wide: bool,
}

#[derive(Template)]
#[template(path = "form.html")]
struct Page<'a> {
    title: &'a str,
    cloth: &'a str,
    steps: &'a [&'a str],
    after: &'a str,
    gauge: String,
    columns: [Column; 8],
    lines: Vec<usize>,
}

/// The sheet for a cloth, or any where its name is empty, with so many lines and a gauge for what is asked; none where a
/// gauge on paper cannot be as long as that.
#[must_use]
pub fn page(cloth: &str, asked: Range, lines: usize) -> Option<String> {
    let gauge = pull_gauge(&PullGauge { title: if cloth.is_empty() { words::GAUGE } else { cloth }, asked })?;
    let column = |head, wide| Column { head, wide };
    Some(rendered(&Page {
        title: words::TITLE,
        cloth,
        steps: &words::STEPS,
        after: words::AFTER,
        gauge: gauge.inline(),
        columns: [
            column("name", true),
            column("cloth", true),
            column("grain", false),
            column("marks", false),
            column("pull 1", false),
            column("pull 2", false),
            column("pull 3", false),
            column("after 1 min", false),
        ],
        lines: (1..=lines.clamp(1, MOST_LINES)).collect(),
    }))
}
