//! Three garments from swatch to plan, each line judged as a maker judges it: none wrong, none useless, none missing; and the
//! lines that makers struck out of plans before, or missed on them.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use program::{Program, words};
use serde_json::Value;

/// A sewing evening's cloths: for a choir's trousers, the coats of a school play, and the tops and leggings of a class.
fn evening() -> Program {
    let program = Program::new();
    for line in [
        "cloth add 'Nave twill' --construction woven --fibre '62 polyester 33 viscose 5 elastane' --mass 270gsm --width 148cm --length 3.2m",
        "cloth add 'Crypt taffeta' --construction woven --fibre '100 acetate' --mass 75gsm --purpose lining --width 140cm --length 1.5m",
        "cloth add 'Bell tape elastic' --construction other --fibre 'polyester, elastane' --width 30mm --length 4m",
        "cloth add 'Moor melton' --construction woven --fibre '80 wool 20 polyamide' --mass 480gsm --width 150cm --length 3m",
        "cloth add 'Lantern oilcloth' --construction woven --fibre 'cotton, waxed' --mass 300gsm --width 150cm --length 3m",
        "cloth add 'Quilt satin' --construction woven --fibre polyester --mass 90gsm --purpose lining --width 140cm --length 3m",
        "cloth add 'Orchard jersey' --construction knit --fibre '95 cotton 5 elastane' --mass 210gsm --width 160cm --length 6m",
        "cloth add 'Orchard rib' --construction knit --fibre '95 cotton 5 elastane' --mass 260gsm --purpose rib --width 100cm --length 1m",
        "cloth add 'Tumble sport knit' --construction knit --fibre '78 polyamide 22 elastane' --mass 250gsm --width 150cm --length 2m",
        "cloth add 'Wing stiffener' --construction other --fibre polyester --mass 45gsm --purpose interfacing --finish fusible --width 90cm --length 2m",
        "pull 1 --marks 25cm --settling --to 29.4cm --to 29.5cm --to 29.4cm --back 25.3cm@30min",
        "pull 1 --grain lengthwise --marks 25cm --settling --to 25.6cm --to 25.7cm --to 25.6cm --back 25.1cm@30min",
        "pull 2 --marks 25cm --settling --to 25.4cm --to 25.4cm --to 25.5cm --back 25cm@30min",
        "pull 4 --marks 25cm --settling --to 26.5cm --to 26.6cm --to 26.5cm --back 25.1cm@30min",
        "pull 5 --marks 25cm --settling --to 25.1cm --to 25.1cm --to 25.1cm --back 25cm@30min",
        "pull 7 --marks 10cm --settling --to 16.1cm --to 16.3cm --to 16.2cm --back 10.3cm@30min",
        "pull 7 --grain lengthwise --marks 10cm --settling --to 13.9cm --to 14cm --to 13.9cm --back 10.2cm@30min",
        "pull 8 --marks 10cm --settling --to 19.8cm --to 20.1cm --to 20cm --back 10.5cm@30min",
        "pull 9 --marks 20cm --settling --to 36cm --to 36.2cm --to 36cm --back 20cm@1h",
        "pull 9 --grain lengthwise --marks 20cm --settling --to 32.2cm --to 32.4cm --to 32.2cm --back 20cm@1h",
        "pattern add 'Choir trousers' lined main --crosswise 10% --construction woven --kind trousers --cloth '1.5m at 148cm'",
        "pattern add 'Choir trousers' lined lining --purpose lining --kind trousers --cloth '1.1m at 140cm'",
        "pattern add 'Choir trousers' lined elastic --kind trousers",
        "pattern add 'Play coat' hooded main --construction woven --kind lined-coat --cloth '2.4m at 150cm'",
        "pattern add 'Play coat' hooded lining --purpose lining --kind lined-coat --cloth '2.1m at 140cm'",
        "pattern add 'Play coat' hooded interfacing --purpose interfacing --kind lined-coat --cloth '0.8m at 90cm'",
        "pattern add 'Class top' tee main --crosswise 20% --construction knit --kind t-shirt --cloth '1.1m at 160cm'",
        "pattern add 'Class top' tee neckband --crosswise 50% --construction knit --purpose rib --kind t-shirt --cloth '0.1m at 100cm'",
        "pattern add 'Class top' leggings main --crosswise 40% --lengthwise 20% --construction knit --kind leggings --cloth '1.1m at 150cm'",
    ] {
        let typed = words(line);
        let ran = program.run(&typed.iter().map(String::as_str).collect::<Vec<_>>());
        assert_ne!(ran.code, Some(2), "{line}: {}", ran.err);
    }
    program
}

/// The plan of a garment that was begun with choices: its headline, and each line with its verb.
fn begun(program: &Program, start: &str) -> (String, Vec<String>) {
    let run = |line: &str| {
        let typed = words(line);
        let ran = program.run(&typed.iter().map(String::as_str).collect::<Vec<_>>());
        assert_ne!(ran.code, Some(2), "{line}: {}", ran.err);
        ran
    };
    let garment: Value = run(&format!("make start {start} --json")).json();
    let plan: Value = run(&format!("make plan {} --json", garment["number"])).json();
    let plan = &plan["plan"];
    let all = plan["sections"].as_array().unwrap().iter().flat_map(|one| one["lines"].as_array().unwrap());
    let lines = all.map(|line| {
        for part in ["why", "source"] {
            assert!(!line[part].as_str().unwrap().is_empty(), "each line has its rule and its source: {line}");
        }
        format!("{} {}", line["about"].as_str().unwrap(), line["text"].as_str().unwrap())
    });
    (plan["headline"].as_str().unwrap().to_owned(), lines.collect())
}

/// That a plan has these lines by their beginnings, in this order, and no other.
#[track_caller]
fn is(plan: &[String], hers: &[&str]) {
    let mut left = plan.iter();
    for wanted in hers {
        let line = left.next().unwrap_or_else(|| panic!("{wanted} is missing: {plan:#?}"));
        assert!(line.starts_with(wanted), "{wanted}: {line}\n{plan:#?}");
    }
    assert_eq!(left.next(), None, "{plan:#?}");
}

/// Stretch twill with a lining, and elastic of 30 mm in a casing at the waist. Acetate does not give the 10 % that the view
/// asks; the raw edges under a lining that hangs are finished all the same.
#[test]
fn choir_trousers() {
    let program = evening();
    let start = "'Choir trousers' lined --use main=1 --use lining=2 --use elastic=3 \
                 --elastic 'firm waist 76cm 30mm over 98cm gives 50%'";
    let (head, plan) = begun(&program, start);
    assert_eq!(head, "SHORT  the lining takes away the give that the view asks; 1 thing to settle before you begin");
    is(
        &plan,
        &[
            "role main: 1 Nave twill, meets",
            "role lining: 2 Crypt taffeta, meets",
            "role elastic: 3 Bell tape elastic",
            "thread polyester, Tex 30 (1)",
            "thread fine cotton or polyester, Tex 18 to 21 (2)",
            "buy cloth for the pocket bags; lining will do",
            "buy narrow tape that does not stretch, for the pocket mouths",
            "lining with the lining it gives 1.7 %", // 25.43 / 25 − 1, arithmetic.
            "mark 50 cm both ways on 1 Nave twill and 2 Crypt taffeta before the wash",
            "wash 1 Nave twill: wash and dry it once as you will wash the garment",
            "wash 2 Crypt taffeta: wash it by hand in cool water",
            "wash 3 Bell tape elastic: wash and dry it once",
            "needle universal point, size 80/12 to 90/14; stretch point if it skips stitches (1)",
            "needle sharp point, size 60/8 to 70/10 (2)",
            "stitch straight stitch, 2.5 mm (1)",
            "stitch straight stitch, 1.5 to 2.0 mm (2)",
            "machine walking foot, less pressure on the presser foot (1)",
            "machine sew a sample and stretch it hard",
            "press 1 Nave twill: iron at two dots",
            "press 2 Crypt taffeta: iron at one dot",
            "pins 2 Crypt taffeta: use fine pins only",
            // 98 / (1 + 0.177 − 0.037) are 86.0 to both sides; to one side as sure it is a little less.
            "keep the waist edge at least 85.5 cm round: it must pass hips of 98 cm, and the cloth gives 17.7 % ± 3.7 crosswise",
            "lay main with its greater stretch, crosswise, round the body",
            "allow 15 mm at the seams",
            "keep the cloth from hanging off the table",
            "mark notches, centre lines and pockets",
            "tape the mouths of the side pockets",
            "sew the pocket bags to front and back",
            "press each seam before another crosses it",
            "edges overlock each edge, press the seam open; or zigzag each edge",
            "sew the outside leg seams, then the inside leg seams",
            "sew the crotch seam, one leg inside the other: triple stitch, 2.5 mm; trim to 6 mm",
            "sew the lining together and baste it to the waist, wrong sides together",
            // 76 − 1.27 + 2.5 are cut; 98 / 74.73 − 1 are needed.
            "elastic cut 77.2 cm, 25 mm of it to lap; tack it and try it on; it passes 98 cm: it needs 31.1 % of stretch and has",
            "turn 6 mm under at the waist, fold a casing of 33 mm and stitch it, but for 5 cm; draw the elastic in, lap",
            "try it on and mark the hem",
            "hem the outside, then the lining 2 cm shorter: it hangs free",
            "press it a last time from the wrong side",
            "caution pins, blades and irons",
        ],
    );
}

/// Melton, lined, with a hood and a separating zip whose edge loses neck and hem.
#[test]
fn a_play_coat_in_melton() {
    let program = evening();
    let start = "'Play coat' hooded --use main=4 --use lining=6 --use interfacing=10 --with hood,separating-zip --zip 62cm \
                 --zip-neck 15mm --zip-hem 4cm";
    let (head, plan) = begun(&program, start);
    assert!(head.starts_with("MEETS  each cloth does what the view asks; first settle"), "{head}");
    is(
        &plan,
        &[
            "role main: 4 Moor melton, meets",
            "role lining: 6 Quilt satin, meets",
            "role interfacing: 10 Wing stiffener, meets",
            "zip take 60 cm separating, shortened by 3.5 cm at the top", // 62 − 1.5 − 4 are 56.5.
            "shorten pull teeth from the top",
            "zip or 55 cm separating leaves 1.5 cm open",
            "chain size 8 to 10",
            "thread polyester, Tex 30 to 40 (4)",
            "thread fine cotton or polyester, Tex 18 to 24 (6)",
            "buy cloth for the pocket bags; lining will do",
            "buy a pair of sleeve heads",
            "buy narrow tape that does not stretch, for the shoulder seams",
            "take an interfacing that fuses at 110 °C, or one to sew in: 4 Moor melton takes no more heat",
            "mark 50 cm both ways on 4 Moor melton and 6 Quilt satin before the wash",
            "wash 4 Moor melton: roll it in a wet cloth for a day",
            "wash 6 Quilt satin: wash and dry it once",
            "wash 10 Wing stiffener: soak it in warm water",
            "wash the zip too, unless all polyester",
            "needle universal point, size 90/14 to 100/16 (4)",
            "needle sharp point, size 65/9 to 70/10 (6)",
            "stitch straight stitch, 3.0 mm (4)",
            "stitch straight stitch, 2.0 mm (6)",
            "machine sew each seam from its centre outwards, in two halves (4)",
            "press 4 Moor melton: iron at one dot, 110 °C at most; press under a damp cloth",
            "press 6 Quilt satin: iron at two dots",
            "press 10 Wing stiffener: iron at two dots, 150 °C at most; to fuse it, hold the iron still",
            "fuse a sample first; the interfacing is no heavier than the cloth",
            "allow 15 mm at the seams",
            "interface the front edges and their facings, the pocket openings (25 mm larger each way) and the hem",
            "cut fusible interfacing 5 mm smaller all round than its piece",
            "mark notches, centre lines and pockets",
            "stay-stitch the neck, in two halves from the shoulder to the centre",
            "sew the welts and turn them, then sew each below its line",
            "cut between the rows to 3 mm from the ends",
            "stitch the ends of the welts",
            "press each seam before another crosses it",
            "sew the shoulder seams: with a tape that does not stretch sewn in",
            "sew the side seams, then the centre seam of the hood",
            "sew hood and hood lining together round the face",
            "sew the hood to the neck",
            "baste the zip to both fronts; neck, pockets and lower edge lie level",
            "sew the facing over the zip, right sides together",
            "topstitch 6 mm beside the zip and take out the basting",
            "sew the sleeve seams",
            "sew the sleeves into the armholes, the fullness of the cap eased in",
            "sew a sleeve head into each cap",
            "sew the lining together, with a pleat of ease at the centre back",
            "set the lining in along the facings, after all stitching that is seen outside",
            "try it on and mark the hem",
            "hem the lower edge and the sleeves, then their lining 2 cm shorter, with a fold of ease",
            "press it a last time from the wrong side",
            "caution pins, blades and irons",
        ],
    );
}

/// The same in waxed cloth: sponged, clipped, no fusible, no iron; and what is sewn to it is not washed either.
#[test]
fn a_play_coat_in_waxed_cloth() {
    let program = evening();
    let start =
        "'Play coat' hooded --use main=5 --use lining=6 --use interfacing=10 --with hood,separating-zip --zip 62cm";
    let (_, plan) = begun(&program, start);
    let has = |words: &str| plan.iter().position(|line| line.starts_with(words));
    for words in [
        "buy interfacing to sew in, no heavier than the cloth: a fusible needs heat",
        "take an interfacing to sew in, instead of 10 Wing stiffener: 5 Lantern oilcloth takes no heat",
        "wash 5 Lantern oilcloth: do not wash it; sponge it with cold water",
        "leave 6 Quilt satin and 10 Wing stiffener unwashed: the garment will not be washed",
        "press 5 Lantern oilcloth: no iron and no steam",
        "use clips and no pins: their holes would stay (5)",
        "flatten each seam and dart with your fingers and a roller or a clapper",
        "use no iron at the end either",
    ] {
        assert!(has(words).is_some(), "{words}: {plan:#?}");
    }
    for wrong in ["fuse", "cut fusible", "press each seam", "press it", "wash the zip", "mark 50 cm", "press 10"] {
        assert!(has(wrong).is_none(), "{wrong}: {plan:#?}");
    }
    assert!(!plan.iter().any(|line| line.contains("press the seam open")), "{plan:#?}");
    // How the interfacing is put on is told after what is interfaced.
    assert!(has("interface the front edges") < has("sew in the interfacing"), "{plan:#?}");
}

/// A T-shirt for a class, its band of rib for a neck of 44 cm.
#[test]
fn a_class_top() {
    let program = evening();
    let (head, plan) = begun(&program, "'Class top' tee --use main=7 --use neckband=8 --elastic 'rib opening 44cm'");
    assert_eq!(head, "MEETS  each cloth does what the view asks");
    is(
        &plan,
        &[
            "role main: 7 Orchard jersey, meets",
            "role neckband: 8 Orchard rib, meets",
            "thread polyester, Tex 24 to 30",
            "buy narrow tape that does not stretch, for the shoulder seams",
            "mark 50 cm both ways on 7 Orchard jersey and 8 Orchard rib before the wash",
            "wash 7 Orchard jersey: wash and dry it twice",
            "wash 8 Orchard rib: wash and dry it twice",
            "needle stretch point, size 75/11",
            "stitch overlock of four threads; without an overlocker, zigzag 0.5 mm wide, 2.5 mm long (7)",
            "stitch overlock of four threads; without an overlocker, zigzag 2.0 mm wide, 2.0 mm long (8)",
            "machine walking foot",
            "machine sew a sample and stretch it hard",
            "press 7 Orchard jersey: iron at two dots",
            "press 8 Orchard rib: iron at two dots",
            "sample neckband: sew a joined sample and wash it before you cut",
            "lay main with its greater stretch, crosswise, round the body",
            "allow 10 mm at the seams, 6 mm at neckband",
            "lay all pieces one way up",
            "keep the cloth from hanging off the table",
            "rib cut 34.2 cm, 12 mm of it for the seam", // 3/4 of 44, and 2 × 6 mm.
            "mark notches, centre lines and quarters of bands",
            "sew the shoulder seams: with a tape that does not stretch sewn in",
            "try the neckband, pinned to a ring, over the head before you sew it on",
            "sew the band to the neck, closed to a ring and folded, the band on top, pulled to match mark to mark",
            "sew the sleeves into the armholes, while sleeve and side are open",
            "sew the sleeve and side seams, in one from the lower edge",
            "hem the sleeves and the lower edge: coverstitch; without one, twin needle, 3.0 mm",
            "press it a last time from the wrong side",
            "caution pins, blades and irons",
        ],
    );
}

/// Leggings: what the cloth gives at full reach, whether it shows through there, and the ease that is worn, in the place of what
/// the stretch would allow.
#[test]
fn class_leggings() {
    let program = evening();
    let (_, plan) = begun(&program, "'Class top' leggings --use main=9 --elastic 'soft waist 70cm 25mm'");
    is(
        &plan,
        &[
            "role main: 9 Tumble sport knit",
            "thread polyester, Tex 24 to 30",
            "buy 66.9 cm of elastic", // 92 % of 70, and 2.5 cm to lap.
            "settle main: 9 Tumble sport knit crosswise growth: ",
            "mark 50 cm both ways on 9 Tumble sport knit before the wash",
            "wash 9 Tumble sport knit: wash and dry it once",
            "wash the elastic too, unless all polyester",
            "needle stretch point, size 75/11",
            "stitch overlock of four threads; without an overlocker, zigzag 0.5 mm wide, 2.5 mm long",
            "machine walking foot",
            "machine sew a sample and stretch it hard",
            "press 9 Tumble sport knit: iron at one dot",
            // 250 / (1.4 · 1.2) are 149.
            "stretch the cloth by 40 % crosswise and 20 % lengthwise, over black paper laid on white: if you see the edge, it \
             shows through; 250 g/m² become 149 g/m²",
            "reach stretched crosswise by 40 %, as far as the view asks, it gives 28.", // 1.803 / 1.4 − 1.
            "reach stretched lengthwise by 20 %, as far as the view asks, it gives 34.", // 1.61 / 1.2 − 1.
            "ease such a knit is cut 5 to 15 % smaller round than the body, and up to 7.5 % shorter",
            "lay main with its greater stretch, crosswise, round the body",
            "allow 10 mm at the seams",
            "lay all pieces one way up",
            "keep the cloth from hanging off the table",
            "mark notches and quarters of bands or elastic",
            "sew the inside leg seams",
            "sew the crotch seam, one leg inside the other: overlock of four threads",
            "elastic cut 66.9 cm, 25 mm of it to lap; tack it and try it on",
            "elastic the closed loop of 64.4 cm must stretch over the hips: measure both",
            "lap the elastic to a ring, sew it to the waist, quarter to quarter, stretched; turn it in and stitch",
            "hem the legs: coverstitch; without one, zigzag 3.5 mm wide, 1.4 mm long",
            "caution pins, blades and irons",
        ],
    );
}

/// What a maker missed on plans, each where its kind has it; and what she struck out.
#[test]
fn each_kind_has_what_it_needs() {
    let program = evening();
    program.run(&["pattern", "add", "plain", "-", "main", "--crosswise", "5%", "--construction", "woven"]);
    let sheet = |more: &str| {
        let line = format!("fit plain --sheet --use main=1 {more}");
        let ran = program.run(&words(&line).iter().map(String::as_str).collect::<Vec<_>>());
        assert_ne!(ran.code, Some(2), "{line}: {}", ran.err);
        ran.out.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    for (kind, missing, wrong) in [
        ("jeans --with closed-zip", &["buy a closed zip of size 4 to 5", "face the fly and set its zip"][..], &[][..]),
        ("dress", &["buy a hook and eye", "sew a hook and eye above the zip", "pass --zip 56cm"], &["how it opens"]),
        (
            "dress --without closed-zip",
            &["say how it opens; without a zip or buttons", "pass --with closed-zip or --with buttons"],
            &["hook"],
        ),
        // Bodice and skirt are closed first, then joined, and the zip crosses their seam; the twill gives and is taped.
        (
            "dress --with waist-seam",
            &[
                "with sleeves, darts, closed zip and waist seam",
                "in two halves from the shoulder to the centre and the curved waist",
                "sew the side seams sew the bodice to the skirt: with a tape that does not stretch sewn in",
                "zip sew the seam below the zip",
                "narrow tape that does not stretch, for the shoulder seams and the waist seam",
            ],
            &["while the pieces lie flat sew the seam below"],
        ),
        (
            "unlined-jacket --with hood --cord '110cm 4mm'",
            &[
                "buy 140 cm of cord",
                "buy two cord stops",
                "cut the cord 140 cm long, 15 cm of it for each end",
                "fold a casing of 10 mm over the eyelets",
            ],
            &["pass --zip 18cm"],
        ),
        (
            "childs-outerwear --cord",
            &[
                "take a zip whose slider cannot pass the top stop",
                "cord, as long as the edge and its short ends",
                "sew a guard behind the top of the zip",
                "leave the hood without a cord",
                "Europe, to 14 years, back: no cord",
                "pass --elastic 'soft wrist 17cm' for its length",
            ],
            &["cord stops", "put a stop"],
        ),
        (
            "unlined-jacket --with raglan",
            &["stay-stitch the neck", "the raglan edges", "sew the raglan seams"],
            &["shoulder seams", "armholes"],
        ),
        ("skirt --with vent", &["interface the waistband", "down to the vent", "where vent or slits end"], &[]),
        (
            "shirt --with slits",
            &["interface the button bands", "back the edges of the slits", "sew the ends of the cuffs"],
            &[],
        ),
        (
            "jeans",
            &["stay-stitch the curved waist", "the yoke edges", "buy a button, or a hook and bar"],
            &["the yoke seam: stay-stitch", "basting"],
        ),
        ("unlined-jacket", &["buy tape to bind the raw edges of the seams"], &["basting taken out"]),
        ("skirt --with lining", &["cloth for the lining; the view has no role for it"], &["a fold of ease"]),
    ] {
        let told = sheet(&format!("--kind {kind}"));
        for words in missing {
            assert!(told.contains(words), "{kind}: {words}: {told}");
        }
        for words in wrong {
            assert!(!told.contains(words), "{kind}: {words}: {told}");
        }
    }
}

/// What else was judged of single lines: advice for knits said of a woven, two answers at once, a close garment of what grows, a
/// second word beside poor growth; and what was right and stays.
#[test]
fn single_lines_as_they_were_judged() {
    let program = evening();
    let told = |line: &str| {
        let ran = program.run(&words(line).iter().map(String::as_str).collect::<Vec<_>>());
        assert_ne!(ran.code, Some(2), "{line}: {}", ran.err);
        ran.out.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let woven = told("check 25 26.5 --construction woven --wants 5%");
    assert!(!woven.contains("knit"), "{woven}");
    assert!(!woven.contains("it will do") || !woven.contains("make 3 pulls"), "{woven}");
    let grown = told("check 10 14.8 14.9 14.8 --back 12.4@30m --construction knit");
    assert!(grown.contains("nothing close: it grows 24.0 %") && grown.contains("toile"), "{grown}");
    assert!(!grown.contains("fair"), "one verdict: {grown}");
    // A sheet knows the mistakes that cost most at night, at the neck and at the zip.
    let plan = told("fit 'Class top' tee --sheet --child --sleepwear");
    assert!(plan.contains("sleepwear") || plan.contains("nightwear"), "{plan}");
    let zip = told("fit 'Choir trousers' lined --sheet --use main=1 --with closed-zip --kind skirt --zip 20cm");
    assert!(zip.contains("fuse a strip of 25 mm that does not stretch along the zip seam"), "{zip}");
    let braided = told("size --elastic soft --place waist --measure 76cm --stitched");
    assert!(braided.contains("stitching"), "{braided}");
}

/// Seams of two cloths: each runs as its kind does unless it is said; what grows is scaled to what the seam gives; a knit in a
/// woven is taped or another cloth is chosen; the headline says what is in doubt.
#[test]
fn seams_of_two_cloths() {
    let program = evening();
    for line in [
        "pattern add 'Panel coat' - main --crosswise 5% --construction woven --kind unlined-jacket",
        "pattern add 'Panel coat' - yoke --crosswise 5% --kind unlined-jacket",
        "pattern add 'Panel coat' - panel --kind unlined-jacket",
        "pull 4 --grain lengthwise --marks 25cm --settling --to 25.9cm --to 25.9cm --to 26cm --back 25.1cm@30min",
    ] {
        assert_ne!(program.run(&words(line).iter().map(String::as_str).collect::<Vec<_>>()).code, Some(2), "{line}");
    }
    let told = |line: &str| {
        let ran = program.run(&words(line).iter().map(String::as_str).collect::<Vec<_>>());
        assert_ne!(ran.code, Some(2), "{line}: {}", ran.err);
        ran.out.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    // 18 and 0.4 % across the yoke: the waxed cloth takes the 5 % away, and the headline of the plan says that and no other.
    let firm = told("fit 'Panel coat' --sheet --use main=1 --use yoke=5 --use panel=4");
    assert!(firm.contains("take one that gives 5 % or more instead of 5 Lantern oilcloth"), "{firm}");
    let yoke = told("fit 'Panel coat' --sheet --use main=1 --use yoke=4 --use panel=4 --without yoke");
    assert!(!yoke.contains("takes away the give"), "{yoke}");
    // A panel seam lies lengthwise, where both are alike; said to lie crosswise, they are not.
    let along = told("pair 1 4 60cm --seam panel");
    assert!(along.contains("both lengthwise"), "{along}");
    let across = told("pair 1 4 60cm --seam panel --grain crosswise");
    assert!(across.contains("both crosswise as you typed"), "{across}");
    // 39 % of jersey beside 2.5 % of twill, down the body.
    let knit = told("pair 1 7 60cm --seam panel");
    assert!(knit.contains("tape the edge of 7 Orchard jersey"), "{knit}");
    assert!(knit.contains("or take one that stretches like 1 Nave twill") && !knit.contains("cut shorter"), "{knit}");
}
