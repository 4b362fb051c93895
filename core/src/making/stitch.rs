//! Stitches and how far each gives along the seam.

use crate::answer::source::Source;
use crate::number::ratio::Ratio;
use crate::number::words;

/// A stitch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Stitch {
    /// Straight lockstitch, 2 to 2.5 mm long.
    Straight,
    /// Zigzag of 0.5 to 1.5 mm width, up to 2.5 or 3 mm long.
    NarrowZigzag,
    /// Straight stitch sewn three times over, 2.5 mm long.
    Triple,
    /// Zigzag as wide as long or wider.
    WideZigzag,
    /// Overlock of four threads.
    Overlock,
}

words!(Stitch {
    Straight => "straight",
    NarrowZigzag => "narrow-zigzag",
    Triple => "triple",
    WideZigzag => "wide-zigzag",
    Overlock => "overlock",
});

impl Stitch {
    /// Where the give of each stitch comes from. No published formula for it was found.
    pub const GIVE_SOURCE: Source = Source::Derived(
        "each thread of a lockstitch is about 1.25 times its seam, so its slack allows 25 % at most, less for tension: \
         20 % here; from 50 % on overlock, triple or wide zigzag, so a narrow zigzag stands between",
    );

    /// How far it gives before a thread takes the load; none where that was more than any demand met with.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::stitch::Stitch};
    ///
    /// assert_eq!(Stitch::Straight.gives(), Ratio::new(20, 100));
    /// assert_eq!(Stitch::Overlock.gives(), None);
    /// ```
    #[must_use]
    pub const fn gives(self) -> Option<Ratio> {
        match self {
            Self::Straight => Ratio::new(20, 100),
            Self::NarrowZigzag => Ratio::new(50, 100),
            Self::Triple | Self::WideZigzag | Self::Overlock => None,
        }
    }

    /// Whether it gives as far as a seam is wanted to. What is wanted of a narrow zigzag stays under its figure: one
    /// of 1.5 by 2.5 mm broke in a pull-on waist (*Popped stitches and the knit stitch*, 2019).
    ///
    /// ```
    /// use tenter_core::{Ratio, making::stitch::Stitch};
    ///
    /// let half = Ratio::new(1, 2).unwrap();
    /// assert!(!Stitch::NarrowZigzag.allows(half) && Stitch::Triple.allows(half));
    /// ```
    #[must_use]
    pub fn allows(self, wanted: Ratio) -> bool {
        self.gives().is_none_or(|gives| if self == Self::Straight { wanted <= gives } else { wanted < gives })
    }

    /// The simplest stitch that gives as far as is wanted.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::stitch::Stitch};
    ///
    /// assert_eq!(Stitch::that_gives(Ratio::new(5, 100).unwrap()), Stitch::Straight);
    /// assert_eq!(Stitch::that_gives(Ratio::new(75, 100).unwrap()), Stitch::Triple);
    /// ```
    #[must_use]
    pub fn that_gives(wanted: Ratio) -> Self {
        Self::ALL.into_iter().find(|stitch| stitch.allows(wanted)).unwrap_or(Self::Overlock)
    }
}
