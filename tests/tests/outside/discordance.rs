//! The rule for a reading far from its fellows against critical values of Grubbs' and Dixon's tests, whose tables it should
//! give where nothing is known beforehand; and answering after every pull against the tables of sequential tests.

use rand::rngs::StdRng;
use rand::{Rng as _, SeedableRng as _};
use rand_distr::StandardNormal;
use tenter_core::discordant::{PriorVariance, farthest};
use tenter_core::{Answer, Confidence, student};

use crate::assert_near;

/// Nothing known beforehand.
const NOTHING: PriorVariance = PriorVariance { variance: 0.0, dof: 0.0 };

/// Readings ± 1 about 0 and one of them far off, so that its distance from the mean is `g` standard deviations of all.
fn with_outlier(n: u32, g: f64) -> Vec<f32> {
    let readings = |far: f64| -> Vec<f64> {
        // An even number of fellows lies half on each side; of an odd one the last lies in the middle.
        let fellows = n - 1;
        let mut all: Vec<f64> = (0..fellows).map(|index| if index % 2 == 0 { 1.0 } else { -1.0 }).collect();
        if fellows % 2 == 1 {
            all[fellows as usize - 1] = 0.0;
        }
        all.push(far);
        all
    };
    let grubbs = |far: f64| {
        let all = readings(far);
        let mean = all.iter().sum::<f64>() / f64::from(n);
        let squares: f64 = all.iter().map(|x| (x - mean).powi(2)).sum();
        (far - mean) / (squares / f64::from(n - 1)).sqrt()
    };
    let (mut low, mut high) = (1.0, 1e4);
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if grubbs(middle) < g { low = middle } else { high = middle }
    }
    #[allow(clippy::cast_possible_truncation)] // Readings, as the core takes them.
    readings(low).into_iter().map(|x| x as f32).collect()
}

/// Two-sided critical values of Grubbs' test at 5 and 1 % for 3 to 10 readings, computed with SciPy 1.17 from
/// G = (n−1)/√n · √(t²/(n−2+t²)), t at α/(2n) with n−2 degrees of freedom (F. E. Grubbs, Technometrics 11, 1969, the formula
/// from memory). A reading there has that chance by the core's rule.
#[test]
fn without_prior_it_is_grubbs_test() {
    let at_5 = [1.154_305, 1.481_250, 1.715_037, 1.887_145, 2.019_969, 2.126_645, 2.215_004, 2.289_954];
    let at_1 = [1.154_685, 1.496_250, 1.763_678, 1.972_817, 2.139_106, 2.274_365, 2.386_810, 2.482_083];
    for (critical, chance) in [(at_5, 0.05), (at_1, 0.01)] {
        for (n, g) in (3..).zip(critical) {
            let far = farthest(&with_outlier(n, g), NOTHING).unwrap();
            // Of three readings the sixth digit of G moves the chance by a fiftieth.
            assert_near(far.tail(), chance, if n == 3 { 0.03 } else { 0.005 } * chance, format!("{n} readings"));
        }
    }
}

/// 105, 115, 106: Dixon's ratio of the gap to the range is 0.9, and 0.970 is critical at 5 % for three (W. J. Dixon, Annals of
/// Mathematical Statistics 21, 1950; the value by integration, confirmed with 3 million draws). Three readings alone
/// cannot tell; with what is known of pulls beforehand they can.
#[test]
fn three_readings_alone_cannot_tell() {
    let readings = [105.0, 115.0, 106.0];
    let alone = farthest(&readings, NOTHING).unwrap();
    assert!(alone.index == 1 && alone.tail() > 0.05 && !alone.is_odd(), "{alone:?}");
    assert!(farthest(&readings, PriorVariance { variance: 0.7, dof: 7.0 }).unwrap().is_odd());
}

/// The chance of some answer, half of them each way, for a cloth exactly on the limit whose scatter is known, when one looks
/// after each pull at 95 %: 0.100, 0.160, 0.202, 0.234, 0.260 for 1 to 5 looks, 0.342 for 10 (R package rpact 3.3.4 and a
/// recursion of its own agree to six digits; that repeated looks inflate the error: P. Armitage, C. K. McPherson and
/// B. C. Rowe, JRSS A 132, 1969, from memory). It is why more pulls than planned must be surer.
#[test]
fn looking_after_every_pull() {
    let expected = [(1, 0.100_000), (2, 0.160_150), (3, 0.202_072), (4, 0.233_989), (5, 0.259_628), (10, 0.341_691)];
    let answered = answered_by_look();
    for (looks, share) in expected {
        assert_near(answered[looks - 1], share, 4.0 * error_of_share(share), format!("{looks} looks"));
    }
}

/// Cloths that [`answered_by_look`] draws.
const CLOTHS: u32 = 40_000;

/// The standard error of a share of them.
pub fn error_of_share(share: f64) -> f64 {
    (share * (1.0 - share) / f64::from(CLOTHS)).sqrt()
}

/// The share of cloths on the limit that the core has answered after so many pulls, each looked at.
pub fn answered_by_look() -> [f64; 10] {
    let mut random = StdRng::seed_from_u64(90_125);
    let mut answered = [0u32; 10];
    for _ in 0..CLOTHS {
        let (mut sum, mut done) = (0.0, false);
        for (count, answered) in (1..).zip(&mut answered) {
            sum += random.sample::<f64, _>(StandardNormal);
            #[allow(clippy::cast_possible_truncation)] // A few standard deviations.
            let z = (sum / f64::from(count).sqrt()) as f32;
            let chance = student::upper_tail(-z, f32::INFINITY);
            done |= Confidence::default().judge(chance, Answer::Short) != Answer::Close;
            *answered += u32::from(done);
        }
    }
    answered.map(|count| f64::from(count) / f64::from(CLOTHS))
}
