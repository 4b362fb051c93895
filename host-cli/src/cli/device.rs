//! The flags of `device`.

use clap::{Args, Subcommand};
use tenter_core::Unit;

use super::choice;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  Before you go to the shop, put the demands of a view on the handheld:
      tenter device demands 'Choir trousers' A --port /dev/ttyUSB0

  At home, fetch its tests:
      tenter device sync --port /dev/ttyUSB0
      tenter device inbox

The port is that of the USB serial adapter. Without --port, TENTER_PORT names it. \
With neither, tenter tells you the ports of this computer.";

/// Examples for the help of `device list`.
pub const LIST: &str = "\
Examples:
      tenter device list --port /dev/ttyUSB0";

/// Examples for the help of `device sync`.
pub const SYNC: &str = "\
Examples:
      tenter device sync --port /dev/ttyUSB0

  The handheld is Anna's; all that it sends is hers from now on:
      tenter device sync --by Anna --port /dev/ttyUSB0

A test leaves the handheld only after it is stored here, so you may pull the plug at any time. A sync also sets the \
clock of the handheld, and sends it your repeatability, so that its ± is right for you.";

/// Examples for the help of `device demands`.
pub const DEMANDS: &str = "\
Examples:
  All roles of a view, or some of them:
      tenter device demands 'Choir trousers' A --port /dev/ttyUSB0
      tenter device demands choir b --role main --role waistband \\
          --port /dev/ttyUSB0

  None any more:
      tenter device demands --clear --port /dev/ttyUSB0";

/// Examples for the help of `device people`.
pub const PEOPLE: &str = "\
Examples:
  The handheld is Anna's, and Ben uses it too:
      tenter device people Anna Ben --port /dev/ttyUSB0

  Nobody any more:
      tenter device people --clear --port /dev/ttyUSB0";

/// Examples for the help of `device clock`.
pub const CLOCK: &str = "\
Examples:
      tenter device clock --port /dev/ttyUSB0";

/// Examples for the help of `device inbox`.
pub const INBOX: &str = "\
Examples:
      tenter device inbox";

/// Examples for the help of `device assign`.
pub const ASSIGN: &str = "\
Examples:
  One test, by the letters that tenter device inbox prints, to cloth 2:
      tenter device assign 305zbc 2

  Every test whose number a cloth has by now:
      tenter cloth add 'Balcony crepe' --tag 32
      tenter device assign --all";

/// What to do with the handheld.
#[derive(Subcommand, Debug, Clone)]
pub enum DeviceVerb {
    /// Show the connected handheld and the tests not yet copied; changes nothing
    #[command(after_help = LIST)]
    List(ListTestsArgs),
    /// Copy every test into the log, and then let the handheld delete it
    #[command(after_help = SYNC)]
    Sync(SyncArgs),
    /// Put the demands of a view on the handheld
    #[command(after_help = DEMANDS)]
    Demands(DemandsArgs),
    /// Put people on the handheld, so that each test says who pulled
    #[command(after_help = PEOPLE)]
    People(PeopleArgs),
    /// Set the handheld's clock
    #[command(after_help = CLOCK)]
    Clock(ClockArgs),
    /// List fetched tests that belong to no cloth yet
    #[command(after_help = INBOX)]
    Inbox(InboxArgs),
    /// Say which cloth a test belongs to
    #[command(after_help = ASSIGN)]
    Assign(AssignArgs),
}

/// Where the handheld is, as typed.
#[derive(Args, Debug, Clone)]
pub struct PortArg {
    /// Serial port (/dev/ttyUSB0, COM3), tcp:HOST:PORT, or unix:PATH
    #[arg(long, value_name = "PORT", env = "TENTER_PORT")]
    pub port: Option<String>,
    /// Seconds that an answer of the handheld may take before it is asked again
    #[arg(long, value_name = "SECONDS", env = "TENTER_PATIENCE", default_value_t = 1, value_parser = clap::value_parser!(u16).range(1..))]
    pub patience: u16,
}

/// `device list`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ListTestsArgs {
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
    /// Who pulled with the handheld; tenter remembers its owner at this desk
    #[arg(long, value_name = "NAME")]
    pub by: Option<String>,
    /// Number for a handheld that has none yet [default: a random one]
    #[arg(long, value_name = "NUMBER")]
    pub name: Option<String>,
    /// Delete tests that arrive damaged from the handheld, to free their space
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
    /// Only this role; may be given more than once
    #[arg(long, value_name = "ROLE", conflicts_with = "clear")]
    pub role: Vec<String>,
    /// Take all demands off the handheld
    #[arg(long)]
    pub clear: bool,
    /// Where the handheld is.
    #[command(flatten)]
    pub port: PortArg,
}

/// `device people`, as typed.
#[derive(Args, Debug, Clone)]
pub struct PeopleArgs {
    /// Their names; the first is the owner
    #[arg(value_name = "NAME", required_unless_present = "clear", conflicts_with = "clear")]
    pub names: Vec<String>,
    /// Take all people off the handheld
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
    /// Unit of the lengths [default: mm]
    #[arg(long, value_parser = choice::UNIT, env = "TENTER_UNITS")]
    pub units: Option<Unit>,
}

/// `device assign`, as typed.
#[derive(Args, Debug, Clone)]
pub struct AssignArgs {
    /// The letters that tenter device inbox prints for the test
    #[arg(required_unless_present = "all", conflicts_with = "all")]
    pub test: Option<String>,
    /// The number on the cloth, or its identifier
    #[arg(value_name = "TAG", required_unless_present = "all", conflicts_with = "all")]
    pub fabric: Option<String>,
    /// Every test of the inbox whose number is on exactly one cloth
    #[arg(long)]
    pub all: bool,
}
