//! The flags of `completions` and `man`.

use std::path::PathBuf;

use clap::Args;

/// Examples for the help.
pub const COMPLETIONS: &str = "\
Examples:
      tenter completions bash > tenter.bash
      tenter completions fish > tenter.fish

Put the file where your shell looks for it: bash reads ~/.local/share/bash-completion/completions/tenter, fish reads \
~/.config/fish/completions/tenter.fish.";

/// Examples for the help of `man`.
pub const MAN: &str = "\
Examples:
      tenter man --out manual
      man -l manual/tenter-check.1";

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
