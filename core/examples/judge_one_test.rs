//! Is this cloth stretchy enough? Three pulls of one swatch, judged against "at least 4 %".
//!
//! Run it with `cargo run -p tenter-core --example judge_one_test`.

use tenter_core::{Confidence, Decimal, Demand, Evaluation, Grain, Length, PullTest, Range, Rules, Unit};

fn main() -> Result<(), Box<dyn core::error::Error>> {
    let mut test = PullTest::new(Length::parse("10cm", Unit::Cm)?, Grain::Crosswise)?.with_settling_pull(true);
    test.add_look(Length::parse("10.1cm", Unit::Cm)?)?;
    for extended in ["105.8mm", "106mm", "105.6mm"] {
        test.add_pull(Length::parse(extended, Unit::Mm)?)?;
    }
    let demand = Demand::for_grain(Grain::Crosswise, Range::parse("4%", Unit::Mm)?);
    let evaluation = Evaluation::of(&test, &demand, &Rules::default())?;

    let stretch = evaluation.figures.stretch;
    let half_width = Decimal::round(stretch.half_width(Confidence::default()), 1);
    let here = Decimal::round(stretch.here.half_width(Confidence::default()), 1);
    println!("stretch {} % ± {half_width}; these pulls alone ± {here}", stretch.ratio.percent(1));
    if let Some(part) = evaluation.deciding() {
        let chance = part.chance.map(|chance| Decimal::round(100.0 * chance, 1).to_string());
        println!("{}, chance {} %", part.answer.word(), chance.as_deref().unwrap_or("unknown:"));
    }
    match evaluation.settle.map(|settle| settle.plan) {
        Some(Some(plan)) => {
            let how = if plan.known_load { "with a hung mass" } else { "by hand" };
            let (pulls, looks) = (plan.pulls, plan.looks);
            let when = match plan.days {
                0 => "going on to".to_owned(),
                1 => "another day with".to_owned(),
                days => format!("{days} more days, each with"),
            };
            println!("{when} {pulls} pulls {how} and {looks} looks at the marks would settle it");
        }
        Some(None) => println!("no test of this size would settle it four times in five"),
        None => println!("nothing is left to settle"),
    }
    Ok(())
}
