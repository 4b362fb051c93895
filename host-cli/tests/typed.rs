//! What people type, as it was found on the first release: each line works and means what its neighbour says, or is refused
//! in one line that says what to type instead.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use program::{Program, Ran, words};

fn run(program: &Program, line: &str) -> Ran {
    program.run(&words(line).iter().map(String::as_str).collect::<Vec<_>>())
}

/// The lines that are typed and their neighbours in the words of the help print the same.
#[test]
fn what_people_type_means_what_the_help_says() {
    let program = Program::demo();
    for (typed, meant) in [
        // Grains.
        ("check 25 26.5 --grain weft", "check 25 26.5 --grain crosswise"),
        ("check 25 26.5 --grain FILL", "check 25 26.5 --grain crosswise"),
        ("check 25 26.5 --grain Crossgrain", "check 25 26.5 --grain crosswise"),
        ("check 25 26.5 --grain warp", "check 25 26.5 --grain lengthwise"),
        ("check 25 26.5 --grain Selvedge", "check 25 26.5 --grain lengthwise"),
        ("check 25 26.5 --grain 'true bias'", "check 25 26.5 --grain bias"),
        ("check along 25 26.5", "check 25 26.5 --grain lengthwise"),
        ("check 25 26.5 -g straight", "check 25 26.5 --grain lengthwise"),
        // Constructions, ways of holding, units.
        ("check 10 12 --construction Jersey", "check 10 12 --construction knit"),
        ("check 10 12 --construction TWILL", "check 10 12 --construction woven"),
        ("check 25 26.5 --held double", "check 25 26.5 --held folded"),
        ("check 25 26.5 --held 'Single layer'", "check 25 26.5 --held flat"),
        // Percentages.
        ("check 25cm 26.5cm --wants '5 percent'", "check 25cm 26.5cm --wants 5%"),
        ("check 25cm 26.5cm 5 per cent", "check 25cm 26.5cm --wants 5%"),
        ("check 25cm 26.5cm --wants 'about 5%'", "check 25cm 26.5cm --wants 5%"),
        ("check 25cm 26.5cm --wants 'at least 5 %'", "check 25cm 26.5cm --wants 5%"),
        ("check 25cm 26.5cm --wants 4-7%", "check 25cm 26.5cm --wants 4%..7%"),
        ("check 25cm 26.5cm --wants '4 to 7 %'", "check 25cm 26.5cm --wants 4%..7%"),
        ("check 25cm 26.5cm --wants 'up to 7%'", "check 25cm 26.5cm --wants ..7%"),
        // Lengths.
        ("check 25cms 26.5 26.6 5%", "check --marks 25cm --to 26.5cm --to 26.6cm --wants 5%"),
        ("check '25 centimetres' 26,5 26.6 cm 5 %", "check --marks 25cm --to 26.5cm --to 26.6cm --wants 5%"),
        ("check -m 25cm --to 26.5cm 26.6cm -w 5%", "check --marks 25cm --to 26.5cm --to 26.6cm --wants 5%"),
        ("check 4in 4 1/4 4 1/8 @ 1 min", "check --marks 4in --to '4 1/4in' --back '4 1/8in@60s'"),
        ("wash --lengthwise 50cm-48.5cm", "wash --lengthwise '50cm to 48.5cm'"),
        ("wash --warp '50 -> 48.5'", "wash --lengthwise '50cm to 48.5cm'"),
        // Cloths, patterns and views by a part of the name.
        ("cloth show corduroy", "cloth show 4"),
        ("cloth show '#4'", "cloth show 4"),
        ("SHOW Vestry", "cloth show 1"),
        ("pair curtain 'knit double' 60cm", "pair 9 13 --along 60cm"),
        ("handle PONTE", "handle 10"),
        ("size --fabric ponte --girth hip=104cm/101cm", "size --cloth 10 --girth hip=104cm/101cm"),
        ("fit TROUSERS 'View A'", "fit 'Choir trousers' A"),
        ("fit choir a m=vestry", "fit 'Choir trousers' A --sheet --use main=1"),
        ("pattern show coat", "pattern show 'Play coat'"),
        ("fit choir trousers view a", "fit 'Choir trousers' A"),
        ("fit play COAT", "fit 'Play coat' -"),
        ("check 25cm to 26.5 wants 5%", "check --marks 25cm --to 26.5cm --wants 5%"),
        // Elastic and zips.
        ("size --elastic Knitted --place CUFF --measure 17cm", "size --elastic soft --place wrist --measure 17cm"),
        ("size --elastic soft --place sleeve --measure 17cm", "size --elastic soft --place wrist --measure 17cm"),
        ("size --elastic soft --place Ankle --measure 22cm", "size --elastic soft --place leg --measure 22cm"),
        ("size --zip 31in --zip-ends separating", "size --zip 31in --zip-ends open"),
        ("size --zip 31in --zip-ends Open-Ended", "size --zip 31in --zip-ends open"),
        // Commands and options.
        ("list", "cloth list"),
        ("HELP Check", "check --help"),
        ("stash list --Owned", "cloth list --owned"),
        ("check 25cm 26.5cm --units Inches", "check 25cm 26.5cm --units in"),
        ("check --gauge 25cm --pulled 26.5cm --want 5%", "check --marks 25cm --to 26.5cm --wants 5%"),
    ] {
        let (typed_ran, meant_ran) = (run(&program, typed), run(&program, meant));
        assert!(meant_ran.err.is_empty(), "{meant}: {}", meant_ran.err);
        let plain = |ran: &Ran| {
            let lines: Vec<&str> = ran.out.lines().filter(|line| !line.contains("numbers without a unit")).collect();
            (lines.join("\n"), ran.code)
        };
        assert_eq!(plain(&typed_ran), plain(&meant_ran), "{typed}: {}", typed_ran.err);
    }
}

/// What changes the log, by what it changes.
#[test]
fn what_people_type_is_stored_as_meant() {
    let program = Program::new();
    let ok = |line: &str| {
        let ran = run(&program, line);
        assert!(matches!(ran.code, Some(0 | 1 | 3)) && ran.err.is_empty(), "{line}: {ran:?}");
    };
    ok("ADD 'Aisle rib' Interlock 2.5yds of 58in --weight 200gsm --fiber cotton");
    let cloth = program.shown("1");
    assert_eq!((&cloth["construction"], &cloth["fibre"]), (&"knit".into(), &"cotton".into()));
    // A yard is 914.4 mm, an inch 25.4 mm (exact, 1959).
    assert_eq!(
        (&cloth["length_mm"], &cloth["width_mm"], &cloth["g_per_m2"]),
        (&2286.0.into(), &1473.2.into(), &200.0.into())
    );
    ok("pull aisle rib across 10 11.2 11.3 11.2 10.1@1m 10% along 10 10.5 10.6 10.5 --at '27 Nov 2025'");
    ok("pull 1 10 11.2 11.3 11.2 --at yesterday");
    let tests = program.tests("1");
    assert_eq!(tests.len(), 3);
    assert!(tests.iter().any(|test| test["grain"] == "lengthwise" && test["gauge_mm"] == 100.0), "{tests:?}");
    ok("pattern add 'Choir tunic' A --garment tights --cloth '1.5m of 150cm' main");
    ok("pattern add - 'View B' 20-30% knit 1.5m of 150cm");
    let shown = run(&program, "pattern show tunic b --json").json();
    let role = &shown["roles"][0];
    assert_eq!((&role["role"], &role["view"]), (&"main".into(), &"View B".into()));
    assert_eq!((&role["cloth_length_mm"], &role["cloth_width_mm"]), (&1500.0.into(), &1500.0.into()));
    ok("cloth remove rib");
    ok("cloth restore rib");
}

/// Refused in one line that says what to type; nothing is stored.
#[test]
fn what_could_mean_two_things_is_asked() {
    let program = Program::demo();
    let before = program.log_entries();
    for (line, told) in [
        ("check 25 26.5 --wants slight", "it means 2%..12% in table own, 2%..12% in table own-woven; type the figures"),
        (
            "check 25 26.5 --wants Moderate",
            "tables differ: 25%..50% in table own, 18.75%..37.5% in table utah-extension",
        ),
        ("check 25 26.5 --wants 0.05", "type 5%"),
        ("check 25 26.5 --wants '20 to 30'", "can be read two ways; type percentages such as 20%..30%, or lengths"),
        ("check 25 26.5 5% 6%", "5% and 6% do not go together"),
        ("check 25 26.5 5% -w 6%", "5% and --wants 6% do not go together"),
        ("check 25 26.5 along 25 25.4", "type another tenter check for the other grain"),
        ("check 4in 41/8", "type 4 1/8 or 5 1/8"),
        ("check 25 26.5 --grain 'on the cross'", "type one of lengthwise, crosswise, bias"),
        ("cloth show jersey", "'jersey' could be 9 Curtain jersey, 11 Gym hall jersey; type the number"),
        ("cloth show moor", "no cloth is called 'moor'; tenter cloth list"),
        ("cloth show 99", "no cloth has tag 99"),
        ("fit jacket", "no pattern is called 'jacket'; there are: Choir trousers, Play coat"),
        ("fit choir c", "no view is called 'c'; there are: A, B"),
        ("cloth show slate rib", "unexpected word 'rib'; type a name of several words in quotes"),
        ("25 26.5 26.6 26.5 5%", "type the command first, such as tenter check 25"),
        (
            "pattern add X A main --garment jacket",
            "type one of: trousers, skirt or coat with slight stretch; tailored wear",
        ),
        ("pattern add X A main --movement elbow", "type one of: elbow, lengthwise; elbow, around"),
        ("pattern add X A main lovely", "the word 'lovely': it says nothing here"),
        ("cloth add X knit 2", "the word '2': it says nothing here"),
        ("size --elastic soft --place 'leg opening' --measure 50cm", "type one of leg, swim-leg-front, swim-leg-back"),
        ("pair 1 2 60cm --stitch zigzag", "type one of narrow-zigzag, wide-zigzag"),
        ("pull 7 25 26.5 26.6 --at 3/4/2026", "it could be 3 April or 4 March; type 2026-04-03 or 2026-03-04"),
        ("pull 7 25 26.5 26.6 --at 'last week'", "type a day such as yesterday, 2025-03-20"),
        ("pull 7 25 26.5 26.6 --at 1/1/2999", "that day lies ahead"),
        ("test 25 26.5", "type tenter check 25 26.5 26.6 26.5 5% to judge a test, tenter pull 7 25"),
        ("measure", "type tenter check"),
        ("delete 7", "tenter cloth retire 7 for a cloth"),
        ("remove 7", "tenter cloth retire 7 for a cloth"),
        ("undo", "tenter pull 7 --retire TEST for a test, tenter cloth cut 7 --undo for a cut"),
        ("edit 7", "type tenter cloth edit 7"),
        ("buy 6", "type tenter cloth edit 6 --bought 2m"),
        ("cloth buy 6", "type tenter cloth edit 6 --bought 2m"),
        ("pair 1 2", "missing <LENGTH>"),
        ("import x.jsonl --as-read", "add --csv"),
    ] {
        let ran = run(&program, line);
        assert!(ran.err.contains(told), "{line}: {}{}", ran.err, ran.out);
        assert_eq!((ran.code, ran.err.lines().count(), ran.out.as_str()), (Some(2), 1, ""), "{line}");
    }
    // A ratio taken for a stretch is read, and doubted.
    for line in ["check 25 26.5 26.6 26.5 105%", "check 10 16 16.1 16 160%"] {
        let ran = run(&program, line);
        assert!(ran.code == Some(3) && ran.out.starts_with("READ AGAIN"), "{line}: {ran:?}");
    }
    assert_eq!(program.log_entries(), before);
}

/// A cloth and its tests are added whole or not at all.
#[test]
fn a_doubted_test_adds_no_cloth() {
    let program = Program::new();
    let ran = run(&program, "add 'Aisle twill' woven 2m across 10 17");
    assert_eq!((ran.code, program.log_entries()), (Some(3), 0), "{ran:?}");
    let ran = run(&program, "add 'Aisle twill' woven 2m across 25 26.5 26.6 26.5 along 25 24");
    assert_eq!((ran.code, program.log_entries()), (Some(2), 0), "{ran:?}");
}

/// In a table too: names, ordinary days, words, and lengths as they are written on paper.
#[test]
fn a_table_as_people_type_it() {
    let program = Program::with_cloth();
    let file = program.path().with_file_name("class.csv");
    let rows = "tag;pulled;grain;gauge;held;readings\n\
                doorway;27.11.2025;Weft;10 cm;Double;11,2 cm 11,3 10.1 @ 1 min\n\
                Vestry Twill;27 Nov 2025 14:30;warp;4in;single;4 1/4 4 1/8@60s\n";
    std::fs::write(&file, rows).unwrap();
    let import = || program.run(&["import", file.to_str().unwrap(), "--json"]).json();
    assert_eq!(import()["new"], 2);
    assert_eq!(import()["new"], 0, "the same table again");
    let table = program.run(&["export", "--csv", "tests"]).out;
    // 4 1/4 in are 107.95 mm, 4 1/8 in 104.775 mm, 1/16 in 1.5875 mm (exact, 1959).
    for row in ["crosswise,100,112 113 101@60s,1,one,folded,", "lengthwise,101.6,107.95 104.775@60s,1.5875,one,flat,"] {
        assert!(table.contains(row), "{row}: {table}");
    }
    for (row, told) in [
        ("rib;yesterday;;10cm;;11", "yesterday"),
        ("felt;27.11.2025;;10cm;;11", "felt"),
        ("1;3/4/2025;;10cm;;11", "could be"),
    ] {
        std::fs::write(&file, format!("tag;pulled;grain;gauge;held;readings\n{row}\n")).unwrap();
        let ran = program.run(&["import", file.to_str().unwrap()]);
        assert!(ran.code == Some(2) && ran.err.contains(told), "{row}: {ran:?}");
    }
}
