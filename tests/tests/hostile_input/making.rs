//! The maker's other decisions from any lengths and figures: no panic, chances are chances, and the laws that the
//! functions are made of hold exactly.

use num_bigint::BigInt;
use num_rational::BigRational;
use proptest::prelude::*;
use tenter_core::Construction;
use tenter_core::making::amount::Amount;
use tenter_core::making::body::{Direction, MOVEMENTS, demand};
use tenter_core::making::care::{Care, Described, Finish};
use tenter_core::making::caution::{CORDS, Job, MOST_GRAMS, cautions};
use tenter_core::making::elastic::{
    CASINGS, Drawcord, DrawnThrough, Edging, Fastened, Kind, RULES, is_recommended, passes, recommended, rules, tunnel,
};
use tenter_core::making::garment::GarmentKind;
use tenter_core::making::handling::{
    Cloth, GarmentPlace, Layer, Layered, Runs, Seam, SeamUse, Stay, StayLine, Weave, at, hem, needle, thread,
};
use tenter_core::making::hanging::{METHODS, Specimen, Tension, mass, tension, widest};
use tenter_core::making::pairing::{Advice, Joint, MOST_LINES, Match, Pair, SeamEdge, Which};
use tenter_core::making::sizing::{Ease, Reach, Reduction, Stretch, Usage, mass_stretched, wearable};
use tenter_core::making::source::Source;
use tenter_core::making::stitch::Stitch;
use tenter_core::making::washing::{Remedy, Washing, change, counted_on, left, to_buy};
use tenter_core::making::yardage::{OneWay, ShopCut, Width, by_area, by_chart};
use tenter_core::making::zip::{Choice, Fit, ZipEnds, ZipSeries};
use tenter_core::{Answer, Confidence, Ends as Read, Figure, Grain, Length, Limit, Ratio, SUITS, Scale};

use crate::given;

/// Any length, everyday ones most of the time.
fn length() -> impl Strategy<Value = Length> {
    prop_oneof![6 => 1..3_200_000i32, 2 => any::<i32>(), 1 => Just(0), 1 => Just(i32::MAX), 1 => Just(i32::MIN)]
        .prop_map(Length::from_steps)
}

/// Any ratio, everyday percentages most of the time.
fn ratio() -> impl Strategy<Value = Ratio> {
    let percentage = (-1_000..2_000i64).prop_map(|tenths| Ratio::new(tenths, 1000).unwrap());
    let any = (any::<i64>(), 1..=i64::MAX).prop_map(|(num, den)| Ratio::new(num, den).unwrap());
    prop_oneof![6 => percentage, 1 => any, 1 => Just(Ratio::new(i64::MIN, 1).unwrap())]
}

fn figure() -> impl Strategy<Value = Figure> {
    let float = || prop_oneof![4 => 0f32..5f32, 2 => Just(0.0), 1 => prop::num::f32::ANY];
    let dof = prop_oneof![3 => Just(f32::INFINITY), 3 => 1f32..50f32, 1 => prop::num::f32::ANY];
    (ratio(), float(), dof).prop_map(|(ratio, u, dof)| Figure { u, dof, ..Figure::exact(ratio) })
}

/// A figure as a measurement gives it.
fn measured() -> impl Strategy<Value = Figure> {
    (0..2_000i64, 0f32..5f32, 1f32..50f32).prop_map(|(tenths, u, dof)| Figure {
        u,
        dof,
        ..Figure::exact(Ratio::new(tenths, 1000).unwrap())
    })
}

fn confidence() -> impl Strategy<Value = Confidence> {
    (501..=999u16).prop_map(|per_mille| Confidence::per_mille(per_mille).unwrap())
}

fn grain() -> impl Strategy<Value = Grain> {
    prop::sample::select(vec![Grain::Lengthwise, Grain::Crosswise, Grain::Bias])
}

fn piece() -> impl Strategy<Value = Specimen> {
    prop::sample::select(vec![Specimen::Strip, Specimen::Loop])
}

fn edge(figure: impl Strategy<Value = Figure> + Clone) -> impl Strategy<Value = SeamEdge> {
    let construction = prop::sample::select(Construction::ALL.to_vec());
    let stays = [Stay::StayStitch, Stay::Tape, Stay::LeftFree].map(|stay| StayLine { stay, source: Source::Own });
    let stay = prop::option::of(prop::sample::select(stays.to_vec()));
    (construction, stay, figure.clone(), prop::option::of(figure.clone()), prop::option::of(figure)).prop_map(
        |(construction, stay, stretch, growth, washing)| SeamEdge { construction, stay, stretch, growth, washing },
    )
}

fn joint(length: impl Strategy<Value = Length>) -> impl Strategy<Value = Joint> {
    let stitch = prop::option::of(prop::sample::select(Stitch::ALL.to_vec()));
    let band = prop::option::of(prop::sample::select(vec![Which::First, Which::Second]));
    let asked = prop::option::of((0..200_000u32).prop_map(|milli| Limit::milli_percent(milli).unwrap()));
    (length, stitch, band, asked).prop_map(|(length, stitch, band, asked)| Joint { length, stitch, band, asked })
}

/// The same advice where the cloths are named the other way round.
fn swapped(advice: Advice) -> Advice {
    match advice {
        Advice::Below(which) => Advice::Below(which.other()),
        Advice::StayStitch(which) => Advice::StayStitch(which.other()),
        Advice::TapeEdge(which) => Advice::TapeEdge(which.other()),
        Advice::OtherCloth(which) => Advice::OtherCloth(which.other()),
        Advice::BandOnTop(which) => Advice::BandOnTop(which.other()),
        Advice::PullAgain(which) => Advice::PullAgain(which.map(Which::other)),
        Advice::ReadGrowthAgain(which) => Advice::ReadGrowthAgain(which.map(Which::other)),
        Advice::WillBag(which) => Advice::WillBag(which.other()),
        Advice::NoHandling
        | Advice::QuarterMarks
        | Advice::CentreOutwards
        | Advice::ReadGrowth
        | Advice::WashAgain
        | Advice::WashJoinedSample
        | Advice::StitchThatGives => advice,
    }
}

fn cloth() -> impl Strategy<Value = Cloth> {
    let construction = prop::sample::select(vec![Construction::Woven, Construction::Knit, Construction::Other]);
    let weave = prop::sample::select(vec![Weave::Ordinary, Weave::Denim, Weave::Canvas]);
    let surface = (prop::option::of(any::<u16>()), weave, prop::sample::select(Finish::ALL.to_vec()), any::<bool>());
    let figures = prop::array::uniform3(prop::option::of(figure()));
    (construction, surface, figures, prop::option::of(ratio())).prop_map(
        |(construction, (mass, weave, finish, elastane), [lengthwise, crosswise, bias], growth)| Cloth {
            construction,
            mass,
            weave,
            finish,
            elastane,
            lengthwise,
            crosswise,
            bias,
            growth,
        },
    )
}

fn garment() -> impl Strategy<Value = Option<GarmentKind>> {
    prop::option::of(prop::sample::select(GarmentKind::ALL.to_vec()))
}

fn seam_use() -> impl Strategy<Value = SeamUse> {
    let runs = prop::sample::select(Runs::ALL.to_vec());
    (prop::option::of(ratio()), runs, prop::array::uniform7(any::<bool>()), garment()).prop_map(
        |(asked, runs, [curved, strained, held, passes, enclosed, lined, opens], garment)| SeamUse {
            asked,
            runs,
            curved,
            strained,
            held,
            passes,
            enclosed,
            lined,
            opens,
            garment,
        },
    )
}

fn is_chance(chance: f32) -> bool {
    (0.0..=1.0).contains(&chance)
}

fn exact(ratio: Ratio) -> BigRational {
    BigRational::new(ratio.numerator().into(), ratio.denominator().into())
}

fn whole(length: Length) -> BigRational {
    BigRational::from_integer(BigInt::from(length.steps()))
}

fn one() -> BigRational {
    BigRational::from_integer(1.into())
}

/// Less than a step apart.
fn within_a_step(got: Length, want: BigRational) -> bool {
    let apart = whole(got) - want;
    -one() < apart && apart < one()
}

proptest! {
    #[test]
    fn any_two_cloths_are_judged(
        first in edge(figure().boxed()), second in edge(figure().boxed()), seam in joint(length().boxed()),
        confidence in confidence(),
    ) {
        let pair = Pair::of(&first, &second, &seam, confidence);
        prop_assert!(pair.is_err() || seam.length > Length::ZERO);
        if let Ok(pair) = pair {
            for chance in [pair.chances.alike, pair.chances.handle, pair.chances.band] {
                prop_assert!(is_chance(chance), "{:?}", pair.chances);
            }
            for mismatch in [pair.growth, pair.washing].into_iter().flatten() {
                prop_assert!(is_chance(mismatch.chance) && mismatch.shows_from <= Ratio::new(1, 100).unwrap());
            }
            prop_assert!(pair.stretch.ratio <= first.stretch.ratio && pair.stretch.ratio <= second.stretch.ratio);
            // What is answered is answered at that confidence.
            let is_sure = pair.chance.map(|chance| is_chance(chance) && chance >= confidence.chance());
            let is_plain = !matches!(pair.answer, Match::Close(_) | Match::BandToBody);
            prop_assert_eq!(is_sure, is_plain.then_some(true));
            prop_assert_eq!(pair.open.is_some(), matches!(pair.answer, Match::Close(_)));
            prop_assert!(pair.advice().len() <= MOST_LINES);
            let lines = pair.advice();
            let has = |wanted: fn(&Advice) -> bool| lines.iter().filter(|line| wanted(&line.advice)).count();
            // One cloth lies below, or is the band; a band belongs to a seam that has one.
            prop_assert!(has(|one| matches!(one, Advice::Below(_) | Advice::BandOnTop(_))) <= 1, "{:?}", lines);
            prop_assert!(seam.band.is_some() || has(|one| matches!(one, Advice::BandOnTop(_))) == 0, "{:?}", lines);
            // A seam that gives less than is asked is never called alike.
            let is_asked = pair.give.is_some_and(|give| give.answer != Answer::Meets);
            prop_assert!(!(is_asked && pair.answer == Match::Alike));
        }
    }

    /// It does not matter which cloth is named first.
    #[test]
    fn a_pair_is_a_pair(
        first in edge(measured().boxed()), second in edge(measured().boxed()),
        seam in joint((1600..1_600_000i32).prop_map(Length::from_steps).boxed()), confidence in confidence(),
    ) {
        let turned = Joint { band: seam.band.map(Which::other), ..seam };
        let there = Pair::of(&first, &second, &seam, confidence).unwrap();
        let back = Pair::of(&second, &first, &turned, confidence).unwrap();
        if first.stretch.ratio != second.stretch.ratio {
            let order = |advice: Vec<Advice>| {
                let mut all: Vec<String> = advice.iter().map(|one| format!("{one:?}")).collect();
                all.sort();
                all
            };
            let said = there.advice().iter().map(|line| swapped(line.advice)).collect();
            prop_assert_eq!(order(said), order(back.advice().iter().map(|line| line.advice).collect()));
        }
        prop_assert_eq!((there.answer, there.chances, there.gap.ratio), (back.answer, back.chances, back.gap.ratio));
        prop_assert_eq!(there.stretchier.map(|which| which.other()), back.stretchier);
        prop_assert_eq!(there.growth.map(|growth| growth.length), back.growth.map(|growth| growth.length));
        prop_assert!((there.chances.alike + there.chances.handle + there.chances.band - 1.0).abs() < 1e-4);
    }

    /// A wider gap is never more alike.
    #[test]
    fn a_wider_gap_is_less_alike(less in 0..400i64, more in 0..400i64, u in 0f32..5f32) {
        let edge = |tenths| {
            SeamEdge::new(Figure { u, ..Figure::exact(Ratio::new(tenths, 1000).unwrap()) })
        };
        let seam = Joint::of(Length::from_mm(600));
        let pair = |gap| Pair::of(&edge(100), &edge(100 + gap), &seam, Confidence::default()).unwrap();
        let (near, far) = (pair(less.min(more)), pair(less.max(more)));
        prop_assert!(far.chances.alike <= near.chances.alike + 1e-5);
        prop_assert!(far.chances.band >= near.chances.band - 1e-5);
        prop_assert!(near.answer != Match::Unlike || far.answer == Match::Unlike);
    }

    /// Growth counts no more the less the seam gives, and never more than was read.
    #[test]
    fn growth_counts_as_far_as_the_seam_goes(
        firm in 0..2_000i64, firmer in 0..2_000i64, own in 1..2_000i64, grown in 0..500i64,
    ) {
        let percent = |tenths| Figure::exact(Ratio::new(tenths, 1000).unwrap());
        let grows = SeamEdge { growth: Some(percent(grown)), ..SeamEdge::new(percent(own)) };
        let share = |stretch| {
            let still = SeamEdge { growth: Some(percent(0)), ..SeamEdge::new(percent(stretch)) };
            let pair = Pair::of(&grows, &still, &Joint::of(Length::from_mm(600)), Confidence::default()).unwrap();
            pair.growth.unwrap().share.ratio
        };
        let (less, more) = (share(firm.min(firmer)), share(firm.max(firmer)));
        prop_assert!(less <= more && more <= Ratio::new(grown, 1000).unwrap(), "{:?} {:?}", less, more);
    }

    /// r = 1 − 1/(1 + s) and back, exactly.
    #[test]
    fn reduction_and_stretch(ratio in ratio(), part in any::<u16>(), of in any::<u16>()) {
        if let Some(stretch) = Stretch::new(ratio) {
            if let Some(reduction) = stretch.most_reduction() {
                let s = exact(stretch.ratio());
                prop_assert_eq!(exact(reduction.ratio()), one() - one() / (one() + s));
                prop_assert!(reduction.ratio() <= stretch.ratio());
                prop_assert_eq!(reduction.stretch_needed(), Some(stretch));
            }
            prop_assert!(stretch.part(part, of).is_none_or(|part| part <= stretch));
        }
        if let Some(reduction) = Reduction::new(ratio) {
            prop_assert!(reduction.ratio() < Ratio::new(1, 1).unwrap());
            let back = reduction.stretch_needed().and_then(Stretch::most_reduction);
            prop_assert!(back.is_none_or(|back| back == reduction));
        }
    }

    /// Ease and needed stretch are two sides of one quotient: (1 + ease) · (1 + needed) = 1 where the cloth must stretch.
    #[test]
    fn ease_and_needed_stretch(body in length(), garment in length()) {
        let (ease, needed) = (Ease::of(body, garment), Stretch::needed(body, garment));
        prop_assert_eq!(ease.is_ok(), body > Length::ZERO && garment > Length::ZERO);
        prop_assert_eq!(ease.map(|_| ()), needed.map(|_| ()));
        if let (Ok(ease), Ok(needed)) = (ease, needed) {
            prop_assert_eq!(whole(ease.length), whole(garment) - whole(body));
            let product = (one() + exact(ease.share)) * (one() + exact(needed.ratio()));
            if body >= garment {
                prop_assert_eq!(product, one());
            } else {
                prop_assert_eq!(exact(needed.ratio()), one() - one());
            }
        }
    }

    /// A garment cut by the largest reduction just reaches, a step smaller does not.
    #[test]
    fn the_largest_reduction_just_reaches(body in 16_000..3_200_000i32, tenths in 1..2_000i64) {
        let stretch = Stretch::new(Ratio::new(tenths, 1000).unwrap()).unwrap();
        let body = Length::from_steps(body);
        let garment = stretch.most_reduction().unwrap().of(body).unwrap();
        let usage = |garment| Usage::of(Stretch::needed(body, garment).unwrap(), stretch);
        prop_assert_ne!(usage(garment), Usage::TooMuch);
        prop_assert_eq!(usage(Length::from_steps(garment.steps() - 1)), Usage::TooMuch);
    }

    #[test]
    fn any_opening_is_answered(body in length(), garment in length(), stretch in figure(), confidence in confidence()) {
        if let Ok(reach) = Reach::of(body, garment, stretch, confidence) {
            prop_assert!(is_chance(reach.chance), "{reach:?}");
            prop_assert!(garment < body || reach.answer == Answer::Meets);
            if stretch.u == 0.0 {
                prop_assert_eq!(reach.answer == Answer::Short, reach.needed.ratio() > stretch.ratio && garment < body);
            }
        }
    }

    /// Every rule for elastic stays within the measure, and a loop that passes exactly uses all its stretch.
    #[test]
    fn any_elastic(measure in length(), widest in length(), stretch in figure(), confidence in confidence()) {
        for rule in RULES {
            if let Ok(span) = rule.cut(measure) {
                prop_assert!(Length::ZERO < span.least && span.least <= span.most && span.most <= measure);
                let reach = passes(span.least, rule.overlap, widest, stretch, confidence);
                prop_assert_eq!(reach.is_ok(), widest > Length::ZERO);
                prop_assert!(reach.is_err() || reach.is_ok_and(|reach| is_chance(reach.chance)));
            }
        }
        for casing in CASINGS {
            let (depth, allowance) = (casing.depth(measure), casing.allowance(measure));
            prop_assert!(depth.is_err() || depth.is_ok_and(|span| measure <= span.least && span.least <= span.most));
            prop_assert!(allowance.is_err() || allowance.is_ok_and(|span| measure <= span.least));
        }
        for (kind, place) in Kind::ALL.into_iter().flat_map(|kind| Edging::ALL.map(|place| (kind, place))) {
            prop_assert!(rules(kind, place).all(|rule| rule.place == place));
            if let Ok(found) = recommended(kind, place, measure, measure.steps() % 2 == 0) {
                prop_assert!(Length::ZERO < found.closed && found.closed <= measure && found.closed < found.cut);
                prop_assert!(is_recommended(kind, place));
            }
        }
        for (drawn, thick) in [(DrawnThrough::Elastic, false), (DrawnThrough::Elastic, true), (DrawnThrough::Cord, false)] {
            // Never too tight.
            let found = tunnel(drawn, measure, thick, thick);
            prop_assert!(found.is_err() || found.is_ok_and(|found| measure < found.depth && found.depth < found.allowance));
        }
        for fastened in [Fastened::Stops, Fastened::Tied] {
            let cord = Drawcord::of(measure, widest, fastened, true);
            prop_assert!(cord.is_err() || cord.is_ok_and(|cord| measure < cord.cut && widest < cord.tunnel.depth));
        }
    }

    #[test]
    fn any_body_is_worn_no_smaller_than_it_stretches(
        made in prop::sample::select(Construction::ALL.to_vec()), elastane in any::<bool>(), garment in garment(),
        round in ratio(), along in prop::option::of(ratio()), mass in any::<u16>(),
    ) {
        if let Some(worn) = wearable(made, elastane, garment, round) {
            let worn = worn.with_lengths(garment, along);
            prop_assert!(worn.least <= worn.most && worn.lengths.is_none_or(|lengths| lengths <= worn.most));
            prop_assert!(worn.most.stretch_needed().is_none_or(|needed| needed.ratio() <= round));
        }
        prop_assert!(mass_stretched(mass, round, along.unwrap_or(Ratio::ZERO)).is_none_or(|there| there <= mass));
    }

    #[test]
    fn the_shorter_loop_needs_more(loop_ in 16_000..1_600_000i32, less in 1..16_000i32, widest in 16_000..3_200_000i32) {
        let needed = |loop_| Stretch::needed(Length::from_steps(widest), Length::from_steps(loop_)).unwrap();
        prop_assert!(needed(loop_ - less) >= needed(loop_));
        let product = whole(Length::from_steps(loop_)) * (one() + exact(needed(loop_).ratio()));
        prop_assert_eq!(product, whole(Length::from_steps(widest.max(loop_))));
    }

    /// need / (1 − s) before washing leaves the need, and a step less would not.
    #[test]
    fn what_is_bought_is_left(need in 1..16_000_000i32, tenths in -900..900i64) {
        let (need, change) = (Length::from_steps(need), Ratio::new(tenths, 1000).unwrap());
        let buy = to_buy(need, change).unwrap();
        prop_assert!(left(buy, change).unwrap() >= need);
        prop_assert!(within_a_step(buy, whole(need) / (one() + exact(change))));
        if buy.steps() > 1 {
            prop_assert!(left(Length::from_steps(buy.steps() - 1), change).unwrap() < need);
        }
    }

    /// Whatever a label says: an allowance between nothing and a fifth, a care, and never less than the need.
    #[test]
    fn any_label(
        (fibre, name) in (".{0,60}", "[a-z ]{0,40}"), finish in prop::option::of(prop::sample::select(Finish::ALL.to_vec())),
        construction in prop::sample::select(Construction::ALL.to_vec()), marks in prop::option::of(figure()),
        (washed, one_way) in (any::<bool>(), any::<bool>()), need in 1..16_000_000i32, confidence in confidence(),
    ) {
        let said = Described { fibre: &fibre, name: &name, construction, finish };
        let care = Care::of(&said);
        prop_assert!(finish.is_none_or(|finish| finish == said.finish()));
        let stands = Washing::of(&said, washed, marks, Grain::Lengthwise);
        prop_assert_eq!(washed, stands == Washing::Done);
        if let Some(usual) = stands.allowance() {
            prop_assert!(care.before.rule.wets() && usual.least <= usual.most && usual.most <= 20_000);
        }
        let need = Length::from_steps(need);
        let extra = OneWay::of(&said, one_way).map_or(Length::ZERO, |way| way.extra(need, None).length);
        prop_assert!(extra >= Length::ZERO && (one_way || finish.is_some() || !fibre.is_empty() || !name.is_empty() || extra == Length::ZERO));
        if let Ok(amount) = Amount::new(&stands, confidence)
            && let Ok(buy) = amount.and(extra).to_buy(need)
        {
            prop_assert!(i64::from(buy.steps()) >= i64::from(need.steps()) + i64::from(extra.steps()));
            for cut in ShopCut::ALL {
                prop_assert!(cut.up(buy).is_err() || cut.up(buy).is_ok_and(|rounded| rounded >= buy));
            }
        }
    }

    #[test]
    fn any_washing(before in length(), after in length(), any in figure(), confidence in confidence()) {
        let scale = Scale::new(Length::from_mm(1), Read::Both).unwrap();
        for figure in [change(before, after, scale).ok(), Some(any)].into_iter().flatten() {
            let worst = counted_on(figure, confidence);
            prop_assert!(worst <= figure.ratio);
            let _ = (Remedy::of(worst), to_buy(before, worst), left(before, worst));
        }
        if let Ok(figure) = change(before, after, scale) {
            prop_assert!(figure.u.is_finite() && figure.u > 0.0);
            prop_assert!(within_a_step(after, whole(before) * (one() + exact(figure.ratio))));
        }
    }

    #[test]
    fn any_cloth_is_handled(
        cloth in cloth(), asked in seam_use(), layer in figure(), confidence in confidence(),
    ) {
        let sewn = Seam::of(&cloth, &asked).sewing;
        let widest = |row: &tenter_core::making::handling::Sewn| row.width == Some(30);
        prop_assert!(sewn.is_enough() || widest(&sewn.first), "{:?}", sewn);
        prop_assert!(hem(&cloth, &asked).second.is_none());
        let (needle, thread) = (needle(&cloth), thread(&cloth));
        prop_assert!(needle.finest <= needle.thickest && thread.tex.0 <= thread.tex.1);
        for place in GarmentPlace::ALL {
            prop_assert!(at(&cloth, place).is_none_or(|line| line.place == place));
        }
        if let Some(shell) = cloth.most_stretch() {
            for kind in [Layer::Interfacing, Layer::Lining] {
                let layered = Layered::of(shell, kind, layer, sewn.wanted, confidence);
                prop_assert!(layered.stretch.ratio <= shell.ratio && layered.stretch.ratio <= layer.ratio);
                prop_assert!(is_chance(layered.chance));
            }
        }
    }

    #[test]
    fn any_zip(opening in length(), other in length(), open in any::<bool>(), metric in any::<bool>()) {
        let ends = if open { ZipEnds::Open } else { ZipEnds::Closed };
        let series = if metric { ZipSeries::Metric } else { ZipSeries::Inch };
        if let Ok(choice) = Choice::of(opening, series, ends) {
            prop_assert!(choice.no_longer.is_none_or(|ready| ready.length <= opening));
            prop_assert!(choice.longer.is_none_or(|ready| ready.length > opening));
            prop_assert!(choice.best().is_some());
        }
        match Fit::of(opening, other, ends) {
            Ok(Fit::Exact) => prop_assert_eq!(opening, other),
            Ok(Fit::Ease) => prop_assert!(other != opening),
            Ok(Fit::AboveHem(by)) => prop_assert!(open && whole(other) + whole(by) == whole(opening)),
            Ok(Fit::Short(by)) => prop_assert_eq!(whole(other) + whole(by), whole(opening)),
            Ok(Fit::Shorten { by, at }) => {
                prop_assert_eq!(whole(opening) + whole(by), whole(other));
                prop_assert_eq!(at, ends.shortened_at());
            }
            Err(_) => prop_assert!(opening <= Length::ZERO || other <= Length::ZERO),
        }
    }

    #[test]
    fn any_mass(millinewtons in any::<u32>(), on in length(), width in length(), grams in any::<u32>(), piece in piece()) {
        if let Some(wanted) = Tension::new(millinewtons, on) {
            let hung = mass(wanted, width, piece);
            prop_assert!(hung.is_err() || hung.is_ok_and(|mass| mass.too_heavy == (mass.grams > MOST_GRAMS)));
            let widest = widest(wanted, piece);
            prop_assert!(widest >= Length::ZERO);
            let most = mass(wanted, widest, piece);
            prop_assert!(most.is_err() || most.is_ok_and(|mass| !mass.too_heavy), "{most:?} on {widest:?}");
        }
        let _ = tension(grams, width, piece).map(Tension::millinewtons_per_cm);
    }

    /// A mass back from the tension that it makes: to a gram, force being kept in whole millinewtons.
    #[test]
    fn a_mass_there_and_back(grams in 1..100_000u32, width in 1600..1_600_000i32, piece in piece()) {
        let width = Length::from_steps(width);
        let back = mass(tension(grams, width, piece).unwrap(), width, piece).unwrap();
        prop_assert!(back.grams.abs_diff(grams) <= 1);
    }

    #[test]
    fn any_body(
        body in length(), garment in length(), around in grain(), row in 0..SUITS.len(), along in any::<bool>(),
    ) {
        for movement in MOVEMENTS {
            let Ok(needed) = movement.needs(body, garment) else {
                prop_assert!(body <= Length::ZERO || garment <= Length::ZERO);
                continue;
            };
            let line = if along { Direction::Along } else { Direction::Around };
            if let Ok(demand) = demand(SUITS.get(row), Some((line, needed)), around) {
                for range in [demand.lengthwise, demand.crosswise, demand.bias] {
                    let ends = range.at_least.zip(range.at_most);
                    prop_assert!(ends.is_none_or(|(least, most)| least.ratio() <= most.ratio()));
                }
            } else {
                prop_assert!(needed.ratio() > Ratio::new(10, 1).unwrap());
            }
        }
    }

    #[test]
    fn any_width(of in length(), width in length(), other in length()) {
        if let Ok(estimate) = by_area(of, width, other) {
            prop_assert!(within_a_step(estimate, whole(of) * whole(width) / whole(other)));
        }
        for (width, other) in Width::ALL.into_iter().flat_map(|width| Width::ALL.map(|other| (width, other))) {
            if let Some(length) = by_chart(of, width, other) {
                prop_assert!(width != other || length >= of);
                prop_assert!(other <= width || length < by_chart(of, width, width).unwrap());
            }
        }
        prop_assert!(Width::of(width).is_none_or(|class| width >= class.narrowest()));
    }

    #[test]
    fn any_job(answers in prop::array::uniform6(any::<bool>()), end in length()) {
        let [for_child, has_cord, sleepwear, tight, compression, hangs_mass] = answers;
        let found = cautions(Job { for_child, has_cord, sleepwear, tight, compression, hangs_mass });
        prop_assert_eq!(found.is_empty(), !(for_child && (has_cord || sleepwear) || tight || compression || hangs_mass));
        for rule in CORDS {
            prop_assert!(!rule.allowed.allows(end) || end <= Length::from_mm(360));
        }
        prop_assert!(METHODS.iter().all(|method| method.tension().millinewtons_per_cm() > 0));
    }

    /// Figures of real tests go in as they come.
    #[test]
    fn real_figures_pair(one in given::pulled_test(), other in given::pulled_test(), rules in given::rules()) {
        let edge = |test| {
            let figures = tenter_core::Figures::of(test, rules.scatter).unwrap();
            SeamEdge { growth: figures.rest.map(|rest| rest.growth), ..SeamEdge::new(figures.stretch) }
        };
        let pair = Pair::of(&edge(&one), &edge(&other), &Joint::of(Length::from_mm(600)), rules.confidence);
        prop_assert!(pair.is_ok(), "{pair:?}");
    }
}
