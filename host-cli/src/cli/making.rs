//! The flags of `wash`, `pair`, `hang` and `handle`.

use clap::Args;
use tenter_core::Grain;
use tenter_core::making::garment::{GarmentKind, SeamKind};
use tenter_core::making::hanging::Specimen;
use tenter_core::making::stitch::Stitch;

use super::choice;
use super::reading::{AdviceArgs, ShopArg, ShowArgs};

/// Examples for the help of `wash`.
pub const WASH: &str = "\
Examples:
  Marks 50 cm apart before the wash, along and across; stored under cloth 7:
      tenter wash 7 --lengthwise '50cm to 48.5cm' \\
          --crosswise '50cm to 49.8cm' --note '40 °C, line'

  How much to buy for 2 m; nothing is stored:
      tenter wash --lengthwise '20cm to 19cm' --need 2m
      tenter wash 7 --need 2m

  The marks were a mistake; those before them count again:
      tenter wash 7 --undo

tenter divides the length you need by 1 less the shrinkage, at the largest shrinkage that the readings allow:
2 yd at 10 % are 2.22 yd, not 2.20. Then it rounds up to what shops cut, 10 cm or 1/8 yd.";

/// Examples for the help of `pair`.
pub const PAIR: &str = "\
Examples:
  Two panels of a coat, in a seam that runs down the body:
      tenter pair 1 3 76cm --seam panel

  Trousers and waistband; the second cloth is the piece that is set on:
      tenter pair 1 8 76cm --seam waistband

  A view that asks 5 % along the seam, a grain of your own for each side, and the source of each line:
      tenter pair 1 3 45cm --grain crosswise/lengthwise \\
          --wants 5% --stitch straight --why

The seam says how the grain of each side lies: side, panel and zip seams lengthwise, shoulder seams slanting, yoke and hem \
crosswise. Without --seam and --grain it is a side seam.
Exit code: 0 alike; 3 to handle, or too close to call; 1 band to body, unlike, or too firm for what the view asks; \
2 a mistake in what you typed.";

/// `wash`, as typed.
#[derive(Args, Debug, Clone)]
pub struct WashArgs {
    /// The cloth's tag, to store the marks with it; none to work it out only
    #[arg(value_name = "TAG")]
    pub fabric: Option<String>,
    /// Marks along the cloth before and after: '50cm to 48.5cm'
    #[arg(long, value_name = "BEFORE to AFTER")]
    pub lengthwise: Option<String>,
    /// Marks across the cloth before and after
    #[arg(long, value_name = "BEFORE to AFTER")]
    pub crosswise: Option<String>,
    /// Distance between two lines of the scale [default: 1mm, or 1/16in for inches]
    #[arg(long, value_name = "LENGTH")]
    pub division: Option<String>,
    /// A length that is needed after the wash
    #[arg(long, value_name = "LENGTH")]
    pub need: Option<String>,
    /// How shops cut cloth.
    #[command(flatten)]
    pub shop: ShopArg,
    /// How it was washed
    #[arg(long, value_name = "TEXT", default_value = "")]
    pub note: String,
    /// Take back the newest marks of a cloth, or those along one grain: they were a mistake
    #[arg(long, value_name = "GRAIN", value_parser = choice::GRAIN, num_args = 0..=1, requires = "fabric", conflicts_with_all = ["lengthwise", "crosswise", "need", "as_read"])]
    pub undo: Option<Option<Grain>>,
    /// Take the marks as they are, though tenter doubts them
    #[arg(long)]
    pub as_read: bool,
    /// How the advice is shown.
    #[command(flatten)]
    pub advice: AdviceArgs,
}

/// `pair`, as typed.
#[derive(Args, Debug, Clone)]
pub struct PairArgs {
    /// The tag of one cloth
    pub first: String,
    /// The tag of the other
    pub second: String,
    /// Length of the seam
    #[arg(value_name = "LENGTH", required_unless_present = "along", conflicts_with = "along")]
    pub length: Option<String>,
    /// Length of the seam
    #[arg(long, value_name = "LENGTH")]
    pub along: Option<String>,
    /// Which seam: it says how the grain lies and whether the second cloth is a band [default: side]
    #[arg(long, value_name = "NAME", value_parser = choice::SEAM)]
    pub seam: Option<SeamKind>,
    /// The grain along the seam, of both or of each: lengthwise, crosswise/lengthwise [default: that of the seam]
    #[arg(long, value_name = "GRAIN")]
    pub grain: Option<String>,
    /// The stretch that your view asks along the seam
    #[arg(long, value_name = "PERCENT")]
    pub wants: Option<String>,
    /// The stitch, if it is chosen
    #[arg(long, value_parser = choice::STITCH)]
    pub stitch: Option<Stitch>,
    /// How the advice is shown.
    #[command(flatten)]
    pub advice: AdviceArgs,
}

impl PairArgs {
    /// The length of the seam, as typed.
    #[must_use]
    pub fn along(&self) -> &str {
        self.along.as_deref().or(self.length.as_deref()).unwrap_or_default()
    }
}

/// Examples for the help of `hang`.
pub const HANG: &str = "\
Examples:
  The tensions of published tests, with numbers and years:
      tenter hang

  The weight to hang on a strip 2.5 cm wide for one of them, or for a tension of your own:
      tenter hang --width 2.5cm --method 'stretch woven, 3 lb'
      tenter hang --width 2.5cm --tension 3.5N

  The tension that a weight gives (a loop is two layers):
      tenter hang --width 5cm --piece loop --mass 1.2kg

A test at home is not the standard's test, and a hung mass can fall: read the cautions first.";

/// Examples for the help of `handle`.
pub const HANDLE: &str = "\
Examples:
  Needle, thread, stitch, finish, allowance, and the edges to stay:
      tenter handle 9
  For a view that wants 40 % of leggings, along the lengthwise grain:
      tenter handle 9 --wants 40% --kind leggings --grain lengthwise
  Over a lining, and with a facing that gives 5 %:
      tenter handle 9 --lining 12 --facing-gives 5% --why";

/// `hang`, as typed.
#[derive(Args, Debug, Clone)]
pub struct HangArgs {
    /// Width of the strip, or of the loop laid flat
    #[arg(long, value_name = "LENGTH")]
    pub width: Option<String>,
    /// One layer, or a loop, which is two
    #[arg(long, value_parser = choice::PIECE, default_value = Specimen::Strip.word())]
    pub piece: Specimen,
    /// Wanted tension: the force on each centimetre of width, such as 3.5N
    #[arg(long, value_name = "FORCE", conflicts_with_all = ["method", "mass"], requires = "width")]
    pub tension: Option<String>,
    /// Wanted tension: that of a published test, by the words of the list
    #[arg(long, value_name = "TEXT", conflicts_with = "mass", requires = "width")]
    pub method: Option<String>,
    /// The mass that hangs: 500g, 1.2kg, 3lb
    #[arg(long, value_name = "MASS", requires = "width")]
    pub mass: Option<String>,
    /// Print the numbers, the rule and its source under each line
    #[arg(long)]
    pub why: bool,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `handle`, as typed.
#[derive(Args, Debug, Clone)]
pub struct HandleArgs {
    /// The cloth's tag
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// The stretch that the view wants along its seams [default: what the cloth has along each]
    #[arg(long, value_name = "PERCENT")]
    pub wants: Option<String>,
    /// A lining, by its tag
    #[arg(long, value_name = "TAG")]
    pub lining: Option<String>,
    /// How far a fused facing or interfacing gives: 0% for one that does not
    #[arg(long, value_name = "PERCENT")]
    pub facing_gives: Option<String>,
    /// The grain along the seam [default: lengthwise and crosswise; crosswise for lining and facing]
    #[arg(long, value_parser = choice::GRAIN)]
    pub grain: Option<Grain>,
    /// The kind of garment
    #[arg(long, value_name = "GARMENT", value_parser = choice::GARMENT_KIND)]
    pub kind: Option<GarmentKind>,
    /// How the advice is shown.
    #[command(flatten)]
    pub advice: AdviceArgs,
}
