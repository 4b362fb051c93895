//! Deeds that cannot be done.

use tenter_core::making::garment::Detail;
use tenter_core::{Length, Unit};

use super::input::{flag, wrong};
use super::store::store;
use crate::deed::{Refused, Thing};
use crate::finding::fit::known::NotPulled;
use crate::input::Field;
use crate::log::{Id, Tag, TagRange};
use crate::plain::one_line;
use crate::words::{quantity, tags};

/// Why a deed was not done, and what to type instead.
#[must_use]
pub fn refused(refused: &Refused) -> String {
    match refused {
        Refused::Wrong(field) => wrong(field, flag),
        Refused::Store(error) => store(error),
        Refused::NoCloth(text) => {
            let has = if is_tag(text) { "has tag" } else { "is called" };
            format!("no cloth {has} {}; tenter cloth list shows the tags", quoted(text))
        }
        Refused::SeveralCloths { text, found } => {
            let cloths: Vec<String> = found.iter().map(|(tag, name)| format!("{tag} {name}")).collect();
            format!("'{}' could be {}; type the number", one_line(text), listed(&cloths))
        }
        Refused::SharedTag { tag, on } => {
            let each: Vec<_> = on.iter().map(|(tag, name)| format!("{tag} {}", one_line(name))).collect();
            format!(
                "{} cloths have tag {tag}: {}; type the letter too, or give them tags of their own with tenter cloth \
                 renumber",
                on.len(),
                each.join(", ")
            )
        }
        Refused::NeverHas(kind, detail) => {
            let words: Vec<&str> = kind.details().map(Detail::word).collect();
            format!("--kind {} does not go with '{}'; type some of: {}", kind.word(), detail.word(), words.join(", "))
        }
        Refused::NoGarmentKind(detail) => {
            format!("'{}' needs the garment too; add its kind, such as --kind trousers", detail.word())
        }
        Refused::NotOnSheet(role) => format!("'{}' is not on this sheet; name it with --role too", one_line(role)),
        Refused::Interfacing(tag) => format!(
            "cloth {tag} is interfacing, which you fuse or sew onto a piece and not into a seam; \
             type tenter handle TAG --facing-gives 5% with the cloth that it goes onto"
        ),
        Refused::NoStretchAsked => "no role of that view asks for stretch; pass it with --wants 25%".to_owned(),
        Refused::Retired(tag) => format!("cloth {tag} is retired; bring it back with tenter cloth return {tag}"),
        Refused::NotRetired(tag) => format!("cloth {tag} is there already; nothing to bring back"),
        Refused::SamePerson { text, name } => {
            format!("test '{}' was pulled by {} already", one_line(text), one_line(name))
        }
        Refused::NoPerson { text, known } if known.is_empty() => {
            format!("nobody is called '{}'; name somebody with tenter pull TAG --by NAME", one_line(text))
        }
        Refused::NoPerson { text, known } => {
            format!("nobody is called '{}'; type one of {}", one_line(text), one_line(&known.join(", ")))
        }
        Refused::SeveralPeople { name, ids } => {
            let ids: Vec<String> = ids.iter().map(ToString::to_string).collect();
            let name = one_line(name);
            format!(
                "{} people are called {name}: {}; type an identifier, or, if they are one, tenter people merge {name}",
                ids.len(),
                ids.join(", ")
            )
        }
        Refused::OnePerson(name) => format!("only one person is called {}; type the other name too", one_line(name)),
        Refused::NobodyToCompare(tag) => format!(
            "fewer than two people pulled cloth {tag}, or nobody twice; store each person's pulls with tenter pull {tag} --by NAME"
        ),
        Refused::NothingShared => "no two cloths share a tag; there is nothing to renumber".to_owned(),
        Refused::TagTaken { tag, by, free } => {
            format!("--tag '{tag}': '{}' has this tag; {free} is free", one_line(by))
        }
        Refused::TagLent { tag, device, free } => {
            format!("--tag '{tag}': handheld {device} may have given this tag; sync it first, or type --tag {free}")
        }
        Refused::NoTagLeft(None) => {
            "all tags are in use or held by others; tenter log tags lists them; or take one of a retired cloth with --tag"
                .to_owned()
        }
        Refused::NoTagLeft(Some(range)) => format!(
            "all tags of {range} are in use; type tenter log tags with another range, such as {}, or the tag with --tag",
            further(*range)
        ),
        Refused::TagsHeld { range, held, who, free } => {
            let free = free.map(|free| format!("; type others, such as {free}")).unwrap_or_default();
            format!("TAGS '{range}': {} gives the tags {}{free}", tags::holder(held, who.as_deref()), held.tags)
        }
        Refused::TagsNotHeld(range) => {
            format!("TAGS '{range}': nobody holds exactly these; tenter log tags lists the ranges")
        }
        Refused::NothingChanged(subject) => nothing_changed(*subject).to_owned(),
        Refused::LengthNotKnown(tag) => {
            format!("the length of cloth {tag} is not known; type it first: tenter cloth edit {tag} --length 2m")
        }
        Refused::InShop(tag) => {
            format!("cloth {tag} lies in a shop; once it is bought type tenter cloth edit {tag} --bought 2m")
        }
        Refused::NotSoMuch { tag, text, had, unit } => format!(
            "LENGTH '{}': only {} is on hand; type that or less, or correct the length: tenter cloth edit {tag} --length",
            one_line(text),
            quantity::cloth(*had, *unit)
        ),
        Refused::NotBought(tag) => format!("--bought 'no': cloth {tag} did not come from a shop; nothing to take back"),
        Refused::CutSince(tag) => {
            format!("you have cut a length off cloth {tag}; take that back first: tenter cloth cut {tag} --undo")
        }
        Refused::NothingCut(tag) => format!("nothing was cut off cloth {tag}; there is no cut to take back"),
        Refused::NothingWashed(tag) => format!("cloth {tag} has no such marks; there is nothing to take back"),
        Refused::SameGrain { text, grain } => {
            format!("--regrain '{}': that test is {} already", one_line(text), grain.word())
        }
        Refused::NoTest(text) => format!("no test is called {}; see tenter device inbox", quoted(text)),
        Refused::SeveralTests { text, ids } => {
            format!("'{}' ends several: {}; type more of it", one_line(text), lower(ids).join(", "))
        }
        Refused::TestOf { tag, text, field, ids } => {
            let words = match lower(ids).first() {
                None => format!("no test of cloth {tag} ends so; see tenter cloth show {tag}"),
                Some(longer) => format!("{} tests end so; type more letters, such as {longer}", ids.len()),
            };
            format!("{} '{}': {words}", flag(*field), one_line(text))
        }
        Refused::Already { text, retire } => {
            let words = if *retire { "it is retired already" } else { "it counts; nothing to bring back" };
            format!("{} '{}': {words}", retire_flag(*retire), one_line(text))
        }
        Refused::NothingRetired(pattern) => format!("nothing of that was retired from '{}'", one_line(pattern)),
        Refused::AsksNothing { pattern, view } => format!(
            "{} {} asks no stretch, growth or recovery, so there is nothing to send; see tenter pattern --help",
            one_line(pattern),
            one_line(view)
        ),
        Refused::PhotoThere { tag, number } => {
            format!("cloth {tag} has this photograph already, as number {number}; nothing to add")
        }
        Refused::NoPhoto { tag, count: 0, .. } => {
            format!("cloth {tag} has no photograph yet; add one with tenter cloth picture {tag} FILE")
        }
        Refused::NoPhoto { text, count, .. } => {
            format!("'{}': type the number of a photograph, from 1 to {count}", one_line(text))
        }
        Refused::PhotoMissing(tag) => {
            format!("this photograph of cloth {tag} is not in your log yet; import the log that has it")
        }
        Refused::NothingLearned => {
            "type what worked or how it wore, such as --needle 'stretch 75' or --wore 'knees bagged'".to_owned()
        }
        Refused::NoLesson { tag, count: 0, .. } => {
            format!("nothing was learned of cloth {tag} yet; see tenter cloth learned --help")
        }
        Refused::NoLesson { text, count, .. } => {
            format!("'{}': type the number of what was learned, from 1 to {count}", one_line(text))
        }
        Refused::AlreadySo { text, retire } => {
            let words = if *retire { "it is retired already" } else { "it is there; nothing to bring back" };
            format!("{} '{}': {words}", retire_flag(*retire), one_line(text))
        }
        Refused::NoGarmentYet => "no garment was begun yet; begin one with tenter make start PATTERN".to_owned(),
        Refused::NoGarment(text) => {
            format!("no garment is called '{}'; tenter make list shows the numbers", one_line(text))
        }
        Refused::SeveralGarments { text, on } => several_garments(text, on),
        Refused::GivenUp(number) => {
            format!("garment {number} is retired; bring it back with tenter make return {number}")
        }
        Refused::GarmentThere(number) => format!("garment {number} is there already; nothing to bring back"),
        Refused::DoneAlready(number) => {
            format!("garment {number} is done already; for how it wears type tenter make wore {number}")
        }
        Refused::NotDone(number) => format!("garment {number} is still open; nothing to take up again"),
        Refused::NumberTaken { number, by, free } => {
            format!("--number '{number}': '{}' has this number; {free} is free", one_line(by))
        }
        Refused::NoNumberLeft => "all 65535 numbers are in use; take one of a retired garment with --number".to_owned(),
        Refused::NoClothChosen(number) => {
            format!("no cloth is chosen for garment {number}; choose one with tenter make edit {number} --use ROLE=TAG")
        }
        Refused::CutAlready { number, role, tag } => format!(
            "cloth {tag} is cut for '{}' already; if it was not, type tenter make uncut {number} --role first",
            one_line(role)
        ),
        Refused::NoStage { number, stage, known } => {
            let known: Vec<&str> = known.iter().map(|stage| stage.word()).collect();
            format!("garment {number} has no stage '{}'; type some of: {}", stage.word(), known.join(", "))
        }
        Refused::NothingToCut(number) => format!("everything is cut for garment {number}"),
        Refused::NothingCutFor(number) => format!("nothing was cut for garment {number}; nothing to take back"),
        Refused::CutHowMuch { number, role } => format!(
            "the pattern does not say how much '{0}' takes; type tenter make cut {number} --role '{0}' --length 1.4m",
            one_line(role)
        ),
        Refused::TooLittleToCut { tag, number, roles, asked, had, unit } => {
            let first = roles.first().map(|role| one_line(role)).unwrap_or_default();
            format!(
                "{}; type how much you cut of it for each: tenter make cut {number} --role '{first}' --length 1.4m",
                too_little_to_cut((*tag, roles), (*asked, *had), *unit)
            )
        }
        Refused::NoWashMarks => "type the marks before and after, such as --lengthwise '50cm to 48.5cm'".to_owned(),
        Refused::Named { has, wanted } => {
            format!("--name '{wanted}': this handheld is number {has} and keeps it; leave --name out")
        }
        Refused::DamagedDraft(tag) => {
            format!("the unfinished test of cloth {tag} cannot be read; forget it with tenter pull {tag} --discard")
        }
        Refused::SeveralDrafts { tag, count } => {
            format!(
                "cloth {tag} has {count} unfinished tests; type tenter pull {tag}, which lists them, and discard one there"
            )
        }
        Refused::NoDraft { tag, forget: true } => format!("cloth {tag} has no unfinished test; nothing to forget"),
        Refused::NoDraft { tag, forget: false } => {
            format!("cloth {tag} has no unfinished test; begin with tenter pull {tag}")
        }
        names => of_names(names),
    }
}

/// That a cloth is shorter than what its roles take.
#[must_use]
pub fn too_little_to_cut((tag, roles): (Tag, &[String]), (asked, had): (Length, Length), unit: Unit) -> String {
    let names: Vec<String> = roles.iter().map(|role| format!("'{}'", one_line(role))).collect();
    let (asked, had) = (quantity::cloth_needed(asked, unit), quantity::cloth(had, unit));
    match names.as_slice() {
        [one] => format!("{one} takes {asked} of cloth {tag}, and {had} is on hand"),
        several => format!("{} take {asked} of cloth {tag} together, and {had} is on hand", several.join(" and ")),
    }
}

/// A grain of a cloth that must be pulled first.
#[must_use]
pub fn not_pulled(not: NotPulled) -> String {
    let (tag, grain) = (not.tag, not.grain.word());
    format!("cloth {tag} was not pulled along that grain; pull it first: tenter pull {tag} --grain {grain}")
}

/// Names that mean nothing, several things, or something that is there.
fn of_names(refused: &Refused) -> String {
    match refused {
        Refused::NoneNamed { thing, known, pattern, .. } if known.is_empty() => {
            let how = match thing {
                Thing::View => format!("tenter pattern add '{}' VIEW ROLE", one_line(pattern)),
                _ => "tenter pattern add".to_owned(),
            };
            format!("there is no {} yet; add one with {how}", word(*thing))
        }
        Refused::NoneNamed { thing, text, known, .. } => {
            format!("no {} is called '{}'; there are: {}", word(*thing), one_line(text), listed(known))
        }
        Refused::SeveralNamed { text, found } => {
            format!("'{}' could be {}; type more of it", one_line(text), listed(found))
        }
        Refused::SameName { name, ids } => {
            let either: Vec<_> = ids.iter().map(Id::to_string).collect();
            format!(
                "{} patterns are called '{}': type {} instead; tenter pattern edit gives one a new name",
                ids.len(),
                one_line(name),
                either.join(" or ")
            )
        }
        Refused::WhichView(views) => format!("type which view: {}", listed(views)),
        Refused::RoleExists { view, role } => format!(
            "view {} has a role '{}' already; change it with tenter pattern edit",
            one_line(view),
            one_line(role)
        ),
        Refused::PatternExists(name) => format!("there is a pattern '{}' already", one_line(name)),
        Refused::NameTaken { thing, name } => {
            let where_ = if *thing == Thing::Role { " of this view" } else { "" };
            format!("--name '{}': another {}{where_} has this name", one_line(name), word(*thing))
        }
        Refused::NameTakenMeanwhile(name) => {
            format!("PATTERN '{}': another pattern has this name now; give that one a new name first", one_line(name))
        }
        Refused::WithoutRole { adding } => {
            let verb = if *adding { "add" } else { "edit" };
            format!("type the view and the role that ask this: tenter pattern {verb} NAME VIEW ROLE")
        }
        other => other.to_string(),
    }
}

/// Garments that have one number, or of which the names begin alike.
fn several_garments(text: &str, on: &[(Id, u16, String)]) -> String {
    let same = on.windows(2).any(|pair| matches!(pair, [(_, one, _), (_, other, _)] if one == other));
    let each = |(id, number, name): &(Id, u16, String)| match same {
        true => format!("{id} {}", one_line(name)),
        false => format!("{number} {}", one_line(name)),
    };
    let found: Vec<String> = on.iter().take(6).map(each).collect();
    let what = if same { "identifier" } else { "number" };
    format!("'{}' is on {} garments: {}; type the {what} of one", one_line(text), on.len(), found.join(", "))
}

const fn nothing_changed(subject: Thing) -> &'static str {
    match subject {
        Thing::Cloth => "type what changed, such as --place 'top shelf'; see tenter cloth edit --help",
        Thing::Pattern => "type what changed: --name or --note",
        Thing::Garment => "type what changed, such as --by 2026-12-12; see tenter make edit --help",
        Thing::View | Thing::Role => "type what changed, such as --crosswise 5%; see tenter pattern edit --help",
    }
}

const fn word(subject: Thing) -> &'static str {
    match subject {
        Thing::Cloth => "cloth",
        Thing::Pattern => "pattern",
        Thing::View => "view",
        Thing::Role => "role",
        Thing::Garment => "garment",
    }
}

const fn retire_flag(retire: bool) -> &'static str {
    flag(if retire { Field::Retire } else { Field::Return })
}

/// A tag as it is, anything else in quotes.
fn quoted(text: &str) -> String {
    let tag = text.trim().trim_start_matches('#');
    if is_tag(text) { tag.to_owned() } else { format!("'{}'", one_line(text)) }
}

fn is_tag(text: &str) -> bool {
    let tag = text.trim().trim_start_matches('#');
    !tag.is_empty() && tag.len() < 8 && tag.chars().all(|c| c.is_ascii_digit())
}

fn lower(ids: &[Id]) -> Vec<String> {
    ids.iter().map(|id| id.to_string().to_lowercase()).collect()
}

/// Names as a list that fits a line.
fn listed(names: &[String]) -> String {
    let shown: Vec<String> = names.iter().take(6).map(|name| one_line(name)).collect();
    let more = names.len().saturating_sub(shown.len());
    if more > 0 { format!("{} and {more} more", shown.join(", ")) } else { shown.join(", ") }
}

/// A range as long as one that is full, beyond it; the first tags where there is no room.
fn further(full: TagRange) -> TagRange {
    let least = full.most.checked_add(1);
    let most = full.most.checked_add(full.most.saturating_sub(full.least).saturating_add(1));
    least.zip(most).map_or(TagRange { least: 1, most: 99 }, |(least, most)| TagRange { least, most })
}
