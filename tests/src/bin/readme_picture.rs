//! Draws the pictures of README and guide again: `cargo run -p tenter-tests --bin readme_picture`.
//!
//! `host-cli/pictures/phone.png` is a cloth of the samples as the swatch book shows it on a telephone, and
//! `hardware-notes/handheld.png` six screens of the handheld, from the golden pictures that its tests compare.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use tenter_tests::browser::{self, View};
use tenter_tests::picture;
use tenter_tests::program::program;

/// Brings the first cloth to the top of the window.
const SHOW: &str = "document.querySelectorAll('article')[0].scrollIntoView()";
/// What the sheet of the handheld shows, in the order of a measurement.
const SCREENS: [&str; 6] = ["home-demand", "extended-5", "rest-now", "result-close", "result-close-figures", "saved"];
/// Screens side by side.
const ACROSS: usize = 3;
/// A display and the gap beside it, in pixels of the display.
const CELL: (usize, usize) = (132, 68);
const DISPLAY: (usize, usize) = (128, 64);

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn phone(picture: &Path) {
    let folder = tempfile::tempdir().expect("a folder");
    let run = |words: &[&str]| {
        let output = Command::new(program()).args(words).current_dir(folder.path()).output().expect("it starts");
        assert!(output.status.success(), "tenter {words:?}: {output:?}");
    };
    run(&["demo", "samples.sqlite3"]);
    run(&["--db", "samples.sqlite3", "report", "book", "--view", "Choir trousers", "A", "--out", "book.html"]);
    let view = View {
        height: 620,
        zoom: 3,
        window: true,
        ..View::new(400, false).asked(SHOW).photographed(picture.to_owned())
    };
    let book = folder.path().join("book.html");
    let visit = browser::visit(&book, &[view]).expect("a browser; tests/install says what is missing");
    assert_eq!(visit.errors, Vec::<String>::new());
}

fn handheld(picture: &Path) {
    let golden = Path::new(env!("CARGO_MANIFEST_DIR")).join("golden/screens");
    let screens = SCREENS.map(|name| {
        let text = fs::read_to_string(golden.join(name).with_extension("txt")).expect("a golden picture");
        text.lines().map(|line| line.chars().collect::<Vec<char>>()).collect::<Vec<_>>()
    });
    let lit = |x: usize, y: usize| {
        let screen = &screens[y / CELL.1 * ACROSS + x / CELL.0];
        let (x, y) = (x % CELL.0, y % CELL.1);
        if x >= DISPLAY.0 || y >= DISPLAY.1 {
            return 90;
        }
        let two = screen.get(y / 2).and_then(|line| line.get(x)).copied().unwrap_or(' ');
        if two == '█' || two == if y % 2 == 0 { '▀' } else { '▄' } { 255 } else { 0 }
    };
    picture::save_png(picture, ACROSS * CELL.0, SCREENS.len() / ACROSS * CELL.1, lit).expect("a picture");
}

fn main() {
    for (draw, picture) in
        [(phone as fn(&Path), "host-cli/pictures/phone.png"), (handheld, "hardware-notes/handheld.png")]
    {
        draw(&root().join(picture));
        println!("{picture}");
    }
}
