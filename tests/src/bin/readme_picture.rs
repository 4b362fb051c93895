//! Draws the pictures of README and guide again: `cargo run -p tenter-tests --bin readme_picture`.
//!
//! `host-cli/pictures/answer.png` is the answer to one swatch on a phone's page, and beside it the same in a terminal;
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

/// The swatch of both answers: the marks and the pulls in centimetres, and what is asked.
const SWATCH: [&str; 5] = ["25", "26.6", "26.7", "26.6", "5%"];

/// The page with its answer to the swatch, as a browser gets it, with its style in it.
fn answered() -> String {
    use tenter::web::{Request, respond};
    let mut log = tenter::store::memory::Memory::new(tenter::log::Here::desk());
    let [marks, one, two, three, wants] = SWATCH;
    let pulls = format!("{one} {two} {three}");
    let fields = [("construction", "woven"), ("wants", wants), ("marks", marks), ("pulls", &pulls), ("held", "folded")];
    let more = [("unit", "cm"), ("settling", "yes")];
    let sent = respond(&Request::post("/measure/form", &[&fields[..], &more].concat()), &mut log);
    let to = sent.header("location").expect("an answer").to_owned();
    let mut text = |target: &str| {
        let response = respond(&Request::get(target), &mut log);
        assert_eq!(response.status, 200, "{target}");
        String::from_utf8(response.body).expect("text")
    };
    let (page, style) = (text(&to), text("/style.css"));
    let page = page.replace("<link rel=\"stylesheet\" href=\"/style.css\">", &format!("<style>{style}</style>"));
    page.replace("<script src=\"/page.js\" defer></script>", "")
        .replace("<link rel=\"icon\" href=\"/icon.svg\" type=\"image/svg+xml\">", "")
        .replace(" src=\"/icon.svg\"", "")
}

/// What the terminal answers to it, as HTML: bold and colour as it has them (ECMA-48, 8.3.117).
fn terminal() -> String {
    let mut check = Command::new(program());
    check.arg("check").args(SWATCH).arg("--settling").args(["--construction", "woven"]);
    check.env("CLICOLOR_FORCE", "1").env("COLUMNS", "66").env("LC_ALL", "C.UTF-8");
    // No log of whoever draws is read.
    let nobody = tempfile::tempdir().expect("a folder");
    check.env("HOME", nobody.path()).env("XDG_DATA_HOME", nobody.path());
    let said = String::from_utf8(check.output().expect("it starts").stdout).expect("text");
    let typed = format!("$ tenter check {} --settling", SWATCH.join(" "));
    let said = said.replace('&', "&amp;").replace('<', "&lt;");
    let mut html = format!("<b>{typed}</b>\n\n");
    let mut pieces = said.split("\u{1b}[");
    html.push_str(pieces.next().unwrap_or_default());
    for piece in pieces {
        let (code, rest) = piece.split_once('m').expect("a code");
        let opened = if code == "0" {
            "</span>".repeat(html.matches("<span").count() - html.matches("</span").count())
        } else {
            format!("<span class=\"c{code}\">")
        };
        html.push_str(&opened);
        html.push_str(rest);
    }
    html
}

fn answer(picture: &Path) {
    let folder = tempfile::tempdir().expect("a folder");
    let file = |name: &str, text: &str| {
        let path = folder.path().join(name);
        fs::write(&path, text).expect("a file");
        path
    };
    let page = file("page.html", &answered());
    let shot = folder.path().join("page.png");
    let view = View { height: 700, zoom: 3, window: true, ..View::new(390, false).photographed(shot) };
    let visit = browser::visit(&page, &[view]).expect("a browser; tests/install says what is missing");
    assert_eq!(visit.errors, Vec::<String>::new());
    let html = format!(
        "<!DOCTYPE html><meta charset=\"utf-8\"><title>answer</title><style>\
         body{{margin:0;background:#e9e4da;display:flex;gap:28px;align-items:center;padding:28px}}\
         img{{width:390px;border-radius:26px;border:9px solid #1d1d1b;display:block}}\
         pre{{margin:0;background:#1d1d1b;color:#ece9e4;font:15px/1.42 'DejaVu Sans Mono',monospace;padding:26px 22px;border-radius:12px;flex:1}}\
         .c1{{font-weight:700}}.c31{{color:#f0a58c}}.c32{{color:#8ad6c6}}.c33{{color:#e5c06b}}</style>\
         <img src=\"page.png\" alt=\"\"><pre>{}</pre>",
        terminal()
    );
    let both = file("both.html", &html);
    let view = View { height: 774, zoom: 2, window: true, ..View::new(1140, false).photographed(picture.to_owned()) };
    let visit = browser::visit(&both, &[view]).expect("a browser");
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
    for (draw, picture) in [
        (answer as fn(&Path), "host-cli/pictures/answer.png"),
        (phone, "host-cli/pictures/phone.png"),
        (handheld, "hardware-notes/handheld.png"),
    ] {
        draw(&root().join(picture));
        println!("{picture}");
    }
}
