//! The bytes of saved tests, worked out by hand, so that a change of the format cannot pass unseen.
//!
//! Source of the encoding: the postcard wire format specification 1.0 (postcard.jamesmunns.com/wire-format):
//! an enum is its variant's index as a varint; `u16` and `u32` are varints, seven bits a byte, lowest first, the top
//! bit set on all but the last; `i32` zigzag and then a varint; `u8` and `bool` one byte; an option 0 or 1 and then
//! the value; a list its length as a varint and then the items; structs just their fields.

mod crc32;

use crc32::sealed;
use tenter_core::record::{RecordError, encode_test};
use tenter_core::saved::{self, Clock, MAX_SAVED_BYTES, Meant, SavedTest};
use tenter_core::{Ends, Grain, Length, Load, MAX_LOOKS, MAX_PULLS, MAX_RESTS, PullTest, Scale};

fn encoded(saved: &SavedTest) -> Vec<u8> {
    saved::encode(saved, &mut [0; MAX_SAVED_BYTES]).unwrap().to_vec()
}

fn assert_bytes(saved: &SavedTest, body: &[u8]) {
    assert_eq!(encoded(saved), sealed(body));
    assert_eq!(saved::decode(&sealed(body)).as_ref(), Ok(saved));
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
fn a_clock_never_set_and_no_readings() {
    let test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
    let saved = SavedTest::new(7, Clock { uptime_s: 90, unix_s: None }, test);
    #[rustfmt::skip]
    let body = [
        0,                                        // version 1 is variant 0
        7,                                        // tag
        90,                                       // uptime
        0,                                        // no date
        0xC0, 0x0C, 100, 1, 0, 1, 1, 0, 0, 0, 0,  // as in record_bytes.rs: unit 1 mm = 1600 steps = 12·128 + 64, …
    ];
    assert_bytes(&saved, &body);
}

#[test]
fn an_everyday_test() {
    let clock = Clock { uptime_s: 100_000, unix_s: Some(1_760_000_000) };
    let saved = SavedTest::new(300, clock, everyday());
    #[rustfmt::skip]
    let body = [
        0,
        0xAC, 0x02,                               // 300 = 2·128 + 44
        0xA0, 0x8D, 0x06,                         // 100 000 = (6·128 + 13)·128 + 32
        1, 0x80, 0xF0, 0x9D, 0xC7, 0x06,          // 1 760 000 000 = (((6·128 + 71)·128 + 29)·128 + 112)·128 + 0
        0xC0, 0x0C, 100, 1, 0, 1, 1, 0, 0,        // the test without its version
        5, 5, 6, 5, 4, 6,
        2, 4, 60, 2, 4, 0x88, 0x0E, 0,
    ];
    assert_bytes(&saved, &body);
    assert_eq!(encoded(&saved).len(), 39);
}

/// With another look after the pulls: version 2.
#[test]
fn a_test_with_a_second_look() {
    let mut test = everyday();
    test.add_look(Length::from_mm(101)).unwrap();
    let saved = SavedTest::new(7, Clock { uptime_s: 90, unix_s: None }, test);
    #[rustfmt::skip]
    let body = [
        1, 7, 90, 0,                              // version 2 is variant 1; the rest as above
        0xC0, 0x0C, 100, 1, 0, 1, 1, 0, 0,
        5, 5, 6, 5, 4, 6,
        2, 4, 60, 2, 4, 0x88, 0x0E, 0,
        0, 0, 1, 5, 2,                            // not before settling, nothing planned, a look after five pulls, + 1 mm
    ];
    assert_bytes(&saved, &body);
}

/// Whose cloth it is, or who pulled: version 3, with all that version 2 holds.
#[test]
fn a_test_that_says_whose_cloth_it_is_and_who_pulled() {
    let plain = SavedTest::new(7, Clock { uptime_s: 90, unix_s: None }, everyday());
    #[rustfmt::skip]
    let readings = [
        2, 7, 90, 0,                              // version 3 is variant 2; the rest as above
        0xC0, 0x0C, 100, 1, 0, 1, 1, 0, 0,
        5, 5, 6, 5, 4, 6,
        2, 4, 60, 2, 4, 0x88, 0x0E, 0,
        0, 0, 0,                                  // not before settling, nothing planned, no look
    ];
    let with = |tail: &[u8]| [&readings[..], tail].concat();
    assert_bytes(&SavedTest { meant: Meant::New, ..plain.clone() }, &with(&[1, 0]));
    let cloth = SavedTest { meant: Meant::Cloth(300), by: Some(127), ..plain.clone() };
    assert_bytes(&cloth, &with(&[2, 0xAC, 2, 1, 127]));
    assert_bytes(&SavedTest { by: Some(0), ..plain }, &with(&[0, 1, 0]));
    assert_eq!(saved::decode(&sealed(&with(&[3, 0]))), Err(RecordError::Damaged), "no such meaning");
}

#[test]
fn the_largest_saved_test() {
    // As the largest test in record_bytes.rs: four bytes for every length but the unit, and for every time.
    let wide = 1 << 21;
    let steps = Length::from_steps;
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
    let clock = Clock { uptime_s: u32::MAX, unix_s: Some(u32::MAX) };
    let (meant, by) = (Meant::Cloth(u32::MAX), Some(u32::MAX));
    let saved = SavedTest { meant, by, ..SavedTest::new(u16::MAX, clock, test) };

    let mut body = vec![2, 0xFF, 0xFF, 0x03]; // 65 535 = (3·128 + 127)·128 + 127
    body.extend([0xFF, 0xFF, 0xFF, 0xFF, 0x0F, 1, 0xFF, 0xFF, 0xFF, 0xFF, 0x0F]);
    body.extend([1, 0xC0, 0xBA, 0x99, 0x06, 0x80, 0x80, 0x80, 1, 0, 0, 1, 0]);
    body.extend([1, 0xFF, 0xFF, 0xFF, 0xFF, 0x0F]);
    body.push(10);
    body.extend([0x81, 0x80, 0x80, 1].repeat(10));
    body.push(10);
    for later in 0..10 {
        body.extend([9, 0x80 + later, 0x80, 0x80, 1, 0x80, 0x80, 0x80, 1]);
    }
    body.extend([0, 1, 10, 5]); // The gauge not before settling; ten planned; five later looks.
    body.extend([10, 0x80, 0xBE, 0x92, 0x01].repeat(5)); // 2 400 000, the zigzag of 1 200 000.
    body.extend([2, 0xFF, 0xFF, 0xFF, 0xFF, 0x0F, 1, 0xFF, 0xFF, 0xFF, 0xFF, 0x0F]);
    assert_bytes(&saved, &body);
    assert_eq!(encoded(&saved).len(), MAX_SAVED_BYTES);
    assert_eq!(saved::encode(&saved, &mut [0; MAX_SAVED_BYTES - 1]), Err(RecordError::NoRoom));
}

#[test]
fn the_test_is_not_sealed_twice() {
    let saved = SavedTest::new(300, Clock { uptime_s: 100_000, unix_s: None }, everyday());
    let test = encode_test(&everyday(), &mut [0; MAX_SAVED_BYTES]).unwrap().to_vec();
    let (body, _) = test[1..].split_last_chunk::<4>().unwrap();
    assert_eq!(encoded(&saved)[7..].split_last_chunk::<4>().unwrap().0, body);
}

#[test]
fn what_is_whole_but_no_saved_test() {
    let plain = [0, 7, 90, 0, 0xC0, 0x0C, 100, 1, 0, 1, 1, 0, 0, 0, 0];
    let with = |at: usize, byte| {
        let mut body = plain;
        body[at] = byte;
        saved::decode(&sealed(&body))
    };
    assert!(with(0, 0).is_ok());
    assert_eq!(with(0, 3), Err(RecordError::Newer));
    assert_eq!(with(0, 1), Err(RecordError::Damaged), "the second version goes on");
    assert_eq!(with(6, 0), Err(RecordError::Impossible), "gauge zero");
    assert_eq!(with(3, 2), Err(RecordError::Damaged), "an option is 0 or 1");
    assert_eq!(with(9, 3), Err(RecordError::Damaged), "no such grain");
    let longer = sealed(&[&plain[..], &[0]].concat());
    assert_eq!(saved::decode(&longer), Err(RecordError::Damaged), "a byte too many");
    assert_eq!(saved::decode(&sealed(&[])), Err(RecordError::Damaged), "nothing at all");
}

#[test]
fn every_flipped_bit_is_seen() {
    let clock = Clock { uptime_s: 100_000, unix_s: Some(1_760_000_000) };
    let bytes = encoded(&SavedTest::new(300, clock, everyday()));
    for bit in 0..bytes.len() * 8 {
        let mut flipped = bytes.clone();
        flipped[bit / 8] ^= 1 << (bit % 8);
        assert_eq!(saved::decode(&flipped), Err(RecordError::Damaged), "bit {bit}");
    }
}
