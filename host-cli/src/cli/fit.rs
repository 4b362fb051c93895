//! The flags of `fit`.

use clap::Args;

use super::reading::{ConfidenceArg, ShowArgs};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter fit 'Fellside smock' A
      tenter fit fell a --role main --all
      tenter fit 'Ridge tights' - --json

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
    /// How sure an answer must be.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}
