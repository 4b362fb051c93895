//! `tenter device demands`: what a view asks, put on the handheld.

use tenter_core::Demand;
use tenter_core::record::{LabelledDemand, MAX_LABEL_BYTES};

use super::super::find;
use crate::cli::device::DemandsArgs;
use crate::error::Error;
use crate::link::{Session, Transport};
use crate::log::{Pattern, Role};
use crate::store::Read;
use crate::text::Screen;
use crate::text::device as report;
use crate::text::device::Wanted;

/// Finds what was typed.
///
/// # Errors
///
/// A pattern, view or role that is not there, or a view that asks nothing.
pub fn wanted(args: &DemandsArgs, read: &dyn Read) -> Result<Wanted, Error> {
    let Some(pattern) = &args.pattern else { return Ok(Wanted::default()) };
    let pattern = find::pattern(read, pattern)?;
    let view = find::view_or_only(&pattern, args.view.as_deref())?;
    let mut roles: Vec<&Role> = Vec::new();
    for text in &args.role {
        let role = find::role(&pattern, view, text)?;
        if !roles.contains(&role) {
            roles.push(role);
        }
    }
    if roles.is_empty() {
        roles = pattern.view(view).collect();
    }
    let (asking, silent): (Vec<&Role>, Vec<&Role>) = roles.into_iter().partition(|role| asks(role.demand));
    let nothing_asked = silent.iter().map(|role| role.name.clone()).collect();
    if asking.is_empty() {
        return Err(Error::Usage(report::asks_nothing(&pattern.name, view)));
    }
    let labels = labels(&pattern, view, &asking);
    let labelled = |(role, label): (&&Role, String)| {
        LabelledDemand::new(&label, role.demand).map(|demand| (demand, role.name.clone()))
    };
    Ok(Wanted { demands: asking.iter().zip(labels).filter_map(labelled).collect(), nothing_asked })
}

fn asks(demand: Demand) -> bool {
    demand != Demand::default()
}

/// Puts them there, as many as there is room for.
///
/// # Errors
///
/// A handheld that does not answer or refuses.
pub fn run<T: Transport>(
    session: &mut Session<T>,
    wanted: &Wanted,
    read: &dyn Read,
    screen: &mut Screen<'_>,
) -> Result<(), Error> {
    let slots = usize::from(session.identity().demand_slots);
    let sent: Vec<LabelledDemand> = wanted.demands.iter().take(slots).map(|(demand, _)| demand.clone()).collect();
    session.set_demands(&sent)?;
    let hand = super::send_hand(session, read)?;
    for line in report::demands(wanted, sent.len()).into_iter().chain(hand.map(str::to_owned)) {
        screen.say(&line)?;
    }
    Ok(())
}

/// One label a role, each unlike the others: pattern, view and role as far as they fit, the role first of all.
fn labels(pattern: &Pattern, view: &str, roles: &[&Role]) -> Vec<String> {
    let mut labels: Vec<String> = Vec::new();
    for role in roles {
        // A pattern with a single view calls it "-".
        let tail = if view == "-" { role.name.clone() } else { format!("{view} {}", role.name) };
        let room = MAX_LABEL_BYTES.saturating_sub(tail.len() + 1);
        let head = cut(&pattern.name, room).trim_end();
        let full = match (head.chars().count(), tail.len() <= MAX_LABEL_BYTES) {
            // A single letter of the pattern says nothing.
            (3.., _) => format!("{head} {tail}"),
            (_, true) => tail,
            _ => role.name.clone(),
        };
        let mut label = cut(&full, MAX_LABEL_BYTES).trim().to_owned();
        let mut nth = 2;
        while labels.contains(&label) {
            let end = format!(" {nth}");
            label = format!("{}{end}", cut(&full, MAX_LABEL_BYTES - end.len()).trim());
            nth += 1;
        }
        labels.push(label);
    }
    labels
}

/// The longest beginning of at most so many bytes that ends with a whole character.
fn cut(text: &str, bytes: usize) -> &str {
    let end = text.char_indices().map(|(at, c)| at + c.len_utf8()).take_while(|end| *end <= bytes).last();
    text.get(..end.unwrap_or(0)).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::Ids;

    fn labels_of(pattern: &str, view: &str, names: &[&str]) -> Vec<String> {
        let mut ids = Ids::default();
        let id = ids.next();
        let role = |name: &&str| Role {
            id: ids.next(),
            pattern: id,
            view: view.to_owned(),
            name: (*name).to_owned(),
            demand: Demand::default(),
            constructions: Vec::new(),
            cloth: None,
            note: String::new(),
            dropped: false,
        };
        let roles: Vec<Role> = names.iter().map(role).collect();
        let pattern = Pattern { id, name: pattern.to_owned(), note: String::new(), roles: Vec::new(), dropped: false };
        labels(&pattern, view, &roles.iter().collect::<Vec<_>>())
    }

    #[test]
    fn labels_are_short_whole_and_unlike_each_other() {
        assert_eq!(labels_of("Skirt", "B", &["main", "hem facings"]), ["Skirt B main", "Skirt B hem facings"]);
        assert_eq!(labels_of("Rehearsal skirt", "B", &["hem facings"]), ["Rehearsal B hem facings"]);
        assert_eq!(labels_of("Play coat", "-", &["legs", "waistband"]), ["Play coat legs", "Play coat waistband"]);
        assert_eq!(labels_of("Skirt", "long sleeves", &["main"]), ["Skirt long sleeves main"]);
        assert_eq!(labels_of("Skirt", "with long sleeves", &["lining"]), ["with long sleeves lining"]);
        let long = "a gusset that is cut on the bias, ";
        let three = labels_of("Skirt", "B", &[&format!("{long}left"), &format!("{long}right"), "Ärmel"]);
        assert_eq!(three, ["a gusset that is cut on", "a gusset that is cut o 2", "Skirt B Ärmel"]);
        // Two bytes a letter: the cut falls between two, and the label still fits.
        let wide = labels_of("é", "é", &["éééééééééééééééé", "éééééééééééééééé"]);
        assert_eq!(wide, ["éééééééééééé", "ééééééééééé 2"]);
        assert!(wide.iter().chain(&three).all(|label| label.len() <= MAX_LABEL_BYTES));
    }
}
