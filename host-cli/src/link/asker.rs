//! The asking end of the protocol without a line: what carries the bytes, and how long to wait, is somebody else's.

use std::io;

use tenter_core::framing::{Accumulator, FrameError, MAX_REPLY_BYTES, MAX_REQUEST_FRAME, decode_reply, encode_request};
use tenter_core::wire::{LinkReply, LinkRequest};

use super::LinkError;

/// Numbers its questions, and knows which reply belongs to the newest.
#[derive(Debug)]
pub struct Asker {
    token: u8,
    inbox: Accumulator<MAX_REPLY_BYTES>,
    heard: bool,
}

impl Asker {
    /// `token` is best not the same in two programs one after the other: then an answer to the one before counts for
    /// nothing.
    #[must_use]
    pub const fn new(token: u8) -> Self {
        Self { token, inbox: Accumulator::new(), heard: false }
    }

    /// Begins a new question: replies to those before count no more.
    pub const fn begin(&mut self) {
        self.token = self.token.wrapping_add(1);
        self.heard = false;
    }

    /// The bytes of one try of the question. The number is the same for all of them: a late reply to the first is as good as
    /// one to the second.
    ///
    /// # Errors
    ///
    /// [`LinkError::Broken`] where the question cannot be written down.
    pub fn bytes(&mut self, request: &LinkRequest<'_>) -> Result<Vec<u8>, LinkError> {
        // Half an answer to the try before must not be made whole by the answer of somebody else.
        self.inbox = Accumulator::new();
        let mut buffer = [0; MAX_REQUEST_FRAME];
        Ok(encode_request(self.token, request, &mut buffer).map_err(io::Error::other)?.to_vec())
    }

    /// Takes a byte in; what `take` makes of the reply that it ends, if it does. A refusal counts; what is damaged, late, or an
    /// echo does not.
    ///
    /// # Errors
    ///
    /// [`LinkError`]: refused, of another version, or not known here.
    pub fn hear<R>(&mut self, byte: u8, take: impl FnOnce(LinkReply<'_>) -> Option<R>) -> Result<Option<R>, LinkError> {
        self.heard = true;
        let Some(message) = self.inbox.push(byte) else { return Ok(None) };
        match decode_reply(message) {
            Ok((token, _)) | Err(FrameError::Version { token, .. } | FrameError::Unknown { token })
                if token != self.token =>
            {
                Ok(None)
            }
            Ok((_, LinkReply::Refused(reason))) => Err(LinkError::Refused(reason)),
            Ok((_, reply)) => Ok(take(reply)),
            Err(FrameError::Version { version, .. }) => Err(LinkError::Version(version)),
            Err(FrameError::Unknown { .. }) => Err(LinkError::Unknown),
            Err(FrameError::Damaged | FrameError::WrongWay | FrameError::NoRoom) => Ok(None),
        }
    }

    /// What it is that no reply came: nothing was heard, or nothing that is one.
    #[must_use]
    pub const fn unanswered(&self) -> LinkError {
        if self.heard { LinkError::Garbled } else { LinkError::Silent }
    }
}
