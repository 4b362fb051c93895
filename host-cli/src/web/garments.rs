//! Garments being made: begun, their cloths chosen and cut, finished, worn; and their plan.

use super::cloths::deeds::{learned_in, lessons};
use super::cloths::edit::again;
use super::fields::{Fields, fresh};
use super::form::{FieldKind, Form, FormField, or_none};
use super::part::{Cell, Link, PagePart, Row};
use super::patterns::pattern;
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit, cloth};
use super::{Method, Response, choices, printed};
use crate::deed::{Refused, find, make as deed, plan};
use crate::finding::make::{MadeGarment, Workroom, classes};
use crate::finding::plan::kind::kind;
use crate::input::Field;
use crate::input::garment::TypedGarment;
use crate::input::plan::TypedPlan;
use crate::input::synonym::STAGE;
use crate::log::{Choices, Fact, Garment, GarmentState, Id, Pattern, Role, Subject};
use crate::page::made;
use crate::store::Read;
use crate::words::cloth::title;
use crate::words::make as words;
use crate::words::page::told;
use crate::words::plan::work::stage as stage_name;
use crate::words::quantity;
use tenter_core::making::garment::Stage;

/// The address of a garment.
fn address(id: Id) -> String {
    format!("/garments/{}", id.to_string().to_lowercase())
}

/// The garment of an address, as it is now.
fn making(visit: &Visit<'_>, id: &str) -> Result<MadeGarment, Refused> {
    let none = || Refused::NoGarment(id.to_owned());
    let id: Id = id.to_uppercase().parse().map_err(|_| none())?;
    let room = Workroom::read(&*visit.log, visit.here)?;
    room.garments.iter().find(|garment| garment.id == id).map(|garment| room.making(garment)).ok_or_else(none)
}

/// All garments, the open ones first.
pub fn list(visit: &mut Visit<'_>) -> Answered {
    let room = Workroom::read(&*visit.log, visit.here)?;
    let mut page = Shell::new(Place::Garments, "Garments");
    let all = room.list(|_| true);
    let row = |making: &MadeGarment| {
        let garment = &making.garment;
        vec![
            Cell::link(address(garment.id), format!("{} {}", garment.number, crate::plain::isolated(&garment.name))),
            Cell::new(crate::plain::isolated(&garment.whom)),
            Cell::new(words::due(making)),
            Cell::new(format!("{} of {}", making.cut(), making.uses.len())),
        ]
    };
    let heads = vec!["garment", "for", "wanted", "cut"];
    let (open, others): (Vec<_>, Vec<_>) = all.iter().partition(|making| making.state == GarmentState::Open);
    if open.is_empty() {
        page.words("No garment is being made. Choose a pattern, and begin one of its views.");
    } else {
        page.push(PagePart::Table(
            "Garments being made".to_owned(),
            heads.clone(),
            open.iter().map(|one| row(one)).collect(),
        ));
    }
    page.push(PagePart::Links(vec![Link::new("/patterns", "Choose a pattern to make").first()]));
    if open.iter().any(|making| making.garment.pattern.is_some()) {
        let mut links =
            vec![Link::new("/print/sheets", "Sheets of all garments").about("Plans, cards and gauges in one print")];
        links.extend(classes(&all).iter().map(|class| {
            let query = form_urlencoded::Serializer::new(String::new()).append_pair("class", class).finish();
            Link::new(format!("/print/sheets?{query}"), &format!("Sheets of {}", crate::plain::isolated(class)))
        }));
        page.push(PagePart::Links(links));
    }
    if !others.is_empty() {
        let table = PagePart::Table("Others".to_owned(), heads, others.iter().map(|one| row(one)).collect());
        page.push(PagePart::Fold("Finished or retired".to_owned(), false, vec![table]));
    }
    Ok(page.page())
}

/// A choice of cloth for each role of a view; `uses` are those chosen before.
pub fn uses(
    read: &dyn Read,
    form: Form,
    pattern: &Pattern,
    view: &str,
    garment: Option<&Garment>,
) -> Result<Form, Refused> {
    let live = read.fabrics()?.into_iter().filter(|fabric| !fabric.dropped);
    let cloths: Vec<(String, String)> = live.map(|fabric| (fabric.id.to_string(), title(&fabric))).collect();
    let roles = pattern.view(view).take(ROLES.len()).zip(ROLES);
    Ok(roles.fold(form, |form, (role, name)| {
        let chosen = garment.and_then(|garment| garment.uses.iter().find(|one| one.role == role.id));
        let chosen = chosen.map(|one| one.fabric.to_string()).unwrap_or_default();
        let list =
            FormField::new(name, &role.name, FieldKind::List(or_none("not chosen yet", cloths.clone()))).value(&chosen);
        form.ask(list).with(&format!("had_{name}"), chosen)
    }))
}

/// What the choices of cloths are called, in the order of the roles.
const ROLES: [&str; 12] =
    ["use0", "use1", "use2", "use3", "use4", "use5", "use6", "use7", "use8", "use9", "use10", "use11"];

/// The cloths that were chosen, as `role=cloth`, where they changed.
pub fn chosen(sent: &Fields, pattern: &Pattern, view: &str) -> Vec<String> {
    let roles = pattern.view(view).zip(ROLES);
    let differs = |name: &str| sent.get(name) != sent.get(&format!("had_{name}"));
    let named = roles.filter(|(_, name)| differs(name) && !sent.get(name).is_empty());
    named.map(|(role, name)| format!("{}={}", role.name, sent.get(name))).collect()
}

/// What a garment of a view is and has.
fn choices_of(form: Form, (pattern, view): (&Pattern, &str), had: &Choices) -> Form {
    let roles: Vec<&Role> = pattern.view(view).collect();
    choices::asked(form, had, kind(had, &roles))
}

/// For whom and by when.
fn about(form: Form) -> Form {
    form.ask(
        FormField::text("name", "What you call it").hint("Empty for the name of its pattern").of(&[Field::NewName]),
    )
    .ask(FormField::text("whom", "For whom").of(&[Field::Whom]))
    .ask(FormField::text("class", "Class").hint("Sheets of a class are printed together").of(&[Field::Class]))
    .ask(FormField::new("by", "Wanted on", FieldKind::Day).of(&[Field::By]))
    .ask(FormField::text("note", "Note").of(&[Field::Note]))
}

/// Begins a garment of a view.
pub fn begin(visit: &mut Visit<'_>, id: &str) -> Answered {
    let pattern = pattern(visit, id)?;
    let view = find::view_or_only(&pattern, visit.query.typed("view").as_deref())?.to_owned();
    let to = super::patterns::of_view(pattern.id, "begin", &view);
    let form = about(Form::new("begin", &to, "Begin it").once(fresh(visit.here)));
    let form = uses(&*visit.log, form, &pattern, &view, None)?;
    let form = choices_of(form, (&pattern, &view), &Choices::default());
    let page = |form: Form, status| {
        let mut page = Shell::new(Place::Garments, &format!("Begin {}", super::patterns::title(&pattern, &view)));
        page.push(PagePart::Form(Box::new(form)));
        page.push(PagePart::Links(vec![Link::new(
            super::patterns::of_view(pattern.id, "fit", &view),
            "Which cloths suit it",
        )]));
        Ok(page.with_status(status))
    };
    if visit.request.method == Method::Get {
        return page(form, 200);
    }
    let typed = TypedGarment {
        name: visit.sent.typed("name"),
        whom: visit.sent.typed("whom"),
        class: visit.sent.typed("class"),
        by: visit.sent.typed("by"),
        note: visit.sent.typed("note"),
        uses: chosen(&visit.sent, &pattern, &view),
        choices: choices::sent(&visit.sent, &Choices::default()),
        ..TypedGarment::default()
    };
    let names = [pattern.id.to_string(), view.clone()];
    match visit.once(|read| deed::start(read, &names, &typed)) {
        Ok((Some(id), _)) => Ok(Response::see(&address(id))),
        Ok((None, _)) => Ok(Response::see("/garments")),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => page(again(form, visit).refused(&refused), 422),
    }
}

/// One garment, with what can be done now.
pub fn show(visit: &mut Visit<'_>, id: &str) -> Answered {
    let making = making(visit, id)?;
    page(visit, &making, None)
}

fn page(visit: &Visit<'_>, making: &MadeGarment, wrong: Option<(&'static str, Refused)>) -> Answered {
    let garment = &making.garment;
    let to = address(garment.id);
    let mut page = Shell::new(Place::Garments, &garment.name);
    let mut rows =
        vec![Row::new("number", &garment.number.to_string()), Row::new("pattern", &words::made_from(making))];
    let whose = words::whose(making);
    if !whose.is_empty() {
        rows.push(Row::new("wanted", &format!("{whose}, {}", words::due(making))));
    }
    rows.extend((!garment.note.is_empty()).then(|| Row { words: garment.note.clone(), ..Row::new("note", "") }));
    rows.extend(making.uses.iter().map(|used| Row::new("cloth", &words::used(used, making.state, visit.unit))));
    rows.extend(making.not_chosen.iter().map(|role| Row::new("open", &format!("no cloth is chosen for {role}"))));
    rows.extend(
        making.lessons.iter().map(|(cloth, lesson)| Row::new("learned", &words::taught(cloth, lesson, visit.here))),
    );
    rows.push(Row::new("begun", &quantity::day(garment.id.at(), visit.here)));
    rows.extend(garment.done.map(|done| Row::new("done", &quantity::day(done, visit.here))));
    page.push(PagePart::Rows(rows));
    let (status, wrong) = match wrong {
        Some(wrong) => (422, Some(wrong)),
        None => (200, None),
    };
    let put = |form: Form| match &wrong {
        Some((id, refused)) if *id == form.id => PagePart::Form(Box::new(again(form, visit).refused(refused))),
        _ => PagePart::Form(Box::new(form)),
    };
    let form = |id, button: &str| Form::new(id, format!("{to}/{id}"), button).once(fresh(visit.here));
    page.push(PagePart::Links(vec![
        Link::new(format!("{to}/plan"), "The plan, to print").about("From the wash to the last press").first(),
        Link::new(format!("{to}/plan?why=yes"), "The plan with its reasons").about("And where each line comes from"),
    ]));
    match making.state {
        GarmentState::Open => {
            let left = making.uses.iter().any(|used| used.cut.is_none());
            if left {
                page.push(put(form("cut", "I cut it").with("all", "yes")));
            }
            let roles: Vec<(String, String)> =
                making.uses.iter().map(|used| (used.role.clone(), used.role.clone())).collect();
            if !roles.is_empty() {
                let one = form("cut-one", "I cut this")
                    .quiet()
                    .ask(FormField::new("role", "Only for", FieldKind::List(roles.clone())))
                    .ask(
                        FormField::text("length", "How much")
                            .hint("Empty for what the pattern says")
                            .of(&[Field::Length]),
                    );
                let back = form("uncut", "It was not cut").quiet().ask(FormField::new(
                    "role",
                    "For",
                    FieldKind::List(or_none("all roles", roles)),
                ));
                let open = matches!(&wrong, Some(("cut-one" | "uncut", _)));
                page.push(PagePart::Fold(
                    "Cut one cloth, or take a cut back".to_owned(),
                    open,
                    vec![put(one), put(back)],
                ));
            }
            let stages =
                making.stages.iter().map(|(stage, _)| (stage.word().to_owned(), stage_name(*stage).to_owned()));
            let done: Vec<&str> = making.done_stages().into_iter().map(Stage::word).collect();
            let tick = form("tick", "Store the ticks").quiet().ask(
                FormField::new("stages", "What is done", FieldKind::Several(stages.collect())).value(done.join("\n")),
            );
            page.push(PagePart::Fold("Tick off the work".to_owned(), false, vec![put(tick)]));
            page.push(PagePart::Fold(
                "It is finished".to_owned(),
                matches!(&wrong, Some(("done", _))),
                vec![put(lessons(form("done", "It is finished")))],
            ));
            page.push(PagePart::Links(vec![Link::new(format!("{to}/edit"), "Choose cloths, or change the details")]));
        }
        GarmentState::Done => {
            let wore = form("wore", "Remember it")
                .ask(FormField::text("wore", "How it wears").hint("knees bagged after a day").of(&[Field::Wore]));
            page.push(put(wore));
            page.push(put(form("reopen", "It is not finished after all").quiet()));
        }
        GarmentState::Retired => page.push(put(form("return", "Take it up again"))),
    }
    if making.state != GarmentState::Retired {
        let retire = form("retire", "Retire it").quiet().ask(FormField::text("note", "Why").of(&[Field::Note]));
        let mut parts = vec![put(retire)];
        if !garment.whom.is_empty() {
            parts.push(PagePart::Soft(
                "The name is taken out of everything that was said of this garment, for good.".to_owned(),
            ));
            parts.push(put(form("forget", "Forget the name of the person").quiet()));
        }
        page.push(PagePart::Fold("Retire it".to_owned(), matches!(&wrong, Some(("retire", _))), parts));
    }
    let links = making.uses.iter().filter_map(|used| used.cloth.as_ref().map(|cloth| (cloth, &used.role)));
    let fabrics = visit.log.fabrics()?;
    let links: Vec<Link> = links
        .filter_map(|(named, role)| {
            let found = fabrics.iter().find(|fabric| fabric.tag == named.tag && fabric.name == named.name)?;
            Some(Link::new(cloth(found.id), &title(found)).about(role))
        })
        .collect();
    page.push(PagePart::Links(links));
    Ok(page.with_status(status))
}

/// Does something with a garment.
pub fn act(visit: &mut Visit<'_>, id: &str, what: &str) -> Answered {
    let making = making(visit, id)?;
    let (which, to) = (making.garment.id.to_string(), address(making.garment.id));
    if visit.request.method == Method::Get {
        return Ok(Response::see(&to));
    }
    let (role, length) = (visit.sent.typed("role"), visit.sent.typed("length"));
    let (note, learned) = (visit.sent.get("note").to_owned(), learned_in(visit));
    let (role, length) = (role.as_deref(), length.as_deref());
    let stages: Vec<Stage> = visit.sent.all("stages").filter_map(|word| STAGE.typed(word)).collect();
    let facts = |read: &dyn Read| -> Result<(Vec<Fact>, ()), Refused> {
        Ok((
            match what {
                "cut" | "cut-one" => deed::cut(read, &which, role, length)?.0,
                "tick" => deed::ticked(read, &which, &stages)?.0,
                "uncut" => deed::uncut(read, &which, role)?.0,
                "done" => deed::done(read, &which, None, &learned)?.0,
                "wore" => deed::wore(read, &which, None, &learned)?.0,
                "reopen" => deed::reopen(read, &which)?.0,
                "retire" => deed::retire(read, &which, &note)?.0,
                _ => deed::restore(read, &which)?.0,
            },
            (),
        ))
    };
    let done = match what {
        "forget" => visit.log.forget_names(Subject::Garment(making.garment.id)).map_err(Refused::from),
        _ => visit.once(facts).map(drop),
    };
    match done {
        Ok(()) => Ok(Response::see(&to)),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => {
            const FORMS: [&str; 9] = ["cut", "cut-one", "uncut", "tick", "done", "wore", "reopen", "retire", "return"];
            let id = FORMS.into_iter().find(|form| *form == what).unwrap_or("cut");
            page(visit, &making, Some((id, refused)))
        }
    }
}

/// Changes what is said of a garment, and its cloths.
pub fn edit(visit: &mut Visit<'_>, id: &str) -> Answered {
    let making = making(visit, id)?;
    let garment = &making.garment;
    let (which, to) = (garment.id.to_string(), address(garment.id));
    let pattern = deed::pattern_of(&*visit.log, garment)?;
    let mut form = about(Form::new("garment", format!("{to}/edit"), "Store the change").once(fresh(visit.here)));
    let had = [
        ("name", garment.name.clone()),
        ("whom", garment.whom.clone()),
        ("class", garment.class.clone()),
        ("by", garment.by.map(|by| by.to_string()).unwrap_or_default()),
        ("note", garment.note.clone()),
    ];
    for (name, value) in had {
        form = form.with(&format!("had_{name}"), &value);
        if let Some(input) = form.all().find(|input| input.name == name) {
            input.value = value;
        }
    }
    let form = uses(&*visit.log, form, &pattern, &garment.view, Some(garment))?;
    let form = choices_of(form, (&pattern, &garment.view), &garment.choices);
    let page = |form: Form, status| {
        let mut page = Shell::new(Place::Garments, &format!("Change {}", garment.name));
        page.push(PagePart::Form(Box::new(form)));
        page.push(PagePart::Links(vec![Link::new(&to, "Back to the garment")]));
        Ok(page.with_status(status))
    };
    if visit.request.method == Method::Get {
        return page(form, 200);
    }
    let sent = &visit.sent;
    let text = |name: &str| (sent.get(name) != sent.get(&format!("had_{name}"))).then(|| sent.get(name).to_owned());
    let by = text("by").map(|by| if by.trim().is_empty() { "unknown".to_owned() } else { by });
    let uses = chosen(sent, &pattern, &garment.view);
    let all_choices = Some(choices::sent(sent, &garment.choices));
    let typed = TypedGarment {
        name: text("name"),
        number: None,
        whom: text("whom"),
        class: text("class"),
        by,
        note: text("note"),
        uses,
        all_choices,
        ..TypedGarment::default()
    };
    match visit.once(|read| Ok((deed::edit(read, &which, &typed)?.0, ()))) {
        Ok(_) => Ok(Response::see(&to)),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => page(again(form, visit).refused(&refused), 422),
    }
}

/// The plan of a garment, as a page to print.
pub fn plan_of(visit: &mut Visit<'_>, id: &str) -> Answered {
    let making = making(visit, id)?;
    let rules = visit.rules();
    let plan = plan::of_garment(&*visit.log, &making.garment, &TypedPlan::default(), (rules.confidence, rules.unit))?;
    let head = told(&words::plan_head(&making));
    Ok(printed::response(made::plan(&*visit.log, &plan, rules, &head, visit.query.get("why") == "yes")?))
}
