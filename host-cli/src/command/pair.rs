//! `tenter pair`: two cloths in one seam.

use tenter_core::making::pairing::Match;

use super::find;
use crate::cli::making::PairArgs;
use crate::error::Error;
use crate::finding::fit::{Stock, known};
use crate::finding::pair::{Pairing, SeamSide};
use crate::input::{self, Field, Why, Wrong, amount};
use crate::json::pair as pair_json;
use crate::store::Read;
use crate::text::Screen;
use crate::text::pair as pair_text;

/// Runs the verb; 0 alike, 1 band to body, 3 anything that wants a hand or one more pull.
///
/// # Errors
///
/// What was typed wrong, a log that cannot be read, or a grain that was not pulled.
pub fn run(args: &PairArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let confidence = input::confidence(&args.advice.confidence.confidence)?;
    let seam = amount::cloth(Field::Along, args.along())?;
    let stock = Stock::read(read)?;
    let (first, second) = (find::live_fabric(read, &args.first)?, find::live_fabric(read, &args.second)?);
    let grain = args.grain;
    let side =
        |fabric, grain| known::edge(fabric, grain, &stock).map(|edge| SeamSide { cloth: fabric.into(), grain, edge });
    let sides = [side(&first, grain)?, side(&second, args.second_grain.unwrap_or(grain))?];
    let pairing = Pairing::of(sides, seam, args.stitch, confidence)
        .map_err(|error| Wrong::new(Field::Along, args.along(), Why::Making(error)))?;
    let unit = args.advice.show.units.or_else(|| input::unit_of(args.along())).unwrap_or_default();
    if args.advice.show.json {
        writeln!(screen.out, "{}", pair_json::render(&pairing))?;
    } else {
        write!(screen.out, "{}", pair_text::render(&pairing, args.advice.why, unit, screen.width))?;
    }
    Ok(match pairing.pair.answer {
        Match::Alike => 0,
        Match::BandToBody => 1,
        Match::Handle | Match::Close(_) => 3,
    })
}
