//! A clock that goes on without power, where the board has one.

use core::time::Duration;

use ds323x::{DateTimeAccess as _, Ds323x, NaiveDate, ic, interface::I2cInterface};
use embedded_hal::i2c::I2c;

/// Such a clock.
pub trait Calendar {
    /// Seconds since 1970-01-01 00:00 UTC; none where it is not there, or stood still since it was set.
    fn read(&mut self) -> Option<u32>;

    /// Sets it; what it does not take is not there the next time.
    fn set(&mut self, unix_s: u32);
}

/// A board without one.
#[derive(Clone, Copy, Debug, Default)]
pub struct NoCalendar;

impl Calendar for NoCalendar {
    fn read(&mut self) -> Option<u32> {
        None
    }

    fn set(&mut self, _: u32) {}
}

/// A DS3231 on an I²C bus, at 68h.
pub struct Ds3231<I>(Ds323x<I2cInterface<I>, ic::DS3231>);

impl<I> core::fmt::Debug for Ds3231<I> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str("Ds3231")
    }
}

impl<I: I2c> Ds3231<I> {
    /// One on this bus, or none there.
    pub fn new(bus: I) -> Self {
        Self(Ds323x::new_ds3231(bus))
    }
}

impl<I: I2c> Calendar for Ds3231<I> {
    fn read(&mut self) -> Option<u32> {
        // It says itself that its battery failed: then its date is none.
        if self.0.has_been_stopped().ok()? {
            return None;
        }
        u32::try_from(self.0.datetime().ok()?.and_utc().timestamp()).ok()
    }

    fn set(&mut self, unix_s: u32) {
        let Some(epoch) = NaiveDate::from_ymd_opt(1970, 1, 1).and_then(|day| day.and_hms_opt(0, 0, 0)) else { return };
        let date = epoch + Duration::from_secs(unix_s.into());
        // What fails here shows the next time as a date that is missing.
        let _ = self.0.set_datetime(&date).and_then(|()| self.0.clear_has_been_stopped_flag());
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use core::cell::RefCell;
    use embedded_hal::i2c::{ErrorKind, ErrorType, NoAcknowledgeSource, Operation};
    use std::rc::Rc;

    /// The registers of the chip (Maxim's data sheet of the DS3231, table 1, from memory): seconds, minutes, hours, day,
    /// date, month, year, in tens and units; 0Fh holds the flag that it stood still.
    #[derive(Clone)]
    struct Chip(Rc<RefCell<Option<[u8; 19]>>>);

    impl ErrorType for Chip {
        type Error = ErrorKind;
    }

    impl I2c for Chip {
        fn transaction(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), ErrorKind> {
            assert_eq!(address, 0x68);
            let mut chip = self.0.borrow_mut();
            let registers = chip.as_mut().ok_or(ErrorKind::NoAcknowledge(NoAcknowledgeSource::Address))?;
            let mut at = 0;
            for operation in operations {
                match operation {
                    Operation::Write(bytes) => {
                        at = usize::from(bytes[0]);
                        for byte in &bytes[1..] {
                            registers[at] = *byte;
                            at += 1;
                        }
                    }
                    Operation::Read(bytes) => {
                        bytes.copy_from_slice(&registers[at..at + bytes.len()]);
                    }
                }
            }
            Ok(())
        }
    }

    #[test]
    fn what_is_set_is_read_and_a_clock_that_stood_still_knows_no_date() {
        let mut fresh = [0; 19];
        (fresh[3], fresh[4], fresh[5], fresh[0x0F]) = (1, 1, 1, 0x88); // 2000-01-01, and it stood still.
        let chip = Chip(Rc::new(RefCell::new(Some(fresh))));
        let mut clock = Ds3231::new(chip.clone());
        assert_eq!(clock.read(), None, "never set");
        clock.set(1_795_564_800); // 2026-11-25 00:00 UTC.
        assert_eq!(chip.0.borrow().unwrap()[..7], [0, 0, 0, 4, 0x25, 0x11, 0x26]); // A Wednesday, the fourth from Sunday.
        assert_eq!(clock.read(), Some(1_795_564_800));
        chip.0.borrow_mut().as_mut().unwrap()[2] = 0x23; // 23:00, by the chip's own going.
        assert_eq!(clock.read(), Some(1_795_564_800 + 23 * 3600));
        *chip.0.borrow_mut() = None;
        assert_eq!(clock.read(), None, "not there");
        clock.set(0);
    }
}
