//! The stash as `fit` looks at it: live fabrics, what was measured of them, and everybody's repeatability.

use std::collections::HashMap;

use tenter_core::making::yardage::ShopCut;
use tenter_core::{Grain, Length};

use crate::finding::kept::{self, Kept, cut_of};
use crate::finding::measured::Measured;
use crate::finding::memory::{LastTime, last_time};
use crate::log::{Fabric, Garment, Hands, Id, StoredTest};
use crate::store::{Read, StoreError, WhichTests};

/// Live fabrics with what was measured of them.
#[derive(Debug, Default)]
pub struct Stock {
    /// The fabrics that were not retired, by tag.
    pub fabrics: Vec<Fabric>,
    /// Everybody's repeatability.
    pub pooled: Hands,
    /// What open garments keep of them.
    pub kept: Vec<Kept>,
    /// To what the reader's shop cuts cloth, where that was said.
    pub shop_cut: Option<ShopCut>,
    /// What was learned of each of them, or of one like it.
    remembered: HashMap<Id, LastTime>,
    measured: MeasuredCloths,
}

/// What was measured of each cloth, grain by grain.
type MeasuredCloths = HashMap<Id, [Option<Box<Measured>>; 3]>;

/// Up to so many cloths are asked for one by one.
const FEW: usize = 8;

/// What was measured of cloths. Of many the tests come cloth by cloth, so that those of one are held at a time.
fn measured(read: &dyn Read, fabrics: &[Fabric], pooled: &Hands) -> Result<MeasuredCloths, StoreError> {
    let here = read.here();
    let of = |fabric: &Fabric, tests: &[StoredTest]| {
        let along = |grain| Measured::of(fabric, tests, grain, pooled, here).map(Box::new);
        (fabric.id, [Grain::Lengthwise, Grain::Crosswise, Grain::Bias].map(along))
    };
    if fabrics.len() <= FEW {
        return fabrics.iter().map(|fabric| Ok(of(fabric, &read.tests(WhichTests::Of(fabric.id))?))).collect();
    }
    let by_id: HashMap<Id, &Fabric> = fabrics.iter().map(|fabric| (fabric.id, fabric)).collect();
    let mut measured = MeasuredCloths::new();
    let mut tests: Vec<StoredTest> = Vec::new();
    let mut put = |tests: &mut Vec<StoredTest>| {
        let fabric = tests.first().and_then(|test| by_id.get(&test.said.fabric?));
        measured.extend(fabric.map(|fabric| of(fabric, tests)));
        tests.clear();
    };
    read.each_test(WhichTests::ByCloth, &mut |test| {
        if tests.first().is_some_and(|first| first.said.fabric != test.said.fabric) {
            put(&mut tests);
        }
        tests.push(test);
        Ok(())
    })?;
    put(&mut tests);
    Ok(measured)
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
        let all = read.fabrics()?;
        let (pooled, here) = (read.repeatability()?, read.here());
        // A cloth that is gone still teaches.
        let told = |fabric: &Fabric| Some((fabric.id, last_time(fabric, &all, here)?));
        let remembered = match all.iter().any(|fabric| !fabric.lessons.is_empty()) {
            true => all.iter().filter(|fabric| wanted(fabric)).filter_map(told).collect(),
            false => HashMap::new(),
        };
        let fabrics: Vec<Fabric> = all.into_iter().filter(|fabric| wanted(fabric)).collect();
        let measured = measured(read, &fabrics, &pooled)?;
        let kept = kept::kept(&fabrics, &read.garments()?, &read.patterns()?);
        Ok(Self { fabrics, pooled, kept, shop_cut: None, remembered, measured })
    }

    /// The same for a reader whose shop cuts so.
    #[must_use]
    pub fn with_shop_cut(self, shop_cut: Option<ShopCut>) -> Self {
        Self { shop_cut, ..self }
    }

    /// The stock as it was before anything was cut for a garment, with nothing kept for it: what its plan is made from.
    #[must_use]
    pub fn before(mut self, garment: &Garment) -> Self {
        self.kept.retain(|kept| kept.garment.id != garment.id);
        for one in &garment.uses {
            let Some(fabric) = self.fabrics.iter_mut().find(|fabric| fabric.id == one.fabric) else { continue };
            if let (Some(cut), Some(had)) = (cut_of(fabric, garment.id, one.role), fabric.length) {
                fabric.length = Some(Length::from_steps(had.steps().saturating_add(cut.length.steps())));
            }
        }
        self
    }

    /// What was learned of a cloth, or of one like it.
    #[must_use]
    pub fn last_time(&self, fabric: &Fabric) -> Option<&LastTime> {
        self.remembered.get(&fabric.id)
    }

    /// What open garments keep of a cloth.
    pub fn kept_of(&self, fabric: &Fabric) -> impl Iterator<Item = &Kept> {
        let id = fabric.id;
        self.kept.iter().filter(move |kept| kept.fabric == id)
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
