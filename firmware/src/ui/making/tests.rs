use super::super::tests::{cloth, event};
use super::super::*;
use proptest::prelude::*;
use std::vec::Vec;
use tenter_core::Repeatability;
use tenter_core::making::pairing::{Advice, Joint, Match, Pair, Which};
use tenter_core::{Answer, Rules};

/// 100 mm to so many millimetres five times, back at 101 mm.
fn test_to(extended: i16) -> PullTest {
    let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap().with_settling_pull(true);
    for _ in 0..5 {
        test.add_pull(Length::from_mm(extended)).unwrap();
    }
    test.add_rest(60, Length::from_mm(101)).unwrap();
    test
}

/// A handheld whose log holds the tests of a shell, tag 3, and of a stretchy hem facing, tag 4, the newer one.
struct Shelved {
    model: Model,
    tests: Vec<(u16, PullTest)>,
}

impl Shelved {
    fn new() -> Self {
        let mut model = Model::default();
        update(&mut model, Event::Log(LogState { present: true, room: 9, ..LogState::default() }), 0);
        Self { model, tests: [(3, test_to(105)), (4, test_to(128))].to_vec() }
    }

    fn act(&mut self, action: Action) {
        if let Some(Effect::Browse { than, newer, round }) = update(&mut self.model, Event::Key(action), 0) {
            let last = self.tests.len().checked_sub(1);
            let place = match (than, newer) {
                (None, _) => last,
                (Some(place), true) => Some(place as usize + 1),
                (Some(place), false) => (place as usize).checked_sub(1),
            };
            let found = place.filter(|place| Some(*place) <= last).or(last.filter(|_| round));
            let cloth = found.and_then(|place| {
                let (tag, test) = self.tests.get(place)?;
                MeasuredCloth::of(u32::try_from(place).ok(), *tag, test, None)
            });
            update(&mut self.model, Event::Cloth(cloth), 0);
        }
    }

    fn acts(&mut self, actions: &[Action]) {
        actions.iter().for_each(|action| self.act(*action));
    }

    fn tag(&self) -> Option<u16> {
        self.model.making.cloth.map(|cloth| cloth.tag)
    }

    /// The pair as the core has it, of the hem facing and the main cloth in half a metre.
    fn pair(&self) -> Pair {
        let edge = |at: usize| MeasuredCloth::of(None, 0, &self.tests[at].1, None).unwrap().edge();
        Pair::of(&edge(1), &edge(0), &Joint::of(Length::from_mm(500)), Rules::default().confidence).unwrap()
    }
}

/// The fifth row of home, by one button and by five keys.
const TO_SHELF: [&[Action]; 2] = [
    &[Action::Step, Action::Step, Action::Step, Action::Step, Action::Accept],
    &[Action::More(1), Action::More(1), Action::More(1), Action::More(1), Action::Next],
];

#[test]
fn two_saved_tests_are_paired_by_one_button_and_by_five_keys() {
    use Action::{Accept, Next};
    // The newest; join it; with the next older; 500 mm stays. Then the second page.
    let ways: [(&[Action], Action, Action); 2] = [
        (&[Accept, Accept, Accept, Accept, Accept, Accept], Action::Step, Accept),
        (&[Next; 4], Action::More(1), Next),
    ];
    for (to_shelf, (way, page, done)) in TO_SHELF.into_iter().zip(ways) {
        let mut shelved = Shelved::new();
        shelved.acts(to_shelf);
        assert_eq!((shelved.model.screen, shelved.tag()), (Screen::Shelf, Some(4)));
        shelved.acts(way);
        assert_eq!((shelved.model.screen, shelved.model.making.pair()), (Screen::Pair, Some(shelved.pair())));
        shelved.act(page);
        assert_eq!(shelved.model.row, 1);
        shelved.act(done);
        assert_eq!(shelved.model.screen, Screen::Home);
    }
    // 22 % and 5 % are 17 points apart: between the limits of 10 and 25, and the stretchier one lies below.
    let pair = Shelved { tests: [(3, test_to(105)), (4, test_to(122))].to_vec(), ..Shelved::new() }.pair();
    assert_eq!(pair.answer, Match::Handle);
    assert!(pair.advice().iter().any(|line| line.advice == Advice::Below(Which::First)));
}

/// Neck of 500 mm finished over a head of 600 mm: asks for 20 % of 28 %, and of 5 %.
#[test]
fn an_opening_passes_or_not_by_one_button_and_by_five_keys() {
    use Action::{Accept, More, Next, Step};
    for (older, answer) in [(false, Answer::Meets), (true, Answer::Short)] {
        for (to_shelf, one_button) in TO_SHELF.into_iter().zip([true, false]) {
            let mut shelved = Shelved::new();
            shelved.acts(to_shelf);
            if older {
                shelved.act(if one_button { Step } else { More(1) });
            }
            // Take it; its second row.
            shelved.acts(if one_button { &[Accept, Step, Accept] } else { &[Next, More(1), Next] });
            assert_eq!(shelved.model.screen, Screen::Opening);
            // Three digits of 500; the hundreds of 600 and the rest.
            shelved.acts(if one_button { &[Accept; 3] } else { &[Next] });
            assert_eq!(shelved.model.screen, Screen::Body);
            shelved.acts(if one_button { &[Step, Accept, Accept, Accept] } else { &[More(100), Next] });
            let reach = shelved.model.making.reach().unwrap();
            assert_eq!((shelved.model.screen, reach.answer), (Screen::Reach, answer));
            assert_eq!(reach.needed.ratio(), tenter_core::Ratio::new(20, 100).unwrap());
        }
    }
}

/// After a test, before it is saved; and from there back to it.
#[test]
fn the_test_at_hand_passes_over_too() {
    let mut shelved = Shelved::new();
    shelved.model.test = Some(test_to(128));
    shelved.model.show(Screen::Choice);
    shelved.model.row = 5;
    shelved.acts(&[Action::Next, Action::Next, Action::More(100), Action::Next]);
    assert_eq!(shelved.model.screen, Screen::Reach);
    assert_eq!(shelved.model.making.reach().map(|reach| reach.answer), Some(Answer::Meets));
    shelved.act(Action::Next);
    assert_eq!((shelved.model.screen, shelved.model.test.clone()), (Screen::Choice, Some(test_to(128))));
}

/// One button goes round; five keys stop at both ends.
#[test]
fn leafing() {
    let mut shelved = Shelved::new();
    shelved.acts(TO_SHELF[0]);
    let seen = [Action::Step, Action::Step, Action::More(1), Action::More(1), Action::Less(1), Action::Less(1)];
    let tags = seen.map(|action| {
        shelved.act(action);
        shelved.tag().unwrap()
    });
    assert_eq!(tags, [3, 4, 3, 3, 4, 4]);
}

#[test]
fn an_empty_log_has_nothing_to_choose() {
    let mut shelved = Shelved { tests: Vec::new(), ..Shelved::new() };
    shelved.acts(TO_SHELF[1]);
    shelved.acts(&[Action::Step, Action::More(1)]);
    assert_eq!((shelved.model.screen, shelved.tag()), (Screen::Shelf, None));
    shelved.act(Action::Next);
    assert_eq!(shelved.model.screen, Screen::Home);
}

/// What rests on another repeatability is not left on the display.
#[test]
fn another_repeatability_ends_what_is_being_made() {
    let mut shelved = Shelved::new();
    shelved.acts(TO_SHELF[1]);
    shelved.acts(&[Action::Next; 4]);
    let log = LogState { repeatability: Repeatability::new(0.2, 60.0), ..shelved.model.log };
    update(&mut shelved.model, Event::Log(log), 0);
    assert_eq!((shelved.model.screen, shelved.tag()), (Screen::Home, None));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 512, ..ProptestConfig::default() })]

    /// Whatever was saved, and whatever happens on the way: every screen draws, and going back comes home.
    #[test]
    fn any_cloths(
        (first, second) in (cloth(), cloth()),
        lengths in prop::array::uniform3(50..2000i16),
        screen in 0..7usize,
        events in prop::collection::vec(event(), 0..40),
    ) {
        let mut model = Model::default();
        let [seam, opening, body] = lengths.map(Length::from_mm);
        // Only the first three are about two cloths.
        let first = first.filter(|_| screen < 3);
        model.making = MakingState { cloth: second, first, seam, opening, body };
        use Screen::{Body, Cloth, Opening, Pair, Reach, Seam, Shelf};
        model.show([Shelf, Seam, Pair, Cloth, Opening, Body, Reach][screen]);
        let mut frame = crate::frame::Frame::default();
        crate::view::draw(&model, &mut frame);
        for event in events {
            update(&mut model, event, 0);
            crate::view::draw(&model, &mut frame);
        }
        if model.screen.is_making() {
            for _ in 0..5 {
                update(&mut model, Event::Key(Action::Back), 0);
            }
            prop_assert_eq!(model.screen, Screen::Home);
        }
    }
}
