//! Adding a cloth, and changing what is said about it.

use tenter_core::{Length, Unit};

use super::super::fields::{Fields, fresh};
use super::super::form::{FieldKind, Form, FormField, members, or_none};
use super::super::part::{Link, PagePart};
use super::super::shell::{Place, Shell};
use super::super::visit::{Answered, Visit, cloth};
use super::super::{Method, Response};
use crate::deed::{Refused, cloth as deed};
use crate::input::Field;
use crate::input::cloth::TypedCloth;
use crate::input::synonym::{CONSTRUCTION, DRAPE, FINISH, PURPOSE};
use crate::log::{Drape, Fabric, Finish, Purpose};
use crate::words::cloth as words;
use crate::words::page::told;
use crate::words::quantity;

/// The fields of a cloth. `new` asks for the shop too, where it was seen there.
pub fn fields(form: Form, new: bool) -> Form {
    let list = |name, label, words| FormField::new(name, label, FieldKind::List(or_none("not recorded", words)));
    let form = form
        .ask(FormField::text("name", "Name").hint("By which you know it: Slate rib").of(&[Field::Name, Field::NewName]))
        .ask(FormField::new("construction", "Made", FieldKind::Pick(members(&CONSTRUCTION))).of(&[Field::Construction]))
        .ask(FormField::text("length", "Length on hand").hint("With its unit: 2.4m, 2 5/8yd").of(&[Field::Length]))
        .ask(FormField::text("width", "Usable width").hint("150cm, 58in").of(&[Field::Width]))
        .ask(FormField::text("fibre", "Made of").hint("As on the label: cotton 95, elastane 5").of(&[Field::Fibre]))
        .ask(FormField::text("colour", "Colour").of(&[Field::Colour]));
    let form = if new {
        form.ask(
            FormField::text("seen", "Seen in a shop")
                .hint("Which one. Leave it empty for a cloth that is yours")
                .of(&[Field::Seen]),
        )
        .ask(FormField::text("price", "Price there").hint("12.50/m").of(&[Field::Price]))
    } else {
        form
    };
    form.ask(FormField::text("place", "Where it lies").of(&[Field::Place]))
        .ask(FormField::text("mass", "Mass").hint("180 g/m2, 5.3 oz/yd2").of(&[Field::Mass]))
        .ask(list("finish", "Finish", members(&FINISH)).of(&[Field::Finish]))
        .ask(list("drape", "How it falls", members(&DRAPE)).of(&[Field::Drape]))
        .ask(list("purpose", "Made for", members(&PURPOSE)).of(&[Field::Purpose]))
        .ask(FormField::new("one_way", "It lies one way up: nap, pile or print", FieldKind::Tick).of(&[Field::OneWay]))
        .ask(FormField::new("washed", "It was washed since it came home", FieldKind::Tick).of(&[Field::Washed]))
        .ask(FormField::text("tag", "Tag").hint("Leave it empty for the next free number").of(&[Field::Tag]))
        .ask(FormField::new("note", "Note", FieldKind::Lines).of(&[Field::Note]))
}

/// What was typed of a new cloth.
pub fn typed(sent: &Fields) -> TypedCloth {
    TypedCloth {
        // One that is missing is asked for.
        name: Some(sent.get("name").to_owned()),
        tag: sent.typed("tag"),
        fibre: sent.typed("fibre"),
        construction: CONSTRUCTION.typed(sent.get("construction")),
        width: sent.typed("width"),
        length: sent.typed("length"),
        mass: sent.typed("mass"),
        finish: sent.typed("finish"),
        drape: sent.typed("drape"),
        purpose: sent.typed("purpose"),
        one_way: (sent.get("one_way") == "yes").then_some(true),
        colour: sent.typed("colour"),
        place: sent.typed("place"),
        note: sent.typed("note"),
        seen: sent.typed("seen"),
        price: sent.typed("price"),
        bought: None,
        washed: (sent.get("washed") == "yes").then_some(true),
    }
}

/// Adds a cloth.
pub fn add(visit: &mut Visit<'_>) -> Answered {
    let form = fields(Form::new("cloth", "/cloths/new", "Store the cloth").once(fresh(visit.here)), true);
    let page = |form: Form, status| {
        let mut page = Shell::new(Place::Cloths, "A new cloth");
        page.push(PagePart::Form(Box::new(form)));
        Ok(page.with_status(status))
    };
    if visit.request.method == Method::Get {
        let mut form = form;
        for input in &mut form.inputs {
            input.value = visit.query.get(input.name).to_owned();
        }
        return page(form, 200);
    }
    let typed = typed(&visit.sent);
    match visit.once(|read| deed::add(read, &typed)) {
        Ok((Some(id), _)) => Ok(Response::see(&cloth(id))),
        Ok((None, _)) => Ok(Response::see("/cloths")),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => page(again(form, visit).refused(&refused), 422),
    }
}

/// A form as it was sent, the identifier of its entry included.
pub fn again(form: Form, visit: &Visit<'_>) -> Form {
    let once = visit.sent.once(visit.here);
    let mut form = form.filled(&visit.sent);
    form.hidden.retain(|(name, _)| name != super::super::fields::ONCE);
    form.once(once)
}

/// What a cloth has in the fields of its form.
fn had(fabric: &Fabric, unit: Unit) -> Vec<(&'static str, String)> {
    let length =
        |length: Option<Length>, unit: Unit| length.map(|length| length.show(unit).to_string()).unwrap_or_default();
    let yes = |is: bool| if is { "yes" } else { "" }.to_owned();
    let unit = quantity::marks_unit(unit);
    vec![
        ("name", fabric.name.clone()),
        ("construction", fabric.construction.word().to_owned()),
        ("length", length(fabric.length, unit)),
        ("width", length(fabric.width, unit)),
        ("fibre", fabric.fibre.clone()),
        ("colour", fabric.colour.clone()),
        ("place", fabric.place.clone()),
        ("mass", fabric.mass.map(|mass| mass.to_string()).unwrap_or_default()),
        ("finish", fabric.finish.map(Finish::word).unwrap_or_default().to_owned()),
        ("drape", fabric.drape.map(Drape::word).unwrap_or_default().to_owned()),
        ("purpose", fabric.purpose.map(Purpose::word).unwrap_or_default().to_owned()),
        ("one_way", yes(fabric.one_way)),
        ("washed", yes(fabric.washed)),
        ("tag", fabric.tag.number().to_string()),
        ("note", fabric.note.clone()),
    ]
}

/// What is different from what the form began with: it carries that along, so that somebody who changed another field
/// meanwhile is not overruled.
fn changed(sent: &Fields) -> TypedCloth {
    let differs = |name: &str| sent.get(name).trim() != sent.get(&format!("had_{name}")).trim();
    let text = |name: &str| differs(name).then(|| sent.get(name).to_owned());
    let value = |name: &str| {
        let typed = text(name)?;
        Some(if typed.trim().is_empty() { "unknown".to_owned() } else { typed })
    };
    let yes = |name: &str| differs(name).then(|| sent.get(name) == "yes");
    TypedCloth {
        name: text("name"),
        tag: text("tag"),
        fibre: text("fibre"),
        construction: text("construction").and_then(|word| CONSTRUCTION.typed(&word)),
        width: value("width"),
        length: value("length"),
        mass: value("mass"),
        finish: value("finish"),
        drape: value("drape"),
        purpose: value("purpose"),
        one_way: yes("one_way"),
        colour: text("colour"),
        place: text("place"),
        note: text("note"),
        washed: yes("washed"),
        ..TypedCloth::default()
    }
}

/// Changes a cloth.
pub fn edit(visit: &mut Visit<'_>, id: &str) -> Answered {
    let fabric = visit.fabric(id)?;
    let address = cloth(fabric.id);
    let mut form =
        fields(Form::new("cloth", format!("{address}/edit"), "Store the change").once(fresh(visit.here)), false);
    let page = |form: Form, status| {
        let mut page = Shell::new(Place::Cloths, &format!("Change {}", words::title(&fabric)));
        page.push(PagePart::Form(Box::new(form)));
        page.push(PagePart::Links(vec![Link::new(&address, "Back to the cloth")]));
        Ok(page.with_status(status))
    };
    if visit.request.method == Method::Get {
        for (name, value) in had(&fabric, visit.unit) {
            form = form.with(&format!("had_{name}"), &value);
            if let Some(input) = form.inputs.iter_mut().find(|input| input.name == name) {
                input.value = value;
            }
        }
        return page(form, 200);
    }
    let typed = changed(&visit.sent);
    match visit.once(|read| deed::edit(read, &fabric.id.to_string(), &typed)) {
        Ok(_) => Ok(Response::see(&address)),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => {
            let kept = visit.sent.texts().iter().filter(|(name, _)| name.starts_with("had_"));
            form.hidden.extend(kept.cloned());
            page(again(form, visit).refused(&refused), 422)
        }
    }
}

/// Buys a cloth that was seen in a shop, or changes where it was seen.
pub fn buy(visit: &mut Visit<'_>, id: &str) -> Answered {
    let fabric = visit.fabric(id)?;
    let address = cloth(fabric.id);
    let form = Form::new("buy", format!("{address}/buy"), "I bought it").once(fresh(visit.here)).ask(
        FormField::text("bought", "How much you bought")
            .hint("With its unit: 1.2m")
            .of(&[Field::Bought, Field::Length]),
    );
    let page = |form: Form, status| {
        let mut page = Shell::new(Place::Cloths, &format!("Buy {}", words::title(&fabric)));
        page.push(PagePart::Soft(told(&words::place(&fabric))));
        page.push(PagePart::Form(Box::new(form)));
        page.push(PagePart::Links(vec![Link::new(&address, "Back to the cloth")]));
        Ok(page.with_status(status))
    };
    if visit.request.method == Method::Get {
        return page(form, 200);
    }
    let typed = TypedCloth { bought: Some(visit.sent.get("bought").to_owned()), ..TypedCloth::default() };
    match visit.once(|read| deed::edit(read, &fabric.id.to_string(), &typed)) {
        Ok(_) => Ok(Response::see(&address)),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => page(again(form, visit).refused(&refused), 422),
    }
}
