//! Ease, openings, elastic and zips, from body measures and measured stretch; nothing is stored.

use tenter_core::making::garment::GarmentKind;
use tenter_core::making::zip::{ZipEdge, ZipEnds};
use tenter_core::{Grain, Length, Unit};

use super::form::{FieldKind, Form, FormField, members, or_none};
use super::measure::cloths;
use super::part::{AnswerTag, PagePart, Row};
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit};
use crate::deed::{Refused, find};
use crate::finding::fit::{Stock, known};
use crate::finding::size::{ElasticWanted, Sized, SizedCloth, ZipWanted};
use crate::input::synonym::{EDGING, ELASTIC, KIND, ZIP_ENDS};
use crate::input::{self, Field, Why, Wrong, amount::cloth, size as typed};
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
        .fold(
            "Elastic and zip",
            vec![
                FormField::new("elastic", "Elastic", FieldKind::List(or_none("none", members(&ELASTIC)))),
                FormField::new("place", "Where it goes", FieldKind::List(members(&EDGING))),
                FormField::text("measure", "What it goes round").hint("76cm").of(&[Field::Measure, Field::Elastic]),
                FormField::text("zip", "An edge for a zip").hint("18cm").of(&[Field::Zip]),
                FormField::new("ends", "At its lower end", FieldKind::List(or_none("as usual", members(&ZIP_ENDS)))),
            ],
        )
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

fn sized(visit: &Visit<'_>) -> Result<Vec<PagePart>, Refused> {
    let (query, confidence) = (&visit.query, visit.rules().confidence);
    let cloth_of = cloth_round(visit)?;
    let cloth_of = match cloth_of {
        Ok(cloth) => cloth,
        Err(said) => return Ok(vec![PagePart::Words(said)]),
    };
    let mut sized = Sized::default();
    let unit_of = |text: &str| input::unit_of(text.rsplit('/').next().unwrap_or(text)).unwrap_or(visit.unit);
    let mut unit = visit.unit;
    for (field, name, label, opening) in
        [(Field::Girth, "girth", "girth", false), (Field::Opening, "opening", "opening", true)]
    {
        let Some(text) = query.typed(name) else { continue };
        unit = unit_of(&text);
        let girth =
            typed::girth(field, &format!("{label}={text}")).map_err(|wrong| Wrong { text: text.clone(), ..wrong })?;
        let judged = sized.girth(girth, opening, cloth_of.as_ref(), confidence, unit);
        judged.map_err(|error| Wrong::new(field, &text, Why::Making(error)))?;
    }
    let kind = KIND.typed(query.get("kind"));
    if let Some(cloth) = &cloth_of {
        sized.opacity(cloth, unit);
        sized.smaller(cloth, kind, unit);
    }
    elastic(visit, &mut sized)?;
    zip(visit, cloth_of.as_ref(), kind, &mut sized)?;
    if sized.lines.is_empty() {
        return Ok(vec![PagePart::Words("Type a girth, an opening, a zip or an elastic.".to_owned())]);
    }
    let why = query.get("why") == "yes";
    let mut parts: Vec<PagePart> =
        sized.answer.map(|answer| PagePart::Answer(AnswerTag::of(answer, ""))).into_iter().collect();
    parts.push(PagePart::Rows(Row::spoken(&words::spoken(&sized, why), why)));
    Ok(parts)
}

/// The cloth that goes round the body, or why it tells nothing.
fn cloth_round(visit: &Visit<'_>) -> Result<Result<Option<SizedCloth>, String>, Refused> {
    let query = &visit.query;
    if let Some(text) = query.typed("stretch") {
        return Ok(Ok(Some(SizedCloth::of_stretch(typed::exact(Field::Stretch, &text)?))));
    }
    let Some(text) = query.typed("cloth") else { return Ok(Ok(None)) };
    let (stock, fabric) = (Stock::read(&*visit.log)?, find::live_fabric(&*visit.log, &text)?);
    let grain = Grain::Crosswise;
    Ok(match known::stretch(&fabric, grain, &stock) {
        Ok(stretch) => Ok(Some(SizedCloth::of_cloth(&known::cloth(&fabric, &stock), grain, stretch))),
        Err(_) => Err(format!("Cloth {} was not pulled across yet. Measure it first.", fabric.tag)),
    })
}

fn elastic(visit: &Visit<'_>, sized: &mut Sized) -> Result<(), Refused> {
    let query = &visit.query;
    let (Some(kind), Some(measure)) = (ELASTIC.typed(query.get("elastic")), query.typed("measure")) else {
        return Ok(());
    };
    let Some(place) = EDGING.typed(query.get("place")) else { return Ok(()) };
    let unit = input::unit_of(&measure).unwrap_or(visit.unit);
    let wanted = ElasticWanted { kind, place, measure: cloth(Field::Measure, &measure)?, must_pass: None };
    let judged = sized.elastic(&wanted, visit.rules().confidence, unit);
    let judged = judged.and_then(|()| sized.casing(kind, None, (false, false), unit));
    Ok(judged.map_err(|error| Wrong::new(Field::Measure, &measure, Why::Making(error)))?)
}

fn zip(
    visit: &Visit<'_>,
    cloth_of: Option<&SizedCloth>,
    kind: Option<GarmentKind>,
    sized: &mut Sized,
) -> Result<(), Refused> {
    let Some(text) = visit.query.typed("zip") else { return Ok(()) };
    let unit = input::unit_of(&text).unwrap_or(visit.unit);
    let edge = ZipEdge { cut: cloth(Field::Zip, &text)?, hem: Length::ZERO, neck: Length::ZERO };
    let ends = ZIP_ENDS.typed(visit.query.get("ends"));
    let wanted = ZipWanted {
        edge,
        ends: ends.unwrap_or_else(|| ZipEnds::usual(kind.map(GarmentKind::usual), edge.cut)),
        garment: kind,
        growth: cloth_of.and_then(|cloth| cloth.growth),
        by_inch: unit == Unit::Inch,
    };
    Ok(sized.zip(&wanted, unit).map_err(|error| Wrong::new(Field::Zip, &text, Why::Making(error)))?)
}
