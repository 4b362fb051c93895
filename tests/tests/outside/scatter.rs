//! The assumed scatter from pull to pull, fitted again to the open data it was taken from: the data of "Programming
//! mechanics in knitted materials, stitch by stitch", *Nature Communications* 15 (2024) 2622, MIT licence; the file's
//! head has the particulars.
//!
//! A group is one swatch at one force, over the pulls that were read at it, three at least. Its variance s² with n
//! pulls is taken to follow σ² · F(n − 1, ν), where σ = a · Sᵇ and S is the group's mean stretch in percent, at least
//! 0.5. The reference fit (Python, SciPy, Nelder–Mead) gave σ(10 %) = 1.080 points, b = 0.371, ν = 7.57.

use crate::{assert_near, pull, stretch};
use statrs::distribution::{Continuous, FisherSnedecor};
use std::collections::{BTreeMap, BTreeSet};
use tenter_core::Scatter;
use tenter_core::scatter::{ASSUMED_AT_ONE_PERCENT, ASSUMED_DOF, ASSUMED_EXPONENT};

const DATA: &str = include_str!("../../data/knit-pulls.csv");

/// The stretches of one swatch at one force, in percent.
#[derive(Default)]
struct Group {
    stretches: Vec<f64>,
}

impl Group {
    fn mean(&self) -> f64 {
        self.stretches.iter().sum::<f64>() / self.stretches.len() as f64
    }

    fn dof(&self) -> f64 {
        self.stretches.len() as f64 - 1.0
    }

    fn variance(&self) -> f64 {
        let mean = self.mean();
        self.stretches.iter().map(|stretch| (stretch - mean).powi(2)).sum::<f64>() / self.dof()
    }
}

struct Data {
    groups: Vec<Group>,
    /// Swatch and run of every pull that gave a stretch.
    pulls: BTreeSet<(&'static str, &'static str)>,
}

fn data() -> Data {
    let mut groups: BTreeMap<(&str, usize), Group> = BTreeMap::new();
    let mut pulls = BTreeSet::new();
    for row in DATA.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let cells: Vec<&'static str> = row.split(',').collect();
        let [swatch, run, gauge, at_newtons @ ..] = cells.as_slice() else { panic!("{row}") };
        assert_eq!(at_newtons.len(), 4, "{row}");
        for (force, extended) in at_newtons.iter().enumerate() {
            if gauge.is_empty() || extended.is_empty() {
                continue; // Too few video frames, says the head of the file; the counts below pin how many.
            }
            let ratio = stretch(&pull(gauge, extended));
            let percent = 100.0 * ratio.numerator() as f64 / ratio.denominator() as f64;
            groups.entry((swatch, force)).or_default().stretches.push(percent);
            pulls.insert((*swatch, *run));
        }
    }
    let groups = groups.into_values().filter(|group| group.stretches.len() >= 3).collect();
    Data { groups, pulls }
}

/// 150 readings of 39 pulls of eight swatches, counted apart from this project.
#[test]
fn readings_used() {
    let Data { groups, pulls } = data();
    assert_eq!(pulls.len(), 39);
    assert_eq!(pulls.iter().map(|(swatch, _)| swatch).collect::<BTreeSet<_>>().len(), 8);
    assert_eq!(groups.len(), 32);
    assert_eq!(groups.iter().map(|group| group.stretches.len()).sum::<usize>(), 150);
}

/// Pooled standard deviations by band of stretch: reference computation in Python, and the rounded figures of the
/// documentation of `ASSUMED_AT_ONE_PERCENT`.
#[test]
fn bands() {
    let Data { groups, .. } = data();
    for (from, below, reference, documented) in
        [(-5.0, 5.0, 0.475, 0.5), (5.0, 12.0, 1.056, 1.1), (12.0, 50.0, 1.834, 1.8), (50.0, 1000.0, 2.819, 2.8)]
    {
        let band: Vec<_> = groups.iter().filter(|group| (from..below).contains(&group.mean())).collect();
        let dof: f64 = band.iter().map(|group| group.dof()).sum();
        let pooled = (band.iter().map(|group| group.dof() * group.variance()).sum::<f64>() / dof).sqrt();
        assert_near(pooled, reference, 6e-4, format!("from {from} to {below} %"));
        assert_near(pooled, documented, 0.05, format!("from {from} to {below} %, as documented"));
    }
}

/// ln σ(10 %), b, ln ν.
type Model = [f64; 3];

fn sigma([ln_at_ten, power, _]: Model, stretch: f64) -> f64 {
    ln_at_ten.exp() * (stretch.max(0.5) / 10.0).powf(power)
}

fn log_likelihood(groups: &[(f64, f64, f64)], model: Model) -> f64 {
    let of = |&(mean, dof, variance): &(f64, f64, f64)| {
        let scale = sigma(model, mean).powi(2);
        FisherSnedecor::new(dof, model[2].exp()).unwrap().ln_pdf(variance / scale) - scale.ln()
    };
    groups.iter().map(of).sum()
}

/// The best point of a grid of nine by nine by nine, then of a grid half as wide about it, and so on.
fn fit(groups: &[Group]) -> Model {
    let groups: Vec<_> = groups.iter().map(|group| (group.mean(), group.dof(), group.variance())).collect();
    let mut best: Model = [0.0, 0.5, 2.5];
    let mut reach: Model = [1.5, 0.5, 2.0];
    for _ in 0..16 {
        let middle = best;
        let mut most = log_likelihood(&groups, middle);
        for point in 0..9 * 9 * 9 {
            let place = [point % 9, point / 9 % 9, point / 81].map(|k: i32| f64::from(k - 4) / 4.0);
            let model = std::array::from_fn(|k| middle[k] + reach[k] * place[k]);
            let likelihood = log_likelihood(&groups, model);
            if likelihood > most {
                (best, most) = (model, likelihood);
            }
        }
        reach = reach.map(|half| half * 0.5);
    }
    best
}

#[test]
fn assumed_scatter_is_the_best_fit() {
    let Data { groups, .. } = data();
    let fitted = fit(&groups);
    let [at_ten, power, dof] = [fitted[0].exp(), fitted[1], fitted[2].exp()];
    assert_near(at_ten, 1.080, 0.002, "σ(10 %), reference fit");
    assert_near(power, 0.371, 0.001, "exponent, reference fit");
    assert_near(dof, 7.57, 0.02, "degrees of freedom, reference fit");

    let at_one = sigma(fitted, 1.0);
    assert_near(ASSUMED_AT_ONE_PERCENT, at_one, 0.03 * at_one, "σ(1 %)");
    assert_near(ASSUMED_EXPONENT, power, 0.01, "exponent");
    assert_near(ASSUMED_DOF, dof, 0.3, "degrees of freedom");
    for stretch in [1.0, 5.0, 12.0, 50.0, 100.0] {
        let want = sigma(fitted, stretch);
        let assumed = Scatter::ASSUMED.variance(stretch as f32);
        assert_near(assumed.u(), want, 0.03 * want, format!("σ({stretch} %)"));
        assert_eq!(assumed.dof, ASSUMED_DOF);
    }
}
