//! The state, in two pages written in turn: whichever write is cut, the page before it is whole.

use super::page::State;
use super::storage::{self, Storage};
use super::{LogError, STATE_PAGES};

#[derive(Clone, Copy, Debug, Default)]
pub(super) struct StatePages {
    newest: State,
    /// How many states were written before.
    age: u32,
    /// Where the next one goes: the page without the newest.
    next: u16,
}

impl StatePages {
    /// The newest whole state, or that of a chip never written.
    pub fn read<S: Storage>(storage: &mut S) -> Result<Self, LogError<S::Error>> {
        let mut pages = Self::default();
        for page in 0..STATE_PAGES {
            match State::of(&storage::read_again(storage, page, |page| State::of(page).is_some())?) {
                Some((layout, ..)) if layout > State::LAYOUT => return Err(LogError::Newer),
                Some((_, age, newest)) if age > pages.age => pages = Self { newest, age, next: other(page) },
                _ => {}
            }
        }
        Ok(pages)
    }

    pub const fn newest(&self) -> State {
        self.newest
    }

    /// Writes a state over the older of the two. After an error the newest is still the one before.
    pub fn write<S: Storage>(&mut self, storage: &mut S, state: State) -> Result<(), LogError<S::Error>> {
        let age = self.age.saturating_add(1);
        storage::write(storage, self.next, &state.page(age))?;
        *self = Self { newest: state, age, next: other(self.next) };
        Ok(())
    }

    /// Writes what is never said again over both, so that damage to one page does not lose it.
    pub fn write_both<S: Storage>(&mut self, storage: &mut S, state: State) -> Result<(), LogError<S::Error>> {
        self.write(storage, state)?;
        self.write(storage, state)
    }
}

const fn other(page: u16) -> u16 {
    if page == 0 { 1 } else { 0 }
}
