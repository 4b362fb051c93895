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
            // What is hidden is for tests.
            for flag in command.get_arguments().filter(|flag| !flag.is_hide_set()).filter_map(clap::Arg::get_long) {
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
        // A hidden flag is for tests, and no reader's.
        let shown = command.get_arguments().filter(|flag| !flag.is_hide_set());
        for flag in shown.filter_map(clap::Arg::get_long) {
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

/// The examples of a help text: what stands six columns in, a backslash joining a line to the next.
fn examples(help: &str) -> Vec<String> {
    let joined = help.replace("\\\n", " ");
    let shown = joined.lines().filter_map(|line| line.strip_prefix("      ")).filter(|line| !line.starts_with(' '));
    shown.map(str::to_owned).collect()
}

/// Whether a line talks to a handheld on a port, which no desk of a test has, runs until Ctrl-C, or needs the app's module,
/// which the tests of the app build: it is read, and not run.
fn is_only_read(line: &str) -> bool {
    line.contains("--port /dev/") || line.split_whitespace().any(|word| matches!(word, "serve" | "phone"))
}

/// Every verb and sub-verb teaches by an example, and every example runs as it stands, in order, in the samples.
#[test]
fn every_help_has_examples_and_they_run() {
    let program = std::path::Path::new(env!("CARGO_BIN_EXE_tenter"));
    let mut run = 0;
    for (path, command) in definition() {
        let help = command.get_after_help().map(ToString::to_string).unwrap_or_default();
        let examples = examples(&help);
        assert!(help.starts_with("Examples:\n") && !examples.is_empty(), "{path} teaches by no example: {help}");
        // An example of a verb shows this verb.
        let shown = path.replace('-', " ");
        assert!(examples.iter().any(|line| line.replace('-', " ").contains(&shown)), "{path}: {examples:?}");
        let folder = tempfile::tempdir().unwrap();
        let desk = |line: &str| {
            let mut command = Command::new("bash");
            command.args(["-o", "pipefail", "-c", line]).current_dir(folder.path()).stdin(std::process::Stdio::null());
            let path = std::env::join_paths(
                [program.parent().unwrap().to_owned()]
                    .into_iter()
                    .chain(std::env::split_paths(&std::env::var_os("PATH").unwrap())),
            );
            command.env("PATH", path.unwrap()).env("TENTER_DB", "log.sqlite3").env("HOME", folder.path());
            command.output().unwrap()
        };
        assert!(desk("tenter demo log.sqlite3").status.success());
        for line in examples.iter().filter(|line| line.starts_with("tenter ") || line.starts_with("printf ")) {
            if is_only_read(line) {
                let words: Vec<&str> = line.split_whitespace().map(|word| word.trim_matches('\'')).collect();
                // A quoted name of two words is two here, which no flag of the device minds.
                assert!(tenter::cli::parse(words.iter().filter(|word| **word != "trousers")).is_ok(), "{path}: {line}");
                continue;
            }
            let output = desk(line);
            let code = output.status.code();
            assert!(matches!(code, Some(0 | 1 | 3)), "{path}: {line}: {output:?}");
            let told = String::from_utf8_lossy(&output.stderr);
            assert!(!told.contains("bash:") && !told.contains("tenter: "), "{path}: {line}: {told}");
            run += 1;
        }
    }
    assert!(run > 70, "{run} examples ran");
}
