//! Straight lines against published fits.

use crate::assert_near;
use tenter_core::line::{FittedLine, WeightedPoint};

fn line(pairs: &[(f64, f64)]) -> FittedLine {
    let points: Vec<_> = pairs.iter().map(|&(x, y)| WeightedPoint { x: x as f32, y: y as f32, weight: 1.0 }).collect();
    FittedLine::through(&points).unwrap()
}

/// JCGM 100:2008 (GUM) § H.3, calibration of a thermometer: correction b against temperature t, about 20 °C. Printed
/// there: y1 = −0.1712 (0.0029), y2 = 0.002 18 (0.000 67), r = −0.930, s = 0.0035, b(30) = −0.1494 (0.0041). The
/// further digits were worked out in `f64` apart from this project.
#[test]
fn gum_h3() {
    let readings = [
        (21.521, -0.171),
        (22.012, -0.169),
        (22.512, -0.166),
        (23.003, -0.159),
        (23.507, -0.164),
        (23.999, -0.165),
        (24.513, -0.156),
        (25.002, -0.157),
        (25.503, -0.159),
        (26.010, -0.161),
        (26.511, -0.160),
    ];
    let line = line(&readings.map(|(t, b)| (t - 20.0, b)));
    assert_near(line.intercept, -0.1712038, 2e-6, "y1");
    assert_near(line.u_intercept.unwrap(), 0.0028776, 1e-6, "u(y1)");
    assert_near(line.slope, 0.00218270, 5e-7, "y2");
    assert_near(line.u_slope.unwrap(), 0.00066794, 2e-7, "u(y2)");
    assert_near(line.correlation, -0.930, 0.0005, "r(y1, y2)");
    assert_near(line.residual.unwrap(), 0.0034976, 1e-6, "s");
    assert_near(line.at(10.0), -0.149377, 2e-6, "b(30 °C)");
}

/// NIST StRD, nonlinear regression, set DanWood: y = b1 · x^b2. The straight line through the logarithms gives
/// 0.749945 and 3.917206 (computed apart from this project, in `f64`). That is *not* the certified least-squares
/// answer, 0.76886226176 and 3.8604055871: the logarithm weighs the residuals otherwise. A forecast that clamps its
/// exponent can live with the difference.
#[test]
fn danwood_on_logarithms() {
    let observations =
        [(1.309, 2.138), (1.471, 3.421), (1.490, 3.597), (1.565, 4.340), (1.611, 4.882), (1.680, 5.660f64)];
    let line = line(&observations.map(|(x, y): (f64, f64)| (x.ln(), y.ln())));
    assert_near(f64::from(line.intercept).exp(), 0.749945, 2e-6, "factor");
    assert_near(line.slope, 3.917206, 5e-6, "exponent");
}
