//! Names that the host sends: the cloths of its log with their tags, and the people who may pull. Two to a page, each
//! with a checksum of its own: a write that was cut loses two names at most, and a lost one counts as not known.

use heapless::String;
use tenter_core::record::checksum;
use tenter_core::wire::{MAX_NAME_BYTES, NameList};

use super::storage::{self, Storage};
use super::{LogError, PAGE_BYTES, StoragePage};

const ENTRY: usize = PAGE_BYTES / 2;

/// How many names of cloths fit.
pub const CLOTH_SLOTS: u8 = 96;
/// How many names of people fit.
pub const PEOPLE_SLOTS: u8 = 8;
pub(super) const NAME_PAGES: u16 = (CLOTH_SLOTS as u16 + PEOPLE_SLOTS as u16) / 2;

/// How many names of a kind fit.
pub(super) const fn slots(list: NameList) -> u8 {
    match list {
        NameList::Cloths => CLOTH_SLOTS,
        NameList::People => PEOPLE_SLOTS,
    }
}

/// A name that the host sent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// What the log knows it by.
    pub mark: u32,
    /// The tag of a cloth; 0 for a person.
    pub tag: u16,
    /// The name.
    pub name: String<MAX_NAME_BYTES>,
}

impl Named {
    /// A name; none that is too long.
    #[must_use]
    pub fn new(mark: u32, tag: u16, name: &str) -> Option<Self> {
        String::try_from(name).ok().map(|name| Self { mark, tag, name })
    }

    fn of(entry: &[u8]) -> Option<Self> {
        let (body, sum) = entry.split_last_chunk::<4>()?;
        let [m0, m1, m2, m3, t0, t1, len, name @ ..] = body else { return None };
        let name = core::str::from_utf8(name.get(..usize::from(*len))?).ok()?;
        let whole = u32::from_le_bytes(*sum) == checksum(body);
        let (mark, tag) = (u32::from_le_bytes([*m0, *m1, *m2, *m3]), u16::from_le_bytes([*t0, *t1]));
        whole.then(|| Self::new(mark, tag, name)).flatten()
    }

    fn entry(&self) -> [u8; ENTRY] {
        let mut entry = [0xFF; ENTRY];
        let len = u8::try_from(self.name.len()).unwrap_or(u8::MAX);
        let head = self.mark.to_le_bytes().into_iter().chain(self.tag.to_le_bytes()).chain([len]);
        if let Some((body, sum)) = entry.split_last_chunk_mut::<4>() {
            for (place, byte) in body.iter_mut().zip(head.chain(self.name.bytes())) {
                *place = byte;
            }
            *sum = checksum(body).to_le_bytes();
        }
        entry
    }
}

/// The page of a slot, and whether it is its first or second half.
fn place(start: u16, list: NameList, slot: u8) -> (u16, usize) {
    let first = match list {
        NameList::Cloths => 0,
        NameList::People => u16::from(CLOTH_SLOTS),
    };
    let at = first + u16::from(slot);
    (start.saturating_add(at / 2), usize::from(at % 2))
}

fn half(page: &StoragePage, half: usize) -> Option<Named> {
    page.as_chunks::<ENTRY>().0.get(half).and_then(|entry| Named::of(entry))
}

/// The name in a slot; none that cannot be read.
pub(super) fn read<S: Storage>(
    storage: &mut S,
    start: u16,
    list: NameList,
    slot: u8,
) -> Result<Option<Named>, LogError<S::Error>> {
    let (page, which) = place(start, list, slot);
    let page = storage::read_again(storage, page, |page| half(page, which).is_some())?;
    Ok(half(&page, which))
}

/// Writes a name where it is another: a host that sends the same again causes no wear.
pub(super) fn write<S: Storage>(
    storage: &mut S,
    start: u16,
    list: NameList,
    slot: u8,
    named: &Named,
) -> Result<(), LogError<S::Error>> {
    let (number, which) = place(start, list, slot);
    // A misread neighbour must not be written back: it counts only where its checksum says so.
    let other = 1 - which;
    let mut page = storage::read_again(storage, number, |page| half(page, other).is_some())?;
    let entry = named.entry();
    let [first, second] = match page.as_chunks_mut::<ENTRY>().0 {
        [first, second] => [first, second],
        _ => return Ok(()),
    };
    let place = if which == 0 { first } else { second };
    if *place == entry {
        return Ok(());
    }
    *place = entry;
    storage::write(storage, number, &page)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read() {
        for name in ["Vestry twill", "", "éééééééééé", "twenty-one characters"] {
            let named = Named::new(0xA1B2_C3D4, 999, name).unwrap();
            assert_eq!(Named::of(&named.entry()), Some(named.clone()));
            let mut damaged = named.entry();
            damaged[9] ^= 4;
            assert_eq!(Named::of(&damaged), None);
        }
        assert_eq!(Named::new(1, 1, "twenty-two characters!"), None);
        assert_eq!(Named::of(&[0xFF; ENTRY]), None, "erased");
    }
}
