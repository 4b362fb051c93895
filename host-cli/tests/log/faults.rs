//! A disk that fails: every call of the system on the log's folder, one at a time and from one on, while a verb writes. Whatever
//! fails, the log is as it was or as it should be, and what is told is true.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use tenter::log::Here;
use tenter::store::{self, Read as _};

use crate::desk::Desk;

/// Each verb that writes, and what is typed to it.
const VERBS: [(&str, &str); 19] = [
    ("cloth add drill --length 2m", ""),
    ("cloth edit 1 --place shelf", ""),
    ("cloth cut 1 10cm", ""),
    ("cloth retire 1", ""),
    ("cloth learned 1 --needle 90", ""),
    ("cloth picture 1 green.png", ""),
    ("pull 1 --marks 10cm --to 11cm", ""),
    ("pull 1 --marks 10cm --to 11cm --by Ruth", ""),
    ("pull 1 --marks 4in --to 5in", ""),
    ("pull 1", "\n\n100mm\nn\n0\n110mm\nf\n"),
    ("pattern add smock - main --crosswise 5%..", ""),
    ("make start coat --use main=1", ""),
    ("wash 1 --lengthwise 50cm-48cm", ""),
    ("log tags 100-199", ""),
    ("log check --rebuild", ""),
    ("import more.jsonl", ""),
    ("import more.csv", ""),
    ("sync other.db", ""),
    ("export out.jsonl", ""),
];

/// Verbs that store step by step: where one was cut off it goes on when it is typed again.
const GOES_ON: [&str; 2] = ["sync", "pattern add"];

/// How a call fails: the error's number (errno of Linux), and whether it is the only one.
const FAULTS: [(i32, &str); 4] = [(5, "once"), (5, "on"), (28, "on"), (28, "short")];

/// What is failed with, built for this run.
fn preload(desk: &Desk) -> PathBuf {
    let library = desk.path("faults.so");
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/log/faults.c");
    let mut compiler = Command::new("cc");
    compiler.args(["-shared", "-fPIC", "-O1", "-o"]).arg(&library).arg(source).arg("-ldl");
    assert!(compiler.status().unwrap().success(), "a C compiler is needed");
    library
}

/// A folder with a log and what verbs read, from which each run begins.
struct Start {
    desk: Desk,
    library: PathBuf,
}

/// What a run left behind.
struct Run {
    output: Output,
    calls: u64,
    /// How many entries the log holds.
    entries: u64,
    /// Whether an export that is there is whole.
    exports: bool,
}

impl Start {
    fn new() -> Self {
        let desk = Desk::new();
        let library = preload(&desk);
        desk.fill_memory("start/log.db");
        desk.ok("start/other.db", &["cloth", "add", "other"]);
        desk.ok("more.db", &["cloth", "add", "more"]);
        desk.ok("more.db", &["export", "start/more.jsonl"]);
        fs::write(desk.path("start/more.csv"), "name,tag,length\nVestry twill,40,2m\n").unwrap();
        desk.swatch("start/green.png", [30, 200, 40]);
        Self { desk, library }
    }

    /// Runs a verb of which a call fails, on a log as it was at the beginning.
    fn run(&self, verb: (&str, &str), at: u64, fault: (i32, &str)) -> Run {
        let folder = self.desk.path("work");
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir(&folder).unwrap();
        for file in fs::read_dir(self.desk.path("start")).unwrap() {
            let file = file.unwrap();
            fs::copy(file.path(), folder.join(file.file_name())).unwrap();
        }
        self.run_again(verb, at, fault)
    }

    /// Runs it on what a run before left.
    fn run_again(&self, (verb, typed): (&str, &str), at: u64, (error, how): (i32, &str)) -> Run {
        let folder = self.desk.path("work");
        let words: Vec<&str> = verb.split(' ').collect();
        let mut command = self.desk.command("work/log.db", &words);
        command.current_dir(&folder).env("LD_PRELOAD", &self.library).env("TENTER_FAULT_UNDER", &folder);
        command.env("TENTER_FAULT_AT", at.to_string()).env("TENTER_FAULT_ERROR", error.to_string());
        command.env("TENTER_FAULT_HOW", how).env("TENTER_FAULT_COUNT", self.desk.path("calls"));
        fs::write(self.desk.path("typed"), typed).unwrap();
        command.stdin(Stdio::from(fs::File::open(self.desk.path("typed")).unwrap()));
        let output = command.output().unwrap();
        let log = store::open(&folder.join("log.db"), Here::desk()).unwrap();
        assert_eq!(log.faults().unwrap(), Vec::new(), "{verb}, call {at}, {error} {how}: {output:?}");
        let out = fs::read_to_string(folder.join("out.jsonl"));
        Run {
            output,
            calls: fs::read_to_string(self.desk.path("calls")).unwrap().parse().unwrap(),
            entries: log.count().unwrap(),
            exports: out.is_ok_and(|text| text.lines().last().is_some_and(|line| line.starts_with("{\"end\":\"log\""))),
        }
    }
}

/// The calls that fail: all of them with `TENTER_THOROUGH=1`, else a few over the whole length, others for each verb.
fn failing(calls: u64, verb: u64) -> Vec<u64> {
    if std::env::var_os("TENTER_THOROUGH").is_some() {
        return (1..=calls).collect();
    }
    // Multiples of the golden ratio fill a length evenly (Weyl).
    let spread = |nth: u64| 1 + ((nth + 3 * verb) * 618_034 % 1_000_000) * calls / 1_000_000;
    (0..2).map(spread).collect()
}

#[test]
fn whatever_call_fails_the_log_is_whole_and_what_is_told_is_true() {
    let start = Start::new();
    let (mut runs, mut told, mut unsure) = (0, 0, 0);
    for (nth, verb) in (0..).zip(VERBS) {
        let well = start.run(verb, 0, FAULTS[0]);
        assert!(well.output.status.code().is_some_and(|code| code != 2), "{verb:?}: {:?}", well.output);
        let before = count_of(&start);
        for fault in FAULTS {
            for at in failing(well.calls, nth) {
                let run = start.run(verb, at, fault);
                let what = format!("{verb:?}, call {at} of {}, {fault:?}: {:?}", well.calls, run.output);
                let error = String::from_utf8_lossy(&run.output.stderr).into_owned();
                let code = run.output.status.code();
                assert!(code.is_some_and(|code| code <= 3), "{what}");
                assert!(!error.contains("panicked"), "{what}");
                runs += 1;
                if code != Some(2) {
                    assert_eq!((run.entries, run.exports), (well.entries, well.exports), "{what}");
                } else if GOES_ON.iter().any(|begun| verb.0.starts_with(begun)) {
                    let again = start.run_again(verb, 0, fault);
                    assert_eq!(again.entries, well.entries, "{what}: typed again {:?}", again.output);
                } else if error.contains("look whether it is there") {
                    unsure += 1;
                    assert!([before, well.entries].contains(&run.entries), "{what}");
                } else {
                    told += 1;
                    assert_eq!((run.entries, run.exports), (before, false), "{what}");
                    assert!(error.lines().filter(|line| line.starts_with("tenter: ")).count() == 1, "{what}");
                }
            }
        }
    }
    println!("{runs} runs with a failing call: {told} told that nothing was done, {unsure} to look, none untrue");
    assert!(told > 30, "{told} of {runs}");
}

fn count_of(start: &Start) -> u64 {
    store::open(&start.desk.path("start/log.db"), Here::desk()).unwrap().count().unwrap()
}
