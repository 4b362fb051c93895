//! The device's own log: `defmt` behind its feature, nothing at all without it.

/// Logs what it did.
macro_rules! info {
    ($text:literal $(, $value:expr)*) => {{
        #[cfg(feature = "defmt")]
        defmt::info!($text $(, $value)*);
        #[cfg(not(feature = "defmt"))]
        let _ = ($(&$value,)*);
    }};
}

pub(crate) use info;
