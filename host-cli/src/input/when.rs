//! When something was done, as typed.

use jiff::Timestamp;
use jiff::civil::{Date, DateTime, Time, Weekday};

use super::{Field, Why, Wrong};
use crate::log::Here;

/// The months, each by three letters and more of its name.
const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];
/// The days of the week, each by three letters and more of its name.
const WEEKDAYS: [(&str, Weekday); 7] = [
    ("monday", Weekday::Monday),
    ("tuesday", Weekday::Tuesday),
    ("wednesday", Weekday::Wednesday),
    ("thursday", Weekday::Thursday),
    ("friday", Weekday::Friday),
    ("saturday", Weekday::Saturday),
    ("sunday", Weekday::Sunday),
];

/// When something was done, by the wall clock: `2025-03-20` (its first minute), `2025-03-20 14:30`, `20.3.2025`,
/// `20 Mar 2025`, `yesterday`. Never to come.
///
/// # Errors
///
/// A text that is no day, one that may be either of two, or one that lies ahead.
pub fn past(field: Field, text: &str, here: Here) -> Result<Timestamp, Wrong> {
    let wrong = |why| Wrong::new(field, text, why);
    let showed = day(text, Some(here.shows(here.now()).date())).map_err(wrong)?;
    let at = here.when(showed).ok_or_else(|| wrong(Why::NotADay))?;
    if at > here.now() { Err(wrong(Why::Ahead)) } else { Ok(at) }
}

/// The day on which something is wanted: `2026-12-12`, `12.12.2026`, `12 Dec` (the next one), `friday`, `in 3 weeks`. One
/// that has been is read too: what is late was wanted then.
///
/// # Errors
///
/// A text that is no day, or one that may be either of two.
pub fn due(field: Field, text: &str, here: Here) -> Result<Date, Wrong> {
    let today = here.shows(here.now()).date();
    let typed = text.trim().to_lowercase();
    if let Some(date) = ahead(&typed, today) {
        return Ok(date);
    }
    let why = match day(text, None) {
        Ok(showed) => return Ok(showed.date()),
        Err(why) => why,
    };
    // Without its year: the next one. 29 February may lie eight years ahead.
    for more in 0..=8 {
        match date(&format!("{typed} {}", today.year().saturating_add(more)), None) {
            Ok(date) if date >= today => return Ok(date),
            Err(why @ Why::TwoDays { .. }) => return Err(Wrong::new(field, text, why)),
            _ => {}
        }
    }
    Err(Wrong::new(field, text, why))
}

/// `tomorrow`, `in 3 weeks`, `next friday`.
fn ahead(text: &str, today: Date) -> Option<Date> {
    let on = |days: i32| today.checked_add(jiff::Span::new().try_days(days).ok()?).ok();
    let words: Vec<&str> = text.split_whitespace().collect();
    match words.as_slice() {
        ["today" | "now"] => Some(today),
        ["tomorrow"] => on(1),
        ["in", count, unit] => {
            let count = if matches!(*count, "a" | "one") { 1 } else { i32::from(number(count)?) };
            match *unit {
                "day" | "days" => on(count),
                "week" | "weeks" => on(count.checked_mul(7)?),
                _ => None,
            }
        }
        ["next" | "on" | "by", name] | [name] => {
            let (_, weekday) = WEEKDAYS.iter().find(|(weekday, _)| name.len() >= 3 && weekday.starts_with(name))?;
            let days = i32::from(weekday.since(today.weekday()));
            on(if days == 0 { 7 } else { days })
        }
        _ => None,
    }
}

/// What the wall clock showed, from a text that says so whenever it is read: with its year, and never `yesterday`.
///
/// # Errors
///
/// A text that is no such day, or one that may be either of two.
pub fn stated(field: Field, text: &str) -> Result<DateTime, Wrong> {
    day(text, None).map_err(|why| Wrong::new(field, text, why))
}

/// A day, perhaps with a time; without its year the latest that has been where `today` is known.
fn day(text: &str, today: Option<Date>) -> Result<DateTime, Why> {
    let text = text.trim().to_lowercase();
    if let Ok(at) = text.to_uppercase().parse::<DateTime>() {
        return Ok(at);
    }
    let (day, time) = match text.rsplit_once([' ', ',']) {
        Some((day, word)) if word.contains(':') => (day, clock(word).ok_or(Why::NotADay)?),
        _ => (text.as_str(), Time::midnight()),
    };
    let day = day.trim_end_matches([',', ' ']);
    let day = day.strip_suffix(" at").unwrap_or(day);
    Ok(date(day, today)?.to_datetime(time))
}

/// `14:30`, `9:05`.
fn clock(text: &str) -> Option<Time> {
    let (hour, minute) = text.split_once(':')?;
    Time::new(hour.parse().ok()?, minute.parse().ok()?, 0, 0).ok()
}

fn date(text: &str, today: Option<Date>) -> Result<Date, Why> {
    if let Some(date) = today.and_then(|today| relative(text, today)) {
        return Ok(date);
    }
    let parts: Vec<&str> = text
        .split(|c: char| c.is_whitespace() || matches!(c, '/' | '.' | '-' | ','))
        .filter(|part| !part.is_empty() && !matches!(*part, "of" | "the" | "on"))
        .collect();
    if let Some(at) = parts.iter().position(|part| month(part).is_some()) {
        let month = parts.get(at).and_then(|part| month(part)).ok_or(Why::NotADay)?;
        let mut others = parts.iter().enumerate().filter(|(place, _)| *place != at).map(|(_, part)| *part);
        let day = others.next().and_then(ordinal).ok_or(Why::NotADay)?;
        let year =
            others.next().map(|year| number(year).filter(|_| year.len() == 4).ok_or(Why::NotADay)).transpose()?;
        return if others.next().is_some() { Err(Why::NotADay) } else { on(year, month, day, today) };
    }
    let numbers: Vec<i16> = parts.iter().map(|part| number(part)).collect::<Option<_>>().ok_or(Why::NotADay)?;
    let first_is_year = parts.first().is_some_and(|part| part.len() == 4);
    match numbers.as_slice() {
        [year, month, day] if first_is_year => on(Some(*year), *month, *day, today),
        [day, month, year] => {
            let year = if *year < 100 { year.saturating_add(2000) } else { *year };
            either(*day, *month, Some(year), text.contains('.'), today)
        }
        [day, month] => either(*day, *month, None, text.contains('.'), today),
        _ => Err(Why::NotADay),
    }
}

/// `yesterday`, `3 days ago`, `last monday`.
fn relative(text: &str, today: Date) -> Option<Date> {
    let back = |days: i32| today.checked_sub(jiff::Span::new().try_days(days).ok()?).ok();
    let words: Vec<&str> = text.split_whitespace().collect();
    match words.as_slice() {
        ["today" | "now"] => Some(today),
        ["yesterday"] => back(1),
        ["day" | "the", .., "before", "yesterday"] => back(2),
        [count, unit, "ago"] => {
            let count = if matches!(*count, "a" | "one") { 1 } else { i32::from(number(count)?) };
            match *unit {
                "day" | "days" => back(count),
                "week" | "weeks" => back(count.checked_mul(7)?),
                _ => None,
            }
        }
        ["last" | "on", name] | [name] => {
            let (_, weekday) = WEEKDAYS.iter().find(|(weekday, _)| name.len() >= 3 && weekday.starts_with(name))?;
            let days = i32::from(weekday.until(today.weekday()));
            back(if days == 0 { 7 } else { days })
        }
        _ => None,
    }
}

/// A day and a month by their numbers. With points between, the day stands first; with slashes it does so in one country
/// and not in another.
fn either(first: i16, second: i16, year: Option<i16>, points: bool, today: Option<Date>) -> Result<Date, Why> {
    if second > 12 {
        return on(year, first, second, today);
    }
    let day_first = on(year, second, first, today)?;
    if points || first > 12 || first == second {
        return Ok(day_first);
    }
    Err(Why::TwoDays { one: day_first, other: on(year, first, second, today)? })
}

/// The date; without a year the latest that is not ahead.
fn on(year: Option<i16>, month: i16, day: i16, today: Option<Date>) -> Result<Date, Why> {
    let (month, day) = (i8::try_from(month).map_err(|_| Why::NotADay)?, i8::try_from(day).map_err(|_| Why::NotADay)?);
    if let Some(year) = year {
        return Date::new(year, month, day).map_err(|_| Why::NotADay);
    }
    let today = today.ok_or(Why::NotADay)?;
    // 29 February may lie eight years back.
    let years = (0..=8).map(|back| today.year().saturating_sub(back));
    let mut dates = years.filter_map(|year| Date::new(year, month, day).ok());
    dates.find(|date| *date <= today).ok_or(Why::NotADay)
}

fn month(text: &str) -> Option<i16> {
    let place = MONTHS
        .iter()
        .position(|month| text.len() >= 3 && (month.starts_with(text) || text == "sept" && *month == "september"))?;
    i16::try_from(place).ok()?.checked_add(1)
}

/// `3`, `3rd`.
fn ordinal(text: &str) -> Option<i16> {
    number(["st", "nd", "rd", "th"].iter().find_map(|end| text.strip_suffix(end)).unwrap_or(text))
}

fn number(text: &str) -> Option<i16> {
    text.parse().ok().filter(|_| text.len() <= 4 && text.bytes().all(|c| c.is_ascii_digit()))
}

#[cfg(test)]
mod tests {
    use jiff::tz::Offset;
    use proptest::prelude::*;

    use super::*;

    /// Nepal, a quarter of an hour off the hour: 5:45 ahead of UTC (IANA time zone database, Asia/Kathmandu).
    fn here() -> Here {
        let now = || "2026-01-01T00:00:00Z".parse().unwrap();
        Here { now, random: || 1, offset: |_| Offset::from_seconds(20_700).unwrap() }
    }

    fn typed(text: &str) -> Result<Timestamp, Wrong> {
        past(Field::Pulled, text, here())
    }

    #[test]
    fn days_and_minutes() {
        assert_eq!(typed("2025-03-20").unwrap().to_string(), "2025-03-19T18:15:00Z");
        assert_eq!(typed(" 2025-03-20 14:30 ").unwrap().to_string(), "2025-03-20T08:45:00Z");
        assert_eq!(typed("2026-01-01 05:45").unwrap(), here().now(), "this minute");
        for text in ["2026-01-01 05:46", "2 January 2026", "2/2/2026"] {
            assert_eq!(typed(text), Err(Wrong::new(Field::Pulled, text, Why::Ahead)), "{text}");
        }
        for text in [
            "",
            "2025-13-01",
            "2025-03-20 25:00",
            "14:30",
            "last week",
            "tomorrow",
            "30 February 2025",
            "31.6.2025",
            "20 Mar 25",
            "Mar",
            "March 2025",
            "20/21/2025",
            "1.2.3.2025",
            "20 Mar 2025 or so",
        ] {
            assert_eq!(typed(text), Err(Wrong::new(Field::Pulled, text, Why::NotADay)), "{text}");
        }
    }

    /// 1 January 2026 was a Thursday (ISO 8601 calendar).
    #[test]
    fn days_on_which_something_is_wanted() {
        let due = |text| due(Field::By, text, here()).map(|date| date.to_string());
        for (text, want) in [
            ("2026-12-12", "2026-12-12"),
            ("2025-12-12", "2025-12-12"),
            ("12.12.2026", "2026-12-12"),
            ("12 Dec", "2026-12-12"),
            ("1 Jan", "2026-01-01"),
            ("29 Feb", "2028-02-29"),
            ("today", "2026-01-01"),
            ("Tomorrow", "2026-01-02"),
            ("in 3 weeks", "2026-01-22"),
            ("friday", "2026-01-02"),
            ("next Thursday", "2026-01-08"),
        ] {
            assert_eq!(due(text).as_deref(), Ok(want), "{text}");
        }
        for text in ["", "soon", "in some weeks", "31.6.2026", "yesterday or so"] {
            assert_eq!(due(text), Err(Wrong::new(Field::By, text, Why::NotADay)), "{text}");
        }
        assert!(matches!(due("5/6").map_err(|wrong| wrong.why), Err(Why::TwoDays { .. })));
    }

    #[test]
    fn days_as_people_write_them() {
        let same = |text: &str, iso: &str| assert_eq!(typed(text), typed(iso), "{text}");
        for text in [
            "20.3.2025",
            "20.03.2025",
            "20/3/2025",
            "3/20/2025",
            "20-03-2025",
            "20/03/25",
            "2025/03/20",
            "20 Mar 2025",
            "20 MARCH 2025",
            "20th March 2025",
            "March 20, 2025",
            "20-Mar-2025",
            "the 20th of March 2025",
        ] {
            same(text, "2025-03-20");
        }
        same("20 Mar 2025 14:30", "2025-03-20 14:30");
        same("20.3.2025, 9:05", "2025-03-20 09:05");
        same("3.4.2025", "2025-04-03");
        same("4/4/2025", "2025-04-04");
        // The first of January 2026 was a Thursday.
        for (text, iso) in [
            ("today", "2026-01-01"),
            ("Yesterday", "2025-12-31"),
            ("yesterday at 14:30", "2025-12-31 14:30"),
            ("the day before yesterday", "2025-12-30"),
            ("3 days ago", "2025-12-29"),
            ("a week ago", "2025-12-25"),
            ("Wednesday", "2025-12-31"),
            ("last thursday", "2025-12-25"),
            ("fri", "2025-12-26"),
            ("27 November", "2025-11-27"),
            ("1 Jan", "2026-01-01"),
            ("27/11", "2025-11-27"),
            ("29 Feb", "2024-02-29"),
            ("5 Sept", "2025-09-05"),
        ] {
            same(text, iso);
        }
    }

    #[test]
    fn a_day_that_may_be_two_is_asked_for() {
        let why = typed("03/04/2025").unwrap_err().why;
        let date = |text: &str| text.parse::<Date>().unwrap();
        assert_eq!(why, Why::TwoDays { one: date("2025-04-03"), other: date("2025-03-04") });
        assert!(matches!(typed("3-4-2025").unwrap_err().why, Why::TwoDays { .. }));
    }

    #[test]
    fn a_table_says_the_same_whenever_it_is_read() {
        assert_eq!(stated(Field::Pulled, "20 Mar 2025 14:30").unwrap(), "2025-03-20T14:30".parse().unwrap());
        for text in ["yesterday", "27 November", "monday", "3 days ago", "27/11"] {
            assert_eq!(stated(Field::Pulled, text).unwrap_err().why, Why::NotADay, "{text}");
        }
    }

    proptest! {
        /// Every day as it is written in words and with points is that day.
        #[test]
        fn any_day(year in 1971i16..2025, month in 1i8..=12, day in 1i8..=28, text in "\\PC{0,12}|[0-9/. :-]{0,12}") {
            let name = MONTHS[usize::try_from(month).unwrap() - 1];
            let want = Date::new(year, month, day).unwrap();
            for text in [format!("{day} {name} {year}"), format!("{day}.{month}.{year}"), format!("{} {day}, {year}", &name[..3])] {
                prop_assert_eq!(stated(Field::Pulled, &text).unwrap().date(), want, "{}", text);
            }
            let _ = typed(&text);
        }
    }
}
