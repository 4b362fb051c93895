//! The stash as `fit` looks at it: live cloths, their newest tests, and the person's repeatability.

use std::collections::HashMap;

use tenter_core::{Grain, Scatter};

use crate::log::{ByConstruction, Fabric, Id, StoredTest};
use crate::store::{Read, StoreError, WhichTests};

/// The newest test of a grain, with the scatter to count with.
#[derive(Debug)]
pub struct Measured {
    /// The test.
    pub test: StoredTest,
    /// The person's repeatability on this construction, the test's own pulls left out.
    pub scatter: Scatter,
}

/// Live cloths with their newest tests.
#[derive(Debug, Default)]
pub struct Stock {
    /// The cloths that were not dropped, by tag.
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
        let mut fabrics = read.fabrics()?;
        fabrics.retain(|fabric| !fabric.dropped);
        let pooled = read.repeatability()?;
        let construction: HashMap<Id, _> = fabrics.iter().map(|fabric| (fabric.id, fabric.construction)).collect();
        let mut measured: HashMap<Id, [Option<Box<Measured>>; 3]> = HashMap::with_capacity(fabrics.len());
        read.each_test(WhichTests::Newest, &mut |test| {
            if let Some((fabric, construction)) = test.said.fabric.and_then(|id| Some((id, *construction.get(&id)?))) {
                let scatter = pooled.scatter_for(construction, &test.said.test);
                let grain = test.said.test.grain();
                if let Some(place) = measured.entry(fabric).or_default().get_mut(index(grain)) {
                    *place = Some(Box::new(Measured { test, scatter }));
                }
            }
            Ok(())
        })?;
        Ok(Self { fabrics, pooled, measured })
    }

    /// The newest test of a grain of a cloth.
    #[must_use]
    pub fn measured(&self, fabric: &Fabric, grain: Grain) -> Option<&Measured> {
        self.measured.get(&fabric.id)?.get(index(grain))?.as_deref()
    }
}

const fn index(grain: Grain) -> usize {
    match grain {
        Grain::Lengthwise => 0,
        Grain::Crosswise => 1,
        Grain::Bias => 2,
    }
}
