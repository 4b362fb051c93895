//! The plan of a view: its cloths, seams and notions, as they were typed.

use tenter_core::making::caution::Job;
use tenter_core::making::elastic::{Drawcord, Fastened};
use tenter_core::making::garment::Detail;
use tenter_core::making::zip::ZipEnds;
use tenter_core::{Answer, Confidence, Figure, Length, Unit};

use super::make::pattern_of;
use super::{Refused, find};
use crate::finding::fit::{self, Candidate, RoleFit, Stock};
use crate::finding::plan::kind::{kind, said};
use crate::finding::plan::{PlanWanted, PlannedCord, RoleChoice, SeamWanted, USUAL_CORD, ViewPlan, WantedKind};
use crate::finding::size::{ElasticWanted, Sized, ZipWanted};
use crate::input::plan::TypedPlan;
use crate::input::size::ElasticMeasure;
use crate::input::synonym::{SEAM, ZIP_ENDS};
use crate::input::{self, Field, Why, Wrong, amount::cloth, making};
use crate::log::{Choices, Garment, Id, Pattern, Role};
use crate::store::Read;

/// Works out the plan.
///
/// # Errors
///
/// What was typed wrong; here and below.
pub fn plan<'a>(
    TypedPlan { uses, choices, .. }: &TypedPlan,
    (pattern, view): (&'a Pattern, &'a str),
    stock: &'a Stock,
    roles: Vec<RoleFit<'a>>,
    (confidence, unit): (Confidence, Unit),
    read: &dyn Read,
) -> Result<ViewPlan, Refused> {
    let chosen = choose(uses, (pattern, view), roles, (read, confidence))?;
    let roles: Vec<&Role> = chosen.iter().map(|chosen| chosen.role).collect();
    let names: Vec<&str> = roles.iter().map(|role| role.name.as_str()).collect();
    refuse_details(choices, roles.iter().copied())?;
    let seams = seams(choices, (pattern, view), &names)?;
    let kind = kind(choices, &roles);
    let (notions, cord) = notions(choices, kind, confidence, unit)?;
    let job = Job {
        for_child: choices.child,
        has_cord: choices.cord.is_some(),
        sleepwear: choices.sleepwear,
        tight: choices.tight,
        ..Job::default()
    };
    Ok(ViewPlan::of(&PlanWanted { pattern, view, kind, chosen, seams, notions, cord, job, stock, confidence }))
}

/// Zip, elastic and cord.
fn notions(
    choices: &Choices,
    kind: Option<WantedKind>,
    confidence: Confidence,
    unit: Unit,
) -> Result<(Sized, Option<PlannedCord>), Refused> {
    let mut notions = Sized::default();
    if let Some(text) = &choices.zip {
        let edge = input::size::zip_edge(text, choices.zip_neck.as_deref(), choices.zip_hem.as_deref())?;
        let ends = choices.zip_ends.as_deref().and_then(|word| ZIP_ENDS.typed(word));
        let typed = shown_in(unit, text);
        let wanted = ZipWanted {
            edge,
            ends: ends.unwrap_or_else(|| ZipEnds::usual(kind.map(|kind| kind.details), edge.cut)),
            garment: kind.map(|kind| kind.kind),
            growth: None,
            by_inch: typed == Unit::Inch,
        };
        notions.zip(&wanted, typed).map_err(|error| Wrong::new(Field::Zip, text, Why::Making(error)))?;
    } else if let Some((field, text)) = zip_takes(choices) {
        return Err(Wrong::new(field, text, Why::NoZip).into());
    }
    for text in &choices.elastic {
        elastic(text, &mut notions, confidence, unit)?;
    }
    let cord = choices.cord.as_deref().filter(|text| !text.trim().is_empty());
    let cord = cord.map(|text| cord_of(text, unit)).transpose()?;
    Ok((notions, cord))
}

/// What the neck or the hem takes of the edge of a zip, whether or not there is one.
fn zip_takes(choices: &Choices) -> Option<(Field, &str)> {
    let neck = choices.zip_neck.as_deref().map(|text| (Field::ZipNeck, text));
    neck.or_else(|| choices.zip_hem.as_deref().map(|text| (Field::ZipHem, text)))
}

/// `110cm`, or `110cm 5mm` with the width of the cord.
fn cord_of(text: &str, unit: Unit) -> Result<PlannedCord, Refused> {
    let (edge, width) = input::size::with_width(Field::Cord, text)?;
    let unit = shown_in(unit, text);
    let cord = Drawcord::of(edge, width.unwrap_or(USUAL_CORD), Fastened::Stops, unit == Unit::Inch);
    let cord = cord.map_err(|error| Wrong::new(Field::Cord, text, Why::Making(error)))?;
    Ok(PlannedCord { cord, edge, width, unit })
}

/// The plan of a garment: of its view with the cloths and the rest that were chosen for it, as if nothing had been cut yet;
/// what is typed takes the place of what was chosen.
///
/// # Errors
///
/// What was typed wrong, or a pattern that has not arrived.
pub fn of_garment(
    read: &dyn Read,
    garment: &Garment,
    typed: &TypedPlan,
    (confidence, unit): (Confidence, Unit),
) -> Result<ViewPlan, Refused> {
    let pattern = pattern_of(read, garment)?;
    let view = find::view(&pattern, &garment.view)?;
    let stock = Stock::read(read)?.before(garment).with_shop_cut(typed.shop_cut);
    let roles = pattern.view(view).map(|role| fit::role(role, &stock, confidence)).collect();
    let mut typed = TypedPlan { choices: garment.choices.changed(&typed.choices), ..typed.clone() };
    for one in &garment.uses {
        let role = pattern.roles.iter().find(|role| role.id == one.role && !role.dropped);
        typed.uses.extend(role.map(|role| format!("{}={}", role.name, one.fabric)));
    }
    plan(&typed, (&pattern, view), &stock, roles, (confidence, unit), read)
}

/// The cloth that was named for each role, or the best.
fn choose<'a>(
    uses: &[String],
    (pattern, view): (&Pattern, &str),
    roles: Vec<RoleFit<'a>>,
    (read, confidence): (&dyn Read, Confidence),
) -> Result<Vec<RoleChoice<'a>>, Refused> {
    let mut named = Vec::new();
    for text in uses {
        let wrong = || Wrong::new(Field::Use, text, Why::NotAUse);
        let (role, tag) = text.rsplit_once('=').ok_or_else(wrong)?;
        let role = find::role(pattern, view, role)?.id;
        if tag.trim().is_empty() {
            return Err(wrong().into());
        }
        named.push((role, find::live_fabric(read, tag)?.id));
    }
    let choose = |fit: RoleFit<'a>| -> (&'a Role, Option<Candidate<'a>>) {
        let fabric = named.iter().find(|(role, _)| *role == fit.role.id).map(|(_, fabric)| *fabric);
        let mut candidates = fit.candidates.into_iter();
        let candidate = match fabric {
            Some(fabric) => candidates.find(|one| one.fabric.id == fabric).map(Candidate::chosen),
            // Only an explicit --use selects a cloth that falls short.
            None => candidates.next().filter(|best| !matches!(best.answer, Answer::Short | Answer::Over)),
        };
        (fit.role, candidate)
    };
    let (mut taken, mut without) = (Vec::new(), Vec::new());
    let order: Vec<Id> = roles.iter().map(|fit| fit.role.id).collect();
    for (role, candidate) in roles.into_iter().map(choose) {
        match candidate {
            Some(candidate) => taken.push((role, candidate)),
            None => without.push(RoleChoice { role, candidate: None }),
        }
    }
    fit::together::share(&mut taken, confidence);
    let taken = taken.into_iter().map(|(role, candidate)| RoleChoice { role, candidate: Some(candidate) });
    let mut chosen: Vec<RoleChoice<'a>> = taken.chain(without).collect();
    chosen.sort_by_key(|chosen| order.iter().position(|id| *id == chosen.role.id));
    Ok(chosen)
}

/// Refuses details that do not go with the garment.
///
/// # Errors
///
/// A detail of a garment of which nobody said what it is, or that its kind never has.
fn refuse_details<'r>(choices: &Choices, roles: impl IntoIterator<Item = &'r Role>) -> Result<(), Refused> {
    let details = || choices.with.iter().chain(&choices.without).filter_map(|word| Detail::from_word(word));
    let Some(kind) = said(choices, roles) else {
        return details().next().map_or(Ok(()), |detail| Err(Refused::NoGarmentKind(detail)));
    };
    let never = details().find(|detail| !kind.has(kind.meant(*detail)));
    never.map_or(Ok(()), |detail| Err(Refused::NeverHas(kind, detail)))
}

/// Refuses choices of which no plan can be made, before they are stored.
///
/// # Errors
///
/// What was typed wrong.
pub fn check(choices: &Choices, (pattern, view): (&Pattern, &str)) -> Result<(), Refused> {
    let roles: Vec<&Role> = pattern.view(view).collect();
    let names: Vec<&str> = roles.iter().map(|role| role.name.as_str()).collect();
    refuse_details(choices, roles.iter().copied())?;
    seams(choices, (pattern, view), &names)?;
    notions(choices, kind(choices, &roles), Confidence::default(), Unit::default()).map(drop)
}

/// `main+waistband=76cm`, and where the grain is not the usual one `main+panel=60cm lengthwise`, or
/// `main+panel=60cm crosswise/bias`.
fn seams(choices: &Choices, (pattern, view): (&Pattern, &str), names: &[&str]) -> Result<Vec<SeamWanted>, Refused> {
    let mut seams = Vec::new();
    for text in &choices.seam {
        let wrong = || Wrong::new(Field::Seam, text, Why::NotASeam);
        let (roles, rest) = text.rsplit_once('=').ok_or_else(wrong)?;
        let (roles, name) = match roles.rsplit_once(':') {
            Some((roles, name)) => (roles, Some(SEAM.read(Field::Seam, name)?)),
            None => (roles, None),
        };
        let (one, other) = roles.split_once('+').ok_or_else(wrong)?;
        let (length, grains) = match rest.trim().rsplit_once(' ') {
            Some((length, words))
                if words.chars().all(|c| c.is_alphabetic() || "/-".contains(c)) && words.len() > 3 =>
            {
                (length, Some(making::grains(words).map_err(|_| wrong())?))
            }
            _ => (rest, None),
        };
        let length = cloth(Field::Seam, length)?;
        if length <= Length::ZERO {
            return Err(wrong().into());
        }
        let place = |text: &str| {
            let name = find::role(pattern, view, text)?.name.as_str();
            let place = names.iter().position(|known| *known == name);
            place.ok_or_else(|| Refused::NotOnSheet(name.to_owned()))
        };
        seams.push(SeamWanted { roles: [place(one)?, place(other)?], name, length, grains });
    }
    Ok(seams)
}

/// The unit of what is sized: that of the text where it was said, else the one that was typed.
fn shown_in(unit: Unit, typed: &str) -> Unit {
    if unit == Unit::default() { input::unit_of(typed).unwrap_or(Unit::Cm) } else { unit }
}

/// `soft waist 76cm 25mm over 100cm gives 80%`.
fn elastic(text: &str, sized: &mut Sized, confidence: Confidence, unit: Unit) -> Result<(), Refused> {
    let (kind, place, measure) = input::size::elastic(text)?;
    let ElasticMeasure { length, width, over, gives } = input::size::elastic_measure(measure)?;
    let unit = shown_in(unit, measure.split_whitespace().next().unwrap_or(measure));
    let gives = gives.map(Figure::exact);
    let wanted = ElasticWanted { kind, place, measure: length, must_pass: over, gives };
    let judged = sized.elastic(&wanted, confidence, unit);
    judged
        .and_then(|()| sized.casing(kind, width, (false, false), unit))
        .map_err(|error| Wrong::new(Field::Elastic, text, Why::Making(error)).into())
}
