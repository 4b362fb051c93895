//! The handheld's end of the line: bytes in, bytes out.
//!
//! It speaks only when asked. Whatever is damaged on the way is dropped without a word; the host asks again.

use tenter_core::Repeatability;
use tenter_core::framing::{Accumulator, FrameError, MAX_REPLY_FRAME, MAX_REQUEST_BYTES, decode_request, encode_reply};
use tenter_core::record::{RecordError, decode_demand};
use tenter_core::saved::MAX_SAVED_BYTES;
use tenter_core::wire::{Identity, LentTags, LinkReply, LinkRequest, Listing, NameList, Refusal};

use crate::log::Named;

/// What the host may read and change. Every call may come twice with the same arguments; the second changes nothing.
///
/// ```
/// use tenter_core::wire::{Identity, LentTags, Listing, NameList, Refusal};
/// use tenter_firmware::link::RequestHandler;
/// use tenter_firmware::log::Named;
///
/// /// A handheld with nothing saved and a memory that does not work.
/// struct Broken;
///
/// impl RequestHandler for Broken {
///     fn identity(&mut self) -> Identity {
///         let version = "0.1.0".try_into().unwrap();
///         Identity { device: 0, version, uptime_s: 5, unix_s: None, demand_slots: 8 }
///     }
///     fn listing(&mut self) -> Result<Listing, Refusal> { Err(Refusal::Chip) }
///     fn fetch<'b>(&mut self, _: u32, _: &'b mut [u8]) -> Result<Option<(u32, &'b [u8])>, Refusal> {
///         Err(Refusal::Chip)
///     }
///     fn acknowledge(&mut self, _: u32) -> Result<(), Refusal> { Err(Refusal::Chip) }
///     fn name(&mut self, _: u32) -> Result<(), Refusal> { Err(Refusal::Chip) }
///     fn set_demand(&mut self, _: u8, _: &[u8]) -> Result<(), Refusal> { Err(Refusal::Chip) }
///     fn set_demand_count(&mut self, _: u8) -> Result<(), Refusal> { Err(Refusal::Chip) }
///     fn set_clock(&mut self, _: u32) {}
///     fn set_repeatability(&mut self, _: u32, _: u32) -> Result<(), Refusal> { Err(Refusal::Chip) }
///     fn set_sessions(&mut self, _: u32, _: u32) -> Result<(), Refusal> { Err(Refusal::Chip) }
///     fn set_tags(&mut self, _: u16, _: u16) -> Result<(), Refusal> { Err(Refusal::Chip) }
///     fn tags(&mut self) -> Result<LentTags, Refusal> { Err(Refusal::Chip) }
///     fn set_name(&mut self, _: NameList, _: u8, _: &Named) -> Result<(), Refusal> { Err(Refusal::Chip) }
///     fn set_name_count(&mut self, _: NameList, _: u8) -> Result<(), Refusal> { Err(Refusal::Chip) }
/// }
///
/// assert_eq!(Broken.identity().device, 0);
/// ```
pub trait RequestHandler {
    /// Who this is.
    fn identity(&mut self) -> Identity;

    /// What is saved.
    ///
    /// # Errors
    ///
    /// [`Refusal::Chip`].
    fn listing(&mut self) -> Result<Listing, Refusal>;

    /// The first whole saved test with the number `from` or a higher one: its number, and its record written into
    /// `buffer`, which holds [`MAX_SAVED_BYTES`].
    ///
    /// # Errors
    ///
    /// [`Refusal::Chip`].
    fn fetch<'b>(&mut self, from: u32, buffer: &'b mut [u8]) -> Result<Option<(u32, &'b [u8])>, Refusal>;

    /// The host has all tests up to this number for good. Never called with a number that no test had yet.
    ///
    /// # Errors
    ///
    /// [`Refusal::Chip`].
    fn acknowledge(&mut self, up_to: u32) -> Result<(), Refusal>;

    /// Takes its number. Never called with 0.
    ///
    /// # Errors
    ///
    /// [`Refusal::Named`] when it has another; [`Refusal::Chip`].
    fn name(&mut self, device: u32) -> Result<(), Refusal>;

    /// Writes a demand's record; it was checked.
    ///
    /// # Errors
    ///
    /// [`Refusal::Slot`] or [`Refusal::Chip`].
    fn set_demand(&mut self, slot: u8, record: &[u8]) -> Result<(), Refusal>;

    /// How many demands are in use, from slot 0 on.
    ///
    /// # Errors
    ///
    /// [`Refusal::Slot`] when there are fewer slots; [`Refusal::Chip`].
    fn set_demand_count(&mut self, count: u8) -> Result<(), Refusal>;

    /// Takes the time, in seconds since 1970-01-01 00:00 UTC.
    fn set_clock(&mut self, unix_s: u32);

    /// Stores the user's repeatability, as [`Repeatability::from_thousandths`] takes it; clears it where that
    /// takes nothing.
    ///
    /// # Errors
    ///
    /// [`Refusal::Chip`].
    fn set_repeatability(&mut self, ratio: u32, dof: u32) -> Result<(), Refusal>;

    /// Stores how much the user's days differ, as [`Repeatability::with_sessions_in_thousandths`] takes it.
    ///
    /// # Errors
    ///
    /// [`Refusal::Chip`].
    fn set_sessions(&mut self, ratio: u32, dof: u32) -> Result<(), Refusal>;

    /// Takes the tags it may give.
    ///
    /// # Errors
    ///
    /// [`Refusal::Slot`] for none, or for some that cannot be dialled; [`Refusal::Chip`].
    fn set_tags(&mut self, least: u16, most: u16) -> Result<(), Refusal>;

    /// The tags it may give, and how far it gave them.
    ///
    /// # Errors
    ///
    /// [`Refusal::Chip`].
    fn tags(&mut self) -> Result<LentTags, Refusal>;

    /// Writes a name.
    ///
    /// # Errors
    ///
    /// [`Refusal::Slot`] or [`Refusal::Chip`].
    fn set_name(&mut self, list: NameList, slot: u8, named: &Named) -> Result<(), Refusal>;

    /// How many names are in use, from slot 0 on.
    ///
    /// # Errors
    ///
    /// [`Refusal::Slot`] when there are fewer slots; [`Refusal::Chip`].
    fn set_name_count(&mut self, list: NameList, count: u8) -> Result<(), Refusal>;
}

/// A conversation with the host. It remembers nothing between two requests but half a frame.
///
/// ```
/// use tenter_core::{framing, wire};
/// # use tenter_core::wire::{Identity, LentTags, Listing, NameList, Refusal};
/// # use tenter_firmware::{link::RequestHandler, log::Named};
/// # struct Handheld;
/// # impl RequestHandler for Handheld {
/// #     fn identity(&mut self) -> Identity {
/// #         let version = "0.1.0".try_into().unwrap();
/// #         Identity { device: 0, version, uptime_s: 5, unix_s: None, demand_slots: 8 }
/// #     }
/// #     fn listing(&mut self) -> Result<Listing, Refusal> { Err(Refusal::Chip) }
/// #     fn fetch<'b>(&mut self, _: u32, _: &'b mut [u8]) -> Result<Option<(u32, &'b [u8])>, Refusal> {
/// #         Err(Refusal::Chip)
/// #     }
/// #     fn acknowledge(&mut self, _: u32) -> Result<(), Refusal> { Err(Refusal::Chip) }
/// #     fn name(&mut self, _: u32) -> Result<(), Refusal> { Err(Refusal::Chip) }
/// #     fn set_demand(&mut self, _: u8, _: &[u8]) -> Result<(), Refusal> { Err(Refusal::Chip) }
/// #     fn set_demand_count(&mut self, _: u8) -> Result<(), Refusal> { Err(Refusal::Chip) }
/// #     fn set_clock(&mut self, _: u32) {}
/// #     fn set_repeatability(&mut self, _: u32, _: u32) -> Result<(), Refusal> { Err(Refusal::Chip) }
/// #     fn set_sessions(&mut self, _: u32, _: u32) -> Result<(), Refusal> { Err(Refusal::Chip) }
/// #     fn set_tags(&mut self, _: u16, _: u16) -> Result<(), Refusal> { Err(Refusal::Chip) }
/// #     fn tags(&mut self) -> Result<LentTags, Refusal> { Err(Refusal::Chip) }
/// #     fn set_name(&mut self, _: NameList, _: u8, _: &Named) -> Result<(), Refusal> { Err(Refusal::Chip) }
/// #     fn set_name_count(&mut self, _: NameList, _: u8) -> Result<(), Refusal> { Err(Refusal::Chip) }
/// # }
/// use tenter_firmware::link::Responder;
///
/// let mut session = Responder::new();
/// let mut buffer = [0; framing::MAX_REQUEST_FRAME];
/// let frame = framing::encode_request(1, &wire::LinkRequest::Identify, &mut buffer).unwrap();
/// let (last, rest) = frame.split_last().unwrap();
/// assert!(rest.iter().all(|byte| session.receive(*byte, &mut Handheld).is_none()));
/// assert!(session.receive(*last, &mut Handheld).is_some());
/// ```
#[derive(Debug)]
pub struct Responder {
    inbox: Accumulator<MAX_REQUEST_BYTES>,
    outbox: [u8; MAX_REPLY_FRAME],
    /// How much of it is the newest reply.
    length: usize,
}

impl Default for Responder {
    fn default() -> Self {
        Self::new()
    }
}

impl Responder {
    /// Nothing heard yet.
    #[must_use]
    pub const fn new() -> Self {
        Self { inbox: Accumulator::new(), outbox: [0; MAX_REPLY_FRAME], length: 0 }
    }

    /// Takes a byte; the reply's frame, if this byte closes a request.
    pub fn receive(&mut self, byte: u8, desk: &mut impl RequestHandler) -> Option<&[u8]> {
        self.hear(byte, desk).then(|| self.reply())
    }

    /// Takes a byte; whether it closes a request that is answered by [`Responder::reply`].
    pub fn hear(&mut self, byte: u8, desk: &mut impl RequestHandler) -> bool {
        let Some(message) = self.inbox.push(byte) else { return false };
        let mut record = [0; MAX_SAVED_BYTES];
        let (token, reply) = match decode_request(message) {
            Ok((token, request)) => (token, answer(&request, desk, &mut record).unwrap_or_else(LinkReply::Refused)),
            Err(FrameError::Version { token, .. }) => (token, LinkReply::Refused(Refusal::Version)),
            Err(FrameError::Unknown { token }) => (token, LinkReply::Refused(Refusal::Unknown)),
            Err(FrameError::Damaged | FrameError::WrongWay | FrameError::NoRoom) => return false,
        };
        let frame = encode_reply(token, &reply, &mut self.outbox);
        self.length = frame.as_ref().map_or(0, |frame| frame.len());
        frame.is_ok()
    }

    /// The newest reply's frame.
    #[must_use]
    pub fn reply(&self) -> &[u8] {
        self.outbox.get(..self.length).unwrap_or_default()
    }
}

fn answer<'b>(
    request: &LinkRequest<'_>,
    desk: &mut impl RequestHandler,
    buffer: &'b mut [u8; MAX_SAVED_BYTES],
) -> Result<LinkReply<'b>, Refusal> {
    match *request {
        LinkRequest::Identify => return Ok(LinkReply::Identity(desk.identity())),
        LinkRequest::List => return desk.listing().map(LinkReply::Listing),
        LinkRequest::Fetch { from } => {
            return Ok(match desk.fetch(from, buffer)? {
                Some((seq, record)) => LinkReply::Test { from, seq, record },
                None => LinkReply::NoTest { from },
            });
        }
        // Whoever acknowledges what was never saved here means another handheld, or this one before its memory was
        // exchanged. Taken as "all", it would lose the tests that nobody has.
        LinkRequest::Acknowledge { up_to } if up_to >= desk.listing()?.next => return Err(Refusal::Ahead),
        LinkRequest::Acknowledge { up_to } => desk.acknowledge(up_to)?,
        LinkRequest::Name { device: 0 } => return Err(Refusal::Named),
        LinkRequest::Name { device } => desk.name(device)?,
        LinkRequest::SetDemand { slot, record } => {
            decode_demand(record).map_err(|error| match error {
                RecordError::Newer => Refusal::NewerRecord,
                RecordError::Damaged | RecordError::Impossible | RecordError::NoRoom => Refusal::Record,
            })?;
            desk.set_demand(slot, record)?;
        }
        LinkRequest::SetDemandCount { count } => desk.set_demand_count(count)?,
        LinkRequest::SetClock { unix_s } => desk.set_clock(unix_s),
        LinkRequest::SetRepeatability { ratio, dof }
            if dof > 0 && Repeatability::from_thousandths(ratio, dof).is_none() =>
        {
            return Err(Refusal::Record);
        }
        LinkRequest::SetRepeatability { ratio, dof } => desk.set_repeatability(ratio, dof)?,
        LinkRequest::SetSessions { ratio, .. } if ratio > 100_000 => return Err(Refusal::Record),
        LinkRequest::SetSessions { ratio, dof } => desk.set_sessions(ratio, dof)?,
        LinkRequest::SetTags { least, most } => desk.set_tags(least, most)?,
        LinkRequest::ListTags => return desk.tags().map(LinkReply::Tags),
        LinkRequest::SetName { list, slot, mark, tag, name } => {
            let named = Named::new(mark, tag, name).ok_or(Refusal::Record)?;
            desk.set_name(list, slot, &named)?;
        }
        LinkRequest::SetNameCount { list, count } => desk.set_name_count(list, count)?,
    }
    Ok(LinkReply::Done)
}
