//! `tenter report form`.

use tenter_core::Unit;

use super::super::find;
use super::write;
use crate::cli::report::FormArgs;
use crate::error::Error;
use crate::input::{self, Field, Why, Wrong};
use crate::page::form;
use crate::store::Read;
use crate::text::TextOutput;
use crate::words::done;

/// Writes the sheet for the readings of a class.
pub fn run(args: &FormArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let cloth = match &args.fabric {
        Some(tag) => {
            let fabric = find::live_fabric(read, tag)?;
            format!("{} {}", fabric.tag, fabric.name)
        }
        None => String::new(),
    };
    let asked = input::range(Field::Wants, Some(&args.wants), Unit::Mm)?;
    let page = form::page(&cloth, asked, usize::from(args.lines));
    let page = page.ok_or_else(|| Wrong::new(Field::Wants, &args.wants, Why::TooLongForPaper))?;
    write(&args.out.out, &page, &done::class_sheet(), screen)
}
