//! The flags of `size`.

use clap::Args;
use tenter_core::Grain;
use tenter_core::making::elastic::{Edging, Kind};
use tenter_core::making::garment::GarmentKind;
use tenter_core::making::zip::ZipEnds;

use super::choice;
use super::reading::AdviceArgs;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  Does a finished girth go round the body, and an opening over the head, in the cloth under tag 9?
      tenter size --cloth 9 --girth hip=104cm/101cm \\
          --girth waist=78cm/74cm --opening head=56cm/42cm

  The same with a stretch from a label; what would be needed:
      tenter size --stretch 20% --girth hip=104cm/101cm

  How much smaller can you cut it? 50 % stretch does not mean 50 % smaller:
      tenter size --stretch 50% --reduce 25%

  Elastic for a waist of 76 cm that must pass hips of 100 cm, with the elastic's own stretch measured, in a casing:
      tenter size --elastic soft --place waist --measure 76cm \\
          --widest 100cm --gives 80% --elastic-width 25mm

  A zip for the front of a jacket whose edge is cut 33 in, of which the neck takes 5/8 in and the hem 1 1/2 in:
      tenter size --kind unlined-jacket --zip 33in \\
          --zip-neck 5/8in --zip-hem '1 1/2in'

  A drawcord of 5 mm for a hem of 110 cm:
      tenter size --cord 110cm --cord-width 5mm

Exit code: 0 everything passes; 1 something does not; 3 too close to call; 2 a mistake in what you typed.";

/// `size`, as typed.
#[derive(Args, Debug, Clone)]
pub struct SizeArgs {
    /// The cloth whose measured stretch counts, by its tag
    #[arg(long = "cloth", value_name = "TAG", conflicts_with = "stretch")]
    pub fabric: Option<String>,
    /// The grain that goes round the body
    #[arg(long, value_parser = choice::GRAIN, default_value = Grain::Crosswise.word())]
    pub grain: Grain,
    /// A stretch that is taken as exact: 50%, or '4in to 6in'
    #[arg(long, value_name = "PERCENT")]
    pub stretch: Option<String>,
    /// A girth: its name, the body and the finished garment
    #[arg(long, value_name = "NAME=BODY/FINISHED")]
    pub girth: Vec<String>,
    /// An opening: what must pass through, its girth, and that of the finished opening
    #[arg(long, value_name = "NAME=BODY/OPENING")]
    pub opening: Vec<String>,
    /// How much smaller than the body it is to be cut
    #[arg(long, value_name = "PERCENT")]
    pub reduce: Option<String>,
    /// Elastic of this kind
    #[arg(long, value_parser = choice::ELASTIC, requires_all = ["place", "measure"])]
    pub elastic: Option<Kind>,
    /// Where the elastic goes
    #[arg(long, value_parser = choice::EDGING)]
    pub place: Option<Edging>,
    /// The body or edge that the elastic is cut for
    #[arg(long, value_name = "LENGTH")]
    pub measure: Option<String>,
    /// The widest part that the closed loop must pass
    #[arg(long, value_name = "LENGTH", requires = "elastic")]
    pub widest: Option<String>,
    /// The elastic's own stretch: 80%, or '20cm to 36cm'
    #[arg(long, value_name = "PERCENT", requires = "widest")]
    pub gives: Option<String>,
    /// The elastic's width, for its casing
    #[arg(long, value_name = "LENGTH")]
    pub elastic_width: Option<String>,
    /// The elastic is stitched through, not drawn in
    #[arg(long)]
    pub stitched: bool,
    /// The edge that a zip goes into: finished, or as cut with --zip-neck and --zip-hem
    #[arg(long, value_name = "LENGTH")]
    pub zip: Option<String>,
    /// What the neck or waist seam takes of that edge
    #[arg(long, value_name = "LENGTH", requires = "zip")]
    pub zip_neck: Option<String>,
    /// What the hem takes of that edge
    #[arg(long, value_name = "LENGTH", requires = "zip")]
    pub zip_hem: Option<String>,
    /// Whether the zip parts at its lower end [default: as the garment has it; else closed up to 24 in, open above]
    #[arg(long, value_parser = choice::ZIP_ENDS, requires = "zip")]
    pub zip_ends: Option<ZipEnds>,
    /// The edge that a drawcord draws in, laid open
    #[arg(long, value_name = "LENGTH", requires = "cord_width")]
    pub cord: Option<String>,
    /// The cord's own width
    #[arg(long, value_name = "LENGTH", requires = "cord")]
    pub cord_width: Option<String>,
    /// Tie the cord, and put no stops on it
    #[arg(long, requires = "cord")]
    pub cord_tied: bool,
    /// A child wears it
    #[arg(long)]
    pub child: bool,
    /// The kind of garment
    #[arg(long, value_name = "GARMENT", value_parser = choice::GARMENT_KIND)]
    pub kind: Option<GarmentKind>,
    /// How the advice is shown.
    #[command(flatten)]
    pub advice: AdviceArgs,
}
