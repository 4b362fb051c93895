//! The bytes on the line, worked out by hand, so that a change of the format cannot pass unseen.
//!
//! Sources: the postcard wire format specification 1.0 (postcard.jamesmunns.com/wire-format), as told in
//! `record_bytes.rs`; COBS: S. Cheshire and M. Baker, "Consistent Overhead Byte Stuffing", IEEE/ACM Transactions on
//! Networking 7(2), 1999: each run of bytes without a zero is preceded by its length plus one, which stands for the
//! zero too; a run of 254 has no zero behind it.

mod crc32;

use crc32::sealed;
use tenter_core::framing::{
    Accumulator, FrameError, MAX_REPLY_BYTES, MAX_REPLY_FRAME, MAX_REQUEST_BYTES, MAX_REQUEST_FRAME, decode_reply,
    decode_request, encode_reply, encode_request,
};
use tenter_core::record::MAX_DEMAND_BYTES;
use tenter_core::wire::{
    Identity, LentTags, LinkReply, LinkRequest, Listing, MAX_SAVED_BYTES, MAX_VERSION_BYTES, NameList, Refusal,
};

const TOKEN: u8 = 0x2A;

fn request_frame(request: &LinkRequest<'_>) -> Vec<u8> {
    encode_request(TOKEN, request, &mut [0; MAX_REQUEST_FRAME]).unwrap().to_vec()
}

fn reply_frame(reply: &LinkReply<'_>) -> Vec<u8> {
    encode_reply(TOKEN, reply, &mut [0; MAX_REPLY_FRAME]).unwrap().to_vec()
}

/// The COBS rule for messages of less than 254 bytes, between two zeros.
fn framed(message: &[u8]) -> Vec<u8> {
    assert!(message.len() < 254);
    let runs = message.split(|byte| *byte == 0);
    let stuffed = runs.flat_map(|run| [&[u8::try_from(run.len()).unwrap() + 1], run].concat());
    [0].into_iter().chain(stuffed).chain([0]).collect()
}

fn message(frame: &[u8]) -> Option<Vec<u8>> {
    let mut inbox = Accumulator::<300>::new();
    let mut messages = frame.iter().filter_map(|byte| inbox.push(*byte).map(<[u8]>::to_vec));
    let first = messages.next();
    assert_eq!(messages.next(), None);
    first
}

#[track_caller]
fn assert_request(request: &LinkRequest<'_>, content: &[u8]) {
    let expected = sealed(&[&[1, 0, TOKEN], content].concat());
    assert_eq!(request_frame(request), framed(&expected));
    assert_eq!(message(&framed(&expected)), Some(expected.clone()));
    assert_eq!(decode_request(&expected), Ok((TOKEN, *request)));
}

#[track_caller]
fn assert_reply(reply: &LinkReply<'_>, content: &[u8]) {
    let expected = sealed(&[&[1, 1, TOKEN], content].concat());
    assert_eq!(reply_frame(reply), framed(&expected));
    assert_eq!(message(&framed(&expected)), Some(expected.clone()));
    assert_eq!(decode_reply(&expected), Ok((TOKEN, reply.clone())));
}

/// Whole frames. Source of the checksums: the function `crc32` of zlib.
#[test]
fn whole_frames() {
    #[rustfmt::skip]
    let identify = [
        0,
        2, 1,                         // version 1, then a zero: a request
        2, 0x2A,                      // the token, then a zero: variant 0
        5, 0x51, 0x74, 0x93, 0xF6,    // zlib.crc32(01 00 2A 00) = F6937451
        0,
    ];
    assert_eq!(request_frame(&LinkRequest::Identify), identify);
    #[rustfmt::skip]
    let fetch = [
        0,
        2, 1,
        9, 0x2A, 2, 0xAC, 2,          // variant 2, 300
        0xFB, 0x7B, 0x29, 0x5A,       // zlib.crc32(01 00 2A 02 AC 02) = 5A297BFB
        0,
    ];
    assert_eq!(request_frame(&LinkRequest::Fetch { from: 300 }), fetch);
    #[rustfmt::skip]
    let done = [
        0,
        9, 1, 1, 0x2A, 4,             // no zero: a reply, variant 4
        0x7F, 0xDA, 0x3C, 0xF0,       // zlib.crc32(01 01 2A 04) = F03CDA7F
        0,
    ];
    assert_eq!(reply_frame(&LinkReply::Done), done);
}

#[test]
fn requests() {
    assert_request(&LinkRequest::Identify, &[0]);
    assert_request(&LinkRequest::List, &[1]);
    assert_request(&LinkRequest::Fetch { from: 300 }, &[2, 0xAC, 2]); // 300 = 2·128 + 44, so 44 + 128, 2
    assert_request(&LinkRequest::Acknowledge { up_to: 127 }, &[3, 127]);
    assert_request(&LinkRequest::Name { device: u32::MAX }, &[4, 0xFF, 0xFF, 0xFF, 0xFF, 0x0F]); // 32 ones, 7 a byte
    assert_request(&LinkRequest::SetDemand { slot: 7, record: &[9, 0, 8] }, &[5, 7, 3, 9, 0, 8]);
    assert_request(&LinkRequest::SetDemandCount { count: 200 }, &[6, 200]);
    // 1 700 000 000 = 0x6553F100: from the lowest, seven bits each: 00, 62, 4F, 2A, 06.
    assert_request(&LinkRequest::SetClock { unix_s: 1_700_000_000 }, &[7, 0x80, 0xE2, 0xCF, 0xAA, 0x06]);
    assert_request(&LinkRequest::SetRepeatability { ratio: 500, dof: 22 }, &[8, 0xF4, 3, 22]); // 500 = 3·128 + 116, so 116 + 128, 3
    assert_request(&LinkRequest::SetRepeatability { ratio: 0, dof: 0 }, &[8, 0, 0]);
    assert_request(&LinkRequest::SetSessions { ratio: 1_400, dof: 6 }, &[9, 0xF8, 0x0A, 6]); // 1400 = 10·128 + 120
    assert_request(&LinkRequest::SetTags { least: 8, most: 300 }, &[10, 8, 0xAC, 2]);
    assert_request(&LinkRequest::ListTags, &[11]);
    let (list, name) = (NameList::Cloths, "twill");
    let content = [12, 0, 3, 0xAC, 2, 7, 5, b't', b'w', b'i', b'l', b'l'];
    assert_request(&LinkRequest::SetName { list, slot: 3, mark: 300, tag: 7, name }, &content);
    assert_request(&LinkRequest::SetNameCount { list: NameList::People, count: 2 }, &[13, 1, 2]);
}

#[test]
fn replies() {
    let version = "0.1.0".try_into().unwrap();
    let identity = Identity { device: 300, version, uptime_s: 5, unix_s: None, demand_slots: 8 };
    #[rustfmt::skip]
    let content = [
        0,
        0xAC, 2,                           // device
        5, b'0', b'.', b'1', b'.', b'0',   // version
        5,                                 // uptime
        0,                                 // no clock
        8,                                 // slots
    ];
    assert_reply(&LinkReply::Identity(identity.clone()), &content);
    let set = Identity { unix_s: Some(127), ..identity };
    assert_reply(&LinkReply::Identity(set), &[&content[..10], &[1, 127, 8]].concat());

    let listing = Listing { oldest: Some(3), next: 9, unacknowledged: 6, free_pages: 494 };
    assert_reply(&LinkReply::Listing(listing), &[1, 1, 3, 9, 6, 0xEE, 3]); // 494 = 3·128 + 110
    let empty = Listing { oldest: None, next: 1, unacknowledged: 0, free_pages: 494 };
    assert_reply(&LinkReply::Listing(empty), &[1, 0, 1, 0, 0xEE, 3]);

    assert_reply(&LinkReply::Test { from: 1, seq: 2, record: &[7, 0] }, &[2, 1, 2, 2, 7, 0]);
    assert_reply(&LinkReply::NoTest { from: 4 }, &[3, 4]);
    assert_reply(&LinkReply::Done, &[4]);
    assert_reply(&LinkReply::Tags(LentTags { least: 8, next: 10, most: 300 }), &[6, 8, 10, 0xAC, 2]);
    let reasons = [
        Refusal::Version,
        Refusal::Unknown,
        Refusal::Record,
        Refusal::NewerRecord,
        Refusal::Slot,
        Refusal::Named,
        Refusal::Ahead,
        Refusal::Chip,
    ];
    for (number, reason) in (0..).zip(reasons) {
        assert_reply(&LinkReply::Refused(reason), &[5, number]);
    }
    assert_eq!(decode_reply(&sealed(&[1, 1, TOKEN, 5, 8])), Err(FrameError::Unknown { token: TOKEN }));
}

/// The example in section II of the paper (from memory; each byte follows from the rule), and the boundary of 254.
#[test]
fn frames_of_others_are_read() {
    let packet = [0x45, 0, 0, 0x2C, 0x4C, 0x79, 0, 0, 0x40, 0x06, 0x4F, 0x37];
    let stuffed = [0x02, 0x45, 0x01, 0x04, 0x2C, 0x4C, 0x79, 0x01, 0x05, 0x40, 0x06, 0x4F, 0x37, 0];
    assert_eq!(message(&stuffed), Some(packet.to_vec()));
    assert_eq!(framed(&packet)[1..], stuffed);

    let run = |from: u8, to: u8| (from..=to).collect::<Vec<_>>();
    let cases = [
        (vec![0], vec![1, 1]),
        (vec![0, 0], vec![1, 1, 1]),
        (run(1, 254), [vec![255], run(1, 254)].concat()),
        ([vec![0], run(1, 254)].concat(), [vec![1, 255], run(1, 254)].concat()),
        (run(1, 255), [vec![255], run(1, 254), vec![2, 255]].concat()),
        ([run(2, 255), vec![0]].concat(), [vec![255], run(2, 255), vec![1, 1]].concat()),
        ([run(3, 255), vec![0, 1]].concat(), [vec![254], run(3, 255), vec![2, 1]].concat()),
    ];
    for (plain, mut frame) in cases {
        frame.push(0);
        assert_eq!(message(&frame), Some(plain));
    }
}

#[test]
fn the_largest_messages_fill_the_buffers_and_no_more() {
    for fill in [0, 1, 255] {
        let demand = [fill; MAX_DEMAND_BYTES];
        let largest = request_frame(&LinkRequest::SetDemand { slot: 255, record: &demand });
        assert_eq!(largest.len(), MAX_REQUEST_FRAME);
        assert_eq!(message(&largest).unwrap().len(), MAX_REQUEST_BYTES);

        let saved = [fill; MAX_SAVED_BYTES];
        let test = LinkReply::Test { from: u32::MAX, seq: u32::MAX, record: &saved };
        let largest = reply_frame(&test);
        assert_eq!(largest.len(), MAX_REPLY_FRAME);
        assert_eq!(message(&largest).unwrap().len(), MAX_REPLY_BYTES);
        for short in 0..MAX_REPLY_FRAME {
            assert_eq!(encode_reply(TOKEN, &test, &mut vec![0; short]), Err(FrameError::NoRoom), "{short}");
        }
    }
    // One byte more than any reply may have is refused, whatever the buffer.
    let test = LinkReply::Test { from: u32::MAX, seq: u32::MAX, record: &[1; MAX_SAVED_BYTES + 1] };
    assert_eq!(encode_reply(TOKEN, &test, &mut [0; 1000]), Err(FrameError::NoRoom));
    // No other reply comes near.
    let version = "v".repeat(MAX_VERSION_BYTES).as_str().try_into().unwrap();
    let identity =
        Identity { device: u32::MAX, version, uptime_s: u32::MAX, unix_s: Some(u32::MAX), demand_slots: u8::MAX };
    assert_eq!(message(&reply_frame(&LinkReply::Identity(identity))).unwrap().len(), 7 + 1 + 5 + 17 + 5 + 6 + 1);
}
