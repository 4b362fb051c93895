//! What is found, in words: one file a subject, so that another language is another folder.

pub mod advice;
pub mod amounts;
pub mod answer;
pub mod card;
pub mod care;
pub mod check;
pub mod cloth;
pub mod counts;
pub mod doubt;
pub mod errors;
pub mod figures;
pub mod fit;
pub mod handle;
pub mod hang;
pub mod pair;
pub mod pattern;
pub mod plan;
pub mod pull;
pub mod quantity;
pub mod size;
pub mod terms;
pub mod tied;
pub mod typeset;
pub mod unfinished;
pub mod washing;
