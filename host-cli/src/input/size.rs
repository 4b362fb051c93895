//! What was typed about sizes.

use tenter_core::Length;
use tenter_core::making::elastic::{Edging, Kind};
use tenter_core::making::zip::ZipEdge;
use tenter_core::{Figure, Limit, Unit};

use super::amount::cloth;
use super::cloth::name;
use super::synonym::{EDGING, ELASTIC};
use super::{Field, Why, Wrong};

/// A body measure with a finished one.
#[derive(Debug, Clone)]
pub struct Girth {
    /// What it is called.
    pub name: String,
    /// Of the body.
    pub body: Length,
    /// Of the garment.
    pub garment: Length,
}

/// `hip=104cm/101cm`.
///
/// # Errors
///
/// A text that is no such pair.
pub fn girth(field: Field, text: &str) -> Result<Girth, Wrong> {
    let wrong = || Wrong::new(field, text, Why::NotAGirth);
    let (label, measures) = text.split_once('=').ok_or_else(wrong)?;
    // An inch fraction holds a slash too: the one between the measures is the one after a unit.
    let at = measures.char_indices().filter(|(_, c)| *c == '/').map(|(at, _)| at).find(|at| {
        measures.get(..*at).is_some_and(|body| body.trim_end().ends_with(|c: char| c.is_alphabetic() || c == '"'))
    });
    let (body, garment) = at.and_then(|at| measures.split_at_checked(at)).ok_or_else(wrong)?;
    let garment = garment.trim_start_matches('/');
    Ok(Girth { name: name(field, label)?, body: cloth(field, body)?, garment: cloth(field, garment)? })
}

/// `soft waist 76cm`: a kind of elastic, its place and the text of the length it is cut for.
///
/// # Errors
///
/// A text that is no such three.
pub fn elastic(text: &str) -> Result<(Kind, Edging, &str), Wrong> {
    let wrong = || Wrong::new(Field::Elastic, text, Why::NotAnElastic);
    let text = text.trim();
    let (words, measure) =
        text.find(|c: char| c.is_ascii_digit()).and_then(|at| text.split_at_checked(at)).ok_or_else(wrong)?;
    // Either may be of two words: `woven elastic neck opening 42cm`.
    let halves = words.match_indices(' ').filter_map(|(at, _)| words.split_at_checked(at));
    let read = |(kind, place): (&str, &str)| Some((ELASTIC.typed(kind)?, EDGING.typed(place)?));
    let (kind, place) = halves.filter_map(read).next().ok_or_else(wrong)?;
    Ok((kind, place, measure))
}

/// A length, and after it the width of what is so long, where that was said: `76cm`, `76 cm 25 mm`.
///
/// # Errors
///
/// A text that is neither.
pub fn with_width(field: Field, text: &str) -> Result<(Length, Option<Length>), Wrong> {
    let whole = cloth(field, text);
    let halves = text.match_indices(' ').filter_map(|(at, _)| text.split_at_checked(at));
    let both = |(length, width): (&str, &str)| Some((cloth(field, length).ok()?, cloth(field, width).ok()?));
    match (whole, halves.filter_map(both).next()) {
        (Err(_), Some((length, width))) => Ok((length, Some(width))),
        (whole, _) => Ok((whole?, None)),
    }
}

/// The edge of a zip: finished, or as cut with what the neck and the hem take of it.
///
/// # Errors
///
/// A text that is no length.
pub fn zip_edge(zip: &str, neck: Option<&str>, hem: Option<&str>) -> Result<ZipEdge, Wrong> {
    let takes = |field, text: Option<&str>| text.map_or(Ok(Length::ZERO), |text| cloth(field, text));
    Ok(ZipEdge { cut: cloth(Field::Zip, zip)?, neck: takes(Field::ZipNeck, neck)?, hem: takes(Field::ZipHem, hem)? })
}

/// A stretch taken as exact.
///
/// # Errors
///
/// A text that is no percentage.
pub fn exact(field: Field, text: &str) -> Result<Figure, Wrong> {
    let limit = Limit::parse(text, Unit::Mm).map_err(|error| Wrong::new(field, text, Why::Limit(error)))?;
    Ok(Figure::exact(limit.ratio()))
}

#[cfg(test)]
mod tests {
    use tenter_core::Length;

    use super::*;

    #[test]
    fn elastics() {
        assert_eq!(elastic("soft waist 76cm"), Ok((Kind::Soft, Edging::Waist, "76cm")));
        assert_eq!(elastic("Woven elastic  Snug-waist 30 1/2in"), Ok((Kind::Firm, Edging::SnugWaist, "30 1/2in")));
        assert_eq!(elastic("RIB cuff 17 cm"), Ok((Kind::Ribbing, Edging::Wrist, "17 cm")));
        for text in ["", "soft waist", "76cm", "soft 76cm", "waist 76cm", "soft nowhere 76cm"] {
            assert!(elastic(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_width_may_follow() {
        let mm = |mm| Length::from_mm(mm);
        assert_eq!(with_width(Field::Elastic, "76cm"), Ok((mm(760), None)));
        assert_eq!(with_width(Field::Elastic, "76 cm 25 mm"), Ok((mm(760), Some(mm(25)))));
        assert_eq!(with_width(Field::Cord, "110cm 5mm"), Ok((mm(1100), Some(mm(5)))));
        let inches = |sixty_fourths| Length::from_inch_64ths(sixty_fourths);
        assert_eq!(with_width(Field::Elastic, "30 1/2in 1in"), Ok((inches(30 * 64 + 32), Some(inches(64)))));
        assert!(with_width(Field::Elastic, "76cm wide").is_err());
    }

    #[test]
    fn girths() {
        let hip = girth(Field::Girth, "hip=104cm/101cm").unwrap();
        assert_eq!((hip.name.as_str(), hip.body, hip.garment), ("hip", Length::from_mm(1040), Length::from_mm(1010)));
        let inches = girth(Field::Girth, "head = 22 1/2in/16 3/4in").unwrap();
        assert_eq!(inches.body, Length::from_inch_64ths(22 * 64 + 32));
        assert_eq!(inches.garment, Length::from_inch_64ths(16 * 64 + 48));
        for text in ["", "hip", "hip=104cm", "hip=104/101", "=104cm/101cm", "hip=104cm/", "hip=wide/101cm"] {
            assert!(girth(Field::Girth, text).is_err(), "{text}");
        }
    }
}
