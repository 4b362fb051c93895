//! A page to print pictures from at their true size.

use super::svg::Element;
use super::{Picture, STYLE};

/// No margins of the browser's own: they would shrink or move what is drawn to scale.
const PRINT: &str = "\n@page{size:A4;margin:0}\nhtml{background:#fff}\nbody{margin:0}\nsvg{display:block}\n\
                     section{break-inside:avoid}\nsection+section{break-before:page}\n";

/// One self-contained HTML page, each picture on a sheet of A4.
#[must_use]
pub fn to_print(title: &str, pictures: &[Picture]) -> String {
    let mut head = Element::new("head");
    head.push(Element::new("meta").with("charset", "utf-8"));
    head.push(Element::new("meta").with("name", "viewport").with("content", "width=device-width"));
    head.push(Element::new("title").text(title));
    head.push(Element::new("style").verbatim(STYLE).verbatim(PRINT));
    let mut main = Element::new("main");
    for picture in pictures {
        let mut section = Element::new("section");
        section.push(picture.root.clone());
        main.push(section);
    }
    let mut body = Element::new("body");
    body.push(main);
    let mut html = Element::new("html").with("lang", "en");
    html.push(head);
    html.push(body);
    format!("<!DOCTYPE html>\n{}\n", html.render())
}
