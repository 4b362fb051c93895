//! Lengths, limits and ranges as typed: what is read says the same when it is written and read again.

#![no_main]

use libfuzzer_sys::fuzz_target;
use tenter_core::{Length, Limit, Range, Unit};

fuzz_target!(|text: &str| {
    for unit in [Unit::Mm, Unit::Cm, Unit::Inch] {
        if let Ok(length) = Length::parse(text, unit) {
            assert_eq!(Length::parse(&length.show(Unit::Mm).to_string(), Unit::Inch).is_ok(), true, "{text:?}");
        }
        if let Ok(limit) = Limit::parse(text, unit)
            && limit.printed_marks().is_none()
        {
            assert_eq!(Limit::parse(&limit.to_string(), unit), Ok(limit), "{text:?}");
        }
        if let Ok(Range { at_least: Some(least), at_most: Some(most) }) = Range::parse(text, unit) {
            assert!(least.ratio() <= most.ratio(), "{text:?}");
        }
    }
});
