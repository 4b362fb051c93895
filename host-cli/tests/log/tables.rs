//! Tables for a spreadsheet: written, read by other programs, typed by hand and read back.

use std::fs;
use std::process::Command;

use serde_json::Value;

use crate::desk::Desk;

fn python(script: &str, arguments: &[&str]) -> Value {
    let output = Command::new("python3").arg("-c").arg(script).args(arguments).output().expect("python3 starts");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    serde_json::from_slice(&output.stdout).unwrap()
}

/// Reads a CSV file with the csv module of Python's standard library.
fn rows(desk: &Desk, name: &str) -> Vec<Value> {
    let script = "import csv, json, sys; print(json.dumps(list(csv.DictReader(open(sys.argv[1], encoding='utf-8', newline='')))))";
    let read = python(script, &[desk.path(name).to_str().unwrap()]);
    read.as_array().unwrap().clone()
}

#[test]
fn python_reads_the_tables() {
    let desk = Desk::new();
    desk.ok(
        "log.db",
        &[
            "cloth",
            "add",
            "=SUM(A1), \"quoted\"\u{fc}",
            "--place",
            "@shelf",
            "--note=-5 cm at the edge",
            "--width",
            "1.485m",
        ],
    );
    desk.ok("log.db", &["cloth", "add", "plain"]);
    let pull = "pull 1 --marks 10cm --to 10.5cm --back 9.9cm@60s --at 2026-01-05";
    desk.ok("log.db", &pull.split(' ').collect::<Vec<_>>());
    assert_eq!(desk.ok("log.db", &["export", "--csv", "cloths", "f.csv"]), "2 cloths in f.csv\n");
    assert_eq!(desk.ok("log.db", &["export", "--csv", "tests", "t.csv"]), "1 tests in t.csv\n");
    let fabrics = rows(&desk, "f.csv");
    assert_eq!(fabrics[0]["name"], "'=SUM(A1), \"quoted\"\u{fc}");
    assert_eq!(fabrics[0]["place"], "'@shelf");
    assert_eq!(fabrics[0]["note"], "'-5 cm at the edge");
    assert_eq!((&fabrics[0]["width_mm"], &fabrics[1]["width_mm"]), (&"1485".into(), &"".into()));
    let tests = rows(&desk, "t.csv");
    // 100 to 105 mm is 5 %, back at 99 mm is −1 %: arithmetic. A number below zero stays a number.
    let cell = |head: &str| tests[0][head].as_str().unwrap().to_owned();
    assert_eq!((cell("stretch_percent"), cell("growth_percent")), ("5.000".to_owned(), "-1.000".to_owned()));
    assert_eq!(cell("readings"), "105 99@60s");
    let low: f64 = cell("stretch_low").parse().unwrap();
    assert!(low < 5.0 && low > 0.0, "{low}");
}

/// JSON Lines as Python's json module reads them: every line an object, every entry with identifier, time and kind.
#[test]
fn python_reads_the_entries() {
    let desk = Desk::new();
    desk.demo("log.db");
    desk.ok("log.db", &["export", "log.jsonl"]);
    let script =
        "import json, sys; print(json.dumps([json.loads(line) for line in open(sys.argv[1], encoding='utf-8')]))";
    let lines = python(script, &[desk.path("log.jsonl").to_str().unwrap()]);
    let lines = lines.as_array().unwrap();
    let (photos, entries): (Vec<&Value>, Vec<&Value>) =
        lines[1..lines.len() - 1].iter().partition(|line| line.get("jpeg").is_some());
    assert!(entries.len() > 40);
    // Python's hashlib and base64 know the photographs by the same names.
    let script = "import base64, hashlib, json, sys
lines = [json.loads(line) for line in open(sys.argv[1], encoding='utf-8')]
jpegs = [(line['photo'], base64.b64decode(line['jpeg'], validate=True)) for line in lines if 'jpeg' in line]
print(json.dumps([hashlib.sha256(jpeg).hexdigest() == name and jpeg[:3].hex() == 'ffd8ff' for name, jpeg in jpegs]))";
    let known = python(script, &[desk.path("log.jsonl").to_str().unwrap()]);
    assert_eq!(known, Value::from(vec![true; photos.len()]));
    assert!(photos.len() >= 2 && lines[lines.len() - 1]["photos"] == photos.len());
    for entry in &entries {
        assert!(entry["id"].as_str().is_some_and(|id| id.len() == 26) && entry["at"].is_string(), "{entry}");
    }
    let vestry = entries.iter().find(|entry| entry["name"] == "Vestry twill").unwrap();
    assert_eq!((&vestry["kind"], &vestry["width_mm"]), (&"fabric-added".into(), &1480.0.into()));
    let of_vestry = |entry: &&&Value| entry["kind"] == "test-stored" && entry["fabric"] == vestry["id"];
    let tests: Vec<&&Value> = entries.iter().filter(of_vestry).collect();
    assert_eq!(tests.len(), 2);
    assert_eq!(tests[0]["test"]["pulls"][0]["extended_mm"], 271.0);
}

/// An exported table comes back whole: the same readings under the same identifiers, and again nothing new.
#[test]
fn an_exported_table_comes_back() {
    let desk = Desk::new();
    desk.demo("a.db");
    let odd = "pull 2 --marks 4in --to 4.25in --back 4.0625in@1h --to 4-5/16in --division 1/64in --ends both --held strip \
               --load 500g --grain bias --at 2026-02-03";
    desk.ok("a.db", &odd.split_whitespace().collect::<Vec<_>>());
    desk.ok("a.db", &["export", "--csv", "tests", "a.csv"]);
    desk.ok("a.db", &["export", "a.jsonl"]);
    // A log with the cloths alone, as they are before any was retired.
    let jsonl = fs::read_to_string(desk.path("a.jsonl")).unwrap();
    let of_a_cloth = |line: &&str| line.contains("\"kind\":\"fabric-") && !line.contains("fabric-dropped");
    let kept: Vec<&str> = jsonl.lines().filter(of_a_cloth).collect();
    let only = format!(
        "{{\"tenter\":\"log\",\"format\":1}}\n{}\n{{\"end\":\"log\",\"entries\":{}}}\n",
        kept.join("\n"),
        kept.len()
    );
    fs::write(desk.path("fabrics.jsonl"), only).unwrap();
    desk.ok("b.db", &["import", "fabrics.jsonl"]);
    let tests = rows(&desk, "a.csv").len();
    // The twelve of a class are named in the table.
    let told = desk.ok("b.db", &["import", "--csv", "a.csv"]);
    assert!(told.starts_with(&format!("{} new, 0 known\n  people    Ada, Bram", tests + 12)), "{told}");
    assert_eq!(desk.ok("b.db", &["import", "--csv", "a.csv"]), format!("0 new, {tests} known\n"));
    desk.ok("b.db", &["export", "--csv", "tests", "b.csv"]);
    // Which handheld a test came from is told in a table and not read from one; who pulled is read.
    let without_device = |name: &str| -> Vec<String> {
        let table = fs::read_to_string(desk.path(name)).unwrap();
        let cells = |line: &str| line.rsplitn(3, ',').map(str::to_owned).collect::<Vec<_>>();
        table.lines().map(cells).map(|cells| format!("{},{}", cells[2], cells[0])).collect()
    };
    assert_eq!(without_device("a.csv"), without_device("b.csv"));
}

/// Typed by hand, with commas, semicolons and decimal commas, or tabs; twice is once.
#[test]
fn readings_typed_by_hand() {
    for (name, table) in [
        (
            "comma.csv",
            "tag,pulled,grain,gauge,settling,readings,note\n1,2026-01-05,lengthwise,10cm,yes,10.5cm 10.6cm 10.1cm@60s,\"first, dry\"\n",
        ),
        (
            "semicolon.csv",
            "Tag;Pulled;Grain;Gauge;Settling;Readings;Note\r\n1;2026-01-05;lengthwise;10cm;yes;10,5cm 10,6cm 10,1cm@60s;first, dry\r\n\r\n",
        ),
        (
            "tab.csv",
            "\u{feff}tag\tpulled\tgrain\tgauge\tsettling\treadings\tnote\n1\t2026-01-05\tWarp\t10\ty\t10.5 106mm 10.1@1min\tfirst, dry\n",
        ),
    ] {
        let desk = Desk::new();
        desk.ok("log.db", &["cloth", "add", "cloth"]);
        fs::write(desk.path(name), table).unwrap();
        assert_eq!(desk.ok("log.db", &["import", "--csv", name]), "1 new, 0 known\n", "{name}");
        assert_eq!(desk.ok("log.db", &["import", "--csv", name]), "0 new, 1 known\n", "{name}");
        let shown = desk.ok("log.db", &["cloth", "show", "1", "--json"]);
        let shown: Value = serde_json::from_str(&shown).unwrap();
        let test = &shown["tests"][0];
        assert_eq!(
            (&test["grain"], &test["extended_mm"]),
            (&"lengthwise".into(), &serde_json::json!([105.0, 106.0])),
            "{name}"
        );
        assert_eq!(
            (&test["note"], &shown["grains"][0]["growth"]["percent"]),
            (&"first, dry".into(), &1.0.into()),
            "{name}"
        );
    }
}

/// Each bad line is told with its number and what to type, and nothing of the file is taken.
#[test]
fn bad_lines_are_told_and_nothing_is_taken() {
    let desk = Desk::new();
    desk.ok("log.db", &["cloth", "add", "cloth"]);
    let table = "tag,pulled,gauge,readings,held\n\
        1,2026-01-05,10cm,105mm,\n\
        9,2026-01-05,10cm,105mm,\n\
        1,yesterday,10cm,105mm,\n\
        1,2026-01-05,ten,105,\n\
        1,2026-01-05,10cm,,\n\
        1,2026-01-05,10cm,95mm,\n\
        1,2026-01-05,10cm,105mm 101@soon,\n\
        1,2026-01-05,10cm,105mm,tied\n";
    fs::write(desk.path("bad.csv"), table).unwrap();
    let output = desk.run("log.db", &["import", "--csv", "bad.csv"]);
    assert_eq!(output.status.code(), Some(2));
    let told = String::from_utf8(output.stderr).unwrap();
    let lines: Vec<&str> = told.lines().collect();
    assert_eq!(lines[0], "tenter: nothing was imported; 7 lines are wrong");
    for (line, words) in lines[1..].iter().zip([
        "line 3: tag '9': no cloth has this tag",
        "line 4: pulled 'yesterday': type a day",
        "line 5: gauge 'ten'",
        "line 6: readings '': type the pulled lengths",
        "line 7: readings '95mm'",
        "line 8: readings '101@soon'",
        "line 9: held 'tied': type one of flat, folded, strip, loop",
    ]) {
        assert!(line.trim().starts_with(words), "{line}");
    }
    assert_eq!(lines.len(), 8);
    assert!(desk.ok("log.db", &["cloth", "show", "1"]).contains("not measured"));
    for (table, words) in [
        ("tag,gauge\n1,2\n", "no column pulled"),
        ("", "no column tag"),
        ("tag,pulled,gauge,readings,colour\n", "column 'colour' is not known"),
    ] {
        fs::write(desk.path("heads.csv"), table).unwrap();
        assert!(desk.refused("log.db", &["import", "--csv", "heads.csv"]).contains(words), "{table}");
    }
    fs::write(desk.path("bytes.csv"), b"tag,pulled\xff").unwrap();
    assert!(desk.refused("log.db", &["import", "--csv", "bytes.csv"]).contains("UTF-8"));
}

/// How often each note is in the tests of fabric 1.
fn notes(desk: &Desk, log: &str) -> Vec<String> {
    let shown: Value = serde_json::from_str(&desk.ok(log, &["cloth", "show", "1", "--json"])).unwrap();
    let mut notes: Vec<String> =
        shown["tests"].as_array().unwrap().iter().map(|test| test["note"].as_str().unwrap().to_owned()).collect();
    notes.sort();
    notes
}

/// A table is known again however it was saved, and wherever: other marks, decimal commas, units, columns in another
/// order, another time zone. Two rows that say the same are two tests.
#[test]
fn a_table_is_known_however_it_was_saved() {
    let desk = Desk::new();
    desk.ok("log.db", &["cloth", "add", "cloth"]);
    let saved = [
        "tag,pulled,gauge,readings,note\n1,2026-01-05,10cm,10.5cm 10.1cm@60s,a\n1,2026-01-05,10cm,10.5cm 10.1cm@60s,a\n",
        "tag;pulled;gauge;readings;note\n1;2026-01-05;10;10,5 101mm@1min;a\n1;2026-01-05;100mm;10,50cm 101@60;a\n",
        "note\treadings\tgauge\tpulled\ttag\tgrain\theld\na\t105mm 101mm@60s\t0.1m\t2026-01-05 00:00\t#1\tcrosswise\tFolded\n\
         a\t105mm 101mm@60s\t0.1m\t2026-01-05\t01\t\t\n",
    ];
    for (index, text) in saved.into_iter().enumerate() {
        for zone in ["UTC", "Pacific/Kiritimati", "Pacific/Pago_Pago"] {
            fs::write(desk.path("table.csv"), text).unwrap();
            let output = desk.command("log.db", &["import", "--csv", "table.csv"]).env("TZ", zone).output().unwrap();
            let told = String::from_utf8(output.stdout).unwrap();
            let want = if (index, zone) == (0, "UTC") { "2 new, 0 known\n" } else { "0 new, 2 known\n" };
            assert!(told.starts_with(want), "{text} in {zone}: {told}");
        }
    }
    assert_eq!(notes(&desk, "log.db"), ["a", "a"]);
}

/// Cells that would be taken for others, and identifiers and times that would spoil the log for all that comes after.
#[test]
fn what_would_be_misread_is_refused() {
    let desk = Desk::new();
    desk.ok("log.db", &["cloth", "add", "cloth"]);
    for (table, words) in [
        (
            "tag,pulled,gauge,readings,note\n1,2026-03-05,10,5cm,11,2cm\n",
            "line 2: '2cm' stands in no column; type a point",
        ),
        ("tag,pulled,gauge,readings,readings\n1,2026-03-05,100,105,106\n", "column readings is there twice"),
        (
            "tag,pulled,gauge,readings\n1,2999-01-01T00:00:00Z,100,105\n",
            "line 2: pulled '2999-01-01T00:00:00Z': that day lies ahead",
        ),
        ("tag,pulled,gauge,readings\n1,2999-01-01,100,105\n", "line 2: pulled '2999-01-01': that day lies ahead"),
        ("id,tag,pulled,gauge,readings\n7ZZZZZZZZZZZZZZZZZZZZZZZZZ,1,2026-01-01,100,105\n", "line 2: id '7ZZZ"),
        ("id,tag,pulled,gauge,readings\n8ZZZZZZZZZZZZZZZZZZZZZZZZZ,1,2026-01-01,100,105\n", "line 2: id '8ZZZ"),
        ("id,tag,pulled,gauge,readings\n1,1,2026-01-01,100,105\n", "line 2: id '1': leave it empty"),
        ("tag,pulled,gauge,readings\n1,2026-01-05,100,105--106\n", "line 2: readings '105--106'"),
        ("tag,pulled,gauge,readings\n,2026-01-05,100,105\n", "line 2: tag ''"),
    ] {
        fs::write(desk.path("odd.csv"), table).unwrap();
        let output = desk.run("log.db", &["import", "--csv", "odd.csv"]);
        let told = String::from_utf8(output.stderr).unwrap();
        assert!(output.status.code() == Some(2) && told.contains(words), "{table}: {told}");
        assert_eq!(notes(&desk, "log.db").len(), 0, "{table}");
    }
    fs::write(desk.path("quote.csv"), "tag,pulled,gauge,readings,note\n1,2026-03-05,10,10.5,'twas dry,\n").unwrap();
    assert_eq!(desk.ok("log.db", &["import", "--csv", "quote.csv"]), "1 new, 0 known\n");
    assert_eq!(notes(&desk, "log.db"), ["'twas dry"]);
}

/// The table of a log that also holds tests of a dropped fabric, tests of no fabric and tests of a handheld is known in
/// that log, whatever became of the fabrics since; a reading that was changed in it is told and changes nothing.
#[test]
fn a_log_knows_its_own_table() {
    let desk = Desk::new();
    desk.demo("log.db");
    let inbox = r#"{"id":"01KNDF0W00ZJVFW13CDDH771ST","kind":"test-stored","tag":99,"pulled":"2026-04-05T00:00:00Z","device":7,
        "number":3,"test":{"grain":"bias","gauge_mm":100,"pulls":[{"extended_mm":105}],"division_mm":1,"held":"folded"}}"#;
    let lines = format!(
        "{{\"tenter\":\"log\",\"format\":1}}\n{}\n{{\"end\":\"log\",\"entries\":1}}\n",
        inbox.replace('\n', "")
    );
    fs::write(desk.path("inbox.jsonl"), lines).unwrap();
    desk.ok("log.db", &["import", "inbox.jsonl"]);
    desk.ok("log.db", &["export", "--csv", "tests", "t.csv"]);
    desk.ok("log.db", &["cloth", "retire", "1"]);
    let before = desk.ok("log.db", &["export"]);
    let tests = rows(&desk, "t.csv").len();
    assert_eq!(desk.ok("log.db", &["import", "--csv", "t.csv"]), format!("0 new, {tests} known\n"));
    let table = fs::read_to_string(desk.path("t.csv")).unwrap();
    let row = table.lines().find(|line| line.starts_with("01KNDF0W00ZJVFW13CDDH771ST")).unwrap();
    let changed = table.replace(row, &row.replace(",105,", ",106,"));
    assert_ne!(changed, table);
    fs::write(desk.path("changed.csv"), changed).unwrap();
    let told = desk.ok("log.db", &["import", "--csv", "changed.csv"]);
    assert!(told.contains("1 of the known differ"), "{told}");
    assert_eq!(desk.ok("log.db", &["export"]), before);
    let heads = table.lines().next().unwrap();
    fs::write(desk.path("inbox.csv"), format!("{heads}\n{row}\n")).unwrap();
    assert_eq!(desk.ok("empty.db", &["import", "--csv", "inbox.csv"]), "1 new, 0 known\n");
    assert!(desk.ok("empty.db", &["device", "inbox"]).contains("99"));
}

/// The identifier of a typed row, made a second time in Python from what DEVELOPERS.md promises: the instant at which the
/// first clock on Earth (UTC+14) showed the time, and CRC-82/DARC (catalogue of parametrised CRC algorithms: its check
/// value over "123456789" is 0x09ea83f625023801fd612) of that instant, the tag, how the test was made, the note and the
/// count of equal rows before it; as text in Crockford's base 32 (ULID specification).
#[test]
fn a_typed_row_is_named_by_what_it_says() {
    let script = r#"
import datetime, json, struct
def crc(data):
    poly, register = int(f"{0x0308c0111011401440411:082b}"[::-1], 2), 0
    for byte in data:
        register ^= byte
        for _ in range(8):
            register = register >> 1 ^ (poly if register & 1 else 0)
    return register
assert crc(b"123456789") == 0x09ea83f625023801fd612
at = datetime.datetime(2026, 1, 5, 14, 30, tzinfo=datetime.timezone(datetime.timedelta(hours=14)))
ms = int(at.timestamp()) * 1000
says = "\0".join(["12", "crosswise", "100", "105.5 101@60s", "1", "one", "folded", "yes", "hand", "dry"])
def name(before):
    drawn = crc(struct.pack("<q", ms) + says.encode() + struct.pack("<I", before)) % 2**80
    value = ms << 80 | drawn
    return "".join("0123456789ABCDEFGHJKMNPQRSTVWXYZ"[value >> 5 * place & 31] for place in reversed(range(26)))
print(json.dumps([name(0), name(1)]))
"#;
    let desk = Desk::new();
    desk.ok("log.db", &["cloth", "add", "cloth", "--tag", "12"]);
    let row = "12,2026-01-05 14:30,10cm,yes,10.55cm 10.1@1min,dry\n";
    fs::write(desk.path("t.csv"), format!("tag,pulled,gauge,settling,readings,note\n{row}{row}")).unwrap();
    desk.ok("log.db", &["import", "--csv", "t.csv"]);
    let shown: Value = serde_json::from_str(&desk.ok("log.db", &["cloth", "show", "12", "--json"])).unwrap();
    let mut ids: Vec<Value> = shown["tests"].as_array().unwrap().iter().map(|test| test["id"].clone()).collect();
    let mut names = python(script, &[]).as_array().unwrap().clone();
    ids.sort_by_key(Value::to_string);
    names.sort_by_key(Value::to_string);
    assert_eq!(ids, names);
}
