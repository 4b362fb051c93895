//! The flags of `completions` and `man`.

use std::path::PathBuf;

use clap::Args;

/// Examples for the help.
pub const COMPLETIONS: &str = "\
Examples:
      tenter completions bash > ~/.local/share/bash-completion/completions/tenter
      tenter completions fish > ~/.config/fish/completions/tenter.fish";

/// `completions`, as typed.
#[derive(Args, Debug, Clone)]
pub struct CompletionsArgs {
    /// The shell
    #[arg(value_enum)]
    pub shell: clap_complete::Shell,
}

/// `man`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ManArgs {
    /// Write one page for each verb into this folder, instead of the main page to the screen
    #[arg(long, value_name = "FOLDER")]
    pub out: Option<PathBuf>,
}
