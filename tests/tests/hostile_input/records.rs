//! Records from any bytes, and any test or demand as a record.

use proptest::prelude::*;
use proptest::sample::Index;
use tenter_core::record::{
    self, LabelledDemand, MAX_DEMAND_BYTES, MAX_LABEL_BYTES, MAX_TEST_BYTES, RecordError, decode_demand, decode_test,
};
use tenter_core::{Grain, Length, PullTest};

use crate::crc32::sealed;
use crate::given;

fn encoded(test: &PullTest) -> Vec<u8> {
    record::encode_test(test, &mut [0; MAX_TEST_BYTES]).unwrap().to_vec()
}

fn encoded_demand(demand: &LabelledDemand) -> Vec<u8> {
    record::encode_demand(demand, &mut [0; MAX_DEMAND_BYTES]).unwrap().to_vec()
}

/// Any label that fits.
fn demand() -> impl Strategy<Value = LabelledDemand> {
    (".{0,24}", given::demand()).prop_map(|(mut label, demand)| {
        while label.len() > MAX_LABEL_BYTES {
            label.pop();
        }
        LabelledDemand::new(&label, demand).unwrap()
    })
}

/// Whatever decodes says the same when it is written again.
fn assert_decodes_to_itself(bytes: &[u8]) {
    if let Ok(test) = decode_test(bytes) {
        assert_eq!(decode_test(&encoded(&test)), Ok(test));
    }
    if let Ok(demand) = decode_demand(bytes) {
        assert_eq!(decode_demand(&encoded_demand(&demand)), Ok(demand));
    }
}

/// Each bit of one byte turned over, and the end cut off there. (`record_bytes.rs` does this to every byte of a few.)
fn assert_no_damage_passes<T>(bytes: &[u8], at: Index, decode: impl Fn(&[u8]) -> Result<T, RecordError>) {
    let at = at.index(bytes.len());
    for bit in 0..8 {
        let mut flipped = bytes.to_vec();
        flipped[at] ^= 1 << bit;
        assert_eq!(decode(&flipped).err(), Some(RecordError::Damaged), "bit {bit} of byte {at}");
    }
    assert_eq!(decode(&bytes[..at]).err(), Some(RecordError::Damaged), "first {at} bytes");
}

proptest! {
    #[test]
    fn any_bytes_decode_or_are_refused(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        assert_decodes_to_itself(&bytes);
        assert_decodes_to_itself(&sealed(&bytes));
        // The right version, so that what follows it is looked at.
        assert_decodes_to_itself(&sealed(&[&[0], &bytes[..]].concat()));
    }

    #[test]
    fn a_changed_test_under_a_right_checksum(
        test in given::test(), changes in prop::collection::vec(any::<(Index, u8)>(), 1..4),
    ) {
        let bytes = encoded(&test);
        let mut body = bytes[..bytes.len() - 4].to_vec();
        for (at, byte) in changes {
            let at = at.index(body.len());
            body[at] = byte;
        }
        assert_decodes_to_itself(&sealed(&body));
    }

    #[test]
    fn a_test_comes_back(test in given::test(), room in 0..=MAX_TEST_BYTES) {
        let bytes = encoded(&test);
        prop_assert_eq!(decode_test(&bytes), Ok(test.clone()));
        let fits = record::encode_test(&test, &mut [0; MAX_TEST_BYTES][..room]).map(<[u8]>::len);
        prop_assert_eq!(fits, if bytes.len() <= room { Ok(bytes.len()) } else { Err(RecordError::NoRoom) });
    }

    #[test]
    fn a_test_on_the_default_scale_comes_back(gauge in given::gauge()) {
        let test = PullTest::new(Length::from_steps(gauge), Grain::Bias).unwrap();
        prop_assert_eq!(decode_test(&encoded(&test)), Ok(test));
    }

    #[test]
    fn a_demand_comes_back(demand in demand(), room in 0..=MAX_DEMAND_BYTES) {
        let bytes = encoded_demand(&demand);
        prop_assert_eq!(decode_demand(&bytes), Ok(demand.clone()));
        let fits = record::encode_demand(&demand, &mut [0; MAX_DEMAND_BYTES][..room]).map(<[u8]>::len);
        prop_assert_eq!(fits, if bytes.len() <= room { Ok(bytes.len()) } else { Err(RecordError::NoRoom) });
    }

    #[test]
    fn no_flipped_bit_and_no_missing_end_passes(test in given::test(), demand in demand(), at: Index) {
        assert_no_damage_passes(&encoded(&test), at, decode_test);
        assert_no_damage_passes(&encoded_demand(&demand), at, decode_demand);
    }
}
