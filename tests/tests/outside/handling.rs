//! Handling one cloth and its seams: what each source advises, and silence where nothing is called for.

use crate::{length, percent, whole_percent};
use tenter_core::Construction::{self, Knit, Woven};
use tenter_core::making::care::Finish;
use tenter_core::making::garment::GarmentKind;
use tenter_core::making::handling::{
    Cloth, Do, GarmentPlace, Instead, Layer, Layered, Needle, NeedlePoint, Practice, Runs, Seam, SeamFinish, SeamUse,
    Stay, Weave, at, finish, hem, needle, practices, sewing, thread,
};
use tenter_core::making::source::Source;
use tenter_core::making::stitch::{Stitch, zigzag_gives};
use tenter_core::{Answer, Confidence, Figure};

fn pulled(construction: Construction, along: i64, across: i64) -> Cloth {
    let figure = |percent| Some(Figure::exact(whole_percent(percent)));
    Cloth { lengthwise: figure(along), crosswise: figure(across), ..Cloth::new(construction) }
}

fn weighing(construction: Construction, mass: u16) -> Cloth {
    Cloth { mass: Some(mass), ..Cloth::new(construction) }
}

/// What a seam of an unlined garment is asked, the view asking `asked` percent along it.
fn side(asked: i64) -> SeamUse {
    SeamUse { asked: Some(whole_percent(asked)), ..SeamUse::default() }
}

/// The working table of the trade, common practice: a mass in the middle of each row, its needle, its thread in Tex and the length
/// of its stitch in tenths of a millimetre (of the zigzag where the row says so). 10 oz/yd² are 339 g/m², 13 oz 441, 14 oz 475.
#[test]
fn the_working_table() {
    use NeedlePoint::{Ballpoint, Jeans, Sharp, Stretch, Universal};
    let plain = Cloth::new(Woven);
    let knit = Cloth::new(Knit);
    let denim = Cloth { weave: Weave::Denim, ..plain };
    for (name, cloth, mass, point, sizes, tex, long) in [
        ("voile", plain, 60, Sharp, (60, 70), Some((18, 21)), (15, 20)),
        ("lawn", plain, 90, Sharp, (65, 70), Some((18, 24)), (20, 20)),
        ("shirting", plain, 125, Universal, (70, 80), Some((24, 30)), (20, 25)),
        ("poplin", plain, 180, Universal, (80, 80), Some((27, 30)), (25, 25)),
        ("gaberdine", plain, 280, Universal, (80, 90), Some((30, 30)), (25, 25)),
        ("denim to 10 oz", denim, 300, Jeans, (90, 90), Some((30, 40)), (25, 30)),
        ("denim of 10 to 13 oz", denim, 400, Jeans, (100, 100), Some((40, 40)), (30, 30)),
        ("denim from 14 oz on", denim, 500, Jeans, (110, 110), Some((40, 60)), (30, 35)),
        ("canvas", Cloth { weave: Weave::Canvas, ..plain }, 400, Jeans, (100, 110), Some((40, 60)), (30, 35)),
        ("coating", plain, 450, Universal, (90, 100), Some((30, 40)), (30, 30)),
        ("softshell", Cloth { finish: Finish::Membrane, ..plain }, 300, Sharp, (80, 90), None, (30, 30)),
        ("fleece", Cloth { finish: Finish::Brushed, ..knit }, 300, Ballpoint, (80, 90), None, (30, 30)),
        ("jersey", knit, 170, Ballpoint, (70, 80), None, (25, 25)),
        ("interlock", knit, 220, Ballpoint, (75, 80), None, (25, 25)),
        ("rib", knit, 250, Ballpoint, (75, 80), None, (25, 25)),
        ("activewear", Cloth { elastane: true, ..knit }, 250, Stretch, (75, 75), None, (25, 25)),
        ("swim", Cloth { elastane: true, ..knit }, 190, Stretch, (65, 75), None, (25, 25)),
    ] {
        let cloth = Cloth { mass: Some(mass), ..cloth };
        let found = needle(&cloth);
        assert_eq!((found.point, (found.finest, found.thickest)), (point, sizes), "{name}");
        assert_eq!(found.source, Source::CommonPractice, "{name}");
        assert!(tex.is_none_or(|tex| thread(&cloth).tex == tex), "{name}: {:?}", thread(&cloth));
        let sewn = sewing(&cloth, &side(0));
        let row = if cloth.construction == Knit { sewn.instead.unwrap() } else { sewn.first };
        assert_eq!(row.length, long, "{name}: {row:?}");
    }
    let heavy = Cloth { mass: Some(400), ..denim };
    assert_eq!((thread(&heavy).top, sewing(&heavy, &side(5)).topstitch), (Some((60, 80)), Some((35, 40))));
}

/// The older numbers behind the stroke, from memory: 8-9-10-11-12-14-16-18 for 60-65-70-75-80-90-100-110.
#[test]
fn needle_numbers() {
    let rows = [(60, 8), (65, 9), (70, 10), (75, 11), (80, 12), (90, 14), (100, 16), (110, 18)];
    assert!(rows.iter().all(|(size, older)| Needle::older_number(*size) == Some(*older)));
}

/// Anchors that were read. Organdy and net: needle 9 (ICAR e-course, *Clothing Construction*, lesson 3). Tricot of lingerie: 9
/// or 11, ball point (Brown, Texas Extension L-1035). Stretch type 75/11 for medium two-way knits, 90/14 for heavier.
#[test]
fn needles_that_were_read() {
    let holds = |cloth: &Cloth, older: u8| {
        let needle = needle(cloth);
        let size = (0..=110).find(|size| Needle::older_number(*size) == Some(older)).unwrap();
        (needle.finest..=needle.thickest).contains(&size)
    };
    assert!(holds(&weighing(Woven, 30), 9));
    let tricot = weighing(Knit, 90);
    assert!(holds(&tricot, 9) && holds(&tricot, 11) && needle(&tricot).point == NeedlePoint::Ballpoint);
    for (mass, size) in [(250, 75), (320, 90)] {
        let two_way = Cloth { mass: Some(mass), ..pulled(Knit, 40, 60) };
        let needle = needle(&two_way);
        assert_eq!((needle.point, needle.finest, needle.thickest), (NeedlePoint::Stretch, size, size));
    }
}

/// Wovens that had no needle, or too fine a one, as a maker judged them: voile 60 to 70, medium woven 80, denim jeans 100; a
/// woven of 215 g/m² giving 15 % 80/12, with a stretch point where it skips.
#[test]
fn always_a_needle() {
    let finest = |cloth: &Cloth| (needle(cloth).finest, needle(cloth).thickest);
    assert_eq!(finest(&weighing(Woven, 60)), (60, 70));
    assert_eq!(finest(&Cloth { mass: Some(215), ..pulled(Woven, 1, 6) }), (80, 80));
    let gives = Cloth { mass: Some(215), ..pulled(Woven, 1, 15) };
    assert_eq!((finest(&gives), needle(&gives).if_it_skips), ((80, 80), Some(NeedlePoint::Stretch)));
    let denim = Cloth { weave: Weave::Denim, ..weighing(Woven, 441) };
    assert_eq!((needle(&denim).point, finest(&denim)), (NeedlePoint::Jeans, (100, 100)));
}

/// √(w² + l²) / l − 1, worked out by hand in whole percent, beside the 20 % of a lockstitch. The one of 1.5 by 2.5 mm broke in
/// a pull-on waist (*Popped stitches and the knit stitch*, 2019); a waist of 28 in that passes hips of 40 in asks for 42.9 %.
#[test]
fn a_zigzag_by_geometry() {
    for (width, long, gives) in [(5, 25, 2), (10, 25, 8), (15, 25, 17), (20, 20, 41), (20, 15, 67), (30, 15, 124)] {
        let ratio = zigzag_gives(width, long);
        let hundredths = 100 * ratio.numerator() / ratio.denominator();
        assert!((hundredths - 20).abs_diff(gives) <= 1, "{width} x {long}: {}", percent(ratio, 1));
    }
    assert!(zigzag_gives(15, 25) < whole_percent(42));
}

/// A plain seam for slight stretch, four-thread overlock for moderate to heavy (Fischer, *Sewing for Fashion Designers*, 2015,
/// p. 259); over about 20 % no plain lockstitch: each thread is about 1.25 times its seam.
#[test]
fn stitches_by_wanted_give() {
    for (tenths, want) in [
        (0, Stitch::Straight),
        (50, Stitch::Straight),
        (200, Stitch::Straight),
        (201, Stitch::NarrowZigzag),
        (500, Stitch::WideZigzag),
        (2000, Stitch::Overlock),
    ] {
        assert_eq!(Stitch::that_gives(tenter_core::Ratio::new(tenths, 1000).unwrap()), want, "{tenths} ‰");
    }
    for asked in [10, 30, 75, 120] {
        assert_eq!(sewing(&pulled(Knit, 20, 80), &side(asked)).first.stitch, Stitch::Overlock, "{asked}");
    }
}

/// The view asks 5 % of a side seam: straight, 2.5 mm, whatever the cloth could give across. Without a wish the seam's own
/// grain counts: 2.5 % along, 23 % across.
#[test]
fn what_the_view_asks_along_the_seam() {
    let corduroy = pulled(Woven, 2, 23);
    let first = sewing(&corduroy, &side(5)).first;
    assert_eq!((first.stitch, first.length), (Stitch::Straight, (25, 25)));
    let own = |runs| sewing(&corduroy, &SeamUse { runs, ..SeamUse::default() }).first.stitch;
    assert_eq!([Runs::Lengthwise, Runs::Crosswise].map(own), [Stitch::Straight, Stitch::NarrowZigzag]);
}

/// Triple stitch at crotch and underarm, which is where its source puts it (*Sewing activewear*), and nowhere else.
#[test]
fn triple_only_where_the_body_pulls() {
    let knit = pulled(Knit, 30, 79);
    let crotch = SeamUse { strained: true, curved: true, runs: Runs::Around, ..side(40) };
    assert_eq!(sewing(&knit, &crotch).second.unwrap().stitch, Stitch::Triple);
    for seam in [side(40), SeamUse { runs: Runs::Crosswise, ..side(79) }] {
        let sewn = sewing(&knit, &seam);
        let rows = [Some(sewn.first), sewn.instead, sewn.second];
        assert!(rows.into_iter().flatten().all(|row| row.stitch != Stitch::Triple), "{sewn:?}");
    }
}

/// Denim of 13 oz and waxed cotton: 3.0, topstitching 3.5 to 4.
#[test]
fn long_stitches_for_dense_cloth() {
    let waxed = Cloth { finish: Finish::Waxed, ..weighing(Woven, 280) };
    for cloth in [waxed, Cloth { weave: Weave::Denim, ..weighing(Woven, 441) }] {
        let sewn = sewing(&cloth, &side(5));
        assert_eq!((sewn.first.length, sewn.topstitch), ((30, 30), Some((35, 40))), "{cloth:?}");
    }
}

/// Hems of knits: coverstitch, else a twin needle; where that gives too little zigzag 3.5 x 1.4 mm, unstretched (*T-shirt and
/// knit fabric hems*).
#[test]
fn hems() {
    let over = |asked| hem(&pulled(Knit, 20, 80), &side(asked)).instead.unwrap();
    assert_eq!(over(20).stitch, Stitch::TwinNeedle);
    assert_eq!((over(50).width, over(50).length), (Some(35), (14, 14)));
    assert_eq!(hem(&pulled(Woven, 1, 1), &side(0)).first.stitch, Stitch::Straight);
}

/// Finishes. French: sheer, light, straight or slight curve (Oklahoma 4-H 810), not in thick cloth, at the shoulder or where it
/// is tailored (Conover, 1921, v. 1 p. 98). Felled: light to heavy wovens of shirts (Koester). An unlined woven coat is
/// bound, a curve with both edges together (common practice). A knit, felt, or what is lined: none.
#[test]
fn seam_finishes() {
    use GarmentKind::{ChildsOuterwear, Dress, Jeans, Leggings, Shirt, UnlinedJacket};
    let (voile, twill, knit) = (weighing(Woven, 60), weighing(Woven, 215), weighing(Knit, 250));
    let of = |cloth: &Cloth, garment, seam: SeamUse| {
        Seam::of(cloth, &SeamUse { garment: Some(garment), ..seam }).finish.finish
    };
    let curved = SeamUse { curved: true, ..side(0) };
    assert_eq!(of(&voile, Dress, side(0)), SeamFinish::French);
    assert_ne!(of(&voile, Dress, SeamUse { held: true, ..side(0) }), SeamFinish::French);
    assert_ne!(of(&voile, Dress, curved), SeamFinish::French);
    assert_ne!(of(&voile, UnlinedJacket, side(0)), SeamFinish::French);
    assert_ne!(of(&twill, Dress, side(0)), SeamFinish::French);
    assert_eq!(of(&twill, Shirt, side(0)), SeamFinish::Felled);
    assert_eq!(of(&Cloth { weave: Weave::Denim, ..weighing(Woven, 400) }, Jeans, side(0)), SeamFinish::Felled);
    assert_eq!(of(&twill, UnlinedJacket, side(0)), SeamFinish::BoundSingly);
    assert_eq!(of(&twill, ChildsOuterwear, curved), SeamFinish::BoundTogether);
    assert_eq!(of(&knit, Leggings, side(40)), SeamFinish::ByTheStitch);
    let felt = weighing(Construction::Other, 300);
    assert_eq!(of(&felt, UnlinedJacket, side(0)), SeamFinish::Nothing);
    assert_eq!(of(&twill, UnlinedJacket, SeamUse { lined: true, ..side(0) }), SeamFinish::Nothing);
}

/// 15 mm and 5/8 in (Oregon 4-H 320-19, 2014); knits 10 mm, and 6 at a neck that passes the head (NMSU C-210). Trimmed to 6 mm
/// and 1/4 in where it is enclosed (school text, 2012, p. 451; for unlined woven outerwear 5/8 in trimmed to 1/4 in where
/// nothing is bound, common practice), never before binding.
#[test]
fn allowances_and_trimming() {
    let jacket = SeamUse { garment: Some(GarmentKind::UnlinedJacket), ..side(5) };
    let faced = Seam::of(&weighing(Woven, 215), &SeamUse { enclosed: true, ..jacket });
    let widths = |seam: &Seam| (seam.allowance.width.metric, seam.allowance.width.inch);
    assert_eq!(widths(&faced), (length("15mm"), length("5/8in")));
    let to = faced.trimming.unwrap().to;
    assert_eq!((to.metric, to.inch), (length("6mm"), length("1/4in")));
    let bound = Seam::of(&weighing(Woven, 215), &jacket);
    assert!(bound.finish.finish.is_bound() && bound.trimming.is_none());
    let knit = Seam::of(&weighing(Knit, 170), &side(20));
    assert_eq!(widths(&knit), (length("10mm"), length("3/8in")));
    let neck = Seam::of(&weighing(Knit, 170), &SeamUse { passes: true, curved: true, runs: Runs::Around, ..side(40) });
    assert_eq!(widths(&neck), (length("6mm"), length("1/4in")));
}

/// Stay-stitching: curved and slanting edges as soon as they are cut, no long bias edges (ICAR e-course, *Clothing
/// Construction*), no straight lengthwise one; a knit neck over the head none, since a straight row would cap its give. Tape at the shoulder of a knit, clear
/// elastic where give must stay (*Successful Sewing*, 2013, p. 288). The stretchier pieces of woven outerwear across (common
/// practice).
#[test]
fn stays() {
    let of = |cloth: &Cloth, seam: SeamUse| Seam::of(cloth, &seam).stay.map(|line| line.stay);
    let (twill, stretchy, knit) = (pulled(Woven, 1, 1), pulled(Woven, 1, 15), pulled(Knit, 20, 79));
    let neck = SeamUse { curved: true, runs: Runs::Around, enclosed: true, ..side(0) };
    assert_eq!(of(&twill, neck), Some(Stay::StayStitch));
    assert_eq!(of(&twill, SeamUse { runs: Runs::Bias, ..side(0) }), Some(Stay::Hung));
    for cloth in [&twill, &stretchy, &knit] {
        assert_eq!(of(cloth, side(0)), None, "a straight lengthwise edge");
    }
    assert_eq!(of(&stretchy, SeamUse { runs: Runs::Crosswise, ..side(5) }), Some(Stay::StayStitch));
    assert_eq!(of(&twill, SeamUse { runs: Runs::Crosswise, ..side(0) }), None);
    assert_eq!(of(&knit, SeamUse { passes: true, ..neck }), Some(Stay::LeftFree));
    let shoulder = SeamUse { held: true, runs: Runs::Slanting, ..SeamUse::default() };
    assert_eq!(of(&knit, shoulder), Some(Stay::Tape));
    assert_eq!(of(&knit, SeamUse { asked: Some(whole_percent(20)), ..shoulder }), Some(Stay::ClearElastic));
}

/// Stabilise knit before gathers, buttonholes, pockets (*Knits-wovens*, 2007); a 1 in strip under a 5/8 in seam for a zip
/// (*Zippity do dah*, 2010). The fronts along a separating zip are held firm (Gotwals, Purdue HE 223: interfacing at the front
/// opening); give is wanted at hem and back neck. A bias hem hangs 24 h (*Sewing questions answered*).
#[test]
fn places() {
    let what = |cloth: &Cloth, place| at(cloth, place).map(|line| line.what);
    let (rigid, jersey) = (pulled(Woven, 1, 1), pulled(Knit, 20, 50));
    for place in [GarmentPlace::Gathers, GarmentPlace::Buttonhole, GarmentPlace::Pocket] {
        assert_eq!([&rigid, &jersey].map(|cloth| what(cloth, place)), [None, Some(Do::Stabilise)], "{place:?}");
    }
    let Some(Do::StabiliseStrip { width, allowance }) = what(&jersey, GarmentPlace::Zip) else { panic!("no strip") };
    assert_eq!((width.inch, allowance.inch), (length("1in"), length("5/8in")));
    assert_eq!(what(&rigid, GarmentPlace::Zip), None);
    for cloth in [&rigid, &jersey] {
        assert_eq!(what(cloth, GarmentPlace::FrontFacing), Some(Do::Interface { that_gives: false }));
        assert_eq!(what(cloth, GarmentPlace::BiasHem), Some(Do::HangADay));
        assert_eq!(what(cloth, GarmentPlace::Eyelet), Some(Do::Stabilise));
    }
    assert_eq!(what(&jersey, GarmentPlace::Facing), Some(Do::Interface { that_gives: true }));
    assert_eq!(what(&rigid, GarmentPlace::Facing), Some(Do::Interface { that_gives: false }));
    // One that grows by more than 3 % is stabilised, though it does not stretch.
    let grown = Cloth { growth: tenter_core::Ratio::new(4, 100), ..rigid };
    assert_eq!(what(&grown, GarmentPlace::Pocket), Some(Do::Stabilise));
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

/// Walking foot and less pressure (*Sewing with stretch*, 2005), stretch the sewn sample (question page on elastane blends),
/// nothing hanging off the table (*Top 10 tips for stretch fabrics*). Under the 12 % where the US method for stretch wovens
/// begins nothing is said, but that woven outerwear which gives is sewn from the centre outwards (common practice).
#[test]
fn at_the_machine() {
    let said = |cloth: &Cloth, garment| practices(cloth, garment).iter().map(|line| line.practice).collect::<Vec<_>>();
    let interlock = pulled(Knit, 20, 40);
    assert_eq!(said(&interlock, None), [Practice::WalkingFoot, Practice::StretchSample, Practice::LieFlat]);
    assert_eq!([11, 12].map(|across| said(&pulled(Woven, 1, across), None).len()), [0, 3]);
    assert_eq!(said(&pulled(Woven, 1, 6), Some(GarmentKind::UnlinedJacket)), [Practice::CentreOutwards]);
}

/// A lining that hangs from the waist leaves the seams under it to fray in the wash, so that they are finished; one that closes
/// a coat covers them (no finish under a full lining, from memory). What takes no iron is opened by hand.
#[test]
fn a_hung_lining_covers_no_edges() {
    let lined = |garment| SeamUse { lined: true, garment: Some(garment), ..SeamUse::default() };
    let twill = Cloth { mass: Some(270), ..Cloth::new(Construction::Woven) };
    assert_eq!(finish(&twill, &lined(GarmentKind::LinedCoat)).finish, SeamFinish::Nothing);
    for garment in [GarmentKind::Trousers, GarmentKind::Skirt, GarmentKind::Dress] {
        assert_eq!(finish(&twill, &lined(garment)).finish, SeamFinish::OverlockedSingly, "{garment:?}");
    }
    let waxed = Cloth { finish: Finish::Waxed, ..twill };
    let jacket = SeamUse { garment: Some(GarmentKind::UnlinedJacket), ..SeamUse::default() };
    assert_eq!([finish(&waxed, &jacket).by_hand, finish(&twill, &jacket).by_hand], [true, false]);
}
