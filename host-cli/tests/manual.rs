//! Completions and manual pages hold every verb and flag of the one definition.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // A test says what it expected.

use std::process::{Command, Output};

fn tenter(words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_tenter")).args(words).output().expect("the program starts")
}

/// Every command with the words that lead to it.
fn commands(command: &clap::Command, path: &str, found: &mut Vec<(String, clap::Command)>) {
    found.push((path.to_owned(), command.clone()));
    for below in command.get_subcommands() {
        commands(below, &format!("{path}-{}", below.get_name()), found);
    }
}

fn definition() -> Vec<(String, clap::Command)> {
    let mut found = Vec::new();
    commands(&tenter::cli::definition(), "tenter", &mut found);
    assert!(found.len() > 20, "{}", found.len());
    found
}

#[test]
fn completions_know_every_verb_and_flag() {
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let output = tenter(&["completions", shell]);
        assert!(output.status.success());
        let text = String::from_utf8(output.stdout).unwrap();
        for (path, command) in definition() {
            assert!(text.contains(command.get_name()), "{shell}: {path}");
            for flag in command.get_arguments().filter_map(clap::Arg::get_long) {
                assert!(text.contains(flag), "{shell}: {path} --{flag}");
            }
        }
    }
}

/// A real bash completes `tenter cloth sh` to `show` after reading the completions.
#[test]
fn bash_completes_a_verb() {
    let script = r#"
        source <("$1" completions bash)
        COMP_WORDS=(tenter cloth sh) COMP_CWORD=2
        _tenter tenter sh stash
        echo "${COMPREPLY[@]}"
    "#;
    let output = Command::new("bash").args(["-c", script, "bash", env!("CARGO_BIN_EXE_tenter")]).output();
    let output = output.expect("bash starts");
    assert_eq!(String::from_utf8_lossy(&output.stdout).trim(), "show", "{output:?}");
}

#[test]
fn manual_pages_hold_every_flag() {
    let folder = tempfile::tempdir().unwrap();
    let output = tenter(&["man", "--out", folder.path().to_str().unwrap()]);
    assert!(output.status.success(), "{output:?}");
    for (path, command) in definition() {
        let page = std::fs::read_to_string(folder.path().join(format!("{path}.1")))
            .unwrap_or_else(|error| panic!("{path}: {error}"));
        let plain = page.replace("\\-", "-");
        for flag in command.get_arguments().filter_map(clap::Arg::get_long) {
            assert!(plain.contains(&format!("--{flag}")), "{path} --{flag}");
        }
    }
    let main = tenter(&["man"]);
    assert!(String::from_utf8_lossy(&main.stdout).contains(".TH tenter 1"), "{main:?}");
}

#[test]
fn a_file_as_folder_is_told_in_one_line() {
    let file = tempfile::NamedTempFile::new().unwrap();
    let output = tenter(&["man", "--out", file.path().join("below").to_str().unwrap()]);
    let complaint = String::from_utf8(output.stderr).unwrap();
    assert_eq!((output.status.code(), complaint.lines().count()), (Some(2), 1), "{complaint}");
}
