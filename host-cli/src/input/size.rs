//! What was typed about sizes.

use tenter_core::making::{elastic, zip};
use tenter_core::{Figure, Limit, Unit};

use super::fabric::{cloth, name};
use crate::cli::size::{ElasticArg, PlaceArg, ZipEnds};
use crate::error::Error;
use crate::finding::size::Girth;

/// `hip=104cm/101cm`.
///
/// # Errors
///
/// A text that is no such pair; here and below.
pub fn girth(flag: &str, text: &str) -> Result<Girth, Error> {
    let wrong = || Error::argument(flag, text, "type a name and two measures, body first, such as hip=104cm/101cm");
    let (label, measures) = text.split_once('=').ok_or_else(wrong)?;
    // An inch fraction holds a slash too: the one between the measures is the one after a unit.
    let at = measures.char_indices().filter(|(_, c)| *c == '/').map(|(at, _)| at).find(|at| {
        measures.get(..*at).is_some_and(|body| body.trim_end().ends_with(|c: char| c.is_alphabetic() || c == '"'))
    });
    let (body, garment) = at.and_then(|at| measures.split_at_checked(at)).ok_or_else(wrong)?;
    let garment = garment.trim_start_matches('/');
    Ok(Girth { name: name(flag, label)?, body: cloth(flag, body)?, garment: cloth(flag, garment)? })
}

/// A stretch taken as exact.
///
/// # Errors
///
/// As above.
pub fn exact(flag: &str, text: &str) -> Result<Figure, Error> {
    let limit = Limit::parse(text, Unit::Mm).map_err(|error| Error::argument(flag, text, error))?;
    Ok(Figure::exact(limit.ratio()))
}

/// A kind of elastic.
#[must_use]
pub const fn kind(arg: ElasticArg) -> elastic::Kind {
    match arg {
        ElasticArg::Firm => elastic::Kind::Firm,
        ElasticArg::Soft => elastic::Kind::Soft,
        ElasticArg::Braided => elastic::Kind::Braided,
        ElasticArg::Ribbing => elastic::Kind::Ribbing,
    }
}

/// Where elastic goes.
#[must_use]
pub const fn place(arg: PlaceArg) -> elastic::Edging {
    match arg {
        PlaceArg::Waist => elastic::Edging::Waist,
        PlaceArg::SnugWaist => elastic::Edging::SnugWaist,
        PlaceArg::Edge => elastic::Edging::Edge,
        PlaceArg::SwimLegFront => elastic::Edging::SwimLegFront,
        PlaceArg::SwimLegBack => elastic::Edging::SwimLegBack,
        PlaceArg::Wrist => elastic::Edging::Wrist,
        PlaceArg::Opening => elastic::Edging::Opening,
    }
}

/// The ends of a zip.
#[must_use]
pub const fn zip_ends(arg: ZipEnds) -> zip::ZipEnds {
    match arg {
        ZipEnds::Closed => zip::ZipEnds::Closed,
        ZipEnds::Open => zip::ZipEnds::Open,
    }
}

#[cfg(test)]
mod tests {
    use tenter_core::Length;

    use super::*;

    #[test]
    fn girths() {
        let hip = girth("--girth", "hip=104cm/101cm").unwrap();
        assert_eq!((hip.name.as_str(), hip.body, hip.garment), ("hip", Length::from_mm(1040), Length::from_mm(1010)));
        let inches = girth("--girth", "head = 22 1/2in/16 3/4in").unwrap();
        assert_eq!(inches.body, Length::from_inch_64ths(22 * 64 + 32));
        assert_eq!(inches.garment, Length::from_inch_64ths(16 * 64 + 48));
        for text in ["", "hip", "hip=104cm", "hip=104/101", "=104cm/101cm", "hip=104cm/", "hip=wide/101cm"] {
            assert!(girth("--girth", text).is_err(), "{text}");
        }
    }
}
