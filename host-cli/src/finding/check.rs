//! What one pull test says, and what to do next.

use tenter_core::forecast::{Forecast, ForecastError, forecast};
use tenter_core::{
    Answer, Ask, Construction, Evaluation, Figure, Figures, Note, Part, Settle, Side, Suit, TestError, suits,
};

use crate::input::CheckInput;

/// How far a first pull reads low on knits, in points: 2.6 at 2 N and 3.0 at 5 N on the mean of thirteen swatches
/// (computed from the data of Singal et al., Nature Communications 15 (2024) 2622).
const FIRST_PULL_POINTS: f32 = 3.0;
/// When growth is foreseen, in seconds after release: 30 min and 1 h.
const FORESEEN: [u32; 2] = [1800, 3600];

/// Everything that `check` finds.
#[derive(Debug)]
pub struct Checked {
    /// The readings, the demand and the rules.
    pub input: CheckInput,
    /// The figures and answers.
    pub evaluation: Evaluation,
    /// The kinds of garment that ask for as much, the most demanding first.
    pub suits: Vec<&'static Suit>,
    /// What growth will be, by the seconds after release.
    pub forecasts: Vec<(u32, Forecast)>,
    /// Why no growth is foreseen, where the cloth was read more than once and that was too soon.
    pub no_forecast: Option<ForecastError>,
    /// What to do next.
    pub next: Vec<Next>,
}

/// What to do next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Say what is asked: nothing was.
    Ask,
    /// Nothing more along this grain.
    OtherGrain,
    /// Read again: the cloth came out shorter than it was.
    ReadAgain,
    /// Pull more or mark longer, as this says.
    Settle(Settle),
    /// The figure lies on the limit, so more pulls may or may not move it off.
    OnLimit {
        /// It was settled and pulled three times.
        well_read: bool,
    },
    /// Judge by growth: the cloth did not extend.
    JudgeByGrowth,
    /// Read the length so many seconds after release.
    ReadAfterRelease(u32),
    /// It gives what is asked, but comes back poorly, which nobody asked.
    ComesBackPoorly,
    /// Make a settling pull before refusing it: a first pull may read as low as this.
    SettleFirst,
    /// Leave it: no more than so many percent are certain.
    GivesOnly(Ask, f32),
    /// Leave it: it may be as much as so many percent.
    MayReach(Ask, f32),
}

impl Checked {
    /// Judges the readings.
    ///
    /// # Errors
    ///
    /// Readings that no figure can be made of.
    pub fn of(input: CheckInput) -> Result<Self, TestError> {
        let evaluation = input.evaluate()?;
        let mut suits = suits(&input.test, &input.rules)?.collect::<Vec<_>>();
        suits.reverse();
        if !evaluation.doubts.is_empty() {
            suits.clear(); // A reading that is doubted suits nothing.
        }
        let foreseen = FORESEEN.map(|seconds| forecast(&input.test, seconds).map(|forecast| (seconds, forecast)));
        let no_forecast = foreseen.last().and_then(|latest| latest.err());
        let next = next(&input, &evaluation);
        Ok(Self {
            suits,
            forecasts: foreseen.into_iter().flatten().collect(),
            // Somebody who read once does not expect a forecast.
            no_forecast: no_forecast.filter(|error| matches!(error, ForecastError::TooEarly | ForecastError::TooClose)),
            next,
            input,
            evaluation,
        })
    }

    /// The name of the stretch in the chosen table.
    #[must_use]
    pub fn class(&self) -> &'static str {
        self.input.table.class(self.evaluation.figures.stretch.ratio).name
    }

    /// The parts that the headline does not tell.
    pub fn other_parts(&self) -> impl Iterator<Item = &Part> {
        let told = self.evaluation.deciding();
        self.evaluation.parts.iter().filter(move |part| Some(*part) != told)
    }
}

/// What to do after an evaluation of a test, or of all tests of its grain.
#[must_use]
pub fn next(input: &CheckInput, evaluation: &Evaluation) -> Vec<Next> {
    if !evaluation.doubts.is_empty() {
        return Vec::new(); // Each doubt says what to do about it.
    }
    let Some(answer) = evaluation.answer else {
        // To ask of a stored test with the same readings would store them twice; fit asks for a view.
        return if input.stored { Vec::new() } else { vec![Next::Ask] };
    };
    match answer {
        Answer::Meets if evaluation.notes.contains(&Note::ShorterThanBefore) => vec![Next::ReadAgain],
        Answer::Meets if comes_back_poorly(input, evaluation) => vec![Next::ComesBackPoorly],
        Answer::Meets => vec![Next::OtherGrain],
        Answer::Close => vec![evaluation.settle.map_or_else(
            || Next::OnLimit { well_read: input.test.settled() && input.test.pulls().len() > 2 },
            Next::Settle,
        )],
        Answer::Unknown if evaluation.figures.rest.is_some() => vec![Next::JudgeByGrowth],
        Answer::Unknown => vec![Next::ReadAfterRelease(input.demand.rest_seconds)],
        Answer::Short | Answer::Over => {
            let refused = evaluation.parts.iter().filter(|part| matches!(part.answer, Answer::Short | Answer::Over));
            refused.filter_map(|part| refusal(part, input, evaluation)).collect()
        }
    }
}

/// Whether it comes back poorly, and neither growth nor recovery is asked.
fn comes_back_poorly(input: &CheckInput, evaluation: &Evaluation) -> bool {
    let asked = input.demand.growth_at_most.is_some() || input.demand.recovery_at_least.is_some();
    !asked && evaluation.notes.contains(&Note::ComesBackPoorly)
}

/// What a refused cloth would still do.
fn refusal(part: &Part, input: &CheckInput, evaluation: &Evaluation) -> Option<Next> {
    let figure = figure(&evaluation.figures, part.ask)?;
    let confidence = input.rules.confidence;
    if part.side == Side::AtLeast && part.ask == Ask::Stretch && first_pull_may_explain(part, &figure, input) {
        return Some(Next::SettleFirst);
    }
    Some(match part.side {
        Side::AtLeast => Next::GivesOnly(part.ask, figure.at_least(confidence).max(0.0)),
        Side::AtMost => Next::MayReach(part.ask, figure.at_most(confidence)),
    })
}

/// Whether the cloth would not be refused if its first pull had read as low as a knit's does. A woven's does not.
fn first_pull_may_explain(part: &Part, stretch: &Figure, input: &CheckInput) -> bool {
    let missing = part.limit.ratio().percent_f32() - stretch.at_most(input.rules.confidence);
    input.rules.construction != Construction::Woven
        && !input.test.settled()
        && input.test.pulls().len() == 1
        && missing < FIRST_PULL_POINTS
}

/// The figure that something is asked of.
#[must_use]
pub fn figure(figures: &Figures, ask: Ask) -> Option<Figure> {
    match ask {
        Ask::Stretch => Some(figures.stretch),
        Ask::Growth => figures.rest.map(|rest| rest.growth),
        Ask::Recovery => figures.rest.and_then(|rest| rest.recovery),
    }
}
