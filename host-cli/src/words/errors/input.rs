//! Fields that cannot be read.

use tenter_core::{Length, Unit};

use crate::input::{BARE, ClassFigures, Field, PhotoFault, Why, Wrong, unit_of};
use crate::plain::one_line;
use crate::words::doubt;

/// A field that cannot be read, under the name that a front end gives it: [`flag`], [`column()`].
///
/// ```
/// use tenter::input::{Field, Why, Wrong};
/// use tenter::words::errors::{column, flag, wrong};
///
/// let past = Wrong::new(Field::To, "9cm", Why::Reading(tenter_core::TestError::ExtendedBelowGauge { likely: None }));
/// assert!(wrong(&past, flag).starts_with("--to '9cm': the extended length is shorter"));
/// assert!(wrong(&past, column).starts_with("readings '9cm': the extended length is shorter"));
/// ```
#[must_use]
pub fn wrong(wrong: &Wrong, named: impl Fn(Field) -> &'static str) -> String {
    if wrong.why == Why::Missing {
        return match wrong.field {
            Field::Marks => {
                "missing --marks <LENGTH>; type the distance between the marks, such as --marks 10cm".to_owned()
            }
            Field::To => "missing --to <LENGTH>; type the distance while pulled, such as --to 10.5cm".to_owned(),
            other => format!("missing {}", named(other)),
        };
    }
    let said = format!("{} '{}': {}", named(wrong.field), one_line(&wrong.text), why(wrong));
    let unit = match wrong.why {
        Why::MoreThanCloth { unit, .. } => unit,
        _ => unit_of(&wrong.text).unwrap_or(BARE),
    };
    match wrong.likely() {
        Some(slip) => format!("{said}; {}", doubt::meant(slip, unit, named)),
        None => said,
    }
}

/// What is wrong with a text, and what to type instead.
#[must_use]
pub fn why(wrong: &Wrong) -> String {
    let text = wrong.text.trim();
    match &wrong.why {
        Why::Missing => "type a value".to_owned(),
        Why::Length(error) => error.to_string(),
        Why::Limit(error) => error.to_string(),
        Why::Class(figures) => class(figures),
        Why::TwoDays { one, other } => {
            format!("it could be {} or {}; type {one} or {other}", one.strftime("%-d %B"), other.strftime("%-d %B"))
        }
        Why::Reading(error) => error.to_string(),
        Why::Making(error) => error.to_string(),
        Why::MoreThanCloth { gauge, extended, construction, unit, .. } => {
            doubt::beyond(*gauge, *extended, *construction, *unit)
        }
        Why::Washed { likely, unit } => washed(*likely, *unit),
        Why::NoUnit => {
            let text = one_line(text);
            format!("type the unit too, such as {text}cm or {text}m")
        }
        Why::TooLong { most } => format!("too long; at most {most} letters fit"),
        Why::NotOneOf(words) if words.iter().any(|word| word.contains(',')) => {
            format!("type one of: {}", words.join("; "))
        }
        Why::NotOneOf(words) => format!("type one of {}", words.join(", ")),
        Why::NotANumber { most } => format!("type a whole number from 1 to {most}"),
        Why::OnACloth { by } => {
            format!("'{}' has this tag; leave the cell empty for the next free one", one_line(by))
        }
        Why::NoTagLeft(range) => {
            format!("all tags of {range} are in use; type one, or type tenter log tags with other tags")
        }
        Why::Ambiguous { one, other } => format!("both '{one}' and '{other}' match; type more of it"),
        Why::NoLine { name } => {
            format!(
                "its source does not give the line along which it stretches; type '{name}:along' or '{name}:around'"
            )
        }
        other => fixed(other, wrong.field).to_owned(),
    }
}

/// A class of stretch where a figure is wanted.
fn class(figures: &[ClassFigures]) -> String {
    let percent = |milli: u32| f64::from(milli) / 1000.0;
    let typed = |one: &ClassFigures| match one.up_to {
        Some(up_to) => format!("{}%..{}%", percent(one.from), percent(up_to)),
        None => format!("{}%", percent(one.from)),
    };
    let such = figures.first().map(typed).unwrap_or_default();
    let told: Vec<String> =
        figures.iter().take(3).map(|one| format!("{} in table {}", typed(one), one.table)).collect();
    let differ = if figures.iter().all(|one| typed(one) == such) { "it means" } else { "tables differ:" };
    format!("{differ} {}; type the figures you want, such as {such}", told.join(", "))
}

/// A length after a wash that no wash leaves.
fn washed(likely: Option<Length>, unit: Unit) -> String {
    let more = "no wash changes a length by more than half";
    match likely {
        Some(likely) => format!("{more}; did you mean {} after it?", doubt::shown(likely, unit)),
        None => format!("{more}; measure the marks again and type both lengths, such as '50cm to 48.5cm'"),
    }
}

/// Reasons that are said alike whatever was typed.
const fn fixed(why: &Why, field: Field) -> &'static str {
    match why {
        Why::Unexpected => {
            "it says nothing here, or says it twice; type words such as knit, 5-15%, 2m of 150cm or 180gsm, each once"
        }
        Why::Blank => "type a value, or unknown",
        Why::NoWords => "type a word or two",
        Why::Negative => "a length cannot be negative; type it without the minus sign",
        Why::Zero => "type the length that was cut off, such as 80cm",
        Why::NotPlain => "type one line of plain text",
        Why::NotAMass => "type one such as '180 g/m2' or '5.3 oz/yd2'",
        Why::NotAPrice => "type one such as 12.50/m or '9 EUR/yd'",
        Why::PriceWithoutShop => "type the shop too, with --seen SHOP",
        Why::PriceAtHome => "this cloth lies at home and a price belongs to a shop; add --seen SHOP",
        Why::AtHome => "this cloth lies at home already; for a new count type --length",
        Why::NotAShop => {
            "type the shop in which you saw it; if you bought it type --bought 2m, and if you did not after all --bought no"
        }
        Why::NoTime => "type when it was read too, such as 101mm@60s or 101mm@30min",
        Why::NotATime => "type the time since release after the @, such as 60s, 30min or 1h",
        Why::TwoTimes => "growth and recovery are asked at one time; type the same time after both",
        Why::NotALoad => "type hand, or a mass or force such as 500g, 15N or 3lb",
        Why::ForceUnit => "unknown unit; type g, kg, oz, lb, N or cN after the number",
        Why::ForceRange => "a pull lies between 1 mN and 1000 N; type one such as 500g or 15N",
        Why::NotPoints => "type points of stretch from 0 to 100, such as 0.8",
        Why::NotAConfidence => "type a percentage from 50.1 to 99.9, such as 95",
        Why::AboveWhole => "cloth cannot give back more than its extension; type a percentage up to 100%",
        Why::NoDivision => "the scale division must be above zero; type one such as 1mm or 1/16in",
        Why::NotMarks => "type the marks before and after, such as '50cm to 48.5cm'",
        Why::NotAGirth => "type a name and two measures, body first, such as hip=104cm/101cm",
        Why::NotACloth => "type a length and the width it is for, such as '1.6m at 140cm'",
        Why::WithoutBody => "it belongs to --garment or --movement; add one of them",
        Why::NotADay if matches!(field, Field::By) => {
            "type a day such as 2026-12-12, friday or 'in 3 weeks', or unknown"
        }
        Why::NotADay => "type a day such as yesterday, 2025-03-20 or '20 Mar 2025 14:30'",
        Why::Ahead => "that day lies ahead; type the day on which it was pulled",
        Why::NotYesOrNo => "type yes or no",
        Why::NoReadings => "type the pulled lengths with spaces between, and 101@60s for one after release",
        Why::NotAnId => "leave it empty for a new test",
        Why::OnNoCloth => "no cloth has this tag; add one with tenter cloth add first",
        Why::OnTwoCloths => "several cloths have this tag; type the letter too, such as 7b",
        Why::SeveralPeople => "several people have this name; if they are one, type tenter people merge with it",
        Why::NotTags => "type the first and the last tag, such as 100-199, or all",
        Why::NothingLeft => {
            "nothing would be left; a reduction is a share of the body, below 100 % (a stretch is no reduction)"
        }
        Why::NotATension => "type the force on each centimetre of width, such as 3.5N",
        Why::NotAHungMass => "type a mass such as 500g, 1.2kg or 3lb",
        Why::NotAnElastic => {
            "type its kind (firm, soft, braided, ribbing), its place and what it is cut for, such as 'soft waist 76cm'"
        }
        Why::NotAMassRange => {
            "type two masses with two dots between, such as 200..300g/m2 or 6..8oz, or 250g/m2.. for at least"
        }
        Why::NotASeam => {
            "type two roles, the seam if you like, and a length, such as 'main+waistband=60cm' or 'main+hood:neck=60cm'"
        }
        Why::NoZip => "it is taken off the edge of a zip: type that too, such as zip=60cm",
        Why::NotAUse => "type a role and the tag of a cloth, such as main=1",
        Why::NeedsShrinkage => "pass --lengthwise too: the marks along the cloth before and after",
        Why::EveryClothHasIt => "every cloth gives that; type more, such as 5%",
        Why::Photo(fault) => photo(*fault),
        Why::RoleTwice => "this role has a cloth already; give each role one",
        Why::OfOneRole => "several roles are to be cut; add --role to say for which one this is",
        Why::TooLongForPaper => "a gauge on paper cannot be that long; type less, such as 100%",
        Why::Missing
        | Why::Length(_)
        | Why::Limit(_)
        | Why::Class(_)
        | Why::TwoDays { .. }
        | Why::Reading(_)
        | Why::MoreThanCloth { .. }
        | Why::Washed { .. }
        | Why::Making(_)
        | Why::NoUnit
        | Why::TooLong { .. }
        | Why::NotOneOf(_)
        | Why::NotANumber { .. }
        | Why::OnACloth { .. }
        | Why::NoTagLeft(_)
        | Why::Ambiguous { .. }
        | Why::NoLine { .. } => column(field),
    }
}

/// A photograph that cannot be taken.
const fn photo(fault: PhotoFault) -> &'static str {
    match fault {
        PhotoFault::FileTooLarge => "the file is larger than 32 MB; save the photograph smaller",
        PhotoFault::UnknownFormat => "this is no JPEG, PNG or WebP; save the photograph as one of them",
        PhotoFault::TooManyPixels => "the photograph has more than 50 million pixels; save it smaller",
        PhotoFault::TooFewPixels => "nothing can be seen on fewer than 16 pixels; pass a larger photograph",
        PhotoFault::Damaged => "the photograph is damaged or cut off; copy it again",
    }
}

/// A field as the command line calls it.
#[must_use]
pub const fn flag(field: Field) -> &'static str {
    match field {
        Field::Marks => "--marks",
        Field::To | Field::Readings => "--to",
        Field::Back => "--back",
        Field::Division => "--division",
        Field::Load => "--load",
        Field::Planned => "--planned",
        Field::Settling => "--settling",
        Field::Grain => "--grain",
        Field::Ends => "--ends",
        Field::Held => "--held",
        Field::Pulled => "--at",
        Field::Note => "--note",
        Field::Scatter => "--scatter",
        Field::Confidence => "--confidence",
        Field::Table => "--table",
        Field::Wants => "--wants",
        Field::GrowthAtMost => "--growth-at-most",
        Field::RecoveryAtLeast => "--recovery-at-least",
        Field::Crosswise | Field::WashedCrosswise => "--crosswise",
        Field::Lengthwise | Field::WashedLengthwise => "--lengthwise",
        Field::Bias => "--bias",
        Field::Name => "the name",
        Field::NewName | Field::DeviceName => "--name",
        Field::Tag => "--tag",
        Field::Fibre => "--fibre",
        Field::Width => "--width",
        Field::Length => "--length",
        Field::Mass => "--mass",
        Field::Finish => "--finish",
        Field::Drape => "--drape",
        Field::Purpose => "--purpose",
        Field::Construction => "--construction",
        Field::Colour => "--colour",
        Field::OneWay => "--one-way",
        Field::Washed => "--washed",
        Field::Place => "--place",
        Field::Seen => "--seen",
        Field::Price => "--price",
        Field::Bought => "--bought",
        Field::Cut => "LENGTH",
        Field::AtLeast => "--at-least",
        Field::Stretch => "--stretch",
        Field::Pattern => "PATTERN",
        Field::View => "VIEW",
        Field::Role => "ROLE",
        Field::Garment => "--garment",
        Field::Kind => "--kind",
        Field::Movement => "--movement",
        Field::Around => "--around",
        Field::Cloth => "--cloth",
        Field::Need => "--need",
        Field::Along => "--along",
        Field::Elastic => "--elastic",
        Field::Measure => "--measure",
        Field::Gives => "--gives",
        Field::FacingGives => "--facing-gives",
        Field::Girth => "--girth",
        Field::Opening => "--opening",
        Field::Seam => "--seam",
        Field::Widest => "--widest",
        Field::ElasticWidth => "--elastic-width",
        Field::Zip => "--zip",
        Field::ZipHem => "--zip-hem",
        Field::ZipNeck => "--zip-neck",
        Field::Cord => "--cord",
        Field::CordWidth => "--cord-width",
        Field::Id => "TEST",
        Field::Retire => "--retire",
        Field::Return => "--return",
        Field::Regrain => "--regrain",
        Field::Reduce => "--reduce",
        Field::Tension => "--tension",
        Field::Method => "--method",
        Field::HungMass => "--mass",
        Field::Use => "--use",
        Field::Needle => "--needle",
        Field::Stitch => "--stitch",
        Field::StitchLength => "--length",
        Field::Pressure => "--pressure",
        Field::ThreadTension => "--tension",
        Field::Thread => "--thread",
        Field::Wore => "--wore",
        Field::Photo => "FILE",
        Field::PulledBy => "--by",
        Field::Person => "the name",
        Field::Tags => "the tags",
        Field::Whom => "--for",
        Field::Class => "--class",
        Field::By => "--by",
        Field::Number => "--number",
        Field::Word => "the word",
    }
}

/// A field as a table calls it: the head of its column.
#[must_use]
pub const fn column(field: Field) -> &'static str {
    match field {
        Field::Marks => "gauge",
        Field::To | Field::Back | Field::Readings => "readings",
        Field::Division => "division",
        Field::Load => "load",
        Field::Planned => "planned",
        Field::Settling => "settling",
        Field::Grain => "grain",
        Field::Ends => "ends",
        Field::Held => "held",
        Field::Pulled => "pulled",
        Field::Note => "note",
        Field::PulledBy => "by",
        Field::Tag => "tag",
        Field::Id => "id",
        Field::Name => "name",
        Field::Fibre => "fibre",
        Field::Construction => "construction",
        Field::Width => "width_mm",
        Field::Length => "length_mm",
        Field::Mass => "g_per_m2",
        Field::Finish => "finish",
        Field::Drape => "drape",
        Field::Purpose => "purpose",
        Field::OneWay => "one_way",
        Field::Washed => "washed",
        Field::Colour => "colour",
        Field::Place => "place",
        Field::Seen => "seen",
        Field::Price => "price",
        Field::WashedLengthwise => "washed_lengthwise",
        Field::WashedCrosswise => "washed_crosswise",
        Field::Retire => "dropped",
        other => flag(other),
    }
}
