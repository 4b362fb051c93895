//! The work on one garment, in its order: only the rows that apply.

use super::row::{ClothCondition, WorkRow};
use super::work::{Stage, Work};
use super::{Detail, Details, GarmentKind, GarmentPart, Notion, SeamKind, SeamRow};
use crate::answer::source::Source;
use crate::making::care::Finish;
use crate::making::handling::{Cloth, STRETCHES_FROM_PERCENT};
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;

/// The cloth of a part.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::garment::{GarmentPart, PartCloth};
/// use tenter_core::making::handling::Cloth;
///
/// let velvet = PartCloth { one_way: true, ..PartCloth::plain(GarmentPart::Main, Cloth::new(Construction::Woven)) };
/// assert_eq!(velvet.part, GarmentPart::Main);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct PartCloth {
    /// The part.
    pub part: GarmentPart,
    /// What is known of its cloth.
    pub cloth: Cloth,
    /// Whether all pieces of it must lie one way up.
    pub one_way: bool,
}

impl PartCloth {
    /// A cloth without a direction.
    ///
    /// ```
    /// use tenter_core::Construction;
    /// use tenter_core::making::garment::{GarmentPart, PartCloth};
    /// use tenter_core::making::handling::Cloth;
    ///
    /// assert!(!PartCloth::plain(GarmentPart::Main, Cloth::new(Construction::Woven)).one_way);
    /// ```
    #[must_use]
    pub const fn plain(part: GarmentPart, cloth: Cloth) -> Self {
        Self { part, cloth, one_way: false }
    }

    fn is_knit(&self) -> bool {
        self.cloth.construction == Construction::Knit
    }

    fn meets(&self, asks: ClothCondition) -> bool {
        let finish = self.cloth.finish;
        let stretches = || {
            let edge = Ratio::new(STRETCHES_FROM_PERCENT, 100);
            self.cloth.most_stretch().is_some_and(|figure| edge.is_some_and(|edge| figure.ratio >= edge))
        };
        match asks {
            ClothCondition::Anything => true,
            ClothCondition::Woven => !self.is_knit(),
            ClothCondition::Knit => self.is_knit(),
            ClothCondition::Gives => self.cloth.gives(),
            ClothCondition::Stretches => stretches(),
            ClothCondition::OneWay => {
                self.one_way || self.is_knit() || matches!(finish, Finish::Brushed | Finish::Pile)
            }
            ClothCondition::Fusible => finish.takes_fusible(),
            ClothCondition::NoFusible => !finish.takes_fusible(),
            ClothCondition::Iron => finish.takes_iron() && finish != Finish::Pile,
            ClothCondition::Pile => finish == Finish::Pile,
            ClothCondition::NoIron => !finish.takes_iron(),
            ClothCondition::HolesStay => finish.keeps_holes(),
        }
    }
}

/// Why a task stands on a plan.
///
/// ```
/// use tenter_core::making::garment::{Detail, TaskReason};
///
/// assert_ne!(TaskReason::Kind, TaskReason::Has(Detail::Hood));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum TaskReason {
    /// Every garment of the kind.
    Kind,
    /// The garment has this.
    Has(Detail),
    /// The cloth is such.
    Cloth(ClothCondition),
}

/// One task of a plan.
///
/// ```
/// use tenter_core::Source;
/// use tenter_core::making::garment::{Stage, Task, TaskReason, Work};
///
/// let task = Task { stage: Stage::Press, work: Work::LastPress, cloth: None, why: TaskReason::Kind, source: Source::CommonPractice };
/// assert_eq!(task.stage, Stage::Press);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Task {
    /// When.
    pub stage: Stage,
    /// What.
    pub work: Work,
    /// The cloth that it is for, by its place in the plan; none where it is for the garment.
    pub cloth: Option<usize>,
    /// Why.
    pub why: TaskReason,
    /// Where the rule comes from.
    pub source: Source,
}

/// A garment that is to be made.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::garment::{Detail, GarmentPlan, GarmentKind, GarmentPart, PartCloth, Stage, Work};
/// use tenter_core::making::handling::Cloth;
///
/// let cloths = [PartCloth::plain(GarmentPart::Main, Cloth::new(Construction::Woven))];
/// let kind = GarmentKind::ChildsOuterwear;
/// let coat = GarmentPlan { kind, details: kind.usual(), cloths: &cloths };
/// let (mut last, mut hood_cord) = (None, false);
/// coat.each(|task| {
///     hood_cord |= task.work == Work::NoHoodCord;
///     last = Some(task.stage);
/// });
/// assert_eq!((last, hood_cord), (Some(Stage::Press), true));
/// ```
#[derive(Clone, Copy, Debug)]
pub struct GarmentPlan<'a> {
    /// What it is.
    pub kind: GarmentKind,
    /// What it has.
    pub details: Details,
    /// The cloths of its parts.
    pub cloths: &'a [PartCloth],
}

impl GarmentPlan<'_> {
    /// The tasks, in the order of the work.
    pub fn each(&self, mut take: impl FnMut(Task)) {
        for row in self.kind.rows().filter(|row| self.has(row)) {
            let mut task =
                |cloth| take(Task { stage: row.stage, work: row.work, cloth, why: self.why(row), source: row.source });
            if row.stage == Stage::Cut {
                // Elastic and interfacing are laid as they come.
                let is_laid = |part| !matches!(part, GarmentPart::Elastic | GarmentPart::Interfacing);
                let asked = self.cloths.iter().enumerate();
                let asked = asked.filter(|(_, cloth)| is_laid(cloth.part) && cloth.meets(row.asks));
                asked.for_each(|(place, _)| task(Some(place)));
            } else if self.body_meets(row.asks) {
                task(None);
            }
        }
    }

    fn has(&self, row: &WorkRow) -> bool {
        let any = row.any == Details::NONE || self.details.has_any(row.any);
        let about_interfacing = matches!(
            row.work,
            Work::FuseSample
                | Work::TrimFusible
                | Work::SewInInterfacing
                | Work::Get(Notion::Fusible | Notion::SewInInterfacing)
        );
        (!about_interfacing || self.is_interfaced())
            && any
            && self.details.has_all(row.with)
            && !self.details.has_any(row.without)
    }

    /// Whether any zone of it is interfaced.
    fn is_interfaced(&self) -> bool {
        self.kind.rows().any(|row| matches!(row.work, Work::Interface(_)) && self.has(row))
    }

    /// Where no cloth was chosen for the body yet, it is what the kind is usually made of.
    fn body_meets(&self, asks: ClothCondition) -> bool {
        let usual = PartCloth::plain(GarmentPart::Main, Cloth::new(self.kind.construction()));
        let body = self.place(GarmentPart::Main).and_then(|place| self.cloths.get(place));
        body.unwrap_or(&usual).meets(asks)
    }

    /// The place of the cloth of a part: its own, or that of the body for a part of the outside; none where neither was
    /// chosen.
    ///
    /// ```
    /// use tenter_core::Construction;
    /// use tenter_core::making::garment::{GarmentPlan, GarmentKind, GarmentPart, PartCloth};
    /// use tenter_core::making::handling::Cloth;
    ///
    /// let cloths = [GarmentPart::Main, GarmentPart::Rib].map(|part| PartCloth::plain(part, Cloth::new(Construction::Knit)));
    /// let kind = GarmentKind::TShirt;
    /// let top = GarmentPlan { kind, details: kind.usual(), cloths: &cloths };
    /// assert_eq!([GarmentPart::Neckband, GarmentPart::Sleeve, GarmentPart::Lining].map(|part| top.place(part)), [Some(1), Some(0), None]);
    /// ```
    #[must_use]
    pub fn place(&self, part: GarmentPart) -> Option<usize> {
        let of = |wanted: &dyn Fn(GarmentPart) -> bool| self.cloths.iter().position(|cloth| wanted(cloth.part));
        of(&|own| own == part)
            .or_else(|| of(&|own| own.serves(part)))
            .or_else(|| part.is_outside().then(|| of(&|own| own == GarmentPart::Main)).flatten())
    }

    /// What a seam joins and how it runs in this garment: a band of knit is cut crosswise.
    ///
    /// ```
    /// use tenter_core::making::garment::{GarmentPlan, GarmentKind, Over, SeamKind};
    ///
    /// let kind = GarmentKind::HoodedPullover;
    /// let top = GarmentPlan { kind, details: kind.usual(), cloths: &[] };
    /// assert_eq!(top.seam(SeamKind::Cuff).over, Over::Hand);
    /// ```
    #[must_use]
    pub fn seam(&self, seam: SeamKind) -> SeamRow {
        let [_, band] = seam.row().parts;
        let cloth = self.place(band).and_then(|place| self.cloths.get(place));
        let construction = cloth.map_or(self.kind.construction(), |cloth| cloth.cloth.construction);
        if construction == Construction::Knit { seam.in_knit() } else { seam.row() }
    }

    /// What of it a row stands for.
    fn why(&self, row: &WorkRow) -> TaskReason {
        let one = row.any.iter().find(|detail| self.details.has(*detail));
        let detail = row.with.iter().last().or(one).map(TaskReason::Has);
        let cloth = (row.asks != ClothCondition::Anything).then_some(TaskReason::Cloth(row.asks));
        cloth.or(detail).unwrap_or(TaskReason::Kind)
    }
}
