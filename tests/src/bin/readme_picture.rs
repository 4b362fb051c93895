//! Draws the picture of the README again: a cloth of the samples as the swatch book shows it on a telephone.
//!
//! `cargo run -p tenter-tests --bin readme_picture` writes `host-cli/pictures/phone.png`.

use std::path::{Path, PathBuf};
use std::process::Command;

use tenter_tests::browser::{self, View};
use tenter_tests::program::program;

/// Brings the cloth to the top of the window, below the page's own bar if it has one.
const SHOW: &str = "document.querySelectorAll('article')[0].scrollIntoView()";

fn main() {
    let folder = tempfile::tempdir().expect("a folder");
    let run = |words: &[&str]| {
        let status = Command::new(program()).args(words).current_dir(folder.path()).env_remove("TENTER_DB").status();
        assert!(status.is_ok_and(|status| status.success()), "tenter {words:?}");
    };
    run(&["demo", "samples.sqlite3"]);
    run(&["--db", "samples.sqlite3", "report", "book", "--view", "Choir trousers", "A", "--out", "book.html"]);
    let picture = Path::new(env!("CARGO_MANIFEST_DIR")).join("../host-cli/pictures/phone.png");
    let view =
        View { height: 620, zoom: 3, window: true, ..View::new(400, false).asked(SHOW).photographed(picture.clone()) };
    let book: PathBuf = folder.path().join("book.html");
    let visit = browser::visit(&book, &[view]).expect("a browser; tests/install says what is missing");
    assert_eq!(visit.errors, Vec::<String>::new());
    println!("{}", picture.display());
}
