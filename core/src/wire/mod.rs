//! Bytes that are stored or sent, and what handheld and host say to each other.

pub mod framing;
mod message;
pub mod record;
pub mod saved;

pub use message::{
    Identity, LentTags, LinkReply, LinkRequest, Listing, MAX_NAME_BYTES, MAX_SAVED_BYTES, MAX_VERSION_BYTES, NameList,
    PROTOCOL, Refusal,
};
