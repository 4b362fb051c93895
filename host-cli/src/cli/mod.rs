//! The command line: every verb and flag. One file a verb; completions and manual pages come from the same definition.

pub mod check;
pub mod choice;
pub mod cloth;
pub mod demo;
pub mod device;
pub mod export;
pub mod fit;
pub mod import;
pub mod log;
pub mod make;
pub mod making;
pub mod manual;
pub mod pattern;
pub mod people;
pub mod phone;
pub mod pull;
pub mod reading;
pub mod remember;
pub mod report;
#[cfg(feature = "serve")]
pub mod serve;
pub mod size;
mod spoken;
pub mod sync;
mod typed;

use std::ffi::OsString;
use std::path::PathBuf;

use clap::builder::StyledStr;
use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::parser::ValueSource;
use clap::{Arg, ArgAction, ArgMatches, Command, CommandFactory as _, FromArgMatches as _, Parser, Subcommand};

use tenter_core::Unit;

use crate::error::Error;
use crate::input::{Misuse, Near, Unparsed};
use crate::text::terminal_width;
use crate::words::instead::instead;
use check::CheckArgs;
use cloth::ClothVerb;
use device::DeviceVerb;
use export::ExportArgs;
use fit::FitArgs;
use import::ImportArgs;
use make::MakeVerb;
use pattern::PatternVerb;
use people::PeopleVerb;
use pull::PullArgs;
use report::ReportVerb;

/// Examples for the help of the program.
const EXAMPLES: &str = "\
Examples:
  Marks 10 cm apart, pulled to 10.6 cm; does it stretch 5 %?
      tenter check --marks 10cm --to 10.6cm --wants 5%

  Look round in samples, in a file of their own:
      tenter demo
      tenter --db demo.sqlite3 fit 'Choir trousers' A

Every verb shows examples: tenter check --help. The examples about stored cloths run in the samples.";

/// Does this cloth stretch enough? Marked-length pull tests, and how far to trust the reading.
#[derive(Parser, Debug)]
#[command(name = "tenter", version, arg_required_else_help = true, disable_help_subcommand = true, after_help = EXAMPLES)]
pub struct CommandLine {
    /// File of the log, or postgres://USER@HOST/DATABASE [default: tenter/log.sqlite3 in the user's data folder]
    #[arg(long, value_name = "FILE", global = true, env = "TENTER_DB")]
    pub db: Option<PathBuf>,
    /// What to do.
    #[command(subcommand)]
    pub verb: Verb,
    /// What it says of units.
    #[arg(skip)]
    pub units: Units,
}

/// What a command line says of units.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Its verb knows none.
    #[default]
    Unknown,
    /// Nothing.
    NotSaid,
    /// By the environment, for this line alone.
    ForNow(Unit),
    /// By an option.
    Said(Unit),
}

/// A verb with its flags.
#[derive(Subcommand, Debug)]
pub enum Verb {
    /// Judge one pull test; nothing is stored
    #[command(after_help = check::EXAMPLES)]
    Check(Box<CheckArgs>),
    /// The handheld: fetch its tests, send it the demands of a view
    #[command(after_help = device::EXAMPLES, arg_required_else_help = true)]
    #[command(subcommand)]
    Device(Box<DeviceVerb>),
    /// Store a pull test of a cloth; without lengths tenter asks for each step
    #[command(after_help = pull::EXAMPLES)]
    Pull(Box<PullArgs>),
    /// The cloths you own and those you saw in shops
    #[command(after_help = cloth::EXAMPLES, arg_required_else_help = true)]
    #[command(subcommand)]
    Cloth(Box<ClothVerb>),
    /// Patterns, and the demands of their views
    #[command(after_help = pattern::EXAMPLES, arg_required_else_help = true)]
    #[command(subcommand)]
    Pattern(Box<PatternVerb>),
    /// Which cloths suit which role of a view
    #[command(after_help = fit::EXAMPLES)]
    Fit(Box<FitArgs>),
    /// Garments: begun with chosen cloths, cut, finished and worn
    #[command(after_help = make::EXAMPLES, arg_required_else_help = true)]
    #[command(subcommand)]
    Make(Box<MakeVerb>),
    /// The people who pull, and how well each repeats
    #[command(after_help = people::EXAMPLES, arg_required_else_help = true)]
    #[command(subcommand)]
    People(Box<PeopleVerb>),
    /// Pages and pictures: the swatch book, cards, plan sheets, gauges to print
    #[command(after_help = report::EXAMPLES, arg_required_else_help = true)]
    #[command(subcommand)]
    Report(Box<ReportVerb>),
    /// Make a file of invented cloths and patterns to look round in
    #[command(after_help = demo::EXAMPLES)]
    Demo(demo::DemoArgs),
    /// Two cloths in one seam: do they behave alike, and how to sew them if not
    #[command(after_help = making::PAIR)]
    Pair(Box<making::PairArgs>),
    /// How to sew one cloth
    #[command(after_help = making::HANDLE)]
    Handle(Box<making::HandleArgs>),
    /// The weight to hang on a strip for a published tension, with the cautions
    #[command(after_help = making::HANG)]
    Hang(Box<making::HangArgs>),
    /// Ease, openings, elastic and zips, from body measures and measured stretch
    #[command(after_help = size::EXAMPLES)]
    Size(Box<size::SizeArgs>),
    /// How much a cloth shrank, from marks before and after a wash
    #[command(after_help = making::WASH)]
    Wash(Box<making::WashArgs>),
    /// Make the app for a phone, which needs no network
    #[command(after_help = phone::EXAMPLES)]
    Phone(phone::PhoneArgs),
    /// Completions for a shell
    #[command(after_help = manual::COMPLETIONS)]
    Completions(manual::CompletionsArgs),
    /// The manual as a page for man
    #[command(after_help = manual::MAN)]
    Man(manual::ManArgs),
    /// The whole job as pages in a browser, here or on a phone in your network
    #[cfg(feature = "serve")]
    #[command(after_help = serve::EXAMPLES)]
    Serve(serve::ServeArgs),
    /// Write the whole log to a file that import reads again
    #[command(after_help = export::EXAMPLES)]
    Export(ExportArgs),
    /// Read an exported log, or readings from a spreadsheet
    #[command(after_help = import::EXAMPLES)]
    Import(ImportArgs),
    /// Exchange what is new with another log, in both directions
    #[command(after_help = sync::EXAMPLES)]
    Sync(sync::LogSyncArgs),
    /// The log itself: check it, share it
    #[command(after_help = log::EXAMPLES, arg_required_else_help = true)]
    #[command(subcommand)]
    Log(log::LogVerb),
}

/// What a command line asks for.
#[derive(Debug)]
pub enum Parsed {
    /// Run a verb.
    Run(CommandLine),
    /// Show help or the version.
    Show(StyledStr),
}

/// Reads the words of a command line, the program's name first.
///
/// # Errors
///
/// [`Error::Misuse`] with one line that says what to type instead.
pub fn parse(words: impl IntoIterator<Item = impl Into<OsString> + Clone>) -> Result<Parsed, Error> {
    parse_with(words, None)
}

/// The same, with the units where the words say nothing of them.
///
/// # Errors
///
/// As [`parse`].
pub fn parse_with(
    words: impl IntoIterator<Item = impl Into<OsString> + Clone>,
    units: Option<Unit>,
) -> Result<Parsed, Error> {
    let words = asking_for_help(words.into_iter().map(Into::into).collect());
    let words = spoken::spoken(&definition(), words);
    let command = definition().term_width(terminal_width());
    let command = match units {
        Some(unit) => with_units(command, unit),
        None => command,
    };
    let matches = command.try_get_matches_from(&words);
    let named = |matches: &ArgMatches| matches.value_source("db") == Some(ValueSource::CommandLine);
    let named =
        matches.as_ref().is_ok_and(|matches| named(matches) || matches.subcommand_matches("demo").is_some_and(named));
    let read = |matches: ArgMatches| {
        let line = CommandLine::from_arg_matches(&matches)?;
        Ok(CommandLine { units: said_of_units(&matches), ..line })
    };
    match matches.and_then(read) {
        Ok(CommandLine { verb: Verb::Demo(_), .. }) if named => Err(Misuse::SamplesWithLog.into()),
        Ok(line) => Ok(Parsed::Run(line)),
        Err(error) => shown_or_wrong(&error, &verb_of(&words)),
    }
}

const UNITS: &str = "units";

/// A command whose verbs take a unit where none is said.
fn with_units(command: Command, unit: Unit) -> Command {
    let takes = command.get_arguments().any(|argument| argument.get_id() == UNITS);
    let command =
        if takes { command.mut_arg(UNITS, |argument| argument.default_value(unit.symbol())) } else { command };
    command.mut_subcommands(|verb| with_units(verb, unit))
}

/// What was said of units, by the verb that was typed.
fn said_of_units(mut matches: &ArgMatches) -> Units {
    while let Some((_, verb)) = matches.subcommand() {
        matches = verb;
    }
    match matches.try_get_one::<Unit>(UNITS) {
        Err(_) => Units::Unknown,
        Ok(said) => match matches.value_source(UNITS) {
            Some(ValueSource::CommandLine) => said.copied().map_or(Units::NotSaid, Units::Said),
            Some(ValueSource::EnvVariable) => said.copied().map_or(Units::NotSaid, Units::ForNow),
            _ => Units::NotSaid,
        },
    }
}

/// `tenter help check` is `tenter check --help`.
fn asking_for_help(mut words: Vec<OsString>) -> Vec<OsString> {
    if words.get(1).is_some_and(spoken::asks_for_help) {
        words.remove(1);
        words.push("--help".into());
    }
    words
}

/// The verb that was typed, as far as it is one: `tenter cloth add`.
fn verb_of(words: &[OsString]) -> String {
    let mut command = CommandLine::command();
    let mut name = command.get_name().to_owned();
    for word in words.iter().skip(1) {
        let Some(next) = command.find_subcommand(word) else { continue };
        name = format!("{name} {}", next.get_name());
        command = next.clone();
    }
    name
}

fn shown_or_wrong(error: &clap::Error, verb: &str) -> Result<Parsed, Error> {
    match error.kind() {
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion | ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => {
            Ok(Parsed::Show(error.render()))
        }
        _ => Err(Misuse::Unparsed(unparsed(error, verb)).into()),
    }
}

/// The parser's complaint as data.
fn unparsed(error: &clap::Error, verb: &str) -> Unparsed {
    let verb = verb.to_owned();
    let word = |kind| match error.get(kind) {
        Some(ContextValue::String(text)) => Some(text.clone()),
        Some(ContextValue::Strings(texts)) => Some(texts.join(", ")),
        _ => None,
    };
    let near = |kind| match error.get(kind) {
        Some(ContextValue::String(near)) => Near::Like(near.clone()),
        // The likeliest stands last.
        Some(ContextValue::Strings(near)) if !near.is_empty() => Near::Like(near.last().cloned().unwrap_or_default()),
        _ => Near::Help { verb: verb.clone() },
    };
    let argument = word(ContextKind::InvalidArg).unwrap_or_default();
    let flag = argument.split(' ').next().unwrap_or_default().to_owned();
    let value = word(ContextKind::InvalidValue).unwrap_or_default();
    match error.kind() {
        ErrorKind::UnknownArgument if argument.starts_with('-') && argument.contains(|c: char| c.is_ascii_digit()) => {
            Unparsed::Negative(argument)
        }
        ErrorKind::UnknownArgument if argument.starts_with('-') => {
            Unparsed::Option { name: argument, near: near(ContextKind::SuggestedArg) }
        }
        ErrorKind::UnknownArgument => Unparsed::Word { name: argument, near: near(ContextKind::SuggestedArg) },
        ErrorKind::InvalidSubcommand => {
            let name = word(ContextKind::InvalidSubcommand).unwrap_or_default();
            let below = verb.split_once(' ').map_or_else(|| name.clone(), |(_, above)| format!("{above} {name}"));
            let near = match (instead(&below), name.starts_with(|c: char| c.is_ascii_digit())) {
                (Some(_), _) => Near::Unclear(below),
                (None, true) => Near::Number,
                (None, false) => near(ContextKind::SuggestedSubcommand),
            };
            Unparsed::Command { name, near }
        }
        ErrorKind::MissingRequiredArgument => Unparsed::Missing { argument, verb },
        ErrorKind::InvalidValue if value.is_empty() => Unparsed::NoValue { flag, verb },
        ErrorKind::InvalidValue => {
            Unparsed::NotOneOf { flag, value, known: word(ContextKind::ValidValue).unwrap_or_default() }
        }
        ErrorKind::ArgumentConflict => match word(ContextKind::PriorArg).unwrap_or_default() {
            prior if prior.is_empty() || prior == argument => Unparsed::Twice { flag },
            prior => Unparsed::Conflict { one: argument, other: prior },
        },
        ErrorKind::MissingSubcommand => Unparsed::NoCommand { verb },
        ErrorKind::InvalidUtf8 => Unparsed::NotText,
        _ => Unparsed::Other(error.to_string().lines().next().map(|line| line.replace("error: ", ""))),
    }
}

/// The command line as `clap` sees it, for completions and manual pages.
#[must_use]
pub fn definition() -> clap::Command {
    in_any_capitals(CommandLine::command())
}

/// Words of a closed list are taken in any capitals, by each command below too.
fn in_any_capitals(command: clap::Command) -> clap::Command {
    let takes = |arg: &Arg| matches!(arg.get_action(), ArgAction::Set | ArgAction::Append);
    let any = |arg: Arg| if takes(&arg) { arg.ignore_case(true) } else { arg };
    command.mut_args(any).mut_subcommands(in_any_capitals)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::input::TypedReading;

    #[test]
    fn definition_is_sound() {
        definition().debug_assert();
    }

    /// A window of 80 columns, and one that is narrower, break no word of any help in two.
    #[test]
    fn help_is_wrapped_between_words() {
        let mut open = vec![definition()];
        while let Some(command) = open.pop() {
            open.extend(command.get_subcommands().cloned());
            let words = |width| {
                let text = command.clone().term_width(width).render_help().to_string();
                text.split_whitespace().map(str::to_owned).collect::<Vec<_>>()
            };
            assert_eq!(words(80), words(usize::MAX), "{}", command.get_name());
            let text = command.clone().term_width(80).render_help().to_string();
            let long = |line: &&str| line.chars().count() > 80 && line.trim().contains(' ');
            assert_eq!(text.lines().find(long), None, "{}", command.get_name());
        }
    }

    #[test]
    fn help_of_a_command_can_be_asked_for_both_ways() {
        let shown = |line: &str| match parse(line.split(' ')) {
            Ok(Parsed::Show(text)) => text.to_string(),
            other => panic!("{line}: {other:?}"),
        };
        assert_eq!(shown("tenter help check"), shown("tenter check --help"));
        assert_eq!(shown("tenter help cloth add"), shown("tenter cloth add --help"));
        assert_eq!(shown("tenter help"), shown("tenter --help"));
    }

    #[test]
    fn readings_keep_their_order() {
        let words = "tenter check --marks 1 --to 2 --back 3@1s --to 4 --to 5 --back 6@1s";
        let Ok(Parsed::Run(CommandLine { verb: Verb::Check(args), .. })) = parse(words.split(' ')) else {
            panic!("no check")
        };
        let (to, back) = (|t: &str| TypedReading::To(t.to_owned()), |t: &str| TypedReading::Back(t.to_owned()));
        assert_eq!(args.test.row.readings, [to("2"), back("3@1s"), to("4"), to("5"), back("6@1s")]);
    }
}
