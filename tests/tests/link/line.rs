//! A line in memory with a handheld at its other end, which loses, doubles, alters, invents and delays.

use std::cell::{RefCell, RefMut};
use std::collections::VecDeque;
use std::io::{self, Read, Write};
use std::rc::Rc;
use std::time::Duration;

use proptest::prelude::*;
use tenter::link::{LinkError, LinkSession, Transport};
use tenter_firmware::link;

use crate::desk::MemoryDesk;

/// What happens to a byte.
#[derive(Clone, Copy, Debug)]
pub enum Fault {
    None,
    Lost,
    Doubled,
    /// Exclusive-or with this.
    Altered(u8),
    /// This comes after it.
    Invented(u8),
}

impl Fault {
    /// Mostly none: one byte in `rarity` + 1 is disturbed.
    pub fn any(rarity: u32) -> impl Strategy<Value = Self> {
        let disturbed = prop_oneof![
            Just(Self::Lost),
            Just(Self::Doubled),
            (1..=255u8).prop_map(Self::Altered),
            any::<u8>().prop_map(Self::Invented),
        ];
        prop_oneof![rarity => Just(Self::None), 1 => disturbed]
    }

    fn applied(self, byte: u8) -> impl Iterator<Item = u8> {
        let (first, second) = match self {
            Self::None => (Some(byte), None),
            Self::Lost => (None, None),
            Self::Doubled => (Some(byte), Some(byte)),
            Self::Altered(bits) => (Some(byte ^ bits), None),
            Self::Invented(other) => (Some(byte), Some(other)),
        };
        first.into_iter().chain(second)
    }
}

/// What happens to all that the host writes in one go.
#[derive(Clone, Copy, Debug, Default)]
pub struct Pass {
    /// It arrives twice.
    pub twice: bool,
    /// What is answered arrives only with the answer to the next.
    pub late: bool,
}

impl Pass {
    pub fn any() -> impl Strategy<Value = Self> {
        (prop::bool::weighted(0.1), prop::bool::weighted(0.1)).prop_map(|(twice, late)| Self { twice, late })
    }
}

/// The handheld and the line to it; lives longer than the hosts that come and go.
#[derive(Default)]
pub struct World {
    pub desk: MemoryDesk,
    session: link::Responder,
    faults: VecDeque<Fault>,
    passes: VecDeque<Pass>,
    held_back: Vec<u8>,
    /// On its way to the host.
    pub to_host: VecDeque<u8>,
    /// Whether the host gets its own bytes back.
    pub echo: bool,
    /// Whether anyone is at the other end.
    pub is_dead: bool,
}

impl World {
    fn disturbed(&mut self, bytes: &[u8]) -> Vec<u8> {
        let next = |byte: &u8| self.faults.pop_front().unwrap_or(Fault::None).applied(*byte);
        bytes.iter().flat_map(next).collect()
    }

    fn pass(&mut self, bytes: &[u8]) {
        let Pass { twice, late } = self.passes.pop_front().unwrap_or_default();
        if self.echo {
            self.to_host.extend(bytes);
        }
        if self.is_dead {
            return;
        }
        let mut answered = Vec::new();
        for _ in 0..=u8::from(twice) {
            for byte in self.disturbed(bytes) {
                answered.extend(self.session.receive(byte, &mut self.desk).unwrap_or_default());
            }
        }
        let answered = self.disturbed(&answered);
        self.held_back.extend(answered);
        if !late {
            self.to_host.extend(self.held_back.drain(..));
        }
    }
}

#[derive(Clone)]
pub struct Line(Rc<RefCell<World>>);

impl Line {
    pub fn to(desk: MemoryDesk) -> Self {
        Self(Rc::new(RefCell::new(World { desk, ..World::default() })))
    }

    /// What happens from now on; nothing more once it has run out.
    pub fn disturb(&self, faults: Vec<Fault>, passes: Vec<Pass>) {
        let mut world = self.world();
        (world.faults, world.passes) = (faults.into(), passes.into());
    }

    pub fn world(&self) -> RefMut<'_, World> {
        self.0.borrow_mut()
    }

    /// A host that gives up on a reply at once when the line is empty: time stands still here.
    pub fn host(&self) -> Result<LinkSession<Self>, LinkError> {
        LinkSession::open_with(self.clone(), Duration::from_secs(60), 4)
    }
}

impl Read for Line {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        match self.world().to_host.read(buffer)? {
            0 => Err(io::ErrorKind::TimedOut.into()),
            count => Ok(count),
        }
    }
}

impl Write for Line {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.world().pass(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl Transport for Line {
    fn set_patience(&mut self, patience: Duration) -> io::Result<()> {
        assert!(!patience.is_zero());
        Ok(())
    }
}
