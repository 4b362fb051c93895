//! The flags of `make`.

use clap::{Args, Subcommand};

use tenter_core::making::garment::Stage;

use super::choice;
use super::fit::{ChoiceArgs, PlanArgs, SheetRequest};
use super::reading::{ConfidenceArg, ShopArg, ShowArgs};
use super::remember::LearnedFlags;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter make start 'Play coat' --use main=3 --use lining=12 \\
          --for 'the innkeeper' --by 2026-12-12
      tenter make list
      tenter make plan 3

A garment is called by its number, its name, or the person it is for. Names of persons are kept in the file of your log, \
and in what you export from it. tenter make forget takes a name out of the file for good.";

/// Examples for the help of `make start`.
pub const START: &str = "\
Examples:
      tenter make start 'Play coat' --use main=3 --use lining=12 \\
          --for 'the innkeeper' --by 2026-12-12
      tenter make start choir b main=10 zip=18cm

What you choose for its plan, such as --with, --seam, --zip and --elastic, is kept with the garment. \
The cloths keep what the garment takes, until it is cut or done: no other garment is promised the same length.";

/// Examples for the help of `make list`.
pub const LIST: &str = "\
Examples:
      tenter make list
      tenter make list --all";

/// Examples for the help of `make show`.
pub const SHOW: &str = "\
Examples:
      tenter make show 1
      tenter make show 'Choir trousers'";

/// Examples for the help of `make plan`.
pub const PLAN: &str = "\
Examples:
      tenter make plan 2
      tenter make plan 2 main+lining=60cm --out coat.html

What you chose when you began it is in the plan; --zip, --with and the like choose anew for this plan only. The plan \
follows what you measure and change. It is for all of the cloth that you chose, whether it is cut or not.";

/// Examples for the help of `make edit`.
pub const EDIT: &str = "\
Examples:
      tenter make edit 2 --by 2027-01-15
      tenter make edit 2 lining=12 --note 'two inside pockets'";

/// Examples for the help of `make cut`.
pub const CUT: &str = "\
Examples:
      tenter make cut 2 --role lining
      tenter make uncut 2 --role lining

What the role takes comes off the length on hand. Pass --role and --length if you cut another length.";

/// Examples for the help of `make uncut`.
pub const UNCUT: &str = "\
Examples:
      tenter make cut 2 --role lining
      tenter make uncut 2

The cloth gets back what the cut took, unless you measured the cloth since.";

/// Examples for the help of `make tick`.
pub const TICK: &str = "\
Examples:
      tenter make tick 2 prewash sample
      tenter make tick 2 seams

The list then shows which stage is next, and the plan which are done. Cutting is ticked off by tenter make cut.";

/// Examples for the help of `make untick`.
pub const UNTICK: &str = "\
Examples:
      tenter make untick 2 seams";

/// Examples for the help of `make done`.
pub const DONE: &str = "\
Examples:
      tenter make done 2 --needle 'universal 80' --stitch 'straight 2.5'
      tenter make reopen 2";

/// Examples for the help of `make wore`.
pub const WORE: &str = "\
Examples:
      tenter make wore 1 'seat bagged after two concerts'
      tenter make wore 1 'no mark left' --role main

tenter keeps it with the cloth, and shows it the next time that you choose that cloth.";

/// Examples for the help of `make reopen`.
pub const REOPEN: &str = "\
Examples:
      tenter make reopen 1";

/// Examples for the help of `make retire`.
pub const RETIRE: &str = "\
Examples:
      tenter make retire 2 --note 'the play is off'

Its cloths are free for others. What was cut stays cut.";

/// Examples for the help of `make return`.
pub const RETURN: &str = "\
Examples:
      tenter make retire 2
      tenter make return 2";

/// Examples for the help of `make forget`.
pub const FORGET: &str = "\
Examples:
      tenter make forget 2

The name goes out of the file of your log for good; the garment stays. Files that you exported before still hold it, and \
so do the logs of others who imported them. A name in a note stays: change the note.";

/// What to do with a garment.
#[derive(Subcommand, Debug, Clone)]
pub enum MakeVerb {
    /// Begin a garment from a view with chosen cloths
    #[command(after_help = START)]
    Start(Box<StartArgs>),
    /// List the garments that are open, the late ones first
    #[command(after_help = LIST)]
    List(ListMadeArgs),
    /// Show one garment: its cloths, what is cut, and what it taught
    #[command(after_help = SHOW)]
    Show(OneArgs),
    /// The plan of a garment, from the wash to the last press
    #[command(after_help = PLAN)]
    Plan(Box<PlanOfArgs>),
    /// Change what is stored about a garment
    #[command(after_help = EDIT)]
    Edit(Box<EditArgs>),
    /// Record that you cut its cloths, all or for one role
    #[command(after_help = CUT)]
    Cut(CutForArgs),
    /// Take back what was recorded as cut
    #[command(after_help = UNCUT)]
    Uncut(UncutArgs),
    /// Tick off stages of the work that are done
    #[command(after_help = TICK)]
    Tick(TickArgs),
    /// Take back a tick
    #[command(after_help = UNTICK)]
    Untick(TickArgs),
    /// Record that it is finished, and what worked
    #[command(after_help = DONE)]
    Done(DoneArgs),
    /// Record how it wore
    #[command(after_help = WORE)]
    Wore(WoreArgs),
    /// Take up a finished garment again
    #[command(after_help = REOPEN)]
    Reopen(OneArgs),
    /// Give a garment up; what is known of it stays
    #[command(after_help = RETIRE)]
    Retire(RetireMadeArgs),
    /// Take up a garment again that you gave up
    #[command(after_help = RETURN)]
    Return(OneArgs),
    /// Take the name of the person out of the log for good
    #[command(after_help = FORGET)]
    Forget(OneArgs),
}

/// What is said about a garment, as typed.
#[derive(Args, Debug, Clone, Default)]
pub struct GarmentFlags {
    /// The cloth for a role: main=7; may be given more than once
    #[arg(long, value_name = "ROLE=TAG")]
    pub r#use: Vec<String>,
    /// For whom it is
    #[arg(long = "for", value_name = "PERSON")]
    pub whom: Option<String>,
    /// The class or course in which it is made; tenter report sheets --class prints all of it
    #[arg(long, value_name = "NAME")]
    pub class: Option<String>,
    /// The day on which it is wanted: 2026-12-12, '12 Dec', friday, 'in 3 weeks', or unknown
    #[arg(long, value_name = "DAY")]
    pub by: Option<String>,
    /// What to call it [default: the pattern and the view]
    #[arg(long, value_name = "TEXT")]
    pub name: Option<String>,
    /// The number to call it by [default: the next free one]
    #[arg(long, value_name = "NUMBER")]
    pub number: Option<String>,
    /// Anything else
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
    /// What its plan is made from.
    #[command(flatten)]
    pub choices: ChoiceArgs,
}

/// `make tick`, as typed.
#[derive(Args, Debug, Clone)]
pub struct TickArgs {
    /// The number of the garment, its name, or the person it is for
    pub garment: String,
    /// The stages
    #[arg(value_name = "STAGE", required = true, value_parser = choice::STAGE)]
    pub stages: Vec<Stage>,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `make start`, as typed.
#[derive(Args, Debug, Clone)]
pub struct StartArgs {
    /// The pattern, or a part of its name
    pub pattern: String,
    /// The view [default: the only one, or the one you added to last]
    pub view: Option<String>,
    /// The cloth for each role, in a few words: main=3 lining=12
    #[arg(value_name = "ROLE=TAG")]
    pub words: Vec<String>,
    /// The rest.
    #[command(flatten)]
    pub flags: GarmentFlags,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

impl StartArgs {
    /// What is meant by the words; `is_name` knows the names of patterns and views.
    #[must_use]
    pub fn planned(&self, is_name: impl Fn(&str) -> bool) -> SheetRequest {
        let words = core::iter::once(&self.pattern).chain(&self.view).chain(&self.words);
        let plan =
            PlanArgs { r#use: self.flags.r#use.clone(), choices: self.flags.choices.clone(), ..PlanArgs::default() };
        SheetRequest::of(words, &plan, is_name)
    }
}

/// `make edit`, as typed.
#[derive(Args, Debug, Clone)]
pub struct EditArgs {
    /// The number of the garment, its name, or the person it is for
    pub garment: String,
    /// Another cloth for a role: lining=12
    #[arg(value_name = "ROLE=TAG")]
    pub words: Vec<String>,
    /// What changes.
    #[command(flatten)]
    pub flags: GarmentFlags,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `make list`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ListMadeArgs {
    /// Finished and retired ones too
    #[arg(long)]
    pub all: bool,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// A garment, as typed.
#[derive(Args, Debug, Clone)]
pub struct OneArgs {
    /// The number of the garment, its name, or the person it is for
    pub garment: String,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `make plan`, as typed.
#[derive(Args, Debug, Clone)]
pub struct PlanOfArgs {
    /// The number of the garment, its name, or the person it is for
    pub garment: String,
    /// What goes on the sheet, in a few words: main+waistband=60cm zip=18cm 'soft waist 76cm'
    #[arg(value_name = "WORD")]
    pub words: Vec<String>,
    /// How shops cut cloth.
    #[command(flatten)]
    pub shop: ShopArg,
    /// File to write it to as a page that prints; without it the plan is shown here
    #[arg(long, short, value_name = "FILE")]
    pub out: Option<String>,
    /// What is on the sheet.
    #[command(flatten)]
    pub plan: PlanArgs,
    /// How sure an answer must be.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `make cut`, as typed.
#[derive(Args, Debug, Clone)]
pub struct CutForArgs {
    /// The number of the garment, its name, or the person it is for
    pub garment: String,
    /// Only for this role
    #[arg(long, value_name = "ROLE")]
    pub role: Option<String>,
    /// How much you cut [default: what the role takes]
    #[arg(long, value_name = "LENGTH")]
    pub length: Option<String>,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `make uncut`, as typed.
#[derive(Args, Debug, Clone)]
pub struct UncutArgs {
    /// The number of the garment, its name, or the person it is for
    pub garment: String,
    /// Only for this role
    #[arg(long, value_name = "ROLE")]
    pub role: Option<String>,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `make done`, as typed.
#[derive(Args, Debug, Clone)]
pub struct DoneArgs {
    /// The number of the garment, its name, or the person it is for
    pub garment: String,
    /// The role whose cloth taught it [default: the first]
    #[arg(long, value_name = "ROLE")]
    pub role: Option<String>,
    /// What worked, and how it wore.
    #[command(flatten)]
    pub learned: LearnedFlags,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `make wore`, as typed.
#[derive(Args, Debug, Clone)]
pub struct WoreArgs {
    /// The number of the garment, its name, or the person it is for
    pub garment: String,
    /// How it wore
    #[arg(value_name = "TEXT")]
    pub wore: String,
    /// The role whose cloth it is about [default: the first]
    #[arg(long, value_name = "ROLE")]
    pub role: Option<String>,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `make retire`, as typed.
#[derive(Args, Debug, Clone)]
pub struct RetireMadeArgs {
    /// The number of the garment, its name, or the person it is for
    pub garment: String,
    /// Why
    #[arg(long, value_name = "TEXT", default_value = "")]
    pub note: String,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}
