//! What comes out of the printer.

use std::path::{Path, PathBuf};
use std::process::Command;

use tenter_tests::browser::{self, View};

use crate::{Desk, kept};

/// Prints a page for a reader who prefers dark ones.
fn printed(name: &str, file: &Path) -> PathBuf {
    let pdf = kept(&format!("{name}.pdf"));
    browser::visit(file, &[View::new(1280, true).printed(pdf.clone())]).unwrap();
    pdf
}

/// Paper is white: what is light on a dark screen would not be read on it.
#[test]
fn ink_is_dark_whatever_the_screen_is() {
    let desk = Desk::evening();
    let [plan, cards] = [&["sheet", "choir", "a"][..], &["cards", "1", "9"]].map(|words| {
        let file = desk.report(words);
        let light = kept("light.pdf");
        browser::visit(&file, &[View::new(1280, false).printed(light.clone())]).unwrap();
        [light, printed("dark", &file)].map(|pdf| browser::sheets(&pdf).unwrap().remove(0).dark_dots())
    });
    for [light, dark] in [plan, cards] {
        assert!(dark > 0 && light == dark, "{light} dark dots, of one who prefers dark pages {dark}");
    }
}

/// The text of a printed page, sheet by sheet.
fn texts(pdf: &Path) -> Vec<String> {
    let output = Command::new("pdftotext").arg("-layout").arg(pdf).arg("-").output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let text = String::from_utf8(output.stdout).unwrap();
    text.split_terminator('\u{c}').map(str::to_owned).collect()
}

#[test]
fn cards_are_four_to_a_sheet_and_true_to_scale() {
    let desk = Desk::evening();
    // Thirteen cloths lie at home.
    let all = browser::sheets(&printed("cards", &desk.report(&["cards"]))).unwrap();
    assert_eq!(all.len(), 4);
    all.iter().for_each(|sheet| sheet.assert_true_to_scale(145.5));
    let two = browser::sheets(&printed("two-cards", &desk.report(&["cards", "1", "9"]))).unwrap();
    assert_eq!(two.len(), 1);
    two[0].assert_true_to_scale(145.5);
}

#[test]
fn gauges_are_one_to_a_sheet_and_true_to_scale() {
    let desk = Desk::evening();
    let one = browser::sheets(&printed("gauge", &desk.report(&["gauge", "--wants", "25%"]))).unwrap();
    assert_eq!(one.len(), 1);
    one[0].assert_true_to_scale(103.0);
    // View A asks three cloths for stretch, each crosswise.
    let view = browser::sheets(&printed("gauges", &desk.report(&["gauge", "--view", "choir", "a"]))).unwrap();
    assert_eq!(view.len(), 3);
    view.iter().for_each(|sheet| sheet.assert_true_to_scale(103.0));
}

/// Where a swatch is laid on paper, millimetres are millimetres: 25 % of a relaxed 100 mm ends at 125 mm.
#[test]
fn the_marks_of_a_gauge_lie_where_they_say() {
    let desk = Desk::evening();
    let sheets = browser::sheets(&printed("gauge-marks", &desk.report(&["gauge", "--wants", "25%"]))).unwrap();
    // Between the rails stand the zero, the end of the relaxed cloth and the mark to pull to.
    let posts = sheets[0].posts(34.0, 38.0);
    let [zero, relaxed, least] = posts[..] else { panic!("{posts:?}") };
    assert!((relaxed - zero - 100.0).abs() < 0.5 && (least - zero - 125.0).abs() < 0.5, "{posts:?}");
}

/// The bar of a card is a piece of cloth, relaxed 50 mm and pulled by what was measured: 8.53 % of 50 mm is 4.3 mm.
#[test]
fn the_bar_of_a_card_is_as_long_as_the_cloth() {
    let desk = Desk::evening();
    let sheets = browser::sheets(&printed("card-bar", &desk.report(&["cards", "1"]))).unwrap();
    // 271, 272 and 271 mm on marks of 250 mm, as the log has them: 271.33 / 250 − 1 = 8.53 %.
    let posts = sheets[0].posts(89.5, 92.0);
    let [from, relaxed, pulled] = posts[..] else { panic!("{posts:?}") };
    assert!((relaxed - from - 50.0).abs() < 0.5 && (pulled - relaxed - 4.27).abs() < 0.5, "{posts:?}");
}

/// The fullest kinds too: a fly with a zip, and a lined coat with a hood.
#[test]
fn the_plan_of_a_view_is_one_sheet() {
    let desk = Desk::evening();
    let plans: [(&[&str], &[&str]); 2] = [
        (
            &["sheet", "choir", "a", "--zip", "18cm"],
            &["Choir trousers, view A", "Vestry twill", "Sew a sample", "take 18 cm", "pins, blades and irons"],
        ),
        (
            &["sheet", "play coat", "--child", "--with", "hood"],
            &["Play coat", "planned as a lined coat for a child", "Lining", "Last press", "without a cord"],
        ),
    ];
    for (words, shown) in plans {
        let texts = texts(&printed(words[1], &desk.report(words)));
        assert_eq!(texts.len(), 1, "{texts:?}");
        for words in shown {
            assert!(texts[0].contains(words), "{words}: {}", texts[0]);
        }
    }
}

/// On paper nothing can be opened or filtered: what lies folded on the screen is printed, the form is not.
#[test]
fn a_printed_book_is_complete() {
    let desk = Desk::evening();
    let text = texts(&printed("book", &desk.report(&["book"]))).concat();
    for words in ["Encore double knit", "271 mm, 272 mm, 271 mm", "added; 3.10 m on hand", "50 cm to 49.1 cm"] {
        assert!(text.contains(words), "{words}: {text}");
    }
    assert!(!text.contains("Show all"), "{text}");
}
