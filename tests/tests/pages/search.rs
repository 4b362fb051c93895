//! The book's search and filters, by the keyboard alone; and the book without a script.

use serde_json::{Value, json};
use tenter_tests::browser::{self, TAB, View};

use crate::Desk;

/// The tags of the cloths that are seen, those of the table at a glance, and what is said of their number.
const SEEN: &str = "(() => {
    const tags = (nodes, tag) => [...nodes].filter(node => node.checkVisibility()).map(tag).join(' ');
    return [
        tags(document.querySelectorAll('article'), node => node.querySelector('.tag').lastChild.textContent),
        tags(document.querySelectorAll('tr[data-of]'), node => node.cells[0].textContent),
        document.querySelector('output').value,
        document.activeElement.name ?? '',
    ];
})()";

fn seen(desk: &Desk, words: &[&str], keys: &[&str]) -> Value {
    let file = desk.report(words);
    let visit = browser::visit(&file, &[View::new(768, false).keyed(keys).asked(SEEN)]).unwrap();
    assert_eq!(visit.errors, Vec::<String>::new());
    visit.views[0].result.clone()
}

const ALL: &str = "1 2 3 4 5 6 7 8 9 10 11 12 13 14 15";

#[test]
fn the_search_is_the_first_stop_of_the_keyboard() {
    let desk = Desk::evening();
    assert_eq!(seen(&desk, &["book"], &[]), json!([ALL, ALL, "15 cloths", ""]));
    // By name, whatever the case; by fibre; by two words of which one is the place; by what is nowhere.
    assert_eq!(seen(&desk, &["book"], &[TAB, "TWILL"]), json!(["1", "1", "1 of 15 cloths", "words"]));
    assert_eq!(seen(&desk, &["book"], &[TAB, "crate elastane"]), json!(["1 2", "1 2", "2 of 15 cloths", "words"]));
    assert_eq!(seen(&desk, &["book"], &[TAB, "brocade"]), json!(["", "", "0 of 15 cloths", "words"]));
}

/// The number pinned to a cloth finds it, not every length and mass that has the digit.
#[test]
fn a_number_is_a_whole_one() {
    let desk = Desk::evening();
    assert_eq!(seen(&desk, &["book"], &[TAB, "7"]), json!(["7", "7", "1 of 15 cloths", "words"]));
    assert_eq!(seen(&desk, &["book"], &[TAB, "1"])[0], "1");
    // 97 cotton; 0.70 m.
    assert_eq!(seen(&desk, &["book"], &[TAB, "97"])[0], "1");
    assert_eq!(seen(&desk, &["book"], &[TAB, "0.70"])[0], "8");
    let desk = Desk::empty();
    desk.run(&["cloth", "add", "Doorway rib"]);
    assert_eq!(seen(&desk, &["book"], &[])[2], "1 cloth");
}

#[test]
fn accents_make_no_difference() {
    let desk = Desk::evening();
    desk.run(&["cloth", "add", "Rosé crêpe"]);
    assert_eq!(seen(&desk, &["book"], &[TAB, "rose CREPE"]), json!(["33", "33", "1 of 16 cloths", "words"]));
}

#[test]
fn filters_hold_together() {
    let desk = Desk::evening();
    // The samples have knits 8 to 13, of which 13 lies in a shop. By the marks in their log, plain division: across, 8 gives
    // (178 + 181 + 179) / 300 − 1 = 79 %, 9 71 %, 10 43 %, 11 59 %, 12 12 %, 13 34 % and the woven 4 23 %; along, 4 gives
    // 2.2 %, 9 50 %, 10 30 %, 12 8 %, 13 22 %, and the elastic 15, of which nothing is known across, 96 %.
    assert_eq!(seen(&desk, &["book"], &[TAB, TAB, "k"])[0], "8 9 10 11 12 13");
    assert_eq!(seen(&desk, &["book"], &[TAB, TAB, "k", TAB, "in"])[0], "13");
    assert_eq!(seen(&desk, &["book"], &[TAB, TAB, "k", TAB, TAB, "60"])[0], "8 9");
    assert_eq!(seen(&desk, &["book"], &[TAB, TAB, TAB, TAB, "20", TAB, "12"])[0], "9 10 13");
}

#[test]
fn answers_of_a_role_are_filtered_and_shown_again() {
    let desk = Desk::evening();
    let book = ["book", "--view", "Choir trousers", "A"];
    let to_role = [TAB; 6];
    let keys = |more: &[&'static str]| [&to_role[..], more].concat();
    // Asked of the main cloth are 5 to 15 %, and 3 % growth at most: 1, 5 and 6 give 8 % on three pulls each; 2 gives 6 %
    // on one, too close to call. The growth of 6 was read a minute after release, so that it is too close to call too. Of
    // 5 there are 0.90 m where 2.20 m are needed.
    assert_eq!(seen(&desk, &book, &keys(&[TAB, "m"]))[0], "1", "main meets");
    assert_eq!(seen(&desk, &book, &keys(&[TAB, "t"]))[0], "5", "too little for main");
    assert_eq!(seen(&desk, &book, &keys(&["w", TAB, "m"]))[0], "4 13", "waistband meets");
    assert_eq!(seen(&desk, &book, &keys(&["w", TAB, "m", TAB, "<Enter>"]))[0], ALL, "show all");
}

#[test]
fn without_a_script_everything_is_there_and_nothing_is_offered_that_would_not_work() {
    let desk = Desk::evening();
    let file = desk.report(&["book", "--view", "Choir trousers", "A"]);
    let asked = "[[...document.querySelectorAll('article')].filter(node => node.checkVisibility()).length, \
                 document.querySelector('form').checkVisibility()]";
    let view = View { scripts: false, ..View::new(768, false).asked(asked) };
    assert_eq!(browser::visit(&file, &[view]).unwrap().views[0].result, json!([15, false]));
}
