//! A connection that is cut, at every message: what is to be stored is stored, once.

use std::io::{Read as _, Write as _};
use std::net::Shutdown;
use std::os::unix::net::{UnixListener, UnixStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicU32, Ordering};
use std::thread;

use tenter::log::{Entry, Here, Id};
use tenter::store::postgres::{Postgres, Server};
use tenter::store::{Change as _, Merged, Read as _, StoreError};
use tenter_tests::cluster::{self, Cluster};

use crate::laws::cloth;

/// A socket between the program and the server.
struct Between {
    folder: tempfile::TempDir,
    sent: Arc<AtomicU32>,
}

/// What becomes of a message that is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Cut {
    /// It does not arrive.
    Before,
    /// It arrives, and the answer does not.
    After,
}

impl Between {
    /// Lets the first connection pass `messages` from the program on, and cuts it at the next; lets others pass.
    fn new(server: &Path, messages: u32, cut: Cut) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let listener = UnixListener::bind(folder.path().join(".s.PGSQL.5432")).unwrap();
        let sent = Arc::new(AtomicU32::new(0));
        let (server, counter) = (server.join(".s.PGSQL.5432"), Arc::clone(&sent));
        thread::spawn(move || {
            for (number, near) in listener.incoming().enumerate() {
                let (near, server, counter) = (near.unwrap(), server.clone(), Arc::clone(&counter));
                let messages = if number == 0 { messages } else { u32::MAX };
                thread::spawn(move || pass(near, &server, messages, cut, &counter));
            }
        });
        Self { folder, sent }
    }

    fn address(&self, address: &str) -> String {
        let (before, _) = address.split_once("?host=").unwrap();
        format!("{before}?host={}", self.folder.path().display())
    }
}

/// Passes on what is sent. The program waits for each answer, so what is read at once is one message or several that belong
/// together.
fn pass(mut near: UnixStream, server: &PathBuf, messages: u32, cut: Cut, sent: &AtomicU32) {
    let mut far = UnixStream::connect(server).unwrap();
    let (mut back, mut answers) = (near.try_clone().unwrap(), far.try_clone().unwrap());
    let cutting = Arc::new(AtomicU32::new(0));
    let is_cut = Arc::clone(&cutting);
    let answering = thread::spawn(move || {
        let mut bytes = [0; 1 << 16];
        while let Ok(read @ 1..) = answers.read(&mut bytes) {
            if is_cut.load(Ordering::SeqCst) == 0 && back.write_all(&bytes[..read]).is_err() {
                break;
            }
        }
        let _ = back.shutdown(Shutdown::Both);
    });
    let mut bytes = [0; 1 << 16];
    let mut passed = 0;
    while let Ok(read @ 1..) = near.read(&mut bytes) {
        if passed == messages {
            cutting.store(1, Ordering::SeqCst);
            if cut == Cut::After {
                // The server takes it to its end, and then is told that nobody is there.
                far.write_all(&bytes[..read]).unwrap();
            }
            let _ = near.shutdown(Shutdown::Both);
            break;
        }
        passed += 1;
        sent.fetch_add(1, Ordering::SeqCst);
        if far.write_all(&bytes[..read]).is_err() {
            break;
        }
    }
    let _ = far.shutdown(Shutdown::Write);
    answering.join().unwrap();
}

fn open(address: &str, drafts: &Path) -> Postgres {
    Postgres::open(&Server::parse(address).unwrap(), drafts, Here::desk()).unwrap()
}

/// Runs `deed` with the connection cut at every message of it in turn, until it passes whole; how many there were.
fn cut_at_every_message(server: &Cluster, cut: Cut, deed: impl Fn(&mut Postgres, u16)) -> u32 {
    let address = server.database();
    let drafts = tempfile::tempdir().unwrap();
    let mut direct = open(&address, drafts.path());
    // The first messages open the log.
    let counted = Between::new(server.sockets(), u32::MAX, cut);
    drop(open(&counted.address(&address), drafts.path()));
    let opening = counted.sent.load(Ordering::SeqCst) - 1;
    for more in 0.. {
        let between = Between::new(server.sockets(), opening + more, cut);
        let mut log = open(&between.address(&address), drafts.path());
        let tag = u16::try_from(more + 1).unwrap();
        deed(&mut log, tag);
        let passed = between.sent.load(Ordering::SeqCst);
        assert_eq!(direct.fabrics_tagged(tag).unwrap().len(), 1, "{cut:?} at message {more}");
        assert_eq!((direct.count().unwrap(), direct.faults().unwrap()), (u64::from(tag), Vec::new()));
        // Whole: it sent its last message, the end of the transaction, and then nothing was left to be cut.
        if passed <= opening + more {
            direct.add(&[cloth(1000)]).unwrap();
            return more;
        }
    }
    unreachable!()
}

#[test]
fn a_change_is_stored_once_wherever_the_connection_is_cut() {
    for cut in [Cut::Before, Cut::After] {
        let messages = cut_at_every_message(cluster::shared(), cut, |log, tag| {
            let (entries, seen) = log
                .change(|read| Ok::<_, StoreError>((vec![cloth(tag)], read.fabrics()?.len())))
                .unwrap_or_else(|error| panic!("{cut:?} at {tag}: {error:?}"));
            assert_eq!((entries.len(), seen), (1, usize::from(tag) - 1));
            assert_eq!(log.history(entries[0].subject()).unwrap(), entries);
        });
        assert!(messages > 8, "only {messages} messages");
    }
}

#[test]
fn a_merge_is_stored_once_wherever_the_connection_is_cut() {
    for cut in [Cut::Before, Cut::After] {
        cut_at_every_message(cluster::shared(), cut, |log, tag| {
            let id = Id::of("2026-02-01T00:00:00Z".parse().unwrap(), tag.into());
            let merged = log.merge_all([Ok::<_, StoreError>(Entry::new(id, cloth(tag)))].into_iter());
            assert_eq!(merged, Ok(Merged { new: 1, ..Merged::default() }), "{cut:?} at {tag}");
        });
    }
}

/// The server is killed while a change is being made up: it is asked again, and its last answer counts.
#[test]
fn a_killed_server_is_waited_for() {
    let server = Cluster::start(&[], |_| {});
    let address = server.database();
    let drafts = tempfile::tempdir().unwrap();
    let mut log = open(&address, drafts.path());
    let mut asked = 0;
    let changed = log.change(|read| {
        asked += 1;
        if asked == 1 {
            server.kill();
            // It is back before the store looks for it.
            drop(server.client("postgres"));
        }
        Ok::<_, StoreError>((vec![cloth(read.fabrics()?.last().map_or(1, |fabric| fabric.tag.number() + 1))], asked))
    });
    // What the closure read was lost on the first time, and it said so.
    match changed {
        Ok((entries, asked)) => assert_eq!((entries.len(), asked, log.count()), (1, 2, Ok(1))),
        Err(error) => panic!("{error:?}"),
    }
    // A question that stands alone finds its way to the server again.
    server.kill();
    drop(server.client("postgres"));
    assert_eq!(log.fabrics().unwrap().len(), 1);
    // A server that is gone is told as such, and nothing is stored.
    drop(server);
    let told = log.add(&[cloth(2)]).unwrap_err();
    assert!(matches!(told, StoreError::Lost { perhaps: false, .. }), "{told:?}");
    assert!(matches!(log.count(), Err(StoreError::Unreachable { .. })));
}
