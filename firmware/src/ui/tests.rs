use super::*;
use proptest::prelude::*;
use std::vec::Vec;
use tenter_core::Repeatability;
use tenter_core::{Demand, Evaluation, Rules, Unit};

fn action() -> impl Strategy<Value = Action> {
    prop_oneof![
        1 => (1..400u16).prop_map(Action::Less),
        1 => (1..400u16).prop_map(Action::More),
        4 => Just(Action::Next),
        1 => Just(Action::Back),
        2 => Just(Action::Step),
        2 => Just(Action::Accept),
    ]
}

pub fn event() -> impl Strategy<Value = Event> {
    let log = (any::<bool>(), any::<u16>(), any::<u16>(), 0..9u8).prop_map(|(present, room, unsent, demands)| {
        let repeatability = Repeatability::from_thousandths(unsent.into(), demands.into());
        let (agreed, dated) = (room % 2 == 0, unsent % 2 == 0);
        let next_tag = room % 1001;
        Event::Log(LogState {
            present,
            room,
            unsent,
            demands,
            repeatability,
            next_tag,
            agreed,
            dated,
            people: demands,
            fault: None,
        })
    });
    prop_oneof![
        12 => action().prop_map(Event::Key),
        2 => Just(Event::Tick),
        1 => any::<u32>().prop_map(Event::Saved),
        1 => Just(Event::NotSaved),
        2 => log,
        1 => Just(Event::Demand(LabelledDemand::new("tights", Demand::default()))),
        4 => cloth().prop_map(Event::Cloth),
        2 => tag_use().prop_map(Event::Tag),
        1 => any::<Option<u8>>().prop_map(|slot| Event::Person(slot.zip(Named::new(7, 0, "Anna")))),
        1 => (any::<i32>(), any::<bool>(), any::<Option<u8>>()).prop_map(|(gauge, inch, demand)| {
            Event::Settings(Settings { gauge: Length::from_steps(gauge), inch, demand, ..Settings::default() })
        }),
    ]
}

fn tag_use() -> impl Strategy<Value = TagUse> {
    prop_oneof![
        Just(TagUse::Free),
        Just(TagUse::Given),
        Just(TagUse::Unknown),
        Just(TagUse::Cloth(Named::new(9, 7, "Vestry twill").unwrap())),
    ]
}

/// A saved test of any gauge, extension and tag, read back or not; or none.
pub fn cloth() -> impl Strategy<Value = Option<MeasuredCloth>> {
    (20..400i16, 0..4000i16, any::<bool>(), any::<Option<u32>>(), any::<u16>()).prop_map(
        |(mm, more, back, place, tag)| {
            let mut test = PullTest::new(Length::from_mm(mm), Grain::Bias).ok()?;
            test.add_pull(Length::from_mm(mm + more % (10 * mm))).ok()?;
            if back {
                test.add_rest(60, Length::from_mm(mm)).ok()?;
            }
            MeasuredCloth::of(place, tag, &test, None)
        },
    )
}

fn readings(model: &Model) -> usize {
    model.test.as_ref().map_or(0, |test| test.pulls().len() + test.rests().len())
}

/// The row about to be accepted, if the screen is a list.
fn row(model: &Model) -> Option<ListRow> {
    model.screen.rows().get(usize::from(model.row)).copied()
}

fn play(events: &[(Event, u32)]) -> Model {
    let mut model = Model::default();
    let mut now = u32::MAX - 50_000;
    for (event, after) in events {
        now = now.wrapping_add(*after);
        update(&mut model, event.clone(), now);
    }
    model
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 512, ..ProptestConfig::default() })]

    /// Whatever happens in whatever order: no panic, a row that exists, and the drawing of it.
    #[test]
    fn any_events(events in prop::collection::vec((event(), 0..100_000u32), 0..80)) {
        let model = play(&events);
        let rows = model.screen.rows().len();
        prop_assert!(model.row < model.row_count() && usize::from(model.row_count()) >= rows);
        let mut frame = crate::frame::Frame::default();
        crate::view::draw(&model, &mut frame);
    }

    /// Readings are lost only by throwing the test away, by dropping one, or after they were saved.
    #[test]
    fn readings_are_kept(actions in prop::collection::vec(action(), 0..120)) {
        let mut model = play(&[(Event::Log(LogState { present: true, room: 9, ..LogState::default() }), 0)]);
        let mut now = 0;
        for action in actions {
            let before = (readings(&model), row(&model), model.screen);
            now += 1_000;
            let effect = update(&mut model, Event::Key(action), now);
            let meant = before.1.is_some_and(|row| matches!(row, ListRow::ThrowAway | ListRow::Drop | ListRow::MeasureAnyway));
            prop_assert!(
                readings(&model) >= before.0 || before.2 == Screen::Saved || (meant && !matches!(action, Action::Back)),
                "{:?} on {:?}", action, before
            );
            let event = match effect {
                Some(Effect::LookUpTag { .. }) => Event::Tag(TagUse::Free),
                Some(Effect::Save { .. }) => Event::Saved(1),
                _ => continue,
            };
            if let Some(Effect::Save { .. }) = update(&mut model, event, now) {
                update(&mut model, Event::Saved(1), now);
            }
        }
    }

    /// From any screen, going back comes home, with everything measured.
    #[test]
    fn back_comes_home(events in prop::collection::vec((event(), 0..100_000u32), 0..80)) {
        let mut model = play(&events);
        prop_assume!(!matches!(model.screen, Screen::Saving | Screen::Saved));
        let before = readings(&model);
        for _ in 0..6 {
            update(&mut model, Event::Key(Action::Back), 0);
        }
        prop_assert_eq!(model.screen, Screen::Home);
        prop_assert!(readings(&model) >= before);
    }
}

/// From home with one pull to so many half millimetres above the gauge, let go and dialled.
fn one_pull(above: u16) -> Model {
    let log = Event::Log(LogState { present: true, room: 9, ..LogState::default() });
    let next = || (Event::Key(Action::Next), 1_000);
    // Measure, settled, let go, dialled.
    play(&[(log, 0), next(), next(), next(), (Event::Key(Action::More(above)), 0), next()])
}

fn press(model: &mut Model, actions: &[Action]) {
    for action in actions {
        update(model, Event::Key(*action), model.now.wrapping_add(1_000));
    }
}

/// The next pull is not begun until it is let go: until then, and after a release called off, the cloth still lies since
/// the pull before.
#[test]
fn the_release_still_counts_until_the_next_pull() {
    let mut model = one_pull(10);
    assert_eq!(model.screen, Screen::Pull, "the second of three");
    let released = model.released.unwrap();
    assert_eq!(model.now.wrapping_sub(released), 1_000, "let go before it was dialled");
    press(&mut model, &[Action::Next, Action::Back, Action::Back]); // Let go, no, and to the list.
    assert_eq!((model.screen, model.released), (Screen::Choice, Some(released)));
    model.row = 2;
    update(&mut model, Event::Key(Action::Next), released.wrapping_add(300_000));
    update(&mut model, Event::Key(Action::Next), released.wrapping_add(300_000));
    assert_eq!((model.screen, model.rest_seconds), (Screen::Recovered, 300));
}

/// A hold is as long as the key says, not the dialling after it.
#[test]
fn the_hold_ends_as_one_lets_go() {
    let log = Event::Log(LogState { present: true, room: 9, ..LogState::default() });
    let next = |after| (Event::Key(Action::Next), after);
    let model = play(&[(log, 0), next(1_000), next(1_000), next(7_400), (Event::Key(Action::More(10)), 20_000)]);
    assert_eq!((model.held_seconds, model.screen, model.seconds()), (7, Screen::Extended, 20));
}

/// It is heard three times that it is time to read, and the board is called in time for each change.
#[test]
fn the_buzzer_says_when_to_read() {
    let mut model = one_pull(10);
    press(&mut model, &[Action::Next, Action::Next, Action::Next, Action::Next]);
    assert_eq!(model.screen, Screen::Rest);
    let since = model.since;
    let mut sounds = Vec::new();
    let mut at = 0;
    while at < 65_000 {
        update(&mut model, Event::Tick, since.wrapping_add(at));
        sounds.push((at, model.buzzes()));
        at += model.due_in(since.wrapping_add(at)).unwrap().max(1);
    }
    sounds.dedup_by_key(|(_, sounds)| *sounds);
    let wanted = [(60_000, true), (60_150, false), (60_300, true), (60_450, false), (60_600, true), (60_750, false)];
    assert_eq!(sounds[1..], wanted);
}

/// A slot that cannot be read does not hide the ones after it.
#[test]
fn an_unreadable_demand_hides_no_other() {
    let log = Event::Log(LogState { present: true, room: 9, demands: 2, ..LogState::default() });
    let mut model = play(&[(log, 0)]);
    model.row = 1;
    assert_eq!(update(&mut model, Event::Key(Action::Next), 0), Some(Effect::LoadDemand { slot: 0 }));
    update(&mut model, Event::Demand(None), 0);
    assert_eq!(update(&mut model, Event::Key(Action::Next), 0), Some(Effect::LoadDemand { slot: 1 }));
    assert_eq!(update(&mut model, Event::Key(Action::Next), 0), None);
}

/// 254 mm dialled is read on a metric scale, though it is 10 in long.
#[test]
fn a_length_is_not_a_scale() {
    let mut model = Model { screen: Screen::Gauge, ..Model::default() };
    model.dial = Dial::length(false, Length::from_mm(254), Length::from_mm(20), Length::from_mm(1000));
    update(&mut model, Event::Key(Action::Next), 0);
    assert_eq!((model.gauge, model.unit()), (Length::from_inch_64ths(640), Unit::Mm));
}

/// Somebody who begins to correct a reading and thinks better of it still has it; each one can be corrected or dropped.
#[test]
fn a_correction_can_be_called_off() {
    let mut model = one_pull(10);
    press(&mut model, &[Action::Next, Action::Next, Action::Back]);
    assert_eq!((model.screen, readings(&model)), (Screen::Choice, 2));
    let before = model.test.clone();
    for backs in [1, 2] {
        model.row = 3;
        // The newest; dial it again.
        press(&mut model, &[Action::Next, Action::Next, Action::Next]);
        assert_eq!(model.screen, Screen::Extended);
        press(&mut model, &[Action::Back]);
        assert_eq!((model.screen, &model.test), (Screen::Choice, &before), "{backs}");
    }
    // The first pull, to 106.0 mm.
    model.row = 3;
    press(&mut model, &[Action::Next, Action::More(1), Action::Next, Action::Next, Action::More(2), Action::Next]);
    let pulls = |model: &Model| model.test.as_ref().unwrap().pulls().to_vec();
    assert_eq!((model.screen, pulls(&model)), (Screen::Choice, [106, 105].map(Length::from_mm).to_vec()));
    // The second is dropped.
    model.row = 3;
    press(&mut model, &[Action::Next, Action::Next, Action::More(1), Action::Next]);
    assert_eq!((model.screen, pulls(&model)), (Screen::Choice, [Length::from_mm(106)].to_vec()));
}

/// Three pulls to 106.5 mm with a demand that is remembered, to the answer.
fn three_pulls(pull: &[Action], again: &[Action]) -> (usize, Model) {
    let log = Event::Log(LogState { present: true, room: 9, demands: 1, ..LogState::default() });
    let asked = Demand::for_grain(Grain::Crosswise, tenter_core::Range::parse("5%", Unit::Mm).unwrap());
    let settings = Event::Settings(Settings { demand: Some(0), ..Settings::default() });
    let demand = Event::Demand(LabelledDemand::new("choir trousers A", asked));
    let mut model = play(&[(log, 0), (settings, 0), (demand, 0)]);
    let go = pull.last().copied().unwrap();
    let mut script = [go, go].to_vec(); // Measure; settled.
    script.extend(pull);
    script.extend(again);
    script.extend(again);
    press(&mut model, &script);
    assert_eq!(model.screen, Screen::Rest);
    assert_eq!(model.test.as_ref().unwrap().pulls(), [Length::from_steps(106 * 1600 + 800); 3]);
    (script.len(), model)
}

fn answered(model: &Model) {
    assert_eq!(model.screen, Screen::Result);
    let evaluation = model.evaluation.as_ref().unwrap();
    assert!(evaluation.answer.is_some() && evaluation.figures.rest.is_some());
}

/// With an encoder a turn is one action, however far, and a press is one.
#[test]
fn three_pulls_with_an_encoder_take_fifteen_actions() {
    use Action::{More, Next};
    let (mut actions, mut model) = three_pulls(&[Next, More(13), Next], &[Next, Next]);
    model.now = model.now.wrapping_add(60_000);
    let back = [Next, More(1), Next]; // Read now; 100.5 mm; the answer.
    press(&mut model, &back);
    actions += back.len();
    answered(&model);
    assert_eq!(actions, 12);
    // Where every dial is turned it is two more.
    assert!(actions + 2 <= 15);
}

#[test]
fn three_pulls_with_one_button_take_twenty_five_presses() {
    use Action::{Accept, Step};
    let first = [&[Step, Accept][..], &[Step; 6], &[Accept, Step, Accept]].concat();
    let (mut actions, mut model) = three_pulls(&first, &[Step, Accept, Accept, Accept]);
    model.now = model.now.wrapping_add(60_000);
    let back = [Accept, Accept, Step, Accept];
    press(&mut model, &back);
    actions += back.len();
    answered(&model);
    assert_eq!(actions, 25);
}

/// One button drives a whole test: 100 mm to 105.0 mm, back at 101.0 mm, tag 7.
#[test]
fn one_button_is_enough() {
    use Action::{Accept, Step};
    let log = LogState { present: true, room: 9, next_tag: 1, ..LogState::default() };
    let mut model = play(&[(Event::Log(log), 0)]);
    let mut script: Vec<Action> = [Accept, Accept, Step].to_vec(); // Measure, settled, let go.
    script.extend([Accept, Step, Step, Step, Step, Step, Accept, Accept]); // 105.0.
    script.extend([Action::Back, Step, Step, Accept, Accept]); // No more pulls; read it back.
    script.extend([Step, Accept, Accept]); // 101.0.
    script.extend([Step, Accept, Accept]); // Answer, save.
    script.extend([Accept, Accept, Step, Step, Step, Step, Step, Step]); // Tag 7.
    let mut now = 0;
    for action in script {
        now += 1_000;
        assert_eq!(update(&mut model, Event::Key(action), now), None);
    }
    assert_eq!(update(&mut model, Event::Key(Accept), now), Some(Effect::LookUpTag { tag: 7 }));
    let save = Effect::Save { tag: 7, meant: Meant::Unsaid, by: None };
    assert_eq!(update(&mut model, Event::Tag(TagUse::Free), now), Some(save));
    let test = model.test.unwrap();
    assert_eq!(test.pulls(), [Length::from_mm(105)]);
    assert_eq!(test.rests()[0].recovered, Length::from_mm(101));
    assert!(test.settled());
}

/// It says why it started by itself, over the test that it offers, until somebody goes on.
#[test]
fn a_restart_says_why() {
    let mut test = PullTest::new(Length::from_mm(100), Grain::Bias).unwrap();
    test.add_pull(Length::from_mm(106)).unwrap();
    let mut model = play(&[(Event::Restarted(Restart::Panic), 0), (Event::Draft(test.clone()), 0)]);
    assert_eq!((model.screen, model.restart), (Screen::Resume, Some(Restart::Panic)));
    press(&mut model, &[Action::Next]);
    assert_eq!((model.screen, model.restart, model.draft()), (Screen::Choice, None, Some(&test)));
}

/// A tag that is another cloth's is saved under only when the person says that this is the cloth, and then by its mark.
#[test]
fn a_tag_in_use_asks() {
    let log = LogState { present: true, room: 9, next_tag: 8, agreed: true, ..LogState::default() };
    let to_the_tag = |found: TagUse| {
        let mut model = play(&[(Event::Log(log), 0)]);
        press(&mut model, &[Action::Next, Action::Next, Action::Next, Action::More(9), Action::Next]);
        press(&mut model, &[Action::Back, Action::More(1), Action::Next, Action::Next]);
        assert_eq!((model.screen, model.dial.as_count()), (Screen::Tag, 8), "the next free one");
        assert_eq!(update(&mut model, Event::Key(Action::Next), 0), Some(Effect::LookUpTag { tag: 8 }));
        let effect = update(&mut model, Event::Tag(found), 0);
        (model, effect)
    };
    let save = |meant| Some(Effect::Save { tag: 8, meant, by: None });
    assert_eq!(to_the_tag(TagUse::Free).1, save(Meant::New));
    let twill = TagUse::Cloth(Named::new(0xABCD, 8, "Vestry twill").unwrap());
    for (found, meant) in [(twill, Meant::Cloth(0xABCD)), (TagUse::Given, Meant::New), (TagUse::Unknown, Meant::Unsaid)]
    {
        let (mut model, effect) = to_the_tag(found);
        assert_eq!((model.screen, effect), (Screen::TagTaken, None));
        assert_eq!(update(&mut model.clone(), Event::Key(Action::Next), 0), save(meant));
        press(&mut model, &[Action::More(1), Action::Next]);
        assert_eq!(model.screen, Screen::Tag, "another one");
    }
}

/// A good repeatability makes an answer of what was too close to call, and the result on the display follows what the host says.
#[test]
fn her_own_hand_counts_in_the_answer() {
    let log = LogState { present: true, room: 9, ..LogState::default() };
    let next = || (Event::Key(Action::Next), 1_000);
    let more = |steps| (Event::Key(Action::More(steps)), 1_000);
    let asked = Demand::for_grain(Grain::Crosswise, tenter_core::Range::parse("5%", Unit::Mm).unwrap());
    let demand = Event::Demand(LabelledDemand::new("choir trousers A", asked));
    let mut model = play(&[
        (Event::Log(log), 0),
        (demand, 0),
        next(),
        next(),
        next(),
        more(16),
        next(),
        (Event::Key(Action::Back), 0),
    ]);
    model.row = 1;
    let now = model.now;
    update(&mut model, Event::Key(Action::Next), now);
    let assumed = model.evaluation.clone().unwrap();
    assert_eq!(assumed.answer, Some(tenter_core::Answer::Close));

    let hand = Repeatability::new(0.2, 60.0);
    update(&mut model, Event::Log(LogState { repeatability: hand, ..log }), now);
    let own = model.evaluation.clone().unwrap();
    let rules = Rules { scatter: tenter_core::Scatter::with(hand), ..Rules::default() };
    assert_eq!(Ok(&own), Evaluation::of(model.test.as_ref().unwrap(), &asked, &rules).as_ref());
    assert_eq!((model.screen, own.answer), (Screen::Result, Some(tenter_core::Answer::Meets)));
    update(&mut model, Event::Log(log), now);
    assert_eq!(model.evaluation, Some(assumed), "forgotten again");
}

/// What the demand makes unbelievable never gets a plain answer here either: 10 cm pulled to 26.7 cm, which is 10.5 in, for 5 %;
/// 160 % asked of 60 %; 1 % on marks that cannot show it, unless they moved so far that a division does not matter.
#[test]
fn what_the_demand_makes_unbelievable_is_close() {
    let answered = |mm: i16, extended: i16, asked: &str| {
        let mut test = PullTest::new(Length::from_mm(mm), Grain::Crosswise).unwrap().with_settling_pull(true);
        for _ in 0..3 {
            test.add_pull(Length::from_mm(extended)).unwrap();
        }
        let demand = Demand::for_grain(Grain::Crosswise, tenter_core::Range::parse(asked, Unit::Mm).unwrap());
        let labelled = LabelledDemand::new("", demand);
        let mut model = Model { test: Some(test.clone()), demand: labelled, ..Model::default() };
        model.evaluate();
        let evaluation = model.evaluation.clone().unwrap();
        model.screen = Screen::Result;
        for page in 0..3 {
            model.row = page;
            crate::view::draw(&model, &mut crate::frame::Frame::default());
        }
        let plain = Evaluation::of(&test, &demand, &Rules::default()).unwrap().answer;
        (plain, evaluation.answer, evaluation.doubts.first().map(|doubt| doubt.word()))
    };
    use tenter_core::Answer::{Close, Meets, Over, Short};
    assert_eq!(answered(100, 267, "5%"), (Some(Meets), Some(Close), Some("slip-of-unit")));
    assert_eq!(answered(100, 160, "160%"), (Some(Short), Some(Close), Some("ratio-for-stretch")));
    assert_eq!(answered(100, 103, "..1%").1, Some(Close));
    assert_eq!(answered(100, 130, "..1%").1, Some(Over));
    assert_eq!(answered(100, 115, "5%"), (Some(Meets), Some(Meets), None));
}
