//! What was learned of a cloth, as typed.

use super::cloth::short;
use super::{Field, Wrong};
use crate::log::Learned;

/// What was learned, as typed; none for what is not said.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedLearned {
    /// The needle.
    pub needle: Option<String>,
    /// The stitch.
    pub stitch: Option<String>,
    /// The length of the stitch.
    pub length: Option<String>,
    /// The pressure of the foot.
    pub pressure: Option<String>,
    /// The tension of the thread.
    pub tension: Option<String>,
    /// The thread.
    pub thread: Option<String>,
    /// How it wore.
    pub wore: Option<String>,
    /// Anything else.
    pub note: Option<String>,
}

/// What was learned; perhaps nothing.
///
/// # Errors
///
/// The first text that cannot be read.
pub fn learned(typed: &TypedLearned) -> Result<Learned, Wrong> {
    let text = |field, text: &Option<String>| short(field, text.as_deref().unwrap_or_default());
    Ok(Learned {
        needle: text(Field::Needle, &typed.needle)?,
        stitch: text(Field::Stitch, &typed.stitch)?,
        length: text(Field::StitchLength, &typed.length)?,
        pressure: text(Field::Pressure, &typed.pressure)?,
        tension: text(Field::ThreadTension, &typed.tension)?,
        thread: text(Field::Thread, &typed.thread)?,
        wore: text(Field::Wore, &typed.wore)?,
        note: text(Field::Note, &typed.note)?,
        garment: None,
    })
}
