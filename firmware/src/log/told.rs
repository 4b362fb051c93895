//! What the host tells and the user chooses: tags, names, ways of measuring.

use tenter_core::wire::{LentTags, NameList};

use super::names::{self, Named};
use super::settings::{self, Settings};
use super::storage::Storage;
use super::{Log, LogError};

impl<S: Storage> Log<S> {
    /// What is remembered.
    pub const fn settings(&self) -> Settings {
        self.settings.newest()
    }

    /// Remembers.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`] or [`LogError::NotKept`].
    pub fn set_settings(&mut self, settings: Settings) -> Result<(), LogError<S::Error>> {
        self.settings.write(&mut self.storage, settings)
    }

    /// Lends tags; see [`LentTags`].
    ///
    /// # Errors
    ///
    /// [`LogError::NoSlot`] for none, or for some that cannot be dialled; [`LogError::Chip`] or [`LogError::NotKept`].
    pub fn lend_tags(&mut self, least: u16, most: u16) -> Result<(), LogError<S::Error>> {
        if least == 0 || least > most || most > settings::MOST_TAG {
            return Err(LogError::NoSlot);
        }
        let mut settings = self.settings();
        settings.lend(least, most);
        self.set_settings(settings)
    }

    /// The tags that may be given.
    pub const fn tags(&self) -> LentTags {
        self.settings().tags
    }

    const fn names(&self) -> Option<u16> {
        match self.settings.start() {
            Some(start) => Some(start + 2),
            None => None,
        }
    }

    /// How many names are in use.
    pub const fn name_count(&self, list: NameList) -> u8 {
        match list {
            NameList::Cloths => self.settings().cloths,
            NameList::People => self.settings().people,
        }
    }

    /// Says how many names are in use.
    ///
    /// # Errors
    ///
    /// [`LogError::NoSlot`], [`LogError::Chip`] or [`LogError::NotKept`].
    pub fn set_name_count(&mut self, list: NameList, count: u8) -> Result<(), LogError<S::Error>> {
        if count > if self.names().is_some() { names::slots(list) } else { 0 } {
            return Err(LogError::NoSlot);
        }
        let mut settings = self.settings();
        match list {
            NameList::Cloths => settings.cloths = count,
            NameList::People => settings.people = count,
        }
        self.set_settings(settings)
    }

    /// Writes a name, in use or not.
    ///
    /// # Errors
    ///
    /// [`LogError::NoSlot`], [`LogError::Chip`] or [`LogError::NotKept`].
    pub fn set_name(&mut self, list: NameList, slot: u8, named: &Named) -> Result<(), LogError<S::Error>> {
        match self.names().filter(|_| slot < names::slots(list)) {
            Some(start) => names::write(&mut self.storage, start, list, slot, named),
            None => Err(LogError::NoSlot),
        }
    }

    /// The name in a slot in use; none that cannot be read.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`].
    pub fn name(&mut self, list: NameList, slot: u8) -> Result<Option<Named>, LogError<S::Error>> {
        match self.names().filter(|_| slot < self.name_count(list)) {
            Some(start) => names::read(&mut self.storage, start, list, slot),
            None => Ok(None),
        }
    }

    /// The cloth with a tag, where the host told its name.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`].
    pub fn cloth_tagged(&mut self, tag: u16) -> Result<Option<Named>, LogError<S::Error>> {
        for slot in 0..self.name_count(NameList::Cloths) {
            if let Some(named) = self.name(NameList::Cloths, slot)?.filter(|named| named.tag == tag) {
                return Ok(Some(named));
            }
        }
        Ok(None)
    }
}
