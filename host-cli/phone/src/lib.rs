//! x
use tenter::store::memory::Memory;
#[unsafe(no_mangle)]
/// x
pub extern "C" fn hello() -> u32 { let m = Memory::new(tenter::log::Here{now: jiff::Timestamp::default, random: || 7, offset: |_| jiff::tz::Offset::UTC}); u32::try_from(tenter::store::Read::count(&m).unwrap_or(0)).unwrap_or(0) }
