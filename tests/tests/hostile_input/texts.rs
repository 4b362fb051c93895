//! Lengths, limits and ranges from any text, and from texts whose meaning is known.

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::Zero;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use tenter_core::{Length, LengthError, Limit, LimitError, Range, Unit};

pub const UNITS: [Unit; 3] = [Unit::Mm, Unit::Cm, Unit::Inch];

/// Names of units with their steps of 1/1600 mm; the inch is 25.4 mm and the yard 0.9144 m exactly (the international
/// yard of 1959). No name means the default.
const NAMES: [(&str, i64); 20] = [
    ("mm", 1600),
    ("cm", 16_000),
    ("m", 1_600_000),
    ("metre", 1_600_000),
    ("metres", 1_600_000),
    ("meter", 1_600_000),
    ("meters", 1_600_000),
    ("in", 40_640),
    ("inch", 40_640),
    ("inches", 40_640),
    ("\"", 40_640),
    ("''", 40_640),
    ("″", 40_640),
    ("”", 40_640),
    ("yd", 1_463_040),
    ("yard", 1_463_040),
    ("yards", 1_463_040),
    ("MM", 1600),
    ("Cm", 16_000),
    ("IN", 40_640),
];

const VULGAR: [(char, i64, i64); 7] =
    [('½', 1, 2), ('¼', 1, 4), ('¾', 3, 4), ('⅛', 1, 8), ('⅜', 3, 8), ('⅝', 5, 8), ('⅞', 7, 8)];

/// Characters that stand near those of a length, or make texts look other than they are.
const ODD: &str = "0123456789.,/-+⁄ \u{a0}\t\0\n%\"'½¼⅛⅓²eExXmMiInNcCydto\u{200b}\u{200d}\u{202e}\u{feff}\u{2212}\u{66b}٣５Ⅷ㎜📏é\u{301}";

/// A number as it is written, and what it means; nothing where it has a zero below the line.
#[derive(Clone, Debug)]
struct Written {
    text: String,
    value: Option<BigRational>,
    /// Digits after the decimal mark, and whether that is a comma.
    decimals: usize,
    comma: bool,
    /// A whole number of more than nine digits, which may be refused whatever it means.
    wide: bool,
}

fn whole(digits: &str) -> BigInt {
    digits.parse().unwrap_or_default()
}

fn is_wide(digits: &str) -> bool {
    digits.trim_start_matches('0').len() > 9
}

fn decimal() -> impl Strategy<Value = Written> {
    let digits = prop_oneof![6 => "[0-9]{1,4}", 2 => "0{0,3}[0-9]{1,9}", 1 => "[0-9]{10,40}"];
    let decimals = prop_oneof![6 => "[0-9]{1,4}", 2 => "[0-9]{0,9}", 1 => "[0-9]{10,30}"];
    (digits, prop::option::of((select(vec!['.', ',']), decimals))).prop_map(|(digits, rest)| {
        let (mark, after) = rest.map_or((String::new(), String::new()), |(mark, after)| (mark.to_string(), after));
        let all = format!("{digits}{after}");
        let value = BigRational::new(whole(&all), BigInt::from(10).pow(u32::try_from(after.len()).unwrap()));
        Written {
            text: format!("{digits}{mark}{after}"),
            value: Some(value),
            decimals: after.len(),
            comma: mark == ",",
            wide: false,
        }
    })
}

/// `4 `, `4-`, … before a fraction, or nothing.
fn mixed() -> impl Strategy<Value = (String, BigInt)> {
    let joiner = select(vec![" ", "-", " - ", "  ", "\u{a0}", "- "]);
    prop::option::of(("[0-9]{1,5}", joiner)).prop_map(|before| {
        before.map_or((String::new(), BigInt::zero()), |(digits, joiner)| (digits.clone() + joiner, whole(&digits)))
    })
}

fn fraction() -> impl Strategy<Value = Written> {
    let below =
        prop_oneof![6 => select(vec!["2", "4", "8", "16", "32", "64"]).prop_map(String::from), 1 => "[0-9]{1,15}"];
    let above = prop_oneof![6 => "[0-9]{1,3}", 1 => "[0-9]{1,15}"];
    (mixed(), above, select(vec!["/", "⁄", " / "]), below).prop_map(|((text, before), num, slash, den)| {
        let (above, below) = (whole(&num), whole(&den));
        let value = (!below.is_zero()).then(|| BigRational::from(before) + BigRational::new(above, below));
        let wide = is_wide(&num) || is_wide(&den);
        Written { text: format!("{text}{num}{slash}{den}"), value, decimals: 0, comma: false, wide }
    })
}

fn vulgar() -> impl Strategy<Value = Written> {
    let glued = "[0-9]{1,5}".prop_map(|digits| (digits.clone(), whole(&digits)));
    (prop_oneof![mixed(), glued], select(VULGAR.to_vec())).prop_map(|((text, before), (glyph, num, den))| {
        let value = BigRational::from(before) + BigRational::new(num.into(), den.into());
        Written { text: format!("{text}{glyph}"), value: Some(value), decimals: 0, comma: false, wide: false }
    })
}

fn number() -> impl Strategy<Value = Written> {
    prop_oneof![3 => decimal(), 2 => fraction(), 1 => vulgar()]
}

/// A number and its unit, with the value in steps where the unit is not left to the default.
fn length() -> impl Strategy<Value = (Written, String, Option<i64>)> {
    let name = prop::option::of(select(NAMES.to_vec()));
    let gap = select(vec!["", " ", "  ", "\u{a0}", "\t"]);
    let end = select(vec!["", " ", "\u{3000}"]);
    (end.clone(), number(), gap, name, end).prop_map(|(start, number, gap, name, end)| {
        let text = format!("{start}{}{gap}{}{end}", number.text, name.map_or("", |(name, _)| name));
        (number, text, name.map(|(_, steps)| steps))
    })
}

const fn steps(unit: Unit) -> i64 {
    match unit {
        Unit::Mm => 1600,
        Unit::Cm => 16_000,
        Unit::Inch => 40_640,
    }
}

/// Any text, most of it made of characters that matter here.
pub fn text() -> impl Strategy<Value = String> {
    let odd = prop::collection::vec(select(ODD.chars().collect::<Vec<_>>()), 0..16)
        .prop_map(|chars| chars.into_iter().collect());
    prop_oneof![2 => odd, 1 => any::<String>()]
}

/// A length with characters changed, left out, doubled and put in.
fn near_miss() -> impl Strategy<Value = String> {
    let change = (any::<Index>(), 0..4u8, select(ODD.chars().collect::<Vec<_>>()));
    (length(), prop::collection::vec(change, 1..4)).prop_map(|((_, text, _), changes)| {
        let mut chars: Vec<char> = text.chars().collect();
        for (at, kind, odd) in changes {
            let at = at.index(chars.len().max(1));
            match kind {
                _ if at >= chars.len() => chars.push(odd),
                0 => chars[at] = odd,
                1 => drop(chars.remove(at)),
                2 => chars.insert(at, chars[at]),
                _ => chars.insert(at, odd),
            }
        }
        chars.into_iter().collect()
    })
}

/// No panic from any of the readers, and what they take makes sense.
pub fn assert_sane(text: &str) {
    for unit in UNITS {
        if let Ok(length) = Length::parse(text, unit) {
            assert!(length >= Length::ZERO, "{text:?}");
            assert!(
                text.chars().any(|c| c.is_ascii_digit() || VULGAR.iter().any(|(glyph, ..)| *glyph == c)),
                "{text:?}"
            );
        }
        let sane = |limit: Limit| {
            limit.ratio().numerator() >= 0 && limit.ratio() <= Limit::milli_percent(1_000_000).unwrap().ratio()
        };
        assert!(Limit::parse(text, unit).ok().is_none_or(sane), "{text:?}");
        if let Ok(range) = Range::parse(text, unit) {
            assert!(!range.is_empty(), "{text:?}");
            assert!(range.at_least.is_none_or(sane) && range.at_most.is_none_or(sane), "{text:?}");
            let ends = range.at_least.zip(range.at_most);
            assert!(ends.is_none_or(|(low, high)| low.ratio() <= high.ratio()), "{text:?}");
        }
    }
}

proptest! {
    #[test]
    fn any_text_is_read_sanely_or_refused(text in text()) {
        assert_sane(&text);
    }

    #[test]
    fn a_near_miss_is_read_sanely_or_refused(text in near_miss(), other in near_miss()) {
        assert_sane(&text);
        assert_sane(&format!("{text} to {other}"));
        assert_sane(&format!("{text}..{other}"));
        for said in [
            format!("at least {text}"),
            format!("UP TO about {text}"),
            format!("{text} or more"),
            format!("{text} {other}%+"),
            format!("between {text} and {other}"),
            format!("from {text} to {other} per cent"),
            format!("{text}-{other}%"),
        ] {
            assert_sane(&said);
        }
    }

    #[test]
    fn a_length_is_read_for_what_it_means((number, text, named) in length(), default in select(UNITS.to_vec())) {
        let unit = BigRational::from(BigInt::from(named.unwrap_or(steps(default))));
        let exact = number.value.clone().map(|value| value * unit);
        let too_long = exact.as_ref().is_some_and(|steps| *steps > BigRational::from(BigInt::from(i32::MAX)));
        match Length::parse(&text, default) {
            Ok(length) => prop_assert_eq!(Some(BigRational::from(BigInt::from(length.steps()))), exact),
            Err(LengthError::ZeroDenominator) => prop_assert!(exact.is_none()),
            Err(LengthError::ImproperFraction { above, below }) => {
                let slashes = text.matches(['/', '\u{2044}']).count();
                prop_assert!(slashes == 1 && above >= below);
            }
            Err(LengthError::AmbiguousComma) => prop_assert!(number.comma && number.decimals == 3),
            Err(LengthError::TooLong) => prop_assert!(too_long || number.wide, "{exact:?}"),
            Err(LengthError::NotAWholeStep) => {
                prop_assert!(number.decimals > 9 || exact.is_some_and(|steps| !steps.is_integer()));
            }
            Err(error) => prop_assert!(false, "{error:?}"),
        }
    }

    #[test]
    fn a_length_shown_reads_back(steps: i32, sixty_fourths in 0..=i32::MAX / 635) {
        for unit in [Unit::Mm, Unit::Cm] {
            let length = Length::from_steps(steps);
            let want = if steps < 0 { Err(LengthError::Negative) } else { Ok(length) };
            prop_assert_eq!(Length::parse(&length.show(unit).to_string(), Unit::Inch), want);
        }
        let length = Length::from_steps(635 * sixty_fourths);
        prop_assert_eq!(Length::parse(&length.show(Unit::Inch).to_string(), Unit::Mm), Ok(length));
    }

    #[test]
    fn a_percentage_is_read_for_what_it_means(number in decimal(), sign in select(vec!["", "%", " %", " % "])) {
        let percent = number.value.clone().unwrap();
        let whole = |number: i64| BigRational::from(BigInt::from(number));
        match Limit::parse(&(number.text + sign), Unit::Mm) {
            Ok(limit) => {
                let ratio = limit.ratio();
                let ratio = BigRational::new(ratio.numerator().into(), ratio.denominator().into());
                prop_assert_eq!(ratio * whole(100), percent);
                prop_assert_eq!(Limit::parse(&limit.to_string(), Unit::Mm), Ok(limit));
            }
            Err(LimitError::AmbiguousComma) => prop_assert!(number.comma && number.decimals == 3),
            Err(LimitError::TooFine) => {
                prop_assert!(number.decimals > 9 || !(percent * whole(1000)).is_integer());
            }
            Err(LimitError::TooLarge) => prop_assert!(percent > whole(1000)),
            Err(LimitError::Share { .. }) => {
                prop_assert!(sign.trim().is_empty() && percent > whole(0) && percent < whole(1));
            }
            Err(error) => prop_assert!(false, "{error:?}"),
        }
    }

    #[test]
    fn printed_gauges_are_read_for_what_they_mean(gauge: i32, more in 0..20_000_000i32, unit in select(vec![Unit::Mm, Unit::Cm])) {
        let (gauge, extended) = (Length::from_steps(gauge.saturating_abs() >> 5), Length::from_steps((gauge.saturating_abs() >> 5) + more));
        let text = format!("{} to {}", gauge.show(unit), extended.show(Unit::Mm));
        prop_assert_eq!(Limit::parse(&text, Unit::Inch), Limit::marks(gauge, extended));
    }

    #[test]
    fn ends_of_a_range_are_read_each_for_itself(low in 0..=1_000_000u32, high in 0..=1_000_000u32, gap in select(vec!["", " "])) {
        let limit = |milli| Limit::milli_percent(milli).ok();
        let percent = |milli| limit(milli).unwrap().to_string();
        let read = |text: String| Range::parse(&text, Unit::Mm);
        let (least, most) = (percent(low), percent(high));
        let both = Range { at_least: limit(low), at_most: limit(high) };
        let want = if low <= high { Ok(both) } else { Err(LimitError::UpsideDown) };
        prop_assert_eq!(read(format!("{least}{gap}..{gap}{most}")), want);
        prop_assert_eq!(read(format!("{least}{gap}..")), Ok(Range { at_most: None, ..both }));
        prop_assert_eq!(read(format!("..{gap}{most}")), Ok(Range { at_least: None, ..both }));
        prop_assert_eq!(read(least.clone()), Ok(Range { at_most: None, ..both }));
        // Three dots may be two and a decimal point.
        let dots = read(format!("{least}...{most}"));
        prop_assert!(dots.is_err(), "{dots:?}");
    }
}
