//! One list of words for each closed enum, which the command line, JSON and SQL share.

/// Gives an enum of plain variants `ALL`, `word` and `from_word`.
macro_rules! words {
    ($name:ident { $($variant:ident => $word:literal),+ $(,)? }) => {
        impl $name {
            /// Every variant, in the order in which they are declared.
            pub const ALL: [Self; [$(Self::$variant),+].len()] = [$(Self::$variant),+];

            /// The word for it, in lower case with hyphens; typed, stored and shown alike.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self {
                    $(Self::$variant => $word),+
                }
            }

            /// The variant of a word, exactly as [`word`](Self::word) gives it; `None` for any other text.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Self> {
                Self::ALL.into_iter().find(|one| one.word() == word)
            }
        }
    };
}

pub(crate) use words;
