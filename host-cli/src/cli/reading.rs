//! The flags of a pull test and of the answer wanted, shared by the verbs that take readings.

use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{ArgMatches, Args, Command, FromArgMatches};
use tenter_core::making::yardage::ShopCut;
use tenter_core::{Ends, Grain, Held, Unit};

use super::choice;
use crate::input::row::{self, RowPart, TestRow};
use crate::input::synonym::GRAIN;
use crate::input::{CONFIDENCE, TypedReading};

/// How a pull test was made, as typed.
#[derive(Args, Debug, Clone)]
pub struct TestFlags {
    /// Distance between the two marks, lying free: 10cm, 104.5mm, 4in, '4 1/8in'; once more for each time you read it again
    #[arg(long, short, value_name = "LENGTH")]
    pub marks: Vec<String>,
    /// The test in one line: the marks, then each pull; 25.2@1m after release; 25.1@marks for the marks again; 5% for what you want; along or across before the marks
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
    #[arg(long, short)]
    pub settling: bool,
    /// The grain that was pulled
    #[arg(long, short, value_parser = choice::GRAIN, default_value = Grain::Crosswise.word())]
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

/// Pull tests as typed, the readings of each in the order in which they were typed.
#[derive(Debug, Clone)]
pub struct TestArgs {
    /// The flags.
    pub flags: TestFlags,
    /// The words before the first length that are none: they go on with the name of the cloth, where one is named.
    pub name: Vec<String>,
    /// The test.
    pub row: TestRow,
    /// Tests along further grains, whose words were typed between the lengths.
    pub further: Vec<TestRow>,
}

impl TestArgs {
    /// Whether a length was typed.
    #[must_use]
    pub fn has_lengths(&self) -> bool {
        self.row.marks.is_some() || !self.row.readings.is_empty() || !self.further.is_empty()
    }
}

impl FromArgMatches for TestArgs {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, clap::Error> {
        let flags = TestFlags::from_arg_matches(matches)?;
        let places = |flag: &str| matches.indices_of(flag).into_iter().flatten();
        let read = |reading: fn(String) -> TypedReading| move |text: &String| RowPart::Reading(reading(text.clone()));
        let mut lengths = places("lengths").zip(flags.lengths.clone()).peekable();
        let mut name = Vec::new();
        if matches.try_contains_id("fabric").is_ok() {
            let named = |word: &str| !word.contains(|c: char| c.is_ascii_digit()) && GRAIN.typed(word).is_none();
            name.extend(core::iter::from_fn(|| lengths.next_if(|(_, word)| named(word)).map(|(_, word)| word)));
        }
        let pulls = places("to").zip(flags.to.iter().map(read(TypedReading::To)));
        let rests = places("back").zip(flags.back.iter().map(read(TypedReading::Back)));
        let looks = places("marks").zip(flags.marks.iter().map(read(TypedReading::Marks))).skip(1);
        let words = lengths.map(|(place, word)| (place, RowPart::Word(word)));
        let mut parts: Vec<(usize, RowPart)> = pulls.chain(rests).chain(looks).chain(words).collect();
        parts.sort_by_key(|(place, _)| *place);
        let parts = parts.into_iter().map(|(_, part)| part).collect();
        let (row, further) = row::rows(flags.marks.first().cloned(), parts);
        let flag = matches.try_get_one::<String>("wants").ok().flatten();
        for row in core::iter::once(&row).chain(&further) {
            let other = row.second.clone().or_else(|| flag.map(|wants| format!("--wants {wants}")));
            if let (Some(wants), Some(other)) = (&row.wants, other) {
                return Err(conflict(wants, &other));
            }
        }
        Ok(Self { flags, name, row, further })
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), clap::Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}

/// Two words of which only one can be meant.
fn conflict(one: &str, other: &str) -> clap::Error {
    let mut error = clap::Error::new(ErrorKind::ArgumentConflict);
    error.insert(ContextKind::InvalidArg, ContextValue::String(one.to_owned()));
    error.insert(ContextKind::PriorArg, ContextValue::String(other.to_owned()));
    error
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
    #[arg(long, short, value_name = "RANGE")]
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
    #[arg(long, value_name = "PERCENT", default_value = CONFIDENCE)]
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
    /// Unit of the text, and of bare numbers where the marks have no unit [default: the one you used first in this log, or
    /// that of the marks, or cm]
    #[arg(long, value_parser = choice::UNIT, env = "TENTER_UNITS")]
    pub units: Option<Unit>,
    /// Print one JSON object instead of text
    #[arg(long)]
    pub json: bool,
}

/// How shops cut cloth, as typed.
#[derive(Args, Debug, Clone)]
pub struct ShopArg {
    /// To what your shop cuts cloth [default: 10cm, or 1/8yd where lengths are told in inches]
    #[arg(long, value_name = "STEP", value_parser = choice::SHOP_CUT)]
    pub shop_cut: Option<ShopCut>,
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
