//! The plan of a view, to print: with the best cloth for each role, or with what is chosen on a form.

use super::fit::view_of;
use super::{of_view, title};
use crate::deed::{Refused, plan as deed};
use crate::finding::fit::{self, Stock};
use crate::finding::plan::kind::kind;
use crate::input::plan::TypedPlan;
use crate::input::synonym::SHOP_CUT;
use crate::log::{Choices, Pattern, Role};
use crate::page::made;
use crate::web::form::{FieldKind, Form, FormField, members, or_none};
use crate::web::part::{Link, PagePart};
use crate::web::shell::{Place, Shell};
use crate::web::visit::{Answered, Visit};
use crate::web::{choices, garments, printed};

/// The plan as a page to print; where a choice cannot be read, its form.
pub fn plan(visit: &mut Visit<'_>, id: &str) -> Answered {
    let (pattern, view) = view_of(visit, id)?;
    match made_of(visit, &pattern, &view) {
        Ok(page) => Ok(printed::response(page)),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => form_page(visit, (&pattern, &view), Some(&refused)),
    }
}

/// The form on which a plan's choices are made.
pub fn choose(visit: &mut Visit<'_>, id: &str) -> Answered {
    let (pattern, view) = view_of(visit, id)?;
    form_page(visit, (&pattern, &view), None)
}

fn made_of(visit: &Visit<'_>, pattern: &Pattern, view: &str) -> Result<String, Refused> {
    let (query, rules) = (&visit.query, visit.rules());
    let typed = TypedPlan {
        uses: garments::chosen(query, pattern, view),
        choices: choices::sent(query, &Choices::default()),
        shop_cut: SHOP_CUT.typed(query.get("shop")),
    };
    let stock = Stock::read(&*visit.log)?.with_shop_cut(typed.shop_cut);
    let roles = fit::roles(pattern.view(view), &stock, rules.confidence);
    let plan = deed::plan(&typed, (pattern, view), &stock, roles, (rules.confidence, rules.unit), &*visit.log)?;
    made::plan(&*visit.log, &plan, rules, "", query.get("why") == "yes")
}

fn form_page(visit: &Visit<'_>, (pattern, view): (&Pattern, &str), refused: Option<&Refused>) -> Answered {
    let roles: Vec<&Role> = pattern.view(view).collect();
    let form = Form::new("plan", super::address(pattern.id) + "/plan", "Make the plan").asking().with("view", view);
    let form = garments::uses(&*visit.log, form, pattern, view, None)?;
    let form = choices::asked(form, &Choices::default(), kind(&Choices::default(), &roles));
    let form = form
        .ask(FormField::new(
            "shop",
            "Your shop cuts cloth to",
            FieldKind::List(or_none("as usual", members(&SHOP_CUT))),
        ))
        .ask(FormField::new("why", "With the reasons and their sources", FieldKind::Tick));
    let (form, status) = match refused {
        Some(refused) => (form.filled_if(&visit.query).refused(refused), 422),
        None => (form, 200),
    };
    let mut page = Shell::new(Place::Patterns, &format!("The plan for {}", title(pattern, view)));
    page.push(PagePart::Soft(
        "What you leave empty is as usual: the best cloth for each role, no zip sized.".to_owned(),
    ));
    page.push(PagePart::Form(Box::new(form)));
    page.push(PagePart::Links(vec![Link::new(of_view(pattern.id, "fit", view), "Which cloths suit it")]));
    Ok(page.with_status(status))
}
