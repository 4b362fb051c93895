//! Why something was not done, for a page: the field it stands at, and what to type there.

use super::deed::too_little_to_cut;
use super::{refused as on_a_command_line, store, why};
use crate::deed::Refused;
use crate::input::{Field, Why, Wrong};
use crate::plain::one_line;
use crate::words::doubt;
use crate::words::page::told;

/// The field of a refusal where it has one, and its words, one sentence a line.
#[must_use]
pub fn refused(refused: &Refused) -> (Option<Field>, Vec<String>) {
    let one = |field: Option<Field>, words: &str| (field, vec![words.to_owned()]);
    match refused {
        Refused::Wrong(wrong) => one(Some(wrong.field), &field(wrong)),
        Refused::Doubted(doubted) => (None, doubt::doubted(doubted).iter().map(|line| told(line)).collect()),
        Refused::Store(error) => one(None, &told(&store(error))),
        Refused::NoCloth(text) => {
            (None, vec![format!("No cloth is called '{}'. Choose one of the list.", one_line(text))])
        }
        Refused::TagTaken { by, free, .. } => {
            one(Some(Field::Tag), &format!("'{}' has this tag; {free} is free", one_line(by)))
        }
        Refused::NumberTaken { by, free, .. } => {
            one(Some(Field::Number), &format!("'{}' has this number; {free} is free", one_line(by)))
        }
        Refused::NotSoMuch { .. } => {
            let words = on_a_command_line(refused);
            let words = words.split_once("': ").map_or(words.as_str(), |(_, words)| words);
            one(Some(Field::Cut), &told(words))
        }
        Refused::NothingChanged(_) => one(None, "Nothing was changed. Type what is different, then store it."),
        Refused::NameTaken { name, .. } => {
            one(Some(Field::NewName), &format!("'{}' is taken; type another name", one_line(name)))
        }
        Refused::PatternExists(name) => {
            one(Some(Field::Pattern), &format!("there is a pattern '{}' already", one_line(name)))
        }
        Refused::RoleExists { role, .. } => {
            one(Some(Field::Role), &format!("this view has a role '{}' already", one_line(role)))
        }
        Refused::NoWashMarks => {
            one(Some(Field::WashedLengthwise), "type the marks before and after, such as 50cm to 48.5cm")
        }
        Refused::NothingLearned => one(None, "Type what worked, or how it wore."),
        Refused::LengthNotKnown(tag) => {
            one(None, &format!("The length of cloth {tag} is not known. Edit the cloth and type it first."))
        }
        Refused::InShop(tag) => one(None, &format!("Cloth {tag} lies in a shop. Edit it once it is bought.")),
        Refused::NoClothChosen(number) => one(None, &format!("No cloth is chosen for garment {number} yet.")),
        Refused::TooLittleToCut { tag, roles, asked, had, unit, .. } => {
            let short = too_little_to_cut((*tag, roles), (*asked, *had), *unit);
            one(
                Some(Field::Length),
                &first_letter(&format!("{short}. Type how much you cut of it, for one role at a time.")),
            )
        }
        Refused::CutHowMuch { role, .. } => {
            one(Some(Field::Length), &format!("the pattern does not say how much '{}' takes; type it", one_line(role)))
        }
        other => one(None, &first_letter(&told(&on_a_command_line(other)))),
    }
}

/// What is wrong with a field, and what was probably meant.
fn field(wrong: &Wrong) -> String {
    let words = match &wrong.why {
        Why::Missing | Why::NoWords | Why::NoReadings => "type it here".to_owned(),
        Why::PriceWithoutShop | Why::PriceAtHome => "a price belongs to a shop; type the shop too".to_owned(),
        Why::AtHome => "this cloth lies at home already".to_owned(),
        Why::NotAShop => "type the shop in which you saw it".to_owned(),
        Why::WithoutBody => "it belongs to a garment or a movement; choose one of them".to_owned(),
        Why::NeedsShrinkage => "type the marks along the cloth before and after too".to_owned(),
        Why::OfOneRole => "several roles are to be cut; choose the one that this is for".to_owned(),
        Why::OnNoCloth => "no cloth has this tag".to_owned(),
        _ => why(wrong),
    };
    let likely = wrong.likely().map(|slip| {
        let unit = match wrong.why {
            Why::MoreThanCloth { unit, .. } => unit,
            _ => crate::input::unit_of(&wrong.text).unwrap_or(crate::input::BARE),
        };
        format!("; {}", doubt::likely(slip, unit))
    });
    told(&(words + &likely.unwrap_or_default()))
}

/// With a capital at its beginning.
fn first_letter(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
