//! Why readings should not be believed, and what to type instead.

use tenter_core::{Construction, Doubt, Length, Limit, PullTest, Ratio, Reading, Slip, Unit};

use crate::finding::wash::WashChange;
use crate::input::doubt::Doubted;
use crate::input::{Field, division_in};

/// A doubt in one line.
#[must_use]
pub fn line(doubt: &Doubt, test: &PullTest, unit: Unit) -> String {
    let shown = |length: Length| shown(length, unit);
    match doubt {
        Doubt::SlipOfUnit(slip) => match slip.reading {
            Reading::Gauge => format!(
                "marks {} apart are more than two hands hold; did you mean {}?",
                shown(test.gauge()),
                shown(slip.likely)
            ),
            Reading::Extended { pull } => {
                let extended = test.pulls().get(usize::from(pull)).copied().unwrap_or(test.gauge());
                format!("{}; did you mean {}?", stretch(test.gauge(), extended, unit), shown(slip.likely))
            }
            Reading::Recovered { .. } => format!("did you mean {}?", shown(slip.likely)),
        },
        Doubt::UnusualStretch => {
            let longest = test.pulls().iter().max().copied().unwrap_or(test.gauge());
            format!("{}, more than such cloth usually gives", stretch(test.gauge(), longest, unit))
        }
        Doubt::RatioForStretch { likely } => {
            let typed = u32::try_from(likely.ratio().percent(3).scaled()).unwrap_or_default().saturating_add(100_000);
            let typed = Limit::milli_percent(typed).map_or_else(|error| error.to_string(), |limit| limit.to_string());
            format!("stretch is the gain: 10 cm to 16 cm is 60 %, not 160 %; {typed} may be meant as {likely}")
        }
        Doubt::ShortMarks { enough } => format!(
            "the stretch you ask moves marks {} apart by less than two divisions of the scale; lay them {} apart",
            shown(test.gauge()),
            shown(*enough)
        ),
        Doubt::WiderThanCloth => format!("marks {} apart across a cloth that is not so wide", shown(test.gauge())),
        Doubt::NotReleased { rest } => {
            let recovered = test.rests().get(usize::from(*rest)).map_or(test.gauge(), |rest| rest.recovered);
            format!("{} after release is as long as while you pulled", shown(recovered))
        }
        Doubt::GrowthRises { .. } => {
            "a later length after release is longer than an earlier one, and cloth only gets shorter then".to_owned()
        }
        Doubt::OddPull { pull } => {
            let extended = test.pulls().get(usize::from(*pull)).copied().unwrap_or(test.gauge());
            format!("pull {}, {}, lies far from the others", u16::from(*pull) + 1, shown(extended))
        }
        Doubt::OddLook => "the marks were read twice, and the two lengths differ too much".to_owned(),
        Doubt::OddRecovered => "one length after release lies far from the others".to_owned(),
        Doubt::Rising => {
            "each pull is longer than the one before: the cloth creeps or curls, or a mark slips".to_owned()
        }
        Doubt::Falling => "each pull is shorter than the one before: the hand may be tired".to_owned(),
    }
}

/// A change in the wash that is larger than washes make.
#[must_use]
pub fn washed(change: &WashChange) -> String {
    let percent = change.change.ratio.percent(0);
    format!("{percent} % {} is more than a wash usually changes", change.grain.word())
}

/// What to do where nothing better is known.
pub const READ_AGAIN: &str = "read again, or pass --as-read if it is what you read";

/// What to do about a doubt.
#[must_use]
pub fn remedy(doubt: &Doubt, unit: Unit) -> String {
    match doubt {
        Doubt::SlipOfUnit(slip) => format!("type {}, or pass --as-read if it is what you read", typed(*slip, unit)),
        Doubt::RatioForStretch { likely } => {
            format!("type {}, or pass --as-read if you mean it", likely.to_string().replace(' ', ""))
        }
        Doubt::ShortMarks { enough } => format!("mark {} and pull again", shown(*enough, unit)),
        _ => READ_AGAIN.to_owned(),
    }
}

/// Readings that were not stored: the reason first, one line each.
#[must_use]
pub fn doubted(doubted: &Doubted) -> Vec<String> {
    doubted.doubts.iter().map(|doubt| line(doubt, &doubted.test, doubted.unit)).collect()
}

/// The doubts that a person stood by when a test was stored; nothing where there was none.
#[must_use]
pub fn stood_by(words: &[String]) -> String {
    let words: Vec<String> = words.iter().map(|word| word.replace('-', " ")).collect();
    if words.is_empty() { String::new() } else { format!("stored as read, though doubted: {}", words.join(", ")) }
}

/// The unit in which numbers without one were taken.
#[must_use]
pub const fn bare(unit: Unit) -> &'static str {
    match unit {
        Unit::Mm => "numbers without a unit are read in millimetres",
        Unit::Cm => "numbers without a unit are read in centimetres",
        Unit::Inch => "numbers without a unit are read in inches",
    }
}

/// What was probably meant: `did you mean 10.5 cm?`
#[must_use]
pub fn likely(slip: Slip, unit: Unit) -> String {
    format!("did you mean {}?", shown(slip.likely, unit))
}

/// What was probably meant, and what to type: `did you mean 10.5 cm? Type --to 10.5cm`.
#[must_use]
pub fn meant(slip: Slip, unit: Unit, named: impl Fn(Field) -> &'static str) -> String {
    let flag = named(match slip.reading {
        Reading::Gauge => Field::Marks,
        Reading::Extended { .. } => Field::To,
        Reading::Recovered { .. } => Field::Back,
    });
    let time = if matches!(slip.reading, Reading::Recovered { .. }) { "@ and the time" } else { "" };
    // A column of a table is not typed.
    let remedy =
        if flag.starts_with('-') { format!(" Type {flag} {}{time}", typed(slip, unit)) } else { String::new() };
    likely(slip, unit) + &remedy
}

/// A stretch that no such cloth gives: `10 cm to 105 cm is 950 % stretch, more than any knit gives`.
#[must_use]
pub fn beyond(gauge: Length, extended: Length, construction: Option<Construction>, unit: Unit) -> String {
    let cloth = match construction {
        Some(Construction::Woven) => "woven",
        Some(Construction::Knit) => "knit",
        Some(Construction::Other) | None => "cloth",
    };
    format!("{}, more than any {cloth} gives", stretch(gauge, extended, unit))
}

/// `10 cm to 105 cm is 950 % stretch`.
fn stretch(gauge: Length, extended: Length, unit: Unit) -> String {
    let (l0, l1) = (i64::from(gauge.steps()), i64::from(extended.steps()));
    let percent = Ratio::new(l1.saturating_sub(l0), l0).unwrap_or(Ratio::ZERO).percent(0);
    format!("{} to {} is {percent} % stretch", shown(gauge, unit), shown(extended, unit))
}

/// A length as a person would have typed it: in the unit, or in the other one where that has fewer digits.
#[must_use]
pub fn shown(length: Length, unit: Unit) -> String {
    let other = if unit == Unit::Inch { Unit::Cm } else { Unit::Inch };
    let fits = |unit: Unit| {
        let finest = if unit == Unit::Inch { 635 } else { 160 };
        length.steps() % finest == 0
    };
    if fits(unit) || !fits(other) {
        let rounded = if fits(unit) { length } else { nearest(length, unit) };
        rounded.show(unit).to_string()
    } else {
        length.show(other).to_string()
    }
}

/// To the nearest half division of an ordinary tape.
fn nearest(length: Length, unit: Unit) -> Length {
    let step = division_in(unit).steps() / 2;
    Length::from_steps((length.steps().saturating_add(step / 2) / step).saturating_mul(step))
}

fn typed(slip: Slip, unit: Unit) -> String {
    compact(&shown(slip.likely, unit))
}

/// As one word for a command line: `10.5cm`, and a fraction in quotes.
fn compact(text: &str) -> String {
    if text.contains('/') { format!("'{}'", text.replace(" in", "in")) } else { text.replace(' ', "") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::errors::flag;
    use tenter_core::Grain;

    fn length(text: &str) -> Length {
        Length::parse(text, Unit::Cm).unwrap()
    }

    #[test]
    fn a_slip_says_what_to_type() {
        let slip = |likely| Slip { reading: Reading::Extended { pull: 0 }, likely: length(likely) };
        assert_eq!(meant(slip("10.5cm"), Unit::Cm, flag), "did you mean 10.5 cm? Type --to 10.5cm");
        assert_eq!(meant(slip("4 1/8in"), Unit::Inch, flag), "did you mean 4 1/8 in? Type --to '4 1/8in'");
        assert_eq!(
            beyond(length("10cm"), length("105cm"), Some(Construction::Knit), Unit::Cm),
            "10 cm to 105 cm is 950 % stretch, more than any knit gives"
        );
    }

    #[test]
    fn every_doubt_is_said_in_one_line() {
        let mut test = PullTest::new(length("10cm"), Grain::Crosswise).unwrap();
        test.add_pull(length("10.5in")).unwrap();
        let likely = tenter_core::Limit::parse("60%", Unit::Cm).unwrap();
        let slip = Slip { reading: Reading::Extended { pull: 0 }, likely: length("10.5cm") };
        let all = [
            Doubt::SlipOfUnit(slip),
            Doubt::UnusualStretch,
            Doubt::RatioForStretch { likely },
            Doubt::ShortMarks { enough: length("10cm") },
            Doubt::WiderThanCloth,
            Doubt::NotReleased { rest: 0 },
            Doubt::GrowthRises { rest: 0 },
            Doubt::OddPull { pull: 200 },
            Doubt::OddLook,
            Doubt::OddRecovered,
            Doubt::Rising,
            Doubt::Falling,
        ];
        assert_eq!(all.map(Doubt::word), Doubt::WORDS);
        for doubt in all {
            let said = line(&doubt, &test, Unit::Cm) + &remedy(&doubt, Unit::Cm);
            assert!(!said.contains('\n') && said.len() > 20, "{said}");
        }
        assert_eq!(line(&all[0], &test, Unit::Cm), "10 cm to 26.67 cm is 167 % stretch; did you mean 10.5 cm?");
        assert!(line(&all[2], &test, Unit::Cm).ends_with("160 % may be meant as 60 %"));
    }
}
