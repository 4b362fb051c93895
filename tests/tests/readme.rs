//! What the README and the guide tell a reader to type runs, in order, in a fresh log; and what they show is what the
//! program prints.
//!
//! `TENTER_ACCEPT=1 cargo test -p tenter-tests --test readme` writes what is printed anew, to be looked at.

use std::env;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use tempfile::TempDir;
use tenter_tests::program::program;

/// How the README runs the program before it is installed.
const UNINSTALLED: &str = "cargo run --release -p tenter -- ";

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// The README, then the guide.
fn documents() -> Vec<PathBuf> {
    let guide = fs::read_dir(root().join("host-cli/guide")).unwrap().map(|entry| entry.unwrap().path());
    let mut guide: Vec<PathBuf> = guide.filter(|path| path.extension().is_some_and(|ext| ext == "md")).collect();
    guide.sort();
    assert!(guide.len() > 5, "{guide:?}");
    [vec![root().join("README.md")], guide].concat()
}

/// A reader at a desk of his own, with an empty log.
struct Reader {
    folder: TempDir,
    path: OsString,
}

impl Reader {
    fn new() -> Self {
        let program = program();
        let paths = env::var_os("PATH").unwrap();
        let paths = std::iter::once(program.parent().unwrap().to_owned()).chain(env::split_paths(&paths));
        Self { folder: tempfile::tempdir().unwrap(), path: env::join_paths(paths).unwrap() }
    }

    fn types(&self, line: &str) -> Output {
        let mut bash = Command::new("bash");
        bash.args(["-o", "pipefail", "-c", line]).current_dir(self.folder.path()).stdin(Stdio::null());
        bash.env("PATH", &self.path).env("HOME", self.folder.path()).env_remove("TENTER_DB").env_remove("TENTER_PORT");
        bash.env("XDG_DATA_HOME", self.folder.path()).env("TZ", "UTC").env("COLUMNS", "80").env("LC_ALL", "C.UTF-8");
        bash.output().unwrap()
    }
}

/// Whether a line talks to a handheld, which the tests of `tenter device` do with one of their own: here it is only read.
fn needs_a_handheld(line: &str) -> bool {
    ["list", "sync", "demands", "clock"].iter().any(|verb| line.starts_with(&format!("tenter device {verb}")))
}

/// The words of a line as a shell splits them; a comment ends it.
fn words(line: &str) -> Vec<String> {
    let script = format!("printf '%s\\n' {line}");
    let output = Command::new("bash").args(["-c", &script]).output().unwrap();
    String::from_utf8(output.stdout).unwrap().lines().map(str::to_owned).collect()
}

/// Runs an example; what was printed.
fn run(reader: &Reader, place: &str, line: &str) -> String {
    let line = line.strip_prefix(UNINSTALLED).map_or_else(|| line.to_owned(), |rest| format!("tenter {rest}"));
    if needs_a_handheld(&line) {
        assert!(tenter::cli::parse(words(&line)).is_ok(), "{place}: {line}");
        return String::new();
    }
    let output = reader.types(&line);
    let told = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(matches!(output.status.code(), Some(0 | 1 | 3)), "{place}: {line}: {told}");
    assert!(!told.contains("bash:") && !told.contains("tenter: "), "{place}: {line}: {told}");
    String::from_utf8(output.stdout).unwrap()
}

/// A document as it should be, after all of its examples ran.
fn as_printed(path: &Path, ran: &mut usize) -> String {
    let place = path.file_name().unwrap().to_string_lossy().into_owned();
    let text = fs::read_to_string(path).unwrap();
    let reader = Reader::new();
    let mut made = String::new();
    let mut lines = text.lines();
    while let Some(line) = lines.next() {
        made.push_str(line);
        made.push('\n');
        let Some(kind) = line.strip_prefix("```").filter(|kind| !kind.is_empty()) else { continue };
        let mut block: Vec<&str> = lines.by_ref().take_while(|line| *line != "```").collect();
        if kind == "sh" {
            let typed = |line: &&&str| ["tenter ", "printf ", UNINSTALLED].iter().any(|start| line.starts_with(start));
            for line in block.iter().filter(typed) {
                run(&reader, &place, line);
                *ran += 1;
            }
        } else if kind == "console" {
            let typed: Vec<&str> = block.iter().filter_map(|line| line.strip_prefix("$ ")).collect();
            assert_eq!(typed.len(), 1, "{place}: one command a block: {block:?}");
            made.push_str(block[0]);
            made.push('\n');
            made.push_str(&run(&reader, &place, typed[0]));
            block.clear();
            *ran += 1;
        }
        block.iter().for_each(|line| made.extend([*line, "\n"]));
        made.push_str("```\n");
    }
    made
}

#[test]
fn every_example_runs_and_prints_what_is_shown() {
    let (mut ran, mut changed) = (0, Vec::new());
    for path in documents() {
        let made = as_printed(&path, &mut ran);
        if env::var_os("TENTER_ACCEPT").is_some() {
            fs::write(&path, &made).unwrap();
        }
        if fs::read_to_string(&path).unwrap() != made {
            changed.push(format!("{}:\n{made}", path.display()));
        }
    }
    assert!(changed.is_empty(), "look at these, then accept them: {}", changed.join("\n\n"));
    assert!(ran > 40, "{ran} examples ran");
}

/// The two commands that a newcomer types first.
#[test]
fn the_two_commands_stand_near_the_top() {
    let readme = fs::read_to_string(root().join("README.md")).unwrap();
    let top: Vec<&str> = readme.lines().take(45).collect();
    assert!(top.iter().any(|line| line.starts_with(&format!("{UNINSTALLED}check "))), "{top:?}");
    assert!(top.contains(&"tests/run") && root().join("tests/run").is_file(), "{top:?}");
}

/// What a link of README, guide or hardware notes leads to is there.
#[test]
fn links_lead_somewhere() {
    let notes = fs::read_dir(root().join("hardware-notes")).unwrap().map(|entry| entry.unwrap().path());
    let notes = notes.filter(|path| path.extension().is_some_and(|ext| ext == "md"));
    for path in documents().into_iter().chain(notes).chain([root().join("DEVELOPERS.md")]) {
        let text = fs::read_to_string(&path).unwrap();
        let linked = text.split("](").skip(1).filter_map(|rest| rest.split(')').next());
        for link in linked.filter(|link| !link.starts_with("http")) {
            let (file, heading) = link.split_once('#').unwrap_or((link, ""));
            let target = if file.is_empty() { path.clone() } else { path.parent().unwrap().join(file) };
            assert!(target.exists(), "{}: {link}", path.display());
            if !heading.is_empty() {
                let there = fs::read_to_string(&target).unwrap();
                let mut heads = there.lines().filter_map(|line| line.strip_prefix('#'));
                let slug = |head: &str| head.trim_start_matches('#').trim().to_lowercase().replace(' ', "-");
                assert!(heads.any(|head| slug(head) == heading), "{}: {link}", path.display());
            }
        }
    }
}
