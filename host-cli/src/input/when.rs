//! A day and time of day, as typed.

use jiff::Timestamp;
use jiff::civil::DateTime;
use jiff::tz::TimeZone;

use crate::error::Error;

/// When something was done, where the reader is: `2025-03-20` (its first minute), `2025-03-20 14:30`. Never after `now`.
///
/// # Errors
///
/// A text that is no day, or one that lies ahead.
pub fn past(flag: &str, text: &str, now: Timestamp) -> Result<Timestamp, Error> {
    let wrong = || Error::argument(flag, text, "type a day such as 2025-03-20, or '2025-03-20 14:30'");
    let civil: DateTime = text.trim().parse().map_err(|_| wrong())?;
    let at = TimeZone::system().to_timestamp(civil).map_err(|_| wrong())?;
    if at > now {
        return Err(Error::argument(flag, text, "that lies ahead; type the day on which it was pulled"));
    }
    Ok(at)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_and_minutes() {
        let now: Timestamp = "2026-01-01T00:00:00Z".parse().unwrap();
        let local = |text: &str| TimeZone::system().to_timestamp(text.parse::<DateTime>().unwrap()).unwrap();
        assert_eq!(past("--at", "2025-03-20", now).unwrap(), local("2025-03-20T00:00:00"));
        assert_eq!(past("--at", " 2025-03-20 14:30 ", now).unwrap(), local("2025-03-20T14:30:00"));
        for text in ["", "yesterday", "2025-13-01", "20.3.2025", "2025-03-20 25:00", "2026-06-01", "14:30"] {
            assert!(past("--at", text, now).is_err(), "{text}");
        }
    }
}
