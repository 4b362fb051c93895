//! The ring of records: where the next one goes, and which the host does not have yet.
//!
//! A position counts pages and only grows; its page is the position modulo the size of the ring. So `tail..head` are
//! the records that must not be overwritten, and positions before it those that the host has and that may still be
//! read. No number is ever given to two records that a reader could take for parts of one: a failed attempt uses
//! its number up, and opening counts the numbers of incomplete records too.

use core::num::NonZeroU32;

use super::page::{PAYLOAD_BYTES, Part, is_erased};
use super::storage::{self, Storage};
use super::{LogError, RING_START, RecordBytes, StoragePage};

/// What starts at a position.
#[derive(Clone, Copy, Debug)]
pub(super) struct Seen {
    pub seq: u32,
    /// How many pages to go on to reach what follows.
    pages: u32,
    whole: bool,
    /// A page of it looked erased.
    erased: bool,
}

#[derive(Clone, Copy, Debug)]
pub(super) struct Ring {
    pages: NonZeroU32,
    /// Before it every record was overwritten.
    first: u32,
    /// The oldest record that the host does not have; `head` where there is none.
    tail: u32,
    /// Where the next record goes.
    head: u32,
    /// The number of the newest record when the ring was read.
    newest: u32,
    /// The number of the next record.
    next: u32,
    unacknowledged: u16,
    /// The host has every record up to this number.
    acknowledged: u32,
    /// The first number that was given since the ring was read: what lies at the head under it or a later one is an
    /// attempt that failed.
    attempts: u32,
    /// No record between `first` and `searched.1` has the number `searched.0` or a greater one, so that fetching one
    /// after the other need not start over.
    searched: (u32, u32),
}

impl Ring {
    /// Reads the whole ring, once where all is as it should be.
    pub fn read<S: Storage>(storage: &mut S, pages: NonZeroU32, acknowledged: u32) -> Result<Self, LogError<S::Error>> {
        let (ring, in_order, looked_erased) = Self::scan(storage, pages, acknowledged, true)?;
        if in_order && !ring.goes_on(storage, looked_erased)? {
            return Ok(ring);
        }
        Self::scan(storage, pages, acknowledged, false).map(|(ring, ..)| ring)
    }

    /// Whether a record lies where the next one would go that cannot: one newer than all, or any where it looked erased.
    fn goes_on<S: Storage>(&self, storage: &mut S, looked_erased: bool) -> Result<bool, LogError<S::Error>> {
        let page = self.read_page(storage, self.head)?;
        Ok(Part::of(&page).is_some_and(|part| looked_erased || part.seq > self.newest))
    }

    /// Reads every page; and whether those that looked erased follow the newest record and nothing else, as they do in a ring
    /// that was not written to its end. Elsewhere one may be a record that was misread, which would be given up unsent.
    /// Reading each of them again would double the time that a new chip takes. Last, whether any looked erased.
    fn scan<S: Storage>(
        storage: &mut S,
        pages: NonZeroU32,
        acknowledged: u32,
        trusts_erased: bool,
    ) -> Result<(Self, bool, bool), LogError<S::Error>> {
        let size = pages.get();
        let trusted = if trusts_erased { u32::MAX } else { 0 };
        let mut ring = Self {
            pages,
            first: 0,
            tail: trusted,
            head: 0,
            newest: 0,
            next: 0,
            unacknowledged: 0,
            acknowledged,
            attempts: 0,
            searched: (0, 0),
        };
        let (mut newest, mut end) = (0, 0);
        let (mut erased, mut in_order) = (None, true);
        let mut oldest = None;
        let mut greatest = acknowledged;
        let mut record = RecordBytes::new();
        let mut at = 0;
        while at < size {
            let seen = ring.look(storage, at, &mut record)?;
            greatest = greatest.max(seen.seq);
            if seen.erased {
                erased = erased.or(Some(at));
            }
            if seen.whole {
                in_order &= erased.is_none();
                if seen.seq > newest {
                    (newest, end) = (seen.seq, at + seen.pages);
                }
                if seen.seq > acknowledged {
                    ring.unacknowledged = ring.unacknowledged.saturating_add(1);
                    oldest = oldest.filter(|(seq, _)| *seq < seen.seq).or(Some((seen.seq, at)));
                }
            }
            at += seen.pages;
        }
        in_order &= erased.is_none_or(|at| at == end);
        // One ring on, so that the positions before it can be told.
        ring.head = end % pages + size;
        ring.first = ring.head - size;
        ring.tail = ring.head - oldest.map_or(0, |(_, at)| (ring.head + size - at - 1) % pages + 1);
        ring.newest = newest;
        ring.next = greatest.saturating_add(1);
        ring.attempts = ring.next;
        ring.searched = (acknowledged.saturating_add(1), ring.tail);
        Ok((ring, in_order, erased.is_some()))
    }

    pub const fn next(&self) -> u32 {
        self.next
    }

    pub const fn unacknowledged(&self) -> u16 {
        self.unacknowledged
    }

    /// Pages that may be written.
    pub const fn free(&self) -> u32 {
        self.pages.get() - (self.head - self.tail)
    }

    fn page(&self, at: u32) -> u16 {
        RING_START.saturating_add(u16::try_from(at % self.pages).unwrap_or(u16::MAX))
    }

    fn read_page<S: Storage>(&self, storage: &mut S, at: u32) -> Result<StoragePage, LogError<S::Error>> {
        // What was erased where nothing is kept is taken for that at once.
        storage::read_again(storage, self.page(at), |page| {
            Part::of(page).is_some() || at < self.tail && is_erased(page)
        })
    }

    /// Reads what starts at a position into `record`.
    fn look<S: Storage>(&self, storage: &mut S, at: u32, record: &mut RecordBytes) -> Result<Seen, LogError<S::Error>> {
        record.clear();
        let mut seen = Seen { seq: 0, pages: 1, whole: false, erased: false };
        for index in 0..u8::MAX {
            let page = self.read_page(storage, at + u32::from(index))?;
            let Some(part) = Part::of(&page) else {
                seen.erased = is_erased(&page);
                break;
            };
            if index == 0 {
                seen.seq = part.seq;
            }
            if part.seq != seen.seq || part.index != index || record.extend_from_slice(part.payload).is_err() {
                break;
            }
            if index + 1 == part.parts {
                return Ok(Seen { pages: part.parts.into(), whole: true, ..seen });
            }
        }
        Ok(seen)
    }

    /// The first whole record with this number or a greater one, at or after a position.
    fn find<S: Storage>(
        &self,
        storage: &mut S,
        seq: u32,
        mut at: u32,
        record: &mut RecordBytes,
    ) -> Result<(u32, Option<Seen>), LogError<S::Error>> {
        while at < self.head {
            let seen = self.look(storage, at, record)?;
            if seen.whole && seen.seq >= seq {
                return Ok((at, Some(seen)));
            }
            at += seen.pages;
        }
        Ok((at, None))
    }

    /// The number of the oldest record that the host does not have.
    pub fn oldest<S: Storage>(&self, storage: &mut S) -> Result<Option<u32>, LogError<S::Error>> {
        let (_, found) = self.find(storage, 0, self.tail, &mut RecordBytes::new())?;
        Ok(found.map(|seen| seen.seq))
    }

    /// The first whole record with this number or a greater one. Records that the host has are still found until they
    /// are overwritten.
    pub fn fetch<S: Storage>(
        &mut self,
        storage: &mut S,
        from: u32,
        record: &mut RecordBytes,
    ) -> Result<Option<u32>, LogError<S::Error>> {
        let (number, searched) = self.searched;
        let start = if from >= number { searched.max(self.first) } else { self.first };
        let (at, found) = self.find(storage, from, start, record)?;
        self.searched = (from, at);
        Ok(found.map(|seen| seen.seq))
    }

    /// The newest whole record that ends at or before a position, and where it starts.
    pub fn before<S: Storage>(
        &self,
        storage: &mut S,
        mut end: u32,
        record: &mut RecordBytes,
    ) -> Result<Option<u32>, LogError<S::Error>> {
        end = end.min(self.head);
        while end > self.first {
            // The last page of a record says how many come before it.
            let page = self.read_page(storage, end - 1)?;
            let start = Part::of(&page).and_then(|part| (end - 1).checked_sub(part.index.into()));
            if let Some(start) = start.filter(|start| *start >= self.first) {
                let seen = self.look(storage, start, record)?;
                if seen.whole && start + seen.pages == end {
                    return Ok(Some(start));
                }
            }
            end -= 1;
        }
        Ok(None)
    }

    /// The oldest whole record that starts after a position, and where.
    pub fn after<S: Storage>(
        &self,
        storage: &mut S,
        at: u32,
        record: &mut RecordBytes,
    ) -> Result<Option<u32>, LogError<S::Error>> {
        let (at, found) = self.find(storage, 0, at.saturating_add(1).max(self.first), record)?;
        Ok(found.map(|_| at))
    }

    /// Whether the next record, of so many bytes, would overwrite one that the host does not have. It lies there where an
    /// earlier reading took it for nothing; or it is no whole record.
    pub fn overwrites<S: Storage>(&self, storage: &mut S, bytes: usize) -> Result<bool, LogError<S::Error>> {
        let parts = u32::try_from(bytes.div_ceil(PAYLOAD_BYTES)).unwrap_or(u32::MAX).min(self.free());
        for at in self.head..self.head + parts {
            let page = self.read_page(storage, at)?;
            if Part::of(&page).is_some_and(|part| part.seq > self.acknowledged && part.seq < self.attempts) {
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// The ring read anew; no number is given twice.
    pub fn again<S: Storage>(&self, storage: &mut S) -> Result<Self, LogError<S::Error>> {
        let ring = Self::read(storage, self.pages, self.acknowledged)?;
        let next = ring.next.max(self.next);
        Ok(Self { next, attempts: next, ..ring })
    }

    /// Writes a record at the head, in order, so that it is whole only with its last page.
    pub fn append<S: Storage>(&mut self, storage: &mut S, record: &[u8]) -> Result<u32, LogError<S::Error>> {
        let chunks = record.chunks(PAYLOAD_BYTES);
        let parts = u8::try_from(chunks.len()).unwrap_or(u8::MAX);
        let end = self.head + u32::from(parts);
        let seq = self.next;
        if u32::from(parts) > self.free() {
            return Err(LogError::Full);
        }
        self.next = seq.checked_add(1).ok_or(LogError::Full)?;
        self.first = self.first.max(end.saturating_sub(self.pages.get()));
        for (index, payload) in (0..).zip(chunks) {
            let at = self.head + u32::from(index);
            let written = storage::write(storage, self.page(at), &Part { seq, index, parts, payload }.page());
            if matches!(written, Err(LogError::NotKept)) {
                self.pass_over(at + 1);
            }
            written?;
        }
        self.head = end;
        self.unacknowledged = self.unacknowledged.saturating_add(1);
        Ok(seq)
    }

    /// Goes on behind a page that does not keep what is written.
    const fn pass_over(&mut self, head: u32) {
        self.head = head;
        if self.unacknowledged == 0 {
            self.tail = head;
        }
    }

    /// This ring once the host has everything up to a number.
    pub fn released<S: Storage>(&self, storage: &mut S, up_to: u32) -> Result<Self, LogError<S::Error>> {
        let mut ring = Self { acknowledged: up_to, ..*self };
        let mut record = RecordBytes::new();
        // All of them is the usual case, and needs no reading.
        if up_to + 1 >= self.next {
            (ring.tail, ring.unacknowledged) = (ring.head, 0);
        }
        while ring.tail < ring.head {
            let seen = ring.look(storage, ring.tail, &mut record)?;
            if seen.whole && seen.seq > up_to {
                break;
            }
            ring.unacknowledged = ring.unacknowledged.saturating_sub(seen.whole.into());
            ring.tail += seen.pages;
        }
        if ring.tail > ring.searched.1 {
            ring.searched = (up_to + 1, ring.tail);
        }
        Ok(ring)
    }
}
