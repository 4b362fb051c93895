//! Any text and any figure: the XML stays well-formed, the text is found in it unharmed, nothing leaves the view.

use proptest::prelude::*;
use roxmltree::Document;
use tenter::page::print;
use tenter::picture::Picture;
use tenter::picture::card::{self, Card};
use tenter::picture::gauge::{self, Gauge, GrainStretch};
use tenter::picture::growth::{self, Growth, GrowthReading};
use tenter::picture::stash_map::{self, Spot, StashMap, ViewAsks};
use tenter::picture::true_scale::{self, PullGauge};
use tenter_core::forecast::Forecast;
use tenter_core::{Answer, Confidence, Figure, Grain, Length, Limit, Range, Ratio, Table, Unit};

use crate::sound::assert_sound;

/// Anything somebody may have typed or pasted.
fn any_text() -> impl Strategy<Value = String> {
    let nasty = prop::sample::select(vec![
        "</text><script>alert(1)</script>",
        "]]> <![CDATA[ &amp; &#0; \" ' > <!-- -->",
        "\u{0}\u{1}\u{8}\u{b}\u{1f}\u{7f}\u{85}\u{fffe}\u{ffff}",
        "a\tb\nc\r\nd",
        "\u{202e}قماش الريح\u{2066} שמלה",
        "👩‍👩‍👧‍👦🧵🏴󠁧󠁢󠁷󠁬󠁳󠁿é̂̂̂̂̂",
        "風よけ布の脇パネル風よけ布の脇パネル風よけ布の脇パネル",
        "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa",
        "",
        "   ",
    ]);
    prop_oneof![nasty.prop_map(str::to_owned), any::<String>(), "[ -~]{0,60}"]
}

/// What a reader of XML sees: forbidden characters (XML 1.0, 5th edition, production 2) as U+FFFD.
fn readable(text: &str) -> String {
    let is_forbidden =
        |c: char| matches!(c, '\0'..='\u{8}' | '\u{b}' | '\u{c}' | '\u{e}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}');
    text.chars().map(|c| if is_forbidden(c) { '\u{fffd}' } else { c }).collect()
}

/// From nothing over a shrunk cloth to far beyond any cloth; worth everything or nothing.
fn any_figure() -> impl Strategy<Value = Figure> {
    let ratio = prop_oneof![
        prop::sample::select(vec![(0, 100), (-5, 100), (10, 1), (1, 1000)]),
        (-100_i64..1100, Just(100_i64)),
        (any::<i64>(), 1..i64::MAX),
    ];
    let u =
        prop_oneof![0.0_f32..3.0, prop::sample::select(vec![0.0, 1e-30, 50.0, 1e6, f32::MAX, f32::INFINITY, f32::NAN])];
    (ratio, u, prop::sample::select(vec![0.5_f32, 1.0, 7.5, 40.0, f32::INFINITY]))
        .prop_map(|((num, den), u, dof)| Figure { u, dof, ..Figure::exact(Ratio::new(num, den).unwrap()) })
}

fn any_limit() -> impl Strategy<Value = Limit> {
    let percent = (0..=Limit::MAX_MILLI_PERCENT).prop_map(|milli| Limit::milli_percent(milli).unwrap());
    let marks = (1_i32..400, 0_i32..1000).prop_map(|(gauge, more)| {
        let gauge = Length::from_steps(gauge * 2540);
        Limit::marks(gauge, Length::from_steps(gauge.steps() + gauge.steps() / 100 * more)).unwrap()
    });
    prop_oneof![percent, marks, Just(Limit::milli_percent(5000).unwrap())]
}

fn any_range() -> impl Strategy<Value = Range> {
    (prop::option::of(any_limit()), prop::option::of(any_limit())).prop_map(|(one, other)| match (one, other) {
        (Some(least), Some(most)) if least.ratio() > most.ratio() => Range { at_least: other, at_most: one },
        _ => Range { at_least: one, at_most: other },
    })
}

fn any_answer() -> impl Strategy<Value = Option<Answer>> {
    use Answer::{Close, Meets, Over, Short, Unknown};
    prop::option::of(prop::sample::select(vec![Meets, Short, Over, Close, Unknown]))
}

fn any_grain() -> impl Strategy<Value = Grain> {
    prop::sample::select(vec![Grain::Lengthwise, Grain::Crosswise, Grain::Bias])
}

fn any_confidence() -> impl Strategy<Value = Confidence> {
    (501_u16..1000).prop_map(|tenths| Confidence::per_mille(tenths).unwrap())
}

/// All texts of a picture together, as a reader sees them.
fn assert_tells(picture: &Picture, text: &str) {
    let file = assert_sound(picture);
    let document = Document::parse(&file).unwrap();
    let told: String = document.descendants().filter(roxmltree::Node::is_text).filter_map(|node| node.text()).collect();
    assert!(told.contains(&readable(text)), "{text:?} is not in {told:?}");
}

proptest! {
    #[test]
    fn gauges(
        title in any_text(),
        rows in prop::collection::vec((any_grain(), prop::option::of(any_figure()), any_range(), any_answer()), 0..5),
        pulls in prop::collection::vec(any_figure().prop_map(|figure| figure.ratio), 0..6),
        key in any::<bool>(),
        confidence in any_confidence(),
        table in 0..tenter_core::TABLES.len(),
    ) {
        let row = |(grain, stretch, asked, answer)| GrainStretch { grain, stretch, asked, answer, pulls: pulls.clone() };
        let rows: Vec<GrainStretch> = rows.into_iter().map(row).collect();
        let table: &'static Table = &tenter_core::TABLES[table];
        assert_tells(&gauge::draw(&Gauge { title: &title, rows: &rows, confidence, table, key }), &title);
    }

    #[test]
    fn growths(
        title in any_text(),
        readings in prop::collection::vec((0_u32..=u32::MAX, any_figure()), 0..8),
        to_come in prop::collection::vec((1_u32..100_000, -2.0_f32..30.0, 0.0_f32..40.0, any::<bool>()), 0..3),
        at_most in prop::option::of(any_limit()),
        confidence in any_confidence(),
    ) {
        let readings: Vec<GrowthReading> = readings.into_iter().map(|(seconds, growth)| GrowthReading { seconds, growth }).collect();
        let forecast = |(seconds, percent, half_width, rough)| (seconds, Forecast { percent, half_width, rough });
        let to_come: Vec<_> = to_come.into_iter().map(forecast).collect();
        let growth = Growth { title: &title, readings: &readings, to_come: &to_come, at_most, confidence };
        assert_tells(&growth::draw(&growth), &title);
    }

    #[test]
    fn maps(
        tags in prop::collection::vec((any_text(), prop::option::of(any_figure()), prop::option::of(any_figure()), any_answer()), 0..20),
        asked in prop::option::of((any_text(), any_range(), any_range())),
        title in any_text(),
    ) {
        let spot = |(tag, crosswise, lengthwise, answer): &'_ (String, Option<Figure>, Option<Figure>, Option<Answer>)| {
            (tag.clone(), *crosswise, *lengthwise, *answer)
        };
        let owned: Vec<_> = tags.iter().map(spot).collect();
        let spots: Vec<Spot<'_>> = owned
            .iter()
            .map(|(tag, crosswise, lengthwise, answer)| Spot { tag, crosswise: *crosswise, lengthwise: *lengthwise, answer: *answer })
            .collect();
        let view = asked.as_ref().map(|(name, crosswise, lengthwise)| ViewAsks { name, crosswise: *crosswise, lengthwise: *lengthwise });
        let map = stash_map::draw(&StashMap { title: &title, spots: &spots, asked: view, confidence: Confidence::default() });
        assert_tells(&map, &title);
        if let Some((name, ..)) = &asked {
            assert_tells(&map, name);
        }
    }

    #[test]
    fn pull_gauges(title in any_text(), asked in any_range()) {
        let gauge = true_scale::pull_gauge(&PullGauge { title: &title, asked });
        prop_assert_eq!(gauge.is_some(), !asked.is_empty());
        if let Some(gauge) = gauge {
            assert_tells(&gauge, &title);
        }
    }

    #[test]
    fn cards(
        texts in [any_text(), any_text(), any_text(), any_text(), any_text()],
        stretch in prop::collection::vec((any_grain(), prop::option::of(any_figure())), 0..4),
        growth in prop::option::of((any_grain(), any_figure(), any::<u32>())),
        sizes in (prop::option::of(any::<i32>()), prop::option::of(any::<i32>()), any_text()),
        confidence in any_confidence(),
    ) {
        let [tag, name, fibre, date, note] = &texts;
        let notes = [note.as_str(); 6];
        let (width, length, mass) = &sizes;
        let (width, length) = (width.map(Length::from_steps), length.map(Length::from_steps));
        let card = Card {
            photo: None, tag, name, fibre, width, length, mass, stretch: &stretch, growth, confidence, date, notes: &notes, unit: Unit::Inch,
        };
        let picture = card::draw(&card);
        for text in [tag, name, fibre, date, note] {
            assert_tells(&picture, text);
        }
        for sheet in card::sheets(&vec![card; 5]) {
            assert_tells(&sheet, name);
        }
        // A page holds the picture as it is; pages are read as a browser reads them in `pages`.
        prop_assert!(print::page(name, std::slice::from_ref(&picture)).contains(&picture.inline()));
    }
}
