//! Every picture against its golden file in `tests/golden/pictures`.
//!
//! A changed picture is looked at and accepted by `TENTER_ACCEPT=1 cargo test -p tenter-tests --test pictures`.

use std::fs;
use std::path::{Path, PathBuf};

use tenter_tests::gallery;

fn golden(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("golden/pictures").join(name).with_extension("svg")
}

#[test]
fn pictures_are_as_looked_at() {
    let pictures = gallery::pictures();
    let mut changed = Vec::new();
    for (name, picture) in &pictures {
        let seen = picture.file();
        if std::env::var_os("TENTER_ACCEPT").is_some() {
            fs::create_dir_all(golden(name).parent().unwrap()).unwrap();
            fs::write(golden(name), &seen).unwrap();
        }
        if fs::read_to_string(golden(name)).unwrap_or_default() != seen {
            changed.push(*name);
        }
    }
    assert!(changed.is_empty(), "these pictures changed; look at them: {changed:?}");
    let files = fs::read_dir(golden("card").parent().unwrap()).unwrap().count();
    assert_eq!(files, pictures.len(), "a golden picture that is drawn no more");
}
