//! Zips: the lengths that are sold, what becomes of one in an edge, and its chain.

use crate::{length, whole_percent};
use tenter_core::Length;
use tenter_core::making::garment::GarmentKind;
use tenter_core::making::source::Source;
use tenter_core::making::zip::{Chain, Choice, End, Fit, UseCode, ZipEdge, ZipEnds, ZipSeries, chain, grows_by};

fn sold(series: ZipSeries, ends: ZipEnds) -> Vec<Length> {
    series.lengths(ends).collect()
}

/// Closed: 4, 7, 9, 12, 14, 16, 18, 20, 22, 24 in; 10 to 60 cm, mostly by 5, and 12, 18, 22 and 56 cm. Separating: 10 to 36 in
/// by 2, 30 to 80 cm by 5, and beyond 90 cm. Common practice, no source.
#[test]
fn ready_lengths() {
    let closed = [4, 7, 9, 12, 14, 16, 18, 20, 22, 24].map(|inches| length(&format!("{inches}in")));
    assert_eq!(sold(ZipSeries::Inch, ZipEnds::Closed), closed);
    let metric = sold(ZipSeries::Metric, ZipEnds::Closed);
    for cm in [10, 12, 15, 18, 20, 22, 25, 30, 35, 40, 45, 50, 55, 56, 60] {
        assert!(metric.contains(&length(&format!("{cm}cm"))), "{cm} cm");
    }
    let open = sold(ZipSeries::Inch, ZipEnds::Open);
    assert!((5..=18).all(|twos| open.contains(&length(&format!("{}in", 2 * twos)))));
    let open = sold(ZipSeries::Metric, ZipEnds::Open);
    assert!((6..=16).all(|fives| open.contains(&length(&format!("{}cm", 5 * fives)))));
    assert!(open.last() > Some(&length("90cm")));
    for series in [ZipSeries::Inch, ZipSeries::Metric] {
        for ends in [ZipEnds::Closed, ZipEnds::Open] {
            assert!(sold(series, ends).is_sorted_by(|one, next| one < next));
        }
    }
    assert_eq!(ZipSeries::SOURCE, Source::CommonPractice);
}

/// What a maker found to be standard sizes that were treated as unsold: 7 in, 9 in, 18 cm, 22 cm, 12 cm, 56 cm.
#[test]
fn standard_sizes_go_in_as_they_are() {
    for (edge, series) in [
        ("7in", ZipSeries::Inch),
        ("9in", ZipSeries::Inch),
        ("18cm", ZipSeries::Metric),
        ("22cm", ZipSeries::Metric),
        ("12cm", ZipSeries::Metric),
        ("56cm", ZipSeries::Metric),
    ] {
        let ready = Choice::of(length(edge), series, ZipEnds::Closed).unwrap().best().unwrap();
        assert_eq!((ready.length, ready.fit), (length(edge), Fit::Exact), "{edge}");
    }
    let long = Choice::of(length("95cm"), ZipSeries::Metric, ZipEnds::Open).unwrap().best().unwrap();
    assert_eq!((long.length, long.fit), (length("95cm"), Fit::Exact));
}

/// Which of the two zips a pattern allows for one front edge, 30 or 32 in: common practice, no source. An edge of 30 in takes
/// the shorter as it is; one of 31 in the longer, shortened at the top, since a separating zip keeps its bottom; 1/8 in is eased
/// (3.2 mm of the 3.8 that are 0.5 % of 30 in, the tool's own); 3/16 in more, 4.8 mm, is left above the fold of the hem (0 to
/// 6 mm, common practice).
#[test]
fn thirty_or_thirty_two_inches() {
    let choice = |edge: &str| Choice::of(length(edge), ZipSeries::Inch, ZipEnds::Open).unwrap();
    for (edge, best, fit) in [
        ("30in", "30in", Fit::Exact),
        ("30 1/8in", "30in", Fit::Ease),
        ("30 3/16in", "30in", Fit::AboveHem(length("3/16in"))),
        ("30 1/4in", "32in", Fit::Shorten { by: length("1 3/4in"), at: End::Top }),
        ("31in", "32in", Fit::Shorten { by: length("1in"), at: End::Top }),
        ("31 7/8in", "32in", Fit::Ease),
        ("32in", "32in", Fit::Exact),
    ] {
        let ready = choice(edge).best().unwrap();
        assert_eq!((ready.length, ready.fit), (length(best), fit), "{edge}");
    }
    // The other one is named too: for 31 in the shorter leaves an inch of the edge open.
    let shorter = choice("31in").no_longer.unwrap();
    assert_eq!((shorter.length, shorter.fit), (length("30in"), Fit::Short(length("1in"))));
}

/// Closed coil is shortened at the bottom, separating only at the top (common practice). Prefer the next longer one.
#[test]
fn shortening() {
    let skirt = Choice::of(length("19cm"), ZipSeries::Metric, ZipEnds::Closed).unwrap().best().unwrap();
    assert_eq!((skirt.length, skirt.fit), (length("20cm"), Fit::Shorten { by: length("1cm"), at: End::Bottom }));
    // Where none longer is sold the shorter is named, and what it leaves.
    let dress = Choice::of(length("70cm"), ZipSeries::Metric, ZipEnds::Closed).unwrap().best().unwrap();
    assert_eq!((dress.length, dress.fit), (length("60cm"), Fit::Short(length("10cm"))));
}

/// Hem and neck are taken off: 78 cm less 1.5 and 4 are 72.5. 60 cm growing by 1 % are 6 mm of wave (arithmetic).
#[test]
fn an_edge_is_less_than_it_is_cut() {
    let edge = ZipEdge { cut: length("78cm"), hem: length("4cm"), neck: length("1.5cm") };
    assert_eq!(edge.finished(), Ok(length("72.5cm")));
    assert_eq!(grows_by(length("60cm"), whole_percent(1)), Some(length("6mm")));
}

/// Sizes by the mouth of the slider (ASTM D3657-03, Table 1): 1-2 up to 3.8 mm, 3-4 to 5.7, 5-6 to 7.0, 7-10 over 7.0.
#[test]
fn slider_mouths() {
    for (numbers, mouth) in [(1..=2, Some("3.8mm")), (3..=4, Some("5.7mm")), (5..=6, Some("7mm")), (7..=10, None)] {
        for number in numbers {
            assert_eq!(Chain::mouth(number), mouth.map(length), "{number}");
        }
    }
}

/// Chain 3 for skirts and dresses, 4 to 5 for trousers and light jackets, 5 for jackets, 8 to 10 for coats (common practice);
/// BS 3084:2006: A dresses and knitwear, B skirts and trousers, C jackets, D coats.
#[test]
fn chains_by_garment() {
    for (garment, numbers, code) in [
        (GarmentKind::Skirt, (3, 3), UseCode::B),
        (GarmentKind::Dress, (3, 3), UseCode::A),
        (GarmentKind::Trousers, (4, 5), UseCode::B),
        (GarmentKind::HoodedPullover, (5, 5), UseCode::A),
        (GarmentKind::UnlinedJacket, (5, 5), UseCode::C),
        (GarmentKind::LinedCoat, (8, 10), UseCode::D),
    ] {
        let found = chain(garment);
        assert_eq!(((found.lightest, found.heaviest), found.code), (numbers, code), "{garment:?}");
    }
    assert_eq!(ZipEnds::usual(Some(GarmentKind::Trousers.usual()), length("18cm")), ZipEnds::Closed);
    assert_eq!(ZipEnds::usual(Some(GarmentKind::UnlinedJacket.usual()), length("50cm")), ZipEnds::Open);
    assert_eq!(
        [length("20cm"), length("31in")].map(|edge| ZipEnds::usual(None, edge)),
        [ZipEnds::Closed, ZipEnds::Open]
    );
}
