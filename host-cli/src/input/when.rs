//! A day and time of day, as typed.

use jiff::Timestamp;
use jiff::civil::DateTime;

use super::{Field, Why, Wrong};
use crate::log::Here;

/// When something was done, by the wall clock: `2025-03-20` (its first minute), `2025-03-20 14:30`. Never to come.
///
/// # Errors
///
/// A text that is no day, or one that lies ahead.
pub fn past(field: Field, text: &str, here: Here) -> Result<Timestamp, Wrong> {
    let wrong = |why| Wrong::new(field, text, why);
    let civil: DateTime = text.trim().parse().map_err(|_| wrong(Why::NotADay))?;
    let at = here.when(civil).ok_or_else(|| wrong(Why::NotADay))?;
    if at > here.now() { Err(wrong(Why::Ahead)) } else { Ok(at) }
}

#[cfg(test)]
mod tests {
    use jiff::tz::Offset;

    use super::*;

    #[test]
    fn days_and_minutes() {
        let now = || "2026-01-01T00:00:00Z".parse().unwrap();
        // Nepal, a quarter of an hour off the hour: 5:45 ahead of UTC (IANA time zone database, Asia/Kathmandu).
        let here = Here { now, random: || 1, offset: |_| Offset::from_seconds(20_700).unwrap() };
        let past = |text| past(Field::Pulled, text, here);
        assert_eq!(past("2025-03-20").unwrap().to_string(), "2025-03-19T18:15:00Z");
        assert_eq!(past(" 2025-03-20 14:30 ").unwrap().to_string(), "2025-03-20T08:45:00Z");
        assert_eq!(past("2026-01-01 05:45").unwrap(), now(), "this minute");
        assert_eq!(past("2026-01-01 05:46"), Err(Wrong::new(Field::Pulled, "2026-01-01 05:46", Why::Ahead)));
        for text in ["", "yesterday", "2025-13-01", "20.3.2025", "2025-03-20 25:00", "14:30"] {
            assert_eq!(past(text), Err(Wrong::new(Field::Pulled, text, Why::NotADay)), "{text}");
        }
    }
}
