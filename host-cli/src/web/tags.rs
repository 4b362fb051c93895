//! Which tags are given here and elsewhere, and new tags for cloths that share one.

use super::fields::fresh;
use super::form::{Form, FormField};
use super::part::{Link, PagePart, Row};
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit, cloth};
use super::{Method, Response};
use crate::deed::{Refused, people, tags as deed};
use crate::finding::tag::{self, Renumbered};
use crate::input::Field;
use crate::log::{TagHolder, TagRange};
use crate::web::cloths::edit::again;
use crate::words::cloth::title;
use crate::words::errors::page::refused as words_of;
use crate::words::page::told;
use crate::words::tags as words;

/// The page, and what its forms send.
pub fn show(visit: &mut Visit<'_>) -> Answered {
    if visit.request.method == Method::Get {
        return page(visit, Vec::new(), None);
    }
    let what = visit.sent.get("do").to_owned();
    let done = match what.as_str() {
        "renumber" => return renumber(visit),
        "free" => {
            let range = visit.sent.get("tags").to_owned();
            visit.once(|read| Ok((deed::give_back(read, &range)?.0, ()))).map(drop)
        }
        _ => deed::parse(visit.sent.get("tags"))
            .map_err(Refused::from)
            .and_then(|range| deed::give(visit.log, TagHolder::Desk, range)),
    };
    match done {
        Ok(()) => Ok(Response::see("/tags")),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => page(visit, Vec::new(), Some(&refused)),
    }
}

/// Gives the cloths that share a tag new ones, and lists what is to be written anew.
fn renumber(visit: &mut Visit<'_>) -> Answered {
    let done = visit.once(|read| people::renumber(read, None));
    let first = match done {
        Ok((_, Some(renumbered))) => {
            let row = |one: &Renumbered| Row::new(&one.tag.to_string(), &title(&one.fabric));
            let rows = renumbered.iter().map(row).collect();
            let head = "Write these tags anew".to_owned();
            vec![PagePart::Patch(head, vec![PagePart::Rows(rows)])]
        }
        // Sent twice: they have their tags already.
        Ok((_, None)) | Err(Refused::NothingShared) => Vec::new(),
        Err(Refused::Store(error)) => return Err(error.into()),
        Err(refused) => return page(visit, Vec::new(), Some(&refused)),
    };
    page(visit, first, None)
}

fn page(visit: &Visit<'_>, first: Vec<PagePart>, wrong: Option<&Refused>) -> Answered {
    let mut page = Shell::new(Place::More, "Tags");
    for part in first {
        page.push(part);
    }
    if let Some(refused) = wrong {
        page.push(PagePart::Notice("That was not done.".to_owned(), words_of(refused).1));
    }
    let shared = tag::shared(&*visit.log)?;
    if !shared.is_empty() {
        let cloths = shared.iter().flat_map(|one| &one.cloths);
        let links = cloths.map(|fabric| Link::new(cloth(fabric.id), &title(fabric))).collect();
        let form = Form::new("renumber", "/tags", "Give them tags of their own")
            .once(fresh(visit.here))
            .with("do", "renumber");
        page.push(PagePart::Patch(
            "Cloths that share a tag".to_owned(),
            vec![
                PagePart::Words("Call them by their letters until then. The first of each keeps its tag.".to_owned()),
                PagePart::Links(links),
                PagePart::Form(Box::new(form)),
            ],
        ));
    }
    let desk = visit.log.desk()?;
    let given: Vec<u16> = visit.log.fabrics()?.iter().map(|fabric| fabric.tag.number()).collect();
    let next = tag::next(&*visit.log, &given)?.map(|next| next.to_string());
    let range = desk.tags.as_ref().map(TagRange::to_string);
    let field = FormField::text("tags", "Tags that are given here")
        .hint("The first and the last, such as 100-199, or all")
        .value(range.clone().unwrap_or_else(|| "all".to_owned()))
        .of(&[Field::Tags]);
    let form = Form::new("here", "/tags", "Use these tags").with("do", "here").quiet().ask(field);
    let form = if wrong.is_some() { again(form, visit) } else { form };
    page.push(PagePart::Patch(
        "Here".to_owned(),
        vec![PagePart::told(&words::here(range.as_deref(), next.as_deref())), PagePart::Form(Box::new(form))],
    ));
    let people = visit.log.people()?;
    let held = visit.log.held_tags()?;
    let mut others = Vec::new();
    for held in held.iter().filter(|held| Some(held.holder) != desk.copy) {
        others.push(PagePart::told(&words::held(held, people.name(held.who))));
        let free = Form::new("free", "/tags", "It is gone: free its tags").once(fresh(visit.here)).quiet();
        let free = free.with("do", "free").with("tags", held.tags.to_string());
        others.push(PagePart::Fold(
            "It is lost or no longer used".to_owned(),
            false,
            vec![PagePart::Form(Box::new(free))],
        ));
    }
    if !others.is_empty() {
        page.push(PagePart::Patch(told("elsewhere"), others));
    }
    page.push(PagePart::Links(vec![Link::new("/more", "More")]));
    Ok(page.with_status(if wrong.is_some() { 422 } else { 200 }))
}
