//! The name of a person, as typed.

use super::cloth::short;
use super::{Field, Why, Wrong};

/// A name, without blanks around it.
///
/// # Errors
///
/// No name, one that is too long, or one that holds characters that cannot be printed.
pub fn name(field: Field, text: &str) -> Result<String, Wrong> {
    let name = short(field, text)?;
    if name.is_empty() { Err(Wrong::new(field, text, Why::Missing)) } else { Ok(name) }
}
