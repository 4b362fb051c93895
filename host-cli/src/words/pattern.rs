//! What patterns ask, in words.

use tenter_core::{DEFAULT_REST_SECONDS, Demand, Grain, Limit, Range, Unit};

use crate::finding::fit::asked;
use crate::finding::pattern::SharedRoles;
use crate::log::{Drape, Finish, Pattern, Purpose, Role};
use crate::plain::isolated;
use crate::words::quantity;
use crate::words::terms::duration;

/// How a pattern without views calls its only one.
const NO_VIEW: &str = "-";

/// Where there is no pattern yet.
pub const NONE: &str = "no patterns yet; begin with tenter pattern add NAME VIEW ROLE --crosswise 5%";
/// Where a pattern has no role yet.
pub const NO_ROLES: &str = "no roles yet; begin with tenter pattern add NAME VIEW ROLE --crosswise 5%";
/// Where nothing is retired.
pub const NONE_RETIRED: &str = "nothing is retired";

/// A range in words, each limit as `limit` says it: `at least 5 %`, `5 % to 15 %`, `at most 15 %`, `exactly 5 %`; none
/// where nothing is asked.
#[must_use]
pub fn range(range: Range, limit: impl Fn(Limit) -> String) -> Option<String> {
    match (range.at_least.map(&limit), range.at_most.map(&limit)) {
        (None, None) => None,
        (Some(least), None) => Some(format!("at least {least}")),
        (None, Some(most)) => Some(format!("at most {most}")),
        (Some(least), Some(most)) if least == most => Some(format!("exactly {least}")),
        // A printed gauge has a "to" of its own.
        (Some(least), Some(most)) if least.contains(" to ") || most.contains(" to ") => {
            Some(format!("at least {least}, at most {most}"))
        }
        (Some(least), Some(most)) => Some(format!("{least} to {most}")),
    }
}

/// What a demand asks.
#[must_use]
pub fn demand(demand: &Demand) -> String {
    let mut parts: Vec<String> = Vec::new();
    for grain in [Grain::Crosswise, Grain::Lengthwise, Grain::Bias] {
        let asked = range(demand.stretch(grain), |limit| limit.to_string());
        parts.extend(asked.map(|asked| format!("{} {asked}", grain.word())));
    }
    // 30 min unless said.
    let at = match demand.rest_seconds {
        DEFAULT_REST_SECONDS => String::new(),
        seconds => format!(" after {}", duration(seconds)),
    };
    parts.extend(demand.growth_at_most.map(|limit| format!("growth at most {limit}{at}")));
    parts.extend(demand.recovery_at_least.map(|limit| format!("recovery at least {limit}{at}")));
    parts.join(", ")
}

/// What a role asks of its cloth besides figures and construction, part by part.
#[must_use]
pub fn features(role: &Role) -> Vec<String> {
    let mut parts = Vec::new();
    parts.extend(match (role.mass.at_least, role.mass.at_most) {
        (None, None) => None,
        (Some(least), None) => Some(format!("at least {least}")),
        (None, Some(most)) => Some(format!("at most {most}")),
        (Some(least), Some(most)) => Some(format!("{least} to {most}")),
    });
    if !role.drapes.is_empty() {
        parts.push(any_of(&role.drapes, Drape::word));
    }
    if !role.finishes.is_empty() {
        parts.push(any_of(&role.finishes, Finish::word));
    }
    parts.extend(role.purpose.map(|purpose| made_as(purpose).to_owned()));
    parts
}

/// What a cloth is made for, as what it is.
#[must_use]
pub const fn made_as(purpose: Purpose) -> &'static str {
    match purpose {
        Purpose::Outer => "for the outside",
        Purpose::Lining => "a lining",
        Purpose::Interfacing => "an interfacing",
        Purpose::Rib => "ribbing",
        Purpose::Pocketing => "for pockets",
    }
}

/// Words of which any will do: `soft or fluid`.
#[must_use]
pub fn any_of<T: Copy>(all: &[T], word: fn(T) -> &'static str) -> String {
    all.iter().map(|one| word(*one)).collect::<Vec<_>>().join(" or ")
}

/// What a role asks.
#[must_use]
pub fn asks(role: &Role, unit: Unit) -> String {
    let stretch = demand(&asked::demand(role));
    let mut parts = match (stretch.is_empty(), asked::nothing(role)) {
        (_, true) => vec!["asks nothing, so choose yourself".to_owned()],
        (true, false) => vec!["any stretch".to_owned()],
        (false, false) if asked::asks_as_close(role) => vec![format!("{stretch}, as a garment that lies close asks")],
        (false, false) => vec![stretch],
    };
    if !role.constructions.is_empty() {
        parts.push(role.made());
    }
    parts.extend(features(role));
    if let Some(cloth) = role.cloth {
        let (length, width) = (quantity::cloth_needed(cloth.length, unit), quantity::width(cloth.width, unit));
        parts.push(format!("{length} of {width}"));
    }
    parts.join("; ")
}

/// What roles take of one cloth together.
#[must_use]
pub fn together(one: &SharedRoles<'_>, unit: Unit) -> String {
    let (length, width) = (quantity::cloth_needed(one.length, unit), quantity::width(one.width, unit));
    let names: Vec<String> = one.roles.iter().map(|role| isolated(&role.name)).collect();
    let names = match names.as_slice() {
        [several @ .., last] if !several.is_empty() => format!("{} and {last}", several.join(", ")),
        few => few.join(""),
    };
    format!("{length} of {width}, if you cut {names} from one cloth")
}

/// The name of a view as a heading; empty for a pattern without views.
#[must_use]
pub fn view(view: &str) -> String {
    if has_views(view) { format!("view {}", isolated(view)) } else { String::new() }
}

/// Whether a view is one of several, and not the only one of a pattern without views.
#[must_use]
pub fn has_views(view: &str) -> bool {
    view != NO_VIEW
}

/// A pattern with one of its views.
#[must_use]
pub fn title(pattern: &Pattern, of: &str) -> String {
    titled(&pattern.name, of)
}

/// The name of a pattern with that of one of its views.
#[must_use]
pub fn titled(pattern: &str, of: &str) -> String {
    let parts = [isolated(pattern), view(of)];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}
