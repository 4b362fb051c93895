//! Serial ports, pseudo-terminals included.

use std::io;
use std::path::Path;
use std::time::Duration;

use serialport::{ClearBuffer, SerialPort};

use super::{LinkError, NotOpened, SLOW, Transport};

/// Bits a second; ignored over USB.
const BAUD: u32 = 115_200;

impl Transport for Box<dyn SerialPort> {
    fn set_patience(&mut self, patience: Duration) -> io::Result<()> {
        Ok(self.set_timeout(patience)?)
    }
}

/// The names of the serial ports of this machine.
///
/// # Errors
///
/// [`LinkError::Broken`] when the operating system does not tell.
pub fn ports() -> Result<Vec<String>, LinkError> {
    // Without this folder, as in a container that does not show the system's devices, the crate would panic.
    if cfg!(target_os = "linux") && !Path::new("/sys/class/tty").exists() {
        return Ok(Vec::new());
    }
    let ports = serialport::available_ports().map_err(io::Error::from)?;
    Ok(ports.into_iter().map(|port| port.port_name).collect())
}

pub(super) fn open(name: &str) -> Result<Box<dyn Transport>, NotOpened> {
    let wrong =
        |error: serialport::Error| NotOpened::Serial { system: error.to_string(), ports: ports().unwrap_or_default() };
    let port = serialport::new(name, BAUD).timeout(SLOW).open().map_err(wrong)?;
    // What came before is nothing this program asked for.
    port.clear(ClearBuffer::Input).map_err(wrong)?;
    Ok(Box::new(port))
}
