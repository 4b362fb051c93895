//! Laws of export and import, on any log and any bytes.

use proptest::prelude::*;
use tenter::input::{csv, exported::Exported};
use tenter::log::{Construction, Entry, FabricChange, Fact, Ids};
use tenter::store::{Read as _, Store as _, sqlite::Sqlite};
use tenter_core::Length;

/// What one side of a workroom says: fabrics, and things about them.
#[derive(Clone, Debug)]
enum Said {
    Add(String),
    Cut(usize, u16),
    Drop(usize),
    Restore(usize),
    Rename(usize, String),
}

fn said() -> impl Strategy<Value = Vec<Said>> {
    let one = prop_oneof![
        any::<String>().prop_map(Said::Add),
        (any::<usize>(), any::<u16>()).prop_map(|(at, mm)| Said::Cut(at, mm)),
        any::<usize>().prop_map(Said::Drop),
        any::<usize>().prop_map(Said::Restore),
        (any::<usize>(), any::<String>()).prop_map(|(at, name)| Said::Rename(at, name)),
    ];
    prop::collection::vec(one, 0..20)
}

fn say(store: &mut Sqlite, all: &[Said]) {
    for one in all {
        store
            .change(&mut |read| {
                let fabrics = read.fabrics()?;
                let at = |index: &usize| fabrics.get(index % fabrics.len().max(1)).map(|fabric| fabric.id);
                let note = String::new;
                let fact = match one {
                    Said::Add(name) => Some(Fact::FabricAdded(FabricChange {
                        tag: u16::try_from(fabrics.len() + 1).ok(),
                        name: Some(name.clone()),
                        construction: Some(Construction::Knit),
                        length: Some(Some(tenter::log::json::Mm(Length::from_mm(2000)))),
                        ..FabricChange::default()
                    })),
                    Said::Cut(index, mm) => at(index).map(|fabric| Fact::FabricCut {
                        fabric,
                        length: Length::from_steps(i32::from(*mm)),
                        note: note(),
                    }),
                    Said::Drop(index) => at(index).map(|fabric| Fact::FabricDropped { fabric, note: note() }),
                    Said::Restore(index) => at(index).map(|fabric| Fact::FabricRestored { fabric }),
                    Said::Rename(index, name) => at(index).map(|fabric| Fact::FabricChanged {
                        fabric,
                        change: FabricChange { name: Some(name.clone()), ..FabricChange::default() },
                    }),
                };
                Ok(fact.into_iter().collect())
            })
            .unwrap();
    }
}

fn lines(store: &Sqlite) -> Vec<String> {
    let mut lines = Vec::new();
    store
        .each_entry(&mut |line| {
            lines.push(line.to_owned());
            Ok(())
        })
        .unwrap();
    lines
}

fn merge(store: &mut Sqlite, lines: &[String]) -> u64 {
    let entries: Vec<Entry> = lines.iter().map(|line| serde_json::from_str(line).unwrap()).collect();
    store.merge(&mut entries.into_iter().map(Ok)).unwrap().new
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// A log goes into an empty one unchanged, and a second time adds nothing.
    #[test]
    fn a_copy_is_equal(all in said()) {
        let (mut a, mut b) = (Sqlite::in_memory().unwrap(), Sqlite::in_memory().unwrap());
        say(&mut a, &all);
        let entries = lines(&a);
        prop_assert_eq!(merge(&mut b, &entries), entries.len() as u64);
        prop_assert_eq!(lines(&b), entries.clone());
        prop_assert_eq!(b.fabrics().unwrap(), a.fabrics().unwrap());
        prop_assert_eq!(merge(&mut b, &entries), 0);
        prop_assert_eq!(b.fabrics().unwrap(), a.fabrics().unwrap());
    }

    /// Two logs that began as one and went their own ways are equal after each took in the other, and no length lies
    /// below zero.
    #[test]
    fn two_logs_meet(common in said(), left in said(), right in said()) {
        let (mut a, mut b) = (Sqlite::in_memory().unwrap(), Sqlite::in_memory().unwrap());
        say(&mut a, &common);
        merge(&mut b, &lines(&a));
        say(&mut a, &left);
        say(&mut b, &right);
        let (from_a, from_b) = (lines(&a), lines(&b));
        merge(&mut a, &from_b);
        merge(&mut b, &from_a);
        prop_assert_eq!(lines(&a), lines(&b));
        prop_assert_eq!(a.fabrics().unwrap(), b.fabrics().unwrap());
        prop_assert!(a.fabrics().unwrap().iter().all(|fabric| fabric.length.is_none_or(|length| length >= Length::ZERO)));
        prop_assert_eq!(a.faults().unwrap(), Vec::<String>::new());
    }

    /// The order in which entries arrive does not matter.
    #[test]
    fn any_order_will_do(all in said(), turn in any::<usize>()) {
        let (mut a, mut b) = (Sqlite::in_memory().unwrap(), Sqlite::in_memory().unwrap());
        say(&mut a, &all);
        let mut entries = lines(&a);
        let turn = turn % entries.len().max(1);
        entries.rotate_left(turn);
        for entry in entries.chunks(1).rev() {
            merge(&mut b, entry);
        }
        prop_assert_eq!(a.fabrics().unwrap(), b.fabrics().unwrap());
    }

    /// Any bytes as an export: refused or read, never a panic, and a refusal leaves the log as it was.
    #[test]
    fn any_bytes_as_an_export(bytes in prop::collection::vec(any::<u8>(), 0..400), headed in any::<bool>()) {
        let mut input = if headed { b"{\"tenter\":\"log\",\"format\":1}\n".to_vec() } else { Vec::new() };
        input.extend(bytes);
        let mut store = Sqlite::in_memory().unwrap();
        let refused = match Exported::begin(input.as_slice(), "any") {
            Err(error) => Some(error),
            Ok(mut entries) => store.merge(&mut entries).err(),
        };
        if let Some(error) = refused {
            prop_assert!(!error.to_string().contains('\n'));
            prop_assert_eq!(store.count().unwrap(), 0);
        }
    }

    /// Any text as a table: refused or read, never a panic.
    #[test]
    fn any_text_as_a_table(text in any::<String>(), cells in prop::collection::vec("[-0-9a-z@,.; ']{0,12}", 7)) {
        let store = Sqlite::in_memory().unwrap();
        let _ = csv::entries(&text, &store, Ids::now());
        let headed = format!("tag,pulled,gauge,readings,held,grain,note\n{}\n{text}", cells.join(","));
        let _ = csv::entries(&headed, &store, Ids::now());
    }
}
