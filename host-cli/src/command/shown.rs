//! Everything that the log knows of a cloth, to be shown.

use tenter_core::{Confidence, Table, Unit};

use crate::error::Error;
use crate::finding::cloth::{Shown, Standing};
use crate::log::{ByConstruction, Entry, Fabric, Here, StoredTest, Subject};
use crate::store::{Read, WhichTests};

/// How figures are read and shown.
#[derive(Clone, Copy, Debug)]
pub struct ShownRules {
    /// How sure an interval is.
    pub confidence: Confidence,
    /// The table of stretch classes.
    pub table: &'static Table,
    /// The unit of lengths.
    pub unit: Unit,
}

/// A cloth with all its tests and entries.
#[derive(Debug)]
pub struct KnownCloth {
    /// The cloth.
    pub fabric: Fabric,
    tests: Vec<StoredTest>,
    history: Vec<Entry>,
}

impl KnownCloth {
    /// Reads them.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn of(read: &dyn Read, fabric: Fabric) -> Result<Self, Error> {
        let (tests, history) = (read.tests(WhichTests::Of(fabric.id))?, read.history(Subject::Fabric(fabric.id))?);
        Ok(Self { fabric, tests, history })
    }

    /// What they say, with the person's repeatability.
    #[must_use]
    pub fn shown(&self, pooled: ByConstruction, rules: ShownRules, here: Here) -> Shown<'_> {
        let ShownRules { confidence, table, unit } = rules;
        let (fabric, tests) = (&self.fabric, &self.tests);
        let standing = Standing::all(fabric, tests, &pooled, confidence, here);
        Shown { fabric, tests, history: &self.history, standing, pooled, table, confidence, unit, here }
    }
}
