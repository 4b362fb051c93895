//! Stitches and how far each gives along the seam.

use crate::answer::source::Source;
use crate::number::ratio::Ratio;
use crate::number::words;

/// A stitch. The numbers are those of ISO 4915.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Stitch {
    /// Straight lockstitch, 301.
    Straight,
    /// Zigzag of 0.5 to 1 mm width, 2.5 or 3 mm long, 304.
    NarrowZigzag,
    /// Straight stitch sewn three times over, 2.5 mm long.
    Triple,
    /// Zigzag as wide as long or wider, 304.
    WideZigzag,
    /// Overlock of four threads, which joins and neatens, 514.
    Overlock,
    /// Two rows of straight stitch above, one thread in zigzag below.
    TwinNeedle,
    /// Coverstitch, 406.
    Coverstitch,
}

words!(Stitch {
    Straight => "straight",
    NarrowZigzag => "narrow-zigzag",
    Triple => "triple",
    WideZigzag => "wide-zigzag",
    Overlock => "overlock",
    TwinNeedle => "twin-needle",
    Coverstitch => "coverstitch",
});

impl Stitch {
    /// Where the give of each stitch comes from. No published formula for it was found.
    pub const GIVE_SOURCE: Source = Source::Derived(
        "each thread of a lockstitch is about 1.25 times its seam, so its slack allows 25 % at most, less for tension: \
         20 % here; a zigzag adds √(width² + length²) / length − 1 where the cloth is free to narrow; the other figures \
         are the middle of what is quoted from memory",
    );

    /// The simplest first, as [`that_gives`](Self::that_gives) tries them.
    const LADDER: [Self; 4] = [Self::Straight, Self::NarrowZigzag, Self::WideZigzag, Self::Overlock];

    /// How far it gives before a thread takes the load; none for an overlock and a coverstitch, which follow any cloth
    /// that was met with, though a sample must show it.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::stitch::Stitch};
    ///
    /// assert_eq!(Stitch::Straight.gives(), Ratio::new(20, 100));
    /// assert_eq!(Stitch::Overlock.gives(), None);
    /// ```
    #[must_use]
    pub fn gives(self) -> Option<Ratio> {
        match self {
            Self::Straight => Ratio::new(20, 100),
            Self::NarrowZigzag => Some(zigzag_gives(10, 25)),
            Self::TwinNeedle => Ratio::new(30, 100),
            Self::Triple => Ratio::new(45, 100),
            Self::WideZigzag => Some(zigzag_gives(30, 15)),
            Self::Overlock | Self::Coverstitch => None,
        }
    }

    /// Whether it gives as far as a seam is wanted to.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::stitch::Stitch};
    ///
    /// let half = Ratio::new(1, 2).unwrap();
    /// assert!(!Stitch::NarrowZigzag.allows(half) && Stitch::WideZigzag.allows(half));
    /// ```
    #[must_use]
    pub fn allows(self, wanted: Ratio) -> bool {
        self.gives().is_none_or(|gives| wanted <= gives)
    }

    /// The simplest stitch that gives as far as is wanted.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::stitch::Stitch};
    ///
    /// assert_eq!(Stitch::that_gives(Ratio::new(5, 100).unwrap()), Stitch::Straight);
    /// assert_eq!(Stitch::that_gives(Ratio::new(75, 100).unwrap()), Stitch::WideZigzag);
    /// ```
    #[must_use]
    pub fn that_gives(wanted: Ratio) -> Self {
        Self::LADDER.into_iter().find(|stitch| stitch.allows(wanted)).unwrap_or(Self::Overlock)
    }
}

/// How far a zigzag gives, its width and length in tenths of a millimetre: the 20 % of a lockstitch and what its threads
/// gain by lying straight, √(w² + l²) / l − 1, rounded down to 1 ‰. Geometry only: the cloth must be free to narrow. One of
/// 1.5 by 2.5 mm, 36 % by this rule, broke in a pull-on waist that was asked for more.
///
/// ```
/// use tenter_core::{Ratio, making::stitch::zigzag_gives};
///
/// assert_eq!(zigzag_gives(20, 20).percent(0).to_string(), "61");
/// ```
#[must_use]
pub fn zigzag_gives(width: u8, length: u8) -> Ratio {
    const SLACK: i64 = 200;
    let (width, length) = (u64::from(width), u64::from(length.max(1)));
    let thread = (1_000_000 * (width * width + length * length)).isqrt();
    let per_mille = i64::try_from(thread / length).unwrap_or(1000) - 1000;
    Ratio::new(per_mille + SLACK, 1000).unwrap_or(Ratio::ZERO)
}
