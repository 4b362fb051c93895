//! Prints seeded pull tests as CSV, with the core's figures from the scale's error alone, for `tests/bench.py`:
//! `cargo run --release -p tenter-tests --bin bench_data COUNT`. Lengths in steps of 1/1600 mm, figures in percent.

use std::io::{BufWriter, Write, stdout};

use tenter_core::{Figure, Figures, Scatter};
use tenter_tests::bench_data::varied_tests;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let count = std::env::args().nth(1).ok_or("how many tests?")?.parse()?;
    let mut out = BufWriter::new(stdout().lock());
    write!(out, "division,gauge,pull1,pull2,pull3,pull4,pull5,recovered,")?;
    writeln!(out, "stretch,u_stretch,growth,u_growth,recovery,u_recovery")?;
    for test in varied_tests(count) {
        let figures = Figures::of(&test, Scatter::SCALE_ONLY)?;
        let rest = figures.rest.ok_or("every test has a reading after release")?;
        let recovery = rest.recovery.ok_or("every test extends")?;
        let read = [test.scale().division(), test.gauge()];
        let recovered = test.rests().iter().map(|rest| &rest.recovered);
        let lengths = read.iter().chain(test.pulls()).chain(recovered).map(|length| length.steps().to_string());
        let show = |figure: Figure| format!("{},{}", figure.ratio.percent(6), figure.u);
        let figures = [figures.stretch, rest.growth, recovery].map(show);
        writeln!(out, "{}", lengths.chain(figures).collect::<Vec<_>>().join(","))?;
    }
    Ok(out.flush()?)
}
