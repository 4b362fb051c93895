//! Prints the simulation in Markdown: `cargo run --release -p tenter-tests --bin calibration > tests/calibration.md`.

use tenter_tests::calibration::{Tally, growth, plans, repeated, rows, rules, time};

const SWATCHES: u32 = 40_000;
/// Not a seed with which any constant was chosen.
const SEED: u64 = 20_261_127;

fn table(title: &str, rows: &[rows::Row], seed: u64) {
    println!("\n## {title}\n");
    println!(
        "| condition | wrong meets | wrong no | wrong of the answers given | close | oracle: wrong of given / close \
         | close / oracle's | plain t: wrong of given / close | division wrong | interval holds | meets | doubted |"
    );
    println!("|--|{}", "--:|".repeat(11));
    for (index, row) in rows.iter().enumerate() {
        let tally = rules::simulate(&row.world, SWATCHES, seed + index as u64);
        let share = |count| tally.percent(count);
        println!(
            "| {} | {:.2} | {:.2} | {:.2} | {:.0} | {:.1} / {:.0} | {:.2} | {:.1} / {:.0} | {:.1} | {:.1} | {:.1} | {:.1} |",
            row.name,
            share(tally.tenter.wrong_meets),
            share(tally.tenter.wrong_no),
            tally.wrong_of_given(&tally.tenter),
            share(tally.tenter.close),
            tally.wrong_of_given(&tally.oracle),
            share(tally.oracle.close),
            tally.ratio(),
            tally.wrong_of_given(&tally.plain_t),
            share(tally.plain_t.close),
            share(tally.division.wrong()),
            share(tally.covered),
            share(tally.tenter.meets),
            share(tally.doubted),
        );
    }
}

fn main() {
    println!(
        "# What a reading is worth, simulated\n\n{SWATCHES} swatches a row, shares in percent, answers at 95 %. 100 mm marks on a 1 mm \
         scale, three settled pulls, one look at the marks unless said; the truth lies evenly around the demand. \
         Made by `cargo run --release -p tenter-tests --bin calibration`."
    );
    table("What the model does not assume", &rows::attacks(), SEED);
    table("Variances drawn as assumed", &rows::assumed(), SEED + 100);
    table("At the limit", &rows::at_the_limit(), SEED + 200);
    table("Everyday cases", &rows::everyday(), SEED + 300);

    println!("\n## Growth and recovery, 250 mm, 25 % of stretch\n");
    println!(
        "| condition | wrong meets | wrong no | wrong of the answers given | close | oracle: wrong of given / close \
         | close / oracle's | interval holds |"
    );
    println!("|--|{}", "--:|".repeat(7));
    for (index, (name, rested)) in growth::rows().into_iter().enumerate() {
        let tally: Tally = growth::simulate(&rested, SWATCHES, SEED + 400 + index as u64);
        println!(
            "| {name} | {:.2} | {:.2} | {:.2} | {:.0} | {:.2} / {:.0} | {:.2} | {:.1} |",
            tally.percent(tally.tenter.wrong_meets),
            tally.percent(tally.tenter.wrong_no),
            tally.wrong_of_given(&tally.tenter),
            tally.percent(tally.tenter.close),
            tally.wrong_of_given(&tally.oracle),
            tally.percent(tally.oracle.close),
            tally.ratio(),
            tally.percent(tally.covered),
        );
    }

    println!("\n## Pulling until it answers: wrong at the limit\n");
    println!(
        "| asked | 1 to 10 pulls | at 95 % each time | 5 days of 3 pulls | at 95 % each time |\n|--|--:|--:|--:|--:|"
    );
    for (index, row) in repeated::ROWS.into_iter().enumerate() {
        let until = repeated::simulate(row, SWATCHES, SEED + 500 + index as u64);
        let (least, load, gauge, looks) = row;
        println!(
            "| {least} %, {}, {gauge} mm, {looks} looks | {:.1} | {:.1} | {:.1} | {:.1} |",
            if load { "known load" } else { "by hand" },
            until.pulls,
            until.pulls_at_95,
            until.days,
            until.days_at_95,
        );
    }
    let [bars, plain] = growth::until_it_answers(SWATCHES, SEED + 550);
    println!("| growth at most 3 %, 1 to 7 readings | {bars:.1} | {plain:.1} | | |");

    println!("\n## Plans carried out\n");
    println!("| asked | close | of those with a plan | plans that answer | of those wrong |\n|--|--:|--:|--:|--:|");
    for (index, row) in plans::ROWS.into_iter().enumerate() {
        let carried = plans::simulate(row, SWATCHES, SEED + 600 + index as u64);
        let (least, pulls, gauge, looks, load) = row;
        let share = |part: u32, of: u32| 100.0 * f64::from(part) / f64::from(of.max(1));
        println!(
            "| {least} %, {pulls} pulls, {gauge} mm, {looks} looks, {} | {:.0} | {:.1} | {:.1} | {:.2} |",
            if load { "known load" } else { "by hand" },
            share(carried.close, SWATCHES),
            share(carried.planned, carried.close),
            carried.success(),
            share(carried.wrong, carried.answered),
        );
    }

    println!("\n## Forecasts of growth that hold, worst of six families\n");
    println!(
        "| scale mm | last reading | forecast for | placed as assumed: holds | family | no error but reading: holds | family |"
    );
    println!("|--:|--:|--:|--:|--|--:|--|");
    for division in [0.5, 1.0] {
        for (last, at) in [(600, 1800), (600, 3600), (900, 1800), (900, 3600), (1800, 3600)] {
            let worst = |placed| {
                let held = time::forecasts_hold(division, (last, at), placed, SWATCHES / 4, SEED + 700);
                let (family, worst) = held.iter().enumerate().min_by(|a, b| a.1.total_cmp(b.1)).expect("six");
                format!("{worst:.1} | {}", time::FAMILIES[family])
            };
            println!("| {division} | {last} s | {at} s | {} | {} |", worst(true), worst(false));
        }
    }
    println!("\n## Growth over 3 % at 60 s that is within 3 % at 30 min, and how often it is called over\n");
    println!("| family | within at 30 min | called over |\n|--|--:|--:|");
    for (family, (within, called)) in time::FAMILIES.into_iter().zip(time::early_overs(SWATCHES / 4, SEED + 800)) {
        println!("| {family} | {within:.0} | {called} |");
    }
}
