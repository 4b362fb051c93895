//! The flags of `device`.

use clap::{Args, Subcommand};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  Plugged in at home: tests come into the log, your own hand and the time go to the handheld
      tenter device sync --port /dev/ttyACM0

  What a view asks, to be judged in the shop without this computer
      tenter device demands skirt B
      tenter device demands skirt B --role main --role 'hem facings'

  Tests whose tag is on no fabric yet
      tenter device inbox
      tenter device assign 3f9k2m 7
      tenter device assign --all

Without --port, TENTER_PORT says where the handheld is; tenter device list alone names the ports found here.";

/// What to do with the handheld.
#[derive(Subcommand, Debug, Clone)]
pub enum DeviceVerb {
    /// Say who is there and what waits to be fetched; nothing is changed
    List(ListArgs),
    /// Fetch every test, store it, and only then let the handheld forget it
    Sync(SyncArgs),
    /// Put what a view asks on the handheld
    Demands(DemandsArgs),
    /// Set the handheld's clock
    Clock(ClockArgs),
    /// List fetched tests that belong to no fabric yet
    Inbox(InboxArgs),
    /// Give a test to a fabric, or to another one
    Assign(AssignArgs),
}

/// Where the handheld is, as typed.
#[derive(Args, Debug, Clone)]
pub struct PortArg {
    /// Serial port (/dev/ttyACM0, COM3), tcp:HOST:PORT, or unix:PATH
    #[arg(long, value_name = "PORT", env = "TENTER_PORT")]
    pub port: Option<String>,
    /// Seconds that an answer of the handheld may take before it is asked again
    #[arg(long, value_name = "SECONDS", env = "TENTER_PATIENCE", default_value_t = 1, value_parser = clap::value_parser!(u16).range(1..))]
    pub patience: u16,
}

/// `device list`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ListArgs {
    /// Where the handheld is.
    #[command(flatten)]
    pub port: PortArg,
    /// Print one JSON object instead of text
    #[arg(long)]
    pub json: bool,
}

/// `device sync`, as typed.
#[derive(Args, Debug, Clone)]
pub struct SyncArgs {
    /// Where the handheld is.
    #[command(flatten)]
    pub port: PortArg,
    /// Number for a handheld that has none yet [default: a random one]
    #[arg(long, value_name = "NUMBER")]
    pub name: Option<String>,
    /// Give up tests that arrive damaged, so that the handheld may use their room again
    #[arg(long)]
    pub give_up_damaged: bool,
}

/// `device demands`, as typed.
#[derive(Args, Debug, Clone)]
pub struct DemandsArgs {
    /// The pattern, or the beginning of its name
    #[arg(required_unless_present = "clear", conflicts_with = "clear")]
    pub pattern: Option<String>,
    /// The view, or the beginning of its name [default: the only one]
    #[arg(conflicts_with = "clear")]
    pub view: Option<String>,
    /// Only this role; may be given several times
    #[arg(long, value_name = "ROLE", conflicts_with = "clear")]
    pub role: Vec<String>,
    /// Take all demands off the handheld
    #[arg(long)]
    pub clear: bool,
    /// Where the handheld is.
    #[command(flatten)]
    pub port: PortArg,
}

/// `device clock`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ClockArgs {
    /// Where the handheld is.
    #[command(flatten)]
    pub port: PortArg,
}

/// `device inbox`, as typed.
#[derive(Args, Debug, Clone)]
pub struct InboxArgs {
    /// Print one JSON array instead of text
    #[arg(long)]
    pub json: bool,
}

/// `device assign`, as typed.
#[derive(Args, Debug, Clone)]
pub struct AssignArgs {
    /// The test's identifier, or its end as tenter device inbox shows it
    #[arg(required_unless_present = "all", conflicts_with = "all")]
    pub test: Option<String>,
    /// The fabric's tag, or its identifier
    #[arg(value_name = "TAG", required_unless_present = "all", conflicts_with = "all")]
    pub fabric: Option<String>,
    /// Every test of the inbox whose tag is now on exactly one fabric
    #[arg(long)]
    pub all: bool,
}
