//! The readings of a pull test, as typed.

use tenter_core::{Ends, Grain, Held, Length, Load, MAX_PULLS, PullTest, Scale, Unit};

use super::amount::{length, load, seconds, unit_of};
use super::doubt::beyond;
use super::{Field, Why, Wrong};

/// A pull test as typed: on a command line, in a row of a table, step by step, in a form. Bare numbers are in the unit
/// that it is read with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TypedTest {
    /// The distance between the marks; none where it was not typed.
    pub marks: Option<String>,
    /// The lengths, in the order in which they were read.
    pub readings: Vec<TypedReading>,
    /// Whether a settling pull was made.
    pub settling: bool,
    /// Whether the marks were read before it, and not after.
    pub marks_before_settling: bool,
    /// How many pulls were planned beforehand; none where nobody said.
    pub planned: Option<String>,
    /// The grain that was pulled.
    pub grain: Grain,
    /// Between two lines of the scale; none for that of an ordinary tape.
    pub division: Option<String>,
    /// Ends that were read.
    pub ends: Ends,
    /// How the swatch was held.
    pub held: Held,
    /// What pulled; none for a hand.
    pub load: Option<String>,
}

/// A length, as typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TypedReading {
    /// Read while pulling.
    To(String),
    /// Read after release, with the time: `101mm@60s`.
    Back(String),
    /// The marks, read again: `250.5mm`.
    Marks(String),
}

impl TypedTest {
    /// What would have to be typed, in millimetres, to make a test again, exactly.
    #[must_use]
    pub fn of(test: &PullTest) -> Self {
        let looks = |made: usize| {
            let mine = test.looks().skip(1).filter(move |look| usize::from(look.after_pulls) == made);
            mine.map(|look| TypedReading::Marks(mm(look.length)))
        };
        let mut readings: Vec<TypedReading> = looks(0).collect();
        for (index, pull) in test.pulls().iter().enumerate() {
            readings.push(TypedReading::To(mm(*pull)));
            let mine = test.rests().iter().filter(|rest| usize::from(rest.after_pull) == index);
            readings.extend(mine.map(|rest| TypedReading::Back(format!("{}@{}s", mm(rest.recovered), rest.seconds))));
            readings.extend(looks(index.saturating_add(1)));
        }
        Self {
            marks: Some(mm(test.gauge())),
            readings,
            settling: test.settled(),
            marks_before_settling: test.gauge_before_settling(),
            planned: test.planned_pulls().map(|pulls| pulls.to_string()),
            grain: test.grain(),
            division: Some(mm(test.scale().division())),
            ends: test.scale().ends(),
            held: test.held(),
            load: load_text(test.load()),
        }
    }
}

/// A length in millimetres, exactly: 1/1600 mm is a finite decimal.
#[must_use]
pub fn mm(length: Length) -> String {
    (f64::from(length.steps()) / 1600.0).to_string()
}

/// A force as it would be typed, exactly; none for a hand.
#[must_use]
pub fn load_text(load: Load) -> Option<String> {
    match load {
        Load::Hand => None,
        Load::Force { millinewtons } => Some(format!("{}N", f64::from(millinewtons) / 1000.0)),
    }
}

/// Reads a pull test with at least one pull.
///
/// # Errors
///
/// The first text that cannot be read or is no reading that can be.
pub fn pull_test(typed: &TypedTest, unit: Unit) -> Result<PullTest, Wrong> {
    let test = so_far(typed, unit)?;
    if test.pulls().is_empty() { Err(Wrong::new(Field::To, "", Why::Missing)) } else { Ok(test) }
}

/// Reads a pull test as far as it goes, perhaps without a pull. Bare numbers take the unit of the marks, or `unit` where
/// those have none.
///
/// # Errors
///
/// The first text that cannot be read or is no reading that can be.
pub fn so_far(typed: &TypedTest, unit: Unit) -> Result<PullTest, Wrong> {
    let marks = typed.marks.as_deref().ok_or_else(|| Wrong::new(Field::Marks, "", Why::Missing))?;
    let unit = unit_of(marks).unwrap_or(unit);
    let gauge = length(Field::Marks, marks, unit)?;
    let scale = scale(typed, unit)?;
    let wrong = |field, text: &str| {
        let text = text.to_owned();
        move |error| Wrong { field, text, why: Why::Reading(error) }
    };
    let mut test = PullTest::new(gauge, typed.grain)
        .map_err(wrong(Field::Marks, marks))?
        .with_scale(scale)
        .map_err(wrong(Field::Division, typed.division.as_deref().unwrap_or("1mm")))?
        .with_held(typed.held)
        .with_load(typed.load.as_deref().map_or(Ok(Load::Hand), load)?)
        .with_settling_pull(typed.settling)
        .with_gauge_before_settling(typed.marks_before_settling);
    if let Some(text) = &typed.planned {
        test = test.with_planned_pulls(planned(text)?).map_err(wrong(Field::Planned, text))?;
    }
    for reading in &typed.readings {
        match reading {
            TypedReading::To(text) => {
                let extended = length(Field::To, text, unit)?;
                test.add_pull(extended).map_err(|error| beyond(gauge, extended, None, unit, text, error))?;
            }
            TypedReading::Marks(text) => {
                test.add_look(length(Field::Marks, text, unit)?).map_err(wrong(Field::Marks, text))?
            }
            TypedReading::Back(text) => {
                let (recovered, seconds) = rest(text, unit)?;
                test.add_rest(seconds, recovered).map_err(wrong(Field::Back, text))?;
            }
        }
    }
    Ok(test)
}

/// How many pulls were planned.
///
/// # Errors
///
/// What is no number of pulls that a test holds.
pub fn planned(text: &str) -> Result<u8, Wrong> {
    let most = u32::try_from(MAX_PULLS).unwrap_or(u32::MAX);
    let fits = |pulls: &u8| (1..=most).contains(&u32::from(*pulls));
    let wrong = || Wrong::new(Field::Planned, text, Why::NotANumber { most });
    text.trim().parse().ok().filter(fits).ok_or_else(wrong)
}

/// The scale on which a test is read.
///
/// # Errors
///
/// A division that cannot be read or is not above zero.
pub fn scale(typed: &TypedTest, unit: Unit) -> Result<Scale, Wrong> {
    let division = match &typed.division {
        Some(text) => length(Field::Division, text, unit)?,
        // The scale is the one the marks were read on, whatever unit the text is shown in.
        None => division_in(typed.marks.as_deref().and_then(unit_of).unwrap_or(unit)),
    };
    let text = typed.division.as_deref().unwrap_or_default();
    Scale::new(division, typed.ends).ok_or_else(|| Wrong::new(Field::Division, text, Why::NoDivision))
}

/// The division of an ordinary tape in a unit.
#[must_use]
pub const fn division_in(unit: Unit) -> Length {
    match unit {
        Unit::Inch => Length::from_inch_64ths(4),
        Unit::Mm | Unit::Cm => Length::from_mm(1),
    }
}

/// A recovered length and its time: `101mm@60s`.
fn rest(text: &str, unit: Unit) -> Result<(Length, u32), Wrong> {
    let wrong = |why| Wrong::new(Field::Back, text, why);
    let (recovered, time) = text.split_once('@').ok_or_else(|| wrong(Why::NoTime))?;
    let recovered = Length::parse(recovered, unit).map_err(|error| wrong(Why::Length(error)))?;
    let seconds = seconds(time.trim()).ok_or_else(|| wrong(Why::NotATime))?;
    Ok((recovered, seconds))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A step is 1/1600 mm, and 1/64 in is 635 of them (the inch is 25.4 mm exactly, NIST SP 811, App. B.8).
    #[test]
    fn what_would_have_to_be_typed_makes_the_same_test() {
        let mut test = PullTest::new(Length::from_inch_64ths(4 * 64 + 1), Grain::Bias)
            .unwrap()
            .with_scale(Scale::new(Length::from_steps(1), Ends::Both).unwrap())
            .unwrap()
            .with_held(Held::Loop)
            .with_load(Load::Force { millinewtons: 4903 })
            .with_settling_pull(true)
            .with_gauge_before_settling(true)
            .with_planned_pulls(5)
            .unwrap();
        test.add_look(Length::from_steps(163_201)).unwrap();
        test.add_pull(Length::from_steps(200_001)).unwrap();
        test.add_rest(60, Length::from_steps(165_001)).unwrap();
        test.add_rest(1800, Length::from_steps(164_999)).unwrap();
        test.add_pull(Length::from_steps(201_599)).unwrap();
        test.add_look(Length::from_steps(163_333)).unwrap();
        let typed = TypedTest::of(&test);
        assert_eq!(typed.readings[2], TypedReading::Back("103.125625@60s".to_owned()));
        assert_eq!(pull_test(&typed, Unit::Mm), Ok(test));
    }

    #[test]
    fn what_is_missing_is_named() {
        let none = TypedTest {
            marks: None,
            readings: Vec::new(),
            settling: false,
            marks_before_settling: false,
            planned: None,
            grain: Grain::Crosswise,
            division: None,
            ends: Ends::One,
            held: Held::Folded,
            load: None,
        };
        assert_eq!(pull_test(&none, Unit::Mm), Err(Wrong::new(Field::Marks, "", Why::Missing)));
        let marked = TypedTest { marks: Some("10cm".to_owned()), ..none };
        assert_eq!(pull_test(&marked, Unit::Mm), Err(Wrong::new(Field::To, "", Why::Missing)));
        assert!(so_far(&marked, Unit::Mm).is_ok(), "a test may begin without a pull");
    }
}
