//! What is found, in words: one file a subject, so that another language is another folder.

pub mod advice;
pub mod answer;
pub mod bidi;
pub mod figures;
pub mod quantity;
pub mod terms;
pub mod washing;
