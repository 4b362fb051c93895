//! Garments as text.

use tenter_core::Unit;

use crate::finding::make::MadeGarment;
use crate::log::{GarmentState, Here};
use crate::plain::isolated;
use crate::text::lines::Lines;
use crate::text::table::{self, Column};
use crate::words::make as words;
use crate::words::quantity;

/// The list; `all` says whether finished and retired ones were asked for too, `any` whether there is any at all.
#[must_use]
pub fn list(listed: &[MadeGarment], any: bool, columns: usize) -> String {
    let mut text = Lines::new(columns);
    if listed.is_empty() {
        text.words(if any { words::NONE_OPEN } else { words::NONE });
        return text.finish();
    }
    let heads = [
        ("number", Column::Number),
        ("name", Column::Text),
        ("for", Column::Text),
        ("by", Column::Word),
        ("", Column::Word),
        ("cut", Column::Word),
        ("next", Column::Word),
    ];
    let rows = listed.iter().map(|making| {
        let garment = &making.garment;
        vec![
            garment.number.to_string(),
            garment.name.clone(),
            garment.whom.clone(),
            garment.by.map(|by| by.to_string()).unwrap_or_default(),
            words::due(making),
            format!("{} of {}", making.cut(), making.uses.len()),
            words::next_stage(making).to_owned(),
        ]
    });
    text.block(&table::render(&heads, rows, columns));
    text.finish()
}

/// Everything about one garment.
#[must_use]
pub fn shown(making: &MadeGarment, unit: Unit, here: Here, columns: usize) -> String {
    let garment = &making.garment;
    let mut text = Lines::new(columns);
    text.heading(&words::title(making));
    text.row("pattern", &words::made_from(making));
    let whose = words::whose(making);
    if !whose.is_empty() {
        let left = if making.days_left.is_some() { format!(" ({})", words::due(making)) } else { String::new() };
        text.row("wanted", &format!("{whose}{left}"));
    }
    if !garment.note.is_empty() {
        text.row("note", &isolated(&garment.note));
    }
    for used in &making.uses {
        text.row("cloth", &words::used(used, making.state, unit));
    }
    if making.state == GarmentState::Open && !making.not_chosen.is_empty() {
        text.row("open", &words::not_chosen(making));
    }
    if let Some(stages) = words::done_stages(making) {
        text.row("ticked", &stages);
    }
    for (cloth, lesson) in &making.lessons {
        text.row("learned", &words::taught(cloth, lesson, here));
    }
    text.row("begun", &quantity::day(garment.id.at(), here));
    if let Some(done) = garment.done {
        text.row("done", &quantity::day(done, here));
    }
    text.row("next", &words::next(making));
    text.finish()
}
