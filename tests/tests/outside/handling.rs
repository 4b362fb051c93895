//! Handling one cloth and its zips: what each source advises, and silence where nothing is called for.

use crate::{length, whole_percent};
use tenter_core::Construction;
use tenter_core::making::handling::{
    Cloth, Do, Instead, Layer, Layered, NeedlePoint, Place, Practice, Weight, at, needle, practices, seam,
    seam_allowance,
};
use tenter_core::making::source::Source;
use tenter_core::making::stitch::Stitch;
use tenter_core::making::zip::{Choice, End, Fit, ZipEnds, ZipSeries};
use tenter_core::{Answer, Confidence, Figure, Ratio};

fn cloth(construction: Construction, weight: Weight, along: i64, across: i64) -> Cloth {
    let figure = |percent| Some(Figure::exact(whole_percent(percent)));
    Cloth { weight, lengthwise: figure(along), crosswise: figure(across), ..Cloth::new(construction) }
}

fn woven(across: i64) -> Cloth {
    cloth(Construction::Woven, Weight::Medium, 1, across)
}

/// A rigid woven gets a straight stitch, and only what is done to every cloth: eyelets stabilised, facings interfaced, the
/// raw seams of an unlined garment taped (common practice, no source), a bias hem hung for 24 h (*Sewing questions
/// answered*).
#[test]
fn a_rigid_woven_gets_almost_nothing() {
    let rigid = woven(1);
    assert_eq!(needle(&rigid), None);
    let lines: Vec<_> = Place::ALL.into_iter().filter_map(|place| at(&rigid, place)).collect();
    let what: Vec<_> = lines.iter().map(|line| (line.place, line.what)).collect();
    assert_eq!(
        what,
        [
            (Place::Eyelet, Do::Stabilise),
            (Place::Facing, Do::Interface { that_gives: false }),
            (Place::BiasHem, Do::HangADay),
            (Place::RawSeams, Do::BindWithTape),
        ]
    );
    for line in lines.iter().filter(|line| line.place != Place::BiasHem) {
        assert_eq!(line.source, Source::CommonPractice, "{:?}", line.place);
    }
    // Straight stitch 2.0 to 2.5 mm (*Wovens with stretch*).
    let sewn = seam(&rigid, None);
    assert_eq!((sewn.stitch, sewn.length_tenths), (Stitch::Straight, Some((20, 25))));
}

/// 5/8 in seam allowance, trimmed to 1/4 in: common practice, no source.
#[test]
fn the_usual_seam_allowance() {
    let allowance = seam_allowance();
    assert_eq!((allowance.cut, allowance.trimmed), (length("5/8in"), length("1/4in")));
    assert_eq!(allowance.source, Source::CommonPractice);
}

/// Stretch type 75/11 for medium two-way knits, 90/14 for heavier (*Specialty needle: stretch*); ballpoint 70/10 light to
/// 90/14 heavy (*Twin needle sewing on knit fabric*); stretch woven 70/10 to 75/11 suiting, 90/14 denim (*Wovens with
/// stretch*).
#[test]
fn needles() {
    use Construction::{Knit, Woven};
    for (construction, weight, along, across, point, finest, thickest, source) in [
        (Knit, Weight::Medium, 40, 60, NeedlePoint::Stretch, 75, 75, "specialty needle: stretch"),
        (Knit, Weight::Heavy, 40, 60, NeedlePoint::Stretch, 90, 90, "specialty needle: stretch"),
        (Knit, Weight::Light, 5, 40, NeedlePoint::Ballpoint, 70, 70, "twin needle sewing"),
        (Knit, Weight::Heavy, 5, 40, NeedlePoint::Ballpoint, 90, 90, "twin needle sewing"),
        (Woven, Weight::Medium, 1, 15, NeedlePoint::Universal, 70, 75, "wovens with stretch"),
        (Woven, Weight::Heavy, 1, 20, NeedlePoint::Universal, 90, 90, "wovens with stretch"),
    ] {
        let needle = needle(&cloth(construction, weight, along, across)).unwrap();
        assert_eq!((needle.point, needle.finest, needle.thickest), (point, finest, thickest), "{across} %");
        assert_eq!(needle.source, Source::CommonPractice, "{source}");
    }
}

/// Over about 20 % of wanted give no plain lockstitch; from 50 % on overlock, triple or wide zigzag: derived from the
/// thread's length, and Fischer, *Sewing for Fashion Designers*, 2015, p. 259: a plain seam for slight stretch, four-thread
/// overlock for moderate to heavy.
#[test]
fn stitches_by_wanted_give() {
    let stitch = |tenths: i64| Stitch::that_gives(Ratio::new(tenths, 1000).unwrap());
    for (tenths, want) in [
        (0, Stitch::Straight),
        (50, Stitch::Straight),
        (200, Stitch::Straight),
        (201, Stitch::NarrowZigzag),
        (499, Stitch::NarrowZigzag),
        (500, Stitch::Triple),
    ] {
        assert_eq!(stitch(tenths), want, "{tenths} ‰");
    }
    assert!(Stitch::Overlock.allows(whole_percent(100)));
    // What the view wants decides, not all that the cloth has.
    assert_eq!(seam(&woven(25), Some(whole_percent(5))).stitch, Stitch::Straight);
    assert_eq!(seam(&woven(25), None).stitch, Stitch::NarrowZigzag);
}

/// Tape shoulder seams (*Stretch seams*, guide); stabilise knit before gathers, buttonholes, pockets (*Knits-wovens*, 2007);
/// a 1 in strip under a 5/8 in seam for a zip (*Zippity do dah*, 2010); stay-stitch necklines (common practice, no source).
#[test]
fn places_of_a_knit() {
    let jersey = cloth(Construction::Knit, Weight::Medium, 20, 50);
    let strip = Do::StabiliseStrip { width: length("1in"), allowance: length("5/8in") };
    for (place, what, source) in [
        (Place::Shoulder, Do::Tape, "stretch seams"),
        (Place::NeckEdge, Do::StayStitch, "common practice"),
        (Place::Gathers, Do::Stabilise, "knits and wovens, blog, 2007"),
        (Place::Buttonhole, Do::Stabilise, "knits and wovens, blog, 2007"),
        (Place::Pocket, Do::Stabilise, "knits and wovens, blog, 2007"),
        (Place::Zip, strip, "zippity do dah, 2010"),
        (Place::Facing, Do::Interface { that_gives: true }, "knits and wovens, blog, 2007"),
        (Place::Hem, Do::HemThatGives, "t-shirt and knit fabric hems"),
    ] {
        let line = at(&jersey, place).unwrap();
        assert_eq!(line.what, what, "{place:?}");
        assert_eq!(line.source, Source::CommonPractice, "{place:?}: {source}");
    }
}

/// The tool's own edge of 2 %: from there on a woven is handled where it would grow in the making, but a straight hem still
/// gives enough to 20 %.
#[test]
fn a_woven_that_gives_a_little() {
    assert_eq!(at(&woven(1), Place::Zip), None);
    assert!(at(&woven(2), Place::Zip).is_some());
    assert_eq!(at(&woven(5), Place::Hem), None);
    assert!(at(&woven(25), Place::Hem).is_some());
    let grown = Cloth { growth: Ratio::new(4, 100), ..woven(1) };
    assert!(at(&grown, Place::Shoulder).is_some());
}

/// 25 Linen-look four-way suiting with a plain lining of 0 %: incompatible; pleat, bias or stretch lining (*Stretch vs.
/// non-stretch linings*, 2012; forum on lining and fusing stretch wovens). Its stretch of 20 % and the 10 % wanted are
/// added.
#[test]
fn a_lining_that_cannot_follow() {
    let exactly = |percent| Figure::exact(whole_percent(percent));
    let with =
        |lining| Layered::of(exactly(20), Layer::Lining, exactly(lining), whole_percent(10), Confidence::default());
    let plain = with(0);
    assert_eq!((plain.answer, plain.stretch), (Answer::Short, exactly(0)));
    assert_eq!(plain.instead, [Instead::ThatGives, Instead::Bias, Instead::Pleat]);
    let stretch = with(15);
    assert_eq!((stretch.answer, stretch.loses, stretch.instead), (Answer::Meets, true, [].as_slice()));
    assert_eq!(with(30).stretch, exactly(20));
}

/// A fused facing that does not give takes all of a wanted 5 %; one made for knits does not (*Knits-wovens*, 2007).
#[test]
fn a_fused_facing() {
    let measured = |percent, u| Figure { u, ..Figure::exact(whole_percent(percent)) };
    let faced =
        |facing| Layered::of(measured(8, 1.0), Layer::Interfacing, facing, whole_percent(5), Confidence::default());
    let firm = faced(measured(0, 0.0));
    assert_eq!((firm.answer, firm.instead), (Answer::Short, [Instead::ThatGives, Instead::Bias].as_slice()));
    assert_eq!(faced(measured(10, 1.0)).answer, Answer::Meets);
    assert_eq!(faced(measured(5, 1.0)).answer, Answer::Close);
}

/// Which of the two zips a pattern allows for one front edge, 30 or 32 in: common practice, no source. An edge of 30 in takes
/// the shorter as it is; one of 31 in the longer, shortened at the top, since an open-ended zip keeps its bottom; one of
/// 30 1/8 in is eased to the shorter, which is under 1 % and 5 mm (the limits are the tool's own).
#[test]
fn thirty_or_thirty_two_inches() {
    let choice = |edge: &str| Choice::of(length(edge), ZipSeries::Inch, ZipEnds::Open).unwrap();
    for (edge, best, fit) in [
        ("30in", "30in", Fit::Exact),
        ("30 1/8in", "30in", Fit::Ease),
        ("30 1/4in", "32in", Fit::Shorten { by: length("1 3/4in"), at: End::Top }),
        ("31in", "32in", Fit::Shorten { by: length("1in"), at: End::Top }),
        ("32in", "32in", Fit::Exact),
    ] {
        let ready = choice(edge).best().unwrap();
        assert_eq!((ready.length, ready.fit), (length(best), fit), "{edge}");
    }
    // The other one is named too: for 31 in the shorter leaves an inch of the edge open.
    let shorter = choice("31in").no_longer.unwrap();
    assert_eq!((shorter.length, shorter.fit), (length("30in"), Fit::Short(length("1in"))));
    assert_eq!(ZipSeries::SOURCE, Source::CommonPractice);
}

/// Ready lengths by 2 in and by 5 cm, closed ones shortened at the bottom: common practice, from memory.
#[test]
fn ready_lengths() {
    let lengths = |series: ZipSeries| series.lengths().collect::<Vec<_>>();
    let (inch, metric) = (lengths(ZipSeries::Inch), lengths(ZipSeries::Metric));
    assert_eq!((inch.first(), inch.last()), (Some(&length("4in")), Some(&length("36in"))));
    assert_eq!((metric.first(), metric.last()), (Some(&length("10cm")), Some(&length("90cm"))));
    assert!(inch.windows(2).all(|pair| pair[1].steps() - pair[0].steps() == length("2in").steps()));
    assert!(metric.windows(2).all(|pair| pair[1].steps() - pair[0].steps() == length("5cm").steps()));
    let skirt = Choice::of(length("18cm"), ZipSeries::Metric, ZipEnds::Closed).unwrap().best().unwrap();
    assert_eq!((skirt.length, skirt.fit), (length("20cm"), Fit::Shorten { by: length("2cm"), at: End::Bottom }));
    let long = Choice::of(length("95cm"), ZipSeries::Metric, ZipEnds::Open).unwrap().best().unwrap();
    assert_eq!((long.length, long.fit), (length("90cm"), Fit::Short(length("5cm"))));
}

/// Walking foot and less pressure (*Sewing with stretch*, 2005), stretch the sewn sample (question page on elastane blends),
/// nothing hanging off the table (*Top 10 tips for stretch fabrics*). 27 An interlock top's neck waved under its topstitching
/// (*A tragic knit top*, 2011); its stretch of 40 % is added. Under the 12 % where the US method for stretch wovens begins
/// nothing is said.
#[test]
fn at_the_machine() {
    let said = |cloth: &Cloth| practices(cloth).iter().map(|line| line.practice).collect::<Vec<_>>();
    let interlock = cloth(Construction::Knit, Weight::Medium, 20, 40);
    assert_eq!(said(&interlock), [Practice::WalkingFoot, Practice::StretchSample, Practice::LieFlat]);
    assert_eq!(at(&interlock, Place::NeckEdge).unwrap().what, Do::StayStitch);
    assert_eq!([woven(11), woven(12)].map(|cloth| said(&cloth).len()), [0, 3]);
}
