//! What the README shows is what the program prints.

use std::fs;
use std::path::Path;

use tenter::cli::{self, Parsed};

/// The answers to every `$ tenter …` in a block of text, with what stands below it.
fn shown(readme: &str) -> Vec<(Vec<String>, String)> {
    readme
        .split("```text\n")
        .skip(1)
        .filter_map(|block| block.split("```").next()?.strip_prefix("$ ")?.split_once('\n'))
        .map(|(words, text)| (words.split(' ').map(str::to_owned).collect(), text.to_owned()))
        .collect()
}

#[test]
fn the_readme_shows_what_is_printed() {
    let readme = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("../README.md")).unwrap();
    let shown = shown(&readme);
    assert!(!shown.is_empty());
    for (words, text) in shown {
        let Ok(Parsed::Run(line)) = cli::parse(&words) else { panic!("{words:?}") };
        let mut out = Vec::new();
        let mut screen =
            tenter::text::Screen { out: &mut out, width: 80, unicode: true, here: tenter::log::Here::desk() };
        tenter::command::run(&line, &mut screen).unwrap();
        let printed = anstream::adapter::strip_str(std::str::from_utf8(&out).unwrap()).to_string();
        assert_eq!(printed, text, "{words:?}");
    }
}
