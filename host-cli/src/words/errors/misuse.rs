//! Options, commands and files that do not fit together.

use crate::input::{FileFault, Misuse, Near, Unparsed};
use crate::plain::one_line;
use crate::store::Access;
use crate::words::instead::instead;

/// What does not fit, and what to type instead.
#[must_use]
pub fn misuse(misuse: &Misuse) -> String {
    match misuse {
        Misuse::Unparsed(unparsed) => of_words(unparsed),
        Misuse::SecondTest => "check judges one test: type another tenter check for the other grain".to_owned(),
        Misuse::SamplesInOwnLog => {
            "that is the place of your own log; type tenter demo FILE with another name".to_owned()
        }
        Misuse::SamplesWithLog => "demo makes a file of its own: type tenter demo FILE, without --db".to_owned(),
        Misuse::NoPhotographs => "this tenter was built without photographs; use one that reads them".to_owned(),
        Misuse::UseOfBegun { garment } => format!(
            "the cloths of a garment that is begun are chosen; type tenter make edit {} ROLE=TAG",
            one_line(garment)
        ),
        Misuse::NotOnASheet { word } => format!(
            "unexpected word '{}'; type what goes on the sheet, such as zip=18cm; see tenter make plan --help",
            one_line(word)
        ),
        Misuse::NothingBeingMade { class: None } => {
            "no garment is being made; begin one with tenter make start".to_owned()
        }
        Misuse::NothingBeingMade { class: Some(class) } => format!(
            "no garment of the class '{}' is being made; name the class with tenter make edit GARMENT --class NAME",
            one_line(class)
        ),
        Misuse::NoAppModule => "this tenter was built without the app; pass --module FILE, or build both from the \
                                sources: host-cli/phone/build, then cargo install --path host-cli --features phone"
            .to_owned(),
        Misuse::NoClothAtHome => {
            "you have no cloth at home; begin with tenter cloth add NAME, or pass the tag of one you saw".to_owned()
        }
        Misuse::TagOfMap => "the map shows all cloths; leave the tag out".to_owned(),
        Misuse::ViewOfCard => "--view does not apply to a card; leave it out".to_owned(),
        Misuse::GrainOfPicture => "--grain applies only to the growth picture; leave it out".to_owned(),
        Misuse::NothingToSize => {
            "pass what to size, such as --girth hip=104cm/101cm; see tenter size --help".to_owned()
        }
        Misuse::NoHome => "no home folder; pass --db FILE".to_owned(),
        Misuse::AsReadWithoutTable => {
            "--as-read belongs to a table of readings; add --csv if the file is one".to_owned()
        }
        Misuse::CannotListen { at, system } => {
            format!("cannot listen at {at}: {system}; pass another --listen or --port")
        }
        Misuse::NoTension => {
            "pass a tension: --method TEXT (tenter hang lists them), --tension 3.5N, or --mass".to_owned()
        }
        Misuse::SameLog => "that is the same log; type the file or the address of another one".to_owned(),
        Misuse::NoLogThere { other, own: Some(own) } => {
            format!("there is no log at {other}; to copy yours there, type tenter --db {other} sync {own}")
        }
        Misuse::NoLogThere { other, own: None } => {
            format!("there is no log at {other}; type the file or the address of one that tenter made")
        }
    }
}

fn of_words(unparsed: &Unparsed) -> String {
    match unparsed {
        Unparsed::Negative(text) => {
            format!("'{}': a length cannot be negative; type it without the minus sign", one_line(text))
        }
        Unparsed::Option { name, near } => format!("unknown option '{}'; {}", one_line(name), of_near(near)),
        Unparsed::Word { name, near } => format!(
            "unexpected word '{}'; type a name of several words in quotes, or {}",
            one_line(name),
            of_near(near)
        ),
        Unparsed::Command { name, near } => {
            let list = if matches!(near, Near::Help { .. }) { " for the list" } else { "" };
            format!("unknown command '{}'; {}{list}", one_line(name), of_near(near))
        }
        Unparsed::NoCommand { verb } => format!("{verb} needs a command; see {verb} --help"),
        Unparsed::Missing { argument, verb } => format!("missing {argument}; see {verb} --help for an example"),
        Unparsed::NoValue { flag, verb } => format!("{flag} needs a value; see {verb} --help"),
        Unparsed::NotOneOf { flag, value, known } => format!("{flag} '{}': type one of {known}", one_line(value)),
        Unparsed::Twice { flag } => format!("{flag} was given twice; give it once"),
        Unparsed::Conflict { one, other } => format!("{one} and {other} do not go together; give one of them"),
        Unparsed::NotText => "an argument is not text; type it again in plain letters".to_owned(),
        Unparsed::Other(said) => said.clone().unwrap_or_else(|| "cannot read this command line".to_owned()),
    }
}

fn of_near(near: &Near) -> String {
    match near {
        Near::Like(name) => format!("did you mean '{name}'?"),
        Near::Unclear(words) => instead(words).unwrap_or("see tenter --help for the list").to_owned(),
        Near::Number => "type the command first, such as tenter check 25 26.5 26.6 26.5 5%".to_owned(),
        Near::Help { verb } => format!("see {verb} --help"),
    }
}

/// Why a file cannot be read or written.
#[must_use]
pub fn file(access: Access, path: &str, fault: &FileFault) -> String {
    let why = match fault {
        FileFault::Folder => "it is a folder; type the name of a file in it".to_owned(),
        FileFault::Fixed => "it is there and may not be changed; type another name".to_owned(),
        FileFault::TheLog => "it is the log itself; type another name".to_owned(),
        FileFault::There => "it is there already; delete it, or type tenter demo FILE with another name".to_owned(),
        FileFault::NotAppModule => {
            "it is not the app's module; pass the file that host-cli/phone/build makes".to_owned()
        }
        FileFault::TooLarge { most } => {
            format!("it is larger than {} MB, the most that is imported; import it in parts", most >> 20)
        }
        FileFault::Pages(system) => format!("{system}; pass a folder of your own with --out"),
        FileFault::System(system) => system.clone(),
    };
    format!("cannot {} {path}: {why}", super::store::tried(access))
}
