//! The pictures that people look at: invented cloths of a sewing evening, drawn by every function
//! of `tenter::picture`.

use tenter::picture::Picture;
use tenter::picture::card::{self, Card};
use tenter::picture::gauge::{self, Gauge, GrainStretch};
use tenter::picture::growth::{self, Growth, GrowthReading};
use tenter::picture::stash_map::{self, Spot, StashMap, ViewAsks};
use tenter::picture::true_scale::{self, PullGauge};
use tenter_core::{
    Answer, Confidence, Demand, Evaluation, Figure, Figures, Grain, Length, Limit, PullTest, Range, Ratio, Rules,
    Scatter, Table, Unit,
};

/// A pull test with lengths in millimetres; each rest after the last pull, in seconds.
pub fn test(grain: Grain, gauge: i16, pulls: &[i16], rests: &[(u32, i16)]) -> PullTest {
    let mut test = PullTest::new(Length::from_mm(gauge), grain).unwrap().with_settling_pull(true);
    for pull in pulls {
        test.add_pull(Length::from_mm(*pull)).unwrap();
    }
    for (seconds, back) in rests {
        test.add_rest(*seconds, Length::from_mm(*back)).unwrap();
    }
    test
}

pub fn range(text: &str) -> Range {
    Range::parse(text, Unit::Mm).unwrap()
}

/// A row of the gauge as the program would fill it.
pub fn row(test: &PullTest, asked: Range) -> GrainStretch {
    let demand = Demand::for_grain(test.grain(), asked);
    let evaluation = Evaluation::of(test, &demand, &Rules::default()).unwrap();
    let steps = |length: Length| i64::from(length.steps());
    let (gauge, pulls) = (steps(test.gauge()), test.pulls());
    let pulls: Vec<Ratio> = pulls.iter().map(|to| Ratio::new(steps(*to) - gauge, gauge).unwrap()).collect();
    let (stretch, answer) = (Some(evaluation.figures.stretch), evaluation.answer);
    GrainStretch { grain: test.grain(), stretch, asked, answer, pulls }
}

pub fn stretch(test: &PullTest) -> Figure {
    Figures::of(test, Scatter::ASSUMED).unwrap().stretch
}

fn gauge_of(title: &str, rows: &[GrainStretch], table: &str) -> Picture {
    let table = Table::named(table).unwrap();
    gauge::draw(&Gauge { title, rows, confidence: Confidence::default(), table, key: true })
}

/// Gauges: one grain, several, over, far apart, not measured, no demand.
fn gauges() -> Vec<(&'static str, Picture)> {
    use Grain::{Bias, Crosswise, Lengthwise};
    let slight = row(&test(Crosswise, 250, &[270, 271, 270], &[]), range("5%"));
    let close = row(&test(Crosswise, 100, &[105], &[]), range("5%"));
    let trousers = [
        row(&test(Crosswise, 100, &[158, 160, 157], &[]), range("40%..70%")),
        row(&test(Lengthwise, 100, &[131, 128, 133], &[]), range("40%..")),
        row(&test(Bias, 100, &[190, 196], &[]), range("..60%")),
    ];
    let bare = row(&test(Crosswise, 100, &[187, 190], &[]), Range::default());
    let missing = GrainStretch {
        grain: Lengthwise,
        stretch: None,
        asked: range("4in to 5 3/8in"),
        answer: Some(Answer::Unknown),
        pulls: Vec::new(),
    };
    let wild = Figure { u: 40.0, dof: 3.0, ..Figure::exact(tenter_core::Ratio::new(6, 100).unwrap()) };
    let wide = GrainStretch {
        grain: Crosswise,
        stretch: Some(wild),
        asked: range("5%"),
        answer: Some(Answer::Close),
        pulls: Vec::new(),
    };
    vec![
        ("gauge-meets", gauge_of("vestry twill", &[slight], "own")),
        ("gauge-close", gauge_of("choirstall suiting", std::slice::from_ref(&close), "own")),
        ("gauge-three-grains", gauge_of("curtain jersey", &trousers, "own")),
        ("gauge-nothing-asked", gauge_of("doorway rib", &[bare], "richardson-2008")),
        ("gauge-not-measured", gauge_of("hymnal fleece", &[close, missing], "own-woven")),
        ("gauge-worth-little", gauge_of("limelight gauze", &[wide], "own")),
    ]
}

fn growth_of(title: &str, test: &PullTest, at_most: Option<&str>) -> Picture {
    let (readings, to_come) = (GrowthReading::all(test, Scatter::ASSUMED), growth::to_come(test));
    let at_most = at_most.map(|limit| Limit::parse(limit, Unit::Mm).unwrap());
    growth::draw(&Growth { title, readings: &readings, to_come: &to_come, at_most, confidence: Confidence::default() })
}

fn growths() -> Vec<(&'static str, Picture)> {
    let falls = test(Grain::Crosswise, 250, &[300], &[(30, 258), (60, 256), (300, 255), (900, 254)]);
    let early = test(Grain::Crosswise, 100, &[150], &[(10, 109), (60, 106)]);
    let below = test(Grain::Lengthwise, 100, &[112], &[(60, 100), (86_400, 99)]);
    vec![
        ("growth-forecast", growth_of("curtain jersey, crosswise", &falls, Some("3%"))),
        ("growth-early", growth_of("doorway rib, crosswise", &early, None)),
        ("growth-shrunk", growth_of("vestry twill, lengthwise", &below, Some("2%"))),
        ("growth-not-read", growth_of("hymnal fleece, crosswise", &test(Grain::Crosswise, 100, &[120], &[]), None)),
    ]
}

/// A stash that a seed spreads: wovens near the corner, knits further out.
pub fn stash(size: u32) -> Vec<(String, Option<Figure>, Option<Figure>)> {
    let mut state = 2_463_534_242_u32;
    let mut next = move |below: u32| {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        i16::try_from(state % below).unwrap()
    };
    let mut cloth = |place: u32| {
        let (most, gauge) = if next(3) == 0 { (16, 250) } else { (85, 100) };
        let mut pulled = |grain| {
            let to = gauge + next(most) * gauge / 100;
            stretch(&test(grain, gauge, &[to, to + next(3), to + next(3)], &[]))
        };
        let (crosswise, lengthwise) = (pulled(Grain::Crosswise), pulled(Grain::Lengthwise));
        match place % 9 {
            4 => (format!("{}", place + 1), Some(crosswise), None),
            7 => (format!("{}", place + 1), None, Some(lengthwise)),
            _ => (format!("{}", place + 1), Some(crosswise), Some(lengthwise)),
        }
    };
    (0..size).map(&mut cloth).collect()
}

/// The answer along both grains, as the program would give it.
fn answer(asked: &ViewAsks<'_>, crosswise: Option<Figure>, lengthwise: Option<Figure>) -> Answer {
    let sure = Confidence::default();
    let one = |figure: Option<Figure>, range: Range| {
        let Some(figure) = figure else { return if range.is_empty() { Answer::Meets } else { Answer::Unknown } };
        let percent = |limit: Limit| limit.ratio().percent_f32();
        let (low, high) = (figure.at_least(sure), figure.at_most(sure));
        let least = range.at_least.map_or(Answer::Meets, |least| match percent(least) {
            least if low >= least => Answer::Meets,
            least if high < least => Answer::Short,
            _ => Answer::Close,
        });
        let most = range.at_most.map_or(Answer::Meets, |most| match percent(most) {
            most if high <= most => Answer::Meets,
            most if low > most => Answer::Over,
            _ => Answer::Close,
        });
        least.worse(most)
    };
    one(crosswise, asked.crosswise).worse(one(lengthwise, asked.lengthwise))
}

fn map(title: &str, size: u32, asked: Option<ViewAsks<'_>>) -> Picture {
    let stash = stash(size);
    let spots = stash.iter().map(|(tag, crosswise, lengthwise)| Spot {
        tag,
        crosswise: *crosswise,
        lengthwise: *lengthwise,
        answer: asked.map(|asked| answer(&asked, *crosswise, *lengthwise)),
    });
    let spots: Vec<Spot<'_>> = spots.collect();
    stash_map::draw(&StashMap { title, spots: &spots, asked, confidence: Confidence::default() })
}

fn maps() -> Vec<(&'static str, Picture)> {
    let trousers = ViewAsks { name: "choir trousers B, main", crosswise: range("40%..70%"), lengthwise: range("25%") };
    let slight = ViewAsks { name: "choir trousers A, main", crosswise: range("5%"), lengthwise: Range::default() };
    vec![
        ("map-stash", map("the stash", 36, Some(trousers))),
        ("map-one-grain", map("the stash", 24, Some(slight))),
        ("map-no-view", map("the stash", 12, None)),
        ("map-empty", map("the stash", 0, Some(trousers))),
        ("map-two-hundred", map("the stash", 200, Some(trousers))),
    ]
}

/// As many cloths as a large workroom keeps.
pub fn two_thousand() -> Picture {
    let trousers = ViewAsks { name: "choir trousers B, main", crosswise: range("40%..70%"), lengthwise: range("25%") };
    map("the stash", 2000, Some(trousers))
}

fn pull_gauges() -> Vec<(&'static str, Picture)> {
    let draw = |title: &str, asked: &str| true_scale::pull_gauge(&PullGauge { title, asked: range(asked) }).unwrap();
    vec![
        ("pull-gauge-least", draw("choir trousers A, main", "5%")),
        ("pull-gauge-quarter", draw("choir trousers, waistband", "25%")),
        ("pull-gauge-range", draw("choir trousers B, main", "40%..60%")),
        ("pull-gauge-printed", draw("play coat, cuff", "4in to 5 3/8in")),
        ("pull-gauge-most", draw("play coat, main", "..12%")),
        ("pull-gauge-far", draw("doorway rib, neckband", "100%..150%")),
    ]
}

/// Four cards: an ordinary one, a long one, one from right to left, one with next to nothing.
pub fn cards<R>(then: impl FnOnce(&[Card<'_>]) -> R) -> R {
    let twill = [
        (Grain::Crosswise, Some(stretch(&test(Grain::Crosswise, 250, &[265, 266, 265], &[])))),
        (Grain::Lengthwise, Some(stretch(&test(Grain::Lengthwise, 250, &[253, 254], &[])))),
    ];
    let jersey_test = test(Grain::Crosswise, 100, &[158, 160, 157], &[(60, 104)]);
    let jersey = [
        (Grain::Crosswise, Some(stretch(&jersey_test))),
        (Grain::Lengthwise, Some(stretch(&test(Grain::Lengthwise, 100, &[131, 128, 133], &[])))),
    ];
    let none = [(Grain::Crosswise, None), (Grain::Lengthwise, None)];
    let growth = Figures::of(&jersey_test, Scatter::ASSUMED).unwrap().rest.unwrap().growth;
    let slight_growth = Figures::of(&test(Grain::Crosswise, 250, &[265], &[(60, 252)]), Scatter::ASSUMED);
    let plain = Card {
        photo: None,
        tag: "F7",
        name: "vestry twill",
        fibre: "cotton 97 %, elastane 3 %",
        width: Some(Length::from_mm(1400)),
        length: Some(Length::from_mm(2350)),
        mass: "260 g/m²",
        stretch: &twill,
        growth: Some((Grain::Crosswise, slight_growth.unwrap().rest.unwrap().growth, 60)),
        confidence: Confidence::default(),
        date: "2026-11-24",
        notes: &[
            "3 pulls by hand, folded, marks 25 cm, washed",
            "sharp needle 80; press with steam",
            "legs of the choir trousers",
        ],
        unit: Unit::Cm,
    };
    let long = Card {
        tag: "2026-118b",
        name: "curtain jersey, brushed inside, dyed in the wool, from the end of the bolt that was left over after the second pair of trousers",
        fibre: "polyamide, viscose, wool and elastane in shares that the label no longer tells",
        growth: Some((Grain::Crosswise, growth, 1800)),
        stretch: &jersey,
        notes: &[
            "3 pulls by hand, folded, marks 10 cm",
            "ball-point or stretch needle, narrow zigzag, stay tape in the shoulder seams and a long rest before the hem is cut",
            "cool iron",
        ],
        ..plain.clone()
    };
    let arabic = Card {
        tag: "٣١", name: "قماش الريح 風よけ布 с начёсом 🧵🐑", fibre: "", mass: "", ..plain.clone()
    };
    let bare = Card {
        tag: "120",
        name: "hymnal fleece",
        fibre: "",
        width: None,
        length: None,
        mass: "",
        stretch: &none,
        growth: None,
        date: "",
        notes: &[],
        ..plain.clone()
    };
    then(&[plain, long, arabic, bare])
}

fn card_pictures() -> Vec<(&'static str, Picture)> {
    cards(|cards| {
        let sheet = card::sheets(cards).remove(0);
        vec![("card", card::draw(&cards[0])), ("card-long", card::draw(&cards[1])), ("sheet", sheet)]
    })
}

/// All of them, each with the name of its file.
pub fn pictures() -> Vec<(&'static str, Picture)> {
    [gauges(), growths(), maps(), pull_gauges(), card_pictures()].concat()
}
