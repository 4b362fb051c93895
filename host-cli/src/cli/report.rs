//! The flags of `report`.

use clap::{Args, Subcommand, ValueEnum};

use super::fit::PlanArgs;
use super::reading::{ConfidenceArg, GrainArg, TableArg, UnitArg};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter report book --out book.html
      tenter report book --view 'Choir trousers' A --out skirt.html
      tenter report cards 1 4 7 --out cards.html
      tenter report sheet 'Choir trousers' A --use main=1 --zip 65cm --out plan.html
      tenter report gauge --wants 25% --name 'tights, waistband' --out gauge.html
      tenter report picture map --view 'Choir trousers' A --out map.svg

Pages are one file each: open it in a browser, keep it, send it, print it from there. They ask nothing of the network.
What is to be cut or laid on cloth is printed at 100 %, not fitted to the page; a line of 100 mm on it tells whether the
printer kept to that, on a single card the bar that says how long it is, relaxed. A file that is there already is replaced only once the new one is complete; - is a pipe.";

/// What to make.
#[derive(Subcommand, Debug)]
pub enum ReportVerb {
    /// The stash as a book to look through and search
    Book(BookArgs),
    /// Cards to print and pin to the cloths, four to a sheet of A4
    Cards(CardsArgs),
    /// The plan of a view on one page, from cutting to finishing
    Sheet(SheetArgs),
    /// A gauge to print at true scale and pull a swatch on
    Gauge(GaugeArgs),
    /// One picture as an SVG file
    Picture(PictureArgs),
}

impl ReportVerb {
    /// Where the file goes.
    #[must_use]
    pub const fn out(&self) -> &OutArg {
        match self {
            Self::Book(args) => &args.out,
            Self::Cards(args) => &args.out,
            Self::Sheet(args) => &args.out,
            Self::Gauge(args) => &args.out,
            Self::Picture(args) => &args.out,
        }
    }
}

/// Where the file goes, as typed.
#[derive(Args, Debug, Clone)]
pub struct OutArg {
    /// File to write, - for a pipe
    #[arg(long, short, value_name = "FILE")]
    pub out: String,
}

/// A view, as typed.
#[derive(Args, Debug, Clone)]
pub struct ViewArg {
    /// A pattern and its view, whose demands are shown beside the cloths
    #[arg(long, num_args = 2, value_names = ["PATTERN", "VIEW"])]
    pub view: Option<Vec<String>>,
}

/// The unit of a page, as typed.
#[derive(Args, Debug, Clone)]
pub struct UnitsArg {
    /// Unit of the lengths [default: mm]
    #[arg(long, value_enum)]
    pub units: Option<UnitArg>,
}

/// `report book`, as typed.
#[derive(Args, Debug, Clone)]
pub struct BookArgs {
    /// The view.
    #[command(flatten)]
    pub view: ViewArg,
    /// The file.
    #[command(flatten)]
    pub out: OutArg,
    /// The table of stretch classes.
    #[command(flatten)]
    pub table: TableArg,
    /// How sure an answer must be.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// The unit.
    #[command(flatten)]
    pub units: UnitsArg,
}

/// `report cards`, as typed.
#[derive(Args, Debug, Clone)]
pub struct CardsArgs {
    /// Tags of the fabrics; all that lie at home where none is named
    #[arg(value_name = "TAG")]
    pub fabrics: Vec<String>,
    /// The file.
    #[command(flatten)]
    pub out: OutArg,
    /// How sure the drawn trust is.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// The unit.
    #[command(flatten)]
    pub units: UnitsArg,
}

/// `report sheet`, as typed.
#[derive(Args, Debug, Clone)]
pub struct SheetArgs {
    /// The pattern
    pub pattern: String,
    /// The view; may be left out where there is only one
    pub view: Option<String>,
    /// Only this role; may be given more than once
    #[arg(long, value_name = "ROLE")]
    pub role: Vec<String>,
    /// What is on the sheet.
    #[command(flatten)]
    pub plan: PlanArgs,
    /// The file.
    #[command(flatten)]
    pub out: OutArg,
    /// How sure an answer must be.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// The unit.
    #[command(flatten)]
    pub units: UnitsArg,
}

/// `report gauge`, as typed.
#[derive(Args, Debug, Clone)]
pub struct GaugeArgs {
    /// The stretch that is asked: 25%, 20%..30%, ..12%, '4in to 5 3/8in'
    #[arg(long, value_name = "RANGE", required_unless_present = "view", conflicts_with = "view")]
    pub wants: Option<String>,
    /// What it is for, as it is to stand on the gauge
    #[arg(long, value_name = "TEXT", default_value = "", conflicts_with = "view")]
    pub name: String,
    /// The view: a gauge for every role and grain that asks for stretch.
    #[command(flatten)]
    pub view: ViewArg,
    /// The file.
    #[command(flatten)]
    pub out: OutArg,
}

/// `report picture`, as typed.
#[derive(Args, Debug, Clone)]
pub struct PictureArgs {
    /// What it shows
    #[arg(value_enum)]
    pub kind: PictureKind,
    /// Tag of the fabric, for all but the map
    #[arg(value_name = "TAG", required_if_eq_any = [("kind", "stretch"), ("kind", "growth"), ("kind", "card")])]
    pub fabric: Option<String>,
    /// The grain of the growth [default: crosswise]
    #[arg(long, value_enum)]
    pub grain: Option<GrainArg>,
    /// The role of the view whose demand is drawn [default: the first]
    #[arg(long, value_name = "ROLE", requires = "view")]
    pub role: Option<String>,
    /// The view.
    #[command(flatten)]
    pub view: ViewArg,
    /// The file.
    #[command(flatten)]
    pub out: OutArg,
    /// The table of stretch classes.
    #[command(flatten)]
    pub table: TableArg,
    /// How sure the drawn trust is.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// The unit.
    #[command(flatten)]
    pub units: UnitsArg,
}

/// What a picture shows, as typed.
#[derive(ValueEnum, Debug, Clone, Copy, PartialEq, Eq)]
pub enum PictureKind {
    /// The stretch of a fabric along each grain, with its trust
    Stretch,
    /// The growth of a fabric after release, with its forecast
    Growth,
    /// The card of a fabric
    Card,
    /// All fabrics by their stretch across and along
    Map,
}
