//! Every screen of the handheld, drawn and compared with its golden picture in `tests/golden/screens`.
//!
//! A changed screen is looked at and accepted by `TENTER_ACCEPT=1 cargo test -p tenter-tests --test screens`;
//! `target/screens.png` then shows all of them to a person.

use std::fs;
use std::path::{Path, PathBuf};

use tenter_core::Repeatability;
use tenter_core::record::LabelledDemand;
use tenter_core::wire::LentTags;
use tenter_core::{Demand, Ends, Grain, Length, Limit, PullTest, Range, Scale, Unit};
use tenter_firmware::frame::Frame;
use tenter_firmware::log::Named;
use tenter_firmware::ui::{Action, Event, Restart, Screen, update};
use tenter_tests::handheld::Handheld;
use tenter_tests::picture;

fn demand(label: &str, stretch: &str) -> LabelledDemand {
    let range = Range::parse(stretch, Unit::Mm).unwrap();
    LabelledDemand::new(label, Demand::for_grain(Grain::Crosswise, range)).unwrap()
}

/// The same with the growth that is allowed after a minute.
fn growing(label: &str, stretch: &str, growth: &str) -> LabelledDemand {
    let growth_at_most = Limit::parse(growth, Unit::Mm).ok();
    LabelledDemand::new(label, Demand { growth_at_most, rest_seconds: 60, ..demand(label, stretch).demand }).unwrap()
}

fn with_demands() -> Handheld {
    Handheld::with_log(vec![demand("choir trousers A", "5%"), demand("choir trousers B", "40%..70%")])
}

/// From home to the dial of the first pull.
fn first_dial(handheld: &mut Handheld) {
    assert_eq!(handheld.model.screen, Screen::Home);
    handheld.acts(&[Action::Next, Action::Next, Action::Next]);
    assert_eq!(handheld.model.screen, Screen::Extended);
}

/// One pull to so many half millimetres above the gauge and one reading back; then to the list of choices.
fn pull(handheld: &mut Handheld, above: u16, back: Option<u16>) {
    assert_eq!(handheld.model.screen, Screen::Extended);
    handheld.model.dial.less(9999);
    handheld.acts(&[Action::More(above), Action::Next]);
    if let Some(back) = back {
        if handheld.model.screen == Screen::Pull {
            handheld.acts(&[Action::Back, Action::More(1), Action::More(1), Action::Next]);
        }
        assert_eq!(handheld.model.screen, Screen::Rest);
        handheld.wait(60_000);
        handheld.acts(&[Action::Next, Action::More(back), Action::Next]);
    }
    if handheld.model.screen != Screen::Choice {
        handheld.act(Action::Back);
    }
    assert_eq!(handheld.model.screen, Screen::Choice);
}

/// A finished test with one demand.
fn result(demands: Vec<LabelledDemand>, pulls: &[(u16, Option<u16>)]) -> Handheld {
    let mut handheld = Handheld::with_log(demands);
    if !handheld.demands.is_empty() {
        handheld.acts(&[Action::More(1), Action::Next, Action::Less(1)]);
    }
    first_dial(&mut handheld);
    for (index, (above, back)) in pulls.iter().enumerate() {
        if index > 0 {
            handheld.acts(&[Action::Next, Action::Next]);
        }
        pull(&mut handheld, *above, *back);
    }
    handheld.acts(&[Action::More(1), Action::Next]);
    assert_eq!(handheld.model.screen, Screen::Result);
    handheld
}

/// The pictures, each with its name.
fn gallery() -> Vec<(&'static str, Frame)> {
    let mut shots = Vec::new();
    let mut handheld = with_demands();
    shots.push(("home", handheld.frame()));
    handheld.acts(&[Action::More(1), Action::Next]);
    shots.push(("home-demand", handheld.frame()));
    handheld.acts(&[Action::More(1), Action::More(1)]);
    handheld.acts(&[Action::Next; 5]);
    shots.push(("gauge", handheld.frame()));
    handheld.acts(&[Action::Back]);

    let mut handheld = with_demands();
    handheld.act(Action::Next);
    shots.push(("settle", handheld.frame()));
    handheld.act(Action::Next);
    handheld.wait(7_400);
    shots.push(("pull", handheld.frame()));
    handheld.act(Action::Next);
    shots.push(("extended-0", handheld.frame()));
    handheld.act(Action::More(10));
    shots.push(("extended-5", handheld.frame()));
    handheld.act(Action::More(165));
    shots.push(("extended-187.5", handheld.frame()));
    handheld.act(Action::More(25));
    shots.push(("extended-100-percent", handheld.frame()));
    handheld.act(Action::More(300));
    shots.push(("extended-250-percent", handheld.frame()));
    handheld.act(Action::Less(490));
    handheld.act(Action::Next);
    shots.push(("pull-second", handheld.frame()));
    handheld.acts(&[Action::Back, Action::More(1), Action::More(1), Action::Next]);
    handheld.wait(21_000);
    shots.push(("rest", handheld.frame()));
    handheld.wait(39_500);
    shots.push(("rest-now", handheld.frame()));
    handheld.act(Action::Next);
    handheld.act(Action::More(2));
    shots.push(("recovered", handheld.frame()));
    handheld.act(Action::Less(4));
    shots.push(("recovered-negative", handheld.frame()));
    handheld.act(Action::Next);
    shots.push(("choice", handheld.frame()));
    handheld.acts(&[Action::Step; 6]);
    handheld.act(Action::Next);
    shots.push(("discard", handheld.frame()));
    handheld.acts(&[Action::Back, Action::More(1), Action::More(1), Action::More(1), Action::Next]);
    shots.push(("readings", handheld.frame()));
    let mut one = with_demands();
    first_dial(&mut one);
    pull(&mut one, 10, None);
    shots.push(("choice-one", one.frame()));
    handheld.act(Action::Next);
    shots.push(("reading", handheld.frame()));
    remembered(&mut shots);

    let mut close = result(vec![demand("choir trousers A", "5%")], &[(12, Some(2))]);
    shots.push(("result-close", close.frame()));
    close.act(Action::More(1));
    shots.push(("result-close-figures", close.frame()));
    close.act(Action::More(1));
    shots.push(("result-close-settle", close.frame()));
    close.act(Action::Next);
    shots.push(("tag", close.frame()));
    close.act(Action::Next);
    shots.push(("saved", close.frame()));
    let mut own = Handheld { hand: Repeatability::new(0.5, 22.5), ..with_demands() };
    own.log(true, 490);
    first_dial(&mut own);
    pull(&mut own, 100, Some(2));
    own.acts(&[Action::More(1), Action::Next, Action::More(1)]);
    shots.push(("result-own-hand-figures", own.frame()));
    let on_limit = result(vec![demand("choir trousers A", "5%")], &[(10, Some(2))]);
    shots.push(("result-on-limit", on_limit.frame()));
    let meets = result(vec![demand("choir trousers A", "5%")], &[(16, Some(2)), (17, Some(1)), (16, Some(2))]);
    shots.push(("result-meets", meets.frame()));
    let mut short = result(vec![demand("choir trousers B", "40%..70%")], &[(10, None)]);
    shots.push(("result-short", short.frame()));
    short.act(Action::More(1));
    shots.push(("result-short-figures", short.frame()));
    short.act(Action::More(1));
    shots.push(("result-short-next", short.frame()));
    let mut over = result(vec![demand("choir trousers B", "40%..70%")], &[(184, Some(4)), (188, Some(5))]);
    shots.push(("result-over", over.frame()));
    over.act(Action::More(1));
    shots.push(("result-over-figures", over.frame()));
    let far = [(200, Some(20)), (202, Some(21)), (201, Some(20))];
    shots.push(("result-growth-over", result(vec![growing("choir tights", "40%", "3%")], &far).frame()));
    shots.push(("result-growth-close", result(vec![growing("choir tights", "40%", "9%")], &far).frame()));
    let stretch_alone = result(vec![demand("choir tights", "40%")], &[(200, None), (202, None), (201, None)]);
    shots.push(("result-meets-stretch-alone", stretch_alone.frame()));
    shots.push((
        "result-growth-not-read",
        result(vec![growing("choir tights", "40%", "3%")], &[(200, None), (202, None), (201, None)]).frame(),
    ));
    let bags = [(200, Some(40)), (202, Some(41)), (201, Some(40))];
    shots.push(("result-bags", result(vec![demand("choir tights", "40%")], &bags).frame()));
    let held = [(200, Some(190)), (202, Some(191)), (201, Some(190))];
    shots.push(("result-not-released", result(vec![demand("choir tights", "40%")], &held).frame()));
    shots.push(("result-nothing-asked", result(vec![], &[(500, Some(9))]).frame()));
    shots.push(("result-rigid", result(vec![demand("choir trousers A", "5%")], &[(0, None)]).frame()));

    let mut full = with_demands();
    full.log(true, 0);
    full.act(Action::Next);
    shots.push(("full", full.frame()));
    let mut none = Handheld::default();
    shots.push(("home-no-log", none.frame()));
    none.act(Action::Next);
    shots.push(("no-log", none.frame()));

    let mut inch = with_demands();
    inch.acts(&[Action::Step; 3]);
    inch.acts(&[Action::Next; 3]);
    inch.acts(&[Action::Step; 3]);
    first_dial(&mut inch);
    inch.act(Action::More(22));
    shots.push(("extended-inch", inch.frame()));

    let mut one = with_demands();
    shots.push(("one-button-home", {
        one.act(Action::Step);
        one.act(Action::Back);
        one.frame()
    }));
    one.acts(&[Action::Accept, Action::Accept, Action::Accept]);
    shots.push(("one-button-tens", one.frame()));
    one.acts(&[Action::Step, Action::Accept]);
    shots.push(("one-button-ones", one.frame()));
    one.acts(&[Action::Step, Action::Accept]);
    shots.push(("one-button-halves", one.frame()));
    making(&mut shots);
    shots
}

/// What is there again after the power went, whose tag it is, and who pulls.
fn remembered(shots: &mut Vec<(&'static str, Frame)>) {
    let mut handheld = with_demands();
    let mut draft = saved(112, None);
    draft.add_rest(60, Length::from_mm(101)).unwrap();
    update(&mut handheld.model, Event::Draft(draft), 0);
    shots.push(("resume", handheld.frame()));
    let mut again = handheld.clone();
    update(&mut again.model, Event::Restarted(Restart::Watchdog), 0);
    shots.push(("resume-restarted", again.frame()));
    handheld.acts(&[Action::Next, Action::More(1), Action::More(1), Action::Next]);
    shots.push(("release", handheld.frame()));
    let mut again = with_demands();
    update(&mut again.model, Event::Restarted(Restart::Panic), 0);
    shots.push(("home-restarted", again.frame()));

    let mut handheld = Handheld::with_log(vec![demand("Größe Côté façon", "5%")]);
    handheld.tags = Some(LentTags { least: 100, next: 104, most: 119 });
    handheld.names = [
        vec![Named::new(1, 7, "Vestry twill").unwrap(), Named::new(2, 8, "Balcony crêpe").unwrap()],
        vec![Named::new(3, 0, "Zoë").unwrap()],
    ];
    handheld.log(true, 490);
    handheld.acts(&[Action::More(1), Action::Next]);
    shots.push(("home-accents", handheld.frame()));
    handheld.acts(&[Action::More(1), Action::More(1), Action::More(1), Action::More(1)]);
    shots.push(("home-nobody", handheld.frame()));
    handheld.act(Action::Next);
    shots.push(("home-by", handheld.frame()));
    handheld.acts(&[Action::Less(1); 5]);
    first_dial(&mut handheld);
    pull(&mut handheld, 12, None);
    handheld.acts(&[Action::More(1), Action::Next, Action::Next]);
    shots.push(("tag-free", handheld.frame()));
    let at = |tag: i32| {
        let mut handheld = handheld.clone();
        handheld.act(if tag < 104 { Action::Less(104 - tag as u16) } else { Action::More(tag as u16 - 104) });
        handheld.act(Action::Next);
        handheld
    };
    let mut twill = at(7);
    shots.push(("tag-cloth", twill.frame()));
    twill.act(Action::Next);
    shots.push(("saved-cloth", twill.frame()));
    shots.push(("tag-given", at(102).frame()));
    shots.push(("tag-unknown", at(300).frame()));
    let mut undated = Handheld { dated: false, ..handheld.clone() };
    undated.log(true, 490);
    undated.act(Action::Next);
    shots.push(("saved-no-date", undated.frame()));
    let mut long = Handheld::with_log(vec![demand("Smock long sleeves main", "5%")]);
    long.acts(&[Action::More(1), Action::Next]);
    shots.push(("home-long-demand", long.frame()));
}

/// A saved test, five times from 100 mm to so many millimetres, read back or not.
fn saved(extended: i16, back: Option<i16>) -> PullTest {
    let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap().with_settling_pull(true);
    for _ in 0..5 {
        test.add_pull(Length::from_mm(extended)).unwrap();
    }
    if let Some(back) = back {
        test.add_rest(60, Length::from_mm(back)).unwrap();
    }
    test
}

/// A handheld that shows the newest of its saved tests.
fn shelf(saved: &[(u16, PullTest)]) -> Handheld {
    let mut handheld = Handheld { saved: saved.to_vec(), ..Handheld::default() };
    handheld.log(true, 490);
    handheld.acts(&[Action::More(1), Action::More(1), Action::More(1), Action::More(1), Action::Next]);
    assert_eq!(handheld.model.screen, Screen::Shelf);
    handheld
}

/// The newest with the one before it, in a seam of half a metre.
fn pair(saved: &[(u16, PullTest)]) -> Handheld {
    let mut handheld = shelf(saved);
    handheld.acts(&[Action::Next; 4]);
    assert_eq!(handheld.model.screen, Screen::Pair);
    handheld
}

/// An opening of half a metre, in the newest, over so many millimetres more.
fn reach(saved: &[(u16, PullTest)], more: u16) -> Handheld {
    let mut handheld = shelf(saved);
    handheld.acts(&[Action::Next, Action::More(1), Action::Next, Action::Next, Action::More(more), Action::Next]);
    assert_eq!(handheld.model.screen, Screen::Reach);
    handheld
}

/// The screens about saved tests and openings.
fn making(shots: &mut Vec<(&'static str, Frame)>) {
    shots.push(("shelf-empty", shelf(&[]).frame()));
    let main = (3, saved(105, Some(101)));
    let facing = (14, saved(122, Some(102)));
    let mut handheld = shelf(&[main.clone(), facing.clone()]);
    shots.push(("shelf", handheld.frame()));
    handheld.act(Action::Next);
    shots.push(("cloth", handheld.frame()));
    handheld.act(Action::Next);
    shots.push(("shelf-join", handheld.frame()));
    handheld.act(Action::Next);
    shots.push(("seam", handheld.frame()));
    handheld.act(Action::Next);
    shots.push(("pair-handle", handheld.frame()));
    handheld.act(Action::More(1));
    shots.push(("pair-handle-advice", handheld.frame()));
    let mut alike = pair(&[main.clone(), (103, saved(106, Some(101)))]);
    shots.push(("pair-alike", alike.frame()));
    alike.act(Action::More(1));
    shots.push(("pair-alike-advice", alike.frame()));
    let mut band = pair(&[main.clone(), (105, saved(195, Some(108)))]);
    shots.push(("pair-band", band.frame()));
    band.act(Action::More(1));
    shots.push(("pair-band-advice", band.frame()));
    let mut close = pair(&[main.clone(), (3, saved(116, None))]);
    shots.push(("pair-close", close.frame()));
    close.act(Action::More(1));
    shots.push(("pair-close-advice", close.frame()));
    let mut far = pair(&[main.clone(), (999, saved(390, Some(130)))]);
    shots.push(("pair-far", far.frame()));

    let facing = [facing];
    far = shelf(&facing);
    far.acts(&[Action::Next, Action::More(1), Action::Next]);
    shots.push(("opening", far.frame()));
    far.acts(&[Action::Next, Action::More(77)]);
    shots.push(("body", far.frame()));
    shots.push(("reach-meets", reach(&facing, 77).frame()));
    shots.push(("reach-ease", reach(&facing, 30).frame()));
    shots.push(("reach-close", reach(&facing, 111).frame()));
    shots.push(("reach-short", reach(&facing, 200).frame()));
    shots.push(("reach-rigid", reach(&[(7, saved(100, None))], 77).frame()));
    shots.push(("reach-as-wide", reach(&[main], 0).frame()));

    let mut inch = PullTest::new(Length::from_inch_64ths(256), Grain::Lengthwise).unwrap();
    inch = inch.with_scale(Scale::new(Length::from_inch_64ths(4), Ends::One).unwrap()).unwrap();
    inch.add_pull(Length::from_inch_64ths(320)).unwrap();
    let mut one = shelf(&[(21, inch.clone())]);
    one.acts(&[Action::Accept, Action::Step, Action::Accept]);
    shots.push(("one-button-opening-inch", one.frame()));
    let mut longer = inch.clone();
    inch.add_rest(60, Length::from_inch_64ths(260)).unwrap();
    longer.add_rest(60, Length::from_inch_64ths(268)).unwrap();
    shots.push(("pair-inch", pair(&[(21, inch), (22, longer)]).frame()));
    let mut one = shelf(&[(21, saved(110, Some(101))), (22, saved(118, Some(101)))]);
    one.acts(&[Action::Step]);
    shots.push(("one-button-shelf", one.frame()));
    one.acts(&[Action::Accept, Action::Accept, Action::Accept, Action::Accept]);
    shots.push(("one-button-seam-tens", one.frame()));
    one.acts(&[Action::Accept, Action::Accept]);
    shots.push(("one-button-pair", one.frame()));
    let mut one = shelf(&[(22, saved(118, Some(101)))]);
    // Its second row; half a metre over 600 mm.
    one.acts(&[Action::Accept, Action::Step, Action::Accept, Action::Accept, Action::Accept, Action::Accept]);
    one.acts(&[Action::Step, Action::Accept, Action::Accept, Action::Accept]);
    shots.push(("one-button-reach", one.frame()));
}

fn golden(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("golden/screens").join(name).with_extension("txt")
}

#[test]
fn screens_are_as_looked_at() {
    let shots = gallery();
    let accept = std::env::var_os("TENTER_ACCEPT").is_some();
    let mut changed = Vec::new();
    for (name, frame) in &shots {
        let seen = picture::text(frame);
        if accept {
            fs::create_dir_all(golden(name).parent().unwrap()).unwrap();
            fs::write(golden(name), &seen).unwrap();
        }
        if fs::read_to_string(golden(name)).unwrap_or_default() != seen {
            changed.push(format!("{name}:\n{seen}"));
        }
    }
    let target = Path::new(env!("CARGO_TARGET_TMPDIR"));
    let frames: Vec<Frame> = shots.iter().map(|(_, frame)| frame.clone()).collect();
    picture::save_sheet(&target.join("screens.png"), 4, &frames).unwrap();
    assert!(changed.is_empty(), "these screens changed; look at them:\n{}", changed.join("\n"));
    let files = fs::read_dir(golden("home").parent().unwrap()).unwrap().count();
    assert_eq!(files, shots.len(), "a golden picture without a screen");
}
