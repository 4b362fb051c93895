//! Readings that should not be believed, looked at before anything is made of them.

use tenter_core::{Construction, Context, Doubt, Evaluation, Length, PullTest, TestError, Unit, implausible};

use super::{CheckInput, Field, Why, Wrong};

/// What is known of the cloth besides the readings.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ClothFacts {
    /// How it is made.
    pub construction: Option<Construction>,
    /// How wide it is.
    pub width: Option<Length>,
}

/// Readings that are doubted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Doubted {
    /// Why, the reason first that is to be said first.
    pub doubts: Vec<Doubt>,
    /// The readings.
    pub test: PullTest,
    /// The unit in which to say them.
    pub unit: Unit,
}

impl Doubted {
    /// The readings, where there is a doubt about them. A doubt about what is asked is none.
    #[must_use]
    pub fn of(test: &PullTest, known: ClothFacts, bare: bool, unit: Unit) -> Option<Self> {
        let context = Context { construction: known.construction, cloth_width: known.width, demand: None, bare };
        let doubts: Vec<Doubt> = implausible(test, &context).iter().copied().collect();
        (!doubts.is_empty()).then(|| Self { doubts, test: test.clone(), unit })
    }

    /// The word of each doubt, as it is stored.
    #[must_use]
    pub fn words(&self) -> Vec<String> {
        self.doubts.iter().map(|doubt| doubt.word().to_owned()).collect()
    }
}

impl CheckInput {
    /// Figures, answers and doubts; the readings of a person who stands by them are taken as they are.
    ///
    /// # Errors
    ///
    /// [`TestError::NoPull`] without a pull.
    pub fn evaluate(&self) -> Result<Evaluation, TestError> {
        let ClothFacts { construction, width } = self.known;
        let demand = Some(&self.demand);
        let context = Context { construction, cloth_width: width, demand, bare: self.bare.is_some() };
        if !self.as_read && !self.stored {
            return Evaluation::believed(&self.test, &self.demand, &self.rules, &context);
        }
        let mut doubts = implausible(&self.test, &context);
        doubts.retain(|doubt| !self.as_read && doubt.is_about_demand());
        Ok(Evaluation::of(&self.test, &self.demand, &self.rules)?.with_doubts(&doubts))
    }

    /// Refuses what cloth of this construction does not give, and says whether the rest should be believed; a person who
    /// stands by it is taken at their word, which is [kept](Self::stood_by).
    ///
    /// # Errors
    ///
    /// More stretch than such cloth gives.
    pub fn believed(&mut self, known: ClothFacts) -> Result<Option<Doubted>, Wrong> {
        self.known = known;
        self.rules.construction = known.construction.unwrap_or_default();
        possible(&self.test, known.construction, self.unit)?;
        let doubted = Doubted::of(&self.test, known, self.bare.is_some(), self.unit);
        if self.as_read {
            self.stood_by = doubted.map(|doubted| doubted.words()).unwrap_or_default();
            return Ok(None);
        }
        Ok(doubted)
    }
}

/// Refuses a test with more stretch than cloth of its construction gives.
///
/// # Errors
///
/// The pull that gives it.
pub fn possible(test: &PullTest, construction: Option<Construction>, unit: Unit) -> Result<(), Wrong> {
    let Some(construction) = construction else { return Ok(()) };
    test.possible_for(construction).map_err(|error| {
        let most = |pull: &&Length| stretch_steps(test.gauge(), **pull);
        let extended = test.pulls().iter().max_by_key(most).copied().unwrap_or(test.gauge());
        beyond(test.gauge(), extended, Some(construction), unit, &extended.show(unit).to_string(), error)
    })
}

/// A pull that no cloth gives, as something wrong with what was typed.
#[must_use]
pub fn beyond(
    gauge: Length,
    extended: Length,
    construction: Option<Construction>,
    unit: Unit,
    text: &str,
    error: TestError,
) -> Wrong {
    let why = match error {
        TestError::MoreThanCloth { likely, .. } => Why::MoreThanCloth { gauge, extended, construction, likely, unit },
        other => Why::Reading(other),
    };
    Wrong::new(Field::To, text, why)
}

fn stretch_steps(gauge: Length, extended: Length) -> i32 {
    extended.steps().saturating_sub(gauge.steps())
}
