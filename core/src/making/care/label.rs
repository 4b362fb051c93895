//! What a label says: fibres and kinds of cloth, by its words.

use super::Finish;
use crate::reading::construction::Construction;

/// A fibre.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Fibre {
    /// Cotton.
    Cotton,
    /// Flax, hemp and ramie.
    Linen,
    /// Viscose and its kin: rayon, modal, lyocell, cupro, bamboo.
    Viscose,
    /// Wool and other animal hair.
    Wool,
    /// Silk.
    Silk,
    /// Acetate and triacetate.
    Acetate,
    /// Polyester.
    Polyester,
    /// Polyamide, nylon.
    Polyamide,
    /// Acrylic.
    Acrylic,
    /// Elastane, spandex. It stretches a cloth and never decides its care.
    Elastane,
}

/// The words of each fibre. The generic names of ISO 2076 and of the United States (16 CFR 303), and what labels and
/// shops say besides.
const WORDS: [(Fibre, &[&str]); 10] = [
    (Fibre::Cotton, &["cotton", "cottons", "cottony"]),
    (Fibre::Linen, &["linen", "flax", "hemp", "ramie"]),
    (Fibre::Viscose, &["viscose", "rayon", "modal", "lyocell", "cupro", "bamboo"]),
    (
        Fibre::Wool,
        &["wool", "woollen", "woolen", "worsted", "merino", "lambswool", "mohair", "cashmere", "alpaca", "loden"],
    ),
    (Fibre::Silk, &["silk", "silks"]),
    (Fibre::Acetate, &["acetate", "triacetate"]),
    (Fibre::Polyester, &["polyester", "polyesters"]),
    (Fibre::Polyamide, &["polyamide", "nylon"]),
    (Fibre::Acrylic, &["acrylic", "polyacrylic", "modacrylic"]),
    (Fibre::Elastane, &["elastane", "elastan", "spandex"]),
];

impl Fibre {
    /// Every fibre.
    pub const ALL: [Self; 10] = [
        Self::Cotton,
        Self::Linen,
        Self::Viscose,
        Self::Wool,
        Self::Silk,
        Self::Acetate,
        Self::Polyester,
        Self::Polyamide,
        Self::Acrylic,
        Self::Elastane,
    ];

    /// Its usual name on a label.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cotton => "cotton",
            Self::Linen => "linen",
            Self::Viscose => "viscose",
            Self::Wool => "wool",
            Self::Silk => "silk",
            Self::Acetate => "acetate",
            Self::Polyester => "polyester",
            Self::Polyamide => "polyamide",
            Self::Acrylic => "acrylic",
            Self::Elastane => "elastane",
        }
    }

    fn of_word(word: &str) -> Option<Self> {
        let is = |words: &[&str]| words.iter().any(|known| known.eq_ignore_ascii_case(word));
        WORDS.into_iter().find(|(_, words)| is(words)).map(|(fibre, _)| fibre)
    }
}

/// The fibres that a label names.
///
/// ```
/// use tenter_core::making::care::{Fibre, Fibres};
///
/// let label = Fibres::of("3 % Elastane, 97 % COTTON");
/// assert_eq!(label.main(), Some(Fibre::Cotton));
/// assert!(label.has(Fibre::Elastane) && !label.has(Fibre::Wool));
/// assert_eq!(Fibres::of("no idea").main(), None);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Fibres {
    named: u16,
    main: Option<Fibre>,
}

impl Fibres {
    /// Reads a label: fibres by name in any case, with or without their percentages before or after them.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let words = || text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
        let number = |word: &str| word.parse::<u16>().ok();
        let numbers_first = words().next().is_some_and(|word| number(word).is_some());
        let mut label = Self::default();
        let (mut number_before, mut most) = (None, None::<u16>);
        let mut words = words().peekable();
        while let Some(word) = words.next() {
            if let Some(share) = number(word) {
                // Of 97.5 the whole percents decide.
                number_before = number_before.or(Some(share));
                continue;
            }
            let Some(fibre) = Fibre::of_word(word) else { continue };
            let before = number_before.take();
            let after = words.peek().and_then(|next| number(next)).filter(|_| !numbers_first);
            let share = before.filter(|_| numbers_first).or(after);
            label.named |= Self::bit(fibre);
            // Without shares the first that is named leads; elastane never does beside another.
            let leads = match label.main {
                None | Some(Fibre::Elastane) => true,
                Some(_) => fibre != Fibre::Elastane && share > most && share.is_some() && most.is_some(),
            };
            if leads {
                (label.main, most) = (Some(fibre), share);
            }
        }
        label
    }

    /// Whether it is named.
    #[must_use]
    pub const fn has(self, fibre: Fibre) -> bool {
        self.named & Self::bit(fibre) != 0
    }

    /// The fibre there is most of: by the percentages, else the first that is named.
    #[must_use]
    pub const fn main(self) -> Option<Fibre> {
        self.main
    }

    /// Every fibre that is named.
    pub fn all(self) -> impl Iterator<Item = Fibre> {
        Fibre::ALL.into_iter().filter(move |fibre| self.has(*fibre))
    }

    const fn bit(fibre: Fibre) -> u16 {
        1 << fibre as u16
    }
}

/// What is known of a cloth, as washing and care take it.
///
/// ```
/// use tenter_core::making::care::{Described, Finish};
///
/// let said = Described { fibre: "cotton, waxed", ..Described::default() };
/// assert_eq!(said.finish(), Finish::Waxed);
/// assert_eq!(Described { finish: Some(Finish::Plain), ..said }.finish(), Finish::Plain, "what is said counts");
/// ```
#[derive(Clone, Copy, Debug, Default)]
pub struct Described<'a> {
    /// What it is made of, as on the label.
    pub fibre: &'a str,
    /// What it is called. Only words for kinds of cloth count in it, such as denim; a fibre in a name may be a fancy.
    pub name: &'a str,
    /// How it is made.
    pub construction: Construction,
    /// Its finish, where that was said.
    pub finish: Option<Finish>,
}

/// Words that mean a finish where none was said; the first that is found counts.
const FINISHES: [(Finish, &[&str]); 7] = [
    (Finish::Waxed, &["waxed", "oiled", "oilskin"]),
    (Finish::Fusible, &["fusible"]),
    (Finish::Membrane, &["membrane", "laminate", "laminated"]),
    (Finish::Coated, &["coated"]),
    (Finish::LeatherLike, &["leather", "leatherette", "suedette", "suede"]),
    (Finish::Pile, &["velvet", "velveteen", "velour", "corduroy", "fur", "plush", "pile"]),
    (Finish::Brushed, &["brushed", "flannel", "fleece", "napped"]),
];

impl Described<'_> {
    /// The fibres of its label.
    #[must_use]
    pub fn fibres(&self) -> Fibres {
        Fibres::of(self.fibre)
    }

    /// Whether its label or its name has a word, in any case.
    ///
    /// ```
    /// use tenter_core::making::care::Described;
    ///
    /// let cloth = Described { name: "Harbour Denim", fibre: "98 cotton 2 elastane", ..Described::default() };
    /// assert!(cloth.says("denim") && cloth.says("Cotton") && !cloth.says("den"));
    /// ```
    #[must_use]
    pub fn says(&self, word: &str) -> bool {
        let has = |text: &str| text.split(|c: char| !c.is_alphanumeric()).any(|one| one.eq_ignore_ascii_case(word));
        has(self.fibre) || has(self.name)
    }

    /// Its finish: what was said, else what its words mean.
    #[must_use]
    pub fn finish(&self) -> Finish {
        let told = |words: &[&str]| words.iter().any(|word| self.says(word));
        let by_words = || FINISHES.into_iter().find(|(_, words)| told(words)).map(|(finish, _)| finish);
        self.finish.or_else(by_words).unwrap_or(Finish::Plain)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::string::String;

    #[test]
    fn labels_as_people_write_them() {
        for (text, main) in [
            ("97 cotton 3 elastane", Some(Fibre::Cotton)),
            ("wool, polyester, a little elastane", Some(Fibre::Wool)),
            ("55% polyester/45% wool", Some(Fibre::Polyester)),
            ("45% wool/55% polyester", Some(Fibre::Polyester)),
            ("cotton 40 %, viscose 60 %", Some(Fibre::Viscose)),
            ("Spandex, nylon", Some(Fibre::Polyamide)),
            ("elastane", Some(Fibre::Elastane)),
            ("97.5 Merino", Some(Fibre::Wool)),
            ("unknown mill end", None),
            ("", None),
        ] {
            assert_eq!(Fibres::of(text).main(), main, "{text}");
        }
        assert!(Fibres::of("half wool half polyester").has(Fibre::Polyester));
        assert_eq!(Fibres::of("78 polyamide 22 elastane").all().count(), 2);
    }

    #[test]
    fn a_word_is_a_whole_word() {
        let said = |name| Described { name, ..Described::default() };
        assert!(said("Raw DENIM").says("denim"));
        assert!(!said("furniture").says("fur"));
        assert_eq!(said("Furnace canvas").finish(), Finish::Plain);
        assert_eq!(said("Gate velveteen").finish(), Finish::Pile);
    }

    proptest! {
        #[test]
        fn any_text_is_read(text: String) {
            let label = Fibres::of(&text);
            prop_assert_eq!(label.main().is_some(), label.all().next().is_some());
            prop_assert!(label.main().is_none_or(|main| label.has(main)));
        }
    }
}
