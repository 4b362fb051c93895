//! Pages made from a log: the same for a file and for a browser.

use tenter_core::Grain;

use super::book::Book;
use super::print;
use super::sheet::{self, RolePictures};
use super::sheets;
use crate::deed::plan::of_garment as plan_of;
use crate::deed::{Refused, find, make};
use crate::finding::cloth::Shown;
use crate::finding::drawn::CardFacts;
use crate::finding::fit::{self, Fitted, RoleFit, Stock};
use crate::finding::make::Workroom;
use crate::finding::plan::ViewPlan;
use crate::finding::shown::{Around, KnownCloth, ShownRules};
use crate::input::plan::TypedPlan;
use crate::log::{Fabric, Garment, Here, Pattern, Photo};
use crate::picture::true_scale::{self, PullGauge, pull_gauge};
use crate::picture::{Picture, drawn};
use crate::store::{Read, StoreError};
use crate::words::{make as words, quantity};

/// A view of a pattern.
pub type View<'v> = (&'v Pattern, &'v str);

/// The day of today, where the reader is.
#[must_use]
pub fn today(here: Here) -> String {
    quantity::day(here.now(), here)
}

/// The swatch book of a stash, beside what a view asks where one is chosen; `step` is told of each cloth.
///
/// # Errors
///
/// A log that cannot be read.
pub fn book(
    read: &dyn Read,
    stock: &Stock,
    view: Option<View<'_>>,
    rules: ShownRules,
    step: &mut dyn FnMut(),
) -> Result<String, StoreError> {
    let ShownRules { confidence, table, unit } = rules;
    let roles = view.iter().flat_map(|(pattern, view)| pattern.view(view));
    let roles: Vec<RoleFit<'_>> = fit::roles(roles, stock, confidence);
    let here = read.here();
    let fitted =
        view.map(|(pattern, view)| Fitted { pattern, view, roles: &roles, stock, confidence, unit, here, all: true });
    let mut book = Book::new(stock, fitted.as_ref(), confidence, table);
    let around = Around::read(read)?;
    for fabric in &stock.fabrics {
        let known = KnownCloth::among(read, fabric.clone(), &around)?;
        book.add(&known.shown(&stock.pooled, rules, here));
        step();
    }
    Ok(book.page(&today(here)))
}

/// The cards of cloths, four a sheet; how many sheets they are, and the page.
///
/// # Errors
///
/// A log that cannot be read.
pub fn cards(
    read: &dyn Read,
    stock: &Stock,
    fabrics: &[Fabric],
    rules: ShownRules,
) -> Result<(usize, String), StoreError> {
    let mut sheets: Vec<Picture> = Vec::new();
    let around = Around::read(read)?;
    for four in fabrics.chunks(4) {
        let known: Vec<KnownCloth> =
            four.iter().map(|fabric| KnownCloth::among(read, fabric.clone(), &around)).collect::<Result<_, _>>()?;
        let shown: Vec<Shown<'_>> = known.iter().map(|known| known.shown(&stock.pooled, rules, read.here())).collect();
        let facts: Vec<CardFacts> = shown.iter().map(|shown| CardFacts::of(shown, stock)).collect();
        sheets.push(drawn::sheet(shown.iter().zip(&facts)));
    }
    Ok((sheets.len(), print::page("Cards", &sheets)))
}

/// The gauges of all that the roles of a view ask.
///
/// # Errors
///
/// A view of which no role asks for stretch.
pub fn gauges((pattern, view): View<'_>) -> Result<Vec<Picture>, Refused> {
    let mut gauges: Vec<Picture> = Vec::new();
    for role in pattern.view(view) {
        for grain in [Grain::Crosswise, Grain::Lengthwise, Grain::Bias] {
            let title = true_scale::title(&format!("{} {view}", pattern.name), &role.name, grain);
            gauges.extend(pull_gauge(&PullGauge { title: &title, asked: role.demand.stretch(grain) }));
        }
    }
    if gauges.is_empty() { Err(Refused::NoStretchAsked) } else { Ok(gauges) }
}

/// A plan as a page, with for whom it is; `with_why` puts the numbers, the rule and its source under each line.
///
/// # Errors
///
/// A log that cannot be read, or a tag that is on two cloths.
pub fn plan(
    read: &dyn Read,
    plan: &ViewPlan,
    rules: ShownRules,
    whose: &str,
    with_why: bool,
) -> Result<String, Refused> {
    let drawn = role_pictures(read, plan, rules)?;
    Ok(sheet::page(plan, &drawn, (whose, &today(read.here())), with_why, rules.unit))
}

/// What is drawn of the cloth of each role of a plan.
fn role_pictures(read: &dyn Read, plan: &ViewPlan, rules: ShownRules) -> Result<Vec<RolePictures>, Refused> {
    let (pooled, here) = (read.repeatability()?, read.here());
    let mut drawn: Vec<RolePictures> = Vec::new();
    for planned in &plan.roles {
        let Some(taken) = &planned.cloth else {
            drawn.push(RolePictures::default());
            continue;
        };
        let known = KnownCloth::of(read, find::live_fabric(read, &taken.cloth.tag.to_string())?)?;
        let shown = known.shown(&pooled, rules, here);
        let photo = shown.photos.iter().find_map(|seen| seen.thumbnail.as_ref());
        drawn.push(RolePictures {
            gauge: drawn::stretch(&shown, Some(&planned.role), false).inline(),
            photo: photo.map(Photo::address).unwrap_or_default(),
        });
    }
    Ok(drawn)
}

/// Everything for one garment: its plan, then the cards of its cloths and the gauges of its view, each with for whom it is.
#[derive(Debug)]
struct GarmentPrint {
    whose: String,
    plan: String,
    cards: Vec<Picture>,
    gauges: Vec<Picture>,
}

/// Everything for a garment, `part` of several; `whose` says which it is and for whom.
fn garment(
    read: &dyn Read,
    stock: &Stock,
    (plan, view): (&ViewPlan, View<'_>),
    rules: ShownRules,
    (whose, part): (&str, usize),
) -> Result<GarmentPrint, Refused> {
    let pictures = role_pictures(read, plan, rules)?;
    let body = sheet::body(plan, &pictures, (whose, &today(read.here())), rules.unit, part);
    let mut cards = Vec::new();
    let mut tags = Vec::new();
    for taken in plan.roles.iter().filter_map(|planned| planned.cloth.as_ref()) {
        if !tags.contains(&taken.cloth.tag) {
            tags.push(taken.cloth.tag);
            let known = KnownCloth::of(read, find::live_fabric(read, &taken.cloth.tag.to_string())?)?;
            let shown = known.shown(&stock.pooled, rules, read.here());
            cards.push(drawn::card(&shown, &CardFacts::of(&shown, stock)));
        }
    }
    // A view that asks for no stretch has no gauge.
    let gauges = gauges(view).unwrap_or_default();
    Ok(GarmentPrint { whose: whose.to_owned(), plan: body, cards, gauges })
}

/// The prints of several garments as one page, in their order; the names of people only where `names` says so.
///
/// # Errors
///
/// A log that cannot be read, or a garment without a pattern.
pub fn garments(read: &dyn Read, garments: &[Garment], rules: ShownRules, names: bool) -> Result<String, Refused> {
    let (stock, room) = (Stock::read(read)?, Workroom::read(read, read.here())?);
    let mut prints = Vec::new();
    for (part, one) in garments.iter().enumerate() {
        let mut making = room.making(one);
        if !names {
            making.garment.whom.clear();
        }
        let pattern = make::pattern_of(read, one)?;
        let view = find::view(&pattern, &one.view)?;
        let planned = plan_of(read, one, &TypedPlan::default(), (rules.confidence, rules.unit))?;
        let head = words::plan_head(&making);
        prints.push(garment(read, &stock, (&planned, (&pattern, view)), rules, (&head, part))?);
    }
    Ok(several(&prints))
}

fn several(prints: &[GarmentPrint]) -> String {
    let of = |print: &GarmentPrint| sheets::Garment {
        whose: print.whose.clone(),
        plan: print.plan.clone(),
        cards: print.cards.iter().map(Picture::inline).collect(),
        gauges: print.gauges.iter().map(Picture::inline).collect(),
    };
    sheets::page(prints.iter().map(of).collect())
}
