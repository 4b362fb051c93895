//! A cloth, and what is asked of one, described in a few words: `knit 2m of 150cm 180gsm`, `5-15% along 2% woven`.

use tenter_core::making::care::{Drape, Finish, Purpose};
use tenter_core::making::garment::GarmentKind;
use tenter_core::{Construction, Grain, Limit, Range, Unit};

use super::amount::{cloth, of_width};
use super::cloth::TypedCloth;
use super::pattern::{TypedRole, masses};
use super::row::{is_wanted, words};
use super::synonym::{CONSTRUCTION, DRAPE, FINISH, GRAIN, KIND, PURPOSE, is};
use super::{Field, Why, Wrong};
use crate::log::MassPerArea;

/// The role of words that describe what is asked and name none.
pub const MAIN: &str = "main";

/// What words say.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Described {
    constructions: Vec<Construction>,
    length: Option<String>,
    width: Option<String>,
    mass: Option<String>,
    finishes: Vec<Finish>,
    drapes: Vec<Drape>,
    purpose: Option<Purpose>,
    kind: Option<GarmentKind>,
    /// Percentages, by what they are of.
    percent: Vec<(Of, String)>,
}

/// What a percentage is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Of {
    Stretch(Grain),
    Growth,
    Recovery,
}

/// The words that describe a cloth, and those of its tests, which begin with the word for a grain.
#[must_use]
pub fn apart(words: &[String]) -> (&[String], &[String]) {
    let at = words.iter().position(|word| measure(word).is_none() && GRAIN.typed(word).is_some());
    words.split_at_checked(at.unwrap_or(words.len())).unwrap_or((words, &[]))
}

/// Length and width are words for a grain too; beside a length they say which it is.
fn measure(word: &str) -> Option<Field> {
    [("length", Field::Length), ("width", Field::Width)]
        .into_iter()
        .find(|(name, _)| is(word, name))
        .map(|(_, field)| field)
}

/// Whether a word describes what is asked, where the name of a role may stand.
#[must_use]
pub fn is_asked(word: &str) -> bool {
    // Rib and lining are names of roles; woven and knit are none.
    is_wanted(word) || [Construction::Woven, Construction::Knit].iter().any(|one| is(word, one.word()))
}

/// Adds what words say about a cloth.
///
/// # Errors
///
/// A word that says nothing about a cloth, or says again what was said.
pub fn cloth_in(words: &[String], typed: &mut TypedCloth) -> Result<(), Wrong> {
    let Described { constructions, length, width, mass, finishes, drapes, purpose, kind, percent } = read(words)?;
    if let Some(text) = percent.first().map(|(_, text)| text.as_str()).or(kind.map(GarmentKind::word)) {
        return Err(unexpected(text));
    }
    for one in finishes {
        once(&mut typed.finish, Some(one.word().to_owned()), one.word())?;
    }
    for one in drapes {
        once(&mut typed.drape, Some(one.word().to_owned()), one.word())?;
    }
    if let Some(purpose) = purpose {
        once(&mut typed.purpose, Some(purpose.word().to_owned()), purpose.word())?;
    }
    for one in constructions {
        once(&mut typed.construction, Some(one), one.word())?;
    }
    for (field, said) in [(&mut typed.length, length), (&mut typed.width, width), (&mut typed.mass, mass)] {
        let text = said.clone().unwrap_or_default();
        once(field, said, &text)?;
    }
    Ok(())
}

/// Adds what words ask of a cloth.
///
/// # Errors
///
/// A word that asks nothing, or asks again what was asked.
pub fn role_in(words: &[String], typed: &mut TypedRole) -> Result<(), Wrong> {
    let Described { constructions, length, width, mass, finishes, drapes, purpose, kind, percent } = read(words)?;
    typed.constructions.extend(constructions);
    typed.finishes.extend(finishes.into_iter().map(|one| one.word().to_owned()));
    typed.drapes.extend(drapes.into_iter().map(|one| one.word().to_owned()));
    let text = mass.clone().unwrap_or_default();
    once(&mut typed.mass, mass, &text)?;
    for (field, word) in
        [(&mut typed.purpose, purpose.map(Purpose::word)), (&mut typed.kind, kind.map(GarmentKind::word))]
    {
        once(field, word.map(str::to_owned), word.unwrap_or_default())?;
    }
    let whole = match (length, width) {
        (Some(length), Some(width)) => Some(format!("{length} at {width}")),
        (Some(text), None) | (None, Some(text)) => return Err(Wrong::new(Field::Cloth, &text, Why::NotACloth)),
        (None, None) => None,
    };
    let text = whole.clone().unwrap_or_default();
    once(&mut typed.cloth, whole, &text)?;
    for (of, text) in percent {
        let field = match of {
            Of::Stretch(Grain::Crosswise) => &mut typed.crosswise,
            Of::Stretch(Grain::Lengthwise) => &mut typed.lengthwise,
            Of::Stretch(Grain::Bias) => &mut typed.bias,
            Of::Growth => &mut typed.growth_at_most,
            Of::Recovery => &mut typed.recovery_at_least,
        };
        once(field, Some(text.clone()), &text)?;
    }
    Ok(())
}

fn once<T>(field: &mut Option<T>, said: Option<T>, text: &str) -> Result<(), Wrong> {
    match (&field, said) {
        (Some(_), Some(_)) => Err(unexpected(text)),
        (None, said @ Some(_)) => {
            *field = said;
            Ok(())
        }
        (_, None) => Ok(()),
    }
}

fn unexpected(text: &str) -> Wrong {
    Wrong::new(Field::Word, text, Why::Unexpected)
}

fn read(typed: &[String]) -> Result<Described, Wrong> {
    let mut said = Described::default();
    let mut of = Of::Stretch(Grain::Crosswise);
    let all = words(&typed.join(" "));
    let mut all = all.iter().map(String::as_str).peekable();
    while let Some(word) = all.next() {
        let width = all.next_if(|next| ["of", "at", "by", "x"].iter().any(|mark| is(next, mark)));
        let width = width.and_then(|_| all.next());
        if let Some((length, width)) =
            width.map(|width| (word, width)).or_else(|| of_width(word).filter(|_| !word.contains('%')))
        {
            said.length = Some(length.to_owned());
            said.width = Some(width.to_owned());
        } else if let Some(field) = measure(word) {
            let text = all.next().filter(|text| cloth(field, text).is_ok()).ok_or_else(|| unexpected(word))?;
            let place = if field == Field::Length { &mut said.length } else { &mut said.width };
            once(place, Some(text.to_owned()), text)?;
        } else if let Some(grain) = GRAIN.typed(word) {
            of = Of::Stretch(grain);
        } else if is(word, "growth") {
            of = Of::Growth;
        } else if is(word, "recovery") {
            of = Of::Recovery;
        } else if is_percentage(word) {
            said.percent.push((of, word.to_owned()));
            of = Of::Stretch(Grain::Crosswise);
        } else if let Some(construction) = CONSTRUCTION.typed(word) {
            said.constructions.push(construction);
        } else if let Some(finish) = FINISH.typed(word) {
            said.finishes.push(finish);
        } else if let Some(drape) = DRAPE.typed(word) {
            said.drapes.push(drape);
        } else if let Some(purpose) = PURPOSE.typed(word) {
            once(&mut said.purpose, Some(purpose), word)?;
        } else if let Some(kind) = KIND.typed(word) {
            once(&mut said.kind, Some(kind), word)?;
        } else if MassPerArea::parse(word).is_some() || masses(word).is_ok() {
            once(&mut said.mass, Some(word.to_owned()), word)?;
        } else if cloth(Field::Length, word).is_ok() {
            let wide = all.next_if(|next| is(next, "wide")).is_some();
            let place = if wide || said.length.is_some() { &mut said.width } else { &mut said.length };
            once(place, Some(word.to_owned()), word)?;
        } else if !is(word, "or") {
            return Err(unexpected(word));
        }
    }
    Ok(said)
}

/// A percentage, a range of them, or one with its time.
fn is_percentage(word: &str) -> bool {
    let limit = word.split_once('@').map_or(word, |(limit, _)| limit);
    is_wanted(limit) && (Range::parse(limit, Unit::Mm).is_ok() || Limit::parse(limit, Unit::Mm).is_ok())
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn split(text: &str) -> Vec<String> {
        text.split_whitespace().map(str::to_owned).collect()
    }

    fn some(text: &str) -> Option<String> {
        Some(text.to_owned())
    }

    #[test]
    fn a_cloth_in_a_few_words() {
        let said = |text: &str| {
            let mut typed = TypedCloth::default();
            cloth_in(&split(text), &mut typed).map(|()| typed)
        };
        let knit = Some(Construction::Knit);
        let whole = TypedCloth {
            construction: knit,
            length: some("2m"),
            width: some("150cm"),
            mass: some("180gsm"),
            ..TypedCloth::default()
        };
        for text in [
            "knit 2m of 150cm 180gsm",
            "180gsm Jersey 2m 150cm",
            "150cm wide knit 2m 180gsm",
            "2m x 150cm RIB 180gsm",
            "width 150cm length 2m knit 180gsm",
        ] {
            assert_eq!(said(text), Ok(whole.clone()), "{text}");
        }
        assert_eq!(said("2 1/2 yd of 58 in").unwrap().length, some("2 1/2 yd"));
        let coat = said("woven waxed Stiff shell 2m of 150cm 400gsm").unwrap();
        assert_eq!((coat.finish, coat.drape, coat.purpose), (some("waxed"), some("stiff"), some("outer")));
        for text in [
            "waxed brushed",
            "jeans",
            "2m of 150cm 3m",
            "nice",
            "knit woven",
            "5%",
            "2m 150cm 1m",
            "2",
            "180gsm 200gsm",
        ] {
            assert!(said(text).is_err(), "{text}");
        }
    }

    #[test]
    fn what_is_asked_in_a_few_words() {
        let said = |text: &str| {
            let mut typed = TypedRole::default();
            role_in(&split(text), &mut typed).map(|()| typed)
        };
        let asked = said("5-15% along 2% growth 3%@30min recovery 90% woven or knit 0.8m of 140cm").unwrap();
        assert_eq!((asked.crosswise, asked.lengthwise, asked.bias), (some("5-15%"), some("2%"), None));
        assert_eq!((asked.growth_at_most, asked.recovery_at_least), (some("3%@30min"), some("90%")));
        assert_eq!(asked.constructions, [Construction::Woven, Construction::Knit]);
        assert_eq!(asked.cloth, some("0.8m at 140cm"));
        let asked = said("40% leggings 200-300gsm soft brushed plain lining").unwrap();
        assert_eq!((asked.kind, asked.mass, asked.purpose), (some("leggings"), some("200-300gsm"), some("lining")));
        assert_eq!(
            (asked.drapes, asked.finishes),
            (vec!["soft".to_owned()], vec!["brushed".to_owned(), "plain".to_owned()])
        );
        for text in ["0.8m", "5% 6%", "lovely", "180gsm 190gsm", "jeans shirt"] {
            assert!(said(text).is_err(), "{text}");
        }
        assert!(
            is_asked("5%")
                && is_asked("5..15")
                && is_asked("Woven")
                && !is_asked("rib")
                && !is_asked("main")
                && !is_asked("7")
        );
    }

    proptest! {
        #[test]
        fn any_words_are_taken_or_refused(text in "(\\PC{0,4} |[0-9]{1,2}(m|cm|%|gsm)? |of |along |knit |growth ){0,8}") {
            let _ = cloth_in(&split(&text), &mut TypedCloth::default());
            let _ = role_in(&split(&text), &mut TypedRole::default());
        }
    }
}
