//! Girths and openings of a body in a garment.

use tenter_core::making::error::MakingError;
use tenter_core::making::garment::GarmentKind;
use tenter_core::making::handling::Cloth;
use tenter_core::making::sizing::{Reach, Reduction, Stretch, Usage, mass_stretched, wearable};
use tenter_core::{Answer, Confidence, Construction, Figure, Grain, GrowthClass, Ratio, Unit};

use super::{Size, Sized};
use crate::input::size::Girth;

/// What is known of the cloth that goes round the body.
#[derive(Debug, Clone, Copy)]
pub struct SizedCloth {
    /// Its stretch round the body.
    pub stretch: Figure,
    /// Its stretch along the body.
    pub along: Option<Figure>,
    /// The largest growth that was read.
    pub growth: Option<Ratio>,
    /// Its mass per area in g/m².
    pub mass: Option<u16>,
    /// How it is made; none where only a stretch was given.
    pub construction: Option<Construction>,
    /// Whether its label names elastane.
    pub elastane: bool,
}

impl SizedCloth {
    /// A stretch from a label, and nothing else.
    #[must_use]
    pub const fn of_stretch(stretch: Figure) -> Self {
        Self { stretch, along: None, growth: None, mass: None, construction: None, elastane: false }
    }

    /// A cloth of the stash of which `round` goes round the body and stretches by `stretch`.
    #[must_use]
    pub const fn of_cloth(cloth: &Cloth, round: Grain, stretch: Figure) -> Self {
        let along = match round {
            Grain::Lengthwise => cloth.crosswise,
            Grain::Crosswise => cloth.lengthwise,
            Grain::Bias => cloth.bias,
        };
        let construction = Some(cloth.construction);
        Self { stretch, along, growth: cloth.growth, mass: cloth.mass, construction, elastane: cloth.elastane }
    }
}

impl Sized {
    /// A girth of the body in a finished girth of the garment.
    ///
    /// # Errors
    ///
    /// A measure that is not longer than zero, or figures that are too large.
    pub fn girth(
        &mut self,
        girth: Girth,
        opening: bool,
        cloth: Option<&SizedCloth>,
        confidence: Confidence,
        unit: Unit,
    ) -> Result<(), MakingError> {
        let needed = Stretch::needed(girth.body, girth.garment)?;
        let reach = cloth.map(|cloth| Reach::of(girth.body, girth.garment, cloth.stretch, confidence)).transpose()?;
        if let Some(reach) = reach {
            self.judge(reach.answer);
        }
        let name = girth.name.clone();
        let tight = !opening && reach.is_some_and(|reach| reach.usage == Usage::NearlyAll);
        self.push(Size::Girth { girth, opening, needed, reach }, unit);
        if tight {
            self.push(Size::NearlyAll { name: name.clone() }, unit);
        }
        let goes_round = reach.is_some_and(|reach| !matches!(reach.answer, Answer::Short | Answer::Over));
        let growth = cloth.and_then(|cloth| cloth.growth).map(|growth| (growth, GrowthClass::of(growth)));
        // What has ease and hardly grows does not bag; a poor cloth bags wherever it bends.
        let grows = |class| class == GrowthClass::Poor || class == GrowthClass::Watch && needed.ratio() > Ratio::ZERO;
        if let Some((growth, class)) = growth.filter(|(_, class)| !opening && goes_round && grows(*class)) {
            self.bags = true;
            self.push(Size::WillBag { name, growth, class }, unit);
        }
        Ok(())
    }

    /// How thin the cloth becomes at the girth that stretches it most; nothing where none does.
    pub fn opacity(&mut self, cloth: &SizedCloth, unit: Unit) {
        let worn = |size: &Size| match size {
            Size::Girth { girth, opening: false, needed, .. } if needed.ratio() > Ratio::ZERO => {
                Some((girth.name.clone(), *needed))
            }
            _ => None,
        };
        let most = self.lines.iter().filter_map(|line| worn(&line.size)).max_by_key(|(_, needed)| *needed);
        let Some((name, needed)) = most.filter(|_| cloth.construction != Some(Construction::Woven)) else { return };
        let mass = cloth.mass.and_then(|mass| Some((mass, mass_stretched(mass, needed.ratio(), Ratio::ZERO)?)));
        self.push(Size::Opacity { name, needed, mass }, unit);
    }

    /// How much smaller than the body it is usually cut, and how much smaller its stretch would let it be.
    pub fn smaller(&mut self, cloth: &SizedCloth, garment: Option<GarmentKind>, unit: Unit) {
        let Some(stretch) = Stretch::new(cloth.stretch.ratio) else { return };
        let made = cloth.construction.unwrap_or(Construction::Knit);
        let worn = wearable(made, cloth.elastane, garment, stretch.ratio());
        let worn = worn.map(|worn| worn.with_lengths(garment, cloth.along.map(|along| along.ratio)));
        match worn {
            Some(wearable) => {
                self.push(Size::Wearable { stretch, wearable, known: cloth.construction.is_some() }, unit);
                self.push(wearable.lengths.map_or(Size::LengthsStay, Size::LengthsToo), unit);
            }
            None => self.push(Size::WithEase, unit),
        }
        if let Some(most) = stretch.most_reduction() {
            let half = stretch.part(1, 2).and_then(Stretch::most_reduction);
            self.push(Size::MostReduction { stretch, most, half }, unit);
        }
    }

    /// A reduction that is wanted.
    pub fn reduce(&mut self, reduction: Reduction, stretch: Option<Figure>, confidence: Confidence, unit: Unit) {
        let Some(needed) = reduction.stretch_needed() else { return };
        let judged = stretch.map(|stretch| {
            let chance = stretch.chance_at_least(needed.ratio());
            (confidence.judge(chance, Answer::Short), chance)
        });
        if let Some((answer, _)) = judged {
            self.judge(answer);
        }
        self.push(Size::Reduce { reduction, needed, judged }, unit);
    }
}
