//! The flags of `cloth`.

use clap::{Args, Subcommand, ValueEnum};
use tenter_core::{Construction, Grain};

use super::choice;
use super::log::TagsArg;
use super::reading::{ConfidenceArg, ShowArgs, TableArg};
use super::remember::{self, ClothPictureArgs, LearnedArgs};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter cloth add 'Aisle gabardine' woven 2.4m of 148cm
      tenter cloth list
      tenter cloth show 5

Nothing is deleted. A retired cloth comes back with tenter cloth return, and every cut stays on record.";

/// Examples for the help of `cloth add`.
pub const ADD: &str = "\
Examples:
  A length at home; tenter gives it a number to pin to the cloth:
      tenter cloth add 'Aisle gabardine' --fibre '97 cotton 3 elastane' --construction woven \\
          --width 148cm --length 2.4m --mass '230 g/m2' --place 'blue crate'

  The same in a few words, with its tests, one for each grain that you name:
      tenter cloth add 'Nave twill' woven 2.4m of 148cm 230gsm \\
          across 25 26.5 26.6 26.5 25.2@1m along 25 25.4 25.4 25.3

  A bolt seen in a shop:
      tenter cloth add 'Foyer rib' knit 150cm wide \\
          --seen 'the Saturday market' --price 11.50/m

  The first cloth of a second desk, whose log will be joined with yours:
      tenter cloth add 'Loft calico' woven --tags 200-299";

/// Examples for the help of `cloth list`.
pub const LIST: &str = "\
Examples:
      tenter cloth list
      tenter cloth list jersey
      tenter cloth list --owned --construction woven --at-least 2m
      tenter cloth list --stretch 5%..15%";

/// Examples for the help of `cloth show`.
pub const SHOW: &str = "\
Examples:
      tenter cloth show 5
      tenter cloth show sateen --units in";

/// Examples for the help of `cloth edit`.
pub const EDIT: &str = "\
Examples:
  You bought the cloth that you saw in the shop:
      tenter cloth edit 6 --bought 2.3m

  You did not buy it after all; its tests stay:
      tenter cloth edit 6 --bought no

  You put it elsewhere, and washed it; marks that you stored with tenter wash
  shorten the length on hand:
      tenter cloth edit 7 --place 'top shelf' --washed yes";

/// Examples for the help of `cloth cut`.
pub const CUT: &str = "\
Examples:
      tenter cloth cut 4 80cm --note 'waistbands'

  It was 70 cm, or it was never cut:
      tenter cloth cut 4 70cm --instead
      tenter cloth cut 4 --undo";

/// Examples for the help of `cloth retire`.
pub const RETIRE: &str = "\
Examples:
      tenter cloth retire 11 --note 'given away'
      tenter cloth list --retired";

/// Examples for the help of `cloth return`.
pub const RETURN: &str = "\
Examples:
      tenter cloth return 16";

/// What to do with the stash.
#[derive(Subcommand, Debug, Clone)]
pub enum ClothVerb {
    /// Add a length at home, or a bolt seen in a shop
    #[command(after_help = ADD)]
    Add(AddClothArgs),
    /// List the cloths
    #[command(after_help = LIST)]
    List(ListClothsArgs),
    /// Show one cloth: its stretch, its tests and its history
    #[command(after_help = SHOW)]
    Show(ShowFabricArgs),
    /// Change what is stored about a cloth
    #[command(after_help = EDIT)]
    Edit(EditClothArgs),
    /// Record that you cut a length off
    #[command(after_help = CUT)]
    Cut(CutArgs),
    /// Keep photographs with a cloth
    #[command(after_help = remember::PICTURE)]
    Picture(Box<ClothPictureArgs>),
    /// Remember what worked on a cloth, and how it wore
    #[command(after_help = remember::LEARNED)]
    Learned(Box<LearnedArgs>),
    /// Take a cloth off the list; its tests and history stay
    #[command(after_help = RETIRE)]
    Retire(RetireArgs),
    /// Put a retired cloth back on the list
    #[command(after_help = RETURN)]
    Return(ReturnArgs),
    /// Give cloths that share a tag new ones, after two logs were joined
    #[command(after_help = RENUMBER)]
    Renumber(RenumberArgs),
}

/// Examples for the help of `cloth renumber`.
pub const RENUMBER: &str = "\
Examples:
  After an import two cloths have tag 7; you call them 7a and 7b until then:
      tenter demo other.sqlite3
      tenter --db other.sqlite3 cloth add 'Pantry crash'
      tenter cloth add 'Scullery huck'
      tenter --db other.sqlite3 export - | tenter import -
      tenter cloth renumber

The first of them keeps the tag. tenter lists the labels to write anew.";

/// `cloth renumber`, as typed.
#[derive(Args, Debug, Clone)]
pub struct RenumberArgs {
    /// Only this cloth: its tag with the letter [default: all but the first of each tag]
    #[arg(value_name = "TAG")]
    pub fabric: Option<String>,
    /// Print one JSON array instead of text
    #[arg(long)]
    pub json: bool,
}

/// What is said about a cloth, as typed.
#[derive(Args, Debug, Clone, Default)]
pub struct FabricFlags {
    /// What it is made of, as on the label
    #[arg(long, value_name = "TEXT")]
    pub fibre: Option<String>,
    /// How it is made
    #[arg(long, value_parser = choice::CONSTRUCTION)]
    pub construction: Option<Construction>,
    /// Usable width: 148cm, 58in, or unknown
    #[arg(long, value_name = "LENGTH")]
    pub width: Option<String>,
    /// Length on hand: 2.4m, 3yd, or unknown
    #[arg(long, value_name = "LENGTH")]
    pub length: Option<String>,
    /// Mass per area: '180 g/m2', '5.3 oz/yd2', or unknown
    #[arg(long, value_name = "MASS")]
    pub mass: Option<String>,
    /// What was done to its surface: plain, brushed, coated, membrane, waxed, pile, fusible, leather-like, or unknown
    #[arg(long, value_name = "WORD")]
    pub finish: Option<String>,
    /// How it falls: fluid, soft, crisp, stiff, or unknown
    #[arg(long, value_name = "WORD")]
    pub drape: Option<String>,
    /// What it is made for: outer, lining, interfacing, rib, pocketing, or unknown
    #[arg(long, value_name = "WORD")]
    pub purpose: Option<String>,
    /// Whether all pieces must lie one way up, as with a nap or a print that has a top
    #[arg(long, value_enum)]
    pub one_way: Option<YesNo>,
    /// Its colour
    #[arg(long, value_name = "TEXT")]
    pub colour: Option<String>,
    /// Where it lies
    #[arg(long, value_name = "TEXT")]
    pub place: Option<String>,
    /// Anything else
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
    /// You only saw it, in this shop or market
    #[arg(long, value_name = "SHOP")]
    pub seen: Option<String>,
    /// Price per length where it was seen: 12.50/m, '9 EUR/yd'
    #[arg(long, value_name = "PRICE")]
    pub price: Option<String>,
}

/// `cloth add`, as typed.
#[derive(Args, Debug, Clone)]
pub struct AddClothArgs {
    /// What to call it
    pub name: String,
    /// What it is, in a few words: knit 2m of 150cm 180gsm; then perhaps its tests: across 25 26.5 26.6 along 25 25.4
    #[arg(value_name = "WORD")]
    pub words: Vec<String>,
    /// Number to pin to the cloth [default: the next free one]
    #[arg(long, value_name = "NUMBER")]
    pub tag: Option<String>,
    /// The tags of this desk.
    #[command(flatten)]
    pub range: TagsArg,
    /// The rest.
    #[command(flatten)]
    pub flags: FabricFlags,
    /// You washed it since it came home
    #[arg(long)]
    pub washed: bool,
    /// You made a first pull that does not count before each of the tests typed here
    #[arg(long, short)]
    pub settling: bool,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `cloth edit`, as typed.
#[derive(Args, Debug, Clone)]
pub struct EditClothArgs {
    /// The number on the cloth, or its name
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// A new number to pin to the cloth
    #[arg(long, value_name = "NUMBER")]
    pub tag: Option<String>,
    /// A new name
    #[arg(long, value_name = "TEXT")]
    pub name: Option<String>,
    /// The rest.
    #[command(flatten)]
    pub flags: FabricFlags,
    /// You bought it: the length that came home; no if you did not buy it after all
    #[arg(long, value_name = "LENGTH", conflicts_with_all = ["seen", "length"])]
    pub bought: Option<String>,
    /// Whether you washed it since it came home
    #[arg(long, value_enum)]
    pub washed: Option<YesNo>,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `cloth list`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ListClothsArgs {
    /// Words to look for in name, fibre, place and note
    pub words: Vec<String>,
    /// Only of this construction
    #[arg(long, value_parser = choice::CONSTRUCTION)]
    pub construction: Option<Construction>,
    /// Only cloths that you own
    #[arg(long, conflicts_with = "seen")]
    pub owned: bool,
    /// Only cloths that you saw in a shop
    #[arg(long)]
    pub seen: bool,
    /// Only with this much stretch along the grain given: 20%, 20%..30%
    #[arg(long, value_name = "RANGE")]
    pub stretch: Option<String>,
    /// The grain that --stretch is about
    #[arg(long, value_parser = choice::GRAIN, default_value = Grain::Crosswise.word())]
    pub grain: Grain,
    /// Only with at least this length on hand
    #[arg(long, value_name = "LENGTH")]
    pub at_least: Option<String>,
    /// Only retired cloths
    #[arg(long)]
    pub retired: bool,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `cloth show`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ShowFabricArgs {
    /// The number on the cloth, or its name
    #[arg(value_name = "TAG")]
    pub fabric: String,
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

/// `cloth cut`, as typed.
#[derive(Args, Debug, Clone)]
pub struct CutArgs {
    /// The number on the cloth, or its name
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// The length that was cut off: 80cm, 1 1/2yd
    #[arg(required_unless_present = "undo")]
    pub length: Option<String>,
    /// In place of the newest cut, which was a mistake
    #[arg(long, conflicts_with = "undo")]
    pub instead: bool,
    /// Take the newest cut back: it was a mistake
    #[arg(long, conflicts_with_all = ["length", "note"])]
    pub undo: bool,
    /// What for
    #[arg(long, value_name = "TEXT", default_value = "")]
    pub note: String,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `cloth retire`, as typed.
#[derive(Args, Debug, Clone)]
pub struct RetireArgs {
    /// The number on the cloth, or its name
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// Why
    #[arg(long, value_name = "TEXT", default_value = "")]
    pub note: String,
}

/// `cloth return`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ReturnArgs {
    /// The number on the cloth, or its name
    #[arg(value_name = "TAG")]
    pub fabric: String,
}

/// Yes or no, as typed.
#[derive(ValueEnum, Debug, Clone, Copy, PartialEq, Eq)]
pub enum YesNo {
    /// It was
    Yes,
    /// It was not
    No,
}
