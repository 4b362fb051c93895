//! Which cloth suits which role of a view, in sentences.

use tenter_core::making::washing::Washing;
use tenter_core::{Answer, Ask, Length, Part, Side, Unit};

use crate::finding::amounts;
use crate::finding::check::figure;
use crate::finding::cloth::Disagreement;
use crate::finding::fit::asked::{self, Feature};
use crate::finding::fit::cloth::{ClothAnswer, Needed};
use crate::finding::fit::{Candidate, Fitted, Reason, RoleFit, purpose};
use crate::log::{Construction, Drape, Fabric, Finish, Role, Tag};
use crate::plain::isolated;
use crate::words::pattern::{self, demand};
use crate::words::terms::{self, percent};
use crate::words::{check, counts, figures, memory, quantity, washing};

/// Where there is nothing to choose from.
pub const EMPTY: &str = "the stash is empty; begin with tenter cloth add NAME";
/// What to know of lengths that hold an allowance for the wash, said once for several cloths.
pub const ALLOWANCE_NOTE: &str =
    "nobody measured what a wash takes off, so the length has the most that is usual; measure it with tenter wash";

/// How likely it is that a cloth meets what is asked.
#[must_use]
pub fn chance(answer: Answer, chance: Option<f32>, disagree: bool) -> Option<String> {
    if disagree {
        return Some(counts::DISAGREE.to_owned());
    }
    let chance = percent(chance?);
    match answer {
        Answer::Meets => Some(format!("{chance} sure")),
        Answer::Close => Some(format!("{chance} that it meets")),
        Answer::Unknown | Answer::Short | Answer::Over => None,
    }
}

/// Why a cloth got its answer, and whether there is enough of it.
#[must_use]
pub fn because(candidate: &Candidate<'_>, fitted: &Fitted<'_>) -> String {
    let mut parts = vec![reason(candidate, fitted)];
    let before_wash = candidate.grains.iter().filter(|along| along.is_answered);
    parts.extend(before_wash.filter_map(|along| counts::before_wash(along.measured)).next());
    // What was asked of growth is told; what was not asked is told where it is poor.
    let told = matches!(candidate.reason, Reason::Part(_, part) if part.ask != Ask::Stretch && candidate.answer != Answer::Meets);
    let poorly = candidate.poorly.as_ref().filter(|_| !told);
    parts.extend(poorly.and_then(|figures| figures::poorly(figures, fitted.confidence)));
    // How much there is of a cloth that will not do is of no use.
    if !candidate.verdict().is_refused() {
        parts.extend(amount(candidate, fitted));
        parts.extend(candidate.kept.iter().map(|kept| memory::kept(kept.length, &kept.garment, fitted.unit)));
    }
    parts.retain(|part| !part.is_empty());
    parts.join("; ")
}

fn reason(candidate: &Candidate<'_>, fitted: &Fitted<'_>) -> String {
    let tag = candidate.fabric.tag;
    match candidate.reason {
        Reason::OtherKind(_) => String::new(),
        Reason::NotSaid(feature) => not_said(feature, tag),
        Reason::Mass(side, limit) => {
            let has = candidate.fabric.mass.map(|mass| mass.to_string()).unwrap_or_default();
            match side {
                Side::AtLeast => format!("it is {has}, but at least {limit} is needed"),
                Side::AtMost => format!("it is {has}, but at most {limit} is allowed"),
            }
        }
        Reason::NothingAsked => "the role asks nothing".to_owned(),
        Reason::NotPulled(grain) => {
            format!("{} not measured yet: tenter pull {tag} --grain {}", grain.word(), grain.word())
        }
        Reason::NotRead(grain, ask) => {
            let time = quantity::time_typed(candidate.rest_seconds);
            format!("{} {} not measured yet: pull again and add --back LENGTH@{time}", grain.word(), ask.word())
        }
        Reason::Disagree(grain) => {
            let along = candidate.along(grain);
            let apart =
                along.and_then(|along| Disagreement::of(along.measured, along.judged(fitted.confidence)?.contradicts));
            let apart =
                apart.map(|apart| counts::disagreement(&apart, fitted.confidence, fitted.here)).unwrap_or_default();
            format!("{} {apart}", grain.word())
        }
        Reason::Doubted(grain) => {
            let along = candidate.along(grain);
            let unit = quantity::marks_unit(fitted.unit);
            let doubted =
                along.and_then(|along| counts::doubted(along.measured, &along.judged(fitted.confidence)?.doubts, unit));
            format!("{} {}", grain.word(), doubted.unwrap_or_default())
        }
        Reason::AsAsked => measured(candidate, fitted),
        Reason::Part(..) if candidate.answer == Answer::Meets => measured(candidate, fitted),
        Reason::Part(grain, part) => {
            let along = candidate.along(grain);
            let seen = along.and_then(|along| figure(&along.judged(fitted.confidence)?.figures, part.ask));
            let seen = seen.map(|figure| terms::figure(&figure, fitted.confidence)).unwrap_or_default();
            let asked = match part.side {
                Side::AtLeast => format!("at least {}{} is needed", part.limit, printed(&part)),
                Side::AtMost => format!("at most {}{} is allowed", part.limit, printed(&part)),
            };
            let but = if candidate.verdict().is_refused() { "but" } else { "and" };
            let mut text = format!("{} {} {seen}, {but} {asked}", grain.word(), part.ask.word());
            if candidate.answer == Answer::Close {
                let settle = along.and_then(|along| along.in_full(fitted.confidence)?.settle);
                let unit = quantity::marks_unit(fitted.unit);
                let settle = match &settle {
                    None => check::ON_LIMIT.to_owned(),
                    // To wait settles no stretch: the growth is open beside it.
                    Some(settle) if part.ask == Ask::Stretch && settle.wait_until.is_some() => {
                        format!("its growth is open too: {}", check::settle(settle, unit))
                    }
                    Some(settle) => check::settle(settle, unit),
                };
                text.push_str(&format!("; {settle}"));
            }
            text
        }
    }
}

/// What to say of a cloth, where the role asks it and nobody did.
fn not_said(feature: Feature, tag: Tag) -> String {
    let (what, typed) = match feature {
        Feature::Construction => ("how it is made", "--construction woven"),
        Feature::Purpose => ("what it is made for", "--purpose outer"),
        Feature::Finish => ("its finish", "--finish plain"),
        Feature::Drape => ("how it falls", "--drape soft"),
        Feature::Mass => ("its mass", "--mass 200g/m2"),
    };
    format!("{what} is not recorded: tenter cloth edit {tag} {typed}")
}

/// What a cloth of another kind is not.
#[must_use]
pub fn not_asked(feature: Feature, role: &Role) -> String {
    match feature {
        Feature::Construction if role.constructions == [Construction::Other] => "woven or knit".to_owned(),
        Feature::Construction => format!("not {}", role.made()),
        Feature::Purpose => {
            purpose::of_role(role).map(|wanted| format!("not {}", pattern::made_as(wanted))).unwrap_or_default()
        }
        Feature::Finish => format!("not {}", pattern::any_of(&role.finishes, Finish::word)),
        Feature::Drape => format!("not {}", pattern::any_of(&role.drapes, Drape::word)),
        Feature::Mass => "not of that mass".to_owned(),
    }
}

/// What to do where a role asks nothing.
pub const CHOOSE: &str =
    "the role asks nothing of its cloth, so choose one yourself, or add a demand: tenter pattern edit";

/// A printed gauge as it stands on the envelope, beside its percentage.
fn printed(part: &Part) -> String {
    part.limit.printed_marks().map_or_else(String::new, |(gauge, extended)| {
        format!(" ({} to {})", gauge.show(Unit::Inch), extended.show(Unit::Inch))
    })
}

/// All that is asked, as it was read.
fn measured(candidate: &Candidate<'_>, fitted: &Fitted<'_>) -> String {
    let mut parts: Vec<String> = Vec::new();
    for along in &candidate.grains {
        let Some(judged) = along.judged(fitted.confidence) else { continue };
        let mut asked: Vec<Ask> = judged.parts.iter().map(|part| part.ask).collect();
        asked.dedup();
        for ask in asked {
            let Some(figure) = figure(&judged.figures, ask) else { continue };
            let what = if ask == Ask::Stretch { along.grain.word() } else { ask.word() };
            parts.push(format!("{what} {}", terms::figure(&figure, fitted.confidence)));
        }
    }
    // What a cloth is, where the role asks it; how it is made goes without saying beside a figure.
    let is_measured = !parts.is_empty();
    let told = candidate.asked.iter().filter(|feature| !is_measured || **feature != Feature::Construction);
    parts.extend(told.map(|feature| has(*feature, candidate.fabric)));
    parts.join(", ")
}

/// What a cloth is.
fn has(feature: Feature, fabric: &Fabric) -> String {
    match feature {
        Feature::Construction => fabric.construction.word().to_owned(),
        Feature::Purpose => fabric.purpose.map(pattern::made_as).unwrap_or_default().to_owned(),
        Feature::Finish => fabric.finish.map(Finish::word).unwrap_or_default().to_owned(),
        Feature::Drape => fabric.drape.map(Drape::word).unwrap_or_default().to_owned(),
        Feature::Mass => fabric.mass.map(|mass| mass.to_string()).unwrap_or_default(),
    }
}

/// Whether there is enough of a cloth.
fn amount(candidate: &Candidate<'_>, fitted: &Fitted<'_>) -> Vec<String> {
    let (fabric, unit) = (candidate.fabric, fitted.unit);
    let Some(needed) = candidate.cloth.needed() else { return Vec::new() };
    let length = quantity::cloth_needed(needed.in_all(), unit);
    let had = fabric.length.map(|had| quantity::cloth(had, unit)).unwrap_or_default();
    let besides = if needed.besides > Length::ZERO { " with what other roles take of it" } else { "" };
    let mut parts = vec![match (&fabric.shop, candidate.cloth) {
        (Some(shop), _) => {
            let bought = amounts::as_cut(needed.in_all(), unit, fitted.stock.shop_cut);
            let price = shop.price.as_ref().map(|price| format!(" for {}", price.of(bought))).unwrap_or_default();
            format!("seen at {}: buy {}{besides}{price}", isolated(&shop.place), quantity::as_cut(bought, unit))
        }
        (None, ClothAnswer::Short { missing, .. }) => {
            format!("you have {had} and need {length}{besides}: {} missing", quantity::cloth_needed(missing, unit))
        }
        (None, ClothAnswer::Enough { .. }) => format!("you have {had} and need {length}{besides}"),
        (None, _) => {
            let unknown = match (fabric.length, fabric.width) {
                (None, None) => "its length and width are",
                (None, Some(_)) => "its length is",
                (Some(_), _) => "its width is",
            };
            format!("you need {length}{besides}, but {unknown} not recorded")
        }
    }];
    parts.extend(within(&needed, unit));
    parts
}

/// What is in a length besides what the pattern says, and whether it is an estimate.
fn within(needed: &Needed, unit: Unit) -> Vec<String> {
    let mut parts = Vec::new();
    if let Some(share) = washing::share(needed.counted) {
        parts.push(match needed.washing {
            Washing::Usual(usual) => format!("{share} of that is for the wash, as {}", washing::usually(&usual)),
            _ => format!("{share} of that is for the wash"),
        });
    }
    if let Some(extra) = needed.one_way {
        let length = quantity::cloth_needed(extra.length, unit);
        parts.push(format!("{length} of that is for laying all pieces one way up"));
    }
    if needed.far_narrower {
        parts.push(
            "the cloth is far narrower than the pattern expects, and a piece may not fit: lay it out first".to_owned(),
        );
    } else if needed.by_area {
        parts.push(
            "the cloth is narrower than the pattern expects, so that length is an estimate: lay it out first"
                .to_owned(),
        );
    }
    parts
}

/// So many more that are not listed.
#[must_use]
pub fn more(more: usize) -> String {
    format!("and {more} more (--all lists them)")
}

/// The cloths of another kind than the role asks.
#[must_use]
pub fn other_kind(feature: Feature, candidates: &[&Candidate<'_>], role: &Role, listed: usize) -> String {
    let name = |one: &&Candidate<'_>| format!("{} {}", one.fabric.tag, isolated(&one.fabric.name));
    let mut names: Vec<String> = candidates.iter().take(listed).map(name).collect();
    if let Some(more @ 1..) = candidates.len().checked_sub(listed) {
        names.push(self::more(more));
    }
    format!("{}: {}", not_asked(feature, role), names.join(", "))
}

/// What to look for where nothing fits.
#[must_use]
pub fn shopping(fit: &RoleFit<'_>, unit: Unit) -> String {
    let (role, made) = (fit.role, fit.role.made());
    let mut parts = vec![if made.is_empty() { "cloth".to_owned() } else { format!("{made} cloth") }];
    let stretch = demand(&asked::demand(role));
    if !stretch.is_empty() {
        parts.push(stretch);
    }
    parts.extend(pattern::features(role));
    if let Some(cloth) = role.cloth {
        let (length, width) = (quantity::cloth_needed(cloth.length, unit), quantity::width(cloth.width, unit));
        parts.push(format!("{length} of {width}, and more for what the wash takes"));
    }
    let settle = match fit.open() {
        0 => "",
        1 => "; or settle the open one above",
        _ => "; or settle one of the open ones above",
    };
    format!("{}{settle}", parts.join(", "))
}
