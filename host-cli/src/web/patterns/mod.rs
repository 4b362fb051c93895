//! Patterns, their views and roles; which cloths suit them.

pub mod fit;
pub mod plan;
mod role;

pub use role::{add, edit_role, new_role};

use super::fields::fresh;
use super::form::{FieldKind, Form, FormField};
use super::part::{Link, PagePart, Row};
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit};
use super::{Method, Response};
use crate::deed::{Refused, Thing, pattern as deed};
use crate::input::Field;
use crate::input::pattern::TypedRole;
use crate::log::{Id, Pattern, Role};
use crate::plain::isolated;
use crate::web::cloths::edit::again;
use crate::words::page::told;
use crate::words::pattern as words;
use crate::words::plan::work::kind as garment_kind;

/// The address of a pattern.
pub fn address(id: Id) -> String {
    format!("/patterns/{}", id.to_string().to_lowercase())
}

/// The address of something about a view of a pattern.
pub fn of_view(id: Id, what: &str, view: &str) -> String {
    let view: String = form_urlencoded::byte_serialize(view.as_bytes()).collect();
    format!("{}/{what}?view={view}", address(id))
}

/// The pattern of an address, retired or not.
pub fn pattern(visit: &Visit<'_>, id: &str) -> Result<Pattern, Refused> {
    let none =
        || Refused::NoneNamed { thing: Thing::Pattern, text: id.to_owned(), known: Vec::new(), pattern: String::new() };
    let id: Id = id.to_uppercase().parse().map_err(|_| none())?;
    visit.log.patterns()?.into_iter().find(|pattern| pattern.id == id).ok_or_else(none)
}

/// All patterns.
pub fn list(visit: &mut Visit<'_>) -> Answered {
    let mut page = Shell::new(Place::Patterns, "Patterns");
    let (retired, live): (Vec<Pattern>, Vec<Pattern>) = visit.log.patterns()?.into_iter().partition(|one| one.dropped);
    if live.is_empty() {
        page.words("No pattern yet. Write down what the envelope asks of each cloth, and see which of yours will do.");
    }
    for pattern in &live {
        let mut links = Vec::new();
        for view in pattern.views() {
            let roles: Vec<String> = pattern.view(view).map(|role| isolated(&role.name)).collect();
            let name = if words::has_views(view) { words::view(view) } else { "Which cloths suit it".to_owned() };
            links.push(Link::new(of_view(pattern.id, "fit", view), &name).about(&roles.join(", ")));
        }
        links.push(Link::new(address(pattern.id), "What it asks").about("See, change, print"));
        page.push(PagePart::Patch(pattern.name.clone(), vec![PagePart::Links(links)]));
    }
    page.push(PagePart::Links(vec![Link::new("/patterns/new", "Add a pattern").first()]));
    if !retired.is_empty() {
        let links = retired.iter().map(|one| Link::new(address(one.id), &one.name)).collect();
        page.push(PagePart::Fold("Retired patterns".to_owned(), false, vec![PagePart::Links(links)]));
    }
    Ok(page.page())
}

/// One pattern with all that it asks.
pub fn show(visit: &mut Visit<'_>, id: &str) -> Answered {
    let pattern = pattern(visit, id)?;
    let to = address(pattern.id);
    let mut page = Shell::new(Place::Patterns, &pattern.name);
    if !pattern.note.is_empty() {
        page.push(PagePart::Words(pattern.note.clone()));
    }
    if pattern.dropped {
        page.push(PagePart::Notice("This pattern is retired.".to_owned(), Vec::new()));
        let back = Form::new("back", format!("{to}/return"), "Bring it back").once(fresh(visit.here));
        page.push(PagePart::Form(Box::new(back)));
        return Ok(page.page());
    }
    for view in pattern.views() {
        let kind = pattern.view(view).find_map(|role| role.kind).map(garment_kind).unwrap_or_default();
        let head = [words::view(view), kind.to_owned()]
            .into_iter()
            .filter(|one| !one.is_empty())
            .collect::<Vec<_>>()
            .join(", ");
        let mut parts: Vec<PagePart> = pattern.view(view).map(|role| asks(role, visit, &to)).collect();
        parts.push(PagePart::Links(vec![
            Link::new(of_view(pattern.id, "fit", view), "Which cloths suit it").first(),
            Link::new(of_view(pattern.id, "begin", view), "Begin a garment"),
            Link::new(of_view(pattern.id, "plan", view), "The plan, to print"),
            Link::new(of_view(pattern.id, "plan/choices", view), "The plan with your choices"),
            Link::new(of_view(pattern.id, "gauges", view), "Gauges, to print"),
            Link::new(of_view(pattern.id, "book", view), "The swatch book for it"),
            Link::new(of_view(pattern.id, "new", view), "Add a role"),
        ]));
        page.push(PagePart::Patch(head, parts));
    }
    page.push(PagePart::Links(vec![Link::new(format!("{to}/new"), "Add a view or a role")]));
    let change = named(Form::new("name", format!("{to}/edit"), "Store the change").once(fresh(visit.here)).quiet())
        .with("had_name", &pattern.name)
        .with("had_note", &pattern.note);
    let mut change = change;
    for input in change.all() {
        input.value = if input.name == "name" { pattern.name.clone() } else { pattern.note.clone() };
    }
    let retire = Form::new("retire", format!("{to}/retire"), "Retire the pattern").once(fresh(visit.here)).quiet();
    page.push(PagePart::Fold(
        "Change its name, or retire it".to_owned(),
        false,
        vec![PagePart::Form(Box::new(change)), PagePart::Form(Box::new(retire))],
    ));
    Ok(page.page())
}

fn asks(role: &Role, visit: &Visit<'_>, to: &str) -> PagePart {
    let mut row = Row::new(&role.name, &words::asks(role, visit.unit));
    row.small.clone_from(&role.note);
    let edit = Link::new(format!("{to}/roles/{}", role.id.to_string().to_lowercase()), "Change this role");
    let measure = Link::new(format!("/measure?for={}", role.id), "Measure a swatch for it");
    let cloths = Link::new(format!("/cloths?for={}", role.id), "All cloths beside it");
    PagePart::Html(format!(
        "<div class=\"role\">{}{}</div>",
        PagePart::Rows(vec![row]).html(),
        PagePart::Links(vec![cloths, measure, edit]).html()
    ))
}

fn named(form: Form) -> Form {
    form.ask(FormField::text("name", "Name").of(&[Field::NewName]))
        .ask(FormField::new("note", "Note", FieldKind::Lines).of(&[Field::Note]))
}

/// Changes the name or the note of a pattern, retires it or returns it.
pub fn change(visit: &mut Visit<'_>, id: &str, what: &str) -> Answered {
    let pattern = pattern(visit, id)?;
    let to = address(pattern.id);
    if visit.request.method == Method::Get {
        return Ok(Response::see(&to));
    }
    let which = pattern.id.to_string();
    let sent = &visit.sent;
    let differs = |name: &str| (sent.get(name) != sent.get(&format!("had_{name}"))).then(|| sent.get(name).to_owned());
    let (name, note) = (differs("name"), differs("note"));
    let asked = TypedRole { note, ..TypedRole::default() };
    let done = visit.once(|read| match what {
        "retire" => Ok((deed::retire(read, &which, None, None)?.0, ())),
        "return" => Ok((deed::restore(read, &which, None, None)?.0, ())),
        _ => Ok((deed::edit(read, &which, name.as_deref(), &asked)?.0, ())),
    });
    match done {
        Ok(_) => Ok(Response::see(if what == "retire" { "/patterns" } else { &to })),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => {
            let form = named(Form::new("name", format!("{to}/edit"), "Store the change"))
                .with("had_name", &pattern.name)
                .with("had_note", &pattern.note);
            let mut page = Shell::new(Place::Patterns, &pattern.name);
            page.push(PagePart::Form(Box::new(again(form, visit).refused(&refused))));
            page.push(PagePart::Links(vec![Link::new(to, "Back to the pattern")]));
            Ok(page.with_status(422))
        }
    }
}

/// Our words of a view under its name.
pub fn title(pattern: &Pattern, view: &str) -> String {
    told(&words::title(pattern, view))
}
