//! What a pull test begins with: the cloth, the grain, what is asked.

use tenter_core::{Grain, Unit};

use super::{Measuring, address};
use crate::deed::Refused;
use crate::guide::begin::begun;
use crate::input::synonym::{CONSTRUCTION, GRAIN};
use crate::input::{Field, TypedAsked, TypedCheck, TypedPull, TypedTest, TypedWants};
use crate::log::{Construction, Fabric, Id};
use crate::store::Read;
use crate::web::fields::{Fields, ONCE, fresh};
use crate::web::form::{FieldKind, Form, FormField, members, or_none};
use crate::web::part::{Link, PagePart};
use crate::web::shell::{Place, Shell};
use crate::web::visit::{Answered, Visit};
use crate::web::{Method, Response};
use crate::words::quantity::minute;
use crate::words::{cloth as words, page::told};

/// The cloths that a test can be for: identifier and words.
pub fn cloths(read: &dyn Read) -> Result<Vec<(String, String)>, Refused> {
    let live = read.fabrics()?.into_iter().filter(|fabric| !fabric.dropped);
    Ok(live.map(|fabric| (fabric.id.to_string(), words::title(&fabric))).collect())
}

/// The fields that every test begins with.
pub fn fields(visit: &Visit<'_>, form: Form) -> Result<Form, Refused> {
    let grains = [
        (Grain::Crosswise, "Across, from selvage to selvage"),
        (Grain::Lengthwise, "Along the selvage"),
        (Grain::Bias, "Bias, at 45°"),
    ];
    let grains = grains.map(|(grain, words)| (grain.word().to_owned(), words.to_owned()));
    let cloths = or_none("One that is not in the list yet", cloths(&*visit.log)?);
    let roles = super::super::cloths::roles(&*visit.log)?;
    let mut form = form.ask(FormField::new("cloth", "Which cloth", FieldKind::List(cloths)));
    form = form.ask(
        FormField::new("construction", "If it is not in the list, it is", FieldKind::Pick(members(&CONSTRUCTION)))
            .of(&[Field::Construction]),
    );
    form = form.ask(
        FormField::new("grain", "You pull it", FieldKind::Pick(grains.to_vec()))
            .of(&[Field::Grain])
            .value(Grain::Crosswise.word()),
    );
    if !roles.is_empty() {
        form = form.ask(FormField::new("for", "What it is for", FieldKind::List(or_none("No role", roles))));
    }
    form = form.ask(
        FormField::text("wants", "Or the stretch it must have")
            .hint("As the envelope says: 25%, 5-15%, 4in to 5in. Empty if you only want to know")
            .of(&[Field::Wants]),
    );
    if visit.log.units()?.is_none() {
        let units =
            [("cm", "Centimetres"), ("in", "Inches")].map(|(value, words)| (value.to_owned(), words.to_owned()));
        form = form.ask(FormField::new("unit", "Your tape has", FieldKind::Pick(units.to_vec())).value("cm"));
    }
    Ok(form)
}

/// What the fields say.
pub struct Begun {
    /// What was typed, without readings.
    pub typed: TypedPull,
    /// The cloth, where one was chosen.
    pub fabric: Option<Fabric>,
    /// How it is made.
    pub construction: Construction,
    /// The role, where one was chosen.
    pub role: Option<Id>,
}

impl Begun {
    /// Reads the fields.
    pub fn of(visit: &Visit<'_>, sent: &Fields) -> Result<Self, Refused> {
        let fabric = match sent.typed("cloth") {
            Some(text) => Some(crate::deed::find::live_fabric(&*visit.log, &text)?),
            None => None,
        };
        let chosen = CONSTRUCTION.typed(sent.get("construction")).unwrap_or_default();
        let construction = fabric.as_ref().map_or(chosen, |fabric| fabric.construction);
        let role = super::super::cloths::chosen(&*visit.log, sent.get("for"))?.map(|(_, role)| role.id);
        let grain = GRAIN.typed(sent.get("grain")).unwrap_or(Grain::Crosswise);
        let unit = Unit::from_symbol(sent.get("unit")).unwrap_or(visit.unit);
        let test = TypedTest {
            marks: None,
            readings: Vec::new(),
            settling: false,
            marks_before_settling: false,
            planned: sent.typed("planned"),
            grain,
            division: sent.typed("division"),
            ends: tenter_core::Ends::One,
            held: tenter_core::Held::Folded,
            load: sent.typed("load"),
        };
        let wants = TypedWants {
            wants: sent.typed("wants").filter(|_| role.is_none()),
            growth_at_most: sent.typed("growth").filter(|_| role.is_none()),
            recovery_at_least: sent.typed("recovery").filter(|_| role.is_none()),
        };
        let asked = TypedAsked { wants, unit: Some(unit), ..TypedAsked::default() };
        let check = TypedCheck { test, asked, scatter: None, construction: Some(construction), as_read: false };
        let typed = TypedPull { check, at: sent.typed("at"), by: sent.typed("by"), note: sent.typed("note") };
        Ok(Self { typed, fabric, construction, role })
    }
}

/// Who pulls, and what else may be said beforehand; where the log knows several people the first is asked openly.
pub fn rest(visit: &Visit<'_>, form: Form) -> Result<Form, Refused> {
    let by = FormField::text("by", "Who pulls").hint("Empty for whoever pulls here as a rule").of(&[Field::PulledBy]);
    let mut more = more();
    let form = if visit.log.people()?.each().count() > 1 {
        form.ask(by)
    } else {
        more.insert(more.len().saturating_sub(1), by);
        form
    };
    Ok(form.fold("More that may matter", more))
}

fn more() -> Vec<FormField> {
    vec![
        FormField::text("growth", "The most growth it may have").hint("3%, or 3%@1h").of(&[Field::GrowthAtMost]),
        FormField::text("recovery", "The least recovery").hint("90%").of(&[Field::RecoveryAtLeast]),
        FormField::new("planned", "How many pulls you plan", FieldKind::Figures)
            .hint("3 if you leave it empty")
            .of(&[Field::Planned]),
        FormField::text("load", "What pulls, if not a hand").hint("500g, 5N").of(&[Field::Load]),
        FormField::text("division", "Between two lines of your tape").hint("1mm, 1/16in").of(&[Field::Division]),
        FormField::text("note", "A remark").of(&[Field::Note]),
    ]
}

/// Begins a test, or goes on with one.
pub fn begin(visit: &mut Visit<'_>) -> Answered {
    let form = Form::new("begin", "/measure", "Begin").once(fresh(visit.here));
    let form = rest(visit, fields(visit, form)?)?;
    if visit.request.method == Method::Get {
        let mut form = form;
        for input in form.all() {
            if let Some(value) = visit.query.typed(input.name) {
                input.value = value;
            }
        }
        return page(visit, form, 200);
    }
    let begun = Begun::of(visit, &visit.sent)
        .and_then(|it| Ok((begun(&it.typed, visit.sent.once(visit.here), visit.here)?, it)));
    let (draft, begun) = match begun {
        Ok(begun) => begun,
        Err(Refused::Store(error)) => return Err(error.into()),
        Err(refused) => {
            let once = visit.sent.once(visit.here);
            let mut form = form.filled(&visit.sent).refused(&refused);
            form.hidden.retain(|(name, _)| name != ONCE);
            return page(visit, form.once(once), 422);
        }
    };
    let to = address(draft.id);
    // Sent twice: it goes on where it stands.
    if Measuring::kept(visit, &draft.id.to_string())?.is_none() && visit.log.test(draft.id)?.is_none() {
        let mut measuring = Measuring::new(draft, begun.construction);
        measuring.cloth = begun.fabric.map(|fabric| fabric.id);
        measuring.role = begun.role;
        if let Some(role) =
            measuring.asking(visit)?.filter(|role| crate::finding::fit::asked::demand(role).growth_at_most.is_some())
        {
            measuring.draft.wait = Some(crate::finding::fit::asked::demand(&role).rest_seconds);
        }
        measuring.keep(visit)?;
    }
    Ok(Response::see(&to))
}

fn page(visit: &Visit<'_>, form: Form, status: u16) -> Answered {
    let mut page = Shell::new(Place::Measure, "Measure a swatch");
    let all = Measuring::all(visit)?;
    let waiting = visit.log.tests(crate::store::WhichTests::Inbox)?.len();
    if !all.is_empty() {
        let mut parts = Vec::new();
        for one in &all {
            let day = minute(one.draft.id.at(), visit.here);
            let fabric = one.fabric(visit)?.map(|fabric| words::title(&fabric));
            let about = told(&one.draft.so_far(&day).replace("a test was broken off: ", ""));
            let words = format!("Go on: {}", fabric.unwrap_or_else(|| "a new cloth".to_owned()));
            parts.push(PagePart::Links(vec![Link::new(one.address(), &words).about(&about)]));
        }
        page.push(PagePart::Fold(crate::words::quantity::counted(all.len(), "unfinished test"), all.len() < 3, parts));
    }
    if waiting > 0 {
        let words = format!("{} without a cloth", crate::words::quantity::counted(waiting, "test"));
        page.push(PagePart::Links(vec![Link::new("/inbox", &words).about("Give each its cloth")]));
    }
    page.push(PagePart::Form(Box::new(form)));
    page.push(PagePart::Links(vec![
        Link::new("/measure/form", "All on one form").about("You have the readings on paper"),
        Link::new("/guide/measuring", "How to measure").about("Fold, marks, hands"),
    ]));
    Ok(page.with_status(status))
}
