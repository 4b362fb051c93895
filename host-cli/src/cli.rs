//! The command line: every verb and flag, in one place.

use std::ffi::OsString;

use clap::builder::StyledStr;
use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{Args, CommandFactory as _, FromArgMatches as _, Parser, Subcommand, ValueEnum};

use crate::error::{Error, one_line};

const CHECK_EXAMPLES: &str = "\
Examples:
  Marks 10 cm apart, pulled to 10.5 cm; does it give 5 %?
      tenter check --gauge 10cm --to 10.5cm --wants 5%

  Three pulls after a settling pull, read a minute after letting go:
      tenter check --gauge 250mm --settling --to 265mm --to 266mm --to 265mm --back 252mm@60s --wants 5%

  Not less than 20 % and not more than 30 %, and hardly any growth:
      tenter check --gauge 10cm --to 12.4cm --to 12.5cm --back 10.2cm@1min --wants 20%..30% --growth-at-most 3%

  Against the gauge printed on an envelope, on an inch tape:
      tenter check --gauge 4in --to '5 1/2in' --wants '4in to 5 3/8in'

  A reading after each pull belongs to the pull before it:
      tenter check --gauge 200mm --to 230mm --back 204mm@30min --to 231mm --back 205mm@30min

The answer is meets, short, over or close (too close to call), with the chance behind it.
Exit code: 0 measured, or meets; 1 short or over; 3 close or unknown; 2 a mistake in what was typed.";

/// Does this cloth give enough? Marked-length pull tests, with what the reading is worth.
#[derive(Parser, Debug)]
#[command(name = "tenter", version, arg_required_else_help = true, disable_help_subcommand = true)]
struct Cli {
    #[command(subcommand)]
    verb: VerbArgs,
}

#[derive(Subcommand, Debug)]
enum VerbArgs {
    /// One pull test from the command line; nothing is stored
    #[command(after_help = CHECK_EXAMPLES)]
    Check(CheckArgs),
}

/// The flags of `check`, as typed.
#[derive(Args, Debug, Clone)]
pub struct CheckArgs {
    /// Distance between the two marks before the pull: 10cm, 104.5mm, 4in, '4 1/8in'
    #[arg(long, value_name = "LENGTH")]
    pub gauge: String,
    /// Distance while pulled; once for each pull
    #[arg(long, value_name = "LENGTH", required = true)]
    pub to: Vec<String>,
    /// Distance after release and when: 101mm@60s, 10.1cm@30min; belongs to the --to before it
    #[arg(long, value_name = "LENGTH@TIME")]
    pub back: Vec<String>,
    /// A first pull was made and not counted, so that the cloth has settled
    #[arg(long)]
    pub settling: bool,
    /// The grain that was pulled
    #[arg(long, value_enum, default_value_t = GrainArg::Crosswise)]
    pub grain: GrainArg,
    /// Stretch that is wanted: 5%, 20%..30%, ..30%, or a printed gauge '4in to 5 3/8in'
    #[arg(long, value_name = "RANGE")]
    pub wants: Option<String>,
    /// Most growth that will do, at the longest rest: 3%
    #[arg(long, value_name = "PERCENT")]
    pub growth_at_most: Option<String>,
    /// Least recovery that will do, the share of the extension given back: 90%
    #[arg(long, value_name = "PERCENT")]
    pub recovery_at_least: Option<String>,
    /// Distance between two lines of the scale [default: 1mm, or 1/16in when the gauge is in inches]
    #[arg(long, value_name = "LENGTH")]
    pub division: Option<String>,
    /// Ends read on the scale: one (the other mark held at zero) or both
    #[arg(long, value_enum, default_value_t = EndsArg::One)]
    pub ends: EndsArg,
    /// How the swatch was held
    #[arg(long, value_enum, default_value_t = HeldArg::Folded)]
    pub held: HeldArg,
    /// What pulled: hand, or a mass or force such as 500g, 15N, 3lb
    #[arg(long, value_name = "FORCE", default_value = "hand")]
    pub load: String,
    /// How far your own pulls differ, in points; 0 counts the scale alone [default: assumed from open data]
    #[arg(long, value_name = "POINTS")]
    pub scatter: Option<String>,
    /// Table of stretch classes; an unknown name lists them all
    #[arg(long, value_name = "NAME", default_value = "own")]
    pub table: String,
    /// How sure a plain answer must be, in percent
    #[arg(long, value_name = "PERCENT", default_value = "95")]
    pub confidence: String,
    /// Unit of bare numbers and of the text [default: that of the gauge]
    #[arg(long, value_enum)]
    pub units: Option<UnitArg>,
    /// Print one JSON object instead of text
    #[arg(long)]
    pub json: bool,
}

/// A grain, as typed.
#[derive(ValueEnum, Debug, Clone, Copy, PartialEq, Eq)]
pub enum GrainArg {
    /// Along warp or wales
    Lengthwise,
    /// Along weft or courses
    Crosswise,
    /// At 45° to both
    Bias,
}

/// Ends that are read, as typed.
#[derive(ValueEnum, Debug, Clone, Copy, PartialEq, Eq)]
pub enum EndsArg {
    /// One mark is held at zero
    #[value(alias = "1")]
    One,
    /// Both marks are read
    #[value(alias = "2")]
    Both,
}

/// A way of holding, as typed.
#[derive(ValueEnum, Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeldArg {
    /// One layer, away from edges
    Flat,
    /// Folded along the pull
    Folded,
    /// A cut strip
    Strip,
    /// A sewn loop
    Loop,
}

/// A unit, as typed.
#[derive(ValueEnum, Debug, Clone, Copy, PartialEq, Eq)]
pub enum UnitArg {
    /// Millimetres
    Mm,
    /// Centimetres
    Cm,
    /// Inches
    In,
}

/// A reading in the order it was typed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reading {
    /// The text after a `--to`.
    To(String),
    /// The text after a `--back`.
    Back(String),
}

/// A verb with its flags.
#[derive(Debug)]
pub enum Verb {
    /// One pull test, nothing stored.
    Check {
        /// The flags.
        args: Box<CheckArgs>,
        /// `--to` and `--back` in the order they were typed.
        readings: Vec<Reading>,
    },
}

/// What a command line asks for.
#[derive(Debug)]
pub enum Parsed {
    /// Run a verb.
    Run(Verb),
    /// Show help or the version.
    Show(StyledStr),
}

/// Reads the words of a command line, the program's name first.
///
/// # Errors
///
/// [`Error::Usage`] with one line that says what to type instead.
pub fn parse(words: impl IntoIterator<Item = impl Into<OsString> + Clone>) -> Result<Parsed, Error> {
    let matches = match Cli::command().try_get_matches_from(words) {
        Ok(matches) => matches,
        Err(error) => return shown_or_wrong(&error),
    };
    let cli = match Cli::from_arg_matches(&matches) {
        Ok(cli) => cli,
        Err(error) => return shown_or_wrong(&error),
    };
    match cli.verb {
        VerbArgs::Check(args) => {
            let readings = matches.subcommand_matches("check").map(|check| in_order(check, &args)).unwrap_or_default();
            Ok(Parsed::Run(Verb::Check { args: Box::new(args), readings }))
        }
    }
}

/// `--to` and `--back` in the order they were typed.
fn in_order(matches: &clap::ArgMatches, args: &CheckArgs) -> Vec<Reading> {
    let places = |flag: &str| matches.indices_of(flag).into_iter().flatten();
    let pulls = places("to").zip(args.to.iter().cloned().map(Reading::To));
    let rests = places("back").zip(args.back.iter().cloned().map(Reading::Back));
    let mut readings: Vec<(usize, Reading)> = pulls.chain(rests).collect();
    readings.sort_by_key(|(place, _)| *place);
    readings.into_iter().map(|(_, reading)| reading).collect()
}

fn shown_or_wrong(error: &clap::Error) -> Result<Parsed, Error> {
    match error.kind() {
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion | ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => {
            Ok(Parsed::Show(error.render()))
        }
        _ => Err(Error::Usage(one_line_of(error))),
    }
}

/// The parser's complaint in one line with its remedy.
fn one_line_of(error: &clap::Error) -> String {
    let word = |kind| match error.get(kind) {
        Some(ContextValue::String(text)) => Some(text.clone()),
        Some(ContextValue::Strings(texts)) => Some(texts.join(", ")),
        _ => None,
    };
    let argument = word(ContextKind::InvalidArg).unwrap_or_default();
    let flag = argument.split(' ').next().unwrap_or_default();
    let value = one_line(&word(ContextKind::InvalidValue).unwrap_or_default());
    match error.kind() {
        ErrorKind::UnknownArgument if argument.starts_with('-') && argument.contains(|c: char| c.is_ascii_digit()) => {
            format!("'{}': a length cannot be negative; type it without the minus sign", one_line(&argument))
        }
        ErrorKind::UnknownArgument => {
            let near =
                word(ContextKind::SuggestedArg).map(|near| format!("; did you mean {near}?")).unwrap_or_default();
            format!("'{}' is no flag here{near}; see tenter check --help", one_line(&argument))
        }
        ErrorKind::InvalidSubcommand => {
            let name = word(ContextKind::InvalidSubcommand).unwrap_or_default();
            format!("'{}' is no verb; type tenter check, or tenter --help for the list", one_line(&name))
        }
        ErrorKind::MissingRequiredArgument => {
            format!("missing {argument}; type for example tenter check --gauge 10cm --to 10.5cm --wants 5%")
        }
        ErrorKind::InvalidValue if value.is_empty() => format!("{flag} needs a value; see tenter check --help"),
        ErrorKind::InvalidValue => {
            let known = word(ContextKind::ValidValue).unwrap_or_default();
            format!("{flag} '{value}': type one of {known}")
        }
        ErrorKind::ArgumentConflict => format!("{flag} was given twice; give it once"),
        ErrorKind::InvalidUtf8 => "an argument is not text; type it again in plain letters".to_owned(),
        _ => error.to_string().lines().next().unwrap_or("cannot read this command line").replace("error: ", ""),
    }
}

/// The command line as `clap` sees it, for completions and manual pages.
#[must_use]
pub fn definition() -> clap::Command {
    Cli::command()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn definition_is_sound() {
        definition().debug_assert();
    }

    #[test]
    fn readings_keep_their_order() {
        let words = "tenter check --gauge 1 --to 2 --back 3@1s --to 4 --to 5 --back 6@1s";
        let Ok(Parsed::Run(Verb::Check { readings, .. })) = parse(words.split(' ')) else { panic!("no check") };
        let (to, back) = (|t: &str| Reading::To(t.to_owned()), |t: &str| Reading::Back(t.to_owned()));
        assert_eq!(readings, [to("2"), back("3@1s"), to("4"), to("5"), back("6@1s")]);
    }
}
