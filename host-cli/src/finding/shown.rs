//! Everything that the log knows of a cloth, to be shown.

use std::rc::Rc;

use tenter_core::{Confidence, Table, Unit};

use crate::finding::cloth::{Shown, Standing};
use crate::finding::kept::{self, Kept};
use crate::finding::memory::{self, Seen};
use crate::log::{Entry, Fabric, Garment, Hands, Here, Pattern, People, StoredTest, Subject};
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
    kept: Vec<Kept>,
    around: Rc<Around>,
}

/// What is the same for every cloth that is shown.
#[derive(Debug)]
pub struct Around {
    garments: Vec<Garment>,
    patterns: Vec<Pattern>,
    people: People,
}

impl Around {
    /// Reads it, once for however many cloths.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn read(read: &dyn Read) -> Result<Rc<Self>, StoreError> {
        let garments = read.garments()?;
        let patterns = if garments.is_empty() { Vec::new() } else { read.patterns()? };
        Ok(Rc::new(Self { garments, patterns, people: read.people()? }))
    }
}

impl KnownCloth {
    /// Reads them.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn of(read: &dyn Read, fabric: Fabric) -> Result<Self, StoreError> {
        Self::among(read, fabric, &Around::read(read)?)
    }

    /// The same of one of several cloths.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn among(read: &dyn Read, fabric: Fabric, around: &Rc<Around>) -> Result<Self, StoreError> {
        let (tests, history) = (read.tests(WhichTests::Of(fabric.id))?, read.history(Subject::Fabric(fabric.id))?);
        let photos = memory::photos(read, &fabric)?;
        let kept = kept::kept(core::slice::from_ref(&fabric), &around.garments, &around.patterns);
        Ok(Self { fabric, tests, history, photos, kept, around: Rc::clone(around) })
    }

    /// What they say, with everybody's repeatability.
    #[must_use]
    pub fn shown<'k>(&'k self, pooled: &'k Hands, rules: ShownRules, here: Here) -> Shown<'k> {
        let ShownRules { confidence, table, unit } = rules;
        let (fabric, tests) = (&self.fabric, &self.tests);
        let standing = Standing::all(fabric, tests, pooled, confidence, here);
        let Self { history, photos, kept, around, .. } = self;
        let (garments, people) = (&around.garments, &around.people);
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
