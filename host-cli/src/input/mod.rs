//! What was typed, as readings, demands and rules: texts in, values or [`Wrong`] out.

pub mod amount;
pub mod cloth;
pub mod described;
pub mod doubt;
pub mod garment;
pub mod hang;
pub mod learned;
pub mod making;
mod misuse;
pub mod named;
pub mod pattern;
pub mod person;
#[cfg(feature = "pictures")]
pub mod photo;
pub mod plan;
pub mod row;
pub mod size;
pub mod synonym;
pub mod test;
pub mod wants;
pub mod when;
mod wrong;

use tenter_core::{Construction, Demand, PullTest, Rules, Table, Unit};

pub use amount::{length, load, seconds, shown_in, unit_of};
pub use doubt::{ClothFacts, Doubted};
pub use misuse::{FileFault, Misuse, Near, Unparsed};
pub use test::{TypedReading, TypedTest, division_in, pull_test};
pub use wants::{TypedWants, confidence, demand, limit, range, recovery, table};
pub use wrong::{ClassFigures, Field, PhotoFault, Why, Wrong};

/// The unit of bare numbers, unless the marks have one or the user has said inches.
pub const BARE: Unit = Unit::Cm;

/// How sure an answer must be where nobody says, in percent.
pub const CONFIDENCE: &str = "95";

/// Everything that an answer needs.
#[derive(Debug)]
pub struct CheckInput {
    /// The readings.
    pub test: PullTest,
    /// What is asked.
    pub demand: Demand,
    /// How answers are given.
    pub rules: Rules,
    /// The table of stretch classes.
    pub table: &'static Table,
    /// The unit of the text.
    pub unit: Unit,
    /// The unit in which bare numbers were taken; none where the marks had a unit of their own.
    pub bare: Option<Unit>,
    /// What is known of the cloth.
    pub known: ClothFacts,
    /// Whether the person stands by the readings and by what is asked, whatever speaks against them.
    pub as_read: bool,
    /// The words of the doubts about the readings that the person stood by.
    pub stood_by: Vec<String>,
    /// Whether the readings are in the log: believed, or the person stood by them.
    pub stored: bool,
}

/// A test and what is asked of it, as typed.
#[derive(Clone, Debug)]
pub struct TypedCheck {
    /// The readings.
    pub test: TypedTest,
    /// What is asked, and how.
    pub asked: TypedAsked,
    /// The scatter of the user's own pulls; none for the assumed one.
    pub scatter: Option<String>,
    /// How the cloth is made, where that was typed.
    pub construction: Option<Construction>,
    /// Whether the person stands by the readings.
    pub as_read: bool,
}

/// What is asked of a test, and how it is answered, as typed.
#[derive(Clone, Debug)]
pub struct TypedAsked {
    /// What is asked.
    pub wants: TypedWants,
    /// How sure an answer must be.
    pub confidence: String,
    /// The table of stretch classes.
    pub table: String,
    /// The unit of the text, and of bare numbers where the marks have none; none for that of the marks, or centimetres.
    pub unit: Option<Unit>,
}

/// Nothing is asked, and an answer must be sure by 95 %.
impl Default for TypedAsked {
    fn default() -> Self {
        let (confidence, table) = (CONFIDENCE.to_owned(), Table::OWN.key.to_owned());
        Self { wants: TypedWants::default(), confidence, table, unit: None }
    }
}

/// A test that is to be stored, as typed.
#[derive(Clone, Debug)]
pub struct TypedPull {
    /// The readings and what is asked of them.
    pub check: TypedCheck,
    /// The day on which it was pulled; none for now.
    pub at: Option<String>,
    /// A remark.
    pub note: Option<String>,
    /// Who pulled; none for the one who is remembered.
    pub by: Option<String>,
}

/// Reads a test and what is asked of it.
///
/// # Errors
///
/// The first text that cannot be read.
pub fn check(typed: &TypedCheck) -> Result<CheckInput, Wrong> {
    let marks = typed.test.marks.as_deref().and_then(unit_of);
    let bare = marks.or(typed.asked.unit).unwrap_or(BARE);
    let mut input = asked(pull_test(&typed.test, bare)?, bare, &typed.asked)?;
    input.unit = typed.asked.unit.unwrap_or(bare);
    input.rules.scatter = wants::scatter(typed.scatter.as_deref())?;
    input.bare = marks.is_none().then_some(bare);
    input.known.construction = typed.construction;
    input.rules.construction = typed.construction.unwrap_or_default();
    input.as_read = typed.as_read;
    doubt::possible(&input.test, typed.construction, input.unit)?;
    Ok(input)
}

/// What is asked of a test, on the assumed scatter.
///
/// # Errors
///
/// The first text that cannot be read.
pub fn asked(test: PullTest, unit: Unit, typed: &TypedAsked) -> Result<CheckInput, Wrong> {
    let demand = demand(&typed.wants, test.grain(), unit)?;
    let rules = Rules { confidence: confidence(&typed.confidence)?, ..Rules::default() };
    let (table, known) = (table(&typed.table)?, ClothFacts::default());
    let (bare, stood_by) = (None, Vec::new());
    Ok(CheckInput { test, demand, rules, table, unit, bare, known, as_read: false, stood_by, stored: false })
}
