//! What is remembered with a cloth: photographs, and what worked on it.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use std::fs;
use std::path::PathBuf;

use image::{ImageFormat, Rgb, RgbImage};
use program::{Program, words};
use tempfile::TempDir;

/// A swatch of one colour in a file.
fn swatch(folder: &TempDir, name: &str, colour: [u8; 3]) -> PathBuf {
    let path = folder.path().join(name);
    RgbImage::from_pixel(640, 400, Rgb(colour)).save_with_format(&path, ImageFormat::Png).unwrap();
    path
}

fn picture(program: &Program, rest: &[&str]) -> program::Ran {
    program.run(&[&["cloth", "picture"], rest].concat())
}

#[test]
fn photographs_are_kept_ordered_retired_and_copied() {
    let (program, folder) = (Program::with_cloth(), TempDir::new().unwrap());
    let red = swatch(&folder, "red.png", [200, 30, 40]);
    let blue = swatch(&folder, "blue.png", [30, 40, 200]);
    let (red, blue) = (red.to_str().unwrap(), blue.to_str().unwrap());
    let told = picture(&program, &["1", red, "--note", "right side"]);
    assert_eq!(told.code, Some(0), "{}", told.err);
    assert!(told.out.contains("1: ") && told.out.contains("640 × 400"), "{}", told.out);
    assert!(told.out.contains("right side"), "{}", told.out);
    assert_eq!(picture(&program, &["1", blue]).code, Some(0));
    let shown = program.shown("1");
    let photos = shown["photos"].as_array().unwrap();
    // A colour that lies alike everywhere is that of the swatch, but for what a JPEG loses.
    let near = |text: &str, want: [u8; 3]| {
        let hex: Vec<u8> = [1, 3, 5].map(|at| u8::from_str_radix(&text[at..at + 2], 16).unwrap()).to_vec();
        hex.iter().zip(want).all(|(one, want)| one.abs_diff(want) <= 4)
    };
    assert!(near(photos[0]["colour"].as_str().unwrap(), [200, 30, 40]), "{photos:?}");
    assert_eq!((&photos[0]["number"], &photos[1]["number"]), (&1.into(), &2.into()));
    let (first, second) = (photos[0]["name"].clone(), photos[1]["name"].clone());

    assert_eq!(picture(&program, &["1", "--first", "2"]).code, Some(0));
    assert_eq!(program.shown("1")["photos"][0]["name"], second);
    assert_eq!(picture(&program, &["1", "--retire", "1"]).code, Some(0));
    assert_eq!(program.shown("1")["photos"][0]["retired"], true);
    // The photograph that was retired comes back as it was, by its number or by its file.
    assert_eq!(picture(&program, &["1", blue]).code, Some(0));
    assert_eq!(program.shown("1")["photos"].as_array().unwrap().len(), 2);
    assert_eq!(program.shown("1")["photos"][0]["retired"], false);

    let copy = folder.path().join("copy.jpg");
    let told = picture(&program, &["1", copy.to_str().unwrap(), "--copy", "2"]);
    assert_eq!(told.code, Some(0), "{}", told.err);
    let bytes = fs::read(&copy).unwrap();
    assert_eq!(tenter::log::PhotoName::of(&bytes).to_string(), first.as_str().unwrap());
    assert!(image::load_from_memory(&bytes).unwrap().to_rgb8().dimensions() == (640, 400));
}

#[test]
fn what_is_no_photograph_is_refused_and_nothing_is_kept() {
    let (program, folder) = (Program::with_cloth(), TempDir::new().unwrap());
    let red = swatch(&folder, "red.png", [200, 30, 40]);
    let red = red.to_str().unwrap();
    let text = folder.path().join("notes.txt");
    fs::write(&text, "a shopping list").unwrap();
    let cut = folder.path().join("cut.png");
    fs::write(&cut, &fs::read(red).unwrap()[..300]).unwrap();
    let entries = program.log_entries();
    let cases: [(&[&str], &str); 8] = [
        (&["1", text.to_str().unwrap()], "this is no JPEG, PNG or WebP"),
        (&["1", cut.to_str().unwrap()], "the photograph is damaged or cut off"),
        (&["1", "none.jpg"], "no such file"),
        (&["1", folder.path().to_str().unwrap()], "it is a folder"),
        (&["99", red], "no cloth has tag 99"),
        (&["1", "--first", "1"], "cloth 1 has no photograph yet"),
        (&["1", "copy.jpg", "--copy", "1"], "cloth 1 has no photograph yet"),
        (&["1", "--note", "loose"], "missing <FILE>"),
    ];
    for (words, want) in cases {
        let told = picture(&program, words);
        assert_eq!((told.code, told.err.lines().count()), (Some(2), 1), "{words:?}: {told:?}");
        assert!(told.err.contains(want), "{words:?}: {}", told.err);
    }
    assert_eq!(program.log_entries(), entries);
    use tenter::store::Read as _;
    let mut kept = 0;
    program
        .log()
        .each_photo(&mut |_| {
            kept += 1;
            Ok(())
        })
        .unwrap();
    assert_eq!(kept, 0, "nothing is left behind");
    assert_eq!(picture(&program, &["1", red]).code, Some(0));
    let again = picture(&program, &["1", red]);
    assert!(again.err.contains("cloth 1 has this photograph already, as number 1"), "{}", again.err);
}

/// A page holds the small pictures itself; the colour stands in the overview.
#[test]
fn photographs_are_on_book_and_card() {
    let (program, folder) = (Program::with_cloth(), TempDir::new().unwrap());
    let page = |words: &[&str]| {
        let file = folder.path().join("page.html");
        let told = program.run(&[words, &["--out", file.to_str().unwrap()]].concat());
        assert_eq!(told.code, Some(0), "{}", told.err);
        fs::read_to_string(file).unwrap()
    };
    assert!(!page(&["report", "book"]).contains("<img"));
    let red = swatch(&folder, "red.png", [200, 30, 40]);
    assert_eq!(picture(&program, &["1", red.to_str().unwrap(), "--note", "<b>bold</b>"]).code, Some(0));
    let book = page(&["report", "book"]);
    assert_eq!(book.matches("<img src=\"data:image/jpeg;base64,/9j/").count(), 1);
    assert!(book.contains("<span class=\"chip\" style=\"background:#c"), "the colour of the swatch");
    assert!(!book.contains("<b>bold</b>") && book.contains("bold"), "a note stays text");
    assert_eq!(page(&["report", "cards", "1"]).matches("href=\"data:image/jpeg;base64,/9j/").count(), 1);
    assert_eq!(program.run(&["pattern", "add", "Skirt", "-", "main"]).code, Some(0));
    let sheet = page(&["report", "sheet", "Skirt", "--use", "main=1"]);
    assert_eq!(sheet.matches("<img src=\"data:image/jpeg;base64,/9j/").count(), 1);
    // Retired is not shown.
    assert_eq!(picture(&program, &["1", "--retire", "1"]).code, Some(0));
    assert!(!page(&["report", "book"]).contains("<img") && !page(&["report", "cards", "1"]).contains("data:image"));
}

#[test]
fn what_worked_is_remembered_and_can_be_retired() {
    let program = Program::with_cloth();
    let learned = |line: &str| {
        let line = words(&format!("cloth learned {line}"));
        program.run(&line.iter().map(String::as_str).collect::<Vec<_>>())
    };
    let told = learned("1 --needle 'stretch 75' --stitch 'zigzag 1 x 2.5' --pressure light --wore 'knees bagged'");
    assert_eq!(told.code, Some(0), "{}", told.err);
    let line = told.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(line.contains("needle stretch 75, stitch zigzag 1 x 2.5, pressure light; worn: knees bagged"), "{line}");
    let shown = program.shown("1");
    assert_eq!(shown["learned"][0]["needle"], "stretch 75");
    assert_eq!(shown["learned"][0]["wore"], "knees bagged");
    assert!(program.run(&["cloth", "show", "1"]).out.contains("learned"));
    assert_eq!(learned("1 --retire 1").code, Some(0));
    assert_eq!(program.shown("1")["learned"][0]["retired"], true);
    for (line, want) in [
        ("1 --retire 1", "it is retired already"),
        ("1 --retire 2", "type the number of what was learned, from 1 to 1"),
        ("2 --return 1", "nothing was learned of cloth 2 yet"),
        ("1", "type what worked or how it wore"),
        ("1 --needle ' '", "type what worked or how it wore"),
    ] {
        let told = learned(line);
        assert!(told.code == Some(2) && told.err.contains(want), "{line}: {}", told.err);
    }
    assert_eq!(learned("1 --return 1").code, Some(0));
    assert_eq!(program.shown("1")["learned"][0]["retired"], false);
}

/// The next time, for the cloth itself, in its plan, and for one like it.
#[test]
fn what_worked_is_offered_the_next_time() {
    let program = Program::with_cloth();
    let ok = |line: &str| {
        let line = words(line);
        let ran = program.run(&line.iter().map(String::as_str).collect::<Vec<_>>());
        assert!(matches!(ran.code, Some(0 | 3)), "{line:?}: {}", ran.err);
        ran.out.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    assert!(!ok("handle 1").contains("the last time"));
    ok("cloth learned 1 --needle 'stretch 75' --stitch 'zigzag 1 x 2.5'");
    ok("cloth learned 1 --wore 'knees bagged after 3 h'");
    let told = "the last time: needle stretch 75, stitch zigzag 1 x 2.5; worn: knees bagged after 3 h";
    assert!(ok("handle 1").contains(told), "{}", ok("handle 1"));
    ok("pattern add Skirt - main");
    assert!(ok("fit Skirt --sheet --use main=1").contains(told));
    // 200 and 180 g/m² are alike, 120 is not.
    ok("cloth edit 1 --mass 200gsm");
    ok("cloth add 'Basket rib' --construction knit --mass 180gsm");
    ok("cloth add 'Thin jersey' --construction knit --mass 120gsm");
    assert!(ok("handle 3").contains("the last time with 1 Doorway rib, a cloth like it: needle stretch 75"));
    assert!(!ok("handle 4").contains("the last time") && !ok("handle 2").contains("the last time"));
}
