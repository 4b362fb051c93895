//! The flags of `fit`.

use clap::Args;
use clap::builder::{PossibleValuesParser, TypedValueParser};
use tenter_core::making::garment::{Detail, GarmentKind};
use tenter_core::making::zip::ZipEnds;

use super::choice;
use super::reading::{ConfidenceArg, ShowArgs};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter fit 'Choir trousers' A
      tenter fit choir a --role main --all
      tenter fit 'Play coat' --json
      tenter fit choir a --sheet --use main=1 \\
          --seam 'main+waistband=76cm' --zip 18cm

Each role lists every cloth: first those that meet it, then those too close to call, with the way to settle it, then \
those not measured, with the pull that is missing. Cloths that are short or over come last. Each line says whether the \
length is enough, shrinkage included. Where nothing fits, tenter says what to look for.
Exit code: 0 every role has a cloth that meets it and is long enough; 3 some role has only close or unknown ones; \
1 some role has none; 2 a mistake in what you typed.";

/// The flags of `fit`, as typed.
#[derive(Args, Debug, Clone)]
pub struct FitArgs {
    /// The pattern
    pub pattern: String,
    /// The view [default: the only one]
    pub view: Option<String>,
    /// Only this role; may be given more than once
    #[arg(long, value_name = "ROLE")]
    pub role: Vec<String>,
    /// List every cloth, however many
    #[arg(long)]
    pub all: bool,
    /// One sheet from cutting to finishing, with the best cloth for each role, or those of --use
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
    /// The cloth for a role of the sheet: main=1
    #[arg(long, value_name = "ROLE=TAG")]
    pub r#use: Vec<String>,
    /// What the garment is [default: the kind of the view]
    #[arg(long, value_name = "GARMENT", value_parser = choice::GARMENT_KIND)]
    pub kind: Option<GarmentKind>,
    /// What it has beyond the usual: hood,welt-pockets
    #[arg(long, value_name = "DETAIL", value_delimiter = ',', value_parser = detail())]
    pub with: Vec<Detail>,
    /// What it does not have, of the usual: collar
    #[arg(long, value_name = "DETAIL", value_delimiter = ',', value_parser = detail())]
    pub without: Vec<Detail>,
    /// The length of a seam between two roles, and its grain if that is not the usual one: 'main+waistband=60cm',
    /// 'main+panel=60cm lengthwise' [default: 50 cm]
    #[arg(long, value_name = "ROLE+ROLE=LENGTH")]
    pub seam: Vec<String>,
    /// An edge for a zip: 18cm, 31in
    #[arg(long, value_name = "LENGTH")]
    pub zip: Option<String>,
    /// Whether the zip parts at its lower end [default: as the garment has it, else open]
    #[arg(long, value_parser = choice::ZIP_ENDS, requires = "zip")]
    pub zip_ends: Option<ZipEnds>,
    /// Elastic: its kind, its place and the body measure, such as 'soft waist 76cm'
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

/// A detail of a garment, by its word.
fn detail() -> impl TypedValueParser<Value = Detail> {
    PossibleValuesParser::new(Detail::ALL.map(Detail::word)).try_map(|word| Detail::from_word(&word).ok_or("unknown"))
}
