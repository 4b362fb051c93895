//! The server, and requests over a plain socket.

use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::TcpStream;
use std::path::PathBuf;
use std::process::{Child, ChildStdout, Command, Stdio};

use tempfile::TempDir;
use tenter_tests::program::program;

/// The log of the samples that `tenter demo` makes.
const EVENING: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../host-cli/demo/evening.jsonl");

/// A server that ends with the value.
pub struct Server {
    child: Child,
    said: BufReader<ChildStdout>,
    /// `127.0.0.1:40123`
    pub host: String,
    /// What it printed first.
    pub address: String,
    folder: TempDir,
}

/// What was answered.
#[derive(Debug)]
pub struct Answer {
    pub status: u16,
    pub heads: Vec<(String, String)>,
    pub body: Vec<u8>,
}

impl Answer {
    pub fn head(&self, name: &str) -> &str {
        self.heads.iter().find(|(found, _)| found == name).map(|(_, value)| value.as_str()).unwrap_or_default()
    }

    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.body).into_owned()
    }
}

impl Server {
    /// With the samples.
    pub fn evening() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let db = folder.path().join("log.sqlite3");
        let import = Command::new(program()).arg("--db").arg(&db).args(["import", EVENING]).output().unwrap();
        assert!(import.status.success(), "{}", String::from_utf8_lossy(&import.stderr));
        Self::over(db.to_str().unwrap(), &[], folder)
    }

    /// With an empty log, and options.
    pub fn empty(options: &[&str]) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let db = folder.path().join("log.sqlite3");
        Self::over(db.to_str().unwrap(), options, folder)
    }

    /// Over a log.
    pub fn over(db: &str, options: &[&str], folder: TempDir) -> Self {
        let mut command = Command::new(program());
        command.args(["--db", db, "serve", "--port", "0", "--no-open"]).args(options);
        command.env("TZ", "UTC").env("HOME", folder.path()).env("XDG_DATA_HOME", folder.path());
        let mut child = command.stdout(Stdio::piped()).stderr(Stdio::inherit()).spawn().unwrap();
        let mut said = BufReader::new(child.stdout.take().unwrap());
        let mut line = String::new();
        said.read_line(&mut line).unwrap();
        let address = line.trim().strip_prefix("open  ").expect("the address first").to_owned();
        let host = address.trim_start_matches("http://").split('/').next().unwrap().to_owned();
        Self { child, said, host, address, folder }
    }

    pub fn db(&self) -> PathBuf {
        self.folder.path().join("log.sqlite3")
    }

    pub fn base(&self) -> String {
        format!("http://{}", self.host)
    }

    /// Sends bytes as they are; all that comes back until the other side closes.
    pub fn raw(&self, bytes: &[u8]) -> Vec<u8> {
        let mut stream = TcpStream::connect(&self.host).unwrap();
        // A server that has heard enough may close before all is sent.
        let _ = stream.write_all(bytes);
        let mut said = Vec::new();
        let _ = stream.read_to_end(&mut said);
        said
    }

    /// Sends a request; none where nothing came back.
    pub fn ask(&self, method: &str, target: &str, heads: &str, body: &[u8]) -> Option<Answer> {
        let mut request =
            format!("{method} {target} HTTP/1.1\r\nConnection: close\r\nContent-Length: {}\r\n{heads}\r\n", body.len())
                .into_bytes();
        request.extend(body);
        parsed(&self.raw(&request))
    }

    pub fn get(&self, target: &str) -> Answer {
        self.ask("GET", target, &format!("Host: {}\r\n", self.host), b"").unwrap()
    }

    /// Sends a form as a browser does.
    pub fn post(&self, target: &str, fields: &[(&str, &str)]) -> Answer {
        let heads = format!(
            "Host: {0}\r\nOrigin: http://{0}\r\nContent-Type: application/x-www-form-urlencoded\r\n",
            self.host
        );
        let pairs: Vec<String> =
            fields.iter().map(|(name, value)| format!("{}={}", coded(name), coded(value))).collect();
        self.ask("POST", target, &heads, pairs.join("&").as_bytes()).unwrap()
    }

    /// How many entries the log holds.
    pub fn count(&self) -> usize {
        self.get("/log/tenter-log.jsonl").text().lines().count()
    }

    /// Asks it to end, and waits; its exit code, and the last that it said.
    pub fn end(mut self, signal: &str) -> (Option<i32>, String) {
        let id = self.child.id().to_string();
        assert!(tenter_tests::program::signal(signal, &id));
        let code = self.child.wait().unwrap().code();
        let mut said = String::new();
        self.said.read_to_string(&mut said).unwrap();
        (code, said)
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// A text as a form sends it.
fn coded(text: &str) -> String {
    let coded = |byte: u8| match byte {
        b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' => char::from(byte).to_string(),
        other => format!("%{other:02X}"),
    };
    text.bytes().map(coded).collect()
}

fn parsed(said: &[u8]) -> Option<Answer> {
    let end = said.windows(4).position(|four| four == b"\r\n\r\n")?;
    let head = String::from_utf8_lossy(&said[..end]).into_owned();
    let mut lines = head.lines();
    let status = lines.next()?.split(' ').nth(1)?.parse().ok()?;
    let heads =
        lines.filter_map(|line| line.split_once(": ")).map(|(name, value)| (name.to_lowercase(), value.to_owned()));
    Some(Answer { status, heads: heads.collect(), body: said[end + 4..].to_vec() })
}

/// The value of a hidden field of a form.
pub fn field(page: &str, form: &str, name: &str) -> String {
    let form = page.split("<form").find(|one| one.contains(&format!("id=\"{form}\""))).expect("the form");
    let input = form.split("<input").find(|one| one.contains(&format!("name=\"{name}\""))).expect("the field");
    input.split("value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned()
}
