//! Bytes that no honest program sends.

use proptest::prelude::*;
use tenter::link::LinkError;
use tenter_core::framing::{
    Accumulator, FrameError, MAX_REPLY_BYTES, MAX_REPLY_FRAME, MAX_REQUEST_FRAME, decode_reply, decode_request,
    encode_reply, encode_request,
};
use tenter_core::record::MAX_DEMAND_BYTES;
use tenter_core::wire::{LinkReply, LinkRequest, MAX_SAVED_BYTES, Refusal};
use tenter_firmware::link::Responder;

use crate::desk::{MemoryDesk, demand, record};
use crate::line::Line;

#[path = "../crc32/mod.rs"]
mod crc32;

fn request(token: u8, request: &LinkRequest<'_>) -> Vec<u8> {
    encode_request(token, request, &mut [0; MAX_REQUEST_FRAME]).unwrap().to_vec()
}

fn reply(token: u8, reply: &LinkReply<'_>) -> Vec<u8> {
    encode_reply(token, reply, &mut [0; MAX_REPLY_FRAME]).unwrap().to_vec()
}

/// A frame around a body that the encoder would not write.
fn framed(body: &[u8]) -> Vec<u8> {
    let sealed = crc32::sealed(body);
    let blocks = sealed.split(|byte| *byte == 0);
    let stuffed = blocks.flat_map(|block| [&[block.len() as u8 + 1], block].concat());
    [0].into_iter().chain(stuffed).chain([0]).collect()
}

/// All messages that `bytes` hold.
fn messages(bytes: &[u8]) -> Vec<Vec<u8>> {
    let mut inbox = Accumulator::<MAX_REPLY_BYTES>::new();
    bytes.iter().filter_map(|byte| inbox.push(*byte).map(<[u8]>::to_vec)).collect()
}

/// All that a handheld answers.
fn answers(session: &mut Responder, desk: &mut MemoryDesk, bytes: &[u8]) -> Vec<u8> {
    bytes.iter().flat_map(|byte| session.receive(*byte, desk).unwrap_or_default().to_vec()).collect()
}

/// Bytes that look like frames more often than chance would have it.
fn noise() -> impl Strategy<Value = Vec<u8>> {
    let piece = prop_oneof![
        prop::collection::vec(any::<u8>(), 0..20),
        prop::collection::vec(prop_oneof![Just(0), Just(1), Just(255)], 0..300),
        Just(request(3, &LinkRequest::List))
            .prop_flat_map(|frame| (0..frame.len()).prop_map(move |n| frame[..n].to_vec())),
    ];
    prop::collection::vec(piece, 0..12).prop_map(|pieces| pieces.concat())
}

proptest! {
    #[test]
    fn noise_is_not_answered_and_the_request_after_it_is(noise in noise()) {
        let (mut session, mut desk) = (Responder::new(), MemoryDesk::with_tests(&[30]));
        let before = desk.clone();
        let answered = answers(&mut session, &mut desk, &noise);
        // Every whole piece is a request to list; what else comes out would be an accident of one in 2³².
        for message in messages(&answered) {
            prop_assert!(matches!(decode_reply(&message), Ok((3, LinkReply::Listing(_)))));
        }
        prop_assert_eq!(&desk, &before);
        let answered = messages(&answers(&mut session, &mut desk, &request(9, &LinkRequest::Fetch { from: 0 })));
        let expected = LinkReply::Test { from: 0, seq: 1, record: &record(1, 30) };
        prop_assert_eq!(answered.last().map(|message| decode_reply(message)), Some(Ok((9, expected))));
    }

    /// With a checksum that matches, so that what lies behind it is reached.
    #[test]
    fn sealed_nonsense_changes_nothing_it_should_not(
        head in prop_oneof![Just([1, 0]), Just([1, 1]), any::<[u8; 2]>()],
        content in prop::collection::vec(prop_oneof![0..15u8, any::<u8>()], 0..120),
    ) {
        let body = [&head[..], &content].concat();
        let mut desk = MemoryDesk::with_tests(&[30]);
        let answered = answers(&mut Responder::new(), &mut desk, &framed(&body));
        for message in messages(&answered) {
            prop_assert_eq!(message.get(2), content.first(), "the token comes back");
        }
        prop_assert!(answered.is_empty() || head[1] == 0);
        let sealed = crc32::sealed(&body);
        let _ = (decode_request(&sealed), decode_reply(&sealed));
    }

    #[test]
    fn what_is_written_is_read_again(
        token: u8, seq: u32, from: u32, record in prop::collection::vec(any::<u8>(), 0..=MAX_SAVED_BYTES), slot: u8,
    ) {
        let sent = LinkReply::Test { from, seq, record: &record };
        let got = messages(&reply(token, &sent));
        prop_assert_eq!(got.iter().map(|message| decode_reply(message)).collect::<Vec<_>>(), [Ok((token, sent))]);
        let sent = LinkRequest::SetDemand { slot, record: &record[..record.len().min(MAX_DEMAND_BYTES)] };
        let got = messages(&request(token, &sent));
        prop_assert_eq!(got.iter().map(|message| decode_request(message)).collect::<Vec<_>>(), [Ok((token, sent))]);
    }

    /// A frame with up to three bits wrong is never read as another message. The checksum sees all such errors in a
    /// message this short (Koopman, "32-bit cyclic redundancy codes", DSN 2002; from memory), but a bit that makes or
    /// breaks a zero moves more than one bit of the message.
    #[test]
    fn wrong_bits_are_seen(flips in prop::collection::btree_set((1..40usize, 0..8u8), 1..4)) {
        let sent = LinkReply::Test { from: 1, seq: 2, record: &record(2, 28) };
        let mut frame = reply(5, &sent);
        let length = frame.len();
        for (place, bit) in flips {
            frame[1 + place % (length - 2)] ^= 1 << bit;
        }
        for message in messages(&frame) {
            let read = decode_reply(&message);
            prop_assert!(read == Err(FrameError::Damaged) || read == Ok((5, sent.clone())), "{:?}", read);
        }
    }
}

#[test]
fn messages_that_do_not_fit_are_dropped_and_those_that_do_are_not() {
    let mut inbox = Accumulator::<4>::new();
    let mut heard = |bytes: &[u8]| -> Vec<Vec<u8>> {
        bytes.iter().filter_map(|byte| inbox.push(*byte).map(<[u8]>::to_vec)).collect()
    };
    assert_eq!(heard(&[5, 1, 2, 3, 4, 0]), [[1, 2, 3, 4]]);
    assert_eq!(heard(&[6, 1, 2, 3, 4, 5, 0]), Vec::<Vec<u8>>::new());
    assert_eq!(heard(&[255; 1000]), Vec::<Vec<u8>>::new());
    assert_eq!(heard(&[0, 5, 1, 2, 3, 4, 0]), [[1, 2, 3, 4]]);
}

#[test]
fn what_the_handheld_says_to_strange_requests() {
    let mut desk = MemoryDesk::with_tests(&[30]);
    let mut answer = |frame: &[u8]| {
        let answered = answers(&mut Responder::new(), &mut desk, frame);
        let read = |message: &Vec<u8>| match decode_reply(message).unwrap() {
            (77, LinkReply::Refused(reason)) => reason,
            other => panic!("{other:?}"),
        };
        messages(&answered).iter().map(read).collect::<Vec<_>>()
    };
    assert_eq!(answer(&framed(&[2, 0, 77])), [Refusal::Version]);
    assert_eq!(answer(&framed(&[2, 0, 77, 200, 3, 3])), [Refusal::Version]);
    assert_eq!(answer(&framed(&[1, 0, 77])), [Refusal::Unknown]);
    assert_eq!(answer(&framed(&[1, 0, 77, 9])), [Refusal::Unknown], "a request cut short");
    assert_eq!(answer(&framed(&[1, 0, 77, 14])), [Refusal::Unknown], "there are requests 0 to 13");
    assert_eq!(answer(&framed(&[1, 0, 77, 8, 5])), [Refusal::Unknown], "a hand cut short");
    assert_eq!(answer(&framed(&[1, 0, 77, 0, 0])), [Refusal::Unknown], "a byte too many");
    assert_eq!(answer(&framed(&[1, 1, 77, 4])), [], "a reply");
    assert_eq!(answer(&framed(&[1, 2, 77, 0])), [], "neither");
    assert_eq!(answer(&framed(&[1, 0])), [], "no token");

    let whole = tenter_core::record::encode_demand(&demand("a", 5), &mut [0; MAX_DEMAND_BYTES]).unwrap().to_vec();
    let mut set = |slot, record: &[u8]| answer(&request(77, &LinkRequest::SetDemand { slot, record }));
    assert_eq!(set(4, &whole), [Refusal::Slot]);
    assert_eq!(set(0, &whole[1..]), [Refusal::Record]);
    assert_eq!(set(0, &[]), [Refusal::Record]);
    assert_eq!(set(0, &crc32::sealed(&[9, 9, 9])), [Refusal::NewerRecord]);
    assert_eq!(answer(&request(77, &LinkRequest::SetDemandCount { count: 5 })), [Refusal::Slot]);
    for (ratio, dof) in [(100_001, 22), (u32::MAX, u32::MAX), (u32::MAX, 1)] {
        assert_eq!(
            answer(&request(77, &LinkRequest::SetRepeatability { ratio, dof })),
            [Refusal::Record],
            "no possible hand"
        );
    }
    assert_eq!(desk.repeatability, (0, 0));
}

#[test]
fn what_the_host_says_to_strange_replies() {
    // For every token there is one reply, so the host finds its own among them.
    let host_hears = |frame: &dyn Fn(u8) -> Vec<u8>| {
        let line = Line::to(MemoryDesk::default());
        line.world().is_dead = true;
        line.world().to_host.extend((0..=255).flat_map(frame));
        line.host().map(|_| ()).unwrap_err()
    };
    assert!(matches!(host_hears(&|token| framed(&[2, 1, token, 0])), LinkError::Version(2)));
    assert!(matches!(host_hears(&|token| framed(&[1, 1, token, 7])), LinkError::Unknown));
    assert!(matches!(host_hears(&|token| framed(&[1, 1, token, 0])), LinkError::Unknown), "an identity cut short");
    // Whole, and an answer to something else.
    assert!(matches!(host_hears(&|token| reply(token, &LinkReply::Done)), LinkError::Garbled));
    assert!(matches!(host_hears(&|token| request(token, &LinkRequest::Identify)), LinkError::Garbled));
    let refusal = host_hears(&|token| reply(token, &LinkReply::Refused(Refusal::Unknown)));
    assert_eq!(tenter::words::errors::link(&refusal), "the handheld refuses: its program does not know this request");
}

/// What an earlier program left on the line says that there is nothing before test 5. Believed, it would make the host
/// acknowledge tests that it never got.
#[test]
fn what_an_earlier_host_left_unread_is_not_believed() {
    let line = Line::to(MemoryDesk::with_tests(&[28; 6]));
    let stale = record(5, 28);
    for token in 0..=255 {
        let test = reply(token, &LinkReply::Test { from: 1, seq: 5, record: &stale });
        let none = reply(token, &LinkReply::NoTest { from: 1 });
        line.world().to_host.extend([test, none].concat());
    }
    let mut host = line.host().unwrap();
    let all: Vec<_> = host.fetch_all_from(1).map(|fetched| fetched.unwrap().seq).collect();
    assert_eq!(all, [1, 2, 3, 4, 5, 6]);
    // Nor is one that answers another question under the right token.
    for token in 0..=255 {
        let other_from = reply(token, &LinkReply::Test { from: 2, seq: 5, record: &stale });
        let before_from = reply(token, &LinkReply::Test { from: 1, seq: 0, record: &stale });
        line.world().to_host.extend([other_from, before_from, reply(token, &LinkReply::NoTest { from: 2 })].concat());
    }
    assert_eq!(host.fetch(1).unwrap().unwrap().seq, 1);
}
