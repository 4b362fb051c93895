//! What holds for every picture, read with an XML parser of its own.

use roxmltree::{Document, Node};
use tenter::picture::Picture;
use tenter_tests::gallery;

/// A viewport: from its upper left corner, so wide and so high.
type View = [f64; 4];

/// The numbers of an attribute; panics on what is none, such as `NaN`, `inf` or an empty text.
fn numbers(node: &Node<'_, '_>, name: &str) -> Vec<f64> {
    let Some(text) = node.attribute(name) else { return Vec::new() };
    let texts = text.split([' ', ',']);
    let parsed: Vec<f64> = texts
        .map(|text| text.trim_end_matches("mm").parse().unwrap_or_else(|_| panic!("{name}=\"{text}\" of {node:?}")))
        .collect();
    assert!(parsed.iter().all(|number| number.is_finite()), "{name}=\"{text}\" of {node:?}");
    parsed
}

/// The view that an element gives to what it holds.
fn view(node: &Node<'_, '_>) -> View {
    numbers(node, "viewBox").try_into().unwrap()
}

/// Every point that an element names.
fn points(node: &Node<'_, '_>) -> Vec<(f64, f64)> {
    let one = |name: &str| numbers(node, name).first().copied();
    let mut points: Vec<(f64, f64)> = numbers(node, "points").chunks(2).map(|pair| (pair[0], pair[1])).collect();
    let path = node.attribute("d").unwrap_or_default();
    let pairs = path.split(['M', 'L']).filter(|pair| !pair.is_empty());
    points
        .extend(pairs.map(|pair| pair.split_once(',').unwrap()).map(|(x, y)| (x.parse().unwrap(), y.parse().unwrap())));
    for (x, y) in [("x", "y"), ("x1", "y1"), ("x2", "y2")] {
        points.extend(one(x).zip(one(y)));
    }
    if let (Some((x, y)), Some(width), Some(height)) = (one("x").zip(one("y")), one("width"), one("height")) {
        points.push((x + width, y + height));
    }
    if let (Some(x), Some(y), Some(r)) = (one("cx"), one("cy"), one("r")) {
        points.extend([(x - r, y - r), (x + r, y + r)]);
    }
    points
}

/// Panics unless the picture is well-formed, every number is one, and every point lies within its view.
pub fn assert_sound(picture: &Picture) -> String {
    let text = picture.file();
    assert_sound_text(&text);
    text
}

fn assert_sound_text(text: &str) {
    let document = Document::parse(text).unwrap_or_else(|error| panic!("{error}:\n{text}"));
    let root = document.root_element();
    assert_eq!((root.tag_name().name(), root.attribute("role")), ("svg", Some("img")));
    for name in ["title", "desc"] {
        let words = root.children().find(|child| child.has_tag_name(("http://www.w3.org/2000/svg", name))).unwrap();
        assert!(words.text().is_some_and(|words| words.len() > 5), "no {name}");
    }
    for node in root.descendants().filter(|node| node.is_element() && *node != root) {
        let frame = node.ancestors().skip(1).find(|above| above.tag_name().name() == "svg").unwrap();
        let [left, top, width, height] = view(&frame);
        for (x, y) in points(&node) {
            // A hundredth is what the writer rounds to.
            let inside =
                (left - 0.011..=left + width + 0.011).contains(&x) && (top - 0.011..=top + height + 0.011).contains(&y);
            assert!(inside, "({x}, {y}) outside the view: {:?}", &text[node.range()]);
        }
        for name in ["width", "height", "r", "font-size"] {
            assert!(numbers(&node, name).iter().all(|size| *size >= 0.0), "{:?}", &text[node.range()]);
        }
    }
}

#[test]
fn every_picture_is_well_formed_and_within_its_view() {
    for (_, picture) in gallery::pictures() {
        assert_sound(&picture);
    }
    assert_sound(&gallery::two_thousand());
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    let draw = || gallery::pictures().iter().map(|(_, picture)| picture.file()).collect::<Vec<_>>();
    assert_eq!(draw(), draw());
}

/// What the check must find.
const OUTSIDE: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 10 10\">\
                       <title>A circle</title><desc>A circle that leaves</desc><circle cx=\"8\" cy=\"5\" r=\"3\"/></svg>";

#[test]
#[should_panic(expected = "outside the view")]
fn a_point_outside_is_found() {
    assert_sound_text(OUTSIDE);
}

#[test]
#[should_panic(expected = "r=\"NaN\"")]
fn a_number_that_is_none_is_found() {
    assert_sound_text(&OUTSIDE.replace("r=\"3\"", "r=\"NaN\""));
}
