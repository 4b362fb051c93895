//! The flags of `phone`.

use std::path::PathBuf;

use clap::Args;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter phone --out folder
      tenter phone --one-file tenter.html

Copy the folder to any web space whose address begins with https, and open that address on the phone once. After that the \
app needs no network, and what you store stays on the phone until you hand it over. If you have no web space, \
make the one file and open it from the phone's own files.";

/// `phone`, as typed.
#[derive(Args, Debug, Clone)]
#[group(required = true, multiple = true)]
pub struct PhoneArgs {
    /// Folder to write the app to; a folder of an older version is brought up to date
    #[arg(long, value_name = "FOLDER", group = "made")]
    pub out: Option<PathBuf>,
    /// File to write the whole app to
    #[arg(long, value_name = "FILE", group = "made")]
    pub one_file: Option<PathBuf>,
    /// The app's module, as host-cli/phone/build makes it [default: the one built in, or tenter.wasm.gz beside tenter]
    #[arg(long, value_name = "FILE")]
    pub module: Option<PathBuf>,
}
