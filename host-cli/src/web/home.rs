//! The first page.

use super::Response;
use super::shell::{Place, Shell};
use crate::store::Log;

pub fn show(_log: &mut dyn Log) -> Response {
    Shell::new(Place::Home, "tenter").page()
}
