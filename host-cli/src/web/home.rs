//! The first page.

use super::Response;
use super::shell::{Place, Shell};
use crate::store::LogWithDrafts;

pub fn show(_log: &mut dyn LogWithDrafts) -> Response {
    Shell::new(Place::Home, "tenter").page()
}
