//! Frames: how messages find their ends on a line that loses and alters bytes.
//!
//! A frame is COBS over the message between two zero bytes. No zero occurs inside, so whatever noise or half a frame
//! came before, the next frame is read whole. A message:
//!
//! | bytes | hold |
//! | --- | --- |
//! | 1 | [`PROTOCOL`] |
//! | 1 | 0 for a request, 1 for a reply: a line that echoes is not taken for an answer |
//! | 1 | a token that the reply repeats, so that a late reply is not taken for that to a later request |
//! | … | [`LinkRequest`] or [`LinkReply`] as `postcard` writes it: the number of the variant, then its fields in their order |
//! | 4 | CRC-32 (ISO-HDLC) of all before it, lowest byte first |
//!
//! **Promise:** the first three bytes and the last four mean the same in every version.

use core::fmt;

use cobs::{DecodeResult, DecoderState};
use heapless::Vec;
use serde::{Deserialize, Serialize};

use crate::wire::message::{LinkReply, LinkRequest, MAX_REPLY_CONTENT, MAX_REQUEST_CONTENT, PROTOCOL};
use crate::wire::record;

/// Version, direction and token before, checksum behind.
const AROUND: usize = 3 + 4;

/// The most bytes of a request's message.
pub const MAX_REQUEST_BYTES: usize = AROUND + MAX_REQUEST_CONTENT;

/// The most bytes of a reply's message.
pub const MAX_REPLY_BYTES: usize = AROUND + MAX_REPLY_CONTENT;

/// The most bytes of a request's frame.
pub const MAX_REQUEST_FRAME: usize = cobs::max_encoding_length(MAX_REQUEST_BYTES) + 2;

/// The most bytes of a reply's frame.
pub const MAX_REPLY_FRAME: usize = cobs::max_encoding_length(MAX_REPLY_BYTES) + 2;

/// Why a message has no frame, or the bytes of a frame no message.
///
/// ```
/// use tenter_core::framing::{FrameError, decode_request};
///
/// assert_eq!(decode_request(b"noise"), Err(FrameError::Damaged));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum FrameError {
    /// The buffer is too short, or the message longer than any may be.
    NoRoom,
    /// The checksum does not match.
    Damaged,
    /// Whole, but a request where a reply is due, or a reply where a request is.
    WrongWay,
    /// Whole, but of another version of the protocol.
    Version {
        /// The token it came with.
        token: u8,
        /// The version it is of.
        version: u8,
    },
    /// Whole and of this version, but nothing this program knows.
    Unknown {
        /// The token it came with.
        token: u8,
    },
}

impl fmt::Display for FrameError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoRoom => f.write_str("no room for the message"),
            Self::Damaged => f.write_str("the message is damaged"),
            Self::WrongWay => f.write_str("the message goes the other way"),
            Self::Version { version, .. } => {
                write!(f, "the message is of version {version} of the protocol, this program speaks {PROTOCOL}")
            }
            Self::Unknown { .. } => f.write_str("the message is nothing this program knows"),
        }
    }
}

impl core::error::Error for FrameError {}

const REQUEST: u8 = 0;
const REPLY: u8 = 1;

#[derive(Serialize)]
struct Message<'a, T> {
    version: u8,
    direction: u8,
    token: u8,
    content: &'a T,
}

/// Writes a request in its frame into `buffer` ([`MAX_REQUEST_FRAME`] bytes always do) and hands back the bytes used.
///
/// # Errors
///
/// [`FrameError::NoRoom`].
///
/// ```
/// use tenter_core::{framing::{FrameError, encode_request}, wire::LinkRequest};
///
/// assert_eq!(encode_request(0, &LinkRequest::List, &mut [0; 10]), Err(FrameError::NoRoom));
/// assert!(encode_request(0, &LinkRequest::List, &mut [0; 11]).is_ok());
/// ```
pub fn encode_request<'b>(token: u8, request: &LinkRequest<'_>, buffer: &'b mut [u8]) -> Result<&'b [u8], FrameError> {
    encode(Message { version: PROTOCOL, direction: REQUEST, token, content: request }, buffer)
}

/// Writes a reply in its frame into `buffer` ([`MAX_REPLY_FRAME`] bytes always do) and hands back the bytes used.
///
/// # Errors
///
/// [`FrameError::NoRoom`].
///
/// ```
/// use tenter_core::{framing::{FrameError, encode_reply}, wire::LinkReply};
///
/// assert_eq!(encode_reply(0, &LinkReply::Done, &mut [0; 10]), Err(FrameError::NoRoom));
/// assert!(encode_reply(0, &LinkReply::Done, &mut [0; 11]).is_ok());
/// ```
pub fn encode_reply<'b>(token: u8, reply: &LinkReply<'_>, buffer: &'b mut [u8]) -> Result<&'b [u8], FrameError> {
    encode(Message { version: PROTOCOL, direction: REPLY, token, content: reply }, buffer)
}

/// Reads the token and the request out of the bytes that an [`Accumulator`] hands out.
///
/// # Errors
///
/// Every [`FrameError`] but [`FrameError::NoRoom`].
///
/// ```
/// use tenter_core::framing::{Accumulator, MAX_REQUEST_BYTES, decode_request, encode_request};
/// use tenter_core::wire::LinkRequest;
///
/// let mut buffer = [0; 11];
/// let frame = encode_request(7, &LinkRequest::List, &mut buffer).unwrap();
/// let mut inbox = Accumulator::<MAX_REQUEST_BYTES>::new();
/// for byte in frame {
///     if let Some(message) = inbox.push(*byte) {
///         assert_eq!(decode_request(message), Ok((7, LinkRequest::List)));
///     }
/// }
/// ```
pub fn decode_request(message: &[u8]) -> Result<(u8, LinkRequest<'_>), FrameError> {
    decode(message, REQUEST)
}

/// Reads the token and the reply out of the bytes that an [`Accumulator`] hands out.
///
/// # Errors
///
/// Every [`FrameError`] but [`FrameError::NoRoom`].
///
/// ```
/// use tenter_core::framing::{Accumulator, FrameError, decode_reply, encode_request};
/// use tenter_core::wire::LinkRequest;
///
/// // A line that echoes hands the host its own request.
/// let mut buffer = [0; 11];
/// let frame = encode_request(7, &LinkRequest::List, &mut buffer).unwrap();
/// let mut inbox = Accumulator::<16>::new();
/// let (end, rest) = frame.split_last().unwrap();
/// assert!(rest.iter().all(|byte| inbox.push(*byte).is_none()));
/// assert_eq!(decode_reply(inbox.push(*end).unwrap()), Err(FrameError::WrongWay));
/// ```
pub fn decode_reply(message: &[u8]) -> Result<(u8, LinkReply<'_>), FrameError> {
    decode(message, REPLY)
}

fn encode<'b, T: Serialize>(message: Message<'_, T>, buffer: &'b mut [u8]) -> Result<&'b [u8], FrameError> {
    let mut plain = [0; MAX_REPLY_BYTES];
    let plain = record::seal(&message, &mut plain).map_err(|_| FrameError::NoRoom)?;
    let (first, room) = buffer.split_first_mut().ok_or(FrameError::NoRoom)?;
    let used = cobs::try_encode(plain, room).map_err(|_| FrameError::NoRoom)?;
    let last = room.get_mut(used).ok_or(FrameError::NoRoom)?;
    (*first, *last) = (0, 0);
    buffer.get(..used + 2).ok_or(FrameError::NoRoom)
}

fn decode<'b, T: Deserialize<'b>>(message: &'b [u8], due: u8) -> Result<(u8, T), FrameError> {
    let (body, stated) = message.split_last_chunk().ok_or(FrameError::Damaged)?;
    if record::checksum(body) != u32::from_le_bytes(*stated) {
        return Err(FrameError::Damaged);
    }
    let [version, direction, token, content @ ..] = body else { return Err(FrameError::Damaged) };
    let (version, token) = (*version, *token);
    if *direction != due {
        return Err(FrameError::WrongWay);
    }
    if version != PROTOCOL {
        return Err(FrameError::Version { token, version });
    }
    match postcard::take_from_bytes(content) {
        Ok((content, [])) => Ok((token, content)),
        _ => Err(FrameError::Unknown { token }),
    }
}

/// Takes the bytes of a line one by one and hands out each message, up to `N` bytes long, when its frame is closed.
/// Noise and frames that are too long are dropped up to the next zero.
///
/// ```
/// use tenter_core::framing::Accumulator;
///
/// let mut inbox = Accumulator::<3>::new();
/// for byte in [9, 9, 0, 6, 1, 1, 1, 1, 1, 0, 0, 3, 1, 2] {
///     assert_eq!(inbox.push(byte), None); // Noise, a frame of five bytes, an empty one, the start of one of two.
/// }
/// assert_eq!(inbox.push(0), Some([1, 2].as_slice()));
/// ```
#[derive(Debug)]
pub struct Accumulator<const N: usize> {
    state: DecoderState,
    message: Vec<u8, N>,
    stage: Stage,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Stage {
    Filling,
    /// The message is too long: wait for the next.
    Overfull,
    /// The message was handed out: the next byte begins another.
    Closed,
}

impl<const N: usize> Default for Accumulator<N> {
    fn default() -> Self {
        Self::new()
    }
}

impl<const N: usize> Accumulator<N> {
    /// Nothing received yet.
    ///
    /// ```
    /// assert_eq!(tenter_core::framing::Accumulator::<8>::new().push(0), None);
    /// ```
    #[must_use]
    pub const fn new() -> Self {
        Self { state: DecoderState::Idle, message: Vec::new(), stage: Stage::Filling }
    }

    /// Takes a byte; the message, if this byte closes its frame.
    ///
    /// ```
    /// let mut inbox = tenter_core::framing::Accumulator::<8>::new();
    /// assert_eq!(inbox.push(2), None);
    /// assert_eq!(inbox.push(5), None);
    /// assert_eq!(inbox.push(0), Some([5].as_slice()));
    /// ```
    pub fn push(&mut self, byte: u8) -> Option<&[u8]> {
        if self.stage == Stage::Closed {
            self.clear();
        }
        match self.state.feed(byte) {
            Ok(DecodeResult::NoData) => {}
            Ok(DecodeResult::DataContinue(plain)) => {
                if self.message.push(plain).is_err() {
                    self.stage = Stage::Overfull;
                }
            }
            Ok(DecodeResult::DataComplete) if self.stage == Stage::Filling => {
                self.stage = Stage::Closed;
                return Some(&self.message);
            }
            Ok(DecodeResult::DataComplete) | Err(_) => self.clear(),
        }
        None
    }

    fn clear(&mut self) {
        self.message.clear();
        self.stage = Stage::Filling;
    }
}
