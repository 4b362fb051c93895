//! Garments in words.

use tenter_core::making::garment::Stage;
use tenter_core::{Length, Unit};

use crate::finding::make::{MadeGarment, Used};
use crate::log::{GarmentState, Here};
use crate::plain::isolated;
use crate::words::quantity::{self, counted};
use crate::words::{memory, pair, pattern, plan};

/// Where there is no garment yet.
pub const NONE: &str = "no garment was begun yet; begin one with tenter make start PATTERN";
/// Where none is open.
pub const NONE_OPEN: &str = "no garment is open; tenter make list --all shows the others";

/// A garment's number and name.
#[must_use]
pub fn title(making: &MadeGarment) -> String {
    format!("{}  {}", making.garment.number, isolated(&making.garment.name))
}

/// For whom it is, in which class and by when, as far as that is said: `for Ines, Tuesday class, by 2026-12-12`.
#[must_use]
pub fn whose(making: &MadeGarment) -> String {
    let garment = &making.garment;
    let whom = (!garment.whom.is_empty()).then(|| format!("for {}", isolated(&garment.whom)));
    let class = (!garment.class.is_empty()).then(|| isolated(&garment.class));
    let by = garment.by.map(|by| format!("by {by}"));
    whom.into_iter().chain(class).chain(by).collect::<Vec<_>>().join(", ")
}

/// The head of its plan: `garment 3, Play coat, for Ines, by 2026-12-12`.
#[must_use]
pub fn plan_head(making: &MadeGarment) -> String {
    let parts = [memory::called(&making.garment), whose(making)];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// In one line: number, name, for whom and by when.
#[must_use]
pub fn line_about(making: &MadeGarment) -> String {
    let parts = [title(making), whose(making)];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// How long there is until it is wanted.
#[must_use]
pub fn due(making: &MadeGarment) -> String {
    let days = |days: i32| counted(i64::from(days), "day");
    match making.days_left {
        None => making.state.word().to_owned(),
        Some(0) => "due today".to_owned(),
        Some(left @ 1..) => format!("in {}", days(left)),
        Some(late) => format!("{} late", days(late.saturating_neg())),
    }
}

/// The pattern with its view.
#[must_use]
pub fn made_from(making: &MadeGarment) -> String {
    if making.pattern.is_empty() {
        return "a pattern that is not in this log yet".to_owned();
    }
    pattern::titled(&making.pattern, &making.garment.view)
}

/// The cloth of a role and what was cut of it.
#[must_use]
pub fn used(used: &Used, state: GarmentState, unit: Unit) -> String {
    let cloth = used.cloth.as_ref().map_or_else(|| "a cloth that is not in this log yet".to_owned(), pair::named);
    let whole = |length: Length| quantity::cloth_needed(length, unit);
    let length = match (used.cut, used.takes) {
        (Some(cut), _) => format!("; {} cut", whole(cut)),
        (None, Some(takes)) if state == GarmentState::Open => format!("; {} kept, not cut yet", whole(takes)),
        (None, None) if state == GarmentState::Open => "; not cut yet; the pattern does not say how much".to_owned(),
        (None, _) => "; not cut".to_owned(),
    };
    format!("{}: {cloth}{length}", isolated(&used.role))
}

/// What to do next.
#[must_use]
pub fn next(making: &MadeGarment) -> String {
    let number = making.garment.number;
    match making.state {
        GarmentState::Retired => format!("take it up again with tenter make return {number}"),
        GarmentState::Done if making.cut() < making.uses.len() => {
            format!("nothing came off its cloths yet; if you cut them, type tenter make cut {number}")
        }
        GarmentState::Done => format!("to remember how it wears, type tenter make wore {number} TEXT"),
        GarmentState::Open if making.uses.is_empty() => {
            format!("choose its cloths with tenter make edit {number} --use ROLE=TAG")
        }
        GarmentState::Open => {
            let plan = format!("the plan: tenter make plan {number}");
            match making.next_stage() {
                None => format!("when it is finished type tenter make done {number}; {plan}"),
                Some(Stage::Cut) => format!("cut it, then type tenter make cut {number}; {plan}"),
                Some(stage) => {
                    let (head, word) = (plan::work::stage(stage), stage.word());
                    format!("{head}; when it is done, type tenter make tick {number} {word}; {plan}")
                }
            }
        }
    }
}

/// What to do next, where it stands alone.
#[must_use]
pub fn next_alone(making: &MadeGarment) -> String {
    format!("next: {}", next(making))
}

/// The stage that comes next, as its head; empty where none does.
#[must_use]
pub fn next_stage(making: &MadeGarment) -> &'static str {
    let open = making.next_stage().filter(|_| making.state == GarmentState::Open);
    open.map(plan::work::stage).unwrap_or_default()
}

/// The stages that are done, as their heads; none where none is.
#[must_use]
pub fn done_stages(making: &MadeGarment) -> Option<String> {
    let heads: Vec<&str> = making.done_stages().into_iter().map(plan::work::stage).collect();
    (!heads.is_empty() && making.state == GarmentState::Open).then(|| heads.join(", "))
}

/// The roles without a cloth.
#[must_use]
pub fn not_chosen(making: &MadeGarment) -> String {
    let roles: Vec<String> = making.not_chosen.iter().map(|role| isolated(role)).collect();
    let role = making.not_chosen.first().map(String::as_str).unwrap_or_default();
    let typed = if role.contains(' ') { format!("'{role}=TAG'") } else { format!("{role}=TAG") };
    format!("{}; choose with tenter make edit {} --use {typed}", roles.join(", "), making.garment.number)
}

/// What it taught of a cloth, with the day.
#[must_use]
pub fn taught(cloth: &crate::finding::pair::NamedCloth, lesson: &crate::log::Lesson, here: Here) -> String {
    format!("{} {}: {}", quantity::day(lesson.id.at(), here), pair::named(cloth), memory::learned(&lesson.learned))
}
