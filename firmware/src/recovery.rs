//! A bus that a chip holds low: a reset in the middle of a read leaves the chip waiting for the rest of its byte.

use embedded_hal::delay::DelayNs;
use embedded_hal::digital::{InputPin, OutputPin};

/// Half a cycle at 100 kHz, which every chip follows.
const HALF_CYCLE_US: u32 = 5;

/// Clocks the bus by hand until the data line is free, nine times at most, and ends with a stop; whether it is free then.
/// The way is that of the I²C specification, UM10204, § 3.1.16 "Bus clear" (from memory). Both pins are open drain.
///
/// # Errors
///
/// A pin that cannot be set.
pub fn clear_bus<C: OutputPin, D: OutputPin<Error = C::Error> + InputPin<Error = C::Error>>(
    clock: &mut C,
    data: &mut D,
    delay: &mut impl DelayNs,
) -> Result<bool, C::Error> {
    data.set_high()?;
    for _ in 0..9 {
        if data.is_high()? {
            break;
        }
        clock.set_low()?;
        delay.delay_us(HALF_CYCLE_US);
        clock.set_high()?;
        delay.delay_us(HALF_CYCLE_US);
    }
    // A stop: data goes up while the clock is up.
    clock.set_low()?;
    data.set_low()?;
    delay.delay_us(HALF_CYCLE_US);
    clock.set_high()?;
    delay.delay_us(HALF_CYCLE_US);
    data.set_high()?;
    delay.delay_us(HALF_CYCLE_US);
    data.is_high()
}

#[cfg(test)]
mod tests {
    use super::*;
    use core::cell::Cell;
    use core::convert::Infallible;
    use embedded_hal::digital::ErrorType;
    use embedded_hal_mock::eh1::delay::NoopDelay;

    /// A chip that holds the data line for so many clocks more.
    struct Clock<'w>(&'w Cell<u32>, bool);
    struct Data<'w>(&'w Cell<u32>, bool);

    impl ErrorType for Clock<'_> {
        type Error = Infallible;
    }

    impl ErrorType for Data<'_> {
        type Error = Infallible;
    }

    impl OutputPin for Clock<'_> {
        fn set_low(&mut self) -> Result<(), Infallible> {
            self.1 = false;
            Ok(())
        }

        fn set_high(&mut self) -> Result<(), Infallible> {
            if !self.1 {
                self.0.set(self.0.get().saturating_sub(1));
            }
            self.1 = true;
            Ok(())
        }
    }

    impl OutputPin for Data<'_> {
        fn set_low(&mut self) -> Result<(), Infallible> {
            self.1 = false;
            Ok(())
        }

        fn set_high(&mut self) -> Result<(), Infallible> {
            self.1 = true;
            Ok(())
        }
    }

    impl InputPin for Data<'_> {
        fn is_high(&mut self) -> Result<bool, Infallible> {
            Ok(self.1 && self.0.get() == 0)
        }

        fn is_low(&mut self) -> Result<bool, Infallible> {
            self.is_high().map(|high| !high)
        }
    }

    #[test]
    fn the_line_is_free_again_after_nine_clocks_at_most() {
        for (held, free) in [(0, true), (1, true), (9, true), (30, false)] {
            let left = Cell::new(held);
            let cleared = clear_bus(&mut Clock(&left, true), &mut Data(&left, true), &mut NoopDelay::new());
            assert_eq!(cleared, Ok(free), "{held}");
        }
    }
}
