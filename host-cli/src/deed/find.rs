//! Finds what was meant by a tag, a name or the end of an identifier.

use super::{Refused, Thing};
use crate::input::Field;
use crate::input::named::{NameMatch, named};
use crate::input::synonym::is;
use crate::log::{Fabric, Garment, Id, Pattern, Role, StoredTest, Tag};
use crate::store::{Read, WhichTests};

/// What stands for the pattern or the cloth that was added last.
pub const LAST: &str = "-";

/// The cloth that is meant: its tag (`7`, `#7`), its name or a part of it that no other has, its tag with
/// a letter where several share it (`7b`), or its identifier.
///
/// # Errors
///
/// A text that means none, or two.
pub fn fabric(read: &dyn Read, text: &str) -> Result<Fabric, Refused> {
    let none = || Refused::NoCloth(text.to_owned());
    let typed = text.trim();
    if let Ok(id) = typed.to_uppercase().parse::<Id>() {
        return read.fabric(id)?.ok_or_else(none);
    }
    if typed == LAST {
        let last = read.fabrics()?.into_iter().filter(|fabric| !fabric.dropped).max_by_key(|fabric| fabric.id);
        return last.ok_or_else(none);
    }
    let Some(tag) = Tag::parse(typed) else { return called(read, typed)?.ok_or_else(none) };
    let mut found = read.fabrics_tagged(tag.number())?;
    if !tag.letter().is_empty() {
        // A name may look like a tag with a letter.
        let lettered = found.into_iter().find(|fabric| fabric.tag == tag);
        return lettered.map_or_else(|| called(read, typed)?.ok_or_else(none), Ok);
    }
    // A retired cloth steps back behind one that is there.
    if found.iter().any(|fabric| !fabric.dropped) {
        found.retain(|fabric| !fabric.dropped);
    }
    match found.as_slice() {
        [] => Err(none()),
        [fabric] => Ok(fabric.clone()),
        several => {
            let on = several.iter().map(|fabric| (fabric.tag, fabric.name.clone())).collect();
            Err(Refused::SharedTag { tag: tag.number(), on })
        }
    }
}

/// The cloth of a name, those that are there before retired ones.
fn called(read: &dyn Read, text: &str) -> Result<Option<Fabric>, Refused> {
    let (retired, there): (Vec<Fabric>, Vec<Fabric>) = read.fabrics()?.into_iter().partition(|fabric| fabric.dropped);
    for fabrics in [there, retired] {
        let names: Vec<&str> = fabrics.iter().map(|fabric| fabric.name.as_str()).collect();
        match named(text, &names) {
            NameMatch::One(place) => return Ok(fabrics.into_iter().nth(place)),
            NameMatch::Several(places) => {
                let found = places.iter().filter_map(|place| fabrics.get(*place));
                let found = found.map(|fabric| (fabric.tag, fabric.name.clone())).collect();
                return Err(Refused::SeveralCloths { text: text.to_owned(), found });
            }
            NameMatch::None => {}
        }
    }
    Ok(None)
}

/// The cloth that is meant, unless it was retired.
///
/// # Errors
///
/// As [`fabric`], or a retired one.
pub fn live_fabric(read: &dyn Read, text: &str) -> Result<Fabric, Refused> {
    let fabric = fabric(read, text)?;
    if fabric.dropped { Err(Refused::Retired(fabric.tag)) } else { Ok(fabric) }
}

/// The garment that is meant: its number (`3`, `#3`), its identifier where a number is on two, its name, or the person it
/// is for, or the beginning of either. Of several those come first that were given up, or were not, as `given_up` says.
///
/// # Errors
///
/// A text that means none, or several.
pub fn garment(read: &dyn Read, text: &str, given_up: bool) -> Result<Garment, Refused> {
    let mut all = read.garments()?;
    if all.is_empty() {
        return Err(Refused::NoGarmentYet);
    }
    let typed = text.trim();
    if let Ok(id) = typed.to_uppercase().parse::<Id>() {
        return all.into_iter().find(|garment| garment.id == id).ok_or_else(|| Refused::NoGarment(text.to_owned()));
    }
    let number = typed.trim_start_matches('#').parse::<u16>().ok();
    let wanted = typed.to_lowercase();
    let fits = |name: &str| !wanted.is_empty() && name.to_lowercase().starts_with(&wanted);
    let whole = |garment: &Garment| [&garment.name, &garment.whom].iter().any(|name| name.to_lowercase() == wanted);
    match number {
        Some(number) => all.retain(|garment| garment.number == number),
        None => all.retain(|garment| fits(&garment.name) || fits(&garment.whom)),
    }
    if all.iter().any(|garment| garment.dropped == given_up) {
        all.retain(|garment| garment.dropped == given_up);
    }
    if number.is_none() && all.iter().any(whole) {
        all.retain(whole);
    }
    match all.as_slice() {
        [] => Err(Refused::NoGarment(text.to_owned())),
        [garment] => Ok(garment.clone()),
        several => {
            let on = several.iter().map(|one| (one.id, one.number, one.name.clone())).collect();
            Err(Refused::SeveralGarments { text: text.to_owned(), on })
        }
    }
}

/// The test that is meant: its identifier, or the end of it as lists show it. Dropped tests are found by the whole
/// identifier only.
///
/// # Errors
///
/// A text that means none, or several.
pub fn test(read: &dyn Read, text: &str) -> Result<StoredTest, Refused> {
    let typed = text.trim().to_uppercase();
    let none = || Refused::NoTest(text.to_owned());
    if let Ok(id) = typed.parse::<Id>() {
        return read.test(id)?.ok_or_else(none);
    }
    let mut found = Vec::new();
    if typed.len() >= 4 {
        read.each_test(WhichTests::All, &mut |test| {
            found.extend(test.id.to_string().ends_with(&typed).then_some(test));
            Ok(())
        })?;
    }
    match found.as_slice() {
        [] => Err(none()),
        [test] => Ok(test.clone()),
        several => {
            let ids = several.iter().map(|test| test.id).collect();
            Err(Refused::SeveralTests { text: text.to_owned(), ids })
        }
    }
}

/// Names of their own.
pub(super) fn owned(names: &[&str]) -> Vec<String> {
    names.iter().map(|name| (*name).to_owned()).collect()
}

/// The one of several names that is meant.
pub(super) fn one_of<'t>(thing: Thing, text: &str, names: &[&'t str], pattern: &str) -> Result<&'t str, Refused> {
    let at = |place: &usize| names.get(*place).copied();
    let (text, pattern) = (text.to_owned(), pattern.to_owned());
    let none = |text| Refused::NoneNamed { thing, text, known: owned(names), pattern };
    match named(&text, names) {
        NameMatch::One(place) => at(&place).ok_or_else(|| none(text)),
        NameMatch::None => Err(none(text)),
        NameMatch::Several(places) => {
            let found: Vec<&str> = places.iter().filter_map(at).collect();
            match found.as_slice() {
                // Two patterns of one name are told apart by more than the name.
                [name, others @ ..] if others.iter().all(|other| is(other, name)) => Ok(name),
                several => Err(Refused::SeveralNamed { text, found: owned(several) }),
            }
        }
    }
}

/// The pattern that is meant: by name or a part of it. Retired ones only where `dropped` says so.
///
/// # Errors
///
/// A text that means none, or two.
pub fn pattern_that(read: &dyn Read, text: &str, dropped: bool) -> Result<Pattern, Refused> {
    let mut patterns = read.patterns()?;
    patterns.retain(|pattern| pattern.dropped == dropped);
    if text.trim() == LAST && !dropped {
        return last_pattern(read);
    }
    if let Ok(id) = text.trim().to_uppercase().parse::<Id>()
        && let Some(at) = patterns.iter().position(|pattern| pattern.id == id)
    {
        return Ok(patterns.swap_remove(at));
    }
    let names: Vec<&str> = patterns.iter().map(|pattern| pattern.name.as_str()).collect();
    let name = one_of(Thing::Pattern, text, &names, "")?.to_owned();
    patterns.retain(|pattern| is(&pattern.name, &name));
    let ids: Vec<Id> = patterns.iter().map(|pattern| pattern.id).collect();
    match patterns.pop() {
        Some(pattern) if ids.len() == 1 => Ok(pattern),
        _ => Err(Refused::SameName { name, ids }),
    }
}

/// The pattern that is meant, unless it was retired.
///
/// # Errors
///
/// A text that means none, or two.
pub fn pattern(read: &dyn Read, text: &str) -> Result<Pattern, Refused> {
    pattern_that(read, text, false)
}

/// Whether a word is the whole name of a pattern, or of a view of one.
///
/// # Errors
///
/// A log that cannot be read.
pub fn names(read: &dyn Read) -> Result<impl Fn(&str) -> bool + use<>, Refused> {
    let there = read.patterns()?.into_iter().filter(|pattern| !pattern.dropped);
    let of = |pattern: Pattern| [vec![pattern.name.clone()], owned(&pattern.views())].concat();
    let names: Vec<String> = there.flat_map(of).collect();
    Ok(move |word: &str| names.iter().any(|name| is(name, word)))
}

/// The pattern that was added last, or to which a role was added last.
///
/// # Errors
///
/// Where there is none.
fn last_pattern(read: &dyn Read) -> Result<Pattern, Refused> {
    let none =
        || Refused::NoneNamed { thing: Thing::Pattern, text: String::new(), known: Vec::new(), pattern: String::new() };
    let newest = |pattern: &Pattern| pattern.roles.iter().map(|role| role.id).fold(pattern.id, Id::max);
    read.patterns()?.into_iter().filter(|pattern| !pattern.dropped).max_by_key(newest).ok_or_else(none)
}

/// The pattern and the view that words mean, the name of the pattern perhaps without quotes around it; where there are no
/// words, those to which a role was added last.
///
/// # Errors
///
/// Words that mean none, or two, or a view that was not named among several.
pub fn pattern_and_view(read: &dyn Read, words: &[String]) -> Result<(Pattern, String), Refused> {
    if words.iter().all(|word| word.trim() == LAST) {
        let pattern = last_pattern(read)?;
        let there = pattern.roles.iter().filter(|role| !role.dropped);
        let view = match there.max_by_key(|role| role.id) {
            Some(role) => role.view.clone(),
            None => view_or_only(&pattern, None)?.to_owned(),
        };
        return Ok((pattern, view));
    }
    let parts = |at: usize| words.split_at_checked(at).map(|(name, view)| (name.join(" "), view.join(" ")));
    let meant = |(name, typed): (String, String)| {
        let pattern = pattern(read, &name)?;
        let view = view_or_only(&pattern, Some(typed.as_str()).filter(|typed| !typed.is_empty()))?.to_owned();
        Ok((pattern, view))
    };
    // The view alone means that of the pattern that was added last.
    if pattern(read, &words.join(" ")).is_err()
        && let [word] = words
        && let Ok(last) = last_pattern(read)
        && matches!(pattern(read, word), Err(Refused::NoneNamed { .. }))
        && let Ok(view) = view(&last, word).map(str::to_owned)
    {
        return Ok((last, view));
    }
    // One word is the pattern and the rest its view, unless the words begin with the whole name of one.
    let there: Vec<Pattern> = read.patterns()?.into_iter().filter(|pattern| !pattern.dropped).collect();
    let whole = |at: &usize| parts(*at).is_some_and(|(name, _)| there.iter().any(|pattern| is(&pattern.name, &name)));
    let at = (1..=words.len()).rev().find(whole).unwrap_or(1);
    meant(parts(at).unwrap_or_default())
}

/// The view that is meant.
///
/// # Errors
///
/// A text that means none, or two.
pub fn view<'p>(pattern: &'p Pattern, text: &str) -> Result<&'p str, Refused> {
    // `view A`, unless a view has that name.
    let views = pattern.views();
    let bare = text.trim().split_once(' ').filter(|(word, _)| is(word, "view")).map(|(_, name)| name);
    let bare = bare.filter(|_| named(text, &views) == NameMatch::None);
    one_of(Thing::View, bare.unwrap_or(text), &views, &pattern.name)
}

/// The view that is meant, or the only one.
///
/// # Errors
///
/// A text that means none, or two, or where nothing was typed and there are several.
pub fn view_or_only<'p>(pattern: &'p Pattern, text: Option<&str>) -> Result<&'p str, Refused> {
    match (text, pattern.views().as_slice()) {
        (Some(text), _) => view(pattern, text),
        (None, [only]) => Ok(only),
        (None, []) => view(pattern, ""),
        (None, several) => Err(Refused::WhichView(owned(several))),
    }
}

/// The role of a view that is meant.
///
/// # Errors
///
/// A text that means none, or two.
pub fn role<'p>(pattern: &'p Pattern, view: &str, text: &str) -> Result<&'p Role, Refused> {
    let roles: Vec<&Role> = pattern.roles.iter().filter(|role| !role.dropped && role.view == view).collect();
    let names: Vec<&str> = roles.iter().map(|role| role.name.as_str()).collect();
    let name = one_of(Thing::Role, text, &names, &pattern.name)?;
    let known = owned(&names);
    let none = || Refused::NoneNamed { thing: Thing::Role, text: text.to_owned(), known, pattern: String::new() };
    roles.into_iter().find(|role| role.name == name).ok_or_else(none)
}

/// The roles of a view that are meant, in their order; all where none is named.
///
/// # Errors
///
/// A text that means none, or two.
pub fn roles<'p>(pattern: &'p Pattern, view: &'p str, wanted: &[String]) -> Result<Vec<&'p Role>, Refused> {
    let mut ids = Vec::new();
    for text in wanted {
        ids.push(role(pattern, view, text)?.id);
    }
    Ok(pattern.view(view).filter(|role| ids.is_empty() || ids.contains(&role.id)).collect())
}

/// The test of a cloth that is meant by the last letters of its identifier, retired or not; `field` is what was typed.
///
/// # Errors
///
/// Letters that mean none, or several.
pub fn test_of(read: &dyn Read, fabric: &Fabric, text: &str, field: Field) -> Result<StoredTest, Refused> {
    let ending = text.trim().to_uppercase();
    let mut tests = read.tests(WhichTests::Of(fabric.id))?;
    tests.retain(|test| !ending.is_empty() && test.id.to_string().ends_with(&ending));
    let ids = tests.iter().map(|test| test.id).collect();
    match tests.pop() {
        Some(test) if tests.is_empty() => Ok(test),
        _ => Err(Refused::TestOf { tag: fabric.tag, text: text.to_owned(), field, ids }),
    }
}
