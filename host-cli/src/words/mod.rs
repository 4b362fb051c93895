//! What is found, in words: one file a subject, so that another language is another folder.

pub mod advice;
pub mod answer;
pub mod bidi;
pub mod check;
pub mod cloth;
pub mod figures;
pub mod fit;
pub mod pattern;
pub mod pull;
pub mod quantity;
pub mod terms;
pub mod tied;
pub mod washing;
