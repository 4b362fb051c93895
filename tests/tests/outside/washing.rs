//! Washing: published examples, and the ranges of each source.

use crate::{assert_near, length, percent, whole_percent};
use tenter_core::making::amount::Amount;
use tenter_core::making::care::Described;
use tenter_core::making::washing::{
    FIBRES, INSEAM, LIMITS, Prewash, PrewashCloth, Remedy, USUAL, Washing, change, counted_on, left, of_length, to_buy,
};
use tenter_core::making::yardage::ShopCut;
use tenter_core::{Confidence, Figure, Grain, Ratio, Scale, Source};

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

/// A knit that relaxes longer or wider does happen (*Why do knits get larger?*). It is told, and what is left grows with
/// it; what is bought does not shrink below the need.
#[test]
fn negative_shrinkage() {
    let longer = changed("50cm", "51cm");
    assert_eq!(
        (left(length("100cm"), longer.ratio), Remedy::of(longer.ratio)),
        (Ok(length("102cm")), Remedy::WashFirst)
    );
    let amount = Amount::new(&Washing::Measured(longer), Confidence::default()).unwrap();
    assert_eq!(amount.to_buy(length("102cm")), Ok(length("102cm")));
}

/// 10 % means unfinished cloth (*Stretch and shrinkage in patterns*, part 2, 2009); the same text lets a factory leave 3 %
/// alone, which is 2.25 cm of an inside leg of 75 cm (worked out by hand: 750 mm · 0.03): a maker washes first.
#[test]
fn a_few_percent_matter() {
    use Remedy::{Ignore, WashFirst, WashTwice};
    let of = |tenths: i64| Remedy::of(Ratio::new(-tenths, 1000).unwrap());
    assert_eq!(
        [0, 9, 10, 30, 60, 99, 100].map(of),
        [Ignore, Ignore, WashFirst, WashFirst, WashFirst, WashFirst, WashTwice]
    );
    let leg = of_length(INSEAM[0], whole_percent(-3)).unwrap();
    assert_eq!(leg.steps(), -length("22.5mm").steps());
}

/// What cloth usually loses before its first wash, in percent along and across, each row against where it is told: ranges
/// from memory but for poplin ("10 or more" lengthwise, common practice), preshrunk cotton
/// 2 to 5 and acrylic and acetate 3 to 4 (*how do you calculate shrinkage*), knits 1 to 8 (*does knit material shrink*),
/// and the limits 3 and 6 % of JIS L 1096 after the Japan Textile Inspection Association.
#[test]
fn what_unwashed_cloth_usually_loses() {
    let rows = [
        ("raw denim", [7, 10], [1, 3]),
        ("preshrunk denim", [1, 3], [1, 3]),
        ("denim", [1, 10], [1, 3]),
        ("preshrunk cotton", [2, 5], [2, 5]),
        ("cotton poplin", [3, 10], [1, 3]),
        ("cotton flannel", [4, 8], [2, 5]),
        ("jersey with elastane", [3, 8], [3, 8]),
        ("cotton jersey", [5, 8], [3, 8]),
        ("woven cotton", [3, 6], [1, 3]),
        ("linen", [3, 8], [2, 4]),
        ("knit viscose", [1, 8], [1, 8]),
        ("woven viscose", [3, 8], [1, 4]),
        ("wool", [2, 4], [2, 4]),
        ("silk crepe", [4, 10], [1, 4]),
        ("silk", [1, 4], [1, 4]),
        ("polyester or nylon", [0, 2], [0, 2]),
        ("acrylic or acetate", [3, 4], [3, 4]),
        ("a woven of unknown fibre", [0, 3], [0, 3]),
        ("a knit of unknown fibre", [0, 6], [0, 6]),
        ("any cloth", [1, 3], [1, 3]),
    ];
    assert_eq!(rows.len(), USUAL.len());
    for (row, (cloth, along, across)) in USUAL.iter().zip(rows) {
        let said = row.map(|usual| [usual.least / 1000, usual.most / 1000]);
        assert_eq!((row[0].cloth, said), (cloth, [along, across]));
    }
    let published =
        |cloth: &str| USUAL.iter().any(|row| row[0].cloth == cloth && matches!(row[0].source, Source::Published(_)));
    assert!(!published("cotton poplin") && published("a knit of unknown fibre"));
}

/// Published limits in percent, along and across: Japan Textile Inspection Association after JIS L 1096 (machine wash G,
/// soak C and D, dry-cleaning J); JIS L 4107 quoted by NCAC, 2023; a Pennsylvania item description of 2015; US A-A-55281; a
/// specification of the South Carolina Highway Patrol; US MIL-DTL-3738L; ASTM F1506-18.
#[test]
fn published_limits() {
    let tenths: Vec<([i16; 2], [i16; 2])> = LIMITS.iter().map(|row| (row.along, row.across)).collect();
    let both = |least, most| ([least, most], [least, most]);
    assert_eq!(tenths[..5], [both(-30, 10), both(-60, 20), both(-50, 30), both(-30, 10), ([-30, 10], [-50, 10])]);
    assert_eq!(
        tenths[5..],
        [both(-30, 30), both(-30, 0), both(-20, 0), both(-25, 0), ([-65, 0], [-40, 0]), both(-50, 0)]
    );
    assert!(LIMITS.iter().all(|row| matches!(row.source, Source::Published(_))));
}

/// A cloth of −6 %: 2.00 m come out as 1.88 m; for 1.90 m after the wash 1.90 / 0.94 = 2.022 m are needed before it (worked
/// out by hand), so 2.10 m where a shop cuts to 10 cm; and once washed nothing is taken off again.
#[test]
fn a_wash_is_taken_off_once() {
    let six = Figure::exact(whole_percent(-6));
    let cotton = Described { fibre: "cotton", ..Described::default() };
    let stands = |washed| Washing::of(&cotton, washed, Some(six), Grain::Lengthwise);
    let buy = |washed| Amount::new(&stands(washed), Confidence::default()).unwrap().to_buy(length("1.9m")).unwrap();
    assert_eq!(stands(false).leaves(length("2m")), Ok(length("1.88m")));
    assert_near(buy(false).mm(), 2021.28, 0.01, "1.90 / 0.94");
    assert_eq!(ShopCut::TenCentimetres.up(buy(false)), Ok(length("2.1m")));
    assert_eq!((stands(true).leaves(length("1.88m")), buy(true)), (Ok(length("1.88m")), length("1.9m")));
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
        let is = |row: &&tenter_core::making::washing::FibreShrinkage| {
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
