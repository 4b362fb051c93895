//! The flags of a pull test and of the answer wanted, shared by the verbs that take readings.

use clap::{ArgMatches, Args, Command, FromArgMatches};
use tenter_core::{Ends, Grain, Held, Unit};

use super::choice;
use crate::input::Reading;

/// How a pull test was made, as typed.
#[derive(Args, Debug, Clone)]
pub struct TestFlags {
    /// Distance between the two marks, lying free: 10cm, 104.5mm, 4in, '4 1/8in'; once more for each time you read it again
    #[arg(long, value_name = "LENGTH")]
    pub marks: Vec<String>,
    /// The lengths in one breath: the marks, then each pull; 25.2@1m after release; 25.1@marks for the marks again
    #[arg(value_name = "LENGTH")]
    pub lengths: Vec<String>,
    /// Distance while pulled; once for each pull
    #[arg(long, value_name = "LENGTH")]
    pub to: Vec<String>,
    /// How many pulls you planned before you began [default: 3]
    #[arg(long, value_name = "PULLS")]
    pub planned: Option<String>,
    /// Distance after release, and how long after: 101mm@60s, 10.1cm@30min; belongs to the --to before it
    #[arg(long, value_name = "LENGTH@TIME")]
    pub back: Vec<String>,
    /// You made a first pull that does not count, so that the cloth has settled
    #[arg(long)]
    pub settling: bool,
    /// The grain that was pulled
    #[arg(long, value_parser = choice::GRAIN, default_value = Grain::Crosswise.word())]
    pub grain: Grain,
    /// Distance between two lines of the scale [default: 1mm, or 1/16in when the marks are in inches]
    #[arg(long, value_name = "LENGTH")]
    pub division: Option<String>,
    /// Ends read on the scale: one (the other mark held at zero) or both
    #[arg(long, value_parser = choice::ENDS, default_value = Ends::One.word())]
    pub ends: Ends,
    /// How the swatch was held
    #[arg(long, value_parser = choice::HELD, default_value = Held::Folded.word())]
    pub held: Held,
    /// What pulled: hand, or a mass or force such as 500g, 15N, 3lb
    #[arg(long, value_name = "FORCE", default_value = "hand")]
    pub load: String,
    /// Take the readings as they are, though tenter doubts them
    #[arg(long)]
    pub as_read: bool,
}

/// A pull test as typed, its readings in the order in which they were typed.
#[derive(Debug, Clone)]
pub struct TestArgs {
    /// The flags.
    pub flags: TestFlags,
    /// `--to`, `--back` and every `--marks` after the first, in order.
    pub readings: Vec<Reading>,
}

impl FromArgMatches for TestArgs {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, clap::Error> {
        let mut flags = TestFlags::from_arg_matches(matches)?;
        let places = |flag: &str| matches.indices_of(flag).into_iter().flatten();
        let pulls = places("to").zip(flags.to.iter().cloned().map(Reading::To));
        let rests = places("back").zip(flags.back.iter().cloned().map(Reading::Back));
        let looks = places("marks").zip(flags.marks.iter().cloned().map(Reading::Marks)).skip(1);
        let mut readings: Vec<(usize, Reading)> = pulls.chain(rests).chain(looks).collect();
        let mut lengths = places("lengths").zip(flags.lengths.clone());
        if flags.marks.is_empty() {
            flags.marks.extend(lengths.next().map(|(_, marks)| marks));
        }
        readings.extend(lengths.map(|(place, text)| (place, Reading::in_a_row(&text))));
        readings.sort_by_key(|(place, _)| *place);
        Ok(Self { readings: readings.into_iter().map(|(_, reading)| reading).collect(), flags })
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), clap::Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}

impl Args for TestArgs {
    fn augment_args(command: Command) -> Command {
        TestFlags::augment_args(command)
    }

    fn augment_args_for_update(command: Command) -> Command {
        TestFlags::augment_args_for_update(command)
    }
}

/// What is asked of a cloth, as typed.
#[derive(Args, Debug, Clone)]
pub struct WantsArgs {
    /// Stretch you want: 5%, 20%..30%, ..30%, or a printed gauge '4in to 5 3/8in'
    #[arg(long, value_name = "RANGE")]
    pub wants: Option<String>,
    /// Largest growth you accept, and when after release: 3%@30min [default time: 30min]
    #[arg(long, value_name = "PERCENT")]
    pub growth_at_most: Option<String>,
    /// Smallest recovery you accept, as a share of the extension: 90%@30min
    #[arg(long, value_name = "PERCENT")]
    pub recovery_at_least: Option<String>,
}

/// How sure an answer must be, as typed.
#[derive(Args, Debug, Clone)]
pub struct ConfidenceArg {
    /// How sure meets, short or over must be, in percent
    #[arg(long, value_name = "PERCENT", default_value = "95")]
    pub confidence: String,
}

/// The table of stretch classes, as typed.
#[derive(Args, Debug, Clone)]
pub struct TableArg {
    /// Table of stretch classes; an unknown name lists them all
    #[arg(long, value_name = "NAME", default_value = "own")]
    pub table: String,
}

/// How the result is shown, as typed.
#[derive(Args, Debug, Clone)]
pub struct ShowArgs {
    /// Unit of the text, and of bare numbers where the marks have no unit [default: that of the marks, or cm]
    #[arg(long, value_parser = choice::UNIT, env = "TENTER_UNITS")]
    pub units: Option<Unit>,
    /// Print one JSON object instead of text
    #[arg(long)]
    pub json: bool,
}

/// How lines of advice are shown, as typed.
#[derive(Args, Debug, Clone)]
pub struct AdviceArgs {
    /// Print the numbers, the rule and its source under each line
    #[arg(long)]
    pub why: bool,
    /// How sure an answer must be.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}
