//! The plan sheet of a view, of `tenter fit --sheet` and `tenter report sheet`.

use tenter_core::making::caution::Job;
use tenter_core::making::zip::ZipEnds;
use tenter_core::{Answer, Confidence, Length, Unit};

use super::{check, find};
use crate::cli::fit::PlanArgs;
use crate::deed::Refused;
use crate::error::Error;
use crate::finding::fit::{RoleFit, Stock, purpose};
use crate::finding::plan::{Chosen, PlanWanted, Seam, ViewPlan};
use crate::finding::size::Sized;
use crate::input::synonym::SEAM;
use crate::input::{self, Field, Why, Wrong, amount::cloth};
use crate::json::plan as plan_json;
use crate::log::{Pattern, Purpose, Role};
use crate::store::Read;
use crate::text::Screen;
use crate::text::plan as plan_text;

/// The length of a seam that was not said.
const SEAM_LENGTH: Length = Length::from_mm(500);

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
    let chosen = choose(args, (pattern, view), roles, read)?;
    let roles: Vec<&Role> = chosen.iter().map(|chosen| chosen.role).collect();
    let seams = seams(args, (pattern, view), &roles)?;
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
    read: &dyn Read,
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
    let choose = |fit: RoleFit<'a>| {
        let fabric = named.iter().find(|(role, _)| *role == fit.role.id).map(|(_, fabric)| *fabric);
        let mut candidates = fit.candidates.into_iter();
        let candidate = match fabric {
            Some(fabric) => candidates.find(|one| one.fabric.id == fabric),
            // Only an explicit --use selects a cloth that falls short.
            None => candidates.next().filter(|best| !matches!(best.answer, Answer::Short | Answer::Over)),
        };
        Chosen { role: fit.role, candidate }
    };
    Ok(roles.into_iter().map(choose).collect())
}

fn seams(args: &PlanArgs, (pattern, view): (&Pattern, &str), roles: &[&Role]) -> Result<Vec<Seam>, Error> {
    let mut seams = Vec::new();
    for text in &args.seam {
        let wrong = || Wrong::new(Field::Seam, text, Why::NotASeam);
        let (said, length) = text.rsplit_once('=').ok_or_else(wrong)?;
        let (said, name) = match said.rsplit_once(':') {
            Some((said, name)) => (said, Some(SEAM.read(Field::Seam, name)?)),
            None => (said, None),
        };
        let (one, other) = said.split_once('+').ok_or_else(wrong)?;
        let length = cloth(Field::Seam, length)?;
        if length <= Length::ZERO {
            return Err(wrong().into());
        }
        let place = |text: &str| {
            let name = find::role(pattern, view, text)?.name.as_str();
            let place = roles.iter().position(|known| known.name == name);
            Ok::<_, Error>(place.ok_or_else(|| Refused::NotOnSheet(name.to_owned()))?)
        };
        seams.push(Seam { roles: [place(one)?, place(other)?], name, length });
    }
    if seams.is_empty() {
        // What is no layer of cloth, and what is fused onto one, has no seam.
        let joins = |role: &&Role| !matches!(purpose::of_role(role), None | Some(Purpose::Interfacing));
        let others = roles.iter().enumerate().skip(1).filter(|(_, role)| joins(role));
        seams.extend(others.map(|(other, _)| Seam { roles: [0, other], name: None, length: SEAM_LENGTH }));
    }
    Ok(seams)
}

/// `soft waist 76cm`.
fn elastic(text: &str, sized: &mut Sized, confidence: tenter_core::Confidence) -> Result<(), Error> {
    let (kind, place, measure) = input::size::elastic(text)?;
    let length = cloth(Field::Elastic, measure)?;
    let unit = input::unit_of(measure).unwrap_or_default();
    let judged = sized.elastic((kind, place), length, None, confidence, unit);
    judged
        .and_then(|()| sized.casing(kind, None, false, unit))
        .map_err(|error| Wrong::new(Field::Elastic, text, Why::Making(error)).into())
}
