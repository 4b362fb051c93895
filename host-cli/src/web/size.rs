//! Ease, openings, elastic, cords and zips, from body measures and measured stretch; nothing is stored.

use tenter_core::Grain;

use super::form::{FieldKind, Form, FormField, members, or_none};
use super::measure::cloths;
use super::part::{AnswerTag, PagePart, Row};
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit};
use crate::deed::{Refused, find, size as deed};
use crate::finding::fit::{Stock, known};
use crate::finding::size::SizedCloth;
use crate::input::size::{TypedSize, exact};
use crate::input::synonym::{EDGING, ELASTIC, GRAIN, KIND, ZIP_ENDS};
use crate::input::{self, Field, Wrong};
use crate::words::size as words;

/// The page.
pub fn size(visit: &mut Visit<'_>) -> Answered {
    let list = or_none("none of the list", cloths(&*visit.log)?);
    let form = Form::new("size", "/size", "Show")
        .asking()
        .ask(FormField::new("cloth", "The cloth that goes round", FieldKind::List(list)))
        .ask(FormField::text("stretch", "Or the stretch that it has").hint("25%").of(&[Field::Stretch]))
        .ask(FormField::text("girth", "A girth: of the body / of the garment").hint("104cm/101cm").of(&[Field::Girth]))
        .ask(
            FormField::text("opening", "An opening: what it must pass / how wide it is")
                .hint("57cm/48cm")
                .of(&[Field::Opening]),
        )
        .ask(FormField::new("kind", "The garment", FieldKind::List(or_none("any", members(&KIND)))))
        .fold("Elastic, cord, zip, and more", more())
        .ask(FormField::new("why", "With the reasons and their sources", FieldKind::Tick))
        .filled_if(&visit.query);
    let mut page = Shell::new(Place::More, "Sizes");
    page.push(PagePart::Soft("Does it go round, does it pass over, how long is the elastic?".to_owned()));
    let found = if visit.query.has("girth") { sized(visit) } else { Ok(Vec::new()) };
    match found {
        Ok(parts) => {
            if !parts.is_empty() {
                page.push(PagePart::Patch(String::new(), parts));
            }
            page.push(PagePart::Form(Box::new(form)));
            Ok(page.page())
        }
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => {
            page.push(PagePart::Form(Box::new(form.refused(&refused))));
            Ok(page.with_status(422))
        }
    }
}

/// What fewer ask.
fn more() -> Vec<FormField> {
    let text = |name, label: &str, hint: &str| FormField::text(name, label).hint(hint);
    vec![
        FormField::new("grain", "The grain that goes round", FieldKind::List(members(&GRAIN)))
            .value(Grain::Crosswise.word()),
        text("reduce", "How much smaller than the body you want it", "25%").of(&[Field::Reduce]),
        FormField::new("elastic", "Elastic", FieldKind::List(or_none("none", members(&ELASTIC)))),
        FormField::new("place", "Where it goes", FieldKind::List(members(&EDGING))),
        text("measure", "What it goes round", "76cm").of(&[Field::Measure, Field::Elastic]),
        text("widest", "What the closed elastic must pass", "100cm, as the hips").of(&[Field::Widest]),
        text("gives", "How far the elastic stretches", "80%, or 20cm to 36cm").of(&[Field::Gives]),
        text("elastic_width", "Width of the elastic, for its casing", "25mm").of(&[Field::ElasticWidth]),
        FormField::new("stitched", "It is stitched through, not drawn in", FieldKind::Tick),
        text("zip", "An edge for a zip", "18cm").of(&[Field::Zip]),
        text("zip_neck", "What neck or waist take of that edge", "15mm").of(&[Field::ZipNeck]),
        text("zip_hem", "What the hem takes of it", "4cm").of(&[Field::ZipHem]),
        FormField::new("ends", "The zip's lower end", FieldKind::List(or_none("as usual", members(&ZIP_ENDS)))),
        text("cord", "An edge that a cord draws in, laid open", "110cm").of(&[Field::Cord]),
        text("cord_width", "Width of the cord", "5mm").of(&[Field::CordWidth]),
        FormField::new("cord_tied", "The cord is tied, without stops", FieldKind::Tick),
        FormField::new("child", "It is for a child", FieldKind::Tick),
    ]
}

fn sized(visit: &Visit<'_>) -> Result<Vec<PagePart>, Refused> {
    let cloth_of = match cloth_round(visit)? {
        Ok(cloth) => cloth,
        Err(said) => return Ok(vec![PagePart::Words(said)]),
    };
    let typed = typed(visit);
    if typed.cord.is_some() != typed.cord_width.is_some() {
        return Ok(vec![PagePart::Words("Type both for a cord: the edge and its width.".to_owned())]);
    }
    let sized = deed::size(&typed, cloth_of.as_ref(), visit.rules().confidence).map_err(unnamed)?;
    if sized.lines.is_empty() {
        return Ok(vec![PagePart::Words("Type a girth, an opening, a zip, a cord or an elastic.".to_owned())]);
    }
    let why = visit.query.get("why") == "yes";
    let mut parts: Vec<PagePart> =
        sized.answer.map(|answer| PagePart::Answer(AnswerTag::of(answer, ""))).into_iter().collect();
    parts.push(PagePart::Rows(Row::spoken(&words::spoken(&sized, why), why)));
    Ok(parts)
}

/// A girth and an opening as the command line names them: on the page each has a field.
const NAMES: [&str; 2] = ["girth=", "opening="];

fn typed(visit: &Visit<'_>) -> TypedSize {
    let query = &visit.query;
    let text = |name: &str| query.typed(name);
    let [girth, opening] = NAMES.map(|name| {
        let typed = query.typed(name.trim_end_matches('='));
        typed.map(|text| if text.contains('=') { text } else { format!("{name}{text}") })
    });
    let is = |name: &str| query.get(name) == "yes";
    let typed = TypedSize {
        girth: girth.into_iter().collect(),
        opening: opening.into_iter().collect(),
        reduce: text("reduce"),
        // The place is always chosen on the list; without a measure there is none to cut.
        elastic: text("measure").and_then(|_| ELASTIC.typed(query.get("elastic"))),
        place: EDGING.typed(query.get("place")),
        measure: text("measure"),
        widest: text("widest"),
        gives: text("gives"),
        elastic_width: text("elastic_width"),
        stitched: is("stitched"),
        zip: text("zip"),
        zip_neck: text("zip_neck"),
        zip_hem: text("zip_hem"),
        zip_ends: ZIP_ENDS.typed(query.get("ends")),
        cord: text("cord"),
        cord_width: text("cord_width"),
        cord_tied: is("cord_tied"),
        child: is("child"),
        kind: KIND.typed(query.get("kind")),
        shown: None,
    };
    let said =
        [&typed.measure, &typed.zip, &typed.cord].into_iter().flatten().chain(&typed.girth).chain(&typed.opening);
    let has_unit = said.into_iter().any(|text| input::unit_of(text.rsplit('/').next().unwrap_or(text)).is_some());
    TypedSize { shown: (!has_unit).then_some(visit.unit), ..typed }
}

/// What is wrong with a field, without the name that was put before it.
fn unnamed(wrong: Wrong) -> Wrong {
    let text = NAMES.iter().find_map(|name| wrong.text.strip_prefix(name)).unwrap_or(&wrong.text).to_owned();
    Wrong { text, ..wrong }
}

/// The cloth that goes round the body, or why it tells nothing.
fn cloth_round(visit: &Visit<'_>) -> Result<Result<Option<SizedCloth>, String>, Refused> {
    let query = &visit.query;
    if let Some(text) = query.typed("stretch") {
        return Ok(Ok(Some(SizedCloth::of_stretch(exact(Field::Stretch, &text)?))));
    }
    let Some(text) = query.typed("cloth") else { return Ok(Ok(None)) };
    let (stock, fabric) = (Stock::read(&*visit.log)?, find::live_fabric(&*visit.log, &text)?);
    let grain = GRAIN.typed(query.get("grain")).unwrap_or(Grain::Crosswise);
    Ok(match known::stretch(&fabric, grain, &stock) {
        Ok(stretch) => Ok(Some(SizedCloth::of_cloth(&known::cloth(&fabric, &stock), grain, stretch))),
        Err(_) => Err(format!("Cloth {} was not pulled {} yet. Measure it first.", fabric.tag, grain.word())),
    })
}
