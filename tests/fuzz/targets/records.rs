//! Records of tests, demands and saved tests: what is taken says the same when it is written again.

#![no_main]

use libfuzzer_sys::fuzz_target;
use tenter_core::record::{self, MAX_DEMAND_BYTES, MAX_TEST_BYTES};
use tenter_core::saved;

/// The checksum that a record ends with: CRC-32 of Ethernet (ISO 3309), least byte first. Without it nothing would get in.
fn sealed(body: &[u8]) -> Vec<u8> {
    let mut crc = u32::MAX;
    for byte in body {
        crc ^= u32::from(*byte);
        for _ in 0..8 {
            crc = if crc & 1 == 1 { crc >> 1 ^ 0xedb8_8320 } else { crc >> 1 };
        }
    }
    [body, &(!crc).to_le_bytes()].concat()
}

fuzz_target!(|body: &[u8]| {
    for bytes in [body.to_vec(), sealed(body)] {
        if let Ok(test) = record::decode_test(&bytes) {
            let mut buffer = [0; MAX_TEST_BYTES];
            let again = record::encode_test(&test, &mut buffer).expect("what was read can be written");
            assert_eq!(record::decode_test(again), Ok(test));
        }
        if let Ok(demand) = record::decode_demand(&bytes) {
            let mut buffer = [0; MAX_DEMAND_BYTES];
            let again = record::encode_demand(&demand, &mut buffer).expect("what was read can be written");
            assert_eq!(record::decode_demand(again), Ok(demand));
        }
        if let Ok(test) = saved::decode(&bytes) {
            let mut buffer = [0; saved::MAX_SAVED_BYTES];
            let again = saved::encode(&test, &mut buffer).expect("what was read can be written");
            assert_eq!(saved::decode(again), Ok(test));
        }
    }
});
