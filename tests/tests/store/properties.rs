//! Laws of export and import, on any log and any bytes, on every engine and from one to another.

use crate::engine::Engine;
use crate::laws::{arrivals, lines};
use proptest::prelude::*;
use tenter::exchange::ImportError;
use tenter::exchange::jsonl::{self, Exported};
use tenter::exchange::table::{TESTS, read as csv, write::test as row_of};
use tenter::log::pattern::DemandField;
use tenter::log::{
    Colour, Construction, Entry, FabricChange, Fact, GarmentChange, Id, Learned, Marks, PatternChange, Photo,
    PhotoSaid, Pooled, RoleChange, StoredTest, Subject, Tested, Use,
};
use tenter::store::{Change as _, LogWithDrafts, Merged, Read, StoreError, WhichTests};
use tenter::words::errors::imported;
use tenter_core::{Context, Demand, Grain, Length, PullTest, Range, Unit, implausible};

/// What one side of a workroom says: things, and about the ones that are there.
#[derive(Clone, Debug)]
pub enum Said {
    Add(String),
    Cut(usize, u16),
    Drop(usize),
    Restore(usize),
    Rename(usize, String),
    Pull(usize, Vec<u16>, u16),
    Assign(usize, usize),
    DropTest(usize),
    Pattern(String),
    Role(usize, String, u8),
    Photo(usize, u8),
    TurnPhoto(usize, u8),
    Learn(usize, String),
    Begin(usize, String),
    CutFor(usize, u16),
    Retract(usize),
    Finish(usize, u8),
    Person(u8, String),
    Give(usize, u8),
    Same(u8, u8),
}

/// The words of what speaks against readings of a cloth of which nothing is known.
fn doubted(test: &PullTest) -> Vec<String> {
    let context = Context { construction: Some(Construction::default()), ..Context::default() };
    implausible(test, &context).iter().map(|doubt| doubt.word().to_owned()).collect()
}

fn name() -> impl Strategy<Value = String> {
    // Anything that can be typed: no control characters, and something.
    "\\PC{1,12}".prop_filter("a name says something", |name| !name.trim().is_empty())
}

pub fn said() -> impl Strategy<Value = Vec<Said>> {
    let one_of = any::<usize>;
    let one = prop_oneof![
        3 => name().prop_map(Said::Add),
        1 => (one_of(), any::<u16>()).prop_map(|(at, mm)| Said::Cut(at, mm)),
        1 => one_of().prop_map(Said::Drop),
        1 => one_of().prop_map(Said::Restore),
        1 => (one_of(), name()).prop_map(|(at, name)| Said::Rename(at, name)),
        4 => (one_of(), prop::collection::vec(0..60_000_u16, 1..6), any::<u16>())
            .prop_map(|(at, pulls, rest)| Said::Pull(at, pulls, rest)),
        1 => (one_of(), one_of()).prop_map(|(test, fabric)| Said::Assign(test, fabric)),
        1 => one_of().prop_map(Said::DropTest),
        1 => name().prop_map(Said::Pattern),
        1 => (one_of(), name(), any::<u8>()).prop_map(|(at, name, percent)| Said::Role(at, name, percent)),
        1 => (one_of(), any::<u8>()).prop_map(|(at, which)| Said::Photo(at, which)),
        1 => (one_of(), any::<u8>()).prop_map(|(at, how)| Said::TurnPhoto(at, how)),
        1 => (one_of(), name()).prop_map(|(at, words)| Said::Learn(at, words)),
        2 => (one_of(), name()).prop_map(|(at, name)| Said::Begin(at, name)),
        2 => (one_of(), any::<u16>()).prop_map(|(at, mm)| Said::CutFor(at, mm)),
        1 => one_of().prop_map(Said::Retract),
        1 => (one_of(), any::<u8>()).prop_map(|(at, how)| Said::Finish(at, how)),
        1 => (0..4_u8, name()).prop_map(|(who, name)| Said::Person(who, name)),
        2 => (one_of(), 0..4_u8).prop_map(|(at, who)| Said::Give(at, who)),
        1 => (0..4_u8, 0..4_u8).prop_map(|(one, other)| Said::Same(one, other)),
    ];
    prop::collection::vec(one, 0..20)
}

/// A test on marks of 100 mm, to so many steps beyond and back.
fn test(fabric: Option<Id>, beyond: &[u16], rest: u16) -> Fact {
    let steps = |more: u16| Length::from_steps(160_000 + i32::from(more));
    let grain = [Grain::Crosswise, Grain::Lengthwise, Grain::Bias][usize::from(rest) % 3];
    let mut test = PullTest::new(Length::from_mm(100), grain).unwrap();
    for more in beyond {
        test.add_pull(steps(*more)).unwrap();
    }
    let last = beyond.last().copied().unwrap_or_default();
    test.add_rest(rest.into(), steps(rest.min(last))).unwrap();
    let (tag, device, note) = (None, None, String::new());
    let pulled = jiff::Timestamp::from_second(1_700_000_000 + i64::from(rest)).unwrap();
    let (pulled_by, as_read) = (None, Vec::new());
    Fact::TestStored(Tested {
        fabric,
        tag,
        pulled,
        clock_unset: false,
        device,
        pulled_by,
        marks: Marks::default(),
        note,
        as_read,
        test,
    })
}

/// One of a few people, the same on either side.
fn person(which: u8) -> Id {
    Id::of("2026-01-05T00:00:00Z".parse().unwrap(), 7 + u128::from(which))
}

/// A JPEG as far as the log looks at it, another for each number.
fn photo(which: u8) -> Photo {
    Photo::new(vec![0xff, 0xd8, 0xff, 0xda, 0, 2, which, 0xff, 0xd9]).unwrap()
}

fn fact(one: &Said, read: &dyn Read) -> Result<Option<Fact>, StoreError> {
    let (fabrics, tests, patterns) = (read.fabrics()?, read.tests(WhichTests::All)?, read.patterns()?);
    let fabric = |index: &usize| fabrics.get(index % fabrics.len().max(1)).map(|fabric| fabric.id);
    let stored = |index: &usize| tests.get(index % tests.len().max(1)).map(|test| test.id);
    let pattern = |index: &usize| patterns.get(index % patterns.len().max(1)).map(|pattern| pattern.id);
    let garments = read.garments()?;
    let garment = |index: &usize| garments.get(index % garments.len().max(1)).cloned();
    let note = String::new;
    Ok(match one {
        Said::Add(name) => Some(Fact::FabricAdded(FabricChange {
            tag: u16::try_from(fabrics.len() + 1).ok(),
            name: Some(name.clone()),
            construction: Some(Construction::Knit),
            length: Some(Some(tenter::log::json::Mm(Length::from_mm(2000)))),
            ..FabricChange::default()
        })),
        Said::Cut(index, steps) => {
            let length = Length::from_steps(i32::from(*steps) * 100);
            fabric(index).map(|fabric| Fact::FabricCut { fabric, length, note: note() })
        }
        Said::Drop(index) => fabric(index).map(|fabric| Fact::FabricDropped { fabric, note: note() }),
        Said::Restore(index) => fabric(index).map(|fabric| Fact::FabricRestored { fabric }),
        Said::Rename(index, name) => fabric(index).map(|fabric| Fact::FabricChanged {
            fabric,
            change: FabricChange { name: Some(name.clone()), ..FabricChange::default() },
        }),
        Said::Pull(index, beyond, rest) => Some(test(fabric(index).filter(|_| rest % 4 > 0), beyond, *rest)),
        Said::Assign(index, to) => {
            stored(index).and_then(|test| fabric(to).map(|fabric| Fact::TestAssigned { test, fabric }))
        }
        Said::DropTest(index) => stored(index).map(|test| Fact::TestDropped { test, note: note() }),
        Said::Pattern(name) => {
            Some(Fact::PatternAdded(PatternChange { name: Some(name.clone()), ..PatternChange::default() }))
        }
        Said::Role(index, name, percent) => {
            let crosswise = Range::parse(&format!("{percent}%"), Unit::Mm).unwrap();
            let change = RoleChange {
                view: Some("A".to_owned()),
                name: Some(name.clone()),
                demand: Some(DemandField(Demand { crosswise, ..Demand::default() })),
                ..RoleChange::default()
            };
            pattern(index).map(|pattern| Fact::RoleAdded { pattern, change })
        }
        Said::Photo(index, which) => fabric(index).map(|fabric| {
            let (name, note) = (photo(*which).name(), note());
            let said = PhotoSaid {
                photo: name,
                thumbnail: name,
                width_px: 4,
                height_px: 3,
                colour: Colour([*which; 3]),
                note,
            };
            Fact::PhotoAdded { fabric, said }
        }),
        Said::TurnPhoto(index, how) => fabrics.get(index % fabrics.len().max(1)).and_then(|cloth| {
            let (fabric, of) = (cloth.id, cloth.photos.last()?.id);
            Some(match how % 3 {
                0 => Fact::PhotoFirst { fabric, of },
                1 => Fact::PhotoDropped { fabric, of },
                _ => Fact::PhotoRestored { fabric, of },
            })
        }),
        Said::Learn(index, words) => {
            fabrics.get(index % fabrics.len().max(1)).map(|cloth| match cloth.lessons.last() {
                Some(lesson) if index % 3 == 0 => Fact::LessonDropped { fabric: cloth.id, lesson: lesson.id },
                _ => Fact::FabricLearned {
                    fabric: cloth.id,
                    learned: Learned {
                        wore: words.clone(),
                        garment: garment(index).map(|one| one.id),
                        ..Learned::default()
                    },
                },
            })
        }
        Said::Begin(index, name) => {
            let role = patterns.iter().flat_map(|pattern| &pattern.roles).next().map(|role| role.id);
            let uses = role.zip(fabric(index)).map(|(role, fabric)| vec![Use { role, fabric }]);
            Some(Fact::GarmentBegun(GarmentChange {
                number: u16::try_from(garments.len() + 1).ok(),
                name: Some(name.clone()),
                pattern: pattern(index),
                whom: Some(name.clone()),
                by: Some(jiff::civil::Date::new(2026, 12, 12).ok()),
                uses,
                ..GarmentChange::default()
            }))
        }
        Said::CutFor(index, steps) => garment(index).and_then(|garment| {
            let one = garment.uses.first()?;
            let length = Length::from_steps(i32::from(*steps) * 100);
            Some(Fact::FabricCutFor { fabric: one.fabric, length, garment: garment.id, role: one.role })
        }),
        Said::Retract(index) => fabrics
            .get(index % fabrics.len().max(1))
            .and_then(|cloth| Some(Fact::FabricRetracted { fabric: cloth.id, entry: cloth.cuts.first()?.id })),
        Said::Person(who, name) => Some(Fact::PersonNamed { person: person(*who), name: name.clone() }),
        Said::Give(index, who) => stored(index)
            .map(|test| Fact::TestPulledBy { test, pulled_by: Some(*who).filter(|who| *who > 0).map(person) }),
        Said::Same(one, other) => Some(Fact::PersonMerged { person: person(*one), same_as: person(*other) }),
        Said::Finish(index, how) => garment(index).map(|one| match how % 5 {
            0 => Fact::GarmentDone { garment: one.id },
            1 => Fact::GarmentReopened { garment: one.id },
            2 => Fact::GarmentDropped { garment: one.id, note: note() },
            3 => Fact::GarmentRestored { garment: one.id },
            _ => Fact::GarmentChanged {
                garment: one.id,
                change: GarmentChange { by: Some(None), ..GarmentChange::default() },
            },
        }),
    })
}

pub fn say(store: &mut dyn LogWithDrafts, all: &[Said]) {
    for one in all {
        if let Said::Photo(_, which) = one {
            store.merge_all(core::iter::once(Ok::<_, StoreError>(photo(*which)))).unwrap();
        }
        store.change(|read| Ok::<_, StoreError>((fact(one, read)?.into_iter().collect(), ()))).unwrap();
    }
}

/// Everything that can be asked of a log, for comparison.
pub fn everything(store: &dyn LogWithDrafts) -> impl PartialEq + core::fmt::Debug + use<> {
    let fabrics = store.fabrics().unwrap();
    let of = |which| store.tests(which).unwrap();
    let mut each: Vec<StoredTest> = fabrics.iter().flat_map(|fabric| of(WhichTests::Of(fabric.id))).collect();
    // The same cloth by cloth and grain by grain.
    let mut by_cloth: Vec<Vec<StoredTest>> = Vec::new();
    for test in of(WhichTests::ByCloth) {
        let key = |test: &StoredTest| (test.said.fabric, test.said.test.grain());
        match by_cloth.last_mut().filter(|last| key(&last[0]) == key(&test)) {
            Some(last) => last.push(test),
            None => by_cloth.push(vec![test]),
        }
    }
    for group in &by_cloth {
        let mut those: Vec<StoredTest> = of(WhichTests::Of(group[0].said.fabric.unwrap()));
        those.retain(|test| !test.dropped && test.said.test.grain() == group[0].said.test.grain());
        assert_eq!(&those, group);
    }
    assert_eq!(by_cloth.iter().map(Vec::len).sum::<usize>(), each.iter().filter(|test| !test.dropped).count());
    each.extend(of(WhichTests::Inbox));
    let histories: Vec<Vec<Entry>> =
        fabrics.iter().map(|fabric| store.history(Subject::Fabric(fabric.id)).unwrap()).collect();
    let (people, hands) = (store.people().unwrap(), store.repeatability().unwrap());
    // Sums of floating numbers in another order differ in the last digits.
    let said = |pooled: Pooled| (format!("{:.6}", pooled.dof), format!("{:.6}", pooled.sum));
    let each_hand: Vec<_> =
        people.each().map(|person| (person.clone(), said(hands.of(Some(person.id)).all()))).collect();
    let hand = (said(hands.all()), said(hands.of(None).all()), each_hand);
    (fabrics, (each, of(WhichTests::All)), (store.patterns().unwrap(), store.garments().unwrap()), histories, hand)
}

/// The log as `tenter export` writes it.
pub fn export(store: &dyn LogWithDrafts) -> String {
    let lines = lines(store);
    let mut bytes = Vec::new();
    assert_eq!(jsonl::write(store, true, &mut bytes, &mut || {}).unwrap(), lines.len() as u64);
    String::from_utf8(bytes).unwrap()
}

pub fn import(store: &mut dyn LogWithDrafts, bytes: &[u8]) -> Result<Merged, ImportError> {
    store.merge_all(Exported::begin(bytes, "a.jsonl", tenter::log::EVER)?)
}

/// A table of any time, whose readings somebody stands by or not.
fn trust(as_read: bool) -> csv::Trust {
    csv::Trust { as_read, latest: tenter::log::EVER }
}

fn one() -> impl Strategy<Value = Engine> {
    prop::sample::select(vec![Engine::Sqlite, Engine::Postgres, Engine::Memory])
}

/// Two empty logs: of one engine, or of two.
fn two() -> impl Strategy<Value = [Engine; 2]> {
    use Engine::{Memory, Postgres, Sqlite};
    prop::sample::select(vec![
        [Sqlite, Sqlite],
        [Postgres, Postgres],
        [Memory, Memory],
        [Sqlite, Postgres],
        [Postgres, Memory],
        [Memory, Sqlite],
    ])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Made anew from its entries a log is the same.
    #[test]
    fn made_anew_it_is_the_same(engine in one(), all in said()) {
        let mut log = engine.log();
        say(&mut *log, &all);
        let (before, exported) = (everything(&*log), export(&*log));
        prop_assert_eq!(log.faults().unwrap(), Vec::new());
        log.rebuild().unwrap();
        prop_assert_eq!(everything(&*log), before);
        prop_assert_eq!(export(&*log), exported);
        prop_assert_eq!(log.faults().unwrap(), Vec::new());
    }

    /// A log goes into an empty one unchanged, and a second time adds nothing.
    #[test]
    fn a_copy_is_equal(engines in two(), all in said()) {
        let [mut a, mut b] = engines.map(Engine::log);
        say(&mut *a, &all);
        let (text, count) = (export(&*a), a.count().unwrap());
        let photos = text.matches("\n{\"photo\"").count() as u64;
        for merged in [Merged { new: count, photos, ..Merged::default() }, Merged { known: count, ..Merged::default() }] {
            prop_assert_eq!(import(&mut *b, text.as_bytes()).unwrap(), merged);
            prop_assert_eq!(export(&*b), text.clone());
            prop_assert_eq!(everything(&*b), everything(&*a));
            prop_assert_eq!(b.faults().unwrap(), Vec::new());
        }
    }

    /// Two logs that began as one and went their own ways are equal after each took in the other, and no length lies
    /// below zero.
    #[test]
    fn two_logs_meet(engines in two(), common in said(), left in said(), right in said()) {
        let [mut a, mut b] = engines.map(Engine::log);
        say(&mut *a, &common);
        import(&mut *b, export(&*a).as_bytes()).unwrap();
        say(&mut *a, &left);
        say(&mut *b, &right);
        let (from_a, from_b) = (export(&*a), export(&*b));
        import(&mut *a, from_b.as_bytes()).unwrap();
        import(&mut *b, from_a.as_bytes()).unwrap();
        prop_assert_eq!(export(&*a), export(&*b));
        prop_assert_eq!(everything(&*a), everything(&*b));
        prop_assert!(a.fabrics().unwrap().iter().all(|fabric| fabric.length.is_none_or(|length| length >= Length::ZERO)));
        prop_assert_eq!(a.faults().unwrap(), Vec::new());
    }

    /// The order in which entries arrive does not matter, one by one.
    #[test]
    fn any_order_will_do(engines in two(), all in said(), turn in any::<usize>()) {
        let [mut a, mut b] = engines.map(Engine::log);
        say(&mut *a, &all);
        let mut entries: Vec<Entry> = lines(&*a).iter().map(|line| serde_json::from_str(line).unwrap()).collect();
        let turn = turn % entries.len().max(1);
        entries.rotate_left(turn);
        for entry in entries.into_iter().rev() {
            prop_assert_eq!(b.merge(&mut core::iter::once(Ok(entry))).unwrap().new, 1);
        }
        prop_assert_eq!(everything(&*a), everything(&*b));
        let ids = |log: &dyn LogWithDrafts| lines(log).iter().map(|line| serde_json::from_str::<Entry>(line).unwrap().id).collect::<Vec<_>>();
        let mut arrived: Vec<Id> = arrivals(&*b, 0).into_iter().map(|(_, id)| id).collect();
        arrived.sort();
        prop_assert_eq!(arrived, ids(&*b));
    }

    /// An export in which bytes were changed, lost or doubled goes in whole or not at all, and what was there stays.
    #[test]
    fn a_damaged_export_is_all_or_nothing(
        engines in two(), all in said(), here in said(), at in any::<prop::sample::Index>(), length in 1..90_usize, byte in any::<u8>(),
        how in 0..4_u8,
    ) {
        let [mut a, mut b] = engines.map(Engine::log);
        say(&mut *a, &all);
        say(&mut *b, &here);
        let mut bytes = export(&*a).into_bytes();
        let from = at.index(bytes.len());
        let to = (from + length).min(bytes.len());
        match how {
            0 => bytes[from] = byte,
            1 => drop(bytes.drain(from..to)),
            2 => bytes.truncate(from),
            _ => {
                let twice = bytes[from..to].to_vec();
                bytes.splice(from..from, twice);
            }
        }
        let before = lines(&*b);
        match import(&mut *b, &bytes) {
            Err(error) => {
                prop_assert!(!imported(&error).contains('\n'), "{}", imported(&error));
                prop_assert_eq!(lines(&*b), before);
            }
            Ok(merged) => {
                let after = lines(&*b);
                prop_assert!(before.iter().all(|line| after.contains(line)));
                prop_assert_eq!(after.len() as u64, before.len() as u64 + merged.new);
                prop_assert_eq!(import(&mut *b, &bytes).unwrap().new, 0);
                // What went in comes out in a form that goes in again.
                import(&mut *Engine::Memory.log(), export(&*b).as_bytes()).unwrap();
            }
        }
        prop_assert_eq!(b.faults().unwrap(), Vec::new());
    }

    /// Any bytes as an export: refused or read, never a panic, and a refusal leaves the log as it was.
    #[test]
    fn any_bytes_as_an_export(bytes in prop::collection::vec(any::<u8>(), 0..400), headed in any::<bool>(), engine in one()) {
        let mut input = if headed { b"{\"tenter\":\"log\",\"format\":1}\n".to_vec() } else { Vec::new() };
        input.extend(bytes);
        let mut store = engine.log();
        if let Err(error) = import(&mut *store, &input) {
            prop_assert!(!imported(&error).contains('\n'));
            prop_assert_eq!(store.count().unwrap(), 0);
        }
    }

    /// The table of tests comes back reading for reading, under the same identifiers and, without them, under new ones;
    /// typed readings twice are there once.
    #[test]
    fn a_table_loses_no_reading(engines in two(), all in said(), odd in prop::collection::vec(160_000..640_000_i32, 1..10)) {
        let [mut a, mut b] = engines.map(Engine::log);
        say(&mut *a, &[Said::Add("first".to_owned())]);
        // Who pulled is a name in a table, and several may have it.
        let all: Vec<Said> = all.into_iter().filter(|one| !matches!(one, Said::Give(..))).collect();
        say(&mut *a, &all);
        let mut steps = PullTest::new(Length::from_steps(160_000), Grain::Bias).unwrap();
        for one in odd {
            steps.add_pull(Length::from_steps(one)).unwrap();
        }
        let fabrics = a.fabrics().unwrap();
        let pulled = jiff::Timestamp::from_second(1_700_000_000).unwrap();
        let fabric = fabrics.first().map(|fabric| fabric.id);
        let (tag, device, note) = (None, None, "=note".to_owned());
        let (pulled_by, as_read) = (None, Vec::new());
        let said = Tested { fabric, tag, pulled, clock_unset: false, device, pulled_by, marks: Marks::default(), note, as_read, test: steps };
        a.add(&[Fact::TestStored(said.clone())]).unwrap();
        b.merge(&mut fabrics.iter().map(|fabric| {
            let (tag, name) = (Some(fabric.tag.number()), Some(fabric.name.clone()));
            Ok(Entry::new(fabric.id, Fact::FabricAdded(FabricChange { tag, name, ..FabricChange::default() })))
        })).unwrap();
        let mut tests = a.tests(WhichTests::All).unwrap();
        for with_id in [true, false] {
            let mut table = ::csv::Writer::from_writer(Vec::new());
            table.write_record(TESTS.iter().skip(usize::from(!with_id))).unwrap();
            // A row without identifier needs a fabric.
            tests.retain(|test| with_id || test.said.fabric.is_some());
            for test in &tests {
                let of = fabrics.iter().find(|fabric| Some(fabric.id) == test.said.fabric);
                let row = row_of(test, of, (&a.repeatability().unwrap(), &a.people().unwrap())).unwrap();
                table.write_record(row.iter().skip(usize::from(!with_id))).unwrap();
            }
            let text = String::from_utf8(table.into_inner().unwrap()).unwrap();
            let rows = csv::entries(text.as_bytes(), &*b, trust(true), tenter::log::Here::desk()).unwrap();
            let read: Vec<_> = rows.iter().map(|row| match &row.fact {
                Fact::TestStored(said) => said.clone(),
                other => panic!("{other:?}"),
            }).collect();
            // Which doubts were stood by is no column: a test of another log says nothing of it, and of a typed one it is found
            // anew, as the core has it.
            let found = |test: &StoredTest| {
                let as_read = if with_id { Vec::new() } else { doubted(&test.said.test) };
                Tested { as_read, ..test.said.clone() }
            };
            prop_assert_eq!(&read, &tests.iter().map(found).collect::<Vec<_>>());
            // Whoever does not stand by them has none stored.
            let unasked = csv::entries(text.as_bytes(), &*b, trust(false), tenter::log::Here::desk());
            prop_assert_eq!(unasked.is_ok(), read.iter().all(|said| said.as_read.is_empty()));
            let count = rows.len() as u64;
            prop_assert_eq!(b.merge(&mut rows.into_iter().map(Ok)).unwrap(), Merged { new: count, ..Merged::default() });
            let again = csv::entries(text.as_bytes(), &*b, trust(true), tenter::log::Here::desk()).unwrap();
            prop_assert_eq!(b.merge(&mut again.into_iter().map(Ok)).unwrap(), Merged { known: count, ..Merged::default() });
        }
    }

    /// Any text as a table: refused or read, never a panic.
    #[test]
    fn any_text_as_a_table(text in any::<String>(), cells in prop::collection::vec("[-0-9a-z@,.; ']{0,12}", 7)) {
        let store = Engine::Memory.log();
        let _ = csv::entries(text.as_bytes(), &*store, trust(true), tenter::log::Here::desk());
        let headed = format!("tag,pulled,gauge,readings,held,grain,note\n{}\n{text}", cells.join(","));
        let _ = csv::entries(headed.as_bytes(), &*store, trust(true), tenter::log::Here::desk());
    }
}
