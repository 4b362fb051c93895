//! The flags of `pull`.

use clap::Args;

use super::people::ByArg;
use super::reading::{ConfidenceArg, ShowArgs, TableArg, TestArgs, WantsArgs};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  Step by step, with a clock for the hold and for the rest:
      tenter pull 7 --wants 5%

  The same words and options as check, stored under cloth 7; then both grains:
      tenter pull 7 20cm 21.3 21.2 21.3 20.2@60s 5% --settling
      tenter pull lawn across 25 26.5 26.6 26.5 along 25 25.4 25.4 25.3

  A test from a notebook, along the other grain:
      tenter pull 7 --grain lengthwise --marks 10cm --to 10.4cm \\
          --at '2025-03-20 14:30' --note 'before washing'

  Exclude a test that went wrong, by the letters that tenter cloth show 5 prints; count it again:
      tenter pull 5 --retire 52h6ze --note 'a pin slipped'
      tenter pull 5 --return 52h6ze

  Each person repeats differently, so name who pulled; or correct it later:
      tenter pull 5 10cm 10.4cm 10.5cm 10.4cm --by Anna
      tenter pull 5 --whose 52h6ze Ben

  You pulled it along another grain than you typed:
      tenter pull 5 --regrain 52h6ze lengthwise

Of several tests in one line all are stored, or none; --json prints an object for each.
Once tenter prints stored, the test is saved. If you stop halfway (Ctrl-C, a closed window, no power), no length you \
typed is lost: tenter pull 7 offers to go on.
If you pulled this grain before, the answer is that of all tests that count.
Exit code: 0 measured, or meets; 1 short or over; 3 close, unknown, broken off, or the tests disagree; 2 a mistake in \
what you typed.";

/// The flags of `pull`, as typed.
#[derive(Args, Debug, Clone)]
pub struct PullArgs {
    /// The number on the cloth, or its name
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// The readings; without them tenter asks for each step.
    #[command(flatten)]
    pub test: TestArgs,
    /// What is asked.
    #[command(flatten)]
    pub wants: WantsArgs,
    /// Who pulled.
    #[command(flatten)]
    pub by: ByArg,
    /// When you pulled it: 2025-03-20, '20 Mar 2025 14:30', yesterday [default: now]
    #[arg(long, value_name = "DAY")]
    pub at: Option<String>,
    /// A remark on this test, or why you exclude it
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
    /// Exclude a stored test, by the letters that cloth show prints
    #[arg(long, value_name = "TEST", conflicts_with_all = ["return_test", "resume", "discard", "lengths", "marks", "to", "back", "at", "wants"])]
    pub retire: Option<String>,
    /// Count an excluded test again
    #[arg(long = "return", value_name = "TEST", conflicts_with_all = ["resume", "discard", "lengths", "marks", "to", "back", "at", "wants", "note"])]
    pub return_test: Option<String>,
    /// Correct the grain of a stored test: its letters, then lengthwise, crosswise or bias
    #[arg(long, num_args = 2, value_names = ["TEST", "GRAIN"], conflicts_with_all = ["retire", "return_test", "resume", "discard", "lengths", "marks", "to", "back", "at", "wants", "note"])]
    pub regrain: Vec<String>,
    /// Correct who pulled a stored test: its letters, then the name
    #[arg(long, num_args = 2, value_names = ["TEST", "NAME"], conflicts_with_all = ["by", "regrain", "retire", "return_test", "resume", "discard", "lengths", "marks", "to", "back", "at", "wants", "note"])]
    pub whose: Vec<String>,
    /// Go on with an unfinished test without asking
    #[arg(long, conflicts_with_all = ["discard", "lengths", "marks", "to", "back"])]
    pub resume: bool,
    /// Delete an unfinished test
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
