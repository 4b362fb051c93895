//! The stash as `fit` looks at it: live fabrics, what was measured of them, and the person's repeatability.

use std::collections::HashMap;

use tenter_core::Grain;

use crate::finding::measured::Measured;
use crate::log::{ByConstruction, Fabric, Id, StoredTest};
use crate::store::{Read, StoreError, WhichTests};

/// Live fabrics with what was measured of them.
#[derive(Debug, Default)]
pub struct Stock {
    /// The fabrics that were not retired, by tag.
    pub fabrics: Vec<Fabric>,
    /// The person's repeatability.
    pub pooled: ByConstruction,
    measured: HashMap<Id, [Option<Box<Measured>>; 3]>,
}

impl Stock {
    /// Reads it from the log.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn read(read: &dyn Read) -> Result<Self, StoreError> {
        Self::of(read, |fabric| !fabric.dropped)
    }

    /// The fabrics that are wanted, retired ones too where they are.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn of(read: &dyn Read, wanted: impl Fn(&Fabric) -> bool) -> Result<Self, StoreError> {
        let mut fabrics = read.fabrics()?;
        fabrics.retain(wanted);
        let (pooled, here) = (read.repeatability()?, read.here());
        let mut tests: HashMap<Id, Vec<StoredTest>> = fabrics.iter().map(|fabric| (fabric.id, Vec::new())).collect();
        read.each_test(WhichTests::All, &mut |test| {
            if let Some(mine) = test.said.fabric.and_then(|fabric| tests.get_mut(&fabric)) {
                mine.push(test);
            }
            Ok(())
        })?;
        let of = |fabric: &Fabric| {
            let tests = tests.get(&fabric.id).map(Vec::as_slice).unwrap_or_default();
            let along = |grain| Measured::of(fabric, tests, grain, &pooled, here).map(Box::new);
            (fabric.id, [Grain::Lengthwise, Grain::Crosswise, Grain::Bias].map(along))
        };
        let measured = fabrics.iter().map(of).collect();
        Ok(Self { fabrics, pooled, measured })
    }

    /// What was measured of a grain of a fabric.
    #[must_use]
    pub fn measured(&self, fabric: &Fabric, grain: Grain) -> Option<&Measured> {
        let index = match grain {
            Grain::Lengthwise => 0,
            Grain::Crosswise => 1,
            Grain::Bias => 2,
        };
        self.measured.get(&fabric.id)?.get::<usize>(index)?.as_deref()
    }
}
