//! The flags of `wash` and `pair`.

use clap::{Args, ValueEnum};

use super::reading::{ConfidenceArg, GrainArg, ShowArgs};

/// Examples for the help of `wash`.
pub const WASH: &str = "\
Examples:
  Marks 50 cm apart before the wash, along and across; stored with the fabric that wears tag 7:
      tenter wash 7 --lengthwise '50cm to 48.5cm' --crosswise '50cm to 49.8cm' --note '40 °C, line'

  Only worked out: how much to buy for 2 m
      tenter wash --lengthwise '20cm to 19cm' --need 2m

To buy is need / (1 − s), with the largest change that the readings allow: 2 yd at 10 % are 2.22 yd, not 2.20.";

/// Examples for the help of `pair`.
pub const PAIR: &str = "\
Examples:
  Main and side panel in one seam of 60 cm, both along the crosswise grain:
      tenter pair 1 4 --along 60cm

  A crosswise edge on a lengthwise one, sewn with a straight stitch, and where each line comes from:
      tenter pair 1 4 --along 45cm --grain crosswise --second-grain lengthwise --stitch straight --why

Exit code: 0 alike; 3 to handle, too close to call, or not measured; 1 band to body; 2 a mistake in what was typed.";

/// `wash`, as typed.
#[derive(Args, Debug, Clone)]
pub struct WashArgs {
    /// The fabric's tag, to store the marks with it; none to work it out only
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
    /// How it was washed
    #[arg(long, value_name = "TEXT", default_value = "")]
    pub note: String,
    /// Print the numbers, the rule and its source under each line
    #[arg(long)]
    pub why: bool,
    /// How sure an answer must be.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `pair`, as typed.
#[derive(Args, Debug, Clone)]
pub struct PairArgs {
    /// The tag of one fabric
    pub first: String,
    /// The tag of the other
    pub second: String,
    /// Length of the seam
    #[arg(long, value_name = "LENGTH")]
    pub along: String,
    /// The grain of the first along the seam
    #[arg(long, value_enum, default_value_t = GrainArg::Crosswise)]
    pub grain: GrainArg,
    /// The grain of the second along the seam [default: that of the first]
    #[arg(long, value_enum)]
    pub second_grain: Option<GrainArg>,
    /// The stitch, if it is chosen
    #[arg(long, value_enum)]
    pub stitch: Option<StitchArg>,
    /// Print the numbers, the rule and its source under each line
    #[arg(long)]
    pub why: bool,
    /// How sure an answer must be.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// A stitch, as typed.
#[derive(ValueEnum, Debug, Clone, Copy, PartialEq, Eq)]
pub enum StitchArg {
    /// Lockstitch, straight
    Straight,
    /// Zigzag 0.5 to 1 mm wide
    NarrowZigzag,
    /// Straight triple stitch
    Triple,
    /// Zigzag 3 mm wide and more
    WideZigzag,
    /// Overlock
    Overlock,
}
