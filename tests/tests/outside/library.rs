//! The core's statistics against SciPy and statsmodels in the same run: the core's values go to `tests/library.py`, which
//! computes each anew and says what lies farther off than it allows.

use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use serde_json::{Value, json};
use tenter_core::discordant::{PriorVariance, farthest};
use tenter_core::mixture::Mixture;
use tenter_core::rounded::Rounded;
use tenter_core::student::{quantile, upper_tail};
use tenter_core::uncertainty::{Variance, sum};
use tenter_core::{Demand, Doubt, Ends, Evaluation, Grain, Length, PullTest, Rules, Scale, Scatter, Sitting, Unit};

use crate::components::{DYESTUFF, GLUCOSE, between, glucose, glucose_between_days};
use crate::discordance::{answered_by_look, error_of_share};

/// Where the packages lie.
fn packages() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../target/python")
}

fn tails() -> Vec<Value> {
    let ts = [0.0f32, 0.5, 1.0, 1.96, 3.0, 5.0, 9.0];
    let dofs = [1.0f32, 2.0, 3.0, 4.5, 7.0, 8.0, 15.5, 100.0, 1e6];
    ts.iter().flat_map(|t| dofs.map(|dof| json!([t, dof, upper_tail(*t, dof)]))).collect()
}

fn quantiles() -> Vec<Value> {
    let dofs = [5.0f32, 7.0, 8.0, 10.5, 15.0, 40.0, 1e5];
    [0.2f32, 0.05, 0.025, 0.015, 0.005]
        .iter()
        .flat_map(|tail| dofs.map(|dof| json!([tail, dof, quantile(*tail, dof)])))
        .collect()
}

/// Equal readings on divisions of 1.
fn rounded() -> Vec<Value> {
    let u = |sigma: f32, count: f32| {
        Rounded::new(sigma * sigma + 1.0 / 12.0, f32::INFINITY, 1.0 / 12.0, 0.0).of_mean(count).sqrt()
    };
    let counts = [1.0f32, 2.0, 3.0, 5.0, 10.0];
    [0.25f32, 0.5, 1.0, 2.0]
        .iter()
        .flat_map(|sigma| counts.map(|count| json!([sigma, count, u(*sigma, count)])))
        .collect()
}

fn sums() -> Vec<Value> {
    let sums: [&[(f32, f32)]; 4] = [
        &[(1.0, 7.0), (1.0, 7.0)],
        &[(0.4, 7.0), (3.0, 8.0)],
        &[(1.0, 7.0), (2.0, 8.0), (0.5, 9.0)],
        &[(0.2, 10.0), (0.1, 30.0), (5.0, 12.0)],
    ];
    let of = |parts: &[(f32, f32)]| {
        let (mut sum, mut variance) = (Mixture::default(), 0.0);
        for (scale, dof) in parts {
            sum.add(scale * dof / (dof - 2.0), *dof);
            variance += scale * dof / (dof - 2.0);
        }
        json!([parts, sum.dof(), variance * sum.narrowing()])
    };
    sums.map(of).to_vec()
}

/// The groups of one of NIST's certified sets, from the file that SciPy carries; its readings begin at line 61.
fn nist(name: &str) -> Vec<Vec<f64>> {
    let file = packages().join("scipy/stats/tests/data/nist_anova").join(format!("{name}.dat"));
    let text = fs::read_to_string(file).unwrap();
    let mut groups: Vec<(&str, Vec<f64>)> = Vec::new();
    for line in text.lines().skip(60) {
        let [label, value] = line.split_whitespace().collect::<Vec<_>>()[..] else { continue };
        if groups.last().is_none_or(|(last, _)| *last != label) {
            groups.push((label, Vec::new()));
        }
        groups.last_mut().unwrap().1.push(value.parse().unwrap());
    }
    groups.into_iter().map(|(_, values)| values).collect()
}

/// The variance between groups that the core finds, of values shifted to small ones and stretched to a spread of 1: the core
/// takes percentages to a millionth.
fn between_groups() -> Vec<Value> {
    let dyestuff = DYESTUFF.map(|batch| batch.map(f64::from).to_vec()).to_vec();
    let sets = ["SiRstv", "AtmWtAg", "SmLs01", "SmLs02", "SmLs04"];
    let nist = sets.map(|name| (format!("NIST {name}"), nist(name)));
    let of = |(name, groups): (String, Vec<Vec<f64>>)| {
        let all = || groups.iter().flatten();
        let count = all().count() as f64;
        let mean = all().sum::<f64>() / count;
        let unit = (all().map(|x| (x - mean).powi(2)).sum::<f64>() / count).sqrt();
        let small: Vec<Vec<f64>> =
            groups.iter().map(|group| group.iter().map(|x| (x - mean) / unit).collect()).collect();
        json!([name, groups, between(&small) * unit * unit])
    };
    [("Dyestuff".to_owned(), dyestuff)].into_iter().chain(nist).map(of).collect()
}

fn pulled(readings: &[&str], division: &str) -> PullTest {
    let length = |text: &str| Length::parse(text, Unit::Mm).unwrap();
    let scale = Scale::new(length(division), Ends::One).unwrap();
    let test = PullTest::new(length("100"), Grain::Crosswise).unwrap();
    let mut test = test.with_scale(scale).unwrap().with_settling_pull(true);
    readings.iter().for_each(|reading| test.add_pull(length(reading)).unwrap());
    test
}

/// Several days of one cloth: each with its variance and how that grows, and what they come to together.
fn combined() -> Vec<Value> {
    type Days = (&'static [&'static str], &'static str);
    let sets: [(&str, Scatter, &[Days]); 3] = [
        ("two alike", Scatter::ASSUMED, &[(&["108", "109", "108"], "1"), (&["109", "110", "109"], "1")]),
        (
            "three that differ",
            Scatter::ASSUMED,
            &[(&["110", "111"], "1"), (&["108", "108", "109"], "0.5"), (&["112"], "1")],
        ),
        (
            "scales alone",
            Scatter::SCALE_ONLY,
            &[(&["106"], "1"), (&["106.5"], "0.5"), (&["105.8"], "0.2"), (&["106"], "2")],
        ),
    ];
    let of = |(name, scatter, days): (&str, Scatter, &[Days])| {
        let tests: Vec<PullTest> = days.iter().map(|(readings, division)| pulled(readings, division)).collect();
        let sittings: Vec<Sitting<'_>> = tests.iter().map(|test| Sitting { scatter, ..Sitting::new(test) }).collect();
        let judged = |sittings: &[Sitting<'_>]| {
            Evaluation::of_all(sittings, &Demand::default(), &Rules::default()).unwrap().figures.stretch
        };
        let each: Vec<_> = sittings.iter().map(|sitting| judged(&[*sitting])).collect();
        let figures: Vec<[f32; 4]> =
            each.iter().map(|figure| [figure.percent(), figure.u * figure.u, figure.slope, figure.curve]).collect();
        let least = each.iter().map(|figure| figure.dof).fold(f32::INFINITY, f32::min).min(1e9);
        let all = judged(&sittings);
        json!([name, figures, least, all.percent(), all.u * all.u])
    };
    sets.map(of).to_vec()
}

fn odd() -> Vec<Value> {
    let readings: [(&[f32], f32); 6] = [
        (&[5.0, 15.0, 6.0], 0.7),
        (&[6.0, 26.0, 6.5, 6.2], 0.8),
        (&[25.0, 22.0, 20.0], 2.2),
        (&[5.0, 5.0, 6.0], 0.6),
        (&[8.0, 8.4, 7.6, 8.2, 11.5], 0.62),
        (&[5.0, 9.0], 0.62),
    ];
    let of = |(readings, variance): (&[f32], f32)| {
        let found = farthest(readings, PriorVariance { variance, dof: 7.0 }).unwrap();
        json!([readings, variance, 7.0, found.index, found.tail()])
    };
    readings.map(of).to_vec()
}

/// The data of the robust means that are published beside each other; each as pulls of 100 mm, with the scatter that is known.
fn robust() -> Vec<Value> {
    let sets: [(&[&str], f32, u8); 3] = [
        (&["105.1", "105.3", "104.9", "105.2", "108.0"], 0.2, 4),
        (&["120.1", "120.4", "120.2", "126.0"], 0.2, 3),
        (&["105", "115", "106"], 1.0, 1),
    ];
    let of = |(lengths, scale, odd): (&[&str], f32, u8)| {
        let test = pulled(lengths, "0.1");
        let rules = Rules { scatter: Scatter::known(scale, 20.0).unwrap(), ..Rules::default() };
        let found = Evaluation::of(&test, &Demand::default(), &rules).unwrap();
        // It is named, or with too few left beside it doubted.
        assert!(found.left_out == Some(odd), "{found:?}");
        assert!(lengths.len() > 3 || found.doubts.contains(&Doubt::OddPull { pull: odd }), "{found:?}");
        let readings: Vec<f64> = lengths.iter().map(|length| length.parse::<f64>().unwrap() - 100.0).collect();
        json!([readings, scale, found.figures.stretch.percent()])
    };
    sets.map(of).to_vec()
}

/// The readings, the variance between days, and the total with its degrees of freedom by Welch and Satterthwaite.
fn glucose_said() -> Value {
    let [day, run, error] = GLUCOSE.map(|square| square as f32);
    let parts = [(day / 4.0, 15.0), (run / 4.0, 16.0), (error / 2.0, 32.0)];
    let total = sum(&parts.map(|(value, dof)| Variance { value, dof }));
    json!([glucose(), glucose_between_days(), total.value, total.dof])
}

/// Looks, the share answered by then, and how far chance may put it off.
fn looks() -> Vec<Value> {
    (1..).zip(answered_by_look()).map(|(looks, share)| json!([looks, share, 4.0 * error_of_share(share)])).collect()
}

#[test]
fn scipy_and_statsmodels_agree() {
    let said = json!({
        "tails": tails(),
        "quantiles": quantiles(),
        "rounded": rounded(),
        "sums": sums(),
        "between": between_groups(),
        "combined": combined(),
        "odd": odd(),
        "robust": robust(),
        "glucose": glucose_said(),
        "looks": looks(),
    });
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("library.py");
    let mut python = Command::new("python3");
    python
        .arg(script)
        .env("PYTHONPATH", packages())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped());
    let mut running = python.spawn().expect("tests/install has python3");
    running.stdin.take().unwrap().write_all(said.to_string().as_bytes()).unwrap();
    let output = running.wait_with_output().unwrap();
    print!("{}", String::from_utf8_lossy(&output.stdout));
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    assert_eq!(output.stdout.iter().filter(|byte| **byte == b'\n').count(), 12, "not all was compared");
}
