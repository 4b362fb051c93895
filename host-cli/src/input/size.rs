//! What was typed about sizes.

use tenter_core::Length;
use tenter_core::making::elastic::{Edging, Kind};
use tenter_core::making::garment::GarmentKind;
use tenter_core::making::zip::{ZipEdge, ZipEnds};
use tenter_core::{Figure, Limit, Ratio, Unit};

use super::amount::cloth;
use super::cloth::name;
use super::synonym::{EDGING, ELASTIC};
use super::{Field, Why, Wrong};

/// What is to be sized, as typed.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct TypedSize {
    /// Girths: `hip=104cm/101cm`.
    pub girth: Vec<String>,
    /// Openings: `head=57cm/48cm`.
    pub opening: Vec<String>,
    /// How much smaller than the body it is to be cut.
    pub reduce: Option<String>,
    /// The kind of elastic.
    pub elastic: Option<Kind>,
    /// Where the elastic goes.
    pub place: Option<Edging>,
    /// What the elastic is cut for.
    pub measure: Option<String>,
    /// The widest part that the closed loop must pass.
    pub widest: Option<String>,
    /// How far the elastic stretches.
    pub gives: Option<String>,
    /// The width of the elastic.
    pub elastic_width: Option<String>,
    /// Whether the elastic is stitched through.
    pub stitched: bool,
    /// The edge of a zip.
    pub zip: Option<String>,
    /// What the neck or waist seam takes of that edge.
    pub zip_neck: Option<String>,
    /// What the hem takes of that edge.
    pub zip_hem: Option<String>,
    /// How the zip ends.
    pub zip_ends: Option<ZipEnds>,
    /// The edge that a cord draws in, laid open.
    pub cord: Option<String>,
    /// The width of the cord.
    pub cord_width: Option<String>,
    /// Whether the cord is tied, without stops.
    pub cord_tied: bool,
    /// Whether a child wears it.
    pub child: bool,
    /// The kind of garment.
    pub kind: Option<GarmentKind>,
    /// The unit that was asked for.
    pub shown: Option<Unit>,
}

impl TypedSize {
    /// The unit of the text: what was asked for, or that of the first measure typed.
    #[must_use]
    pub fn unit(&self) -> Unit {
        let measures = self.girth.iter().chain(&self.opening).map(|text| text.rsplit('/').next().unwrap_or(text));
        let others = [&self.measure, &self.zip, &self.cord].into_iter().flatten().map(String::as_str);
        let typed = measures.chain(others).find_map(super::unit_of);
        self.shown.or(typed).unwrap_or(Unit::Cm)
    }
}

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

/// What is said of the measure of an elastic beside its length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ElasticMeasure {
    /// What it is cut for.
    pub length: Length,
    /// Its own width.
    pub width: Option<Length>,
    /// The widest part that the closed loop must pass.
    pub over: Option<Length>,
    /// How far it stretches, taken as exact.
    pub gives: Option<Ratio>,
}

/// What follows the kind and the place of an elastic: `76cm`, `76cm 25mm over 100cm gives 80%`.
///
/// # Errors
///
/// A text that is none.
pub fn elastic_measure(text: &str) -> Result<ElasticMeasure, Wrong> {
    let lower = text.to_ascii_lowercase();
    let (rest, gives) = lower.split_once(" gives ").map_or((lower.as_str(), None), |(rest, gives)| (rest, Some(gives)));
    let (rest, over) = rest.split_once(" over ").map_or((rest, None), |(rest, over)| (rest, Some(over)));
    let (length, width) = with_width(Field::Elastic, rest)?;
    let over = over.map(|over| cloth(Field::Elastic, over)).transpose()?;
    let gives = gives.map(|gives| exact(Field::Elastic, gives)).transpose()?.map(|figure| figure.ratio);
    Ok(ElasticMeasure { length, width, over, gives })
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
    fn an_elastic_may_say_what_it_passes() {
        let mm = |mm| Length::from_mm(mm);
        let bare = ElasticMeasure { length: mm(760), width: None, over: None, gives: None };
        assert_eq!(elastic_measure("76cm"), Ok(bare));
        let over = ElasticMeasure { width: Some(mm(25)), over: Some(mm(1000)), ..bare };
        assert_eq!(elastic_measure("76cm 25mm over 100cm"), Ok(over));
        let gives = ElasticMeasure { gives: Ratio::new(80, 100), ..over };
        assert_eq!(elastic_measure("76cm 25mm Over 100cm gives 80%"), Ok(gives));
        assert!(elastic_measure("76cm over").is_err() && elastic_measure("76cm over wide").is_err());
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
