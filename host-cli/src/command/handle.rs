//! `tenter handle`: how to sew one cloth.

use tenter_core::making::handling::Layer;

use super::find;
use crate::cli::making::HandleArgs;
use crate::error::Error;
use crate::finding::fit::{Stock, known};
use crate::finding::handle::{Handled, layered};
use crate::input::{self, Field, size as typed};
use crate::json::handle as handle_json;
use crate::store::Read;
use crate::text::Screen;
use crate::text::handle as handle_text;

/// Runs the verb; 0, or the answer about lining and facing.
///
/// # Errors
///
/// What was typed wrong, a log that cannot be read, or a cloth that was not pulled.
pub fn run(args: &HandleArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let confidence = input::confidence(&args.advice.confidence.confidence)?;
    let stock = Stock::read(read)?;
    let fabric = find::live_fabric(read, &args.fabric)?;
    let grain = args.grain;
    let own = known::stretch(&fabric, grain, &stock)?;
    let wants = args.wants.as_deref().map(|text| typed::exact(Field::Wants, text)).transpose()?;
    let wanted = wants.map(|wants| wants.ratio);
    let mut layers = Vec::new();
    if let Some(text) = &args.lining {
        let lining = find::live_fabric(read, text)?;
        let gives = known::stretch(&lining, grain, &stock)?;
        layers.push(layered(own, Layer::Lining, gives, wanted, confidence));
    }
    if let Some(text) = &args.facing_gives {
        let gives = typed::exact(Field::FacingGives, text)?;
        layers.push(layered(own, Layer::Interfacing, gives, wanted, confidence));
    }
    let handled = Handled::of(&known::cloth(&fabric, &stock), wanted, &layers, confidence);
    if args.advice.show.json {
        writeln!(screen.out, "{}", handle_json::render(fabric.tag, &handled))?;
    } else {
        let text = handle_text::render(&(&fabric).into(), &handled, args.advice.why, screen.width);
        write!(screen.out, "{text}")?;
    }
    Ok(super::check::exit_code(handled.answer))
}
