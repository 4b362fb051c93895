//! The words of the trade, as people type them: for each closed list the word that is shown and stored, and what else is
//! said for it (common practice, no source). One file a subject. Capitals, spaces and hyphens make no difference.

mod care;
pub mod command;
mod construction;
mod elastic;
mod garment;
mod grain;
mod held;
pub mod option;
pub mod reply;
mod seam;
mod shop;
mod stage;
mod stitch;
mod unit;
mod zip;

use super::{Field, Why, Wrong};

pub use care::{DRAPE, FINISH, PURPOSE};
pub use construction::CONSTRUCTION;
pub use elastic::{EDGING, ELASTIC};
pub use garment::{GARMENTS, KIND, garments};
pub use grain::GRAIN;
pub use held::{ENDS, HELD, PIECE};
pub use seam::SEAM;
pub use shop::SHOP_CUT;
pub use stage::STAGE;
pub use stitch::STITCH;
pub use unit::UNIT;
pub use zip::ZIP_ENDS;

/// A closed list with the words for each of its members.
#[derive(Clone, Copy, Debug)]
pub struct Words<T: 'static> {
    /// The members.
    pub all: &'static [T],
    /// The word that is shown and stored.
    pub word: fn(T) -> &'static str,
    /// What else is said for it.
    pub others: fn(T) -> &'static [&'static str],
    /// Words that may mean one or another: never read, asked about.
    pub unclear: &'static [(&'static str, &'static [T])],
}

impl<T: Copy> Words<T> {
    /// The member that a person means.
    ///
    /// ```
    /// use tenter::input::synonym::GRAIN;
    /// use tenter_core::Grain;
    ///
    /// assert_eq!(GRAIN.typed("Weft"), Some(Grain::Crosswise));
    /// assert_eq!(GRAIN.typed("STRAIGHT-grain"), Some(Grain::Lengthwise));
    /// assert_eq!(GRAIN.typed("up"), None);
    /// ```
    #[must_use]
    pub fn typed(&self, text: &str) -> Option<T> {
        let means = |one: &T| is(text, (self.word)(*one)) || (self.others)(*one).iter().any(|other| is(text, other));
        self.all.iter().copied().find(means)
    }

    /// The members among which a text must choose: those that it may mean, or all.
    #[must_use]
    pub fn choice(&self, text: &str) -> &'static [T] {
        self.unclear.iter().find(|(word, _)| is(text, word)).map_or(self.all, |(_, between)| between)
    }

    /// As [`Words::typed`].
    ///
    /// # Errors
    ///
    /// A text that means none of them, or more than one, with the words to choose from.
    pub fn read(&self, field: Field, text: &str) -> Result<T, Wrong> {
        let words = || self.choice(text).iter().map(|one| (self.word)(*one).to_owned()).collect();
        self.typed(text).ok_or_else(|| Wrong::new(field, text, Why::NotOneOf(words())))
    }
}

/// Whether a text is this word, whatever its capitals, spaces and hyphens.
#[must_use]
pub fn is(text: &str, word: &str) -> bool {
    letters(text).eq(letters(word))
}

fn letters(text: &str) -> impl Iterator<Item = char> {
    let between = |c: &char| c.is_whitespace() || matches!(c, '-' | '_' | '\u{2010}' | '\u{2011}' | '\u{2013}');
    text.chars().filter(move |c| !between(c)).flat_map(char::to_lowercase)
}

#[cfg(test)]
mod tests {
    use core::fmt::Debug;

    use proptest::prelude::*;
    use proptest::sample::select;

    use super::*;

    /// A word as a hurried hand types it: any capitals, spaces and hyphens anywhere.
    fn hurried(word: &'static str) -> impl Strategy<Value = String> {
        let count = word.chars().count();
        let between = prop::collection::vec(select(vec!["", "", "", " ", "-", "  "]), count + 1);
        (prop::collection::vec(any::<bool>(), count), between).prop_map(move |(capitals, between)| {
            let mut text = String::new();
            for ((c, capital), gap) in word.chars().zip(capitals).zip(&between) {
                text.push_str(gap);
                if capital { text.extend(c.to_uppercase()) } else { text.push(c) }
            }
            text + between.last().unwrap()
        })
    }

    /// Every word of a list reads as its member, and no word stands for two or is unclear as well.
    fn sound<T: Copy + Debug + PartialEq>(words: &Words<T>) {
        let said = |one: T| core::iter::once((words.word)(one)).chain((words.others)(one).iter().copied());
        let all: Vec<(&'static str, T)> =
            words.all.iter().flat_map(|one| said(*one).map(|word| (word, *one))).collect();
        for (index, (word, one)) in all.iter().enumerate() {
            assert!(letters(word).next().is_some(), "{one:?}");
            let twice = all.iter().skip(index + 1).find(|(other, _)| is(word, other));
            assert_eq!(twice, None, "{word}");
            assert_eq!(words.choice(word).len(), words.all.len(), "{word} is unclear");
        }
        for (word, between) in words.unclear {
            assert!(words.typed(word).is_none() && between.len() > 1, "{word}");
        }
        proptest!(|((text, one) in select(all).prop_flat_map(|(word, one)| hurried(word).prop_map(move |text| (text, one))))| {
            prop_assert_eq!(words.typed(&text), Some(one), "{}", text);
        });
        proptest!(|(text in "\\PC{0,12}")| { let _ = words.read(Field::Grain, &text); });
    }

    #[test]
    fn every_word_is_read_in_any_capitals_and_spaces() {
        sound(&GRAIN);
        sound(&CONSTRUCTION);
        sound(&HELD);
        sound(&ENDS);
        sound(&PIECE);
        sound(&UNIT);
        sound(&STITCH);
        sound(&SEAM);
        sound(&SHOP_CUT);
        sound(&STAGE);
        sound(&KIND);
        sound(&FINISH);
        sound(&DRAPE);
        sound(&PURPOSE);
        sound(&ELASTIC);
        sound(&EDGING);
        sound(&ZIP_ENDS);
    }

    #[test]
    fn nothing_at_all_is_no_word() {
        for text in ["", " ", "-", " - ", "\u{a0}"] {
            assert_eq!((GRAIN.typed(text), CONSTRUCTION.typed(text), HELD.typed(text)), (None, None, None), "{text:?}");
        }
    }
}
