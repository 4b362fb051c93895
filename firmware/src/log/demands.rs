//! Demand slots: a length, then a sealed record, over two pages. A slot that was cut between them fails the record's
//! checksum and counts as empty.

use tenter_core::record::{LabelledDemand, MAX_DEMAND_BYTES, RecordError, decode_demand};

use super::storage::{self, Storage};
use super::{DEMAND_START, LogError, PAGE_BYTES, SLOT_PAGES, StoragePage};

type Slot = [StoragePage; SLOT_PAGES as usize];

const _: () = assert!(MAX_DEMAND_BYTES < SLOT_PAGES as usize * PAGE_BYTES);

fn pages(slot: u8) -> impl Iterator<Item = u16> {
    (DEMAND_START + u16::from(slot) * SLOT_PAGES..).take(SLOT_PAGES.into())
}

pub(super) fn read<S: Storage>(storage: &mut S, slot: u8) -> Result<Option<LabelledDemand>, LogError<S::Error>> {
    let mut bytes: Slot = [[0; PAGE_BYTES]; _];
    // Each page twice where they make no demand: only both together can be told right from wrong.
    for _ in 0..2 {
        for (place, page) in bytes.iter_mut().zip(pages(slot)) {
            *place = storage::read(storage, page)?;
        }
        let record = bytes.as_flattened().split_first().and_then(|(len, rest)| rest.get(..usize::from(*len)));
        if let Some(demand) = record.and_then(|record| decode_demand(record).ok()) {
            return Ok(Some(demand));
        }
    }
    Ok(None)
}

/// Writes only the pages that change: a host that sends the same demands again causes no wear.
pub(super) fn write<S: Storage>(storage: &mut S, slot: u8, record: &[u8]) -> Result<(), LogError<S::Error>> {
    decode_demand(record).map_err(LogError::Record)?;
    let len = u8::try_from(record.len()).map_err(|_| LogError::Record(RecordError::NoRoom))?;
    let mut bytes: Slot = [[0xFF; PAGE_BYTES]; _];
    for (place, byte) in bytes.as_flattened_mut().iter_mut().zip([&len].into_iter().chain(record)) {
        *place = *byte;
    }
    for (new, page) in bytes.iter().zip(pages(slot)) {
        if storage::read(storage, page)? != *new {
            storage::write(storage, page, new)?;
        }
    }
    Ok(())
}
