//! The bytes of stored records, worked out by hand, so that a change of the format cannot pass unseen.
//!
//! Source of the encoding: the postcard wire format specification 1.0 (postcard.jamesmunns.com/wire-format):
//! an enum is its variant's index as a varint; `u32` a varint, seven bits a byte, lowest first, the top bit set on all
//! but the last; `i32` zigzag (0, −1, 1, −2 … are 0, 1, 2, 3 …) and then a varint; `u8` and `bool` one byte; an option
//! 0 or 1 and then the value; a string or a list its length as a varint and then the items; structs, tuples and
//! arrays just their fields.

mod crc32;

use crc32::sealed;
use tenter_core::record::{self, LabelledDemand, MAX_DEMAND_BYTES, MAX_LABEL_BYTES, MAX_TEST_BYTES, RecordError};
use tenter_core::{
    Demand, Ends, Grain, Held, Length, Limit, Load, MAX_LENGTH, MAX_LOOKS, MAX_PULLS, MAX_REST_SECONDS, MAX_RESTS,
    PullTest, Range, Scale,
};

fn encoded(test: &PullTest) -> Vec<u8> {
    record::encode_test(test, &mut [0; MAX_TEST_BYTES]).unwrap().to_vec()
}

fn encoded_demand(demand: &LabelledDemand) -> Vec<u8> {
    record::encode_demand(demand, &mut [0; MAX_DEMAND_BYTES]).unwrap().to_vec()
}

/// No bit can be turned over and no end cut off without being noticed: what a CRC is for.
fn assert_damage_is_seen<T>(bytes: &[u8], decode: impl Fn(&[u8]) -> Result<T, RecordError>) {
    for bit in 0..bytes.len() * 8 {
        let mut flipped = bytes.to_vec();
        flipped[bit / 8] ^= 1 << (bit % 8);
        assert_eq!(decode(&flipped).err(), Some(RecordError::Damaged), "bit {bit}");
    }
    for length in 0..bytes.len() {
        assert_eq!(decode(&bytes[..length]).err(), Some(RecordError::Damaged), "first {length} bytes");
    }
}

fn assert_bytes(test: &PullTest, body: &[u8]) {
    assert_eq!(encoded(test), sealed(body));
    assert_eq!(record::decode_test(&sealed(body)).as_ref(), Ok(test));
    assert_damage_is_seen(&sealed(body), record::decode_test);
}

fn assert_demand_bytes(demand: &LabelledDemand, body: &[u8]) {
    assert_eq!(encoded_demand(demand), sealed(body));
    assert_eq!(record::decode_demand(&sealed(body)).as_ref(), Ok(demand));
    assert_damage_is_seen(&sealed(body), record::decode_demand);
}

#[test]
fn a_test_without_readings() {
    let test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
    #[rustfmt::skip]
    let body = [
        0,          // version 1 is variant 0
        0xC0, 0x0C, // unit: 1 mm = 1600 steps = 12·128 + 64, so 64 + 128, 12
        100,        // gauge
        1,          // division
        0,          // one end
        1,          // crosswise
        1,          // folded
        0,          // no settling pull
        0,          // no stated force
        0,          // no pulls
        0,          // no rests
    ];
    assert_bytes(&test, &body);
}

/// Marks 100 mm apart on a 1 mm scale, five pulls, readings a minute and half an hour after the last.
fn everyday() -> PullTest {
    let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
    for extended in [105, 106, 105, 104, 106] {
        test.add_pull(Length::from_mm(extended)).unwrap();
    }
    test.add_rest(60, Length::from_mm(101)).unwrap();
    test.add_rest(1800, Length::from_mm(100)).unwrap();
    test
}

#[test]
fn an_everyday_test() {
    #[rustfmt::skip]
    let body = [
        0, 0xC0, 0x0C, 100, 1, 0, 1, 1, 0, 0, // as above
        5, 5, 6, 5, 4, 6,                     // five pulls, less the gauge
        2,                                    // two rests
        4, 60, 2,                             // after the fifth pull, a minute, + 1 mm: zigzag 2
        4, 0x88, 0x0E, 0,                     // 1800 = 14·128 + 8; 0 mm
    ];
    assert_bytes(&everyday(), &body);
    assert_eq!(encoded(&everyday()).len(), 28);
}

/// Another look at the marks after the pulls, five pulls planned, the first look before the settling pull: version 2.
#[test]
fn a_test_with_looks_and_a_plan() {
    let mut test = everyday().with_settling_pull(true).with_gauge_before_settling(true).with_planned_pulls(5).unwrap();
    test.add_look(Length::from_mm(101)).unwrap();
    #[rustfmt::skip]
    let body = [
        1,                                    // version 2 is variant 1
        0xC0, 0x0C, 100, 1, 0, 1, 1, 1, 0,    // as above, with a settling pull
        5, 5, 6, 5, 4, 6,
        2, 4, 60, 2, 4, 0x88, 0x0E, 0,
        1,                                    // the first look before settling
        1, 5,                                 // five pulls planned
        1, 5, 2,                              // one later look, after five pulls, + 1 mm: zigzag 2
    ];
    assert_bytes(&test, &body);
    let with = |at: usize, byte| {
        let mut body = body;
        body[at] = byte;
        record::decode_test(&sealed(&body))
    };
    assert!(with(28, 4).is_ok(), "after four pulls");
    assert_eq!(with(28, 6), Err(RecordError::Impossible), "after a pull that is not there");
    assert_eq!(with(26, 11), Err(RecordError::Impossible), "eleven planned");
    assert_eq!(with(29, 22), Err(RecordError::Impossible), "eleven millimetres off");
}

/// Growth asked at an hour: version 2.
#[test]
fn a_demand_with_its_own_time() {
    let demand = Demand { growth_at_most: Limit::milli_percent(2_000).ok(), rest_seconds: 3600, ..Demand::default() };
    let demand = LabelledDemand::new("tights", demand).unwrap();
    let body = *b"\x01\x06tights\x00\x00\x00\x00\x00\x00\x01\x00\xD0\x0F\x00\x90\x1C"; // 3600 = 28·128 + 16
    assert_demand_bytes(&demand, &body);
}

#[test]
fn an_inch_test_with_every_choice_made() {
    let inches = |sixty_fourths| Length::from_inch_64ths(sixty_fourths);
    let sixteenths = Scale::new(inches(4), Ends::Both).unwrap();
    let mut test = PullTest::new(inches(4 * 64), Grain::Bias).unwrap().with_scale(sixteenths).unwrap();
    test = test.with_held(Held::Loop).with_settling_pull(true).with_load(Load::Force { millinewtons: 2500 });
    test.add_pull(inches(5 * 64 + 24)).unwrap();
    test.add_rest(MAX_REST_SECONDS, inches(4 * 64 - 4)).unwrap();
    test.add_pull(inches(5 * 64 + 28)).unwrap();
    test.add_rest(0, inches(5 * 64)).unwrap();
    #[rustfmt::skip]
    let body = [
        0,
        0xEC, 0x13,                // unit: 1/16 in = 2540 steps = 19·128 + 108
        64,                        // 4 in
        1,                         // 1/16 in
        1,                         // both ends
        2,                         // bias
        3,                         // loop
        1,                         // with a settling pull
        1, 0xC4, 0x13,             // a force: 2500 = 19·128 + 68
        2, 22, 23,                 // 5 3/8 and 5 7/16 in, less 4 in
        2,
        0, 0x80, 0x9A, 0x9E, 1, 1, // after the first, 2 592 000 = ((1·128 + 30)·128 + 26)·128 + 0; − 1/16 in: zigzag 1
        1, 0, 32,                  // after the second, at once, + 1 in: zigzag 32
    ];
    assert_bytes(&test, &body);
}

#[test]
fn the_largest_test() {
    // In the second version. 4 bytes hold 2^21 … 2^28 − 1. Every length but the unit is at least 2^21 steps (for a growth, 2^20, because of
    // the zigzag), none can be 2^28, and with a unit of two bytes the rest would need three at most.
    let wide = 1 << 21;
    let steps = |steps| Length::from_steps(steps);
    let scale = Scale::new(steps(wide), Ends::One).unwrap();
    // The gauge is so long that looks a little under a tenth off take four bytes too.
    let gauge = 13_000_000;
    let mut test = PullTest::new(steps(gauge), Grain::Lengthwise).unwrap().with_scale(scale).unwrap();
    test = test.with_load(Load::Force { millinewtons: u32::MAX }).with_planned_pulls(10).unwrap();
    for _ in 0..MAX_PULLS {
        test.add_pull(steps(gauge + wide + 1)).unwrap();
    }
    for later in 0..10 {
        test.add_rest((1 << 21) + later, steps(gauge + wide / 2)).unwrap();
    }
    for _ in 1..MAX_LOOKS {
        test.add_look(steps(gauge + 1_200_000)).unwrap();
    }
    assert_eq!((test.pulls().len(), test.rests().len()), (MAX_PULLS, MAX_RESTS));
    let mut body = vec![1, 1, 0xC0, 0xBA, 0x99, 0x06, 0x80, 0x80, 0x80, 1, 0, 0, 1, 0];
    body.extend([1, 0xFF, 0xFF, 0xFF, 0xFF, 0x0F]);
    body.push(10);
    body.extend([0x81, 0x80, 0x80, 1].repeat(10));
    body.push(10);
    for later in 0..10 {
        body.extend([9, 0x80 + later, 0x80, 0x80, 1, 0x80, 0x80, 0x80, 1]);
    }
    body.extend([0, 1, 10, 5]); // The gauge not before settling; ten planned; five later looks.
    body.extend([10, 0x80, 0xBE, 0x92, 0x01].repeat(5)); // 2 400 000, the zigzag of 1 200 000.
    assert_bytes(&test, &body);
    assert_eq!(encoded(&test).len(), MAX_TEST_BYTES);
    assert_eq!(record::encode_test(&test, &mut [0; MAX_TEST_BYTES - 1]), Err(RecordError::NoRoom));
}

#[test]
fn an_empty_demand() {
    let demand = LabelledDemand::new("tights", Demand::default()).unwrap();
    let body = *b"\x00\x06tights\x00\x00\x00\x00\x00\x00\x00\x00";
    assert_demand_bytes(&demand, &body);
}

#[test]
fn a_demand_of_every_kind() {
    let percent = |milli| Limit::milli_percent(milli).ok();
    let printed = Limit::marks(Length::from_inch_64ths(256), Length::from_inch_64ths(344)).ok();
    let demand = Demand {
        lengthwise: Range { at_least: None, at_most: printed },
        crosswise: Range { at_least: percent(5_000), at_most: percent(100_000) },
        bias: Range::default(),
        growth_at_most: percent(2_000),
        recovery_at_least: percent(90_000),
        ..Demand::default()
    };
    let demand = LabelledDemand::new("B ¾", demand).unwrap();
    #[rustfmt::skip]
    let body = [
        0,
        4, b'B', b' ', 0xC2, 0xBE,                  // ¾ is two bytes
        0,                                          // lengthwise: no least
        1, 1, 0x80, 0xF6, 0x09, 0xC8, 0xAA, 0x0D,   // most: marks (variant 1), 4 in = 162 560 = (9·128 + 118)·128 + 0
                                                    // and 5 3/8 in = 218 440 = (13·128 + 42)·128 + 72
        1, 0, 0x88, 0x27,                           // crosswise: 5 000 = 39·128 + 8
        1, 0, 0xA0, 0x8D, 0x06,                     // 100 000 = (6·128 + 13)·128 + 32
        0, 0,                                       // bias
        1, 0, 0xD0, 0x0F,                           // growth: 2 000 = 15·128 + 80
        1, 0, 0x90, 0xBF, 0x05,                     // recovery: 90 000 = (5·128 + 63)·128 + 16
    ];
    assert_demand_bytes(&demand, &body);
}

#[test]
fn the_largest_demand() {
    // Marks of four bytes each: 10 m = 16 000 000 steps = ((7·128 + 80)·128 + 72)·128 + 0. A percentage takes three.
    let limit = Limit::marks(MAX_LENGTH, MAX_LENGTH).ok();
    let range = Range { at_least: limit, at_most: limit };
    let demand = Demand {
        lengthwise: range,
        crosswise: range,
        bias: range,
        growth_at_most: limit,
        recovery_at_least: limit,
        rest_seconds: MAX_REST_SECONDS,
    };
    let demand = LabelledDemand::new(&"x".repeat(MAX_LABEL_BYTES), demand).unwrap();
    let mut body = vec![1, 24];
    body.extend([b'x'; 24]);
    body.extend([1, 1, 0x80, 0xC8, 0xD0, 7, 0x80, 0xC8, 0xD0, 7].repeat(8));
    body.extend([0x80, 0x9A, 0x9E, 1]); // 30 days, as in the inch test.
    assert_demand_bytes(&demand, &body);
    assert_eq!(encoded_demand(&demand).len(), MAX_DEMAND_BYTES);
    assert_eq!(record::encode_demand(&demand, &mut [0; MAX_DEMAND_BYTES - 1]), Err(RecordError::NoRoom));
}

#[test]
fn what_is_whole_but_no_record() {
    let plain = [0, 0xC0, 0x0C, 100, 1, 0, 1, 1, 0, 0, 0, 0];
    let with = |at: usize, byte| {
        let mut body = plain;
        body[at] = byte;
        record::decode_test(&sealed(&body))
    };
    assert!(with(0, 0).is_ok());
    assert_eq!(with(0, 2), Err(RecordError::Newer));
    assert_eq!(with(0, 1), Err(RecordError::Damaged), "the second version goes on");
    assert_eq!(with(3, 0), Err(RecordError::Impossible), "gauge zero");
    assert_eq!(with(4, 101), Err(RecordError::Impossible), "division above gauge");
    assert_eq!(with(5, 2), Err(RecordError::Damaged), "no such way to read");
    assert_eq!(with(6, 3), Err(RecordError::Damaged), "no such grain");
    assert_eq!(with(10, 1), Err(RecordError::Damaged), "a pull is missing");
    assert_eq!(
        record::decode_test(&sealed(&[&plain[..], &[0]].concat())),
        Err(RecordError::Damaged),
        "a byte too many"
    );
    assert_eq!(record::decode_test(&sealed(&[])), Err(RecordError::Damaged), "nothing at all");
    // A rest after the first of no pulls; a pull below the gauge cannot even be written.
    let rest_first = [0, 0xC0, 0x0C, 100, 1, 0, 1, 1, 0, 0, 0, 1, 0, 60, 2];
    assert_eq!(record::decode_test(&sealed(&rest_first)), Err(RecordError::Impossible));
}
