//! Questions about cloths and measures that store nothing: two cloths in a seam, how to sew one, which mass to hang.

use tenter_core::Grain;
use tenter_core::making::garment::SeamKind;
use tenter_core::making::handling::Layer;
use tenter_core::making::hanging::{METHODS, Specimen};
use tenter_core::making::source::Source;

use super::form::{FieldKind, Form, FormField, members, or_none};
use super::measure::cloths;
use super::part::{AnswerTag, PagePart, Row};
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit};
use crate::deed::{Refused, find};
use crate::finding::fit::{Stock, known};
use crate::finding::handle::{Handle, HandleWanted, Handled, NoSeams, layered};
use crate::finding::hang::{Hang, Hung};
use crate::finding::pair::{Pairing, SeamAsked, Unjoined};
use crate::input::synonym::{GRAIN, KIND, SEAM};
use crate::input::{self, Field, Why, Wrong, amount, hang as typed_hang, size as typed};
use crate::words::page::told;
use crate::words::{handle as handle_words, hang as hang_words, pair as pair_words, terms};

/// A page with its form, and what was found where something was asked.
fn page(title: &str, lead: &str, form: Form, found: Result<Vec<PagePart>, Refused>) -> Answered {
    let mut page = Shell::new(Place::More, title);
    page.push(PagePart::Soft(lead.to_owned()));
    match found {
        Ok(found) => {
            let asked = !found.is_empty();
            if asked {
                page.push(PagePart::Patch(String::new(), found));
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

fn why(form: Form) -> Form {
    form.ask(FormField::new("why", "With the reasons and their sources", FieldKind::Tick))
}

/// Two cloths in one seam.
pub fn pair(visit: &mut Visit<'_>) -> Answered {
    let list = cloths(&*visit.log)?;
    let form = Form::new("pair", "/pair", "Show")
        .asking()
        .ask(FormField::new("one", "One cloth", FieldKind::List(list.clone())))
        .ask(FormField::new("other", "The other", FieldKind::List(list)))
        .ask(FormField::text("along", "Length of the seam").hint("60cm").of(&[Field::Along]))
        .ask(FormField::new("seam", "Which seam", FieldKind::List(members(&SEAM))).value(SeamKind::Side.word()))
        .ask(
            FormField::text("wants", "The stretch that the view asks along it")
                .hint("5%. Empty if it asks none")
                .of(&[Field::Wants]),
        );
    let form = why(form).filled_if(&visit.query);
    let found = if visit.query.has("one") { paired(visit) } else { Ok(Vec::new()) };
    page("Two cloths in one seam", "Do they behave alike, and how do you sew them if not?", form, found)
}

fn paired(visit: &Visit<'_>) -> Result<Vec<PagePart>, Refused> {
    let (query, unit, confidence) = (&visit.query, visit.unit, visit.rules().confidence);
    let stock = Stock::read(&*visit.log)?;
    let (one, other) =
        (find::live_fabric(&*visit.log, query.get("one"))?, find::live_fabric(&*visit.log, query.get("other"))?);
    let length = amount::cloth(Field::Along, query.get("along"))?;
    let name = SEAM.typed(query.get("seam")).unwrap_or(SeamKind::Side);
    let seam = SeamAsked { name: Some(name), grains: None, length, stitch: None };
    let asked = input::limit(Field::Wants, query.typed("wants").as_deref(), tenter_core::Unit::Mm)?;
    let pairing = match Pairing::of([&one, &other], seam, asked, &stock, confidence) {
        Ok(pairing) => pairing,
        Err(Unjoined::NotPulled(not)) => {
            let said = format!("Cloth {} was not pulled {} yet. Measure it first.", not.tag, not.grain.word());
            return Ok(vec![PagePart::Words(said)]);
        }
        Err(Unjoined::Interfacing(layer)) => return Err(Refused::Interfacing(layer.tag)),
        Err(Unjoined::Making(error)) => {
            return Err(Wrong::new(Field::Along, query.get("along"), Why::Making(error)).into());
        }
    };
    let (head, meaning) = pair_words::headline(&pairing);
    let mut rows: Vec<Row> = pairing
        .sides
        .iter()
        .map(|side| {
            let stretch = terms::figure(&side.edge.stretch, confidence);
            Row::new(&side.cloth.tag.to_string(), &format!("{}, {} {stretch}", side.cloth.name, side.grain.word()))
        })
        .collect();
    rows.push(Row::new("seam", &format!("{}; {}", pair_words::runs(&pairing), pair_words::seam(&pairing))));
    rows.push(Row::new("gap", &pair_words::gap(&pairing)));
    rows.extend(Row::spoken(&pair_words::spoken(&pairing), query.get("why") == "yes"));
    rows.push(Row::new("note", &pair_words::limits(unit)));
    rows.retain(|row| !row.words.is_empty());
    Ok(vec![PagePart::Head(first_capital(head)), PagePart::told(&meaning), PagePart::Rows(rows)])
}

/// A headline of capitals as a page writes it.
fn first_capital(head: &str) -> String {
    let lower = head.to_lowercase();
    let mut letters = lower.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// How to sew one cloth.
pub fn handle(visit: &mut Visit<'_>) -> Answered {
    let list = cloths(&*visit.log)?;
    let form = Form::new("handle", "/handle", "Show")
        .asking()
        .ask(FormField::new("cloth", "Which cloth", FieldKind::List(list.clone())))
        .ask(FormField::new("kind", "In which garment", FieldKind::List(or_none("any", members(&KIND)))))
        .fold(
            "More that may matter",
            vec![
                FormField::text("wants", "The stretch that its seams must give").hint("25%").of(&[Field::Wants]),
                FormField::new("grain", "The grain along the seam", FieldKind::List(or_none("both", members(&GRAIN)))),
                FormField::new("lining", "Its lining", FieldKind::List(or_none("none", list))),
                FormField::text("facing", "The stretch of its facing").hint("5%").of(&[Field::FacingGives]),
            ],
        );
    let form = why(form).filled_if(&visit.query);
    let found = if visit.query.has("cloth") { handled(visit) } else { Ok(Vec::new()) };
    page("How to sew a cloth", "Needle, stitch, edges, and what keeps them from stretching.", form, found)
}

fn handled(visit: &Visit<'_>) -> Result<Vec<PagePart>, Refused> {
    let (query, confidence) = (&visit.query, visit.rules().confidence);
    let stock = Stock::read(&*visit.log)?;
    let fabric = find::live_fabric(&*visit.log, query.get("cloth"))?;
    let grain = GRAIN.typed(query.get("grain"));
    let own = |fabric: &crate::log::Fabric| known::stretch(fabric, grain.unwrap_or(Grain::Crosswise), &stock);
    let wants =
        query.typed("wants").map(|text| typed::exact(Field::Wants, &text)).transpose()?.map(|wants| wants.ratio);
    let mut layers = Vec::new();
    if let (Some(text), Ok(outer)) = (query.typed("lining"), own(&fabric)) {
        let lining = find::live_fabric(&*visit.log, &text)?;
        if let Ok(inner) = own(&lining) {
            layers.push(layered(outer, Layer::Lining, inner, wants, confidence));
        }
    }
    if let (Some(text), Ok(outer)) = (query.typed("facing"), own(&fabric)) {
        layers.push(layered(outer, Layer::Interfacing, typed::exact(Field::FacingGives, &text)?, wants, confidence));
    }
    let garment = KIND.typed(query.get("kind"));
    let wanted = HandleWanted { wants, grain, garment, no_seams: NoSeams::of(&fabric), layers: &layers, confidence };
    let mut handled = Handled::of(&known::cloth(&fabric, &stock), &wanted);
    let told_before = stock.last_time(&fabric).map(|told| Handle::LastTime(Box::new(told.clone())));
    handled.lines.splice(0..0, told_before);
    let lines = handle_words::spoken(&handled, visit.unit);
    let mut parts = vec![PagePart::Head(crate::words::cloth::title(&fabric))];
    if let Some(answer) = handled.answer {
        parts.push(PagePart::Answer(AnswerTag::of(answer, handle_words::layers(answer))));
    }
    parts.push(PagePart::Rows(Row::spoken(&lines, query.get("why") == "yes")));
    Ok(parts)
}

/// Which mass to hang.
pub fn hang(visit: &mut Visit<'_>) -> Answered {
    let name = |method: &tenter_core::making::hanging::TensionMethod| {
        let words = format!("{} {}", method.standard, method.cloth);
        (words.clone(), words)
    };
    let pieces = [Specimen::Strip, Specimen::Loop].map(|piece| (piece.word().to_owned(), piece.word().to_owned()));
    let form = Form::new("hang", "/hang", "Show")
        .asking()
        .ask(FormField::text("width", "Width of the strip, or of the loop laid flat").hint("5cm").of(&[Field::Width]))
        .ask(FormField::new("piece", "It is a", FieldKind::Pick(pieces.to_vec())).value(Specimen::Strip.word()))
        .ask(FormField::new(
            "method",
            "The tension of a published test",
            FieldKind::List(METHODS.iter().map(name).collect()),
        ))
        .ask(
            FormField::text("tension", "Or a tension of your own")
                .hint("3.5N for each centimetre of width")
                .of(&[Field::Tension]),
        )
        .ask(
            FormField::text("mass", "Or a mass that you have, to see its tension")
                .hint("500g, 3lb")
                .of(&[Field::HungMass]),
        );
    let form = why(form).filled_if(&visit.query);
    let found = if visit.query.has("width") { hung(visit) } else { Ok(Vec::new()) };
    page("Which weight to hang", "A weight pulls the same every day. A hand does not.", form, found)
}

fn hung(visit: &Visit<'_>) -> Result<Vec<PagePart>, Refused> {
    let (query, text) = (&visit.query, visit.query.get("width"));
    let width = amount::cloth(Field::Width, text)?;
    let unit = input::unit_of(text).unwrap_or(visit.unit);
    let piece = if query.get("piece") == Specimen::Loop.word() { Specimen::Loop } else { Specimen::Strip };
    let method = || METHODS.iter().find(|one| format!("{} {}", one.standard, one.cloth) == query.get("method"));
    let hung = Hung { width, piece, unit };
    let hang = match (query.typed("mass"), query.typed("tension")) {
        (Some(mass), _) => Hang::tension(hung, typed_hang::mass(&mass)?),
        (None, Some(tension)) => Hang::mass(hung, (typed_hang::tension(&tension)?, Source::Own)),
        (None, None) => match method() {
            Some(method) => Hang::mass(hung, (method.tension(), method.source)),
            None => return Ok(Vec::new()),
        },
    };
    let hang = hang.map_err(|error| Wrong::new(Field::Width, text, Why::Making(error)))?;
    let with_why = query.get("why") == "yes";
    let cautions = hang_words::cautions(&hang).iter().map(|line| told(&line.text)).collect();
    let mut parts = vec![PagePart::Notice("First".to_owned(), cautions)];
    parts.extend(hang_words::headline(&hang).map(PagePart::Head));
    parts.push(PagePart::Rows(Row::spoken(&hang_words::found(&hang), with_why)));
    Ok(parts)
}
