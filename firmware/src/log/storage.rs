//! What the log needs of a memory chip.

use super::LogError;

/// The bytes of a page.
///
/// ```
/// assert_eq!(tenter_firmware::log::PAGE_BYTES, 64);
/// ```
pub const PAGE_BYTES: usize = 64;

/// One page.
///
/// ```
/// let erased: tenter_firmware::log::StoragePage = [0xFF; 64];
/// assert_eq!(erased.len(), tenter_firmware::log::PAGE_BYTES);
/// ```
pub type StoragePage = [u8; PAGE_BYTES];

/// A memory that keeps pages of 64 bytes without power.
///
/// What it promises: a finished write is there after power was lost. A write that was cut short may leave any mixture
/// of old bytes, new bytes and garbage in that one page, and nothing in any other.
///
/// ```
/// use core::convert::Infallible;
/// use tenter_firmware::log::{Log, StoragePage, Storage};
///
/// struct Ram([StoragePage; 64]);
/// impl Storage for Ram {
///     type Error = Infallible;
///     fn pages(&self) -> u16 { 64 }
///     fn read(&mut self, page: u16, buffer: &mut StoragePage) -> Result<(), Infallible> {
///         *buffer = self.0[usize::from(page)];
///         Ok(())
///     }
///     fn write(&mut self, page: u16, bytes: &StoragePage) -> Result<(), Infallible> {
///         self.0[usize::from(page)] = *bytes;
///         Ok(())
///     }
/// }
/// assert!(Log::open(Ram([[0xFF; 64]; 64])).is_ok());
/// ```
pub trait Storage {
    /// What can go wrong between here and the chip.
    type Error;

    /// How many pages there are.
    fn pages(&self) -> u16;

    /// Reads a page.
    ///
    /// # Errors
    ///
    /// Where the chip does not answer; `buffer` may then hold anything.
    fn read(&mut self, page: u16, buffer: &mut StoragePage) -> Result<(), Self::Error>;

    /// Writes a page; what is read afterwards is what was written.
    ///
    /// # Errors
    ///
    /// Where the chip does not answer; the page may then hold anything.
    fn write(&mut self, page: u16, bytes: &StoragePage) -> Result<(), Self::Error>;
}

/// Lends a chip to a log, so that it can be opened again.
impl<S: Storage> Storage for &mut S {
    type Error = S::Error;

    fn pages(&self) -> u16 {
        S::pages(self)
    }

    fn read(&mut self, page: u16, buffer: &mut StoragePage) -> Result<(), S::Error> {
        S::read(self, page, buffer)
    }

    fn write(&mut self, page: u16, bytes: &StoragePage) -> Result<(), S::Error> {
        S::write(self, page, bytes)
    }
}

pub(super) fn read<S: Storage>(storage: &mut S, page: u16) -> Result<StoragePage, LogError<S::Error>> {
    let mut buffer = [0; PAGE_BYTES];
    storage.read(page, &mut buffer).map_err(LogError::Chip)?;
    Ok(buffer)
}

/// How often a page is read at most until two readings agree.
const READS: u8 = 4;

/// Reads a page again, until it holds what belongs there or two readings agree that it does not: a bus misreads now
/// and then, and what was saved must not pass for nothing.
pub(super) fn read_again<S: Storage>(
    storage: &mut S,
    page: u16,
    holds: impl Fn(&StoragePage) -> bool,
) -> Result<StoragePage, LogError<S::Error>> {
    let mut last = read(storage, page)?;
    for _ in 1..READS {
        if holds(&last) {
            break;
        }
        let again = read(storage, page)?;
        if again == last {
            break;
        }
        last = again;
    }
    Ok(last)
}

/// Writes and reads back: a worn page, or a supply that sagged meanwhile, must not pass for saved.
pub(super) fn write<S: Storage>(storage: &mut S, page: u16, bytes: &StoragePage) -> Result<(), LogError<S::Error>> {
    storage.write(page, bytes).map_err(LogError::Chip)?;
    if read_again(storage, page, |page| page == bytes)? == *bytes { Ok(()) } else { Err(LogError::NotKept) }
}
