//! A handheld in memory.

use std::collections::{BTreeMap, BTreeSet};

use tenter_core::record::{LabelledDemand, decode_demand};
use tenter_core::wire::{Identity, Listing, MAX_SAVED_BYTES, Refusal};
use tenter_core::{Demand, Limit, Range};
use tenter_firmware::link::RequestHandler;

pub const SLOTS: u8 = 4;

#[derive(Clone, Debug, Default, PartialEq)]
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
    pub chip_is_broken: bool,
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
}
