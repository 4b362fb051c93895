//! The flags of `fit`.

use clap::Args;

use super::reading::{ConfidenceArg, ShowArgs};
use super::size::ZipEnds;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter fit 'Choir trousers' A
      tenter fit choir a --role main --all
      tenter fit 'Play coat' - --json
      tenter fit choir a --sheet --use main=1 --seam 'main+waistband=76cm' --zip 65cm --elastic 'soft wrist 17cm'

For each role: the fabrics that meet it, the likeliest first; those too close to call, with what would settle them;
those that were not measured, with the pull that is missing; whether the length is enough, washing change included;
and what to look for where nothing fits. Fabrics that fall short come last. None is left out silently.
Exit code: 0 every role has a fabric that meets it and is long enough; 3 some role has only close or unknown ones;
1 some role has none; 2 a mistake in what was typed.";

/// The flags of `fit`, as typed.
#[derive(Args, Debug, Clone)]
pub struct FitArgs {
    /// The pattern
    pub pattern: String,
    /// The view; may be left out where there is only one
    pub view: Option<String>,
    /// Only this role; may be given more than once
    #[arg(long, value_name = "ROLE")]
    pub role: Vec<String>,
    /// List every fabric, however many
    #[arg(long)]
    pub all: bool,
    /// One sheet from cutting to finishing, with the best fabric for each role, or those of --use
    #[arg(long)]
    pub sheet: bool,
    /// What is on the sheet.
    #[command(flatten)]
    pub plan: PlanArgs,
    /// How sure an answer must be.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// What a plan sheet is made for, as typed.
#[derive(Args, Debug, Clone, Default, PartialEq, Eq)]
#[command(next_help_heading = "The plan sheet")]
pub struct PlanArgs {
    /// The fabric for a role of the sheet: main=1
    #[arg(long, value_name = "ROLE=TAG")]
    pub r#use: Vec<String>,
    /// A seam of the sheet between two roles: 'main+waistband=60cm' [default: main with each other role, 50 cm]
    #[arg(long, value_name = "ROLE+ROLE=LENGTH")]
    pub seam: Vec<String>,
    /// An edge of the sheet that a zip goes into: 31in
    #[arg(long, value_name = "LENGTH")]
    pub zip: Option<String>,
    /// Whether the zip parts at its lower end [default: open]
    #[arg(long, value_enum, requires = "zip")]
    pub zip_ends: Option<ZipEnds>,
    /// Elastic of the sheet: its kind, its place and what it is cut for, such as 'soft waist 76cm'
    #[arg(long, value_name = "KIND PLACE LENGTH")]
    pub elastic: Vec<String>,
    /// The garment is for a child
    #[arg(long)]
    pub child: bool,
    /// It has a cord or drawstring
    #[arg(long)]
    pub cord: bool,
    /// It is sleepwear
    #[arg(long)]
    pub sleepwear: bool,
    /// It fits tightly
    #[arg(long)]
    pub tight: bool,
    /// Print the numbers, the rule and its source under each line of the sheet
    #[arg(long)]
    pub why: bool,
}
