//! What excludes what, over every combination of seam and cloth: none of a seam's decisions may undo another.

use std::format;
use std::vec::Vec;

use super::*;
use crate::answer::Figure;
use crate::making::care::Finish;
use crate::making::garment::GarmentKind;
use crate::making::stitch::Stitch;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::length::Length;

fn percent(percent: i64) -> Ratio {
    Ratio::new(percent, 100).unwrap()
}

fn cloths() -> Vec<Cloth> {
    let figure = |of| Some(Figure::exact(percent(of)));
    let mut cloths = Vec::new();
    for construction in Construction::ALL {
        for mass in [Some(60), Some(215), Some(600)] {
            for (along, across) in [(None, None), (figure(3), figure(23)), (figure(50), figure(79))] {
                for (weave, finish) in [
                    (Weave::Ordinary, Finish::Plain),
                    (Weave::Denim, Finish::Plain),
                    (Weave::Canvas, Finish::Waxed),
                    (Weave::Ordinary, Finish::Membrane),
                ] {
                    let lengthwise = along;
                    cloths.push(Cloth {
                        mass,
                        weave,
                        finish,
                        lengthwise,
                        crosswise: across,
                        ..Cloth::new(construction)
                    });
                }
            }
        }
    }
    cloths
}

fn each_use(mut take: impl FnMut(&SeamUse)) {
    let garments = [None, Some(GarmentKind::UnlinedJacket), Some(GarmentKind::Shirt), Some(GarmentKind::Leggings)];
    for garment in garments {
        for runs in Runs::ALL {
            for asked in [None, Some(5), Some(50)] {
                for bits in 0u8..128 {
                    let is = |bit: u8| bits >> bit & 1 == 1;
                    take(&SeamUse {
                        asked: asked.map(percent),
                        runs,
                        curved: is(0),
                        strained: is(1),
                        held: is(2),
                        passes: is(3),
                        enclosed: is(4),
                        lined: is(5),
                        opens: is(6),
                        garment,
                    });
                }
            }
        }
    }
}

/// The exclusions of the facts' rows: binding and trimming, folded seams and other finishes, tape and stay-stitching (one
/// `Stay` an edge), a straight row and what must pass. Sources stand at each rule.
#[test]
fn no_decision_undoes_another() {
    for cloth in cloths() {
        each_use(|asked| {
            let seam = Seam::of(&cloth, asked);
            let told = || format!("{cloth:?}\n{asked:?}\n{seam:?}");
            let (finish, stitch) = (seam.finish.finish, seam.sewing.first.stitch);
            // Before binding nothing is trimmed or graded, and at least 10 mm stay.
            assert!(!finish.is_bound() || seam.trimming.is_none(), "{}", told());
            assert!(!finish.is_bound() || seam.allowance.width.metric >= Length::from_mm(10), "{}", told());
            // A clipped or curved seam is bound together.
            assert!(finish != SeamFinish::BoundSingly || !asked.curved, "{}", told());
            // French and felled: straight, uncut, without pocket or zip, all of 15 mm.
            if finish.folds_in() {
                assert_eq!(stitch, Stitch::Straight, "{}", told());
                assert!(seam.trimming.is_none() && !asked.opens && !asked.curved, "{}", told());
                assert!(seam.allowance.width.metric >= Length::from_mm(15), "{}", told());
            }
            // The overlock that joins is the finish, and nothing else is.
            assert_eq!(finish == SeamFinish::ByTheStitch, stitch == Stitch::Overlock, "{}", told());
            // What does not fray is not bound; what is covered is not bound.
            let needs_none = !cloth.frays() || asked.lined || asked.enclosed;
            assert!(!needs_none || !(finish.is_bound() || finish.folds_in()), "{}", told());
            // No straight row where something must pass, or where a knit must give.
            let kept = seam.stay.map(|line| line.stay);
            if kept == Some(Stay::StayStitch) {
                assert!(!asked.passes && cloth.construction == Construction::Woven, "{}", told());
                assert!(Stitch::Straight.allows(seam.sewing.wanted), "{}", told());
            }
            // Every stitch gives what is wanted, as far as any does; the triple stitch only where the body pulls.
            assert!(seam.sewing.is_enough() || stitch == Stitch::WideZigzag, "{}", told());
            assert!(stitch != Stitch::Triple || asked.strained, "{}", told());
            assert!(seam.sewing.second.is_none() || asked.strained, "{}", told());
            // Something is left after trimming, and less than was cut.
            if let Some(trimming) = seam.trimming {
                assert!(
                    trimming.to.metric < seam.allowance.width.metric && trimming.to.inch < seam.allowance.width.inch,
                    "{}",
                    told()
                );
                assert!(trimming.to.metric > Length::ZERO, "{}", told());
            }
            // An instead is another way to the same.
            assert_ne!(seam.finish.instead, Some(finish), "{}", told());
        });
    }
}

/// There is always a needle and a thread, the finest first.
#[test]
fn always_a_needle_and_a_thread() {
    for cloth in cloths() {
        for mass in 0..1200 {
            let (needle, thread) =
                (needle(&Cloth { mass: Some(mass), ..cloth }), thread(&Cloth { mass: Some(mass), ..cloth }));
            assert!(needle.finest <= needle.thickest && thread.tex.0 <= thread.tex.1, "{needle:?} {thread:?}");
            assert!(
                [needle.finest, needle.thickest].map(Needle::older_number).iter().all(Option::is_some),
                "{needle:?}"
            );
            assert_eq!(
                matches!(needle.point, NeedlePoint::Ballpoint | NeedlePoint::Stretch),
                cloth.construction == Construction::Knit && needle.point != NeedlePoint::Sharp,
                "{needle:?}"
            );
        }
    }
}

/// What the view asks decides, not the most that the cloth gives; along the other grain another stitch.
#[test]
fn the_seam_decides() {
    let twill = Cloth {
        lengthwise: Some(Figure::exact(percent(2))),
        crosswise: Some(Figure::exact(percent(23))),
        ..Cloth::new(Construction::Woven)
    };
    let stitch = |runs, asked: Option<i64>| {
        sewing(&twill, &SeamUse { runs, asked: asked.map(percent), ..SeamUse::default() }).first.stitch
    };
    assert_eq!(stitch(Runs::Lengthwise, None), Stitch::Straight);
    assert_eq!(stitch(Runs::Crosswise, None), Stitch::NarrowZigzag);
    assert_eq!(stitch(Runs::Crosswise, Some(5)), Stitch::Straight);
    // A knit that nobody pulled is taken to give a half; on the bias its greater stretch counts.
    let knit = Cloth::new(Construction::Knit);
    let unknown = sewing(&knit, &SeamUse::default());
    assert_eq!((unknown.basis, unknown.wanted), (Basis::NotMeasured, percent(50)));
    let round = SeamUse { runs: Runs::Around, ..SeamUse::default() };
    let pulled = Cloth { crosswise: twill.crosswise, ..knit };
    assert_eq!((sewing(&pulled, &round).basis, sewing(&pulled, &round).wanted), (Basis::Stretch, percent(23)));
}
