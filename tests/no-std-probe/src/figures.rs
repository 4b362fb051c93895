//! Figures, answers, garments, growth to come, and the statistics below them.

use tenter_core::line::{FittedLine, WeightedPoint};
use tenter_core::stats::Series;
use tenter_core::uncertainty::{self, Variance};
use tenter_core::{
    Confidence, Demand, Evaluation, Figure, GrowthClass, Length, Limit, Range, RecoveryClass, Rules, Scatter, forecast,
    rectangular, student, suits,
};

use crate::texts::printed;

fn rules(points: f32, dof: f32, per_mille: u16) -> Rules {
    Rules {
        confidence: Confidence::per_mille(per_mille).unwrap_or_default(),
        scatter: Scatter::known(points, dof).unwrap_or_default(),
        ..Rules::default()
    }
}

/// A printed gauge where the two lengths allow it, else a percentage where the first does, else none.
pub fn limit([gauge, extended]: [i32; 2]) -> Option<Limit> {
    Limit::marks(Length::from_steps(gauge), Length::from_steps(extended))
        .or_else(|_| Limit::milli_percent(gauge.unsigned_abs()))
        .ok()
}

fn interval(figure: &Figure, confidence: Confidence) -> u32 {
    let (low, high) = figure.interval(confidence);
    low.to_bits() ^ high.to_bits() ^ printed(figure.ratio.percent(1))
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_evaluation(
    start: *const u8,
    count: usize,
    limits: &[[i32; 2]; 4],
    points: f32,
    dof: f32,
    per_mille: u16,
) -> u32 {
    // SAFETY: promised by the caller.
    let Some(test) = crate::pull_test(unsafe { crate::bytes(start, count) }) else { return 0 };
    let [least, most, growth, recovery] = limits.map(limit);
    let stretch = Range { at_least: least, at_most: most };
    let mut demand = Demand::for_grain(test.grain(), stretch);
    (demand.growth_at_most, demand.recovery_at_least) = (growth, recovery);
    let rules = rules(points, dof, per_mille);
    let evaluation = match Evaluation::of(&test, &demand, &rules) {
        Ok(evaluation) => evaluation,
        Err(error) => return printed(error) ^ printed(error.field()),
    };
    let mut sum = interval(&evaluation.figures.stretch, rules.confidence);
    if let Some(rest) = evaluation.figures.rest {
        sum ^= interval(&rest.growth, rules.confidence);
        sum ^= rest.recovery.map_or(0, |recovery| interval(&recovery, rules.confidence));
        sum ^= printed(GrowthClass::of(rest.growth.ratio).word());
        sum ^= rest.recovery.map_or(0, |recovery| printed(RecoveryClass::of(recovery.ratio).word()));
    }
    for part in &evaluation.parts {
        sum ^= printed(part.answer.word()) ^ printed(part.ask.word()) ^ part.chance.unwrap_or(0.0).to_bits();
    }
    let plan = evaluation.settle.and_then(|settle| settle.plan);
    sum ^= plan.map_or(0, |plan| u32::from(plan.pulls ^ plan.looks ^ plan.rests ^ plan.days));
    evaluation.notes.iter().fold(sum, |sum, note| sum.rotate_left(3) ^ *note as u32)
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_suits(start: *const u8, count: usize, points: f32, dof: f32, per_mille: u16) -> u32 {
    // SAFETY: promised by the caller.
    let Some(test) = crate::pull_test(unsafe { crate::bytes(start, count) }) else { return 0 };
    suits(&test, &rules(points, dof, per_mille)).map_or(0, |rows| rows.fold(0, |sum, row| sum ^ printed(row.garment)))
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_forecast(start: *const u8, count: usize, seconds: u32) -> u32 {
    // SAFETY: promised by the caller.
    let Some(test) = crate::pull_test(unsafe { crate::bytes(start, count) }) else { return 0 };
    match forecast::forecast(&test, seconds) {
        Ok(hour) => hour.percent.to_bits() ^ hour.half_width.to_bits() ^ u32::from(hour.rough),
        Err(error) => printed(error),
    }
}

/// # Safety
///
/// `start` is valid for `count` floats, `readings` for `count` integers.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_statistics(
    start: *const f32,
    readings: *const i64,
    count: usize,
    x: f32,
    y: f32,
) -> u32 {
    // SAFETY: promised by the caller.
    let (floats, readings) =
        unsafe { (core::slice::from_raw_parts(start, count), core::slice::from_raw_parts(readings, count)) };
    let series: Series = readings.iter().copied().collect();
    let variance = Variance { value: x, dof: y };
    let mut sum = student::upper_tail(x, y).to_bits() ^ student::quantile(x, y).to_bits();
    sum ^= rectangular::chance_not_negative(x, floats).unwrap_or(0.0).to_bits();
    sum ^= uncertainty::pooled(&series, variance).u().to_bits();
    sum ^= uncertainty::sum(&[variance, variance.over(readings.len() as i64).at_least(variance)]).u().to_bits();
    sum ^ series.mean().map_or(0, |mean| printed(mean.percent(2)))
        ^ series.standard_deviation().unwrap_or(0.0).to_bits()
}

/// # Safety
///
/// `start` is valid for `count` points of three floats.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_line(start: *const [f32; 3], count: usize, at: f32) -> u32 {
    const MOST: usize = 64;
    // SAFETY: promised by the caller.
    let given = unsafe { core::slice::from_raw_parts(start, count) };
    let mut points = [WeightedPoint { x: 0.0, y: 0.0, weight: 0.0 }; MOST];
    for (place, [x, y, weight]) in points.iter_mut().zip(given) {
        *place = WeightedPoint { x: *x, y: *y, weight: *weight };
    }
    let used = points.get(..count).unwrap_or(&points);
    FittedLine::through(used).map_or(0, |line| line.at(at).to_bits() ^ line.u_slope.unwrap_or(0.0).to_bits())
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_scale(division: i32, length: i32, both: bool) -> u32 {
    let ends = if both { tenter_core::Ends::Both } else { tenter_core::Ends::One };
    tenter_core::Scale::new(Length::from_steps(division), ends).map_or(0, |scale| {
        u32::from(scale.has_line_at(Length::from_steps(length))) ^ u32::from(scale.is_inch()) ^ scale.u_mm().to_bits()
    })
}
