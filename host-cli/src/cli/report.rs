//! The flags of `report`.

use clap::{Args, Subcommand, ValueEnum};
use tenter_core::{Grain, Unit};

use super::choice;
use super::fit::{PlanArgs, SheetRequest};
use super::reading::{ConfidenceArg, ShopArg, TableArg};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter report book --out book.html
      tenter report gauge --wants 5% --out gauge.html

Each page is one file. Open it in a browser, keep it, send it, or print it from there; it works offline. Print cards and \
gauges at 100 %, not fitted to the page, and measure the 100 mm line to be sure. On a single card, measure the bar that \
says how long it is. A file that is there already is replaced once the new one is complete. --out - writes to a pipe.";

/// Examples for the help of `report book`.
pub const BOOK: &str = "\
Examples:
      tenter report book --out book.html
      tenter report book --view 'Choir trousers' A --out trousers.html";

/// Examples for the help of `report cards`.
pub const CARDS: &str = "\
Examples:
      tenter report cards 1 4 10 --out cards.html";

/// Examples for the help of `report sheet`.
pub const SHEET: &str = "\
Examples:
      tenter report sheet 'Choir trousers' A --use main=1 --zip 18cm \\
          --out plan.html
      tenter report sheet 'Choir trousers' B --elastic 'soft waist 76cm' \\
          --out pull-on.html";

/// Examples for the help of `report gauge`.
pub const GAUGE: &str = "\
Examples:
      tenter report gauge --wants 5% --name 'choir trousers, main' \\
          --out gauge.html
      tenter report gauge --view 'Choir trousers' B --out gauges.html";

/// Examples for the help of `report sheets`.
pub const SHEETS: &str = "\
Examples:
      tenter report sheets --out everything.html
      tenter report sheets 2 --out coat.html

  Of a class whose garments you began with tenter make start --class 'Tuesday class':
      tenter make edit 2 --class 'Tuesday class'
      tenter report sheets --class 'Tuesday class' --out class.html

Each garment gets its plan, the cards of its cloths and the gauges of its view, with the name of whoever it is for.";

/// Examples for the help of `report form`.
pub const FORM: &str = "\
Examples:
      tenter report form --out form.html
      tenter report form 5 --wants 10% --lines 12 --out sateen.html

Type what the class wrote into a table, and read it in with tenter import:
      printf 'name,cloth,marks,settling,readings\\n' > readings.csv
      printf 'Ada,Lobby drill,10cm,yes,10.4 10.5 10.4 10.1@1min\\n' >> readings.csv
      printf 'Ben,Lobby drill,10cm,yes,10.6 10.6 10.7 10.1@1min\\n' >> readings.csv
      tenter import readings.csv";

/// Examples for the help of `report class`.
pub const CLASS: &str = "\
Examples:
      tenter report class 5 --out class.html";

/// Examples for the help of `report picture`.
pub const PICTURE: &str = "\
Examples:
      tenter report picture stretch 4 --out stretch.svg
      tenter report picture growth 9 --out growth.svg
      tenter report picture map --view 'Play coat' - --role lining \\
          --out map.svg";

/// What to make.
#[derive(Subcommand, Debug)]
pub enum ReportVerb {
    /// The stash as a book to look through and search
    #[command(after_help = BOOK)]
    Book(BookArgs),
    /// Cards to print and pin to the cloths, four to a sheet of A4
    #[command(after_help = CARDS)]
    Cards(CardsArgs),
    /// The plan of a view on one page, from the wash to the last press
    #[command(after_help = SHEET)]
    Sheet(Box<SheetArgs>),
    /// A gauge to print at true scale and pull a swatch on
    #[command(after_help = GAUGE)]
    Gauge(GaugeArgs),
    /// Plans, cards and gauges of all garments in one print
    #[command(after_help = SHEETS)]
    Sheets(SheetsArgs),
    /// A sheet to print for a class: how to measure, a pull gauge, lines for readings
    #[command(after_help = FORM)]
    Form(FormArgs),
    /// How several people's pulls of one cloth compare
    #[command(after_help = CLASS)]
    Class(ClassArgs),
    /// One picture as an SVG file
    #[command(after_help = PICTURE)]
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
            Self::Sheets(args) => &args.out,
            Self::Form(args) => &args.out,
            Self::Class(args) => &args.out,
            Self::Picture(args) => &args.out,
        }
    }
}

/// Where the file goes, as typed.
#[derive(Args, Debug, Clone)]
pub struct OutArg {
    /// File to write, or - for a pipe
    #[arg(long, short, value_name = "FILE")]
    pub out: String,
}

/// A view, as typed.
#[derive(Args, Debug, Clone)]
pub struct ViewArg {
    /// A pattern and its view: their demands are used
    #[arg(long, num_args = 2, value_names = ["PATTERN", "VIEW"])]
    pub view: Option<Vec<String>>,
}

/// The unit of a page, as typed.
#[derive(Args, Debug, Clone)]
pub struct UnitsArg {
    /// Unit of the lengths [default: the one you used first in this log, or mm]
    #[arg(long, value_parser = choice::UNIT, env = "TENTER_UNITS")]
    pub units: Option<Unit>,
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
    /// Numbers of the cloths [default: all that you own]
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
    /// The pattern, or a part of its name [default: the one you added to last]
    pub pattern: Option<String>,
    /// The view [default: the only one, or the one you added to last]
    pub view: Option<String>,
    /// What goes on the sheet, in a few words: main=1 main+waistband=60cm zip=18cm 'soft waist 76cm'
    #[arg(value_name = "WORD")]
    pub words: Vec<String>,
    /// Only this role; may be given more than once
    #[arg(long, value_name = "ROLE")]
    pub role: Vec<String>,
    /// What is on the sheet.
    #[command(flatten)]
    pub plan: PlanArgs,
    /// How shops cut cloth.
    #[command(flatten)]
    pub shop: ShopArg,
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

impl SheetArgs {
    /// What is meant by the words; `is_name` knows the names of patterns and views.
    #[must_use]
    pub fn planned(&self, is_name: impl Fn(&str) -> bool) -> SheetRequest {
        SheetRequest::of(self.pattern.iter().chain(&self.view).chain(&self.words), &self.plan, is_name)
    }
}

/// `report sheets`, as typed.
#[derive(Args, Debug, Clone)]
pub struct SheetsArgs {
    /// Garments, by number, name or person [default: all that are being made]
    #[arg(value_name = "GARMENT")]
    pub garments: Vec<String>,
    /// Of one class alone
    #[arg(long, value_name = "NAME", conflicts_with = "garments")]
    pub class: Option<String>,
    /// Leave out the names of people
    #[arg(long)]
    pub without_names: bool,
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

/// `report form`, as typed.
#[derive(Args, Debug, Clone)]
pub struct FormArgs {
    /// The cloth that all pull, by its number or name [default: none; each line has room for one]
    #[arg(value_name = "TAG")]
    pub fabric: Option<String>,
    /// The stretch that the pull gauge shows
    #[arg(long, value_name = "RANGE", default_value = "10%")]
    pub wants: String,
    /// Lines for readings
    #[arg(long, default_value_t = 12, value_parser = clap::value_parser!(u8).range(1..=14))]
    pub lines: u8,
    /// The file.
    #[command(flatten)]
    pub out: OutArg,
}

/// `report class`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ClassArgs {
    /// The cloth and the people.
    #[command(flatten)]
    pub class: super::people::CompareArgs,
    /// The file.
    #[command(flatten)]
    pub out: OutArg,
}

/// `report gauge`, as typed.
#[derive(Args, Debug, Clone)]
pub struct GaugeArgs {
    /// The stretch you want: 5%, 25%, 20%..30%, ..12%, '4in to 5 3/8in'
    #[arg(long, value_name = "RANGE", required_unless_present = "view", conflicts_with = "view")]
    pub wants: Option<String>,
    /// Name to print on the gauge
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
    /// Number of the cloth; a map needs none
    #[arg(value_name = "TAG", required_if_eq_any = [("kind", "stretch"), ("kind", "growth"), ("kind", "card")])]
    pub fabric: Option<String>,
    /// The grain of the growth [default: crosswise]
    #[arg(long, value_parser = choice::GRAIN)]
    pub grain: Option<Grain>,
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
    /// The stretch of a cloth along each grain, with its trust
    Stretch,
    /// The growth of a cloth after release, with its forecast
    Growth,
    /// The card of a cloth
    Card,
    /// All cloths by their stretch across and along
    Map,
}
