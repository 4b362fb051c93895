//! Patterns typed into a table, or as `export --csv patterns` wrote them: a row for each role of each view.
//!
//! Needs the columns `pattern` and `role`; takes the others of [`PATTERNS`]. What a cell asks is typed as `pattern add` takes
//! it; several words of one cell stand with spaces between.

use std::collections::HashMap;

use jiff::Timestamp;
use tenter_core::{DEFAULT_REST_SECONDS, Demand, Limit, Range};

use super::read::identifier;
use super::{PATTERNS, as_typed, harmless};
use crate::exchange::{ImportError, RowFault, TableError};
use crate::input::cloth::{name as name_of, short};
use crate::input::pattern::{TypedRole, role as role_of, view as view_of};
use crate::input::synonym::{CONSTRUCTION, is};
use crate::input::test::mm;
use crate::input::{Field, Wrong};
use crate::log::{
    ClothNeed, Entry, Fact, Here, Id, Ids, MassPerArea, MassRange, Pattern, PatternChange, Role, RoleChange, Subject,
};
use crate::store::Read;

/// Whether these are the heads of a table of patterns.
pub fn are_heads(heads: &[String]) -> bool {
    ["pattern", "role"].into_iter().all(|head| heads.iter().any(|one| one == head))
}

/// Refuses heads that are not known.
///
/// # Errors
///
/// The first of them.
pub fn check_heads(heads: &[String]) -> Result<(), TableError> {
    match heads.iter().find(|head| !head.is_empty() && !PATTERNS.contains(&head.as_str())) {
        Some(head) => Err(TableError::UnknownColumn(head.clone())),
        None => Ok(()),
    }
}

/// What rows are read against.
pub struct Patterns<'r> {
    read: &'r dyn Read,
    /// Those that are there, those of earlier rows too: name and identifier.
    patterns: Vec<(String, Id)>,
    /// Their roles: pattern, view, name and identifier.
    roles: Vec<(Id, String, String, Id)>,
    ids: Ids,
    /// The latest identifier that is believed.
    latest: Timestamp,
}

impl<'r> Patterns<'r> {
    /// Against what the log holds.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn of(read: &'r dyn Read, here: Here, latest: Timestamp) -> Result<Self, ImportError> {
        let all: Vec<Pattern> = read.patterns()?.into_iter().filter(|pattern| !pattern.dropped).collect();
        let live = all.iter().flat_map(|pattern| &pattern.roles).filter(|role| !role.dropped);
        let roles = live.map(|role| (role.pattern, role.view.clone(), role.name.clone(), role.id)).collect();
        let newest = all.iter().map(|pattern| pattern.id).max();
        let patterns = all.into_iter().map(|pattern| (pattern.name, pattern.id)).collect();
        Ok(Self { read, patterns, roles, ids: Ids::after(here, newest), latest })
    }

    /// The entries of a row: a pattern where it is new, and a role of it; the entries that are there where the log knows
    /// them.
    ///
    /// # Errors
    ///
    /// The first cell that cannot be read.
    pub fn entries(&mut self, cells: &HashMap<&str, &str>) -> Result<Vec<Entry>, RowFault> {
        let cell = |head: &str| as_typed(cells.get(head).copied().unwrap_or_default());
        let is_known = |id: Id| self.roles.iter().any(|(of, .., role)| *of == id || *role == id);
        let id = |head: &str| match cell(head) {
            "" => Ok(None),
            text => identifier(text, self.latest, |id| Ok(is_known(id))).map(Some),
        };
        let (pattern_id, wanted) = (id("pattern_id")?, id("id")?);
        let mut entries = Vec::new();
        let pattern = self.pattern(&cell, pattern_id, &mut entries)?;
        if cell("role").is_empty() {
            return Ok(entries);
        }
        let name = name_of(Field::Role, cell("role"))?;
        let view = view_of(if cell("view").is_empty() { "-" } else { cell("view") })?;
        let change = RoleChange {
            view: Some(view.clone()),
            name: Some(name.clone()),
            ..role_of(&asked(&cell)?, Demand::default())?
        };
        let same = |(of, at, called, id): &&(Id, String, String, Id)| match wanted {
            Some(wanted) => *id == wanted,
            None => *of == pattern && is(at, &view) && is(called, &name),
        };
        if let Some((.., known)) = self.roles.iter().find(same) {
            let known = *known;
            entries.extend(self.read.history(Subject::Role(known))?.into_iter().next());
            return Ok(entries);
        }
        let role = wanted.unwrap_or_else(|| self.ids.next());
        self.roles.push((pattern, view, name, role));
        entries.push(Entry::new(role, Fact::RoleAdded { pattern, change }));
        Ok(entries)
    }

    /// The pattern of a row.
    fn pattern<'c>(
        &mut self,
        cell: &impl Fn(&str) -> &'c str,
        wanted: Option<Id>,
        entries: &mut Vec<Entry>,
    ) -> Result<Id, RowFault> {
        let name = name_of(Field::Pattern, cell("pattern"))?;
        let same = |(known, id): &&(String, Id)| wanted.map_or_else(|| is(known, &name), |wanted| *id == wanted);
        if let Some((_, known)) = self.patterns.iter().find(same) {
            let known = *known;
            // A role that is known says that its pattern is.
            if cell("role").is_empty() {
                entries.extend(self.read.history(Subject::Pattern(known))?.into_iter().next());
            }
            return Ok(known);
        }
        let note = Some(short(Field::Note, cell("pattern_note"))?).filter(|note| !note.is_empty());
        let id = wanted.unwrap_or_else(|| self.ids.next());
        self.patterns.push((name.clone(), id));
        entries.push(Entry::new(id, Fact::PatternAdded(PatternChange { name: Some(name), note })));
        Ok(id)
    }
}

/// What a row asks, as typed.
fn asked<'c>(cell: &impl Fn(&str) -> &'c str) -> Result<TypedRole, RowFault> {
    let text = |head: &str| Some(cell(head)).filter(|text| !text.is_empty()).map(str::to_owned);
    let words = |head: &str| cell(head).split_whitespace().map(str::to_owned).collect::<Vec<String>>();
    let constructions = words("constructions");
    let constructions = constructions.iter().map(|word| CONSTRUCTION.read(Field::Construction, word));
    let timed = |head: &str| {
        let time = Some(cell("rest_seconds")).filter(|time| !time.is_empty());
        text(head).map(|text| time.map_or_else(|| text.clone(), |time| format!("{text}@{time}s")))
    };
    Ok(TypedRole {
        crosswise: text("crosswise"),
        lengthwise: text("lengthwise"),
        bias: text("bias"),
        growth_at_most: timed("growth_most"),
        recovery_at_least: timed("recovery_least"),
        constructions: constructions.collect::<Result<_, Wrong>>()?,
        mass: text("mass"),
        drapes: words("drapes"),
        finishes: words("finishes"),
        purpose: text("purpose"),
        kind: text("garment_kind"),
        cloth: text("cloth"),
        note: text("note"),
        ..TypedRole::default()
    })
}

/// The row of a role, or of a pattern without roles.
#[must_use]
pub fn row(pattern: &Pattern, role: Option<&Role>) -> Vec<String> {
    let mut row = vec![
        role.map(|role| role.id.to_string()).unwrap_or_default(),
        pattern.id.to_string(),
        harmless(&pattern.name),
        harmless(&pattern.note),
    ];
    match role {
        Some(role) => row.extend(of_role(role)),
        None => row.resize(PATTERNS.len(), String::new()),
    }
    row
}

fn of_role(role: &Role) -> [String; 16] {
    let Demand { crosswise, lengthwise, bias, growth_at_most, recovery_at_least, rest_seconds } = role.demand;
    let words = |words: Vec<&'static str>| words.join(" ");
    [
        harmless(&role.view),
        harmless(&role.name),
        role.kind.map(|kind| kind.word().to_owned()).unwrap_or_default(),
        range(crosswise),
        range(lengthwise),
        range(bias),
        growth_at_most.map(limit).unwrap_or_default(),
        recovery_at_least.map(limit).unwrap_or_default(),
        words(role.constructions.iter().map(|one| one.word()).collect()),
        mass(role.mass),
        words(role.drapes.iter().map(|one| one.word()).collect()),
        words(role.finishes.iter().map(|one| one.word()).collect()),
        role.purpose.map(|purpose| purpose.word().to_owned()).unwrap_or_default(),
        role.cloth.map(need).unwrap_or_default(),
        harmless(&role.note),
        if rest_seconds == DEFAULT_REST_SECONDS { String::new() } else { rest_seconds.to_string() },
    ]
}

/// A limit as it is typed: a percentage in thousandths, or a printed gauge.
fn limit(limit: Limit) -> String {
    match limit.printed_marks() {
        Some((gauge, to)) => format!("{}mm to {}mm", mm(gauge), mm(to)),
        None => format!("{}%", limit.ratio().percent(3)),
    }
}

fn range(range: Range) -> String {
    match (range.at_least, range.at_most) {
        (None, None) => String::new(),
        (least, most) => {
            format!("{}..{}", least.map(limit).unwrap_or_default(), most.map(limit).unwrap_or_default())
        }
    }
}

fn mass(range: MassRange) -> String {
    let of = |mass: Option<MassPerArea>| mass.map(|mass| format!("{}g/m2", mass.g_per_m2())).unwrap_or_default();
    match (range.at_least, range.at_most) {
        (None, None) => String::new(),
        (least, most) => format!("{}..{}", of(least), of(most)),
    }
}

fn need(cloth: ClothNeed) -> String {
    let nap = if cloth.one_way { " with nap" } else { "" };
    format!("{}mm at {}mm{nap}", mm(cloth.length), mm(cloth.width))
}
