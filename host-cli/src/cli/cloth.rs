//! The flags of `cloth`.

use clap::{Args, Subcommand, ValueEnum};

use super::reading::{ConfidenceArg, ShowArgs, TableArg};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  A length at home:
      tenter cloth add 'Vestry twill' --fibre '92 polyamide 8 elastane' --construction woven \\
          --width 148cm --length 2.4m --mass '142 g/m2' --place 'blue crate'

  A bolt seen in a shop, and later bought:
      tenter cloth add 'Doorway rib' --construction knit --width 150cm --seen 'the Saturday market' --price 11.50/m
      tenter cloth edit 7 --bought 1.2m

  What is there, what it can do, and what was cut from it:
      tenter cloth list --construction knit
      tenter cloth show 7
      tenter cloth cut 7 80cm --note 'hem facings'

Nothing is ever lost: a retired length comes back with tenter cloth return, and every cut stays in its history.";

/// What to do with the stash.
#[derive(Subcommand, Debug, Clone)]
pub enum ClothVerb {
    /// Add a length at home, or a bolt seen in a shop
    Add(AddArgs),
    /// List what is there
    List(ListArgs),
    /// Show one fabric: what it can do, its tests and its history
    Show(ShowFabricArgs),
    /// Change what is said about a fabric
    Edit(EditArgs),
    /// Note that a length was cut off
    Cut(CutArgs),
    /// Take a fabric out of the stash; its tests and history stay
    Retire(RetireArgs),
    /// Bring a retired fabric back
    Return(ReturnArgs),
}

/// What is said about a fabric, as typed.
#[derive(Args, Debug, Clone, Default)]
pub struct FabricFlags {
    /// What it is made of, as on the label
    #[arg(long, value_name = "TEXT")]
    pub fibre: Option<String>,
    /// How it is made
    #[arg(long, value_enum)]
    pub construction: Option<ConstructionArg>,
    /// Usable width: 148cm, 58in, or unknown
    #[arg(long, value_name = "LENGTH")]
    pub width: Option<String>,
    /// Length on hand: 2.4m, 3yd, or unknown
    #[arg(long, value_name = "LENGTH")]
    pub length: Option<String>,
    /// Mass per area: '180 g/m2', '5.3 oz/yd2', or unknown
    #[arg(long, value_name = "MASS")]
    pub mass: Option<String>,
    /// Where it lies
    #[arg(long, value_name = "TEXT")]
    pub place: Option<String>,
    /// Anything else
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
    /// Only seen so far, in this shop or market
    #[arg(long, value_name = "SHOP")]
    pub seen: Option<String>,
    /// Price per length where it was seen: 12.50/m, '9 EUR/yd'
    #[arg(long, value_name = "PRICE")]
    pub price: Option<String>,
}

/// `cloth add`, as typed.
#[derive(Args, Debug, Clone)]
pub struct AddArgs {
    /// What to call it
    pub name: String,
    /// Number to pin to the cloth [default: the next free one]
    #[arg(long, value_name = "NUMBER")]
    pub tag: Option<String>,
    /// The rest.
    #[command(flatten)]
    pub flags: FabricFlags,
    /// It was washed since it came home
    #[arg(long)]
    pub washed: bool,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `cloth edit`, as typed.
#[derive(Args, Debug, Clone)]
pub struct EditArgs {
    /// The fabric's tag, or its identifier
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
    /// It was bought: this length came home
    #[arg(long, value_name = "LENGTH", conflicts_with_all = ["seen", "length"])]
    pub bought: Option<String>,
    /// Whether it was washed since it came home
    #[arg(long, value_enum)]
    pub washed: Option<YesNo>,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `cloth list`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ListArgs {
    /// Words that name, fibre, place or note must hold
    pub words: Vec<String>,
    /// Only of this construction
    #[arg(long, value_enum)]
    pub construction: Option<ConstructionArg>,
    /// Only what lies at home
    #[arg(long, conflicts_with = "seen")]
    pub owned: bool,
    /// Only what was seen in a shop
    #[arg(long)]
    pub seen: bool,
    /// Only with this much stretch along the grain given: 20%, 20%..30%
    #[arg(long, value_name = "RANGE")]
    pub stretch: Option<String>,
    /// The grain that --stretch is about
    #[arg(long, value_enum, default_value_t = super::reading::GrainArg::Crosswise)]
    pub grain: super::reading::GrainArg,
    /// Only with at least this length on hand
    #[arg(long, value_name = "LENGTH")]
    pub at_least: Option<String>,
    /// Only what is retired
    #[arg(long)]
    pub retired: bool,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `cloth show`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ShowFabricArgs {
    /// The fabric's tag, or its identifier
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
    /// The fabric's tag, or its identifier
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// The length that was cut off: 80cm, 1 1/2yd
    pub length: String,
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
    /// The fabric's tag, or its identifier
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// Why
    #[arg(long, value_name = "TEXT", default_value = "")]
    pub note: String,
}

/// `cloth return`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ReturnArgs {
    /// The fabric's tag, or its identifier
    #[arg(value_name = "TAG")]
    pub fabric: String,
}

/// A construction, as typed.
#[derive(ValueEnum, Debug, Clone, Copy, PartialEq, Eq)]
pub enum ConstructionArg {
    /// Warp and weft
    Woven,
    /// Wales and courses
    Knit,
    /// Felt, film, net; or not known
    Other,
}

/// Yes or no, as typed.
#[derive(ValueEnum, Debug, Clone, Copy, PartialEq, Eq)]
pub enum YesNo {
    /// It was
    Yes,
    /// It was not
    No,
}
