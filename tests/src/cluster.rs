//! A PostgreSQL server for tests, with a cluster of its own below `target`; never the machine's.

use core::time::Duration;
use std::fs;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::OnceLock;
use std::sync::atomic::{AtomicU32, Ordering};
use std::thread;
use std::time::Instant;

use postgres::{Client, NoTls};

/// Ends what hangs; no test waits that long for anything else.
const LIMIT: Duration = Duration::from_secs(300);

/// PostgreSQL's own port, part of its socket's name.
const PORT: u16 = 5432;

/// A running server. It ends with the value, or with the process that holds it, however that ends.
#[derive(Debug)]
pub struct Cluster {
    keeper: Child,
    folder: PathBuf,
    sockets: PathBuf,
    port: u16,
    databases: AtomicU32,
}

/// The one that the tests of a process share.
pub fn shared() -> &'static Cluster {
    static SHARED: OnceLock<Cluster> = OnceLock::new();
    SHARED.get_or_init(|| Cluster::start(&[], |_| {}))
}

impl Cluster {
    /// Starts one with options of `postgres`, after `prepare` put what it needs into its folder.
    ///
    /// # Panics
    ///
    /// Without a server, or one that does not start.
    #[must_use]
    pub fn start(options: &[&str], prepare: impl FnOnce(&Path)) -> Self {
        Self::at(PORT, options, prepare)
    }

    /// As [`Self::start`], reached over the network of this machine alone too, at its [`port`](Self::port).
    ///
    /// # Panics
    ///
    /// As there.
    #[must_use]
    pub fn on_the_network(options: &[&str], prepare: impl FnOnce(&Path)) -> Self {
        // A port that was free a moment ago.
        let free = TcpListener::bind("127.0.0.1:0").and_then(|listener| listener.local_addr()).expect("a free port");
        let port = free.port().to_string();
        let mut all = vec!["-c", "listen_addresses=127.0.0.1", "-p", &port];
        all.extend(options);
        Self::at(free.port(), &all, prepare)
    }

    /// The port, on the network or of the socket.
    #[must_use]
    pub fn port(&self) -> u16 {
        self.port
    }

    /// The folder in which its socket lies.
    #[must_use]
    pub fn sockets(&self) -> &Path {
        &self.sockets
    }

    fn at(port: u16, options: &[&str], prepare: impl FnOnce(&Path)) -> Self {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("a workspace");
        let below = root.join("target/tmp");
        fs::create_dir_all(&below).expect("a folder below target");
        let folder = tempfile::Builder::new().prefix("cluster-").tempdir_in(below).expect("a folder").keep();
        // The path of a socket must be short.
        let sockets = tempfile::Builder::new().prefix("tenter-").tempdir().expect("a folder").keep();
        prepare(&folder);
        let mut keeper = Command::new(root.join("tests/cluster"));
        keeper.arg(&folder).arg(&sockets).args(options).stdin(Stdio::piped()).stdout(Stdio::null());
        let keeper = keeper.stderr(Stdio::null()).spawn().expect("tests/cluster starts");
        let cluster = Self { keeper, folder, sockets, port, databases: AtomicU32::new(0) };
        drop(cluster.client("postgres"));
        cluster
    }

    /// The address of a database, as `--db` takes it.
    #[must_use]
    pub fn address(&self, database: &str) -> String {
        format!("postgres://tenter@/{database}?host={}&port={}", self.sockets.display(), self.port)
    }

    /// The address of a new, empty database.
    #[must_use]
    pub fn database(&self) -> String {
        let name = format!("log{}", self.databases.fetch_add(1, Ordering::Relaxed));
        self.client("postgres").batch_execute(&format!("CREATE DATABASE {name}")).expect("a database");
        self.address(&name)
    }

    /// A connection as the owner; waits until the server takes it.
    ///
    /// # Panics
    ///
    /// Where it never does.
    #[must_use]
    pub fn client(&self, database: &str) -> Client {
        let begun = Instant::now();
        loop {
            match Client::connect(&self.address(database), NoTls) {
                Ok(client) => return client,
                Err(error) if begun.elapsed() > LIMIT || self.has_given_up() => {
                    let log = fs::read_to_string(self.folder.join("log")).unwrap_or_default();
                    panic!("{error}: tests/install fetches PostgreSQL, tests/run puts it on the path\n{log}")
                }
                Err(_) => thread::sleep(Duration::from_millis(20)),
            }
        }
    }

    /// Whether there never was a server: its programs are missing, or it could not make its cluster.
    fn has_given_up(&self) -> bool {
        let log = fs::read_to_string(self.folder.join("log")).unwrap_or_default();
        log.contains("command not found")
            || log.contains("FATAL:  could not")
            || log.contains("initdb: error")
            || log.contains("unshare: ")
    }

    /// Kills the server as a power cut would; it comes back by itself. What was killed.
    ///
    /// # Panics
    ///
    /// Where there is none.
    pub fn kill(&self) -> String {
        let begun = Instant::now();
        loop {
            let pid = fs::read_to_string(self.folder.join("data/postmaster.pid")).unwrap_or_default();
            let pid = pid.lines().next().unwrap_or_default().to_owned();
            if crate::program::signal("KILL", &pid) {
                return pid;
            }
            assert!(begun.elapsed() < LIMIT, "no server to kill");
            thread::sleep(Duration::from_millis(20));
        }
    }

    /// What the server wrote to its log.
    #[must_use]
    pub fn log(&self) -> String {
        fs::read_to_string(self.folder.join("log")).unwrap_or_default()
    }
}

impl Drop for Cluster {
    fn drop(&mut self) {
        drop(self.keeper.stdin.take());
        let _ = self.keeper.wait();
    }
}
