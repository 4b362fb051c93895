//! `tenter handle`: how to sew one cloth.

use tenter_core::Grain;
use tenter_core::making::handling::Layer;

use super::find;
use crate::cli::making::HandleArgs;
use crate::error::Error;
use crate::finding::fit::{Stock, known};
use crate::finding::handle::{Handle, HandleWanted, Handled, NoSeams, layered};
use crate::input::{self, Field, size as typed};
use crate::json::handle as handle_json;
use crate::log::Fabric;
use crate::store::Read;
use crate::text::TextOutput;
use crate::text::handle as handle_text;

/// Runs the verb; 0, or the answer about lining and facing.
///
/// # Errors
///
/// What was typed wrong, a log that cannot be read, or a lining or facing for a cloth that was not pulled.
pub fn run(args: &HandleArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let confidence = input::confidence(&args.advice.confidence.confidence)?;
    let stock = Stock::read(read)?;
    let fabric = find::live_fabric(read, &args.fabric)?;
    let own = |fabric: &Fabric| known::stretch(fabric, args.grain.unwrap_or(Grain::Crosswise), &stock);
    let wants = args.wants.as_deref().map(|text| typed::exact(Field::Wants, text)).transpose()?;
    let wants = wants.map(|wants| wants.ratio);
    let mut layers = Vec::new();
    if let Some(text) = &args.lining {
        let lining = find::live_fabric(read, text)?;
        layers.push(layered(own(&fabric)?, Layer::Lining, own(&lining)?, wants, confidence));
    }
    if let Some(text) = &args.facing_gives {
        let gives = typed::exact(Field::FacingGives, text)?;
        layers.push(layered(own(&fabric)?, Layer::Interfacing, gives, wants, confidence));
    }
    let wanted = HandleWanted {
        wants,
        grain: args.grain,
        garment: args.kind,
        no_seams: NoSeams::of(&fabric),
        layers: &layers,
        confidence,
    };
    let mut handled = Handled::of(&known::cloth(&fabric, &stock), &wanted);
    let told = stock.last_time(&fabric).map(|told| Handle::LastTime(Box::new(told.clone())));
    handled.lines.splice(0..0, told);
    let unit = args.advice.show.units.unwrap_or_default();
    if args.advice.show.json {
        writeln!(screen.out, "{}", handle_json::render(fabric.tag, &handled, unit))?;
    } else {
        let text = handle_text::render(&(&fabric).into(), &handled, args.advice.why, unit, screen.width);
        write!(screen.out, "{text}")?;
    }
    Ok(super::check::exit_code(handled.answer))
}
