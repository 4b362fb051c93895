//! What the log promised, told by what it answered.

use std::collections::BTreeMap;

use tenter_core::Repeatability;
use tenter_core::record::LabelledDemand;
use tenter_core::saved::{Clock, SavedTest};
use tenter_core::{Demand, Grain, Length, Limit, Load, MAX_LENGTH, PullTest, Range};
use tenter_firmware::log::{Log, LogError, Storage};
use tenter_tests::fake_eeprom::{FakeEeprom, NoAnswer, Trouble};

/// A test that takes one, two, three or four pages, told from all others by its tag.
pub fn test_of(tag: u16, pages: usize) -> SavedTest {
    // The finer the steps, the longer their numbers.
    let (pulls, odd, seconds) = [(1, 0, 60), (10, 0, 300), (10, 16, 300), (10, 1, 2_500_000)][pages - 1];
    let gauge = 1400 * 1600;
    let mut test = PullTest::new(Length::from_steps(gauge), Grain::Crosswise).unwrap();
    if pages == 4 {
        test = test.with_load(Load::Force { millinewtons: u32::MAX });
    }
    for _ in 0..pulls {
        test.add_pull(Length::from_steps(2 * gauge + odd)).unwrap();
        test.add_rest(seconds, Length::from_steps(3 * gauge / 2 + odd)).unwrap();
    }
    SavedTest::new(tag, Clock { uptime_s: u32::from(tag) * 1000, unix_s: Some(1_760_000_000) }, test)
}

/// A demand of one page or of two, told from others by its label.
pub fn demand_of(number: u16, large: bool) -> LabelledDemand {
    let limit = Limit::marks(MAX_LENGTH, MAX_LENGTH).ok();
    let range = Range { at_least: limit, at_most: limit };
    let mut demand = Demand::for_grain(Grain::Lengthwise, range);
    if large {
        (demand.crosswise, demand.bias) = (range, range);
    }
    LabelledDemand::new(&format!("skirt {number}, main cloth"), demand).unwrap()
}

#[derive(Clone, Debug)]
pub enum Op {
    Save(usize),
    /// Of the tests not acknowledged, this one and those before.
    Acknowledge(usize),
    SetDemand(u8, bool),
    SetCount(u8),
    Name(u32),
    SetRepeatability(u32, u32),
    Trouble(usize, Trouble),
    PowerCycle,
    Fetch(u32),
}

/// What was promised to the person and to the host.
#[derive(Clone, Debug, Default)]
pub struct Promised {
    pub saved: BTreeMap<u32, SavedTest>,
    pub acknowledged: u32,
    pub device: u32,
    pub count: u8,
    pub hand: Option<Repeatability>,
    pub demands: BTreeMap<u8, LabelledDemand>,
    /// Counts tests and demands, so that each is told from all others.
    pub number: u16,
}

/// What may or may not have been done when power failed or an error came back.
#[derive(Clone, Debug, Default)]
pub struct Pending {
    pub saved: Vec<SavedTest>,
    pub acknowledged: Vec<u32>,
    pub devices: Vec<u32>,
    pub counts: Vec<u8>,
    pub hands: Vec<Option<Repeatability>>,
    pub demands: BTreeMap<u8, Vec<LabelledDemand>>,
}

impl Promised {
    /// Those the host does not have.
    pub fn waiting(&self) -> impl Iterator<Item = u32> {
        self.saved.range(self.acknowledged + 1..).map(|(seq, _)| *seq)
    }

    /// Does it, and notes what is promised now, or what may have been done.
    pub fn apply<S: Storage<Error = NoAnswer>>(&mut self, log: &mut Log<S>, op: &Op, pending: &mut Pending) {
        self.number += 1;
        match op {
            Op::Save(pages) => {
                let test = test_of(self.number, *pages);
                let (full, free) = (log.is_full(), log.free_pages());
                match log.save(&test) {
                    Ok(seq) => {
                        assert!(self.saved.keys().all(|earlier| *earlier < seq), "{seq} was reported before");
                        self.saved.insert(seq, test);
                    }
                    Err(LogError::Full) => {
                        assert!(usize::from(log.free_pages()) < *pages);
                        let passed_over = log.free_pages() < free;
                        assert!(full || passed_over, "full without having said so");
                    }
                    Err(LogError::Chip(_) | LogError::NotKept) => pending.saved.push(test),
                    Err(other) => panic!("{other}"),
                }
            }
            Op::Acknowledge(nth) => {
                let Some(up_to) = self.waiting().nth(*nth).or_else(|| self.waiting().last()) else { return };
                match log.acknowledge(up_to) {
                    Ok(()) => self.acknowledged = up_to,
                    Err(LogError::Chip(_) | LogError::NotKept) => pending.acknowledged.push(up_to),
                    Err(other) => panic!("{other}"),
                }
            }
            Op::SetDemand(slot, large) => {
                let demand = demand_of(self.number, *large);
                match log.set_demand(*slot, &demand) {
                    Ok(()) => {
                        self.demands.insert(*slot, demand);
                        pending.demands.remove(slot);
                    }
                    Err(LogError::Chip(_) | LogError::NotKept) => {
                        pending.demands.entry(*slot).or_default().push(demand)
                    }
                    Err(other) => panic!("{other}"),
                }
            }
            Op::SetCount(count) => match log.set_demand_count(*count) {
                Ok(()) => self.count = *count,
                Err(LogError::Chip(_) | LogError::NotKept) => pending.counts.push(*count),
                Err(other) => panic!("{other}"),
            },
            Op::Name(device) => match log.set_device_id(*device) {
                Ok(()) => self.device = *device,
                Err(LogError::Named) => assert!(log.device_id() != 0 && log.device_id() != *device),
                Err(LogError::Chip(_) | LogError::NotKept) => pending.devices.push(*device),
                Err(other) => panic!("{other}"),
            },
            Op::SetRepeatability(ratio, dof) => match log.set_repeatability(*ratio, *dof) {
                Ok(()) => self.hand = Repeatability::from_thousandths(*ratio, *dof),
                Err(LogError::Chip(_) | LogError::NotKept) => {
                    pending.hands.push(Repeatability::from_thousandths(*ratio, *dof));
                }
                Err(other) => panic!("{other}"),
            },
            Op::Fetch(from) => {
                // What was overwritten is left out, what the host does not have never is.
                if let Ok(found) = log.fetch(*from) {
                    let next = self.waiting().find(|seq| seq >= from);
                    let found = found.inspect(|(seq, test)| assert_eq!(self.saved.get(seq), Some(test)));
                    assert!(found.is_none_or(|(seq, _)| seq >= *from && next.is_none_or(|next| seq <= next)));
                }
            }
            Op::Trouble(..) | Op::PowerCycle => {}
        }
    }

    /// Looks whether a chip, read anew, keeps every promise. Afterwards what it holds is what is promised.
    pub fn hold(&mut self, chip: &mut FakeEeprom, pending: &mut Pending) {
        let mut log = Log::open(chip).unwrap();
        let mut from = self.acknowledged + 1;
        let mut found = BTreeMap::new();
        while let Some((seq, test)) = log.fetch(from).unwrap() {
            assert!(seq >= from);
            assert!(self.saved.get(&seq) == Some(&test) || pending.saved.contains(&test), "{seq} was never asked for");
            assert!(found.values().all(|other| *other != test), "twice");
            found.insert(seq, test);
            from = seq + 1;
        }
        for seq in self.waiting() {
            assert_eq!(found.get(&seq), self.saved.get(&seq), "{seq} is lost");
        }
        assert!(log.next_seq() > self.saved.keys().last().copied().unwrap_or(0).max(self.acknowledged));
        assert!(log.next_seq() > found.keys().last().copied().unwrap_or(0));
        browse(&mut log, found.values());
        // The host has what it was told, or what the answer it did not hear said.
        let (waiting, oldest) = (usize::from(log.unacknowledged()), log.oldest().unwrap());
        let agrees = |acknowledged: &u32| {
            let mut after = found.range(acknowledged + 1..).map(|(seq, _)| *seq);
            after.clone().count() == waiting && after.next() == oldest
        };
        let told = [self.acknowledged].into_iter().chain(pending.acknowledged.iter().copied());
        self.acknowledged = told.filter(agrees).max().expect("acknowledged as never asked");

        assert!(log.device_id() == self.device || pending.devices.contains(&log.device_id()));
        assert!(log.demand_count() == self.count || pending.counts.contains(&log.demand_count()));
        assert!(log.repeatability() == self.hand || pending.hands.contains(&log.repeatability()));
        for slot in 0..log.demand_count() {
            let demand = log.demand(slot).unwrap();
            let one_of = pending.demands.get(&slot);
            let is_promised = demand.as_ref() == self.demands.get(&slot);
            let is_pending = one_of.is_some_and(|some| demand.is_none_or(|demand| some.contains(&demand)));
            assert!(is_promised || is_pending, "slot {slot}");
        }
        (self.device, self.count, self.hand) = (log.device_id(), log.demand_count(), log.repeatability());
        self.saved.extend(found);
        let hidden = std::mem::take(&mut pending.demands);
        *pending = Pending { demands: hidden, ..Pending::default() };
    }
}

/// Leafing from the newest test to the oldest meets those that are waiting first, and on the way back the same ones.
fn browse<'t>(log: &mut Log<&mut FakeEeprom>, waiting: impl DoubleEndedIterator<Item = &'t SavedTest>) {
    let mut met: Vec<(u32, SavedTest)> = Vec::new();
    while let Some(older) = log.beside(met.last().map(|(place, _)| *place), false).unwrap() {
        met.push(older);
    }
    let mut tests = met.iter().map(|(_, test)| test);
    assert!(waiting.rev().all(|test| tests.next() == Some(test)), "not met: {met:?}");
    let mut way_back = met.iter().rev();
    let mut at = way_back.next().map(|(place, _)| *place);
    while let Some(place) = at {
        let newer = log.beside(Some(place), true).unwrap();
        assert_eq!(newer.as_ref(), way_back.next());
        at = newer.map(|(place, _)| place);
    }
}

/// Names, demands and many rounds through a ring of eleven pages, full at times.
pub fn scenario() -> Vec<Op> {
    let mut ops = vec![Op::Name(77), Op::SetDemand(0, false), Op::SetDemand(1, true), Op::SetCount(2)];
    ops.extend([Op::SetRepeatability(500, 22), Op::SetRepeatability(0, 0)]);
    for round in 0..5 {
        ops.extend([1, 2, 1, 4].map(Op::Save));
        ops.extend([Op::Acknowledge(1), Op::SetDemand(round % 3, round % 2 == 0)]);
        ops.extend([3, 1, 1, 1].map(Op::Save));
        ops.extend([Op::SetCount(2 + round % 2), Op::Acknowledge(usize::from(round))]);
        ops.push(Op::SetRepeatability(700 + u32::from(round), 30));
        ops.extend([4, 4, 1].map(Op::Save));
        ops.push(Op::Acknowledge(if round % 2 == 0 { 9 } else { 3 }));
    }
    ops
}
