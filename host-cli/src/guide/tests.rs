//! Whole tests in microseconds: the clock is an argument.

use jiff::{SignedDuration, Timestamp};
use proptest::prelude::*;
use tenter_core::{Grain, Held, Length, Rest, Table, Unit};

use super::{Draft, Guide, GuideReply, NextQuestion};
use crate::log::{Construction, Ids};

fn start() -> Timestamp {
    "2025-03-20T13:30:00Z".parse().unwrap()
}

fn guide(construction: Construction) -> Guide {
    let draft = Draft::new(Ids::default().next(), start(), Grain::Crosswise, Unit::Cm);
    Guide { draft, construction, table: Table::named("own").unwrap(), doubted: None }
}

/// A guide with a clock of its own.
struct Walk {
    guide: Guide,
    now: Timestamp,
}

impl Walk {
    fn new(construction: Construction) -> Self {
        Self { guide: guide(construction), now: start() }
    }

    fn after(&mut self, seconds: i64) -> &mut Self {
        self.now = self.now.checked_add(SignedDuration::from_secs(seconds)).unwrap();
        self
    }

    fn line(&mut self, line: &str) -> GuideReply {
        let (guide, reply) = self.guide.clone().step(line, self.now);
        self.guide = guide;
        reply
    }

    /// Lines that are all taken.
    fn lines(&mut self, lines: &[&str]) -> &mut Self {
        for line in lines {
            let before = self.guide.clone();
            let reply = self.line(line);
            assert_ne!(self.guide, before, "'{line}' at {:?}: {reply:?}", before.draft.stage);
        }
        self
    }

    fn clock(&self) -> (String, String) {
        let clock = self.guide.clock(self.now).unwrap();
        (clock.shows, clock.hint)
    }
}

fn mm(mm: i16) -> Length {
    Length::from_mm(mm)
}

/// Three pulls with a clock for hold and rest, answered with Enter and numbers only, in the order of a test: settle, then
/// read the marks, and once more.
#[test]
fn a_whole_test() {
    let mut walk = Walk::new(Construction::Woven);
    walk.lines(&["", "", "", "20.1", "2", ""]);
    assert_eq!(walk.clock(), ("held 0 s".to_owned(), "read it at about 10 s".to_owned()));
    walk.after(10);
    assert_eq!(walk.clock(), ("held 10 s".to_owned(), "read it now".to_owned()));
    assert_eq!(walk.line("21.2").say, ["stretch 5.7 %, slight"]);
    walk.lines(&[""]).after(13);
    assert_eq!(walk.clock(), ("released 13 s ago".to_owned(), "read it in 47 s (Enter: now)".to_owned()));
    walk.after(47);
    assert_eq!(walk.clock(), ("released 1:00 min ago".to_owned(), "read it now".to_owned()));
    assert_eq!(walk.after(7).line("20,2").say, ["growth 0.7 %, 60 s after release"]);
    // The second with Enter to stop each clock; the third typed before any clock.
    walk.lines(&["", "", "", "21.4 cm", ""]).after(60).lines(&["", "202mm", ""]);
    assert_eq!(walk.line("213mm").say, ["stretch 6.2 % this time, 6.2 % over 3 pulls, slight"]);
    walk.lines(&[""]).after(61).lines(&["20.2"]);
    assert_eq!(walk.guide.ask().question, "a) again  f) finish  u) undo [finish]: ");
    walk.lines(&[""]);
    assert_eq!(walk.guide.draft.stage, NextQuestion::Done);
    let test = walk.guide.draft.test().unwrap();
    assert_eq!((test.gauge(), test.held(), test.settled()), (mm(200), Held::Folded, true));
    let looks: Vec<_> = test.looks().map(|look| (look.after_pulls, look.length)).collect();
    assert_eq!(looks, [(0, mm(200)), (0, mm(201))]);
    assert_eq!(test.pulls(), [mm(212), mm(214), mm(213)]);
    let rest = |after_pull| Rest { after_pull, seconds: 60, recovered: mm(202) };
    assert_eq!(test.rests(), [rest(0), rest(1), rest(2)]);
    assert_eq!(test.scale().division(), mm(1));
}

/// What Enter takes: long marks for cloth that gives little.
#[test]
fn suggested_marks() {
    for (construction, unit, gauge) in [
        (Construction::Woven, Unit::Cm, mm(200)),
        (Construction::Knit, Unit::Mm, mm(100)),
        (Construction::Other, Unit::Cm, mm(200)),
        (Construction::Knit, Unit::Inch, Length::from_inch_64ths(4 * 64)),
        (Construction::Woven, Unit::Inch, Length::from_inch_64ths(8 * 64)),
    ] {
        let mut walk = Walk::new(construction);
        walk.guide.draft.unit = unit;
        walk.lines(&["", "", ""]);
        assert_eq!(walk.guide.draft.test().unwrap().gauge(), gauge, "{construction:?} {unit:?}");
    }
}

/// A bare number is in the unit of the gauge, and the scale goes with it.
#[test]
fn the_gauge_names_the_unit() {
    let mut walk = Walk::new(Construction::Knit);
    walk.lines(&["", "", "4in", "n", "0", "5 1/2"]);
    let test = walk.guide.draft.test().unwrap();
    assert_eq!(test.pulls(), [Length::from_inch_64ths(352)]);
    assert_eq!(test.scale().division(), Length::from_inch_64ths(4));
}

/// A reading counts for the time that was waited for when it comes about then; early and late ones for their own.
#[test]
fn the_time_of_a_reading() {
    for (passed, counts) in [(0, 0), (30, 30), (59, 59), (60, 60), (80, 60), (81, 81), (600, 600), (-5, 0)] {
        let mut walk = Walk::new(Construction::Knit);
        walk.lines(&["", "", "", "n", "2", "12.4", ""]).after(passed);
        walk.lines(&["", "10.2"]);
        assert_eq!(walk.guide.draft.test().unwrap().rests()[0].seconds, counts, "after {passed} s");
    }
    let mut walk = Walk::new(Construction::Knit);
    walk.guide.draft.planned = Some(1);
    walk.lines(&["", "", "", "n", "", "12.4", ""]).after(1700);
    assert_eq!(walk.clock(), ("released 28:20 min ago".to_owned(), "read it in 1:40 min (Enter: now)".to_owned()));
    walk.lines(&["10.2@30min"]);
    assert_eq!(walk.guide.draft.test().unwrap().rests()[0].seconds, 1800);
}

/// One line says what to type; nothing that was taken before is lost.
#[test]
fn mistakes_change_nothing() {
    let mut walk = Walk::new(Construction::Knit);
    let refuse = |walk: &mut Walk, line: &str, want: &str| {
        let before = walk.guide.clone();
        let reply = walk.line(line);
        assert_eq!(walk.guide, before, "'{line}' changed something");
        assert!(reply.say.len() == 1 && reply.say[0].contains(want), "'{line}': {reply:?}");
        assert!(!reply.leave);
    };
    refuse(&mut walk, "u", "nothing to take back");
    refuse(&mut walk, "5", "type 1, 2, 3 or 4");
    walk.lines(&[""]);
    refuse(&mut walk, "maybe", "Enter when the settling pull is done");
    walk.lines(&["n"]);
    refuse(&mut walk, "far", "not a length");
    refuse(&mut walk, "0", "an odd distance for two marks");
    refuse(&mut walk, "200", "200 cm is an odd distance for two marks; if it is meant, type the unit too");
    refuse(&mut walk, "0.5mm", "1 mm or more");
    walk.lines(&["10"]);
    refuse(&mut walk, "", "type what you read this time, or n");
    refuse(&mut walk, "far", "not a length");
    walk.lines(&["n"]);
    refuse(&mut walk, "soon", "a time such as 45s or 5min");
    refuse(&mut walk, "99d", "a time such as 45s or 5min");
    walk.lines(&["2"]);
    refuse(&mut walk, "9", "shorter than the gauge length");
    refuse(&mut walk, "124", "1140 % stretch, more than any cloth gives; did you mean 12.4 cm?");
    walk.lines(&["12.4"]);
    refuse(&mut walk, "10.2", "Enter as you let go");
    walk.lines(&[""]);
    refuse(&mut walk, "12.5", "longer than the extended length");
    refuse(&mut walk, "8", "under nine tenths");
    refuse(&mut walk, "10.2@soon", "type the time since release after the @");
    walk.lines(&["10.2"]);
    refuse(&mut walk, "12.4", "type a for another pull");
}

/// A woven that stretches by 70 % is asked for once more; the same answer again is meant.
#[test]
fn what_is_doubtful_is_asked_twice() {
    let mut walk = Walk::new(Construction::Woven);
    walk.lines(&["", "", "10", "n", "0"]);
    for line in ["17", "17.5"] {
        let reply = walk.line(line);
        assert!(reply.say[0].contains("type") && reply.say[0].contains("once more"), "{reply:?}");
        assert_eq!(walk.guide.draft.pulls.len(), 0);
    }
    walk.lines(&["17.5"]);
    assert_eq!(walk.guide.draft.pulls.len(), 1);
    let refused = walk.line("a");
    assert_eq!(refused.say, Vec::<String>::new());
    assert!(walk.line("21").say[0].contains("more than any woven gives"));
}

/// Each answer is taken back by u, down to the first.
#[test]
fn undo_walks_all_the_way_back() {
    let mut walk = Walk::new(Construction::Knit);
    walk.lines(&["", "", "", "10.1", "1", "12.4", "", "10.2", "", "12.5", "", "10.1", "3"]);
    assert_eq!(walk.guide.draft.stage, NextQuestion::Recovered(0));
    assert_eq!(walk.guide.draft.readings(), 5);
    for _ in 0..20 {
        walk.line("-");
    }
    assert_eq!((walk.guide.draft.stage, walk.guide.draft.readings()), (NextQuestion::Held, 0));
}

#[test]
fn a_reading_may_be_left_out() {
    let mut walk = Walk::new(Construction::Knit);
    walk.lines(&["", "", "", "n", "1", "12.4", "n", "", "12.5", "", "0", "f"]);
    let test = walk.guide.draft.test().unwrap();
    assert_eq!((test.pulls().len(), test.rests().len()), (2, 0));
    // Nothing is asked after release where that was said at the start.
    let mut walk = Walk::new(Construction::Knit);
    walk.lines(&["", "", "", "n", "0", "12.4"]);
    assert_eq!(walk.guide.draft.stage, NextQuestion::Next);
}

/// Half an hour is waited for once, after the last pull that is planned, or after the last that is made.
#[test]
fn a_long_wait_comes_last() {
    let begun = ["", "", "", "n", ""];
    let mut walk = Walk::new(Construction::Knit);
    walk.lines(&begun);
    assert_eq!(walk.guide.draft.wait, Some(1800));
    walk.lines(&["12.4", "", "12.5", "", "12.4"]);
    assert_eq!(walk.guide.draft.stage, NextQuestion::Release);
    walk.lines(&[""]).after(1805).lines(&["10.2"]);
    assert_eq!(walk.guide.ask().question, "a) again  f) finish  u) undo [finish]: ");
    walk.lines(&["f"]);
    let rests: Vec<Rest> = walk.guide.draft.test().unwrap().rests().to_vec();
    assert_eq!(rests, [Rest { after_pull: 2, seconds: 1800, recovered: mm(102) }]);
    // Two are planned: after the second.
    let mut walk = Walk::new(Construction::Knit);
    walk.guide.draft.planned = Some(2);
    walk.lines(&begun).lines(&["12.4"]);
    assert_eq!(walk.guide.ask().question, "a) again  f) finish  u) undo [again]: ");
    walk.lines(&["", "12.5"]);
    assert_eq!(walk.guide.draft.stage, NextQuestion::Release);
    assert_eq!(walk.guide.draft.test().unwrap().planned_pulls(), Some(2));
    // Who finishes sooner lets go then, or reads nothing.
    let mut walk = Walk::new(Construction::Knit);
    walk.lines(&begun).lines(&["12.4", "f"]);
    assert_eq!(walk.guide.draft.stage, NextQuestion::Release);
    walk.lines(&["n", "f"]);
    assert_eq!((walk.guide.draft.stage, walk.guide.draft.test().unwrap().rests().len()), (NextQuestion::Done, 0));
}

/// A draft of the program before, which asked for the marks first: nothing that was typed is lost.
#[test]
fn an_older_draft_is_gone_on_with() {
    let older = |draft: &Draft, stage: &str| {
        let mut value: serde_json::Value = serde_json::from_str(&draft.text()).unwrap();
        let draft = value.as_object_mut().unwrap();
        draft.insert("version".to_owned(), 1.into());
        draft.insert("stage".to_owned(), stage.into());
        draft.remove("planned");
        draft.remove("again");
        Draft::read(&value.to_string()).unwrap()
    };
    let mut walk = Walk::new(Construction::Knit);
    assert_eq!(older(&walk.guide.draft, "gauge").stage, NextQuestion::Held);
    walk.guide.draft.gauge = Some(crate::log::json::Mm(mm(105)));
    walk.guide.draft = older(&walk.guide.draft, "held");
    walk.lines(&["3", "", "n"]);
    let draft = &walk.guide.draft;
    assert_eq!((draft.stage, draft.held, draft.settled), (NextQuestion::Wait, Held::Strip, true));
    assert_eq!(draft.gauge, Some(crate::log::json::Mm(mm(105))));
}

/// Ten pulls are what a test holds (`MAX_PULLS`).
#[test]
fn ten_pulls_are_enough() {
    let mut walk = Walk::new(Construction::Knit);
    walk.lines(&["", "", "", "n", "0", "12.4"]);
    for _ in 0..9 {
        walk.lines(&["a", "12.4"]);
    }
    assert!(walk.line("a").say[0].contains("finish with f"));
    assert_eq!(walk.lines(&["f"]).guide.draft.test().unwrap().pulls().len(), 10);
}

/// After a closed window the rest runs on, and a swatch that was held is pulled again.
#[test]
fn a_draft_comes_back() {
    let mut walk = Walk::new(Construction::Knit);
    walk.lines(&["", "", "", "n", "2", "12.4", ""]).after(40);
    let read = Draft::read(&walk.guide.draft.text()).unwrap();
    assert_eq!(read, walk.guide.draft);
    walk.guide.draft = read;
    assert_eq!(walk.clock().0, "released 40 s ago");
    walk.lines(&["10.2", "", ""]);
    let read = Draft::read(&walk.guide.draft.text()).unwrap();
    assert_eq!((read.stage, read.readings()), (NextQuestion::Pull, walk.guide.draft.readings()));
    let newer = walk.guide.draft.text().replace("\"version\":2", "\"version\":3");
    for damaged in ["", "{}", &newer, &walk.guide.draft.text().replace("\"seconds\"", "\"s\"")[1..]] {
        assert_eq!(Draft::read(damaged), None, "{damaged}");
    }
}

/// What is asked fits a terminal of 80 columns, with room for the answer; replies are wrapped where they are printed.
#[test]
fn words_fit_80_columns() {
    let fits = |line: &str| assert!(line.chars().count() <= 80, "{line}");
    fits(Guide::GREETING);
    for construction in Construction::ALL {
        let mut walk = Walk::new(construction);
        for line in ["", "", "4", "59", "n", "", "", "59", "", "", "", "9999", "", "21.3", "", ""] {
            let ask = walk.guide.ask();
            ask.say.iter().for_each(|line| fits(line));
            fits(&format!("{}12.34 cm", ask.question));
            walk.line(line);
        }
        fits(&walk.guide.draft.so_far("2025-03-20 14:30"));
    }
}

fn answer() -> impl Strategy<Value = String> {
    let likely = prop::sample::select(vec![
        "",
        "",
        "",
        "10",
        "12.4",
        "12,5 cm",
        "10.2",
        "101mm",
        "10.2@30min",
        "a",
        "f",
        "u",
        "-",
        "n",
        "q",
        "1",
        "2",
        "3",
        "0",
        "4in",
        "5 1/2",
        "loop",
        "@",
        "1e308",
        "99999999999",
        "½",
    ]);
    prop_oneof![8 => likely.prop_map(str::to_owned), 1 => any::<String>()]
}

/// The lengths so far, as they would be stored.
fn lengths(draft: &Draft) -> Vec<i32> {
    let rests = |pull: &super::Pull| pull.rest.map(|(_, length)| length.0.steps());
    let pulls = draft.pulls.iter().flat_map(|pull| [Some(pull.extended.0.steps()), rests(pull)]);
    let marks = [draft.gauge, draft.again].into_iter().flatten();
    marks.map(|marks| marks.0.steps()).chain(pulls.flatten()).collect()
}

proptest! {
    /// Any lines at any time: no panic; every reading taken stays until u, in order; the test so far is always sound, and
    /// what is stored of it reads back the same.
    #[test]
    fn any_lines(lines in prop::collection::vec((answer(), -100i64..4000), 0..60)) {
        let mut walk = Walk::new(Construction::Knit);
        for (line, passed) in lines {
            let before = lengths(&walk.guide.draft);
            let reply = walk.after(passed).line(&line);
            let after = lengths(&walk.guide.draft);
            let undone = matches!(line.trim().to_lowercase().as_str(), "u" | "-" | "3");
            if undone && after.len() < before.len() {
                prop_assert_eq!(&before[..before.len() - 1], &after[..]);
            } else {
                prop_assert!(after.starts_with(&before), "'{}' lost a reading: {:?} {:?}", line, before, after);
                prop_assert!(after.len() <= before.len() + 1);
            }
            prop_assert!(reply.say.iter().all(|line| !line.contains('\n')));
            let draft = &walk.guide.draft;
            prop_assert!(draft.gauge.is_none() || draft.test().is_ok());
            let read = Draft::read(&draft.text()).unwrap();
            prop_assert_eq!(lengths(&read), after);
            let _ = (walk.guide.ask(), walk.guide.clock(walk.now));
        }
    }
}
