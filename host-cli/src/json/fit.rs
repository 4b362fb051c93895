//! `fit` as one JSON object.

use serde::Serialize;
use tenter_core::{Grain, Unit};

use crate::finding::amounts::{ClothAmount, as_cut};
use crate::finding::fit::asked::Feature;
use crate::finding::fit::cloth::ClothAnswer;
use crate::finding::fit::{Candidate, Fitted, Reason, amounts};
use crate::json::cloth::widening;
use crate::json::wash::AllowanceJson;
use crate::json::{PartJson, SettleJson, line, millimetres, part, rounded, settle};
use crate::log::Tag;

#[derive(Serialize)]
struct FitJson<'a> {
    pattern: &'a str,
    view: &'a str,
    roles: Vec<RoleJson<'a>>,
    /// What is cut in all from each cloth that comes first for a role.
    cloths: Vec<AmountJson>,
}

#[derive(Serialize)]
struct AmountJson {
    #[serde(flatten)]
    tag: Tag,
    name: String,
    roles: Vec<TakenJson>,
    needed_mm: f64,
    on_hand_mm: Option<f64>,
    missing_mm: f64,
    /// What to buy, rounded up to what shops cut where the reader shops.
    buy_mm: Option<f64>,
    cost: Option<String>,
    is_estimate: bool,
}

#[derive(Serialize)]
struct TakenJson {
    role: String,
    view: String,
    length_mm: f64,
}

impl AmountJson {
    fn of(amount: &ClothAmount, unit: Unit) -> Self {
        let taken = amount.taken.iter().map(|taken| TakenJson {
            role: taken.role.clone(),
            view: taken.view.clone(),
            length_mm: millimetres(taken.length),
        });
        Self {
            tag: amount.cloth.tag,
            name: amount.cloth.name.clone(),
            roles: taken.collect(),
            needed_mm: millimetres(amount.needed),
            on_hand_mm: amount.on_hand.map(millimetres),
            missing_mm: millimetres(amount.missing()),
            buy_mm: amount.to_buy(unit).map(millimetres),
            cost: amount.cost(unit),
            is_estimate: amount.is_estimate,
        }
    }
}

#[derive(Serialize)]
struct RoleJson<'a> {
    role: &'a str,
    outcome: &'static str,
    fabrics: Vec<CandidateJson<'a>>,
}

#[derive(Serialize)]
struct CandidateJson<'a> {
    #[serde(flatten)]
    tag: Tag,
    name: &'a str,
    seen: bool,
    answer: &'static str,
    chance: Option<f64>,
    reason: &'static str,
    /// What nobody said of the cloth and the role asks.
    not_said: Option<&'static str>,
    comes_back_poorly: bool,
    grain: Option<&'static str>,
    grains: Vec<GrainJson>,
    cloth: &'static str,
    needed_mm: Option<f64>,
    missing_mm: Option<f64>,
    by_area: bool,
    washing_known: Option<bool>,
    /// What other roles take of it.
    besides_mm: Option<f64>,
    /// What a layout one way up adds, within the length that is needed.
    one_way_mm: Option<f64>,
    /// What such cloth usually loses in the wash, where nobody measured this one.
    allowance: Option<AllowanceJson>,
    cost: Option<String>,
}

#[derive(Serialize)]
struct GrainJson {
    grain: &'static str,
    parts: Vec<PartJson>,
    settle: Option<SettleJson>,
    tests: Vec<String>,
    widened: Vec<&'static str>,
}

/// The answer where nothing is asked.
const CHOOSE: &str = "choose yourself";

const fn feature_word(feature: Feature) -> &'static str {
    match feature {
        Feature::Construction => "construction",
        Feature::Purpose => "purpose",
        Feature::Finish => "finish",
        Feature::Drape => "drape",
        Feature::Mass => "mass",
    }
}

/// The JSON text, on one line.
#[must_use]
pub fn render(fitted: &Fitted<'_>) -> String {
    let roles = fitted.roles.iter().map(|fit| RoleJson {
        role: &fit.role.name,
        outcome: if fit.is_free() { CHOOSE } else { fit.outcome().word() },
        fabrics: fit.candidates.iter().map(|candidate| candidate_json(candidate, fitted)).collect(),
    });
    let cloths = amounts(fitted.roles).cut_as(fitted.stock.shop_cut).cloths;
    let json = FitJson {
        pattern: &fitted.pattern.name,
        view: fitted.view,
        roles: roles.collect(),
        cloths: cloths.iter().map(|amount| AmountJson::of(amount, fitted.unit)).collect(),
    };
    line(&json)
}

fn candidate_json<'a>(candidate: &Candidate<'a>, fitted: &Fitted<'_>) -> CandidateJson<'a> {
    let (reason, grain) = match candidate.reason {
        Reason::OtherKind(feature) => (feature_word(feature), None),
        Reason::NotSaid(_) => ("not said", None),
        Reason::Mass(..) => ("mass", None),
        Reason::AsAsked => ("as asked", None),
        Reason::NotPulled(grain) => ("not pulled", Some(grain)),
        Reason::Disagree(grain) => ("tests disagree", Some(grain)),
        Reason::Doubted(grain) => ("doubted", Some(grain)),
        Reason::NotRead(grain, _) => ("not read after release", Some(grain)),
        Reason::Part(grain, _) => ("measured", Some(grain)),
        Reason::NothingAsked => ("nothing asked", None),
    };
    let grains = candidate.grains.iter().filter(|along| along.is_answered);
    let grains = grains.filter_map(|along| {
        let evaluation = along.in_full(fitted.confidence)?;
        Some(GrainJson {
            grain: along.grain.word(),
            parts: evaluation.parts.iter().map(part).collect(),
            settle: evaluation.settle.as_ref().map(settle),
            tests: along.measured.tests.iter().map(|counted| counted.stored.id.to_string()).collect(),
            widened: evaluation.widened.iter().copied().map(widening).collect(),
        })
    });
    let needed = candidate.cloth.needed();
    let price = candidate.fabric.shop.as_ref().and_then(|shop| shop.price.as_ref());
    CandidateJson {
        tag: candidate.fabric.tag,
        name: &candidate.fabric.name,
        seen: candidate.fabric.is_seen(),
        answer: if candidate.reason == Reason::NothingAsked { CHOOSE } else { candidate.answer.word() },
        chance: candidate.chance.map(|chance| rounded(chance, 4)),
        reason,
        not_said: match candidate.reason {
            Reason::NotSaid(feature) => Some(feature_word(feature)),
            _ => None,
        },
        comes_back_poorly: candidate.poorly.is_some(),
        grain: grain.map(Grain::word),
        grains: grains.collect(),
        cloth: match candidate.cloth {
            ClothAnswer::NotSaid => "not said",
            ClothAnswer::NotKnown { .. } => "not known",
            ClothAnswer::Enough { .. } => "enough",
            ClothAnswer::Short { .. } => "short",
        },
        needed_mm: needed.map(|needed| millimetres(needed.length)),
        missing_mm: match candidate.cloth {
            ClothAnswer::Short { missing, .. } => Some(millimetres(missing)),
            _ => None,
        },
        by_area: needed.is_some_and(|needed| needed.by_area),
        washing_known: needed.map(|needed| needed.washing.is_known()),
        besides_mm: needed.map(|needed| millimetres(needed.besides)),
        one_way_mm: needed.and_then(|needed| needed.one_way).map(|extra| millimetres(extra.length)),
        allowance: needed.and_then(|needed| needed.washing.allowance()).map(Into::into),
        cost: price
            .zip(needed)
            .map(|(price, needed)| price.of(as_cut(needed.in_all(), fitted.unit, fitted.stock.shop_cut))),
    }
}
