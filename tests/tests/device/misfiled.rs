//! A test lands under the cloth that was meant or under none, whatever tags another log has given.

use tenter::command::device::sync::Options;
use tenter::deed::handheld::assign_all;
use tenter::log::{FabricChange, Fact, Here};
use tenter::store::sqlite::Sqlite;
use tenter::store::{Change as _, Read as _, WhichTests};
use tenter_core::saved::{Meant, SavedTest};
use tenter_core::wire::{LentTags, NameList};
use tenter_firmware::keys::Key;
use tenter_firmware::ui::{Screen, TagUse};
use tenter_tests::pressed::Pressed;

use crate::cable::{Cable, all, cloth, log, printed};
use crate::pocket::{Chip, Pocket};

/// A log with cloths of its own under the tags 1 to 9 and 80 to 82.
fn another_log() -> Sqlite {
    let mut store = Sqlite::in_memory(Here::desk()).unwrap();
    for tag in (1..=9).chain(80..=82) {
        let said = FabricChange { tag: Some(tag), name: Some(format!("cloth {tag}")), ..FabricChange::default() };
        store.add(&[Fact::FabricAdded(said)]).unwrap();
    }
    store
}

fn sync(chip: &Chip, store: &mut Sqlite) -> String {
    let (result, text) = Cable::to(Pocket::on(chip.clone())).sync(store, Options::default());
    result.unwrap();
    text
}

/// Saved, the power cut, saved again: twice under a new tag, once under a tag whose name was shown.
#[test]
fn no_test_goes_to_a_cloth_that_was_not_meant() {
    let (chip, mut home, mut other) = (Chip::erased(), log(), another_log());
    sync(&chip, &mut home);
    let mut board = Pressed::on(chip.clone());
    board.to_the_tag(10);
    board.tap(Key::Next);
    assert_eq!(
        (board.app.model().screen, board.app.model().tag, board.app.model().meant),
        (Screen::Saved, 80, Meant::New)
    );
    drop(board);
    let mut board = Pressed::on(chip.clone());
    board.to_the_tag(12);
    board.tap(Key::Next);
    assert_eq!((board.app.model().tag, board.app.model().meant), (81, Meant::New), "not 80 again");
    drop(board);
    let mut board = Pressed::on(chip.clone());
    board.to_the_tag(14);
    board.taps(&[Key::Less; 80]);
    board.tap(Key::Next); // Tag 2.
    let model = board.app.model();
    assert_eq!(model.screen, Screen::TagTaken);
    assert!(matches!(&model.tag_use, TagUse::Cloth(named) if named.name == "Doorway rib"), "{:?}", model.tag_use);
    board.tap(Key::Next);
    assert_eq!(board.app.model().screen, Screen::Saved);
    drop(board);

    // Into a log with tags of its own: nothing is filed, and nothing would be.
    let image = chip.image();
    let text = sync(&Chip::holding(image.clone()), &mut other);
    assert!(
        text.contains("inbox, tag 80") && text.contains("inbox, tag 81") && text.contains("inbox, tag 2"),
        "{text}"
    );
    assert_eq!(other.tests(WhichTests::Inbox).unwrap().len(), 3);
    assert!(assign_all(&other).unwrap().0.is_empty(), "given to another cloth");

    // Into the log that they are from: the one goes to its cloth, the others wait for theirs.
    let text = sync(&Chip::holding(image), &mut home);
    assert!(text.contains("  2 Doorway rib  "), "{text}");
    let filed: Vec<_> = all(&home).into_iter().map(|(_, test)| test.said.fabric).collect();
    assert_eq!(filed, [None, None, Some(cloth(2))]);
    let said = FabricChange { tag: Some(80), name: Some("Balcony crepe".to_owned()), ..FabricChange::default() };
    let crepe = home.add(&[Fact::FabricAdded(said)]).unwrap()[0].id;
    let (facts, _) = assign_all(&home).unwrap();
    assert_eq!(facts.len(), 1);
    assert!(matches!(facts[0], Fact::TestAssigned { fabric, .. } if fabric == crepe), "{facts:?}");
}

/// The desk gives no tag that it lent, and the handheld says how far it gave them.
#[test]
fn desk_and_handheld_give_no_tag_twice() {
    let (chip, mut home) = (Chip::erased(), log());
    sync(&chip, &mut home);
    let tags = |chip: &Chip| tenter_firmware::log::Log::open(chip.clone()).unwrap().tags();
    let three = |chip: &Chip| (tags(chip).least, tags(chip).next, tags(chip).most);
    assert_eq!(three(&chip), (80, 80, 99));
    let next = |home: &Sqlite, given: &[u16]| tenter::finding::tag::next(home, given).unwrap();
    assert_eq!((next(&home, &[1, 2, 3]), next(&home, &[79])), (Some(4), Some(100)), "the desk passes them over");
    let save = |more: usize| {
        let mut board = Pressed::on(chip.clone());
        board.to_the_tag(10);
        board.taps(&vec![Key::More; more]);
        board.tap(Key::Next);
        assert_eq!(board.app.model().screen, Screen::Saved);
    };
    save(13); // Tag 93: those before it are passed over.
    let cable = Cable::to(Pocket::on(chip.clone()));
    assert_eq!(cable.session().unwrap().tags().unwrap(), LentTags { least: 80, next: 94, most: 99 }, "it says so");
    sync(&chip, &mut home);
    sync(&chip, &mut home);
    assert_eq!(three(&chip), (94, 94, 99));
    save(0);
    save(0);
    // Few are left: the next sync lends others.
    sync(&chip, &mut home);
    assert_eq!(three(&chip), (180, 180, 199));
}

/// A handheld from before tags were agreed is still synced, and its tests wait: its tags say too little.
#[test]
fn an_older_handheld_is_understood_and_not_believed() {
    let saved: Vec<_> =
        crate::pocket::tests(4).into_iter().map(|test| SavedTest { meant: Meant::Unsaid, ..test }).collect();
    let cable = Cable::to(Pocket::with(&saved).knowing_no_tags(true));
    let mut home = log();
    let (result, text) = cable.sync(&mut home, Options::default());
    result.unwrap();
    let words = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(words.ends_with("it does not know which tags are free, so its tests wait in the inbox"), "{text}");
    assert_eq!(home.tests(WhichTests::Inbox).unwrap().len(), 4);
    assert!(cable.world().pocket.waiting().is_empty());
    // A person asks for it: tags 1 and 2 are on one cloth each.
    assert_eq!(assign_all(&home).unwrap().0.len(), 2);
}

/// Who pulled is said on the handheld, and each test goes to that person; where nobody is named, to its owner.
#[test]
fn each_test_goes_to_who_pulled_it() {
    let (chip, mut home) = (Chip::erased(), log());
    let cable = Cable::to(Pocket::on(chip.clone()));
    cable.sync(&mut home, Options { by: Some("Cleo".to_owned()), ..Options::default() }).0.unwrap();
    let save = |chip: &Chip, other: bool| {
        let mut board = Pressed::on(chip.clone());
        let named = board.app.model().by.as_ref().map(|by| by.name.as_str().to_owned());
        if other {
            board.taps(&[Key::Less, Key::More, Key::More, Key::More, Key::More, Key::More, Key::Next]);
            board.taps(&[Key::Less; 5]);
        }
        board.to_the_tag(10);
        board.tap(Key::Next);
        assert_eq!(board.app.model().screen, Screen::Saved);
        (named, board.app.model().by.as_ref().map(|by| by.name.as_str().to_owned()))
    };
    assert_eq!(save(&chip, false), (None, None));
    let names = ["Anna", "Ben"].map(str::to_owned);
    let people = |names: &[String], home: &mut Sqlite| {
        // Plugged in again: one program at a time has the chip.
        let cable = Cable::to(Pocket::on(chip.clone()));
        let (result, text) =
            printed(|screen| tenter::command::device::people(&mut cable.session()?, names, home, screen));
        result.unwrap();
        text
    };
    assert_eq!(people(&names, &mut home), "the handheld is Anna's\nit also offers Ben\n");
    let anna = Some("Anna".to_owned());
    assert_eq!(save(&chip, false), (anna.clone(), anna.clone()));
    let ben = Some("Ben".to_owned());
    assert_eq!(save(&chip, true), (anna, ben.clone()));
    assert_eq!(save(&chip, false), (ben.clone(), ben), "the choice is remembered");
    sync(&chip, &mut home);
    let everybody = home.people().unwrap();
    let by: Vec<_> =
        all(&home).into_iter().map(|(_, test)| everybody.name(test.said.pulled_by).map(str::to_owned)).collect();
    // The first was saved while nobody was on it: its owner by now is Anna.
    let wanted = ["Anna", "Anna", "Ben", "Ben"].map(|name| Some(name.to_owned()));
    assert_eq!(by, wanted);
    // Into a log that knows neither: nobody is taken for them, not even the owner that it remembers.
    assert_eq!(people(&[], &mut home), "the handheld names nobody now\n");
    let mut pocket = Pocket::on(chip.clone());
    assert_eq!(pocket.records().log().unwrap().name_count(NameList::People), 0);
}
