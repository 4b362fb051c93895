//! The app for a phone, built, put on a web space of this machine and opened in a real browser that can be killed.

use std::io::{self, BufRead as _, BufReader, Write as _};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};
use std::sync::LazyLock;

use serde_json::{Value, json};

use crate::browser;
use crate::program::program;

/// What `host-cli/phone/build` says: the module's path, and its sizes.
static BUILT: LazyLock<String> = LazyLock::new(|| {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("../host-cli/phone/build");
    let mut command = Command::new(script);
    // Of the test's own compiler; another one may have to run here.
    let output = command.env_remove("LD_LIBRARY_PATH").output().expect("host-cli/phone/build starts");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).expect("host-cli/phone/build writes text")
});

/// The app's module, packed; built if need be.
#[must_use]
pub fn module() -> PathBuf {
    PathBuf::from(BUILT.lines().next().unwrap_or_default())
}

/// What the build says of the module's size: `wasm`, `gzip` and `brotli`, each with its bytes.
#[must_use]
pub fn sizes() -> String {
    BUILT.lines().nth(1).unwrap_or_default().to_owned()
}

/// Writes the app with `tenter phone`, which must succeed; what it said.
#[must_use]
pub fn write_app(options: &[&str]) -> String {
    let mut command = Command::new(program());
    let output = command.arg("phone").args(options).arg("--module").arg(module()).output().expect("tenter starts");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8_lossy(&output.stdout).into_owned()
}

/// A browser with a web server beside it. Dropped, both end.
#[derive(Debug)]
pub struct Phone {
    child: Child,
    to: ChildStdin,
    from: BufReader<ChildStdout>,
}

impl Phone {
    /// Starts what drives the browser; the browser itself is started by the command `launch`.
    ///
    /// # Errors
    ///
    /// When browser, Node or their packages are missing.
    pub fn start() -> io::Result<Self> {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR"));
        let mut node = Command::new("node");
        node.arg(folder.join("browser/phone.mjs")).arg(folder.join("../target/browser"));
        node.arg(browser::find("chromium")?).stdin(Stdio::piped()).stdout(Stdio::piped());
        let mut child = node.spawn()?;
        let pipes = child.stdin.take().zip(child.stdout.take());
        let (to, from) = pipes.ok_or_else(|| io::Error::other("no pipes"))?;
        Ok(Self { child, to, from: BufReader::new(from) })
    }

    /// Does what it is told, as `tests/browser/phone.mjs` lists it.
    ///
    /// # Errors
    ///
    /// What the browser says.
    pub fn tell(&mut self, what: &str, with: Value) -> io::Result<Value> {
        let mut command = with;
        command["do"] = json!(what);
        writeln!(self.to, "{command}")?;
        let mut line = String::new();
        self.from.read_line(&mut line)?;
        let mut answer: Value = serde_json::from_str(&line)?;
        match answer.get("failed") {
            Some(failed) => Err(io::Error::other(format!("{what}: {}", failed.as_str().unwrap_or_default()))),
            None => Ok(answer["done"].take()),
        }
    }
}

impl Drop for Phone {
    fn drop(&mut self) {
        // Its standard input ends with this; then it closes the browser.
        drop(self.tell("close", json!({})));
        drop(self.child.kill());
        drop(self.child.wait());
    }
}
