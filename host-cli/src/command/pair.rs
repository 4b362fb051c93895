//! `tenter pair`: two fabrics in one seam.

use tenter_core::making::pairing::{Match, Pair};

use super::find;
use crate::cli::making::PairArgs;
use crate::error::Error;
use crate::finding::fit::Stock;
use crate::finding::fit::known;
use crate::input::{self, Field, amount, making};
use crate::store::Read;
use crate::text::Screen;
use crate::text::pair as report;
use crate::text::pair::Paired;

/// Runs the verb; 0 alike, 1 band to body, 3 anything that wants a hand or one more pull.
///
/// # Errors
///
/// What was typed wrong, a log that cannot be read, or a grain that was not pulled.
pub fn run(args: &PairArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let confidence = input::confidence(&args.advice.confidence.confidence)?;
    let seam = amount::cloth(Field::Along, &args.along)?;
    let stock = Stock::read(read)?;
    let (first, second) = (find::live_fabric(read, &args.first)?, find::live_fabric(read, &args.second)?);
    let grain = input::grain(args.grain);
    let grains = [grain, args.second_grain.map_or(grain, input::grain)];
    let edges = [known::edge(&first, grains[0], &stock)?, known::edge(&second, grains[1], &stock)?];
    let stitch = args.stitch.map(making::stitch);
    let pair = Pair::of(&edges[0], &edges[1], seam, stitch, confidence)
        .map_err(|error| Error::argument("--along", &args.along, error))?;
    let unit = args.advice.show.units.map(input::unit).or_else(|| input::unit_of(&args.along)).unwrap_or_default();
    let paired = Paired { fabrics: [&first, &second], grains, edges, seam, stitch, pair: &pair, confidence, unit };
    if args.advice.show.json {
        writeln!(screen.out, "{}", report::json(&paired))?;
    } else {
        write!(screen.out, "{}", report::text(&paired, args.advice.why, screen.width))?;
    }
    Ok(match pair.answer {
        Match::Alike => 0,
        Match::BandToBody => 1,
        Match::Handle | Match::Close(_) => 3,
    })
}
