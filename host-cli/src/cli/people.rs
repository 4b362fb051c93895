//! The flags of `people`, and who pulls.

use clap::{Args, Subcommand};
use tenter_core::Grain;

use super::choice;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter pull 7 25 26.5 26.6 26.5 --by Anna
      tenter people list

Names are kept in the file of your log, and in what you export from it. tenter export --without-names leaves them out. \
tenter people forget takes a name out of the file for good; the tests stay.";

/// Examples for the help of `people list`.
pub const LIST: &str = "\
Examples:
      tenter people list";

/// Examples for the help of `people rename`.
pub const RENAME: &str = "\
Examples:
      tenter people rename Bram Abraham";

/// Examples for the help of `people merge`.
pub const MERGE: &str = "\
Examples:
  Edda and Eda are one person, called Edda from now on:
      tenter pull 5 10cm 10.8cm 10.9cm 10.8cm --settling --by Eda
      tenter people merge Eda Edda

If two logs each had an Edda and she is one person, type tenter people merge Edda.";

/// Examples for the help of `people here`.
pub const HERE: &str = "\
Examples:
  Tests without --by are Ada's; or tenter assumes nobody:
      tenter people here Ada
      tenter people here --nobody";

/// Examples for the help of `people compare`.
pub const COMPARE: &str = "\
Examples:
      tenter people compare 5
      tenter people compare 5 --without-names

tenter report class makes a page of it.";

/// Examples for the help of `people forget`.
pub const FORGET: &str = "\
Examples:
      tenter people forget Ada

The tests of a person whose name was forgotten stay together as those of one person without a name. Copies of the log, \
and files that you exported, keep the name: forget it there too. tenter make forget does the same for the person for \
whom a garment is made.";

/// Who pulls, as typed.
#[derive(Args, Debug, Clone, Default)]
pub struct ByArg {
    /// Who pulled; tenter remembers the first you name here. TENTER_BY names somebody for one window
    #[arg(long, value_name = "NAME")]
    pub by: Option<String>,
}

impl ByArg {
    /// The name, by whichever way it was given.
    #[must_use]
    pub fn name(&self) -> Option<String> {
        self.by.clone().or_else(by_for_now)
    }
}

/// Who pulls in this window, by the environment variable `TENTER_BY`.
#[must_use]
pub fn by_for_now() -> Option<String> {
    std::env::var("TENTER_BY").ok().filter(|name| !name.trim().is_empty())
}

/// What to do with the people.
#[derive(Subcommand, Debug, Clone)]
pub enum PeopleVerb {
    /// List the people who pulled, and how well each repeats
    #[command(after_help = LIST)]
    List(ListPeopleArgs),
    /// Give a person another name
    #[command(after_help = RENAME)]
    Rename(RenameArgs),
    /// Compare several people's pulls of one cloth
    #[command(after_help = COMPARE)]
    Compare(ComparePeopleArgs),
    /// Join two names that mean one person
    #[command(after_help = MERGE)]
    Merge(MergeArgs),
    /// Set who pulls at this desk where you do not pass --by
    #[command(after_help = HERE)]
    Here(HereArgs),
    /// Take a person's name out of the log for good; the tests stay
    #[command(after_help = FORGET)]
    Forget(ForgetArgs),
}

/// `people list`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ListPeopleArgs {
    /// Print one JSON array instead of text
    #[arg(long)]
    pub json: bool,
}

/// `people rename`, as typed.
#[derive(Args, Debug, Clone)]
pub struct RenameArgs {
    /// The person, by name
    pub person: String,
    /// The new name
    #[arg(value_name = "NAME")]
    pub name: String,
}

/// `people merge`, as typed.
#[derive(Args, Debug, Clone)]
pub struct MergeArgs {
    /// The name that goes
    pub person: String,
    /// The name that stays [default: the same, where several people have it]
    #[arg(value_name = "NAME")]
    pub into: Option<String>,
}

/// `people here`, as typed.
#[derive(Args, Debug, Clone)]
pub struct HereArgs {
    /// The person, by name; a new name is a new person
    #[arg(value_name = "NAME", required_unless_present = "nobody", conflicts_with = "nobody")]
    pub person: Option<String>,
    /// Assume nobody
    #[arg(long)]
    pub nobody: bool,
}

/// `people forget`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ForgetArgs {
    /// The person, by name
    pub person: String,
}

/// A cloth that several people pulled, as typed.
#[derive(Args, Debug, Clone)]
pub struct CompareArgs {
    /// The number on the cloth, or its name
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// The grain [default: the one that most people pulled]
    #[arg(long, short, value_parser = choice::GRAIN)]
    pub grain: Option<Grain>,
    /// Letters in place of names
    #[arg(long)]
    pub without_names: bool,
}

/// `people compare`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ComparePeopleArgs {
    /// The cloth and the people.
    #[command(flatten)]
    pub class: CompareArgs,
    /// Print one JSON object instead of text
    #[arg(long)]
    pub json: bool,
}
