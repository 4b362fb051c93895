//! `tenter report gauge`.

use tenter_core::{Ratio, Unit};

use super::{view, write};
use crate::cli::report::GaugeArgs;
use crate::error::Error;
use crate::input::{self, Field, Why, Wrong};
use crate::page::{made, print};
use crate::picture::Picture;
use crate::picture::true_scale::{PullGauge, pull_gauge};
use crate::store::Read;
use crate::text::TextOutput;
use crate::words::done;

/// Writes the gauges.
pub fn run(args: &GaugeArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let mut gauges: Vec<Picture> = Vec::new();
    if let Some((pattern, view)) = view(read, &args.view)? {
        gauges.extend(made::gauges((&pattern, &view))?);
    }
    if let Some(text) = &args.wants {
        let asked = input::range(Field::Wants, Some(text), Unit::Mm)?;
        let title = if args.name.trim().is_empty() { "stretch" } else { args.name.trim() };
        if asked.at_least.is_some_and(|least| least.ratio() <= Ratio::ZERO) && asked.at_most.is_none() {
            return Err(Wrong::new(Field::Wants, text, Why::EveryClothHasIt).into());
        }
        let wrong = || Wrong::new(Field::Wants, text, Why::TooLongForPaper);
        gauges.push(pull_gauge(&PullGauge { title, asked }).ok_or_else(wrong)?);
    }
    let count = if gauges.len() == 1 { "a gauge".to_owned() } else { format!("{} gauges", gauges.len()) };
    let said = done::to_print(&count);
    write(&args.out.out, &print::page("Pull gauge", &gauges), &said, screen)
}
