//! Which of several cloths suits best? Each is judged for the same demand, the best answer first, with how much to buy.
//!
//! Run it with `cargo run -p tenter-core --example choose_among_cloths`.

use tenter_core::making::{amount::Amount, washing, washing::Washing};
use tenter_core::{Answer, Confidence, Demand, Grain, Length, PullTest, Range, Rules, Scale, Unit, judge};

/// Trousers for a choir: stretch across, so that they can be sat in, and not so much that they hang.
const STRETCH: &str = "5%..20%";
/// The length that one pair takes.
const NEED: &str = "1.4m";

fn main() -> Result<(), Box<dyn core::error::Error>> {
    let demand = Demand::for_grain(Grain::Crosswise, Range::parse(STRETCH, Unit::Mm)?);
    let need = Length::parse(NEED, Unit::Cm)?;
    // Pulled lengths of marks 20 cm apart, and marks 50 cm apart after the wash.
    let cloths = [
        ("grey twill", ["216mm", "217mm", "216mm"], "49cm"),
        ("black gabardine", ["209mm", "211mm", "210mm"], "49.5cm"),
        ("navy poplin", ["201mm", "201mm", "202mm"], "49.8cm"),
    ];

    let mut judged = Vec::new();
    for (name, pulls, washed) in cloths {
        let mut test = PullTest::new(Length::from_mm(200), Grain::Crosswise)?;
        for extended in pulls {
            test.add_pull(Length::parse(extended, Unit::Mm)?)?;
        }
        let parts = judge(&test, &demand, &Rules::default())?;
        let answer = parts.iter().map(|part| part.answer).reduce(Answer::worse).unwrap_or(Answer::Meets);
        let change = washing::change(Length::from_mm(500), Length::parse(washed, Unit::Cm)?, Scale::default())?;
        let buy = Amount::new(&Washing::Measured(change), Confidence::default())?.to_buy(need)?;
        judged.push((answer.rank(), name, answer, buy));
    }
    judged.sort_by_key(|(rank, ..)| *rank);

    for (_, name, answer, buy) in judged {
        println!("{name}: {}, buy {:.2} m", answer.word(), (buy.mm() / 10.0).ceil() / 100.0);
    }
    Ok(())
}
