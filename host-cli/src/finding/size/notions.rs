//! Elastic, cords and zips.

use tenter_core::making::caution::CORDS;
use tenter_core::making::elastic::{
    self, CASINGS, Drawcord, DrawnThrough, Edging, Fastened, Kind, cord_tasks, is_recommended, recommended, tunnel,
};
use tenter_core::making::error::MakingError;
use tenter_core::making::garment::GarmentKind;
use tenter_core::making::sizing::Stretch;
use tenter_core::making::zip::{Choice, EASED_TO, Fit, ZipEdge, ZipEnds, ZipSeries, chain, grows_by};
use tenter_core::{Answer, Confidence, Figure, Length, Ratio, Unit};

use super::{Size, Sized};

/// Whether a loop of elastic passes over the widest part.
#[derive(Debug, Clone, Copy)]
pub struct Passes {
    /// The widest part.
    pub widest: Length,
    /// How far the closed loop must stretch for that.
    pub needed: Stretch,
    /// How far the elastic stretches, and whether that is enough; none where nobody measured it.
    pub judged: Option<(Figure, Answer)>,
}

/// An elastic that is wanted.
#[derive(Debug, Clone, Copy)]
pub struct ElasticWanted {
    /// Its kind.
    pub kind: Kind,
    /// Where it goes.
    pub place: Edging,
    /// The body or the edge that it is cut for.
    pub measure: Length,
    /// The widest part that the closed loop must pass.
    pub must_pass: Option<Length>,
    /// How far the elastic stretches.
    pub gives: Option<Figure>,
}

/// A drawcord that is wanted.
#[derive(Debug, Clone, Copy)]
pub struct CordWanted {
    /// The edge that it draws in, laid open.
    pub edge: Length,
    /// Its diameter.
    pub width: Length,
    /// How it is held.
    pub fastened: Fastened,
    /// Whether a child wears it.
    pub for_child: bool,
}

/// A zip that is wanted.
#[derive(Debug, Clone, Copy)]
pub struct ZipWanted {
    /// The edge.
    pub edge: ZipEdge,
    /// How it ends.
    pub ends: ZipEnds,
    /// The garment.
    pub garment: Option<GarmentKind>,
    /// How much the edge grows, as a share.
    pub growth: Option<Ratio>,
    /// Whether it is bought by the inch.
    pub by_inch: bool,
}

impl Sized {
    /// An elastic, and whether its closed loop passes.
    ///
    /// # Errors
    ///
    /// A measure that is not longer than zero, or of which nothing is left.
    pub fn elastic(&mut self, wanted: &ElasticWanted, confidence: Confidence, unit: Unit) -> Result<(), MakingError> {
        let ElasticWanted { kind, place, measure, must_pass, gives } = *wanted;
        if !is_recommended(kind, place) {
            self.push(Size::NoElasticRule, unit);
            return Ok(());
        }
        let recommended = recommended(kind, place, measure, unit == Unit::Inch)?;
        let passes = must_pass.map(|widest| {
            let needed = Stretch::needed(widest, recommended.closed)?;
            let judge = |gives| elastic::passes(recommended.closed, Length::ZERO, widest, gives, confidence);
            let judged = gives.map(|gives| Ok::<_, MakingError>((gives, judge(gives)?.answer))).transpose()?;
            Ok::<_, MakingError>(Passes { widest, needed, judged })
        });
        let passes = passes.transpose()?;
        if let Some((_, answer)) = passes.and_then(|passes| passes.judged) {
            self.judge(answer);
        }
        self.push(Size::Elastic { kind, recommended, measure, passes }, unit);
        for rule in elastic::rules(kind, place) {
            // A rule that takes off more than there is is none for this measure.
            if let Ok(cut) = rule.cut(measure) {
                self.push(Size::ElasticRule { rule, cut }, unit);
            }
        }
        if must_pass.is_none() && kind != Kind::Ribbing {
            self.push(Size::LoopNotChecked { place, closed: recommended.closed }, unit);
        }
        Ok(())
    }

    /// The casing of an elastic, deeper in `thick` cloth, and how to treat the elastic.
    ///
    /// # Errors
    ///
    /// A width that is not longer than zero.
    pub fn casing(
        &mut self,
        kind: Kind,
        width: Option<Length>,
        (stitched, thick): (bool, bool),
        unit: Unit,
    ) -> Result<(), MakingError> {
        if let Some(width) = width.filter(|_| !stitched && kind != Kind::Ribbing) {
            let tunnel = tunnel(DrawnThrough::Elastic, width, thick, unit == Unit::Inch)?;
            self.push(Size::Casing { tunnel, width }, unit);
            for casing in CASINGS.iter().filter(|casing| casing.drawn == DrawnThrough::Elastic) {
                let depth = casing.depth(width)?;
                self.push(Size::CasingRule { casing, depth }, unit);
            }
        }
        elastic::care(kind, stitched).into_iter().for_each(|line| self.push(Size::Care(line), unit));
        Ok(())
    }

    /// A drawcord with what is done for it; on a child's garment the rules before all.
    ///
    /// # Errors
    ///
    /// An edge or a cord that is not longer than zero.
    pub fn cord(&mut self, wanted: &CordWanted, unit: Unit) -> Result<(), MakingError> {
        let CordWanted { edge, width, fastened, for_child } = *wanted;
        let cord = Drawcord::of(edge, width, fastened, unit == Unit::Inch)?;
        if for_child {
            CORDS.iter().for_each(|rule| self.push(Size::CordRule(rule), unit));
        } else {
            self.push(Size::Cord { cord, edge }, unit);
        }
        self.push(Size::Casing { tunnel: cord.tunnel, width }, unit);
        cord_tasks(fastened, for_child).for_each(|line| self.push(Size::CordTask(line), unit));
        Ok(())
    }

    /// A zip of those that are sold.
    ///
    /// # Errors
    ///
    /// An edge of which nothing is left.
    pub fn zip(&mut self, wanted: &ZipWanted, unit: Unit) -> Result<(), MakingError> {
        let ZipWanted { edge, ends, garment, growth, by_inch } = *wanted;
        let series = if by_inch { ZipSeries::Inch } else { ZipSeries::Metric };
        let finished = edge.finished()?;
        let choice = Choice::of(finished, series, ends)?;
        let best = choice.best();
        if let Some(ready) = best {
            self.push(Size::Zip { edge: finished, ends, ready, best: true }, unit);
            if matches!(ready.fit, Fit::Shorten { .. }) {
                self.push(Size::Shortened(ends), unit);
            }
        }
        for ready in [choice.no_longer, choice.longer].into_iter().flatten().filter(|other| Some(*other) != best) {
            // One that goes in as it is leaves nothing to choose.
            if best.is_none_or(|best| !best.fit.is_as_it_is()) {
                self.push(Size::Zip { edge: finished, ends, ready, best: false }, unit);
            }
        }
        if let Some(garment) = garment {
            self.push(Size::Chain(chain(garment)), unit);
        }
        if edge == ZipEdge::measured(finished) {
            self.push(Size::EdgeAsFinished, unit);
        }
        let grows = growth.and_then(|growth| grows_by(finished, growth)).filter(|grows| *grows > EASED_TO);
        if let Some(grows) = grows {
            self.push(Size::EdgeGrows(grows), unit);
        }
        Ok(())
    }
}
