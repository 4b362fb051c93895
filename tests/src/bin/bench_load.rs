//! Many writers on one shared log for a while, with programs and the server killed in the middle. It fails where anything
//! that was said to be stored is not there, or is there twice, and prints how quick it was.
//!
//!     bench_load [SECONDS [WRITERS [KILLS]]]

use std::time::Duration;

use tenter_tests::load::{Load, Until, run};

fn main() {
    let mut numbers = std::env::args().skip(1).map(|text| {
        text.parse::<u32>().unwrap_or_else(|_| {
            eprintln!("type bench_load [SECONDS [WRITERS [KILLS]]]");
            std::process::exit(2)
        })
    });
    let seconds = numbers.next().unwrap_or(60);
    let (writers, kills) = (numbers.next().unwrap_or(30), numbers.next().unwrap_or(3));
    let until = Until::Over(Duration::from_secs(seconds.into()));
    println!("{}", run(&Load { writers, until, kills }));
}
