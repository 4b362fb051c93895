//! A whole test, from the demand that the host sends to the record that it fetches, on both boards.

use tenter::cli::{self, Parsed};
use tenter::link::LinkSession;
use tenter_core::Repeatability;
use tenter_core::record::LabelledDemand;
use tenter_core::{Demand, Grain, Length, PullTest, Range, Unit, saved};
use tenter_firmware::ui::{Action, Screen};
use tenter_tests::emulator::{Board, BoardLine, HANGS, Key};
use tenter_tests::handheld::Handheld;

use crate::walk::{Walk, as_text, golden};
use crate::{boards, budget};

/// Tests that fit an erased 24C256: 430 pages of ring, of which four are kept free, two for each further test.
pub const ROOM: u16 = 214;
const DEVICE: u32 = 0x5EED;
/// 2026-11-25 00:00 UTC.
const NOW: u32 = 1_795_564_800;

fn demand() -> LabelledDemand {
    let five = Range::parse("5%", Unit::Mm).unwrap();
    LabelledDemand::new("choir trousers A", Demand::for_grain(Grain::Crosswise, five)).unwrap()
}

/// The host names the handheld, sets its clock and sends a demand.
fn prepare<B: Board>(board: &mut B) {
    let mut session = LinkSession::open_with(BoardLine::new(board), HANGS, 1).unwrap();
    assert_eq!(session.identify().unwrap().device, 0);
    session.name(DEVICE).unwrap();
    session.name(DEVICE).unwrap(); // Repeated safely.
    session.set_demands(&[demand()]).unwrap();
    session.set_clock(|| NOW).unwrap();
    assert_eq!(session.list().unwrap().unacknowledged, 0);
}

/// 100 mm to 105 mm five times, back at 101 mm after the first and the last; demand 5 %; tag 1, which the twin knows by
/// the name of its cloth where a log has lent others.
pub fn measure<B: Board>(walk: &mut Walk<'_, B>, rest_ms: u32) {
    use Action::{Back, Less, More, Next};
    walk.tap(Key::More, More(1));
    walk.tap(Key::Next, Next); // The demand.
    walk.tap(Key::Less, Less(1));
    walk.tap(Key::Next, Next); // Measure.
    walk.tap(Key::Next, Next); // Settled.
    for pull in 1..=5 {
        walk.wait(1_300);
        walk.tap(Key::Next, Next); // Let go.
        if pull == 1 {
            for _ in 0..10 {
                walk.tap(Key::More, More(1)); // 105.0 mm.
            }
        }
        walk.tap(Key::Next, Next); // Take it.
        if pull == 1 {
            walk.tap(Key::Back, Back); // Not the second at once: the list.
            walk.tap(Key::More, More(1));
            walk.tap(Key::More, More(1));
            walk.tap(Key::Next, Next); // Read it back.
        }
        if pull == 1 || pull == 5 {
            assert_eq!(walk.twin.model.screen, Screen::Rest);
            walk.wait(rest_ms);
            walk.tap(Key::Next, Next);
            walk.tap(Key::More, More(1));
            walk.tap(Key::More, More(1)); // 101.0 mm.
            walk.tap(Key::Next, Next);
        } else if pull > 2 {
            walk.tap(Key::Back, Back); // No reading back.
        }
        if [1, 3, 4].contains(&pull) {
            assert_eq!(walk.twin.model.screen, Screen::Choice);
            walk.tap(Key::Next, Next); // Pull again.
        }
    }
    assert_eq!(walk.twin.model.screen, Screen::Result);
    walk.tap(Key::More, More(1));
    walk.tap(Key::More, More(1));
    walk.tap(Key::Next, Next); // Its tag.
    if walk.twin.tags.is_some() {
        walk.tap(Key::Less, Less(1));
        walk.tap(Key::Next, Next);
        assert_eq!(walk.twin.model.screen, Screen::TagTaken);
    }
    walk.tap(Key::Next, Next); // Save.
    assert_eq!(walk.twin.model.screen, Screen::Saved);
    walk.tap(Key::Next, Next);
}

/// What the host fetches is what was dialled, and the digits on both sides are the same.
fn fetch<B: Board>(board: &mut B, twin: &Handheld) {
    let mut session = LinkSession::open_with(BoardLine::new(board), HANGS, 1).unwrap();
    assert_eq!(session.identify().unwrap().device, DEVICE);
    let fetched: Vec<_> = session.fetch_all_from(1).collect::<Result<_, _>>().unwrap();
    assert_eq!(fetched.len(), 1);
    let saved = saved::decode(&fetched[0].record).unwrap();
    assert_eq!(saved.tag, 1);
    assert!(saved.clock.unix_s.unwrap() >= NOW, "{:?}", saved.clock);
    assert_eq!(saved.test.pulls(), [Length::from_mm(105); 5]);
    assert_eq!(saved.test, twin.saved[0].1);
    same_digits(&saved.test);
    session.acknowledge(fetched[0].seq).unwrap();
    session.acknowledge(fetched[0].seq).unwrap();
    assert_eq!(session.list().unwrap().unacknowledged, 0);
    session.set_repeatability(Repeatability::new(0.5, 22.0)).unwrap();
    session.set_repeatability(Repeatability::new(0.5, 22.0)).unwrap();
}

/// `tenter check` on the same readings prints the digits that stand on the display.
fn same_digits(test: &PullTest) {
    let mut words =
        "tenter check --marks 100mm --settling --wants 5%".split(' ').map(str::to_owned).collect::<Vec<_>>();
    for (index, pull) in test.pulls().iter().enumerate() {
        words.extend(["--to".to_owned(), pull.show(Unit::Mm).to_string()]);
        for rest in test.rests().iter().filter(|rest| usize::from(rest.after_pull) == index) {
            words.extend(["--back".to_owned(), format!("{}@{}s", rest.recovered.show(Unit::Mm), rest.seconds)]);
        }
    }
    let Ok(Parsed::Run(line)) = cli::parse(&words) else { panic!("{words:?}") };
    let mut out = Vec::new();
    let mut screen =
        tenter::text::TextOutput { out: &mut out, width: 80, unicode: true, here: tenter::log::Here::desk() };
    tenter::command::run(&line, &mut screen).unwrap();
    let text = anstream::adapter::strip_str(std::str::from_utf8(&out).unwrap()).to_string();
    let mut twin = Handheld::with_log(vec![demand()]);
    twin.model.test = Some(test.clone());
    twin.model.demand = Some(demand());
    twin.model.screen = Screen::Choice;
    twin.model.row = 1;
    twin.act(Action::Next);
    let evaluation = twin.model.evaluation.clone().unwrap();
    let figures = evaluation.figures;
    let confidence = tenter_core::Confidence::default();
    for (name, figure) in [("stretch", figures.stretch), ("growth", figures.rest.unwrap().growth)] {
        let half = tenter_core::Decimal::round(figure.half_width(confidence), 1);
        let shown = format!("{name:<9} {:>6} % ± {half}", figure.ratio.percent(1));
        assert!(text.contains(&shown), "{shown} is not in\n{text}");
    }
    assert!(text.starts_with("TOO CLOSE TO CALL  stretch at least 5 %: chance 50.0 %"), "{text}");
}

fn whole_test<B: Board>(board: &mut B, name: &'static str, rest_ms: u32) {
    board.wait_for_photo(&mut |photo| as_text(photo) == golden("home")).unwrap();
    prepare(board);
    let mut twin = Handheld::with_log(vec![demand()]);
    twin.log(true, ROOM);
    let mut walk = Walk::new(board, twin, name);
    measure(&mut walk, rest_ms);
    let twin = walk.twin.clone();
    fetch(board, &twin);
    // The host has taken it: home says so.
    board.wait_for_photo(&mut |photo| as_text(photo).starts_with(&head_of(&golden("home")))).unwrap();
}

/// The first lines of a picture: its title.
pub fn head_of(picture: &str) -> String {
    picture.lines().take(5).flat_map(|line| [line, "\n"]).collect()
}

#[test]
fn on_the_emulated_cortex_m3_board() {
    let (_folder, options) = boards::qemu_options();
    let eeprom = options.eeprom.clone();
    let mut board = boards::start_qemu(options);
    whole_test(&mut board, "lm3s6965evb", 2_300);
    assert_eq!(boards::hand_in(&eeprom), Repeatability::new(0.5, 22.0));
    budget::assert_ram(&mut board);
    // Commands that the model of the display does not know would be named here.
    assert_eq!(board.complaints().unwrap(), "");
}

#[test]
fn on_the_board_one_can_build() {
    let (_folder, options) = boards::pico_options();
    let eeprom = options.eeprom.clone();
    whole_test(&mut boards::start_pico(options), "pico", 60_500);
    assert_eq!(boards::hand_in(&eeprom), Repeatability::new(0.5, 22.0));
}

/// One button alone: 100 mm to 105 mm, back at 101 mm, saved under tag 1.
fn one_button<B: Board>(board: &mut B, name: &'static str) {
    use Action::{Accept, Back, Step};
    board.wait_for_photo(&mut |photo| as_text(photo) == golden("home")).unwrap();
    let mut twin = Handheld::default();
    twin.log(true, ROOM);
    let mut walk = Walk::new(board, twin, name);
    let script = [
        &[Accept, Accept, Step][..],                             // Measure, settled, let go.
        &[Accept, Step, Step, Step, Step, Step, Accept, Accept], // 105.0 mm.
        &[Back, Step, Step, Accept, Accept],                     // The list; read it back.
        &[Step, Accept, Accept],                                 // 101.0 mm.
        &[Step, Accept, Step, Accept],                           // The answer, its figures, the tag.
        &[Accept, Accept, Accept],                               // Tag 1, saved.
    ];
    for action in script.concat() {
        walk.only(action);
    }
    assert_eq!(walk.twin.model.screen, Screen::Saved);
    assert_eq!(walk.twin.saved[0].1.pulls(), [Length::from_mm(105)]);
}

#[test]
fn with_one_button_on_the_emulated_cortex_m3_board() {
    let (_folder, options) = boards::qemu_options();
    let eeprom = options.eeprom.clone();
    one_button(&mut boards::start_qemu(options), "lm3s6965evb-one-button");
    assert_eq!(boards::saved_in(&eeprom).len(), 1);
}

#[test]
fn with_one_button_on_the_board_one_can_build() {
    let (_folder, options) = boards::pico_options();
    let eeprom = options.eeprom.clone();
    one_button(&mut boards::start_pico(options), "pico-one-button");
    assert_eq!(boards::saved_in(&eeprom).len(), 1);
}
