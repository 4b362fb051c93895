//! `tenter demo`: fills an empty log, so that a newcomer can look round.

use crate::demo;
use crate::error::Error;
use crate::store::Store;
use crate::text::Screen;

/// Runs the verb.
///
/// # Errors
///
/// A log that is not empty, or cannot be written.
pub fn run(store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<u8, Error> {
    if store.count()? > 0 {
        return Err(Error::Usage(
            "this log is not empty, and the demo would mix with it; type tenter --db demo.sqlite3 demo".to_owned(),
        ));
    }
    let mut entries = demo::entries(screen.here).into_iter().map(Ok);
    store.merge(&mut entries)?;
    screen.say("13 cloths, their pull tests and two patterns are in the log; look round with")?;
    writeln!(screen.out, "  tenter cloth list")?;
    writeln!(screen.out, "  tenter fit 'Fellside smock' A")?;
    writeln!(screen.out, "  tenter cloth show 10")?;
    Ok(0)
}
