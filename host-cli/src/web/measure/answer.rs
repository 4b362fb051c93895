//! What a finished test says: doubts first, then the answer with its picture, then what would settle it.

use tenter_core::{Answer, Demand, PullTest, Range, Ratio};

use super::Measuring;
use super::begin::cloths;
use crate::deed::{self, Refused};
use crate::finding::check::Checked;
use crate::finding::drawn::GrainStretch as Drawn;
use crate::finding::fit::asked;
use crate::guide::begin::finished;
use crate::input::{CheckInput, ClothFacts, Doubted, Field, TypedAsked, TypedCheck, TypedPull};
use crate::picture::gauge::{self, Gauge};
use crate::store::WhichTests;
use crate::web::cloths::edit;
use crate::web::fields::fresh;
use crate::web::form::{FieldKind, Form, FormField, or_none};
use crate::web::part::{AnswerTag, Link, PagePart, Row};
use crate::web::shell::{Place, Shell};
use crate::web::visit::{Answered, Visit, cloth};
use crate::web::{Method, Response};
use crate::words::page::told;
use crate::words::terms::{duration, garment};
use crate::words::{answer, check as words, cloth as about, doubt, figures, pull, terms};

/// How many kinds of garment are named.
const GARMENTS: usize = 3;

/// The finished test with what is asked of it.
pub fn input(visit: &Visit<'_>, measuring: &Measuring) -> Result<CheckInput, Refused> {
    let asked = TypedAsked { unit: Some(measuring.draft.unit), ..TypedAsked::default() };
    let check = TypedCheck { test: measuring.draft.typed(), asked, scatter: None, construction: None, as_read: false };
    let mut input = finished(&TypedPull { check, at: None, by: None, note: None }, &measuring.draft)?;
    let fabric = measuring.fabric(visit)?;
    let construction = fabric.as_ref().map_or(measuring.construction, |fabric| fabric.construction);
    if let Some(role) = measuring.asking(visit)? {
        let demand = asked::demand(&role);
        // What a role does not ask of this grain it does not ask of this test.
        input.demand = if demand.stretch(input.test.grain()).is_empty() { Demand::default() } else { demand };
    }
    input.known = ClothFacts { construction: Some(construction), width: fabric.and_then(|fabric| fabric.width) };
    input.rules.construction = construction;
    input.rules.scatter = visit.log.repeatability()?.scatter_for(None, construction, &input.test);
    Ok(input)
}

/// The reasons not to believe the readings.
pub fn doubts(input: &CheckInput) -> Option<Doubted> {
    Doubted::of(&input.test, input.known, false, input.unit)
}

/// The stretch of each pull.
fn pulls(test: &PullTest) -> Vec<Ratio> {
    let gauge = i64::from(test.gauge().steps());
    test.pulls().iter().filter_map(|to| Ratio::new(i64::from(to.steps()).saturating_sub(gauge), gauge)).collect()
}

/// The answer of a test in parts.
fn parts(checked: &Checked, role: &str) -> Vec<PagePart> {
    let (input, evaluation) = (&checked.input, &checked.evaluation);
    let (confidence, grain) = (input.rules.confidence, input.test.grain());
    let mut parts = Vec::new();
    if evaluation.doubts.is_empty() {
        if let Some(answer) = evaluation.answer {
            let mut about = evaluation.deciding().map(words::part).unwrap_or_default();
            if !role.is_empty() {
                about = format!("for {role}; {about}");
            }
            parts.push(PagePart::Answer(AnswerTag::headline(answer, &about)));
        }
    } else {
        let line = |one: &tenter_core::Doubt| {
            let (line, remedy) = (doubt::line(one, &input.test, input.unit), doubt::remedy(one, input.unit));
            let remedy = told(&remedy);
            let remedy = remedy.trim_start_matches("type ").to_owned();
            format!(
                "{}. {}",
                told(&line),
                if remedy == "read again" { "Read it again.".to_owned() } else { String::new() }
            )
        };
        parts.push(PagePart::Answer(AnswerTag::headline(Answer::Close, "")));
        parts.push(PagePart::Notice(
            "These readings are doubtful.".to_owned(),
            evaluation.doubts.iter().map(line).collect(),
        ));
    }
    let asked: Range = input.demand.stretch(grain);
    let row = Drawn {
        grain,
        stretch: Some(evaluation.figures.stretch),
        asked,
        answer: evaluation.parts.iter().find(|part| part.ask == tenter_core::Ask::Stretch).map(|part| part.answer),
        pulls: pulls(&input.test),
    };
    let title = "this swatch";
    let picture = gauge::draw(&Gauge { title, rows: &[row], confidence, table: input.table, key: false });
    parts.push(PagePart::Patch(String::new(), vec![PagePart::Picture(picture.inline(), String::new())]));
    let next: Vec<Row> = checked.next.iter().map(|next| Row::new("next", &words::next(*next, input.unit))).collect();
    parts.push(PagePart::Rows(first_label(next)));
    parts.push(PagePart::Rows(rows(checked)));
    parts
}

/// The label on the first row alone, and no row without words.
fn first_label(rows: Vec<Row>) -> Vec<Row> {
    let mut rows: Vec<Row> = rows.into_iter().filter(|row| !row.words.is_empty()).collect();
    let labels: Vec<String> = rows.iter().map(|row| row.label.clone()).collect();
    for (row, before) in rows.iter_mut().skip(1).zip(&labels) {
        if row.label == *before {
            row.label.clear();
        }
    }
    rows
}

/// The figures, what the headline does not tell, what it suits, and how it was read.
fn rows(checked: &Checked) -> Vec<Row> {
    let (input, evaluation) = (&checked.input, &checked.evaluation);
    let confidence = input.rules.confidence;
    let figures = &evaluation.figures;
    let mut rows =
        vec![Row::new("stretch", &format!("{}, {}", terms::figure(&figures.stretch, confidence), checked.class()))];
    let rebound = tenter_core::Rebound::of(figures, confidence);
    if let Some(rest) = figures.rest {
        let growth = figures::growth(&rest, rebound);
        rows.push(Row::new("growth", &format!("{}, {growth}", terms::figure(&rest.growth, confidence))));
        if let Some(recovery) = rest.recovery {
            let notes: Vec<tenter_core::Note> = evaluation.notes.iter().copied().collect();
            let said = figures::recovery(rebound, &notes);
            rows.push(Row::new("recovery", &format!("{} {said}", terms::figure(&recovery, confidence))));
        }
    }
    for (seconds, forecast) in &checked.forecasts {
        let (growth, half) =
            (tenter_core::Decimal::round(forecast.percent, 1), tenter_core::Decimal::round(forecast.half_width, 1));
        let said = figures::forecast(forecast, &duration(*seconds));
        rows.push(Row::new("growth", &format!("{growth} % ± {half}, {said}")));
    }
    for part in checked.other_parts() {
        rows.push(Row::new(answer::word(part.answer), &words::part(part)));
    }
    if evaluation.doubts.is_empty()
        && let Some(ruled_out) = figures::ruled_out(figures, confidence)
    {
        rows.push(Row::new("suits", &ruled_out));
    }
    for suit in checked.suits.iter().take(GARMENTS) {
        rows.push(Row { small: format!("[{}]", suit.source), ..Row::new("suits", &garment(suit)) });
    }
    let made = input.rules.construction;
    for note in evaluation.notes.iter().filter_map(|note| words::note(*note, evaluation.answer, made)) {
        rows.push(Row::new("note", note));
    }
    rows.push(Row::new("how", &words::how(input)));
    first_label(rows)
}

/// Where a test is kept, as a form.
fn keeping(visit: &Visit<'_>, measuring: &Measuring, doubtful: bool) -> Result<Vec<Form>, Refused> {
    let to = format!("{}/store", measuring.address());
    let once = fresh(visit.here);
    let stand_by = |form: Form| {
        if doubtful {
            form.ask(FormField::new("as_read", "I read it again, and it is so", FieldKind::Tick))
        } else {
            form
        }
    };
    if let Some(fabric) = measuring.fabric(visit)? {
        let form = Form::new("keep", &to, &format!("Store with {}", about::title(&fabric)));
        return Ok(vec![stand_by(form.once(once).with("cloth", fabric.id.to_string()))]);
    }
    let new = Form::new("new", &to, "Store with this new cloth").once(once).with("as", "new");
    let new = new
        .ask(FormField::text("name", "Name").hint("By which you will know it").of(&[Field::Name]))
        .ask(
            FormField::text("seen", "Seen in a shop")
                .hint("Which one. Empty for a cloth that is yours")
                .of(&[Field::Seen]),
        )
        .ask(FormField::text("price", "Price there").hint("12.50/m").of(&[Field::Price]))
        .fold(
            "What else you know of it",
            vec![
                FormField::text("length", "Length on hand").hint("With its unit: 2.4m").of(&[Field::Length]),
                FormField::text("width", "Width").hint("150cm").of(&[Field::Width]),
                FormField::text("fibre", "Made of").of(&[Field::Fibre]),
                FormField::text("colour", "Colour").of(&[Field::Colour]),
                FormField::text("mass", "Mass").hint("180 g/m2").of(&[Field::Mass]),
            ],
        );
    let mut forms = vec![stand_by(new)];
    let cloths = cloths(&*visit.log)?;
    if !cloths.is_empty() {
        let known =
            Form::new("known", &to, "Store with this cloth").once(fresh(visit.here)).with("as", "known").quiet();
        let known =
            known.ask(FormField::new("cloth", "A cloth of the list", FieldKind::List(or_none("Choose one", cloths))));
        forms.push(stand_by(known));
    }
    let loose = Form::new("loose", &to, "Store without a cloth").once(fresh(visit.here)).with("as", "loose").quiet();
    forms.push(stand_by(loose));
    Ok(forms)
}

/// The page of a finished test; `form` is one of its forms as it was sent, with what is wrong.
pub fn show(visit: &Visit<'_>, measuring: &Measuring, form: Option<Form>) -> Answered {
    let status = if form.is_some() { 422 } else { 200 };
    let input = input(visit, measuring)?;
    let doubtful = doubts(&input).is_some();
    let checked = Checked::of(input)
        .map_err(|error| Refused::from(crate::input::Wrong::new(Field::To, "", crate::input::Why::Reading(error))))?;
    let fabric = measuring.fabric(visit)?;
    let title = fabric.as_ref().map_or_else(|| "The answer".to_owned(), |fabric| fabric.name.clone());
    let mut page = Shell::new(Place::Measure, &title);
    if let Some(fabric) = &fabric {
        page.tag(fabric.tag);
    }
    let role = measuring.asking(visit)?.map(|role| role.name).unwrap_or_default();
    for part in parts(&checked, &role) {
        page.push(part);
    }
    let sent = form.as_ref().map(|form| form.id);
    let mut forms = keeping(visit, measuring, doubtful)?.into_iter();
    let mut form = form;
    let mut pick = |own: Form| if Some(own.id) == sent { form.take().unwrap_or(own) } else { own };
    page.push(PagePart::Head("Keep it".to_owned()));
    if let Some(first) = forms.next() {
        page.push(PagePart::Form(Box::new(pick(first))));
    }
    let others: Vec<Form> = forms.map(&mut pick).collect();
    if !others.is_empty() {
        let open = others.iter().any(|form| Some(form.id) == sent);
        let others = others.into_iter().map(|form| PagePart::Form(Box::new(form))).collect();
        page.push(PagePart::Fold("With a cloth of the list, or without one".to_owned(), open, others));
    }
    let back = if measuring.at_once {
        PagePart::Links(vec![Link::new(format!("/measure/form?from={}", measuring.draft.id), "Change what was typed")])
    } else {
        let again = Form::new("back", measuring.address(), "← Back to the last step").quiet();
        let again = again.with("step", measuring.steps.to_string()).with("do", "back");
        PagePart::Form(Box::new(again))
    };
    page.push(back);
    let forget = Form::new("forget", measuring.address(), "Throw it away").with("do", "forget").quiet();
    page.push(PagePart::Fold("It was only a try".to_owned(), false, vec![PagePart::Form(Box::new(forget))]));
    Ok(page.with_status(status))
}

/// Tests that belong to no cloth yet, each with a form that gives it one.
pub fn inbox(visit: &mut Visit<'_>) -> Answered {
    if visit.request.method == Method::Post {
        let (test, to) = (visit.sent.get("test").to_owned(), visit.sent.get("cloth").to_owned());
        let (_, moved) = visit.once(|read| deed::handheld::assign(read, &test, &to))?;
        return Ok(Response::see(&moved.map_or_else(|| "/inbox".to_owned(), |moved| cloth(moved.fabric.id))));
    }
    let mut page = Shell::new(Place::Measure, "Tests without a cloth");
    let tests = visit.log.tests(WhichTests::Inbox)?;
    if tests.is_empty() {
        page.words("Every test has its cloth.");
    }
    let cloths = cloths(&*visit.log)?;
    for (number, test) in (1..).zip(tests.iter().filter(|test| !test.dropped)) {
        let form = Form::new("give", "/inbox", "Give it this cloth").numbered(number);
        let form = form.once(fresh(visit.here)).with("test", test.id.to_string());
        let form = form.ask(FormField::new("cloth", "Its cloth", FieldKind::List(cloths.clone())));
        let said = told(&pull::line_about(test, visit.here));
        page.push(PagePart::Patch(said, vec![PagePart::Form(Box::new(form))]));
    }
    page.push(PagePart::Links(vec![Link::new("/measure", "Measure another"), Link::new("/cloths/new", "Add a cloth")]));
    Ok(page.page())
}

/// A form as it was sent, with what is wrong.
pub fn sent_again(
    visit: &Visit<'_>,
    measuring: &Measuring,
    id: &str,
    refused: &Refused,
) -> Result<Option<Form>, Refused> {
    let form = keeping(visit, measuring, true)?.into_iter().find(|form| form.id == id);
    Ok(form.map(|form| edit::again(form, visit).refused(refused)))
}
