//! Everything that the log knows of a cloth, to be shown.

use tenter_core::{Confidence, Table, Unit};

use crate::finding::cloth::{Shown, Standing};
use crate::finding::kept::{self, Kept};
use crate::finding::memory::{self, Seen};
use crate::log::{Entry, Fabric, Garment, Hands, Here, People, StoredTest, Subject};
use crate::store::{Read, StoreError, WhichTests};

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
    photos: Vec<Seen>,
    garments: Vec<Garment>,
    kept: Vec<Kept>,
    people: People,
}

impl KnownCloth {
    /// Reads them.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn of(read: &dyn Read, fabric: Fabric) -> Result<Self, StoreError> {
        let (tests, history) = (read.tests(WhichTests::Of(fabric.id))?, read.history(Subject::Fabric(fabric.id))?);
        let (photos, garments) = (memory::photos(read, &fabric)?, read.garments()?);
        let kept = match garments.is_empty() {
            true => Vec::new(),
            false => kept::kept(core::slice::from_ref(&fabric), &garments, &read.patterns()?),
        };
        Ok(Self { fabric, tests, history, photos, garments, kept, people: read.people()? })
    }

    /// What they say, with everybody's repeatability.
    #[must_use]
    pub fn shown<'k>(&'k self, pooled: &'k Hands, rules: ShownRules, here: Here) -> Shown<'k> {
        let ShownRules { confidence, table, unit } = rules;
        let (fabric, tests) = (&self.fabric, &self.tests);
        let standing = Standing::all(fabric, tests, pooled, confidence, here);
        let Self { history, photos, garments, kept, people, .. } = self;
        Shown {
            fabric,
            tests,
            history,
            photos,
            garments,
            kept,
            standing,
            people,
            pooled,
            table,
            confidence,
            unit,
            here,
        }
    }
}
