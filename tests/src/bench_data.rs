//! Seeded pull tests to measure speed on: the benches and the comparison with a library in another language use the
//! same ones.

use rand::rngs::StdRng;
use rand::seq::IndexedRandom;
use rand::{Rng, SeedableRng};
use tenter_core::{Ends, Grain, Length, PullTest, Scale};

/// Seconds from release to the one reading after it.
const REST: u32 = 60;

/// So many tests with five pulls and one reading after the last release: gauge lengths of 100 to 250 mm, scales of
/// 0.5 and 1 mm, stretch of 2 to 80 % that differs a little from pull to pull, growth of up to a tenth of it.
#[must_use]
pub fn varied_tests(count: usize) -> Vec<PullTest> {
    let mut random = StdRng::seed_from_u64(2);
    (0..count).map(|_| varied_test(&mut random)).collect()
}

fn varied_test(random: &mut StdRng) -> PullTest {
    let gauge = *[100, 150, 200, 250].choose(random).expect("not empty");
    let half_millimetres = *[1, 2].choose(random).expect("not empty");
    let division = Length::from_steps(half_millimetres * 800);
    let scale = Scale::new(division, Ends::One).expect("a division above zero");
    let mut test = PullTest::new(Length::from_mm(gauge), Grain::Crosswise)
        .and_then(|test| test.with_scale(scale))
        .expect("a gauge above the division");
    let on_line = |mm: f64| {
        let division = f64::from(division.steps());
        #[allow(clippy::cast_possible_truncation)] // Under a metre.
        Length::from_steps(((mm * 1600.0 / division).round() * division) as i32)
    };
    let gauge = f64::from(gauge);
    let stretch = random.random_range(0.02..0.8);
    for _ in 0..5 {
        let extended = gauge * (1.0 + stretch + random.random_range(-0.01..0.01));
        test.add_pull(on_line(extended)).expect("an extended length above the gauge");
    }
    let recovered = gauge * (1.0 + stretch * random.random_range(0.0..0.1));
    test.add_rest(REST, on_line(recovered)).expect("a recovered length between gauge and extended");
    test
}
