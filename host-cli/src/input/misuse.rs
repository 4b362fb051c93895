//! Options, commands and files that do not fit together, as data.

use crate::plain::reason;
use std::io;

/// What was asked for in a way that cannot be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Misuse {
    /// The words are no command line.
    Unparsed(Unparsed),
    /// One test is judged at a time, and readings of a second one were typed.
    SecondTest,
    /// The samples would go where the user's own log is.
    SamplesInOwnLog,
    /// The samples were given the file of a log.
    SamplesWithLog,
    /// This program was built without photographs.
    NoPhotographs,
    /// A garment that is begun has its cloths already.
    UseOfBegun {
        /// The garment, as typed.
        garment: String,
    },
    /// A word that says nothing of what goes on a sheet.
    NotOnASheet {
        /// The word, as typed.
        word: String,
    },
    /// There is no module of the app for a phone.
    NoAppModule,
    /// There is no garment to print sheets of.
    NothingBeingMade {
        /// The class that was named.
        class: Option<String>,
    },
    /// There is no cloth to make cards of.
    NoClothAtHome,
    /// A map of all cloths was given one of them.
    TagOfMap,
    /// A card was given a view.
    ViewOfCard,
    /// A picture without a grain was given one.
    GrainOfPicture,
    /// Nothing to size was given.
    NothingToSize,
    /// There is no home folder that could hold a log.
    NoHome,
    /// Readings stand as they are in tables only.
    AsReadWithoutTable,
    /// Nothing can be served there.
    CannotListen {
        /// The address.
        at: String,
        /// What the system says.
        system: String,
    },
    /// No tension was given.
    NoTension,
    /// A log was to be exchanged with itself.
    SameLog,
    /// There is no log to exchange with.
    NoLogThere {
        /// Where it was looked for.
        other: String,
        /// Where the user's own log is, if there is one.
        own: Option<String>,
    },
}

/// Words that are no command line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unparsed {
    /// A number below zero.
    Negative(String),
    /// An option that is not known.
    Option {
        /// The option.
        name: String,
        /// What may be meant, or where to look.
        near: Near,
    },
    /// A word that has no place there.
    Word {
        /// The word.
        name: String,
        /// What may be meant, or where to look.
        near: Near,
    },
    /// A command that is not known.
    Command {
        /// Its name.
        name: String,
        /// What may be meant, or where to look.
        near: Near,
    },
    /// A command that needs one below it.
    NoCommand {
        /// The command.
        verb: String,
    },
    /// Something that must be there.
    Missing {
        /// What it is.
        argument: String,
        /// The command.
        verb: String,
    },
    /// An option without its value.
    NoValue {
        /// The option.
        flag: String,
        /// The command.
        verb: String,
    },
    /// A value that is none of those known.
    NotOneOf {
        /// The option.
        flag: String,
        /// The value.
        value: String,
        /// Those that are known, in a list.
        known: String,
    },
    /// An option that was given twice.
    Twice {
        /// The option.
        flag: String,
    },
    /// Two that exclude each other.
    Conflict {
        /// The one.
        one: String,
        /// The other.
        other: String,
    },
    /// Bytes that are no text.
    NotText,
    /// Anything else; what the parser says, if anything.
    Other(Option<String>),
}

/// What may be meant by a name that is not known, or where to look for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Near {
    /// A name that is much like it.
    Like(String),
    /// Any of several commands, by the word that was typed.
    Unclear(String),
    /// A number where a command should stand.
    Number,
    /// Nothing is near: the help of this command tells.
    Help {
        /// The command.
        verb: String,
    },
}

/// Why a file cannot be read or written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileFault {
    /// It is a folder.
    Folder,
    /// It is there and may not be changed.
    Fixed,
    /// It is the log itself.
    TheLog,
    /// It is there, and the samples are not put in its place.
    There,
    /// It is no module of the app for a phone.
    NotAppModule,
    /// It holds more than is taken.
    TooLarge {
        /// The most taken, in bytes.
        most: u64,
    },
    /// A folder for pages of the manual: what the system says.
    Pages(String),
    /// What the system says.
    System(String),
}

impl From<&io::Error> for FileFault {
    fn from(error: &io::Error) -> Self {
        Self::System(reason(error))
    }
}
