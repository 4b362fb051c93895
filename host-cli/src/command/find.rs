//! Finds what was meant by a tag, a name or the end of an identifier.

use crate::error::{Error, one_line};
use crate::log::{Fabric, Id, Pattern, Role, StoredTest};
use crate::store::{Read, Which};

/// The fabric that is meant: its tag (`7`, `#7`), or its identifier where a tag is on two.
///
/// # Errors
///
/// A text that means none, or two.
pub fn fabric(read: &dyn Read, text: &str) -> Result<Fabric, Error> {
    let none = || Error::Usage(format!("'{}' is no fabric here; see tenter cloth list for the tags", one_line(text)));
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
                "tag {tag} is on {} fabrics: {names}; give one a new tag: tenter cloth edit IDENTIFIER --tag NUMBER",
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
        return Err(Error::Usage(format!("fabric {tag} is retired; bring it back with tenter cloth return {tag}")));
    }
    Ok(fabric)
}

/// The test that is meant: its identifier, or the end of it as lists show it. Dropped tests are found by the whole
/// identifier only.
///
/// # Errors
///
/// A text that means none, or several.
pub fn test(read: &dyn Read, text: &str) -> Result<StoredTest, Error> {
    let typed = text.trim().to_uppercase();
    let none = || Error::Usage(format!("'{}' is no test here; see tenter device inbox", one_line(text)));
    if let Ok(id) = typed.parse::<Id>() {
        return read.test(id)?.ok_or_else(none);
    }
    let mut found = Vec::new();
    if typed.len() >= 4 {
        read.each_test(Which::All, &mut |test| {
            found.extend(test.id.to_string().ends_with(&typed).then_some(test));
            Ok(())
        })?;
    }
    match found.as_slice() {
        [] => Err(none()),
        [test] => Ok(test.clone()),
        several => {
            let ids: Vec<_> = several.iter().map(|test| test.id.to_string().to_lowercase()).collect();
            Err(Error::Usage(format!("'{}' ends several: {}; type more of it", one_line(text), ids.join(", "))))
        }
    }
}

/// What a text means among names: the one that is equal, whatever its case, or else the only one that begins so.
fn among<'t>(text: &str, names: &[&'t str]) -> Result<Option<&'t str>, Vec<&'t str>> {
    let wanted = text.trim().to_lowercase();
    if let Some(name) = names.iter().find(|name| name.to_lowercase() == wanted) {
        return Ok(Some(name));
    }
    let begun: Vec<&str> = names.iter().copied().filter(|name| name.to_lowercase().starts_with(&wanted)).collect();
    match begun.as_slice() {
        [] => Ok(None),
        [name] => Ok(Some(name)),
        _ => Err(begun),
    }
}

/// The names as a list that fits a line.
fn listed(names: &[&str]) -> String {
    let shown: Vec<String> = names.iter().take(6).map(|name| one_line(name)).collect();
    let more = names.len().saturating_sub(shown.len());
    if more > 0 { format!("{} and {more} more", shown.join(", ")) } else { shown.join(", ") }
}

fn named<'t>(kind: &str, text: &str, names: &[&'t str], how: &str) -> Result<&'t str, Error> {
    match among(text, names) {
        Ok(Some(name)) => Ok(name),
        Ok(None) if names.is_empty() => Err(Error::Usage(format!("there is no {kind} yet; {how}"))),
        Ok(None) => Err(Error::Usage(format!("'{}' is no {kind} here; there are: {}", one_line(text), listed(names)))),
        Err(several) => {
            Err(Error::Usage(format!("'{}' could be {}; type more of it", one_line(text), listed(&several))))
        }
    }
}

/// The pattern that is meant: by name or the beginning of it. Dropped ones only where `dropped` says so.
///
/// # Errors
///
/// A text that means none, or two; here and below.
pub fn pattern_that(read: &dyn Read, text: &str, dropped: bool) -> Result<Pattern, Error> {
    let mut patterns = read.patterns()?;
    patterns.retain(|pattern| pattern.dropped == dropped);
    if let Ok(id) = text.trim().to_uppercase().parse::<Id>()
        && let Some(at) = patterns.iter().position(|pattern| pattern.id == id)
    {
        return Ok(patterns.swap_remove(at));
    }
    let names: Vec<&str> = patterns.iter().map(|pattern| pattern.name.as_str()).collect();
    let name = named("pattern", text, &names, "add one with tenter pattern add")?.to_owned();
    patterns.retain(|pattern| pattern.name == name);
    let ids: Vec<String> = patterns.iter().map(|pattern| pattern.id.to_string()).collect();
    match patterns.pop() {
        Some(pattern) if ids.len() == 1 => Ok(pattern),
        _ => Err(Error::Usage(format!(
            "{} patterns are called '{}': type {} instead; tenter pattern edit gives one a new name",
            ids.len(),
            one_line(&name),
            ids.join(" or ")
        ))),
    }
}

/// The pattern that is meant, unless it was dropped.
///
/// # Errors
///
/// As above.
pub fn pattern(read: &dyn Read, text: &str) -> Result<Pattern, Error> {
    pattern_that(read, text, false)
}

/// The view that is meant.
///
/// # Errors
///
/// As above.
pub fn view<'p>(pattern: &'p Pattern, text: &str) -> Result<&'p str, Error> {
    let how = format!("add one with tenter pattern add '{}' VIEW ROLE", one_line(&pattern.name));
    named("view", text, &pattern.views(), &how)
}

/// The view that is meant, or the only one.
///
/// # Errors
///
/// As above, or where nothing was typed and there are several.
pub fn view_or_only<'p>(pattern: &'p Pattern, text: Option<&str>) -> Result<&'p str, Error> {
    match (text, pattern.views().as_slice()) {
        (Some(text), _) => view(pattern, text),
        (None, [only]) => Ok(only),
        (None, []) => view(pattern, ""),
        (None, several) => Err(Error::Usage(format!("say which view: {}", listed(several)))),
    }
}

/// The role of a view that is meant.
///
/// # Errors
///
/// As above.
pub fn role<'p>(pattern: &'p Pattern, view: &str, text: &str) -> Result<&'p Role, Error> {
    let roles: Vec<&Role> = pattern.roles.iter().filter(|role| !role.dropped && role.view == view).collect();
    let names: Vec<&str> = roles.iter().map(|role| role.name.as_str()).collect();
    let name = named("role", text, &names, "add one with tenter pattern add")?;
    let found = roles.into_iter().find(|role| role.name == name);
    found.ok_or_else(|| Error::Usage(format!("'{}' is no role of view {}", one_line(text), one_line(view))))
}

/// The roles of a view that are meant, in their order; all where none is named.
///
/// # Errors
///
/// As above.
pub fn roles<'p>(pattern: &'p Pattern, view: &'p str, wanted: &[String]) -> Result<Vec<&'p Role>, Error> {
    let mut ids = Vec::new();
    for text in wanted {
        ids.push(role(pattern, view, text)?.id);
    }
    Ok(pattern.view(view).filter(|role| ids.is_empty() || ids.contains(&role.id)).collect())
}

/// The test of a fabric that is meant by the last letters of its identifier, dropped or not.
///
/// # Errors
///
/// Letters that mean none, or two.
pub fn test_of(read: &dyn Read, fabric: &Fabric, flag: &str, text: &str) -> Result<StoredTest, Error> {
    let ending = text.trim().to_uppercase();
    let mut tests = read.tests(Which::Of(fabric.id))?;
    tests.retain(|test| !ending.is_empty() && test.id.to_string().ends_with(&ending));
    match tests.as_slice() {
        [test] => Ok(test.clone()),
        [] => {
            let tag = fabric.tag;
            Err(Error::argument(flag, text, format!("no test of fabric {tag} ends so; see tenter cloth show {tag}")))
        }
        several => {
            let letters = format!("{} tests end so; type more letters, such as ", several.len());
            let longer = several.first().map(|test| test.id.to_string().to_lowercase()).unwrap_or_default();
            Err(Error::argument(flag, text, letters + &longer))
        }
    }
}
