//! How long an answer takes: `cargo bench -p tenter-tests --bench evaluate`. Nothing here is asserted.

use std::time::Instant;

use divan::counter::ItemsCount;
use divan::{Bencher, black_box};
use tenter_core::{
    Answer, Class, Demand, Evaluation, Figures, Grain, Length, Limit, PullTest, Range, Rules, TABLES, suits,
};
use tenter_tests::bench_data::varied_tests;

const TESTS: usize = 100_000;
/// Passes over all tests for the ratios; the fastest counts, as the one least disturbed.
const PASSES: usize = 5;

fn main() {
    divan::main();
    // Without this flag the benches are only tried out, such as by `cargo test --all-targets`.
    if std::env::args().any(|argument| argument == "--bench") {
        ratios();
    }
}

#[divan::bench]
fn one_full_evaluation(bencher: Bencher) {
    let (test, demand) = (one_test(), five_percent());
    bencher.bench_local(|| full(black_box(&test), black_box(&demand)));
}

#[divan::bench(sample_count = 10)]
fn varied_full_evaluations(bencher: Bencher) {
    let (tests, demand) = (varied_tests(TESTS), five_percent());
    bencher.counter(ItemsCount::new(TESTS)).bench_local(|| each(&tests, |test| full(test, &demand)));
}

#[divan::bench(sample_count = 10)]
fn varied_figures_only(bencher: Bencher) {
    let tests = varied_tests(TESTS);
    bencher.counter(ItemsCount::new(TESTS)).bench_local(|| each(&tests, figures));
}

#[divan::bench(sample_count = 10)]
fn varied_plain_divisions(bencher: Bencher) {
    let tests = varied_tests(TESTS);
    bencher.counter(ItemsCount::new(TESTS)).bench_local(|| each(&tests, division));
}

/// Prints time per test and its ratio to plain division; `tests/bench` reads these lines.
fn ratios() {
    let (tests, demand) = (varied_tests(TESTS), five_percent());
    let full = fastest(|| each(&tests, |test| full(test, &demand)));
    let figures = fastest(|| each(&tests, figures));
    let division = fastest(|| each(&tests, division));
    for (name, ns) in [("full-evaluation", full), ("figures-only", figures), ("plain-division", division)] {
        println!("per-test {name} {ns:.1} ns, {:.1} times plain division", ns / division);
    }
}

/// Nanoseconds per test.
fn fastest(pass: impl Fn()) -> f64 {
    let time = || {
        let start = Instant::now();
        pass();
        start.elapsed().as_secs_f64()
    };
    (0..PASSES).map(|_| time()).fold(f64::INFINITY, f64::min) * 1e9 / TESTS as f64
}

fn each<T>(tests: &[PullTest], work: impl Fn(&PullTest) -> T) {
    for test in tests {
        black_box(work(black_box(test)));
    }
}

/// All that `tenter check` asks of the core: figures, answer, notes, what would settle it, class, garments.
fn full(test: &PullTest, demand: &Demand) -> (Option<Answer>, &'static Class, usize) {
    let rules = Rules::default();
    let evaluation = Evaluation::of(test, demand, &rules).expect("a test with pulls");
    let class = TABLES[0].class(evaluation.figures.stretch.ratio);
    let garments = suits(test, &rules).expect("a test with pulls").count();
    (black_box(&evaluation).answer, class, garments)
}

/// Stretch, growth and recovery with their uncertainties.
fn figures(test: &PullTest) -> Figures {
    Figures::of(test, Rules::default().scatter).expect("a test with pulls")
}

/// What anyone can do: five divisions and a mean.
fn division(test: &PullTest) -> f64 {
    let gauge = f64::from(test.gauge().steps());
    let stretch = |extended: &Length| (f64::from(extended.steps()) - gauge) / gauge;
    test.pulls().iter().map(stretch).sum::<f64>() / test.pulls().len() as f64
}

fn one_test() -> PullTest {
    let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).expect("a gauge above zero");
    for extended in [105, 106, 105, 104, 106] {
        test.add_pull(Length::from_mm(extended)).expect("an extended length above the gauge");
    }
    test.add_rest(60, Length::from_mm(101)).expect("a recovered length between gauge and extended");
    test
}

fn five_percent() -> Demand {
    let at_least = Limit::milli_percent(5_000).expect("a small percentage");
    Demand::for_grain(Grain::Crosswise, Range { at_least: Some(at_least), at_most: None })
}
