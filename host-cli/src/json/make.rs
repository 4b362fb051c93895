//! Garments as JSON.

use serde::Serialize;

use crate::finding::make::{MadeGarment, Used};
use crate::finding::pair::NamedCloth;
use crate::json::{line, millimetres};
use crate::log::{Choices, Learned, Lesson, Tag};

/// A garment.
#[derive(Debug, Serialize)]
struct MakingJson<'a> {
    id: String,
    number: u16,
    name: &'a str,
    pattern: &'a str,
    view: &'a str,
    #[serde(rename = "for")]
    whom: &'a str,
    class: &'a str,
    by: Option<String>,
    days_left: Option<i32>,
    state: &'static str,
    note: &'a str,
    begun: String,
    done: Option<String>,
    uses: Vec<UsedJson<'a>>,
    not_chosen: &'a [String],
    choices: &'a Choices,
    stages: Vec<StageJson>,
    learned: Vec<TaughtJson<'a>>,
}

#[derive(Debug, Serialize)]
struct StageJson {
    stage: &'static str,
    done: bool,
}

#[derive(Debug, Serialize)]
struct UsedJson<'a> {
    role: &'a str,
    tag: Option<u16>,
    cloth: Option<&'a str>,
    takes_mm: Option<f64>,
    cut_mm: Option<f64>,
}

impl<'a> From<&'a Used> for UsedJson<'a> {
    fn from(used: &'a Used) -> Self {
        let cloth = used.cloth.as_ref();
        Self {
            role: &used.role,
            tag: cloth.map(|cloth| cloth.tag.number()),
            cloth: cloth.map(|cloth| cloth.name.as_str()),
            takes_mm: used.takes.map(millimetres),
            cut_mm: used.cut.map(millimetres),
        }
    }
}

#[derive(Debug, Serialize)]
struct TaughtJson<'a> {
    #[serde(flatten)]
    tag: Tag,
    at: String,
    #[serde(flatten)]
    learned: &'a Learned,
}

impl<'a> TaughtJson<'a> {
    fn of((cloth, lesson): &'a (NamedCloth, Lesson)) -> Self {
        Self { tag: cloth.tag, at: lesson.id.at().to_string(), learned: &lesson.learned }
    }
}

impl<'a> From<&'a MadeGarment> for MakingJson<'a> {
    fn from(making: &'a MadeGarment) -> Self {
        let garment = &making.garment;
        Self {
            id: garment.id.to_string(),
            number: garment.number,
            name: &garment.name,
            pattern: &making.pattern,
            view: &garment.view,
            whom: &garment.whom,
            class: &garment.class,
            by: garment.by.map(|by| by.to_string()),
            days_left: making.days_left,
            state: making.state.word(),
            note: &garment.note,
            begun: garment.id.at().to_string(),
            done: garment.done.map(|done| done.to_string()),
            uses: making.uses.iter().map(UsedJson::from).collect(),
            not_chosen: &making.not_chosen,
            choices: &garment.choices,
            stages: making.stages.iter().map(|(stage, done)| StageJson { stage: stage.word(), done: *done }).collect(),
            learned: making.lessons.iter().map(TaughtJson::of).collect(),
        }
    }
}

/// One garment.
#[must_use]
pub fn making(making: &MadeGarment) -> String {
    line(&MakingJson::from(making))
}

/// The list, as an array.
#[must_use]
pub fn list(listed: &[MadeGarment]) -> String {
    line(&listed.iter().map(MakingJson::from).collect::<Vec<_>>())
}

/// A garment beside its plan, which is JSON already.
#[must_use]
pub fn with_plan(making: &MadeGarment, plan: &str) -> String {
    format!("{{\"garment\":{},\"plan\":{plan}}}", self::making(making))
}
