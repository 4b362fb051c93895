//! Garments: begun, cut, finished, worn.

use tenter_core::Length;
use tenter_core::making::garment::Stage;

use super::find::{self, owned};
use super::{Done, Refused, Thing};
use crate::finding::kept::{cut_of, takes};
use crate::finding::make::{is_ticked, stages_of};
use crate::finding::pair::NamedCloth;
use crate::input::amount::{cloth, unit_of};
use crate::input::cloth::short;
use crate::input::garment::{TypedGarment, change, role_and_cloth};
use crate::input::learned::TypedLearned;
use crate::input::{Field, Why, Wrong};
use crate::log::{Choices, Fabric, Fact, Garment, GarmentChange, Id, Pattern, Role, Use};
use crate::store::Read;

/// Begins a garment from the view that the names mean, under the next free number where none was typed.
///
/// # Errors
///
/// No such pattern, view, role or cloth, a field that cannot be read, or a number that is taken.
pub fn start(read: &dyn Read, names: &[String], typed: &TypedGarment) -> Done<()> {
    let mut said = change(typed, read.here())?;
    let (pattern, view) = find::pattern_and_view(read, names)?;
    let view = view.as_str();
    let garments = read.garments()?;
    match said.number {
        Some(number) => free(&garments, number, None)?,
        None => said.number = Some(next(&garments)?),
    }
    let uses = chosen(read, (&pattern, view), &typed.uses, Vec::new(), None)?;
    let name = said.name.unwrap_or_else(|| called(&pattern.name, view));
    super::plan::check(&typed.choices, (&pattern, view))?;
    let (name, view, uses) = (Some(name), Some(view.to_owned()), Some(uses));
    let choices = Some(typed.choices.clone()).filter(|choices| *choices != Choices::default());
    let change = GarmentChange { name, view, uses, choices, pattern: Some(pattern.id), ..said };
    Ok((vec![Fact::GarmentBegun(change)], ()))
}

/// What a garment is called of which nobody said it: its pattern, and the view where it has one.
fn called(pattern: &str, view: &str) -> String {
    if view == "-" { pattern.to_owned() } else { format!("{pattern} {view}") }
}

/// Changes what is said about a garment; hands it back as it was.
///
/// # Errors
///
/// No such garment, a field that cannot be read, a number that is taken, a cloth that is cut already, or nothing that
/// changes.
pub fn edit(read: &dyn Read, which: &str, typed: &TypedGarment) -> Done<Garment> {
    let garment = live(read, which)?;
    let mut said = change(typed, read.here())?;
    if let Some(number) = said.number {
        free(&read.garments()?, number, Some(garment.id))?;
    }
    if !typed.uses.is_empty() {
        let pattern = pattern_of(read, &garment)?;
        let view = find::view(&pattern, &garment.view)?;
        said.uses = Some(chosen(read, (&pattern, view), &typed.uses, garment.uses.clone(), Some(&garment))?);
    }
    let choices = typed.all_choices.clone().unwrap_or_else(|| garment.choices.changed(&typed.choices));
    if choices != garment.choices {
        let pattern = pattern_of(read, &garment)?;
        super::plan::check(&choices, (&pattern, find::view(&pattern, &garment.view)?))?;
        said.choices = Some(choices);
    }
    if said == GarmentChange::default() {
        return Err(Refused::NothingChanged(Thing::Garment));
    }
    Ok((vec![Fact::GarmentChanged { garment: garment.id, change: said }], garment))
}

/// The cloths for roles, those that were typed in the place of those that were there.
fn chosen(
    read: &dyn Read,
    (pattern, view): (&Pattern, &str),
    typed: &[String],
    mut uses: Vec<Use>,
    garment: Option<&Garment>,
) -> Result<Vec<Use>, Refused> {
    let mut named: Vec<Id> = Vec::new();
    for text in typed {
        let (role, cloth) = role_and_cloth(text)?;
        let (role, fabric) = (find::role(pattern, view, role)?, find::live_fabric(read, cloth)?);
        if named.contains(&role.id) {
            return Err(Wrong::new(Field::Use, text, Why::RoleTwice).into());
        }
        named.push(role.id);
        let (role, name) = (role.id, &role.name);
        match uses.iter_mut().find(|one| one.role == role) {
            None => uses.push(Use { role, fabric: fabric.id }),
            Some(one) if one.fabric == fabric.id => {}
            Some(one) => {
                let had = read.fabric(one.fabric)?;
                if let (Some(garment), Some(had)) = (garment, had)
                    && cut_of(&had, garment.id, role).is_some()
                {
                    return Err(Refused::CutAlready { number: garment.number, role: name.clone(), tag: had.tag });
                }
                one.fabric = fabric.id;
            }
        }
    }
    Ok(uses)
}

/// What was cut, or not cut after all.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RoleCut {
    /// The role.
    pub role: String,
    /// The cloth.
    pub cloth: NamedCloth,
    /// How much.
    pub length: Length,
}

/// Takes what a role takes off its cloth, or so much as was typed; of every role that is not cut yet where none is named.
///
/// # Errors
///
/// No such garment or role, nothing chosen or left to cut, no length known, or more than there is.
pub fn cut(read: &dyn Read, which: &str, role: Option<&str>, length: Option<&str>) -> Done<(Garment, Vec<RoleCut>)> {
    let garment = live(read, which)?;
    let length = length.map(|text| cut_length(text).map(|length| (text, length))).transpose()?;
    let number = garment.number;
    let mut open = Vec::new();
    for (role, fabric) in uses(read, &garment, role)? {
        if cut_of(&fabric, garment.id, role.id).is_none() {
            open.push((role, fabric));
        }
    }
    if open.is_empty() {
        return Err(Refused::NothingToCut(number));
    }
    if let (Some((text, _)), true) = (length, open.len() > 1) {
        return Err(Wrong::new(Field::Length, text, Why::OfOneRole).into());
    }
    let unit = length.and_then(|(text, _)| unit_of(text)).unwrap_or_default();
    let (mut facts, mut cuts): (Vec<Fact>, Vec<(RoleCut, Length)>) = (Vec::new(), Vec::new());
    for (role, fabric) in open {
        let tag = fabric.tag;
        if fabric.is_seen() {
            return Err(Refused::InShop(tag));
        }
        let had = fabric.length.ok_or(Refused::LengthNotKnown(tag))?;
        let asked = length.map(|(_, length)| length).or_else(|| takes(&fabric, &role));
        let asked = asked.ok_or_else(|| Refused::CutHowMuch { number, role: role.name.clone() })?;
        facts.push(Fact::FabricCutFor { fabric: fabric.id, length: asked, garment: garment.id, role: role.id });
        cuts.push((RoleCut { role: role.name, cloth: NamedCloth::from(&fabric), length: asked }, had));
    }
    // One cloth may serve several roles.
    for (cut, had) in &cuts {
        let same = || cuts.iter().map(|(other, _)| other).filter(|other| other.cloth.tag == cut.cloth.tag);
        let asked =
            same().fold(Length::ZERO, |sum, one| Length::from_steps(sum.steps().saturating_add(one.length.steps())));
        if asked > *had {
            let roles = same().map(|one| one.role.clone()).collect();
            return Err(Refused::TooLittleToCut { tag: cut.cloth.tag, number, roles, asked, had: *had, unit });
        }
    }
    Ok((facts, (garment, cuts.into_iter().map(|(cut, _)| cut).collect())))
}

/// Ticks stages of the work off, or takes ticks back; hands the garment back as it was.
///
/// # Errors
///
/// No such garment, or a stage that it does not have.
pub fn tick(read: &dyn Read, which: &str, stages: &[Stage], done: bool) -> Done<Garment> {
    let garment = live(read, which)?;
    let known = stages_of(&garment, &read.patterns()?);
    if let Some(stage) = stages.iter().copied().find(|stage| !known.contains(stage)) {
        return Err(Refused::NoStage { number: garment.number, stage, known });
    }
    let ticked =
        |stage: &Stage| stages.contains(stage) && done || is_ticked(&garment, *stage) && !stages.contains(stage);
    Ok((vec![ticks(&garment, &known, ticked)], garment))
}

/// Ticks just these stages of the work off; hands the garment back as it was.
///
/// # Errors
///
/// No such garment.
pub fn ticked(read: &dyn Read, which: &str, stages: &[Stage]) -> Done<Garment> {
    let garment = live(read, which)?;
    let known = stages_of(&garment, &read.patterns()?);
    Ok((vec![ticks(&garment, &known, |stage| stages.contains(stage))], garment))
}

fn ticks(garment: &Garment, known: &[Stage], ticked: impl Fn(&Stage) -> bool) -> Fact {
    let ticked = known.iter().filter(|stage| ticked(stage)).map(|stage| stage.word().to_owned()).collect();
    let change = GarmentChange { ticked: Some(ticked), ..GarmentChange::default() };
    Fact::GarmentChanged { garment: garment.id, change }
}

fn cut_length(text: &str) -> Result<Length, Wrong> {
    match cloth(Field::Length, text)? {
        Length::ZERO => Err(Wrong::new(Field::Length, text, Why::Zero)),
        length => Ok(length),
    }
}

/// Takes cuts back; of every role where none is named.
///
/// # Errors
///
/// No such garment or role, or nothing that was cut.
pub fn uncut(read: &dyn Read, which: &str, role: Option<&str>) -> Done<(Garment, Vec<RoleCut>)> {
    let garment = live(read, which)?;
    let (mut facts, mut cuts) = (Vec::new(), Vec::new());
    for (role, fabric) in uses(read, &garment, role)? {
        if let Some(cut) = cut_of(&fabric, garment.id, role.id) {
            facts.push(Fact::FabricRetracted { fabric: fabric.id, entry: cut.id });
            cuts.push(RoleCut { role: role.name, cloth: NamedCloth::from(&fabric), length: cut.length });
        }
    }
    if facts.is_empty() { Err(Refused::NothingCutFor(garment.number)) } else { Ok((facts, (garment, cuts))) }
}

/// The roles of a garment with their cloths; the one that is named, or all.
fn uses(read: &dyn Read, garment: &Garment, wanted: Option<&str>) -> Result<Vec<(Role, Fabric)>, Refused> {
    let pattern = pattern_of(read, garment)?;
    let mut found = Vec::new();
    for one in &garment.uses {
        // A role that was retired since is still a role of this garment.
        let Some(role) = pattern.roles.iter().find(|role| role.id == one.role) else { continue };
        found.extend(read.fabric(one.fabric)?.map(|fabric| (role.clone(), fabric)));
    }
    let names: Vec<&str> = found.iter().map(|(role, _)| role.name.as_str()).collect();
    if names.is_empty() {
        return Err(Refused::NoClothChosen(garment.number));
    }
    let Some(wanted) = wanted else { return Ok(found) };
    let name = find::one_of(Thing::Role, wanted, &names, &pattern.name)?.to_owned();
    found.retain(|(role, _)| role.name == name);
    Ok(found)
}

/// Finishes a garment, with what worked on the cloth of a role, or of its first; hands the garment back.
///
/// # Errors
///
/// No such garment, one that is finished, or a text that cannot be read.
pub fn done(read: &dyn Read, which: &str, role: Option<&str>, typed: &TypedLearned) -> Done<Garment> {
    let garment = live(read, which)?;
    if garment.done.is_some() {
        return Err(Refused::DoneAlready(garment.number));
    }
    let mut facts = vec![Fact::GarmentDone { garment: garment.id }];
    if *typed != TypedLearned::default() {
        facts.extend(taught(read, &garment, role, typed)?);
    }
    Ok((facts, garment))
}

/// Remembers what a garment taught of the cloth of a role, or of its first; hands the garment back.
///
/// # Errors
///
/// No such garment or role, or nothing that can be read.
pub fn wore(read: &dyn Read, which: &str, role: Option<&str>, typed: &TypedLearned) -> Done<Garment> {
    let garment = live(read, which)?;
    Ok((taught(read, &garment, role, typed)?, garment))
}

fn taught(read: &dyn Read, garment: &Garment, role: Option<&str>, typed: &TypedLearned) -> Result<Vec<Fact>, Refused> {
    let first = uses(read, garment, role)?.into_iter().next();
    let (_, fabric) = first.ok_or(Refused::NoClothChosen(garment.number))?;
    Ok(super::remember::learn(read, &fabric.id.to_string(), typed, Some(garment.id))?.0)
}

/// Takes up a finished garment again; hands it back.
///
/// # Errors
///
/// No such garment, or one that is not finished.
pub fn reopen(read: &dyn Read, which: &str) -> Done<Garment> {
    let garment = live(read, which)?;
    if garment.done.is_none() {
        return Err(Refused::NotDone(garment.number));
    }
    Ok((vec![Fact::GarmentReopened { garment: garment.id }], garment))
}

/// Gives a garment up; hands it back.
///
/// # Errors
///
/// No such garment, or a note that cannot be read.
pub fn retire(read: &dyn Read, which: &str, note: &str) -> Done<Garment> {
    let note = short(Field::Note, note)?;
    let garment = live(read, which)?;
    Ok((vec![Fact::GarmentDropped { garment: garment.id, note }], garment))
}

/// Takes a garment up again that was given up; hands it back.
///
/// # Errors
///
/// No such garment, one that is there, or a number that is taken by now.
pub fn restore(read: &dyn Read, which: &str) -> Done<Garment> {
    let garment = find::garment(read, which, true)?;
    if !garment.dropped {
        return Err(Refused::GarmentThere(garment.number));
    }
    free(&read.garments()?, garment.number, Some(garment.id))?;
    Ok((vec![Fact::GarmentRestored { garment: garment.id }], garment))
}

/// The garment that is meant, unless it was given up.
///
/// # Errors
///
/// A text that means none, or two, or one that was given up.
pub fn live(read: &dyn Read, which: &str) -> Result<Garment, Refused> {
    let garment = find::garment(read, which, false)?;
    if garment.dropped { Err(Refused::GivenUp(garment.number)) } else { Ok(garment) }
}

/// The pattern of a garment, retired or not.
///
/// # Errors
///
/// One that has not arrived.
pub fn pattern_of(read: &dyn Read, garment: &Garment) -> Result<Pattern, Refused> {
    let patterns = read.patterns()?;
    let known = owned(&patterns.iter().map(|pattern| pattern.name.as_str()).collect::<Vec<_>>());
    let none =
        || Refused::NoneNamed { thing: Thing::Pattern, text: garment.name.clone(), known, pattern: String::new() };
    patterns.into_iter().find(|pattern| Some(pattern.id) == garment.pattern).ok_or_else(none)
}

/// The lowest number above all so far; where those have run out, the lowest that is free.
fn next(garments: &[Garment]) -> Result<u16, Refused> {
    let numbers: Vec<u16> = garments.iter().map(|garment| garment.number).collect();
    let next = numbers.iter().copied().max().unwrap_or(0).checked_add(1);
    next.or_else(|| (1..u16::MAX).find(|number| !numbers.contains(number))).ok_or(Refused::NoNumberLeft)
}

/// Refuses a number that another garment has which was not given up.
fn free(garments: &[Garment], number: u16, but: Option<Id>) -> Result<(), Refused> {
    let other = garments.iter().find(|one| one.number == number && !one.dropped && Some(one.id) != but);
    match other {
        Some(Garment { name: by, .. }) => Err(Refused::NumberTaken { number, by: by.clone(), free: next(garments)? }),
        None => Ok(()),
    }
}
