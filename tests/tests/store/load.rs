//! Many writers on one log, clients and the server killed in the middle: what was said to be stored is there, once.
//! `cargo run --release -p tenter-tests --bin bench_load` does it for a minute.

use tenter_tests::load::{Load, Until, run};
use tenter_tests::thorough;

/// Thirty people each add cloths, each under the highest tag and one. Beside them programs do the same that are killed, and the
/// server is killed and comes back. Somebody whose connection was lost sends the same once more.
#[test]
fn thirty_writers_while_clients_and_the_server_are_killed() {
    let each = thorough(12, 400);
    let done = run(&Load { writers: 30, until: Until::Changes(each), kills: thorough(2, 12) });
    assert_eq!(done.changes, 30 * each);
    println!("{done}");
}
