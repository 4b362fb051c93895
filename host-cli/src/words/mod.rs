//! What is found, in words: one file a subject, so that another language is another folder.

pub mod advice;
pub mod doubt;
pub mod errors;
pub mod figures;
pub mod quantity;
pub mod terms;
pub mod washing;

pub use crate::plain as bidi;
