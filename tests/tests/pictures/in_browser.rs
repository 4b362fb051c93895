//! The pictures in a real browser: words that stay within their picture, light and dark, and paper that is true to scale.

use std::fs;
use std::path::{Path, PathBuf};

use tenter::page::print;
use tenter::picture::{card, true_scale};
use tenter_tests::browser::{self, DOTS_PER_MM, Sheet, View, WIDTHS};
use tenter_tests::gallery;

fn target(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("pictures");
    fs::create_dir_all(&folder).unwrap();
    folder.join(name)
}

/// A page with every picture; where it lies.
fn every_picture() -> PathBuf {
    let pictures: String = gallery::pictures()
        .iter()
        .map(|(name, picture)| format!("<figure id=\"{name}\">{}</figure>\n", picture.inline()))
        .collect();
    let style = tenter::picture::STYLE;
    let page = format!(
        "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>Pictures</title><style>{style}\
         :root{{color-scheme:light dark}}figure{{margin:1em}}svg{{max-width:100%;height:auto}}</style></head>\
         <body><main><h1>Pictures</h1>{pictures}</main></body></html>"
    );
    let file = target("every.html");
    fs::write(&file, page).unwrap();
    file
}

/// Words that leave their picture, by more than a hundredth of its width.
const OUTSIDE: &str = "[...document.querySelectorAll('svg svg text, svg text')].filter(text => {
    const svg = text.ownerSVGElement, box = text.getBBox(), view = svg.viewBox.baseVal, slack = view.width / 100;
    return box.x < -slack || box.y < -slack || box.x + box.width > view.width + slack || box.y + box.height > view.height + slack;
}).map(text => text.closest('figure').id + ': ' + text.textContent)";

/// Words that run into one another, by more than a fifth of their height.
const OVERLAPPING: &str = "[...document.querySelectorAll('figure')].flatMap(figure => {
    const texts = [...figure.querySelectorAll('text')].map(text => [text, text.getBoundingClientRect()]);
    return texts.flatMap(([text, a], place) => texts.slice(place + 1).filter(([, b]) => {
        const slack = Math.min(a.height, b.height) / 5;
        return a.left + slack < b.right && b.left + slack < a.right && a.top + slack < b.bottom && b.top + slack < a.bottom;
    }).map(([other]) => figure.id + ': ' + text.textContent + ' / ' + other.textContent));
})";

#[test]
fn words_stay_within_their_picture_and_apart() {
    let script = format!(
        "({{outside: {OUTSIDE}, overlapping: {OVERLAPPING}, pictures: document.querySelectorAll('figure > svg').length}})"
    );
    let views: Vec<View> = WIDTHS
        .iter()
        .flat_map(|width| [false, true].map(|dark| View::new(*width, dark)))
        .map(|view| {
            let name = format!("every-{}-{}.png", view.width, if view.dark { "dark" } else { "light" });
            View { axe: true, ..view.asked(&script).photographed(target(&name)) }
        })
        .collect();
    let visit = browser::visit(&every_picture(), &views).unwrap();
    for seen in &visit.views {
        assert_eq!(seen.result["pictures"], gallery::pictures().len());
        assert_eq!(seen.result["outside"], serde_json::json!([]));
        assert_eq!(seen.result["overlapping"], serde_json::json!([]));
        assert_eq!(seen.violations, Vec::<String>::new());
    }
    assert_eq!(visit.errors, Vec::<String>::new());
    assert!(visit.requests.iter().all(|address| address.ends_with("/every.html")), "{:?}", visit.requests);
}

/// Prints pictures and gives the sheets.
fn printed(name: &str, html: &str) -> Vec<Sheet> {
    let (file, pdf) = (target(&format!("{name}.html")), target(&format!("{name}.pdf")));
    fs::write(&file, html).unwrap();
    browser::visit(&file, &[View::new(1280, false).printed(pdf.clone())]).unwrap();
    browser::sheets(&pdf).unwrap()
}

/// The length of the longest dark line within 2 mm of a height, in millimetres.
fn line_at(sheet: &Sheet, mm: f64) -> f64 {
    let rows = (0..sheet.height).filter(|y| (dots(*y) - mm).abs() < 2.0);
    dots(rows.map(|y| sheet.longest_run(y).1).max().unwrap())
}

fn dots(count: usize) -> f64 {
    f64::from(u32::try_from(count).unwrap()) / f64::from(u32::try_from(DOTS_PER_MM).unwrap())
}

fn assert_true_to_scale(sheet: &Sheet, check_line: f64) {
    // A4 is 210 by 297 mm (ISO 216); 100 mm ± 0.5 mm is what a person can read on a tape.
    assert!((dots(sheet.width) - 210.0).abs() < 0.3 && (dots(sheet.height) - 297.0).abs() < 0.3, "{sheet:?}");
    let length = line_at(sheet, check_line);
    assert!((length - 100.0).abs() < 0.5, "the check line of 100 mm measures {length} mm");
}

#[test]
fn a_sheet_of_cards_is_one_page_and_true_to_scale() {
    let sheets = printed("cards", &gallery::cards(|cards| print::page("Cards", &card::sheets(cards))));
    assert_eq!(sheets.len(), 1);
    assert_true_to_scale(&sheets[0], 145.5);
}

#[test]
fn five_cards_are_two_pages() {
    let html = gallery::cards(|cards| print::page("Cards", &card::sheets(&[cards, &cards[..1]].concat())));
    let sheets = printed("five-cards", &html);
    assert_eq!(sheets.len(), 2);
    sheets.iter().for_each(|sheet| assert_true_to_scale(sheet, 145.5));
}

#[test]
fn a_pull_gauge_is_true_to_scale() {
    let asked = gallery::range("4in to 5 3/8in");
    let gauge = true_scale::pull_gauge(&true_scale::PullGauge { title: "smock, cuff", asked }).unwrap();
    let sheets = printed("pull-gauge", &print::page("Pull gauge", &[gauge]));
    assert_eq!(sheets.len(), 1);
    assert_true_to_scale(&sheets[0], 103.0);
}

/// A page that is shrunk on its way to paper is found: the measurement can fail.
#[test]
fn a_page_fitted_to_the_paper_is_found() {
    let html = gallery::cards(|cards| print::page("Cards", &card::sheets(cards)));
    let sheets = printed("shrunk", &html.replace("svg{display:block}", "svg{display:block;width:200mm;height:auto}"));
    let length = line_at(&sheets[0], 145.5 * 200.0 / 210.0);
    assert!((length - 95.24).abs() < 0.5, "{length}");
}
