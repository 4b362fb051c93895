//! Storing marks before and after a wash.

use tenter_core::{Grain, Length, Unit};

use super::{Done, Refused, find};
use crate::input::amount::cloth;
use crate::input::cloth::short;
use crate::input::{BARE, Field, making};
use crate::log::{Fabric, Fact, WashMarks};
use crate::store::Read;

/// The marks along one grain.
pub type Washed = (Grain, WashMarks);

/// Marks before and after a wash, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedWash {
    /// Along the length: `50cm to 48.5cm`.
    pub lengthwise: Option<String>,
    /// Across the width.
    pub crosswise: Option<String>,
    /// Between two lines of the scale.
    pub division: Option<String>,
    /// The length needed after the wash.
    pub need: Option<String>,
    /// The unit of bare numbers; none for centimetres.
    pub unit: Option<Unit>,
}

/// The marks of each grain that was typed, and the length needed.
///
/// # Errors
///
/// A field that cannot be read, or no marks at all.
pub fn marks(typed: &TypedWash) -> Result<(Vec<Washed>, Option<Length>), Refused> {
    let mut washed = Vec::new();
    for (grain, field, text) in [
        (Grain::Lengthwise, Field::WashedLengthwise, &typed.lengthwise),
        (Grain::Crosswise, Field::WashedCrosswise, &typed.crosswise),
    ] {
        if let Some(text) = text {
            washed.push((grain, making::marks(field, text, typed.division.as_deref(), typed.unit.unwrap_or(BARE))?));
        }
    }
    if washed.is_empty() {
        return Err(Refused::NoWashMarks);
    }
    Ok((washed, typed.need.as_deref().map(|text| cloth(Field::Need, text)).transpose()?))
}

/// Stores the marks with a cloth; hands it back.
///
/// # Errors
///
/// No such cloth, or a note that cannot be read.
pub fn store(read: &dyn Read, which: &str, washed: &[Washed], note: &str) -> Done<Fabric> {
    let note = short(Field::Note, note)?;
    let fabric = find::live_fabric(read, which)?;
    let fact = |(grain, marks): &Washed| Fact::FabricWashed {
        fabric: fabric.id,
        grain: *grain,
        marks: *marks,
        note: note.clone(),
    };
    Ok((washed.iter().map(fact).collect(), fabric))
}
