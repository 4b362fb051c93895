//! The order of work and the run of seams of each kind of garment, against what is taught.

use tenter_core::making::care::Finish;
use tenter_core::making::garment::{
    ClothCondition, CordAt, Detail, Details, GarmentKind, GarmentPart, GarmentPlan, Hem, Holds, Manner, Notion, Over,
    PartCloth, PieceMark, SeamKind, Stage, StayedEdge, Task, TaskReason, Work, Zone,
};
use tenter_core::making::handling::{Cloth, Runs};
use tenter_core::making::source::Source;
use tenter_core::{Construction, Figure, Grain};

use crate::whole_percent;

fn tasks(kind: GarmentKind, details: Details, cloths: &[PartCloth]) -> Vec<Task> {
    let mut tasks = Vec::new();
    GarmentPlan { kind, details, cloths }.each(|task| tasks.push(task));
    tasks
}

fn usual(kind: GarmentKind) -> Vec<Work> {
    tasks(kind, kind.usual(), &[]).iter().map(|task| task.work).collect()
}

/// That each of `order` stands on the plan, after the one before it.
#[track_caller]
fn assert_order(works: &[Work], order: &[Work]) {
    let place = |work: &Work| {
        works.iter().position(|one| one == work).unwrap_or_else(|| panic!("{work:?} is missing: {works:?}"))
    };
    let places: Vec<usize> = order.iter().map(place).collect();
    assert!(places.is_sorted(), "{order:?} at {places:?}");
}

const fn plain(seam: SeamKind) -> Work {
    Work::Seam(seam, Manner::Plain)
}

/// Coat: tape, darts; pockets; interfacing; facing; sleeves; lining; hem (M. Smith, USDA Farmers' Bulletin 1894, 1956, its
/// contents), where interfacing that is fused comes before all sewing; the lining after all outside stitching (common
/// practice, no source).
#[test]
fn a_lined_coat() {
    let kind = GarmentKind::LinedCoat;
    let works: Vec<Work> = tasks(kind, kind.usual().with(Detail::Darts), &[]).iter().map(|task| task.work).collect();
    let sleeves = Work::Seam(SeamKind::Armhole, Manner::Eased);
    let order = [
        Work::SewDarts,
        Work::SewWelts,
        Work::SewFacing,
        sleeves,
        Work::SewLining,
        Work::SetLining,
        Work::HemLined,
        Work::Buttonholes,
    ];
    assert_order(&works, &order);
    assert_order(&works, &[plain(SeamKind::Shoulder), plain(SeamKind::Side), sleeves]);
}

/// Shirt: the sleeve to the flat armhole; placket; sleeve and side in one, felled; cuff; collar band (L. Baldt, *Clothing
/// for Women*). Pocket and yoke before them: common practice, no source.
#[test]
fn a_shirt() {
    let works = usual(GarmentKind::Shirt);
    let sewn = |seam, manner| Work::Seam(seam, manner);
    let order = [
        Work::SewPatches,
        plain(SeamKind::Yoke),
        sewn(SeamKind::Armhole, Manner::Flat),
        Work::SewPlackets,
        sewn(SeamKind::SleeveAndSide, Manner::Felled),
        sewn(SeamKind::Cuff, Manner::Enclosed),
        sewn(SeamKind::CollarToNeck, Manner::Enclosed),
        Work::Buttonholes,
    ];
    assert_order(&works, &order);
}

/// Dress: darts, back seam, zip; shoulders; neck facing; sides; sleeve seam, hem, set; hem (a handbook that names no
/// author). Each part finished before it is joined (Dodson and Quinn, California Manual 11).
#[test]
fn a_dress() {
    let order = [
        Work::SewDarts,
        Work::SewZipSeam,
        Work::SetClosedZip,
        plain(SeamKind::Shoulder),
        Work::SewFacing,
        plain(SeamKind::Side),
        plain(SeamKind::Sleeve),
        Work::HemSleevesFirst,
        Work::Seam(SeamKind::Armhole, Manner::Eased),
        Work::Hem(Hem::LowerEdge),
    ];
    assert_order(&usual(GarmentKind::Dress), &order);
}

/// Common practice, no source: the other kinds, as makers sew them.
#[test]
fn what_everybody_sews_first() {
    let sewn = |seam, manner| Work::Seam(seam, manner);
    let (flat, in_one) = (sewn(SeamKind::Armhole, Manner::Flat), sewn(SeamKind::SleeveAndSide, Manner::InOne));
    let band = sewn(SeamKind::Waistband, Manner::Enclosed);
    let orders: [(GarmentKind, &[Work]); 8] = [
        (
            GarmentKind::UnlinedJacket,
            &[
                Work::Interface(Zone::FrontEdge),
                Work::FinishFacings,
                Work::SewPatches,
                plain(SeamKind::Shoulder),
                plain(SeamKind::CollarToNeck),
                flat,
                in_one,
                Work::BasteZip,
                Work::FaceZip,
                Work::Hem(Hem::LowerEdge),
            ],
        ),
        (
            GarmentKind::HoodedPullover,
            &[
                Work::SewFrontPocket,
                Work::SetEyelets(CordAt::Hood),
                plain(SeamKind::HoodCentre),
                Work::CordCasing(CordAt::Hood),
                plain(SeamKind::Shoulder),
                flat,
                plain(SeamKind::HoodToNeck),
                in_one,
                sewn(SeamKind::Cuff, Manner::Pulled),
                sewn(SeamKind::HemBand, Manner::Pulled),
            ],
        ),
        (
            GarmentKind::Skirt,
            &[
                Work::SewDarts,
                Work::SetClosedZip,
                plain(SeamKind::Side),
                band,
                Work::HangHem,
                Work::Hem(Hem::LowerEdge),
            ],
        ),
        (
            GarmentKind::Trousers,
            &[
                Work::SetFlyZip,
                Work::SewSideBags,
                plain(SeamKind::OutsideLeg),
                plain(SeamKind::InsideLeg),
                sewn(SeamKind::Crotch, Manner::LegInLeg),
                band,
                Work::FastenBand,
                Work::Hem(Hem::Legs),
            ],
        ),
        (
            GarmentKind::Jeans,
            &[
                Work::SewPatches,
                plain(SeamKind::Yoke),
                sewn(SeamKind::BackSeat, Manner::Felled),
                Work::SetFlyZip,
                Work::FaceHipMouths,
                sewn(SeamKind::InsideLeg, Manner::Felled),
                plain(SeamKind::OutsideLeg),
                band,
                Work::FastenBand,
                Work::Hem(Hem::Legs),
            ],
        ),
        (
            GarmentKind::TShirt,
            &[
                plain(SeamKind::Shoulder),
                sewn(SeamKind::Neckband, Manner::Pulled),
                flat,
                in_one,
                Work::Hem(Hem::Sleeves),
                Work::Hem(Hem::LowerEdge),
            ],
        ),
        (
            GarmentKind::Leggings,
            &[
                Work::TryOpacity,
                plain(SeamKind::InsideLeg),
                sewn(SeamKind::Crotch, Manner::LegInLeg),
                Work::WaistElasticKnit,
                Work::Hem(Hem::Legs),
            ],
        ),
        (
            GarmentKind::Swimwear,
            &[
                Work::BasteLining,
                plain(SeamKind::Side),
                plain(SeamKind::Crotch),
                plain(SeamKind::Strap),
                Work::EdgeElastic,
            ],
        ),
    ];
    for (kind, order) in orders {
        assert_order(&usual(kind), order);
    }
}

/// Before any sewing of the garment: the wash, a sample, cutting, fusing, marking; last of all hems and the last press.
/// Small before large and flat before round: the tool's own summary of unit construction (Dodson and Quinn, California
/// Manual 11).
#[test]
fn stages_come_in_the_order_of_a_maker() {
    for kind in GarmentKind::ALL {
        for details in [kind.usual(), kind.details().fold(kind.usual(), Details::with)] {
            let stretch =
                Cloth { crosswise: Some(Figure::exact(whole_percent(30))), ..Cloth::new(kind.construction()) };
            let cloths = [PartCloth { one_way: true, ..PartCloth::plain(GarmentPart::Main, stretch) }];
            let stages: Vec<Stage> = tasks(kind, details, &cloths).iter().map(|task| task.stage).collect();
            assert!(stages.contains(&Stage::Cut), "{kind:?}");
            let early: Vec<Stage> = stages.iter().copied().filter(|stage| *stage < Stage::Flat).collect();
            assert!(early.is_sorted(), "{kind:?}: {early:?}");
            assert_eq!(early, stages[..early.len()], "{kind:?}");
            assert!(stages.contains(&Stage::Seams), "{kind:?}");
            if let Some(hem) = stages.iter().position(|stage| *stage == Stage::Hems) {
                assert!(!stages[hem..].contains(&Stage::Seams), "{kind:?}");
            }
            let knit = kind.construction() == Construction::Knit;
            assert!(knit || stages.last() == Some(&Stage::Press), "{kind:?}: {stages:?}");
        }
    }
}

/// No task twice, and none for what the garment does not have.
#[test]
fn only_what_applies_appears() {
    for kind in GarmentKind::ALL {
        let mut sets = vec![kind.usual(), Details::NONE];
        sets.extend(kind.details().map(|detail| kind.usual().with(detail)));
        sets.extend(kind.details().map(|detail| kind.usual().less(detail)));
        for details in sets {
            let tasks = tasks(kind, details, &[]);
            for (place, task) in tasks.iter().enumerate() {
                assert!(
                    !tasks[..place].iter().any(|other| other.work == task.work),
                    "{kind:?} {details:?}: {task:?} twice"
                );
                if let TaskReason::Has(detail) = task.why {
                    assert!(details.has(detail), "{kind:?}: {task:?}");
                }
            }
        }
    }
}

/// Side, sleeve and zip seams and the outside leg run lengthwise, the yoke, waist and hem crosswise; the shoulder slants;
/// the armhole goes all round, the crotch slants: from the shape of the pieces. Ribbed bands run crosswise (Association
/// of Sewing and Design Professionals, Standards); a woven waistband or cuff is cut along its length (common practice).
#[test]
fn how_seams_run() {
    for (seam, one, other) in [
        (SeamKind::Side, Runs::Lengthwise, Runs::Lengthwise),
        (SeamKind::Sleeve, Runs::Lengthwise, Runs::Lengthwise),
        (SeamKind::SleeveAndSide, Runs::Lengthwise, Runs::Lengthwise),
        (SeamKind::OutsideLeg, Runs::Lengthwise, Runs::Lengthwise),
        (SeamKind::FrontEdge, Runs::Lengthwise, Runs::Lengthwise),
        (SeamKind::Panel, Runs::Lengthwise, Runs::Lengthwise),
        (SeamKind::InsideLeg, Runs::Slanting, Runs::Slanting),
        (SeamKind::Shoulder, Runs::Slanting, Runs::Slanting),
        (SeamKind::Armhole, Runs::Around, Runs::Around),
        (SeamKind::Crotch, Runs::Slanting, Runs::Slanting),
        (SeamKind::Yoke, Runs::Crosswise, Runs::Crosswise),
        (SeamKind::Waist, Runs::Crosswise, Runs::Crosswise),
        (SeamKind::HemBand, Runs::Crosswise, Runs::Crosswise),
        (SeamKind::Waistband, Runs::Crosswise, Runs::Lengthwise),
        (SeamKind::Cuff, Runs::Crosswise, Runs::Lengthwise),
    ] {
        assert_eq!(seam.row().runs, [one, other], "{seam:?}");
    }
    for (seam, over) in
        [(SeamKind::Neckband, Over::Head), (SeamKind::Cuff, Over::Hand), (SeamKind::Waistband, Over::Hips)]
    {
        let band = seam.in_knit();
        assert_eq!((band.runs[1].grain(), band.over), (Grain::Crosswise, over), "{seam:?}");
        assert!(matches!(band.source, Source::Published(text) if text.contains("Sewing and Design Professionals")));
    }
    assert!(SeamKind::Crotch.row().strained && SeamKind::Crotch.row().curved && !SeamKind::Side.row().curved);
}

/// Stay-stitch curved edges as soon as they are cut (ICAR e-course on stay-stitching); a neck of knit must pass the head, so
/// never there (common practice, no source).
#[test]
fn what_passes_the_head_is_not_stay_stitched() {
    let stays = |kind: GarmentKind| usual(kind).iter().any(|work| matches!(work, Work::StayStitch(_)));
    for kind in [GarmentKind::TShirt, GarmentKind::HoodedPullover, GarmentKind::Leggings, GarmentKind::Swimwear] {
        assert!(!stays(kind), "{kind:?}");
    }
    assert!(usual(GarmentKind::Dress).contains(&Work::StayStitch(StayedEdge::Neck)));
    assert!(usual(GarmentKind::Skirt).contains(&Work::StayStitch(StayedEdge::Waist)));
    // A waist that is drawn in passes the hips.
    let drawn = GarmentKind::Skirt.usual().with(Detail::ElasticWaist);
    assert!(!tasks(GarmentKind::Skirt, drawn, &[]).iter().any(|task| task.work == Work::StayStitch(StayedEdge::Waist)));
    // A dress cut of knit.
    let knit = [PartCloth::plain(GarmentPart::Main, Cloth::new(Construction::Knit))];
    let dress = tasks(GarmentKind::Dress, GarmentKind::Dress.usual(), &knit);
    assert!(!dress.iter().any(|task| matches!(task.work, Work::StayStitch(_))));
}

/// Front opening, collarless neck, collar, fly, cuff, waistband, pocket and jacket hem are interfaced (L. Gotwals, Purdue
/// Extension HE 223); the closing is held firm, the rest gives with the cloth.
#[test]
fn zones_of_interfacing() {
    let zones = |kind: GarmentKind, details: Details| -> Vec<Zone> {
        let zone = |task: &Task| if let Work::Interface(zone) = task.work { Some(zone) } else { None };
        tasks(kind, details, &[]).iter().filter_map(zone).collect()
    };
    let jacket = GarmentKind::UnlinedJacket;
    assert_eq!(zones(jacket, jacket.usual()), [Zone::FrontEdge, Zone::Collar, Zone::Hem]);
    let collarless = jacket.usual().less(Detail::Collar).with(Detail::WeltPockets);
    assert_eq!(zones(jacket, collarless), [Zone::FrontEdge, Zone::Neck, Zone::PocketOpening, Zone::Hem]);
    assert_eq!(zones(GarmentKind::Trousers, GarmentKind::Trousers.usual()), [Zone::Waistband, Zone::Fly]);
    assert!(zones(GarmentKind::Shirt, GarmentKind::Shirt.usual()).contains(&Zone::Cuff));
    for kind in [GarmentKind::TShirt, GarmentKind::Leggings, GarmentKind::Swimwear] {
        assert_eq!(zones(kind, kind.usual()), [], "{kind:?}");
    }
    assert_eq!(Zone::FrontEdge.holds(), Some(Holds::Firm));
    assert_eq!([Zone::Hem, Zone::Neck].map(Zone::holds), [Some(Holds::Gives); 2]);
}

/// No cord in the hood of a child's outer garment (16 CFR 1120 with ASTM F1816; EN 14682), whatever else was asked for.
#[test]
fn a_childs_hood_has_no_cord() {
    for kind in GarmentKind::ALL {
        let details = kind.usual().with(Detail::Hood).with(Detail::Cord).with(Detail::Child);
        let tasks = tasks(kind, details, &[]);
        let in_hood = |work: Work| {
            [Work::SetEyelets(CordAt::Hood), Work::CutCord(CordAt::Hood), Work::CordCasing(CordAt::Hood)]
                .contains(&work)
        };
        assert!(!tasks.iter().any(|task| in_hood(task.work) || task.work == Work::StopCord), "{kind:?}");
    }
    assert!(usual(GarmentKind::ChildsOuterwear).contains(&Work::NoHoodCord));
}

/// The lower edge of a lined coat that a cord draws in ends in its casing, and only the lining is hemmed; where the cord runs
/// in the hood both are (common practice, no source).
#[test]
fn a_casing_is_the_hem_of_a_coat() {
    let child = GarmentKind::ChildsOuterwear;
    let coat = GarmentKind::UnlinedJacket;
    let hems = |kind: GarmentKind, details: &[Detail]| -> Vec<Work> {
        let details = details.iter().fold(kind.usual().with(Detail::Lining), |all, detail| all.with(*detail));
        let works = tasks(kind, details, &[]).into_iter().map(|task| task.work);
        works.filter(|work| matches!(work, Work::HemLined | Work::HemLining | Work::Hem(Hem::LowerEdge))).collect()
    };
    assert_eq!(hems(coat, &[]), [Work::HemLined]);
    assert_eq!(hems(coat, &[Detail::Cord]), [Work::HemLining]);
    assert_eq!(hems(coat, &[Detail::Cord, Detail::Hood]), [Work::HemLined]);
    assert_eq!(hems(child, &[Detail::Cord]), [Work::HemLining]);
    assert_eq!(hems(GarmentKind::LinedCoat, &[Detail::Cord]), [Work::HemLining]);
}

/// A waistband is fastened over its fly or zip; one that elastic draws in is not (common practice, no source).
#[test]
fn a_waistband_is_fastened() {
    let fastened =
        |kind: GarmentKind, details| tasks(kind, details, &[]).iter().any(|task| task.work == Work::FastenBand);
    for kind in [GarmentKind::Trousers, GarmentKind::Jeans, GarmentKind::Skirt] {
        assert!(fastened(kind, kind.usual()), "{kind:?}");
        assert!(!fastened(kind, kind.usual().with(Detail::ElasticWaist)), "{kind:?}");
    }
}

/// A wax melts under an iron and a film keeps its pin holes; a pile lies one way (common practice, no source). A knit is laid
/// one way up, and what stretches does not hang off the table.
#[test]
fn the_cloth_decides() {
    let woven = |finish| [PartCloth::plain(GarmentPart::Main, Cloth { finish, ..Cloth::new(Construction::Woven) })];
    let kind = GarmentKind::UnlinedJacket;
    let works = |cloths: &[PartCloth]| -> Vec<Work> {
        tasks(kind, kind.usual(), cloths).iter().map(|task| task.work).collect()
    };
    let waxed = works(&woven(Finish::Waxed));
    for work in [Work::Clip, Work::SewInInterfacing, Work::NoIron] {
        assert!(waxed.contains(&work), "{work:?}");
    }
    for work in [Work::FuseSample, Work::TrimFusible, Work::LastPress] {
        assert!(!waxed.contains(&work), "{work:?}");
    }
    let pile = works(&woven(Finish::Pile));
    assert!(pile.contains(&Work::LayOneWay) && pile.contains(&Work::PressPile) && !pile.contains(&Work::LastPress));
    let plain = works(&woven(Finish::Plain));
    assert!(!plain.contains(&Work::LayOneWay) && !plain.contains(&Work::LayFlat) && plain.contains(&Work::LastPress));
    let stretch = Cloth { crosswise: Some(Figure::exact(whole_percent(30))), ..Cloth::new(Construction::Knit) };
    let cloths = [
        PartCloth::plain(GarmentPart::Main, Cloth::new(Construction::Woven)),
        PartCloth::plain(GarmentPart::Rib, stretch),
    ];
    let rib = tasks(kind, kind.usual().with(Detail::RibBands), &cloths);
    let flat: Vec<_> = rib.iter().filter(|task| task.work == Work::LayFlat).collect();
    assert_eq!(flat.len(), 1);
    assert_eq!((flat[0].cloth, flat[0].why), (Some(1), TaskReason::Cloth(ClothCondition::Stretches)));
}

/// Preshrink a zip unless its tape is all polyester (Oregon Extension EC 940); elastic before it is cut (common practice).
#[test]
fn notions_are_washed_with_the_cloth() {
    let washed = |kind: GarmentKind| -> Vec<Work> {
        tasks(kind, kind.usual(), &[])
            .iter()
            .filter(|task| task.stage == Stage::Prewash)
            .map(|task| task.work)
            .collect()
    };
    assert_eq!(washed(GarmentKind::Trousers), [Work::WashNotion(Notion::Zip)]);
    assert_eq!(washed(GarmentKind::Leggings), [Work::WashNotion(Notion::Elastic)]);
    assert_eq!(washed(GarmentKind::TShirt), []);
    assert!(usual(GarmentKind::TShirt).contains(&Work::Mark(PieceMark::Quarters)));
}

/// One thing closes a garment, and one finishes an edge.
#[test]
fn details_that_take_each_others_place() {
    let coat = GarmentKind::LinedCoat.usual();
    let zipped = coat.with(Detail::SeparatingZip);
    assert!(!zipped.has(Detail::Buttons) && zipped.has(Detail::Collar));
    let drawn = GarmentKind::Trousers.usual().with(Detail::ElasticWaist);
    assert!(!drawn.has(Detail::Fly) && !drawn.has(Detail::Waistband) && drawn.has(Detail::SidePockets));
    // A yoke is no closing.
    assert!(GarmentKind::Jeans.usual().with(Detail::Buttons).has(Detail::Yoke));
}

/// What is bought beside the cloths: thread and needles aside, what the garment closes with, what runs in its casings, what
/// stiffens it and what lies inside it (common practice, no source). Interfacing is no heavier than the cloth (Texas Extension
/// E-404). A hook and eye closes a dress above its zip, a button or a hook and bar a waistband.
#[test]
fn what_is_bought_beside_the_cloths() {
    let got = |kind: GarmentKind, details: Details, cloths: &[PartCloth]| -> Vec<Notion> {
        let notion = |task: &Task| if let Work::Get(notion) = task.work { Some(notion) } else { None };
        tasks(kind, details, cloths).iter().filter_map(notion).collect()
    };
    let usual = |kind: GarmentKind| got(kind, kind.usual(), &[]);
    use Notion::{BandClosing, Buttons, Cord, CordStops, Elastic, Eyelets, Fusible, HookAndEye, PocketBags, Zip};
    assert_eq!(usual(GarmentKind::Trousers), [Zip, BandClosing, Fusible, PocketBags]);
    assert_eq!(usual(GarmentKind::Jeans), [Zip, BandClosing, Fusible, PocketBags]);
    assert_eq!(usual(GarmentKind::Dress), [Zip, Fusible, HookAndEye]);
    assert_eq!(usual(GarmentKind::Shirt), [Buttons, Fusible]);
    assert_eq!(usual(GarmentKind::LinedCoat), [Buttons, Fusible, PocketBags, Notion::SleeveHeads]);
    assert_eq!(usual(GarmentKind::HoodedPullover), [Cord, Eyelets, CordStops, Fusible]);
    assert_eq!([GarmentKind::Leggings, GarmentKind::Swimwear].map(usual), [[Elastic], [Elastic]]);
    assert!(usual(GarmentKind::TShirt).is_empty());
    // What takes no heat takes no fusible.
    let waxed = Cloth { finish: Finish::Waxed, ..Cloth::new(Construction::Woven) };
    let kind = GarmentKind::UnlinedJacket;
    assert_eq!(got(kind, kind.usual(), &[PartCloth::plain(GarmentPart::Main, waxed)]), [Zip, Notion::SewInInterfacing]);
    // Nothing is fixed to the ends of a child's cord (16 CFR 1120 with ASTM F1816).
    let child = GarmentKind::ChildsOuterwear;
    assert!(!got(child, child.usual().with(Detail::Cord), &[]).contains(&CordStops));
}

/// The zip of jeans is that of their fly, by whatever name it is asked for (common practice, no source).
#[test]
fn the_zip_of_jeans_is_their_fly() {
    let jeans = GarmentKind::Jeans;
    let details = jeans.usual().with(jeans.meant(Detail::ClosedZip));
    let works: Vec<Work> = tasks(jeans, details, &[]).iter().map(|task| task.work).collect();
    for work in [Work::Get(Notion::Zip), Work::SetFlyZip, Work::TopstitchFly, Work::FastenBand] {
        assert!(works.contains(&work), "{work:?}");
    }
    assert!(!jeans.has(Detail::ClosedZip) && GarmentKind::Trousers.has(Detail::ClosedZip));
}

/// A lining of trousers or a skirt is sewn by itself, hung from the waist before that is finished, and hems shorter, by itself
/// (common practice, no source); that of a coat is set in and hemmed with a fold of ease.
#[test]
fn a_lining_that_hangs() {
    for kind in [GarmentKind::Trousers, GarmentKind::Skirt] {
        let works: Vec<Work> =
            tasks(kind, kind.usual().with(Detail::Lining), &[]).iter().map(|task| task.work).collect();
        let band = Work::Seam(SeamKind::Waistband, Manner::Enclosed);
        assert_order(&works, &[Work::HangLining, Work::LiningToZip, band, Work::HemFree]);
        assert!(!works.contains(&Work::HemLined) && !works.contains(&Work::SetLining), "{kind:?}");
        assert!(!kind.lining_closes());
    }
    assert!(usual(GarmentKind::LinedCoat).contains(&Work::HemLined) && GarmentKind::LinedCoat.lining_closes());
}

/// A raglan is stay-stitched along its slanting edges (ICAR e-course on stay-stitching), reaches the neck, and so comes before
/// what is sewn to that; it has no shoulder seam, no armhole and no cap (common practice, no source).
#[test]
fn a_raglan_comes_before_the_neck() {
    let raglan = Work::Seam(SeamKind::Raglan, Manner::Plain);
    let neck = |kind| match kind {
        GarmentKind::HoodedPullover => Work::Seam(SeamKind::HoodToNeck, Manner::Plain),
        GarmentKind::TShirt => Work::Seam(SeamKind::Neckband, Manner::Pulled),
        _ => Work::Seam(SeamKind::CollarToNeck, Manner::Plain),
    };
    let in_one = Work::Seam(SeamKind::SleeveAndSide, Manner::InOne);
    for kind in [GarmentKind::UnlinedJacket, GarmentKind::LinedCoat, GarmentKind::HoodedPullover, GarmentKind::TShirt] {
        let works: Vec<Work> =
            tasks(kind, kind.usual().with(Detail::Raglan), &[]).iter().map(|task| task.work).collect();
        let order =
            if kind == GarmentKind::LinedCoat { [raglan, in_one, neck(kind)] } else { [raglan, neck(kind), in_one] };
        assert_order(&works, &order);
        let is_of_cap = |work: &Work| {
            matches!(
                work,
                Work::Seam(SeamKind::Shoulder | SeamKind::Armhole | SeamKind::Side, _) | Work::SewSleeveHeads
            )
        };
        assert!(!works.iter().any(is_of_cap), "{kind:?}: {works:?}");
        let stays = works.contains(&Work::StayStitch(StayedEdge::Raglan));
        assert_eq!(stays, kind.construction() == Construction::Woven, "{kind:?}");
    }
}

/// A vent is interfaced, marked and sewn with the centre back, before the side seams; slits are finished before the hem (common
/// practice, no source).
#[test]
fn vents_and_slits() {
    for kind in [GarmentKind::Skirt, GarmentKind::LinedCoat, GarmentKind::Dress] {
        let works: Vec<Work> = tasks(kind, kind.usual().with(Detail::Vent), &[]).iter().map(|task| task.work).collect();
        let side = Work::Seam(SeamKind::Side, Manner::Plain);
        assert_order(&works, &[Work::Interface(Zone::Vent), Work::Mark(PieceMark::Vents), Work::SewVent, side]);
        assert!(!usual(kind).contains(&Work::SewVent));
    }
    for kind in [GarmentKind::Skirt, GarmentKind::Shirt, GarmentKind::TShirt] {
        let works: Vec<Work> =
            tasks(kind, kind.usual().with(Detail::Slits), &[]).iter().map(|task| task.work).collect();
        assert_order(&works, &[Work::SewSlits, Work::Hem(Hem::LowerEdge)]);
    }
}

/// The slider of a child's zip does not pass its top stop (BS 3084:2006, after a laboratory's bulletin), and a guard keeps it
/// from the chin (common practice, no source).
#[test]
fn a_childs_zip() {
    let child = usual(GarmentKind::ChildsOuterwear);
    assert_order(&child, &[Work::Get(Notion::Zip), Work::ChildSlider, Work::TopstitchZip, Work::GuardZip]);
    let grown = usual(GarmentKind::UnlinedJacket);
    assert!(!grown.contains(&Work::ChildSlider) && !grown.contains(&Work::GuardZip));
    // A pullover's cord runs in its hood, so that a child's has none at all (16 CFR 1120 with ASTM F1816).
    let pullover = GarmentKind::HoodedPullover;
    let details = pullover.allowed(pullover.usual().with(Detail::Child));
    let works: Vec<Work> = tasks(pullover, details, &[]).iter().map(|task| task.work).collect();
    assert!(works.contains(&Work::NoHoodCord));
    assert!(!works.iter().any(|work| matches!(work, Work::SetEyelets(_) | Work::CordCasing(_) | Work::DrawCord)));
}

/// Each part is finished before it is joined (Dodson and Quinn, California Manual 11): collar and cuffs are sewn before they are
/// set on, and a neckband is tried over the head before.
#[test]
fn small_parts_first() {
    let shirt = usual(GarmentKind::Shirt);
    let enclosed = |seam| Work::Seam(seam, Manner::Enclosed);
    assert_order(&shirt, &[Work::MakeCollar, enclosed(SeamKind::CollarToNeck)]);
    assert_order(&shirt, &[Work::MakeCuffs, enclosed(SeamKind::Cuff)]);
    let top = usual(GarmentKind::TShirt);
    assert_order(&top, &[Work::TryNeckband, Work::Seam(SeamKind::Neckband, Manner::Pulled)]);
}

/// A wax melts under an iron, so its seams are opened by hand; a film takes a cool one (common practice, no source); a pile is
/// steamed from behind.
#[test]
fn how_seams_are_opened() {
    let opened = |finish| -> Vec<Work> {
        let cloth = Cloth { finish, ..Cloth::new(Construction::Woven) };
        let kind = GarmentKind::UnlinedJacket;
        let all = tasks(kind, kind.usual().with(Detail::Darts), &[PartCloth::plain(GarmentPart::Main, cloth)]);
        let is_opening = |work: &Work| {
            matches!(work, Work::PressSeams | Work::SteamSeams | Work::FlattenSeams | Work::PressDarts | Work::NoIron)
        };
        all.iter().map(|task| task.work).filter(is_opening).collect()
    };
    assert_eq!(opened(Finish::Waxed), [Work::FlattenSeams, Work::NoIron]);
    assert_eq!(opened(Finish::Pile), [Work::SteamSeams]);
    for finish in [Finish::Plain, Finish::Membrane, Finish::Coated] {
        assert_eq!(opened(finish), [Work::PressDarts, Work::PressSeams], "{finish:?}");
    }
}
