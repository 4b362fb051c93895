//! A handheld in memory: the program that ships, on a memory chip that can be looked into and exchanged.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex};

use tenter::log::Marks;
use tenter_core::saved::{Meant, SavedTest};
use tenter_core::wire::{Identity, LentTags, Listing, NameList, Refusal};
use tenter_core::{Grain, Length, PullTest};
use tenter_firmware::desk::Records;
use tenter_firmware::link::{self, RequestHandler};
use tenter_firmware::log::{Named, PAGE_BYTES, Storage, StoragePage};

use crate::cable::cloth;

/// Pages of a 24C256.
const PAGES: usize = 512;

/// A memory chip; its copies are one chip.
#[derive(Clone, Debug)]
pub struct Chip(Arc<Mutex<Vec<StoragePage>>>);

impl Chip {
    pub fn erased() -> Self {
        Self::holding(vec![[0xFF; PAGE_BYTES]; PAGES])
    }

    pub fn holding(image: Vec<StoragePage>) -> Self {
        Self(Arc::new(Mutex::new(image)))
    }

    pub fn image(&self) -> Vec<StoragePage> {
        self.0.lock().unwrap().clone()
    }
}

impl Storage for Chip {
    type Error = ();

    fn pages(&self) -> u16 {
        u16::try_from(PAGES).unwrap()
    }

    fn read(&mut self, page: u16, buffer: &mut StoragePage) -> Result<(), ()> {
        *buffer = self.0.lock().unwrap()[usize::from(page)];
        Ok(())
    }

    fn write(&mut self, page: u16, bytes: &StoragePage) -> Result<(), ()> {
        self.0.lock().unwrap()[usize::from(page)] = *bytes;
        Ok(())
    }
}

/// The handheld.
pub struct Pocket {
    pub chip: Chip,
    records: Records<Chip>,
    session: link::Responder,
    /// Records that leave it as something else.
    pub altered: BTreeMap<u32, Vec<u8>>,
    /// A record that it reads over, once, as one wrong bit on its bus would make it.
    pub overlooks: Option<u32>,
    /// Whether it has one more test each time it is asked.
    pub is_endless: bool,
    /// Whether it lists numbers that it has not given.
    pub claims_all_numbers: bool,
    /// Whether its program is from before hands were sent.
    pub is_old: bool,
    /// Whether its program is from before it was told how days differ.
    pub knows_no_days: bool,
    /// Whether its program is from before tags were agreed.
    pub knows_no_tags: bool,
}

impl Pocket {
    /// Switched on with this chip, ten seconds ago.
    pub fn on(chip: Chip) -> Self {
        let mut records = Records::open(chip.clone());
        records.tell_time(10_000);
        Self {
            chip,
            records,
            session: link::Responder::new(),
            altered: BTreeMap::new(),
            overlooks: None,
            is_endless: false,
            claims_all_numbers: false,
            is_old: false,
            knows_no_days: false,
            knows_no_tags: false,
        }
    }

    /// With these tests saved, numbered from 1.
    pub fn with(tests: &[SavedTest]) -> Self {
        let mut pocket = Self::on(Chip::erased());
        tests.iter().for_each(|test| pocket.save(test));
        pocket
    }

    /// With a program from before tags were agreed, or not.
    pub fn knowing_no_tags(mut self, knows_no_tags: bool) -> Self {
        self.knows_no_tags = knows_no_tags;
        self
    }

    pub fn save(&mut self, test: &SavedTest) {
        self.records.log().unwrap().save(test).unwrap();
    }

    /// What it answers to bytes.
    pub fn hear(&mut self, byte: u8) -> Vec<u8> {
        let mut session = std::mem::take(&mut self.session);
        let answer = session.receive(byte, self).unwrap_or_default().to_vec();
        self.session = session;
        answer
    }

    /// The numbers that the host has not acknowledged.
    pub fn waiting(&mut self) -> Vec<u32> {
        let log = self.records.log().unwrap();
        let mut next = log.oldest().unwrap();
        let mut numbers = Vec::new();
        while let Some((number, _)) = next.and_then(|from| log.fetch_record(from).unwrap()) {
            numbers.push(number);
            next = number.checked_add(1);
        }
        numbers
    }

    pub fn device(&mut self) -> u32 {
        self.records.log().unwrap().device_id()
    }

    pub fn records(&mut self) -> &mut Records<Chip> {
        &mut self.records
    }
}

impl RequestHandler for Pocket {
    fn identity(&mut self) -> Identity {
        self.records.identity()
    }

    fn listing(&mut self) -> Result<Listing, Refusal> {
        let listing = self.records.listing()?;
        Ok(if self.claims_all_numbers { Listing { next: u32::MAX, ..listing } } else { listing })
    }

    fn fetch<'b>(&mut self, from: u32, buffer: &'b mut [u8]) -> Result<Option<(u32, &'b [u8])>, Refusal> {
        if self.is_endless {
            self.save(&test(from));
        }
        let from = if self.overlooks == Some(from) { self.overlooks.take().unwrap_or(from) + 1 } else { from };
        let Some((number, record)) = self.records.fetch(from, buffer)?.map(|(number, record)| (number, record.len()))
        else {
            return Ok(None);
        };
        let length = match self.altered.get(&number) {
            None => record,
            Some(other) => {
                buffer[..other.len()].copy_from_slice(other);
                other.len()
            }
        };
        Ok(Some((number, &buffer[..length])))
    }

    fn acknowledge(&mut self, up_to: u32) -> Result<(), Refusal> {
        self.records.acknowledge(up_to)
    }

    fn name(&mut self, device: u32) -> Result<(), Refusal> {
        self.records.name(device)
    }

    fn set_demand(&mut self, slot: u8, record: &[u8]) -> Result<(), Refusal> {
        self.records.set_demand(slot, record)
    }

    fn set_demand_count(&mut self, count: u8) -> Result<(), Refusal> {
        self.records.set_demand_count(count)
    }

    fn set_clock(&mut self, unix_s: u32) {
        self.records.set_clock(unix_s);
    }

    fn set_repeatability(&mut self, ratio: u32, dof: u32) -> Result<(), Refusal> {
        if self.is_old { Err(Refusal::Unknown) } else { self.records.set_repeatability(ratio, dof) }
    }

    fn set_sessions(&mut self, ratio: u32, dof: u32) -> Result<(), Refusal> {
        if self.is_old || self.knows_no_days {
            return Err(Refusal::Unknown);
        }
        self.records.set_sessions(ratio, dof)
    }

    fn set_tags(&mut self, least: u16, most: u16) -> Result<(), Refusal> {
        if self.is_old || self.knows_no_tags { Err(Refusal::Unknown) } else { self.records.set_tags(least, most) }
    }

    fn tags(&mut self) -> Result<LentTags, Refusal> {
        if self.is_old || self.knows_no_tags { Err(Refusal::Unknown) } else { self.records.tags() }
    }

    fn set_name(&mut self, list: NameList, slot: u8, named: &Named) -> Result<(), Refusal> {
        if self.is_old || self.knows_no_tags { Err(Refusal::Unknown) } else { self.records.set_name(list, slot, named) }
    }

    fn set_name_count(&mut self, list: NameList, count: u8) -> Result<(), Refusal> {
        if self.is_old || self.knows_no_tags { Err(Refusal::Unknown) } else { self.records.set_name_count(list, count) }
    }
}

/// 2026-11-25 00:00 UTC.
pub const NOVEMBER: u32 = 1_795_564_800;

/// The nth test that somebody saves, unlike all others: 100 mm marks, three pulls, tag 1 to 4 in turn.
pub fn test(nth: u32) -> SavedTest {
    let grain = if nth.is_multiple_of(3) { Grain::Lengthwise } else { Grain::Crosswise };
    let mut test = PullTest::new(Length::from_mm(100), grain).unwrap();
    for pull in 0..3 {
        let tenths = i16::try_from(nth % 90).unwrap() + pull;
        test.add_pull(Length::from_steps(1600 * i32::from(105 + tenths))).unwrap();
    }
    test.add_rest(60, Length::from_mm(101)).unwrap();
    let clock = tenter_core::saved::Clock { uptime_s: 60 * nth, unix_s: Some(NOVEMBER + 600 * nth) };
    let tag = u16::try_from(1 + nth % 4).unwrap();
    // Of two cloths the handheld has shown the name; of the others only the tag was dialled.
    let meant = if tag < 3 { Meant::Cloth(Marks::of(cloth(tag))) } else { Meant::Unsaid };
    SavedTest { meant, ..SavedTest::new(tag, clock, test) }
}

pub fn tests(count: u32) -> Vec<SavedTest> {
    (1..=count).map(test).collect()
}
