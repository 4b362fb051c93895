//! The plan sheet of a view, of `tenter fit --sheet` and `tenter report sheet`.

use tenter_core::making::caution::Job;
use tenter_core::making::zip::{Choice, ZipEnds, ZipSeries};
use tenter_core::{Answer, Confidence, Length, Unit};

use super::{check, find};
use crate::cli::fit::PlanArgs;
use crate::cli::size::{ElasticArg, PlaceArg};
use crate::error::{Error, one_line};
use crate::finding::fit::RoleFit;
use crate::finding::fit::Stock;
use crate::finding::plan as report;
use crate::finding::plan::Chosen;
use crate::finding::plan::Seam;
use crate::finding::plan::Sheet;
use crate::input::{self, fabric::cloth, size as typed};
use crate::log::Pattern;
use crate::store::Read;
use crate::text::Screen;
use crate::text::size::Sized;

use clap::ValueEnum as _;

/// The length of a seam that was not said.
const SEAM: Length = Length::from_mm(500);

/// Works out the sheet.
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
) -> Result<Sheet<'a>, Error> {
    let chosen = choose(args, (pattern, view), roles, read)?;
    let names: Vec<&'a str> = chosen.iter().map(|chosen| chosen.role.name.as_str()).collect();
    let seams = seams(args, (pattern, view), &names)?;
    let mut notions = Sized::default();
    if let Some(text) = &args.zip {
        let series = if input::unit_of(text) == Some(Unit::Inch) { ZipSeries::Inch } else { ZipSeries::Metric };
        let edge = cloth("--zip", text)?;
        let ends = args.zip_ends.map_or(ZipEnds::Open, typed::zip_ends);
        let choice = Choice::of(edge, series, ends).map_err(|error| Error::argument("--zip", text, error))?;
        notions.zip(edge, &choice, input::unit_of(text).unwrap_or(unit));
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
    Ok(Sheet { pattern, view, chosen, seams, notions: notions.lines, job, stock, confidence, unit })
}

/// Prints the sheet; the exit code is that of its worst role.
///
/// # Errors
///
/// An output that cannot be written.
pub fn print(sheet: &Sheet<'_>, json: bool, why: bool, screen: &mut Screen<'_>) -> Result<u8, Error> {
    if json {
        let sections = report::sections(sheet);
        let json = serde_json::json!({ "pattern": sheet.pattern.name, "view": sheet.view, "sections": sections });
        writeln!(screen.out, "{json}")?;
    } else {
        write!(screen.out, "{}", report::text(sheet, why, screen.width))?;
    }
    let answer = |chosen: &Chosen<'_>| chosen.candidate.as_ref().map_or(Answer::Short, |one| one.answer);
    Ok(check::exit_code(sheet.chosen.iter().map(answer).reduce(Answer::worse)))
}

/// The fabric that was named for each role, or the best.
fn choose<'a>(
    args: &PlanArgs,
    (pattern, view): (&Pattern, &str),
    roles: Vec<RoleFit<'a>>,
    read: &dyn Read,
) -> Result<Vec<Chosen<'a>>, Error> {
    let mut named = Vec::new();
    for text in &args.r#use {
        let wrong = |remedy: &str| Error::argument("--use", text, remedy);
        let (role, tag) = text.rsplit_once('=').ok_or_else(|| wrong("type a role and a tag, such as main=1"))?;
        let role = find::role(pattern, view, role)?.id;
        if tag.trim().is_empty() {
            return Err(wrong("type the tag of a fabric after the ="));
        }
        named.push((role, find::live_fabric(read, tag)?.id));
    }
    let choose = |fit: RoleFit<'a>| {
        let fabric = named.iter().find(|(role, _)| *role == fit.role.id).map(|(_, fabric)| *fabric);
        let mut candidates = fit.candidates.into_iter();
        let candidate = match fabric {
            Some(fabric) => candidates.find(|one| one.fabric.id == fabric),
            // What falls short is chosen by nobody but her.
            None => candidates.next().filter(|best| !matches!(best.answer, Answer::Short | Answer::Over)),
        };
        Chosen { role: fit.role, candidate }
    };
    Ok(roles.into_iter().map(choose).collect())
}

fn seams<'n>(args: &PlanArgs, (pattern, view): (&Pattern, &str), names: &[&'n str]) -> Result<Vec<Seam<'n>>, Error> {
    let mut seams = Vec::new();
    for text in &args.seam {
        let wrong = || Error::argument("--seam", text, "type two roles and a length, such as 'main+waistband=60cm'");
        let (roles, length) = text.rsplit_once('=').ok_or_else(wrong)?;
        let (one, other) = roles.split_once('+').ok_or_else(wrong)?;
        let length = cloth("--seam", length)?;
        if length <= Length::ZERO {
            return Err(wrong());
        }
        let place = |text: &str| {
            let name = find::role(pattern, view, text)?.name.as_str();
            let place = names.iter().position(|known| *known == name);
            place.ok_or_else(|| {
                Error::Usage(format!("'{}' is not on this sheet; name it with --role too", one_line(name)))
            })
        };
        let roles = [place(one)?, place(other)?];
        let name = |role: usize| names.get(role).copied().unwrap_or_default();
        seams.push(Seam { roles, length, names: [name(roles[0]), name(roles[1])] });
    }
    if seams.is_empty()
        && let Some((first, others)) = names.split_first()
    {
        let with =
            |(index, other): (usize, &&'n str)| Seam { roles: [0, index + 1], length: SEAM, names: [first, other] };
        seams.extend(others.iter().enumerate().map(with));
    }
    Ok(seams)
}

/// `soft waist 76cm`.
fn elastic(text: &str, sized: &mut Sized, confidence: tenter_core::Confidence) -> Result<(), Error> {
    let wrong = || {
        let words =
            "type its kind (firm, soft, braided, ribbing), its place and what it is cut for, such as 'soft waist 76cm'";
        Error::argument("--elastic", text, words)
    };
    let mut words = text.trim().splitn(3, ' ');
    let (Some(kind), Some(place), Some(measure)) = (words.next(), words.next(), words.next()) else {
        return Err(wrong());
    };
    let kind = ElasticArg::from_str(kind, true).map_err(|_| wrong())?;
    let place = PlaceArg::from_str(place, true).map_err(|_| wrong())?;
    let (kind, place, length) = (typed::kind(kind), typed::place(place), cloth("--elastic", measure)?);
    let unit = input::unit_of(measure).unwrap_or_default();
    let judged = sized.elastic((kind, place), length, None, confidence, unit);
    judged
        .and_then(|()| sized.casing(kind, None, false, unit))
        .map_err(|error| Error::argument("--elastic", text, error))
}
