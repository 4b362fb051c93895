//! A command line as it was typed, in the words of its definition: commands and options by their other names, in any
//! capitals. What is not known is left as it is, for the parser to complain about.

use std::ffi::OsString;

use clap::{Arg, ArgAction, Command};

use crate::input::synonym::command::command as named;
use crate::input::synonym::option::options;

/// The words of a command line, the program's name first.
pub(super) fn spoken(definition: &Command, words: Vec<OsString>) -> Vec<OsString> {
    let (mut path, mut command) = (Vec::new(), definition);
    let (mut said, mut value_due, mut verbatim) = (Vec::new(), true, false);
    for word in words {
        verbatim = verbatim || word == "--";
        let text = word.to_str().filter(|_| !verbatim && !value_due);
        value_due = false;
        match text {
            Some(text) if text.starts_with("--") => {
                let option = option(&[command, definition], text);
                // What follows an option before the command may be its value, and no command.
                value_due = command.has_subcommands() && !option.contains('=') && has_value(definition, &option);
                said.push(option.into());
            }
            Some(text) if command.has_subcommands() && !text.starts_with('-') => {
                for name in command_words(&path, command, text) {
                    match command.find_subcommand(&name) {
                        Some(below) => command = below,
                        // Below a command that is not known nothing is.
                        None => verbatim = true,
                    }
                    said.push(name.clone().into());
                    path.push(name);
                }
            }
            _ => said.push(word),
        }
    }
    said
}

/// `help check` and `CHECK --help` are one.
pub(super) fn asks_for_help(word: &OsString) -> bool {
    word.to_str().is_some_and(|word| word.eq_ignore_ascii_case("help"))
}

/// What a word after `path` means: one command, or one below another.
fn command_words(path: &[String], command: &Command, text: &str) -> Vec<String> {
    let name = text.to_lowercase();
    if command.find_subcommand(&name).is_some() {
        return vec![name];
    }
    match named(&[path, &[name]].concat().join(" ")) {
        Some(meant) => meant.split(' ').skip(path.len()).map(str::to_owned).collect(),
        None => vec![text.to_owned()],
    }
}

/// An option with its dashes and its value, by the name that the first command knows which has one for it.
fn option(commands: &[&Command], text: &str) -> String {
    let bare = text.trim_start_matches('-');
    let (name, value) = bare.split_once('=').map_or((bare, None), |(name, value)| (name, Some(value)));
    let lower = name.to_lowercase().replace('_', "-");
    let known = |name: &str| matches!(name, "help" | "version") || commands.iter().any(|one| find(one, name).is_some());
    let name = if known(&lower) { Some(lower.as_str()) } else { options(name).find(|name| known(name)) };
    let Some(name) = name else { return text.to_owned() };
    value.map_or_else(|| format!("--{name}"), |value| format!("--{name}={value}"))
}

fn find<'c>(command: &'c Command, name: &str) -> Option<&'c Arg> {
    command.get_arguments().find(|arg| arg.get_long() == Some(name))
}

fn has_value(command: &Command, option: &str) -> bool {
    let takes = |arg: &Arg| matches!(arg.get_action(), ArgAction::Set | ArgAction::Append);
    find(command, option.trim_start_matches('-')).is_some_and(takes)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::super::{CommandLine, Verb, definition, parse};
    use super::*;
    use crate::cli::Parsed;
    use crate::input::synonym::command::COMMANDS;
    use crate::input::synonym::option::OPTIONS;

    fn line(text: &str) -> String {
        let words = text.split(' ').map(OsString::from).collect();
        let said: Vec<String> =
            spoken(&definition(), words).into_iter().map(|word| word.into_string().unwrap()).collect();
        said.join(" ")
    }

    #[test]
    fn other_names_and_capitals() {
        for (typed, meant) in [
            ("tenter CHECK 25 26.5 --Wants 5%", "tenter check 25 26.5 --wants 5%"),
            ("tenter add Rib --weight=200gsm", "tenter cloth add Rib --mass=200gsm"),
            ("tenter LIST --Retired", "tenter cloth list --retired"),
            ("tenter stash Show 7 --UNIT in", "tenter cloth show 7 --units in"),
            ("tenter cloth remove 7", "tenter cloth retire 7"),
            ("tenter --DB list list", "tenter --db list cloth list"),
            ("tenter --db=x Ls", "tenter --db=x cloth list"),
            ("tenter pair 1 2 --length 60cm", "tenter pair 1 2 --along 60cm"),
            ("tenter wash 7 --along x --ACROSS y", "tenter wash 7 --lengthwise x --crosswise y"),
            ("tenter wash 7 --weft=x --selvage y", "tenter wash 7 --crosswise=x --lengthwise y"),
            ("tenter pattern add P A main --on-the-bias 5%", "tenter pattern add P A main --bias 5%"),
            ("tenter pull 7 --drop ABC", "tenter pull 7 --retire ABC"),
            ("tenter cloth add X --fabric wool", "tenter cloth add X --fibre wool"),
            ("tenter size --fabric 4", "tenter size --cloth 4"),
            ("tenter check 25 26 --GROWTH_AT_MOST 3%", "tenter check 25 26 --growth-at-most 3%"),
            // Names and values are left alone.
            ("tenter cloth add List", "tenter cloth add List"),
            ("tenter cloth show -- --Weight", "tenter cloth show -- --Weight"),
            ("tenter xyzzy --Weight 3", "tenter xyzzy --Weight 3"),
            ("tenter  ADD", "tenter  ADD"),
        ] {
            assert_eq!(line(typed), meant);
        }
    }

    /// Every command and option that another name stands for is there.
    #[test]
    fn what_is_meant_is_there() {
        let definition = definition();
        for (name, meant) in COMMANDS {
            let found = meant.split(' ').try_fold(&definition, |command, word| command.find_subcommand(word));
            assert!(found.is_some(), "{name}: {meant}");
            let own = name.split(' ').try_fold(&definition, |command, word| command.find_subcommand(word));
            assert!(own.is_none(), "{name} is a command of its own");
        }
        let mut open = vec![&definition];
        let mut all = Vec::new();
        while let Some(command) = open.pop() {
            open.extend(command.get_subcommands());
            all.extend(command.get_arguments().filter_map(Arg::get_long));
        }
        for (name, meant) in OPTIONS {
            assert!(meant.iter().any(|option| all.contains(option)), "{name}: {meant:?}");
        }
    }

    #[test]
    fn the_parser_reads_what_was_meant() {
        let Ok(Parsed::Run(CommandLine { verb: Verb::Cloth(_), .. })) =
            parse("tenter ADD Rib --WEIGHT 200gsm".split(' '))
        else {
            panic!("no cloth")
        };
    }

    proptest! {
        /// Whatever is typed, nothing is lost before the parser sees it, and nothing panics.
        #[test]
        fn any_words_are_taken(words in prop::collection::vec("\\PC{0,8}|--[a-zA-Z]{0,6}=?|(cloth|ADD|Pull|7|25cm)", 0..8)) {
            let words: Vec<OsString> = core::iter::once("tenter".into()).chain(words.into_iter().map(OsString::from)).collect();
            let said = spoken(&definition(), words.clone());
            prop_assert!(said.len() >= words.len());
            // A refusal is one line.
            if let Err(error) = parse(words) {
                let told = error.to_string();
                prop_assert!(!told.is_empty() && !told.contains('\n'), "{}", told);
            }
        }
    }
}
