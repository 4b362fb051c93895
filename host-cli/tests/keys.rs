//! The commonest tasks in at most half the keys that the first release wanted, with the same results as in the long form.
//!
//! A key is a letter of a line, and Enter at its end; the answers of a guided test were counted alike.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use std::fs;

use program::{Program, words};

fn keys(lines: &[String]) -> usize {
    lines.iter().map(|line| line.chars().count() + 1).sum()
}

fn owned(lines: &[&str]) -> Vec<String> {
    lines.iter().map(|line| (*line).to_owned()).collect()
}

/// What the lines print, the last of them one after another.
fn printed(program: &Program, lines: &[String]) -> Vec<String> {
    let run = |line: &String| {
        let words = words(line.strip_prefix("tenter ").unwrap());
        let mut command = program.command(&words.iter().map(String::as_str).collect::<Vec<_>>());
        let ran: program::Ran = command.current_dir(program.path().parent().unwrap()).output().unwrap().into();
        assert!(matches!(ran.code, Some(0 | 1 | 3)) && ran.err.is_empty(), "{line}: {ran:?}");
        ran.out
    };
    lines.iter().map(run).collect()
}

/// All tests and cloths as tables, without the identifiers and times that no two logs share.
fn tables(program: &Program) -> Vec<Vec<String>> {
    let table = |of: &str| {
        let ran = program.run(&["export", "--csv", of]);
        let mut reader = csv::Reader::from_reader(ran.out.as_bytes());
        let heads = reader.headers().unwrap().clone();
        let kept = move |row: csv::StringRecord| {
            heads
                .iter()
                .zip(row.iter())
                .filter(|(head, _)| !matches!(*head, "id" | "pulled"))
                .map(|(_, cell)| cell.to_owned())
                .collect()
        };
        let mut rows: Vec<Vec<String>> = reader.into_records().map(|row| kept(row.unwrap())).collect();
        rows.sort();
        rows
    };
    [table("cloths"), table("tests")].concat()
}

/// Both forms leave the same log; at most half of the keys are left.
#[track_caller]
fn halved(
    before: usize,
    (long_log, long): (&Program, &[String]),
    (short_log, short): (&Program, &[String]),
) -> [Vec<String>; 2] {
    let counted = keys(short);
    assert!(counted * 2 <= before, "{counted} keys of {before}: {short:#?}");
    assert!(counted < keys(long), "{short:?}");
    let out = [printed(long_log, long), printed(short_log, short)];
    assert_eq!(tables(long_log), tables(short_log));
    out
}

#[test]
fn a_swatch_in_the_shop() {
    let long = owned(&[
        "tenter check --marks 25cm --settling --to 26.5cm --to 26.6cm --to 26.5cm --back 25.2cm@60s --wants 5%",
    ]);
    let short = owned(&["tenter check 25 26.5 26.6 26.5 25.2@60s 5% -s"]);
    let [long, short] = halved(102, (&Program::new(), &long), (&Program::new(), &short));
    // A bare number says in which unit it was taken.
    let same = |text: &str| {
        text.lines().filter(|line| !line.contains("numbers without a unit")).map(str::to_owned).collect::<Vec<_>>()
    };
    assert_eq!(same(&long[0]), same(&short[0]));
}

#[test]
fn a_new_cloth_pulled_both_ways() {
    let long = owned(&[
        "tenter cloth add 'Chancel rib' --construction knit --length 2m --width 150cm",
        "tenter pull 1 --marks 25cm --settling --to 26.5cm --to 26.6cm --to 26.5cm --back 25.2cm@1min",
        "tenter pull 1 --grain lengthwise --marks 25cm --settling --to 25.4cm --to 25.4cm --to 25.3cm --back 25.1cm@1min",
    ]);
    let short = owned(&[
        "tenter add 'Chancel rib' knit 2m of 150cm -s across 25 26.5 26.6 26.5 25.2@1m along 25 25.4 25.4 25.3 25.1@1m",
    ]);
    halved(289, (&Program::new(), &long), (&Program::new(), &short));
}

#[test]
fn a_pattern_of_three_views_and_its_fit() {
    let asks = "--crosswise 5%..15% --growth-at-most 3% --construction woven";
    let mut long: Vec<String> = [("A", "0.8m"), ("B", "0.9m"), ("C", "1.1m")]
        .map(|(view, length)| {
            format!("tenter pattern add 'Usher waistcoat' {view} main {asks} --cloth '{length} at 140cm'")
        })
        .into();
    long.push("tenter fit 'Usher waistcoat' C".to_owned());
    let short = owned(&[
        "tenter pattern add 'Usher waistcoat' A 5-15% growth 3% woven .8m of 140cm",
        "tenter pattern add - B 5-15% growth 3% woven .9m of 140cm",
        "tenter pattern add - C 5-15% growth 3% woven 1.1m of 140cm",
        "tenter fit",
    ]);
    let [long, short] = halved(466, (&Program::demo(), &long), (&Program::demo(), &short));
    assert_eq!(long, short);
    assert!(short[3].contains("MEETS"), "{short:?}");
}

#[test]
fn a_plan_sheet() {
    let long =
        owned(&["tenter fit 'Choir trousers' A --sheet --use main=1 --use waistband=4 --seam 'main+waistband=76cm' \
                        --zip 18cm --zip-ends closed --elastic 'soft waist 76cm'"]);
    let short = owned(&["tenter fit choir a m=1 w=4 m+w=76cm 'zip=18cm closed' 'soft waist 76cm'"]);
    let program = Program::demo();
    let [long, short] = halved(152, (&program, &long), (&program, &short));
    assert_eq!(long, short);
    assert!(short[0].contains("Vestry twill") && short[0].contains("take 18 cm closed"), "{short:?}");
}

#[test]
fn two_cloths_in_a_seam() {
    let long = owned(&["tenter pair 9 13 --along 60cm --seam side"]);
    let short = owned(&["tenter pair 9 13 60cm"]);
    let program = Program::demo();
    let [long, short] = halved(48, (&program, &long), (&program, &short));
    assert_eq!(long, short);
}

/// Twelve cloths added, their pulls imported, a fit, and a sheet for each.
#[test]
fn a_class_of_twelve() {
    let names = [
        "Alto twill",
        "Bass drill",
        "Cello lawn",
        "Descant rib",
        "Echo jersey",
        "Flute poplin",
        "Gong canvas",
        "Harp voile",
        "Ivory ponte",
        "Jig denim",
        "Kettle cord",
        "Lute tweed",
    ];
    let mut readings = String::from("tag,pulled,gauge,readings\n");
    for tag in 1..=12 {
        readings += &format!("{tag},2026-03-02,25cm,26.5 26.6 26.5 25.1@30min\n");
    }
    let begin = || {
        let program = Program::new();
        fs::write(program.path().with_file_name("class.csv"), &readings).unwrap();
        printed(
            &program,
            &owned(&["tenter pattern add Apron A 5% woven 1m of 140cm", "tenter pattern add - A bib 2%"]),
        );
        program
    };
    let (mut long, mut short) = (Vec::new(), Vec::new());
    for (index, name) in names.iter().enumerate() {
        let made = if index % 3 == 0 { "knit" } else { "woven" };
        long.push(format!(
            "tenter cloth add '{name}' --construction {made} --length 2m --width 150cm --mass '180 g/m2'"
        ));
        short.push(format!("tenter add '{name}' {made} 2m of 150cm 180gsm"));
    }
    long.extend(owned(&["tenter import --csv class.csv", "tenter fit Apron A --all"]));
    short.extend(owned(&["tenter import class.csv", "tenter fit --all"]));
    for tag in 1..=12 {
        long.push(format!("tenter fit Apron A --sheet --use main={tag} --seam main+bib=30cm"));
        short.push(format!("tenter fit m={tag} m+b=30cm"));
    }
    let (one, other) = (begin(), begin());
    let [long, short] = halved(1963, (&one, &long), (&other, &short));
    assert_eq!(long[13..], short[13..]);
}
