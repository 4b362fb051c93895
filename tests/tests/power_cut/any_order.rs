//! Anything in any order, with every kind of trouble.

use proptest::prelude::*;
use tenter_firmware::log::{DEMAND_SLOTS, Log, PAGE_BYTES};
use tenter_tests::fake_eeprom::{FakeEeprom, Rest, Trouble};

use crate::RING_START;
use crate::promised::{Op, Pending, Promised};

fn trouble() -> impl Strategy<Value = Trouble> {
    let rest = prop_oneof![Just(Rest::Old), Just(Rest::Erased), Just(Rest::Garbage)];
    prop_oneof![
        3 => (0..=PAGE_BYTES, rest.clone()).prop_map(|(written, rest)| Trouble::Cut(written, rest)),
        1 => (0..=PAGE_BYTES, rest).prop_map(|(written, rest)| Trouble::Disturbed(written, rest)),
        1 => Just(Trouble::Unheard),
        1 => Just(Trouble::NotKept),
        1 => Just(Trouble::Deaf),
    ]
}

fn op() -> impl Strategy<Value = Op> {
    prop_oneof![
        8 => prop_oneof![4 => Just(1), 2 => Just(2), 1 => Just(3), 1 => Just(4usize)].prop_map(Op::Save),
        4 => (0..6usize).prop_map(Op::Acknowledge),
        2 => (0..DEMAND_SLOTS, any::<bool>()).prop_map(|(slot, large)| Op::SetDemand(slot, large)),
        1 => (0..=DEMAND_SLOTS).prop_map(Op::SetCount),
        1 => (1..4u32).prop_map(Op::Name),
        1 => (400..402u32, 0..3u32).prop_map(|(ratio, dof)| Op::SetRepeatability(ratio, dof)),
        3 => (0..4usize, trouble()).prop_map(|(writes, trouble)| Op::Trouble(writes, trouble)),
        1 => Just(Op::PowerCycle),
        2 => (0..60u32).prop_map(Op::Fetch),
    ]
}

proptest! {
    /// Saves, acknowledgements and changes of every kind, with every kind of trouble, against what was promised.
    #[test]
    fn promises_are_held(ring in 4..14u16, ops in prop::collection::vec(op(), 1..80)) {
        let mut chip = FakeEeprom::erased(RING_START + ring);
        let (mut promised, mut pending) = (Promised::default(), Pending::default());
        let mut ops = ops.iter().peekable();
        while ops.peek().is_some() {
            let trouble = chip.trouble.clone();
            let mut log = Log::open(chip).unwrap();
            for op in ops.by_ref() {
                if let Op::Trouble(writes, next) = op {
                    trouble.set(Some((*writes, *next)));
                }
                promised.apply(&mut log, op, &mut pending);
                if matches!(op, Op::PowerCycle) {
                    break;
                }
            }
            chip = log.into_storage();
            chip.power_on();
            promised.hold(&mut chip, &mut pending);
        }
    }
}
