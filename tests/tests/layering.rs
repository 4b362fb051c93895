//! Who may depend on whom: crates, after `cargo metadata`, and the modules of core, after its sources.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;

const CORE: &str = "tenter-core";
const FIRMWARE: &str = "tenter-firmware";
const HOST: &str = "tenter";

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap()
}

/// The packages of the workspace and of all it needs.
struct Packages {
    /// By package identifier.
    all: BTreeMap<String, Value>,
    /// What each needs to be built: normal and build dependencies, not those of its tests.
    needs: BTreeMap<String, Vec<String>>,
}

impl Packages {
    fn read() -> Self {
        let mut cargo = Command::new(env!("CARGO"));
        let output = cargo.current_dir(root()).args(["metadata", "--format-version", "1"]).output().unwrap();
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        let metadata: Value = serde_json::from_slice(&output.stdout).unwrap();
        let list = |value: &Value| value.as_array().unwrap().clone();
        let id = |value: &Value| value.as_str().unwrap().to_string();
        let all = list(&metadata["packages"]).into_iter().map(|package| (id(&package["id"]), package)).collect();
        let needed = |node: &Value| {
            let deps = list(&node["deps"]).into_iter();
            let built = deps.filter(|dep| list(&dep["dep_kinds"]).iter().any(|kind| kind["kind"] != "dev"));
            built.map(|dep| id(&dep["pkg"])).collect()
        };
        let nodes = list(&metadata["resolve"]["nodes"]);
        Self { all, needs: nodes.iter().map(|node| (id(&node["id"]), needed(node))).collect() }
    }

    fn named(&self, name: &str) -> &Value {
        self.all.values().find(|package| package["name"] == name).unwrap()
    }

    /// Everything that `name` needs, directly or not, itself included.
    fn reach(&self, name: &str) -> BTreeSet<&str> {
        let mut open = vec![self.named(name)["id"].as_str().unwrap()];
        let mut seen = BTreeSet::new();
        while let Some(id) = open.pop() {
            if seen.insert(id) {
                open.extend(self.needs[id].iter().map(String::as_str));
            }
        }
        seen
    }

    fn reach_names(&self, name: &str) -> BTreeSet<&str> {
        self.reach(name).into_iter().map(|id| self.all[id]["name"].as_str().unwrap()).collect()
    }
}

fn assert_never(packages: &Packages, name: &str, forbidden: &[&str]) {
    let reach = packages.reach_names(name);
    let found: Vec<_> = forbidden.iter().filter(|other| reach.contains(*other)).collect();
    assert!(found.is_empty(), "{name} needs {found:?}");
}

#[test]
fn core_needs_what_it_says_and_no_more() {
    let packages = Packages::read();
    let declared = packages.named(CORE)["dependencies"].as_array().unwrap();
    let names = |optional: bool| -> BTreeSet<&str> {
        let ours = declared.iter().filter(|dep| dep["kind"].is_null() && dep["optional"] == optional);
        ours.map(|dep| dep["name"].as_str().unwrap()).collect()
    };
    assert_eq!(names(false), BTreeSet::from(["cobs", "crc", "heapless", "libm", "micromath", "postcard", "serde"]));
    assert_eq!(names(true), BTreeSet::from(["defmt"]));
    for dep in declared.iter().filter(|dep| dep["kind"].is_null()) {
        let features: Vec<_> = dep["features"].as_array().unwrap().iter().filter_map(Value::as_str).collect();
        let allocates = features.iter().any(|feature| ["std", "use-std", "alloc"].contains(feature));
        assert!(!allocates, "{} with {features:?}", dep["name"]);
    }
    assert_never(
        &packages,
        CORE,
        &[FIRMWARE, HOST, "embedded-hal", "embedded-graphics", "clap", "rusqlite", "serde_json", "libc", "rand"],
    );
}

#[test]
fn firmware_and_host_meet_in_core_only() {
    let packages = Packages::read();
    for name in [FIRMWARE, HOST] {
        assert!(packages.reach_names(name).contains(CORE), "{name} does not need core: is the graph read rightly?");
    }
    assert_never(&packages, FIRMWARE, &[HOST, "rusqlite", "libsqlite3-sys", "clap", "serde_json", "libc"]);
    assert_never(&packages, HOST, &[FIRMWARE, "embedded-hal", "embedded-graphics"]);
    assert_never(&packages, HOST, &["tenter-tests"]);
}

/// `1.89` or `1.89.0` as numbers.
fn version(text: &str) -> [u32; 3] {
    let mut parts = text.split('.').map(|part| part.parse().unwrap());
    [(); 3].map(|()| parts.next().unwrap_or(0))
}

#[test]
fn the_stated_rust_version_is_no_older_than_that_of_any_package_needed() {
    let packages = Packages::read();
    let stated = |package: &Value| package["rust_version"].as_str().map(version);
    for name in [CORE, FIRMWARE, HOST] {
        let ours = stated(packages.named(name)).unwrap();
        let reach = packages.reach(name);
        let newer = reach.iter().filter(|id| stated(&packages.all[**id]).is_some_and(|theirs| theirs > ours));
        assert_eq!(newer.collect::<Vec<_>>(), Vec::<&&str>::new(), "{name} states {ours:?}");
    }
}

/// Every `.rs` file below a folder, build output left out.
fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy();
        if path.is_dir() && name != "target" && !name.starts_with('.') {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(path);
        }
    }
    found
}

/// The lines of a source that are no comment, numbered from 1.
fn code(text: &str) -> impl Iterator<Item = (usize, &str)> {
    (1..).zip(text.lines()).filter(|(_, line)| !line.trim_start().starts_with("//"))
}

#[test]
fn no_source_is_long() {
    let files = sources(root());
    assert!(files.len() > 30, "only {} sources found", files.len());
    for file in files {
        let lines = fs::read_to_string(&file).unwrap().lines().count();
        assert!(lines <= 600, "{} has {lines} lines", file.display());
    }
}

#[test]
fn core_and_firmware_are_no_std_without_unsafe_code() {
    for folder in ["core/src", "firmware/src"] {
        let folder = root().join(folder);
        let lib = fs::read_to_string(folder.join("lib.rs")).unwrap();
        assert!(lib.lines().any(|line| line == "#![no_std]"), "{}", folder.display());
        for file in sources(&folder) {
            let text = fs::read_to_string(&file).unwrap();
            let word = |line: &str| line.split(|c: char| !c.is_alphanumeric() && c != '_').any(|word| word == "unsafe");
            let unsafe_lines: Vec<_> = code(&text).filter(|(_, line)| word(line)).collect();
            assert!(unsafe_lines.is_empty(), "{}: {unsafe_lines:?}", file.display());
        }
    }
}

/// The machine's time of day and zone are read in one place only.
#[test]
fn only_one_place_reads_the_time_of_day() {
    let reads = |text: &str| {
        let names = ["TimeZone::system", "Timestamp::now", "SystemTime", "Zoned::now"];
        code(text).any(|(_, line)| names.iter().any(|name| line.contains(name)))
    };
    let found =
        sources(&root().join("host-cli/src")).into_iter().filter(|file| reads(&fs::read_to_string(file).unwrap()));
    let folder = root().join("host-cli/src");
    let found: Vec<_> = found.map(|file| file.strip_prefix(&folder).unwrap().to_owned()).collect();
    assert_eq!(found, [Path::new("log/here.rs")]);
}

/// The folders of a crate in their order: a folder may use itself and those before it. Folders in one row may not use
/// each other.
type Order = &'static [&'static [&'static str]];

const CORE_FOLDERS: Order = &[&["number"], &["reading"], &["statistics"], &["answer"], &["making"], &["wire"]];

/// The folders of the host's program in their order, single files beside them included.
const HOST_FOLDERS: Order = &[
    &["plain"],
    &["log"],
    &["store"],
    &["link"],
    &["input"],
    &["exchange"],
    &["finding"],
    &["deed"],
    &["words"],
    &["picture"],
    &["text", "json", "page"],
    &["guide"],
    &["web"],
    &["error"],
    &["serve"],
    &["app"],
    &["whole_file"],
    &["cli"],
    &["command"],
];

/// The first name after each `crate::` in a source, those of a braced list one by one.
fn used(text: &str) -> BTreeSet<String> {
    let text: String = code(text).map(|(_, line)| line.to_string() + " ").collect();
    let first_name =
        |path: &str| -> String { path.trim().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect() };
    let mut names = BTreeSet::new();
    for path in text.split("crate::").skip(1) {
        let Some(list) = path.strip_prefix('{') else {
            names.insert(first_name(path));
            continue;
        };
        let (mut depth, mut start) = (0, 0);
        for (at, c) in list.char_indices() {
            if depth == 0 && (c == ',' || c == '}') {
                names.insert(first_name(&list[start..at]));
                start = at + 1;
            }
            match c {
                '{' => depth += 1,
                '}' if depth == 0 => break,
                '}' => depth -= 1,
                _ => {}
            }
        }
    }
    names.remove("");
    names
}

/// Checks a crate's folders against their order.
fn assert_order(source: &str, order: Order) {
    let place = |name: &str| order.iter().position(|row| row.contains(&name));
    let folder = root().join(source);
    let (mut uses, mut wrong) = (0, Vec::new());
    for file in sources(&folder) {
        let inside = file.strip_prefix(&folder).unwrap();
        if ["lib.rs", "main.rs"].iter().any(|top| inside == Path::new(top)) {
            continue;
        }
        let top = Path::new(inside.iter().next().unwrap()).file_stem().unwrap().to_str().unwrap();
        let mine = place(top);
        assert!(mine.is_some(), "{source}/{top} stands in no layer");
        for name in used(&fs::read_to_string(&file).unwrap()) {
            if name == top {
                continue;
            }
            uses += 1;
            let allowed = match (mine, place(&name)) {
                (Some(mine), Some(theirs)) => theirs < mine,
                _ => false,
            };
            if !allowed {
                wrong.push(format!("{} uses {name}", inside.display()));
            }
        }
    }
    assert!(uses > 40, "only {uses} uses found");
    assert_eq!(wrong, Vec::<String>::new());
}

#[test]
fn core_folders_use_only_those_before_them() {
    assert_order("core/src", CORE_FOLDERS);
}

#[test]
fn host_folders_use_only_those_before_them() {
    assert_order("host-cli/src", HOST_FOLDERS);
}

#[test]
fn the_layers_are_those_in_the_documentation() {
    let text = fs::read_to_string(root().join("core/README.md")).unwrap();
    let rows = text.lines().filter_map(|line| line.strip_prefix("| ")?.split('|').next()).skip(1);
    let rows: Vec<&str> = rows.map(|row| row.trim().trim_matches(['[', ']', '`'])).collect();
    assert_eq!(rows, CORE_FOLDERS.concat());
}

/// One module style: a module with parts of its own is `mod.rs` in a folder, never a file beside the folder.
#[test]
fn modules_with_parts_are_folders() {
    for file in sources(root()) {
        assert!(!file.with_extension("").is_dir(), "{} stands beside a folder of its name", file.display());
    }
}

/// The name of a public type that a line begins to define.
fn defined(line: &str) -> Option<&str> {
    let rest = line.trim_start().strip_prefix("pub ")?;
    let kinds = ["struct ", "enum ", "trait ", "type ", "union "];
    let rest = kinds.iter().find_map(|kind| rest.strip_prefix(kind))?;
    rest.split(|c: char| !c.is_alphanumeric() && c != '_').next()
}

/// A reader who meets a name knows which type it is. The boards are programs of their own and name their parts alike.
#[test]
fn each_public_type_has_a_name_of_its_own() {
    let mut places: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for folder in ["core/src", "firmware/src", "host-cli/src"] {
        for file in sources(&root().join(folder)) {
            let text = fs::read_to_string(&file).unwrap();
            for (number, name) in code(&text).filter_map(|(number, line)| Some((number, defined(line)?))) {
                places.entry(name.to_owned()).or_default().push(format!("{}:{number}", file.display()));
            }
        }
    }
    assert!(places.len() > 400, "only {} types found", places.len());
    places.retain(|_, places| places.len() > 1);
    assert_eq!(places, BTreeMap::new());
}

#[test]
fn definitions_are_read_rightly() {
    let lines = [
        "pub struct Cloth {",
        "    pub type Log<'a> = u8;",
        "pub(crate) enum Hidden {",
        "pub fn cloth() {",
        "struct Own;",
    ];
    assert_eq!(lines.map(defined), [Some("Cloth"), Some("Log"), None, None, None]);
}

/// The string literals of a source, without comments, attributes and its own tests, each with its line.
fn literals(text: &str) -> Vec<(usize, String)> {
    let own = text.split("\nmod tests {").next().unwrap();
    let (mut found, mut line, mut chars) = (Vec::new(), 1, own.chars().peekable());
    let mut start_of_line = String::new();
    while let Some(c) = chars.next() {
        let rest: String = start_of_line.trim_start().to_owned();
        let is_skipped = rest.starts_with("#[") || rest.starts_with("//");
        match c {
            '\n' => {
                line += 1;
                start_of_line.clear();
                continue;
            }
            '/' if start_of_line.ends_with('/') => {
                while chars.peek().is_some_and(|c| *c != '\n') {
                    chars.next();
                }
            }
            '\'' if chars.peek() == Some(&'"') => {
                chars.next();
            }
            '"' => {
                let (first, mut literal) = (line, String::new());
                while let Some(c) = chars.next() {
                    match c {
                        '"' => break,
                        '\\' => {
                            // An escape, or a line that goes on below.
                            if chars.next() == Some('\n') {
                                line += 1;
                                literal.push(' ');
                            }
                        }
                        c => {
                            line += usize::from(c == '\n');
                            literal.push(c);
                        }
                    }
                }
                if !is_skipped {
                    found.push((first, literal));
                }
            }
            _ => {}
        }
        start_of_line.push(c);
    }
    found
}

/// Whether three words of English follow each other.
fn is_a_sentence(text: &str) -> bool {
    let is_word = |word: &str| {
        let word = word.trim_end_matches([';', ':', '.', '?', '!']);
        word.chars().all(|c| c.is_ascii_lowercase() || c == '\'') && word.contains(|c: char| c.is_ascii_lowercase())
    };
    let words: Vec<bool> = text.split_whitespace().map(is_word).collect();
    words.windows(3).any(|three| three.iter().all(|is| *is))
}

/// Sentences stand in `words/`, in what shows them and in the help of the command line: the rest of the host's program
/// hands on data.
#[test]
fn sentences_stand_with_the_words() {
    // Texts that another program says or wants: of a line of JSON the reader's library takes its errors as texts, and a
    // server that starts is told by its words. Synonyms are texts that people type.
    let others = ["log/json.rs", "log/tested.rs", "log/photo.rs", "exchange/jsonl.rs", "store/postgres/error.rs"];
    let folder = root().join("host-cli/src");
    let (mut seen, mut wrong) = (0, Vec::new());
    for layer in ["log", "store", "link", "input", "exchange", "finding", "deed", "command"] {
        for file in sources(&folder.join(layer)) {
            let inside = file.strip_prefix(&folder).unwrap();
            let is_test = file.ends_with("tests.rs");
            if is_test || inside.starts_with("input/synonym") || others.iter().any(|other| inside == Path::new(other)) {
                continue;
            }
            for (line, literal) in literals(&fs::read_to_string(&file).unwrap()) {
                seen += 1;
                if is_a_sentence(&literal) {
                    wrong.push(format!("{}:{line}: {literal}", inside.display()));
                }
            }
        }
    }
    assert!(seen > 500, "only {seen} literals seen");
    assert!(wrong.is_empty(), "these belong into words/:\n{}", wrong.join("\n"));
}

#[test]
fn literals_are_read_rightly() {
    let text = "let a = \"one\"; // \"not this\"\n    #[error(\"nor this\")]\nlet c = '\"';\nlet b = \"two \\\n   lines\";\n\n#[cfg(test)]\nmod tests { \"no\" }";
    assert_eq!(literals(text), [(1, "one".to_owned()), (4, "two     lines".to_owned())]);
    let sentences =
        ["it is a folder; type a name", "SELECT id FROM entry", "no such", "id, tag, name", "{} is not there."];
    assert_eq!(sentences.map(is_a_sentence), [true, false, false, false, true]);
}

#[test]
fn uses_are_read_rightly() {
    let text =
        "use crate::{Rules, class::{A, B}, num};\nlet x = crate::length::Length::ZERO;\n// crate::none\nuse crate::a;";
    assert_eq!(used(text), ["Rules", "a", "class", "length", "num"].map(String::from).into());
}
