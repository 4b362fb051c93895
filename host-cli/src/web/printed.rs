//! Pages that are one file each, as `tenter report` makes them: to print, or to hand on.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest as _, Sha256};

use super::Response;

/// A page of that kind: its own styles, pictures within, and no script.
pub fn response(page: String) -> Response {
    with_scripts(page, &[])
}

/// The same with scripts of ours, each known by its bytes, so that none that came in with a text is run.
pub fn with_scripts(page: String, scripts: &[&str]) -> Response {
    let known: String =
        scripts.iter().map(|script| format!(" 'sha256-{}'", STANDARD.encode(Sha256::digest(script)))).collect();
    let scripts = if known.is_empty() { String::new() } else { format!("; script-src{known}") };
    let policy = format!(
        "default-src 'none'; img-src data:; style-src 'unsafe-inline'{scripts}; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
    );
    Response::page(200, page).under(policy)
}
