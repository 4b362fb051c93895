//! Killed at any instant (SIGKILL, as a power cut would): what was said to be stored is stored, once; an import is
//! whole or not there at all.

use core::time::Duration;
use std::fmt::Write as _;
use std::fs;
use std::time::Instant;

use crate::desk::Desk;
use crate::engine::{Engine, Home, on_every_shared_engine};
use crate::kill::{kills, started_and_killed};

on_every_shared_engine!(
    an_import_is_whole_or_not_there,
    what_was_said_to_be_added_is_there_once,
    what_is_remembered_is_there_once,
    what_two_writers_said_is_there_once,
);

/// How many runs of each of two writers are killed: 500 with `TENTER_THOROUGH=1`.
fn kills_of_each() -> u32 {
    if std::env::var_os("TENTER_THOROUGH").is_some() { 500 } else { 24 }
}

/// The verbs that write; `@` is a word that stands nowhere else.
const WRITES: [&str; 12] = [
    "cloth add @ --length 2m",
    "cloth edit 1 --place @",
    "cloth cut 1 1cm --note @",
    "cloth learned 1 --note @",
    "cloth picture 1 red.png --note @",
    "pull 1 --marks 10cm --to 11cm --note @",
    "pull 1 10cm 11cm 11.1cm --settling --by Ruth --note @",
    "pattern add @ A main --crosswise 5%..",
    "pattern edit coat - main --note @",
    "make start coat --use main=1 --name @",
    "wash 1 --lengthwise 50cm-49cm --note @",
    "cloth retire 2 --note @",
];

/// Two windows at once, each killed over and over whatever it writes: what either was told is stored is there once, and what
/// nobody was told of is there once or not at all.
fn what_two_writers_said_is_there_once(engine: Engine) {
    let (desk, home) = (Desk::new(), engine.home());
    desk.swatch("red.png", [200, 30, 40]);
    for line in ["cloth add drill --length 500m --width 150cm --washed", "cloth add rib", "pattern add coat - main"] {
        desk.ok(home.address(), &line.split(' ').collect::<Vec<_>>());
    }
    let begun = Instant::now();
    desk.ok(home.address(), &["cloth", "learned", "1", "--note", "first"]);
    // Each has to wait for the other.
    let limit = begun.elapsed().mul_f64(2.5);
    let writer = |lane: &'static str| {
        let (desk, home) = (&desk, &home);
        move || {
            let mut promised = Vec::new();
            for kill in 0..kills_of_each() {
                let token = format!("{lane}{kill}x");
                let verb = WRITES[kill as usize % WRITES.len()];
                let words: Vec<&str> = verb.split(' ').map(|word| if word == "@" { &token } else { word }).collect();
                let said = killed(desk, home.address(), &words, kill / WRITES.len() as u32 * 7 + kill, limit);
                promised.extend((!said.is_empty()).then_some(token));
            }
            promised
        }
    };
    let promised = std::thread::scope(|scope| {
        let both = ["left", "right"].map(|lane| scope.spawn(writer(lane)));
        both.map(|one| one.join().unwrap()).concat()
    });
    let log = home.open();
    assert_eq!(log.faults().unwrap(), Vec::new());
    let mut exported = String::new();
    log.each_entry(&mut |line| {
        exported.push_str(line);
        Ok(())
    })
    .unwrap();
    let count = |token: &str| exported.matches(&format!("\"{token}\"")).count();
    for token in &promised {
        assert_eq!(count(token), 1, "{token}");
    }
    let all =
        ["left", "right"].into_iter().flat_map(|lane| (0..kills_of_each()).map(move |kill| format!("{lane}{kill}x")));
    let stored = all.map(|token| count(&token)).inspect(|count| assert!(*count <= 1)).sum::<usize>();
    let kills = 2 * kills_of_each();
    println!(
        "{engine:?}, {kills} kills of two writers: {} were told that it is stored, {stored} were stored",
        promised.len()
    );
    assert!(!promised.is_empty() && stored < kills as usize, "no kill came before the end, or all");
}

/// What the program had said when it was killed.
fn killed(desk: &Desk, log: &str, arguments: &[&str], count: u32, limit: Duration) -> String {
    started_and_killed(desk.command(log, arguments), count, limit).0
}

/// An export of many fabrics, made by the program from a log that was filled by hand.
fn export(desk: &Desk, fabrics: u32) -> u64 {
    let mut lines = String::from("{\"tenter\":\"log\",\"format\":1}\n");
    for fabric in 0..fabrics {
        writeln!(
            lines,
            "{{\"id\":\"01M0{fabric:022}\",\"kind\":\"fabric-added\",\"tag\":{},\"name\":\"cloth {fabric}\"}}",
            fabric + 1
        )
        .unwrap();
    }
    writeln!(lines, "{{\"end\":\"log\",\"entries\":{fabrics}}}").unwrap();
    fs::write(desk.path("many.jsonl"), lines).unwrap();
    u64::from(fabrics)
}

fn an_import_is_whole_or_not_there(engine: Engine) {
    let (desk, kills) = (Desk::new(), kills());
    let entries = export(&desk, 1500);
    let whole_import = |home: &Home| {
        let begun = Instant::now();
        desk.ok(home.address(), &["import", "many.jsonl"]);
        begun.elapsed().mul_f64(1.2)
    };
    let mut limit = whole_import(&engine.home());
    let (mut promised, mut whole) = (0, 0);
    for kill in 0..kills {
        let home = engine.home();
        let said = killed(&desk, home.address(), &["import", "many.jsonl"], kill, limit);
        let count = home.open().count().unwrap();
        assert!(count == 0 || count == entries, "half an import: {count} of {entries} after kill {kill}");
        assert!(said.is_empty() || count == entries, "said '{said}' and holds {count}");
        promised += u32::from(!said.is_empty());
        whole += u32::from(count == entries);
        // What was not there comes now, and once; how long that takes now says how long to wait next time.
        let took = whole_import(&home);
        if count == 0 {
            limit = (limit + took) / 2;
        }
        assert_eq!(home.open().count().unwrap(), entries);
    }
    println!("{engine:?}, {kills} kills: {promised} had said that it was stored, {whole} were stored");
    assert!(whole < kills, "no kill came before the end");
    assert!(promised > 0, "every kill came before the end");
}

fn what_was_said_to_be_added_is_there_once(engine: Engine) {
    let (desk, home, kills) = (Desk::new(), engine.home(), kills());
    let begun = Instant::now();
    desk.ok(home.address(), &["cloth", "add", "first"]);
    let limit = begun.elapsed().mul_f64(1.3);
    let mut promised = Vec::new();
    for kill in 0..kills {
        let name = format!("cloth {kill}");
        if killed(&desk, home.address(), &["cloth", "add", &name], kill, limit).contains("added") {
            promised.push(name);
        }
    }
    let fabrics = home.open().fabrics().unwrap();
    let count = |name: &str| fabrics.iter().filter(|fabric| fabric.name == name).count();
    for name in &promised {
        assert_eq!(count(name), 1, "{name}");
    }
    assert!(fabrics.iter().all(|fabric| count(&fabric.name) == 1), "something is there twice");
    assert!(!promised.is_empty() && fabrics.len() <= kills as usize, "no kill came before the end, or all");
    let mut tags: Vec<u16> = fabrics.iter().map(|fabric| fabric.tag.number()).collect();
    tags.dedup();
    assert_eq!(tags.len(), fabrics.len(), "each tag once");
    println!(
        "{engine:?}, {kills} kills: {} had said that it was stored, {} were stored",
        promised.len(),
        fabrics.len() - 1
    );
}

/// A photograph, what was learned, a garment, its cut and its end: what was said to be stored is there once, and no entry
/// names a photograph that is not there.
fn what_is_remembered_is_there_once(engine: Engine) {
    // Four kinds of runs take turns.
    let (desk, home, kills) = (Desk::new(), engine.home(), 2 * kills());
    for line in ["cloth add drill --length 500m --width 150cm --washed", "pattern add coat - main"] {
        desk.ok(home.address(), &line.split(' ').collect::<Vec<_>>());
    }
    desk.ok(home.address(), &["pattern", "edit", "coat", "-", "main", "--cloth", "2m at 150cm"]);
    let open = || home.open();
    let begun = Instant::now();
    desk.ok(home.address(), &["cloth", "learned", "1", "--note", "first"]);
    let limit = begun.elapsed().mul_f64(1.3);
    let (mut promised, mut begun) = (Vec::new(), 0);
    for kill in 0..kills {
        let note = format!("note {kill}");
        match kill % 4 {
            0 => {
                let file = format!("{kill}.png");
                desk.swatch(&file, [u8::try_from(kill % 256).unwrap(), 90, 30]);
                let said =
                    killed(&desk, home.address(), &["cloth", "picture", "1", &file, "--note", &note], kill / 4, limit);
                promised.extend(said.contains(&note).then_some(note));
            }
            1 => {
                let said = killed(&desk, home.address(), &["cloth", "learned", "1", "--note", &note], kill / 4, limit);
                promised.extend(said.contains(&note).then_some(note));
            }
            2 => {
                let words = ["make", "start", "coat", "--use", "main=1", "--name", &note];
                let said = killed(&desk, home.address(), &words, kill / 4, limit);
                promised.extend(said.contains("begun").then_some(note));
                begun = open().garments().unwrap().iter().map(|garment| garment.number).max().unwrap_or(0);
            }
            _ if begun > 0 => {
                let number = begun.to_string();
                let said = killed(&desk, home.address(), &["make", "cut", &number], kill / 4, limit);
                let cuts = open().fabrics().unwrap()[0].cuts.clone();
                let garment = open().garments().unwrap().into_iter().find(|one| one.number == begun).unwrap().id;
                let cut = cuts.iter().filter(|cut| cut.garment == garment).count();
                assert!(cut <= 1 && (cut == 1 || !said.starts_with("cut")), "said '{said}', cut {cut} times");
            }
            _ => {}
        }
    }
    let store = open();
    assert_eq!(store.faults().unwrap(), Vec::new());
    let fabric = &store.fabrics().unwrap()[0];
    let garments = store.garments().unwrap();
    let notes = fabric.photos.iter().map(|photo| &photo.said.note);
    let notes = notes.chain(fabric.lessons.iter().map(|lesson| &lesson.learned.note));
    let notes: Vec<&String> = notes.chain(garments.iter().map(|garment| &garment.name)).collect();
    for note in &promised {
        assert_eq!(notes.iter().filter(|one| **one == note).count(), 1, "{note}");
    }
    for photo in &fabric.photos {
        for name in [photo.said.photo, photo.said.thumbnail] {
            assert_eq!(store.photo(name).unwrap().map(|photo| photo.name()), Some(name));
        }
    }
    let cut = i32::try_from(fabric.cuts.len()).unwrap() * 2000;
    assert_eq!(fabric.length, Some(tenter_core::Length::from_steps((500_000 - cut) * 1600)));
    assert!(!promised.is_empty() && !fabric.cuts.is_empty(), "every kill came before the end");
    println!(
        "{engine:?}, {kills} kills: {} had said that it was stored, {} were cut",
        promised.len(),
        fabric.cuts.len()
    );
}
