//! What the program prints in narrow and wide windows, with names in every script, with and without colours: the real
//! program, in a pipe and in a pseudo-terminal whose screen a terminal emulator reads.

#![cfg(unix)]
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use core::num::NonZero;

use program::{Program, pty, words};
use unicode_width::UnicodeWidthStr as _;
use vt100::Parser;

/// Every verb that prints text, with all that makes its text long.
const VERBS: [&str; 27] = [
    "cloth list",
    "cloth list --owned cloth",
    "cloth show 1",
    "cloth show 4",
    "cloth show 9",
    "cloth show 33",
    "cloth show 34",
    "cloth show 19",
    "pattern list",
    "pattern show 'Choir trousers'",
    "pattern show 'معطف المسرح'",
    "pattern show 合唱団のズボン",
    "fit 'Choir trousers' A",
    "fit 'Choir trousers' B --all",
    "fit 合唱団のズボン A --all",
    "fit 'Choir trousers' A --sheet --why --zip 31in --elastic 'soft waist 76cm' --child --cord",
    "fit 'معطف المسرح' A --sheet --why --use 'الجسم الرئيسي=33' --use sleeve=34",
    "pair 33 34 --along 60cm --grain crosswise --why",
    "handle 33 --lining 12 --why",
    "size --cloth 34 --girth hip=104cm/101cm --opening head=56cm/42cm --reduce 10% --why",
    "size --elastic soft --place waist --measure 76cm --widest 100cm --gives 80% --elastic-width 2cm --why",
    "size --zip 31in --zip-ends open --why",
    "wash --lengthwise '50cm to 48.5cm' --crosswise '50cm to 49cm' --need 2m --why",
    "hang --why",
    "hang --width 2.5cm --method 'stretch woven, 3 lb' --why",
    "check --marks 10cm --to 10.6cm --back 10.1cm@60s --wants 5%..12% --growth-at-most 3%",
    "check --marks 25cm --to 25.5cm --back 25.1cm@60s --back 25.1cm@1h --wants 10%",
];

/// What only a drawing holds.
const DRAWN: [char; 8] = ['┈', '━', '┣', '┫', '◀', '▶', '◆', '╱'];

/// Runs a line that must be understood.
#[track_caller]
fn done(program: &Program, line: &str) -> String {
    let words = words(line);
    let ran = program.run(&words.iter().map(String::as_str).collect::<Vec<_>>());
    assert!(ran.code.is_some_and(|code| code != 2), "{line}: {}", ran.err);
    ran.out
}

/// The demo with a cloth named from right to left under tag 33 (with lam and alef, which join), one named in wide letters
/// under 34, one under 19 whose name is long, and patterns whose roles are named like that.
fn stocked() -> Program {
    let program = Program::demo();
    for line in [
        "cloth add 'قماش الأرض الأزرق' --construction knit --width 150cm --length 2m --place 'الصندوق الأول' --note 'من السوق الكبير قرب الجسر القديم عند النهر'",
        "cloth add 桜色の伸縮性ニット生地🧵とても柔らかい裏毛 --construction knit --width 160cm --length 1.2m --fibre 綿95%ポリウレタン5% --note 裁断前に、必ず水通しをしてから陰干しにすること🌸🌸🌸二回「短く」。",
        "cloth add 'Vestry twill with an uncommonly long English name to wrap' --construction woven --tag 19",
        "pull 33 --marks 10cm --to 13cm --to 13.1cm --to 13cm --settling --back 10.3cm@60s --at 2026-01-02",
        "pull 33 --marks 10cm --to 15cm",
        "pull 33 --marks 10cm --to 11cm --grain lengthwise --note 'ملاحظة طويلة عن هذا السحب الثاني'",
        "pull 34 --marks 10cm --to 14cm --back 10.5cm@60s",
        "pattern add 'معطف المسرح' A 'الجسم الرئيسي' --crosswise 20%.. --cloth '1.2m at 140cm' --note 'ملاحظة'",
        "pattern add 'معطف المسرح' A sleeve --crosswise 5%..",
        "pattern add 合唱団のズボン A 身頃 --crosswise 5%..15% --construction woven",
        "pattern add 合唱団のズボン A 'hem facings and all their godets' --crosswise 30%.. --growth-at-most 3%",
    ] {
        done(&program, line);
    }
    program
}

/// Runs a line in a pipe whose reader has so many columns.
fn piped(program: &Program, line: &str, columns: u16) -> String {
    let words = words(line);
    let mut command = program.command(&words.iter().map(String::as_str).collect::<Vec<_>>());
    let output = command.env("COLUMNS", columns.to_string()).output().unwrap();
    assert!(output.status.code().is_some_and(|code| code != 2), "{line}: {output:?}");
    String::from_utf8(output.stdout).unwrap()
}

/// Runs a line in a terminal of so many columns; what it wrote.
fn written(program: &Program, line: &str, columns: u16, environment: &[(&str, &str)]) -> String {
    let words = words(line);
    let command = program.command(&words.iter().map(String::as_str).collect::<Vec<_>>());
    String::from_utf8(pty::shown(command, columns, environment)).unwrap()
}

/// The screen of a terminal of so many columns after a text was written to it.
fn screen(text: &str, columns: u16) -> Parser {
    let mut parser = Parser::new(NonZero::new(600).unwrap(), NonZero::new(columns).unwrap(), 0);
    parser.process(text.as_bytes());
    parser
}

fn rows(screen: &Parser, columns: u16) -> Vec<String> {
    screen.screen().rows(0, columns).map(|row| row.trim_end().to_owned()).collect()
}

#[track_caller]
fn fits(line: &str, text: &str, columns: u16) {
    for row in text.lines() {
        assert!(row.width() <= columns.into(), "{line}: {} of {columns} columns: {row}", row.width());
        assert_eq!(row, row.trim_end(), "{line}");
        // UAX #9: an isolate ends with its paragraph, and here every line is one.
        let (opened, closed) = (row.matches('\u{2068}').count(), row.matches('\u{2069}').count());
        assert_eq!(opened, closed, "{line}: {row:?}");
    }
    assert!(!text.is_empty() && !text.contains('\u{1b}'), "{line}: {text}");
}

/// No line is wider than the window, and none holds a colour, since nobody looks on.
#[test]
fn every_report_fits_the_window() {
    let program = stocked();
    for columns in [40, 57, 80, 132, 200] {
        for line in VERBS {
            fits(line, &piped(&program, line, columns), columns);
        }
    }
}

/// What changes the log says so in lines that fit, too.
#[test]
fn every_confirmation_fits_the_window() {
    for columns in [40, 57, 80] {
        let program = stocked();
        let letters = |tag| program.tests(tag)[0]["id"].as_str().unwrap()[20..].to_lowercase();
        for line in [
            "cloth add 'قماش الأرض الأزرق الطويل جدا' --length 2m --width 150cm".to_owned(),
            "cloth edit 33 --name 'قماش الأرض الأحمر الطويل جدا' --place 'الصندوق الثاني'".to_owned(),
            "cloth cut 33 20cm --note 'جيب صغير'".to_owned(),
            "cloth retire 34".to_owned(),
            "cloth return 34".to_owned(),
            "cloth show 33".to_owned(),
            "pull 33 --marks 10cm --to 15cm --wants 20% --growth-at-most 3%".to_owned(),
            format!("pull 33 --retire {}", letters("33")),
            format!("pull 33 --return {}", letters("33")),
            "wash 34 --lengthwise '50cm to 48cm'".to_owned(),
            "pattern add 'معطف المسرح' B 'الجسم الرئيسي' --crosswise 20%..".to_owned(),
            "pattern retire 'معطف المسرح' B".to_owned(),
            "pattern return 'معطف المسرح' B".to_owned(),
            "pattern retire 合唱団のズボン".to_owned(),
            "pattern return 合唱団のズボン".to_owned(),
            "device inbox".to_owned(),
        ] {
            fits(&line, &piped(&program, &line, columns), columns);
        }
    }
}

/// A terminal, which measures for itself, has nothing to wrap.
#[test]
fn a_terminal_wraps_nothing() {
    let program = stocked();
    for columns in [40, 132] {
        for line in VERBS {
            let screen = screen(&written(&program, line, columns, &[]), columns);
            let rows = rows(&screen, columns);
            let wrapped = (0..600).find(|row| screen.screen().row_wrapped(*row));
            assert_eq!(wrapped, None, "{line}, {columns} columns:\n{}", rows.join("\n"));
            assert!(!rows[0].is_empty(), "{line}");
        }
    }
}

/// The window changes nothing of what a program reads.
#[test]
fn json_knows_no_window() {
    let program = stocked();
    for line in VERBS {
        let line = format!("{} --json", line.replace(" --why", ""));
        assert_eq!(piped(&program, &line, 40), piped(&program, &line, 200), "{line}");
    }
}

/// The columns of a table stand where its heads stand, whatever the letters: read off the terminal's cells.
#[test]
fn tables_line_up_in_every_script() {
    let program = stocked();
    let screen = screen(&written(&program, "cloth list", 132, &[]), 132);
    let rows = rows(&screen, 132);
    let at = |row: usize, column: usize| {
        let cell = screen.screen().cell(u16::try_from(row).unwrap(), u16::try_from(column).unwrap());
        cell.unwrap().contents().to_owned()
    };
    let (made, wide) = (rows[0].find("kind").unwrap(), rows[0].find("wide").unwrap());
    // A long name or place goes on in a row without a tag.
    let table = rows.iter().enumerate().skip(1).take_while(|(_, shown)| !shown.contains("18 of 18 in the stash"));
    let cloths: Vec<_> = table.filter(|(_, shown)| shown.get(..3).is_some_and(|tag| !tag.trim().is_empty())).collect();
    assert_eq!(cloths.len(), 18, "{rows:?}");
    for (row, shown) in cloths {
        let construction = [at(row, made - 1), at(row, made), at(row, made + 1)].concat();
        assert!(matches!(construction.trim(), "kn" | "wo" | "ot"), "{construction:?}: {shown}");
        assert!(at(row, made - 1).trim().is_empty(), "{shown}");
        // The last letter of `148 cm`, below the last of `wide`; the last cloth has no width.
        let unit = at(row, wide + "wide".len() - 1);
        assert!(unit == "m" || unit.trim().is_empty() && shown.trim_start().starts_with("19 "), "{unit:?}: {shown}");
    }
}

/// In a narrow window a row is a paragraph: nothing is lost, and a number says what it is.
#[test]
fn a_narrow_table_is_paragraphs() {
    let program = stocked();
    let text = piped(&program, "cloth list", 40);
    let one_line = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let first = "1 Vestry twill, woven, across 8.5 ± 2.3 %, along 0.9 ± 1.1 %, on hand 3.10 m, wide 148 cm, blue crate";
    assert!(one_line.starts_with(first), "{text}");
    assert!(text.contains("\n18 of 18 in the stash\n"), "{text}");
    assert!(text.contains("\n33  \u{2068}قماش الأرض الأزرق\u{2069}, knit"), "{text}");
}

/// A drawing of its own for each grain, under its figures, all to one scale: the point lies where the figure says, in
/// arithmetic of this test's own.
#[test]
fn a_stored_fabric_is_drawn() {
    let program = stocked();
    let grains = program.shown("4")["grains"].clone();
    let stretch = |grain: usize| grains[grain]["stretch"]["percent"].as_f64().unwrap();
    for columns in [40, 57, 80, 200] {
        let text = piped(&program, "cloth show 4", columns);
        let place = |words: &str| text.find(words).unwrap_or_else(|| panic!("no '{words}': {text}"));
        let drawn: Vec<(usize, &str)> =
            text.match_indices("  drawn     0 % ").map(|(at, _)| at).zip(gauges(&text)).collect();
        assert_eq!(drawn.len(), 2, "{text}");
        for ((at, gauge), (grain, stretch)) in drawn.iter().zip([("crosswise", stretch(0)), ("lengthwise", stretch(1))])
        {
            assert!(place(&format!("\n  {grain}\n")) < *at && *at < place("\n  trust"), "{text}");
            let (cells, end) = gauge.split_once(' ').unwrap();
            let end: f64 = end.strip_suffix(" %").unwrap().parse().unwrap();
            let last = cells.chars().count() - 1;
            #[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, clippy::cast_sign_loss)]
            // At most 60.
            let wanted = (stretch / end * last as f64).round() as usize;
            assert_eq!(cells.chars().position(|cell| cell == '◆'), Some(wanted), "{columns}: {gauge}");
        }
        assert!(place("\n  lengthwise\n") > drawn[0].0);
        let end = |gauge: &str| gauge.split_once(' ').map(|(_, end)| end.to_owned());
        assert_eq!(end(drawn[0].1), end(drawn[1].1));
        // The label stands where `check` has it.
        let check = piped(&program, VERBS[25], columns);
        assert!(check.contains("\n  drawn     0 % "), "{check}");
    }
    // A cloth that was never pulled has nothing to draw.
    assert!(!piped(&program, "cloth show 19", 80).contains("drawn"));
}

/// The scales of the drawings, from behind `0 %` on.
fn gauges(text: &str) -> Vec<&str> {
    text.lines().filter_map(|line| line.strip_prefix("  drawn     0 % ")).collect()
}

/// A terminal whose locale is not UTF-8 gets drawings in ASCII; one whose locale is, in line-drawing characters.
#[test]
fn drawings_are_ascii_where_nothing_else_can_be_shown() {
    let program = stocked();
    for line in ["cloth show 4", VERBS[25]] {
        for columns in [40, 80] {
            let text = written(&program, line, columns, &[("LC_ALL", "C"), ("NO_COLOR", "1")]);
            assert!(!text.contains(DRAWN), "{text}");
            assert!(!gauges(&text).is_empty() && gauges(&text).iter().all(|gauge| gauge.trim().is_ascii()), "{text}");
            assert!(gauges(&text).iter().all(|gauge| gauge.contains('O')), "{text}");
            assert!(written(&program, line, columns, &[("LC_ALL", "C.UTF-8")]).contains('◆'));
        }
    }
}

/// Colours in a terminal, none with `NO_COLOR` or in a pipe (no-color.org).
#[test]
fn colours_can_be_switched_off() {
    let program = stocked();
    for line in [VERBS[12], VERBS[25]] {
        assert!(written(&program, line, 80, &[]).contains("\u{1b}[1m\u{1b}[3"), "{line}");
    }
    for line in ["cloth list", "cloth show 1", "pattern list", "pattern show 'Choir trousers'", VERBS[12]] {
        // In a narrower window the table of cloths is paragraphs, without a heading.
        assert!(written(&program, line, 132, &[]).starts_with("\u{1b}[1m"), "{line}: a bold heading");
    }
    for line in VERBS {
        let text = written(&program, line, 80, &[("NO_COLOR", "1")]);
        assert!(!text.contains('\u{1b}'), "{line}: {text:?}");
        // Colours aside, a pipe gets the same.
        assert_eq!(text.replace("\r\n", "\n"), piped(&program, line, 80), "{line}");
    }
}

/// A log that somebody sends holds names that no door would let in; the terminal obeys none of them. A pipe gets them as
/// they are.
#[test]
fn no_name_moves_the_terminal() {
    const NAME: &str = "\u{1b}]0;mine\u{7}\u{1b}[2J\u{9b}2J\u{1b}c\rover\u{202e}\u{2028}end";
    let program = stocked();
    let log = rusqlite::Connection::open(program.path()).unwrap();
    assert!(log.execute("UPDATE fabric SET name = ?1, place = ?1, note = ?1, fibre = ?1", [NAME]).unwrap() > 5);
    log.execute("UPDATE pattern SET name = ?1", [NAME]).unwrap();
    drop(log);
    for line in [
        "cloth list",
        "cloth show 1",
        "pattern list",
        "fit nothing",
        "pair 1 2 --along 30cm",
        "--db '/dev/null/\u{1b}]0;mine\u{7}\r' cloth list",
        "size --girth 'hip\u{202e}\u{2028}\u{1b}]0;mine\u{7}=104cm/101cm'",
        "import '/tmp/\u{202e}\u{2028}\u{9b}2Jnone.csv'",
        "man --out '/dev/null/\u{202e}\u{2028}\u{1b}]0;mine\u{7}'",
    ] {
        let text = written(&program, line, 80, &[]);
        let colours = anstream::adapter::strip_str(&text).to_string().replace("\r\n", "\n");
        let obeyed = |c: char| c.is_control() && !matches!(c, '\n' | '\t');
        assert!(!colours.contains(obeyed) && !colours.contains(['\u{202e}', '\u{2028}']), "{line}: {text:?}");
        for order in ["\u{1b}]", "\u{1b}c", "[2J"].map(|order| order.replace("[2J", "\u{1b}[2J")) {
            assert!(!text.contains(&order), "{line}: {text:?}");
        }
    }
}
