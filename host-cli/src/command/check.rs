//! `tenter check`: one pull test, nothing stored.

use std::path::Path;

use tenter_core::Answer;

use crate::cli::check::CheckArgs;
use crate::error::Error;
use crate::finding::check::Checked;
use crate::input::{self, Misuse};
use crate::json::check as check_json;
use crate::text::TextOutput;
use crate::text::check as check_text;

/// Runs the verb; 0 measured or meets, 1 short or over, 3 close or unknown.
///
/// # Errors
///
/// What was typed wrong, or an output that cannot be written.
pub fn run(args: &CheckArgs, db: Option<&Path>, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    if !args.test.further.is_empty() {
        return Err(Misuse::SecondTest.into());
    }
    let mut input = input::check(&args.into())?;
    if let Some(construction) = args.construction.map(input::cloth::construction)
        && let Some(store) = super::open_if_there(db, screen.here)?
    {
        input.rules.scatter = store.repeatability()?.everyone().on(construction).scatter();
    }
    let checked = Checked::of(input)?;
    if args.show.json {
        writeln!(screen.out, "{}", check_json::render(&checked))?;
    } else {
        write!(screen.out, "{}", check_text::render(&checked, screen.width, screen.unicode))?;
    }
    Ok(exit_code(checked.evaluation.answer))
}

/// The exit code of an answer.
#[must_use]
pub const fn exit_code(answer: Option<Answer>) -> u8 {
    match answer {
        None | Some(Answer::Meets) => 0,
        Some(Answer::Short | Answer::Over) => 1,
        Some(Answer::Close | Answer::Unknown) => 3,
    }
}
