//! `tenter handle`: how to sew one cloth.

use tenter_core::Answer;
use tenter_core::making::handling::Layer;

use super::find;
use crate::cli::making::HandleArgs;
use crate::error::Error;
use crate::finding::fit::Stock;
use crate::finding::fit::known;
use crate::input::{self, Field, size as typed};
use crate::store::Read;
use crate::text::Screen;
use crate::text::handle as report;
use crate::text::handle::Handled;
use crate::text::lines::Lines;
use crate::words::advice;
use crate::words::bidi::isolated;

/// Runs the verb; 0, or what is said of lining and facing.
///
/// # Errors
///
/// What was typed wrong, a log that cannot be read, or a cloth that was not pulled.
pub fn run(args: &HandleArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let confidence = input::confidence(&args.advice.confidence.confidence)?;
    let stock = Stock::read(read)?;
    let fabric = find::live_fabric(read, &args.fabric)?;
    let grain = input::grain(args.grain);
    let cloth = known::cloth(&fabric, &stock);
    let own = known::stretch(&fabric, grain, &stock)?;
    let wants = args.wants.as_deref().map(|text| typed::exact(Field::Wants, text)).transpose()?;
    let wanted = wants.map(|wants| wants.ratio);
    let mut layers = Vec::new();
    if let Some(text) = &args.lining {
        let lining = find::live_fabric(read, text)?;
        let gives = known::stretch(&lining, grain, &stock)?;
        layers.push(report::layered(own, Layer::Lining, gives, wanted, confidence));
    }
    if let Some(text) = &args.facing_gives {
        let gives = typed::exact(Field::FacingGives, text)?;
        layers.push(report::layered(own, Layer::Interfacing, gives, wanted, confidence));
    }
    let answer = layers.iter().map(|(_, layered)| layered.answer).reduce(Answer::worse);
    let handled = Handled { cloth, wants: wanted, layers, confidence };
    let lines = report::spoken(&handled);
    if args.advice.show.json {
        let json = serde_json::json!({ "tag": fabric.tag, "answer": answer.map(Answer::word), "lines": lines });
        writeln!(screen.out, "{json}")?;
    } else {
        let mut text = Lines::new(screen.width);
        text.words(&format!("{}  {}", fabric.tag, isolated(&fabric.name)));
        advice::write(&mut text, &lines, args.advice.why);
        write!(screen.out, "{}", text.finish())?;
    }
    Ok(super::check::exit_code(answer))
}
