//! `tenter people`: who pulls.

use crate::cli::people::{CompareArgs, HereArgs, PeopleVerb};
use crate::deed::people as deed;
use crate::deed::{Refused, find};
use crate::error::Error;
use crate::finding::class::ClassPulls;
use crate::finding::people::pullers;
use crate::json::class as class_json;
use crate::json::people as people_json;
use crate::log::{Desk, Subject};
use crate::store::{Change as _, LogWithDrafts, Read, WhichTests};
use crate::text::TextOutput;
use crate::text::class as class_text;
use crate::text::people as report;
use crate::words::people as words;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written.
pub fn run(verb: &PeopleVerb, log: &mut dyn LogWithDrafts, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    match verb {
        PeopleVerb::List(args) => {
            let all = pullers(log)?;
            if args.json {
                writeln!(screen.out, "{}", people_json::list(&all))?;
            } else {
                write!(screen.out, "{}", report::list(&all, screen.width))?;
            }
        }
        PeopleVerb::Rename(args) => {
            let (_, before) = log.change(|read| deed::rename(read, &args.person, &args.name))?;
            screen.say(&words::renamed(&before, args.name.trim()))?;
        }
        PeopleVerb::Merge(args) => {
            let (_, (into, _)) = log.change(|read| deed::merge(read, &args.person, args.into.as_deref()))?;
            screen.say(&words::merged(args.person.trim(), &into))?;
        }
        PeopleVerb::Compare(args) => {
            let class = class_of(&args.class, log)?;
            if args.json {
                writeln!(screen.out, "{}", class_json::render(&class))?;
            } else {
                write!(screen.out, "{}", class_text::render(&class, screen.width, screen.unicode))?;
            }
        }
        PeopleVerb::Here(args) => here(args, log, screen)?,
        PeopleVerb::Forget(args) => {
            let person = deed::person(&log.people()?, &args.person)?;
            log.forget_names(Subject::Person(person.id))?;
            screen.say(&words::forgotten(&person))?;
        }
    }
    Ok(0)
}

fn here(args: &HereArgs, log: &mut dyn LogWithDrafts, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let Some(name) = args.person.as_deref().filter(|_| !args.nobody) else {
        let desk = Desk { who: None, ..log.desk()? };
        log.set_desk(&desk)?;
        return Ok(screen.say(words::NOBODY_HERE)?);
    };
    let (_, who) = log.change(|read| {
        let mut who = deed::puller(read, Some(name))?;
        Ok::<_, Refused>((core::mem::take(&mut who.facts), who))
    })?;
    let desk = Desk { who: who.id, ..log.desk()? };
    log.set_desk(&desk)?;
    Ok(screen.say(&words::here(&who.name))?)
}

/// A cloth that several people pulled.
pub(super) fn class_of(args: &CompareArgs, read: &dyn Read) -> Result<ClassPulls, Error> {
    let fabric = find::live_fabric(read, &args.fabric)?;
    let tests = read.tests(WhichTests::Of(fabric.id))?;
    let class = ClassPulls::of(&fabric, &tests, &read.people()?, args.grain);
    let class = class.ok_or(Refused::NobodyToCompare(fabric.tag))?;
    Ok(if args.without_names { class.without_names() } else { class })
}
