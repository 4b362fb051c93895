//! Runs of the program that are killed (SIGKILL, as a power cut would) at instants on both sides of the one that decides.

use core::time::Duration;
use std::io::Read as _;
use std::process::{Child, Command, Stdio};
use std::thread;

/// How many runs are killed: 200 with `TENTER_THOROUGH=1`.
pub fn kills() -> u32 {
    if std::env::var_os("TENTER_THOROUGH").is_some() { 200 } else { 40 }
}

/// Instants that fill the time up to a limit evenly, in no order: multiples of the golden ratio, whole parts left out.
fn instant(count: u32, limit: Duration) -> Duration {
    limit.mul_f64((f64::from(count) * 0.618_033_988_749_895).fract())
}

/// Starts a program and kills it, see [`kill`]. What it had printed by then, and its complaints.
pub fn started_and_killed(mut command: Command, count: u32, limit: Duration) -> (String, String) {
    kill(command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap(), count, limit)
}

/// Kills a run whose output is piped: now and then at once, now and then as soon as it printed something, so that both
/// happen however slow the machine is, and else at an instant up to a limit. What it had printed by then, and its complaints.
pub fn kill(mut running: Child, count: u32, limit: Duration) -> (String, String) {
    let mut stdout = running.stdout.take().unwrap();
    let (mut out, mut err) = (Vec::new(), String::new());
    match count % 8 {
        0 => {}
        1 => {
            stdout.by_ref().take(1).read_to_end(&mut out).unwrap();
        }
        _ => thread::sleep(instant(count, limit)),
    }
    running.kill().unwrap();
    running.wait().unwrap();
    stdout.read_to_end(&mut out).unwrap();
    running.stderr.take().unwrap().read_to_string(&mut err).unwrap();
    (String::from_utf8(out).unwrap(), err)
}
