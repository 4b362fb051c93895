//! Tags: the numbers pinned to cloths.

use std::fmt;

use serde::ser::SerializeStruct as _;
use serde::{Deserialize, Serialize, Serializer};

/// The tag of a cloth as people say it: a number, and a letter where another cloth has the same.
///
/// ```
/// use tenter::log::Tag;
///
/// assert_eq!(Tag::parse("#7b").map(|tag| tag.to_string()), Some("7b".to_owned()));
/// assert_eq!(Tag::parse("7"), Some(Tag::from(7)));
/// assert_eq!(Tag::parse("b7"), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Tag {
    number: u16,
    /// Which of those that share the number, from 1 on; 0 where none does.
    place: u16,
}

/// Letters of the alphabet.
const LETTERS: u16 = 26;

impl Tag {
    /// The tag of one of several cloths that share a number; `place` counts from 0.
    #[must_use]
    pub fn shared(number: u16, place: usize) -> Self {
        Self { number, place: u16::try_from(place).unwrap_or(u16::MAX - 1).saturating_add(1) }
    }

    /// The number without the letter.
    #[must_use]
    pub const fn number(self) -> u16 {
        self.number
    }

    /// The letter, or letters after the twenty-sixth; empty where no other cloth has the number.
    #[must_use]
    pub fn letter(self) -> String {
        let (mut rest, mut letters) = (self.place, Vec::new());
        while rest > 0 {
            rest -= 1;
            letters.extend(u8::try_from(rest % LETTERS).map(|letter| char::from(b'a' + letter)));
            rest /= LETTERS;
        }
        letters.iter().rev().collect()
    }

    /// Reads `7`, `#7`, `7b` or `7 B`; none of another text, or of a number that no tag has.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let text = text.trim().trim_start_matches('#').trim();
        let (digits, letters) = text.split_at(text.bytes().take_while(u8::is_ascii_digit).count());
        let number = digits.parse().ok()?;
        let place = letters.trim().bytes().try_fold(0_u16, |place, letter| {
            let letter = letter.to_ascii_lowercase();
            let value = letter.is_ascii_lowercase().then(|| u16::from(letter - b'a') + 1)?;
            place.checked_mul(LETTERS)?.checked_add(value)
        })?;
        Some(Self { number, place })
    }
}

impl From<u16> for Tag {
    fn from(number: u16) -> Self {
        Self { number, place: 0 }
    }
}

impl PartialEq<u16> for Tag {
    fn eq(&self, other: &u16) -> bool {
        *self == Self::from(*other)
    }
}

impl fmt::Display for Tag {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&format!("{}{}", self.number, self.letter()))
    }
}

/// As JSON a tag is its number, as ever, with the letter beside it where there is one: two fields, to be flattened.
impl Serialize for Tag {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let letter = self.letter();
        let mut fields = serializer.serialize_struct("Tag", if letter.is_empty() { 1 } else { 2 })?;
        fields.serialize_field("tag", &self.number)?;
        if !letter.is_empty() {
            fields.serialize_field("letter", &letter)?;
        }
        fields.end()
    }
}

/// The tags from which a desk takes the next one, so that several desks give none twice.
///
/// ```
/// use tenter::log::TagRange;
///
/// let range = TagRange::parse("100-199").unwrap();
/// assert_eq!((range.least, range.most, range.to_string()), (100, 199, "100-199".to_owned()));
/// assert_eq!(TagRange::parse("199-100"), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct TagRange {
    /// The first of them, from 1 on.
    pub least: u16,
    /// The last of them.
    pub most: u16,
}

impl TagRange {
    /// All tags.
    pub const ALL: Self = Self { least: 1, most: u16::MAX };

    /// Reads `100-199`, `100 to 199` or `100..199`.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let text = text.trim().replace(['\u{2013}', '\u{2212}'], "-");
        let (least, most) = ["..", "-", " to "].into_iter().find_map(|between| text.split_once(between))?;
        let number = |text: &str| text.trim().trim_start_matches('#').parse().ok().filter(|number: &u16| *number > 0);
        let (least, most) = (number(least)?, number(most)?);
        (least <= most).then_some(Self { least, most })
    }

    /// Whether a tag is one of them.
    #[must_use]
    pub fn holds(self, tag: u16) -> bool {
        (self.least..=self.most).contains(&tag)
    }

    /// Whether both have a tag in common.
    #[must_use]
    pub const fn meets(self, other: Self) -> bool {
        self.least <= other.most && other.least <= self.most
    }
}

impl fmt::Display for TagRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", self.least, self.most)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_come_back() {
        for (place, text) in [(0, "7a"), (25, "7z"), (26, "7aa"), (51, "7az"), (52, "7ba"), (701, "7zz"), (702, "7aaa")]
        {
            let tag = Tag::shared(7, place);
            assert_eq!((tag.to_string().as_str(), Tag::parse(text)), (text, Some(tag)));
        }
        for text in ["", "a", "7-a", "7ä", "70000", "7aaaaaaaaa", "-7"] {
            assert_eq!(Tag::parse(text), None, "{text}");
        }
        assert_eq!(Tag::parse(" # 7 B "), Some(Tag::shared(7, 1)));
        assert_eq!(format!("{:>4}|", Tag::shared(7, 1)), "  7b|");
    }

    #[test]
    fn a_range_is_read_as_it_is_typed() {
        for text in ["", "100", "0-9", "9-1", "1-70000", "a-b"] {
            assert_eq!(TagRange::parse(text), None, "{text}");
        }
        let range = TagRange { least: 100, most: 199 };
        for text in ["100 \u{2013} 199", "100 to 199", "#100..199"] {
            assert_eq!(TagRange::parse(text), Some(range), "{text}");
        }
        assert_eq!([100, 199, 99, 200].map(|tag| range.holds(tag)), [true, true, false, false]);
        assert_eq!([1, 199, 200].map(|least| range.meets(TagRange { least, most: 300 })), [true, true, false]);
    }
}
