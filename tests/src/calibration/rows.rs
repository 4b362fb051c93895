//! The rows of the table, each with its name and whether its variances are those the core assumes.

use tenter_core::Construction;

use super::{Noise, Truth, World};

/// A row.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What is simulated.
    pub name: String,
    /// The world.
    pub world: World,
}

fn row(name: &str, world: World) -> Row {
    Row { name: name.to_owned(), world }
}

/// Worlds in which something goes wrong that the core does not assume, or less varies than it assumes.
#[must_use]
pub fn attacks() -> Vec<Row> {
    const PLAIN: Noise = Noise::PLAIN;
    let of = |least, noise| World { noise, ..World::of(least) };
    let days = Noise { session: 0.15 * 0.707, ..PLAIN };
    let heavy = Noise { heavy: true, times: 1.73, ..PLAIN };
    let unsettled =
        |least, first| World { pulls: 1, settled: false, noise: Noise { first, ..PLAIN }, ..World::of(least) };
    let moved = Noise { first: -2.4, lay: 1.6, ..PLAIN };
    let wide = Noise { points: Some(10.5), ..PLAIN };
    let five = |slip| World { pulls: 5, planned: 5, noise: Noise { slip, ..PLAIN }, ..World::of(5.0) };
    vec![
        row("5 %, nothing but pulls that scatter", World::of(5.0)),
        row("t with 3 degrees of freedom, same deviation", of(5.0, Noise { heavy: true, ..PLAIN })),
        row("t with 3 degrees of freedom, 1.73 times", of(5.0, heavy)),
        row("each pull like the one before (0.9)", of(5.0, Noise { correlation: 0.9, ..PLAIN })),
        row("half the readings to 5 mm", of(5.0, Noise { coarse: true, ..PLAIN })),
        row("marks ± 0.5 mm", of(5.0, Noise { marks: 0.5, ..PLAIN })),
        row("gauge laid ± 0.8 %", of(5.0, Noise { lay: 0.8, ..PLAIN })),
        row("1 pull of 3", World { pulls: 1, ..World::of(5.0) }),
        row("1 pull, unsettled, −0.9 points", unsettled(5.0, -0.9)),
        row("25 %, 1 pull, unsettled, −2.4 points", unsettled(25.0, -2.4)),
        row("the same, known as a knit", World { construction: Construction::Knit, ..unsettled(25.0, -2.4) }),
        row("25 %, 3 pulls unsettled, gauge moves 1.6 %", World { settled: false, ..of(25.0, moved) }),
        row("the same, told as settled", of(25.0, moved)),
        row("25 %, force −5 % a pull", of(25.0, Noise { fade: 0.05, ..PLAIN })),
        row("25 %, force −15 % a pull", of(25.0, Noise { fade: 0.15, ..PLAIN })),
        row("25 %, force ± 15 % by day", of(25.0, days)),
        row("the same, 10 pulls, 250 mm", World { pulls: 10, planned: 10, gauge: 250.0, ..of(25.0, days) }),
        row("150 %, nothing but pulls that scatter", World::of(150.0)),
        row("150 %, deviation 10.5 points", of(150.0, wide)),
        row("the same, 1 pull of 3", World { pulls: 1, ..of(150.0, wide) }),
        row("20 to 30 %", World { most: Some(30.0), ..World::of(20.0) }),
        row("5 to 8 %, t with 3, 1.73 times", World { most: Some(8.0), ..of(5.0, heavy) }),
        row("a slip of 10 mm in 3 pulls", of(5.0, Noise { slip: 10.0, ..PLAIN })),
        row("a slip of 10 mm in 5 pulls", five(10.0)),
        row("a slip of 5 mm in 5 pulls", five(5.0)),
    ]
}

/// Worlds whose variances are drawn as the core assumes.
#[must_use]
pub fn assumed() -> Vec<Row> {
    let of = |least| World { noise: Noise::PRIOR, ..World::of(least) };
    let mut rows = Vec::new();
    for least in [5.0, 25.0, 50.0] {
        for (pulls, planned, gauge, division, looks) in [
            (1, 3, 100.0, 1.0, 1),
            (1, 1, 100.0, 1.0, 1),
            (1, 1, 250.0, 1.0, 2),
            (3, 3, 100.0, 1.0, 1),
            (3, 3, 250.0, 1.0, 2),
            (3, 3, 250.0, 0.5, 2),
            (5, 5, 250.0, 1.0, 2),
            (5, 3, 250.0, 1.0, 2),
            (10, 10, 250.0, 1.0, 2),
        ] {
            let name = format!("{least} %, {pulls} pulls of {planned}, {gauge} mm, {division} mm scale, {looks} looks");
            rows.push(row(&name, World { pulls, planned, gauge, division, looks, ..of(least) }));
        }
    }
    rows.push(row("25 %, known load", World { load: true, ..of(25.0) }));
    rows.push(row("20 to 30 %", World { most: Some(30.0), ..of(20.0) }));
    rows.push(row("5 %, 4 in on a scale of 1/8 in", World { gauge: 101.6, division: 3.175, ..of(5.0) }));
    rows
}

/// 0.001 points off the limit, where a wrong answer is likeliest.
#[must_use]
pub fn at_the_limit() -> Vec<Row> {
    let mut rows = Vec::new();
    for least in [5.0, 25.0, 50.0] {
        for off in [-0.001, 0.001] {
            let side = if off < 0.0 { "below" } else { "above" };
            let noises = [
                ("as assumed", Noise::PRIOR),
                ("nothing but pulls", Noise::PLAIN),
                ("gauge laid ± 0.8 %", Noise { lay: 0.8, ..Noise::PLAIN }),
                ("force ± 15 % by day", Noise { session: 0.106, ..Noise::PLAIN }),
            ];
            for (name, noise) in noises {
                let name = format!("just {side} {least} %: {name}");
                rows.push(row(&name, World { truth: Truth::Off(off), noise, ..World::of(least) }));
            }
        }
    }
    rows
}

/// Everyday cases, one look at the gauge and two.
#[must_use]
pub fn everyday() -> Vec<Row> {
    let mut rows = Vec::new();
    for looks in [1, 2] {
        for (least, most, given) in [(5.0, None, 8.0), (25.0, None, 35.0), (5.0, Some(15.0), 9.0)] {
            let truth = Truth::At(given);
            let world = World { most, truth, gauge: 250.0, looks, noise: Noise::PRIOR, ..World::of(least) };
            let asked = most.map_or(format!("{least} % wanted"), |most| format!("{least} to {most} % wanted"));
            let looked = if looks == 1 { "1 look" } else { "2 looks" };
            rows.push(row(&format!("{asked}, {given} % given, 250 mm, 3 pulls, {looked}"), world));
        }
    }
    rows
}
