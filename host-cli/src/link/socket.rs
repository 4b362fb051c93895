//! Lines through the network or between programs, as emulators offer them.

use std::io;
use std::net::{TcpStream, ToSocketAddrs};
#[cfg(unix)]
use std::os::unix::net::UnixStream;
use std::sync::mpsc;
use std::time::Duration;

use super::{NotOpened, SLOW, Transport};

impl Transport for TcpStream {
    fn set_patience(&mut self, patience: Duration) -> io::Result<()> {
        self.set_read_timeout(Some(patience))
    }
}

#[cfg(unix)]
impl Transport for UnixStream {
    fn set_patience(&mut self, patience: Duration) -> io::Result<()> {
        self.set_read_timeout(Some(patience))
    }
}

/// `place` is HOST:PORT.
pub(super) fn tcp(place: &str) -> Result<Box<dyn Transport>, NotOpened> {
    if place.rsplit_once(':').is_none_or(|(_, port)| port.parse::<u16>().is_err()) {
        return Err(NotOpened::NoPort);
    }
    let place = place.to_owned();
    let connect = move || {
        let mut last = io::ErrorKind::NotFound.into();
        for address in place.to_socket_addrs()? {
            match TcpStream::connect_timeout(&address, SLOW) {
                Ok(stream) => return Ok(stream),
                Err(error) => last = error,
            }
        }
        Err(last)
    };
    let ready = |stream: TcpStream| {
        stream.set_nodelay(true)?;
        stream.set_write_timeout(Some(SLOW))?;
        Ok(stream)
    };
    // A name may take its time too, and stand for several places.
    let stream = within(2 * SLOW, connect).and_then(ready);
    Ok(Box::new(stream.map_err(|error| NotOpened::NobodyListens(error.to_string()))?))
}

#[cfg(unix)]
pub(super) fn unix(path: &str) -> Result<Box<dyn Transport>, NotOpened> {
    let stream = unix_within(SLOW, path).map_err(|error| NotOpened::NobodyListens(error.to_string()))?;
    Ok(Box::new(stream))
}

#[cfg(unix)]
fn unix_within(patience: Duration, path: &str) -> io::Result<UnixStream> {
    let path = path.to_owned();
    let stream = within(patience, move || UnixStream::connect(path))?;
    stream.set_write_timeout(Some(SLOW))?;
    Ok(stream)
}

/// Does what the system may hold up for ever, such as connecting to somebody who takes nobody in, and waits so long for it.
fn within<T: Send + 'static>(
    patience: Duration,
    work: impl FnOnce() -> io::Result<T> + Send + 'static,
) -> io::Result<T> {
    let (done, wait) = mpsc::channel();
    // Nobody waits for it any more once the time is up: it ends with the program.
    std::thread::spawn(move || done.send(work()));
    wait.recv_timeout(patience).unwrap_or_else(|_| Err(io::ErrorKind::TimedOut.into()))
}

#[cfg(test)]
#[cfg(unix)]
mod tests {
    use rustix::net::{AddressFamily, SocketAddrUnix, SocketType, bind, listen, socket};

    use super::*;

    /// Somebody listens and takes nobody in, until no more may wait: connecting then blocks without an end (unix(7)).
    #[test]
    fn a_socket_that_takes_nobody_in_is_given_up() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("full");
        let listener = socket(AddressFamily::UNIX, SocketType::STREAM, None).unwrap();
        bind(&listener, &SocketAddrUnix::new(&path).unwrap()).unwrap();
        listen(&listener, 0).unwrap();
        let path = path.to_str().unwrap();
        let waiting: Vec<_> =
            core::iter::from_fn(|| unix_within(Duration::from_millis(300), path).ok()).take(9).collect();
        assert!(waiting.len() < 9, "the place where they wait never fills");
        let given_up = unix_within(Duration::from_millis(10), path).unwrap_err();
        assert_eq!(given_up.kind(), io::ErrorKind::TimedOut);
    }
}
