//! The plan sheet of a view, of `tenter fit --sheet` and `tenter report sheet`.

use tenter_core::making::caution::Job;
use tenter_core::making::elastic::{Edging, Kind};
use tenter_core::making::zip::ZipEnds;
use tenter_core::{Answer, Confidence, Length, Unit};

use super::{check, find};
use crate::cli::fit::PlanArgs;
use crate::deed::Refused;
use crate::error::Error;
use crate::finding::fit::{self, Candidate, RoleFit, Stock};
use crate::finding::plan::{Chosen, PlanWanted, Seam, ViewPlan};
use crate::finding::size::Sized;
use crate::input::{self, Field, Why, Wrong, amount::cloth};
use crate::json::plan as plan_json;
use crate::log::{Id, Pattern, Role};
use crate::store::Read;
use crate::text::Screen;
use crate::text::plan as plan_text;

/// The length of a seam that was not said.
const SEAM: Length = Length::from_mm(500);

/// Works out the plan.
///
/// # Errors
///
/// What was typed wrong; here and below.
pub fn plan<'a>(
    args: &PlanArgs,
    (pattern, view): (&'a Pattern, &'a str),
    stock: &'a Stock,
    roles: Vec<RoleFit<'a>>,
    (confidence, unit): (Confidence, Unit),
    read: &dyn Read,
) -> Result<ViewPlan, Error> {
    let chosen = choose(args, (pattern, view), roles, (read, confidence))?;
    let names: Vec<&str> = chosen.iter().map(|chosen| chosen.role.name.as_str()).collect();
    let seams = seams(args, (pattern, view), &names)?;
    let mut notions = Sized::default();
    if let Some(text) = &args.zip {
        let edge = cloth(Field::Zip, text)?;
        let (ends, typed) = (args.zip_ends.unwrap_or(ZipEnds::Open), input::unit_of(text));
        notions
            .zip(edge, ends, typed, typed.unwrap_or(unit))
            .map_err(|error| Wrong::new(Field::Zip, text, Why::Making(error)))?;
    }
    for text in &args.elastic {
        elastic(text, &mut notions, confidence)?;
    }
    let job = Job {
        for_child: args.child,
        has_cord: args.cord,
        sleepwear: args.sleepwear,
        tight: args.tight,
        ..Job::default()
    };
    Ok(ViewPlan::of(&PlanWanted { pattern, view, chosen, seams, notions, job, stock, confidence }))
}

/// Prints the plan; the exit code is that of its worst role.
///
/// # Errors
///
/// An output that cannot be written.
pub fn print(plan: &ViewPlan, json: bool, why: bool, unit: Unit, screen: &mut Screen<'_>) -> Result<u8, Error> {
    if json {
        writeln!(screen.out, "{}", plan_json::render(plan, unit))?;
    } else {
        write!(screen.out, "{}", plan_text::render(plan, why, unit, screen.width))?;
    }
    Ok(check::exit_code(plan.answer))
}

/// The cloth that was named for each role, or the best.
fn choose<'a>(
    args: &PlanArgs,
    (pattern, view): (&Pattern, &str),
    roles: Vec<RoleFit<'a>>,
    (read, confidence): (&dyn Read, Confidence),
) -> Result<Vec<Chosen<'a>>, Error> {
    let mut named = Vec::new();
    for text in &args.r#use {
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
            Some(fabric) => candidates.find(|one| one.fabric.id == fabric),
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
            None => without.push(Chosen { role, candidate: None }),
        }
    }
    fit::together::share(&mut taken, confidence);
    let taken = taken.into_iter().map(|(role, candidate)| Chosen { role, candidate: Some(candidate) });
    let mut chosen: Vec<Chosen<'a>> = taken.chain(without).collect();
    chosen.sort_by_key(|chosen| order.iter().position(|id| *id == chosen.role.id));
    Ok(chosen)
}

fn seams(args: &PlanArgs, (pattern, view): (&Pattern, &str), names: &[&str]) -> Result<Vec<Seam>, Error> {
    let mut seams = Vec::new();
    for text in &args.seam {
        let wrong = || Wrong::new(Field::Seam, text, Why::NotASeam);
        let (roles, length) = text.rsplit_once('=').ok_or_else(wrong)?;
        let (one, other) = roles.split_once('+').ok_or_else(wrong)?;
        let length = cloth(Field::Seam, length)?;
        if length <= Length::ZERO {
            return Err(wrong().into());
        }
        let place = |text: &str| {
            let name = find::role(pattern, view, text)?.name.as_str();
            let place = names.iter().position(|known| *known == name);
            Ok::<_, Error>(place.ok_or_else(|| Refused::NotOnSheet(name.to_owned()))?)
        };
        seams.push(Seam { roles: [place(one)?, place(other)?], length });
    }
    if seams.is_empty() {
        seams.extend((1..names.len()).map(|other| Seam { roles: [0, other], length: SEAM }));
    }
    Ok(seams)
}

/// `soft waist 76cm`.
fn elastic(text: &str, sized: &mut Sized, confidence: tenter_core::Confidence) -> Result<(), Error> {
    let wrong = || Wrong::new(Field::Elastic, text, Why::NotAnElastic);
    let mut words = text.trim().splitn(3, ' ');
    let (Some(kind), Some(place), Some(measure)) = (words.next(), words.next(), words.next()) else {
        return Err(wrong().into());
    };
    let kind = Kind::from_word(&kind.to_lowercase()).ok_or_else(wrong)?;
    let place = Edging::from_word(&place.to_lowercase()).ok_or_else(wrong)?;
    let length = cloth(Field::Elastic, measure)?;
    let unit = input::unit_of(measure).unwrap_or_default();
    let judged = sized.elastic((kind, place), length, None, confidence, unit);
    judged
        .and_then(|()| sized.casing(kind, None, false, unit))
        .map_err(|error| Wrong::new(Field::Elastic, text, Why::Making(error)).into())
}
