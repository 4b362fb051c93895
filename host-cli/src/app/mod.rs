//! The app for a phone: its files, made from the module that `host-cli/phone/build` builds. Pure, and the same bytes from
//! the same module.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest as _, Sha256};

/// Where the module lies in the app's folder. It is packed with gzip (RFC 1952), but its name does not say so: servers
/// unpack on the way what they know to be packed.
const MODULE: &str = "app/tenter.bin";

const ENGINE: &str = include_str!("../../phone/page/engine.js");
const WORKER: &str = include_str!("../../phone/page/worker.js");
const ONE_FILE: &str = include_str!("../../phone/page/one-file.html");
const ONE_FILE_SCRIPT: &str = include_str!("../../phone/page/one-file.js");
const PAGE_SCRIPT: &str =
    concat!(include_str!("../../phone/page/page.js"), "\n", include_str!("../../templates/web/photo.js"));
const HAND_OVER_SCRIPT: &str = include_str!("../../phone/page/hand-over.js");
const ICON: &str = include_str!("../../phone/page/icon.svg");

/// The files that need nothing filled in.
const PLAIN: [(&str, &[u8]); 9] = [
    ("index.html", include_bytes!("../../phone/page/start.html")),
    ("app/start.css", include_bytes!("../../phone/page/start.css")),
    ("app/shell.js", include_bytes!("../../phone/page/shell.js")),
    ("app/page.js", PAGE_SCRIPT.as_bytes()),
    ("app/hand-over.js", HAND_OVER_SCRIPT.as_bytes()),
    ("app/manifest.webmanifest", include_bytes!("../../phone/page/manifest.webmanifest")),
    ("app/icon.svg", ICON.as_bytes()),
    ("app/icon-192.png", include_bytes!("../../phone/page/icon-192.png")),
    ("app/icon-512.png", include_bytes!("../../phone/page/icon-512.png")),
];

/// The module, packed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Module<'m>(&'m [u8]);

impl<'m> Module<'m> {
    /// The module that this program was built with; none where it was built without.
    #[must_use]
    pub const fn carried() -> Option<Module<'static>> {
        #[cfg(feature = "phone")]
        return Some(Module(include_bytes!("../../../target/phone/tenter.wasm.gz")));
        #[cfg(not(feature = "phone"))]
        return None;
    }

    /// Reads the file that `host-cli/phone/build` makes; none where it begins in another way than gzip does.
    #[must_use]
    pub fn read(bytes: &'m [u8]) -> Option<Self> {
        bytes.starts_with(&[0x1f, 0x8b, 8]).then_some(Self(bytes))
    }
}

/// A file of the app's folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AppFile {
    /// Its path below the folder, with `/` between its parts.
    pub path: &'static str,
    /// What it holds.
    pub bytes: Vec<u8>,
}

/// The files of the folder for a space on the web, in the order in which to write them: the worker comes last, so that a
/// browser that looks in the meantime finds no worker whose files are not there yet.
#[must_use]
pub fn folder(module: Module<'_>) -> Vec<AppFile> {
    let plain = PLAIN.iter().map(|(path, bytes)| AppFile { path, bytes: bytes.to_vec() });
    let mut files: Vec<AppFile> = plain.collect();
    files.push(AppFile { path: MODULE, bytes: module.0.to_vec() });
    let lines: Vec<String> =
        files.iter().map(|file| format!("    \"/{}\": \"{}\",\n", file.path, integrity(&file.bytes))).collect();
    let worker = WORKER.replacen("const FILES = {};", &format!("const FILES = {{\n{}}};", lines.concat()), 1);
    files.push(AppFile { path: "worker.js", bytes: format!("{ENGINE}\n{worker}").into_bytes() });
    files
}

/// A file's SHA-256 as browsers check it (Subresource Integrity, W3C).
fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(bytes)))
}

/// The app as one file, to be opened from a disk.
#[must_use]
pub fn one_file(module: Module<'_>) -> String {
    let pieces = [
        ("ICON", format!("data:image/svg+xml;base64,{}", STANDARD.encode(ICON))),
        ("ENGINE", ENGINE.to_owned()),
        ("PAGE", PAGE_SCRIPT.to_owned()),
        ("HAND_OVER", HAND_OVER_SCRIPT.to_owned()),
        ("SCRIPT", ONE_FILE_SCRIPT.to_owned()),
        ("MODULE", STANDARD.encode(module.0)),
    ];
    let fill = |page: String, (name, piece): (&str, String)| page.replacen(&format!("{{{{{name}}}}}"), &piece, 1);
    pieces.into_iter().fold(ONE_FILE.to_owned(), fill)
}

#[cfg(test)]
mod tests {
    use super::*;

    const PACKED: [u8; 5] = [0x1f, 0x8b, 8, 0, 7];

    /// SHA-256 of "abc" is the example of FIPS 180-4 (its digits in base64 by Python's `hashlib` and `base64`).
    #[test]
    fn every_file_is_named_in_the_worker_with_its_sum() {
        assert_eq!(integrity(b"abc"), "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
        let files = folder(Module::read(&PACKED).unwrap());
        let (worker, others) = files.split_last().unwrap();
        let text = String::from_utf8(worker.bytes.clone()).unwrap();
        for file in others {
            assert!(text.contains(&format!("\"/{}\": \"{}\"", file.path, integrity(&file.bytes))), "{}", file.path);
        }
        assert_eq!(worker.path, "worker.js");
    }

    #[test]
    fn one_file_holds_everything_and_asks_for_nothing() {
        let page = one_file(Module::read(&PACKED).unwrap());
        assert!(!page.contains("{{"), "a piece was not filled in");
        assert!(page.contains("H4sIAAc="));
        // A script that ended early would show as text.
        for script in [ENGINE, PAGE_SCRIPT, HAND_OVER_SCRIPT, ONE_FILE_SCRIPT] {
            assert!(!script.contains("</script") && !script.contains("<!--"));
        }
    }

    #[test]
    fn what_is_not_packed_is_no_module() {
        assert_eq!(Module::read(b"\0asm"), None);
        assert_eq!(Module::read(b""), None);
    }
}
