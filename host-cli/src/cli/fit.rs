//! The flags of `fit`.

use clap::Args;
use clap::builder::{PossibleValuesParser, TypedValueParser};
use tenter_core::making::garment::{Detail, GarmentKind};
use tenter_core::making::zip::ZipEnds;

use super::choice;
use super::reading::{ConfidenceArg, ShopArg, ShowArgs};
use crate::input::plan::TypedPlan;
use crate::input::size::elastic;
use crate::input::synonym::{ZIP_ENDS, is};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
      tenter fit 'Choir trousers' A
      tenter fit choir a --role main --all
      tenter fit 'Play coat' --json
      tenter fit choir a main=1 main+waistband=76cm zip=18cm

Each role lists every cloth: first those that meet it, then those too close to call, with the way to settle it, then \
those not measured, with the pull that is missing. Cloths that are short or over come last. Each line says whether the \
length is enough, shrinkage included. Where nothing fits, tenter says what to look for.
Exit code: 0 every role has a cloth that meets it and is long enough; 3 some role has only close or unknown ones; \
1 some role has none; 2 a mistake in what you typed.";

/// The flags of `fit`, as typed.
#[derive(Args, Debug, Clone)]
pub struct FitArgs {
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
    /// List every cloth, however many
    #[arg(long)]
    pub all: bool,
    /// The plan on one sheet, from the wash to the last press, with the best cloth for each role, or those of --use
    #[arg(long)]
    pub sheet: bool,
    /// What is on the sheet.
    #[command(flatten)]
    pub plan: PlanArgs,
    /// How shops cut cloth.
    #[command(flatten)]
    pub shop: ShopArg,
    /// How sure an answer must be.
    #[command(flatten)]
    pub confidence: ConfidenceArg,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// A pattern and its view, as far as they were named, with what goes on a plan sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetRequest {
    /// The words of their names.
    pub names: Vec<String>,
    /// The sheet.
    pub plan: PlanArgs,
}

impl SheetRequest {
    /// Puts each word where it belongs: `main=1` is a cloth for a role, `main+waistband=76cm` a seam, `zip=18cm closed` a
    /// zip, `soft waist 76cm` an elastic; any other is of a name, and so is one that `is_name` knows.
    pub fn of<'w>(words: impl Iterator<Item = &'w String>, plan: &PlanArgs, is_name: impl Fn(&str) -> bool) -> Self {
        let (mut names, mut plan) = (Vec::new(), plan.clone());
        // What follows --cord and is no length is of a name.
        let after_cord =
            plan.choices.cord.take_if(|text| !text.is_empty() && !text.starts_with(|c: char| c.is_ascii_digit()));
        if after_cord.is_some() {
            plan.choices.cord = Some(String::new());
        }
        for word in &after_cord.into_iter().chain(words.cloned()).collect::<Vec<_>>() {
            match word.split_once('=') {
                _ if is_name(word) => names.push(word.clone()),
                None if elastic(word).is_ok() => plan.choices.elastic.push(word.clone()),
                None => names.push(word.clone()),
                Some((name, value)) if is(name, "zip") => {
                    let ends = value.rsplit_once(' ').and_then(|(edge, ends)| Some((edge, ZIP_ENDS.typed(ends)?)));
                    plan.choices.zip = Some(ends.map_or(value, |(edge, _)| edge).to_owned());
                    plan.choices.zip_ends = ends.map(|(_, ends)| ends).or(plan.choices.zip_ends);
                }
                Some((name, value)) if is(name, "cord") => plan.choices.cord = Some(value.to_owned()),
                Some((name, _)) if name.contains('+') => plan.choices.seam.push(word.clone()),
                Some(_) => plan.r#use.push(word.clone()),
            }
        }
        Self { names, plan }
    }
}

impl FitArgs {
    /// What is meant by the words; `is_name` knows the names of patterns and views.
    #[must_use]
    pub fn planned(&self, is_name: impl Fn(&str) -> bool) -> SheetRequest {
        SheetRequest::of(self.pattern.iter().chain(&self.view).chain(&self.words), &self.plan, is_name)
    }
}

/// What a plan sheet is made for, as typed.
#[derive(Args, Debug, Clone, Default, PartialEq, Eq)]
#[command(next_help_heading = "The plan sheet")]
pub struct PlanArgs {
    /// The cloth for a role of the sheet: main=1
    #[arg(long, value_name = "ROLE=TAG")]
    pub r#use: Vec<String>,
    /// What the garment is and has.
    #[command(flatten)]
    pub choices: ChoiceArgs,
    /// Print the numbers, the rule and its source under each line of the sheet
    #[arg(long)]
    pub why: bool,
}

/// What a garment is and has, as typed.
#[derive(Args, Debug, Clone, Default, PartialEq, Eq)]
#[command(next_help_heading = "The plan sheet")]
pub struct ChoiceArgs {
    /// What the garment is [default: the kind of the view]
    #[arg(long, value_name = "GARMENT", value_parser = choice::GARMENT_KIND)]
    pub kind: Option<GarmentKind>,
    /// What it has beyond the usual: hood,welt-pockets
    #[arg(long, value_name = "DETAIL", value_delimiter = ',', value_parser = detail())]
    pub with: Vec<Detail>,
    /// What it does not have, of the usual: collar
    #[arg(long, value_name = "DETAIL", value_delimiter = ',', value_parser = detail())]
    pub without: Vec<Detail>,
    /// The length of a seam between two roles, with its name and its grain where they are not the usual ones:
    /// 'main+waistband=60cm', 'main+hood:neck=60cm', 'main+panel=60cm lengthwise' [default: 50 cm]
    #[arg(long, value_name = "ROLE+ROLE:SEAM=LENGTH")]
    pub seam: Vec<String>,
    /// An edge for a zip, finished, or as cut with --zip-neck and --zip-hem: 18cm, 31in
    #[arg(long, value_name = "LENGTH")]
    pub zip: Option<String>,
    /// What the neck or waist seam takes of that edge
    #[arg(long, value_name = "LENGTH")]
    pub zip_neck: Option<String>,
    /// What the hem takes of that edge
    #[arg(long, value_name = "LENGTH")]
    pub zip_hem: Option<String>,
    /// Whether the zip parts at its lower end [default: as the garment has it; else closed up to 24 in, open above]
    #[arg(long, value_parser = choice::ZIP_ENDS, requires = "zip")]
    pub zip_ends: Option<ZipEnds>,
    /// Elastic: its kind, its place, the body measure; if you know them its width, what it must pass over, and how far it
    /// stretches: 'soft waist 76cm 25mm over 100cm gives 80%'
    #[arg(long, value_name = "KIND PLACE LENGTH")]
    pub elastic: Vec<String>,
    /// The garment is for a child
    #[arg(long)]
    pub child: bool,
    /// It has a cord or drawstring: the edge that it draws in, laid open, and the cord's width, such as '110cm 5mm'
    #[arg(long, value_name = "LENGTH", num_args = 0..=1, default_missing_value = "")]
    pub cord: Option<String>,
    /// It is sleepwear
    #[arg(long)]
    pub sleepwear: bool,
    /// It fits tightly
    #[arg(long)]
    pub tight: bool,
}

impl From<&PlanArgs> for TypedPlan {
    fn from(args: &PlanArgs) -> Self {
        Self { uses: args.r#use.clone(), choices: (&args.choices).into(), shop_cut: None }
    }
}

/// A detail of a garment, by its word.
fn detail() -> impl TypedValueParser<Value = Detail> {
    PossibleValuesParser::new(Detail::ALL.map(Detail::word)).try_map(|word| Detail::from_word(&word).ok_or("unknown"))
}
