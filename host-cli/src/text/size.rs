//! Sizes, openings, elastic and zips in words.

use tenter_core::making::elastic::{self, Care, Drawn, Edging, Kind};
use tenter_core::making::error::MakingError;
use tenter_core::making::sizing::{LENGTH_UNREDUCED, Reach, Reduction, Stretch, Usage};
use tenter_core::making::source::Source;
use tenter_core::making::zip::{Choice, End, Fit, Ready, ZipSeries};
use tenter_core::{Answer, Confidence, Figure, Length, Ratio, Unit};

use crate::input::size::Girth;
use crate::words::advice::Spoken;
use crate::words::quantity::tape;
use crate::words::terms as words;

/// Lines and the answers behind them.
#[derive(Debug, Default)]
pub struct Sized {
    /// The lines.
    pub lines: Vec<Spoken>,
    /// The answers, the worst of which decides.
    pub answers: Vec<Answer>,
}

fn percent(ratio: Ratio) -> String {
    format!("{} %", ratio.percent(1))
}

impl Sized {
    /// A girth of the body in a finished girth of the garment.
    ///
    /// # Errors
    ///
    /// A measure that cannot be; here and below.
    pub fn girth(
        &mut self,
        girth: &Girth,
        opening: bool,
        stretch: Option<Figure>,
        confidence: Confidence,
        unit: Unit,
    ) -> Result<(), MakingError> {
        let Some(stretch) = stretch else {
            let needed = Stretch::needed(girth.body, girth.garment)?;
            let text = format!("{}: needs {} of stretch", girth.name, percent(needed.ratio()));
            self.lines.push(Spoken::new(about(opening), text, why(girth, unit), REACH));
            return Ok(());
        };
        let reach = Reach::of(girth.body, girth.garment, stretch, confidence)?;
        self.answers.push(reach.answer);
        let passes = match (reach.answer, opening) {
            (Answer::Meets, true) => "passes",
            (Answer::Meets, false) => "goes round",
            (Answer::Short, true) => "does NOT pass",
            (Answer::Short, false) => "does NOT go round",
            _ => "is too close to call",
        };
        let chance = words::percent(reach.chance);
        let mut text = format!("{} {passes}", girth.name);
        if reach.usage == Usage::Nothing {
            text.push_str(&format!(": {} of ease, no stretch needed", reach.ease.length.show(unit)));
        } else {
            let used = reach.used.map(|used| format!(", {} % of what it has", used.percent(0))).unwrap_or_default();
            let (ease, share) = (reach.ease.length.show(unit), percent(reach.ease.share));
            let needed = percent(reach.needed.ratio());
            text.push_str(&format!(": ease {ease} ({share}), needs {needed} of stretch{used}; chance {chance}"));
        }
        self.lines.push(Spoken::new(about(opening), text, why(girth, unit), REACH));
        if reach.usage == Usage::NearlyAll && !opening {
            let text = format!("{}: over half of the stretch is used; it will be tight to wear", girth.name);
            self.lines.push(Spoken::new("note", text, "use a part of the stretch, not all of it", Usage::SOURCE));
        }
        Ok(())
    }

    /// How far a stretch lets a garment be cut smaller than the body.
    pub fn most_reduction(&mut self, stretch: Figure) {
        let stretch = Stretch::new(stretch.ratio);
        let Some((stretch, most)) = stretch.and_then(|one| Some((one, one.most_reduction()?))) else { return };
        let half = stretch.part(1, 2).and_then(Stretch::most_reduction);
        let half = half.map(|half| format!(", {} with half of it", percent(half.ratio()))).unwrap_or_default();
        let text = format!(
            "{} of stretch is no reduction of {}: fully stretched it may be {} smaller{half}",
            percent(stretch.ratio()),
            percent(stretch.ratio()),
            percent(most.ratio())
        );
        self.lines.push(Spoken::new("smaller", text, "1 − 1 / (1 + stretch)", Source::Derived("arithmetic")));
        let text = "leave lengths as the pattern has them; reduce girths only";
        self.lines.push(Spoken::new(
            "length",
            text,
            "girths change little in movement, lengths much",
            LENGTH_UNREDUCED,
        ));
    }

    /// A reduction that is wanted.
    pub fn reduce(&mut self, reduction: Reduction, stretch: Option<Figure>, confidence: Confidence) {
        let Some(needed) = reduction.stretch_needed() else { return };
        let text = format!("{} smaller needs {} of stretch", percent(reduction.ratio()), percent(needed.ratio()));
        let why = "1 / (1 − reduction) − 1";
        let Some(stretch) = stretch else {
            self.lines.push(Spoken::new("reduce", text, why, Source::Derived("arithmetic")));
            return;
        };
        let chance = stretch.chance_at_least(needed.ratio());
        let answer = confidence.judge(chance, Answer::Short);
        self.answers.push(answer);
        let text = format!("{text}: {} ({})", answer.word(), words::percent(chance));
        self.lines.push(Spoken::new("reduce", text, why, Source::Derived("arithmetic")));
    }

    /// Elastic of a kind at a place, cut for a measure.
    ///
    /// # Errors
    ///
    /// As above.
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
            let span = if cut.least == cut.most {
                tape(cut.least, unit)
            } else {
                format!("{} to {}", tape(cut.least, unit), tape(cut.most, unit))
            };
            let overlap = if rule.overlap > Length::ZERO {
                format!(", {} of it to overlap", rule.overlap.show(unit))
            } else {
                String::new()
            };
            let mut text = format!("cut {span}{overlap} ({})", rule.name);
            if let Some((widest, gives)) = must_pass {
                let reach = elastic::passes(cut.least, rule.overlap, widest, gives, confidence)?;
                self.answers.push(reach.answer);
                let passes = match reach.answer {
                    Answer::Meets => "the shortest passes",
                    Answer::Short => "the shortest does NOT pass",
                    _ => "whether the shortest passes is too close to call",
                };
                let (widest, needed) = (widest.show(unit), percent(reach.needed.ratio()));
                text.push_str(&format!("; {passes} {widest}: needs {needed} of {}", percent(gives.ratio)));
            }
            let why = format!("for {}", measure.show(unit));
            self.lines.push(Spoken::new("elastic", text, why, rule.source));
        }
        if !any {
            let text = "no rule was found for this kind at this place; try it on with pins";
            self.lines.push(Spoken::new("elastic", text, "nothing in print", Source::CommonPractice));
        }
        if must_pass.is_none() {
            let text = "no rule checks whether the closed loop passes the widest part; tenter size does, with --widest and --gives";
            self.lines.push(Spoken::new(
                "note",
                text,
                "needed stretch = widest / loop − 1",
                Source::Derived("arithmetic"),
            ));
        }
        Ok(())
    }

    /// The casing of an elastic, and how to treat it.
    ///
    /// # Errors
    ///
    /// As above.
    pub fn casing(&mut self, kind: Kind, width: Option<Length>, stitched: bool, unit: Unit) -> Result<(), MakingError> {
        if let Some(width) = width.filter(|_| !stitched) {
            for casing in elastic::CASINGS.iter().filter(|casing| casing.drawn == Drawn::Elastic) {
                let depth = casing.depth(width)?;
                let depth = if depth.least == depth.most {
                    tape(depth.least, unit)
                } else {
                    format!("{} to {}", tape(depth.least, unit), tape(depth.most, unit))
                };
                let turn = casing.turn.map(|turn| format!(", after {} turned under", turn.show(unit)));
                let text = format!("tunnel of {depth}{}", turn.unwrap_or_default());
                let why = format!("for elastic {} wide", width.show(unit));
                self.lines.push(Spoken::new("casing", text, why, casing.source));
            }
        }
        for line in elastic::care(kind, stitched) {
            let text = match line.care {
                Care::CasingOnly => {
                    "braided elastic narrows and is hurt by stitching: draw it into a casing".to_owned()
                }
                Care::ShorterBy(by) => format!("stitching through slackens it: cut up to {} shorter", by.show(unit)),
                Care::Preshrink => "wash it once before you cut it".to_owned(),
                Care::TryPinnedLoop => "pin the loop and try it over head or hand before you sew".to_owned(),
            };
            self.lines.push(Spoken::new("care", text, "by its kind and how it is held", line.source));
        }
        Ok(())
    }

    /// A zip for an edge.
    ///
    /// # Errors
    ///
    /// As above.
    pub fn zip(&mut self, edge: Length, choice: &Choice, unit: Unit) {
        let why = format!("the edge measures {}", edge.show(unit));
        let mut say = |ready: Ready, best: bool| {
            let length = ready.length.show(unit);
            let how = match ready.fit {
                Fit::Exact => format!("{length}, as it is"),
                Fit::Ease => format!("{length}; ease the edge on to it, the rest does not show"),
                Fit::Short(by) => {
                    format!("{length} leaves {} open; stabilise the edge, do not stretch the tape", by.show(unit))
                }
                Fit::Shorten { by, at } => {
                    let at = if at == End::Top { "top" } else { "bottom" };
                    format!("{length}, shortened by {} at the {at}", by.show(unit))
                }
            };
            let text = if best { format!("take {how}") } else { format!("or {how}") };
            self.lines.push(Spoken::new("zip", text, why.clone(), ZipSeries::SOURCE));
        };
        let best = choice.best();
        if let Some(best) = best {
            say(best, true);
        }
        for other in [choice.no_longer, choice.longer].into_iter().flatten().filter(|other| Some(*other) != best) {
            say(other, false);
        }
    }
}

const REACH: Source = Source::Derived("needed stretch = body / garment − 1");

const fn about(opening: bool) -> &'static str {
    if opening { "opening" } else { "girth" }
}

fn why(girth: &Girth, unit: Unit) -> String {
    format!("body {}, garment {}", girth.body.show(unit), girth.garment.show(unit))
}
