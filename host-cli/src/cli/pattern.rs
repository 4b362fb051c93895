//! The flags of `pattern`.

use clap::{Args, Subcommand};

use super::cloth::ConstructionArg;
use super::reading::ShowArgs;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  A role of a view, and what it asks; pattern and view are made as they are named:
      tenter pattern add 'Choir trousers' A main --crosswise 5%..15% --growth-at-most 3% \\
          --construction woven --cloth '1.6m at 140cm'

  The gauge as it is printed on the envelope:
      tenter pattern add 'Play coat' - main --crosswise '4in to 6in' --lengthwise 20% --cloth '1.2m at 150cm'

  What a garment and a movement ask, each with its source, instead of a figure:
      tenter pattern add 'Play coat' - knee --garment leggings --movement 'knee, lengthwise'

  What a pattern asks, a change, and which fabrics will do:
      tenter pattern show 'Choir trousers'
      tenter pattern edit 'Choir trousers' A main --growth-at-most none
      tenter fit 'Choir trousers' A

A name may be cut short while it stays clear: tenter pattern show fell";

/// What to do with patterns.
#[derive(Subcommand, Debug, Clone)]
pub enum PatternVerb {
    /// Add a pattern, or a role of one of its views
    Add(AddArgs),
    /// List the patterns
    List(ListArgs),
    /// Show what a pattern asks
    Show(ShowPatternArgs),
    /// Change a pattern or one of its roles
    Edit(EditArgs),
    /// Retire a pattern, a view or a role; return brings it back
    Retire(WhichArgs),
    /// Bring back what was retired
    Return(WhichArgs),
}

/// What a role asks, as typed.
#[derive(Args, Debug, Clone, Default, PartialEq, Eq)]
pub struct RoleFlags {
    /// Stretch across: 5%, 5%..15%, ..15%, '4in to 5 3/8in', or none
    #[arg(long, value_name = "RANGE")]
    pub crosswise: Option<String>,
    /// Stretch along
    #[arg(long, value_name = "RANGE")]
    pub lengthwise: Option<String>,
    /// Stretch at 45°
    #[arg(long, value_name = "RANGE")]
    pub bias: Option<String>,
    /// Most growth that will do: 3%, or none
    #[arg(long, value_name = "PERCENT")]
    pub growth_at_most: Option<String>,
    /// Least recovery that will do: 90%, or none
    #[arg(long, value_name = "PERCENT")]
    pub recovery_at_least: Option<String>,
    /// Constructions that will do; any when not said
    #[arg(long, value_enum, value_delimiter = ',')]
    pub construction: Vec<ConstructionArg>,
    /// How much cloth it takes, and of which width: '1.6m at 140cm', or none
    #[arg(long, value_name = "LENGTH at WIDTH")]
    pub cloth: Option<String>,
    /// Ask what a kind of garment asks, instead of a figure: 'leggings'; an unknown one lists them
    #[arg(long, value_name = "TEXT", conflicts_with_all = ["crosswise", "lengthwise", "bias"])]
    pub garment: Option<String>,
    /// Ask what a movement of the body asks: 'knee, lengthwise', or 'knee bend:along' where the line is not said
    #[arg(long, value_name = "TEXT", conflicts_with_all = ["crosswise", "lengthwise", "bias"])]
    pub movement: Option<String>,
    /// The grain that goes round the body, for --garment and --movement
    #[arg(long, value_enum)]
    pub around: Option<super::reading::GrainArg>,
    /// Anything else, such as where the figures come from
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
}

/// `pattern add`, as typed.
#[derive(Args, Debug, Clone)]
pub struct AddArgs {
    /// The pattern
    pub pattern: String,
    /// The view, or - where it has only one
    #[arg(requires = "role")]
    pub view: Option<String>,
    /// What the cloth is for: main, contrast, lining, ribbing …
    pub role: Option<String>,
    /// What it asks.
    #[command(flatten)]
    pub flags: RoleFlags,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `pattern edit`, as typed.
#[derive(Args, Debug, Clone)]
pub struct EditArgs {
    /// The pattern
    pub pattern: String,
    /// The view
    #[arg(requires = "role")]
    pub view: Option<String>,
    /// The role
    pub role: Option<String>,
    /// A new name for the role, or for the pattern where no role is named
    #[arg(long, value_name = "TEXT")]
    pub name: Option<String>,
    /// What it asks now.
    #[command(flatten)]
    pub flags: RoleFlags,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `pattern list`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ListArgs {
    /// Only what is retired
    #[arg(long)]
    pub retired: bool,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `pattern show`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ShowPatternArgs {
    /// The pattern
    pub pattern: String,
    /// Only this view
    pub view: Option<String>,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// A pattern, a view or a role, as typed.
#[derive(Args, Debug, Clone)]
pub struct WhichArgs {
    /// The pattern
    pub pattern: String,
    /// The view
    pub view: Option<String>,
    /// The role
    #[arg(requires = "view")]
    pub role: Option<String>,
}
