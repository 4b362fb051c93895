//! Two cloths in one seam: what is done about it, each in the part of the plan where it belongs.

use tenter_core::making::garment::{GarmentPart, Manner, PieceMark, SeamKind, SeamRow, Stage};
use tenter_core::making::pairing::{Advice, Match};
use tenter_core::{Answer, Grain, Length};

use super::garment::{PlannedGarment, SewnCloth};
use super::{Parts, PlanTopic, SeamWanted, Step};
use crate::finding::pair::{Pairing, SeamAsked, Unjoined};

/// The length of a seam that was not given.
const SEAM: Length = Length::from_mm(500);

/// What is known of two cloths in a seam.
#[derive(Debug)]
enum Known {
    Paired(Box<Pairing>),
    /// A side that was not pulled along the seam.
    NotPulled(Vec<Step>),
}

/// Seams in which the same two cloths meet along the same grains.
#[derive(Debug)]
pub struct Joined {
    pub(super) seams: Vec<SeamKind>,
    known: Known,
}

impl Joined {
    fn is_band(&self) -> bool {
        matches!(&self.known, Known::Paired(pairing) if pairing.pair.answer == Match::BandToBody)
    }

    /// Whether it gives what is asked along it; none where nothing is, or nobody pulled it.
    pub(super) fn gives(&self) -> Option<Answer> {
        match &self.known {
            Known::Paired(pairing) => pairing.pair.give.map(|give| give.answer),
            Known::NotPulled(_) => None,
        }
    }

    /// The steps that belong to a part.
    pub(super) fn steps(&self, topic: PlanTopic) -> Vec<Step> {
        match &self.known {
            Known::NotPulled(steps) if topic == PlanTopic::Check => steps.clone(),
            Known::NotPulled(_) => Vec::new(),
            Known::Paired(pairing) => {
                let any = pairing.pair.advice().iter().any(|line| part_of(line.advice) == Some(topic));
                any.then(|| Step::Pair { seams: self.seams.clone(), pairing: pairing.clone(), topic })
                    .into_iter()
                    .collect()
            }
        }
    }
}

/// Where a line of advice belongs on a plan; none where there is nothing to do.
#[must_use]
pub const fn part_of(advice: Advice) -> Option<PlanTopic> {
    Some(match advice {
        Advice::PullAgain(_)
        | Advice::ReadGrowth
        | Advice::ReadGrowthAgain(_)
        | Advice::WashAgain
        | Advice::OtherCloth(_)
        | Advice::WillBag(_) => PlanTopic::Check,
        Advice::WashJoinedSample | Advice::StitchThatGives => PlanTopic::Stage(Stage::Sample),
        Advice::QuarterMarks | Advice::StayStitch(_) | Advice::TapeEdge(_) => PlanTopic::Stage(Stage::Mark),
        Advice::Below(_) | Advice::CentreOutwards | Advice::BandOnTop(_) => PlanTopic::Stage(Stage::Seams),
        Advice::NoHandling => return None,
    })
}

/// The seams in which two cloths meet: those of the kind, and those that were asked for.
pub(super) fn joined(made: &PlannedGarment<'_>) -> Vec<Joined> {
    let mut all: Vec<Joined> = Vec::new();
    let mut met: Vec<([usize; 2], [Grain; 2])> = Vec::new();
    let asked = |places: [usize; 2], name: SeamKind| {
        let same = |seam: &SeamWanted| seam.roles == places || seam.roles == [places[1], places[0]];
        let is = |seam: &&SeamWanted| same(seam) && seam.name.is_none_or(|said| said == name);
        made.wanted.seams.iter().find(is)
    };
    let asked_any = |places: [usize; 2]| {
        made.wanted.seams.iter().any(|seam| seam.roles == places || seam.roles == [places[1], places[0]])
    };
    for (seam, manner) in made.seams() {
        let Some(garment) = made.garment() else { continue };
        let row = garment.seam(seam);
        let [Some(one), Some(other)] = row.parts.map(|part| garment.place(part)) else { continue };
        let wanted = asked([made.role_of(one), made.role_of(other)], seam);
        // A band is cut so that it gives the way the view asks.
        let band = made.band_gives(&garment, seam);
        let [body, piece] = row.runs.map(|runs| runs.grain());
        let usual = [body, band.unwrap_or(piece)];
        let grains = wanted.and_then(|wanted| wanted.grains).unwrap_or(usual);
        if let Some(place) = met.iter().position(|known| *known == ([one, other], grains)) {
            if let Some(known) = all.get_mut(place) {
                known.seams.push(seam);
            }
            continue;
        }
        let length = wanted.map_or(SEAM, |wanted| wanted.length);
        let held = band.is_none() && manner == Manner::Enclosed;
        // A woven band that the view asks to give is held by nothing; one of knit is a band by the name of its seam.
        let knit = made.cloth(other).is_some_and(|cloth| cloth.fabric.construction == crate::log::Construction::Knit);
        let name = (band.is_none() || knit).then_some(seam);
        if let Some(known) = known(made, [one, other], grains, (name, length), Some((row, held))) {
            met.push(([one, other], grains));
            all.push(Joined { seams: vec![seam], known });
        }
    }
    // Where the garment is not known, some parts still tell by their name how they are joined.
    let main = made.places().find(|(_, cloth)| cloth.part == Some(GarmentPart::Main)).map(|(place, _)| place);
    if let Some(main) = main.filter(|_| made.kind().is_none()) {
        for (other, _) in made.places().filter(|(other, _)| *other != main) {
            let is_asked = asked_any([made.role_of(main), made.role_of(other)]);
            let Some(row) = row_of(made, [main, other], None).filter(|_| !is_asked) else { continue };
            let [body, piece] = row.runs.map(|runs| runs.grain());
            let band = made.cloth(other).filter(|cloth| cloth.is_band()).and_then(SewnCloth::asked_most);
            let grains = [body, band.unwrap_or(piece)];
            let seam = (Some(row.seam), SEAM);
            if let Some(known) = known(made, [main, other], grains, seam, Some((row, false))) {
                all.push(Joined { seams: Vec::new(), known });
            }
        }
    }
    let in_kind = met;
    for wanted in &made.wanted.seams {
        let [Some(one), Some(other)] = wanted.roles.map(|role| made.place_of(role)) else { continue };
        let is_met = |(places, _): &([usize; 2], [Grain; 2])| *places == [one, other] || *places == [other, one];
        let is_named = |name: SeamKind| all.iter().any(|joined| joined.seams.contains(&name));
        if wanted.name.map_or_else(|| in_kind.iter().any(is_met), is_named) {
            continue;
        }
        let row = row_of(made, [one, other], wanted.name);
        let grains = wanted.grains.or(row.map(|row| row.runs.map(|runs| runs.grain())));
        let seam = (row.map(|row| row.seam), wanted.length);
        if let Some(known) = grains.and_then(|grains| known(made, [one, other], grains, seam, None)) {
            all.push(Joined { seams: Vec::new(), known });
        }
    }
    all
}

/// The seam that was named, or else the one by which two parts are usually joined.
fn row_of(made: &PlannedGarment<'_>, places: [usize; 2], named: Option<SeamKind>) -> Option<SeamRow> {
    let parts = places.map(|place| made.cloth(place).and_then(|cloth| cloth.part));
    let joins = |seam: SeamKind| {
        let pairs = parts.iter().zip(seam.row().parts);
        pairs.into_iter().all(|(part, row)| part.is_some_and(|part| part.serves(row)))
    };
    let knit = made.cloth(places[1]).is_some_and(|cloth| cloth.fabric.construction == crate::log::Construction::Knit);
    let seam = named.or_else(|| SeamKind::ALL.into_iter().find(|seam| joins(*seam)))?;
    Some(if knit { seam.in_knit() } else { seam.row() })
}

fn known(
    made: &PlannedGarment<'_>,
    places: [usize; 2],
    grains: [Grain; 2],
    (name, length): (Option<SeamKind>, Length),
    row: Option<(SeamRow, bool)>,
) -> Option<Known> {
    let [one, other] = places.map(|place| made.cloth(place));
    let (one, other) = (one?, other?);
    let is_layer = |cloth: &SewnCloth<'_>| cloth.part.is_some_and(|part| !part.is_outside());
    if one.fabric.id == other.fabric.id || row.is_some() && (is_layer(one) || is_layer(other)) {
        return None;
    }
    // No stretch counts in a seam between two layers that are interfaced.
    if row.is_some_and(|(row, held)| row.enclosed && held) {
        return None;
    }
    let fabrics = [one.fabric, other.fabric];
    let usual = SeamAsked::of(name, length);
    // A seam by its name knows more of its edges than their grain.
    let is_usual = name.is_some() && usual.grains(fabrics) == grains;
    let seam = if is_usual { usual } else { SeamAsked { grains: Some(grains), ..usual } };
    // Both roles ask along their own grain; the seam must give the more of it. What a band is asked, it gives by itself:
    // it is cut shorter than the edge that it goes to.
    let asks = |(cloth, grain): (&SewnCloth<'_>, Grain)| cloth.role.demand.stretch(grain).at_least;
    let [first, second] = grains;
    let asked = [(one, first), (other, second)].into_iter().take(if other.is_band() { 1 } else { 2 });
    let asked = asked.filter_map(asks).max_by_key(|limit| limit.ratio());
    let (stock, confidence) = (made.wanted.stock, made.wanted.confidence);
    match Pairing::of(fabrics, seam, asked, stock, confidence) {
        Ok(pairing) => Some(Known::Paired(Box::new(pairing))),
        Err(Unjoined::NotPulled(_)) => {
            let sides = [(one, first), (other, second)].into_iter();
            let open = sides.filter(|(cloth, grain)| stock.measured(cloth.fabric, *grain).is_none());
            let steps = open.map(|(cloth, grain)| Step::PullForSeam { cloth: cloth.fabric.into(), grain });
            Some(Known::NotPulled(steps.collect()))
        }
        Err(Unjoined::Interfacing(_) | Unjoined::Making(_)) => None,
    }
}

/// What the seams ask for outside the order of the kind, and the roles of which nobody knows how they are joined.
pub(super) fn pairs(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let unjoined = if made.kind().is_some() { made.unjoined() } else { Vec::new() };
    for (place, role) in unjoined {
        let to = made.wanted.chosen.iter().map(|chosen| &chosen.role.name).find(|name| **name != role);
        if let Some(to) = to.filter(|_| place > 0) {
            parts.add(PlanTopic::Check, [Step::SayHowJoined { role, to: to.clone() }]);
        }
    }
    for joined in &made.joined {
        for topic in [PlanTopic::Check, PlanTopic::Stage(Stage::Sample)] {
            parts.add(topic, joined.steps(topic));
        }
    }
}

/// What is marked, and what no seam of the kind stands for, once the work of the kind is on the plan.
pub(super) fn rest(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let quartered = |step: &Step| matches!(step, Step::Mark(points, _) if points.contains(&PieceMark::Quarters));
    let quartered = parts.0.iter().flat_map(|part| &part.steps).any(quartered);
    for joined in &made.joined {
        // The kind has its bands quartered already.
        if !(quartered && joined.is_band()) {
            parts.add(PlanTopic::Stage(Stage::Mark), joined.steps(PlanTopic::Stage(Stage::Mark)));
        }
        if joined.seams.is_empty() {
            parts.add(PlanTopic::Stage(Stage::Seams), joined.steps(PlanTopic::Stage(Stage::Seams)));
        }
    }
}

impl PlannedGarment<'_> {
    /// The roles with a cloth of their own that no seam joins, each with its place.
    fn unjoined(&self) -> Vec<(usize, String)> {
        let seams = self.seams();
        let garment = self.garment();
        let joins = |place: usize| {
            garment.is_some_and(|garment| {
                let parts = |seam: &SeamKind| garment.seam(*seam).parts;
                seams.iter().any(|(seam, _)| parts(seam).iter().any(|part| garment.place(*part) == Some(place)))
            })
        };
        let is_open = |place: usize, cloth: &SewnCloth<'_>| {
            let is_outside = cloth.part.is_none_or(GarmentPart::is_outside);
            let hidden = matches!(cloth.part, Some(GarmentPart::Facing | GarmentPart::Pocket));
            let asked = self.wanted.seams.iter().any(|seam| seam.roles.contains(&self.role_of(place)));
            is_outside && !hidden && !asked && !joins(place)
        };
        let open = self.places().filter(|(place, cloth)| is_open(*place, cloth));
        open.map(|(place, cloth)| (place, cloth.role.name.clone())).collect()
    }
}
