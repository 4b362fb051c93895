//! A whole test on one form, for readings that are on paper.

use tenter_core::Held;

use super::Measuring;
use super::begin::{Begun, fields, rest};
use crate::deed::Refused;
use crate::guide::begin::begun;
use crate::guide::{Draft, NextQuestion, Pull};
use crate::input::synonym::HELD;
use crate::input::{Field, TypedPull, TypedReading, Why, Wrong, check};
use crate::log::json::Mm;
use crate::web::fields::{Fields, ONCE, fresh};
use crate::web::form::{FieldKind, Form, FormField, members};
use crate::web::part::{Link, PagePart};
use crate::web::shell::{Place, Shell};
use crate::web::visit::{Answered, Visit};
use crate::web::{Method, Response};
use crate::words::terms::duration;

fn form(visit: &Visit<'_>) -> Result<Form, Refused> {
    let form = fields(visit, Form::new("readings", "/measure/form", "Show the answer").once(fresh(visit.here)))?;
    let folded = FormField::new("held", "You hold it", FieldKind::Pick(members(&HELD)))
        .of(&[Field::Held])
        .value(Held::Folded.word());
    let form = form
        .ask(folded)
        .ask(FormField::new("settling", "You pulled it once before, which does not count", FieldKind::Tick))
        .ask(FormField::new("marks", "Between the marks", FieldKind::Figures).hint("25cm, 10in").of(&[Field::Marks]))
        .ask(FormField::new("again", "Between the marks, read again", FieldKind::Figures).hint("If you did"))
        .ask(
            FormField::new("pulls", "Pulled to", FieldKind::Lines)
                .hint("Each pull, with a blank between: 26.9 27 26.9")
                .of(&[Field::To, Field::Readings]),
        )
        .ask(FormField::new("back", "After release", FieldKind::Figures).hint("If you read it").of(&[Field::Back]))
        .ask(FormField::text("after", "How long after").hint("60s, 30min").value("30min"))
        .ask(FormField::text("at", "The day you pulled it").hint("Empty for today").of(&[Field::Pulled]));
    rest(visit, form)
}

/// The test that was typed, with its readings.
fn readings(sent: &Fields, mut typed: TypedPull) -> TypedPull {
    let test = &mut typed.check.test;
    // One that is missing is asked for.
    test.marks = Some(sent.get("marks").to_owned());
    test.settling = sent.get("settling") == "yes";
    test.held = HELD.typed(sent.get("held")).unwrap_or(Held::Folded);
    test.readings.extend(sent.typed("again").map(TypedReading::Marks));
    // A fraction has a blank of its own: it needs a comma or a line.
    let text = sent.get("pulls");
    let pulls: Vec<&str> = match text.contains(['\n', ';', '/']) {
        true => text.split(['\n', ';']).collect(),
        false => text.split_whitespace().collect(),
    };
    test.readings.extend(
        pulls
            .iter()
            .map(|pull| pull.trim())
            .filter(|pull| !pull.is_empty())
            .map(|pull| TypedReading::To(pull.to_owned())),
    );
    test.readings
        .extend(sent.typed("back").map(|back| TypedReading::Back(format!("{back}@{}", sent.get("after").trim()))));
    typed
}

/// The same as a draft that is done.
fn draft(visit: &Visit<'_>, begun_with: &Begun) -> Result<Draft, Refused> {
    let id = visit.sent.once(visit.here);
    let mut draft = begun(&begun_with.typed, id, visit.here)?;
    let typed = readings(&visit.sent, begun_with.typed.clone());
    if typed.check.test.marks.as_deref().is_none_or(|marks| marks.trim().is_empty()) {
        return Err(Wrong::new(Field::Marks, "", Why::Missing).into());
    }
    let input = check(&typed.check)?;
    let test = &input.test;
    draft.settled = test.settled();
    draft.held = test.held();
    draft.gauge = Some(Mm(test.gauge()));
    draft.again = test.looks().nth(1).map(|look| Mm(look.length));
    draft.pulls = test.pulls().iter().map(|pull| Pull { extended: Mm(*pull), rest: None }).collect();
    draft.division = Some(Mm(test.scale().division()));
    if let (Some(rest), Some(last)) = (test.rests().last(), draft.pulls.last_mut()) {
        last.rest = Some((rest.seconds, Mm(rest.recovered)));
    }
    draft.stage = NextQuestion::Done;
    Ok(draft)
}

/// Shows the form, or takes it.
pub fn at_once(visit: &mut Visit<'_>) -> Answered {
    if visit.request.method == Method::Get {
        let mut form = form(visit)?;
        let from = visit.query.get("from").to_owned();
        if let Some(measuring) = Measuring::kept(visit, &from)? {
            form = typed_before(form, &measuring);
        } else if let Some(cloth) = visit.query.typed("cloth") {
            form.all().filter(|input| input.name == "cloth").for_each(|input| input.value.clone_from(&cloth));
        }
        return page(form, 200);
    }
    let done = Begun::of(visit, &visit.sent).and_then(|begun| Ok((draft(visit, &begun)?, begun)));
    match done {
        Ok((draft, begun)) => {
            if visit.log.test(draft.id)?.is_some() {
                return super::step::gone(visit, &draft.id.to_string());
            }
            let mut measuring = Measuring::new(draft, begun.construction);
            measuring.cloth = begun.fabric.map(|fabric| fabric.id);
            (measuring.role, measuring.at_once) = (begun.role, true);
            measuring.keep(visit)?;
            Ok(Response::see(&measuring.address()))
        }
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => {
            let once = visit.sent.once(visit.here);
            let mut form = form(visit)?.filled(&visit.sent).refused(&refused);
            form.hidden.retain(|(name, _)| name != ONCE);
            page(form.once(once), 422)
        }
    }
}

/// The fields as they were typed, from what was kept of them.
fn typed_before(form: Form, measuring: &Measuring) -> Form {
    let draft = &measuring.draft;
    let shown = |length: &Mm| length.0.show(draft.unit).to_string();
    let rest = draft.pulls.iter().rev().find_map(|pull| pull.rest);
    let separator = if draft.unit == tenter_core::Unit::Inch { "; " } else { " " };
    let pull = |pull: &Pull| shown(&pull.extended).replace(' ', if separator == " " { "" } else { " " });
    let [wants, growth, recovery] = draft.wants.clone();
    let values = [
        ("cloth", measuring.cloth.map(|id| id.to_string())),
        ("construction", Some(measuring.construction.word().to_owned())),
        ("grain", Some(draft.grain.word().to_owned())),
        ("for", measuring.role.map(|id| id.to_string())),
        ("wants", wants),
        ("growth", growth),
        ("recovery", recovery),
        ("held", Some(draft.held.word().to_owned())),
        ("settling", draft.settled.then(|| "yes".to_owned())),
        ("marks", draft.gauge.as_ref().map(shown)),
        ("again", draft.again.as_ref().map(shown)),
        ("pulls", Some(draft.pulls.iter().map(pull).collect::<Vec<_>>().join(separator))),
        ("back", rest.as_ref().map(|(_, length)| shown(length))),
        ("after", rest.map(|(seconds, _)| duration(seconds).replace(' ', ""))),
        ("note", Some(draft.note.clone())),
    ];
    let mut form = form;
    for input in form.all() {
        if let Some((_, Some(value))) = values.iter().find(|(name, _)| *name == input.name) {
            input.value.clone_from(value);
        }
    }
    form.hidden.retain(|(name, _)| name != ONCE);
    form.once(draft.id)
}

fn page(form: Form, status: u16) -> Answered {
    let mut page = Shell::new(Place::Measure, "All readings of a test");
    page.push(PagePart::Form(Box::new(form)));
    page.push(PagePart::Links(vec![Link::new("/measure", "Step by step instead")]));
    Ok(page.with_status(status))
}
