//! `tenter device` as a user runs it without a handheld: what it says is missing, and what to type.

#![allow(clippy::unwrap_used, clippy::expect_used)] // A test says what it expected.

use std::net::TcpListener;
use std::process::{Command, Output};

/// The program with a log of its own and no handheld anywhere.
fn tenter(words: &str, port: Option<&str>) -> Output {
    let folder = tempfile::tempdir().unwrap();
    let mut command = Command::new(env!("CARGO_BIN_EXE_tenter"));
    command.args(words.split(' ')).env("TENTER_DB", folder.path().join("log.sqlite3")).env_remove("TENTER_PORT");
    command.envs(port.map(|port| ("TENTER_PORT", port))).output().expect("the program starts")
}

/// Its one line of complaint.
fn complaint(words: &str, port: Option<&str>) -> String {
    let output = tenter(words, port);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    assert!(output.stdout.is_empty(), "{output:?}");
    let text = String::from_utf8(output.stderr).unwrap();
    assert_eq!(text.lines().count(), 1, "{text}");
    text
}

#[test]
fn without_a_port_it_says_which_there_are() {
    for verb in ["list", "sync", "clock", "demands --clear"] {
        for port in [None, Some(""), Some(" ")] {
            let text = complaint(&format!("device {verb}"), port);
            assert!(text.starts_with("tenter: ") && text.contains("pass --port "), "{text}");
            assert!(text.contains("--port "), "{text}");
        }
    }
}

#[test]
fn the_environment_says_which_port_and_the_flag_overrules_it() {
    let text = complaint("device list", Some("tcp:here"));
    assert!(text.contains("cannot open 'tcp:here'"), "{text}");
    let text = complaint("device list --port tcp:there", Some("tcp:here"));
    assert!(text.contains("cannot open 'tcp:there'"), "{text}");
}

#[test]
fn a_line_without_a_handheld_is_given_up() {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = format!("tcp:{}", listener.local_addr().unwrap());
    std::thread::spawn(move || drop(listener.accept().unwrap()));
    let text = complaint("device sync", Some(&address));
    assert!(text.contains("plug it in and try again"), "{text}");
}

#[test]
fn what_needs_no_handheld_asks_for_none() {
    let output = tenter("device inbox", None);
    assert_eq!(String::from_utf8(output.stdout).unwrap(), "every test has its cloth\n");
    let text = complaint("device demands skirt B", None);
    assert!(text.starts_with("tenter: there is no pattern yet; "), "{text}");
}

/// A container need not show the system's devices.
#[cfg(target_os = "linux")]
#[test]
fn a_machine_that_shows_no_devices_has_no_port() {
    let script = r#"mount -t tmpfs none /sys && exec "$0" device list"#;
    let mut command = Command::new("unshare");
    command
        .args(["--map-root-user", "--mount", "sh", "-c", script, env!("CARGO_BIN_EXE_tenter")])
        .env_remove("TENTER_PORT");
    let output = command.output().expect("unshare starts");
    let text = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2), "{text}");
    assert!(text.starts_with("tenter: ") && text.lines().count() == 1, "{text}");
}
