//! The tables of the demo. Invented cloths; their figures are plausible for such cloths, and measured on none.

use tenter_core::Grain::{self, Crosswise, Lengthwise};

use crate::log::Construction::{self, Knit, Woven};

/// A pull test, in millimetres.
pub struct TestRow {
    /// Days ago.
    pub days: i64,
    pub grain: Grain,
    pub gauge: &'static str,
    pub settled: bool,
    pub pulls: &'static [i16],
    /// Seconds after the last release, and the length then.
    pub rests: &'static [(u32, i16)],
}

const fn test(
    days: i64,
    grain: Grain,
    gauge: &'static str,
    pulls: &'static [i16],
    rests: &'static [(u32, i16)],
) -> TestRow {
    TestRow { days, grain, gauge, settled: true, pulls, rests }
}

/// A fabric.
pub struct FabricRow {
    /// Days ago that it came into the stash.
    pub days: i64,
    pub name: &'static str,
    pub fibre: &'static str,
    pub made: Construction,
    pub width: &'static str,
    pub length: &'static str,
    pub mass: &'static str,
    pub place: &'static str,
    pub note: &'static str,
    pub washed: bool,
    /// Where it was seen and for how much.
    pub seen: Option<(&'static str, &'static str)>,
    /// Marks before and after a wash.
    pub wash: &'static [(Grain, &'static str, &'static str)],
    /// Days ago, how much, what for.
    pub cut: Option<(i64, &'static str, &'static str)>,
    pub tests: &'static [TestRow],
}

const PLAIN: FabricRow = FabricRow {
    days: 60,
    name: "",
    fibre: "",
    made: Woven,
    width: "",
    length: "",
    mass: "",
    place: "",
    note: "",
    washed: false,
    seen: None,
    wash: &[],
    cut: None,
    tests: &[],
};

/// The stash; the tag is the place in the table.
pub const FABRICS: &[FabricRow] = &[
    FabricRow {
        name: "Bracken shell",
        fibre: "94 polyamide 6 elastane",
        width: "148cm",
        length: "2.6m",
        mass: "142 g/m2",
        place: "blue crate",
        note: "windproof, soft hand",
        wash: &[(Lengthwise, "500mm", "494mm"), (Crosswise, "500mm", "497mm")],
        tests: &[
            test(41, Crosswise, "250mm", &[271, 272, 271], &[(60, 253)]),
            test(41, Lengthwise, "250mm", &[257, 258, 257], &[(60, 251)]),
        ],
        ..PLAIN
    },
    FabricRow {
        name: "Heather twill",
        fibre: "cotton, a little elastane",
        width: "140cm",
        length: "2.2m",
        mass: "205 g/m2",
        place: "blue crate",
        tests: &[test(33, Crosswise, "100mm", &[106], &[(60, 101)])],
        ..PLAIN
    },
    FabricRow {
        name: "Peat canvas",
        fibre: "cotton, waxed",
        width: "145cm",
        length: "3m",
        mass: "260 g/m2",
        place: "under the bench",
        note: "does not give",
        tests: &[test(33, Crosswise, "250mm", &[252, 252, 252], &[(60, 250)])],
        ..PLAIN
    },
    FabricRow {
        name: "Scree softshell",
        fibre: "polyester, elastane, brushed inside",
        width: "150cm",
        length: "1.8m",
        mass: "290 g/m2",
        place: "shelf",
        tests: &[
            test(28, Crosswise, "200mm", &[245, 246, 245], &[(60, 205)]),
            test(28, Lengthwise, "200mm", &[224, 225, 224], &[(60, 203)]),
        ],
        ..PLAIN
    },
    FabricRow {
        name: "Larch ripstop",
        fibre: "polyamide",
        width: "152cm",
        length: "0.9m",
        mass: "92 g/m2",
        place: "blue crate",
        note: "left over from a tent bag",
        tests: &[test(20, Crosswise, "250mm", &[270, 270, 271], &[(60, 252)])],
        ..PLAIN
    },
    FabricRow {
        name: "Tarn poplin",
        fibre: "cotton, elastane",
        width: "136cm",
        length: "",
        mass: "130 g/m2",
        seen: Some(("the market hall", "11.50/m")),
        days: 9,
        tests: &[test(9, Crosswise, "200mm", &[216, 217, 216], &[(60, 202)])],
        ..PLAIN
    },
    FabricRow {
        name: "Moss shirting",
        fibre: "linen, viscose",
        width: "138cm",
        length: "2.4m",
        place: "shelf",
        note: "not pulled yet",
        days: 5,
        ..PLAIN
    },
    FabricRow {
        name: "Slate rib",
        fibre: "95 cotton 5 elastane",
        made: Knit,
        width: "80cm",
        length: "0.7m",
        mass: "260 g/m2",
        place: "basket",
        washed: true,
        tests: &[test(26, Crosswise, "100mm", &[178, 181, 179], &[(60, 105)])],
        ..PLAIN
    },
    FabricRow {
        name: "Midnight jersey",
        fibre: "78 polyamide 22 elastane",
        made: Knit,
        width: "155cm",
        length: "1.6m",
        mass: "230 g/m2",
        place: "basket",
        tests: &[
            test(50, Crosswise, "100mm", &[171, 172, 171], &[(60, 103), (1800, 102)]),
            test(50, Lengthwise, "100mm", &[149, 150, 150], &[(60, 103), (1800, 102)]),
        ],
        ..PLAIN
    },
    FabricRow {
        name: "Bilberry interlock",
        fibre: "cotton",
        made: Knit,
        width: "160cm",
        length: "2m",
        mass: "220 g/m2",
        place: "basket",
        washed: true,
        tests: &[
            test(48, Crosswise, "100mm", &[157, 155, 156], &[(60, 106)]),
            test(48, Lengthwise, "100mm", &[118, 119, 117], &[(60, 103)]),
            // Pulled again after a wash: it gives less than it did.
            test(6, Crosswise, "100mm", &[143, 142, 143], &[(60, 106)]),
        ],
        ..PLAIN
    },
    FabricRow {
        name: "Old ski jersey",
        fibre: "polyamide, elastane; twenty years old",
        made: Knit,
        width: "140cm",
        length: "1.5m",
        place: "attic",
        note: "no spring left",
        days: 30,
        tests: &[test(30, Crosswise, "100mm", &[158, 160], &[(60, 131)])],
        ..PLAIN
    },
    FabricRow {
        name: "Cloud lining",
        fibre: "polyester, knitted",
        made: Knit,
        width: "150cm",
        length: "2.5m",
        mass: "75 g/m2",
        place: "shelf",
        tests: &[
            test(28, Crosswise, "200mm", &[233, 234, 234], &[(60, 203)]),
            test(28, Lengthwise, "200mm", &[221, 222, 222], &[(60, 202)]),
        ],
        ..PLAIN
    },
    FabricRow {
        name: "Ember performance knit",
        fibre: "80 polyester 20 elastane",
        made: Knit,
        width: "150cm",
        length: "",
        mass: "250 g/m2",
        seen: Some(("the market hall", "14.90/m")),
        days: 9,
        tests: &[
            test(9, Crosswise, "100mm", &[183, 185, 184], &[(60, 103)]),
            test(9, Lengthwise, "100mm", &[162, 163, 162], &[(60, 103)]),
        ],
        ..PLAIN
    },
];

/// A role of a view.
pub struct RoleRow {
    pub view: &'static str,
    pub role: &'static str,
    pub crosswise: &'static str,
    pub lengthwise: &'static str,
    pub growth: &'static str,
    pub made: &'static [Construction],
    /// Length and width.
    pub cloth: (&'static str, &'static str),
    pub note: &'static str,
}

/// Patterns: name, note, roles.
pub const PATTERNS: &[(&str, &str, &[RoleRow])] = &[
    (
        "Fellside smock",
        "windproof smock, side panels in a second cloth; view B is lined",
        &[
            RoleRow {
                view: "A",
                role: "main",
                crosswise: "5%..15%",
                lengthwise: "",
                growth: "3%",
                made: &[Woven],
                cloth: ("1.7m", "140cm"),
                note: "slight stretch, soft enough to move in",
            },
            RoleRow {
                view: "A",
                role: "side panel",
                crosswise: "15%..40%",
                lengthwise: "",
                growth: "5%",
                made: &[],
                cloth: ("0.6m", "140cm"),
                note: "",
            },
            RoleRow {
                view: "A",
                role: "cuff",
                crosswise: "60%",
                lengthwise: "",
                growth: "10%",
                made: &[Knit],
                cloth: ("0.25m", "70cm"),
                note: "",
            },
            RoleRow {
                view: "B",
                role: "main",
                crosswise: "5%..15%",
                lengthwise: "2%",
                growth: "3%",
                made: &[Woven],
                cloth: ("2.1m", "140cm"),
                note: "",
            },
            RoleRow {
                view: "B",
                role: "lining",
                crosswise: "8%",
                lengthwise: "5%",
                growth: "3%",
                made: &[],
                cloth: ("1.5m", "140cm"),
                note: "must give as the shell gives",
            },
        ],
    ),
    (
        "Ridge tights",
        "walking tights, close fitting",
        &[
            RoleRow {
                view: "-",
                role: "main",
                crosswise: "50%",
                lengthwise: "20%",
                growth: "5%",
                made: &[Knit],
                cloth: ("1.2m", "150cm"),
                note: "",
            },
            RoleRow {
                view: "-",
                role: "gusset",
                crosswise: "30%",
                lengthwise: "10%",
                growth: "6%",
                made: &[Knit],
                cloth: ("0.2m", "60cm"),
                note: "",
            },
        ],
    ),
];
