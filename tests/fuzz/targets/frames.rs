//! Bytes on the line, both ways: no panic, and what is taken can be written.

#![no_main]

use libfuzzer_sys::fuzz_target;
use tenter_core::framing::{
    Accumulator, MAX_REPLY_BYTES, MAX_REPLY_FRAME, MAX_REQUEST_FRAME, decode_reply, decode_request, encode_reply,
    encode_request,
};

fuzz_target!(|bytes: &[u8]| {
    let mut inbox = Accumulator::<MAX_REPLY_BYTES>::new();
    let line = bytes.iter().chain([&0]);
    for byte in line {
        let Some(message) = inbox.push(*byte) else { continue };
        if let Ok((token, request)) = decode_request(message) {
            encode_request(token, &request, &mut [0; MAX_REQUEST_FRAME]).expect("what was read can be written");
        }
        if let Ok((token, reply)) = decode_reply(message) {
            encode_reply(token, &reply, &mut [0; MAX_REPLY_FRAME]).expect("what was read can be written");
        }
    }
    let _ = (decode_request(bytes), decode_reply(bytes));
});
