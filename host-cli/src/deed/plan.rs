//! The plan of a view: its cloths, seams and notions, as they were typed.

use tenter_core::making::caution::Job;
use tenter_core::making::garment::{Detail, Details, GarmentKind, GarmentPart};
use tenter_core::making::zip::ZipEnds;
use tenter_core::{Answer, Confidence, Length, Unit};

use super::make::pattern_of;
use super::{Refused, find};
use crate::finding::fit::{self, Candidate, RoleFit, Stock};
use crate::finding::plan::part::part;
use crate::finding::plan::{PlanWanted, RoleChoice, SeamWanted, ViewPlan, WantedKind};
use crate::finding::size::{ElasticWanted, Sized, ZipWanted};
use crate::input::plan::TypedPlan;
use crate::input::synonym::SEAM;
use crate::input::{self, Field, Why, Wrong, amount::cloth, making};
use crate::log::{Garment, Id, Pattern, Role};
use crate::store::Read;

/// Works out the plan.
///
/// # Errors
///
/// What was typed wrong; here and below.
pub fn plan<'a>(
    args: &TypedPlan,
    (pattern, view): (&'a Pattern, &'a str),
    stock: &'a Stock,
    roles: Vec<RoleFit<'a>>,
    (confidence, unit): (Confidence, Unit),
    read: &dyn Read,
) -> Result<ViewPlan, Refused> {
    let chosen = choose(args, (pattern, view), roles, (read, confidence))?;
    let names: Vec<&str> = chosen.iter().map(|chosen| chosen.role.name.as_str()).collect();
    let seams = seams(args, (pattern, view), &names)?;
    let kind = kind(args, &chosen)?;
    let mut notions = Sized::default();
    if let Some(text) = &args.zip {
        let edge = input::size::zip_edge(text, args.zip_neck.as_deref(), args.zip_hem.as_deref())?;
        let typed = shown_in(unit, text);
        let wanted = ZipWanted {
            edge,
            ends: args.zip_ends.unwrap_or_else(|| ZipEnds::usual(kind.map(|kind| kind.details), edge.cut)),
            garment: kind.map(|kind| kind.kind),
            growth: None,
            by_inch: typed == Unit::Inch,
        };
        notions.zip(&wanted, typed).map_err(|error| Wrong::new(Field::Zip, text, Why::Making(error)))?;
    } else if let Some((field, text)) = zip_takes(args) {
        return Err(Wrong::new(field, text, Why::NoZip).into());
    }
    for text in &args.elastic {
        elastic(text, &mut notions, confidence, unit)?;
    }
    let job = Job {
        for_child: args.child,
        has_cord: args.cord,
        sleepwear: args.sleepwear,
        tight: args.tight,
        ..Job::default()
    };
    Ok(ViewPlan::of(&PlanWanted { pattern, view, kind, chosen, seams, notions, job, stock, confidence }))
}

/// What the neck or the hem takes of the edge of a zip, whether or not there is one.
fn zip_takes(args: &TypedPlan) -> Option<(Field, &str)> {
    let neck = args.zip_neck.as_deref().map(|text| (Field::ZipNeck, text));
    neck.or_else(|| args.zip_hem.as_deref().map(|text| (Field::ZipHem, text)))
}

/// The plan of a garment: of its view with the cloths chosen for it, as if nothing had been cut yet.
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
    let mut typed = typed.clone();
    for one in &garment.uses {
        let role = pattern.roles.iter().find(|role| role.id == one.role && !role.dropped);
        typed.uses.extend(role.map(|role| format!("{}={}", role.name, one.fabric)));
    }
    plan(&typed, (&pattern, view), &stock, roles, (confidence, unit), read)
}

/// The cloth that was named for each role, or the best.
fn choose<'a>(
    args: &TypedPlan,
    (pattern, view): (&Pattern, &str),
    roles: Vec<RoleFit<'a>>,
    (read, confidence): (&dyn Read, Confidence),
) -> Result<Vec<RoleChoice<'a>>, Refused> {
    let mut named = Vec::new();
    for text in &args.uses {
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

/// The garment: what the kind usually has, what the roles and options show that it has, and what was asked for.
fn kind(args: &TypedPlan, chosen: &[RoleChoice<'_>]) -> Result<Option<WantedKind>, Refused> {
    let Some(kind) = args.kind.or_else(|| chosen.iter().find_map(|chosen| chosen.role.kind)) else {
        let detail = args.with.iter().chain(&args.without).next();
        return detail.map_or(Ok(None), |detail| Err(Refused::NoGarmentKind(*detail)));
    };
    if let Some(detail) = args.with.iter().chain(&args.without).find(|detail| !kind.has(**detail)) {
        return Err(Refused::NeverHas(kind, *detail));
    }
    let by_role = chosen.iter().filter_map(|chosen| match part(chosen.role)? {
        GarmentPart::Lining => Some(Detail::Lining),
        GarmentPart::Hood => Some(Detail::Hood),
        GarmentPart::Collar => Some(Detail::Collar),
        GarmentPart::Yoke => Some(Detail::Yoke),
        GarmentPart::Panel => Some(Detail::Panels),
        GarmentPart::Waistband => Some(Detail::Waistband),
        // The rib of a T-shirt is its neckband.
        GarmentPart::Rib if !matches!(kind, GarmentKind::TShirt | GarmentKind::Dress) => Some(Detail::RibBands),
        GarmentPart::HemBand => Some(Detail::RibBands),
        GarmentPart::Elastic if is_below_the_waist(kind) => Some(Detail::ElasticWaist),
        _ => None,
    });
    let by_option = [
        (args.child, Detail::Child),
        (args.cord, Detail::Cord),
        (args.zip_ends == Some(ZipEnds::Open), Detail::SeparatingZip),
        (args.zip_ends == Some(ZipEnds::Closed) && !kind.usual().has(Detail::Fly), Detail::ClosedZip),
    ];
    let by_option = by_option.into_iter().filter(|(is, _)| *is).map(|(_, detail)| detail);
    let by_elastic = args.elastic.iter().filter_map(|text| match text.split_whitespace().nth(1)? {
        place if place.to_lowercase().contains("waist") => Some(Detail::ElasticWaist),
        "wrist" => Some(Detail::ElasticCuffs),
        _ => None,
    });
    // A waistband that is there is there, whatever is drawn into it.
    let (drawn, by_role): (Vec<_>, Vec<_>) = by_role.partition(|detail| *detail == Detail::ElasticWaist);
    let shown = drawn.into_iter().chain(by_option).chain(by_elastic).chain(by_role).filter(|detail| kind.has(*detail));
    let details = shown.chain(args.with.iter().copied()).fold(kind.usual(), Details::with);
    let details = args.without.iter().copied().fold(details, Details::less);
    Ok(Some(WantedKind { kind, details }))
}

/// Whether a garment hangs from the waist.
const fn is_below_the_waist(kind: GarmentKind) -> bool {
    matches!(kind, GarmentKind::Skirt | GarmentKind::Trousers | GarmentKind::Jeans | GarmentKind::Leggings)
}

/// `main+waistband=76cm`, and where the grain is not the usual one `main+panel=60cm lengthwise`, or
/// `main+panel=60cm crosswise/bias`.
fn seams(args: &TypedPlan, (pattern, view): (&Pattern, &str), names: &[&str]) -> Result<Vec<SeamWanted>, Refused> {
    let mut seams = Vec::new();
    for text in &args.seams {
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

/// `soft waist 76cm`.
fn elastic(text: &str, sized: &mut Sized, confidence: Confidence, unit: Unit) -> Result<(), Refused> {
    let (kind, place, measure) = input::size::elastic(text)?;
    let length = cloth(Field::Elastic, measure)?;
    let unit = shown_in(unit, measure);
    let wanted = ElasticWanted { kind, place, measure: length, must_pass: None };
    let judged = sized.elastic(&wanted, confidence, unit);
    judged
        .and_then(|()| sized.casing(kind, None, (false, false), unit))
        .map_err(|error| Wrong::new(Field::Elastic, text, Why::Making(error)).into())
}
