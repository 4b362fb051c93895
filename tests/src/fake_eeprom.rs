//! A memory chip that can lose power in the middle of a write, be disturbed, wear out, and tell what was written.

use std::cell::Cell;
use std::rc::Rc;

use tenter_firmware::log::{PAGE_BYTES, Storage, StoragePage};

/// What a cut write leaves of its page behind the bytes that were written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rest {
    /// What was there: the chip programs byte by byte.
    Old,
    /// Nothing: the chip erases the page first.
    Erased,
    /// Anything, and in the bytes before it too.
    Garbage,
}

impl Rest {
    pub const ALL: [Self; 3] = [Self::Old, Self::Erased, Self::Garbage];
}

/// A page whose write was cut after so many bytes.
#[must_use]
pub fn torn(old: &StoragePage, new: &StoragePage, written: usize, rest: Rest) -> StoragePage {
    let mut page = match rest {
        Rest::Old => *old,
        Rest::Erased => [0xFF; PAGE_BYTES],
        // Any fixed bytes that no page holds.
        Rest::Garbage => std::array::from_fn(|at| (at * 151 + written * 29 + 77) as u8),
    };
    page[..written].copy_from_slice(&new[..written]);
    if rest == Rest::Garbage && written > 0 {
        page[written / 2] ^= 0x55;
    }
    page
}

/// What happens to one write.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// Power fails after so many bytes: nothing works afterwards.
    Cut(usize, Rest),
    /// The same, but only this page write suffers, and says so.
    Disturbed(usize, Rest),
    /// It is written well, but the answer is lost.
    Unheard,
    /// The page keeps something else, and nobody says so.
    NotKept,
    /// Nothing comes through.
    Deaf,
}

/// What a reading says instead of what is there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lie {
    /// One bit is wrong.
    Bit(usize),
    /// The line stays high: an erased page.
    High,
    /// The line stays low.
    Low,
    /// No answer.
    Deaf,
}

/// Why the chip did not do it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoAnswer;

/// The chip.
#[derive(Clone, Debug)]
pub struct FakeEeprom {
    /// What it holds.
    pub image: Vec<StoragePage>,
    /// Every write so far: the page, what was in it, what was written.
    pub history: Vec<(u16, StoragePage, StoragePage)>,
    /// How many pages were read.
    pub reads: usize,
    /// What happens to the write after so many more; can be set while a log has the chip.
    pub trouble: Rc<Cell<Option<(usize, Trouble)>>>,
    /// The reading after so many more lies, once; can be set while a log has the chip.
    pub lie: Rc<Cell<Option<(usize, Lie)>>>,
    /// Pages that keep nothing any more.
    pub worn: Vec<u16>,
    dead: bool,
}

impl FakeEeprom {
    /// A chip as it comes, erased.
    #[must_use]
    pub fn erased(pages: u16) -> Self {
        Self::holding(vec![[0xFF; PAGE_BYTES]; pages.into()])
    }

    /// A chip that holds these pages.
    #[must_use]
    pub fn holding(image: Vec<StoragePage>) -> Self {
        Self {
            image,
            history: Vec::new(),
            reads: 0,
            trouble: Rc::default(),
            lie: Rc::default(),
            worn: Vec::new(),
            dead: false,
        }
    }

    /// Power comes back.
    pub fn power_on(&mut self) {
        self.dead = false;
        self.trouble.set(None);
    }

    /// How often each page was written.
    #[must_use]
    pub fn wear(&self) -> Vec<usize> {
        let mut wear = vec![0; self.image.len()];
        self.history.iter().for_each(|(page, ..)| wear[usize::from(*page)] += 1);
        wear
    }

    /// Whether the power was cut.
    #[must_use]
    pub const fn is_dead(&self) -> bool {
        self.dead
    }

    fn due(&self) -> Option<Trouble> {
        let (left, trouble) = self.trouble.get()?;
        self.trouble.set(left.checked_sub(1).map(|left| (left, trouble)));
        (left == 0).then_some(trouble)
    }
}

impl Storage for FakeEeprom {
    type Error = NoAnswer;

    fn pages(&self) -> u16 {
        u16::try_from(self.image.len()).unwrap()
    }

    fn read(&mut self, page: u16, buffer: &mut StoragePage) -> Result<(), NoAnswer> {
        if self.dead {
            return Err(NoAnswer);
        }
        self.reads += 1;
        *buffer = self.image[usize::from(page)];
        let Some((left, lie)) = self.lie.get() else { return Ok(()) };
        self.lie.set(left.checked_sub(1).map(|left| (left, lie)));
        if left == 0 {
            match lie {
                Lie::Bit(bit) => buffer[bit / 8] ^= 1 << (bit % 8),
                Lie::High => *buffer = [0xFF; PAGE_BYTES],
                Lie::Low => *buffer = [0; PAGE_BYTES],
                Lie::Deaf => return Err(NoAnswer),
            }
        }
        Ok(())
    }

    fn write(&mut self, page: u16, bytes: &StoragePage) -> Result<(), NoAnswer> {
        if self.dead {
            return Err(NoAnswer);
        }
        let old = self.image[usize::from(page)];
        let trouble = if self.worn.contains(&page) { Some(Trouble::NotKept) } else { self.due() };
        let (kept, answer) = match trouble {
            None => (*bytes, Ok(())),
            Some(Trouble::Cut(written, rest) | Trouble::Disturbed(written, rest)) => {
                (torn(&old, bytes, written, rest), Err(NoAnswer))
            }
            Some(Trouble::Unheard) => (*bytes, Err(NoAnswer)),
            Some(Trouble::NotKept) => (torn(&old, bytes, PAGE_BYTES / 2, Rest::Garbage), Ok(())),
            Some(Trouble::Deaf) => (old, Err(NoAnswer)),
        };
        self.dead = matches!(trouble, Some(Trouble::Cut(..)));
        self.image[usize::from(page)] = kept;
        self.history.push((page, old, *bytes));
        answer
    }
}
