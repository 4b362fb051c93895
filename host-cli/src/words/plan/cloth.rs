//! What is to be settled, bought and tried of cloths and notions, in words.

use tenter_core::making::elastic::Tunnel;
use tenter_core::making::garment::{CordAt, Detail, Details, GarmentKind, GarmentPart, Notion, TaskReason, Work};
use tenter_core::making::sizing::Wearable;
use tenter_core::making::source::Source;
use tenter_core::making::zip::chain;
use tenter_core::{Ask, Confidence, Figure, Grain, Length, Ratio, Settle, Side, Unit};

use super::work;
use crate::finding::fit::Reason;
use crate::finding::pair::NamedCloth;
use crate::finding::plan::{SizedLength, ViewPlan, WaistEdge};
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::pair::named;
use crate::words::{check, quantity, terms};

fn own(about: &'static str, text: impl Into<String>, why: impl Into<String>) -> Spoken {
    Spoken::new(about, text, why, Source::Own)
}

/// A percentage that was asked, without a decimal that nobody typed.
fn plain(ratio: Ratio) -> String {
    let whole = ratio.percent(0);
    let is_whole = Ratio::new(whole.scaled(), 100) == Some(ratio);
    if is_whole { format!("{whole} %") } else { quantity::percent(ratio) }
}

/// How a woven is opened.
pub(super) fn how_opened(kind: GarmentKind) -> Spoken {
    let text = match kind {
        GarmentKind::Dress => {
            "how it opens; without a zip or buttons its neck and its waist must pass head and shoulders; pass \
             --with closed-zip or --with buttons"
        }
        GarmentKind::Shirt => "how it opens; without buttons its neck must pass the head; pass --with buttons",
        GarmentKind::Jeans => "how it opens, by a fly or an elastic waist; pass --with fly or --with elastic-waist",
        _ => {
            "how it opens, by a fly, a zip or an elastic waist; pass --with fly, --with closed-zip or --with \
             elastic-waist"
        }
    };
    let why = match kind {
        GarmentKind::Dress | GarmentKind::Shirt => "a woven without an opening does not give for head and shoulders",
        _ => "a woven waist without an opening does not pass the hips",
    };
    own("say", text, why)
}

/// How wide a waist edge must be that passes the hips.
pub(super) fn waist_edge(edge: &WaistEdge, confidence: Confidence) -> Spoken {
    let [hips, least] = [edge.hips, edge.least].map(|length| quantity::to_sew(length, edge.unit));
    let gives = match edge.gives {
        None => "nobody pulled the cloth crosswise".to_owned(),
        Some(gives) => format!("the cloth gives {} crosswise", terms::figure(&gives, confidence)),
    };
    let text = format!("the waist edge at least {least} round: it must pass hips of {hips}, and {gives}");
    Spoken::new("keep", text, "edge × (1 + stretch) ≥ hips, for sure", Source::Derived("arithmetic"))
}

/// What would settle a role that is in doubt.
pub(super) fn settle(
    (cloth, role): (&NamedCloth, &str),
    reason: Reason,
    figure: Option<&Figure>,
    settle: Option<&Settle>,
    (rest_seconds, confidence, unit): (u32, Confidence, Unit),
) -> Spoken {
    let tag = cloth.tag;
    let named = named(cloth);
    let pull = |grain: Grain| format!("tenter pull {tag} --grain {}", grain.word());
    let marks = quantity::marks_unit(unit);
    let (text, why) = match reason {
        Reason::NotRead(grain, ask) => {
            let back = quantity::time_typed(rest_seconds);
            let text = format!("{} of {named} {}", ask.word(), grain.word());
            (text, format!("it was not read after release; {} --back LENGTH@{back}", pull(grain)))
        }
        Reason::Disagree(grain) => {
            (format!("{named} {}: its tests disagree, so pull it again", grain.word()), pull(grain))
        }
        Reason::Doubted(grain) => {
            (format!("{named} {}: its readings are in doubt, so pull it again", grain.word()), pull(grain))
        }
        Reason::Part(grain, part) => {
            let seen = figure.map(|figure| terms::figure(figure, confidence)).unwrap_or_default();
            let limit = match part.side {
                Side::AtLeast => format!("at least {}", part.limit),
                Side::AtMost => format!("at most {}", part.limit),
            };
            let more = settle.map_or_else(|| check::ON_LIMIT.to_owned(), |settle| check::settle(settle, marks));
            let ask = if part.ask == Ask::Stretch { "" } else { part.ask.word() };
            let text = [named.as_str(), grain.word(), ask].into_iter().filter(|word| !word.is_empty());
            (format!("{}: {more}", text.collect::<Vec<_>>().join(" ")), format!("{seen}, and {limit} is asked"))
        }
        Reason::NotSaid(_) => (format!("what {named} is; the view asks it"), format!("tenter cloth edit {tag}")),
        _ => (format!("{named}: it is in doubt"), format!("tenter cloth show {tag}")),
    };
    own("settle", format!("{}: {text}", isolated(role)), why)
}

/// A notion to buy, with its length where that is known.
pub(super) fn notion(
    plan: &ViewPlan,
    notion: Notion,
    lengths: &[SizedLength],
    (why, source): (TaskReason, Source),
    unit: Unit,
) -> Spoken {
    let (kind, details) = plan.garment.map_or((None, Details::NONE), |(kind, details)| (Some(kind), details));
    let mut text = work::measured(work::bought(notion, details), unit);
    if !lengths.is_empty() {
        let lengths = lengths.iter().map(|one| quantity::tape(one.length, one.unit));
        let name = if notion == Notion::Cord { "cord" } else { "elastic" };
        text = format!("{} of {name}", lengths.collect::<Vec<_>>().join(" and "));
    }
    if let (Notion::Zip, Some(kind)) = (notion, kind) {
        let chain = chain(kind);
        let size = if chain.lightest == chain.heaviest {
            chain.lightest.to_string()
        } else {
            format!("{} to {}", chain.lightest, chain.heaviest)
        };
        let ends = if details.has(Detail::SeparatingZip) { "separating" } else { "closed" };
        let such = match kind {
            _ if details.has(Detail::SeparatingZip) => "62cm",
            GarmentKind::Dress => "56cm",
            _ => "18cm",
        };
        text = format!(
            "a {ends} zip of size {size}, as long as its edge; pass --zip {such} with that edge for the length to buy"
        );
    }
    let why = match notion {
        Notion::ClearElastic => "for what must not stretch".to_owned(),
        Notion::BindingTape => "the inside of the garment is seen".to_owned(),
        _ => work::why(why, kind),
    };
    Spoken::new("buy", text, why, source)
}

/// A casing as wide as what runs in it asks.
pub(super) fn casing(work: Work, tunnel: &Tunnel, width: Length, unit: Unit) -> Spoken {
    let fine = quantity::seam_unit(unit);
    let [turn, depth, width] = [tunnel.turn, tunnel.depth, width].map(|one| quantity::to_sew(one, fine));
    let gap = |text| work::measured(text, unit);
    let (at, rest) = match work {
        Work::WristCasing => (
            " at the wrists",
            gap(", but for {5 cm|2 in} underarm; draw the elastic in, lap its ends and close the casing"),
        ),
        Work::WaistCasing => {
            (" at the waist", gap(", but for {5 cm|2 in}; draw the elastic in, lap its ends and close the casing"))
        }
        Work::CordCasing(CordAt::Hood) => (" at the face of the hood", String::new()),
        Work::CordCasing(CordAt::LowerEdge) => (" at the lower edge, baste the allowances down", String::new()),
        _ => (" at the waist, baste the allowances down", String::new()),
    };
    let over = if work == Work::CordCasing(CordAt::Hood) { " over the eyelets" } else { "" };
    let text = format!("{turn} under{at}, fold a casing of {depth}{over} and stitch it{rest}");
    Spoken::new("turn", text, format!("for what is {width} wide"), tunnel.source)
}

/// A part as it is called.
pub(super) const fn part(part: GarmentPart) -> &'static str {
    match part {
        GarmentPart::Lining => "lining",
        _ => "bands",
    }
}

/// How it is seen whether a cloth shows through.
pub(super) fn opacity(by: [Ratio; 2], mass: Option<(u16, u16)>, wet: bool, source: Source) -> Spoken {
    let ways = by.into_iter().zip([Grain::Crosswise, Grain::Lengthwise]);
    let ways = ways.filter(|(by, _)| *by > Ratio::ZERO);
    let ways: Vec<String> = ways.map(|(by, grain)| format!("{} {}", plain(by), grain.word())).collect();
    let wet = if wet { ", dry and wet" } else { "" };
    let thinner = mass.map(|(mass, there)| format!("; {mass} g/m² become {there} g/m²")).unwrap_or_default();
    let text = format!(
        "the cloth by {}{wet}, over black paper laid on white: if you see the edge, it shows through{thinner}",
        ways.join(" and ")
    );
    Spoken::new("stretch", text, "as far as the view asks; mass / (1 + stretch), and no limit is published", source)
}

/// What a cloth still gives at the stretch that is asked.
pub(super) fn reach(grain: Grain, by: Ratio, left: Ratio) -> Spoken {
    let text = format!(
        "stretched {} by {}, as far as the view asks, it gives {} more",
        grain.word(),
        plain(by),
        quantity::percent(left)
    );
    Spoken::new("reach", text, "(1 + stretch) / (1 + asked) − 1", Source::Derived("arithmetic"))
}

/// How much smaller than the body a close garment is cut.
pub(super) fn ease(worn: &Wearable) -> Spoken {
    let whole = |ratio: Ratio| ratio.percent(0);
    let (least, most) = (whole(worn.least.ratio()), whole(worn.most.ratio()));
    let lengths = worn.lengths.map(|lengths| format!(", and up to {} shorter", quantity::percent(lengths.ratio())));
    let text = format!(
        "such a knit is cut {least} to {most} % smaller round than the body{}; see whether your pattern is already",
        lengths.unwrap_or_default()
    );
    Spoken::new("ease", text, "more is no longer comfortable, whatever the cloth would give", worn.source)
}
