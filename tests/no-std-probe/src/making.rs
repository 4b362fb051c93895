//! The maker's other decisions.

use tenter_core::Construction;
use tenter_core::making::amount::{Amount, missing};
use tenter_core::making::body::{Direction, MOVEMENTS, demand};
use tenter_core::making::care::{Care, Described, Finish};
use tenter_core::making::caution::{CORDS, Job, cautions};
use tenter_core::making::elastic::{
    CASINGS, Drawcord, DrawnThrough, Edging, Fastened, Kind, care, cord_tasks, passes, recommended, rules, tunnel,
};
use tenter_core::making::error::MakingError;
use tenter_core::making::garment::{Detail, Details, GarmentKind, GarmentPart, GarmentPlan, PartCloth, SeamKind, Work};
use tenter_core::making::handling::{
    Cloth, GarmentPlace, Layer, Layered, Runs, Seam, SeamUse, Weave, at, hem, needle, practices, thread,
};
use tenter_core::making::hanging::{METHODS, Specimen, Tension, mass, tension, widest};
use tenter_core::making::pairing::{Joint, Pair, SeamEdge};
use tenter_core::making::sizing::{Ease, Reach, Reduction, Stretch, mass_stretched, wearable};
use tenter_core::making::stitch::Stitch;
use tenter_core::making::washing::{Remedy, Washing, change, counted_on, left, to_buy};
use tenter_core::making::yardage::{Extra, OneWay, ShopCut, Width, by_area, by_chart};
use tenter_core::making::zip::{Choice, Fit, Ready, ZipEdge, ZipEnds, ZipSeries, chain, grows_by};
use tenter_core::{Answer, Confidence, Figure, Grain, Length, Ratio, SUITS, Scale};

use crate::texts::printed;

/// A figure out of plain numbers.
#[repr(C)]
#[derive(Clone, Copy)]
pub struct Given {
    num: i64,
    den: i64,
    u: f32,
    dof: f32,
}

impl Given {
    fn ratio(&self) -> Ratio {
        Ratio::new(self.num, self.den).unwrap_or(Ratio::ZERO)
    }

    fn figure(&self) -> Figure {
        Figure { u: self.u, dof: self.dof, ..Figure::exact(self.ratio()) }
    }

    /// Absent for a denominator below zero.
    fn some(&self) -> Option<Figure> {
        (self.den >= 0).then(|| self.figure())
    }
}

fn confidence(per_mille: u16) -> Confidence {
    Confidence::per_mille(per_mille).unwrap_or_default()
}

fn pick<T: Copy>(from: &[T], at: u8) -> Option<T> {
    from.get(usize::from(at)).copied()
}

fn steps(length: Length) -> u32 {
    length.steps().cast_unsigned()
}

fn said<T>(result: Result<T, MakingError>, sum: impl FnOnce(T) -> u32) -> u32 {
    result.map_or_else(printed, sum)
}

fn share(ratio: Ratio) -> u32 {
    printed(ratio.percent(2))
}

fn answer(answer: Answer, chance: f32) -> u32 {
    printed(answer.word()) ^ chance.to_bits()
}

fn reach(reach: Reach) -> u32 {
    steps(reach.ease.length)
        ^ share(reach.needed.ratio())
        ^ reach.used.map_or(0, share)
        ^ answer(reach.answer, reach.chance)
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_pairing(given: &[Given; 6], seam: i32, stitch: u8, per_mille: u16) -> u32 {
    let [first, second, growth, other_growth, washing, other_washing] = given;
    let one = SeamEdge { growth: growth.some(), washing: washing.some(), ..SeamEdge::new(first.figure()) };
    let other =
        SeamEdge { growth: other_growth.some(), washing: other_washing.some(), ..SeamEdge::new(second.figure()) };
    let joined = Joint { stitch: pick(&Stitch::ALL, stitch), ..Joint::of(Length::from_steps(seam)) };
    let pair = Pair::of(&one, &other, &joined, confidence(per_mille));
    said(pair, |pair| {
        let mismatches = [pair.growth, pair.washing].into_iter().flatten();
        let sum = mismatches.fold(pair.chance.map_or(0, f32::to_bits), |sum, mismatch| {
            let half = mismatch.half_width_mm(Length::from_steps(seam), confidence(per_mille));
            sum ^ half.to_bits()
                ^ steps(mismatch.length)
                ^ share(mismatch.share.ratio)
                ^ answer(mismatch.answer, mismatch.chance)
        });
        let sum = sum ^ share(pair.stretch.ratio) ^ share(pair.gap.ratio) ^ pair.chances.handle.to_bits();
        pair.advice().iter().fold(sum, |sum, line| sum.rotate_left(3) ^ printed(line.source) ^ line.reason as u32)
    })
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_sizing(given: &Given, body: i32, garment: i32, part: u16, whole: u16, per_mille: u16) -> u32 {
    let (body, garment) = (Length::from_steps(body), Length::from_steps(garment));
    let mut sum = said(Reach::of(body, garment, given.figure(), confidence(per_mille)), reach);
    sum ^= said(Ease::of(body, garment), |ease| share(ease.share));
    if let Some(stretch) = Stretch::new(given.ratio()) {
        let reduction = stretch.part(part, whole).and_then(Stretch::most_reduction);
        sum ^= reduction.and_then(|reduction| reduction.of(body)).map_or(0, steps);
    }
    sum ^ Reduction::new(given.ratio()).and_then(Reduction::stretch_needed).map_or(0, |stretch| share(stretch.ratio()))
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_elastic(given: &Given, lengths: &[i32; 3], kind: u8, place: u8, per_mille: u16) -> u32 {
    let [measure, widest, width] = lengths.map(Length::from_steps);
    let (Some(kind), Some(place)) = (pick(&Kind::ALL, kind), pick(&Edging::ALL, place)) else { return 0 };
    let mut sum = said(recommended(kind, place, measure, per_mille > 700), |found| steps(found.cut));
    sum ^= said(tunnel(DrawnThrough::Elastic, width, per_mille > 600, per_mille > 700), |found| steps(found.allowance));
    sum ^= said(Drawcord::of(measure, width, Fastened::Stops, per_mille > 700), |cord| steps(cord.cut));
    sum ^= cord_tasks(Fastened::Tied, per_mille > 600).fold(0, |sum, line| sum << 1 ^ line.task as u32);
    for rule in rules(kind, place) {
        sum ^= printed(rule.source) ^ printed(rule.name);
        sum ^= said(rule.cut(measure), |span| {
            let passes = passes(span.least, rule.overlap, widest, given.figure(), confidence(per_mille));
            steps(span.most) ^ said(passes, reach)
        });
    }
    for casing in CASINGS {
        sum ^= said(casing.depth(width), |span| steps(span.least));
        sum ^= said(casing.allowance(width), |span| steps(span.most));
    }
    care(kind, per_mille > 500).iter().fold(sum, |sum, line| sum ^ printed(line.source))
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_washing(given: &Given, lengths: &[i32; 4], per_mille: u16) -> u32 {
    let [before, after, division, need] = lengths.map(Length::from_steps);
    let Some(scale) = Scale::new(division, tenter_core::Ends::Both) else { return 0 };
    let changed = change(before, after, scale);
    let worst = counted_on(changed.unwrap_or(given.figure()), confidence(per_mille));
    let sum = said(changed, |figure| share(figure.ratio) ^ figure.u.to_bits());
    sum ^ said(to_buy(need, worst), steps) ^ said(left(need, worst), steps) ^ Remedy::of(worst) as u32
}

/// A label of any bytes, as far as they are text.
#[unsafe(no_mangle)]
pub extern "C" fn probe_label(label: &[u8; 64], given: &Given, needs: &[i32; 3], kinds: &[u8; 4], washed: bool) -> u32 {
    let fibre = core::str::from_utf8(label).unwrap_or_default();
    let finish = pick(&Finish::ALL, kinds[0]);
    let construction = pick(&Construction::ALL, kinds[1]).unwrap_or_default();
    let cloth = Described { fibre, name: fibre, construction, finish };
    let treat = Care::of(&cloth);
    let sum = printed(treat.before.source) ^ treat.iron.rule as u32 ^ treat.press.rule as u32 ^ treat.pins.rule as u32;
    let stands = Washing::of(&cloth, washed, given.some(), Grain::Lengthwise);
    let [need, wants, has] = needs.map(Length::from_steps);
    let kind = pick(&GarmentKind::ALL, kinds[2]);
    let extra = OneWay::of(&cloth, true).map_or(Length::ZERO, |way| way.extra(need, kind).length);
    let amount = Amount::new(&stands, Confidence::default())
        .and_then(|amount| amount.of_width(wants, has, &stands, Confidence::default()));
    let buy = amount.and_then(|amount| amount.and(extra).to_buy(need));
    let cut = pick(&ShopCut::ALL, kinds[3]).unwrap_or(ShopCut::TenCentimetres);
    let short = missing(has, [need, wants]);
    sum ^ said(buy.and_then(|buy| cut.up(buy)), steps) ^ said(stands.leaves(has), steps) ^ steps(short)
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_handling(given: &[Given; 6], construction: u8, mass: u16, of: u8, per_mille: u16) -> u32 {
    let [lengthwise, crosswise, bias, growth, layer, wanted] = given;
    let constructions = [Construction::Woven, Construction::Knit, Construction::Other];
    let cloth = Cloth {
        mass: (mass > 0).then_some(mass),
        weave: if of & 1 == 0 { Weave::Ordinary } else { Weave::Denim },
        finish: pick(&Finish::ALL, of >> 2).unwrap_or(Finish::Plain),
        elastane: of & 2 == 0,
        lengthwise: lengthwise.some(),
        crosswise: crosswise.some(),
        bias: bias.some(),
        growth: growth.some().map(|figure| figure.ratio),
        ..Cloth::new(pick(&constructions, construction).unwrap_or_default())
    };
    let garment = pick(&GarmentKind::ALL, of >> 4);
    let mut sum = printed(needle(&cloth).source) ^ u32::from(thread(&cloth).tex.0);
    sum ^= practices(&cloth, garment).iter().fold(0, |sum, line| sum ^ printed(line.source));
    let asked = SeamUse {
        asked: wanted.some().map(|figure| figure.ratio),
        runs: pick(&Runs::ALL, of & 7).unwrap_or_default(),
        curved: of & 8 == 0,
        strained: of & 16 == 0,
        held: of & 32 == 0,
        passes: of & 64 == 0,
        enclosed: mass & 1 == 0,
        lined: mass & 2 == 0,
        opens: mass & 4 == 0,
        garment,
    };
    let Seam { sewing, finish, allowance, trimming, stay } = Seam::of(&cloth, &asked);
    sum ^= printed(sewing.source) ^ share(sewing.wanted) ^ sewing.first.stitch as u32 ^ finish.finish as u32;
    sum ^= steps(allowance.width.metric) ^ trimming.map_or(0, |trim| printed(trim.source));
    sum ^= stay.map_or(0, |line| printed(line.source)) ^ printed(hem(&cloth, &asked).source);
    if let Some(worn) = wearable(cloth.construction, cloth.elastane, garment, crosswise.ratio()) {
        sum ^= share(worn.with_lengths(garment, lengthwise.some().map(|figure| figure.ratio)).most.ratio());
    }
    sum ^= mass_stretched(mass, crosswise.ratio(), lengthwise.ratio()).map_or(0, u32::from);
    for place in GarmentPlace::ALL {
        sum ^= at(&cloth, place).map_or(0, |line| printed(line.source));
    }
    for kind in [Layer::Interfacing, Layer::Lining] {
        let layered = Layered::of(crosswise.figure(), kind, layer.figure(), wanted.ratio(), confidence(per_mille));
        sum ^= answer(layered.answer, layered.chance) ^ share(layered.stretch.ratio) ^ layered.instead.len() as u32;
    }
    sum ^ cloth.along(Grain::Bias).map_or(0, |figure| share(figure.ratio))
}

fn fit(fit: Fit) -> u32 {
    match fit {
        Fit::Exact => 1,
        Fit::Ease => 2,
        Fit::Short(by) | Fit::AboveHem(by) => steps(by),
        Fit::Shorten { by, .. } => !steps(by),
    }
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_zip(opening: i32, other: i32, metric: bool, open: bool) -> u32 {
    let series = if metric { ZipSeries::Metric } else { ZipSeries::Inch };
    let ends = if open { ZipEnds::Open } else { ZipEnds::Closed };
    let opening = Length::from_steps(opening);
    let best = said(Choice::of(opening, series, ends), |choice| {
        choice.best().map_or(0, |Ready { length, fit: how }| steps(length) ^ fit(how))
    });
    let edge = ZipEdge { cut: opening, hem: Length::from_steps(other), neck: Length::ZERO };
    let chains = GarmentKind::ALL.into_iter().fold(0, |sum, garment| sum << 1 ^ u32::from(chain(garment).heaviest));
    let wave = Ratio::new(other.into(), 1600).and_then(|growth| grows_by(opening, growth)).map_or(0, steps);
    best ^ said(edge.finished(), steps) ^ chains ^ wave ^ said(Fit::of(opening, Length::from_steps(other), ends), fit)
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_hanging(millinewtons: u32, on: i32, width: i32, grams: u32, is_loop: bool) -> u32 {
    let piece = if is_loop { Specimen::Loop } else { Specimen::Strip };
    let width = Length::from_steps(width);
    let mut sum = said(tension(grams, width, piece), Tension::millinewtons_per_cm);
    if let Some(wanted) = Tension::new(millinewtons, Length::from_steps(on)) {
        sum ^= said(mass(wanted, width, piece), |mass| mass.grams) ^ steps(widest(wanted, piece));
    }
    METHODS.iter().fold(sum, |sum, method| sum ^ said(mass(method.tension(), width, piece), |mass| mass.grams))
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_body(body: i32, garment: i32, suit: u8, movement: u8, grain: u8) -> u32 {
    let grains = [Grain::Lengthwise, Grain::Crosswise, Grain::Bias];
    let (Some(around), Some(movement)) = (pick(&grains, grain), pick(MOVEMENTS, movement)) else { return 0 };
    let needed = movement.needs(Length::from_steps(body), Length::from_steps(garment));
    let asked = needed.and_then(|needed| {
        let line = movement.line.unwrap_or(Direction::Along);
        demand(SUITS.get(usize::from(suit)), Some((line, needed)), around)
    });
    said(asked, |demand| {
        let ranges = [demand.lengthwise, demand.crosswise, demand.bias];
        ranges.iter().fold(0, |sum, range| sum ^ range.at_least.map_or(0, printed) ^ range.at_most.map_or(0, printed))
    })
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_cautions(for_child: bool, has_cord: bool, sleepwear: bool, tight: bool, end: i32) -> u32 {
    let job = Job { for_child, has_cord, sleepwear, tight, compression: tight, hangs_mass: has_cord };
    let sum = cautions(job).iter().fold(0, |sum, caution| sum ^ printed(caution.source()));
    CORDS.iter().fold(sum, |sum, rule| sum << 1 ^ u32::from(rule.allowed.allows(Length::from_steps(end))))
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_yardage(length: i32, width: i32, other: i32) -> u32 {
    let [length, width, other] = [length, width, other].map(Length::from_steps);
    let chart = Width::of(width).zip(Width::of(other)).and_then(|(width, other)| by_chart(length, width, other));
    let extra = printed(Extra::OneWay.source()) ^ steps(Extra::InDoubt.length());
    said(by_area(length, width, other), steps) ^ chart.map_or(0, steps) ^ extra
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_garment(given: &[Given; 2], kind: u8, parts: &[u8; 3], finish: u8, details: &[u8; 8]) -> u32 {
    let [crosswise, asked] = given;
    let Some(kind) = pick(&GarmentKind::ALL, kind) else { return 0 };
    let made = if finish & 1 == 0 { Construction::Woven } else { Construction::Knit };
    let cloths = parts.map(|part| PartCloth {
        one_way: finish & 2 == 0,
        ..PartCloth::plain(
            pick(&GarmentPart::ALL, part).unwrap_or(GarmentPart::Main),
            Cloth {
                crosswise: crosswise.some(),
                finish: pick(&Finish::ALL, finish >> 2).unwrap_or(Finish::Plain),
                ..Cloth::new(made)
            },
        )
    });
    let more = details.iter().filter_map(|at| pick(&Detail::ALL, *at));
    let garment = GarmentPlan { kind, details: more.fold(kind.usual(), Details::with), cloths: &cloths };
    let mut sum = garment.details.iter().fold(0, |sum, detail| sum << 1 ^ detail as u32);
    garment.each(|task| {
        sum ^= printed(task.source) ^ task.stage as u32 ^ task.cloth.map_or(0, |place| u32::from(place == 0));
        if let Work::Seam(seam, _) = task.work {
            let row: tenter_core::making::garment::SeamRow = garment.seam(seam);
            let asked = row.asked(kind, asked.some().map(|figure| figure.ratio), finish & 4 == 0);
            sum ^= u32::from(asked.held) ^ printed(row.seam.word());
        }
    });
    sum ^ SeamKind::ALL.iter().fold(0, |sum, seam| sum ^ printed(garment.seam(*seam).source))
}
