//! `tenter report class`.

use super::write;
use crate::cli::report::ClassArgs;
use crate::command::people::class_of;
use crate::error::Error;
use crate::page::{class as class_page, made::today};
use crate::store::Read;
use crate::text::TextOutput;

/// Writes what several people's pulls of a cloth say.
pub fn run(args: &ClassArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let class = class_of(&args.class, read)?;
    let page = class_page::page(&class, &today(screen.here));
    write(&args.out.out, &page, crate::words::done::CLASS, screen)
}
