//! Washing: published examples, and the ranges of each source.

use crate::{assert_near, length, percent, whole_percent};
use tenter_core::making::washing::{FIBRES, Prewash, PrewashCloth, Remedy, change, counted_on, left, to_buy};
use tenter_core::{Confidence, Figure, Grain, Ratio, Scale};

fn changed(before: &str, after: &str) -> Figure {
    change(length(before), length(after), Scale::default()).unwrap()
}

/// A 20 cm square, both ways (*Shrinkage*, glossary): 20 to 17 cm is 15 %. Formula and signs as in ISO 5077, whose marks
/// stand at least 35 cm apart.
#[test]
fn marks_before_and_after() {
    assert_eq!(changed("20cm", "17cm").ratio, whole_percent(-15));
    assert_eq!(changed("35cm", "35.7cm").ratio, whole_percent(2));
}

/// 1 mm scale, read at one end: u = 0.2887 mm for each length (JCGM 100:2008 § 4.3.7), so for 35 to 35 cm
/// 100 · 0.2887 · √2 / 350 = 0.1166 points, and for 10 to 9 cm 0.2887 · √(1 + 0.81) = 0.3884.
#[test]
fn what_a_change_is_worth() {
    assert_near(changed("35cm", "35cm").u, 0.1166, 1e-4, "35 cm");
    assert_near(changed("10cm", "9cm").u, 0.3884, 1e-4, "10 cm");
    // One-sided 95 %: −10 − 1.645 · 0.3884 = −10.64, down to the next tenth.
    assert_eq!(percent(counted_on(changed("10cm", "9cm"), Confidence::default()), 1), "-10.7");
}

/// Buy need / (1 − s), not need × (1 + s): 2 yd at 10 % is 2.22 yd, not 2.20 (worked out by hand).
#[test]
fn buying_length() {
    let buy = to_buy(length("2yd"), whole_percent(-10)).unwrap();
    assert_near(buy.mm() / 914.4, 2.222, 5e-4, "yards");
    assert_eq!(buy, length("80in"));
}

/// 34 60 in of cotton that loses 10 % is 54 in: use the column for that width (sewing forum tip).
#[test]
fn usable_width() {
    assert_eq!(left(length("60in"), whole_percent(-10)), Ok(length("54in")));
}

/// A knit that relaxes longer or wider does happen (*Why do knits get larger?*): less to buy, nothing to remedy.
#[test]
fn negative_shrinkage() {
    let longer = changed("50cm", "51cm").ratio;
    assert_eq!(to_buy(length("102cm"), longer), Ok(length("100cm")));
    assert_eq!((left(length("100cm"), longer), Remedy::of(longer)), (Ok(length("102cm")), Remedy::Ignore));
}

/// 3 % or less ignore, 5 % compensate, 10 % means unfinished cloth (*Stretch and shrinkage in patterns*, part 2, 2009).
#[test]
fn production_patterns() {
    let of = |tenths: i64| Remedy::of(Ratio::new(-tenths, 1000).unwrap());
    assert_eq!([0, 30, 31, 50, 99, 100].map(of), {
        use Remedy::{Allow, Ignore, WashFirst};
        [Ignore, Ignore, Allow, Allow, Allow, WashFirst]
    });
}

/// Each row: its source, the cloth, the grain, and the shrinkage from least to most in tenths of a percent.
#[test]
fn every_row_as_its_source_gives_it() {
    use Grain::{Crosswise, Lengthwise};
    let (guide, sum, maker) =
        ("fabric shrinkage guide", "how do you calculate shrinkage", "shrinkage rate of the general fabric");
    let rows = [
        ("how much to expect your fabric to shrink, 2012", "any cloth", None, 10, 30),
        (guide, "cotton, woven", None, 30, 50),
        (sum, "cotton, preshrunk", None, 20, 50),
        (sum, "cotton, not preshrunk", None, 0, 200),
        (maker, "cotton, plain", Some(Lengthwise), 60, 60),
        (maker, "cotton, plain", Some(Crosswise), 25, 25),
        (maker, "cotton, twill", Some(Lengthwise), 40, 40),
        (maker, "cotton, twill", Some(Crosswise), 30, 30),
        (maker, "cotton, mercerised", Some(Lengthwise), 35, 35),
        (maker, "cotton, mercerised", Some(Crosswise), 35, 35),
        (maker, "wool, worsted", Some(Lengthwise), 40, 40),
        (maker, "wool, worsted", Some(Crosswise), 35, 35),
        (maker, "silk, name lost in translation", Some(Lengthwise), 100, 100),
        (maker, "silk, name lost in translation", Some(Crosswise), 30, 30),
        (guide, "linen", None, 50, 100),
        (sum, "linen", None, 40, 40),
        (guide, "viscose", None, 50, 100),
        (guide, "polyester", None, 0, 30),
        (sum, "nylon, acrylic, acetate", None, 30, 40),
        ("does knit material shrink", "knits", None, 10, 80),
        (sum, "cotton jersey", None, 20, 30),
        ("sewing forum", "cotton, width", Some(Crosswise), 100, 100),
    ];
    assert_eq!(rows.len(), FIBRES.len());
    for (source, cloth, grain, least, most) in rows {
        let is = |row: &&tenter_core::making::washing::Fibre| {
            (row.cloth, row.grain, row.least, row.most) == (cloth, grain, 100 * least, 100 * most)
        };
        assert!(FIBRES.iter().any(|row| is(&row)), "{cloth} as in {source}");
    }
}

/// Cotton more than once (R. M. Tondl, Nebraska Extension NF00-415, 2000), cotton and rayon knits twice (*How much to expect
/// your fabric to shrink*, 2012), denim three times (*Pant fabrics*, fitting book).
#[test]
fn washes_before_cutting() {
    let rows = PrewashCloth::ALL.map(|cloth| (cloth.word(), Prewash::of(cloth).washes));
    assert_eq!(rows, [("any", 1), ("cotton", 2), ("cotton-or-viscose-knit", 2), ("denim", 3)]);
    assert!(Prewash::of(PrewashCloth::Cotton).source.to_string().contains("NF00-415"));
}
