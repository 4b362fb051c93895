//! Sizes, openings, elastic and zips.

use tenter_core::making::elastic::{self, CareLine, Casing, Drawn, Edging, Kind, Rule, Span};
use tenter_core::making::error::MakingError;
use tenter_core::making::sizing::{Reach, Reduction, Stretch, Usage};
use tenter_core::making::zip::{Choice, Ready, ZipEnds, ZipSeries};
use tenter_core::{Answer, Confidence, Figure, Length, Unit};

use crate::input::size::Girth;

/// Whether a loop of elastic passes over the widest part.
#[derive(Debug, Clone, Copy)]
pub struct Passes {
    /// The widest part.
    pub widest: Length,
    /// How far the elastic stretches.
    pub gives: Figure,
    /// What the shortest loop does there.
    pub reach: Reach,
}

/// One thing that was found, in the unit of the measure it was found for.
#[derive(Debug, Clone)]
pub enum Size {
    /// A girth of the body in the garment.
    Girth {
        /// The measures.
        girth: Girth,
        /// Whether it must pass over, and not stay around.
        opening: bool,
        /// The stretch that it needs.
        needed: Stretch,
        /// What the cloth does; none where its stretch is not known.
        reach: Option<Reach>,
    },
    /// More than half of the stretch is used where the garment is worn.
    NearlyAll {
        /// The name of the girth.
        name: String,
    },
    /// How much smaller than the body a stretch lets a garment be cut.
    MostReduction {
        /// The stretch.
        stretch: Stretch,
        /// With all of it.
        most: Reduction,
        /// With half of it.
        half: Option<Reduction>,
    },
    /// Lengths are not reduced.
    LengthsStay,
    /// A reduction that is wanted.
    Reduce {
        /// The reduction.
        reduction: Reduction,
        /// The stretch that it needs.
        needed: Stretch,
        /// Whether the cloth has it, and the chance of that; none where its stretch is not known.
        judged: Option<(Answer, f32)>,
    },
    /// Elastic after a rule.
    Elastic {
        /// The rule.
        rule: &'static Rule,
        /// What it is cut for.
        measure: Length,
        /// How long to cut it.
        cut: Span,
        /// Whether it passes, where that was asked.
        passes: Option<Passes>,
    },
    /// No rule was found for an elastic.
    NoElasticRule,
    /// Nobody asked whether the closed loop passes over the widest part.
    LoopNotChecked,
    /// A casing for an elastic.
    Casing {
        /// The rule.
        casing: &'static Casing,
        /// The width of the elastic.
        width: Length,
        /// How deep the tunnel is.
        depth: Span,
    },
    /// How to treat the elastic.
    Care(CareLine),
    /// A zip.
    Zip {
        /// The edge that it goes into.
        edge: Length,
        /// The zip.
        ready: Ready,
        /// Whether it is the best of those that are sold.
        best: bool,
    },
}

/// A thing that was found, in the unit that the reader measured in.
#[derive(Debug, Clone)]
pub struct SizeLine {
    /// What was found.
    pub size: Size,
    /// The unit of its lengths.
    pub unit: Unit,
}

/// What was found and the answers behind it.
#[derive(Debug, Default)]
pub struct Sized {
    /// What was found.
    pub lines: Vec<SizeLine>,
    /// The worst of the answers; none where nothing was judged.
    pub answer: Option<Answer>,
}

impl Sized {
    fn push(&mut self, size: Size, unit: Unit) {
        self.lines.push(SizeLine { size, unit });
    }

    fn judge(&mut self, answer: Answer) {
        self.answer = Some(self.answer.map_or(answer, |before| before.worse(answer)));
    }

    /// A girth of the body in a finished girth of the garment.
    ///
    /// # Errors
    ///
    /// A measure that is not longer than zero, or figures that are too large.
    pub fn girth(
        &mut self,
        girth: Girth,
        opening: bool,
        stretch: Option<Figure>,
        confidence: Confidence,
        unit: Unit,
    ) -> Result<(), MakingError> {
        let needed = Stretch::needed(girth.body, girth.garment)?;
        let reach = stretch.map(|stretch| Reach::of(girth.body, girth.garment, stretch, confidence)).transpose()?;
        if let Some(reach) = reach {
            self.judge(reach.answer);
        }
        let tight = !opening && reach.is_some_and(|reach| reach.usage == Usage::NearlyAll);
        let tight = tight.then(|| Size::NearlyAll { name: girth.name.clone() });
        self.push(Size::Girth { girth, opening, needed, reach }, unit);
        if let Some(tight) = tight {
            self.push(tight, unit);
        }
        Ok(())
    }

    /// How far a stretch lets a garment be cut smaller than the body.
    pub fn most_reduction(&mut self, stretch: Figure, unit: Unit) {
        let stretch = Stretch::new(stretch.ratio);
        let Some((stretch, most)) = stretch.and_then(|one| Some((one, one.most_reduction()?))) else { return };
        let half = stretch.part(1, 2).and_then(Stretch::most_reduction);
        self.push(Size::MostReduction { stretch, most, half }, unit);
        self.push(Size::LengthsStay, unit);
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

    /// Elastic of a kind at a place, cut for a measure; `must_pass` is the widest part and how far the elastic stretches.
    ///
    /// # Errors
    ///
    /// A measure that is not longer than zero or of which a rule leaves nothing.
    pub fn elastic(
        &mut self,
        (kind, place): (Kind, Edging),
        measure: Length,
        must_pass: Option<(Length, Figure)>,
        confidence: Confidence,
        unit: Unit,
    ) -> Result<(), MakingError> {
        let mut any = false;
        for rule in elastic::rules(kind, place) {
            any = true;
            let cut = rule.cut(measure)?;
            let passes = must_pass.map(|(widest, gives)| {
                let reach = elastic::passes(cut.least, rule.overlap, widest, gives, confidence)?;
                Ok(Passes { widest, gives, reach })
            });
            let passes = passes.transpose()?;
            if let Some(passes) = passes {
                self.judge(passes.reach.answer);
            }
            self.push(Size::Elastic { rule, measure, cut, passes }, unit);
        }
        if !any {
            self.push(Size::NoElasticRule, unit);
        }
        if must_pass.is_none() {
            self.push(Size::LoopNotChecked, unit);
        }
        Ok(())
    }

    /// The casing of an elastic, and how to treat it.
    ///
    /// # Errors
    ///
    /// A width that is not longer than zero.
    pub fn casing(&mut self, kind: Kind, width: Option<Length>, stitched: bool, unit: Unit) -> Result<(), MakingError> {
        if let Some(width) = width.filter(|_| !stitched) {
            for casing in elastic::CASINGS.iter().filter(|casing| casing.drawn == Drawn::Elastic) {
                let depth = casing.depth(width)?;
                self.push(Size::Casing { casing, width, depth }, unit);
            }
        }
        elastic::care(kind, stitched).into_iter().for_each(|line| self.push(Size::Care(line), unit));
        Ok(())
    }

    /// A zip for an edge, of the series that is sold in its unit.
    ///
    /// # Errors
    ///
    /// An edge that is not longer than zero.
    pub fn zip(&mut self, edge: Length, ends: ZipEnds, typed: Option<Unit>, unit: Unit) -> Result<(), MakingError> {
        let series = if typed == Some(Unit::Inch) { ZipSeries::Inch } else { ZipSeries::Metric };
        let choice = Choice::of(edge, series, ends)?;
        let best = choice.best();
        if let Some(ready) = best {
            self.push(Size::Zip { edge, ready, best: true }, unit);
        }
        for ready in [choice.no_longer, choice.longer].into_iter().flatten().filter(|other| Some(*other) != best) {
            self.push(Size::Zip { edge, ready, best: false }, unit);
        }
        Ok(())
    }
}
