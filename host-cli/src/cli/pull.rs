//! The flags of `pull`.

use clap::Args;

use super::reading::{ConfidenceArg, ShowArgs, TableArg, TestArgs, WantsArgs};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  One hand on the cloth: asked step by step, with a clock for the hold and for the rest
      tenter pull 7 --wants 5%

  The same readings as check takes, stored with the fabric that wears tag 7:
      tenter pull 7 --marks 20cm --settling --to 21.3cm --to 21.2cm --to 21.3cm --back 20.2cm@60s --wants 5%

  A test from a notebook, along the other grain:
      tenter pull 7 --grain lengthwise --marks 10cm --to 10.4cm --at '2025-03-20 14:30' --note 'before washing'

  A test that went wrong no longer counts; it stays in the history:
      tenter pull 7 --retire 3kx9d2 --note 'a pin slipped'
      tenter pull 7 --return 3kx9d2

What is said to be stored is stored. A test that was broken off (Ctrl-C, a closed window, no power) keeps every length
that was typed: tenter pull 7 offers to go on with it.
Exit code: 0 measured, or meets; 1 short or over; 3 close, unknown or broken off; 2 a mistake in what was typed.";

/// The flags of `pull`, as typed.
#[derive(Args, Debug, Clone)]
pub struct PullArgs {
    /// The fabric's tag, or its identifier
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// The readings; without them every step is asked.
    #[command(flatten)]
    pub test: TestArgs,
    /// What is asked.
    #[command(flatten)]
    pub wants: WantsArgs,
    /// When it was pulled: 2025-03-20, '2025-03-20 14:30' [default: now]
    #[arg(long, value_name = "DAY")]
    pub at: Option<String>,
    /// Anything worth knowing about this test, or why it is retired
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
    /// Take a stored test out of account: the letters that cloth show prints
    #[arg(long, value_name = "TEST", conflicts_with_all = ["return_test", "resume", "discard", "lengths", "marks", "to", "back", "at", "wants"])]
    pub retire: Option<String>,
    /// Count a retired test again
    #[arg(long = "return", value_name = "TEST", conflicts_with_all = ["resume", "discard", "lengths", "marks", "to", "back", "at", "wants", "note"])]
    pub return_test: Option<String>,
    /// Go on with a test that was broken off, unasked
    #[arg(long, conflicts_with_all = ["discard", "lengths", "marks", "to", "back"])]
    pub resume: bool,
    /// Forget a test that was broken off
    #[arg(long, conflicts_with_all = ["lengths", "marks", "to", "back", "wants", "at", "note"])]
    pub discard: bool,
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
