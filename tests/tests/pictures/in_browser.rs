//! The pictures in a real browser: words that stay within their picture, light and dark, and paper that is true to scale.

use std::fs;
use std::path::{Path, PathBuf};

use tenter::page::print;
use tenter::picture::{card, true_scale};
use tenter_tests::browser::{self, OUTSIDE, OVERLAPPING, Sheet, View, WIDTHS};
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

#[test]
fn a_sheet_of_cards_is_one_page_and_true_to_scale() {
    let sheets = printed("cards", &gallery::cards(|cards| print::page("Cards", &card::sheets(cards))));
    assert_eq!(sheets.len(), 1);
    sheets[0].assert_true_to_scale(145.5);
}

#[test]
fn five_cards_are_two_pages() {
    let html = gallery::cards(|cards| print::page("Cards", &card::sheets(&[cards, &cards[..1]].concat())));
    let sheets = printed("five-cards", &html);
    assert_eq!(sheets.len(), 2);
    sheets.iter().for_each(|sheet| sheet.assert_true_to_scale(145.5));
}

#[test]
fn a_pull_gauge_is_true_to_scale() {
    let asked = gallery::range("4in to 5 3/8in");
    let gauge = true_scale::pull_gauge(&true_scale::PullGauge { title: "play coat, cuff", asked }).unwrap();
    let sheets = printed("pull-gauge", &print::page("Pull gauge", &[gauge]));
    assert_eq!(sheets.len(), 1);
    sheets[0].assert_true_to_scale(103.0);
}

/// A page that is shrunk on its way to paper is found: the measurement can fail.
#[test]
fn a_page_fitted_to_the_paper_is_found() {
    let html = gallery::cards(|cards| print::page("Cards", &card::sheets(cards)));
    let sheets = printed("shrunk", &html.replacen("</style>", "svg{width:200mm;height:auto}</style>", 1));
    let length = sheets[0].line_at(145.5 * 200.0 / 210.0);
    assert!((length - 95.24).abs() < 0.5, "{length}");
}
