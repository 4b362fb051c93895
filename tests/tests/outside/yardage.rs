//! The chart of lengths by width (*Fabric conversion chart*), row by row, and the misprints of its copies.

use crate::{assert_near, length};
use tenter_core::making::yardage::{CHART, Extra, Width, by_area, by_chart};

/// The chart as its source prints it, in yards: 35–36, 44–45, 52–54, 58–60 in.
const PRINTED: [[&str; 4]; 12] = [
    ["1 3/4", "1 3/8", "1 1/8", "1"],
    ["2", "1 5/8", "1 3/8", "1 1/4"],
    ["2 1/4", "1 3/4", "1 1/2", "1 3/8"],
    ["2 1/2", "2 1/8", "1 3/4", "1 5/8"],
    ["2 7/8", "2 1/4", "1 7/8", "1 3/4"],
    ["3 1/8", "2 1/2", "2", "1 7/8"],
    ["3 3/8", "2 3/4", "2 1/4", "2"],
    ["3 3/4", "2 7/8", "2 3/8", "2 1/4"],
    ["4 1/4", "3 1/8", "2 5/8", "2 3/8"],
    ["4 1/2", "3 3/8", "2 3/4", "2 5/8"],
    ["4 3/4", "3 5/8", "2 7/8", "2 3/4"],
    ["5", "3 7/8", "3 1/8", "2 7/8"],
];

fn yards(text: &str) -> tenter_core::Length {
    length(&format!("{text} yd"))
}

#[test]
fn every_row_as_printed() {
    for (row, printed) in CHART.iter().zip(PRINTED) {
        for (eighths, text) in row.iter().zip(printed) {
            assert_eq!(i32::from(*eighths) * yards("1/8").steps(), yards(text).steps(), "{text}");
        }
        for (width, text) in Width::ALL.into_iter().zip(printed) {
            assert_eq!(by_chart(yards(printed[0]), Width::In35, width), Some(yards(text)));
        }
    }
}

/// A wider cloth never needs more, and more never needs less: a misprint such as the copy's 1 7/8 yd for 66 in in the first
/// row, where the source has 7/8, breaks this.
#[test]
fn no_row_is_out_of_order() {
    assert!(CHART.iter().all(|row| row.windows(2).all(|pair| pair[0] > pair[1])));
    assert!(CHART.windows(2).all(|rows| rows[0].iter().zip(&rows[1]).all(|(above, below)| above < below)));
}

/// The copy's worked example, 2 7/8 yd of 54 in for 2 1/4 of 60, disagrees with its own table, which has 2 3/4.
#[test]
fn the_table_counts_not_the_copys_example() {
    assert_eq!(by_chart(yards("2 7/8"), Width::In52, Width::In58), Some(yards("2 3/4")));
}

/// Between two rows the longer; beyond the last none.
#[test]
fn between_and_beyond() {
    assert_eq!(by_chart(yards("1 7/8"), Width::In35, Width::In44), Some(yards("1 5/8")));
    assert_eq!(by_chart(yards("1/4"), Width::In35, Width::In44), Some(yards("1 3/8")));
    assert_eq!(by_chart(yards("5 1/8"), Width::In35, Width::In44), None);
}

/// The chart is practice of laying out, not area: 1 3/4 yd at 36 in is 1.05 yd at 60 by area, and 1 by the chart.
#[test]
fn area_is_an_estimate() {
    let by_area = by_area(yards("1 3/4"), length("36in"), length("60in")).unwrap();
    assert_near(by_area.mm() / 914.4, 1.05, 1e-5, "yards");
    assert_eq!(by_chart(yards("1 3/4"), Width::In35, Width::In58), Some(yards("1")));
}

/// 34 60 in cotton that comes out at 54 in goes by the narrower column (sewing forum tip).
#[test]
fn the_narrower_column_after_washing() {
    assert_eq!(
        [60, 54].map(|inches| Width::of(length(&format!("{inches}in")))),
        [Some(Width::In58), Some(Width::In52)]
    );
    assert_eq!(Width::of(length("34.9in")), None);
}

/// 1/4 yd for a large change of width or one way (*Fabric conversion chart*), 1/2 yd in doubt (*Fabric width yardage
/// conversion chart*).
#[test]
fn what_to_add() {
    assert_eq!([Extra::OneWay, Extra::InDoubt].map(Extra::length), [yards("1/4"), yards("1/2")]);
}
