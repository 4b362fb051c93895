//! A cable in memory that can be cut after any byte, and the verbs run over it.

use std::cell::{Cell, RefCell, RefMut};
use std::collections::VecDeque;
use std::io::{self, Read, Write};
use std::rc::Rc;
use std::sync::LazyLock;
use std::time::Duration;

use jiff::{SignedDuration, Timestamp};
use tenter::cli::{self, Parsed};
use tenter::command::device::sync::{self, Options};
use tenter::error::Error;
use tenter::link::{LinkSession, Transport};
use tenter::log::{Entry, FabricChange, Fact, Here, Id, StoredTest};
use tenter::store::sqlite::Sqlite;
use tenter::store::{Read as _, Store as _, WhichTests};
use tenter::text::TextOutput;

use crate::pocket::Pocket;

pub struct World {
    pub pocket: Pocket,
    to_host: VecDeque<u8>,
    /// Bytes that still get through, in both directions together.
    pub left: Option<usize>,
    /// Plugged in instead after so many bytes.
    pub exchange: Option<(usize, Pocket)>,
    /// Between two handhelds: what the host says is lost until it has waited in vain.
    is_empty: bool,
    /// Bytes that went through so far.
    pub passed: usize,
}

impl World {
    /// Whether one more byte gets through.
    fn pass(&mut self) -> bool {
        match &mut self.left {
            Some(0) => return false,
            Some(left) => *left -= 1,
            None => {}
        }
        self.passed += 1;
        if let Some((at, _)) = &self.exchange
            && *at == self.passed
        {
            std::mem::swap(&mut self.pocket, &mut self.exchange.as_mut().unwrap().1);
            self.to_host.clear();
            self.is_empty = true;
        }
        !self.is_empty
    }
}

#[derive(Clone)]
pub struct Cable(Rc<RefCell<World>>);

impl Cable {
    pub fn to(pocket: Pocket) -> Self {
        let world = World { pocket, to_host: VecDeque::new(), left: None, exchange: None, is_empty: false, passed: 0 };
        Self(Rc::new(RefCell::new(world)))
    }

    pub fn world(&self) -> RefMut<'_, World> {
        self.0.borrow_mut()
    }

    /// Another program opens the line: whatever was cut is whole again.
    pub fn mend(&self) {
        let mut world = self.world();
        world.left = None;
        world.to_host.clear();
    }

    /// Time stands still here, so silence is known at once.
    pub fn session(&self) -> Result<LinkSession<Self>, Error> {
        Ok(LinkSession::open_with(self.clone(), Duration::from_secs(60), 2)?)
    }

    /// `device sync`, with what it printed.
    pub fn sync(&self, store: &mut Sqlite, options: Options) -> (Result<(), Error>, String) {
        printed(|screen| sync::run(&mut self.session()?, &options, store, screen))
    }
}

impl Read for Cable {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let mut world = self.world();
        // Byte by byte: the cable may be cut within a frame.
        let passes = !world.to_host.is_empty() && world.pass();
        let Some(byte) = world.to_host.pop_front().filter(|_| passes) else {
            world.is_empty = false;
            return if world.left == Some(0) { Ok(0) } else { Err(io::ErrorKind::TimedOut.into()) };
        };
        buffer[0] = byte;
        Ok(1)
    }
}

impl Write for Cable {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let mut world = self.world();
        for byte in bytes {
            if world.pass() {
                let answer = world.pocket.hear(*byte);
                world.to_host.extend(answer);
            }
        }
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl Transport for Cable {
    fn set_patience(&mut self, _: Duration) -> io::Result<()> {
        Ok(())
    }
}

thread_local! {
    /// How much later it is for this test.
    static LATER: Cell<SignedDuration> = const { Cell::new(SignedDuration::ZERO) };
}

/// This desk, where time stands still: however long a test takes, no clock falls behind another.
pub fn here() -> Here {
    static NOW: LazyLock<Timestamp> = LazyLock::new(Timestamp::now);
    Here { now: || *NOW + LATER.get(), ..Here::desk() }
}

/// Lets a millisecond pass [`here`].
pub fn a_moment_passes() {
    LATER.set(LATER.get() + SignedDuration::from_millis(1));
}

/// What a verb does, and what it prints.
pub fn printed(run: impl FnOnce(&mut TextOutput<'_>) -> Result<(), Error>) -> (Result<(), Error>, String) {
    let mut out = Vec::new();
    let result = run(&mut TextOutput { out: &mut out, width: 80, unicode: true, here: here() });
    (result, String::from_utf8(out).unwrap())
}

/// A verb typed with `--db` on a file; its text, or its complaint.
pub fn typed(db: &std::path::Path, words: &str) -> Result<String, String> {
    let words = ["tenter", "--db", db.to_str().unwrap()].into_iter().chain(words.split(' '));
    let Parsed::Run(line) = cli::parse(words).map_err(|error| error.to_string())? else { panic!("help") };
    let (result, text) = printed(|screen| tenter::command::run(&line, screen).map(drop));
    result.map(|()| text).map_err(|error| error.to_string())
}

/// A log with fabrics under tags 1 and 2, and two under 3.
pub fn log() -> Sqlite {
    let mut store = Sqlite::in_memory(Here::desk()).unwrap();
    stock(&mut store);
    store
}

/// The identifier of the cloth that wears a tag in every such log; the second that wears tag 3 has 30.
pub fn cloth(tag: u16) -> Id {
    Id::of(Timestamp::from_second(1_790_000_000).unwrap(), tag.into())
}

pub fn stock(store: &mut Sqlite) {
    let cloths = [(1, 1, "Vestry twill"), (2, 2, "Doorway rib"), (3, 3, "Organ felt"), (30, 3, "Stage twill")];
    let entries = cloths.map(|(number, tag, name)| {
        let said = FabricChange { tag: Some(tag), name: Some(name.to_owned()), ..FabricChange::default() };
        Ok(Entry::new(cloth(number), Fact::FabricAdded(said)))
    });
    store.merge(&mut entries.into_iter()).unwrap();
}

/// All tests of a log by their numbers on the handheld.
pub fn all(store: &Sqlite) -> Vec<(u32, StoredTest)> {
    let tests = store.tests(WhichTests::All).unwrap().into_iter();
    let mut all: Vec<_> = tests.map(|test| (test.said.device.unwrap().number, test)).collect();
    all.sort_by_key(|(number, test)| (*number, test.id));
    all
}
