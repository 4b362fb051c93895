//! The test in hand, so that no reading is lost with the power: two places written in turn. A reading counts once it is
//! written; whatever write is cut, the readings before it are whole.

use heapless::Vec;
use tenter_core::PullTest;
use tenter_core::record::{self, MAX_TEST_BYTES, RecordError};

use super::LogError;
use super::page::{PAYLOAD_BYTES, Part};
use super::storage::{self, Storage};

const PLACE_PAGES: u16 = 4;
pub(super) const JOURNAL_PAGES: u16 = 2 * PLACE_PAGES;

/// The number of the next saved test.
const HEAD_BYTES: usize = 4;
const MAX_BYTES: usize = HEAD_BYTES + MAX_TEST_BYTES;
const _: () = assert!(MAX_BYTES <= PLACE_PAGES as usize * PAYLOAD_BYTES);

type Bytes = Vec<u8, { PLACE_PAGES as usize * PAYLOAD_BYTES }>;

/// A test that was not finished.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TestInHand {
    /// The number that it would have been saved under, or a smaller one.
    pub(super) next: u32,
    /// Its readings.
    pub test: PullTest,
}

#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Journal {
    /// The first of its pages; none on a chip too small for it.
    start: Option<u16>,
    /// The number of the newest whole entry.
    seq: u32,
    /// Which place it is in.
    place: u16,
    /// The checksum of what it holds; 0 for nothing.
    holds: u32,
}

impl Journal {
    pub fn read<S: Storage>(
        storage: &mut S,
        start: Option<u16>,
    ) -> Result<(Self, Option<TestInHand>), LogError<S::Error>> {
        let mut journal = Self { start, ..Self::default() };
        let Some(start) = start else { return Ok((journal, None)) };
        let mut newest = Bytes::new();
        for place in 0..2 {
            let mut bytes = Bytes::new();
            let seq = entry(storage, start.saturating_add(place * PLACE_PAGES), &mut bytes)?;
            if let Some(seq) = seq.filter(|seq| *seq > journal.seq) {
                journal = Self { seq, place, ..journal };
                newest = bytes;
            }
        }
        let draft = decode(&newest);
        if draft.is_some() {
            journal.holds = record::checksum(&newest);
        }
        Ok((journal, draft))
    }

    /// Keeps a test in hand, or that there is none; writes only where that changed.
    pub fn keep<S: Storage>(
        &mut self,
        storage: &mut S,
        test: Option<&PullTest>,
        next: u32,
    ) -> Result<(), LogError<S::Error>> {
        let mut bytes = Bytes::new();
        if let Some(test) = test {
            let mut buffer = [0; MAX_TEST_BYTES];
            let test = record::encode_test(test, &mut buffer).map_err(LogError::Record)?;
            let all = bytes.extend_from_slice(&next.to_le_bytes()).and_then(|()| bytes.extend_from_slice(test));
            all.map_err(|_| LogError::Record(RecordError::NoRoom))?;
        }
        let holds = if test.is_some() { record::checksum(&bytes) } else { 0 };
        let Some(start) = self.start.filter(|_| holds != self.holds) else { return Ok(()) };
        let (seq, place) = (self.seq.saturating_add(1), 1 - self.place);
        let first = start.saturating_add(place * PLACE_PAGES);
        let parts = bytes.chunks(PAYLOAD_BYTES).len().max(1);
        let parts_byte = u8::try_from(parts).unwrap_or(u8::MAX);
        let none: &[u8] = &[];
        let payloads = bytes.chunks(PAYLOAD_BYTES).chain(core::iter::once(none).filter(|_| bytes.is_empty()));
        for (index, payload) in (0_u8..).zip(payloads) {
            let page = Part { seq, index, parts: parts_byte, payload }.page();
            storage::write(storage, first.saturating_add(index.into()), &page)?;
        }
        (self.seq, self.place, self.holds) = (seq, place, holds);
        Ok(())
    }
}

/// Reads what a place holds, where all of it is there: its number.
fn entry<S: Storage>(storage: &mut S, first: u16, bytes: &mut Bytes) -> Result<Option<u32>, LogError<S::Error>> {
    let mut seq = None;
    for index in 0..PLACE_PAGES {
        let page = first.saturating_add(index);
        let page = storage::read_again(storage, page, |page| Part::of(page).is_some())?;
        let Some(part) = Part::of(&page) else { return Ok(None) };
        let belongs = u16::from(part.index) == index && seq.is_none_or(|seq| seq == part.seq);
        if !belongs || bytes.extend_from_slice(part.payload).is_err() {
            return Ok(None);
        }
        seq = Some(part.seq);
        if u16::from(part.parts) == index + 1 {
            return Ok(seq);
        }
    }
    Ok(None)
}

fn decode(bytes: &[u8]) -> Option<TestInHand> {
    let (next, test) = bytes.split_first_chunk()?;
    let test = record::decode_test(test).ok()?;
    Some(TestInHand { next: u32::from_le_bytes(*next), test })
}
