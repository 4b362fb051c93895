//! Laws of one log in one pair of hands.

use tenter::log::{
    Construction, Desk, Entry, FabricChange, Fact, GarmentChange, Here, Id, Marks, PatternChange, Photo, RoleChange,
    Subject, TagRange, Tested,
};
use tenter::store::{Change as _, LogPiece, LogWithDrafts, Merged, Once, Read, Stop, StoreError, WhichTests, caught};
use tenter_core::{Grain, Length, PullTest, Unit};

use crate::engine::{Engine, on_every_engine};

on_every_engine!(
    what_is_stored_is_found_by_every_question,
    all_or_nothing,
    a_change_reads_what_is_there,
    identifiers_rise_and_arrivals_are_counted,
    a_merge_is_idempotent_and_tells_what_differs,
    a_test_waits_for_its_cloth,
    a_role_waits_for_its_pattern,
    a_clock_that_runs_ahead_drags_nothing_along,
    a_deed_that_is_sent_twice_is_done_once,
    a_question_may_be_asked_while_another_is_answered,
    a_draft_is_kept_until_it_is_forgotten,
    any_text_comes_back,
    a_thousand_at_once,
    a_photograph_is_kept_once,
    photographs_are_forgotten_for_good,
    a_garment_is_kept_and_its_person_forgotten,
    the_first_unit_counts,
    people_are_kept_apart_and_their_names_in_one_place,
    two_persons_turn_out_to_be_one,
    whom_a_person_is_the_same_as_may_be_said_again,
    cloths_that_share_a_tag_have_letters,
    an_entry_says_who_said_it,
);

pub fn cloth(tag: u16) -> Fact {
    let (tag, name) = (Some(tag), Some(format!("cloth {tag}")));
    Fact::FabricAdded(FabricChange { tag, name, construction: Some(Construction::Knit), ..FabricChange::default() })
}

/// Pulls from 100 mm to so many millimetres more.
pub fn pulled(fabric: Option<Id>, beyond: &[i16]) -> Fact {
    let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap().with_settling_pull(true);
    for mm in beyond {
        test.add_pull(Length::from_mm(100 + mm)).unwrap();
    }
    let pulled = "2026-03-01T12:00:00Z".parse().unwrap();
    let note = "dry".to_owned();
    Fact::TestStored(Tested {
        fabric,
        tag: Some(7),
        pulled,
        clock_unset: false,
        device: None,
        pulled_by: None,
        marks: Marks::default(),
        note,
        as_read: Vec::new(),
        test,
    })
}

pub fn lines(log: &dyn Read) -> Vec<String> {
    let mut lines = Vec::new();
    let mut keep = |line: &str| {
        lines.push(line.to_owned());
        Ok(())
    };
    log.each_entry(&mut keep).unwrap();
    lines
}

pub fn arrivals(log: &dyn Read, after: u64) -> Vec<(u64, Id)> {
    let mut all = Vec::new();
    let mut keep = |number, line: &str| {
        all.push((number, serde_json::from_str::<Entry>(line).unwrap().id));
        Ok(())
    };
    log.each_arrival(after, &mut keep).unwrap();
    all
}

fn added(log: &mut dyn LogWithDrafts, fact: Fact) -> Id {
    log.add(&[fact]).unwrap()[0].id
}

fn what_is_stored_is_found_by_every_question(engine: Engine) {
    let mut log = engine.log();
    let (two, one) = (added(&mut *log, cloth(2)), added(&mut *log, cloth(1)));
    let test = added(&mut *log, pulled(Some(two), &[5, 6]));
    let loose = added(&mut *log, pulled(None, &[7]));
    let pattern = added(&mut *log, Fact::PatternAdded(PatternChange { name: Some("Coat".into()), note: None }));
    let change = RoleChange { view: Some("A".into()), name: Some("main".into()), ..RoleChange::default() };
    let role = added(&mut *log, Fact::RoleAdded { pattern, change });
    let tags = |log: &dyn LogWithDrafts| {
        log.fabrics().unwrap().iter().map(|fabric| (fabric.tag.number(), fabric.id)).collect::<Vec<_>>()
    };
    assert_eq!(tags(&*log), [(1, one), (2, two)], "by tag");
    assert_eq!(log.fabrics_tagged(2).unwrap(), [log.fabric(two).unwrap().unwrap()]);
    assert_eq!((log.fabrics_tagged(3).unwrap(), log.fabric(test)), (Vec::new(), Ok(None)));
    let ids = |which| log.tests(which).unwrap().iter().map(|test| test.id).collect::<Vec<_>>();
    assert_eq!((ids(WhichTests::Of(two)), ids(WhichTests::Inbox)), (vec![test], vec![loose]));
    assert_eq!((ids(WhichTests::All), ids(WhichTests::Of(one))), (vec![test, loose], Vec::new()));
    assert_eq!(ids(WhichTests::ByCloth), vec![test]);
    let Fact::TestStored(said) = pulled(Some(two), &[5, 6]) else { panic!("a test") };
    assert_eq!(log.test(test).unwrap().unwrap().said, said);
    let patterns = log.patterns().unwrap();
    assert_eq!((patterns.len(), patterns[0].id, patterns[0].roles[0].id), (1, pattern, role));
    let of_two: Vec<Id> = log.history(Subject::Fabric(two)).unwrap().iter().map(|entry| entry.id).collect();
    assert_eq!((of_two, log.count()), (vec![two], Ok(6)));
    // Two pulls of one test: one degree of freedom of its own; those in the inbox count for nobody.
    assert_eq!(log.repeatability().unwrap().all().dof, 1.0);
    log.add(&[
        Fact::TestDropped { test, note: String::new() },
        Fact::FabricDropped { fabric: one, note: "sold".into() },
    ])
    .unwrap();
    assert_eq!(log.tests(WhichTests::All).unwrap().len(), 1);
    assert!(log.tests(WhichTests::Of(two)).unwrap()[0].dropped && log.fabric(one).unwrap().unwrap().dropped);
    assert_eq!(log.repeatability().unwrap().all().dof, 0.0);
    assert_eq!(log.faults().unwrap(), Vec::new());
}

fn all_or_nothing(engine: Engine) {
    let mut log = engine.log();
    let first = log.add(&[cloth(1)]).unwrap();
    assert_eq!(log.write(None, &mut |_| Err(Stop)), Err(StoreError::Stopped));
    let more = Entry::new(Id::of(first[0].id.at(), 3), cloth(2));
    assert_eq!(log.merge(&mut [Ok(more), Err(Stop)].into_iter()), Err(StoreError::Stopped));
    assert_eq!((log.count(), log.fabrics().unwrap().len()), (Ok(1), 1));
    assert_eq!(log.write(None, &mut |_| Ok(Vec::new())).unwrap(), tenter::store::Written::New(Vec::new()));
    assert_eq!(log.add(&[cloth(2), cloth(3)]).unwrap().len(), 2);
    assert_eq!(log.count(), Ok(3), "and it goes on");
}

fn a_change_reads_what_is_there(engine: Engine) {
    let mut log = engine.log();
    for tag in 1..=4 {
        let (entries, read) = log
            .change(|read| {
                let highest = read.fabrics()?.last().map_or(0, |fabric| fabric.tag.number());
                Ok::<_, StoreError>((vec![cloth(highest + 1)], highest))
            })
            .unwrap();
        assert_eq!((entries.len(), read), (1, tag - 1));
    }
    let refused = log.change(|read| if read.count()? == 4 { Err(StoreError::Stopped) } else { Ok((Vec::new(), ())) });
    assert_eq!((refused, log.count()), (Err(StoreError::Stopped), Ok(4)));
}

fn identifiers_rise_and_arrivals_are_counted(engine: Engine) {
    let mut log = engine.log();
    let mut ids = Vec::new();
    for round in 0..3 {
        ids.extend(log.add(&[cloth(round * 2 + 1), cloth(round * 2 + 2)]).unwrap().iter().map(|entry| entry.id));
    }
    assert!(ids.is_sorted_by(|a, b| a < b), "{ids:?}");
    // An older one that arrives late is the last to arrive and the first in order.
    let old = Entry::new(Id::of("2026-01-05T00:00:00Z".parse().unwrap(), 9), cloth(9));
    log.merge(&mut [Ok(old.clone())].into_iter()).unwrap();
    let numbered: Vec<(u64, Id)> = (1..).zip(ids.iter().copied().chain([old.id])).collect();
    assert_eq!(arrivals(&*log, 0), numbered);
    assert_eq!(arrivals(&*log, 4), numbered[4..]);
    assert_eq!((arrivals(&*log, 7), arrivals(&*log, u64::MAX)), (Vec::new(), Vec::new()));
    assert!(lines(&*log)[0].contains(&old.id.to_string()));
    let mut seen = 0;
    let stopped = log.each_arrival(0, &mut |number, _| {
        seen = number;
        if number == 2 { Err(Stop) } else { Ok(()) }
    });
    assert_eq!((stopped, seen), (Err(StoreError::Stopped), 2));
}

fn a_merge_is_idempotent_and_tells_what_differs(engine: Engine) {
    let mut log = engine.log();
    let at = "2026-02-01T00:00:00Z".parse().unwrap();
    let entry = |number: u16| Entry::new(Id::of(at, number.into()), cloth(number));
    let all = || [entry(2), entry(1), entry(3), entry(1)].map(Ok);
    assert_eq!(log.merge(&mut all().into_iter()), Ok(Merged { new: 3, known: 1, differ: 0, photos: 0 }));
    let before = lines(&*log);
    assert_eq!(log.merge(&mut all().into_iter()), Ok(Merged { new: 0, known: 4, differ: 0, photos: 0 }));
    let other = Entry::new(Id::of(at, 2), cloth(5));
    let twice = [Ok(entry(4)), Ok(other), Ok(Entry::new(Id::of(at, 4), cloth(6)))];
    assert_eq!(log.merge(&mut twice.into_iter()), Ok(Merged { new: 1, known: 2, differ: 2, photos: 0 }));
    assert_eq!(lines(&*log)[..3], before[..]);
    let tags: Vec<u16> = log.fabrics().unwrap().iter().map(|fabric| fabric.tag.number()).collect();
    assert_eq!(tags, [1, 2, 3, 4], "what was first stays");
    assert_eq!(log.merge(&mut std::iter::empty()), Ok(Merged::default()));
}

fn a_test_waits_for_its_cloth(engine: Engine) {
    let mut other = engine.log();
    let fabric = other.add(&[cloth(1)]).unwrap().remove(0);
    let test = other.add(&[pulled(Some(fabric.id), &[5, 7])]).unwrap().remove(0);
    let mut log = engine.log();
    log.merge(&mut [Ok(test.clone())].into_iter()).unwrap();
    assert_eq!(log.tests(WhichTests::Inbox).unwrap().len(), 1);
    assert_eq!((log.tests(WhichTests::All).unwrap()[0].said.fabric, log.faults()), (None, Ok(Vec::new())));
    log.merge(&mut [Ok(fabric.clone())].into_iter()).unwrap();
    assert_eq!(log.tests(WhichTests::Of(fabric.id)).unwrap(), other.tests(WhichTests::Of(fabric.id)).unwrap());
    assert_eq!(log.tests(WhichTests::Inbox).unwrap(), Vec::new());
    assert_eq!(log.repeatability().unwrap(), other.repeatability().unwrap());
    // Given to another cloth and back.
    let second = added(&mut *log, cloth(2));
    for (to, from) in [(second, fabric.id), (fabric.id, second)] {
        log.add(&[Fact::TestAssigned { test: test.id, fabric: to }]).unwrap();
        let of = |id| log.tests(WhichTests::Of(id)).unwrap().len();
        assert_eq!((of(to), of(from)), (1, 0));
        assert_eq!(log.repeatability().unwrap().all().dof, 1.0);
    }
}

fn a_role_waits_for_its_pattern(engine: Engine) {
    let mut other = engine.log();
    let named = PatternChange { name: Some("Coat".into()), note: None };
    let pattern = other.add(&[Fact::PatternAdded(named)]).unwrap().remove(0);
    let change = RoleChange { view: Some("A".into()), name: Some("main".into()), ..RoleChange::default() };
    let role = other.add(&[Fact::RoleAdded { pattern: pattern.id, change }]).unwrap().remove(0);
    let mut log = engine.log();
    log.merge(&mut [Ok(role)].into_iter()).unwrap();
    assert_eq!(log.patterns().unwrap(), Vec::new());
    log.merge(&mut [Ok(pattern)].into_iter()).unwrap();
    assert_eq!(log.patterns().unwrap(), other.patterns().unwrap());
    assert_eq!(log.patterns().unwrap()[0].roles.len(), 1);
}

fn a_clock_that_runs_ahead_drags_nothing_along(engine: Engine) {
    let mut log = engine.log();
    let now = log.add(&[cloth(1)]).unwrap()[0].id;
    let year = jiff::SignedDuration::from_hours(24 * 365);
    let ahead = Entry::new(Id::of(now.at() + year, 5), cloth(2));
    log.merge(&mut [Ok(ahead.clone())].into_iter()).unwrap();
    let after = log.add(&[cloth(3), Fact::FabricDropped { fabric: ahead.id, note: String::new() }, cloth(4)]).unwrap();
    let soon = now.at() + jiff::SignedDuration::from_hours(1);
    assert!(after[0].id > now && after[2].id > after[0].id && after[2].id.at() < soon, "{after:?}");
    assert!(after[1].id > ahead.id, "what is said of a thing comes after it was added");
    assert!(log.fabric(ahead.id).unwrap().unwrap().dropped);
    log.add(&[Fact::FabricRestored { fabric: ahead.id }]).unwrap();
    assert!(!log.fabric(ahead.id).unwrap().unwrap().dropped, "the last word holds");
}

fn a_deed_that_is_sent_twice_is_done_once(engine: Engine) {
    let home = engine.home();
    let mut log = home.open();
    let hour = jiff::SignedDuration::from_hours(1);
    let now = Here::desk().now();
    // Made on a clock that is behind, and on one that is ahead.
    for (tag, made) in [(1, now - hour), (3, now + hour)] {
        let once = Id::of(made, 0xdeed + u128::from(tag));
        let mut asked = 0;
        let mut send = |log: &mut dyn LogWithDrafts| {
            let sent = log.change_once(once, |_| {
                asked += 1;
                Ok::<_, StoreError>((vec![cloth(tag), cloth(tag + 1)], "done"))
            });
            sent.unwrap()
        };
        let Once::Now(entries, "done") = send(&mut *log) else { panic!("it was not done") };
        assert_eq!((entries.len(), entries[0].id.drawn()), (2, once.drawn()));
        let others = log.add(&[cloth(50), cloth(51)]).unwrap();
        assert!(others[0].id > entries[1].id);
        assert_eq!(send(&mut *log), Once::Before(Box::new(entries[0].clone())));
        if engine != Engine::Memory {
            assert_eq!(send(&mut *home.open()), Once::Before(Box::new(entries[0].clone())));
        }
        assert_eq!(asked, 1);
    }
    assert_eq!(log.count(), Ok(8));
}

fn a_question_may_be_asked_while_another_is_answered(engine: Engine) {
    let mut log = engine.log();
    let fabrics: Vec<Id> = (1..=3).map(|tag| added(&mut *log, cloth(tag))).collect();
    for fabric in &fabrics {
        log.add(&[pulled(Some(*fabric), &[4]), pulled(Some(*fabric), &[5])]).unwrap();
    }
    let ask = |read: &dyn Read| {
        let mut counts = Vec::new();
        caught(|own| {
            read.each_test(WhichTests::All, &mut |test| {
                let fabric = test.said.fabric.unwrap();
                let mut of = 0;
                own.keep(read.each_test(WhichTests::Of(fabric), &mut |_| {
                    of += 1;
                    Ok(())
                }))?;
                counts.push((own.keep(read.fabric(fabric))?.unwrap().tag.number(), of));
                Ok(())
            })
        })?;
        // The first that does is enough.
        let stopped = read.each_test(WhichTests::All, &mut |_| Err(Stop));
        assert_eq!(stopped, Err(StoreError::Stopped));
        Ok::<_, StoreError>((counts, read.count()?))
    };
    let expected = (vec![(1, 2), (1, 2), (2, 2), (2, 2), (3, 2), (3, 2)], 9);
    assert_eq!(ask(&*log).unwrap(), expected);
    let (_, within) = log.change(|read| Ok::<_, StoreError>((vec![cloth(9)], ask(read)?))).unwrap();
    assert_eq!((within, log.count()), (expected, Ok(10)));
}

fn a_draft_is_kept_until_it_is_forgotten(engine: Engine) {
    let home = engine.home();
    let mut log = home.open();
    for text in ["one", "two\nlines"] {
        log.set_draft("pull/1", Some(text)).unwrap();
        assert_eq!(log.draft("pull/1").unwrap().as_deref(), Some(text));
    }
    if engine != Engine::Memory {
        assert_eq!(home.open().draft("pull/1").unwrap().as_deref(), Some("two\nlines"));
    }
    log.set_draft("pull/1/b", Some("three")).unwrap();
    log.set_draft("pull/10", Some("four")).unwrap();
    assert_eq!(log.drafts_under("pull/1").unwrap(), [("pull/1/b".to_owned(), "three".to_owned())]);
    log.set_draft("pull/1", None).unwrap();
    assert_eq!((log.draft("pull/1"), log.count()), (Ok(None), Ok(0)));
}

/// Nothing in a text is taken for anything else on its way in or out.
fn any_text_comes_back(engine: Engine) {
    let mut log = engine.log();
    let texts = [
        "'; DROP TABLE entry; --",
        "\"quoted\" \\ {} [1,2] NULL",
        "قماش 布 👗 ü",
        "\\x00ff $1 ?1 %s",
        "{\"id\":1}",
        " ",
    ];
    for (tag, text) in (1..).zip(texts) {
        let named = |text: &str| Some(text.to_owned());
        let (name, note) = (named(text), named(text));
        log.add(&[Fact::FabricAdded(FabricChange { tag: Some(tag), name, note, ..FabricChange::default() })]).unwrap();
        let fabric = log.fabrics_tagged(tag).unwrap().remove(0);
        assert_eq!((fabric.name.as_str(), fabric.note.as_str()), (text, text));
    }
    let copy: Vec<Entry> = lines(&*log).iter().map(|line| serde_json::from_str(line).unwrap()).collect();
    let mut other = Engine::Memory.log();
    other.merge(&mut copy.into_iter().map(Ok)).unwrap();
    assert_eq!((lines(&*other), other.fabrics()), (lines(&*log), log.fabrics()));
}

/// More than any engine fetches or stores at a time.
fn a_thousand_at_once(engine: Engine) {
    let at = "2026-02-01T00:00:00Z".parse().unwrap();
    let mut entries = Vec::new();
    for tag in 1..=3000 {
        let fabric = Id::of(at, u128::from(tag) * 2);
        let stored = Id::of(at, u128::from(tag) * 2 + 1);
        // The test before its cloth, now and then.
        entries.insert(entries.len() - usize::from(tag % 2 == 0), Entry::new(fabric, cloth(tag)));
        entries.push(Entry::new(stored, pulled(Some(fabric), &[3, 4])));
    }
    entries.rotate_left(1);
    let mut log = engine.log();
    assert_eq!(log.merge(&mut entries.into_iter().map(Ok)).unwrap().new, 6000);
    assert_eq!((log.fabrics().unwrap().len(), lines(&*log).len(), log.faults()), (3000, 6000, Ok(Vec::new())));
    let tests = log.tests(WhichTests::All).unwrap();
    assert!(tests.len() == 3000 && tests.iter().all(|test| test.said.fabric.is_some()));
    assert_eq!((log.repeatability().unwrap().all().dof, arrivals(&*log, 5990).len()), (3000.0, 10));
}

fn photo(which: u8) -> Photo {
    Photo::new(vec![0xff, 0xd8, 0xff, 0xda, 0, 2, which, 0xff, 0xd9]).unwrap()
}

fn photos(log: &dyn Read) -> Vec<Photo> {
    let mut photos = Vec::new();
    let mut keep = |photo| {
        photos.push(photo);
        Ok(())
    };
    log.each_photo(&mut keep).unwrap();
    photos
}

fn a_photograph_is_kept_once(engine: Engine) {
    let mut log = engine.log();
    let take = |log: &mut dyn LogWithDrafts, all: &[u8]| {
        let pieces = all.iter().map(|which| Ok::<Photo, StoreError>(photo(*which)));
        log.merge_all(pieces).unwrap().photos
    };
    let all: Vec<u8> = (0..40).collect();
    assert_eq!((take(&mut *log, &[7, 8, 7]), take(&mut *log, &all), take(&mut *log, &all)), (2, 38, 0));
    let mut expected: Vec<Photo> = all.iter().map(|which| photo(*which)).collect();
    expected.sort_by_key(|photo| photo.name().to_string());
    assert_eq!(photos(&*log), expected, "by name");
    assert_eq!(log.photo(photo(9).name()), Ok(Some(photo(9))));
    assert_eq!((log.photo(photo(90).name()), log.count()), (Ok(None), Ok(0)));
    let mut pieces = [Ok(LogPiece::Photo(photo(91))), Err(Stop)].into_iter();
    assert_eq!(log.take(&mut pieces), Err(StoreError::Stopped));
    assert_eq!(log.photo(photo(91).name()), Ok(None), "nothing of what was broken off");
}

/// Bytes that are taken out are gone, those of others and all entries stay, and another log brings them back.
fn photographs_are_forgotten_for_good(engine: Engine) {
    let mut log = engine.log();
    log.add(&[cloth(1)]).unwrap();
    log.merge_all([7, 8, 9].into_iter().map(|which| Ok::<Photo, StoreError>(photo(which)))).unwrap();
    let before = (lines(&*log), log.count());
    let gone = [7, 9, 90].map(|which| photo(which).name());
    assert_eq!((log.forget_photos(&gone), log.forget_photos(&gone)), (Ok(2), Ok(0)));
    assert_eq!((photos(&*log), (lines(&*log), log.count())), (vec![photo(8)], before));
    assert_eq!(log.photo(photo(7).name()), Ok(None));
    assert_eq!(log.merge_all([Ok::<Photo, StoreError>(photo(7))].into_iter()).unwrap().photos, 1);
    assert_eq!((log.photo(photo(7).name()), log.faults()), (Ok(Some(photo(7))), Ok(Vec::new())));
}

fn a_garment_is_kept_and_its_person_forgotten(engine: Engine) {
    let mut log = engine.log();
    let begun = |number, whom: &str| {
        let (number, name, whom) = (Some(number), Some(format!("coat {number}")), Some(whom.to_owned()));
        Fact::GarmentBegun(GarmentChange { number, name, whom, ..GarmentChange::default() })
    };
    let (one, two) = (added(&mut *log, begun(1, "Ruth")), added(&mut *log, begun(2, "Edda")));
    let change =
        GarmentChange { whom: Some("Ruth B".to_owned()), note: Some("wool".to_owned()), ..GarmentChange::default() };
    log.add(&[Fact::GarmentChanged { garment: one, change }, Fact::GarmentDone { garment: one }]).unwrap();
    let garments = log.garments().unwrap();
    assert_eq!(garments.iter().map(|garment| garment.id).collect::<Vec<_>>(), [one, two]);
    assert!(garments[0].done.is_some() && garments[0].whom == "Ruth B" && garments[0].note == "wool");
    let count = log.count().unwrap();
    log.forget_names(Subject::Garment(one)).unwrap();
    let after = log.garments().unwrap();
    let mut expected = garments.clone();
    expected[0].whom = String::new();
    assert_eq!((after, log.count()), (expected, Ok(count)));
    let all = lines(&*log).join("\n");
    assert!(!all.contains("Ruth") && all.contains("Edda") && all.contains("wool"), "{all}");
    assert_eq!(log.faults(), Ok(Vec::new()));
}

fn the_first_unit_counts(engine: Engine) {
    let mut log = engine.log();
    assert_eq!(log.units(), Ok(None));
    log.add(&[Fact::UnitsSet { units: Unit::Inch }]).unwrap();
    log.add(&[Fact::UnitsSet { units: Unit::Cm }]).unwrap();
    assert_eq!(log.units(), Ok(Some(Unit::Inch)));
    // An older entry of another log that arrives later changes nothing.
    let old = Id::of("2026-01-05T00:00:00Z".parse().unwrap(), 9);
    log.merge(&mut [Ok(Entry::new(old, Fact::UnitsSet { units: Unit::Mm }))].into_iter()).unwrap();
    assert_eq!((log.units(), log.count(), log.faults()), (Ok(Some(Unit::Inch)), Ok(3), Ok(Vec::new())));
}

fn named(person: Id, name: &str) -> Fact {
    Fact::PersonNamed { person, name: name.to_owned() }
}

fn drawn(number: u128) -> Id {
    Id::of("2026-01-05T00:00:00Z".parse().unwrap(), number)
}

fn pulled_by(fabric: Id, person: Option<Id>, beyond: &[i16]) -> Fact {
    match pulled(Some(fabric), beyond) {
        Fact::TestStored(said) => Fact::TestStored(Tested { pulled_by: person, ..said }),
        other => other,
    }
}

fn people_are_kept_apart_and_their_names_in_one_place(engine: Engine) {
    let mut log = engine.log();
    let (anna, ben) = (drawn(1), drawn(2));
    let fabric = added(&mut *log, cloth(1));
    log.add(&[
        named(anna, "Ana"),
        named(ben, "Ben"),
        pulled_by(fabric, Some(anna), &[5, 6]),
        pulled_by(fabric, Some(anna), &[5, 7, 9]),
        pulled_by(fabric, Some(ben), &[5, 6]),
        pulled_by(fabric, None, &[5, 6, 7, 8]),
        named(anna, "Anna"),
    ])
    .unwrap();
    let dof = |log: &dyn LogWithDrafts, person| log.repeatability().unwrap().of(person).all().dof;
    assert_eq!([Some(anna), Some(ben), None].map(|person| dof(&*log, person)), [3.0, 1.0, 3.0]);
    assert_eq!(log.repeatability().unwrap().all().dof, 7.0);
    let names =
        |log: &dyn LogWithDrafts| log.people().unwrap().each().map(|person| person.name.clone()).collect::<Vec<_>>();
    assert_eq!(names(&*log), ["Anna", "Ben"]);
    let tests = log.tests(WhichTests::Of(fabric)).unwrap();
    assert_eq!(tests.iter().filter(|test| test.said.pulled_by == Some(anna)).count(), 2);
    // One was given to the wrong person.
    log.add(&[Fact::TestPulledBy { test: tests[2].id, pulled_by: Some(anna) }]).unwrap();
    assert_eq!((dof(&*log, Some(anna)), dof(&*log, Some(ben))), (4.0, 0.0));
    let count = log.count().unwrap();
    log.forget_names(Subject::Person(anna)).unwrap();
    assert_eq!((names(&*log), log.count()), (vec![String::new(), "Ben".to_owned()], Ok(count)));
    assert_eq!(dof(&*log, Some(anna)), 4.0, "the tests stay together");
    let all = lines(&*log).join("\n");
    assert!(!all.contains("Ana") && !all.contains("Anna") && all.contains("Ben"), "{all}");
    // A copy that still has the name says nothing else.
    let before = Entry::new(serde_json::from_str::<Entry>(&lines(&*log)[1]).unwrap().id, named(anna, "Ana"));
    let merged = log.merge(&mut [Ok(before)].into_iter()).unwrap();
    assert_eq!(merged, Merged { known: 1, ..Merged::default() });
    assert_eq!(log.faults(), Ok(Vec::new()));
}

/// Whichever way round it is told, and whether or not the one or the other has arrived.
fn two_persons_turn_out_to_be_one(engine: Engine) {
    let [one, two, three] = [1, 2, 3].map(drawn);
    let fabric = drawn(9);
    let said = [
        cloth(1),
        pulled_by(fabric, Some(one), &[5, 6]),
        Fact::PersonMerged { person: one, same_as: two },
        pulled_by(fabric, Some(two), &[5, 6, 7]),
        Fact::PersonMerged { person: two, same_as: three },
        named(three, "Anna"),
    ];
    let entries = |order: [usize; 6]| {
        order.map(|at| {
            let id = if at == 0 { fabric } else { drawn(100 + at as u128) };
            Entry::new(id, said[at].clone())
        })
    };
    for order in [[0, 1, 2, 3, 4, 5], [5, 4, 3, 2, 1, 0], [2, 0, 4, 1, 5, 3]] {
        let mut log = engine.log();
        for entry in entries(order) {
            log.merge(&mut [Ok(entry)].into_iter()).unwrap();
        }
        let hands = log.repeatability().unwrap();
        assert_eq!((hands.of(Some(three)).all().dof, hands.of(Some(one)).all().dof), (3.0, 0.0), "{order:?}");
        assert!(log.tests(WhichTests::Of(fabric)).unwrap().iter().all(|test| test.said.pulled_by == Some(three)));
        let people = log.people().unwrap();
        assert_eq!((people.name(Some(one)), people.each().count()), (Some("Anna"), 1));
        assert_eq!(log.faults(), Ok(Vec::new()));
    }
}

/// Of another, of nobody, and in a round: the tests go along each time.
fn whom_a_person_is_the_same_as_may_be_said_again(engine: Engine) {
    let mut log = engine.log();
    let [one, two, three] = [1, 2, 3].map(drawn);
    let fabric = added(&mut *log, cloth(1));
    log.add(&[pulled_by(fabric, Some(one), &[5, 6])]).unwrap();
    for (person, same_as, meant) in
        [(one, two, two), (one, three, three), (one, one, one), (one, two, two), (two, one, one), (two, three, three)]
    {
        log.add(&[Fact::PersonMerged { person, same_as }]).unwrap();
        let tests = log.tests(WhichTests::Of(fabric)).unwrap();
        assert_eq!(tests.iter().map(|test| test.said.pulled_by).collect::<Vec<_>>(), [Some(meant)]);
        assert_eq!(log.repeatability().unwrap().of(Some(meant)).all().dof, 1.0);
        assert_eq!(log.faults(), Ok(Vec::new()));
    }
}

fn cloths_that_share_a_tag_have_letters(engine: Engine) {
    let mut log = engine.log();
    let ids: Vec<Id> = [7, 7, 8, 7].map(|tag| added(&mut *log, cloth(tag))).to_vec();
    let tags = |log: &dyn LogWithDrafts| {
        log.fabrics().unwrap().iter().map(|fabric| fabric.tag.to_string()).collect::<Vec<_>>()
    };
    assert_eq!(tags(&*log), ["7a", "7b", "7c", "8"]);
    let of = |log: &dyn LogWithDrafts, id| log.fabric(id).unwrap().unwrap().tag.to_string();
    assert_eq!((of(&*log, ids[1]), of(&*log, ids[2])), ("7b".to_owned(), "8".to_owned()));
    let tagged: Vec<String> = log.fabrics_tagged(7).unwrap().iter().map(|fabric| fabric.tag.to_string()).collect();
    assert_eq!(tagged, ["7a", "7b", "7c"]);
    // A retired one wears no letter, and leaves the others in order.
    log.add(&[Fact::FabricDropped { fabric: ids[0], note: String::new() }]).unwrap();
    assert_eq!((of(&*log, ids[0]), of(&*log, ids[1]), of(&*log, ids[3])), ("7".into(), "7a".into(), "7b".into()));
    log.add(&[Fact::FabricChanged {
        fabric: ids[3],
        change: FabricChange { tag: Some(100), ..FabricChange::default() },
    }])
    .unwrap();
    assert_eq!((of(&*log, ids[1]), of(&*log, ids[3])), ("7".to_owned(), "100".to_owned()));
}

fn an_entry_says_who_said_it(engine: Engine) {
    let mut log = engine.log();
    let (anna, ben) = (drawn(1), drawn(2));
    assert_eq!(log.desk(), Ok(Desk::default()));
    let tags = TagRange::parse("100-199");
    let handhelds = [(7, ben)].into();
    let desk = Desk { who: Some(anna), tags, handhelds, ..Desk::default() };
    added(&mut *log, cloth(1));
    log.set_desk(&desk).unwrap();
    assert_eq!(log.desk(), Ok(desk));
    added(&mut *log, cloth(2));
    log.speak_as(ben);
    added(&mut *log, cloth(3));
    let who = |line: &String| serde_json::from_str::<Entry>(line).unwrap().who;
    let lines = lines(&*log);
    assert_eq!(lines.iter().map(who).collect::<Vec<_>>(), [None, Some(anna), Some(ben)]);
    // It goes along into another log; the desk does not.
    let mut other = engine.log();
    other.merge(&mut lines.iter().map(|line| Ok(serde_json::from_str(line).unwrap()))).unwrap();
    assert_eq!((self::lines(&*other), other.desk()), (lines, Ok(Desk::default())));
    log.set_desk(&Desk::default()).unwrap();
    assert_eq!(log.desk(), Ok(Desk::default()));
}
