//! What handheld and host say to each other.
//!
//! The host asks, the handheld answers; it never speaks unasked. Every request may be repeated without harm, so a
//! host that hears nothing asks again. Requests and replies travel in [frames](crate::wire::framing).
//!
//! **Promise:** the order of an enum's variants and of a struct's fields is part of the format; whatever changes them
//! raises [`PROTOCOL`]. The golden bytes in `tenter-tests` hold this.
//!
//! A request added behind the last one changes nothing that was said before, so it does not raise it: a handheld that
//! does not know it says [`Refusal::Unknown`] and answers all others. Raised, every older handheld would refuse every
//! request, [`LinkRequest::Identify`] included, and its tests could not be fetched any more. A reply or a reason is added
//! only where a new request asks for it.

use core::fmt;

use heapless::String;
use serde::{Deserialize, Serialize};

use crate::wire::record::MAX_DEMAND_BYTES;
pub use crate::wire::saved::MAX_SAVED_BYTES;

/// The version of what is said here.
pub const PROTOCOL: u8 = 1;

/// The most bytes of the text that names a program's version.
pub const MAX_VERSION_BYTES: usize = 16;

/// The most bytes of a name on the handheld: a line of its display has 21 characters.
pub const MAX_NAME_BYTES: usize = 21;

/// The most bytes of a request: its number, a slot, a length of one byte, a demand.
pub(crate) const MAX_REQUEST_CONTENT: usize = 1 + 1 + 1 + MAX_DEMAND_BYTES;

/// The most bytes of a reply: its number, two numbers of up to five bytes, a length of two, a saved test.
pub(crate) const MAX_REPLY_CONTENT: usize = 1 + 5 + 5 + 2 + MAX_SAVED_BYTES;

/// What the host asks.
///
/// ```
/// use tenter_core::framing::{self, MAX_REQUEST_FRAME};
/// use tenter_core::wire::LinkRequest;
///
/// let mut buffer = [0; MAX_REQUEST_FRAME];
/// let frame = framing::encode_request(7, &LinkRequest::Fetch { from: 1 }, &mut buffer)?;
/// assert_eq!(frame.last(), Some(&0));
/// # Ok::<(), framing::FrameError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum LinkRequest<'a> {
    /// Who is there? Answered by [`LinkReply::Identity`], in this version and every later one.
    Identify,
    /// What is saved? Answered by [`LinkReply::Listing`].
    List,
    /// The first saved test with this number or a higher one. Answered by [`LinkReply::Test`] or [`LinkReply::NoTest`].
    Fetch {
        /// The least number.
        from: u32,
    },
    /// The host keeps all tests up to this number for good; their room may be used again.
    Acknowledge {
        /// The highest number.
        up_to: u32,
    },
    /// Gives a handheld its number, once and for ever.
    Name {
        /// The number, not 0.
        device: u32,
    },
    /// Writes a demand.
    SetDemand {
        /// Where, from 0 on.
        slot: u8,
        /// The demand as [`encode_demand`](crate::wire::record::encode_demand) writes it.
        record: &'a [u8],
    },
    /// How many demands are in use, from slot 0 on.
    SetDemandCount {
        /// How many.
        count: u8,
    },
    /// What time it is.
    SetClock {
        /// Seconds since 1970-01-01 00:00 UTC.
        unix_s: u32,
    },
    /// The user's [`Repeatability`](crate::Repeatability), to be stored and used in every answer. Added after the others; a handheld that does not know it says [`Refusal::Unknown`].
    SetRepeatability {
        /// The standard deviation as a multiple of the assumed one, in thousandths.
        ratio: u32,
        /// Its whole degrees of freedom; 0 forgets it, whatever the ratio.
        dof: u32,
    },
    /// How much the user's days differ, to be stored and used beside the repeatability. Added after the others; a handheld
    /// that does not know it says [`Refusal::Unknown`].
    SetSessions {
        /// The standard deviation from day to day as a multiple of the assumed one, in thousandths.
        ratio: u32,
        /// Its whole degrees of freedom; 0 forgets it, whatever the ratio.
        dof: u32,
    },
    /// Lends the handheld tags for cloths that the log does not know, so that nobody else gives them. Those given so far
    /// stay given; the same said again changes nothing. Added after the others, as those below; a handheld that does not
    /// know it says [`Refusal::Unknown`].
    SetTags {
        /// The first of them, from 1 on.
        least: u16,
        /// The last of them.
        most: u16,
    },
    /// Which tags it may give, and how far it gave them. Answered by [`LinkReply::Tags`].
    ListTags,
    /// Writes a name.
    SetName {
        /// Into which list.
        list: NameList,
        /// Where, from 0 on.
        slot: u8,
        /// What the log knows it by.
        mark: u32,
        /// The tag of the cloth; 0 for a person.
        tag: u16,
        /// The name, of at most [`MAX_NAME_BYTES`].
        name: &'a str,
    },
    /// How many names are in use, from slot 0 on.
    SetNameCount {
        /// Of which list.
        list: NameList,
        /// How many.
        count: u8,
    },
}

/// A list of names on the handheld.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum NameList {
    /// The cloths of the log with their tags.
    Cloths,
    /// The people who may pull; the first is the owner.
    People,
}

/// What the handheld answers.
///
/// ```
/// use tenter_core::wire::{Refusal, LinkReply};
///
/// assert_ne!(LinkReply::Done, LinkReply::Refused(Refusal::Chip));
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum LinkReply<'a> {
    /// Who it is.
    Identity(Identity),
    /// What is saved.
    Listing(Listing),
    /// A saved test.
    Test {
        /// The number that was asked for, so that the reply says by itself that nothing lies between it and `seq`.
        from: u32,
        /// Its own number.
        seq: u32,
        /// Its record.
        record: &'a [u8],
    },
    /// No saved test has the number that was asked for, or a higher one.
    NoTest {
        /// The number that was asked for.
        from: u32,
    },
    /// It is done, or was done before.
    Done,
    /// It is not done.
    Refused(Refusal),
    /// The tags it may give.
    Tags(LentTags),
}

/// Who a handheld is.
///
/// ```
/// use tenter_core::wire::Identity;
///
/// let fresh = Identity { device: 0, version: "0.1.0".try_into()?, uptime_s: 3, unix_s: None, demand_slots: 8 };
/// assert_eq!(fresh.version, "0.1.0");
/// # Ok::<(), heapless::CapacityError>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Identity {
    /// Its number; 0 before it was named.
    pub device: u32,
    /// The version of its program.
    pub version: String<MAX_VERSION_BYTES>,
    /// Seconds since it was switched on.
    pub uptime_s: u32,
    /// Its clock, if it was set since.
    pub unix_s: Option<u32>,
    /// How many demands it can hold.
    pub demand_slots: u8,
}

/// What a handheld has saved.
///
/// ```
/// let empty = tenter_core::wire::Listing { oldest: None, next: 1, unacknowledged: 0, free_pages: 494 };
/// assert!(empty.oldest.is_none());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Listing {
    /// The lowest number not yet acknowledged.
    pub oldest: Option<u32>,
    /// The number that the next saved test gets.
    pub next: u32,
    /// How many tests are not yet acknowledged.
    pub unacknowledged: u16,
    /// How many pages of the memory are free.
    pub free_pages: u16,
}

/// The tags that a handheld may give to cloths that the log does not know.
///
/// ```
/// use tenter_core::wire::LentTags;
///
/// let tags = LentTags { least: 8, next: 10, most: 27 };
/// assert!(tags.holds(8) && !tags.holds(28));
/// assert!(!tags.is_free(9) && tags.is_free(10));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct LentTags {
    /// The first of them.
    pub least: u16,
    /// The one it gives next: those before it are given. One more than `most` where all are.
    pub next: u16,
    /// The last of them.
    pub most: u16,
}

impl LentTags {
    /// Whether a tag is one of them.
    #[must_use]
    pub const fn holds(self, tag: u16) -> bool {
        self.least <= tag && tag <= self.most
    }

    /// Whether a tag is one of them and not given yet.
    #[must_use]
    pub const fn is_free(self, tag: u16) -> bool {
        self.holds(tag) && tag >= self.next
    }
}

/// Why a request was refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Refusal {
    /// Asked in another version of the protocol.
    Version,
    /// Whole, but nothing this program knows.
    Unknown,
    /// The record is damaged, or holds invalid values.
    Record,
    /// The record is of a version this program does not know.
    NewerRecord,
    /// There is no such place for a demand.
    Slot,
    /// It has another number already, or the number is 0.
    Named,
    /// A test is acknowledged that was never saved here.
    Ahead,
    /// The memory chip cannot be read or written.
    Chip,
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Version => "its protocol version differs",
            Self::Unknown => "its program does not know this request",
            Self::Record => "the record is damaged or invalid",
            Self::NewerRecord => "its program is too old for this record",
            Self::Slot => "it has no slot of that number",
            Self::Named => "it has another number already, or the number is 0",
            Self::Ahead => "it never saved the acknowledged test",
            Self::Chip => "its memory cannot be read or written",
        })
    }
}
