//! What finish and fibre ask for in washing, drying, pressing and pinning.

use super::{Described, Fibre, Finish};
use crate::answer::source::Source;
use crate::making::washing::Prewash;
use crate::number::words;

/// How a cloth is made ready before it is cut, the gentlest last.
///
/// ```
/// use tenter_core::making::care::Before;
///
/// assert!(Before::Soak > Before::Wash { times: 2 });
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Before {
    /// Wash and dry it so many times as the garment will be.
    Wash {
        /// How many times.
        times: u8,
    },
    /// The same, inside out: the surface is brushed or has a pile.
    WashInsideOut {
        /// How many times.
        times: u8,
    },
    /// Wash it at 30 °C on a mild cycle with liquid soap and no softener, and rinse it well.
    Mild,
    /// Wash it by hand in cool water, without wringing.
    Hand,
    /// Roll it in a wet cloth for a day, dry it and press it damp.
    DampRoll,
    /// Soak it in warm water and hang it to dry.
    Soak,
    /// Steam it from behind.
    Steam,
    /// Sponge it with cold water.
    Sponge,
    /// Wipe it.
    Wipe,
}

impl Before {
    /// Whether water goes through the cloth, so that it shrinks before it is cut.
    #[must_use]
    pub const fn wets(self) -> bool {
        !matches!(self, Self::Steam | Self::Sponge | Self::Wipe)
    }
}

/// How hot a sole plate may be, after the dots of the iron on a label, the coolest last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Dots {
    /// Three dots: 200 °C at most.
    Three,
    /// Two dots: 150 °C at most.
    Two,
    /// One dot: 110 °C at most.
    One,
    /// The iron crossed out: no iron and no steam.
    Never,
}

words!(Dots { Three => "three-dots", Two => "two-dots", One => "one-dot", Never => "no-iron" });

impl Dots {
    /// Where the temperatures come from.
    pub const SOURCE: Source = Source::Published("ISO 3758, read in a second-hand account");

    /// The highest temperature of the sole plate, in degrees Celsius; none where there must be no iron.
    #[must_use]
    pub const fn celsius(self) -> Option<u8> {
        match self {
            Self::Three => Some(200),
            Self::Two => Some(150),
            Self::One => Some(110),
            Self::Never => None,
        }
    }
}

/// How much steam, the least last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Steam {
    /// As much as is wanted.
    Free,
    /// A little.
    Light,
    /// From behind only.
    FromBehind,
    /// None.
    No,
}

words!(Steam { Free => "free", Light => "light", FromBehind => "from-behind", No => "no" });

/// How to press, the gentlest last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Press {
    /// As usual.
    Usual,
    /// Under a damp cloth, lifting and lowering the iron.
    DampCloth,
    /// On the wrong side.
    WrongSide,
    /// On the wrong side under a dry cloth.
    UnderCloth,
    /// Set the iron down for 10 to 15 s to fuse it, do not slide, and let it cool; never before.
    OnlyToFuse,
    /// Without crushing the surface: never flat under the iron.
    NotFlat,
    /// Face down on a needle board or on a piece of the same cloth, with no sole plate on the pile.
    NeedleBoard,
    /// With the fingers or a wooden block.
    NoIron,
}

words!(Press {
    Usual => "usual",
    DampCloth => "damp-cloth",
    WrongSide => "wrong-side",
    UnderCloth => "under-cloth",
    OnlyToFuse => "only-to-fuse",
    NotFlat => "not-flat",
    NeedleBoard => "needle-board",
    NoIron => "no-iron",
});

/// Where pins may go, the fewest places last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Pins {
    /// Anywhere.
    Usual,
    /// Fine ones only.
    Fine,
    /// Within the seam allowance.
    InAllowance,
    /// Nowhere: holes stay. Clips and weights hold it.
    Never,
}

words!(Pins { Usual => "usual", Fine => "fine", InAllowance => "in-allowance", Never => "never" });

/// What decided.
///
/// ```
/// use tenter_core::making::care::{Because, Finish};
///
/// assert_ne!(Because::Finish(Finish::Waxed), Because::Nothing);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Because {
    /// Its finish.
    Finish(Finish),
    /// A fibre in it.
    Fibre(Fibre),
    /// How it is made, and words such as denim.
    Kind,
    /// Nothing speaks against it.
    Nothing,
}

/// What to do, what decided it and where that comes from.
///
/// ```
/// use tenter_core::making::care::{Because, Care, Described, Finish, Pins};
///
/// let waxed = Described { fibre: "cotton", finish: Some(Finish::Waxed), ..Described::default() };
/// let told = Care::of(&waxed).pins;
/// assert_eq!((told.rule, told.because), (Pins::Never, Because::Finish(Finish::Waxed)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Told<T> {
    /// What to do.
    pub rule: T,
    /// What decided.
    pub because: Because,
    /// Where it comes from.
    pub source: Source,
}

impl<T: Ord> Told<T> {
    /// The gentler of the two; this one where they are alike.
    fn or(self, rule: T, because: Because, source: Source) -> Self {
        if rule > self.rule { Self { rule, because, source } } else { self }
    }
}

/// How to treat a cloth: the gentlest that its finish or any of its fibres asks for.
///
/// ```
/// use tenter_core::making::care::{Before, Care, Described, Dots, Pins};
///
/// let waxed = Care::of(&Described { fibre: "cotton, waxed", ..Described::default() });
/// assert_eq!((waxed.before.rule, waxed.iron.rule, waxed.pins.rule), (Before::Sponge, Dots::Never, Pins::Never));
/// assert!(waxed.no_tumbling.is_some());
/// let linen = Care::of(&Described { fibre: "linen", ..Described::default() });
/// assert_eq!((linen.before.rule, linen.iron.rule), (Before::Wash { times: 1 }, Dots::Three));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Care {
    /// How it is made ready before it is cut.
    pub before: Told<Before>,
    /// That it must not be tumble-dried, where that is so.
    pub no_tumbling: Option<Told<()>>,
    /// How hot the iron may be.
    pub iron: Told<Dots>,
    /// How much steam.
    pub steam: Told<Steam>,
    /// How to press.
    pub press: Told<Press>,
    /// Where pins may go.
    pub pins: Told<Pins>,
    /// Whether acetone dissolves it.
    pub no_acetone: bool,
}

const CONOVER: Source = Source::Published("Conover, Complete Course in Dressmaking, vol. 1, public domain");
const ZIP_LEAFLET: Source = Source::Published("University of Kentucky, leaflet CT-MMB.174");
const PRACTICE: Source = Source::CommonPractice;

impl Care {
    /// How to treat what is described.
    #[must_use]
    pub fn of(cloth: &Described<'_>) -> Self {
        let Prewash { washes: times, source } = Prewash::of(Prewash::cloth(cloth));
        let nothing = |source| (Because::Nothing, source);
        let (because, practice) = nothing(PRACTICE);
        let mut care = Self {
            before: Told { rule: Before::Wash { times }, because: Because::Kind, source },
            no_tumbling: None,
            iron: hottest(cloth),
            steam: Told { rule: Steam::Free, because, source: practice },
            press: Told { rule: Press::Usual, because, source: practice },
            pins: Told { rule: Pins::Usual, because, source: practice },
            no_acetone: cloth.fibres().has(Fibre::Acetate),
        };
        care.finish(cloth, times);
        for fibre in cloth.fibres().all() {
            care.fibre(fibre);
        }
        care
    }

    fn no_tumbling(&mut self, because: Because, source: Source) {
        self.no_tumbling = self.no_tumbling.or(Some(Told { rule: (), because, source }));
    }

    fn asks(&mut self, because: Because, before: (Before, Source), press: (Dots, Steam, Press, Source)) {
        let (dots, steam, how, source) = press;
        self.before = self.before.or(before.0, because, before.1);
        self.iron = self.iron.or(dots, because, source);
        self.steam = self.steam.or(steam, because, source);
        self.press = self.press.or(how, because, source);
    }

    fn finish(&mut self, cloth: &Described<'_>, times: u8) {
        let finish = cloth.finish();
        let because = Because::Finish(finish);
        let pins = |care: &mut Self, pins, source| care.pins = care.pins.or(pins, because, source);
        match finish {
            Finish::Plain => {}
            Finish::Brushed => {
                let inside_out = (Before::WashInsideOut { times }, PRACTICE);
                self.asks(because, inside_out, (Dots::Three, Steam::Light, Press::NotFlat, PRACTICE));
                if cloth.says("fleece") {
                    self.iron = self.iron.or(Dots::One, because, PRACTICE);
                }
            }
            Finish::Coated => {
                self.asks(because, (Before::Mild, PRACTICE), (Dots::One, Steam::No, Press::UnderCloth, PRACTICE));
                self.no_tumbling(because, PRACTICE);
                pins(self, Pins::InAllowance, PRACTICE);
            }
            Finish::Membrane => {
                self.asks(because, (Before::Mild, PRACTICE), (Dots::One, Steam::No, Press::UnderCloth, PRACTICE));
                pins(self, Pins::Never, PRACTICE);
            }
            Finish::Waxed => {
                self.asks(because, (Before::Sponge, PRACTICE), (Dots::Never, Steam::No, Press::NoIron, PRACTICE));
                self.no_tumbling(because, PRACTICE);
                pins(self, Pins::Never, PRACTICE);
            }
            Finish::Pile => {
                // Velveteen and corduroy are cotton and can be washed; velvet of other fibres cannot.
                let is_cotton = cloth.fibres().main() == Some(Fibre::Cotton);
                let before = if is_cotton { Before::WashInsideOut { times } } else { Before::Steam };
                let press = (Dots::Three, Steam::FromBehind, Press::NeedleBoard, PRACTICE);
                self.asks(because, (before, PRACTICE), press);
                pins(self, Pins::InAllowance, ZIP_LEAFLET);
            }
            Finish::Fusible => {
                self.asks(because, (Before::Soak, PRACTICE), (Dots::Two, Steam::Free, Press::OnlyToFuse, PRACTICE));
                self.no_tumbling(because, PRACTICE);
            }
            Finish::LeatherLike => {
                self.asks(because, (Before::Wipe, PRACTICE), (Dots::One, Steam::No, Press::UnderCloth, PRACTICE));
                self.no_tumbling(because, PRACTICE);
                pins(self, Pins::Never, PRACTICE);
            }
        }
    }

    fn fibre(&mut self, fibre: Fibre) {
        let because = Because::Fibre(fibre);
        match fibre {
            Fibre::Wool => {
                let press = (Dots::Two, Steam::Free, Press::DampCloth, CONOVER);
                self.asks(because, (Before::DampRoll, CONOVER), press);
                self.no_tumbling(because, PRACTICE);
            }
            Fibre::Silk => {
                self.asks(because, (Before::Hand, PRACTICE), (Dots::One, Steam::Light, Press::WrongSide, CONOVER));
                self.pins = self.pins.or(Pins::Fine, because, PRACTICE);
                self.no_tumbling(because, PRACTICE);
            }
            Fibre::Acetate => {
                self.asks(because, (Before::Hand, PRACTICE), (Dots::One, Steam::No, Press::WrongSide, PRACTICE));
                self.pins = self.pins.or(Pins::Fine, because, PRACTICE);
                self.no_tumbling(because, PRACTICE);
            }
            _ => {}
        }
    }
}

/// How hot the iron may be for every fibre that is named; where none is known, begin at one dot. Heat takes the spring
/// out of elastane, so a blend with it gets two dots at most.
fn hottest(cloth: &Described<'_>) -> Told<Dots> {
    let alone = cloth.fibres().all().all(|fibre| fibre == Fibre::Elastane);
    let told = cloth.fibres().all().map(|fibre| {
        let (rule, source) = match fibre {
            Fibre::Cotton | Fibre::Linen => (Dots::Three, PRACTICE),
            Fibre::Viscose | Fibre::Wool | Fibre::Polyester => (Dots::Two, PRACTICE),
            Fibre::Elastane if !alone => (Dots::Two, PRACTICE),
            Fibre::Silk | Fibre::Acetate | Fibre::Polyamide | Fibre::Acrylic | Fibre::Elastane => (Dots::One, PRACTICE),
        };
        Told { rule, because: Because::Fibre(fibre), source }
    });
    told.max_by_key(|told| told.rule).unwrap_or(Told {
        rule: Dots::One,
        because: Because::Nothing,
        source: Source::Own,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn care(fibre: &str, finish: Option<Finish>) -> Care {
        Care::of(&Described { fibre, finish, ..Described::default() })
    }

    #[test]
    fn the_gentlest_that_anything_asks_for_counts() {
        let blend = care("55 polyester 45 wool", None);
        assert_eq!((blend.before.rule, blend.iron.rule), (Before::DampRoll, Dots::Two));
        let brushed = care("wool, polyamide", Some(Finish::Brushed));
        assert_eq!((brushed.before.rule, brushed.press.rule), (Before::DampRoll, Press::NotFlat));
        assert_eq!(brushed.iron.because, Because::Fibre(Fibre::Polyamide));
        assert_eq!(care("silk", Some(Finish::Pile)).before.rule, Before::Steam);
        assert_eq!(care("97 cotton 3 elastane", None).iron.rule, Dots::Two);
        assert_eq!(care("78 polyamide 22 elastane", None).iron.because, Because::Fibre(Fibre::Polyamide));
        assert_eq!(care("cotton", Some(Finish::Pile)).before.rule, Before::WashInsideOut { times: 2 });
    }

    #[test]
    fn what_is_not_known_is_begun_cool() {
        let unknown = care("", None);
        assert_eq!((unknown.iron.rule, unknown.before.rule), (Dots::One, Before::Wash { times: 1 }));
        assert_eq!(unknown.no_tumbling, None);
    }

    #[test]
    fn what_is_not_wetted_cannot_shrink_before_it_is_cut() {
        let wets = |finish| care("polyester", Some(finish)).before.rule.wets();
        assert_eq!(Finish::ALL.into_iter().filter(|finish| !wets(*finish)).count(), 3, "waxed, pile, leather-like");
    }
}
