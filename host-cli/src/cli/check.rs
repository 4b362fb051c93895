//! The flags of `check`.

use clap::Args;
use tenter_core::Construction;

use super::choice;
use super::reading::{ConfidenceArg, ShowArgs, TableArg, TestArgs, WantsArgs};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  In one breath: the marks, then each pull, in centimetres:
      tenter check 25 26.5 26.6 26.5 25.2@1m 5%

  Marks 10 cm apart, pulled to 10.5 cm; does it give 5 %?
      tenter check --marks 10cm --to 10.5cm --wants 5%

  Three pulls after a settling pull, read a minute after letting go:
      tenter check --marks 250mm --settling --to 265mm --to 266mm \\
          --to 265mm --back 252mm@60s --wants 5%

  Not less than 20 % and not more than 30 %, and hardly any growth:
      tenter check --marks 10cm --to 12.4cm --to 12.5cm \\
          --back 10.2cm@1min --wants 20%..30% --growth-at-most 3%

  Against the gauge printed on a pattern envelope, on an inch tape:
      tenter check --marks 4in --to '5 1/2in' --wants '4in to 5 3/8in'

  A reading after each pull belongs to the pull before it:
      tenter check --marks 200mm --to 230mm --back 204mm@30min \\
          --to 231mm --back 205mm@30min

  With your own repeatability on knits, from the tests stored so far:
      tenter check --construction knit --marks 10cm --to 12.4cm \\
          --to 12.5cm --wants 20%

The answer is meets, short, over or close (too close to call), with its chance.
Exit code: 0 measured, or meets; 1 short or over; 3 close or unknown; 2 a mistake in what you typed.";

/// The flags of `check`, as typed.
#[derive(Args, Debug, Clone)]
pub struct CheckArgs {
    /// The readings.
    #[command(flatten)]
    pub test: TestArgs,
    /// What is asked.
    #[command(flatten)]
    pub wants: WantsArgs,
    /// How much your pulls differ, as a standard deviation in points; 0 counts the scale alone [default: from open data]
    #[arg(long, value_name = "POINTS")]
    pub scatter: Option<String>,
    /// Woven, knit or other: uses your own repeatability, as far as the log knows it [default: assumed]
    #[arg(long, value_parser = choice::CONSTRUCTION, conflicts_with = "scatter")]
    pub construction: Option<Construction>,
    /// The table of stretch classes.
    #[command(flatten)]
    pub table: TableArg,
    /// How sure an answer must be.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}
