//! Prints the calibration table in Markdown: `cargo run --release -p tenter-tests --bin calibration`.

use tenter_core::Length;
use tenter_tests::calibration::{Setup, Truth, simulate};

const SWATCHES: u32 = 20_000;
const SEED: u64 = 1;

fn main() {
    println!("{SWATCHES} swatches a row, shares in percent, demand \"at least\" at 95 % confidence.\n");
    println!(
        "| scatter / assumed | pulls | gauge mm | scale mm | demand % | close: tenter | oracle | plain t | tenter / oracle \
         | wrong meets | wrong short | wrong of answers given | plain division wrong |"
    );
    println!("|{}", "--:|".repeat(13));
    for (row, setup) in Setup::all().enumerate() {
        let tally = simulate(&setup, Truth::Around, SWATCHES, SEED + row as u64);
        let close = [tally.tenter, tally.oracle, tally.plain_t].map(|rule| format!("{:.1}", tally.percent(rule.close)));
        println!(
            "| {} | {} | {} | {} | {} | {} | {:.2} | {:.2} | {:.2} | {:.2} | {:.1} |",
            setup.scatter_times,
            setup.pulls,
            setup.gauge.mm(),
            setup.division.mm(),
            setup.demand,
            close.join(" | "),
            tally.ratio(),
            tally.percent(tally.tenter.wrong_meets),
            tally.percent(tally.tenter.wrong_short),
            tally.wrong_of_given(&tally.tenter),
            tally.percent(tally.division.wrong()),
        );
    }

    println!(
        "\nThe worst place: every swatch lies 0.001 points below the demand (share of wrong meets) or above it (share of \
         wrong short). 100 mm, 1 mm scale.\n"
    );
    println!(
        "| scatter / assumed | pulls | demand % | wrong meets just below | wrong short just above \
         | oracle: wrong meets | oracle: wrong short |"
    );
    println!("|{}", "--:|".repeat(7));
    let at_100_mm = |setup: &Setup| setup.gauge == Length::from_mm(100) && setup.division == Length::from_mm(1);
    for (row, setup) in Setup::all().filter(at_100_mm).enumerate() {
        let below = simulate(&setup, Truth::JustBelow, SWATCHES, SEED + 1000 + row as u64);
        let above = simulate(&setup, Truth::JustAbove, SWATCHES, SEED + 2000 + row as u64);
        println!(
            "| {} | {} | {} | {:.2} | {:.2} | {:.2} | {:.2} |",
            setup.scatter_times,
            setup.pulls,
            setup.demand,
            below.percent(below.tenter.wrong_meets),
            above.percent(above.tenter.wrong_short),
            below.percent(below.oracle.wrong_meets),
            above.percent(above.oracle.wrong_short),
        );
    }
}
