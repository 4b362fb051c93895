//! The same over lines of the operating system: TCP, and on Unix a socket file and a pseudo-terminal.

use std::io::{Read, Write};
use std::net::TcpListener;
use std::thread::{self, JoinHandle};
use std::time::{Duration, Instant};

use tenter::link::{LinkError, LinkSession, open};
use tenter_core::wire::MAX_SAVED_BYTES;
use tenter_tests::emulator::HANGS;

use crate::desk::{MemoryDesk, demand, record};

/// A handheld at the other end until the host hangs up; what it holds then.
fn handheld<S: Read + Write>(mut stream: S) -> MemoryDesk {
    let (mut session, mut desk) =
        (tenter_firmware::link::Responder::new(), MemoryDesk::with_tests(&[28, MAX_SAVED_BYTES, 40]));
    let mut buffer = [0; 64];
    while let Ok(count) = stream.read(&mut buffer) {
        if count == 0 {
            break;
        }
        for byte in &buffer[..count] {
            if let Some(answer) = session.receive(*byte, &mut desk) {
                stream.write_all(answer).unwrap();
            }
        }
    }
    desk
}

fn assert_synchronises(address: &str, handheld: JoinHandle<MemoryDesk>) {
    let mut host = LinkSession::open_with(open(address).unwrap(), HANGS, 1).unwrap();
    let all: Vec<_> = host.fetch_all_from(1).map(|fetched| fetched.unwrap().record).collect();
    assert_eq!(all, [record(1, 28), record(2, MAX_SAVED_BYTES), record(3, 40)]);
    host.acknowledge(3).unwrap();
    host.set_demands(&[demand("skirt main", 5)]).unwrap();
    drop(host);
    let desk = handheld.join().unwrap();
    assert!(desk.tests.is_empty());
    assert_eq!(desk.demands[0], Some(demand("skirt main", 5)));
}

#[test]
fn over_tcp() {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = format!("tcp:{}", listener.local_addr().unwrap());
    assert_synchronises(&address, thread::spawn(move || handheld(listener.accept().unwrap().0)));
}

#[cfg(unix)]
#[test]
fn over_a_socket_file() {
    let path = std::env::temp_dir().join(format!("tenter-link-{}", std::process::id()));
    let listener = std::os::unix::net::UnixListener::bind(&path).unwrap();
    let address = format!("unix:{}", path.display());
    assert_synchronises(&address, thread::spawn(move || handheld(listener.accept().unwrap().0)));
    std::fs::remove_file(&path).unwrap();
}

/// Every byte value passes: a terminal that is not set to raw would alter or swallow some.
#[cfg(unix)]
#[test]
fn over_a_pseudo_terminal() {
    use serialport::{SerialPort, TTYPort};

    let (mut far, near) = TTYPort::pair().unwrap();
    far.set_timeout(HANGS).unwrap();
    let name = near.name().unwrap();
    // Both ends of the pair are open to one program only, so the near one is given up before the host opens it.
    drop(near);
    let host = open(&name).unwrap();
    let handheld = thread::spawn(move || handheld(far));
    let mut host = LinkSession::open_with(host, HANGS, 1).unwrap();
    assert_eq!(host.fetch(2).unwrap().unwrap().record, record(2, MAX_SAVED_BYTES));
    host.acknowledge(2).unwrap();
    drop(host);
    assert_eq!(handheld.join().unwrap().tests.len(), 1);
}

#[test]
fn a_silent_line_is_given_up_in_time() {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let line = open(&format!("tcp:{}", listener.local_addr().unwrap())).unwrap();
    let start = Instant::now();
    let result = LinkSession::open_with(line, Duration::from_millis(50), 3);
    assert!(matches!(result.map(|_| ()), Err(LinkError::Silent)));
    assert!(start.elapsed() >= Duration::from_millis(140), "{:?}", start.elapsed());
}

/// One that never stops talking is given up as well.
#[test]
fn a_babbling_line_is_given_up_in_time() {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let line = open(&format!("tcp:{}", listener.local_addr().unwrap())).unwrap();
    let mut stream = listener.accept().unwrap().0;
    stream.write_all(b"login: \0\n").unwrap();
    let babbler = thread::spawn(move || while stream.write_all(b"login: \0\n").is_ok() {});
    let result = LinkSession::open_with(line, Duration::from_millis(50), 3);
    assert!(matches!(result.map(|_| ()), Err(LinkError::Garbled)));
    babbler.join().unwrap();
}

#[test]
fn a_line_that_is_hung_up_is_known_without_patience() {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let line = open(&format!("tcp:{}", listener.local_addr().unwrap())).unwrap();
    drop(listener.accept().unwrap());
    // Who waited for an answer would wait for a day.
    let error = LinkSession::open_with(line, Duration::from_secs(86_400), 1).map(|_| ()).unwrap_err();
    assert!(matches!(error, LinkError::Closed | LinkError::Broken(_)), "{error}");
}

#[test]
fn addresses_that_lead_nowhere() {
    let said = |address: &str| tenter::words::errors::link(&open(address).map(|_| ()).unwrap_err());
    for address in ["tcp:", "tcp:localhost", "tcp:localhost:", "tcp:localhost:99999", "tcp:localhost:serial"] {
        let text = format!("cannot open '{address}': type tcp:HOST:PORT, such as tcp:localhost:5555");
        assert_eq!(said(address), text);
    }
    let free = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap();
    assert!(said(&format!("tcp:{free}")).ends_with("; does anything listen there?"));
    assert!(said("/no/such/port").starts_with("cannot open '/no/such/port': "));
    assert!(!said("tcp:a\nb:1").contains('\n'));
    #[cfg(unix)]
    assert!(said("unix:/no/such/socket").ends_with("; does anything listen there?"));
}
