//! Where a finished test is kept: with a cloth of the list, with a new one, or without one.

use super::step::gone;
use super::{Measuring, answer};
use crate::deed::pull::{NewTest, store_once};
use crate::deed::{Refused, cloth as deed, find, people};
use crate::guide::NextQuestion;
use crate::input::{Field, Why, Wrong};
use crate::log::{Construction, Fabric, Fact};
use crate::store::Change as _;
use crate::web::cloths::edit::typed;
use crate::web::visit::{Answered, Visit, cloth};
use crate::web::{Method, Response};

/// Stores a test.
pub fn store(visit: &mut Visit<'_>, id: &str) -> Answered {
    let Some(measuring) = Measuring::kept(visit, id)? else { return gone(visit, id) };
    if visit.request.method == Method::Get || measuring.draft.stage != NextQuestion::Done {
        return Ok(Response::see(&measuring.address()));
    }
    let way = visit.sent.get("as").to_owned();
    let form = match way.as_str() {
        "new" => "new",
        "known" => "known",
        "loose" => "loose",
        _ => "keep",
    };
    match stored(visit, &measuring, form) {
        Ok(fabric) => {
            remember_unit(visit, &measuring)?;
            let role = measuring.role.map(|role| format!("?for={role}")).unwrap_or_default();
            let to = fabric.map_or_else(|| "/inbox".to_owned(), |fabric| format!("{}{role}", cloth(fabric.id)));
            Ok(Response::see(&to))
        }
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => {
            let form = answer::sent_again(visit, &measuring, form, &refused)?;
            answer::show(visit, &measuring, form)
        }
    }
}

/// The unit in which the first test was read holds from then on.
fn remember_unit(visit: &mut Visit<'_>, measuring: &Measuring) -> Result<(), Refused> {
    if visit.log.units()?.is_none() {
        visit.log.add(&[Fact::UnitsSet { units: measuring.draft.unit }])?;
    }
    Ok(())
}

fn stored(visit: &mut Visit<'_>, measuring: &Measuring, form: &str) -> Result<Option<Fabric>, Refused> {
    let mut input = answer::input(visit, measuring)?;
    let fabric = match form {
        "loose" => None,
        "new" => None,
        _ => {
            let text = visit.sent.get("cloth").to_owned();
            let missing = || Wrong::new(Field::Tag, "", Why::Missing);
            Some(find::live_fabric(&*visit.log, Some(&text).filter(|text| !text.is_empty()).ok_or_else(missing)?)?)
        }
    };
    if let Some(fabric) = &fabric {
        input.known = crate::input::ClothFacts { construction: Some(fabric.construction), width: fabric.width };
        crate::input::doubt::possible(&input.test, Some(fabric.construction), input.unit)?;
    }
    if let Some(doubted) = answer::doubts(&input) {
        if visit.sent.get("as_read") != "yes" {
            return Err(Refused::Doubted(Box::new(doubted)));
        }
        input.stood_by = doubted.words();
    }
    let fabric = if form == "new" { Some(new_cloth(visit, measuring)?) } else { fabric };
    let draft = &measuring.draft;
    let (_, by) = visit.log.change(|read| {
        let mut who = people::puller(read, draft.by.as_deref())?;
        Ok::<_, Refused>((core::mem::take(&mut who.facts), who.id))
    })?;
    let made = NewTest { id: draft.id, pulled: draft.pulled, by, note: &draft.note, input: &input };
    store_once(&mut *visit.log, fabric.as_ref(), made, &measuring.name())?;
    Ok(fabric)
}

/// Adds the cloth that was measured; the same one where the form is sent again.
fn new_cloth(visit: &mut Visit<'_>, measuring: &Measuring) -> Result<Fabric, Refused> {
    let mut typed = typed(&visit.sent);
    typed.construction = Some(measuring.construction).filter(|made| *made != Construction::default());
    let (id, _) = visit.once(|read| deed::add(read, &typed))?;
    let added = id.map(|id| visit.log.fabric(id)).transpose()?.flatten();
    added.ok_or_else(|| Refused::NoCloth(typed.name.unwrap_or_default()))
}
