//! Lines through the network or between programs, as emulators offer them.

use std::io;
use std::net::{TcpStream, ToSocketAddrs};
#[cfg(unix)]
use std::os::unix::net::UnixStream;
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
    let connect = || {
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
    let stream = connect().and_then(ready).map_err(|error| NotOpened::NobodyListens(error.to_string()))?;
    Ok(Box::new(stream))
}

#[cfg(unix)]
pub(super) fn unix(path: &str) -> Result<Box<dyn Transport>, NotOpened> {
    let connect = || {
        let stream = UnixStream::connect(path)?;
        stream.set_write_timeout(Some(SLOW))?;
        Ok(stream)
    };
    let stream = connect().map_err(|error: io::Error| NotOpened::NobodyListens(error.to_string()))?;
    Ok(Box::new(stream))
}
