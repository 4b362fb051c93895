//! Pictures to print at their true size, each on a sheet of A4 of its own.

use askama::Template;

use super::rendered;
use crate::picture::Picture;

#[derive(Template)]
#[template(path = "print.html")]
struct Print<'a> {
    title: &'a str,
    pictures: Vec<String>,
}

/// One self-contained page, each picture on a sheet of A4.
#[must_use]
pub fn page(title: &str, pictures: &[Picture]) -> String {
    rendered(&Print { title, pictures: pictures.iter().map(Picture::inline).collect() })
}
