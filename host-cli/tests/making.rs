//! `tenter pair` and `tenter wash` as a user types them.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use program::Program;
use serde_json::Value;

/// Cloths pulled crosswise: 8.5, 22.7, 79.3 and 7.3 %, the fifth not at all.
fn cloths() -> Program {
    let program = Program::new();
    for (name, made, readings) in [
        ("shell", "woven", "--gauge 250mm --settling --to 271mm --to 272mm --to 271mm --back 253mm@60s"),
        ("softshell", "woven", "--gauge 200mm --settling --to 245mm --to 246mm --to 245mm --back 205mm@60s"),
        ("rib", "knit", "--gauge 100mm --settling --to 178mm --to 181mm --to 179mm --back 105mm@60s"),
        ("poplin", "woven", "--gauge 250mm --settling --to 268mm --to 268mm --to 269mm --back 253mm@60s"),
    ] {
        program.run(&["stash", "add", name, "--construction", made]);
        let tag = program.log_fabrics().to_string();
        let pulled = program.line(&format!("pull {tag} {readings}"));
        assert_eq!(pulled.code, Some(0), "{}", pulled.err);
    }
    program.run(&["stash", "add", "never pulled"]);
    program
}

fn json(program: &Program, line: &str) -> Value {
    program.line(&format!("{line} --json")).json()
}

/// Alike, to handle, band to body: gaps of 1.2, 14.1 and 70.8 points, by hand from the readings.
#[test]
fn three_answers_with_their_exit_codes() {
    let program = cloths();
    for (line, answer, code, gap) in [
        ("pair 1 4 --along 30cm", "alike", 0, 1.2),
        ("pair 1 2 --along 60cm", "handle", 3, 14.133),
        ("pair 3 1 --along 40cm", "band to body", 1, 70.8),
    ] {
        assert_eq!(program.line(line).code, Some(code), "{line}");
        let json = json(&program, line);
        assert_eq!(json["answer"], answer, "{line}");
        assert!((json["gap"]["percent"].as_f64().unwrap() - gap).abs() < 0.001, "{line}: {}", json["gap"]);
    }
    // Growth 1.2 % and 2.5 % over 60 cm: 7.8 mm.
    assert_eq!(json(&program, "pair 1 2 --along 60cm")["growth_mismatch_mm"], 7.8);
}

/// Stretchier below, and stay-stitched; the same whichever is named first ("which fabric on top", 2017; stay-stitching is
/// common practice, no source).
#[test]
fn the_stretchier_cloth_lies_below() {
    let program = cloths();
    for line in ["pair 1 2 --along 60cm", "pair 2 1 --along 60cm"] {
        let text = program.line(&format!("{line} --why")).out;
        for words in [
            "2 softshell below, on the feed".to_owned(),
            "stay-stitch the edge of 2 softshell".to_owned(),
            "from the centre outwards".to_owned(),
            "[common practice, no".to_owned(),
            "limits of the tool's own".to_owned(),
        ] {
            assert!(text.contains(&words), "{words}: {text}");
        }
        assert!(!program.line(line).out.contains("why:"));
    }
    // A straight stitch gives 20 % at most: less than both rib and softshell.
    let stitched = program.line("pair 2 3 --along 40cm --stitch straight").out;
    assert!(stitched.contains("as far as the stitch") && stitched.contains("take a narrow zigzag"), "{stitched}");
}

/// 50 cm that come to 48.5 cm lose 3 % (arithmetic); 20 to 17 cm is 15 % (shrinkage glossary); 2 yd at 10 % take 2.22 yd, not 2.20.
#[test]
fn a_wash_changes_what_is_bought_and_what_fits() {
    let program = cloths();
    let wash = |text: &str, more: &[&str]| {
        let mut words = vec!["wash", "--lengthwise", text, "--json"];
        words.extend(more);
        program.run(&words).json()
    };
    assert_eq!(wash("50cm to 48.5cm", &[])["lengthwise"]["percent"], -3.0);
    assert_eq!(wash("20cm to 17cm", &[])["lengthwise"]["percent"], -15.0);
    // Marks so long, and a scale so fine, that the readings' own error is far below a hundredth of a yard.
    let bought = wash("10m to 9m", &["--need", "2yd", "--division", "0.01mm"])["buy_mm"].as_f64().unwrap();
    assert!((bought / 914.4 - 2.0 / 0.9).abs() < 0.003, "{bought}");
    assert_eq!(
        program.run(&["wash", "1", "--lengthwise", "50cm to 49cm", "--crosswise", "50cm to 50cm"]).code,
        Some(0)
    );
    let shown = program.line("stash show 1").out;
    assert!(shown.contains("loses 2.0 % along") && shown.contains("washed, lengthwise: 500 mm to 490 mm"), "{shown}");
}

#[test]
fn bad_input_is_told_in_one_line() {
    let program = cloths();
    for (words, part) in [
        (&["pair", "1", "5", "--along", "60cm"][..], "tenter pull 5 --grain crosswise"),
        (&["pair", "1", "2"], "missing"),
        (&["pair", "1", "2", "--along", "0cm"], "longer than zero"),
        (&["pair", "1", "2", "--along", "60"], "60cm"),
        (&["pair", "1", "2", "--along", "60cm", "--grain", "lengthwise"], "not pulled along that grain"),
        (&["pair", "1", "99", "--along", "60cm"], "no fabric here"),
        (&["wash", "1"], "50cm to 48.5cm"),
        (&["wash", "--lengthwise", "50cm"], "50cm to 48.5cm"),
        (&["wash", "--lengthwise", "0cm to 1cm"], "50cm to 48.5cm"),
        (&["wash", "--crosswise", "50cm to 49cm", "--need", "2m"], "--lengthwise"),
        (&["wash", "--lengthwise", "1cm to 500cm"], "do not fit those before"),
        (&["wash", "99", "--lengthwise", "50cm to 49cm"], "no fabric here"),
    ] {
        let ran = program.run(words);
        assert_eq!(ran.code, Some(2), "{words:?}: {}", ran.out);
        assert!(ran.err.lines().count() == 1 && ran.err.contains(part) && ran.out.is_empty(), "{words:?}: {}", ran.err);
    }
}
