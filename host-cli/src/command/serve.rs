//! `tenter serve`: the pages in a browser.

use std::time::Duration;

use qrcode::QrCode;
use qrcode::render::unicode::Dense1x2;

use crate::cli::serve::ServeArgs;
use crate::error::Error;
use crate::input::Misuse;
use crate::serve::{PageServer, Serving};
use crate::store::LogPlace;
use crate::text::TextOutput;
use crate::words::done;

/// Runs the verb until Ctrl-C.
///
/// # Errors
///
/// A log that cannot be opened, or an address at which nobody may listen.
pub fn run(args: &ServeArgs, place: LogPlace, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    // Better now than on the first page.
    drop(place.open(screen.here)?);
    let patience = Duration::try_from_secs_f64(args.patience).unwrap_or(Duration::from_secs(10));
    let serving = Serving { place, here: screen.here, listen: args.listen, port: args.port, patience };
    let at = args.port.map_or_else(|| args.listen.to_string(), |port| format!("{} port {port}", args.listen));
    let server = PageServer::listen(serving)
        .map_err(|error| Error::from(Misuse::CannotListen { at: at.to_string(), system: error.to_string() }))?;
    let address = server.address();
    screen.say(&format!("open  {address}"))?;
    if server.is_for_others() {
        if screen.unicode
            && let Ok(code) = QrCode::new(&address)
        {
            let code = code.render::<Dense1x2>().dark_color(Dense1x2::Light).light_color(Dense1x2::Dark).build();
            writeln!(screen.out, "{code}")?;
        }
        screen.say(done::OPEN_TO_OTHERS)?;
    } else {
        screen.say(done::OPEN_HERE)?;
    }
    screen.say(done::HOW_TO_END)?;
    screen.out.flush()?;
    if !args.no_open && open::that_detached(&address).is_err() {
        screen.say(done::NO_BROWSER)?;
    }
    server.run()?;
    screen.say(done::ENDED)?;
    Ok(0)
}
