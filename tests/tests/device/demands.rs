//! What a view asks, from the log to the handheld's own memory.

use tenter::cli::device::{DemandsArgs, DeviceVerb};
use tenter::cli::{self, CommandLine, Parsed, Verb};
use tenter::command::device::demands;
use tenter::log::pattern::DemandField;
use tenter::log::{Fact, Marks, PatternChange, RoleChange, Tested};
use tenter::store::sqlite::Sqlite;
use tenter::store::{Change as _, Read as _};
use tenter_core::record::LabelledDemand;
use tenter_core::{Demand, Grain, Length, Range, Unit};

use crate::cable::{Cable, log, printed};
use crate::pocket::{Pocket, test, tests};

fn stretch(text: &str) -> Demand {
    Demand::for_grain(Grain::Crosswise, Range::parse(text, Unit::Mm).unwrap())
}

/// Adds a pattern with these roles: view, name, stretch across.
fn pattern(store: &mut Sqlite, name: &str, roles: &[(&str, &str, &str)]) {
    let said = PatternChange { name: Some(name.to_owned()), note: None };
    let pattern = store.add(&[Fact::PatternAdded(said.clone())]).unwrap()[0].id;
    for (view, role, asks) in roles {
        let demand = if asks.is_empty() { Demand::default() } else { stretch(asks) };
        let change = RoleChange {
            view: Some((*view).to_owned()),
            name: Some((*role).to_owned()),
            demand: Some(DemandField(demand)),
            ..RoleChange::default()
        };
        store.add(&[Fact::RoleAdded { pattern, change: change.clone() }]).unwrap();
    }
}

fn patterns() -> Sqlite {
    let mut store = log();
    let skirt =
        [("A", "main", "5%"), ("B", "main", "5%"), ("B", "hem facings", "4in to 5 3/8in"), ("B", "pocketing", "")];
    pattern(&mut store, "Rehearsal skirt", &skirt);
    pattern(&mut store, "Recital skirts", &[("only", "legs", "40%..60%")]);
    store
}

fn args(words: &str) -> DemandsArgs {
    let words = ["tenter", "device", "demands"].into_iter().chain(words.split('/'));
    let Ok(Parsed::Run(CommandLine { verb: Verb::Device(verb), .. })) = cli::parse(words) else { panic!("no device") };
    let DeviceVerb::Demands(args) = *verb else { panic!("no demands") };
    args
}

/// Sends what was typed; what was printed, or what was wrong.
fn send(cable: &Cable, store: &Sqlite, words: &str) -> Result<String, String> {
    let (result, text) = printed(|screen| {
        let wanted = demands::wanted(&args(words), store)?;
        demands::run(&mut cable.session()?, &wanted, store, screen)
    });
    result.map(|()| text).map_err(|error| error.to_string())
}

/// What the handheld finds in its memory.
fn held(cable: &Cable) -> Vec<LabelledDemand> {
    let mut world = cable.world();
    let log = world.pocket.records().log().unwrap();
    (0..log.demand_count()).map(|slot| log.demand(slot).unwrap().unwrap()).collect()
}

#[test]
fn the_demands_of_a_view_arrive_as_they_were_written() {
    let (cable, store) = (Cable::to(Pocket::with(&[])), patterns());
    let text = send(&cable, &store, "rehe/b").unwrap();
    let wanted = "\
sent  Rehearsal skirt B main
sent  Rehearsal B hem facings
not sent, since it asks no stretch, growth or recovery: pocketing
";
    assert_eq!(text, wanted);
    let [main, side] = &held(&cable)[..] else { panic!("two demands") };
    assert_eq!((main.label(), main.demand), ("Rehearsal skirt B main", stretch("5%")));
    assert_eq!((side.label(), side.demand), ("Rehearsal B hem facings", stretch("4in to 5 3/8in")));
    // A printed gauge stays a pair of marks.
    let marks = side.demand.crosswise.at_least.unwrap().printed_marks().unwrap();
    assert_eq!(marks, (Length::from_inch_64ths(4 * 64), Length::from_inch_64ths(5 * 64 + 24)));
    // Others take their place; the same again writes nothing.
    assert_eq!(send(&cable, &store, "recital").unwrap(), "sent  Recital skirts only legs\n");
    assert_eq!(held(&cable).len(), 1);
    let image = cable.world().pocket.chip.image();
    send(&cable, &store, "RECITAL/only").unwrap();
    assert!(cable.world().pocket.chip.image() == image);
    let text = send(&cable, &store, "rehearsal/B/--role/hem").unwrap();
    assert_eq!(text, "sent  Rehearsal B hem facings\n");
    assert_eq!(send(&cable, &store, "--clear").unwrap(), "the handheld holds no demands now\n");
    assert_eq!(held(&cable), []);
}

#[test]
fn what_is_not_there_is_said_with_what_is() {
    let (cable, store) = (Cable::to(Pocket::with(&[])), patterns());
    let wrong = |words| send(&cable, &store, words).unwrap_err();
    assert_eq!(wrong("cape/A"), "no pattern is called 'cape'; there are: Rehearsal skirt, Recital skirts");
    assert_eq!(wrong("r/A"), "'r' could be Rehearsal skirt, Recital skirts; type more of it");
    assert_eq!(wrong("rehearsal"), "type which view: A, B");
    assert_eq!(wrong("rehearsal/c"), "no view is called 'c'; there are: A, B");
    assert_eq!(wrong("rehearsal/b/--role/hood"), "no role is called 'hood'; there are: main, hem facings, pocketing");
    let nothing = wrong("rehearsal/b/--role/pocketing");
    assert!(nothing.starts_with("Rehearsal skirt B asks no stretch, growth or recovery"), "{nothing}");
    assert_eq!(cable.world().passed, 0, "nothing was said to the handheld");
}

#[test]
fn what_does_not_fit_is_named() {
    let (cable, mut store) = (Cable::to(Pocket::with(&[])), log());
    let names: Vec<String> = (1..=10).map(|nth| format!("piece {nth}")).collect();
    let roles: Vec<_> = names.iter().map(|name| ("A", name.as_str(), "5%")).collect();
    pattern(&mut store, "Cape", &roles);
    let text = send(&cable, &store, "cape/a").unwrap();
    assert!(text.ends_with("no room for piece 9, piece 10: the handheld holds 8; choose with --role\n"), "{text}");
    let labels: Vec<_> = held(&cable).iter().map(|held| held.label().to_owned()).collect();
    assert_eq!(labels, (1..=8).map(|nth| format!("Cape A piece {nth}")).collect::<Vec<_>>());
}

/// The repeatability goes along, and an older handheld takes the demands all the same.
#[test]
fn her_hand_goes_along() {
    let (cable, mut store) = (Cable::to(Pocket::with(&[test(4), test(8)])), patterns());
    cable.sync(&mut store, Default::default()).0.unwrap();
    let other = Cable::to(Pocket::with(&tests(1)));
    send(&other, &store, "recital").unwrap();
    let hand =
        |cable: &Cable| cable.world().pocket.records().log().unwrap().repeatability().map(|hand| hand.thousandths());
    assert_eq!(hand(&other), hand(&cable));
    assert!(hand(&other).is_some());
    let days = |cable: &Cable| {
        cable.world().pocket.records().log().unwrap().repeatability().map(|hand| hand.sessions_in_thousandths())
    };
    assert_eq!(days(&other), Some((1_000, 0)), "one day says nothing of days");
    // Retests of one cloth on several days.
    let fabric = store.fabrics().unwrap()[0].id;
    for (day, mm) in (0..).zip([130, 138, 131, 140, 133, 137, 130, 139]) {
        let mut test =
            tenter_core::PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap().with_settling_pull(true);
        for _ in 0..3 {
            test.add_pull(Length::from_mm(mm)).unwrap();
        }
        let pulled = jiff::Timestamp::from_second(1_795_600_000 + 86_400 * day).unwrap();
        let tested = Tested {
            fabric: Some(fabric),
            tag: None,
            pulled,
            clock_unset: false,
            device: None,
            pulled_by: None,
            marks: Marks::default(),
            note: String::new(),
            as_read: Vec::new(),
            test,
        };
        store.add(&[Fact::TestStored(tested)]).unwrap();
    }
    let learnt = store.repeatability().unwrap().all().repeatability().unwrap();
    assert!(learnt.session_dof() >= 1.5, "{learnt:?}");
    send(&other, &store, "recital").unwrap();
    assert_eq!(days(&other), Some(learnt.sessions_in_thousandths()));
    cable.sync(&mut store, Default::default()).0.unwrap();
    assert_eq!(days(&cable), Some(learnt.sessions_in_thousandths()));
    let image = other.world().pocket.chip.image();
    send(&other, &store, "recital").unwrap();
    assert!(other.world().pocket.chip.image() == image, "the same again writes nothing");
    other.world().pocket.is_old = true;
    let text = send(&other, &store, "rehe/A").unwrap();
    assert!(text.starts_with("sent  Rehearsal skirt A main\nnote: the handheld's program is older"), "{text}");
    // One that knows hands and not yet days.
    other.world().pocket.is_old = false;
    other.world().pocket.knows_no_days = true;
    let text = send(&other, &store, "rehe/A").unwrap();
    assert!(text.contains("it uses the assumed difference between\n  days and not your retests"), "{text}");
}
