//! Several persons' readings against published analyses of variance, and what is believed of one person's repeatability.

use tenter_core::persons::{Compared, PersonReadings};
use tenter_core::repeatability::{ByConstruction, Pooled};
use tenter_core::{Construction, Grain, Length, PullTest};

/// Yield of dyestuff, in grams of standard colour, of six batches with five preparations each: O. L. Davies and P. L.
/// Goldsmith, *Statistical Methods in Research and Production*, 4th edition (1972), table 6.2, page 131; here as the data
/// set `Dyestuff` of the R package lme4 has it.
const DYESTUFF: [[f32; 5]; 6] = [
    [1545.0, 1440.0, 1440.0, 1520.0, 1580.0],
    [1540.0, 1555.0, 1490.0, 1560.0, 1495.0],
    [1595.0, 1550.0, 1605.0, 1510.0, 1560.0],
    [1445.0, 1440.0, 1595.0, 1465.0, 1545.0],
    [1595.0, 1630.0, 1515.0, 1635.0, 1625.0],
    [1520.0, 1455.0, 1450.0, 1480.0, 1445.0],
];

fn near(found: f32, wanted: f32, within: f32) {
    assert!((found - wanted).abs() <= within, "{found}, want {wanted}");
}

/// lme4's fit by restricted maximum likelihood, which is the analysis of variance where all persons pulled as often: standard
/// deviations 42.00 between batches and 49.51 within, a mean of 1527.5 with a standard error of 19.38 (D. Bates, *lme4:
/// Mixed-effects modeling with R*, chapter 1), and the predictions for the batches −17.607, 0.391, 28.562, −23.083, 56.733,
/// −44.997 (`ranef`, from memory; each is the difference from the mean times 0.782 52, worked by hand from 1764.05 / (1764.05 +
/// 2451.25 / 5)).
#[test]
fn batches_of_dyestuff() {
    let persons = DYESTUFF.map(|batch| PersonReadings::of(&batch).unwrap());
    let all = Compared::of(&persons).unwrap();
    near(all.mean, 1527.5, 0.01);
    near(all.between.sqrt(), 42.00, 0.005);
    near(all.within.sqrt(), 49.51, 0.005);
    near(all.mean_u, 19.38, 0.005);
    assert_eq!((all.persons, all.within_dof), (6, 24));
    let predicted = [-17.607, 0.391, 28.562, -23.083, 56.733, -44.997];
    for (person, wanted) in persons.iter().zip(predicted) {
        near(all.own_share(person.count) * (person.mean - all.mean), wanted, 0.01);
    }
}

/// Worked by hand after ISO 5725-2:2019 § 7.4.5 with 3, 2 and 1 readings: means 11, 21, 16 and variances 1, 2; s_r² =
/// (2·1 + 1·2)/3 = 4/3; the mean of all readings 91/6; s_d² = (3(11 − 91/6)² + 2(21 − 91/6)² + (16 − 91/6)²)/2 = 60.416 67;
/// n = (6 − 14/6)/2 = 11/6; s_L² = (60.416 67 − 1.333 33)/1.833 33 = 32.227 27.
#[test]
fn persons_who_pulled_unequally_often() {
    let persons =
        [&[10.0, 11.0, 12.0][..], &[20.0, 22.0], &[16.0]].map(|readings| PersonReadings::of(readings).unwrap());
    let all = Compared::of(&persons).unwrap();
    near(all.within, 4.0 / 3.0, 1e-5);
    near(all.between, 32.227_27, 1e-3);
    near(all.mean, 16.0, 1e-5);
}

/// The posterior scale of a variance, (d₀ s₀² + d s²) / (d₀ + d), with the same d₀ at each level: G. K. Smyth, *Statistical
/// Applications in Genetics and Molecular Biology* 3 (2004), article 3, equation for the moderated variance (from memory), on
/// the model's d₀ = 7. Worked by hand: the others pulled with ratio² 4 over 14 degrees of freedom, so (7 + 56)/21 = 3; this
/// person on knits with 1 over 7: (21 + 7)/14 = 2; on wovens with 0.5 over 2: (14 + 1)/9 = 5/3. The standard deviation at a
/// stretch is then √(5/3) times the assumed one.
#[test]
fn a_person_leans_on_the_log_and_the_log_on_the_assumption() {
    let said = |dof: f64, ratio: f64| Pooled { dof, sum: dof * ratio, ..Pooled::default() };
    let (mut mine, mut everyone) = (ByConstruction::default(), ByConstruction::default());
    everyone.add(Construction::Woven, said(14.0, 4.0));
    for (construction, own) in [(Construction::Knit, said(7.0, 1.0)), (Construction::Woven, said(2.0, 0.5))] {
        mine.add(construction, own);
        everyone.add(construction, own);
    }
    let test = PullTest::new(Length::from_mm(200), Grain::Crosswise).unwrap();
    let value = |mine: &ByConstruction, everyone: &ByConstruction| {
        mine.scatter_among(everyone, Construction::Woven, &test).variance(10.0).value
    };
    let nobody = ByConstruction::default();
    let assumed = value(&nobody, &nobody);
    near(value(&mine, &everyone) / assumed, 5.0 / 3.0, 1e-4);
    // Somebody new leans on everyone: (7 + 56 + 7 + 1) / (7 + 14 + 7 + 2).
    near(value(&nobody, &everyone) / assumed, 71.0 / 30.0, 1e-4);
    // Alone in a log, a person leans on the assumption: (7 + 7)/14 = 1 on knits, then (7 + 1)/9.
    near(value(&mine, &mine) / assumed, 8.0 / 9.0, 1e-4);
}
