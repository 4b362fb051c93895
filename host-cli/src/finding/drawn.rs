//! Pictures of what the log holds.

use tenter_core::{Answer, Confidence, Demand, Figure, Grain, Ratio, Rules, Unit, judge};

use crate::finding::fit::Reason;
use crate::finding::fit::RoleFit;
use crate::finding::fit::Stock;
use crate::finding::fit::known;
use crate::log::{Fabric, Role, StoredTest};
use crate::picture::Picture;
use crate::picture::card::Card;
use crate::picture::gauge::{self, Gauge, Row};
use crate::picture::growth::{self, Growth, Reading};
use crate::picture::stash_map::{self, Asked, Spot, StashMap};
use crate::text::cloth::Shown;
use crate::text::cloth::Standing;
use crate::words::advice::Spoken;
use crate::words::quantity;

/// The stretch of a fabric beside what a role asks: both straight grains, measured or not, and the bias where it was
/// measured or is asked.
#[must_use]
pub fn stretch(shown: &Shown<'_>, beside: Option<&Role>, key: bool) -> Picture {
    let grains = [Grain::Crosswise, Grain::Lengthwise, Grain::Bias];
    let pulls: Vec<Vec<Ratio>> =
        grains.iter().map(|grain| along(shown, *grain).map(pulls).unwrap_or_default()).collect();
    let row = |(grain, pulls)| -> Option<Row<'_>> {
        let standing = along(shown, grain);
        let asked = beside.map(|role| role.demand.stretch(grain)).unwrap_or_default();
        if grain == Grain::Bias && standing.is_none() && asked.is_empty() {
            return None;
        }
        let answer = (!asked.is_empty()).then(|| {
            let demand = Demand::for_grain(grain, asked);
            standing.map_or(Answer::Unknown, |standing| answer(shown, standing, &demand))
        });
        Some(Row { grain, stretch: standing.map(|standing| standing.figures.stretch), asked, answer, pulls })
    };
    let rows = grains.into_iter().zip(pulls.iter().map(Vec::as_slice)).filter_map(row);
    let rows: Vec<Row<'_>> = rows.collect();
    let title = &shown.fabric.name;
    gauge::draw(&Gauge { title, rows: &rows, confidence: shown.confidence, table: shown.table, key })
}

fn along<'s>(shown: &'s Shown<'_>, grain: Grain) -> Option<&'s Standing<'s>> {
    shown.standing.iter().find(|standing| standing.grain() == grain)
}

/// The stretch of each pull.
fn pulls(standing: &Standing<'_>) -> Vec<Ratio> {
    let test = &standing.test.said.test;
    let gauge = i64::from(test.gauge().steps());
    test.pulls().iter().filter_map(|to| Ratio::new(i64::from(to.steps()) - gauge, gauge)).collect()
}

fn answer(shown: &Shown<'_>, standing: &Standing<'_>, demand: &Demand) -> Answer {
    let test = &standing.test.said.test;
    let scatter = shown.hands.scatter_for(shown.fabric.construction, test);
    let parts = judge(
        test,
        demand,
        &Rules { confidence: shown.confidence, scatter, construction: shown.fabric.construction, ..Rules::default() },
    )
    .unwrap_or_default();
    parts.iter().map(|part| part.answer).reduce(Answer::worse).unwrap_or(Answer::Unknown)
}

/// The growth of a fabric along the grain of a standing, beside what a role allows.
#[must_use]
pub fn growth(shown: &Shown<'_>, standing: &Standing<'_>, beside: Option<&Role>) -> Picture {
    let test = &standing.test.said.test;
    let scatter = shown.hands.scatter_for(shown.fabric.construction, test);
    let title = format!("{}, {}", shown.fabric.name, standing.grain().word());
    let at_most = beside.and_then(|role| role.demand.growth_at_most);
    let (readings, to_come) = (Reading::all(test, scatter), growth::to_come(test));
    let confidence = shown.confidence;
    growth::draw(&Growth { title: &title, readings: &readings, to_come: &to_come, at_most, confidence })
}

/// The stash as a map: all of it, or beside what a role of a view asks those that are made as it wants.
#[must_use]
pub fn map(stock: &Stock, role: Option<&RoleFit<'_>>, confidence: Confidence) -> Picture {
    let stretch = |fabric: &Fabric, grain| known::stretch(fabric, grain, stock).ok();
    let candidates = role.map(|fit| {
        let considered = fit.candidates.iter().filter(|one| one.reason != Reason::Construction);
        considered.map(|one| (one.fabric, Some(one.answer))).collect()
    });
    let mut shown: Vec<(&Fabric, Option<Answer>)> =
        candidates.unwrap_or_else(|| stock.fabrics.iter().map(|fabric| (fabric, None)).collect());
    shown.sort_by_key(|(fabric, _)| fabric.tag);
    let tags: Vec<String> = shown.iter().map(|(fabric, _)| fabric.tag.to_string()).collect();
    let spots = shown.iter().zip(&tags).map(|((fabric, answer), tag)| Spot {
        tag,
        crosswise: stretch(fabric, Grain::Crosswise),
        lengthwise: stretch(fabric, Grain::Lengthwise),
        answer: *answer,
    });
    let spots: Vec<Spot<'_>> = spots.collect();
    let asked = role.map(|fit| {
        let stretch = |grain| fit.role.demand.stretch(grain);
        Asked { name: &fit.role.name, crosswise: stretch(Grain::Crosswise), lengthwise: stretch(Grain::Lengthwise) }
    });
    stash_map::draw(&StashMap { title: "the stash", spots: &spots, asked, confidence })
}

/// What stands on the card of a fabric, owned, so that a card can be drawn from it.
#[derive(Debug)]
pub struct CardWords {
    tag: String,
    mass: String,
    date: String,
    notes: Vec<String>,
    stretch: Vec<(Grain, Option<Figure>)>,
    growth: Option<(Grain, Figure, u32)>,
}

impl CardWords {
    /// Gathers it; `handling` are the lines of how to sew the fabric, the first of which the card has room for.
    #[must_use]
    pub fn of(shown: &Shown<'_>, handling: &[Spoken]) -> Self {
        let stretch = |grain| (grain, along(shown, grain).map(|standing| standing.figures.stretch));
        let newest = shown.standing.iter().max_by_key(|standing| standing.test.said.pulled);
        let growths = shown.standing.iter().filter_map(|standing| {
            let rest = standing.figures.rest?;
            Some((standing.grain(), rest.growth, rest.seconds))
        });
        let mut notes: Vec<String> = newest.map(|standing| how(standing.test, shown.unit)).into_iter().collect();
        notes.extend(handling.iter().map(|line| format!("{}: {}", line.about, line.text)));
        if !shown.fabric.place.is_empty() {
            notes.push(shown.fabric.place.clone());
        }
        Self {
            tag: shown.fabric.tag.to_string(),
            mass: shown.fabric.mass.map(|mass| mass.to_string()).unwrap_or_default(),
            date: newest.map(|standing| quantity::pulled(&standing.test.said)).unwrap_or_default(),
            notes,
            stretch: [Grain::Crosswise, Grain::Lengthwise]
                .into_iter()
                .chain(along(shown, Grain::Bias).map(Standing::grain))
                .map(stretch)
                .collect(),
            growth: growths.max_by_key(|(_, growth, _)| growth.ratio),
        }
    }

    /// The lines of the card.
    #[must_use]
    pub fn notes(&self) -> Vec<&str> {
        self.notes.iter().map(String::as_str).collect()
    }

    /// The card, with its lines of [`CardWords::notes`].
    #[must_use]
    pub fn card<'c>(&'c self, shown: &'c Shown<'_>, notes: &'c [&'c str]) -> Card<'c> {
        let fabric = shown.fabric;
        Card {
            tag: &self.tag,
            name: &fabric.name,
            fibre: &fabric.fibre,
            width: fabric.width,
            length: fabric.length,
            mass: &self.mass,
            stretch: &self.stretch,
            growth: self.growth,
            confidence: shown.confidence,
            date: &self.date,
            notes,
            unit: shown.unit,
        }
    }
}

/// How a test was made, on a line.
fn how(stored: &StoredTest, unit: Unit) -> String {
    let test = &stored.said.test;
    let pulls = if test.pulls().len() == 1 { "1 pull".to_owned() } else { format!("{} pulls", test.pulls().len()) };
    let marks = test.gauge().show(quantity::marks_unit(unit));
    let settled = if test.settled() { ", settled" } else { "" };
    format!("{pulls} by hand, {}, marks {marks}{settled}", test.held().word())
}
