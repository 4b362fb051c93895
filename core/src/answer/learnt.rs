//! What retests of one cloth on several days say of how much days differ.

use heapless::Vec;

use crate::answer::Rules;
use crate::answer::doubt::{Context, implausible};
use crate::answer::figure::Figure;
use crate::answer::joint::{MAX_SITTINGS, Sitting};
use crate::answer::judgement::{Judged, Ones};
use crate::number::list::list;
use crate::number::num;
use crate::reading::construction::Construction;
use crate::reading::limit::Demand;
use crate::reading::pull_test::Grain;
use crate::statistics::components::SESSION_HAND;
use crate::statistics::mixture::variance_of_scale;
use crate::statistics::repeatability::Pooled;

/// What the stretch of one cloth, grain and state says, pulled by hand on two days or more: the variance between days
/// beyond what each day's own readings are worth (analysis of variance, NIST/SEMATECH e-Handbook § 3.2.3), over the assumed
/// one. It is worth little where the days themselves are uncertain. Nothing of fewer than two days.
///
/// ```
/// use tenter_core::{Figure, Ratio, days};
///
/// assert_eq!(days(&[Figure::exact(Ratio::new(1, 5).unwrap())]).session_dof, 0.0);
/// ```
#[must_use]
pub fn days(stretches: &[Figure]) -> Pooled {
    let each: Vec<(f32, f32), MAX_SITTINGS> = list(
        stretches
            .iter()
            .map(|figure| (figure.percent(), variance_of_scale(figure.here.u * figure.here.u, figure.here.dof))),
    );
    from_values(&each)
}

/// What all tests of one cloth say of how much days differ: the [`days`] of each grain, before the last wash and after it.
/// Tests of one [session](Sitting::shares_session_of) are one day. Known loads and doubted readings say nothing of a hand.
/// All of them are of one person: how much two persons differ is for [`persons`](crate::persons) to say.
///
/// ```
/// use tenter_core::{Construction, Grain, Length, PullTest, Sitting, retests};
///
/// let pulled = |extended| {
///     let mut test = PullTest::new(Length::from_mm(200), Grain::Crosswise)?.with_settling_pull(true);
///     test.add_pull(Length::from_mm(extended))?;
///     Ok::<_, tenter_core::TestError>(test)
/// };
/// let (one, other) = (pulled(240)?, pulled(250)?);
/// let on = |days: [i32; 2]| {
///     let on = |(test, day)| Sitting { day: Some(day), ..Sitting::new(test) };
///     retests(&[(&one, days[0]), (&other, days[1])].map(on), Construction::Knit).session_dof
/// };
/// // At 22.5 % a day is taken to vary by 0.076 × 22.5 points, squared 2.92. The marks and the pull vary by 2.88 at 20 % and by
/// // 3.68 at 25 % (components), 3.28 on the mean. So the pair is worth (2.92 / (2.92 + 3.28))² of a degree of freedom.
/// assert!((on([1, 2]) - 0.222).abs() < 0.005);
/// assert_eq!(on([1, 1]), 0.0); // One day.
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[must_use]
pub fn retests(sittings: &[Sitting<'_>], construction: Construction) -> Pooled {
    let (rules, context) = (
        Rules { construction, ..Rules::default() },
        Context { construction: Some(construction), ..Context::default() },
    );
    let by_hand =
        |sitting: &&Sitting<'_>| !sitting.test.load().is_known() && implausible(sitting.test, &context).is_empty();
    let of = |grain: Grain, before_wash: bool| {
        let alike = |one: &&Sitting<'_>| one.test.grain() == grain && one.before_wash == before_wash;
        let newest: Vec<Sitting<'_>, MAX_SITTINGS> = list(sittings.iter().rev().filter(alike).filter(by_hand).copied());
        if newest.len() < 2 {
            return Pooled::default(); // Most cloths are pulled once.
        }
        let mut ones = Ones::new();
        let judged = Judged::of(&newest, &Demand::default(), &rules, &mut ones);
        judged.map_or(Pooled::default(), |judged| days(&judged.stretch_by_session()))
    };
    let states = Grain::ALL.into_iter().flat_map(|grain| [(grain, false), (grain, true)]);
    states.map(|(grain, before_wash)| of(grain, before_wash)).fold(Pooled::default(), Pooled::and)
}

/// From stretches in points and their variances without the day.
fn from_values(each: &[(f32, f32)]) -> Pooled {
    let count = num::float(num::count(each.len()));
    if count < 2.0 {
        return Pooled::default();
    }
    let mean = each.iter().map(|(value, _)| value).sum::<f32>() / count;
    let between = each.iter().map(|(value, _)| (value - mean) * (value - mean)).sum::<f32>() / (count - 1.0);
    let within = each.iter().map(|(_, variance)| variance).sum::<f32>() / count;
    let assumed = (SESSION_HAND * mean.max(1.0)) * (SESSION_HAND * mean.max(1.0));
    let share = assumed / (assumed + within);
    let session_dof = f64::from((count - 1.0) * share * share);
    let session_sum = session_dof * f64::from((between - within) / assumed);
    Pooled { session_dof, session_sum, ..Pooled::default() }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// SciPy 1.17, an independent computation: stretches, variances, degrees of freedom, their product with the ratio.
    #[test]
    fn sessions_against_scipy() {
        let known = [
            (&[(20.0, 0.8), (24.0, 0.9)][..], 0.588_045, 1.503_99),
            (&[(8.0, 0.5), (8.5, 0.5)], 0.193_75, -0.184_815),
            (&[(30.0, 1.0), (36.0, 1.2), (28.0, 1.1)], 1.402_93, 4.016_1),
        ];
        for (days, dof, sum) in known {
            let said = from_values(days);
            assert!((said.session_dof - dof).abs() < 1e-4 && (said.session_sum - sum).abs() < 1e-3, "{said:?}");
        }
    }
}
