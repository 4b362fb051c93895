//! The people who pull: how well each repeats, what each is called, and how far their pulls of one cloth lie apart.

use super::fields::fresh;
use super::form::{FieldKind, Form, FormField};
use super::measure::cloths;
use super::part::{Link, PagePart, Row};
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit};
use super::{Method, Response, printed};
use crate::deed::{Refused, find, people as deed};
use crate::finding::class::ClassPulls;
use crate::finding::people::pullers;
use crate::input::Field;
use crate::log::{Desk, Subject};
use crate::page::{class as class_page, made::today};
use crate::store::WhichTests;
use crate::web::cloths::edit::again;
use crate::words::class as class_words;
use crate::words::page::told;
use crate::words::people as words;
use crate::words::quantity::counted;

/// Everybody, with what can be done.
pub fn list(visit: &mut Visit<'_>) -> Answered {
    if visit.request.method == Method::Get {
        return page(visit, None);
    }
    let (what, who, name) =
        (visit.sent.get("do").to_owned(), visit.sent.get("who").to_owned(), visit.sent.get("name").to_owned());
    let done = match what.as_str() {
        "rename" => visit.once(|read| Ok((deed::rename(read, &who, &name)?.0, ()))).map(drop),
        "merge" => visit.once(|read| Ok((deed::merge(read, &who, Some(&name))?.0, ()))).map(drop),
        "forget" => deed::person(&visit.log.people()?, &who)
            .and_then(|person| Ok(visit.log.forget_names(Subject::Person(person.id))?)),
        "nobody" => here(visit, None),
        _ => here(visit, Some(&name)),
    };
    match done {
        Ok(()) => Ok(Response::see("/people")),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => page(visit, Some((&what, refused))),
    }
}

/// Who pulls at this desk where nobody says.
fn here(visit: &mut Visit<'_>, name: Option<&str>) -> Result<(), Refused> {
    let id = match name {
        None => None,
        Some(name) => {
            let name = name.to_owned();
            let (_, who) = visit.once(|read| {
                let mut who = deed::puller(read, Some(&name))?;
                Ok((core::mem::take(&mut who.facts), who.id))
            })?;
            // Sent twice: the desk knows already.
            let Some(id) = who else { return Ok(()) };
            id
        }
    };
    let desk = Desk { who: id, ..visit.log.desk()? };
    Ok(visit.log.set_desk(&desk)?)
}

fn page(visit: &Visit<'_>, wrong: Option<(&str, Refused)>) -> Answered {
    let mut page = Shell::new(Place::More, "People");
    page.push(PagePart::Soft(
        "Each person pulls in their own way, so the ± of a test comes from the pulls of whoever made it.".to_owned(),
    ));
    let all = pullers(&*visit.log)?;
    let status = if wrong.is_some() { 422 } else { 200 };
    let put = |form: Form| match &wrong {
        Some((id, refused)) if *id == form.id => PagePart::Form(Box::new(again(form, visit).refused(refused))),
        _ => PagePart::Form(Box::new(form)),
    };
    let form = |id: &'static str, button: &str| {
        Form::new(id, "/people", button).once(fresh(visit.here)).with("do", id).quiet()
    };
    for (number, puller) in (1..).zip(&all) {
        let form = |id, button: &str| form(id, button).numbered(number);
        let rows = vec![
            Row::new("tests", &counted(puller.tests, "test")),
            Row::new("repeats", &words::repeats(puller.repeatability)),
        ];
        let mut parts = vec![PagePart::Rows(rows)];
        parts.extend(puller.here.then(|| PagePart::Soft("Pulls here, unless a test names somebody else.".to_owned())));
        if let Some(person) = puller.person.as_ref().filter(|person| !person.name.is_empty()) {
            let who = person.id.to_string();
            let name = |label: &str| FormField::text("name", label).of(&[Field::Person, Field::NewName]);
            let rename = form("rename", "Rename").with("who", &who).ask(name("Called from now on"));
            let merge = form("merge", "They are one person").with("who", &who).ask(name("Is the same person as"));
            let forget = form("forget", "Forget this name for good").with("who", &who);
            parts.push(PagePart::Fold("Rename, merge, forget".to_owned(), false, vec![
                PagePart::Form(Box::new(rename)),
                PagePart::Form(Box::new(merge)),
                PagePart::Soft("The tests stay together as those of one person without a name. Copies of the log keep the name.".to_owned()),
                PagePart::Form(Box::new(forget)),
            ]));
        }
        page.push(PagePart::Patch(words::called(puller), parts));
    }
    if let Some((_, refused)) = &wrong {
        let lines = crate::words::errors::page::refused(refused).1;
        page.push(PagePart::Notice("That was not done.".to_owned(), lines));
    }
    let name = FormField::text("name", "Who pulls here")
        .hint("Where no other name is typed with a test")
        .of(&[Field::PulledBy, Field::Person]);
    page.push(PagePart::Patch(
        "At this desk".to_owned(),
        vec![put(form("here", "Remember it").ask(name)), put(form("nobody", "Assume nobody"))],
    ));
    page.push(PagePart::Links(vec![
        Link::new("/people/compare", "Several people's pulls of one cloth").about("For a class"),
        Link::new("/more", "More"),
    ]));
    Ok(page.with_status(status))
}

/// Several people's pulls of one cloth.
pub fn compare(visit: &mut Visit<'_>) -> Answered {
    let form = Form::new("compare", "/people/compare", "Compare")
        .asking()
        .ask(
            FormField::new("cloth", "The cloth that all pulled", FieldKind::List(cloths(&*visit.log)?))
                .of(&[Field::Tag]),
        )
        .ask(FormField::new("letters", "Letters instead of names", FieldKind::Tick))
        .filled_if(&visit.query);
    let mut page = Shell::new(Place::More, "One cloth, several people");
    if let Some(text) = visit.query.typed("cloth") {
        let fabric = find::live_fabric(&*visit.log, &text)?;
        let tests = visit.log.tests(WhichTests::Of(fabric.id))?;
        match ClassPulls::of(&fabric, &tests, &visit.log.people()?, None) {
            None => page.push(PagePart::Words(
                "Two people must have pulled it, and one of them twice, before they can be compared.".to_owned(),
            )),
            Some(class) => {
                let letters = visit.query.get("letters") == "yes";
                let class = if letters { class.without_names() } else { class };
                if visit.query.get("print") == "yes" {
                    return Ok(printed::response(class_page::page(&class, &today(visit.here))));
                }
                let rows = class.hands.iter().map(|hand| Row {
                    label: class_words::called(hand),
                    ..Row::new("", &class_words::mean(hand.mean, hand.half))
                });
                let parts = vec![
                    PagePart::told(&class_words::lead(&class)),
                    PagePart::told(&class_words::spread(&class)),
                    PagePart::Wide("Pulls of each person".to_owned(), crate::picture::class::draw(&class).inline()),
                    PagePart::Rows(rows.collect()),
                    PagePart::Soft(class_words::TRUST.to_owned()),
                    PagePart::Soft(class_words::SOURCE.to_owned()),
                ];
                page.push(PagePart::Patch(words_of(&fabric.name), parts));
                let letters = if letters { "&letters=yes" } else { "" };
                let print = format!("/people/compare?cloth={}{letters}&print=yes", fabric.id);
                page.push(PagePart::Links(vec![Link::new(print, "As a page to print")]));
            }
        }
    }
    page.push(PagePart::Form(Box::new(form)));
    page.push(PagePart::Links(vec![Link::new("/people", "All people")]));
    Ok(page.page())
}

fn words_of(name: &str) -> String {
    told(&crate::plain::isolated(name))
}
