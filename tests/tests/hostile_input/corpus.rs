//! Odd texts, one a line, each of which must be refused. `\u{…}`, `\0`, `\t`, `\n` and `\\` stand for characters.

use tenter_core::{Length, Limit, Range};

use crate::texts::{UNITS, assert_sane};

const LENGTHS: &str = include_str!("../../data/hostile-lengths.txt");
const LIMITS: &str = include_str!("../../data/hostile-limits.txt");

fn unescaped(line: &str) -> String {
    let mut text = String::new();
    let mut rest = line;
    while let Some((before, after)) = rest.split_once('\\') {
        text.push_str(before);
        let (c, after) = if let Some(code) = after.strip_prefix("u{") {
            let (code, after) = code.split_once('}').unwrap();
            (char::from_u32(u32::from_str_radix(code, 16).unwrap()).unwrap(), after)
        } else {
            let c = match &after[..1] {
                "0" => '\0',
                "t" => '\t',
                "n" => '\n',
                "\\" => '\\',
                other => panic!("\\{other} in {line}"),
            };
            (c, &after[1..])
        };
        text.push(c);
        rest = after;
    }
    text + rest
}

fn lines(corpus: &str) -> Vec<String> {
    let lines: Vec<String> = corpus.lines().map(unescaped).collect();
    let different: std::collections::BTreeSet<_> = lines.iter().collect();
    assert!(different.len() >= 200 && different.len() == lines.len(), "{} lines, some twice?", lines.len());
    lines
}

#[test]
fn hostile_lengths_are_refused() {
    let mut taken = Vec::new();
    for text in lines(LENGTHS) {
        assert_sane(&text);
        taken.extend(UNITS.iter().filter_map(|unit| Some((text.clone(), Length::parse(&text, *unit).ok()?))));
    }
    assert!(taken.is_empty(), "{taken:#?}");
}

#[test]
fn hostile_limits_are_refused() {
    let mut taken = Vec::new();
    for text in lines(LIMITS) {
        assert_sane(&text);
        taken
            .extend(UNITS.iter().filter_map(|unit| Some((text.clone(), Limit::parse(&text, *unit).ok()?.to_string()))));
        taken.extend(
            UNITS.iter().filter_map(|unit| Some((text.clone(), format!("{:?}", Range::parse(&text, *unit).ok()?)))),
        );
    }
    assert!(taken.is_empty(), "{taken:#?}");
}

#[test]
fn escapes_are_read() {
    assert_eq!(unescaped(r"1\u{202e}\0\t\\mm"), "1\u{202e}\0\t\\mm");
}
