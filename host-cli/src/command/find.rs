//! Finds what was meant by a tag, a name or the end of an identifier.

use crate::error::{Error, one_line};
use crate::log::{Fabric, Id};
use crate::store::Read;

/// The fabric that is meant: its tag (`7`, `#7`), or its identifier where a tag is on two.
///
/// # Errors
///
/// A text that means none, or two.
pub fn fabric(read: &dyn Read, text: &str) -> Result<Fabric, Error> {
    let none = || Error::Usage(format!("'{}' is no fabric here; see tenter stash list for the tags", one_line(text)));
    if let Ok(id) = text.trim().to_uppercase().parse::<Id>() {
        return read.fabric(id)?.ok_or_else(none);
    }
    let tag: u16 = text.trim().trim_start_matches('#').parse().map_err(|_| none())?;
    let mut found = read.fabrics_tagged(tag)?;
    // A dropped fabric steps back behind one that is there.
    if found.iter().any(|fabric| !fabric.dropped) {
        found.retain(|fabric| !fabric.dropped);
    }
    match found.as_slice() {
        [] => Err(none()),
        [fabric] => Ok(fabric.clone()),
        several => {
            let names: Vec<_> =
                several.iter().map(|fabric| format!("{} {}", fabric.id, one_line(&fabric.name))).collect();
            let names = names.join(", ");
            Err(Error::Usage(format!(
                "tag {tag} is on {} fabrics: {names}; give one a new tag: tenter stash edit IDENTIFIER --tag NUMBER",
                several.len()
            )))
        }
    }
}

/// The fabric that is meant, unless it was dropped.
///
/// # Errors
///
/// As [`fabric`], or a dropped one.
pub fn live_fabric(read: &dyn Read, text: &str) -> Result<Fabric, Error> {
    let fabric = fabric(read, text)?;
    if fabric.dropped {
        let tag = fabric.tag;
        return Err(Error::Usage(format!("fabric {tag} was dropped; bring it back with tenter stash undrop {tag}")));
    }
    Ok(fabric)
}
