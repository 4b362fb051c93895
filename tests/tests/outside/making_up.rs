//! Pairing two cloths and sizes, against questions that people asked and tables of the trade. Verdicts are arithmetic;
//! what was added to a question is said.

use crate::{assert_near, length, percent, whole_percent};
use tenter_core::making::pairing::{Advice, AdviceReason, Between, Edge, Match, Mismatch, Pair, Which};
use tenter_core::making::sizing::{Ease, Reach, Reduction, Stretch, Usage};
use tenter_core::making::source::Source;
use tenter_core::making::stitch::Stitch;
use tenter_core::{Answer, Confidence, Figure, Ratio};

fn exactly(percent: i64) -> Figure {
    Figure::exact(whole_percent(percent))
}

fn about(percent: i64, u: f32) -> Figure {
    Figure { u, ..exactly(percent) }
}

fn edge(stretch: Figure) -> Edge {
    Edge { stretch, growth: None, washing: None }
}

fn paired(first: Figure, second: Figure) -> Pair {
    Pair::of(&edge(first), &edge(second), length("60cm"), None, Confidence::default()).unwrap()
}

fn stretch(percent: i64) -> Stretch {
    Stretch::new(whole_percent(percent)).unwrap()
}

/// 40 "Which layer on top?" 24 in of seam, 1/4 in left over is 1.04 %; the stretchier one belongs below (*Which fabric
/// on top*, 2017).
#[test]
fn a_quarter_inch_left_over_shows() {
    let left = Figure::exact(Ratio::new(1, 96).unwrap());
    let mismatch = Mismatch::of(left, exactly(0), length("24in"), Confidence::default()).unwrap();
    assert_eq!((mismatch.length, mismatch.answer), (length("1/4in"), Answer::Over));
    assert_eq!(percent(mismatch.share.ratio, 2), "1.04");
    let grows = Edge { growth: Some(left), ..edge(exactly(20)) };
    let firm = Edge { growth: Some(exactly(0)), ..edge(exactly(15)) };
    let pair = Pair::of(&grows, &firm, length("24in"), None, Confidence::default()).unwrap();
    assert_eq!(pair.answer, Match::Handle); // The gap of 5 points alone would be alike.
    let below = pair.advice().iter().find(|line| line.advice == Advice::Below(Which::First)).copied().unwrap();
    assert_eq!(below.reason, AdviceReason::Mismatch);
    assert_eq!(below.source, Source::CommonPractice);
}

/// The tool's own limits: from 1 % of the seam or from 5 mm, whichever comes first, so the two meet at half a metre.
#[test]
fn the_share_or_the_length_comes_first() {
    let answer = |hundredths: i64, seam: &str| {
        let grown = Figure::exact(Ratio::new(hundredths, 10_000).unwrap());
        Mismatch::of(grown, exactly(0), length(seam), Confidence::default()).unwrap().answer
    };
    assert_eq!([answer(99, "20cm"), answer(100, "20cm")], [Answer::Meets, Answer::Over]);
    assert_eq!([answer(99, "50cm"), answer(100, "50cm")], [Answer::Meets, Answer::Over]);
    assert_eq!([answer(49, "1m"), answer(50, "1m")], [Answer::Meets, Answer::Over]);
}

/// The tool's own limits on the gap: under 10 points alike, 10 to 25 handle, over 25 band to body.
#[test]
fn gaps_in_stretch() {
    for (first, second, want) in
        [(20, 29, Match::Alike), (20, 30, Match::Handle), (45, 20, Match::Handle), (46, 20, Match::BandToBody)]
    {
        assert_eq!(paired(exactly(first), exactly(second)).answer, want, "{first} and {second}");
    }
}

/// With an uncertainty of 1 point each the gap has one of √2: at 10 ± 1.41 points it is a toss between two answers,
/// and 95 % sure (one-sided, 1.645 × 1.414 = 2.33 points) from 12.4 points on.
#[test]
fn gaps_too_close_to_call() {
    let pair = |first, second| paired(about(first, 1.0), about(second, 1.0));
    let toss = pair(20, 30);
    assert_eq!(toss.answer, Match::Close(Between::AlikeAndHandle));
    assert_near(toss.chances.alike, 0.5, 1e-3, "alike");
    assert_near(toss.gap.u, 2f64.sqrt(), 1e-6, "u of the gap");
    assert_eq!(pair(20, 32).answer, Match::Close(Between::AlikeAndHandle));
    assert_eq!(pair(20, 33).answer, Match::Handle);
    assert_eq!(pair(20, 45).answer, Match::Close(Between::HandleAndBand));
    assert!(pair(20, 45).advice().iter().any(|line| line.advice == Advice::PullAgain));
}

/// Rib to woven: the short stretchy band on top, pulled to match, both edges quartered (*Sewing unlike fabric seams*).
#[test]
fn rib_to_woven() {
    let lines = paired(exactly(2), exactly(100)).advice();
    let advice: Vec<_> = lines.iter().map(|line| line.advice).collect();
    assert!(advice.contains(&Advice::BandOnTop(Which::Second)) && advice.contains(&Advice::QuarterMarks));
    assert!(!advice.iter().any(|line| matches!(line, Advice::Below(_))), "{advice:?}");
}

/// Stretchier pieces stay-stitched, stitching from the centre outwards: common practice, no source.
#[test]
fn what_everybody_does() {
    let lines = paired(exactly(5), exactly(20)).advice();
    for advice in [Advice::StayStitch(Which::Second), Advice::CentreOutwards] {
        assert_eq!(lines.iter().find(|line| line.advice == advice).unwrap().source, Source::CommonPractice);
    }
    // A joined sample is washed (*Pairing fabrics in one garment*, 2022), unless both were and changed alike.
    assert!(lines.iter().any(|line| line.advice == Advice::WashJoinedSample));
    let washed = Edge { growth: Some(exactly(0)), washing: Some(exactly(-2)), ..edge(exactly(20)) };
    let alike = Pair::of(&washed, &washed, length("60cm"), None, Confidence::default()).unwrap();
    assert_eq!(alike.advice().iter().map(|line| line.advice).collect::<Vec<_>>(), [Advice::NoHandling]);
}

/// 30 "Skirt waist popped though zigzagged", 1.5 × 2.5 mm (*Popped stitches and the knit stitch*, 2019): the stitch gave
/// too little; triple or overlock. That the waist must pass the hips, 100 over 66 cm, is added: 51.5 %.
#[test]
fn the_popped_waist() {
    let needed = Stretch::needed(length("100cm"), length("66cm")).unwrap();
    assert_eq!(percent(needed.ratio(), 1), "51.5");
    assert!(!Stitch::NarrowZigzag.allows(needed.ratio()) && !Stitch::Straight.allows(needed.ratio()));
    assert!(Stitch::WideZigzag.allows(needed.ratio()) && Stitch::Overlock.allows(needed.ratio()));
    assert_eq!(Stitch::that_gives(needed.ratio()), Stitch::WideZigzag);
}

/// 1 A close-fitting skirt wants 50 %; the cloth has 20 %, the next size is finished at 101 cm (*Stretch fabrics and
/// fit*, 2014). 20 is under 50, but 101 reaches 121.2 cm at 20 %, so a 104 cm hip needs only 3.0 %. An uncertainty of a
/// point is added.
#[test]
fn the_next_size_up() {
    let cloth = about(20, 1.0);
    let reach = Reach::of(length("104cm"), length("101cm"), cloth, Confidence::default()).unwrap();
    assert_eq!((reach.answer, reach.usage), (Answer::Meets, Usage::Half));
    assert_eq!((percent(reach.needed.ratio(), 1), percent(reach.used.unwrap(), 0)), ("3.0".into(), "15".into()));
    let furthest =
        |hip: &str| Reach::of(length(hip), length("101cm"), exactly(20), Confidence::default()).unwrap().answer;
    assert_eq!([furthest("121.2cm"), furthest("121.21cm")], [Answer::Meets, Answer::Short]);
    assert_eq!(cloth.chance_at_least(whole_percent(50)), 0.0);
}

/// 22 Bust 36 in, cloth to 1.5 times: 33.3 %, so 24 in uses all the stretch (*What is the stretch ratio of a fabric*,
/// lesson); half of it gives 28.8 in (added).
#[test]
fn all_the_stretch_or_half() {
    let bust = length("36in");
    let all = stretch(50).most_reduction().unwrap();
    assert_eq!((percent(all.ratio(), 1).as_str(), all.of(bust)), ("33.3", Some(length("24in"))));
    let half = stretch(50).part(1, 2).unwrap().most_reduction().unwrap();
    assert_eq!(half.of(bust), Some(length("28.8in")));
    assert_eq!(Usage::of(Stretch::needed(bust, length("24in")).unwrap(), stretch(50)), Usage::NearlyAll);
    assert_eq!(Usage::of(Stretch::needed(bust, length("28.8in")).unwrap(), stretch(50)), Usage::Half);
    assert_eq!(Usage::of(Stretch::needed(bust, length("23.9in")).unwrap(), stretch(50)), Usage::TooMuch);
}

/// The reductions that use all, half or a quarter of the stretch: 1 − 1/(1 + s), worked out by hand.
#[test]
fn reductions() {
    for (percent_stretch, all, half, quarter) in [
        (20, "16.7", "9.1", "4.8"),
        (25, "20.0", "11.1", "5.9"),
        (40, "28.6", "16.7", "9.1"),
        (50, "33.3", "20.0", "11.1"),
        (75, "42.9", "27.3", "15.8"),
        (100, "50.0", "33.3", "20.0"),
    ] {
        let of = |whole| stretch(percent_stretch).part(1, whole).unwrap().most_reduction().unwrap().ratio();
        let got = [1, 2, 4].map(|whole| percent(of(whole), 1));
        assert_eq!(got, [all, half, quarter], "{percent_stretch} %");
    }
}

/// A garment 33 % smaller needs 50 % of stretch (*What is the stretch ratio of a fabric*, lesson), and 96 of 100 cm is
/// an ease of −4 cm or −4 %.
#[test]
fn a_reduction_is_no_stretch() {
    let third = Reduction::new(Ratio::new(1, 3).unwrap()).unwrap();
    assert_eq!(third.stretch_needed().unwrap(), stretch(50));
    let ease = Ease::of(length("100cm"), length("96cm")).unwrap();
    assert_eq!((ease.length.steps(), ease.share), (-length("4cm").steps(), whole_percent(-4)));
}
