//! The flags of `serve`.

use std::net::IpAddr;

use clap::Args;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter serve
      tenter serve --listen 0.0.0.0
      tenter --db demo.sqlite3 serve --port 8000 --no-open

On the pages you measure, judge, choose, cut and print. The handheld has commands only. Ctrl-C ends \
the pages, and everything you sent is stored. Only this machine can open them, unless you pass --listen. Then anyone who \
scans the code, or types the address with its token, can read and change your log. The connection is not encrypted, so \
use it in a network that you trust.";

/// `serve`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ServeArgs {
    /// Address to listen at; 0.0.0.0 lets others in your network in
    #[arg(long, value_name = "ADDRESS", default_value = "127.0.0.1")]
    pub listen: IpAddr,
    /// Port to listen at [default: 7436, or any that is free]
    #[arg(long)]
    pub port: Option<u16>,
    /// Do not open a browser
    #[arg(long)]
    pub no_open: bool,
    /// How many seconds a request may take to arrive
    #[arg(long, value_name = "SECONDS", default_value = "10", env = "TENTER_PATIENCE", hide = true)]
    pub patience: f64,
}
