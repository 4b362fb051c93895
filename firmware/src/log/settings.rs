//! What is remembered beside the tests: how one measures, which tags are given, how many names there are. Two pages
//! written in turn, as the state.

use tenter_core::wire::LentTags;
use tenter_core::{Grain, Length};

use super::page::{is_whole, sealed};
use super::storage::{self, Storage};
use super::{LogError, StoragePage};

/// What a handheld remembers.
///
/// ```
/// let fresh = tenter_firmware::log::Settings::default();
/// assert_eq!((fresh.tags.next, fresh.agreed), (1, false));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Settings {
    /// The gauge length to mark.
    pub gauge: Length,
    /// Whether it is marked on an inch scale.
    pub inch: bool,
    /// The grain to pull.
    pub grain: Grain,
    /// The slot of the demand, where one was chosen.
    pub demand: Option<u8>,
    /// The mark of the person who pulls, where one was chosen.
    pub by: Option<u32>,
    /// The tags it may give.
    pub tags: LentTags,
    /// Whether a log lent them.
    pub agreed: bool,
    /// Names of cloths in use.
    pub cloths: u8,
    /// Names of people in use.
    pub people: u8,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            gauge: Length::from_mm(100),
            inch: false,
            grain: Grain::Crosswise,
            demand: None,
            by: None,
            tags: LentTags { least: 1, next: 1, most: MOST_TAG },
            agreed: false,
            cloths: 0,
            people: 0,
        }
    }
}

/// The highest tag that can be dialled.
pub(super) const MOST_TAG: u16 = 999;

const GRAINS: [Grain; 3] = [Grain::Lengthwise, Grain::Crosswise, Grain::Bias];

impl Settings {
    /// Lends tags: those it gave stay given.
    pub(super) fn lend(&mut self, least: u16, most: u16) {
        let had = core::mem::replace(&mut self.tags, LentTags { least, next: least, most });
        self.agreed = true;
        // Under other tags it gave none yet; under these it goes on where it was.
        if had.least <= least && had.next >= least {
            self.tags.next = had.next.min(most.saturating_add(1));
        }
    }

    /// Counts a tag as given.
    pub(super) fn give(&mut self, tag: u16) {
        if self.tags.is_free(tag) {
            self.tags.next = tag.saturating_add(1);
        }
    }

    fn of(page: &StoragePage) -> Option<(u32, Self)> {
        let [1, a0, a1, a2, a3, g0, g1, g2, g3, inch, grain, demand, has_by, b0, b1, b2, b3, rest @ ..] = page else {
            return None;
        };
        let [l0, l1, n0, n1, m0, m1, agreed, cloths, people, ..] = rest;
        let settings = Self {
            gauge: Length::from_steps(i32::from_le_bytes([*g0, *g1, *g2, *g3])),
            inch: *inch == 1,
            grain: *GRAINS.get(usize::from(*grain))?,
            demand: (*demand != u8::MAX).then_some(*demand),
            by: (*has_by == 1).then_some(u32::from_le_bytes([*b0, *b1, *b2, *b3])),
            tags: LentTags {
                least: u16::from_le_bytes([*l0, *l1]),
                next: u16::from_le_bytes([*n0, *n1]),
                most: u16::from_le_bytes([*m0, *m1]),
            },
            agreed: *agreed == 1,
            cloths: *cloths,
            people: *people,
        };
        is_whole(page).then_some((u32::from_le_bytes([*a0, *a1, *a2, *a3]), settings))
    }

    fn page(&self, age: u32) -> StoragePage {
        let Self { gauge, inch, grain, demand, by, tags, agreed, cloths, people } = *self;
        let grain = GRAINS.iter().zip(0..).find_map(|(known, number)| (*known == grain).then_some(number)).unwrap_or(0);
        sealed(&[
            &[1],
            &age.to_le_bytes(),
            &gauge.steps().to_le_bytes(),
            &[inch.into(), grain, demand.unwrap_or(u8::MAX), by.is_some().into()],
            &by.unwrap_or(0).to_le_bytes(),
            [tags.least, tags.next, tags.most].map(u16::to_le_bytes).as_flattened(),
            &[agreed.into(), cloths, people],
        ])
    }
}

/// The two pages, and what the newest of them says.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct SettingsPages {
    /// The first of the two; none on a chip too small for them, which remembers until the power goes.
    start: Option<u16>,
    newest: Settings,
    age: u32,
    /// Which of the two is written next.
    next: u16,
}

impl SettingsPages {
    pub fn read<S: Storage>(storage: &mut S, start: Option<u16>) -> Result<Self, LogError<S::Error>> {
        let mut pages = Self { start, ..Self::default() };
        for (turn, page) in start.into_iter().flat_map(|start| (0..2).map(move |turn| (turn, start + turn))) {
            match Settings::of(&storage::read_again(storage, page, |page| Settings::of(page).is_some())?) {
                Some((age, newest)) if age > pages.age => {
                    pages = Self { newest, age, next: 1 - turn, ..pages };
                }
                _ => {}
            }
        }
        Ok(pages)
    }

    pub const fn newest(&self) -> Settings {
        self.newest
    }

    pub const fn start(&self) -> Option<u16> {
        self.start
    }

    /// Writes what changed. After an error the newest is still the one before.
    pub fn write<S: Storage>(&mut self, storage: &mut S, settings: Settings) -> Result<(), LogError<S::Error>> {
        if settings == self.newest {
            return Ok(());
        }
        if let Some(start) = self.start {
            let age = self.age.saturating_add(1);
            storage::write(storage, start.saturating_add(self.next), &settings.page(age))?;
            (self.age, self.next) = (age, 1 - self.next);
        }
        self.newest = settings;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read() {
        let settings = Settings {
            gauge: Length::from_mm(250),
            inch: true,
            grain: Grain::Bias,
            demand: Some(3),
            by: Some(0xDEAD_BEEF),
            tags: LentTags { least: 100, next: 104, most: 119 },
            agreed: true,
            cloths: 96,
            people: 8,
        };
        for settings in [settings, Settings::default()] {
            assert_eq!(Settings::of(&settings.page(77)), Some((77, settings)));
        }
        let mut page = settings.page(77);
        page[20] ^= 1;
        assert_eq!(Settings::of(&page), None, "damaged");
        assert_eq!(Settings::of(&[0xFF; 64]), None, "erased");
    }

    #[test]
    fn lent_again_what_was_given_stays_given() {
        let mut settings = Settings::default();
        settings.give(4);
        settings.lend(8, 27);
        assert_eq!(settings.tags, LentTags { least: 8, next: 8, most: 27 });
        settings.give(9);
        settings.lend(8, 27);
        assert_eq!(settings.tags.next, 10, "the same said again");
        settings.lend(9, 40);
        assert_eq!(settings.tags.next, 10, "more of them");
        settings.give(40);
        settings.lend(9, 40);
        assert_eq!((settings.tags.next, settings.tags.is_free(40)), (41, false));
        settings.give(5);
        assert_eq!(settings.tags.next, 41, "none of them");
    }
}
