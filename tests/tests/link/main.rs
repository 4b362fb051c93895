//! Host and handheld over lines that fail: nothing wrong is ever taken for right, and nothing is acknowledged that did
//! not arrive. The host's session and the handheld's are those of the two programs; between them is [`line`].

mod desk;
mod hostile;
mod line;
mod ordinary;
mod real_lines;

use std::collections::BTreeMap;

use proptest::prelude::*;
use tenter::link::LinkError;
use tenter_core::Repeatability;
use tenter_core::record::LabelledDemand;
use tenter_core::wire::{MAX_SAVED_BYTES, NameList};
use tenter_firmware::log::Named;

use desk::{MemoryDesk, SLOTS, demand};
use line::{Fault, Line, Pass};

/// Everything a host does in one visit. What it got is there even when it broke off.
fn visit(line: &Line, demands: &[LabelledDemand], got: &mut BTreeMap<u32, Vec<u8>>) -> Result<(), LinkError> {
    let mut host = line.host()?;
    let listing = host.list()?;
    let mut newest = None;
    for fetched in host.fetch_all_from(listing.oldest.unwrap_or(1)) {
        let fetched = fetched?;
        assert!(newest < Some(fetched.seq), "{} after {newest:?}", fetched.seq);
        newest = Some(fetched.seq);
        got.insert(fetched.seq, fetched.record);
    }
    if let Some(up_to) = newest {
        host.acknowledge(up_to)?;
    }
    host.set_demands(demands)?;
    host.set_repeatability(Repeatability::new(0.5, 22.0))?;
    host.set_tags(8, 27)?;
    host.set_names(NameList::Cloths, &names())?;
    let mut now = 1_700_000_000;
    host.set_clock(|| {
        now += 1;
        now
    })?;
    host.name(7)
}

/// One more than there is room for.
fn names() -> Vec<(u32, u16, String)> {
    (1..=u16::from(SLOTS) + 1).map(|tag| (u32::from(tag) << 20, tag, format!("cloth {tag}"))).collect()
}

fn saved() -> impl Strategy<Value = MemoryDesk> {
    let length = prop_oneof![20..60usize, Just(MAX_SAVED_BYTES)];
    prop::collection::vec(length, 0..8).prop_map(|lengths| MemoryDesk::with_tests(&lengths))
}

fn demands() -> Vec<LabelledDemand> {
    vec![demand("skirt main", 5), demand("skirt side", 18), demand("coats", 50)]
}

proptest! {
    /// However the line fails, over several visits.
    #[test]
    fn nothing_wrong_is_taken_and_nothing_lost(
        desk in saved(),
        faults in (1..400u32).prop_flat_map(|rarity| prop::collection::vec(Fault::any(rarity), 0..3000)),
        passes in prop::collection::vec(Pass::any(), 0..60),
        visits in 1..4usize,
    ) {
        let (saved, demands) = (desk.tests.clone(), demands());
        let line = Line::to(desk);
        line.disturb(faults, passes);
        let mut got = BTreeMap::new();
        for _ in 0..visits {
            let result = visit(&line, &demands, &mut got);
            let desk = &line.world().desk;
            for (seq, record) in &got {
                prop_assert_eq!(Some(record), saved.get(seq), "test {}", seq);
            }
            for seq in &desk.acknowledged {
                prop_assert!(got.contains_key(seq), "{} was acknowledged and did not arrive", seq);
            }
            // None is neither kept nor acknowledged, and none is both.
            prop_assert_eq!(desk.tests.len() + desk.acknowledged.len(), saved.len());
            for (slot, kept) in desk.demands.iter().enumerate() {
                prop_assert!(kept.is_none() || kept.as_ref() == demands.get(slot));
            }
            prop_assert!(desk.device == 0 || desk.device == 7);
            prop_assert!(desk.repeatability == (0, 0) || desk.repeatability == (500, 22));
            prop_assert!(desk.clock.is_none_or(|clock| (1_700_000_001..1_700_000_005).contains(&clock)));
            let tags = (desk.tags.least, desk.tags.most);
            prop_assert!([(1, 999), (8, 27)].contains(&tags));
            for (named, (mark, tag, name)) in desk.names[0].iter().zip(names()) {
                prop_assert!(named.is_none() || *named == Named::new(mark, tag, &name));
            }
            if result.is_ok() {
                prop_assert_eq!((tags, desk.name_counts), ((8, 27), [SLOTS, 0]));
                prop_assert_eq!(&got, &saved);
                prop_assert!(desk.tests.is_empty());
                prop_assert_eq!(desk.demand_count, 3);
                prop_assert!(desk.demands.iter().flatten().eq(&demands));
                prop_assert_eq!((desk.device, desk.repeatability), (7, (500, 22)));
                prop_assert!(desk.clock.is_some());
            }
        }
    }

    /// A request takes at least eleven bytes, so this many faults spoil three tries at most; the fourth gets through.
    #[test]
    fn a_short_disturbance_is_overcome(
        desk in saved(),
        faults in prop::collection::vec(Fault::any(1), 0..33),
        passes in prop::collection::vec(Pass::any(), 0..4),
    ) {
        prop_assume!(passes.iter().filter(|pass| pass.late).count() + faults.len().div_ceil(11) < 4);
        let saved = desk.tests.clone();
        let line = Line::to(desk);
        line.disturb(faults, passes);
        let mut got = BTreeMap::new();
        prop_assert!(visit(&line, &demands(), &mut got).is_ok());
        prop_assert_eq!(got, saved);
    }

    /// A host that vanishes after any number of bytes leaves no trace that the next one meets.
    #[test]
    fn a_host_that_vanishes_midway_is_forgotten(desk in saved(), heard in 0..600usize) {
        let saved = desk.tests.clone();
        let line = Line::to(desk);
        let mut faults = vec![Fault::None; heard];
        faults.resize(heard + 2000, Fault::Lost);
        line.disturb(faults, vec![]);
        let mut got = BTreeMap::new();
        let _ = visit(&line, &demands(), &mut got);
        line.disturb(vec![], vec![]);
        prop_assert!(visit(&line, &demands(), &mut got).is_ok());
        prop_assert_eq!(got, saved);
        prop_assert!(usize::from(line.world().desk.demand_count) <= usize::from(SLOTS));
    }
}
