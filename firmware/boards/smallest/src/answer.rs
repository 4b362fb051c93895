//! A line with a test becomes a line with what it is worth.
//!
//! Lengths in millimetres with at most one decimal, in the order in which they were read: the gauge length after the settling pull,
//! `=250` for another look at it, a number for a pull, `251@1800` for the length so many seconds after release. Last what
//! is asked, in percent: `5%`. The answer is `6.4 % +-1.9 meets 0.973`, and after `settle` what would settle it.

use core::fmt::{self, Write};

use tenter_core::{
    Answer, Confidence, Context, Decimal, Demand, Evaluation, Grain, Length, Limit, PullTest, Range, Rules, TestError,
};

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// The line is no test.
    Line,
    /// The test cannot be.
    Test,
}

impl From<TestError> for Refused {
    fn from(_: TestError) -> Self {
        Self::Test
    }
}

/// Writes the answer to a line, or why there is none.
pub fn answer(line: &str, out: &mut impl Write) -> fmt::Result {
    let (test, demand) = match read(line) {
        Ok(read) => read,
        Err(Refused::Line) => return out.write_str("no test in this line"),
        Err(Refused::Test) => return out.write_str("no cloth reads like this"),
    };
    match &Evaluation::believed(&test, &demand, &Rules::default(), &Context::default()) {
        Ok(evaluation) => write(evaluation, out),
        Err(_) => out.write_str("no pull in this line"),
    }
}

/// The test in a line, and what is asked.
#[inline(never)] // Its frame ends before the answer's begins.
fn read(line: &str) -> Result<(PullTest, Demand), Refused> {
    let mut words = line.split_ascii_whitespace();
    let gauge = words.next().and_then(length).ok_or(Refused::Line)?;
    let mut test = PullTest::new(gauge, Grain::Crosswise)?.with_settling_pull(true);
    let mut asked = None;
    for word in words {
        if let Some(percent) = word.strip_suffix('%') {
            let tenths = tenths(percent).ok_or(Refused::Line)?;
            asked = Some(Limit::milli_percent(tenths * 100).map_err(|_| Refused::Line)?);
        } else if let Some(look) = word.strip_prefix('=') {
            test.add_look(length(look).ok_or(Refused::Line)?)?;
        } else if let Some((back, seconds)) = word.split_once('@') {
            let seconds = whole(seconds).ok_or(Refused::Line)?;
            test.add_rest(seconds, length(back).ok_or(Refused::Line)?)?;
        } else {
            test.add_pull(length(word).ok_or(Refused::Line)?)?;
        }
    }
    Ok((test, Demand::for_grain(Grain::Crosswise, Range { at_least: asked, at_most: None })))
}

#[inline(never)]
fn write(evaluation: &Evaluation, out: &mut impl Write) -> fmt::Result {
    let stretch = &evaluation.figures.stretch;
    out.write_str(&stretch.ratio.percent(1).text())?;
    out.write_str(" % +-")?;
    out.write_str(&Decimal::ceil(stretch.half_width(Confidence::default()), 1).text())?;
    for part in &evaluation.parts {
        out.write_str(" ")?;
        out.write_str(part.answer.word())?;
        if let Some(chance) = part.chance {
            out.write_str(" ")?;
            out.write_str(&Decimal::round(chance, 3).text())?;
        }
    }
    if !evaluation.doubts.is_empty() {
        out.write_str(" doubted")?;
    }
    if evaluation.answer == Some(Answer::Close) {
        settle(evaluation, out)?;
    }
    Ok(())
}

fn settle(evaluation: &Evaluation, out: &mut impl Write) -> fmt::Result {
    let Some(plan) = evaluation.settle.and_then(|settle| settle.plan) else { return out.write_str(" settle nothing") };
    out.write_str(" settle")?;
    for (count, of) in [(plan.days, "days"), (plan.pulls, "pulls"), (plan.looks, "looks"), (plan.rests, "rests")] {
        out.write_str(" ")?;
        out.write_str(&Decimal::new(count.into(), 0).text())?;
        out.write_str(" ")?;
        out.write_str(of)?;
    }
    out.write_str(if plan.known_load { " hung" } else { " by hand" })
}

/// Millimetres, to a tenth.
fn length(text: &str) -> Option<Length> {
    let tenths = i32::try_from(tenths(text)?).ok()?;
    tenths.checked_mul(Length::STEPS_PER_MM / 10).map(Length::from_steps)
}

/// A number with at most one decimal, in tenths.
fn tenths(text: &str) -> Option<u32> {
    let (before, after) = text.split_once('.').unwrap_or((text, "0"));
    if after.len() != 1 {
        return None;
    }
    whole(before)?.checked_mul(10)?.checked_add(whole(after)?)
}

fn whole(text: &str) -> Option<u32> {
    let digits = text.bytes().map(|byte| byte.checked_sub(b'0').filter(|digit| *digit < 10));
    let some = digits.clone().next().is_some();
    let sum =
        digits.map(|digit| digit.map(u32::from)).try_fold(0u32, |sum, digit| sum.checked_mul(10)?.checked_add(digit?));
    sum.filter(|_| some)
}
