//! Garments, gathered to be shown.

use jiff::civil::Date;
use tenter_core::Length;
use tenter_core::making::garment::Stage;

use super::kept::{cut_of, role_of, takes};
use super::pair::NamedCloth;
use super::plan::kind;
use crate::input::synonym::is;
use crate::log::{Fabric, Garment, GarmentState, Here, Id, Lesson, Pattern, Role};
use crate::store::{Read, StoreError};

/// The cloth of a role.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Used {
    /// The role; its identifier where the pattern has not arrived.
    pub role: String,
    /// The cloth; none where it has not arrived.
    pub cloth: Option<NamedCloth>,
    /// What the role takes of it; none where the pattern does not say.
    pub takes: Option<Length>,
    /// What was cut of it.
    pub cut: Option<Length>,
}

/// A garment with everything that is known of it.
#[derive(Clone, Debug)]
pub struct MadeGarment {
    /// The garment.
    pub garment: Garment,
    /// How it stands.
    pub state: GarmentState,
    /// The name of its pattern; empty where it has not arrived.
    pub pattern: String,
    /// The cloths chosen.
    pub uses: Vec<Used>,
    /// The roles of its view for which none was chosen.
    pub not_chosen: Vec<String>,
    /// The stages of its work in their order, and whether each is done.
    pub stages: Vec<(Stage, bool)>,
    /// What it taught of its cloths.
    pub lessons: Vec<(NamedCloth, Lesson)>,
    /// The days until it is wanted, below zero where it is late; none where no day was said, or it is not open.
    pub days_left: Option<i32>,
}

/// The stages of the work on a garment, in their order.
#[must_use]
pub fn stages_of(garment: &Garment, patterns: &[Pattern]) -> Vec<Stage> {
    let pattern = patterns.iter().find(|pattern| Some(pattern.id) == garment.pattern);
    let roles: Vec<&Role> = pattern.into_iter().flat_map(|pattern| pattern.view(&garment.view)).collect();
    kind::stages(kind::kind(&garment.choices, &roles))
}

/// Whether a stage was ticked off.
#[must_use]
pub fn is_ticked(garment: &Garment, stage: Stage) -> bool {
    garment.ticked.iter().any(|word| word == stage.word())
}

impl MadeGarment {
    /// The stage that comes next; none where all are done. Once it is cut, nobody goes back to a stage before.
    #[must_use]
    pub fn next_stage(&self) -> Option<Stage> {
        let cut = self.stages.iter().position(|(stage, done)| *stage == Stage::Cut && *done).unwrap_or_default();
        self.stages.iter().skip(cut).find(|(_, done)| !done).map(|(stage, _)| *stage)
    }

    /// The stages that are done.
    #[must_use]
    pub fn done_stages(&self) -> Vec<Stage> {
        self.stages.iter().filter(|(_, done)| *done).map(|(stage, _)| *stage).collect()
    }

    /// How many of its cloths were cut.
    #[must_use]
    pub fn cut(&self) -> usize {
        self.uses.iter().filter(|used| used.cut.is_some()).count()
    }
}

/// What the log knows that concerns garments.
#[derive(Debug)]
pub struct Workroom {
    /// All garments.
    pub garments: Vec<Garment>,
    /// All cloths.
    pub fabrics: Vec<Fabric>,
    /// All patterns.
    pub patterns: Vec<Pattern>,
    /// The day of today.
    pub today: Date,
}

impl Workroom {
    /// Reads it.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn read(read: &dyn Read, here: Here) -> Result<Self, StoreError> {
        let today = here.shows(here.now()).date();
        Ok(Self { garments: read.garments()?, fabrics: read.fabrics()?, patterns: read.patterns()?, today })
    }

    /// Everything about one garment.
    #[must_use]
    pub fn making(&self, garment: &Garment) -> MadeGarment {
        let fabric = |id: Id| self.fabrics.iter().find(|fabric| fabric.id == id);
        let role = |id: Id| role_of(&self.patterns, id);
        let used = |one: &crate::log::Use| Used {
            role: role(one.role).map_or_else(|| one.role.to_string(), |role| role.name.clone()),
            cloth: fabric(one.fabric).map(NamedCloth::from),
            takes: fabric(one.fabric).zip(role(one.role)).and_then(|(fabric, role)| takes(fabric, role)),
            cut: fabric(one.fabric).and_then(|fabric| cut_of(fabric, garment.id, one.role)).map(|cut| cut.length),
        };
        let pattern = self.patterns.iter().find(|pattern| Some(pattern.id) == garment.pattern);
        let roles = pattern.into_iter().flat_map(|pattern| pattern.view(&garment.view));
        let not_chosen = roles.filter(|role| !garment.uses.iter().any(|one| one.role == role.id));
        let taught = |fabric: &Fabric| {
            let mine = fabric.lessons.iter().filter(|lesson| !lesson.dropped);
            let mine = mine.filter(|lesson| lesson.learned.garment == Some(garment.id));
            mine.map(|lesson| (NamedCloth::from(fabric), lesson.clone())).collect::<Vec<_>>()
        };
        let days = |by: Date| self.today.until(by).map(|span| span.get_days()).ok();
        let uses: Vec<Used> = garment.uses.iter().map(used).collect();
        let is_cut = !uses.is_empty() && uses.iter().all(|used| used.cut.is_some());
        let chosen: Vec<_> = garment.uses.iter().filter_map(|one| fabric(one.fabric)).collect();
        let is_washed = !chosen.is_empty() && chosen.iter().all(|fabric| fabric.washed);
        let is_done = |stage: Stage| {
            garment.done.is_some()
                || is_ticked(garment, stage)
                || match stage {
                    Stage::Cut => is_cut,
                    Stage::Prewash => is_washed,
                    _ => false,
                }
        };
        let stages = stages_of(garment, &self.patterns).into_iter().map(|stage| (stage, is_done(stage)));
        MadeGarment {
            state: garment.state(),
            stages: stages.collect(),
            pattern: pattern.map(|pattern| pattern.name.clone()).unwrap_or_default(),
            uses,
            not_chosen: not_chosen.map(|role| role.name.clone()).collect(),
            lessons: self.fabrics.iter().flat_map(taught).collect(),
            days_left: garment.by.filter(|_| garment.is_open()).and_then(days),
            garment: garment.clone(),
        }
    }

    /// The garments that are wanted, the open ones first: those wanted soonest, then those without a day; then the others,
    /// the newest first.
    #[must_use]
    pub fn list(&self, wanted: impl Fn(GarmentState) -> bool) -> Vec<MadeGarment> {
        let all = self.garments.iter().filter(|garment| wanted(garment.state()));
        let mut all: Vec<MadeGarment> = all.map(|garment| self.making(garment)).collect();
        all.sort_by_key(|making| {
            let open = making.state == GarmentState::Open;
            let by = making.garment.by.filter(|_| open).unwrap_or(Date::MAX);
            (!open, by, core::cmp::Reverse(making.garment.done), making.garment.number, making.garment.id)
        });
        all
    }
}

/// The garments to print sheets of: those that are being made from a pattern, of one class where it is named; those of a class
/// stand together, by whom they are for.
///
/// # Errors
///
/// A log that cannot be read.
pub fn to_print(read: &dyn Read, class: Option<&str>) -> Result<Vec<Garment>, StoreError> {
    let mut garments = read.garments()?;
    garments.retain(|garment| {
        garment.is_open() && garment.pattern.is_some() && class.is_none_or(|class| is(&garment.class, class))
    });
    garments.sort_by_cached_key(|garment| {
        (garment.class.to_lowercase(), garment.whom.to_lowercase(), garment.number, garment.id)
    });
    Ok(garments)
}

/// The classes in which something is being made, each once.
#[must_use]
pub fn classes(garments: &[MadeGarment]) -> Vec<String> {
    let open = garments.iter().filter(|making| making.state == GarmentState::Open && making.garment.pattern.is_some());
    let mut classes: Vec<String> = Vec::new();
    for making in open {
        let class = &making.garment.class;
        if !class.is_empty() && !classes.iter().any(|known| is(known, class)) {
            classes.push(class.clone());
        }
    }
    classes.sort_by_cached_key(|class| class.to_lowercase());
    classes
}
