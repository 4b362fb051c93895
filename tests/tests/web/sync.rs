//! `tenter sync` with the pages of another computer: both ways, with the token, and cut off at many bytes of either way.

use std::collections::BTreeSet;
use std::fs;
use std::io::{Read as _, Write as _};
use std::net::{Shutdown, TcpListener, TcpStream};
use std::process::Command;
use std::sync::atomic::{AtomicI64, Ordering};
use std::sync::{Arc, LazyLock};
use std::thread;

use tenter::deed::sync::{SyncedLogs, exchange};
use tenter::exchange::ImportError;
use tenter::exchange::jsonl::Exported;
use tenter::link::pages::{PageClient, PagesError};
use tenter::log::{FabricChange, Fact, Here};
use tenter::store::memory::Memory;
use tenter::store::{Change as _, Read as _};
use tenter_tests::program::program;

use crate::server::Server;

/// What the program exports of a log with a cloth and its photograph.
static LAPTOP: LazyLock<Vec<u8>> = LazyLock::new(|| {
    let folder = tempfile::tempdir().unwrap();
    let mut png = Vec::new();
    let mut encoder = png::Encoder::new(&mut png, 40, 30);
    encoder.set_color(png::ColorType::Rgb);
    encoder.write_header().unwrap().write_image_data(&[10, 90, 120].repeat(40 * 30)).unwrap();
    fs::write(folder.path().join("calico.png"), png).unwrap();
    let tenter = |words: &[&str]| {
        let mut command = Command::new(program());
        let output = command.current_dir(folder.path()).args(["--db", "log.db"]).args(words).output().unwrap();
        assert!(output.status.success(), "{output:?}");
        output.stdout
    };
    tenter(&["cloth", "add", "Loft calico", "--tag", "300"]);
    tenter(&["cloth", "picture", "300", "calico.png"]);
    tenter(&["export", "-"])
});

/// That log, with a cloth that no other has.
fn laptop() -> Memory {
    let mut log = Memory::new(Here::desk());
    log.merge_all(Exported::begin(LAPTOP.as_slice(), "laptop").unwrap()).unwrap();
    let change = FabricChange { tag: Some(301), name: Some("Pantry crash".to_owned()), ..FabricChange::default() };
    log.add(&[Fact::FabricAdded(change)]).unwrap();
    log
}

fn entries(log: &Memory) -> BTreeSet<String> {
    let mut lines = BTreeSet::new();
    log.each_entry(&mut |line| {
        lines.insert(line.to_owned());
        Ok(())
    })
    .unwrap();
    lines
}

fn lines(server: &Server) -> BTreeSet<String> {
    let text = server.get("/exchange/entries.txt").text();
    text.lines().filter(|line| line.contains("\"kind\":")).map(str::to_owned).collect()
}

/// Between a program and a server: lets so many bytes of each way pass, and then cuts every connection.
struct Line {
    host: String,
    /// How many more may pass to the server, and from it.
    left: [Arc<AtomicI64>; 2],
}

impl Line {
    fn to(server: &str) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let host = listener.local_addr().unwrap().to_string();
        let left = [(); 2].map(|()| Arc::new(AtomicI64::new(i64::MAX)));
        let (server, named, counters) = (server.to_owned(), host.clone(), left.clone());
        thread::spawn(move || {
            for near in listener.incoming() {
                let (near, far) = (near.unwrap(), TcpStream::connect(&server).unwrap());
                let [there, back] = counters.clone();
                let ends = [near.try_clone().unwrap(), far.try_clone().unwrap()];
                let (server, named) = (server.clone(), named.clone());
                thread::spawn(move || pass(&near, &far, &there, &|bytes| renamed(bytes, &named, &server)));
                thread::spawn(move || pass(&ends[1], &ends[0], &back, &|bytes| bytes.to_vec()));
            }
        });
        Self { host, left }
    }

    fn client(&self) -> PageClient {
        PageClient::new(&format!("http://{}", self.host), None).unwrap()
    }
}

/// The server answers to its own name alone.
fn renamed(bytes: &[u8], from: &str, to: &str) -> Vec<u8> {
    let is_head = bytes.starts_with(b"GET ") || bytes.starts_with(b"POST ");
    let end = bytes.windows(4).position(|four| four == b"\r\n\r\n").filter(|_| is_head);
    let Some(end) = end else { return bytes.to_vec() };
    let head = String::from_utf8_lossy(&bytes[..end]).replace(from, to);
    [head.as_bytes(), &bytes[end..]].concat()
}

fn pass(mut from: &TcpStream, mut to: &TcpStream, left: &AtomicI64, change: &dyn Fn(&[u8]) -> Vec<u8>) {
    let mut bytes = [0; 1 << 16];
    while let Ok(read @ 1..) = from.read(&mut bytes) {
        let bytes = change(&bytes[..read]);
        let may = left.fetch_sub(bytes.len() as i64, Ordering::SeqCst).clamp(0, bytes.len() as i64) as usize;
        if to.write_all(&bytes[..may]).is_err() || may < bytes.len() {
            let _ = from.shutdown(Shutdown::Both);
            break;
        }
    }
    let _ = to.shutdown(Shutdown::Both);
}

fn synced(log: &mut Memory, client: &mut PageClient) -> Result<SyncedLogs, ImportError> {
    exchange(log, client, ["laptop", "desk"], &mut || ())
}

#[test]
fn what_is_cut_off_at_any_byte_is_done_again() {
    let server = Server::evening();
    let whole = |log: &mut Memory| {
        let line = Line::to(&server.host);
        let done = synced(log, &mut line.client()).unwrap();
        (done, line.left.map(|left| i64::MAX - left.load(Ordering::SeqCst)))
    };
    let (mut first, before) = (laptop(), lines(&server));
    let (done, _) = whole(&mut first);
    assert_eq!((done.given.entries, done.given.photos), (3, 2));
    assert_eq!(done.taken.entries as usize, before.len());
    assert_eq!(entries(&first), lines(&server));
    // How much passes each way for the next, whose cloth the desk lacks; for those after it no less does.
    let [there, back] = whole(&mut laptop()).1;
    let mut cuts = 0;
    for (way, bytes) in [(0, there), (1, back)] {
        for step in 0..40 {
            let mut log = laptop();
            let line = Line::to(&server.host);
            line.left[way].store(bytes * step / 40, Ordering::SeqCst);
            cuts += u32::from(synced(&mut log, &mut line.client()).is_err());
            // Each side holds whole entries, and nothing that the other did not have.
            let (mine, theirs) = (entries(&log), lines(&server));
            assert!(mine.len() >= 3 && theirs.len() >= before.len(), "{way} {step}");
            let (done, _) = whole(&mut log);
            assert_eq!(done.differ, Vec::new(), "{way} {step}");
            assert_eq!(entries(&log), lines(&server), "{way} {step}");
            assert_eq!(log.photo_names().unwrap().len(), log_photos(&server), "{way} {step}");
            let (again, _) = whole(&mut log);
            assert_eq!((again.taken, again.given), Default::default(), "{way} {step}");
        }
    }
    assert_eq!(cuts, 80, "all were cut off");
}

fn log_photos(server: &Server) -> usize {
    serde_json::from_str::<Vec<String>>(&server.get("/exchange/photos.json").text()).unwrap().len()
}

/// The program itself, with the token that `tenter serve` prints where others can come.
#[test]
fn the_program_needs_the_token() {
    let server = Server::empty(&["--listen", "0.0.0.0"]);
    let token = server.address.split("token=").nth(1).unwrap().to_owned();
    let port = server.host.rsplit_once(':').unwrap().1;
    let base = format!("http://127.0.0.1:{port}");
    let folder = tempfile::tempdir().unwrap();
    let tenter = |words: &[&str], token: Option<&str>| {
        let mut command = Command::new(program());
        command.arg("--db").arg(folder.path().join("log.db")).args(words).env("HOME", folder.path());
        command.env_remove("TENTER_TOKEN").envs(token.map(|token| ("TENTER_TOKEN", token)));
        let output = command.output().unwrap();
        (output.status.code(), [output.stdout, output.stderr].map(|text| String::from_utf8(text).unwrap()).concat())
    };
    assert_eq!(tenter(&["cloth", "add", "Loft calico", "--tags", "300-399"], None).0, Some(0));
    let (code, told) = tenter(&["sync", &base], None);
    assert!(code == Some(2) && told.contains("TENTER_TOKEN") && told.lines().count() == 1, "{told}");
    let (code, told) = tenter(&["sync", &format!("{base}/?token=0000")], None);
    assert!(code == Some(2) && !told.contains("0000"), "{told}");
    let (code, told) = tenter(&["sync", &base], Some(&token));
    assert!(code == Some(0) && told.contains(&format!("{base} took 2 entries from your log")), "{told}");
    assert!(!told.contains(&token), "{told}");
    let (code, told) = tenter(&["sync", &format!("{base}/?token={token}")], None);
    assert!(code == Some(0) && told.starts_with("nothing was new in either log"), "{told}");
    // The desk does not give the tags of the laptop.
    let (_, told) = tenter(&["log", "tags"], None);
    assert!(told.contains("this desk gives the tags 300-399; the next is 301"), "{told}");
    let (code, told) = tenter(&["sync", "https://127.0.0.1"], None);
    assert!(code == Some(2) && told.contains("as tenter serve prints it"), "{told}");
    let (code, told) = tenter(&["sync", "http://127.0.0.1:1"], None);
    assert!(code == Some(2) && told.contains("is tenter serve running"), "{told}");
}

/// Something else that speaks HTTP, or does not.
#[test]
fn what_is_no_tenter_is_told() {
    for answer in [
        "HTTP/1.1 200 OK\r\nContent-Length: 5\r\n\r\nhello",
        "HTTP/1.1 404 Not Found\r\nContent-Length: 0\r\n\r\n",
        "220 mail\r\n",
    ] {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let host = listener.local_addr().unwrap();
        thread::spawn(move || {
            for stream in listener.incoming() {
                let mut stream = stream.unwrap();
                let _ = stream.read(&mut [0; 4096]);
                let _ = stream.write_all(answer.as_bytes());
                let _ = stream.shutdown(Shutdown::Write);
            }
        });
        let mut client = PageClient::new(&format!("http://{host}"), None).unwrap();
        let told = synced(&mut laptop(), &mut client).unwrap_err();
        let is_told = matches!(told, ImportError::Pages(PagesError::Foreign) | ImportError::Line(_));
        assert!(is_told, "{answer}: {told:?}");
    }
}
