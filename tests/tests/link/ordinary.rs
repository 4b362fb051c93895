//! What a person sees: who is there, refusals, and what is said when nobody answers.

use tenter::link::LinkError;
use tenter_core::Repeatability;
use tenter_core::wire::{Listing, MAX_SAVED_BYTES, Refusal};

use crate::desk::{MemoryDesk, demand, record};
use crate::line::{Fault, Line, Pass};

#[test]
fn who_is_there_and_what_is_saved() {
    let line = Line::to(MemoryDesk { device: 41, ..MemoryDesk::with_tests(&[28, 0, MAX_SAVED_BYTES]) });
    let mut host = line.host().unwrap();
    assert_eq!((host.identity().device, host.identity().version.as_str()), (41, "0.1.0"));
    assert_eq!((host.identity().uptime_s, host.identity().unix_s), (70, None));
    assert_eq!(host.list().unwrap(), Listing { oldest: Some(1), next: 4, unacknowledged: 3, free_pages: 494 });
    let fetched = host.fetch(2).unwrap().unwrap();
    assert_eq!((fetched.seq, fetched.record), (2, record(2, 0)));
    assert_eq!(host.fetch(3).unwrap().unwrap().record, record(3, MAX_SAVED_BYTES));
    assert_eq!(host.fetch(4).unwrap(), None);
    assert_eq!(host.fetch(u32::MAX).unwrap(), None);
    host.acknowledge(2).unwrap();
    assert_eq!(host.fetch(1).unwrap().unwrap().seq, 3);
    host.set_clock(|| 1_700_000_000).unwrap();
    assert_eq!(host.identify().unwrap().unix_s, Some(1_700_000_000));
}

#[test]
fn a_test_with_the_last_number_ends_the_list() {
    let mut desk = MemoryDesk::default();
    desk.tests.insert(u32::MAX, record(1, 30));
    let mut host = Line::to(desk).host().unwrap();
    let all: Vec<_> = host.fetch_all_from(0).map(|fetched| fetched.unwrap().seq).collect();
    assert_eq!(all, [u32::MAX]);
}

#[test]
fn every_request_can_be_repeated() {
    let line = Line::to(MemoryDesk::with_tests(&[28, 28, 28]));
    let mut host = line.host().unwrap();
    let mut twice = |request: &mut dyn FnMut(&mut tenter::link::LinkSession<Line>) -> Result<(), LinkError>| {
        request(&mut host).unwrap();
        let once = line.world().desk.clone();
        request(&mut host).unwrap();
        assert_eq!(line.world().desk, once);
    };
    twice(&mut |host| host.acknowledge(2));
    // An acknowledgement never goes back.
    twice(&mut |host| host.acknowledge(1));
    twice(&mut |host| host.name(9));
    twice(&mut |host| host.set_demands(&[demand("a", 5), demand("b", 6)]));
    twice(&mut |host| host.set_demands(&[]));
    twice(&mut |host| host.set_clock(|| 5));
    twice(&mut |host| host.set_repeatability(Repeatability::new(1.25, 40.0)));
    assert_eq!(line.world().desk.repeatability, (1250, 40));
    twice(&mut |host| host.set_repeatability(None));
    assert_eq!(line.world().desk.repeatability, (0, 0));
    assert_eq!(line.world().desk.tests.keys().collect::<Vec<_>>(), [&3]);
    assert_eq!(line.world().desk.demand_count, 0);
}

/// The first try is lost; a time taken then would be late by the wait.
#[test]
fn the_clock_is_read_again_at_every_try() {
    let line = Line::to(MemoryDesk::default());
    let mut host = line.host().unwrap();
    line.disturb(vec![Fault::Lost; 12], vec![]); // 7 + 2 bytes, COBS, two zeros
    let mut now = 100;
    host.set_clock(|| {
        now += 1;
        now
    })
    .unwrap();
    assert_eq!(line.world().desk.clock, Some(102));
}

/// "Done" to the acknowledgement comes twice, the second time while the next request is lost on its way.
#[test]
fn a_late_reply_is_not_taken_for_the_next() {
    let line = Line::to(MemoryDesk::with_tests(&[28]));
    let mut host = line.host().unwrap();
    line.disturb(vec![], vec![Pass { late: true, ..Pass::default() }]);
    host.acknowledge(1).unwrap();
    line.disturb(vec![Fault::Lost; 12], vec![]); // 7 + 2 bytes, COBS, two zeros
    host.name(9).unwrap();
    assert_eq!(line.world().desk.device, 9);
}

fn said<T: std::fmt::Debug>(result: Result<T, LinkError>) -> String {
    let text = tenter::words::errors::link(&result.unwrap_err());
    assert!(!text.contains('\n'), "{text}");
    text
}

#[test]
fn what_is_refused() {
    let line = Line::to(MemoryDesk { device: 41, ..MemoryDesk::with_tests(&[28]) });
    let mut host = line.host().unwrap();
    assert!(matches!(host.name(42), Err(LinkError::Refused(Refusal::Named))));
    assert!(matches!(host.name(0), Err(LinkError::Refused(Refusal::Named))));
    assert_eq!(host.identity().device, 41);
    // Beyond the newest: this host means another handheld. The test stays.
    assert!(matches!(host.acknowledge(2), Err(LinkError::Refused(Refusal::Ahead))));
    assert!(matches!(host.acknowledge(u32::MAX), Err(LinkError::Refused(Refusal::Ahead))));
    assert_eq!(line.world().desk.tests.len(), 1);
    let five = [1, 2, 3, 4, 5].map(|percent| demand("x", percent));
    assert_eq!(said(host.set_demands(&five)), "the handheld has room for 4 demands, not for 5: choose fewer");
    assert_eq!(line.world().desk.demands, [const { None }; 4]);
    line.world().desk.chip_is_broken = true;
    assert_eq!(said(host.list()), "the handheld refuses: its memory cannot be read or written");
    assert!(matches!(host.acknowledge(1), Err(LinkError::Refused(Refusal::Chip))));
    assert!(matches!(host.set_repeatability(Repeatability::new(0.5, 22.0)), Err(LinkError::Refused(Refusal::Chip))));
    assert_eq!(line.world().desk.repeatability, (0, 0));
    let fetched: Vec<_> = host.fetch_all_from(1).collect();
    assert!(matches!(fetched[..], [Err(LinkError::Refused(Refusal::Chip))]), "{fetched:?}");
}

#[test]
fn nobody_there() {
    let line = Line::to(MemoryDesk::default());
    line.world().is_dead = true;
    let text = said(line.host().map(|_| ()));
    assert_eq!(text, "the handheld does not answer: is it switched on, and is this its port?");
}

#[test]
fn an_echo_is_no_answer() {
    let line = Line::to(MemoryDesk::with_tests(&[28]));
    line.world().echo = true;
    assert_eq!(line.host().unwrap().fetch(1).unwrap().unwrap().record, record(1, 28));
    line.world().is_dead = true;
    assert!(matches!(line.host(), Err(LinkError::Garbled)));
}
