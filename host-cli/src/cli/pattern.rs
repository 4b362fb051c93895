//! The flags of `pattern`.

use clap::{Args, Subcommand};
use tenter_core::{Construction, Grain};

use super::choice;
use super::reading::ShowArgs;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter pattern add 'Usher waistcoat' A main 5-15% 0.8m of 140cm
      tenter pattern show 'Choir trousers'
      tenter pattern list

A pattern has views, and a view has roles: main, lining, waistband … Each role has its demands. A part of a \
name will do while only one has it: tenter pattern show choir";

/// Examples for the help of `pattern add`.
pub const ADD: &str = "\
Examples:
  A role of a view; a new pattern and a new view are made as you name them:
      tenter pattern add 'Usher waistcoat' A main --crosswise 5%..15% --growth-at-most 3% \\
          --construction woven --cloth '0.8m at 140cm'

  The same in a few words; another view of the pattern you added to last:
      tenter pattern add 'Nave apron' A main 5-15% growth 3% woven 0.8m of 140cm
      tenter pattern add - B main 10-20% growth 3% woven 0.9m of 140cm

  The gauge as it is printed on the envelope; - stands for the only view:
      tenter pattern add 'Rehearsal top' - main \\
          --crosswise '4in to 5 3/8in' --lengthwise 20%

  What the cloth must be, besides its stretch; the view is a pair of leggings:
      tenter pattern add 'Rehearsal leggings' - main --crosswise 40% \\
          --mass 200..300g/m2 --drape soft --kind leggings

  A kind of garment and a movement instead of a figure, each with its source:
      tenter pattern add 'Rehearsal top' - sleeve --garment leggings \\
          --movement 'knee, lengthwise'";

/// Examples for the help of `pattern list`.
pub const LIST: &str = "\
Examples:
      tenter pattern list";

/// Examples for the help of `pattern show`.
pub const SHOW: &str = "\
Examples:
      tenter pattern show 'Choir trousers'
      tenter pattern show choir b";

/// Examples for the help of `pattern edit`.
pub const EDIT: &str = "\
Examples:
      tenter pattern edit 'Choir trousers' A main --growth-at-most none
      tenter pattern edit choir a waistband --name yoke --crosswise 10%..40%";

/// Examples for the help of `pattern retire`.
pub const RETIRE: &str = "\
Examples:
  A role, a view, the whole pattern:
      tenter pattern retire 'Choir trousers' A 'pocket bags'
      tenter pattern retire 'Choir trousers' B
      tenter pattern retire 'Play coat'";

/// Examples for the help of `pattern return`.
pub const RETURN: &str = "\
Examples:
      tenter pattern retire 'Choir trousers' B
      tenter pattern return 'Choir trousers' B";

/// What to do with patterns.
#[derive(Subcommand, Debug, Clone)]
pub enum PatternVerb {
    /// Add a pattern, or a role of one of its views
    #[command(after_help = ADD)]
    Add(AddRoleArgs),
    /// List the patterns
    #[command(after_help = LIST)]
    List(ListPatternsArgs),
    /// Show the demands of a pattern
    #[command(after_help = SHOW)]
    Show(ShowPatternArgs),
    /// Change a pattern or one of its roles
    #[command(after_help = EDIT)]
    Edit(EditRoleArgs),
    /// Retire a pattern, a view or a role; return brings it back
    #[command(after_help = RETIRE)]
    Retire(WhichArgs),
    /// Bring a retired pattern, view or role back
    #[command(after_help = RETURN)]
    Return(WhichArgs),
}

/// The demands of a role, as typed.
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
    /// Largest growth you accept, and when after release: 3%@30min, or none [default time: 30min]
    #[arg(long, value_name = "PERCENT")]
    pub growth_at_most: Option<String>,
    /// Smallest recovery you accept: 90%@30min, or none
    #[arg(long, value_name = "PERCENT")]
    pub recovery_at_least: Option<String>,
    /// Constructions you accept [default: any]
    #[arg(long, value_parser = choice::CONSTRUCTION, value_delimiter = ',')]
    pub construction: Vec<Construction>,
    /// Mass per area you accept: 200..300g/m2, 6..8oz, 250g/m2.., or none
    #[arg(long, value_name = "RANGE")]
    pub mass: Option<String>,
    /// How the cloth may fall: fluid, soft, crisp, stiff, several with commas between, or none [default: any]
    #[arg(long, value_name = "WORDS", value_delimiter = ',')]
    pub drape: Vec<String>,
    /// Finishes you accept: plain, brushed, coated, membrane, waxed, pile, fusible, leather-like, several with commas
    /// between, or none [default: any]
    #[arg(long, value_name = "WORDS", value_delimiter = ',')]
    pub finish: Vec<String>,
    /// What the cloth must be made for: outer, lining, interfacing, rib, pocketing, or none [default: as the name of the
    /// role implies]
    #[arg(long, value_name = "WORD")]
    pub purpose: Option<String>,
    /// The garment that the view is, for all its roles: trousers, jeans, leggings, lined-coat …, or none
    #[arg(long, value_name = "WORD")]
    pub kind: Option<String>,
    /// How much cloth it needs, and of which width: '1.6m at 140cm', or none
    #[arg(long, value_name = "LENGTH at WIDTH")]
    pub cloth: Option<String>,
    /// Take the demands of a kind of garment, such as 'leggings'; an unknown one lists them
    #[arg(long, value_name = "TEXT", conflicts_with_all = ["crosswise", "lengthwise", "bias"])]
    pub garment: Option<String>,
    /// Take the demands of a movement: 'knee, lengthwise', or 'knee bend:along' to name the line
    #[arg(long, value_name = "TEXT", conflicts_with_all = ["crosswise", "lengthwise", "bias"])]
    pub movement: Option<String>,
    /// The grain that goes round the body, for --garment and --movement
    #[arg(long, value_parser = choice::GRAIN)]
    pub around: Option<Grain>,
    /// Anything else, such as where the figures come from
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
}

/// `pattern add`, as typed.
#[derive(Args, Debug, Clone)]
pub struct AddRoleArgs {
    /// The pattern
    pub pattern: String,
    /// The view, or - where it has only one
    #[arg(requires = "role")]
    pub view: Option<String>,
    /// The part of the garment: main, contrast, lining, ribbing … [default: main, where words of what it asks follow]
    pub role: Option<String>,
    /// What it asks, in a few words: 5-15% along 2% growth 3% woven 0.8m of 140cm
    #[arg(value_name = "WORD")]
    pub words: Vec<String>,
    /// Its demands.
    #[command(flatten)]
    pub flags: RoleFlags,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `pattern edit`, as typed.
#[derive(Args, Debug, Clone)]
pub struct EditRoleArgs {
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
    /// Its demands now.
    #[command(flatten)]
    pub flags: RoleFlags,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `pattern list`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ListPatternsArgs {
    /// Only retired patterns
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
