//! Published worked examples, from examination papers, a training manual and sewing lessons.

use crate::{assert_near, growth, length, percent, pull, recovery, stretch, triple, whole_percent};
use tenter_core::{Demand, Evaluation, Limit, Ratio, Rules, Scatter};

/// GATE Textile Engineering 2016, question 20: a fabric of 75 mm is extended to 120 mm and recovers to 95 mm. The key
/// takes 55 to 56 %; the posted solution cuts 55.55 off where rounding gives 55.56.
#[test]
fn w1_recovery_of_a_fabric() {
    let test = triple("75mm", "120mm", "95mm");
    assert_eq!(percent(recovery(&test), 2), "55.56");
    assert!(recovery(&test) > whole_percent(55) && recovery(&test) < whole_percent(56));
    assert_eq!(stretch(&test), whole_percent(60));
    assert_eq!(percent(growth(&test), 2), "26.67");
}

/// GATE Textile Engineering 2007, question 66: 200 mm of yarn, extended by 10 %, recovers to 202 mm: 90 %.
#[test]
fn w2_recovery_of_a_yarn() {
    let test = triple("200mm", "220mm", "202mm");
    assert_eq!(stretch(&test), whole_percent(10));
    assert_eq!(growth(&test), whole_percent(1));
    assert_eq!(recovery(&test), whole_percent(90));
}

/// GATE Textile Engineering 2020, question 53, asked the other way round: 300 mm of yarn, extended by 10 %, with a
/// recovery of 90 % comes back to 303 mm.
#[test]
fn w3_recovered_length_from_recovery() {
    let test = triple("300mm", "330mm", "303mm");
    let (gauge, extended) = (i64::from(length("300mm").steps()), i64::from(length("330mm").steps()));
    let given_back = whole_percent(90);
    let back = extended - given_back.numerator() * (extended - gauge) / given_back.denominator();
    assert_eq!(back, i64::from(length("303mm").steps()));
    assert_eq!(recovery(&test), given_back);

    // The demand finds the same place: 303 mm lies exactly on the limit, a hundredth either way does not.
    let chance = |recovered| {
        let ninety = Limit::milli_percent(90_000).unwrap();
        let demand = Demand { recovery_at_least: Some(ninety), ..Demand::default() };
        let rules = Rules { scatter: Scatter::SCALE_ONLY, ..Rules::default() };
        let test = triple("300mm", "330mm", recovered);
        Evaluation::of(&test, &demand, &rules).unwrap().parts[0].chance.unwrap()
    };
    assert_near(chance("303mm"), 0.5, 0.0, "on the limit");
    assert!(chance("302.99mm") > 0.5 && chance("303.01mm") < 0.5);
}

/// US Navy training manual 14218, "Elasticity or elastic recovery": an elongation of 10 % takes 10 in to 11 in.
#[test]
fn w5_ten_inches() {
    assert_eq!(stretch(&pull("10in", "11in")), whole_percent(10));
}

/// Public sewing lessons: 10 to 14 in is 40 % (2023); 25 to 40 cm is 60 %, and so is 10 to 16 in; 100 mm to 120, 150
/// and 200 mm is 20, 50 and 100 %.
#[test]
fn w6_to_w8_sewing_lessons() {
    assert_eq!(stretch(&pull("10in", "14in")), whole_percent(40));
    assert_eq!(stretch(&pull("25cm", "40cm")), whole_percent(60));
    assert_eq!(stretch(&pull("10in", "16in")), whole_percent(60));
    for (extended, want) in [("120mm", 20), ("150mm", 50), ("200mm", 100)] {
        assert_eq!(stretch(&pull("100mm", extended)), whole_percent(want));
    }
    // The lesson calls 10 in 25 cm: each pair is exact in its own unit, a mixed pair is not.
    assert_eq!(percent(stretch(&pull("25cm", "16in")), 2), "62.56");
}

/// Student note on shrinkage, 2022: 35 cm between the marks before washing, 32 cm after: 8.57 % shrinkage. Minus is
/// shrinkage (ISO 5077).
#[test]
fn w9_washing() {
    let change = Ratio::new(32 - 35, 35).unwrap();
    assert_eq!(percent(change, 2), "-8.57");
}

/// Fixed extensions of ASTM D2594 on its 5 in gauge length: 15 and 35 % lengthwise, 30 and 60 % across the width.
#[test]
fn d2594_targets() {
    for (target, extended) in [(15, "5.75in"), (30, "6.5in"), (35, "6.75in"), (60, "8in")] {
        assert_eq!(stretch(&pull("5in", extended)), whole_percent(target), "{target} %");
        let marks = Limit::marks(length("5in"), length(extended)).unwrap();
        assert_eq!(marks.ratio(), whole_percent(target), "{target} %");
    }
}

/// "Recovery" has three meanings in print. For 100, 150, 105 the share of the extension given back (JIS L 1096 B-1,
/// the GATE questions above) is 90 %; the complement of growth (EN 14704-1, from memory) would be 95 %.
#[test]
fn the_meaning_of_recovery() {
    let test = triple("100mm", "150mm", "105mm");
    assert_eq!(recovery(&test), whole_percent(90));
    assert_eq!(growth(&test), whole_percent(5));
}
