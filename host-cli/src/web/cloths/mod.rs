//! The overview of the cloths: one row a cloth, all on one scale; for a role its box, its order and its answers.

pub mod deeds;
pub mod edit;
pub mod one;
pub mod photos;

use askama::Template;
use tenter_core::{Confidence, Figure, Grain, Range};

use super::form::{FieldKind, Form, FormField, or_none, words};
use super::part::{AnswerTag, Link, PagePart};
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit, cloth};
use crate::deed::Refused;
use crate::finding::fit::{self, RoleFit, Stock};
use crate::finding::memory;
use crate::finding::verdict::Verdict;
use crate::log::{Construction, Fabric, Id, Pattern, Role, Tag};
use crate::page::{class, together};
use crate::picture::strip::{Lane, StripScale};
use crate::store::Read;
use crate::words::pattern::{asks, titled};
use crate::words::{answer, cloth as about, terms};

/// How many cloths stand on a page.
const LISTED: usize = 60;

/// A cloth in the list, ready for the template.
struct Listed<'l> {
    href: String,
    fabric: &'l Fabric,
    chip: Chip,
    strip: String,
    figures: Vec<String>,
    on_hand: String,
    place: String,
    told: Option<AnswerTag>,
}

/// How a cloth looks.
pub enum Chip {
    /// A small photograph at this address.
    Photo(String),
    /// Nobody took a photograph.
    None,
}

#[derive(Template)]
#[template(path = "web/cloths.html")]
struct List<'l> {
    head: String,
    cloths: Vec<Listed<'l>>,
    judged: bool,
}

/// A cloth with what its tests amount to.
struct Seen<'s> {
    fabric: &'s Fabric,
    across: Option<Figure>,
    along: Option<Figure>,
    growth: Option<Figure>,
    verdict: Option<Verdict>,
}

impl<'s> Seen<'s> {
    fn of(fabric: &'s Fabric, stock: &Stock, verdict: Option<Verdict>) -> Self {
        let judged = |grain| stock.measured(fabric, grain)?.figures();
        let (across, along) = (judged(Grain::Crosswise), judged(Grain::Lengthwise));
        let growth = [across, along].into_iter().flatten().filter_map(|figures| Some(figures.rest?.growth));
        let growth = growth.max_by_key(|growth| growth.ratio);
        let stretch = |figures: Option<tenter_core::Figures>| figures.map(|figures| figures.stretch);
        Self { fabric, across: stretch(across), along: stretch(along), growth, verdict }
    }
}

/// The role that is chosen by its identifier, with its pattern.
pub fn chosen(read: &dyn Read, id: &str) -> Result<Option<(Pattern, Role)>, Refused> {
    let Ok(id) = id.to_uppercase().parse::<Id>() else { return Ok(None) };
    let mut patterns = read.patterns()?.into_iter().filter(|pattern| !pattern.dropped);
    Ok(patterns.find_map(|pattern| {
        let role = pattern.roles.iter().find(|role| role.id == id && !role.dropped)?.clone();
        Some((pattern, role))
    }))
}

/// Every role that can be chosen: identifier and words.
pub fn roles(read: &dyn Read) -> Result<Vec<(String, String)>, Refused> {
    let patterns = read.patterns()?;
    let live = patterns.iter().filter(|pattern| !pattern.dropped);
    let roles =
        live.flat_map(|pattern| pattern.roles.iter().filter(|role| !role.dropped).map(move |role| (pattern, role)));
    let option = |(pattern, role): (&Pattern, &Role)| {
        (role.id.to_string(), format!("{}: {}", titled(&pattern.name, &role.view), role.name))
    };
    Ok(roles.map(option).collect())
}

/// The overview.
pub fn list(visit: &mut Visit<'_>) -> Answered {
    let query = &visit.query;
    let retired = query.get("retired") == "yes";
    let stock = Stock::of(&*visit.log, |fabric| fabric.dropped == retired)?;
    let role = chosen(&*visit.log, query.get("for"))?;
    let confidence = Confidence::default();
    let fit = role.as_ref().map(|(_, role)| fit::role(role, &stock, confidence));
    let mut seen: Vec<Seen<'_>> = match &fit {
        Some(fit) => {
            let candidates = fit.candidates.iter();
            candidates.map(|one| Seen::of(one.fabric, &stock, Some(one.verdict()))).collect()
        }
        None => stock.fabrics.iter().map(|fabric| Seen::of(fabric, &stock, None)).collect(),
    };
    let all = seen.len();
    let counts = fit.as_ref().map(|fit| counts(visit, fit)).unwrap_or_default();
    let wanted = query.get("words").to_lowercase();
    seen.retain(|one| {
        let fits = |word: &str| is_about(one.fabric, word);
        let made = query.get("made");
        let lies = query.get("lies");
        wanted.split_whitespace().all(fits)
            && (made.is_empty() || one.fabric.construction.word() == made)
            && (lies.is_empty() || one.fabric.is_seen() == (lies == "shop"))
            && (query.get("answer").is_empty()
                || one.verdict.is_none_or(|verdict| class(verdict) == query.get("answer")))
    });
    sort(&mut seen, query.get("sort"), fit.is_some());
    let mut page = Shell::new(Place::Cloths, if retired { "Retired cloths" } else { "Cloths" });
    if all == 0 && !retired {
        page.words("No cloth yet. Measure a swatch, or add a cloth, and it stands here.");
        page.push(PagePart::Links(vec![
            Link::new("/measure", "Measure a swatch").first(),
            Link::new("/cloths/new", "Add a cloth"),
            Link::new("/log", "Bring a log from elsewhere"),
        ]));
        return Ok(page.page());
    }
    page.push(PagePart::Form(Box::new(finder(visit, fit.is_some())?)));
    if let Some((_, role)) = &role {
        page.push(PagePart::Soft(together(&asks(role, visit.unit))));
        page.push(PagePart::Html(counts));
    }
    if seen.is_empty() {
        page.words("No cloth matches. Search for less.");
    } else {
        let from = query.get("from").parse::<usize>().unwrap_or(0).min(seen.len().saturating_sub(1));
        let count = seen.len();
        let asked = |grain| role.as_ref().map(|(_, role)| role.demand.stretch(grain)).unwrap_or_default();
        let asked = (asked(Grain::Crosswise), asked(Grain::Lengthwise));
        let scale = StripScale::of(seen.iter().flat_map(|one| lanes(one, asked)), confidence);
        let cloths: Vec<Listed<'_>> =
            seen.iter().skip(from).take(LISTED).map(|one| listed(one, &scale, asked, visit)).collect();
        let list = List { head: scale.head().inline(), cloths, judged: fit.is_some() };
        page.push(PagePart::Html(list.render().unwrap_or_default()));
        let mut on = Vec::new();
        if from > 0 {
            on.push(Link::new(again(visit, "from", &from.saturating_sub(LISTED).to_string()), "The ones before"));
        }
        let next = from.saturating_add(LISTED);
        if next < count {
            on.push(
                Link::new(again(visit, "from", &next.to_string()), "The next ones")
                    .about(&format!("{} more", count.saturating_sub(next))),
            );
        }
        if !on.is_empty() {
            page.push(PagePart::Links(on));
        }
    }
    let other = match retired {
        true => Link::new("/cloths", "Cloths on the list"),
        false => Link::new("/cloths?retired=yes", "Retired cloths"),
    };
    page.push(PagePart::Links(vec![Link::new("/cloths/new", "Add a cloth").first(), other]));
    Ok(page.page())
}

/// Whether a word is about a cloth: its tag whole, anything else as a part.
fn is_about(fabric: &Fabric, word: &str) -> bool {
    match Tag::parse(word) {
        Some(tag) if tag.letter().is_empty() => return fabric.tag.number() == tag.number(),
        Some(tag) if fabric.tag == tag => return true,
        _ => {}
    }
    let place = fabric.shop.as_ref().map(|shop| shop.place.as_str()).unwrap_or_default();
    let texts = [&fabric.name, &fabric.fibre, &fabric.colour, &fabric.place, &fabric.note, place];
    texts.iter().any(|text| text.to_lowercase().contains(word))
}

fn sort(seen: &mut [Seen<'_>], by: &str, for_role: bool) {
    let down = |figure: Option<Figure>| core::cmp::Reverse(figure.map(|figure| figure.ratio));
    match by {
        "name" => seen.sort_by_cached_key(|one| one.fabric.name.to_lowercase()),
        "across" => seen.sort_by_key(|one| down(one.across)),
        "along" => seen.sort_by_key(|one| down(one.along)),
        "growth" => seen.sort_by_key(|one| (one.growth.is_none(), one.growth.map(|growth| growth.ratio))),
        "hand" => seen.sort_by_key(|one| core::cmp::Reverse(one.fabric.length)),
        "new" => seen.sort_by_key(|one| core::cmp::Reverse(one.fabric.id)),
        "tag" => seen.sort_by_key(|one| one.fabric.tag),
        // A role's own order is the best first.
        _ if for_role => {}
        _ => seen.sort_by_key(|one| one.fabric.tag),
    }
}

/// The search above the list.
fn finder(visit: &Visit<'_>, judged: bool) -> Result<Form, Refused> {
    let roles = or_none("no role", roles(&*visit.log)?);
    let made =
        or_none("any", words([Construction::Woven, Construction::Knit, Construction::Other].map(Construction::word)));
    let lies = [("home", "at home"), ("shop", "in a shop")].map(|(value, words)| (value.to_owned(), words.to_owned()));
    let sorted = [
        ("", if judged { "the best first" } else { "tag" }),
        ("name", "name"),
        ("across", "stretch across"),
        ("along", "stretch along"),
        ("growth", "least growth"),
        ("hand", "length on hand"),
        ("new", "newest"),
    ];
    let sorted = sorted.map(|(value, words)| (value.to_owned(), words.to_owned())).to_vec();
    let mut form = Form::new("find", "/cloths", "Show").asking().quiet();
    for kept in ["retired", "answer"] {
        if let Some(value) = visit.query.typed(kept) {
            form = form.with(kept, value);
        }
    }
    let form = form
        .ask(FormField::new("for", "For", FieldKind::List(roles)))
        .ask(FormField::new("words", "Search", FieldKind::Search))
        .fold(
            "Sort and filter",
            vec![
                FormField::new("sort", "Sorted by", FieldKind::List(sorted)),
                FormField::new("made", "Made", FieldKind::List(made)),
                FormField::new("lies", "Where", FieldKind::List(or_none("anywhere", lies.to_vec()))),
            ],
        );
    Ok(form.filled(&visit.query))
}

/// The same address with one field changed.
fn again(visit: &Visit<'_>, name: &str, value: &str) -> String {
    let kept = visit.query.texts().iter().filter(|(key, text)| key != name && key != "from" && !text.is_empty());
    let pairs =
        kept.map(|(key, text)| (key.as_str(), text.as_str())).chain((!value.is_empty()).then_some((name, value)));
    let mut rest = form_urlencoded::Serializer::new(String::new());
    rest.extend_pairs(pairs);
    format!("/cloths?{}", rest.finish())
}

#[derive(Template)]
#[template(path = "web/counts.html")]
struct Counts {
    counts: Vec<(String, AnswerTag, usize, bool)>,
    all: String,
    filtered: bool,
}

/// How many cloths have each answer, each a way to see only those.
fn counts(visit: &Visit<'_>, fit: &RoleFit<'_>) -> String {
    let chosen = visit.query.get("answer");
    let of = |verdict: &Verdict| {
        let count = fit.candidates.iter().filter(|one| one.verdict() == *verdict).count();
        let name = class(*verdict);
        (count > 0).then(|| (again(visit, "answer", name), AnswerTag::of(*verdict, ""), count, chosen == name))
    };
    let counts = Verdict::ALL.iter().filter_map(of).collect();
    let page = Counts { counts, all: again(visit, "answer", ""), filtered: !chosen.is_empty() };
    page.render().unwrap_or_default()
}

fn lanes(one: &Seen<'_>, (across, along): (Range, Range)) -> [Lane; 2] {
    [
        Lane { name: "crosswise", stretch: one.across, asked: across },
        Lane { name: "lengthwise", stretch: one.along, asked: along },
    ]
}

fn listed<'l>(one: &Seen<'l>, scale: &StripScale, asked: (Range, Range), visit: &Visit<'_>) -> Listed<'l> {
    let fabric = one.fabric;
    let confidence = Confidence::default();
    let figure =
        |name: &str, figure: Option<Figure>| figure.map(|it| format!("{name} {}", terms::figure(&it, confidence)));
    let figures: Vec<String> =
        [figure("across", one.across), figure("along", one.along)].into_iter().flatten().collect();
    let growth = figure("growth", one.growth);
    let mut figures: Vec<String> = figures.into_iter().chain(growth).map(|figure| together(&figure)).collect();
    if figures.is_empty() {
        figures.push("not measured yet".to_owned());
    }
    Listed {
        href: match visit.query.typed("for") {
            Some(role) => format!(
                "{}?for={}",
                cloth(fabric.id),
                form_urlencoded::byte_serialize(role.as_bytes()).collect::<String>()
            ),
            None => cloth(fabric.id),
        },
        fabric,
        chip: chip(fabric),
        strip: scale.strip(&fabric.name, &lanes(one, asked)).inline(),
        figures,
        on_hand: together(&about::on_hand(fabric, visit.unit)),
        place: together(&about::place(fabric)),
        told: one.verdict.map(|verdict| AnswerTag { word: answer::word(verdict), ..AnswerTag::of(verdict, "") }),
    }
}

/// The first photograph of a cloth, small.
pub fn chip(fabric: &Fabric) -> Chip {
    match (memory::colour(fabric), fabric.live_photos().next()) {
        (Some(_), Some(photo)) => Chip::Photo(format!("/photos/{}", photo.said.thumbnail)),
        _ => Chip::None,
    }
}
