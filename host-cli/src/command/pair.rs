//! `tenter pair`: two cloths in one seam.

use tenter_core::Unit;
use tenter_core::making::garment::SeamKind;
use tenter_core::making::pairing::Match;

use super::find;
use crate::cli::making::PairArgs;
use crate::deed::Refused;
use crate::error::Error;
use crate::finding::fit::Stock;
use crate::finding::pair::{Pairing, SeamAsked, Unjoined};
use crate::input::{self, Field, Why, Wrong, amount, making};
use crate::json::pair as pair_json;
use crate::store::Read;
use crate::text::TextOutput;
use crate::text::pair as pair_text;

/// Runs the verb; 0 alike, 1 band to body, unlike or too firm, 3 anything that wants a hand or one more pull.
///
/// # Errors
///
/// What was typed wrong, a log that cannot be read, or a grain that was not pulled.
pub fn run(args: &PairArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let confidence = input::confidence(&args.advice.confidence.confidence)?;
    let length = amount::cloth(Field::Along, args.along())?;
    let stock = Stock::read(read)?;
    let (first, second) = (find::live_fabric(read, &args.first)?, find::live_fabric(read, &args.second)?);
    let grains = args.grain.as_deref().map(making::grains).transpose()?;
    // Most seams of two cloths run down the body.
    let name = args.seam.or(grains.is_none().then_some(SeamKind::Side));
    let seam = SeamAsked { name, grains, length, stitch: args.stitch };
    let asked = input::limit(Field::Wants, args.wants.as_deref(), Unit::Mm)?;
    let pairing =
        Pairing::of([&first, &second], seam, asked, &stock, confidence).map_err(|error| unjoined(error, args))?;
    let unit = args.advice.show.units.or_else(|| input::unit_of(args.along())).unwrap_or_default();
    if args.advice.show.json {
        writeln!(screen.out, "{}", pair_json::render(&pairing))?;
    } else {
        write!(screen.out, "{}", pair_text::render(&pairing, args.advice.why, unit, screen.width))?;
    }
    Ok(match pairing.pair.answer {
        Match::Alike => 0,
        Match::BandToBody | Match::Unlike | Match::TooFirm => 1,
        Match::Handle | Match::Close(_) => 3,
    })
}

fn unjoined(error: Unjoined, args: &PairArgs) -> Error {
    match error {
        Unjoined::NotPulled(grain) => grain.into(),
        Unjoined::Interfacing(layer) => Refused::Interfacing(layer.tag).into(),
        Unjoined::Making(error) => Wrong::new(Field::Along, args.along(), Why::Making(error)).into(),
    }
}
