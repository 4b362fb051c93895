//! `tenter people`: who pulls.

use crate::cli::people::{HereArgs, PeopleVerb};
use crate::deed::people as deed;
use crate::error::Error;
use crate::finding::people::pullers;
use crate::json::people as people_json;
use crate::log::{Desk, Subject};
use crate::store::{Change as _, LogWithDrafts};
use crate::text::TextOutput;
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
        Ok::<_, crate::deed::Refused>((core::mem::take(&mut who.facts), who))
    })?;
    let desk = Desk { who: who.id, ..log.desk()? };
    log.set_desk(&desk)?;
    Ok(screen.say(&words::here(&who.name))?)
}
