//! What a role asks, as a form.

use tenter_core::making::body::MOVEMENTS;
use tenter_core::{Limit, Range, SUITS};

use super::{address, pattern};
use crate::deed::{Refused, pattern as deed};
use crate::input::Field;
use crate::input::pattern::TypedRole;
use crate::input::synonym::{CONSTRUCTION, DRAPE, FINISH, KIND, PURPOSE};
use crate::log::{Drape, Finish, Id, Purpose, Role};
use crate::store::Change as _;
use crate::web::cloths::edit::again;
use crate::web::fields::{Fields, fresh};
use crate::web::form::{FieldKind, Form, FormField, members, or_none, words};
use crate::web::part::{Link, PagePart};
use crate::web::shell::{Place, Shell};
use crate::web::visit::{Answered, Visit};
use crate::web::{Method, Response};

/// What a role asks.
fn asked(form: Form) -> Form {
    let list = |name, label, list| FormField::new(name, label, FieldKind::List(or_none("not asked", list)));
    form.ask(FormField::text("crosswise", "Stretch across").hint("5%, 20-30%, 4in to 5 3/8in").of(&[Field::Crosswise]))
        .ask(FormField::text("lengthwise", "Stretch along").of(&[Field::Lengthwise]))
        .ask(
            FormField::text("growth", "The most growth")
                .hint("3%, half an hour after release; for another time 3%@1h")
                .of(&[Field::GrowthAtMost]),
        )
        .ask(
            FormField::new("constructions", "Made", FieldKind::Several(members(&CONSTRUCTION)))
                .of(&[Field::Construction]),
        )
        .ask(FormField::text("cloth", "How much cloth").hint("2.2m of 140cm").of(&[Field::Cloth]))
        .ask(list("kind", "The garment", members(&KIND)).hint("Its plan follows from it").of(&[Field::Kind]))
        .fold(
            "More that it may ask",
            vec![
                FormField::text("bias", "Stretch on the bias").of(&[Field::Bias]),
                FormField::text("recovery", "The least recovery").hint("90%").of(&[Field::RecoveryAtLeast]),
                list("garment", "Or as much as a kind of garment asks", words(SUITS.iter().map(|suit| suit.garment)))
                    .of(&[Field::Garment]),
                list("movement", "And a movement of the body", words(MOVEMENTS.iter().map(|one| one.name)))
                    .of(&[Field::Movement, Field::Around]),
                FormField::text("mass", "Mass").hint("150..250g/m2").of(&[Field::Mass]),
                FormField::new("drapes", "How it falls", FieldKind::Several(members(&DRAPE))).of(&[Field::Drape]),
                FormField::new("finishes", "Finish", FieldKind::Several(members(&FINISH))).of(&[Field::Finish]),
                list("purpose", "Made for", members(&PURPOSE)).of(&[Field::Purpose]),
                FormField::text("note", "Note").hint("Where the figures come from").of(&[Field::Note]),
            ],
        )
}

/// What was typed of a new role.
fn typed(sent: &Fields) -> TypedRole {
    let several = |name: &str| sent.all(name).map(str::to_owned).collect::<Vec<_>>();
    TypedRole {
        crosswise: sent.typed("crosswise"),
        lengthwise: sent.typed("lengthwise"),
        bias: sent.typed("bias"),
        growth_at_most: sent.typed("growth"),
        recovery_at_least: sent.typed("recovery"),
        constructions: sent.all("constructions").filter_map(|word| CONSTRUCTION.typed(word)).collect(),
        mass: sent.typed("mass"),
        drapes: several("drapes"),
        finishes: several("finishes"),
        purpose: sent.typed("purpose"),
        kind: sent.typed("kind"),
        cloth: sent.typed("cloth"),
        garment: sent.typed("garment"),
        movement: sent.typed("movement"),
        around: None,
        note: sent.typed("note"),
    }
}

/// Adds a pattern with its first role.
pub fn add(visit: &mut Visit<'_>) -> Answered {
    let form = Form::new("pattern", "/patterns/new", "Store the pattern")
        .once(fresh(visit.here))
        .ask(FormField::text("pattern", "Pattern").hint("Choir trousers").of(&[Field::Pattern]))
        .ask(FormField::text("view", "View").hint("A. Leave it empty if it has only one").of(&[Field::View]))
        .ask(
            FormField::text("role", "What the cloth is for")
                .hint("main, lining, waistband")
                .value("main")
                .of(&[Field::Role]),
        );
    let form = asked(form);
    let page = |form: Form, status| {
        let mut page = Shell::new(Place::Patterns, "A new pattern");
        page.push(PagePart::Soft("One cloth now; you can add the others to it.".to_owned()));
        page.push(PagePart::Form(Box::new(form)));
        Ok(page.with_status(status))
    };
    if visit.request.method == Method::Get {
        return page(form, 200);
    }
    let (name, sent) = (visit.sent.get("pattern").trim().to_owned(), typed(&visit.sent));
    let (view, role) = (view_of(&visit.sent), visit.sent.get("role").to_owned());
    let once = visit.sent.once(visit.here);
    let begun = deed::asks(&name, &view, &role, &sent)
        .map_err(Refused::from)
        .and_then(|()| visit.once(|read| deed::begin(read, &name, None)));
    let added = match begun {
        // The role has an identifier of its own, drawn from the form's.
        Ok((Some(id), _)) => {
            let second = Id::of(once.at(), once.drawn() ^ 1);
            let which = id.to_string();
            visit.log.change_once(second, |read| deed::role_in(read, (&which, &view, &role), &sent)).map(|_| id)
        }
        Ok((None, _)) => return Ok(Response::see("/patterns")),
        Err(refused) => Err(refused),
    };
    match added {
        Ok(id) => Ok(Response::see(&address(id))),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => page(again(form, visit).refused(&refused), 422),
    }
}

/// The view that was typed; the only one where none was.
fn view_of(sent: &Fields) -> String {
    sent.typed("view").unwrap_or_else(|| "-".to_owned())
}

/// Adds a role to a pattern.
pub fn new_role(visit: &mut Visit<'_>, id: &str) -> Answered {
    let pattern = pattern(visit, id)?;
    let to = address(pattern.id);
    let view = if visit.query.get("view") == "-" { String::new() } else { visit.query.get("view").to_owned() };
    let form = Form::new("role", format!("{to}/new"), "Store the role")
        .once(fresh(visit.here))
        .ask(
            FormField::text("view", "View")
                .hint("A. Leave it empty if the pattern has only one")
                .value(view)
                .of(&[Field::View]),
        )
        .ask(FormField::text("role", "What the cloth is for").hint("main, lining, waistband").of(&[Field::Role]));
    let form = asked(form);
    let page = |form: Form, status| {
        let mut page = Shell::new(Place::Patterns, &format!("A role of {}", pattern.name));
        page.push(PagePart::Form(Box::new(form)));
        page.push(PagePart::Links(vec![Link::new(&to, "Back to the pattern")]));
        Ok(page.with_status(status))
    };
    if visit.request.method == Method::Get {
        return page(form, 200);
    }
    let (which, asked) = (pattern.id.to_string(), typed(&visit.sent));
    let (view, role) = (view_of(&visit.sent), visit.sent.get("role").to_owned());
    match visit.once(|read| deed::role_in(read, (&which, &view, &role), &asked)) {
        Ok(_) => Ok(Response::see(&to)),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => page(again(form, visit).refused(&refused), 422),
    }
}

/// A limit as it would be typed.
fn limit(limit: Limit) -> String {
    match limit.printed_marks() {
        Some((gauge, extended)) => {
            format!("{} to {}", gauge.show(tenter_core::Unit::Inch), extended.show(tenter_core::Unit::Inch))
        }
        None => limit.to_string().replace(' ', ""),
    }
}

/// A range as it would be typed.
fn range(range: Range) -> String {
    let percent = |one: Limit| one.to_string().replace(' ', "");
    match (range.at_least, range.at_most) {
        (None, None) => String::new(),
        (Some(least), None) => limit(least),
        (least, Some(most)) => format!("{}..{}", least.map(percent).unwrap_or_default(), percent(most)),
    }
}

/// What a role asks in the fields of its form.
fn had(role: &Role) -> Vec<(&'static str, String)> {
    let demand = &role.demand;
    let timed = |one: Option<Limit>| {
        one.map(|one| format!("{}@{}", limit(one), crate::words::quantity::time_typed(demand.rest_seconds)))
            .unwrap_or_default()
    };
    let lines = |list: Vec<&'static str>| list.join("\n");
    let length = |length: tenter_core::Length| length.show(tenter_core::Unit::Cm).to_string().replace(' ', "");
    let mass = match (role.mass.at_least, role.mass.at_most) {
        (None, None) => String::new(),
        (least, most) => {
            let end = |mass: Option<crate::log::MassPerArea>| {
                mass.map(|mass| mass.to_string().replace(' ', "")).unwrap_or_default()
            };
            format!("{}..{}", end(least), end(most))
        }
    };
    vec![
        ("name", role.name.clone()),
        ("crosswise", range(demand.crosswise)),
        ("lengthwise", range(demand.lengthwise)),
        ("bias", range(demand.bias)),
        ("growth", timed(demand.growth_at_most)),
        ("recovery", timed(demand.recovery_at_least)),
        ("constructions", lines(role.constructions.iter().map(|one| one.word()).collect())),
        ("mass", mass),
        ("drapes", lines(role.drapes.iter().map(|one| Drape::word(*one)).collect())),
        ("finishes", lines(role.finishes.iter().map(|one| Finish::word(*one)).collect())),
        ("purpose", role.purpose.map(Purpose::word).unwrap_or_default().to_owned()),
        ("kind", role.kind.map(|kind| kind.word()).unwrap_or_default().to_owned()),
        (
            "cloth",
            role.cloth.map(|cloth| format!("{} of {}", length(cloth.length), length(cloth.width))).unwrap_or_default(),
        ),
        ("note", role.note.clone()),
    ]
}

/// What is different from what the form began with.
fn changed(sent: &Fields) -> (Option<String>, TypedRole) {
    let now = |name: &str| sent.all(name).collect::<Vec<_>>().join("\n");
    let text = |name: &str| {
        let now = now(name);
        (now.trim() != sent.get(&format!("had_{name}")).trim()).then_some(now)
    };
    // What is emptied is asked no more.
    let value = |name: &str| text(name).map(|text| if text.trim().is_empty() { "none".to_owned() } else { text });
    let several = |name: &str| match value(name) {
        None => Vec::new(),
        Some(text) => text.lines().map(str::to_owned).collect(),
    };
    let asked = TypedRole {
        crosswise: value("crosswise"),
        lengthwise: value("lengthwise"),
        bias: value("bias"),
        growth_at_most: value("growth"),
        recovery_at_least: value("recovery"),
        constructions: text("constructions")
            .unwrap_or_default()
            .lines()
            .filter_map(|word| CONSTRUCTION.typed(word))
            .collect(),
        mass: value("mass"),
        drapes: several("drapes"),
        finishes: several("finishes"),
        purpose: value("purpose"),
        kind: value("kind"),
        cloth: value("cloth"),
        garment: sent.typed("garment"),
        movement: sent.typed("movement"),
        around: None,
        note: text("note"),
    };
    (text("name"), asked)
}

/// Changes a role, or retires it.
pub fn edit_role(visit: &mut Visit<'_>, id: &str, role: &str) -> Answered {
    let pattern = pattern(visit, id)?;
    let to = address(pattern.id);
    let wanted = role.to_uppercase();
    let Some(role) = pattern.roles.iter().find(|one| one.id.to_string() == wanted && !one.dropped) else {
        return Ok(Response::see(&to));
    };
    let here = format!("{to}/roles/{}", wanted.to_lowercase());
    let form = Form::new("role", &here, "Store the change")
        .once(fresh(visit.here))
        .ask(FormField::text("name", "What the cloth is for").of(&[Field::NewName, Field::Role]));
    let mut form = asked(form);
    let retire = Form::new("retire", &here, "Retire this role").once(fresh(visit.here)).with("do", "retire").quiet();
    let page = |form: Form, status| {
        let mut page = Shell::new(Place::Patterns, &format!("{}: {}", super::title(&pattern, &role.view), role.name));
        page.push(PagePart::Form(Box::new(form)));
        page.push(PagePart::Fold("It is not needed".to_owned(), false, vec![PagePart::Form(Box::new(retire.clone()))]));
        page.push(PagePart::Links(vec![Link::new(&to, "Back to the pattern")]));
        Ok(page.with_status(status))
    };
    if visit.request.method == Method::Get {
        for (name, value) in had(role) {
            form = form.with(&format!("had_{name}"), &value);
            if let Some(input) = form.all().find(|input| input.name == name) {
                input.value = value;
            }
        }
        return page(form, 200);
    }
    let which = pattern.id.to_string();
    let done = if visit.sent.get("do") == "retire" {
        visit.once(|read| Ok((deed::retire(read, &which, Some(&role.view), Some(&role.name))?.0, ())))
    } else {
        let (name, asked) = changed(&visit.sent);
        visit.once(|read| Ok((deed::edit_role(read, (&which, &role.view, &role.name), name.as_deref(), &asked)?.0, ())))
    };
    match done {
        Ok(_) => Ok(Response::see(&to)),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => {
            let kept = visit.sent.texts().iter().filter(|(name, _)| name.starts_with("had_"));
            form.hidden.extend(kept.cloned());
            page(again(form, visit).refused(&refused), 422)
        }
    }
}
