//! The program `tenter` itself: that of `TENTER_PROGRAM`, which `tests/run` has just built, or else built here if need be.

use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::sync::LazyLock;

use serde_json::Value;

static PROGRAM: LazyLock<PathBuf> = LazyLock::new(|| {
    if let Some(built) = std::env::var_os("TENTER_PROGRAM") {
        return PathBuf::from(built);
    }
    let mut cargo = Command::new(env!("CARGO"));
    cargo.current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/..")).args(["build", "--package", "tenter"]);
    // What cargo tells this process about this package is not for that build, whose parts are made anew where it changes.
    let told =
        |name: &str| ["CARGO_PKG_", "CARGO_MANIFEST_", "CARGO_CRATE_"].iter().any(|start| name.starts_with(start));
    for (name, _) in std::env::vars_os().filter(|(name, _)| name.to_str().is_some_and(told)) {
        cargo.env_remove(name);
    }
    let output = cargo.args(["--message-format", "json"]).output().expect("cargo starts");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let messages = String::from_utf8(output.stdout).expect("cargo writes text");
    let built = messages.lines().flat_map(serde_json::from_str::<Value>);
    let path = built.filter_map(|message| message["executable"].as_str().map(PathBuf::from)).next();
    path.expect("cargo names the program")
});

/// Where it is.
#[must_use]
pub fn program() -> PathBuf {
    PROGRAM.clone()
}

/// Sends a process a signal, by its name, such as `KILL`; whether it was there to get it. The shell's own `kill`, for a
/// bare machine has no other.
///
/// # Panics
///
/// Where there is no shell.
#[must_use]
pub fn signal(name: &str, process: &str) -> bool {
    let mut shell = Command::new("sh");
    shell.args(["-c", "kill -s \"$1\" \"$2\"", "sh", name.trim_start_matches('-'), process]);
    shell.stderr(Stdio::null()).status().expect("sh starts").success()
}
