//! What many writers and kills of the server do.
