//! What went wrong, in one line that says what to type instead: the command line's English.

mod deed;
mod file;
mod input;
mod link;
mod misuse;
pub mod page;
mod store;

pub use deed::{not_pulled, refused};
pub use file::{exported, imported};
pub use input::{column, flag, why, wrong};
pub use link::link;
pub use misuse::{file, misuse};
pub use store::{log_fault, store};
