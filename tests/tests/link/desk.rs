//! A handheld in memory.

use std::collections::{BTreeMap, BTreeSet};

use tenter_core::record::{LabelledDemand, decode_demand};
use tenter_core::wire::{Identity, LentTags, Listing, MAX_SAVED_BYTES, NameList, Refusal};
use tenter_core::{Demand, Limit, Range};
use tenter_firmware::link::RequestHandler;
use tenter_firmware::log::Named;

pub const SLOTS: u8 = 4;

#[derive(Clone, Debug, PartialEq)]
pub struct MemoryDesk {
    pub device: u32,
    /// Saved and not acknowledged.
    pub tests: BTreeMap<u32, Vec<u8>>,
    /// The number last given to a test.
    pub newest: u32,
    /// Everything that was ever acknowledged.
    pub acknowledged: BTreeSet<u32>,
    pub demands: [Option<LabelledDemand>; SLOTS as usize],
    pub demand_count: u8,
    pub clock: Option<u32>,
    pub repeatability: (u32, u32),
    pub tags: LentTags,
    pub names: [[Option<Named>; SLOTS as usize]; 2],
    pub name_counts: [u8; 2],
    pub chip_is_broken: bool,
}

impl Default for MemoryDesk {
    fn default() -> Self {
        Self {
            device: 0,
            tests: BTreeMap::new(),
            newest: 0,
            acknowledged: BTreeSet::new(),
            demands: [const { None }; SLOTS as usize],
            demand_count: 0,
            clock: None,
            repeatability: (0, 0),
            tags: LentTags { least: 1, next: 1, most: 999 },
            names: [const { [const { None }; SLOTS as usize] }; 2],
            name_counts: [0; 2],
            chip_is_broken: false,
        }
    }
}

impl MemoryDesk {
    /// With tests of these lengths in bytes, numbered from 1 up, each unlike the others and full of zeros and ones.
    pub fn with_tests(lengths: &[usize]) -> Self {
        let mut desk = Self::default();
        for length in lengths {
            desk.newest += 1;
            desk.tests.insert(desk.newest, record(desk.newest, *length));
        }
        desk
    }

    fn chip(&self) -> Result<(), Refusal> {
        if self.chip_is_broken { Err(Refusal::Chip) } else { Ok(()) }
    }
}

/// What the link carries is opaque to it, so any bytes do.
pub fn record(seq: u32, length: usize) -> Vec<u8> {
    assert!(length <= MAX_SAVED_BYTES);
    let pattern = seq.to_le_bytes().into_iter().chain((0..=255).rev().step_by(3));
    pattern.cycle().take(length).collect()
}

pub fn demand(label: &str, percent: u32) -> LabelledDemand {
    let least = Range { at_least: Limit::milli_percent(percent * 1000).ok(), at_most: None };
    LabelledDemand::new(label, Demand::for_grain(tenter_core::Grain::Crosswise, least)).unwrap()
}

impl RequestHandler for MemoryDesk {
    fn identity(&mut self) -> Identity {
        let version = "0.1.0".try_into().unwrap();
        Identity { device: self.device, version, uptime_s: 70, unix_s: self.clock, demand_slots: SLOTS }
    }

    fn listing(&mut self) -> Result<Listing, Refusal> {
        self.chip()?;
        let oldest = self.tests.keys().next().copied();
        let unacknowledged = self.tests.len().try_into().unwrap();
        Ok(Listing { oldest, next: self.newest + 1, unacknowledged, free_pages: 494 })
    }

    fn fetch<'b>(&mut self, from: u32, buffer: &'b mut [u8]) -> Result<Option<(u32, &'b [u8])>, Refusal> {
        self.chip()?;
        Ok(self.tests.range(from..).next().map(|(seq, record)| {
            let place = &mut buffer[..record.len()];
            place.copy_from_slice(record);
            (*seq, &*place)
        }))
    }

    fn acknowledge(&mut self, up_to: u32) -> Result<(), Refusal> {
        self.chip()?;
        let kept = self.tests.split_off(&(up_to + 1));
        let gone = std::mem::replace(&mut self.tests, kept);
        self.acknowledged.extend(gone.keys());
        Ok(())
    }

    fn name(&mut self, device: u32) -> Result<(), Refusal> {
        assert_ne!(device, 0);
        if self.device != 0 && self.device != device {
            return Err(Refusal::Named);
        }
        self.device = device;
        Ok(())
    }

    fn set_demand(&mut self, slot: u8, record: &[u8]) -> Result<(), Refusal> {
        *self.demands.get_mut(usize::from(slot)).ok_or(Refusal::Slot)? =
            Some(decode_demand(record).map_err(|_| Refusal::Record)?);
        Ok(())
    }

    fn set_demand_count(&mut self, count: u8) -> Result<(), Refusal> {
        if count > SLOTS {
            return Err(Refusal::Slot);
        }
        self.demand_count = count;
        Ok(())
    }

    fn set_clock(&mut self, unix_s: u32) {
        self.clock = Some(unix_s);
    }

    fn set_repeatability(&mut self, ratio: u32, dof: u32) -> Result<(), Refusal> {
        self.chip()?;
        self.repeatability = (ratio, dof);
        Ok(())
    }

    fn set_sessions(&mut self, _ratio: u32, _dof: u32) -> Result<(), Refusal> {
        self.chip()
    }

    fn set_tags(&mut self, least: u16, most: u16) -> Result<(), Refusal> {
        self.chip()?;
        self.tags = LentTags { least, next: least, most };
        Ok(())
    }

    fn tags(&mut self) -> Result<LentTags, Refusal> {
        self.chip().map(|()| self.tags)
    }

    fn set_name(&mut self, list: NameList, slot: u8, named: &Named) -> Result<(), Refusal> {
        self.chip()?;
        let names = &mut self.names[usize::from(list == NameList::People)];
        *names.get_mut(usize::from(slot)).ok_or(Refusal::Slot)? = Some(named.clone());
        Ok(())
    }

    fn set_name_count(&mut self, list: NameList, count: u8) -> Result<(), Refusal> {
        if count > SLOTS {
            return Err(Refusal::Slot);
        }
        self.name_counts[usize::from(list == NameList::People)] = count;
        Ok(())
    }
}
